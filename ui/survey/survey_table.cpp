#include "ui/survey/survey_table.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QApplication>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMenu>
#include <QtWidgets/QScrollBar>
#include <algorithm>
#include <cmath>

#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTableName{"survey.table"};
constexpr double kText = 12.0;
constexpr double kHeadText = 12.0;
constexpr double kPad = 6.0;
constexpr double kMark = 13.0;
constexpr int kRowHeight = 24;
constexpr int kHeadHeight = 26;
constexpr int kGutter = 30;

/// The painter goes over to layout units, with the cell's corner as origin; the cell in them.
QRectF inUnits(QPainter& painter, const QRect& cell) {
  painter.translate(cell.topLeft());
  painter.scale(systemScale(), systemScale());
  return {0.0, 0.0, cell.width() / systemScale(), cell.height() / systemScale()};
}

// Columns that begin a group of their own get a rule before them.
bool beginsGroup(GridColumn column) {
  return column == GridColumn::name || column == GridColumn::conductor || column == GridColumn::running ||
         column == GridColumn::who || column == GridColumn::goesTo || column == GridColumn::finding;
}

/// Flat heads with the rules of the sheet.
class FlatHead final : public QHeaderView {
 public:
  FlatHead(SurveyTable* table) : QHeaderView(Qt::Horizontal, table), table_(table) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setMinimumSectionSize(scaled(36));
    setFixedHeight(scaled(kHeadHeight));
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Palette& palette = table_->colors();
    painter->save();
    painter->fillRect(rect, palette.color(ColorRole::window));
    const QRectF r = inUnits(*painter, rect);
    const auto column = static_cast<GridColumn>(section);
    const bool current = table_->currentColumn() == column && table_->currentIndex().isValid();
    painter->setFont(stayalight::font(Face::condensed, kHeadText, Weight::medium));
    painter->setPen(palette.color(current ? ColorRole::ink : ColorRole::ink2));
    const QString text = elided(table_->survey()->columnName(column), r.width() - 2 * kPad, Face::condensed,
                                kHeadText, Weight::medium);
    const Qt::Alignment side = columnRow(column).figure ? Qt::AlignRight : Qt::AlignLeft;
    painter->drawText(r.adjusted(kPad, 0, -kPad, 0), side | Qt::AlignVCenter, text);
    painter->setPen(QPen(palette.color(ColorRole::ink), 1.2));
    painter->drawLine(QPointF(r.left(), r.bottom() - 0.6), QPointF(r.right(), r.bottom() - 0.6));
    if (beginsGroup(column)) {
      painter->setPen(QPen(palette.color(ColorRole::edge), 1));
      painter->drawLine(QPointF(r.left() + 0.5, r.top() + 4), QPointF(r.left() + 0.5, r.bottom() - 1));
    }
    painter->restore();
  }

 private:
  SurveyTable* table_;
};

/// Beside the rows: the row of the keyboard, and brackets of shared neutrals.
class Gutter final : public QHeaderView {
 public:
  explicit Gutter(SurveyTable* table) : QHeaderView(Qt::Vertical, table), table_(table) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(scaled(18));
    setDefaultSectionSize(scaled(kRowHeight));
    setFixedWidth(scaled(kGutter));
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Palette& palette = table_->colors();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool lit = section < table_->survey()->rows() && table_->survey()->backedUp(section);
    painter->fillRect(rect, palette.color(lit ? ColorRole::lit : ColorRole::sheet));
    const QRectF r = inUnits(*painter, rect);
    painter->setPen(QPen(palette.color(ColorRole::hairline), 1));
    painter->drawLine(QPointF(r.left(), r.bottom() - 0.5), QPointF(r.right(), r.bottom() - 0.5));
    if (table_->currentIndex().row() == section)
      painter->fillRect(QRectF(r.left(), r.top(), 4, r.height()), palette.color(ColorRole::ink));
    if (section < table_->survey()->rows()) {
      const TieMark& tie = table_->survey()->tie(section);
      const double x = r.left() + (tie.lane == 0 ? 0.45 : 0.7) * r.width();
      const double middle = r.center().y();
      painter->setPen(QPen(palette.color(tie.danger ? ColorRole::danger : ColorRole::ink2), 1.5));
      if (tie.up) painter->drawLine(QPointF(x, r.top()), QPointF(x, middle));
      if (tie.down) painter->drawLine(QPointF(x, middle), QPointF(x, r.bottom() + 1));
      if (tie.member) painter->drawLine(QPointF(x, middle), QPointF(r.right() - 2, middle));
      if (tie.mark) {
        const double y = tie.down ? r.bottom() + 0.5 : middle;
        paintSeverity(*painter,
                      QRectF(x - kMark / 2, std::min(y - kMark / 2, r.bottom() - kMark + 0.5), kMark, kMark),
                      Severity::danger, palette);
      }
    }
    painter->restore();
  }

 private:
  SurveyTable* table_;
};

}  // namespace

