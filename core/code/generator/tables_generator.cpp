#include "core/code/generator/tables_generator.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <functional>
#include <optional>
#include <utility>

#include "core/code/generator/csv.h"
#include "core/code/tables.h"
#include "core/plan/raceway.h"

namespace stayalight::generator {
namespace {

// One table while it is read: checks cells, remembers where it stands for the reason of a refusal.
class Table {
 public:
  Table(const TableFiles& files, std::string file, const std::string& columnLine) : file_(std::move(file)) {
    const auto found = files.find(file_);
    if (found == files.end()) throw MalformedTable(file_, 0, "file is missing");
    rows_ = readCsv(file_, found->second, columnLine);
  }

  [[nodiscard]] const std::vector<CsvRow>& rows() const { return rows_; }

  [[noreturn]] void refuse(const CsvRow& row, const std::string& reason) const {
    throw MalformedTable(file_, row.line, reason);
  }

  void expectRows(std::size_t count) const {
    if (rows_.size() != count) {
      throw MalformedTable(
          file_, rows_.back().line,
          std::to_string(count) + " rows expected, " + std::to_string(rows_.size()) + " found");
    }
  }

  // A number above 0, as it stands; a blank cell is 0 where blanks are allowed.
  [[nodiscard]] double number(const CsvRow& row, std::size_t column, bool blankAllowed = false) const {
    const std::string& cell = row.cells[column];
    if (cell.empty() && blankAllowed) return 0.0;
    double value = 0.0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (error != std::errc() || end != cell.data() + cell.size() || !(value >= 0.0) || value > 1e6) {
      refuse(row, "\"" + cell + "\" is not a number");
    }
    return value;
  }
  [[nodiscard]] double positive(const CsvRow& row, std::size_t column, bool blankAllowed = false) const {
    const double value = number(row, column, blankAllowed);
    if (value <= 0.0 && !row.cells[column].empty())
      refuse(row, "\"" + row.cells[column] + "\" is not above 0");
    return value;
  }
  [[nodiscard]] int whole(const CsvRow& row, std::size_t column, bool blankAllowed = false) const {
    const double value = positive(row, column, blankAllowed);
    if (value != static_cast<double>(static_cast<int>(value))) {
      refuse(row, "\"" + row.cells[column] + "\" is not a whole number");
    }
    return static_cast<int>(value);
  }
  [[nodiscard]] ConductorSize size(const CsvRow& row, std::size_t column) const {
    const auto found = conductorSizeNamed(row.cells[column]);
    if (!found) refuse(row, "\"" + row.cells[column] + "\" is not a conductor size");
    return *found;
  }
  // Position of a word in a list.
  [[nodiscard]] std::size_t word(const CsvRow& row, std::size_t column,
                                 std::initializer_list<std::string_view> words) const {
    std::size_t index = 0;
    for (const std::string_view candidate : words) {
      if (candidate == row.cells[column]) return index;
      ++index;
    }
    refuse(row, "\"" + row.cells[column] + "\" is not one of the words of this column");
  }
  // "3/4", "5", "7 1/2".
  [[nodiscard]] double horsepower(const CsvRow& row, std::size_t column) const {
    const std::string& cell = row.cells[column];
    int whole = 0;
    int over = 0;
    int under = 1;
    const char* const end = cell.data() + cell.size();
    auto read = [&](const char* from, int& into) { return std::from_chars(from, end, into); };
    auto [next, error] = read(cell.data(), whole);
    bool good = error == std::errc();
    if (good && next != end && *next == ' ') {
      const auto part = read(next + 1, over);
      good = part.ec == std::errc() && part.ptr != end && *part.ptr == '/';
      if (good) {
        const auto last = read(part.ptr + 1, under);
        good = last.ec == std::errc() && last.ptr == end;
      }
    } else if (good && next != end) {
      over = whole;
      whole = 0;
      good = *next == '/';
      if (good) {
        const auto last = read(next + 1, under);
        good = last.ec == std::errc() && last.ptr == end;
      }
    }
    if (!good || under <= 0 || whole < 0 || over < 0 || whole + over == 0) {
      refuse(row, "\"" + cell + "\" is not a horsepower");
    }
    return whole + static_cast<double>(over) / under;
  }

