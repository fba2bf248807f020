#pragma once

// What every widget that paints itself has in common: sizes in layout units, which follow the letters of the
// desktop, and a mark while the keyboard is on it.

#include <QtWidgets/QWidget>

namespace stayalight {

class PaintedWidget : public QWidget {
  Q_OBJECT
 public:
  using QWidget::QWidget;
  [[nodiscard]] QSize sizeHint() const final;
  [[nodiscard]] QSize minimumSizeHint() const final;
  /// A point of the widget in layout units.
  [[nodiscard]] QPointF inUnits(QPointF point) const;

 protected:
  /// Wanted and least size, in layout units.
  [[nodiscard]] virtual QSizeF wanted() const = 0;
  [[nodiscard]] virtual QSizeF least() const { return wanted(); }
  /// Paints into a painter that has layout units.
  virtual void paint(QPainter& painter) = 0;
  /// The widget's own size, in layout units.
  [[nodiscard]] double across() const;
  [[nodiscard]] double down() const;

  void paintEvent(QPaintEvent* event) final;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
};

}  // namespace stayalight