// -- cells

SurveyDelegate::SurveyDelegate(SurveyTable* table) : QStyledItemDelegate(table), table_(table) {}

QSize SurveyDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
  return {scaled(columnRow(static_cast<GridColumn>(index.column())).width), scaled(kRowHeight)};
}

void SurveyDelegate::paintFindings(QPainter& painter, const QRectF& rect, int row) const {
  const SurveyModel& survey = *table_->survey();
  const Palette& palette = table_->colors();
  double x = rect.left() + kPad;
  const double top = rect.center().y() - kMark / 2;
  const double right = rect.right() - kPad;
  QString text;
  ColorRole role = ColorRole::ink;
  if (const UnreadCell* unread = survey.unreadIn(row)) {
    paintIcon(painter, QRectF(x, top, kMark, kMark), Icon::pen, palette.color(ColorRole::mustFix));
    x += kMark + 4;
    text = survey.data(survey.index(row, static_cast<int>(GridColumn::finding))).toString();
    role = ColorRole::mustFix;
    static_cast<void>(unread);
  } else {
    const std::vector<const Finding*> all = survey.findings(row);
    if (all.empty()) return;
    // A mark for each severity that is there, worst first; the words of the first.
    std::array<bool, 4> drawn{};
    for (const Finding* finding : all) {
      bool& there = drawn[static_cast<std::size_t>(finding->severity)];
      if (there) continue;
      there = true;
      paintSeverity(painter, QRectF(x, top, kMark, kMark), finding->severity, palette);
      x += kMark + 3;
    }
    x += 2;
    text = words(all.front()->plain, *survey.style().language);
  }
  painter.setFont(stayalight::font(Face::condensed, kText));
  painter.setPen(palette.color(role));
  painter.drawText(QRectF(x, rect.top(), right - x, rect.height()), Qt::AlignLeft | Qt::AlignVCenter,
                   elided(text, right - x, Face::condensed, kText));
}

void SurveyDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
  const SurveyModel& survey = *table_->survey();
  const Palette& palette = table_->colors();
  const int at = index.row();
  const auto column = static_cast<GridColumn>(index.column());
  const GridRow& row = survey.row(at);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  const bool lit = survey.backedUp(at);
  const bool free = !row.breaker.valid() && !row.circuit.valid();
  painter->fillRect(option.rect, palette.color(lit    ? ColorRole::lit
                                               : free ? ColorRole::window
                                                      : ColorRole::sheet));
  if (option.state.testFlag(QStyle::State_Selected) && index != table_->currentIndex()) {
    QColor wash = palette.color(ColorRole::ink);
    wash.setAlphaF(0.13F);
    painter->fillRect(option.rect, wash);
  }
  const QRectF rect = inUnits(*painter, option.rect);
  painter->setPen(QPen(palette.color(lit ? ColorRole::litEdge : ColorRole::hairline), 1));
  painter->drawLine(QPointF(rect.left(), rect.bottom() - 0.5), QPointF(rect.right(), rect.bottom() - 0.5));
  if (beginsGroup(column)) {
    painter->setPen(QPen(palette.color(ColorRole::hairline), 1));
    painter->drawLine(QPointF(rect.left() + 0.5, rect.top()), QPointF(rect.left() + 0.5, rect.bottom()));
  }

  if (column == GridColumn::finding) {
    paintFindings(*painter, rect, at);
  } else {
    const CellText cell = survey.cell(at, column);
    const UnreadCell* unread = survey.unread(at, column);
    const QString text = unread != nullptr ? unread->text : QString::fromStdString(cell.text);
    const bool name = column == GridColumn::name;
    const bool strong = name && !cell.fixed && !row.ofLoad;
    const Weight weight = strong ? Weight::medium : Weight::regular;
    ColorRole role = ColorRole::ink;
    if (column == GridColumn::goesTo) role = lit ? ColorRole::lampInk : ColorRole::ink2;
    if (cell.fixed && name) role = ColorRole::ink2;
    if (column == GridColumn::space && free) role = ColorRole::ink2;
    if (unread != nullptr) role = ColorRole::mustFix;
    QRectF inner = rect.adjusted(kPad, 0, -kPad, 0);
    if (name && row.ofLoad) inner.setLeft(inner.left() + 12);
    if (column == GridColumn::space && !row.ofLoad && survey.panel().valid()) {
      // Legs beside the number, by letter and line.
      const Panel* panel = stayalight::find(survey.plan(), row.panel);
      if (panel != nullptr) {
        double x = rect.right() - kPad;
        const std::vector<Leg> legs = poleLegs(*panel, {row.panel, row.position, row.half, row.poles});
        painter->setFont(stayalight::font(Face::condensed, 10, Weight::bold));
        for (auto leg = legs.rbegin(); leg != legs.rend(); ++leg) {
          const QString word = QString::fromStdString(std::string(legName(*leg)));
          const double wide = textWidth(word, Face::condensed, 10, Weight::bold);
          painter->setPen(palette.color(lit ? ColorRole::ink : legColor(*leg)));
          painter->drawText(QRectF(x - wide, rect.top(), wide + 1, rect.height()),
                            Qt::AlignLeft | Qt::AlignVCenter, word);
          x -= wide + 4;
        }
        inner.setRight(x - 2);
      }
    }
    const QString shown = elided(text, inner.width(), Face::condensed, kText, weight, name && cell.fixed);
    const double wide = textWidth(shown, Face::condensed, kText, weight, name && cell.fixed);
    const bool atRight = columnRow(column).figure;
    painter->setFont(stayalight::font(Face::condensed, kText, weight, name && cell.fixed));
    painter->setPen(palette.color(role));
    painter->drawText(inner, (atRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, shown);
    const double left = atRight ? inner.right() - wide : inner.left();
    const double under = rect.center().y() + ascent(Face::condensed, kText) * 0.62;
    if (unread != nullptr) {
      // Not read: a wave under it, whatever the colours.
      QPainterPath wave(QPointF(left, under));
      const int strokes = static_cast<int>(std::ceil(std::max(wide, 12.0) / 3.0));
      for (int i = 0; i < strokes; ++i) wave.lineTo(left + 3.0 * (i + 1), under + (i % 2 == 0 ? 1.8 : 0));
      painter->setPen(QPen(palette.color(ColorRole::mustFix), 1.1));
      painter->drawPath(wave);
    } else if (cell.grade && !cell.unknown) {
      paintGradeRule(*painter, left, left + wide, under, *cell.grade, palette.color(ColorRole::ink2));
    }
  }
  if (index == table_->currentIndex()) {
    const bool focus = table_->hasFocus() || table_->viewport()->hasFocus();
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(palette.color(focus ? ColorRole::ink : ColorRole::edge), 2, Qt::SolidLine,
                         Qt::SquareCap, Qt::MiterJoin));
    painter->drawRect(rect.adjusted(1, 1, -1, -1));
  }
  painter->restore();
}

