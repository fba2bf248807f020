#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <set>

#include "core/catalogue/columns.h"
#include "core/directory/csv.h"

namespace stayalight {
namespace table {
namespace {

constexpr MessageId kRow{"catalogue.row"};
constexpr MessageId kNoHeading{"catalogue.no_heading"};
constexpr MessageId kMissingColumn{"catalogue.missing_column"};
constexpr MessageId kOtherColumn{"catalogue.other_column"};
constexpr MessageId kTwiceColumn{"catalogue.column_twice"};
constexpr MessageId kTooManyCells{"catalogue.too_many_cells"};
constexpr MessageId kNumber{"catalogue.expected_number"};
constexpr MessageId kWhole{"catalogue.expected_whole"};
constexpr MessageId kYesNo{"catalogue.expected_yes_no"};
constexpr MessageId kOneOf{"catalogue.expected_one_of"};
constexpr MessageId kWindow{"catalogue.expected_window"};
constexpr MessageId kText{"catalogue.expected_text"};
constexpr MessageId kFreeId{"catalogue.expected_free_id"};
constexpr MessageId kOrder{"catalogue.expected_order"};
constexpr MessageId kBothEnds{"catalogue.expected_both_ends"};
constexpr MessageId kPower{"catalogue.expected_power"};

constexpr std::size_t kShownLength = 60;
constexpr int kMinutesPerHour = 60;
constexpr double kWattHours = 1000.0;

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string shown(std::string_view text) {
  if (text.size() <= kShownLength) return std::string(text);
  // Never within a character.
  std::size_t end = kShownLength;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return std::string(text.substr(0, end)) + "...";
}

template <class Number>
std::optional<Number> numberOf(std::string_view text) {
  Number number{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

/// What is wrong with a cell: in which column, and what was expected.
struct Wrong {
  std::string column;
  std::string value;
  Message expected;
};

/// Parts of a text between marks, each without the space around it.
std::vector<std::string_view> partsOf(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t end = text.find(mark);
    parts.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    text = text.substr(end + 1);
  }
}

/// Minutes after midnight of "6" or "6:30"; 24 is midnight.
std::optional<int> minutesOf(std::string_view text) {
  const std::vector<std::string_view> parts = partsOf(text, ':');
  const auto hour = numberOf<int>(parts[0]);
  const auto minute = parts.size() > 1 ? numberOf<int>(parts[1]) : 0;
  if (parts.size() > 2 || !hour || !minute || *hour < 0 || *minute < 0 || *minute >= kMinutesPerHour)
    return std::nullopt;
  constexpr int kDay = 24 * kMinutesPerHour;
  const int minutes = *hour * kMinutesPerHour + *minute;
  return minutes <= kDay ? std::optional<int>(minutes) : std::nullopt;
}

/// "winter 6-23 0.5", or with a duty and starts an hour of its own "winter 6-23 0.5/0.4/2".
std::optional<UseWindow> windowOf(std::string_view text) {
  std::vector<std::string_view> words = partsOf(text, ' ');
  words.erase(std::remove(words.begin(), words.end(), std::string_view()), words.end());
  if (words.size() != 3) return std::nullopt;
  const auto& seasons = ChoiceWords<Season>::words;
  const auto* const season = std::find(seasons.begin(), seasons.end(), words[0]);
  const std::vector<std::string_view> hours = partsOf(words[1], '-');
  const std::vector<std::string_view> shares = partsOf(words[2], '/');
  if (season == seasons.end() || hours.size() != 2 || shares.size() > 3) return std::nullopt;
  const auto from = minutesOf(hours[0]);
  const auto to = minutesOf(hours[1]);
  if (!from || !to) return std::nullopt;
  UseWindow window;
  window.season = static_cast<Season>(season - seasons.begin());
  window.from = TimeOfDay(*from);
  window.to = TimeOfDay(*to);
  constexpr std::array<std::string_view, 3> kKeys = {"share", "duty", "starts_per_hour"};
  for (std::size_t i = 0; i < shares.size(); ++i) {
    if (shares[i].empty() && i > 0) continue;
    const Field& field = *fieldOf(RecordKind::useWindow, kKeys[i]);
    const auto number = numberOf<double>(shares[i]);
    if (!number || check(field, *number)) return std::nullopt;
    field.set(&window, *number);
  }
  return window;
}

std::string listed(std::span<const std::string_view> words) {
  std::string all;
  for (const std::string_view word : words) all += (all.empty() ? "" : ", ") + std::string(word);
  return all;
}

/// One row as an entry.
class RowReader {
 public:
  explicit RowReader(const std::map<std::string, std::string, std::less<>>& cells) : cells_(cells) {}

  std::optional<CatalogueEntry> read() {
    readTexts();
    readFields();
    readWindows();
    readDay();
    if (!wrong_ && !entry_.load.running.value && !entry_.load.runningCurrent.value)
      fail("running_W", "", say(kPower));
    if (wrong_) return std::nullopt;
    return entry_;
  }
  [[nodiscard]] const std::optional<Wrong>& wrong() const { return wrong_; }

 private:
  [[nodiscard]] std::string_view cell(std::string_view column) const {
    const auto found = cells_.find(column);
    return found == cells_.end() ? std::string_view() : trimmed(found->second);
  }
  void fail(std::string_view column, std::string_view value, Message expected) {
    if (!wrong_) wrong_ = Wrong{std::string(column), shown(value), std::move(expected)};
  }
  void checked(std::string_view column, const Field& field, const FieldValue& value) {
    if (auto why = check(field, value)) fail(column, cell(column), std::move(*why));
  }

  void readTexts() {
    for (const std::string_view column : {kId, kName}) {
      if (cell(column).empty()) fail(column, "", say(kText));
    }
    entry_.load.catalogueId = std::string(cell(kId));
    entry_.load.name = std::string(cell(kName));
    checked(kId, *fieldOf(RecordKind::load, "catalogue_id"), entry_.load.catalogueId);
    checked(kName, *fieldOf(RecordKind::load, "name"), entry_.load.name);
    entry_.words = wordsOf(cell(kWords));
    entry_.source = std::string(cell(kSource));
    entry_.daySource = std::string(cell(kDaySource));
  }

  std::optional<double> number(std::string_view column) {
    const std::string_view text = cell(column);
    if (text.empty()) return std::nullopt;
    const auto value = numberOf<double>(text);
    if (!value || !std::isfinite(*value)) {
      fail(column, text, say(kNumber));
      return std::nullopt;
    }
    return value;
  }

  void readFields() {
    for (const LoadColumn& column : loadColumns()) {
      if (column.part != Part::value) continue;
      const Field& field = *column.field;
      if (field.kind == FieldKind::fact)
        readFact(field);
      else if (!cell(field.key).empty())
        readValue(field);
    }
  }

  void readFact(const Field& field) {
    FactValue fact;
    fact.value = number(LoadColumn{&field, Part::value}.name());
    fact.low = number(LoadColumn{&field, Part::low}.name());
    fact.high = number(LoadColumn{&field, Part::high}.name());
    if (!fact.value && !fact.low && !fact.high) return;
    const double middle = fact.value.value_or(fact.low.value_or(fact.high.value_or(0.0)));
    if (fact.low.value_or(middle) > middle || fact.high.value_or(middle) < middle)
      fail(field.key, cell(field.key), say(kOrder));
    fact.grade = Grade::typical;
    checked(field.key, field, fact);
    if (!wrong_) field.set(&entry_.load, fact);
  }

  void readValue(const Field& field) {
    const std::string_view text = cell(field.key);
    FieldValue value;
    switch (field.kind) {
      case FieldKind::flag:
        if (text != "yes" && text != "no") fail(field.key, text, say(kYesNo));
        value = text == "yes";
        break;
      case FieldKind::whole:
        if (const auto whole = numberOf<std::int64_t>(text))
          value = *whole;
        else
          fail(field.key, text, say(kWhole));
        break;
      case FieldKind::number:
        if (const auto real = number(field.key)) value = *real;
        break;
      case FieldKind::choice:
        // Words of a later program are kept in plans; a list that somebody edits should say where one is
        // misspelt.
        if (std::find(field.choices.begin(), field.choices.end(), text) == field.choices.end())
          fail(field.key, text, say(kOneOf, listed(field.choices)));
        value = std::string(text);
        break;
      default:
        value = std::string(text);
    }
    if (wrong_) return;
    checked(field.key, field, value);
    if (!wrong_) field.set(&entry_.load, value);
  }

  void readWindows() {
    if (cell(kWindows).empty()) return;
    for (const std::string_view part : partsOf(cell(kWindows), ';')) {
      if (const auto window = windowOf(part))
        entry_.load.windows.push_back(*window);
      else
        fail(kWindows, part, say(kWindow, listed(ChoiceWords<Season>::words)));
    }
  }

  void readDay() {
    if (const auto watts = number(kOldUnit)) {
      FactValue fact;
      fact.value = *watts;
      checked(kOldUnit, *fieldOf(RecordKind::load, "running_W"), fact);
      entry_.oldUnit = Watts(*watts);
    }
    const auto low = number(kDayLow);
    const auto high = number(kDayHigh);
    if (!low && !high) return;
    if (!low || !high) return fail(low ? kDayHigh : kDayLow, "", say(kBothEnds));
    if (*low < 0.0 || *high < *low) return fail(kDayHigh, cell(kDayHigh), say(kOrder));
    entry_.day = DayEnergy{LoadWattHours(*low * kWattHours), LoadWattHours(*high * kWattHours)};
  }

  const std::map<std::string, std::string, std::less<>>& cells_;
  CatalogueEntry entry_;
  std::optional<Wrong> wrong_;
};

bool isColumn(std::string_view name) {
  for (const std::string_view known :
       {kId, kName, kWords, kOldUnit, kWindows, kDayLow, kDayHigh, kDaySource, kSource}) {
    if (known == name) return true;
  }
  const auto& columns = loadColumns();
  return std::any_of(columns.begin(), columns.end(),
                     [&](const LoadColumn& column) { return column.name() == name; });
}

}  // namespace

std::string LoadColumn::name() const {
  return std::string(field->key) + (part == Part::low ? " low" : part == Part::high ? " high" : "");
}

const std::vector<LoadColumn>& loadColumns() {
  static const std::vector<LoadColumn> columns = [] {
    std::vector<LoadColumn> made;
    for (const Field& field : recordType(RecordKind::load).fields) {
      // The place on a breaker and the answers of one house are no property of the device.
      const bool ofPlan = field.kind == FieldKind::identity || field.key == kName || field.key == "pole" ||
                          field.key == "meant_to_run" || field.key == "catalogue_id";
      if (ofPlan) continue;
      made.push_back({&field, Part::value});
      if (field.kind == FieldKind::fact) {
        made.push_back({&field, Part::low});
        made.push_back({&field, Part::high});
      }
    }
    return made;
  }();
  return columns;
}

}  // namespace table

using namespace table;

Catalogue readCatalogue(std::string_view text, const std::string& name) {
  Catalogue read;
  const auto refuse = [&](Message why) { read.refused.push_back(std::move(why)); };
  // Remarks stand above the heading, and their commas are none of the table.
  std::int64_t remarks = 0;
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  while (!text.empty() && text.front() == '#') {
    text.remove_prefix(std::min(text.find('\n'), text.size() - 1) + 1);
    ++remarks;
  }
  const Result<CsvText> table = readCsv(text, name);
  if (!table) {
    refuse(table.refusal());
    return read;
  }
  const std::vector<CsvRecord>& rows = table.value().records;
  if (rows.empty()) {
    refuse(say(kNoHeading, name));
    return read;
  }
  const auto lineOf = [remarks](const CsvRecord& row) { return row.line + remarks; };
  std::vector<std::string> heading;
  for (const std::string& cell : rows.front().cells) {
    const std::string column(trimmed(cell));
    if (!isColumn(column))
      refuse(say(kOtherColumn, name, lineOf(rows.front()), shown(column)));
    else if (std::find(heading.begin(), heading.end(), column) != heading.end())
      refuse(say(kTwiceColumn, name, lineOf(rows.front()), column));
    heading.push_back(column);
  }
  for (const std::string_view needed : {kId, kName}) {
    if (std::find(heading.begin(), heading.end(), needed) != heading.end()) continue;
    refuse(say(kMissingColumn, name, lineOf(rows.front()), std::string(needed)));
    return read;
  }
  std::set<std::string> ids;
  for (const CsvRecord& row : std::span(rows).subspan(1)) {
    if (row.cells.size() > heading.size()) {
      refuse(say(kTooManyCells, name, lineOf(row), static_cast<std::int64_t>(row.cells.size()),
                 static_cast<std::int64_t>(heading.size())));
      continue;
    }
    std::map<std::string, std::string, std::less<>> cells;
    for (std::size_t column = 0; column < row.cells.size(); ++column)
      cells.emplace(heading[column], row.cells[column]);
    RowReader reader(cells);
    auto entry = reader.read();
    std::optional<Wrong> wrong = reader.wrong();
    if (entry && !ids.insert(entry->load.catalogueId).second)
      wrong = Wrong{std::string(kId), shown(entry->load.catalogueId), say(kFreeId)};
    if (wrong)
      refuse(
          say(kRow, name, lineOf(row), wrong->column, wrong->value, std::vector<Message>{wrong->expected}));
    else
      read.entries.push_back(std::move(*entry));
  }
  return read;
}

}  // namespace stayalight