  // Every row of a table by size: all sizes, in the order of the list.
  void expectAllSizes() const {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const ConductorSize found = size(rows_[i], 0);
      if (i >= kConductorSizeCount || found != static_cast<ConductorSize>(i)) {
        refuse(rows_[i], "size " + rows_[i].cells[0] + " is out of order");
      }
    }
    expectRows(kConductorSizeCount);
  }
  // Values of a column rise from row to row.
  void expectRising(const std::function<double(const CsvRow&)>& value) const {
    for (std::size_t i = 1; i < rows_.size(); ++i) {
      if (!(value(rows_[i]) > value(rows_[i - 1]))) {
        refuse(rows_[i], "\"" + rows_[i].cells[0] + "\" is out of order");
      }
    }
  }

 private:
  std::string file_;
  std::vector<CsvRow> rows_;
};

std::string text(double value) {
  char buffer[64];
  const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
  return error == std::errc() ? std::string(buffer, end) : std::string("0");
}
std::string text(ConductorSize size) {
  return "static_cast<ConductorSize>(" + std::to_string(static_cast<int>(size)) + ")";
}
std::string quoted(const std::string& plain) {
  std::string out = "\"";
  for (const char c : plain) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}
std::string list(const std::vector<std::string>& items) {
  std::string out = "{{";
  for (std::size_t i = 0; i < items.size(); ++i) out += (i == 0 ? "" : ", ") + items[i];
  return out + "}}";
}
std::string member(const std::string& name, const std::vector<std::string>& rows) {
  std::string out = "    ." + name + " = {{\n";
  for (const std::string& row : rows) out += "        " + row + ",\n";
  return out + "    }},\n";
}

std::string ampacity(const TableFiles& files) {
  const Table table(files, "ampacity.csv", "size,cu_60,cu_75,cu_90,al_60,al_75,al_90");
  table.expectAllSizes();
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    std::vector<std::string> metals;
    for (std::size_t metal = 0; metal < 2; ++metal) {
      std::vector<std::string> columns;
      double before = 0.0;
      for (std::size_t column = 0; column < 3; ++column) {
        const double value = table.positive(row, 1 + 3 * metal + column, metal == 1);
        if (value < before) table.refuse(row, "ampacity falls from one column to a hotter one");
        before = value;
        columns.push_back(text(value));
      }
      metals.push_back(list(columns));
    }
    out.push_back("{" + list(metals) + "}");
  }
  return member("ampacity", out);
}

std::string ambient(const TableFiles& files) {
  const Table table(files, "ambient_correction.csv", "up_to_C,factor_60,factor_75,factor_90");
  table.expectRows(std::tuple_size_v<decltype(Tables::ambient)>);
  table.expectRising([&](const CsvRow& row) { return table.positive(row, 0); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + text(table.positive(row, 0)) + ", " +
                  list({text(table.positive(row, 1, true)), text(table.positive(row, 2, true)),
                        text(table.positive(row, 3))}) +
                  "}");
  }
  return member("ambient", out);
}

// A percentage by a count: rows that follow each other from 1 on, the last without an end.
std::string byCount(const TableFiles& files, const std::string& file, const std::string& name,
                    std::size_t rows) {
  const Table table(files, file, "count_from,count_to,percent");
  table.expectRows(rows);
  std::vector<std::string> out;
  int next = 1;
  for (const CsvRow& row : table.rows()) {
    const bool last = &row == &table.rows().back();
    const int from = table.whole(row, 0);
    const int to = table.whole(row, 1, last);
    if (from != next || (to != 0 && to < from) || (last && to != 0)) {
      table.refuse(row, "counts do not follow the row before");
    }
    next = to + 1;
    out.push_back("{" + std::to_string(from) + ", " + std::to_string(to) + ", " +
                  text(table.positive(row, 2)) + "}");
  }
  return member(name, out);
}

std::string adjustment(const TableFiles& files) {
  return byCount(files, "adjustment.csv", "adjustment", std::tuple_size_v<decltype(Tables::adjustment)>);
}
std::string racewayFill(const TableFiles& files) {
  return byCount(files, "raceway_fill.csv", "racewayFill", std::tuple_size_v<decltype(Tables::racewayFill)>);
}

