#pragma once

#include "ui/board/layout.h"

class QPainter;

namespace stayalight {

/// Paints a board at the painter's origin, in layout units. No clip is used, so SVG shows the same.
void paint(QPainter& painter, const BoardLayout& layout, const Palette& palette);

/// Paints only what belongs to one cell, moved so that the cell's rectangle starts at the origin: the picture
/// under the pointer while it is carried, with an edge and a small stepped shadow.
void paintCarried(QPainter& painter, const BoardLayout& layout, int cell, const Palette& palette);

void paint(QPainter& painter, const BoardMark& mark, const Palette& palette);
void paint(QPainter& painter, const BoardText& text, const Palette& palette);

}  // namespace stayalight
