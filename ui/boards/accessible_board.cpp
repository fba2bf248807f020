#include "ui/boards/accessible_board.h"

#include <QtCore/QPointer>
#include <QtGui/QAccessible>
#include <QtWidgets/QAccessibleWidget>
#include <map>

#include "ui/boards/board_widget.h"

namespace stayalight {
namespace {

class CellInterface : public QAccessibleInterface,
                      public QAccessibleTableCellInterface,
                      public QAccessibleActionInterface {
 public:
  CellInterface(BoardWidget* board, const CellAddress& address) : board_(board), address_(address) {}

  bool isValid() const override { return board_ && index() >= 0; }
  QObject* object() const override { return nullptr; }
  QWindow* window() const override { return board_ ? board_->window()->windowHandle() : nullptr; }
  QAccessibleInterface* parent() const override { return QAccessible::queryAccessibleInterface(board_); }
  QAccessibleInterface* child(int) const override { return nullptr; }
  int childCount() const override { return 0; }
  int indexOfChild(const QAccessibleInterface*) const override { return -1; }
  QAccessibleInterface* childAt(int, int) const override { return nullptr; }
  QAccessible::Role role() const override { return QAccessible::Cell; }
  QString text(QAccessible::Text kind) const override {
    if (const BoardCell* shown = cell(); shown != nullptr && kind == QAccessible::Name)
      return shown->accessibleName;
    return {};
  }
  void setText(QAccessible::Text, const QString&) override {}
  QRect rect() const override {
    const BoardCell* shown = cell();
    if (shown == nullptr) return {};
    const QRect local = board_->pixels(shown->rect);
    return QRect(board_->mapToGlobal(local.topLeft()), local.size());
  }
  QAccessible::State state() const override {
    QAccessible::State out;
    const int at = index();
    out.focusable = out.selectable = true;
    out.invalid = at < 0;
    if (at < 0) return out;
    out.focused = board_->hasFocus() && board_->focusedCell() == at;
    for (const BoardMark& mark : board_->layout().marks) {
      if (mark.role == MarkRole::selection && mark.cell == at && mark.width > 1.5) out.selected = true;
    }
    return out;
  }
  void* interface_cast(QAccessible::InterfaceType type) override {
    if (type == QAccessible::TableCellInterface) return static_cast<QAccessibleTableCellInterface*>(this);
    if (type == QAccessible::ActionInterface) return static_cast<QAccessibleActionInterface*>(this);
    return nullptr;
  }

  // -- cell
  bool isSelected() const override { return state().selected; }
  QList<QAccessibleInterface*> columnHeaderCells() const override { return {}; }
  QList<QAccessibleInterface*> rowHeaderCells() const override { return {}; }
  int columnIndex() const override { return cell() ? cell()->column : -1; }
  int rowIndex() const override { return cell() ? cell()->row : -1; }
  int columnExtent() const override { return cell() ? cell()->columnSpan : 1; }
  int rowExtent() const override { return cell() ? cell()->rowSpan : 1; }
  QAccessibleInterface* table() const override { return parent(); }

  // -- action
  QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
  void doAction(const QString& action) override {
    if (index() < 0) return;
    if (action == setFocusAction()) board_->setFocus(Qt::OtherFocusReason);
    board_->focusCell(index());
    if (action == pressAction()) board_->pressCell(index());
  }
  QStringList keyBindingsForAction(const QString&) const override { return {}; }

 private:
  int index() const { return board_ ? board_->layout().cellOf(address_) : -1; }
  const BoardCell* cell() const {
    const int at = index();
    return at < 0 ? nullptr : &board_->layout().cells[static_cast<std::size_t>(at)];
  }
  QPointer<BoardWidget> board_;
  CellAddress address_;
};

class BoardInterface : public QAccessibleWidget, public QAccessibleTableInterface {
 public:
  explicit BoardInterface(BoardWidget* board) : QAccessibleWidget(board, QAccessible::Table) {}
  ~BoardInterface() override {
    for (const auto& [address, id] : cells_) QAccessible::deleteAccessibleInterface(id);
  }

  void* interface_cast(QAccessible::InterfaceType type) override {
    if (type == QAccessible::TableInterface) return static_cast<QAccessibleTableInterface*>(this);
    return QAccessibleWidget::interface_cast(type);
  }
  QString text(QAccessible::Text kind) const override {
    return kind == QAccessible::Name ? board()->layout().name : QAccessibleWidget::text(kind);
  }
  int childCount() const override { return static_cast<int>(board()->layout().cells.size()); }
  QAccessibleInterface* child(int index) const override {
    if (index < 0 || index >= childCount()) return nullptr;
    const CellAddress address = board()->layout().cells[static_cast<std::size_t>(index)].address;
    auto& id = cells_[address];
    if (id == 0) id = QAccessible::registerAccessibleInterface(new CellInterface(board(), address));
    return QAccessible::accessibleInterface(id);
  }
  int indexOfChild(const QAccessibleInterface* interface) const override {
    for (int i = 0; i < childCount(); ++i) {
      if (child(i) == interface) return i;
    }
    return -1;
  }
  QAccessibleInterface* childAt(int x, int y) const override {
    const QPoint local = board()->mapFromGlobal(QPoint(x, y));
    return child(board()->layout().cellAt(board()->layoutPoint(local)));
  }
  QAccessibleInterface* focusChild() const override {
    return board()->hasFocus() ? child(board()->focusedCell()) : nullptr;
  }

  // -- table
  QAccessibleInterface* caption() const override { return nullptr; }
  QAccessibleInterface* summary() const override { return nullptr; }
  QAccessibleInterface* cellAt(int row, int column) const override {
    const auto& cells = board()->layout().cells;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const BoardCell& cell = cells[i];
      if (row >= cell.row && row < cell.row + cell.rowSpan && column >= cell.column &&
          column < cell.column + cell.columnSpan) {
        return child(static_cast<int>(i));
      }
    }
    return nullptr;
  }
  int selectedCellCount() const override { return static_cast<int>(selectedCells().size()); }
  QList<QAccessibleInterface*> selectedCells() const override {
    QList<QAccessibleInterface*> out;
    for (int i = 0; i < childCount(); ++i) {
      if (child(i)->state().selected) out.push_back(child(i));
    }
    return out;
  }
  QString columnDescription(int) const override { return {}; }
  QString rowDescription(int) const override { return {}; }
  int columnCount() const override { return board()->layout().columns; }
  int rowCount() const override { return board()->layout().rows; }
  int selectedColumnCount() const override { return 0; }
  int selectedRowCount() const override { return 0; }
  QList<int> selectedColumns() const override { return {}; }
  QList<int> selectedRows() const override { return {}; }
  bool isColumnSelected(int) const override { return false; }
  bool isRowSelected(int) const override { return false; }
  bool selectRow(int) override { return false; }
  bool selectColumn(int) override { return false; }
  bool unselectRow(int) override { return false; }
  bool unselectColumn(int) override { return false; }
  void modelChange(QAccessibleTableModelChangeEvent*) override {}

 private:
  BoardWidget* board() const { return static_cast<BoardWidget*>(widget()); }
  mutable std::map<CellAddress, QAccessible::Id> cells_;
};

QAccessibleInterface* boardFactory(const QString&, QObject* object) {
  auto* board = qobject_cast<BoardWidget*>(object);
  return board != nullptr ? new BoardInterface(board) : nullptr;
}

}  // namespace

void installBoardAccessibility() {
  static const bool installed = [] {
    QAccessible::installFactory(boardFactory);
    return true;
  }();
  (void)installed;
}

}  // namespace stayalight
