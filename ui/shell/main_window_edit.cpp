#include <QtCore/QMimeData>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QStackedWidget>

#include "ui/answers/answers_column.h"
#include "ui/answers/working_window.h"
#include "ui/board/draw.h"
#include "ui/findings/findings_list.h"
#include "ui/inspector/entity_text.h"
#include "ui/onsite/on_site_list.h"
#include "ui/paper/paper_view.h"
#include "ui/shell/edition_dialog.h"
#include "ui/shell/effect_card.h"
#include "ui/shell/feeder_line.h"
#include "ui/shell/history_window.h"
#include "ui/shell/main_window.h"
#include "ui/shell/start_page.h"
#include "ui/strip/outage_strip.h"
#include "ui/survey/survey_view.h"
#include "ui/waiting/beside.h"

namespace stayalight {
namespace {

constexpr MessageId kOnSiteCount{"shell.side.on_site_count"};
constexpr MessageId kStepMove{"shell.step.move"};
constexpr MessageId kStepMoveMany{"shell.step.move_many"};
constexpr MessageId kStepBack{"shell.step.send_back"};
constexpr MessageId kStepRelocate{"shell.step.relocate"};
constexpr MessageId kStepSwap{"shell.step.swap"};
constexpr MessageId kStepRemove{"inspector.step.remove"};
constexpr MessageId kStepCopy{"inspector.step.copy"};
constexpr MessageId kStepFix{"shell.step.fix"};
constexpr MessageId kStepSet{"inspector.step.set"};
constexpr MessageId kUndoText{"shell.undo_text"};
constexpr MessageId kNothingSelected{"shell.nothing_selected"};
constexpr MessageId kNoOtherPanel{"shell.no_other_panel"};
constexpr MessageId kSelectedMany{"shell.selected_many"};
constexpr MessageId kSelectedOne{"shell.selected_one"};
constexpr MessageId kDropHere{"shell.drop_here"};
constexpr MessageId kHintsIdle{"shell.hints.idle"};
constexpr MessageId kHintsMoving{"shell.hints.moving"};
constexpr MessageId kHintsStart{"shell.hints.start"};
constexpr MessageId kHintsSurvey{"shell.hints.survey"};
constexpr MessageId kHintsPaper{"shell.hints.paper"};
constexpr MessageId kEdition{"shell.edition"};
constexpr MessageId kEditionCanada{"shell.edition.canada"};
constexpr MessageId kSaved{"shell.saved"};
constexpr MessageId kNotSaved{"shell.not_saved"};
constexpr MessageId kRunningTitle{"shell.working.running"};
constexpr MessageId kDone{"shell.done"};
constexpr MessageId kUndone{"shell.undone"};
constexpr MessageId kRedone{"shell.redone"};
constexpr MessageId kUndoAction{"shell.action.undo"};
constexpr MessageId kRedoAction{"shell.action.redo"};
constexpr MessageId kUndoStep{"shell.action.undo_step"};
constexpr MessageId kRedoStep{"shell.action.redo_step"};
constexpr MessageId kPictureCopied{"shell.picture_copied"};
constexpr MessageId kAllCopied{"shell.picture_copied_all"};
constexpr MessageId kDrawing{"shell.waiting.picture"};
constexpr MessageId kPictureCancelled{"shell.cancelled.picture"};
constexpr MessageId kNoFigure{"shell.no_figure"};

}  // namespace

void MainWindow::edit(Result<Plan> after, const Message& name, const QString& mergeWith) {
  if (!after) {
    refuse(after.refusal());
    return;
  }
  const QString text = words(name, language_);
  if (const std::optional<Message> why = document_->apply(std::move(after).value(), text, mergeWith)) {
    refuse(*why);
    return;
  }
  say(words(language_, kDone, text.toStdString()));
}

void MainWindow::stepBack() {
  if (boards_->carrying()) boards_->cancel();
  const std::string step = document_->undoText().toStdString();
  document_->undo();
  say(words(language_, kUndone, step));
}

void MainWindow::stepForth() {
  if (boards_->carrying()) boards_->cancel();
  const std::string step = document_->redoText().toStdString();
  document_->redo();
  say(words(language_, kRedone, step));
}

void MainWindow::showHistory() {
  auto* open = findChild<HistoryWindow*>();
  if (open == nullptr) {
    open = new HistoryWindow(*document_, language_, this);
    connect(open, &HistoryWindow::chosen, this, [this](int step) {
      if (boards_->carrying()) boards_->cancel();
      survey_->finishTyping();
      document_->goTo(step);
    });
  }
  open->show();
  open->raise();
  open->activateWindow();
}

void MainWindow::refuse(const Message& why) { say(words(why, language_), true); }

void MainWindow::say(const QString& text, bool wrong) {
  status_->setText(text);
  QPalette colors = status_->palette();
  colors.setColor(QPalette::WindowText, palette_.color(wrong ? ColorRole::mustFix : ColorRole::ink));
  status_->setPalette(colors);
}

void MainWindow::saySelection() {
  const std::vector<EntityRef> breakers = boards_->selection();
  if (breakers.size() == 1) {
    say(words(language_, kSelectedOne, entityName(document_->plan(), breakers.front(), language_),
              placeName(document_->plan(), breakers.front(), language_)));
  } else if (breakers.empty()) {
    say({});
  } else {
    say(words(language_, kSelectedMany, static_cast<std::int64_t>(breakers.size())));
  }
}

QString MainWindow::statusText() const { return status_->text(); }

void MainWindow::planChanged() {
  pages_->setCurrentIndex(open_ ? 1 : 0);
  tools_->setVisible(open_);
  if (open_) {
    language_.follow(document_->plan());
    assessment_ = assess(document_->plan());
    showAll(document_->plan(), assessment_);
    survey_->show(document_->plan(), assessment_, language_, formStyle().units);
    onSite_->show(assessment_.onSite, language_);
    const auto open = static_cast<std::int64_t>(assessment_.onSite.size());
    actions_[Command::onSite]->setIconText(words(language_, kOnSiteCount, open));
    inspector_->setStarts(assessment_.starts);
    inspector_->setPlan(document_->plan());
    paper_->setPlan(document_->plan(), assessment_, document_->name());
    showSelection();
    showFound();
  }
  for (const Command command :
       {Command::history,     Command::copyPicture,  Command::find,          Command::save,
        Command::saveAs,      Command::print,        Command::savePdf,       Command::move,
        Command::sendBack,    Command::facts,        Command::working,       Command::add,
        Command::copy,        Command::remove,       Command::boards,        Command::paper,
        Command::survey,      Command::readCircuits, Command::writeCircuits, Command::answers,
        Command::inspector,   Command::catalogue,    Command::onSite,        Command::fromCatalogue,
        Command::keepTemplate}) {
    actions_[command]->setEnabled(open_);
  }
  enableForPlace();
  showTarget();
  showKept();
  showFileState();
  showHints();
}

void MainWindow::showFileState() {
  actions_[Command::undo]->setEnabled(open_ && document_->canUndo());
  actions_[Command::redo]->setEnabled(open_ && document_->canRedo());
  const QString undo = document_->undoText();
  const auto label = [&](Command command, MessageId plain, MessageId ofStep, QString step) {
    // An ampersand in a name would underline a letter.
    step.replace(QLatin1Char('&'), QLatin1String("&&"));
    actions_[command]->setText(step.isEmpty() ? words(language_, plain)
                                              : words(language_, ofStep, step.toStdString()));
  };
  label(Command::undo, kUndoAction, kUndoStep, open_ ? undo : QString());
  label(Command::redo, kRedoAction, kRedoStep, open_ ? document_->redoText() : QString());
  undoText_->setText(undo.isEmpty() ? QString() : words(language_, kUndoText, undo.toStdString()));
  if (open_) {
    const bool canada = document_->plan().site->country.is(Country::canada);
    const std::string saved = words(language_, document_->isModified() ? kNotSaved : kSaved).toStdString();
    edition_->setText(
        canada ? words(language_, kEditionCanada, saved)
               : words(language_, kEdition, std::string(document_->plan().site->edition.word()), saved));
  } else {
    edition_->clear();
  }
}

void MainWindow::showAll(const Plan& plan, const Assessment& a) {
  if (!boards_->carrying()) boards_->setPlan(plan, a);
  answers_->show(plan, a, language_);
  sideSummary_->setText(hoursSentence(plan, a, language_));
  strip_->show(plan, a, language_);
  findings_->show(plan, a.findings, language_);
  feeder_->show(plan, a, palette_, language_);
}

std::vector<BreakerId> MainWindow::selectedBreakers() const {
  std::vector<BreakerId> all;
  for (const EntityRef& ref : boards_->selection()) all.push_back(BreakerId{ref.id});
  return all;
}

std::vector<CircuitId> MainWindow::selectedCircuits() const {
  std::vector<CircuitId> all;
  for (const BreakerId id : selectedBreakers()) {
    if (const Circuit* circuit = circuitOn(document_->plan(), id, Reading::planned))
      all.push_back(circuit->id);
  }
  return all;
}

void MainWindow::showSelection() {
  const std::vector<BreakerId> selected = selectedBreakers();
  card_->show(
      effectOf(document_->plan(), assessment_, selected.empty() ? BreakerId{} : selected.front(), language_),
      palette_, language_);
  showHints();
}

void MainWindow::showHints() {
  if (!open_) {
    hints_->setText(words(language_, kHintsStart));
    return;
  }
  if (places_->currentIndex() == 1)
    hints_->setText(words(language_, kHintsPaper));
  else if (inSurvey())
    hints_->setText(words(language_, kHintsSurvey));
  else
    hints_->setText(words(language_, boards_->carrying() ? kHintsMoving : kHintsIdle));
}

void MainWindow::showPending(const std::optional<BoardMove>& move) {
  if (!move) {
    showAll(document_->plan(), assessment_);
    showSelection();
    return;
  }
  const Result<Plan> moved = applied(document_->plan(), *move);
  if (!moved) {
    showAll(document_->plan(), assessment_);  // nothing of the space before it stays
    card_->show(effectOf(document_->plan(), assessment_, *move, moved, nullptr, language_), palette_,
                language_);
    refuse(moved.refusal());
  } else {
    const Assessment after = assess(moved.value());
    card_->show(effectOf(document_->plan(), assessment_, *move, moved, &after, language_), palette_,
                language_);
    answers_->show(moved.value(), after, language_);
    strip_->show(moved.value(), after, language_);
    feeder_->show(moved.value(), after, palette_, language_);
    if (!move->circuits.empty()) {
      say(words(language_, kDropHere,
                placeName(moved.value(), {RecordKind::circuit, move->circuits.front().number}, language_)));
    }
  }
  showHints();
}

void MainWindow::connectViews() {
  // A change of the plan is assessed once; saving changes only what the window says about the file.
  connect(document_, &PlanDocument::planChanged, this, [this] {
    if (open_) planChanged();
  });
  connect(document_, &PlanDocument::changed, this, [this] {
    showFileState();
    showTitle();
  });
  connect(document_, &PlanDocument::changedOnDisk, this, [this] { askReload(); });
  connect(document_, &PlanDocument::autosaveFailed, this, [this](const Message& why) { refuse(why); });
  const auto circuitsName = [this](const std::vector<CircuitId>& circuits) {
    return circuits.empty()
               ? std::string()
               : entityName(document_->plan(), {RecordKind::circuit, circuits.front().number}, language_);
  };
  connect(boards_, &BoardsView::moveRequested, this,
          [this, circuitsName](const std::vector<CircuitId>& circuits, PanelId panel,
                               std::optional<SpacePosition> position) {
            Result<Plan> after = moveCircuits(document_->plan(), circuits, panel, position);
            Message name;
            if (after && circuits.size() == 1) {
              const Circuit* moved = stayalight::find(after.value(), circuits.front());
              name = stayalight::say(kStepMove, circuitsName(circuits),
                                     breakerPlace(after.value(), moved->planned, language_));
            } else {
              name = stayalight::say(kStepMoveMany, static_cast<std::int64_t>(circuits.size()));
            }
            edit(std::move(after), name);
          });
  connect(boards_, &BoardsView::sendBackRequested, this,
          [this, circuitsName](const std::vector<CircuitId>& circuits) {
            edit(sendBack(document_->plan(), circuits), stayalight::say(kStepBack, circuitsName(circuits)));
          });
  connect(boards_, &BoardsView::relocateRequested, this, [this](BreakerId breaker, SpacePosition position) {
    Result<Plan> after = relocate(document_->plan(), breaker, position);
    const std::string name = entityName(document_->plan(), {RecordKind::breaker, breaker.number}, language_);
    edit(std::move(after), stayalight::say(kStepRelocate, name));
  });
  connect(boards_, &BoardsView::swapRequested, this, [this](BreakerId first, BreakerId second) {
    const auto name = [this](BreakerId id) {
      return entityName(document_->plan(), {RecordKind::breaker, id.number}, language_);
    };
    edit(swapBreakers(document_->plan(), first, second),
         stayalight::say(kStepSwap, name(first), name(second)));
  });
  connect(boards_, &BoardsView::selectionChanged, this, [this](const std::vector<EntityRef>& breakers) {
    showSelection();
    if (breakers.size() == 1) {
      const EntityRef& ref = breakers.front();
      const Circuit* circuit = circuitOn(document_->plan(), BreakerId{ref.id}, Reading::planned);
      inspector_->look(circuit != nullptr ? EntityRef{RecordKind::circuit, circuit->id.number} : ref);
    }
    if (!breakers.empty()) saySelection();
  });
  connect(boards_, &BoardsView::removeRequested, this,
          [this](const std::vector<EntityRef>&) { removeSelection(); });
  connect(boards_, &BoardsView::factsRequested, this, [this](EntityRef breaker) {
    const Circuit* circuit = circuitOn(document_->plan(), BreakerId{breaker.id}, Reading::planned);
    inspector_->look(circuit != nullptr ? EntityRef{RecordKind::circuit, circuit->id.number} : breaker);
    showSide(Command::inspector);
    inspector_->focusField({});
  });
  connect(boards_, &BoardsView::workingRequested, this,
          [this](EntityRef breaker) { workingOf(BreakerId{breaker.id}); });
  connect(boards_, &BoardsView::pendingChanged, this,
          [this](const std::optional<BoardMove>& move, const Preview* preview) {
            showPending(move);
            // No word of the space before it stays.
            if (!move && preview != nullptr)
              refuse(preview->refusal);
            else if (!move)
              saySelection();
          });
  connect(boards_, &BoardsView::refused, this, [this](const Message& reason) { refuse(reason); });
  connect(boards_, &BoardsView::contextMenuRequested, this,
          [this](EntityRef breaker, QPoint global) { contextMenu(breaker, global); });
  connect(answers_, &AnswersColumn::workingRequested, this,
          [this](const WorkingTarget& target) { openWorking(target); });
  connect(survey_, &SurveyView::edited, this,
          [this](const FormEdit& made) { edit(made.plan, made.name, made.mergeWith); });
  connect(survey_, &SurveyView::refused, this, [this](const Message& why) { refuse(why); });
  connect(survey_, &SurveyView::said, this, [this](const QString& text) { say(text); });
  connect(survey_, &SurveyView::currentChanged, surveyLook_, [this] { surveyLook_->start(); });
  connect(surveyLook_, &QTimer::timeout, this, [this] {
    const std::optional<EntityRef> what = survey_->current();
    if (inSurvey() && what) inspector_->look(*what);
  });
  connect(inspector_, &Inspector::edited, this, [this](const FormEdit& made) {
    if (takesEdition(made.plan)) edit(made.plan, made.name, made.mergeWith);
  });
  connect(inspector_, &Inspector::refused, this, [this](const Message& why) { refuse(why); });
  connect(onSite_, &OnSiteList::chosen, this, [this](const OnSiteItem& item) { goToFact(item); });
  connect(findings_, &FindingsList::jumpRequested, this, [this](const Finding& finding) { jumpTo(finding); });
  connect(findings_, &FindingsList::fixRequested, this,
          [this](const Finding& finding) { applyFindingFix(finding); });
  connect(
      strip_, &OutageStrip::scenarioEdited, this, [this](const std::string& key, const FieldValue& value) {
        const Field* field = fieldOf(RecordKind::scenario, key);
        if (field == nullptr || field->get(findRecord(document_->plan(), {RecordKind::scenario})) == value) {
          showAll(document_->plan(), assessment_);
          return;
        }
        edit(setField(document_->plan(), {RecordKind::scenario}, key, value),
             stayalight::say(kStepSet, fieldLabel(*field, language_),
                             kindName(RecordKind::scenario, language_)));
      });
  connect(strip_, &OutageStrip::startPreviewed, this, [this](const std::optional<TimeOfDay>& start) {
    if (!start) {
      showAll(document_->plan(), assessment_);
      return;
    }
    const Result<Plan> then = setField(document_->plan(), {RecordKind::scenario}, "start_min",
                                       FieldValue(std::int64_t{start->minutes()}));
    if (!then) return;
    const Assessment after = assess(then.value());
    answers_->show(then.value(), after, language_);
    strip_->show(then.value(), after, language_);
  });
  connect(paper_, &PaperView::paperSizeChosen, this, [this](PaperSize size) {
    const std::string word(ChoiceWords<PaperSize>::words[static_cast<std::size_t>(size)]);
    const Field* field = fieldOf(RecordKind::site, "paper");
    edit(setField(document_->plan(), {RecordKind::site}, "paper", FieldValue(word)),
         stayalight::say(kStepSet, fieldLabel(*field, language_), kindName(RecordKind::site, language_)));
  });
  connect(start_, &StartPage::planReady, this, [this](const Plan& plan) { startPlan(plan); });
  connect(start_, &StartPage::sampleRequested, this, [this] { openSample(); });
  connect(start_, &StartPage::openRequested, this, [this] { chooseFile(false); });
}

void MainWindow::moveSelection() {
  const std::vector<BreakerId> selected = selectedBreakers();
  const Plan& plan = document_->plan();
  if (selected.empty()) return refuse(Message{kNothingSelected, {}});
  const Breaker* first = stayalight::find(plan, selected.front());
  const Panel* backup = backupPanel(plan);
  const Panel* main = mainPanel(plan);
  if (first == nullptr || backup == nullptr || main == nullptr) return refuse(Message{kNoOtherPanel, {}});
  const PanelId target = first->panel == backup->id ? main->id : backup->id;
  const std::optional<BoardMove> move = moveFor(plan, selected, target, std::nullopt);
  if (!move) return refuse(Message{kNothingSelected, {}});
  if (move->kind == MoveKind::sendBack)
    Q_EMIT boards_->sendBackRequested(move->circuits);
  else
    Q_EMIT boards_->moveRequested(move->circuits, move->panel, move->position);
}

void MainWindow::sendSelectionBack() {
  const std::vector<CircuitId> circuits = selectedCircuits();
  if (circuits.empty()) return refuse(Message{kNothingSelected, {}});
  Q_EMIT boards_->sendBackRequested(circuits);
}

void MainWindow::copySelection() {
  if (inSurvey()) return survey_->duplicateRows();
  const std::vector<BreakerId> selected = selectedBreakers();
  if (selected.empty()) return refuse(Message{kNothingSelected, {}});
  const EntityRef ref{RecordKind::breaker, selected.front().number};
  const Message name = stayalight::say(kStepCopy, entityName(document_->plan(), ref, language_));
  if (const Circuit* circuit = circuitOn(document_->plan(), selected.front(), Reading::planned))
    edit(copyCircuit(document_->plan(), circuit->id), name);
  else
    edit(copyBreaker(document_->plan(), selected.front()), name);
}

void MainWindow::removeSelection() {
  if (inSurvey()) return survey_->removeRows();
  const std::vector<BreakerId> selected = selectedBreakers();
  if (selected.empty()) return refuse(Message{kNothingSelected, {}});
  const Message name = stayalight::say(
      kStepRemove, entityName(document_->plan(), {RecordKind::breaker, selected.front().number}, language_));
  Result<Plan> after = document_->plan();
  for (const BreakerId id : selected) {
    const Plan before = after.value();
    const Circuit* circuit = circuitOn(before, id, Reading::planned);
    after = circuit != nullptr ? stayalight::remove(before, {RecordKind::circuit, circuit->id.number})
                               : stayalight::remove(before, {RecordKind::breaker, id.number});
    if (!after) break;
  }
  edit(std::move(after), name);
}

bool MainWindow::takesEdition(const Plan& after) {
  const Plan& now = document_->plan();
  const bool other = after.site->edition.known() && after.site->edition != now.site->edition;
  if (!other || !now.site->country.is(Country::unitedStates)) return true;
  EditionDialog dialog(now, after.site->edition.valueOr(Edition::y2023), language_, this);
  if (dialog.exec() == QDialog::Accepted) return true;
  // The field shows the edition that was chosen: it goes back with the plan.
  inspector_->setPlan(after);
  inspector_->setPlan(now);
  return false;
}

void MainWindow::copyPicture() {
  PanelId only;
  if (const std::vector<BreakerId> selected = selectedBreakers(); !selected.empty())
    only = stayalight::find(document_->plan(), selected.front())->panel;
  DrawingOptions options;
  options.theme = palette_.theme();
  BoardPicture picture;
  if (!beside(this, language_, words(language_, kDrawing),
              [&picture, options, only, plan = document_->plan(), assessment = assessment_,
               language = language_](const Watch& watch) {
                picture = boardPicture(plan, assessment, language, options, only, watch);
              })) {
    say(words(language_, kPictureCancelled));
    return;
  }
  auto* copied = new QMimeData;
  copied->setImageData(picture.image);
  copied->setData(QStringLiteral("image/svg+xml"), picture.svg);
  QGuiApplication::clipboard()->setMimeData(copied);
  const Panel* panel = stayalight::find(document_->plan(), only);
  say(panel != nullptr ? words(language_, kPictureCopied, panel->name) : words(language_, kAllCopied));
}

void MainWindow::applyFindingFix(const Finding& finding) {
  if (!finding.fix) return;
  edit(applyFix(document_->plan(), *finding.fix),
       stayalight::say(kStepFix, words(finding.fixName, language_).toStdString()));
}

void MainWindow::jumpTo(const Finding& finding) {
  if (finding.places.empty()) return;
  const Plan& plan = document_->plan();
  EntityRef place = finding.places.front();
  BreakerId breaker;
  if (place.kind == RecordKind::breaker) breaker = BreakerId{place.id};
  EntityRef owner = place;
  if (owner.kind == RecordKind::useWindow) owner = ownerOf(plan, owner);
  if (owner.kind == RecordKind::load) owner = ownerOf(plan, owner);
  if (owner.kind == RecordKind::circuit) {
    if (const Circuit* circuit = stayalight::find(plan, CircuitId{owner.id}))
      breaker = circuit->planned.valid() ? circuit->planned : circuit->breaker;
  }
  showPlace(Command::boards);
  inspector_->look(place);
  if (breaker.valid())
    boards_->focusBreaker(breaker);
  else
    showSide(Command::inspector);
}

// In the survey to the row, on the boards to the breaker; the facts beside it, in the field to fill in.
void MainWindow::goToFact(const OnSiteItem& item) {
  const Plan& plan = document_->plan();
  EntityRef owner = item.place;
  if (owner.kind == RecordKind::load) owner = ownerOf(plan, owner);
  BreakerId breaker;
  if (owner.kind == RecordKind::breaker) breaker = BreakerId{owner.id};
  if (const Circuit* circuit =
          owner.kind == RecordKind::circuit ? stayalight::find(plan, CircuitId{owner.id}) : nullptr) {
    breaker = circuit->planned.valid() ? circuit->planned : circuit->breaker;
    if (inSurvey() && circuit->breaker.valid()) breaker = circuit->breaker;
  }
  if (places_->currentIndex() == 1) showPlace(Command::boards);
  if (breaker.valid()) {
    if (inSurvey())
      survey_->focusBreaker(breaker);
    else
      boards_->focusBreaker(breaker);
  }
  showSide(Command::inspector);
  inspector_->look(item.place);
  inspector_->focusField(item.field);
}

void MainWindow::openWorking(const WorkingTarget& target) {
  if (!open_) return;
  const Assessment recorded = assess(document_->plan(), Circumstances{.record = true});
  const Site& site = *document_->plan().site;
  const QString edition =
      site.country.is(Country::unitedStates)
          ? QString::fromStdString(std::string(name(site.edition.valueOr(Edition::y2023))))
          : QString();
  auto* window = new WorkingWindow(target, recorded, edition, language_, palette_, this);
  window->setAttribute(Qt::WA_DeleteOnClose);
  window->show();
}

void MainWindow::workingOf(BreakerId id) {
  const Plan& plan = document_->plan();
  const Breaker* breaker = stayalight::find(plan, id);
  const Panel* panel = breaker != nullptr ? stayalight::find(plan, breaker->panel) : nullptr;
  if (panel == nullptr) return;
  for (const BreakerFigures& figures : assessment_.breakers) {
    if (figures.breaker != id) continue;
    const std::vector<Leg> legs = poleLegs(*panel, placementOf(*breaker));
    const std::size_t pole = legs.size() > 1 && figures.running[1] > figures.running[0] ? 1 : 0;
    const std::string name = entityName(plan, {RecordKind::breaker, id.number}, language_);
    openWorking({words(language_, kRunningTitle, name),
                 amperes(figures.running[pole], language_),
                 {figures.running[pole].count()},
                 {"current"},
                 breakerRunning(*panel, *breaker, legs[pole])});
    return;
  }
  refuse(Message{kNoFigure, {}});
}

void MainWindow::contextMenu(EntityRef breaker, QPoint global) {
  auto* menu = new QMenu(this);
  menu->setObjectName(QStringLiteral("cellMenu"));
  menu->setAttribute(Qt::WA_DeleteOnClose);
  if (stayalight::find(document_->plan(), BreakerId{breaker.id}) != nullptr) {
    for (const Command command : {Command::move, Command::sendBack, Command::facts, Command::working})
      menu->addAction(actions_[command]);
    menu->addSeparator();
    for (const Command command : {Command::copy, Command::remove}) menu->addAction(actions_[command]);
    menu->addSeparator();
  }
  menu->addAction(actions_[Command::add]);
  menu->popup(global);
}

}  // namespace stayalight
