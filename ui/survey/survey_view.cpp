#include "ui/survey/survey_view.h"

#include <QtCore/QSettings>
#include <QtCore/QSignalBlocker>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QButtonGroup>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QVBoxLayout>

#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/survey/clipboard_text.h"
#include "ui/survey/directory_dialog.h"
#include "ui/survey/known_bar.h"
#include "ui/survey/paste.h"
#include "ui/survey/survey_table.h"
#include "ui/waiting/beside.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"survey.head"};
constexpr MessageId kPanel{"survey.panel"};
constexpr MessageId kPanelLabel{"survey.panel.label"};
constexpr MessageId kAllCircuits{"survey.all_circuits"};
constexpr MessageId kOrder{"survey.order"};
constexpr MessageId kOrderLabel{"survey.order.label"};
constexpr std::array<MessageId, 2> kOrders = {MessageId{"survey.order.columns"},
                                              MessageId{"survey.order.rows"}};
constexpr std::array<MessageId, 4> kFilters = {
    MessageId{"survey.filter.all"}, MessageId{"survey.filter.moved"}, MessageId{"survey.filter.not_known"},
    MessageId{"survey.filter.with_finding"}};
constexpr std::array<MessageId, 4> kSets = {MessageId{"survey.set.panel"}, MessageId{"survey.set.wires"},
                                            MessageId{"survey.set.machines"}, MessageId{"survey.set.all"}};
constexpr MessageId kTypedGrade{"survey.typed_grade"};
constexpr MessageId kTypedGradeLabel{"survey.typed_grade.label"};
constexpr MessageId kTypedGradeHelp{"survey.typed_grade.help"};
constexpr MessageId kDirectory{"survey.directory.button"};
constexpr MessageId kCell{"survey.cell"};
constexpr MessageId kStepPaste{"survey.step.paste"};
constexpr MessageId kStepFill{"survey.step.fill"};
constexpr MessageId kStepClear{"survey.step.clear"};
constexpr MessageId kStepGrade{"survey.step.grade"};
constexpr MessageId kStepTwoPole{"survey.step.two_pole"};
constexpr MessageId kStepOnePole{"survey.step.one_pole"};
constexpr MessageId kStepTandem{"survey.step.tandem"};
constexpr MessageId kStepNeutral{"survey.step.neutral"};
constexpr MessageId kStepDirectory{"survey.step.directory"};
constexpr MessageId kStepCopy{"inspector.step.copy"};
constexpr MessageId kStepRemove{"inspector.step.remove"};
constexpr MessageId kCopied{"survey.copied"};
constexpr MessageId kPasted{"survey.pasted"};
constexpr MessageId kPasting{"survey.pasting"};
constexpr MessageId kPasteCancelled{"survey.paste_cancelled"};
constexpr MessageId kNotFit{"survey.not_fit"};
constexpr MessageId kNothingToPaste{"survey.nothing_to_paste"};
constexpr MessageId kNothingToFill{"survey.nothing_to_fill"};
constexpr MessageId kNothingToGrade{"survey.nothing_to_grade"};
constexpr MessageId kNoRow{"survey.no_row"};
const QLatin1String kOrderKey("survey/order");
const QLatin1String kSetKey("survey/columns");
const QLatin1String kGradeKey("survey/grade");

int remembered(const QLatin1String& key, int count) {
  const int value = QSettings().value(key, 0).toInt();
  return value >= 0 && value < count ? value : 0;
}

}  // namespace