std::string conductorAreas(const TableFiles& files) {
  const Table table(files, "conductor_areas.csv", "size,thwn_2,xhhw_2");
  table.expectAllSizes();
  for (const std::size_t column : {std::size_t{1}, std::size_t{2}})
    table.expectRising([&](const CsvRow& row) { return table.positive(row, column); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + list({text(table.positive(row, 1)), text(table.positive(row, 2))}) + "}");
  }
  return member("conductorAreas", out);
}

std::string racewayAreas(const TableFiles& files) {
  const Table table(files, "raceway_areas.csv",
                    "type,size_1/2,size_3/4,size_1,size_1-1/4,size_1-1/2,size_2,size_2-1/2,size_3");
  table.expectRows(std::tuple_size_v<decltype(Tables::racewayAreas)>);
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    if (row.cells[0] != ChoiceWords<RacewayType>::words[out.size()])
      table.refuse(row, "type \"" + row.cells[0] + "\" is unknown or out of order");
    std::vector<std::string> areas;
    double before = 0.0;
    for (std::size_t size = 1; size < row.cells.size(); ++size) {
      const double area = table.positive(row, size);
      if (area <= before) table.refuse(row, "area does not rise from one size to the next");
      before = area;
      areas.push_back(text(area));
    }
    out.push_back("{" + list(areas) + "}");
  }
  return member("racewayAreas", out);
}

std::string boxConductors(const TableFiles& files) {
  const Table table(files, "box_conductor_volumes.csv", "size,in3");
  table.expectRows(std::tuple_size_v<decltype(Tables::boxConductors)>);
  table.expectRising([&](const CsvRow& row) { return static_cast<double>(table.size(row, 0)); });
  table.expectRising([&](const CsvRow& row) { return table.positive(row, 1); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows())
    out.push_back("{" + text(table.size(row, 0)) + ", " + text(table.positive(row, 1)) + "}");
  return member("boxConductors", out);
}

std::string boxVolumes(const TableFiles& files) {
  const Table table(files, "box_volumes.csv", "box,in3");
  table.expectRows(std::tuple_size_v<decltype(Tables::boxVolumes)>);
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    if (row.cells[0] != ChoiceWords<BoxKind>::words[out.size() + 1])
      table.refuse(row, "box \"" + row.cells[0] + "\" is unknown or out of order");
    out.push_back(text(table.positive(row, 1)));
  }
  return "    .boxVolumes = " + list(out) + ",\n";
}

std::string ratings(const TableFiles& files) {
  const Table table(files, "standard_ratings.csv", "rating_A,since_edition");
  table.expectRows(std::tuple_size_v<decltype(Tables::ratings)>);
  table.expectRising([&](const CsvRow& row) { return table.whole(row, 0); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    const std::size_t since = table.word(row, 1, {"2017", "2020", "2023", "2026"});
    out.push_back("{" + std::to_string(table.whole(row, 0)) + ", static_cast<Edition>(" +
                  std::to_string(since) + ")}");
  }
  return member("ratings", out);
}

std::string smallConductors(const TableFiles& files) {
  const Table table(files, "small_conductors.csv", "size,metal,device_A");
  table.expectRows(std::tuple_size_v<decltype(Tables::smallConductors)>);
  table.expectRising([&](const CsvRow& row) {
    return 2.0 * static_cast<double>(table.size(row, 0)) +
           static_cast<double>(table.word(row, 1, {"cu", "al"}));
  });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + text(table.size(row, 0)) + ", static_cast<Metal>(" +
                  std::to_string(table.word(row, 1, {"cu", "al"})) + "), " +
                  std::to_string(table.whole(row, 2)) + "}");
  }
  return member("smallConductors", out);
}

std::string grounding(const TableFiles& files) {
  const Table table(files, "grounding_conductors.csv", "device_up_to_A,cu_size,al_size");
  table.expectRows(std::tuple_size_v<decltype(Tables::grounding)>);
  table.expectRising([&](const CsvRow& row) { return table.whole(row, 0); });
  table.expectRising([&](const CsvRow& row) { return static_cast<double>(table.size(row, 1)); });
  table.expectRising([&](const CsvRow& row) { return static_cast<double>(table.size(row, 2)); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + std::to_string(table.whole(row, 0)) + ", " +
                  list({text(table.size(row, 1)), text(table.size(row, 2))}) + "}");
  }
  return member("grounding", out);
}