QWidget* SurveyDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                      const QModelIndex& index) const {
  const auto column = static_cast<GridColumn>(index.column());
  auto* line = new QLineEdit(parent);
  line->setObjectName(QStringLiteral("cellEditor"));
  line->setFrame(false);
  line->setFont(screenFont(Face::condensed, kText, Weight::medium));
  line->setAlignment((columnRow(column).figure ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  line->setTextMargins(scaled(kPad) - 2, 0, scaled(kPad) - 2, 0);
  line->setMaxLength(static_cast<int>(kLongestText));
  line->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
  line->setAccessibleDescription(table_->survey()->columnHelp(column));
  QStringList choices;
  for (const std::string& choice : choicesOf(column, *table_->survey()->style().language))
    choices << QString::fromStdString(choice);
  if (!choices.isEmpty()) {
    auto* completer = new QCompleter(choices, line);
    completer->setCompletionMode(QCompleter::InlineCompletion);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    line->setCompleter(completer);
  }
  const Palette& palette = table_->colors();
  line->setStyleSheet(QStringLiteral("QLineEdit { border: 2px solid %1; background: %2; color: %3; }")
                          .arg(palette.color(ColorRole::ink).name(), palette.color(ColorRole::sheet).name(),
                               palette.color(ColorRole::ink).name()));
  editor_ = line;
  return line;
}

void SurveyDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  auto* line = static_cast<QLineEdit*>(editor);
  // What is being typed is not overwritten when the plan changes below it.
  if (!line->property("filled").toBool()) {
    line->setText(index.data(Qt::EditRole).toString());
    line->setProperty("filled", true);
  }
}

void SurveyDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                  const QModelIndex& index) const {
  model->setData(index, static_cast<QLineEdit*>(editor)->text(), Qt::EditRole);
}

void SurveyDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                          const QModelIndex&) const {
  // Wide enough to see what one types.
  constexpr int kNarrowest = 72;
  QRect rect = option.rect;
  if (rect.width() < kNarrowest) rect.setWidth(kNarrowest);
  if (rect.right() > table_->viewport()->width()) rect.moveRight(table_->viewport()->width() - 1);
  editor->setGeometry(rect);
}

bool SurveyDelegate::eventFilter(QObject* watched, QEvent* event) {
  auto* line = qobject_cast<QLineEdit*>(watched);
  if (line == nullptr || event->type() != QEvent::KeyPress)
    return QStyledItemDelegate::eventFilter(watched, event);
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool back = key->modifiers().testFlag(Qt::ShiftModifier);
  const auto leave = [&](int by, bool backwards) {
    Q_EMIT commitData(line);
    Q_EMIT closeEditor(line, QAbstractItemDelegate::NoHint);
    table_->go(by, backwards);
    return true;
  };
  switch (key->key()) {
    case Qt::Key_Escape:
      Q_EMIT closeEditor(line, QAbstractItemDelegate::RevertModelCache);
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      return leave(Qt::Key_Return, back);
    case Qt::Key_Tab:
      return leave(Qt::Key_Tab, back);
    case Qt::Key_Backtab:
      return leave(Qt::Key_Tab, true);
    case Qt::Key_Up:
    case Qt::Key_Down:
      return leave(key->key(), false);
    case Qt::Key_Left:
    case Qt::Key_Right:
      if (table_->typesOver_ && !back && !key->modifiers().testFlag(Qt::ControlModifier))
        return leave(key->key(), false);
      return false;
    case Qt::Key_F2:
      // From typing over to typing within: arrows then stay in the text.
      table_->typesOver_ = false;
      return true;
    default:
      return false;
  }
}

// -- the table

SurveyTable::SurveyTable(SurveyModel* model, QWidget* parent)
    : QTableView(parent), survey_(model), delegate_(new SurveyDelegate(this)) {
  setObjectName(QStringLiteral("surveyTable"));
  setModel(model);
  setItemDelegate(delegate_);
  setHorizontalHeader(new FlatHead(this));
  setVerticalHeader(new Gutter(this));
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
  reason_->setFont(screenFont(Face::condensed, kText, Weight::medium));
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
