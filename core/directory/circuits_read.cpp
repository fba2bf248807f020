#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/directory/circuits.h"
#include "core/directory/columns.h"
#include "core/directory/csv.h"

namespace stayalight {
namespace {

using namespace circuit_table;

constexpr MessageId kStopped{"file.stopped"};
constexpr MessageId kEmptyTable{"csv.empty"};
constexpr MessageId kTooManyRows{"csv.too_many_rows"};
constexpr MessageId kNoColumn{"csv.no_column"};
constexpr MessageId kColumnTwice{"csv.column_twice"};
constexpr MessageId kColumnNotRead{"csv.column_not_read"};
constexpr MessageId kTooManyCells{"csv.too_many_cells"};
constexpr MessageId kCell{"csv.cell"};
constexpr MessageId kRow{"csv.row"};
constexpr MessageId kWantsNumber{"csv.wants_number"};
constexpr MessageId kWantsWhole{"csv.wants_whole"};
constexpr MessageId kWantsRange{"csv.wants_range"};
constexpr MessageId kWantsYesNo{"csv.wants_yes_no"};
constexpr MessageId kWantsOneOf{"csv.wants_one_of"};
constexpr MessageId kWantsPanel{"csv.wants_panel"};
constexpr MessageId kWantsSpace{"csv.wants_space"};
constexpr MessageId kWantsText{"csv.wants_text"};
constexpr MessageId kWantsOrder{"csv.wants_order"};
constexpr std::size_t kLongestShown = 60;

/// A wrong cell ends its row; the exception stays in this file.
struct Wrong {
  Message why;
};

std::string shown(const std::string& text) {
  std::string out;
  for (const char c : text.substr(0, kLongestShown)) out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
  return text.size() > kLongestShown ? out + "..." : out;
}

Figure figure(double value) { return {value, "", value == std::floor(value) ? 0 : 3}; }

std::string listed(std::span<const std::string_view> words) {
  std::string out;
  for (const std::string_view word : words) out += (out.empty() ? "" : ", ") + std::string(word);
  return out;
}

class Table {
 public:
  Table(const Plan& plan, const std::string& name) : name_(name) { out_.plan = plan; }

  std::variant<ReadCircuits, CircuitsRefused> read(const CsvText& csv, const Watch& watch) {
    decimalComma_ = csv.separator == ';';
    if (csv.records.empty()) return CircuitsRefused{{say(kEmptyTable, name_)}};
    if (csv.records.size() > kMostCircuitRows) {
      return CircuitsRefused{{say(kTooManyRows, name_, static_cast<std::int64_t>(csv.records.size()),
                                  static_cast<std::int64_t>(kMostCircuitRows))}};
    }
    readHead(csv.records[0]);
    for (std::size_t i = 1; i < csv.records.size() && problems_.size() < kMostProblems; ++i) {
      if (!goesOn(watch, static_cast<double>(i) / static_cast<double>(csv.records.size())))
        return CircuitsRefused{{say(kStopped, name_)}};
      row_ = &csv.records[i];
      const std::size_t cells = row_->cells.size();
      if (cells > heads_.size() &&
          std::any_of(row_->cells.begin() + static_cast<std::ptrdiff_t>(heads_.size()), row_->cells.end(),
                      [](const auto& cell) { return !cell.empty(); })) {
        problems_.push_back(say(kTooManyCells, name_, row_->line, static_cast<std::int64_t>(cells),
                                static_cast<std::int64_t>(heads_.size())));
        continue;
      }
      try {
        readRow();
      } catch (Wrong& wrong) {
        problems_.push_back(std::move(wrong.why));
      }
    }
    if (!problems_.empty()) return CircuitsRefused{std::move(problems_)};
    return std::move(out_);
  }

 private:
  void readHead(const CsvRecord& head) {
    for (const std::string& cell : head.cells) {
      const auto column = std::find_if(columns().begin(), columns().end(),
                                       [&](const TableColumn& each) { return each.name == cell; });
      const TableColumn* found = column != columns().end() ? &*column : nullptr;
      if (found != nullptr && std::find(heads_.begin(), heads_.end(), found) != heads_.end()) {
        problems_.push_back(say(kColumnTwice, name_, shown(cell)));
        found = nullptr;
      }
      if (found == nullptr && !cell.empty()) out_.notes.push_back(say(kColumnNotRead, name_, shown(cell)));
      heads_.push_back(found);
    }
    for (const std::string_view needed : {kPanel, kSpace}) {
      const bool there = std::any_of(heads_.begin(), heads_.end(), [&](const TableColumn* each) {
        return each != nullptr && each->name == needed;
      });
      if (!there) problems_.push_back(say(kNoColumn, name_, std::string(needed)));
    }
  }

