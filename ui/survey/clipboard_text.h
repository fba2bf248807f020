#pragma once

// Cells as text that spreadsheets copy and paste. Free of Qt.

#include <string>
#include <string_view>
#include <vector>

namespace stayalight {

/// Lines of tab-separated cells; a cell with a tab, a quote or a line end stands in quotes.
[[nodiscard]] std::string tabbedText(const std::vector<std::vector<std::string>>& rows);

/// Cells of a pasted text: tab-separated where it has a tab; comma-separated where every line has as many
/// commas and no blank follows one (a name such as "Lights, hall" is one cell); else a cell a line.
[[nodiscard]] std::vector<std::vector<std::string>> pastedCells(std::string_view text);

}  // namespace stayalight
