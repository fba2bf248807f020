#pragma once

// Rows of one table file: '#' lines and empty lines are skipped, the first other line names the columns.

#include <string>
#include <vector>

namespace stayalight::generator {

struct CsvRow {
  std::size_t line = 0;  ///< from 1
  std::vector<std::string> cells;
};

/// Throws MalformedTable when the column line differs, a row has another number of cells, or a quote stays
/// open.
[[nodiscard]] std::vector<CsvRow> readCsv(const std::string& file, const std::string& text,
                                          const std::string& columnLine);

}  // namespace stayalight::generator
