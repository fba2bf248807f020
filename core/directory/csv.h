#pragma once

// Comma-separated values by RFC 4180, and texts that a spreadsheet cannot take for formulas.

#include <string>
#include <string_view>
#include <vector>

#include "core/message/result.h"

namespace stayalight {

struct CsvRecord {
  std::int64_t line = 1;  ///< on which it begins
  std::vector<std::string> cells;
};
struct CsvText {
  char separator = ',';            ///< as found: comma, semicolon or tab
  std::vector<CsvRecord> records;  ///< empty lines are none
};

/// Records end with CR LF (RFC 4180, 2). A cell is put in quotes where it holds a separator of any
/// spreadsheet, a quote or a line end, or begins or ends with a blank. A cell that a spreadsheet would take
/// for a formula (it begins with = + - @, a tab, CR or LF; OWASP, "CSV Injection") gets an apostrophe in
/// front; `readCsv` takes that away again, so that every text comes back as it was.
[[nodiscard]] std::string writeCsv(const std::vector<std::vector<std::string>>& records);

/// A number as a cell: the shortest text that reads back as the same number.
[[nodiscard]] std::string numberCell(double number);
/// A cell between quotes, those inside doubled.
[[nodiscard]] std::string quotedCell(std::string_view cell);

/// Any line end, quotes as RFC 4180 has them, a mark of byte order in front. The separator is the one that
/// stands most often in the first line. Refused with the line: a quote that is never closed, a text behind a
/// closing quote, more than `kMostCsvBytes`.
[[nodiscard]] Result<CsvText> readCsv(std::string_view text, const std::string& name);
/// The same with a separator that is known: a tab for what is copied out of a spreadsheet.
[[nodiscard]] Result<CsvText> readCsv(std::string_view text, const std::string& name, char separator);

inline constexpr std::size_t kMostCsvBytes = 8u << 20;

/// A cell that no spreadsheet takes for a formula, and back.
[[nodiscard]] std::string withoutFormula(std::string_view cell);
[[nodiscard]] std::string_view asTyped(std::string_view cell);

}  // namespace stayalight
