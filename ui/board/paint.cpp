#include "ui/board/paint.h"

#include <QtGui/QPainter>

#include "ui/style/marks.h"

namespace stayalight {

void paint(QPainter& painter, const BoardMark& mark, const Palette& palette) {
  if (mark.role == MarkRole::cellRule && palette.theme() != Theme::contrast) return;
  painter.setOpacity(mark.opacity);
  QPen pen(Qt::NoPen);
  if (mark.stroke) {
    pen = QPen(palette.color(*mark.stroke), mark.width, Qt::SolidLine,
               mark.points.empty() ? Qt::FlatCap : Qt::SquareCap, Qt::RoundJoin);
    if (!mark.dashes.empty()) {
      QList<qreal> dashes;
      for (const double dash : mark.dashes) dashes.push_back(dash / mark.width);
      pen.setDashPattern(dashes);
      pen.setCapStyle(Qt::FlatCap);
    }
  }
  painter.setPen(pen);
  painter.setBrush(mark.fill ? QBrush(palette.color(*mark.fill)) : QBrush(Qt::NoBrush));
  switch (mark.shape) {
    case MarkShape::rectangle:
      if (mark.radius > 0.0) {
        painter.drawRoundedRect(mark.rect, mark.radius, mark.radius);
      } else if (mark.fill && !mark.stroke) {
        painter.fillRect(mark.rect, palette.color(*mark.fill));
      } else {
        painter.drawRect(mark.rect);
      }
      break;
    case MarkShape::ellipse:
      painter.drawEllipse(mark.rect);
      break;
    case MarkShape::line:
      painter.setBrush(Qt::NoBrush);
      painter.drawPolyline(mark.points.data(), static_cast<int>(mark.points.size()));
      break;
    case MarkShape::legLine:
      paintLegLine(painter, mark.points.front(), mark.points.back(), mark.leg, palette);
      break;
    case MarkShape::hatch:
      paintHatch(painter, mark.rect, palette.color(*mark.stroke), 6.0, mark.width);
      break;
    case MarkShape::severity:
      paintSeverity(painter, mark.rect, mark.severity, palette.color(*mark.fill),
                    palette.color(*mark.stroke));
      break;
    case MarkShape::gradeRule:
      paintGradeRule(painter, mark.rect.left(), mark.rect.right(), mark.rect.top(), mark.grade,
                     palette.color(*mark.stroke));
      break;
    case MarkShape::screw: {
      painter.drawEllipse(mark.rect);
      const double arm = mark.rect.width() * 0.33;
      painter.drawLine(mark.rect.center() + QPointF(-arm, arm), mark.rect.center() + QPointF(arm, -arm));
      break;
    }
  }
  painter.setOpacity(1.0);
}

void paint(QPainter& painter, const BoardText& text, const Palette& palette) {
  QFont face = font(text.face, text.pixels, text.weight, text.italic);
  painter.setFont(face);
  painter.setPen(palette.color(text.color));
  painter.drawText(QPointF(text.rect.left(), text.baseline), text.text);
}

void paint(QPainter& painter, const BoardLayout& layout, const Palette& palette) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (const BoardMark& mark : layout.marks) paint(painter, mark, palette);
  for (const BoardText& text : layout.texts) paint(painter, text, palette);
  painter.restore();
}

void paintCarried(QPainter& painter, const BoardLayout& layout, int cell, const Palette& palette) {
  if (cell < 0 || cell >= static_cast<int>(layout.cells.size())) return;
  const QRectF rect = layout.cells[static_cast<std::size_t>(cell)].rect;
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.translate(-rect.topLeft());
  // A shadow in two flat steps.
  QColor shade(Qt::black);
  for (const double step : {3.0, 1.5}) {
    shade.setAlphaF(0.16F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(shade);
    painter.drawRoundedRect(rect.translated(step, step), 3.0, 3.0);
  }
  painter.setPen(Qt::NoPen);
  painter.setBrush(palette.color(ColorRole::cell));
  painter.drawRoundedRect(rect, 3.0, 3.0);
  for (const BoardMark& mark : layout.marks) {
    const bool frame =
        mark.role == MarkRole::selection || mark.role == MarkRole::focusRing || mark.role == MarkRole::hover;
    if (mark.cell == cell && !frame) paint(painter, mark, palette);
  }
  for (const BoardText& text : layout.texts) {
    if (text.cell == cell && text.role != TextRole::spaceNumber) paint(painter, text, palette);
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(palette.color(ColorRole::ink), 1.5));
  painter.drawRoundedRect(rect.adjusted(0.25, 0.25, -0.25, -0.25), 3.0, 3.0);
  painter.restore();
}

}  // namespace stayalight