  [[nodiscard]] const std::string* cell(std::string_view name) const {
    for (std::size_t i = 0; i < heads_.size() && i < row_->cells.size(); ++i) {
      if (heads_[i] != nullptr && heads_[i]->name == name) return &row_->cells[i];
    }
    return nullptr;
  }
  [[noreturn]] void wrong(std::string_view column, const std::string& value, Message expected) const {
    throw Wrong{say(kCell, name_, row_->line, std::string(column), shown(value),
                    std::vector<Message>{std::move(expected)})};
  }
  [[noreturn]] void wrongRow(Message why) const {
    throw Wrong{say(kRow, name_, row_->line, std::vector<Message>{std::move(why)})};
  }
  Plan& plan() { return out_.plan; }
  void take(Result<Plan> next) {
    if (!next) wrongRow(next.refusal());
    out_.plan = std::move(next).value();
  }

  // -- where a row's circuit stands

  const Panel& panelOfRow(const std::string& label) {
    std::string labels;
    for (const auto& panel : plan().panels) {
      if (panelLabel(plan(), *panel) == label) return *panel;
      labels += (labels.empty() ? "" : ", ") + panelLabel(plan(), *panel);
    }
    wrong(kPanel, label, say(kWantsPanel, labels));
  }

  SpacePosition spaceOfRow(const Panel& panel, const std::string& label) {
    for (const SpacePosition position : allSpaces(panel)) {
      if (spaceLabel(panel, position) == label) return position;
    }
    wrong(kSpace, label, say(kWantsSpace, panel.name));
  }

  template <class T>
  T valueOr(std::string_view key, T otherwise) {
    const std::string name = "breaker_" + std::string(key);
    const std::string* text = cell(name);
    if (text == nullptr || text->empty()) return otherwise;
    return std::get<T>(valueOf(*fieldOf(RecordKind::breaker, key), name, *text));
  }

  [[nodiscard]] BreakerId standingAt(const Placement& place) const {
    // Today's breaker before the one that is planned there.
    for (const Reading reading : {Reading::before, Reading::planned}) {
      const BreakerId there = occupantOf(out_.plan, place, reading, {});
      if (there.valid() && find(out_.plan, there)->position() == place.position) return there;
    }
    return {};
  }

  void readRow() {
    const std::string label = cell(kPanel) != nullptr ? *cell(kPanel) : std::string();
    const std::string* group = cell(kCircuit);
    const bool further = group != nullptr && !group->empty() && !lastGroup_.empty() && *group == lastGroup_;
    if (!further) {
      circuit_ = {};
      breaker_ = {};
      loads_ = 0;
      if (label.empty())
        withoutBreaker();
      else
        atSpace(panelOfRow(label));
      setFields(RecordKind::breaker, {RecordKind::breaker, breaker_.number});
      setFields(RecordKind::circuit, {RecordKind::circuit, circuit_.number});
    }
    lastGroup_ = group != nullptr ? *group : std::string();
    setLoad();
  }

  void withoutBreaker() {
    const std::string name = cell("circuit_name") != nullptr ? *cell("circuit_name") : std::string();
    for (const auto& circuit : plan().circuits) {
      const bool bare =
          find(plan(), circuit->breaker) == nullptr && find(plan(), circuit->planned) == nullptr;
      if (bare && circuit->name == name && !contains(circuit->id)) circuit_ = circuit->id;
    }
    if (!circuit_.valid()) {
      Circuit circuit;
      circuit.id = circuit_ = nextCircuitId(plan());
      plan().circuits.emplace_back(circuit);
      ++out_.added;
    } else {
      ++out_.changed;
    }
    done_.push_back(circuit_);
  }

