#include "core/code/generator/csv.h"

#include <sstream>

#include "core/code/generator/tables_generator.h"

namespace stayalight::generator {
namespace {

std::vector<std::string> cellsOf(const std::string& file, std::size_t line, const std::string& text) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
        cells.back() += '"';
        ++i;
      } else if (c == '"') {
        quoted = false;
      } else {
        cells.back() += c;
      }
    } else if (c == '"' && cells.back().empty()) {
      quoted = true;
    } else if (c == ',') {
      cells.emplace_back();
    } else {
      cells.back() += c;
    }
  }
  if (quoted) throw MalformedTable(file, line, "a quote is not closed");
  return cells;
}

}  // namespace

std::vector<CsvRow> readCsv(const std::string& file, const std::string& text, const std::string& columnLine) {
  std::vector<CsvRow> rows;
  std::istringstream in(text);
  std::size_t columns = 0;
  std::size_t number = 0;
  for (std::string line; std::getline(in, line);) {
    ++number;
    if (!line.empty() && line.back() == '\r') line.pop_back();
    if (line.empty() || line.front() == '#') continue;
    if (columns == 0) {
      if (line != columnLine) throw MalformedTable(file, number, "columns must be \"" + columnLine + "\"");
      columns = cellsOf(file, number, line).size();
      continue;
    }
    CsvRow row{number, cellsOf(file, number, line)};
    if (row.cells.size() != columns) {
      throw MalformedTable(
          file, number,
          std::to_string(columns) + " columns expected, " + std::to_string(row.cells.size()) + " found");
    }
    rows.push_back(std::move(row));
  }
  if (columns == 0) throw MalformedTable(file, 0, "no line names the columns");
  if (rows.empty()) throw MalformedTable(file, 0, "no rows");
  return rows;
}

}  // namespace stayalight::generator