SurveyView::SurveyView(QWidget* parent) : QWidget(parent) {
  model_ = new SurveyModel(this);
  table_ = new SurveyTable(model_, this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 8, 0, 6);
  column->setSpacing(6);

  auto* first = new QHBoxLayout;
  first->setContentsMargins(14, 0, 12, 0);
  first->setSpacing(8);
  head_ = new QLabel(this);
  head_->setFont(screenFont(Face::condensed, 13.5, Weight::medium));
  first->addWidget(head_);
  first->addSpacing(4);
  const auto labelled = [this](QLabel*& label, QComboBox*& combo, QHBoxLayout* row, const QString& name) {
    label = new QLabel(this);
    combo = new QComboBox(this);
    combo->setObjectName(name);
    label->setBuddy(combo);
    row->addWidget(label);
    row->addWidget(combo);
  };
  labelled(panelLabel_, panels_, first, QStringLiteral("surveyPanel"));
  panels_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  first->addSpacing(8);
  const auto buttons = [this](std::array<QToolButton*, 4>& all, QHBoxLayout* row, const QString& name) {
    auto* group = new QButtonGroup(this);
    auto* together = new QHBoxLayout;
    together->setSpacing(0);
    for (std::size_t i = 0; i < all.size(); ++i) {
      all[i] = new QToolButton(this);
      all[i]->setObjectName(name + QString::number(i));
      all[i]->setCheckable(true);
      all[i]->setToolButtonStyle(Qt::ToolButtonTextOnly);
      all[i]->setFont(screenFont(Face::condensed, 12, Weight::medium));
      all[i]->setMinimumHeight(scaled(24));
      group->addButton(all[i], static_cast<int>(i));
      together->addWidget(all[i]);
    }
    all[0]->setChecked(true);
    row->addLayout(together);
    return group;
  };
  QButtonGroup* filters = buttons(filters_, first, QStringLiteral("surveyFilter"));
  first->addStretch(1);
  directory_ = new QPushButton(this);
  directory_->setObjectName(QStringLiteral("pasteDirectory"));
  first->addWidget(directory_);
  column->addLayout(first);

  auto* second = new QHBoxLayout;
  second->setContentsMargins(14, 0, 12, 0);
  second->setSpacing(8);
  QButtonGroup* sets = buttons(sets_, second, QStringLiteral("surveyColumns"));
  second->addSpacing(8);
  labelled(orderLabel_, orders_, second, QStringLiteral("surveyOrder"));
  second->addStretch(1);
  labelled(gradeLabel_, grades_, second, QStringLiteral("surveyGrade"));
  column->addLayout(second);
  column->addWidget(table_, 1);

  auto* below = new QHBoxLayout;
  below->setContentsMargins(14, 0, 12, 0);
  known_ = new KnownBar(this);
  below->addWidget(known_, 1);
  column->addLayout(below);
  cell_ = new QLabel(this);
  cell_->setObjectName(QStringLiteral("surveyCell"));
  cell_->setTextFormat(Qt::PlainText);
  cell_->setFont(screenFont(Face::condensed, 12));
  cell_->setContentsMargins(14, 0, 12, 0);
  cell_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  column->addWidget(cell_);

  connect(panels_, &QComboBox::activated, this,
          [this](int index) { choosePanel(PanelId{panels_->itemData(index).toLongLong()}); });
  connect(filters, &QButtonGroup::idClicked, this, [this](int id) {
    model_->setFilter(static_cast<RowFilter>(id));
    table_->setFocus();
  });
  connect(sets, &QButtonGroup::idClicked, this, [this](int id) {
    setColumns(static_cast<ColumnSet>(id));
    table_->setFocus();
  });
  connect(orders_, &QComboBox::activated, this, [this](int index) {
    QSettings().setValue(kOrderKey, index);
    model_->setOrder(static_cast<SpaceOrder>(index));
  });
  connect(grades_, &QComboBox::activated, this, [this](int index) {
    QSettings().setValue(kGradeKey, index);
    model_->setTypedGrade(static_cast<Grade>(index));
  });
  connect(directory_, &QPushButton::clicked, this, [this] { pasteDirectory(); });
  connect(model_, &SurveyModel::edited, this, &SurveyView::edited);
  connect(model_, &SurveyModel::countsChanged, this, [this] { showCounts(); });
  connect(model_, &QAbstractItemModel::dataChanged, this, [this] { showCell(); });
  connect(table_, &SurveyTable::currentMoved, this, [this] {
    showCell();
    if (const auto what = current()) Q_EMIT currentChanged(*what);
  });
  connect(table_, &SurveyTable::clearRequested, this, [this] { clearCells(); });
  model_->setOrder(static_cast<SpaceOrder>(remembered(kOrderKey, 2)));
  model_->setTypedGrade(static_cast<Grade>(remembered(kGradeKey, 5)));
  setColumns(static_cast<ColumnSet>(remembered(kSetKey, 4)));
  setFocusProxy(table_);
  fillTexts();
}

