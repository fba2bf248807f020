#pragma once

// Marks that carry meaning by shape first and colour second: findings, beads of services and limits, legs.

#include <QtCore/QRectF>
#include <QtGui/QColor>
#include <cstdint>

#include "core/review/review.h"
#include "ui/style/palette.h"

class QPainter;

namespace stayalight {

[[nodiscard]] ColorRole severityColor(Severity severity);
/// Filled octagon danger, filled triangle must fix, open ring check on site, open diamond advice. `ground`
/// shows in the sign of the filled ones.
void paintSeverity(QPainter& painter, const QRectF& rect, Severity severity, const QColor& color,
                   const QColor& ground);
inline void paintSeverity(QPainter& painter, const QRectF& rect, Severity severity, const Palette& palette) {
  paintSeverity(painter, rect, severity, palette.color(severityColor(severity)),
                palette.color(ColorRole::sheet));
}

/// Full kept or within, half not known, hollow on a cut string broken or over.
enum class Bead : std::uint8_t { full, half, hollow };
[[nodiscard]] Bead beadOf(Verdict verdict);
void paintBead(QPainter& painter, const QRectF& rect, Bead bead, const Palette& palette);

[[nodiscard]] ColorRole legColor(Leg leg);
/// L1 a solid line, L2 a double line.
void paintLegLine(QPainter& painter, QPointF from, QPointF to, Leg leg, const Palette& palette);
/// L1 solid, L2 ruled.
void paintLegFill(QPainter& painter, const QRectF& rect, Leg leg, const Palette& palette);
/// Lines at 45° within `rect`, without a clip (SVG knows none).
void paintHatch(QPainter& painter, const QRectF& rect, const QColor& color, double spacing = 6.0,
                double width = 0.7);

/// Rule under a figure, by how well it is known: dots typical, short dashes nameplate, long dashes traced,
/// none measured.
void paintGradeRule(QPainter& painter, double left, double right, double y, Grade grade, const QColor& color);

}  // namespace stayalight
