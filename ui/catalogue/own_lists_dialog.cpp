#include "ui/catalogue/own_lists_dialog.h"

#include <QtCore/QSignalBlocker>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableWidget>
#include <QtWidgets/QVBoxLayout>

#include "core/edit/edit.h"
#include "core/edit/part.h"
#include "ui/inspector/entity_text.h"
#include "ui/style/program_style.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"catalogue.lists.title"};
constexpr MessageId kHow{"catalogue.lists.how"};
constexpr MessageId kEmpty{"catalogue.lists.empty"};
constexpr MessageId kKind{"catalogue.lists.kind"};
constexpr MessageId kName{"catalogue.lists.name"};
constexpr MessageId kWhere{"catalogue.lists.where"};
constexpr MessageId kEveryPlan{"catalogue.lists.every_plan"};
constexpr MessageId kThisPlan{"catalogue.lists.this_plan"};
constexpr MessageId kStepRename{"catalogue.lists.step_rename"};
constexpr MessageId kStepDelete{"catalogue.lists.step_delete"};
constexpr MessageId kStepBack{"catalogue.lists.step_back"};
constexpr MessageId kTemplate{"catalogue.lists.template"};
constexpr MessageId kRename{"catalogue.lists.rename"};
constexpr MessageId kDelete{"catalogue.lists.delete"};
constexpr MessageId kUndo{"catalogue.lists.undo"};
constexpr MessageId kRenamed{"catalogue.lists.renamed"};
constexpr MessageId kDeleted{"catalogue.lists.deleted"};
constexpr MessageId kPutBack{"catalogue.lists.put_back"};

}  // namespace

OwnListsDialog::OwnListsDialog(const Language& language, QWidget* parent)
    : QDialog(parent), language_(language), table_(new QTableWidget(0, 3, this)), told_(new QLabel(this)) {
  setObjectName(QStringLiteral("ownListsPage"));
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(words(language, kTitle));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(20, 16, 20, 14);
  column->setSpacing(8);
  auto* how = new QLabel(words(language, kHow), this);
  how->setWordWrap(true);
  how->setBuddy(table_);
  column->addWidget(how);
  table_->setObjectName(QStringLiteral("ownEntries"));
  table_->setAccessibleName(words(language, kTitle));
  table_->setHorizontalHeaderLabels(
      {words(language, kKind), words(language, kName), words(language, kWhere)});
  table_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
  table_->setColumnWidth(0, 130);
  table_->setColumnWidth(2, 130);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(kLeastTarget + 2);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked);
  table_->setTabKeyNavigation(false);
  table_->installEventFilter(this);
  column->addWidget(table_, 1);
  told_->setObjectName(QStringLiteral("ownTold"));
  told_->setWordWrap(true);
  told_->setTextFormat(Qt::PlainText);
  column->addWidget(told_);
  auto* row = new QHBoxLayout;
  const auto button = [&](MessageId text, const QString& name) {
    auto* made = new QPushButton(words(language, text), this);
    made->setObjectName(name);
    made->setAutoDefault(false);
    row->addWidget(made);
    return made;
  };
  rename_ = button(kRename, QStringLiteral("ownRename"));
  delete_ = button(kDelete, QStringLiteral("ownDelete"));
  undo_ = button(kUndo, QStringLiteral("ownUndo"));
  row->addStretch(1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  row->addWidget(buttons);
  column->addLayout(row);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(rename_, &QPushButton::clicked, this, [this] {
    if (const int at = table_->currentRow(); at >= 0) table_->editItem(table_->item(at, 1));
  });
  connect(delete_, &QPushButton::clicked, this, [this] { removeCurrent(); });
  connect(undo_, &QPushButton::clicked, this, [this] { putLastBack(); });
  connect(table_, &QTableWidget::itemChanged, this, [this](QTableWidgetItem* item) {
    if (!filling_ && item->column() == 1) rename(item->row(), item->text());
  });
  resize(560, 420);
  fill();
  table_->setFocus();
}

