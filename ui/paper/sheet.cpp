#include "ui/paper/sheet.h"

#include <QtGui/QFontMetricsF>
#include <QtGui/QPainter>
#include <QtGui/QPainterPath>

#include "ui/style/marks.h"

namespace stayalight {
namespace {

constexpr double kDrawnPixels = 32.0;
const QColor kGrey(0xE9, 0xE9, 0xE9);

QPen inkPen(double width) {
  return QPen(QBrush(Qt::black), width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
}

void paintBracket(QPainter& painter, const QRectF& rect, bool openLeft, double width) {
  QPainterPath path;
  const double open = openLeft ? rect.left() : rect.right();
  const double spine = openLeft ? rect.right() : rect.left();
  path.moveTo(open, rect.top());
  path.lineTo(spine, rect.top());
  path.lineTo(spine, rect.bottom());
  path.lineTo(open, rect.bottom());
  painter.setPen(inkPen(width));
  painter.setBrush(Qt::NoBrush);
  painter.drawPath(path);
}

void paintMark(QPainter& painter, const SheetMark& mark) {
  const QRectF& r = mark.rect;
  switch (mark.kind) {
    case SheetMarkKind::severity:
      paintSeverity(painter, r, mark.severity, Qt::black, Qt::white);
      break;
    case SheetMarkKind::legLine: {
      const double y = r.center().y();
      if (mark.leg == Leg::l1) {
        painter.setPen(inkPen(1.6));
        painter.drawLine(QPointF(r.left(), y), QPointF(r.right(), y));
      } else {
        painter.setPen(inkPen(0.7));
        painter.drawLine(QPointF(r.left(), y - 1.1), QPointF(r.right(), y - 1.1));
        painter.drawLine(QPointF(r.left(), y + 1.1), QPointF(r.right(), y + 1.1));
      }
      break;
    }
    case SheetMarkKind::tick:
      painter.setPen(inkPen(0.7));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(r);
      break;
    case SheetMarkKind::bracketLeft:
      paintBracket(painter, r, false, 1.1);
      break;
    case SheetMarkKind::bracketRight:
      paintBracket(painter, r, true, 1.1);
      break;
    case SheetMarkKind::tie:
      painter.setPen(inkPen(0.8));
      painter.setBrush(Qt::white);
      painter.drawEllipse(r);
      painter.setFont(font(Face::condensed, 7.4, Weight::bold));
      painter.drawText(r, Qt::AlignCenter, QStringLiteral("N"));
      break;
    case SheetMarkKind::tieBroken:
      painter.fillRect(r, Qt::white);
      paintSeverity(painter, r, Severity::danger, Qt::black, Qt::white);
      break;
  }
}

}  // namespace

QRectF SheetText::extent() const {
  const double width = textWidth(text, face, size, weight, italic);
  const double left = align == Align::left    ? at.x()
                      : align == Align::right ? at.x() - width
                                              : at.x() - width / 2;
  return {left, at.y() - size * 0.75, width, size * 0.97};
}

QSizeF pageSize(PaperSize paper) {
  return paper == PaperSize::a4 ? QSizeF(595.0, 842.0) : QSizeF(612.0, 792.0);
}

void paint(QPainter& painter, const Sheet& sheet) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  for (const SheetBox& box : sheet.boxes) {
    painter.setPen(box.stroke > 0 ? inkPen(box.stroke) : QPen(Qt::NoPen));
    painter.setBrush(box.grey ? QBrush(kGrey) : QBrush(Qt::NoBrush));
    painter.drawRect(box.rect);
  }
  for (const SheetRule& rule : sheet.rules) {
    painter.setPen(inkPen(rule.width));
    painter.drawLine(rule.from, rule.to);
  }
  for (const SheetMark& mark : sheet.marks) paintMark(painter, mark);
  painter.setPen(Qt::black);
  for (const SheetText& text : sheet.texts) {
    // A font has a whole number of pixels, a text on paper any size: so it is drawn large and scaled.
    painter.setFont(font(text.face, kDrawnPixels, text.weight, text.italic));
    painter.save();
    painter.translate(text.extent().left(), text.at.y());
    painter.scale(text.size / kDrawnPixels, text.size / kDrawnPixels);
    painter.drawText(QPointF(0, 0), text.text);
    painter.restore();
  }
  painter.restore();
}

}  // namespace stayalight
