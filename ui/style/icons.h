#pragma once

// Line icons of our own on a 16 unit grid: 1.5 stroke, round ends, no fill. Always beside a word.

#include <QtGui/QIcon>
#include <QtGui/QPainterPath>
#include <cstdint>

#include "ui/style/palette.h"

class QPainter;

namespace stayalight {

enum class Icon : std::uint8_t {
  water,
  heat,
  coldFood,
  internet,
  light,
  sewage,
  dryBasement,
  panel,
  battery,
  sun,
  clock,
  meter,
  power,
  table,
  list,
  sheet,
  folder,
  find,
  pen,
  undo,
  redo,
  add,
  remove,
  move,
  sendBack,
  pin,
  working,
  close,
  next,
  previous,
  check,
  settings
};
inline constexpr int kIconCount = static_cast<int>(Icon::settings) + 1;

/// On the grid of 16 by 16 units.
[[nodiscard]] const QPainterPath& iconPath(Icon icon);
/// Draws it into `rect` (square) in one colour.
void paintIcon(QPainter& painter, const QRectF& rect, Icon icon, const QColor& color);
/// For buttons and menus; drawn afresh at each size and scale; greyed where disabled.
[[nodiscard]] QIcon buttonIcon(Icon icon, const Palette& palette);
/// The program's lamp.
[[nodiscard]] QIcon programIcon();

}  // namespace stayalight