  void atSpace(const Panel& panel) {
    const std::string text = cell(kSpace) != nullptr ? *cell(kSpace) : std::string();
    const SpacePosition position = spaceOfRow(panel, text);
    const auto poles = static_cast<std::int32_t>(valueOr<std::int64_t>("poles", 1));
    const auto rating = static_cast<std::int32_t>(valueOr<std::int64_t>("rating_A", 20));
    const std::string half = valueOr<std::string>("half", "whole");
    const auto& halves = ChoiceWords<Half>::words;
    const auto at = std::find(halves.begin(), halves.end(), half);
    if (at == halves.end()) wrong("breaker_half", half, say(kWantsOneOf, listed(halves)));
    const Placement place{panel.id, position, static_cast<Half>(at - halves.begin()), poles};
    breaker_ = standingAt(place);
    if (!breaker_.valid()) {
      const std::string name = cell("circuit_name") != nullptr ? *cell("circuit_name") : std::string();
      Result<Plan> added = addCircuit(plan(), panel.id, place, poles, RatingAmperes(rating), name);
      if (!added) wrong(kSpace, text, added.refusal());
      out_.plan = std::move(added).value();
      breaker_ = plan().breakers.back()->id;
      circuit_ = plan().circuits.back()->id;
      done_.push_back(circuit_);
      ++out_.added;
      const std::string* given = cell("breaker_rating_A");
      if (given == nullptr || given->empty())
        take(setField(plan(), {RecordKind::breaker, breaker_.number}, "rating_read", std::string("unknown")));
      return;
    }
    const Breaker& breaker = *find(plan(), breaker_);
    if (breaker.poles != poles && cell("breaker_poles") != nullptr && !cell("breaker_poles")->empty())
      take(setPoles(plan(), breaker_, poles));
    circuitOnBreaker();
  }

  /// The first circuit on the breaker that no row has named yet; else one more on it.
  void circuitOnBreaker() {
    for (const Reading reading : {Reading::before, Reading::planned}) {
      for (const auto& circuit : plan().circuits) {
        if (breakerOf(*circuit, reading) != breaker_ || contains(circuit->id)) continue;
        circuit_ = circuit->id;
        done_.push_back(circuit_);
        ++out_.changed;
        return;
      }
    }
    const bool free = circuitOn(plan(), breaker_, Reading::before) == nullptr &&
                      circuitOn(plan(), breaker_, Reading::planned) == nullptr;
    if (free) {
      take(addCircuitOn(plan(), breaker_, {}));
    } else {
      // Two hots of one cable on a two-pole breaker are two circuits.
      const Breaker& breaker = *find(plan(), breaker_);
      Circuit circuit;
      circuit.id = nextCircuitId(plan());
      if (stands(breaker, Reading::planned)) circuit.planned = breaker_;
      if (stands(breaker, Reading::before)) circuit.breaker = breaker_;
      plan().circuits.emplace_back(circuit);
    }
    circuit_ = plan().circuits.back()->id;
    done_.push_back(circuit_);
    ++out_.added;
  }
  [[nodiscard]] bool contains(CircuitId id) const {
    return std::find(done_.begin(), done_.end(), id) != done_.end();
  }

  // -- the fields of a row

  void setLoad() {
    const bool any = std::any_of(columns().begin(), columns().end(), [&](const TableColumn& column) {
      if (column.record != RecordKind::load || column.field == nullptr) return false;
      const std::string* text = cell(column.name);
      return text != nullptr && !text->empty();
    });
    if (!any) return;
    const auto have = find(plan(), circuit_)->loads.size();
    if (loads_ >= have) take(addLoad(plan(), circuit_, Load{}));
    const LoadId load = find(plan(), circuit_)->loads[loads_++].id;
    setFields(RecordKind::load, {RecordKind::load, load.number});
  }

  void setFields(RecordKind record, const EntityRef& ref) {
    if (ref.id == 0) return;
    for (const Field& field : recordType(record).fields) {
      // Place and poles of a breaker were settled with its space.
      if (record == RecordKind::breaker && field.key == "poles") continue;
      const std::string name = std::string(recordType(record).name) + "_" + std::string(field.key);
      FieldValue value = field.get(findRecord(plan(), ref));
      const FieldValue before = value;
      if (field.kind == FieldKind::fact) {
        value = factOf(field, name, std::get<FactValue>(value));
      } else if (const std::string* text = cell(name)) {
        if (text->empty() && !field.optional && field.kind != FieldKind::text) continue;
        value = valueOf(field, name, *text);
      }
      if (value == before) continue;
      Result<Plan> next = setField(plan(), ref, field.key, value);
      if (!next) wrong(name, cell(name) != nullptr ? *cell(name) : std::string(), next.refusal());
      out_.plan = std::move(next).value();
    }
  }

