#pragma once

// Turns the CSV files of resources/tables into one C++ header of constexpr arrays. Runs at build time.

#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace stayalight::generator {

/// A row that can't be a row of its table. what() is "file:line: reason", line 0 for the file as a whole.
class MalformedTable : public std::runtime_error {
 public:
  MalformedTable(const std::string& file, std::size_t line, const std::string& reason)
      : std::runtime_error(file + ":" + std::to_string(line) + ": " + reason) {}
};

/// Text of each file by its name, e.g. "ampacity.csv".
using TableFiles = std::map<std::string, std::string>;

/// Names of all files that are needed.
[[nodiscard]] const std::vector<std::string>& tableFileNames();

/// The header. Throws MalformedTable for a missing file, another header line, a wrong number of columns, a
/// cell that is no number, size or word of its kind, a row out of order or twice, or too few or too many
/// rows.
[[nodiscard]] std::string generateHeader(const TableFiles& files);

}  // namespace stayalight::generator
