#include "ui/boards/board_widget.h"

#include <QtCore/QMimeData>
#include <QtCore/QUrl>
#include <QtGui/QAccessible>
#include <QtGui/QDropEvent>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QApplication>
#include <QtWidgets/QToolTip>

#include "ui/board/paint.h"
#include "ui/boards/boards_view_parts.h"

namespace stayalight {

BoardWidget::BoardWidget(BoardsView& view, PanelId panel, QWidget* parent)
    : QWidget(parent), view_(view), panel_(panel) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAcceptDrops(true);
}

void BoardWidget::setLayoutOf(BoardLayout layout, double scale) {
  layout_ = std::move(layout);
  scale_ = scale;
  if (focus_ && layout_.cellOf(*focus_) < 0) focus_.reset();
  setFixedSize((layout_.size * scale_).toSize());
  setAccessibleName(layout_.name);
  update();
}

int BoardWidget::focusedCell() const { return focus_ ? layout_.cellOf(*focus_) : -1; }

QRect BoardWidget::pixels(const QRectF& rect) const {
  return QRectF(rect.topLeft() * scale_, rect.size() * scale_).toAlignedRect();
}

void BoardWidget::focusCell(int cell) {
  if (cell < 0 || cell >= static_cast<int>(layout_.cells.size())) return;
  focus_ = layout_.cells[static_cast<std::size_t>(cell)].address;
  view_.parts_->relayout();
  view_.parts_->show(*this, cell);
  QAccessibleEvent event(this, QAccessible::Focus);
  event.setChild(cell);
  QAccessible::updateAccessibility(&event);
}

void BoardWidget::pressCell(int cell) {
  // A copy: a new selection lays the board out afresh.
  const BoardCell pressed = layout_.cells[static_cast<std::size_t>(cell)];
  if (view_.parts_->carrying.active()) {
    view_.parts_->aim(pressed.address);
    view_.parts_->finish();
  } else {
    view_.parts_->setSelection(
        pressed.breaker.valid() ? std::set<BreakerId>{pressed.breaker} : std::set<BreakerId>{}, true);
  }
}

void BoardWidget::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.scale(scale_, scale_);
  paint(painter, layout_, view_.parts_->palette);
}

void BoardWidget::hover(const std::optional<CellAddress>& cell) {
  if (cell == hovered_) return;
  hovered_ = cell;
  view_.parts_->relayout();
}

void BoardWidget::mousePressEvent(QMouseEvent* event) {
  BoardsView::Parts& parts = *view_.parts_;
  const int cell = layout_.cellPressed(layoutPoint(event->position()));
  if (event->button() != Qt::LeftButton) return;
  pressedTwice_ = false;
  if (parts.carrying.phase() == Carrying::Phase::choosing) {
    if (cell >= 0) pressCell(cell);
    return;
  }
  if (cell < 0) {
    parts.setSelection({}, true);
    return;
  }
  const BoardCell pressed = layout_.cells[static_cast<std::size_t>(cell)];
  focus_ = pressed.address;
  std::set<BreakerId> selected = parts.selected;
  if (event->modifiers() & (Qt::ControlModifier | Qt::ShiftModifier)) {
    if (pressed.breaker.valid() && !selected.erase(pressed.breaker)) selected.insert(pressed.breaker);
  } else if (!pressed.breaker.valid()) {
    selected.clear();
  } else if (!selected.contains(pressed.breaker)) {
    selected = {pressed.breaker};
  }
  parts.setSelection(selected, true);
  parts.relayout();
  if (!pressed.breaker.valid() || !parts.selected.contains(pressed.breaker)) return;
  // The breaker under the pointer leads; others of this board that are selected come along.
  std::vector<BreakerId> carried{pressed.breaker};
  for (const BreakerId other : parts.selected) {
    if (other != pressed.breaker && layout_.cellOf(other) >= 0) carried.push_back(other);
  }
  const QPoint grip = (event->position() - QPointF(pressed.rect.topLeft() * scale_)).toPoint();
  parts.carrying.press(event->globalPosition().toPoint(), grip, carried);
}

void BoardWidget::mouseMoveEvent(QMouseEvent* event) {
  BoardsView::Parts& parts = *view_.parts_;
  const QPoint global = event->globalPosition().toPoint();
  if (parts.carrying.moved(global, QApplication::startDragDistance())) parts.take();
  if (parts.carrying.phase() == Carrying::Phase::carried) {
    parts.dragTo(global);
    return;
  }
  const int cell = layout_.cellAt(layoutPoint(event->position()));
  hover(cell < 0 ? std::nullopt : std::optional(layout_.cells[static_cast<std::size_t>(cell)].address));
}

