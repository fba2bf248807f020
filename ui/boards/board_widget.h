#pragma once

// One board on the screen: paints its layout and hands what people do with it to the view that holds all
// boards.

#include <QtCore/QMimeData>
#include <QtWidgets/QWidget>

#include "ui/board/layout.h"

namespace stayalight {

class BoardsView;

class BoardWidget : public QWidget {
  Q_OBJECT
 public:
  BoardWidget(BoardsView& view, PanelId panel, QWidget* parent);

  [[nodiscard]] PanelId panel() const { return panel_; }
  [[nodiscard]] const BoardLayout& layout() const { return layout_; }
  [[nodiscard]] int focusedCell() const;
  [[nodiscard]] std::optional<CellAddress> focusAddress() const { return focus_; }
  [[nodiscard]] std::optional<CellAddress> hovered() const { return hovered_; }
  void setLayoutOf(BoardLayout layout, double scale);
  void focusCell(int cell);
  [[nodiscard]] QRect pixels(const QRectF& rect) const;
  [[nodiscard]] QPointF layoutPoint(QPointF widgetPoint) const { return widgetPoint / scale_; }
  [[nodiscard]] double scale() const { return scale_; }
  /// What Space and a screen reader's press do.
  void pressCell(int cell);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dragMoveEvent(QDragMoveEvent* event) override;
  void dragLeaveEvent(QDragLeaveEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  bool event(QEvent* event) override;

 private:
  void hover(const std::optional<CellAddress>& cell);
  /// The breaker under a point that takes what is dragged from outside.
  [[nodiscard]] std::optional<BreakerId> takerAt(QPointF point, const QMimeData& carried) const;
  bool step(int key);

  BoardsView& view_;
  PanelId panel_;
  BoardLayout layout_;
  double scale_ = 1.0;
  bool pressedTwice_ = false;
  std::optional<CellAddress> focus_, hovered_;
};

}  // namespace stayalight