void SurveyView::fillTexts() {
  const Language& language = *language_;
  head_->setText(words(language, kHead));
  panelLabel_->setText(words(language, kPanelLabel));
  panels_->setAccessibleName(words(language, kPanel));
  orderLabel_->setText(words(language, kOrderLabel));
  orders_->setAccessibleName(words(language, kOrder));
  orders_->setToolTip(words(language, kOrder));
  gradeLabel_->setText(words(language, kTypedGradeLabel));
  grades_->setAccessibleName(words(language, kTypedGrade));
  grades_->setToolTip(words(language, kTypedGradeHelp));
  directory_->setText(words(language, kDirectory));
  directory_->setIcon(buttonIcon(Icon::list, palette_));
  for (std::size_t i = 0; i < sets_.size(); ++i) sets_[i]->setText(words(language, kSets[i]));
  const QSignalBlocker quietOrders(orders_), quietGrades(grades_);
  orders_->clear();
  for (const MessageId id : kOrders) orders_->addItem(words(language, id));
  orders_->setCurrentIndex(static_cast<int>(model_->order()));
  grades_->clear();
  for (int i = 0; i < 5; ++i) grades_->addItem(gradeName(static_cast<Grade>(i), language));
  grades_->setCurrentIndex(static_cast<int>(model_->typedGrade()));
}

void SurveyView::setColors(const Palette& palette) {
  palette_ = palette;
  table_->setColors(palette);
  fillTexts();
  showCounts();
  showCell();
}

void SurveyView::setColumns(ColumnSet set) {
  QSettings().setValue(kSetKey, static_cast<int>(set));
  sets_[static_cast<std::size_t>(set)]->setChecked(true);
  table_->setColumns(set);
}

void SurveyView::fillPanels() {
  const QSignalBlocker quiet(panels_);
  panels_->clear();
  for (const auto& panel : model_->plan().panels)
    panels_->addItem(
        QString::fromStdString(entityName(model_->plan(), {RecordKind::panel, panel->id.number}, *language_)),
        qlonglong{panel->id.number});
  panels_->addItem(words(*language_, kAllCircuits), qlonglong{0});
  panels_->setCurrentIndex(panels_->findData(qlonglong{model_->panel().number}));
}

void SurveyView::show(const Plan& plan, const Assessment& assessment, const Language& language,
                      const ShownUnits& units) {
  const bool otherWords = language_ != &language;
  language_ = &language;
  if (otherWords) fillTexts();
  const bool first = !model_->panel().valid() && model_->plan().panels.empty();
  model_->show(plan, assessment, language, units);
  if (first && mainPanel(plan) != nullptr) model_->setPanel(mainPanel(plan)->id);
  if (first) filters_[0]->setChecked(true);
  fillPanels();
  if (first) table_->moveTo(0, GridColumn::name);
  showCell();
}

void SurveyView::choosePanel(PanelId panel) {
  table_->finishTyping();
  model_->setPanel(panel);
  fillPanels();
  table_->moveTo(0, table_->currentColumn());
  table_->setFocus();
}

void SurveyView::focusBreaker(BreakerId breaker) {
  const Breaker* record = stayalight::find(model_->plan(), breaker);
  if (record == nullptr) return;
  if (model_->rowOf(breaker) < 0) choosePanel(record->panel);
  table_->moveTo(model_->rowOf(breaker), table_->currentColumn());
  table_->setFocus();
}