void OwnListsDialog::fill() {
  entries_ = ownEntries();
  for (OwnEntry& entry : keptEntries(plan_)) entries_.push_back(std::move(entry));
  const int at = std::max(0, table_->currentRow());
  filling_ = true;
  table_->setRowCount(static_cast<int>(entries_.size()));
  for (int row = 0; row < table_->rowCount(); ++row) {
    const OwnEntry& entry = entries_[static_cast<std::size_t>(row)];
    auto* kind =
        new QTableWidgetItem(entry.isTemplate ? words(language_, kTemplate)
                                              : QString::fromStdString(kindName(entry.kind, language_)));
    auto* where = new QTableWidgetItem(words(language_, entry.inPlan ? kThisPlan : kEveryPlan));
    for (QTableWidgetItem* item : {kind, where}) item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    table_->setItem(row, 0, kind);
    table_->setItem(row, 2, where);
    auto* name = new QTableWidgetItem(entry.name);
    name->setToolTip(entry.name);
    table_->setItem(row, 1, name);
  }
  if (table_->rowCount() > 0) table_->setCurrentCell(std::min(at, table_->rowCount() - 1), 1);
  filling_ = false;
  rename_->setEnabled(!entries_.empty());
  delete_->setEnabled(!entries_.empty());
  undo_->setEnabled(!changes_.empty());
  if (entries_.empty() && told_->text().isEmpty()) tell(Message{kEmpty, {}}, false);
}

const OwnEntry* OwnListsDialog::current() const {
  const int row = table_->currentRow();
  return row >= 0 && row < static_cast<int>(entries_.size()) ? &entries_[static_cast<std::size_t>(row)]
                                                             : nullptr;
}

void OwnListsDialog::rename(int row, const QString& name) {
  if (row < 0 || row >= static_cast<int>(entries_.size())) return;
  const OwnEntry entry = entries_[static_cast<std::size_t>(row)];
  if (name == entry.name) return;
  if (entry.inPlan) {
    const std::string wanted = name.trimmed().toStdString();
    return madeInPlan(renameKept(plan_, *entry.inPlan, wanted), say(kStepRename, entry.name.toStdString()),
                      say(kRenamed, entry.name.toStdString(), wanted));
  }
  made(renameOwn(entry, name), say(kRenamed, entry.name.toStdString(), name.trimmed().toStdString()));
}

void OwnListsDialog::removeCurrent() {
  const OwnEntry* entry = current();
  if (entry == nullptr) return;
  const Message done = say(kDeleted, entry->name.toStdString());
  if (entry->inPlan) {
    return madeInPlan(stayalight::remove(plan_, *entry->inPlan), say(kStepDelete, entry->name.toStdString()),
                      done);
  }
  made(removeOwn(*entry), done);
}

void OwnListsDialog::made(const Result<OwnChange>& change, const Message& done) {
  tell(change ? done : change.refusal(), !change);
  if (change) changes_.emplace_back(change.value());
  // Not from within the table's own signal: its items are made anew.
  QMetaObject::invokeMethod(
      this, [this] { fill(); }, Qt::QueuedConnection);
  if (change) Q_EMIT changed();
}

void OwnListsDialog::madeInPlan(const Result<Plan>& after, const Message& step, const Message& done) {
  tell(after ? done : after.refusal(), !after);
  if (!after) {
    QMetaObject::invokeMethod(
        this, [this] { fill(); }, Qt::QueuedConnection);
    return;
  }
  changes_.emplace_back(plan_.own);
  plan_ = after.value();
  Q_EMIT planEdited(after.value(), step);
  QMetaObject::invokeMethod(
      this, [this] { fill(); }, Qt::QueuedConnection);
}

void OwnListsDialog::setPlan(const Plan& plan) {
  const bool same = *plan_.own == *plan.own;
  plan_ = plan;
  if (same) return;
  // Somebody else changed the lists, by the plan's own undo for one: what stood before is no step back now.
  changes_.erase(
      std::remove_if(changes_.begin(), changes_.end(),
                     [](const Change& change) { return std::holds_alternative<Shared<OwnLists>>(change); }),
      changes_.end());
  fill();
}

void OwnListsDialog::putLastBack() {
  if (changes_.empty()) return;
  if (const auto* file = std::get_if<OwnChange>(&changes_.back())) {
    if (const auto why = putBack(*file)) return tell(*why, true);
  } else {
    plan_.own = std::get<Shared<OwnLists>>(changes_.back());
    Q_EMIT planEdited(plan_, Message{kStepBack, {}});
  }
  changes_.pop_back();
  tell(Message{kPutBack, {}}, false);
  fill();
  Q_EMIT changed();
}

void OwnListsDialog::tell(const Message& what, bool wrong) {
  told_->setText(words(what, language_));
  QFont font = told_->font();
  font.setBold(wrong);
  told_->setFont(font);
}

bool OwnListsDialog::eventFilter(QObject* watched, QEvent* event) {
  if (watched == table_ && event->type() == QEvent::KeyPress) {
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Delete) {
      removeCurrent();
      return true;
    }
    if (key->matches(QKeySequence::Undo)) {
      putLastBack();
      return true;
    }
  }
  // Before the window's own undo, which is the plan's.
  if (watched == table_ && event->type() == QEvent::ShortcutOverride &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Undo)) {
    event->accept();
    return true;
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace stayalight
