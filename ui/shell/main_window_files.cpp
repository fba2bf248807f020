#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QMimeData>
#include <QtGui/QAction>
#include <QtGui/QCloseEvent>
#include <QtGui/QDropEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QFileDialog>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QPushButton>
#include <algorithm>

#include "core/file/file.h"
#include "ui/document/circuits_file.h"
#include "ui/settings/settings.h"
#include "ui/shell/main_window.h"
#include "ui/survey/survey_view.h"
#include "ui/waiting/beside.h"

namespace stayalight {
namespace {

constexpr MessageId kUntitled{"shell.untitled"};
constexpr MessageId kTitle{"shell.title"};
constexpr MessageId kOpenTitle{"shell.open.title"};
constexpr MessageId kSaveTitle{"shell.save.title"};
constexpr MessageId kFilter{"shell.filter"};
constexpr MessageId kReadCircuitsTitle{"shell.circuits.read_title"};
constexpr MessageId kWriteCircuitsTitle{"shell.circuits.write_title"};
constexpr MessageId kCircuitsFilter{"shell.circuits.filter"};
constexpr MessageId kCircuitsStep{"shell.circuits.step"};
constexpr MessageId kCircuitsRead{"shell.circuits.read"};
constexpr MessageId kCircuitsMore{"shell.circuits.more"};
constexpr MessageId kErrorTitle{"shell.error.title"};
constexpr MessageId kAskSave{"shell.ask.save"};
constexpr MessageId kAskSaveYes{"shell.ask.save_yes"};
constexpr MessageId kAskSaveNo{"shell.ask.save_no"};
constexpr MessageId kCancel{"shell.ask.cancel"};
constexpr MessageId kAskUnread{"shell.ask.unread"};
constexpr MessageId kUnreadStay{"shell.ask.unread_stay"};
constexpr MessageId kUnreadDrop{"shell.ask.unread_drop"};
constexpr MessageId kAskOverwrite{"shell.ask.overwrite"};
constexpr MessageId kOverwrite{"shell.ask.overwrite_yes"};
constexpr MessageId kSaveElsewhere{"shell.ask.save_elsewhere"};
constexpr MessageId kAskRecover{"shell.ask.recover"};
constexpr MessageId kAskRecoverChanged{"shell.ask.recover_changed"};
constexpr MessageId kRecoverYes{"shell.ask.recover_yes"};
constexpr MessageId kRecoverNo{"shell.ask.recover_no"};
constexpr MessageId kRecoverLater{"shell.ask.recover_later"};
constexpr MessageId kChangedOnDisk{"shell.changed_on_disk"};
constexpr MessageId kAskReload{"shell.ask.reload"};
constexpr MessageId kAskReloadChanged{"shell.ask.reload_changed"};
constexpr MessageId kReload{"shell.ask.reload_yes"};
constexpr MessageId kKeep{"shell.ask.reload_no"};
constexpr MessageId kLocked{"shell.locked"};
constexpr MessageId kNoRecent{"shell.menu.no_recent"};
constexpr MessageId kGone{"shell.menu.gone"};
constexpr MessageId kTakeOutGone{"shell.menu.take_out_gone"};
constexpr MessageId kWindowRow{"shell.menu.window_row"};
constexpr MessageId kWindowModified{"shell.menu.window_modified"};
constexpr MessageId kNoPlan{"shell.menu.no_plan"};
constexpr MessageId kAskGone{"shell.ask.gone"};
constexpr MessageId kAskGoneYes{"shell.ask.gone_yes"};
constexpr MessageId kAskGoneNo{"shell.ask.gone_no"};
constexpr MessageId kOpenAlready{"shell.open_already"};
constexpr MessageId kSampleName{"shell.sample.name"};
constexpr MessageId kOpening{"shell.waiting.open"};
constexpr MessageId kSaving{"shell.waiting.save"};
constexpr MessageId kReadingCircuits{"shell.waiting.read_circuits"};
constexpr MessageId kWritingCircuits{"shell.waiting.write_circuits"};
constexpr MessageId kOpenCancelled{"shell.cancelled.open"};
constexpr MessageId kSaveCancelled{"shell.cancelled.save"};
constexpr MessageId kReadCancelled{"shell.cancelled.read_circuits"};
constexpr MessageId kOpened{"shell.opened"};
constexpr MessageId kSavedAs{"shell.saved_as"};
const QLatin1String kSuffix(".stayalight");
constexpr int kWindowStep = 32;  // down and right of the window it comes from

}  // namespace

void MainWindow::showTitle() {
  if (!open_) {
    setWindowTitle(QStringLiteral("Stayalight"));
    setWindowModified(false);
    return;
  }
  setWindowTitle(words(language_, kTitle, QString(planName() + QStringLiteral("[*]")).toStdString()));
  setWindowModified(document_->isModified());
}

void MainWindow::showError(const Message& why) {
  // A question or an answer needs the window behind it.
  show();
  const QString text = words(why, language_);
  say(text, true);
  QMessageBox box(QMessageBox::Warning, words(language_, kErrorTitle), text, QMessageBox::Ok, this);
  box.setObjectName(QStringLiteral("errorBox"));
  box.setTextFormat(Qt::PlainText);
  box.exec();
}

void MainWindow::showPlan() {
  beforeSearch_.reset();
  closeSearch();
  open_ = true;
  if (restored_)
    showPlace(Command::boards);
  else
    restoreChosen();
  boards_->select({});
  boards_->showUsualPanels();
  survey_->model()->forget();
  inspector_->setPlan(document_->plan());
  inspector_->look({RecordKind::site});
  planChanged();
  showTitle();
  boards_->setFocus();
}

bool MainWindow::openFile(const QString& path) {
  if (worksBeside(this)) return false;
  for (MainWindow* other : windows()) {
    const QString open = other->document_->path();
    if (open.isEmpty() || QFileInfo(open) != QFileInfo(path) || other == this) continue;
    other->comeForward();
    other->say(words(language_, kOpenAlready, other->document_->name().toStdString()));
    return false;
  }
  return mayLeave() && read(path);
}

bool MainWindow::read(const QString& path) {
  const std::string shown = QFileInfo(path).fileName().toStdString();
  std::optional<Result<PlanFile>> file;
  if (!beside(this, language_, words(language_, kOpening, shown),
              [&](const Watch& watch) { file = readPlanFile(path, watch); })) {
    say(words(language_, kOpenCancelled, shown));
    return false;
  }
  if (!file->ok()) {
    showError(file->refusal());
    return false;
  }
  document_->open(std::move(*file).value());
  showPlan();
  say(words(language_, kOpened, document_->name().toStdString()));
  const auto& holder = document_->lockedBy();
  QStringList notes;
  if (holder) {
    notes << words(language_, kLocked, holder->user.toStdString(), holder->host.toStdString(),
                   QLocale().toString(holder->since.toLocalTime(), QLocale::ShortFormat).toStdString());
  }
  for (const Message& note : document_->notes()) notes << words(note, language_);
  notes.removeDuplicates();
  if (!notes.isEmpty()) {
    show();
    QMessageBox box(QMessageBox::Information, words(language_, kErrorTitle),
                    notes.join(QStringLiteral("\n\n")), QMessageBox::Ok, this);
    box.setObjectName(QStringLiteral("notesBox"));
    box.setTextFormat(Qt::PlainText);
    box.exec();
  }
  return true;
}

void MainWindow::openSample() {
  QFile file(QStringLiteral(":/samples/river-house.stayalight"));
  if (!file.open(QIODevice::ReadOnly)) return;
  const QByteArray bytes = file.readAll();
  const std::string name = words(language_, kSampleName).toStdString();
  const Result<ReadPlan> read =
      readPlan(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())), name);
  if (!read) {
    showError(read.refusal());
    return;
  }
  document_->start(read.value().plan, QString::fromStdString(name));
  showPlan();
}

