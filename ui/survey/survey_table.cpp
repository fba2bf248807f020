#include "ui/survey/survey_table.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMenu>
#include <QtWidgets/QScrollBar>
#include <algorithm>

#include "ui/style/application.h"
#include "ui/survey/survey_delegate.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTableName{"survey.table"};

}  // namespace

SurveyTable::SurveyTable(SurveyModel* model, QWidget* parent)
    : QTableView(parent), survey_(model), delegate_(new SurveyDelegate(this)) {
  setObjectName(QStringLiteral("surveyTable"));
  setModel(model);
  setItemDelegate(delegate_);
  setHorizontalHeader(makeSurveyHead(this));
  setVerticalHeader(makeSurveyGutter(this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setCornerButtonEnabled(false);
  setWordWrap(false);
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setSelectionBehavior(QAbstractItemView::SelectItems);
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setTabKeyNavigation(true);
  reason_ = new QLabel(viewport());
  reason_->setObjectName(QStringLiteral("cellReason"));
  reason_->setTextFormat(Qt::PlainText);
  reason_->setFont(screenFont(Face::condensed, kSurveyText, Weight::medium));
  reason_->setMargin(4);
  reason_->setFrameShape(QFrame::Box);
  reason_->hide();
  connect(model, &QAbstractItemModel::dataChanged, this, [this] { showReason(); });
  for (int column = 0; column < kGridColumns; ++column)
    setColumnWidth(column, scaled(columnRow(static_cast<GridColumn>(column)).width));
  setColumns(set_);
}

void SurveyTable::setColors(const Palette& palette) {
  colors_ = palette;
  QPalette colors = widgetPalette(palette);
  colors.setColor(QPalette::Base, palette.color(ColorRole::sheet));
  setPalette(colors);
  viewport()->setPalette(colors);
  QPalette note = colors;
  note.setColor(QPalette::Window, palette.color(ColorRole::sheet));
  note.setColor(QPalette::WindowText, palette.color(ColorRole::mustFix));
  reason_->setPalette(note);
  reason_->setAutoFillBackground(true);
  setAccessibleName(words(*survey_->style().language, kTableName));
  horizontalHeader()->viewport()->update();
  verticalHeader()->viewport()->update();
  viewport()->update();
}

void SurveyTable::setColumns(ColumnSet set) {
  set_ = set;
  for (int column = 0; column < kGridColumns; ++column)
    setColumnHidden(column, !stayalight::stands(static_cast<GridColumn>(column), set));
  // The keyboard stays in a column that is shown.
  if (currentIndex().isValid() && isColumnHidden(currentIndex().column()))
    moveTo(currentIndex().row(), GridColumn::name);
  fitLastColumn();
}

void SurveyTable::fitLastColumn() {
  constexpr auto kLast = static_cast<int>(GridColumn::finding);
  constexpr auto kWords = static_cast<int>(GridColumn::serves);
  constexpr int kLeastWords = 100, kLeastFinding = 130;
  int used = 0;
  for (int column = 0; column < kLast; ++column) {
    if (!isColumnHidden(column) && column != kWords) used += columnWidth(column);
  }
  const int wanted = scaled(columnRow(GridColumn::finding).width);
  // Where the room is short the words of the directory give way first, then those of the findings.
  if (!isColumnHidden(kWords)) {
    const int most = scaled(columnRow(GridColumn::serves).width);
    const int words = set_ == ColumnSet::all
                          ? most
                          : std::clamp(viewport()->width() - used - wanted, scaled(kLeastWords), most);
    setColumnWidth(kWords, words);
    used += words;
  }
  setColumnWidth(kLast, std::max(std::min(wanted, scaled(kLeastFinding)), viewport()->width() - used));
}

void SurveyTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  fitLastColumn();
  showReason();
}

void SurveyTable::scrollContentsBy(int dx, int dy) {
  QTableView::scrollContentsBy(dx, dy);
  showReason();
}

QLineEdit* SurveyTable::typing() const {
  return state() == EditingState && open(delegate_->editor_)
             ? qobject_cast<QLineEdit*>(delegate_->editor_.data())
             : nullptr;
}

void SurveyTable::moveTo(int row, GridColumn column) {
  if (row < 0 || row >= survey_->rows()) return;
  selectionModel()->setCurrentIndex(survey_->index(row, static_cast<int>(column)),
                                    QItemSelectionModel::ClearAndSelect);
}

void SurveyTable::finishTyping() {
  if (QLineEdit* line = typing()) {
    commitData(line);
    closeEditor(line, QAbstractItemDelegate::NoHint);
  }
}

GridColumn SurveyTable::currentColumn() const {
  return currentIndex().isValid() ? static_cast<GridColumn>(currentIndex().column()) : GridColumn::name;
}

QModelIndexList SurveyTable::selectedCells() const {
  QModelIndexList cells = selectionModel()->selectedIndexes();
  cells.erase(std::remove_if(cells.begin(), cells.end(),
                             [this](const QModelIndex& index) { return isColumnHidden(index.column()); }),
              cells.end());
  if (cells.isEmpty() && currentIndex().isValid()) cells << currentIndex();
  std::sort(cells.begin(), cells.end(), [](const QModelIndex& a, const QModelIndex& b) {
    return a.row() != b.row() ? a.row() < b.row() : a.column() < b.column();
  });
  return cells;
}

std::vector<int> SurveyTable::selectedRows() const {
  std::vector<int> rows;
  for (const QModelIndex& index : selectedCells()) {
    if (rows.empty() || rows.back() != index.row()) rows.push_back(index.row());
  }
  return rows;
}

void SurveyTable::step(int rows, int columns) {
  const QModelIndex now = currentIndex();
  if (!now.isValid()) return;
  int row = std::clamp(now.row() + rows, 0, std::max(0, survey_->rows() - 1));
  int column = now.column();
  for (int left = columns; left != 0;) {
    const int sign = left > 0 ? 1 : -1;
    int next = column + sign;
    while (next >= 0 && next < kGridColumns && isColumnHidden(next)) next += sign;
    if (next < 0 || next >= kGridColumns) break;
    column = next;
    left -= sign;
  }
  moveTo(row, static_cast<GridColumn>(column));
}

void SurveyTable::go(int key, bool back) {
  const QModelIndex now = currentIndex();
  if (!now.isValid()) return;
  const int sign = back ? -1 : 1;
  switch (key) {
    case Qt::Key_Tab: {
      const int start = lineStart_ >= 0 ? lineStart_ : now.column();
      // At the end of a line Tab goes on in the next one.
      const QModelIndex before = now;
      step(0, sign);
      if (currentIndex() == before && now.row() + sign >= 0 && now.row() + sign < survey_->rows())
        moveTo(now.row() + sign, static_cast<GridColumn>(back ? now.column() : start));
      lineStart_ = start;
      return;
    }
    case Qt::Key_Return: {
      const int start = lineStart_;
      step(sign, 0);
      if (start >= 0 && !isColumnHidden(start)) moveTo(currentIndex().row(), static_cast<GridColumn>(start));
      lineStart_ = -1;
      return;
    }
    case Qt::Key_Up:
      step(-1, 0);
      break;
    case Qt::Key_Down:
      step(1, 0);
      break;
    case Qt::Key_Left:
      step(0, -1);
      break;
    case Qt::Key_Right:
      step(0, 1);
      break;
    default:
      return;
  }
  lineStart_ = -1;
}

void SurveyTable::keyPressEvent(QKeyEvent* event) {
  // What the line that is typed into left over: no key of the table.
  if (typing() != nullptr) {
    event->ignore();
    return;
  }
  forgetGoneEditor();
  const bool shift = event->modifiers().testFlag(Qt::ShiftModifier);
  const bool control = event->modifiers().testFlag(Qt::ControlModifier);
  const QModelIndex now = currentIndex();
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      go(Qt::Key_Return, shift);
      return;
    case Qt::Key_Tab:
    case Qt::Key_Backtab:
      if (control) {
        // Out of the table: its own way would go to the next cell.
        // NOLINTNEXTLINE(bugprone-parent-virtual-call)
        QWidget::focusNextPrevChild(!shift && event->key() == Qt::Key_Tab);
        return;
      }
      go(Qt::Key_Tab, shift || event->key() == Qt::Key_Backtab);
      return;
    case Qt::Key_F2:
      if (!now.isValid() || !model()->flags(now).testFlag(Qt::ItemIsEditable)) return;
      typesOver_ = false;
      edit(now);
      if (QLineEdit* line = typing()) {
        line->deselect();
        line->end(false);
      }
      return;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
      Q_EMIT clearRequested();
      return;
    case Qt::Key_Escape:
      // The plan's value again, where the typed text was not read.
      if (now.isValid()) survey_->dropUnread(survey_->row(now.row()), currentColumn());
      return;
    case Qt::Key_Down:
      if (event->modifiers().testFlag(Qt::AltModifier)) {
        chooseFromList();
        return;
      }
      break;
    default:
      break;
  }
  const bool arrow = event->key() == Qt::Key_Up || event->key() == Qt::Key_Down ||
                     event->key() == Qt::Key_Left || event->key() == Qt::Key_Right ||
                     event->key() == Qt::Key_Home || event->key() == Qt::Key_End;
  if (arrow) lineStart_ = -1;
  typesOver_ = true;
  QTableView::keyPressEvent(event);
}