void SurveyView::goToUnread() {
  if (model_->allUnread().empty()) return;
  const UnreadCell cell = model_->allUnread().front();
  if (model_->find(cell.row) < 0) {
    model_->setFilter(RowFilter::all);
    choosePanel(cell.row.panel);
  }
  if (table_->isColumnHidden(static_cast<int>(cell.column))) setColumns(ColumnSet::all);
  table_->moveTo(model_->find(cell.row), cell.column);
  table_->setFocus();
}

GridRow SurveyView::currentRow() const {
  const QModelIndex index = table_->currentIndex();
  return index.isValid() && index.row() < model_->rows() ? model_->row(index.row()) : GridRow{};
}

std::optional<EntityRef> SurveyView::current() const {
  const GridRow row = currentRow();
  if (row.ofLoad) return EntityRef{RecordKind::load, row.load.number};
  if (row.circuit.valid()) return EntityRef{RecordKind::circuit, row.circuit.number};
  if (row.breaker.valid()) return EntityRef{RecordKind::breaker, row.breaker.number};
  if (row.panel.valid()) return EntityRef{RecordKind::panel, row.panel.number};
  return std::nullopt;
}

void SurveyView::showCounts() {
  for (std::size_t i = 0; i < filters_.size(); ++i) {
    filters_[i]->setText(
        words(*language_, kFilters[i], std::int64_t{model_->count(static_cast<RowFilter>(i))}));
  }
  filters_[static_cast<std::size_t>(model_->filter())]->setChecked(true);
  known_->show(model_->known(), palette_, *language_);
}

void SurveyView::showCell() {
  const QModelIndex index = table_->currentIndex();
  if (!index.isValid() || index.row() >= model_->rows()) {
    cell_->clear();
    return;
  }
  const GridColumn column = table_->currentColumn();
  const UnreadCell* unread = model_->unread(index.row(), column);
  const QString place =
      index.siblingAtColumn(0).data().toString() + QLatin1Char(' ') + model_->rowName(index.row());
  cell_->setText(words(*language_, kCell, place.trimmed().toStdString(),
                       model_->columnName(column).toStdString(),
                       (unread != nullptr ? unread->why : model_->columnHelp(column)).toStdString()));
  QPalette colors = cell_->palette();
  colors.setColor(QPalette::WindowText,
                  palette_.color(unread != nullptr ? ColorRole::mustFix : ColorRole::ink2));
  cell_->setPalette(colors);
}

// -- what the menu asks for

void SurveyView::finishTyping() { table_->finishTyping(); }

void SurveyView::change(Result<Plan> after, const Message& name) {
  if (!after) {
    Q_EMIT refused(after.refusal());
    return;
  }
  model_->change(std::move(after).value(), name);
}

/// One step over all selected cells; those that are refused keep what they had.
template <class Change>
void SurveyView::changeEach(const Message& name, Change&& changeOne) {
  Plan after = model_->plan();
  for (const QModelIndex& index : table_->selectedCells())
    after =
        changeOne(after, rowNow(after, model_->row(index.row())), static_cast<GridColumn>(index.column()));
  model_->change(std::move(after), name);
}

void SurveyView::copyCells() {
  if (QLineEdit* line = table_->typing()) {
    line->copy();
    return;
  }
  std::vector<std::vector<std::string>> rows;
  const QModelIndexList cells = table_->selectedCells();
  if (cells.isEmpty()) return;
  int left = kGridColumns, right = 0;
  for (const QModelIndex& index : cells) {
    left = std::min(left, index.column());
    right = std::max(right, index.column());
  }
  for (const int row : table_->selectedRows()) {
    std::vector<std::string> line;
    for (int column = left; column <= right; ++column) {
      if (table_->isColumnHidden(column)) continue;
      const QModelIndex index = model_->index(row, column);
      line.push_back(cells.contains(index) ? index.data().toString().toStdString() : std::string());
    }
    rows.push_back(std::move(line));
  }
  QGuiApplication::clipboard()->setText(QString::fromStdString(tabbedText(rows)));
  Q_EMIT said(words(*language_, kCopied, static_cast<std::int64_t>(cells.size())));
}