void MainWindow::startPlan(const Plan& plan) {
  document_->start(withDefaults(plan, UserSettings::instance().now()),
                   QString::fromStdString(plan.site->name));
  showPlan();
  say({});
}

void MainWindow::chooseFile(bool elsewhere) {
  const QString folder =
      document_->path().isEmpty() ? QString() : QFileInfo(document_->path()).absolutePath();
  const QString path =
      QFileDialog::getOpenFileName(this, words(language_, kOpenTitle), folder, words(language_, kFilter));
  if (path.isEmpty()) return;
  if (!elsewhere) {
    openFile(path);
    return;
  }
  MainWindow* window = newWindow();
  if (!window->openFile(path)) window->close();
}

void MainWindow::writeCircuitsFile() {
  survey_->finishTyping();
  const QString start = (document_->name().isEmpty() ? words(language_, kUntitled) : document_->name()) +
                        QStringLiteral(".csv");
  QString path = QFileDialog::getSaveFileName(this, words(language_, kWriteCircuitsTitle), start,
                                              words(language_, kCircuitsFilter));
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += QStringLiteral(".csv");
  std::optional<Message> why;
  beside(this, language_, words(language_, kWritingCircuits, QFileInfo(path).fileName().toStdString()),
         [&why, &path, plan = document_->plan()](const Watch&) { why = saveCircuits(plan, path); });
  if (why) {
    showError(*why);
    return;
  }
  say(words(language_, kSavedAs, path.toStdString()));
}

