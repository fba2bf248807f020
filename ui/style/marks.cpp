#include "ui/style/marks.h"

#include <QtGui/QPainter>
#include <QtGui/QPainterPath>
#include <cmath>
#include <numbers>

namespace stayalight {
namespace {

QPolygonF octagon(const QRectF& rect) {
  QPolygonF out;
  const double radius = rect.width() / 2.0 / std::cos(std::numbers::pi / 8.0);
  for (int i = 0; i < 8; ++i) {
    const double a = std::numbers::pi / 8.0 + i * std::numbers::pi / 4.0;
    out << rect.center() + QPointF(radius * std::cos(a), radius * std::sin(a));
  }
  return out;
}

// The exclamation stroke and dot of the filled marks, between two shares of the height.
void paintSign(QPainter& painter, const QRectF& rect, double from, double to, double dot,
               const QColor& color) {
  const double x = rect.center().x(), h = rect.height();
  painter.setPen(QPen(color, std::max(1.2, rect.width() * 0.13), Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(x, rect.top() + from * h), QPointF(x, rect.top() + to * h));
  painter.setPen(Qt::NoPen);
  painter.setBrush(color);
  const double r = std::max(0.8, rect.width() * 0.075);
  painter.drawEllipse(QPointF(x, rect.top() + dot * h), r, r);
}

}  // namespace

ColorRole severityColor(Severity severity) {
  switch (severity) {
    case Severity::danger:
      return ColorRole::danger;
    case Severity::mustFix:
      return ColorRole::mustFix;
    case Severity::checkOnSite:
      return ColorRole::check;
    case Severity::advice:
      return ColorRole::advice;
  }
  return ColorRole::advice;
}

void paintSeverity(QPainter& painter, const QRectF& rect, Severity severity, const QColor& color,
                   const QColor& ground) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF r = rect;
  const QPointF c = r.center();
  const QPen line(color, std::max(1.1, r.width() * 0.085), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
  switch (severity) {
    case Severity::danger:
      painter.setPen(Qt::NoPen);
      painter.setBrush(color);
      painter.drawPolygon(octagon(r));
      paintSign(painter, r, 0.24, 0.54, 0.75, ground);
      break;
    case Severity::mustFix: {
      painter.setPen(QPen(color, 1.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      painter.setBrush(color);
      const double top = r.top() + r.height() * 0.08, foot = r.bottom() - r.height() * 0.08;
      painter.drawPolygon(
          QPolygonF({QPointF(c.x(), top), QPointF(r.right() - 0.5, foot), QPointF(r.left() + 0.5, foot)}));
      paintSign(painter, r, 0.40, 0.62, 0.78, ground);
      break;
    }
    case Severity::checkOnSite: {
      painter.setBrush(Qt::NoBrush);
      painter.setPen(line);
      painter.drawEllipse(
          r.adjusted(line.widthF() / 2, line.widthF() / 2, -line.widthF() / 2, -line.widthF() / 2));
      QPainterPath question;
      const double u = r.width() / 16.0;
      question.moveTo(c + QPointF(-2.3, -1.6) * u);
      question.cubicTo(c + QPointF(-2.3, -4.6) * u, c + QPointF(2.4, -4.6) * u, c + QPointF(2.4, -1.6) * u);
      question.cubicTo(c + QPointF(2.4, 0.2) * u, c + QPointF(0, 0.0) * u, c + QPointF(0, 1.9) * u);
      painter.drawPath(question);
      painter.setPen(Qt::NoPen);
      painter.setBrush(color);
      painter.drawEllipse(c + QPointF(0, 4.3) * u, std::max(0.8, 1.0 * u), std::max(0.8, 1.0 * u));
      break;
    }
    case Severity::advice: {
      painter.setBrush(Qt::NoBrush);
      painter.setPen(line);
      const double d = r.width() / 2.0 - line.widthF() / 2.0;
      painter.drawPolygon(
          QPolygonF({c + QPointF(0, -d), c + QPointF(d, 0), c + QPointF(0, d), c + QPointF(-d, 0)}));
      painter.drawLine(c - QPointF(r.width() * 0.18, 0), c + QPointF(r.width() * 0.18, 0));
      break;
    }
  }
  painter.restore();
}

Bead beadOf(Verdict verdict) {
  return verdict == Verdict::within ? Bead::full : verdict == Verdict::over ? Bead::hollow : Bead::half;
}

void paintBead(QPainter& painter, const QRectF& rect, Bead bead, const Palette& palette) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double radius = std::min(rect.width(), rect.height()) / 2.0 - 0.75;
  const QPointF c = rect.center();
  const QColor ink = palette.color(bead == Bead::hollow ? ColorRole::mustFix : ColorRole::ink);
  painter.setPen(QPen(ink, 1.3));
  painter.setBrush(bead == Bead::full ? QBrush(ink) : QBrush(palette.color(ColorRole::sheet)));
  if (bead == Bead::hollow) {
    // The cut string: a short end on either side.
    painter.drawLine(c - QPointF(radius + 3.0, 0), c - QPointF(radius, 0));
    painter.drawLine(c + QPointF(radius, 0), c + QPointF(radius + 3.0, 0));
  }
  painter.drawEllipse(c, radius, radius);
  if (bead == Bead::half) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPie(QRectF(c.x() - radius, c.y() - radius, 2 * radius, 2 * radius), 90 * 16, 180 * 16);
  }
  painter.restore();
}

ColorRole legColor(Leg leg) { return leg == Leg::l1 ? ColorRole::leg1 : ColorRole::leg2; }

void paintLegLine(QPainter& painter, QPointF from, QPointF to, Leg leg, const Palette& palette) {
  const QColor color = palette.color(legColor(leg));
  if (leg == Leg::l1) {
    painter.setPen(QPen(color, 2.2, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(from, to);
    return;
  }
  const QPointF along = to - from;
  const double length = std::max(1e-9, std::hypot(along.x(), along.y()));
  const QPointF across(-along.y() / length * 1.8, along.x() / length * 1.8);
  painter.setPen(QPen(color, 1.2, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(from + across, to + across);
  painter.drawLine(from - across, to - across);
}

void paintLegFill(QPainter& painter, const QRectF& rect, Leg leg, const Palette& palette) {
  const QColor color = palette.color(legColor(leg));
  if (rect.width() <= 0.0 || rect.height() <= 0.0) return;
  if (leg == Leg::l1) {
    painter.fillRect(rect, color);
    return;
  }
  QColor wash = color;
  wash.setAlphaF(0.28F);
  painter.fillRect(rect, wash);
  painter.setPen(QPen(color, 0.9, Qt::SolidLine, Qt::FlatCap));
  for (double y = rect.top() + 1.6; y < rect.bottom() - 0.4; y += 2.6) {
    painter.drawLine(QPointF(rect.left(), y), QPointF(rect.right(), y));
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(color, 1.0, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
  if (rect.width() > 1.0) painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5));
}

void paintHatch(QPainter& painter, const QRectF& rect, const QColor& color, double spacing, double width) {
  painter.setPen(QPen(color, width, Qt::SolidLine, Qt::FlatCap));
  // Lines x + y = k, from edge to edge; k on a grid of its own so that neighbouring cells line up.
  const double step = spacing * std::numbers::sqrt2;
  const double first = std::ceil((rect.left() + rect.top()) / step) * step;
  for (double k = first; k < rect.right() + rect.bottom(); k += step) {
    const double left = std::max(rect.left(), k - rect.bottom());
    const double right = std::min(rect.right(), k - rect.top());
    if (right > left) painter.drawLine(QPointF(left, k - left), QPointF(right, k - right));
  }
}

void paintGradeRule(QPainter& painter, double left, double right, double y, Grade grade,
                    const QColor& color) {
  QPen pen(color, 1.0, Qt::SolidLine, Qt::FlatCap);
  switch (grade) {
    case Grade::typical:
      pen.setDashPattern({1.0, 2.0});
      break;
    case Grade::nameplate:
      pen.setDashPattern({3.0, 2.0});
      break;
    case Grade::traced:
      pen.setDashPattern({7.0, 2.0});
      break;
    case Grade::unknown:
    case Grade::measured:
      return;
  }
  painter.setPen(pen);
  painter.drawLine(QPointF(left, y), QPointF(right, y));
}

}  // namespace stayalight