void SurveyView::pasteCells() {
  if (QLineEdit* line = table_->typing()) {
    line->paste();
    return;
  }
  const std::vector<std::vector<std::string>> pasted =
      pastedCells(QGuiApplication::clipboard()->text().toStdString());
  const QModelIndexList selected = table_->selectedCells();
  if (pasted.empty() || selected.isEmpty()) {
    Q_EMIT refused(Message{kNothingToPaste, {}});
    return;
  }
  std::vector<GridCell> cells;
  int left = kGridColumns;
  for (const QModelIndex& index : selected) {
    cells.push_back({model_->row(index.row()), static_cast<GridColumn>(index.column())});
    left = std::min(left, index.column());
  }
  std::vector<GridColumn> columns;
  for (int column = left; column < kGridColumns; ++column) {
    if (!table_->isColumnHidden(column)) columns.push_back(static_cast<GridColumn>(column));
  }
  const bool single = pasted.size() == 1 && pasted[0].size() == 1;
  Pasted made;
  const auto paste = [&, plan = model_->plan(), panel = model_->panel(), order = model_->order(),
                      style = model_->style()](const Watch& watch) {
    made = single ? pasteText(plan, cells, pasted[0][0], style, watch)
                  : pasteTable(plan, panel, order, cells.front().row, columns, pasted, style, watch);
  };
  const auto lines = static_cast<std::int64_t>(single ? cells.size() : pasted.size());
  if (!beside(this, *language_, words(*language_, kPasting, lines), paste)) {
    Q_EMIT said(words(*language_, kPasteCancelled));
    return;
  }
  for (const GridCell& cell : made.read) model_->dropUnread(cell.row, cell.column);
  model_->change(std::move(made.plan), say(kStepPaste, made.done));
  for (const Pasted::NotRead& cell : made.notRead)
    model_->noteUnread(cell.cell.row, cell.cell.column, QString::fromStdString(cell.text), cell.why);
  Q_EMIT said(words(*language_, kPasted, made.done, static_cast<std::int64_t>(made.notRead.size())));
  if (made.lost > 0) Q_EMIT refused(say(kNotFit, made.lost));
}

void SurveyView::fillDown() {
  finishTyping();
  const QModelIndexList cells = table_->selectedCells();
  if (cells.isEmpty()) return;
  const std::vector<int> rows = table_->selectedRows();
  // Of one row alone the row above is taken.
  const int from = rows.size() > 1 ? rows.front() : rows.front() - 1;
  if (from < 0) {
    Q_EMIT refused(Message{kNothingToFill, {}});
    return;
  }
  Plan after = model_->plan();
  std::vector<std::pair<QModelIndex, Message>> unread;
  for (const QModelIndex& index : cells) {
    if (index.row() == from) continue;
    const auto column = static_cast<GridColumn>(index.column());
    const Result<Plan> next =
        fillCell(after, model_->row(from), rowNow(after, model_->row(index.row())), column, model_->style());
    if (next)
      after = next.value();
    else
      Q_EMIT refused(next.refusal());
  }
  model_->change(std::move(after), Message{kStepFill, {}});
}

void SurveyView::duplicateRows() {
  finishTyping();
  const GridRow row = currentRow();
  if (row.ofLoad) {
    change(copyLoad(model_->plan(), row.load),
           say(kStepCopy, entityName(model_->plan(), {RecordKind::load, row.load.number}, *language_)));
    return;
  }
  if (!row.circuit.valid()) {
    Q_EMIT refused(Message{kNoRow, {}});
    return;
  }
  const CircuitId made = nextCircuitId(model_->plan());
  change(copyCircuit(model_->plan(), row.circuit),
         say(kStepCopy, entityName(model_->plan(), {RecordKind::circuit, row.circuit.number}, *language_)));
  if (const Circuit* copy = stayalight::find(model_->plan(), made)) focusBreaker(copy->planned);
}