void MainWindow::readCircuitsFile() {
  survey_->finishTyping();
  const QString path = QFileDialog::getOpenFileName(this, words(language_, kReadCircuitsTitle), QString(),
                                                    words(language_, kCircuitsFilter));
  if (path.isEmpty()) return;
  const std::string name = QFileInfo(path).fileName().toStdString();
  std::variant<ReadCircuits, CircuitsRefused> read;
  if (!beside(this, language_, words(language_, kReadingCircuits, name),
              [&read, &path, plan = document_->plan()](const Watch& watch) {
                read = loadCircuits(plan, path, watch);
              })) {
    say(words(language_, kReadCancelled, name));
    return;
  }
  QStringList lines;
  if (const auto* refused = std::get_if<CircuitsRefused>(&read)) {
    for (const Message& problem : refused->problems) lines << words(problem, language_);
    lines << words(language_, kCircuitsMore);
  } else {
    const auto& circuits = std::get<ReadCircuits>(read);
    edit(circuits.plan, stayalight::say(kCircuitsStep, name));
    say(words(language_, kCircuitsRead, name, std::int64_t{circuits.added}, std::int64_t{circuits.changed}));
    for (const Message& note : circuits.notes) lines << words(note, language_);
  }
  if (lines.isEmpty()) return;
  QMessageBox box(QMessageBox::Information, words(language_, kErrorTitle), lines.join(QStringLiteral("\n\n")),
                  QMessageBox::Ok, this);
  box.setObjectName(QStringLiteral("circuitsBox"));
  box.setTextFormat(Qt::PlainText);
  box.exec();
}

bool MainWindow::save() {
  if (!open_) return true;
  if (document_->path().isEmpty()) return saveAs();
  if (document_->differsFromDisk()) {
    QMessageBox box(QMessageBox::Question, words(language_, kErrorTitle),
                    words(language_, kAskOverwrite, document_->name().toStdString()), QMessageBox::NoButton,
                    this);
    box.setObjectName(QStringLiteral("overwriteBox"));
    QPushButton* overwrite = box.addButton(words(language_, kOverwrite), QMessageBox::DestructiveRole);
    QPushButton* elsewhere = box.addButton(words(language_, kSaveElsewhere), QMessageBox::AcceptRole);
    box.addButton(words(language_, kCancel), QMessageBox::RejectRole);
    overwrite->setObjectName(QStringLiteral("overwrite"));
    elsewhere->setObjectName(QStringLiteral("elsewhere"));
    box.setDefaultButton(elsewhere);
    box.exec();
    if (box.clickedButton() == elsewhere) return saveAs();
    if (box.clickedButton() != overwrite) return false;
  }
  return saveTo(document_->path());
}