std::string electrode(const TableFiles& files) {
  const Table table(files, "electrode_conductors.csv", "cu_up_to,al_up_to,cu_size");
  table.expectRows(std::tuple_size_v<decltype(Tables::electrode)>);
  table.expectRising([&](const CsvRow& row) { return static_cast<double>(table.size(row, 2)); });
  std::vector<std::string> out;
  std::array<int, 2> before{-1, -1};
  for (const CsvRow& row : table.rows()) {
    const bool last = &row == &table.rows().back();
    std::vector<std::string> ends;
    for (std::size_t metal = 0; metal < 2; ++metal) {
      if (last != row.cells[metal].empty()) table.refuse(row, "the last row, and no other, has no end");
      if (last) {
        ends.emplace_back("std::nullopt");
        continue;
      }
      const int end = static_cast<int>(table.size(row, metal));
      if (end <= before[metal]) table.refuse(row, "sizes do not rise");
      before[metal] = end;
      ends.push_back(text(table.size(row, metal)));
    }
    out.push_back("{" + list(ends) + ", " + text(table.size(row, 2)) + "}");
  }
  return member("electrode", out);
}

std::string properties(const TableFiles& files) {
  const Table table(files, "conductor_properties.csv", "size,circular_mils,mm2,cu,al");
  table.expectAllSizes();
  table.expectRising([&](const CsvRow& row) { return table.positive(row, 1); });
  table.expectRising([&](const CsvRow& row) { return table.positive(row, 2); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + text(table.positive(row, 1)) + ", " + text(table.positive(row, 2)) + ", " +
                  list({text(table.positive(row, 3)), text(table.positive(row, 4))}) + "}");
  }
  return member("properties", out);
}

std::string impedance(const TableFiles& files) {
  const Table table(files, "conductor_impedance.csv",
                    "size,x_pvc_or_al,x_steel,cu_pvc,cu_al,cu_steel,al_pvc,al_al,al_steel");
  table.expectAllSizes();
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    const std::string open = text(table.positive(row, 1));
    const bool blank = table.size(row, 0) == ConductorSize::awg14;
    std::vector<std::string> metals;
    for (std::size_t metal = 0; metal < 2; ++metal) {
      std::vector<std::string> raceways;
      for (std::size_t raceway = 0; raceway < 3; ++raceway) {
        raceways.push_back(text(table.positive(row, 3 + 3 * metal + raceway, metal == 1 && blank)));
      }
      metals.push_back(list(raceways));
    }
    out.push_back("{" + list({open, open, text(table.positive(row, 2))}) + ", " + list(metals) + "}");
  }
  return member("impedance", out);
}

std::string fullLoad(const TableFiles& files) {
  const Table table(files, "motor_full_load.csv", "horsepower,at_115,at_200,at_208,at_230");
  table.expectRows(std::tuple_size_v<decltype(Tables::fullLoad)>);
  table.expectRising([&](const CsvRow& row) { return table.horsepower(row, 0); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + quoted(row.cells[0]) + ", " + text(table.horsepower(row, 0)) + ", " +
                  list({text(table.positive(row, 1)), text(table.positive(row, 2)),
                        text(table.positive(row, 3)), text(table.positive(row, 4))}) +
                  ", false}");
  }
  return member("fullLoad", out);
}

std::string lockedRotor(const TableFiles& files) {
  const Table table(files, "motor_locked_rotor.csv", "horsepower,at_115,at_208,at_230,basis");
  table.expectRows(std::tuple_size_v<decltype(Tables::lockedRotor)>);
  table.expectRising([&](const CsvRow& row) { return table.horsepower(row, 0); });
  std::vector<std::string> out;
  for (const CsvRow& row : table.rows()) {
    out.push_back("{" + quoted(row.cells[0]) + ", " + text(table.horsepower(row, 0)) + ", " +
                  list({text(table.positive(row, 1)), "0", text(table.positive(row, 2)),
                        text(table.positive(row, 3))}) +
                  ", " + (table.word(row, 4, {"table", "computed"}) == 1 ? "true" : "false") + "}");
  }
  return member("lockedRotor", out);
}

