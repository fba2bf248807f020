#include <QtCore/QMimeData>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QInputDialog>
#include <QtWidgets/QMenu>
#include <QtWidgets/QStackedWidget>

#include "core/edit/part.h"
#include "ui/answers/answers_column.h"
#include "ui/catalogue/carried.h"
#include "ui/catalogue/catalogue_panel.h"
#include "ui/catalogue/own_lists.h"
#include "ui/catalogue/own_lists_dialog.h"
#include "ui/document/plan_file.h"
#include "ui/inspector/entity_text.h"
#include "ui/shell/feeder_line.h"
#include "ui/shell/main_window.h"
#include "ui/strip/outage_strip.h"

namespace stayalight {
namespace {

constexpr MessageId kStepAddLoad{"shell.step.add_load"};
constexpr MessageId kStepTake{"shell.step.take"};
constexpr MessageId kStepPaste{"shell.step.paste"};
constexpr MessageId kStepKeep{"shell.step.keep"};
constexpr MessageId kForEveryPlan{"shell.keep.every_plan"};
constexpr MessageId kInThisPlan{"shell.keep.this_plan"};
constexpr MessageId kOfThisPlan{"shell.take.of_plan"};
constexpr MessageId kLoadHere{"shell.load_here"};
constexpr MessageId kKept{"shell.kept"};
constexpr MessageId kOwnEmpty{"shell.own_empty"};
constexpr MessageId kNoCircuit{"shell.no_circuit_looked_at"};
constexpr MessageId kCopied{"shell.copied"};
constexpr MessageId kNothingSelected{"shell.nothing_selected"};
constexpr MessageId kKeepTemplate{"shell.action.keep_template.tip"};
constexpr MessageId kTemplateName{"shell.template.name"};
constexpr MessageId kTemplateKept{"shell.template.kept"};
constexpr MessageId kNoTemplates{"shell.menu.no_templates"};

/// The name a person gave the record; what it is where none was given.
std::string givenName(const Plan& plan, const EntityRef& ref, const Language& language) {
  const Field* field = fieldOf(ref.kind, "name");
  const void* record = findRecord(plan, ref);
  if (field == nullptr || record == nullptr) return {};
  const std::string given = std::get<std::string>(field->get(record));
  return given.empty() ? entityName(plan, ref, language) : given;
}

/// The circuit a record belongs to, or nullptr.
const Circuit* circuitOfRecord(const Plan& plan, EntityRef ref) {
  if (ref.kind == RecordKind::breaker) return circuitOn(plan, BreakerId{ref.id}, Reading::planned);
  if (ref.kind == RecordKind::load) ref = ownerOf(plan, ref);
  return ref.kind == RecordKind::circuit ? find(plan, CircuitId{ref.id}) : nullptr;
}

}  // namespace

void MainWindow::connectLists() {
  const auto on = [this](Command command, auto&& what) {
    connect(actions_[command], &QAction::triggered, this, what);
  };
  on(Command::fromCatalogue, [this] { searchCatalogue(); });
  on(Command::keepTemplate, [this] { keepAsTemplate(); });
  on(Command::ownLists, [this] { showOwnLists(); });
  on(Command::copyCircuits, [this] { copyCircuits(); });
  on(Command::pasteCircuits, [this] { pasteCircuits(); });
  connect(templates_, &QMenu::aboutToShow, this, [this] { fillTemplates(); });
  connect(catalogue_, &CataloguePanel::addRequested, this, [this](const Load& load) {
    const Circuit* circuit = circuitOfRecord(document_->plan(), inspector_->lookingAt());
    circuit != nullptr ? addLoadTo(*circuit, load) : refuse(Message{kNoCircuit, {}});
  });
  connect(inspector_, &Inspector::looked, this, [this] { showTarget(); });
  connect(inspector_, &Inspector::wished, this, [this](const EntityRef& record, Wish wish, QPoint global) {
    switch (wish) {
      case Wish::fromCatalogue:
        return searchCatalogue();
      case Wish::keep:
        return offerToKeep(record, global);
      case Wish::take:
        return offerOwn(record, global);
    }
  });
  boards_->setDropTest([this](const QMimeData& carried, BreakerId breaker) {
    return carried.hasFormat(QString::fromLatin1(kLoadFormat)) &&
           circuitOn(document_->plan(), breaker, Reading::planned) != nullptr;
  });
  connect(boards_, &BoardsView::heldOver, this,
          [this](const QMimeData* carried, std::optional<BreakerId> breaker) { holdLoad(carried, breaker); });
  connect(boards_, &BoardsView::dropped, this, [this](const QMimeData* carried, BreakerId breaker) {
    const std::optional<CatalogueEntry> entry = loadIn(*carried);
    const Circuit* circuit = circuitOn(document_->plan(), breaker, Reading::planned);
    if (!entry || circuit == nullptr) return;
    const EntityRef onto{RecordKind::circuit, circuit->id.number};
    addLoadTo(*circuit, loadFrom(*entry));
    boards_->select({breaker});
    inspector_->look(onto);
    showSelection();
  });
}

void MainWindow::addLoadTo(const Circuit& circuit, const Load& load) {
  const std::string name = entityName(document_->plan(), {RecordKind::circuit, circuit.id.number}, language_);
  edit(addLoad(document_->plan(), circuit.id, load), stayalight::say(kStepAddLoad, load.name, name));
}

// As while a breaker is carried: the answers show what would come of it.
void MainWindow::holdLoad(const QMimeData* carried, std::optional<BreakerId> breaker) {
  if (breaker == held_) return;
  held_ = breaker;
  const Plan& plan = document_->plan();
  const std::optional<CatalogueEntry> entry = breaker && carried != nullptr ? loadIn(*carried) : std::nullopt;
  const Circuit* circuit = breaker ? circuitOn(plan, *breaker, Reading::planned) : nullptr;
  if (!entry || circuit == nullptr) {
    showAll(plan, assessment_);
    return;
  }
  const EntityRef onto{RecordKind::circuit, circuit->id.number};
  const Result<Plan> after = addLoad(plan, circuit->id, loadFrom(*entry));
  if (!after) return refuse(after.refusal());
  const Assessment then = assess(after.value());
  answers_->show(after.value(), then, language_);
  strip_->show(after.value(), then, language_);
  feeder_->show(after.value(), then, palette_, language_);
  say(words(language_, kLoadHere, entry->load.name, entityName(plan, onto, language_),
            placeName(plan, onto, language_)));
}

void MainWindow::showTarget() {
  const Plan& plan = document_->plan();
  const Circuit* circuit = open_ ? circuitOfRecord(plan, inspector_->lookingAt()) : nullptr;
  catalogue_->setTarget(
      circuit == nullptr
          ? QString()
          : QString::fromStdString(entityName(plan, {RecordKind::circuit, circuit->id.number}, language_)));
}

void MainWindow::searchCatalogue() {
  if (places_->currentIndex() != 0) showPlace(Command::boards);
  showSide(Command::catalogue);
  showTarget();
  catalogue_->startSearch();
}

void MainWindow::offerToKeep(const EntityRef& record, QPoint global) {
  QMenu* menu = listMenu(QStringLiteral("keepWhere"));
  connect(menu->addAction(words(language_, kForEveryPlan)), &QAction::triggered, this,
          [this, record] { keep(record); });
  connect(menu->addAction(words(language_, kInThisPlan)), &QAction::triggered, this, [this, record] {
    const std::string name = givenName(document_->plan(), record, language_);
    edit(keepInPlan(document_->plan(), record, name), stayalight::say(kStepKeep, name));
  });
  menu->popup(global);
}

void MainWindow::keep(const EntityRef& record) {
  const Plan& plan = document_->plan();
  const std::string name = givenName(plan, record, language_);
  if (record.kind == RecordKind::load) {
    const auto* load = static_cast<const Load*>(findRecord(plan, record));
    if (load == nullptr) return;
    if (const auto why = keepLoad(*load)) return refuse(*why);
    return say(words(language_, kKept, name));
  }
  const Result<QString> kept = keepRecord(plan, record, QString::fromStdString(name));
  kept ? say(words(language_, kKept, kept.value().toStdString())) : refuse(kept.refusal());
}

void MainWindow::offerOwn(const EntityRef& record, QPoint global) {
  std::vector<OwnEntry> entries = keptEntries(document_->plan(), keptKind(record.kind));
  for (const OwnFile& file : ownRecords(record.kind))
    entries.push_back({record.kind, false, file.name, file.path, {}, {}});
  if (entries.empty()) return refuse(stayalight::say(kOwnEmpty, kindName(record.kind, language_)));
  QMenu* menu = listMenu(QStringLiteral("ownList"));
  for (const OwnEntry& entry : entries) {
    QString text = entry.inPlan ? words(language_, kOfThisPlan, entry.name.toStdString()) : entry.name;
    QAction* action = menu->addAction(text.replace(QLatin1Char('&'), QLatin1String("&&")));
    connect(action, &QAction::triggered, this, [this, record, entry] {
      const Plan& plan = document_->plan();
      edit(entry.inPlan ? takeKept(plan, *entry.inPlan, record) : takeRecord(plan, record, entry.path),
           stayalight::say(kStepTake, entry.name.toStdString()));
    });
  }
  menu->popup(global);
}

QMenu* MainWindow::listMenu(const QString& name) {
  auto* menu = new QMenu(this);
  menu->setObjectName(name);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  return menu;
}

void MainWindow::keepAsTemplate() {
  QInputDialog dialog(this);
  dialog.setObjectName(QStringLiteral("templateName"));
  dialog.setWindowTitle(words(language_, kKeepTemplate));
  dialog.setLabelText(words(language_, kTemplateName));
  dialog.setTextValue(document_->name());
  if (dialog.exec() != QDialog::Accepted || dialog.textValue().trimmed().isEmpty()) return;
  const Result<QString> kept = keepTemplate(document_->plan(), dialog.textValue());
  kept ? say(words(language_, kTemplateKept, kept.value().toStdString())) : showError(kept.refusal());
}

void MainWindow::showOwnLists() {
  auto* open = findChild<OwnListsDialog*>();
  if (open == nullptr) {
    open = new OwnListsDialog(language_, this);
    showKept();
    connect(open, &OwnListsDialog::planEdited, this,
            [this](const Plan& plan, const Message& step) { edit(Result<Plan>(plan), step); });
    // The catalogue shows the loads among them.
    connect(open, &OwnListsDialog::changed, this, [this] {
      if (catalogue_->isVisible()) catalogue_->reload();
    });
  }
  open->show();
  open->raise();
  open->activateWindow();
}

void MainWindow::showKept() {
  catalogue_->setKept(open_ ? keptLoads(document_->plan()) : std::vector<CatalogueEntry>{});
  if (auto* lists = findChild<OwnListsDialog*>()) lists->setPlan(open_ ? document_->plan() : Plan{});
}

void MainWindow::fillTemplates() {
  templates_->clear();
  for (const OwnFile& file : ownTemplates()) {
    QString text = file.name;
    QAction* action = templates_->addAction(text.replace(QLatin1Char('&'), QLatin1String("&&")));
    connect(action, &QAction::triggered, this, [this, file] {
      if (!mayLeave()) return;
      const Result<ReadPlan> read = loadPlan(file.path);
      read ? startPlan(read.value().plan) : showError(read.refusal());
    });
  }
  if (templates_->isEmpty()) templates_->addAction(words(language_, kNoTemplates))->setEnabled(false);
}

void MainWindow::copyCircuits() {
  const std::vector<CircuitId> circuits = selectedCircuits();
  if (circuits.empty()) return refuse(Message{kNothingSelected, {}});
  Result<std::unique_ptr<QMimeData>> carried = carriedCircuits(document_->plan(), circuits, language_);
  if (!carried) return refuse(carried.refusal());
  const auto count = static_cast<std::int64_t>(carried.value()->text().count(QLatin1Char('\n')) + 1);
  QGuiApplication::clipboard()->setMimeData(carried.value().release());
  say(words(language_, kCopied, count));
}

PanelId MainWindow::panelInHand() const {
  const Plan& plan = document_->plan();
  const std::vector<BreakerId> selected = selectedBreakers();
  if (!selected.empty()) {
    if (const Breaker* breaker = stayalight::find(plan, selected.front())) return breaker->panel;
  }
  for (const auto& panel : plan.panels) {
    const QWidget* board = boards_->boardWidget(panel->id);
    if (board != nullptr && board == focusWidget()) return panel->id;
  }
  const Panel* main = mainPanel(plan);
  return main != nullptr ? main->id : PanelId{};
}

void MainWindow::pasteCircuits() {
  const Result<Plan> part = circuitsIn(QGuiApplication::clipboard()->mimeData(), language_);
  if (!part) return refuse(part.refusal());
  const PanelId panel = panelInHand();
  const Plan before = document_->plan();
  Result<Plan> after = stayalight::pasteCircuits(before, part.value(), panel);
  std::vector<BreakerId> fresh;
  if (after) {
    for (const auto& breaker : after.value().breakers) {
      if (stayalight::find(before, breaker->id) == nullptr) fresh.push_back(breaker->id);
    }
  }
  edit(std::move(after), stayalight::say(kStepPaste, static_cast<std::int64_t>(part.value().circuits.size()),
                                         entityName(before, {RecordKind::panel, panel.number}, language_)));
  if (!fresh.empty()) boards_->select(fresh);
  showSelection();
}

}  // namespace stayalight
