#include "ui/style/painted_widget.h"

#include <QtGui/QPainter>
#include <cmath>

#include "ui/style/application.h"

namespace stayalight {
namespace {

QSize inPixels(QSizeF units) {
  const QSizeF pixels = units * systemScale();
  return {static_cast<int>(std::ceil(pixels.width())), static_cast<int>(std::ceil(pixels.height()))};
}

}  // namespace

QSize PaintedWidget::sizeHint() const { return inPixels(wanted()); }
QSize PaintedWidget::minimumSizeHint() const { return inPixels(least()); }
QPointF PaintedWidget::inUnits(QPointF point) const { return point / systemScale(); }
double PaintedWidget::across() const { return width() / systemScale(); }
double PaintedWidget::down() const { return height() / systemScale(); }

void PaintedWidget::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(systemScale(), systemScale());
  paint(painter);
}

void PaintedWidget::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}
void PaintedWidget::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

}  // namespace stayalight