std::string codeLetters(const TableFiles& files) {
  const Table table(files, "motor_code_letters.csv", "letter,least,most");
  table.expectRows(std::tuple_size_v<decltype(Tables::codeLetters)>);
  table.expectRising([&](const CsvRow& row) { return table.number(row, 1); });
  std::vector<std::string> out;
  char before = 0;
  double most = -1.0;
  for (const CsvRow& row : table.rows()) {
    const std::string& letter = row.cells[0];
    if (letter.size() != 1 || letter[0] < 'A' || letter[0] > 'V')
      table.refuse(row, "\"" + letter + "\" is no letter");
    const double least = table.number(row, 1);
    if (letter[0] <= before || least <= most) table.refuse(row, "band " + letter + " is out of order");
    before = letter[0];
    most = table.positive(row, 2, &row == &table.rows().back());
    out.push_back("{'" + letter + "', " + text(least) + ", " + text(most) + "}");
  }
  return member("codeLetters", out);
}

struct Numbers {
  std::vector<std::string> values;
  std::vector<std::string> units;
  std::vector<std::string> rules;
  std::vector<std::size_t> lines;
};

Numbers numbers(const TableFiles& files) {
  const Table table(files, "code_numbers.csv", "key,value,unit,rule");
  Numbers out;
  for (const CsvRow& row : table.rows()) {
    const std::size_t place = out.values.size();
    if (place >= kCodeNumberKeys.size() || row.cells[0] != kCodeNumberKeys[place]) {
      table.refuse(row, "key \"" + row.cells[0] + "\" is unknown or out of order");
    }
    // A conductor size stands in the table as its name and in the program as its place in the list.
    out.values.push_back(row.cells[2] == "AWG" ? std::to_string(static_cast<int>(table.size(row, 1)))
                                               : text(table.positive(row, 1)));
    out.units.push_back(quoted(row.cells[2]));
    out.rules.push_back(row.cells[3]);
    out.lines.push_back(row.line);
  }
  table.expectRows(kCodeNumberKeys.size());
  return out;
}

Numbers demand(const TableFiles& files) {
  const Table table(
      files, "demand.csv",
      "key,unit,rule,2017,certainty_2017,2020,certainty_2020,2023,certainty_2023,2026,certainty_2026");
  Numbers out;
  for (const CsvRow& row : table.rows()) {
    const std::size_t place = out.values.size();
    if (place >= kDemandKeys.size() || row.cells[0] != kDemandKeys[place]) {
      table.refuse(row, "key \"" + row.cells[0] + "\" is unknown or out of order");
    }
    std::vector<std::string> values;
    std::vector<std::string> certainties;
    for (std::size_t edition = 0; edition < 4; ++edition) {
      const std::size_t column = 3 + 2 * edition;
      const bool blank = row.cells[column].empty();
      if (blank != row.cells[column + 1].empty())
        table.refuse(row, "a value and its certainty stand together");
      values.push_back(text(table.positive(row, column, true)));
      certainties.push_back(
          "static_cast<Certainty>(" +
          std::to_string(blank ? 0 : table.word(row, column + 1, {"seen", "one", "doubt", "memory"})) + ")");
    }
    out.values.push_back("{" + list(values) + ", " + list(certainties) + "}");
    out.units.push_back(quoted(row.cells[1]));
    out.rules.push_back(row.cells[2]);
    out.lines.push_back(row.line);
  }
  table.expectRows(kDemandKeys.size());
  return out;
}

std::string unitsAndRules(const std::string& name, const Numbers& of) {
  std::string out = "inline constexpr std::string_view k" + name + "Units[] = {";
  for (std::size_t i = 0; i < of.units.size(); ++i) out += (i == 0 ? "" : ", ") + of.units[i];
  out += "};\ninline constexpr std::string_view k" + name + "Rules[] = {";
  for (std::size_t i = 0; i < of.rules.size(); ++i) out += (i == 0 ? "" : ", ") + quoted(of.rules[i]);
  return out + "};\n\n";
}

void expectRules(const std::vector<std::string>& rules, const std::string& file, const Numbers& used) {
  for (std::size_t i = 0; i < used.rules.size(); ++i) {
    if (std::find(rules.begin(), rules.end(), used.rules[i]) == rules.end())
      throw MalformedTable(file, used.lines[i], "no rule is called \"" + used.rules[i] + "\"");
  }
}