void BoardWidget::mouseReleaseEvent(QMouseEvent* event) {
  BoardsView::Parts& parts = *view_.parts_;
  if (event->button() != Qt::LeftButton) return;
  if (parts.carrying.phase() == Carrying::Phase::carried) {
    parts.dragTo(event->globalPosition().toPoint());
    parts.finish();
  } else if (parts.carrying.phase() == Carrying::Phase::pressed) {
    parts.carrying.cancel();
    // A plain click on one of several leaves that one alone.
    const int cell = layout_.cellPressed(layoutPoint(event->position()));
    if (cell >= 0 && event->modifiers() == Qt::NoModifier) {
      pressCell(cell);
      const BreakerId breaker = layout_.cells[static_cast<std::size_t>(cell)].breaker;
      if (pressedTwice_ && breaker.valid())
        Q_EMIT view_.factsRequested({RecordKind::breaker, breaker.number, -1});
    }
  }
}

// The second press of a double click can begin a drag as well as any; what is known of the breaker is shown
// when it is let go where it was pressed.
void BoardWidget::mouseDoubleClickEvent(QMouseEvent* event) {
  mousePressEvent(event);
  pressedTwice_ = event->button() == Qt::LeftButton;
}

std::optional<BreakerId> BoardWidget::takerAt(QPointF point, const QMimeData& carried) const {
  const int cell = layout_.cellPressed(layoutPoint(point));
  if (cell < 0 || !view_.parts_->dropTest) return std::nullopt;
  const BreakerId breaker = layout_.cells[static_cast<std::size_t>(cell)].breaker;
  if (!breaker.valid() || !view_.parts_->dropTest(carried, breaker)) return std::nullopt;
  return breaker;
}

// The drag is taken as soon as it is over a board, so that its moves are told; a place says yes or no to
// them.
void BoardWidget::dragEnterEvent(QDragEnterEvent* event) { dragMoveEvent(event); }

void BoardWidget::dragMoveEvent(QDragMoveEvent* event) {
  const std::optional<BreakerId> taker = takerAt(event->position(), *event->mimeData());
  const int cell = taker ? layout_.cellOf(*taker) : -1;
  hover(cell < 0 ? std::nullopt : std::optional(layout_.cells[static_cast<std::size_t>(cell)].address));
  Q_EMIT view_.heldOver(event->mimeData(), taker);
  if (taker)
    event->acceptProposedAction();
  else if (event->type() == QEvent::DragEnter && view_.parts_->dropTest &&
           event->mimeData()->urls().isEmpty())
    event->accept();
  else
    event->ignore();
}

void BoardWidget::dragLeaveEvent(QDragLeaveEvent*) {
  hover(std::nullopt);
  Q_EMIT view_.heldOver(nullptr, std::nullopt);
}

void BoardWidget::dropEvent(QDropEvent* event) {
  const std::optional<BreakerId> taker = takerAt(event->position(), *event->mimeData());
  hover(std::nullopt);
  Q_EMIT view_.heldOver(nullptr, std::nullopt);
  if (!taker) {
    event->ignore();
    return;
  }
  event->acceptProposedAction();
  Q_EMIT view_.dropped(event->mimeData(), *taker);
}

void BoardWidget::leaveEvent(QEvent*) { hover(std::nullopt); }

void BoardWidget::focusInEvent(QFocusEvent*) {
  if (focusedCell() < 0 && !layout_.cells.empty()) focus_ = layout_.cells.front().address;
  view_.parts_->relayout();
}

void BoardWidget::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason && view_.parts_->carrying.phase() == Carrying::Phase::choosing)
    view_.parts_->cancel();
  view_.parts_->relayout();
}

// Arrow keys: up and down within the column, left and right to the cell on the same height, at last on the
// next board.
bool BoardWidget::step(int key) {
  const int at = focusedCell();
  if (at < 0) return false;
  const BoardCell& from = layout_.cells[static_cast<std::size_t>(at)];
  int best = -1;
  double bestDistance = 0.0;
  const bool upright = key == Qt::Key_Up || key == Qt::Key_Down;
  for (std::size_t i = 0; i < layout_.cells.size(); ++i) {
    const BoardCell& to = layout_.cells[i];
    const QPointF way = to.rect.center() - from.rect.center();
    const bool ahead = key == Qt::Key_Up     ? way.y() < -1.0
                       : key == Qt::Key_Down ? way.y() > 1.0
                       : key == Qt::Key_Left ? way.x() < -1.0
                                             : way.x() > 1.0;
    const bool overlaps = upright ? to.rect.left() < from.rect.right() && to.rect.right() > from.rect.left()
                                  : to.rect.top() < from.rect.bottom() && to.rect.bottom() > from.rect.top();
    if (!ahead || !overlaps) continue;
    const double distance = std::abs(way.x()) + std::abs(way.y());
    if (best < 0 || distance < bestDistance) {
      best = static_cast<int>(i);
      bestDistance = distance;
    }
  }
  if (best >= 0) {
    focusCell(best);
    return true;
  }
  if (upright) return true;
  const auto& boards = view_.parts_->boards;
  const auto here = std::find(boards.begin(), boards.end(), this);
  const bool forward = key == Qt::Key_Right;
  if (here == boards.end() || (forward ? here + 1 == boards.end() : here == boards.begin())) return true;
  BoardWidget* next = forward ? *(here + 1) : *(here - 1);
  int nearest = -1;
  for (std::size_t i = 0; i < next->layout_.cells.size(); ++i) {
    const QRectF& rect = next->layout_.cells[i].rect;
    const bool side = (rect.center().x() < next->layout_.size.width() / 2.0) == forward;
    if (!side) continue;
    if (nearest < 0 || std::abs(rect.center().y() - from.rect.center().y()) <
                           std::abs(next->layout_.cells[static_cast<std::size_t>(nearest)].rect.center().y() -
                                    from.rect.center().y())) {
      nearest = static_cast<int>(i);
    }
  }
  next->focus_.reset();
  if (nearest >= 0) next->focus_ = next->layout_.cells[static_cast<std::size_t>(nearest)].address;
  next->setFocus(Qt::OtherFocusReason);
  next->focusCell(nearest);
  return true;
}