void SurveyTable::mousePressEvent(QMouseEvent* event) {
  forgetGoneEditor();
  lineStart_ = -1;
  typesOver_ = false;
  QTableView::mousePressEvent(event);
}

void SurveyTable::focusInEvent(QFocusEvent* event) {
  if (!currentIndex().isValid()) moveTo(0, GridColumn::name);
  QTableView::focusInEvent(event);
}

// A row may leave a filtered list while it is typed into, or by what was typed. Qt then hides the editor and
// goes on as if there were one.
bool SurveyTable::open(const QWidget* editor) const {
  return editor != nullptr && editor == delegate_->editor_ && !editor->isHidden();
}

void SurveyTable::forgetGoneEditor() {
  if (state() == EditingState && !open(delegate_->editor_)) setState(NoState);
}

void SurveyTable::commitData(QWidget* editor) {
  if (open(editor)) QTableView::commitData(editor);
}

void SurveyTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
  if (open(editor)) QTableView::closeEditor(editor, hint);
  forgetGoneEditor();
}

void SurveyTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  horizontalHeader()->viewport()->update();
  verticalHeader()->viewport()->update();
  viewport()->update();
  showReason();
  Q_EMIT currentMoved();
}

void SurveyTable::showReason() {
  if (reason_ == nullptr) return;  // a scroll while the table is being made
  const QModelIndex now = currentIndex();
  const UnreadCell* unread =
      now.isValid() && now.row() < survey_->rows() ? survey_->unread(now.row(), currentColumn()) : nullptr;
  if (unread == nullptr || typing() != nullptr) {
    reason_->hide();
    return;
  }
  reason_->setText(unread->why);
  reason_->adjustSize();
  const QRect cell = visualRect(now);
  QPoint at = cell.bottomLeft() + QPoint(0, 2);
  if (at.y() + reason_->height() > viewport()->height()) at.setY(cell.top() - reason_->height() - 2);
  at.setX(std::clamp(at.x(), 0, std::max(0, viewport()->width() - reason_->width())));
  reason_->move(at);
  reason_->show();
  reason_->raise();
}

void SurveyTable::chooseFromList() {
  const QModelIndex now = currentIndex();
  const std::vector<std::string> choices = choicesOf(currentColumn(), *survey_->style().language);
  if (!now.isValid() || choices.empty()) return;
  auto* menu = new QMenu(this);
  menu->setObjectName(QStringLiteral("choiceMenu"));
  menu->setAttribute(Qt::WA_DeleteOnClose);
  const QPersistentModelIndex kept(now);
  for (const std::string& choice : choices) {
    const QString text = QString::fromStdString(choice);
    connect(menu->addAction(text), &QAction::triggered, this, [this, kept, text] {
      if (kept.isValid()) survey_->setData(kept, text, Qt::EditRole);
    });
  }
  menu->popup(viewport()->mapToGlobal(visualRect(now).bottomLeft()));
}

}  // namespace stayalight