/// In citations.csv: that edition has no such rule.
constexpr std::string_view kNotInEdition = "-";

std::string citations(const TableFiles& files, const Numbers& used, const Numbers& usedByDemand) {
  const Table table(files, "citations.csv", "rule,basis,certainty,2017,2020,2023,2026,about");
  std::vector<std::string> rules;
  std::string out = "inline constexpr CitationRow kCitations[] = {\n";
  for (const CsvRow& row : table.rows()) {
    const std::string& rule = row.cells[0];
    const std::size_t dot = rule.find('.');
    if (dot == std::string::npos || dot == 0 || dot + 1 == rule.size() ||
        rule.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_.") != std::string::npos) {
      table.refuse(row, "\"" + rule + "\" is not of the form topic.rule");
    }
    if (!rules.empty() && rule <= rules.back())
      table.refuse(row, "rule " + rule + " is out of order or twice");
    rules.push_back(rule);
    if (row.cells[7].empty()) table.refuse(row, "rule " + rule + " does not say what it is about");
    const std::size_t basis = table.word(row, 1, {"code", "listed", "practice"});
    const bool anySection =
        std::any_of(row.cells.begin() + 3, row.cells.begin() + 7,
                    [](const std::string& cell) { return !cell.empty() && cell != kNotInEdition; });
    if (basis != 2 && !anySection) table.refuse(row, "rule " + rule + " has no section in any edition");
    out += "    {" + quoted(rule) + ", static_cast<RuleBasis>(" + std::to_string(basis) +
           "), static_cast<RuleCertainty>(" + std::to_string(table.word(row, 2, {"seen", "memory"})) + "), {";
    for (std::size_t edition = 0; edition < 4; ++edition) {
      out += (edition == 0 ? "" : ", ") + quoted(row.cells[3 + edition]);
    }
    out += "}, " + quoted(row.cells[7]) + "},\n";
  }
  expectRules(rules, "code_numbers.csv", used);
  expectRules(rules, "demand.csv", usedByDemand);
  return out + "};\n";
}

}  // namespace

const std::vector<std::string>& tableFileNames() {
  static const std::vector<std::string> names = {"adjustment.csv",
                                                 "ambient_correction.csv",
                                                 "ampacity.csv",
                                                 "box_conductor_volumes.csv",
                                                 "box_volumes.csv",
                                                 "citations.csv",
                                                 "code_numbers.csv",
                                                 "conductor_areas.csv",
                                                 "conductor_impedance.csv",
                                                 "conductor_properties.csv",
                                                 "demand.csv",
                                                 "electrode_conductors.csv",
                                                 "grounding_conductors.csv",
                                                 "motor_code_letters.csv",
                                                 "motor_full_load.csv",
                                                 "motor_locked_rotor.csv",
                                                 "raceway_areas.csv",
                                                 "raceway_fill.csv",
                                                 "small_conductors.csv",
                                                 "standard_ratings.csv"};
  return names;
}

std::string generateHeader(const TableFiles& files) {
  const Numbers small = numbers(files);
  const Numbers loads = demand(files);
  std::string out =
      "#pragma once\n\n// Generated from resources/tables by core/code/generator; edit the tables, not this "
      "file.\n\n"
      "#include \"core/code/tables.h\"\n\nnamespace "
      "stayalight::generated {\n\n";
  out += citations(files, small, loads) + "\ninline constexpr Tables kTables = {\n" + ampacity(files) +
         ambient(files) + adjustment(files) + ratings(files) + smallConductors(files) + grounding(files) +
         electrode(files) + properties(files) + impedance(files) + fullLoad(files) + lockedRotor(files) +
         codeLetters(files) + conductorAreas(files) + racewayAreas(files) + racewayFill(files) +
         boxConductors(files) + boxVolumes(files);
  out += "    .numbers = " + list(small.values) + ",\n" + member("demand", loads.values) +
         "    .citations = kCitations,\n};\n\n";
  out += unitsAndRules("Number", small) + unitsAndRules("Demand", loads);
  out += "\n}  // namespace stayalight::generated\n";
  return out;
}

}  // namespace stayalight::generator
