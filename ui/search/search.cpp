#include "ui/search/search.h"

#include <QtCore/QStringList>
#include <algorithm>
#include <tuple>

#include "core/plan/field.h"
#include "ui/inspector/entity_text.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kInField{"search.in_field"};
constexpr MessageId kLoadOn{"search.load_on"};
constexpr MessageId kFreeSpace{"search.free_space"};
constexpr MessageId kFree{"search.free"};
constexpr MessageId kFinding{"search.finding"};

/// Capitals and accents taken away.
QString folded(const QString& text) {
  QString out;
  for (const QChar c : text.normalized(QString::NormalizationForm_KD)) {
    if (c.category() != QChar::Mark_NonSpacing) out += c;
  }
  return out.toCaseFolded();
}
QString folded(const std::string& text) { return folded(QString::fromStdString(text)); }

/// Runs of letters and digits, and what people write within a number.
QStringList wordsOf(const QString& text) {
  QStringList out;
  QString word;
  for (const QChar c : text) {
    if (c.isLetterOrNumber() || (!word.isEmpty() && (c == QLatin1Char('.') || c == QLatin1Char('/')))) {
      word += c;
      continue;
    }
    if (!word.isEmpty()) out << word;
    word.clear();
  }
  if (!word.isEmpty()) out << word;
  return out;
}

bool isNumber(const QString& word) { return !word.isEmpty() && word.front().isDigit(); }

/// Where the word stands in a folded text: a number as a whole word, others anywhere.
bool holds(const QString& text, const QString& word) {
  if (!isNumber(word)) return text.contains(word);
  return wordsOf(text).contains(word);
}

struct Text {
  QString label;  ///< empty for the name
  QString shown;
};

/// A record with all that can be searched of it.
struct Candidate {
  Found found;
  std::vector<Text> texts;     ///< the name first
  QStringList address;         ///< folded: panel words and space numbers
  std::vector<BreakerId> lit;  ///< cells that show it
  std::tuple<std::size_t, std::int32_t, int> order;
};

class Searcher {
 public:
  Searcher(const Plan& plan, const std::vector<Finding>& findings, const Language& language)
      : plan_(plan), findings_(findings), language_(language) {}