bool MainWindow::saveTo(const QString& path) {
  const std::string name = QFileInfo(path).fileName().toStdString();
  const auto saving = document_->beginSaving(path);
  if (!saving) {
    showError(saving.refusal());
    return false;
  }
  Result<QByteArray> written = QByteArray();
  const bool whole = beside(this, language_, words(language_, kSaving, name),
                            [&](const Watch& watch) { written = saving.value()->write(watch); });
  // What was written before somebody cancelled is saved.
  if (const std::optional<Message> why = document_->endSaving(*saving.value(), written)) {
    if (whole)
      showError(*why);
    else
      say(words(language_, kSaveCancelled, name));
    return false;
  }
  planChanged();
  showTitle();
  say(words(language_, kSavedAs, document_->path().toStdString()));
  return true;
}

bool MainWindow::saveAs() {
  if (!open_) return true;
  QString start = document_->path();
  if (start.isEmpty())
    start = (document_->name().isEmpty() ? words(language_, kUntitled) : document_->name()) + kSuffix;
  QString path =
      QFileDialog::getSaveFileName(this, words(language_, kSaveTitle), start, words(language_, kFilter));
  if (path.isEmpty()) return false;
  if (QFileInfo(path).suffix().isEmpty()) path += kSuffix;
  return saveTo(path);
}

bool MainWindow::mayDropUnread() {
  const auto unread = static_cast<std::int64_t>(survey_->model()->allUnread().size());
  if (unread == 0) return true;
  QMessageBox box(QMessageBox::NoIcon, words(language_, kErrorTitle), words(language_, kAskUnread, unread),
                  QMessageBox::NoButton, this);
  box.setObjectName(QStringLiteral("unreadBox"));
  QPushButton* stay = box.addButton(words(language_, kUnreadStay), QMessageBox::RejectRole);
  QPushButton* drop = box.addButton(words(language_, kUnreadDrop), QMessageBox::DestructiveRole);
  stay->setObjectName(QStringLiteral("stay"));
  drop->setObjectName(QStringLiteral("drop"));
  box.setDefaultButton(stay);
  box.setEscapeButton(stay);
  box.exec();
  if (box.clickedButton() == drop) return true;
  showPlace(Command::survey);
  survey_->goToUnread();
  return false;
}

bool MainWindow::mayLeave() {
  if (boards_->carrying()) boards_->cancel();
  // A field still being typed counts.
  if (QWidget* typing = focusWidget()) typing->clearFocus();
  survey_->finishTyping();
  if (open_ && !mayDropUnread()) return false;
  if (!open_ || !document_->isModified()) return true;
  QMessageBox box(QMessageBox::Question, words(language_, kErrorTitle),
                  words(language_, kAskSave, planName().toStdString()), QMessageBox::NoButton, this);
  box.setObjectName(QStringLiteral("saveBox"));
  QPushButton* yes = box.addButton(words(language_, kAskSaveYes), QMessageBox::AcceptRole);
  QPushButton* no = box.addButton(words(language_, kAskSaveNo), QMessageBox::DestructiveRole);
  QPushButton* cancel = box.addButton(words(language_, kCancel), QMessageBox::RejectRole);
  yes->setObjectName(QStringLiteral("save"));
  no->setObjectName(QStringLiteral("discard"));
  cancel->setObjectName(QStringLiteral("cancel"));
  box.setDefaultButton(yes);
  box.setEscapeButton(cancel);
  box.exec();
  if (box.clickedButton() == yes) return save();
  return box.clickedButton() == no;
}

