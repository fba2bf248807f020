#pragma once

// A sheet of paper as a value: texts, rules, boxes and marks with their places, in points (1/72 inch) from
// the page's top left. Painting, the overlap test and the page count read this one list. Black on white, one
// grey.

#include <QtCore/QRectF>
#include <QtCore/QSizeF>
#include <QtCore/QString>
#include <cstdint>
#include <vector>

#include "core/plan/site.h"
#include "core/review/review.h"
#include "ui/style/fonts.h"

class QPainter;

namespace stayalight {

enum class Align : std::uint8_t { left, centre, right };

struct SheetText {
  QPointF at;  ///< on the baseline; its left end, middle or right end by `align`
  QString text;
  Face face = Face::condensed;
  double size = 8.8;  ///< points
  Weight weight = Weight::regular;
  bool italic = false;
  Align align = Align::left;
  [[nodiscard]] QRectF extent() const;  ///< width as measured, height from ascent to descent
};

struct SheetRule {
  QPointF from, to;
  double width = 0.35;
};

struct SheetBox {
  QRectF rect;
  double stroke = 0.0;  ///< 0: no outline
  bool grey = false;    ///< filled with the one grey
};

/// Marks that carry meaning by shape.
enum class SheetMarkKind : std::uint8_t {
  severity,
  legLine,
  tick,  ///< box to tick by hand
  bracketLeft,
  bracketRight,
  tie,       ///< circuits that share one neutral: an N in a ring
  tieBroken  ///< and only some of them are in this panel: the danger sign
};
struct SheetMark {
  SheetMarkKind kind = SheetMarkKind::tick;
  QRectF rect;
  Severity severity = Severity::danger;
  Leg leg = Leg::l1;
};

struct Sheet {
  QString title;  ///< "Panel schedule, backup subpanel, after the work"
  QSizeF size;    ///< of the page
  std::vector<SheetBox> boxes;
  std::vector<SheetRule> rules;
  std::vector<SheetMark> marks;
  std::vector<SheetText> texts;
};

[[nodiscard]] QSizeF pageSize(PaperSize paper);
/// Draws a sheet; one unit of the painter is one point.
void paint(QPainter& painter, const Sheet& sheet);

}  // namespace stayalight
