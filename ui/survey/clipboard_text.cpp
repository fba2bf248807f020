#include "ui/survey/clipboard_text.h"

#include <algorithm>

#include "core/directory/csv.h"

namespace stayalight {
namespace {

std::vector<std::vector<std::string>> cellsOf(CsvText text) {
  std::vector<std::vector<std::string>> rows;
  for (CsvRecord& record : text.records) rows.push_back(std::move(record.cells));
  return rows;
}

std::vector<std::vector<std::string>> linesOf(std::string_view text) {
  std::vector<std::vector<std::string>> rows;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    rows.push_back({std::string(text.substr(0, end))});
    const bool both = end + 1 < text.size() && text[end] == '\r' && text[end + 1] == '\n';
    text.remove_prefix(std::min(end + (both ? 2 : 1), text.size()));
  }
  return rows;
}

}  // namespace

std::string tabbedText(const std::vector<std::vector<std::string>>& rows) {
  std::string out;
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) out += '\t';
      const std::string cell = withoutFormula(row[i]);
      out += cell.find_first_of("\t\"\r\n") == std::string::npos ? cell : quotedCell(cell);
    }
    out += '\n';
  }
  return out;
}

std::vector<std::vector<std::string>> pastedCells(std::string_view text) {
  if (text.find('\t') != std::string_view::npos) {
    const Result<CsvText> read = readCsv(text, {}, '\t');
    if (read) return cellsOf(read.value());
    // Quotes that mean something else: tabs alone part the cells.
    std::vector<std::vector<std::string>> rows = linesOf(text);
    for (auto& row : rows) {
      std::string_view line = row[0];
      std::vector<std::string> cells;
      for (;;) {
        const std::size_t tab = line.find('\t');
        cells.emplace_back(line.substr(0, tab));
        if (tab == std::string_view::npos) break;
        line.remove_prefix(tab + 1);
      }
      row = std::move(cells);
    }
    return rows;
  }
  if (!text.empty() && text.front() == '"') {
    if (const Result<CsvText> read = readCsv(text, {}, '\t'); read.ok()) return cellsOf(read.value());
  }
  if (text.find(", ") == std::string_view::npos && text.find(',') != std::string_view::npos) {
    const Result<CsvText> read = readCsv(text, {}, ',');
    const bool even =
        read.ok() &&
        std::all_of(read.value().records.begin(), read.value().records.end(), [&](const CsvRecord& record) {
          return record.cells.size() == read.value().records[0].cells.size();
        });
    if (even) return cellsOf(read.value());
  }
  return linesOf(text);
}

}  // namespace stayalight