void MainWindow::offerAutosaves() {
  for (const Leftover& leftover : leftovers()) {
    const QString name = leftover.name.isEmpty() ? words(language_, kUntitled) : leftover.name;
    const QString when = QLocale().toString(leftover.written.toLocalTime(), QLocale::ShortFormat);
    QMessageBox box(QMessageBox::Question, words(language_, kErrorTitle),
                    words(language_, leftover.fileChanged ? kAskRecoverChanged : kAskRecover,
                          name.toStdString(), when.toStdString()),
                    QMessageBox::NoButton, this);
    box.setObjectName(QStringLiteral("recoverBox"));
    QPushButton* yes = box.addButton(words(language_, kRecoverYes), QMessageBox::AcceptRole);
    QPushButton* no = box.addButton(words(language_, kRecoverNo), QMessageBox::DestructiveRole);
    QPushButton* later = box.addButton(words(language_, kRecoverLater), QMessageBox::RejectRole);
    yes->setObjectName(QStringLiteral("recover"));
    no->setObjectName(QStringLiteral("throwAway"));
    later->setObjectName(QStringLiteral("later"));
    box.setDefaultButton(yes);
    box.setEscapeButton(later);
    box.exec();
    if (box.clickedButton() == no) removeLeftover(leftover);
    if (box.clickedButton() != yes) continue;
    if (!mayLeave()) return;
    std::optional<Result<PlanFile>> aside;
    if (!beside(this, language_, words(language_, kOpening, name.toStdString()),
                [&](const Watch& watch) { aside = readPlanFile(leftover.file, watch); })) {
      say(words(language_, kOpenCancelled, name.toStdString()));
      return;
    }
    if (!aside->ok()) {
      showError(aside->refusal());
      continue;
    }
    document_->recover(leftover, std::move(*aside).value());
    showPlan();
    return;
  }
}

// The file was changed by something else. The question does not hold up what goes on; nothing is read before
// it is answered.
void MainWindow::askReload() {
  const std::string name = document_->name().toStdString();
  say(words(language_, kChangedOnDisk, name), true);
  if (!QFileInfo::exists(document_->path()) ||
      findChild<QMessageBox*>(QStringLiteral("reloadBox")) != nullptr)
    return;
  if (boards_->carrying()) boards_->cancel();
  auto* box =
      new QMessageBox(QMessageBox::Question, words(language_, kErrorTitle),
                      words(language_, document_->isModified() ? kAskReloadChanged : kAskReload, name),
                      QMessageBox::NoButton, this);
  box->setObjectName(QStringLiteral("reloadBox"));
  box->setAttribute(Qt::WA_DeleteOnClose);
  box->setTextFormat(Qt::PlainText);
  QPushButton* keep = box->addButton(words(language_, kKeep), QMessageBox::RejectRole);
  QPushButton* reload = box->addButton(words(language_, kReload), QMessageBox::DestructiveRole);
  keep->setObjectName(QStringLiteral("keep"));
  reload->setObjectName(QStringLiteral("reload"));
  box->setDefaultButton(keep);
  box->setEscapeButton(keep);
  connect(reload, &QPushButton::clicked, this, [this] {
    // Once this box has gone: what reads may show another.
    QMetaObject::invokeMethod(
        this, [this] { read(QString(document_->path())); }, Qt::QueuedConnection);
  });
  box->open();
}

QString MainWindow::planName() const {
  if (!open_) return words(language_, kNoPlan);
  return document_->name().isEmpty() ? words(language_, kUntitled) : document_->name();
}

void MainWindow::fillRecent() {
  recent_->clear();
  bool gone = false;
  for (const QString& path : PlanDocument::recentFiles()) {
    const bool there = QFileInfo::exists(path);
    gone = gone || !there;
    QString name = QFileInfo(path).completeBaseName();
    if (!there) name = words(language_, kGone, name.toStdString());
    QAction* action = recent_->addAction(name.replace(QLatin1Char('&'), QLatin1String("&&")));
    action->setStatusTip(path);
    action->setToolTip(path);
    connect(action, &QAction::triggered, this, [this, path] { openRecent(path); });
  }
  if (recent_->isEmpty()) recent_->addAction(words(language_, kNoRecent))->setEnabled(false);
  if (!gone) return;
  recent_->addSeparator();
  QAction* clean = recent_->addAction(words(language_, kTakeOutGone));
  clean->setObjectName(QStringLiteral("takeOutGone"));
  connect(clean, &QAction::triggered, this, [] {
    for (const QString& path : PlanDocument::recentFiles()) {
      if (!QFileInfo::exists(path)) PlanDocument::forgetRecent(path);
    }
  });
}