void SurveyView::removeRows() {
  finishTyping();
  Plan after = model_->plan();
  std::string first;
  for (const int at : table_->selectedRows()) {
    const GridRow row = model_->row(at);
    const EntityRef what = row.ofLoad            ? EntityRef{RecordKind::load, row.load.number}
                           : row.circuit.valid() ? EntityRef{RecordKind::circuit, row.circuit.number}
                                                 : EntityRef{RecordKind::breaker, row.breaker.number};
    if (findRecord(after, what) == nullptr) continue;
    if (first.empty()) first = entityName(after, what, *language_);
    Result<Plan> next = stayalight::remove(after, what);
    if (!next) {
      Q_EMIT refused(next.refusal());
      return;
    }
    after = std::move(next).value();
  }
  if (first.empty()) {
    Q_EMIT refused(Message{kNoRow, {}});
    return;
  }
  model_->change(std::move(after), say(kStepRemove, first));
}

void SurveyView::clearCells() {
  for (const QModelIndex& index : table_->selectedCells())
    model_->dropUnread(model_->row(index.row()), static_cast<GridColumn>(index.column()));
  changeEach(Message{kStepClear, {}}, [](const Plan& plan, const GridRow& row, GridColumn column) {
    return clearCell(plan, row, column);
  });
}

// A filtered list may be empty, whatever key is pressed in it.
bool SurveyView::onRow() {
  const bool there = table_->currentIndex().isValid();
  if (!there) Q_EMIT refused(Message{kNoRow, {}});
  return there;
}

void SurveyView::twoPole() {
  finishTyping();
  if (!onRow()) return;
  const GridRow row = currentRow();
  const std::string name = model_->rowName(table_->currentIndex().row()).toStdString();
  change(toggleTwoPole(model_->plan(), row),
         row.poles == 2 ? say(kStepOnePole, name) : say(kStepTwoPole, name));
}

void SurveyView::tandem() {
  finishTyping();
  if (!onRow()) return;
  const std::string name = model_->rowName(table_->currentIndex().row()).toStdString();
  change(toggleTandem(model_->plan(), currentRow()), say(kStepTandem, name));
}

void SurveyView::sharedNeutral() {
  finishTyping();
  if (!onRow()) return;
  std::vector<GridRow> rows;
  for (const int row : table_->selectedRows()) rows.push_back(model_->row(row));
  const std::string name = model_->rowName(table_->currentIndex().row()).toStdString();
  change(toggleSharedNeutral(model_->plan(), rows), say(kStepNeutral, name));
}

void SurveyView::grade(Grade grade) {
  finishTyping();
  const Plan before = model_->plan();
  changeEach(say(kStepGrade, gradeName(grade, *language_).toStdString()),
             [grade](const Plan& plan, const GridRow& row, GridColumn column) {
               return gradeCell(plan, row, column, grade);
             });
  if (model_->plan() == before) Q_EMIT refused(Message{kNothingToGrade, {}});
}

DirectoryDialog* SurveyView::pasteDirectory() {
  finishTyping();
  const Plan& plan = model_->plan();
  PanelId panel = model_->panel();
  if (!panel.valid() && mainPanel(plan) != nullptr) panel = mainPanel(plan)->id;
  auto* dialog = new DirectoryDialog(plan, panel, *language_, palette_, window());
  connect(dialog, &DirectoryDialog::accepted, this, [this](const Plan& after, int added) {
    model_->change(after, say(kStepDirectory, std::int64_t{added}));
    table_->setFocus();
  });
  dialog->open();
  return dialog;
}

}  // namespace stayalight