  FieldValue valueOf(const Field& field, const std::string& name, const std::string& text) const {
    if (text.empty() && field.optional) return NoValue{};
    switch (field.kind) {
      case FieldKind::flag:
        if (text == "yes" || text == "no") return text == "yes";
        wrong(name, text, say(kWantsYesNo));
      case FieldKind::whole: {
        const double number = numberOf(field, name, text);
        if (number != std::floor(number)) wrong(name, text, say(kWantsWhole));
        return static_cast<std::int64_t>(number);
      }
      case FieldKind::number:
        return numberOf(field, name, text);
      case FieldKind::choice:
        if (std::find(field.choices.begin(), field.choices.end(), text) == field.choices.end())
          wrong(name, text, say(kWantsOneOf, listed(field.choices)));
        return text;
      default:
        break;
    }
    if (text.size() > kLongestText)
      wrong(name, text, say(kWantsText, static_cast<std::int64_t>(kLongestText)));
    return text;
  }

  double numberOf(const Field& field, const std::string& name, const std::string& text) const {
    std::string plain = text;
    if (decimalComma_) std::replace(plain.begin(), plain.end(), ',', '.');
    double number = 0.0;
    const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), number);
    if (error != std::errc() || end != plain.data() + plain.size() || !std::isfinite(number))
      wrong(name, text, say(kWantsNumber));
    if (number < field.minimum || number > field.maximum)
      wrong(name, text, say(kWantsRange, figure(field.minimum), figure(field.maximum)));
    return number;
  }

  FactValue factOf(const Field& field, const std::string& name, FactValue fact) const {
    const auto number = [&](std::string_view ending, std::optional<double>& part) {
      const std::string column = name + std::string(ending);
      const std::string* text = cell(column);
      if (text == nullptr) return;
      part = text->empty() ? std::nullopt : std::optional<double>(numberOf(field, column, *text));
    };
    const auto words = [&](std::string_view ending, std::string& part) {
      const std::string column = name + std::string(ending);
      const std::string* text = cell(column);
      if (text == nullptr) return;
      if (text->size() > kLongestText)
        wrong(column, *text, say(kWantsText, static_cast<std::int64_t>(kLongestText)));
      part = *text;
    };
    number("", fact.value);
    number("_low", fact.low);
    number("_high", fact.high);
    words("_who", fact.who);
    words("_when", fact.when);
    words("_how", fact.how);
    if (const std::string* grade = cell(name + "_grade"); grade != nullptr && !grade->empty()) {
      const auto* const known = std::find(kGradeWords.begin(), kGradeWords.end(), *grade);
      if (known == kGradeWords.end()) wrong(name + "_grade", *grade, say(kWantsOneOf, listed(kGradeWords)));
      fact.grade = static_cast<Grade>(known - kGradeWords.begin());
    }
    if (check(field, fact))
      wrong(name, cell(name) != nullptr ? *cell(name) : std::string(), say(kWantsOrder));
    return fact;
  }

  const std::string& name_;
  ReadCircuits out_;
  std::vector<const TableColumn*> heads_;
  std::vector<Message> problems_;
  const CsvRecord* row_ = nullptr;
  bool decimalComma_ = false;
  std::string lastGroup_;
  CircuitId circuit_;
  BreakerId breaker_;
  std::size_t loads_ = 0;
  std::vector<CircuitId> done_;
};

}  // namespace

std::variant<ReadCircuits, CircuitsRefused> readCircuits(const Plan& plan, std::string_view text,
                                                         const std::string& name, const Watch& watch) {
  Result<CsvText> csv = readCsv(text, name);
  if (!csv) return CircuitsRefused{{csv.refusal()}};
  return Table(plan, name).read(csv.value(), watch);
}

}  // namespace stayalight