void MainWindow::openRecent(const QString& path) {
  if (QFileInfo::exists(path)) {
    openFile(path);
    return;
  }
  QMessageBox box(QMessageBox::Question, words(language_, kErrorTitle),
                  words(language_, kAskGone, QDir::toNativeSeparators(path).toStdString()),
                  QMessageBox::NoButton, this);
  box.setObjectName(QStringLiteral("goneBox"));
  box.setTextFormat(Qt::PlainText);
  QPushButton* take = box.addButton(words(language_, kAskGoneYes), QMessageBox::AcceptRole);
  QPushButton* keep = box.addButton(words(language_, kAskGoneNo), QMessageBox::RejectRole);
  take->setObjectName(QStringLiteral("takeOut"));
  keep->setObjectName(QStringLiteral("keep"));
  box.setDefaultButton(take);
  box.setEscapeButton(keep);
  box.exec();
  if (box.clickedButton() == take) PlanDocument::forgetRecent(path);
}

void MainWindow::fillWindows() {
  windows_->clear();
  int number = 0;
  for (MainWindow* window : windows()) {
    QString name = window->planName();
    if (window->document_->isModified()) name = words(language_, kWindowModified, name.toStdString());
    name.replace(QLatin1Char('&'), QLatin1String("&&"));
    QAction* action =
        windows_->addAction(words(language_, kWindowRow, std::int64_t{++number}, name.toStdString()));
    action->setCheckable(true);
    action->setChecked(window == this);
    action->setStatusTip(window->document_->path());
    connect(action, &QAction::triggered, window, [window] { window->comeForward(); });
  }
}

void MainWindow::comeForward() {
  if (isMinimized()) showNormal();
  show();
  raise();
  activateWindow();
}

std::vector<MainWindow*> MainWindow::windows() {
  std::vector<MainWindow*> found;
  for (QWidget* widget : QApplication::topLevelWidgets()) {
    // A window that was closed and waits for its deletion is none any more.
    auto* window = qobject_cast<MainWindow*>(widget);
    if (window != nullptr && !window->asked_) found.push_back(window);
  }
  std::sort(found.begin(), found.end(),
            [](const MainWindow* a, const MainWindow* b) { return a->number_ < b->number_; });
  return found;
}

MainWindow* MainWindow::newWindow() {
  keepPlaces();
  auto* window = new MainWindow;
  window->setAttribute(Qt::WA_DeleteOnClose);
  window->move(pos() + QPoint(kWindowStep, kWindowStep));
  window->show();
  window->comeForward();
  return window;
}

bool MainWindow::closeAll() {
  const std::vector<MainWindow*> open = windows();
  for (MainWindow* window : open) {
    if (worksBeside(window)) continue;  // told to close below, it stops what it does and asks then
    if (window->open_ && window->document_->isModified()) window->comeForward();
    if (!window->mayLeave()) return false;
  }
  for (MainWindow* window : open) {
    window->asked_ = !worksBeside(window);
    window->close();
  }
  return true;
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!asked_ && !mayLeave()) {
    event->ignore();
    return;
  }
  asked_ = true;
  keepPlaces();
  document_->close();
  event->accept();
}

namespace {

QString droppedPlan(const QMimeData* data) {
  for (const QUrl& url : data->urls()) {
    if (url.isLocalFile()) return url.toLocalFile();
  }
  return {};
}

}  // namespace

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!droppedPlan(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  const QString path = droppedPlan(event->mimeData());
  if (path.isEmpty()) return;
  event->acceptProposedAction();
  // After the drop has ended: a question must not hold up the program it came from.
  QMetaObject::invokeMethod(
      this, [this, path] { openFile(path); }, Qt::QueuedConnection);
}

}  // namespace stayalight