  SearchResult run(const QString& typed) {
    QString text = folded(typed);
    text.replace(QLatin1Char(','), QLatin1Char(' '));
    words_ = text.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words_.isEmpty()) return {};
    spaces();
    // "main 12" names a space and nothing else; "12" may be a year in somebody's notes as well.
    const bool panelNamed = !std::all_of(words_.begin(), words_.end(), isNumber);
    if (panelNamed && !ranked_.empty()) return gathered();
    for (const auto& circuit : plan_.circuits) {
      addCircuit(*circuit);
      for (const Load& load : circuit->loads) addLoad(*circuit, load);
    }
    for (const auto& breaker : plan_.breakers) addBreaker(*breaker);
    SearchResult out = gathered();
    addFindings(out);
    return out;
  }

 private:
  struct Ranked {
    std::tuple<int, std::size_t, std::int32_t, int> key;
    Found found;
    std::vector<BreakerId> lit;
  };

  SearchResult gathered() {
    SearchResult out;
    std::stable_sort(ranked_.begin(), ranked_.end(),
                     [](const Ranked& a, const Ranked& b) { return a.key < b.key; });
    for (Ranked& each : ranked_) {
      out.matching.breakers.insert(each.lit.begin(), each.lit.end());
      if (each.found.space) out.matching.spaces.insert(*each.found.space);
      out.found.push_back(std::move(each.found));
    }
    return out;
  }

  [[nodiscard]] QStringList panelWords(const Panel& panel) const {
    QStringList out = wordsOf(folded(panel.name));
    out << folded(panelWord(panel, language_));
    return out;
  }

  /// Where a breaker stands, for the order of the list.
  [[nodiscard]] std::tuple<std::size_t, std::int32_t, int> order(BreakerId id) const {
    const Breaker* breaker = find(plan_, id);
    if (breaker == nullptr) return {plan_.panels.size(), 0, 0};
    std::size_t panel = 0;
    while (panel < plan_.panels.size() && plan_.panels[panel]->id != breaker->panel) ++panel;
    return {panel, breaker->row, breaker->column.is(Column::right) ? 1 : 0};
  }

  [[nodiscard]] QStringList addressOf(BreakerId id) const {
    const Breaker* breaker = find(plan_, id);
    const Panel* panel = breaker != nullptr ? find(plan_, breaker->panel) : nullptr;
    if (panel == nullptr) return {};
    QStringList out = panelWords(*panel);
    for (const SpacePosition space : poleSpaces(placementOf(*breaker)))
      out << folded(printedNumber(*panel, space));
    out << wordsOf(folded(spaceNames(*panel, placementOf(*breaker))));
    return out;
  }

  void add(int rank, Found found, std::vector<BreakerId> lit,
           const std::tuple<std::size_t, std::int32_t, int>& at) {
    ranked_.push_back(
        {{rank, std::get<0>(at), std::get<1>(at), std::get<2>(at)}, std::move(found), std::move(lit)});
  }

  /// Takes the record where all words stand in it; says which text holds what the name does not.
  void offer(Candidate candidate) {
    std::vector<QString> texts;
    for (const Text& text : candidate.texts) texts.push_back(folded(text.shown));
    bool byText = false, inName = true;
    std::size_t holding = 0;
    for (const QString& word : words_) {
      const auto at =
          std::find_if(texts.begin(), texts.end(), [&](const QString& t) { return holds(t, word); });
      if (at != texts.end()) {
        byText = true;
        if (at != texts.begin()) {
          inName = false;
          holding = static_cast<std::size_t>(at - texts.begin());
        }
      } else if (!candidate.address.contains(word)) {
        return;
      }
    }
    // Words that only say where: the spaces found stand for those.
    if (!byText) return;
    const int rank = !inName ? 3 : texts.front().startsWith(words_.front()) ? 1 : 2;
    if (!inName) {
      candidate.found.matched = words(language_, kInField, candidate.texts[holding].label.toStdString(),
                                      candidate.texts[holding].shown.simplified().toStdString());
    }
    if (candidate.found.breaker.valid() && direct_.contains(candidate.found.what)) return;
    add(rank, std::move(candidate.found), std::move(candidate.lit), candidate.order);
  }

  [[nodiscard]] Text textOf(RecordKind kind, std::string_view key, const std::string& shown) const {
    const Field* field = fieldOf(kind, key);
    return {field != nullptr ? QString::fromStdString(fieldLabel(*field, language_)) : QString(),
            QString::fromStdString(shown)};
  }

  [[nodiscard]] Found foundRecord(FoundKind kind, const EntityRef& what, BreakerId breaker) const {
    Found out;
    out.kind = kind;
    out.what = what;
    out.breaker = breaker;
    out.name = QString::fromStdString(entityName(plan_, what, language_));
    out.place = QString::fromStdString(placeName(plan_, what, language_));
    return out;
  }

  void addCircuit(const Circuit& circuit) {
    Candidate out;
    const BreakerId stands = circuit.planned.valid() ? circuit.planned : circuit.breaker;
    out.found = foundRecord(FoundKind::circuit, {RecordKind::circuit, circuit.id.number}, stands);
    out.texts = {{{}, out.found.name},
                 textOf(RecordKind::circuit, "serves", circuit.serves),
                 textOf(RecordKind::circuit, "room", circuit.room),
                 textOf(RecordKind::circuit, "notes", circuit.notes)};
    if (circuit.serves != circuit.name) out.found.matched = QString::fromStdString(circuit.serves);
    out.address = addressOf(stands);
    for (const BreakerId breaker : {circuit.breaker, circuit.planned}) {
      if (breaker.valid()) out.lit.push_back(breaker);
    }
    out.order = order(stands);
    offer(std::move(out));
  }

  void addLoad(const Circuit& circuit, const Load& load) {
    Candidate out;
    const BreakerId stands = circuit.planned.valid() ? circuit.planned : circuit.breaker;
    out.found = foundRecord(FoundKind::load, {RecordKind::load, load.id.number}, stands);
    out.texts = {{{}, out.found.name}, textOf(RecordKind::load, "notes", load.notes)};
    out.found.matched =
        words(language_, kLoadOn, entityName(plan_, {RecordKind::circuit, circuit.id.number}, language_));
    for (const BreakerId breaker : {circuit.breaker, circuit.planned}) {
      if (breaker.valid()) out.lit.push_back(breaker);
    }
    out.address = addressOf(stands);
    out.order = order(stands);
    offer(std::move(out));
  }

  void addBreaker(const Breaker& breaker) {
    if (!stands(breaker, Reading::planned) || circuitOn(plan_, breaker.id, Reading::planned) != nullptr)
      return;
    Candidate out;
    const EntityRef what{RecordKind::breaker, breaker.id.number};
    out.found = foundRecord(FoundKind::breaker, what, breaker.id);
    const Field* feeds = fieldOf(RecordKind::breaker, "feeds");
    std::string fed = choiceText(*feeds, breaker.feeds.word(), language_);
    if (const Panel* panel = find(plan_, breaker.feedsPanel); panel != nullptr) fed += " " + panel->name;
    out.texts = {{{}, out.found.name},
                 textOf(RecordKind::breaker, "feeds", fed),
                 textOf(RecordKind::breaker, "notes", breaker.notes)};
    out.lit = {breaker.id};
    out.address = addressOf(breaker.id);
    out.order = order(breaker.id);
    offer(std::move(out));
  }

  /// A text that is nothing but panel words and space numbers names spaces.
  void spaces() {
    const bool numbered = std::any_of(words_.begin(), words_.end(), isNumber);
    if (!numbered) return;
    for (std::size_t at = 0; at < plan_.panels.size(); ++at) {
      const Panel& panel = *plan_.panels[at];
      const QStringList names = panelWords(panel);
      bool here = true;
      for (const QString& word : words_) here = here && (isNumber(word) || names.contains(word));
      if (!here) continue;
      for (const QString& word : words_) {
        if (isNumber(word) && !names.contains(word)) addSpace(panel, at, word);
      }
    }
  }

  void addSpace(const Panel& panel, std::size_t panelAt, const QString& number) {
    for (const SpacePosition position : allSpaces(panel)) {
      const QString printed = folded(printedNumber(panel, position));
      const bool half = number.startsWith(printed) && number.size() == printed.size() + 1 &&
                        (number.back() == QLatin1Char('a') || number.back() == QLatin1Char('b'));
      if (printed != number && !half) continue;
      bool taken = false;
      for (const BreakerId id : breakersAt(plan_, panel.id, position, Reading::planned)) {
        const Breaker& breaker = *find(plan_, id);
        const QStringList spelled = wordsOf(folded(spaceNames(panel, placementOf(breaker))));
        if (half && !spelled.contains(number)) continue;
        taken = true;
        const Circuit* circuit = circuitOn(plan_, id, Reading::planned);
        const EntityRef what = circuit != nullptr ? EntityRef{RecordKind::circuit, circuit->id.number}
                                                  : EntityRef{RecordKind::breaker, id.number};
        if (!direct_.insert(what).second) continue;
        Found out = foundRecord(circuit != nullptr ? FoundKind::circuit : FoundKind::breaker, what, id);
        if (circuit != nullptr && circuit->serves != circuit->name)
          out.matched = QString::fromStdString(circuit->serves);
        add(0, std::move(out), {id}, {panelAt, position.row, position.column == Column::right ? 1 : 0});
      }
      if (taken || half) continue;
      Found out;
      out.kind = FoundKind::space;
      out.what = {RecordKind::panel, panel.id.number};
      out.space = CellAddress{panel.id, position, Half::whole};
      out.name = words(language_, kFreeSpace, panel.name, printedNumber(panel, position));
      out.place = QString::fromStdString(panelWord(panel, language_) + " " + printedNumber(panel, position));
      out.matched = words(language_, kFree);
      add(0, std::move(out), {}, {panelAt, position.row, position.column == Column::right ? 1 : 0});
    }
  }

  void addFindings(SearchResult& out) const {
    for (std::size_t i = 0; i < findings_.size(); ++i) {
      const Finding& finding = findings_[i];
      const QString plain = words(finding.plain, language_);
      const QString trade = finding.trade.id.key.empty() ? QString() : words(finding.trade, language_);
      const QString all = folded(QString(plain + QLatin1Char(' ') + trade));
      if (!std::all_of(words_.begin(), words_.end(), [&](const QString& word) { return holds(all, word); }))
        continue;
      Found found;
      found.kind = FoundKind::finding;
      found.finding = i;
      found.name = plain;
      found.matched = words(language_, kFinding);
      if (!finding.places.empty()) {
        found.what = finding.places.front();
        found.place = QString::fromStdString(placeName(plan_, found.what, language_));
      }
      for (const EntityRef& place : finding.places) {
        const BreakerId breaker = breakerOfPlace(place);
        if (!breaker.valid()) continue;
        if (!found.breaker.valid()) found.breaker = breaker;
        out.matching.breakers.insert(breaker);
      }
      out.found.push_back(std::move(found));
    }
  }

  [[nodiscard]] BreakerId breakerOfPlace(EntityRef place) const {
    if (place.kind == RecordKind::useWindow) place = ownerOf(plan_, place);
    if (place.kind == RecordKind::load) place = ownerOf(plan_, place);
    if (place.kind == RecordKind::breaker) return BreakerId{place.id};
    if (place.kind == RecordKind::circuit) {
      if (const Circuit* circuit = find(plan_, CircuitId{place.id}))
        return circuit->planned.valid() ? circuit->planned : circuit->breaker;
    }
    return {};
  }

  const Plan& plan_;
  const std::vector<Finding>& findings_;
  const Language& language_;
  QStringList words_;
  std::vector<Ranked> ranked_;
  std::set<EntityRef> direct_;  ///< found by their space
};

}  // namespace

SearchResult search(const Plan& plan, const std::vector<Finding>& findings, const QString& text,
                    const Language& language) {
  return Searcher(plan, findings, language).run(text);
}

}  // namespace stayalight
