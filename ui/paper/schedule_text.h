#pragma once

// The wide field of a schedule's line: what the circuit is called and what it serves, broken to the width.

#include <vector>

#include "ui/paper/rows.h"

namespace stayalight {

/// Where a purpose begins: below the name, or behind it where the page is short of room.
enum class PurposePlace : std::uint8_t { below, behind };

/// Texts with their places from the left end of the field and the top of the first line's capitals.
struct FieldText {
  std::vector<SheetText> texts;
  double height = 0.0;  ///< down to the descent of the last line
};
/// Nothing is cut but a name or purpose beyond any use on a page: more than two lines of name, four of
/// purpose.
[[nodiscard]] FieldText fieldText(const ScheduleLine& line, double width, PurposePlace place);
/// Lines one below the other about a middle, for the narrow fields: what a circuit was, its wire.
[[nodiscard]] FieldText stackedText(const std::vector<SheetText>& paragraphs, double width);

}  // namespace stayalight
