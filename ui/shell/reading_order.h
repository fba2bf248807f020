#pragma once

// The order of Tab: what one reads first comes first, whenever it was made.

#include <vector>

class QWidget;

namespace stayalight {

/// The controls within `area` that Tab stops at and that are shown, in the order in which one reads them:
/// from the top, within a row from the left, a column that stands beside another as a whole.
[[nodiscard]] std::vector<QWidget*> controlsInReadingOrder(const QWidget& area);
/// Gives the keyboard to the control after or before the one that has it, round at the ends; false where none
/// has it.
bool focusNeighbour(QWidget& window, bool next);

}  // namespace stayalight