void BoardWidget::keyPressEvent(QKeyEvent* event) {
  BoardsView::Parts& parts = *view_.parts_;
  const int key = event->key();
  const bool arrow = key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_Left || key == Qt::Key_Right;
  if (key == Qt::Key_Escape && (parts.carrying.phase() != Carrying::Phase::idle || !parts.selected.empty())) {
    parts.carrying.phase() != Carrying::Phase::idle ? parts.putBack() : parts.setSelection({}, true);
    return;
  }
  if (parts.carrying.phase() == Carrying::Phase::choosing) {
    if (arrow || key == Qt::Key_M) return parts.stepTarget(key);
    if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space) return parts.finish();
  }
  if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) {
    if (!(key == Qt::Key_Space && event->modifiers() == Qt::ControlModifier))
      return QWidget::keyPressEvent(event);
  }
  const int at = focusedCell();
  const BreakerId breaker = at < 0 ? BreakerId{} : layout_.cells[static_cast<std::size_t>(at)].breaker;
  if (arrow) {
    if (step(key)) return;
  } else if (key == Qt::Key_Home || key == Qt::Key_End) {
    return focusCell(key == Qt::Key_Home ? 0 : static_cast<int>(layout_.cells.size()) - 1);
  } else if (key == Qt::Key_Space && at >= 0) {
    if (event->modifiers() == Qt::ControlModifier) {
      std::set<BreakerId> selected = parts.selected;
      if (breaker.valid() && !selected.erase(breaker)) selected.insert(breaker);
      return parts.setSelection(selected, true);
    }
    return pressCell(at);
  } else if ((key == Qt::Key_Return || key == Qt::Key_Enter) && breaker.valid()) {
    pressCell(at);
    Q_EMIT view_.factsRequested({RecordKind::breaker, breaker.number, -1});
    return;
  } else if (key == Qt::Key_M && at >= 0) {
    return parts.chooseByKey(*this);
  } else if (key == Qt::Key_B && at >= 0) {
    if (breaker.valid() && !parts.selected.contains(breaker)) parts.setSelection({breaker}, true);
    return parts.sendSelectionBack();
  } else if (key == Qt::Key_W && breaker.valid()) {
    Q_EMIT view_.workingRequested({RecordKind::breaker, breaker.number, -1});
    return;
  } else if (key == Qt::Key_Delete && breaker.valid()) {
    if (!parts.selected.contains(breaker)) parts.setSelection({breaker}, true);
    Q_EMIT view_.removeRequested(parts.refs());
    return;
  }
  QWidget::keyPressEvent(event);
}

void BoardWidget::contextMenuEvent(QContextMenuEvent* event) {
  const bool byKey = event->reason() == QContextMenuEvent::Keyboard;
  const int cell = byKey ? focusedCell() : layout_.cellPressed(layoutPoint(event->pos()));
  if (cell < 0) return;
  const BoardCell shown = layout_.cells[static_cast<std::size_t>(cell)];
  if (!shown.breaker.valid()) return;
  if (!view_.parts_->selected.contains(shown.breaker)) view_.parts_->setSelection({shown.breaker}, true);
  const QPoint at = byKey ? mapToGlobal(pixels(shown.rect).center()) : event->globalPos();
  Q_EMIT view_.contextMenuRequested({RecordKind::breaker, shown.breaker.number, -1}, at);
}

bool BoardWidget::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    auto* help = static_cast<QHelpEvent*>(event);
    const int cell = layout_.cellAt(layoutPoint(help->pos()));
    if (cell < 0 || layout_.cells[static_cast<std::size_t>(cell)].tooltip.isEmpty()) {
      QToolTip::hideText();
      event->ignore();
    } else {
      const BoardCell shown = layout_.cells[static_cast<std::size_t>(cell)];
      QToolTip::showText(help->globalPos(), shown.tooltip, this, pixels(shown.rect));
    }
    return true;
  }
  // Escape and M belong to the board while something is carried, whatever shortcuts the window has.
  if (event->type() == QEvent::ShortcutOverride && view_.parts_->carrying.phase() != Carrying::Phase::idle) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

}  // namespace stayalight
