#pragma once

// The real window led through every place, form and dialog, for tests that look at all of them.

#include <QtGui/QAction>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QInputDialog>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMenu>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QToolButton>
#include <functional>

#include "tests/ui/shell/window_fixture.h"
#include "ui/answers/answers_column.h"
#include "ui/inspector/entity_text.h"
#include "ui/search/search_bar.h"
#include "ui/survey/survey_view.h"
#include "ui/waiting/beside.h"

namespace stayalight::window {

/// Called with the name of what is shown and the window it is shown in.
using Look = std::function<void(const QString& name, QWidget& shown)>;

inline void settle() {
  for (int i = 0; i < 4; ++i) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
  }
}

/// Looks at the next dialog that holds the window, then leaves it. It runs an event loop of its own.
inline void lookAtNextModal(const QString& name, const Look& look) {
  auto* timer = new QTimer(qApp);
  timer->setInterval(30);
  QObject::connect(timer, &QTimer::timeout, timer, [timer, name, look] {
    auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    if (dialog == nullptr || !dialog->isVisible()) return;
    timer->stop();
    timer->deleteLater();
    look(name, *dialog);
    dialog->reject();
  });
  timer->start();
}

/// A dialog of this window that stands beside it, looked at and closed.
inline void lookAtDialog(MainWindow& window, const QString& object, const QString& name, const Look& look) {
  settle();
  auto* dialog = window.findChild<QDialog*>(object);
  if (dialog == nullptr) {
    QTest::qFail(qPrintable(QString(QStringLiteral("no dialog ") + object)), __FILE__, __LINE__);
    return;
  }
  if (!QTest::qWaitForWindowExposed(dialog)) return;
  settle();
  look(name, *dialog);
  dialog->close();
  settle();
}

inline void everyForm(MainWindow& window, const Look& look) {
  window.action(Command::boards)->trigger();
  window.action(Command::inspector)->trigger();
  std::vector<RecordKind> seen;
  const Plan plan = window.document().plan();
  for (const EntityRef& ref : entities(plan)) {
    if (std::find(seen.begin(), seen.end(), ref.kind) != seen.end()) continue;
    seen.push_back(ref.kind);
    window.inspector()->look(ref);
    settle();
    look(QStringLiteral("form-") + QString::fromStdString(std::string(recordType(ref.kind).name)), window);
  }
  if (const Circuit* circuit = circuitNamed(plan, "Freezer")) {
    window.inspector()->look({RecordKind::circuit, circuit->id.number});
    settle();
    const auto mores = window.inspector()->findChildren<QToolButton*>(QStringLiteral("more"));
    if (!mores.empty()) mores.front()->click();
    settle();
    look(QStringLiteral("form-circuit-detail"), window);
  }
}

/// The dialog of work that takes long, while it does.
inline void lookAtWaiting(MainWindow& window, const Look& look) {
  setUnseenMilliseconds(0);
  QTimer::singleShot(0, &window, [&] {
    auto* dialog = window.findChild<QDialog*>(QStringLiteral("waitDialog"));
    if (dialog == nullptr || !QTest::qWaitForWindowExposed(dialog)) return;
    settle();
    look(QStringLiteral("dialog-waiting"), *dialog);
    dialog->reject();
  });
  const bool whole =
      beside(&window, plainEnglish(), QStringLiteral("Opening the house"), [](const Watch& watch) {
        while (watch(0.4)) QThread::msleep(5);
      });
  setUnseenMilliseconds(kUnseenMilliseconds);
  if (whole) QTest::qFail("nothing waited", __FILE__, __LINE__);
}

inline void everyDialog(MainWindow& window, const Look& look) {
  lookAtWaiting(window, look);
  const std::pair<Command, const char*> beside[] = {
      {Command::settings, "settingsPage"}, {Command::keys, "keysPage"},
      {Command::cautions, "cautionsPage"}, {Command::about, "aboutPage"},
      {Command::ownLists, "ownListsPage"}, {Command::history, "historyWindow"}};
  for (const auto& [command, object] : beside) {
    window.action(command)->trigger();
    lookAtDialog(window, QLatin1String(object), QStringLiteral("dialog-") + QLatin1String(object), look);
  }
  window.action(Command::answers)->trigger();
  settle();
  for (FigureRow* row : window.answers()->findChildren<FigureRow*>()) {
    if (row->line().working.values.empty()) continue;
    row->click();
    lookAtDialog(window, QStringLiteral("workingWindow"), QStringLiteral("dialog-working"), look);
    break;
  }
  window.action(Command::survey)->trigger();
  window.action(Command::pasteDirectory)->trigger();
  settle();
  if (auto* text = window.findChild<QPlainTextEdit*>(QStringLiteral("directoryText")))
    text->setPlainText(QStringLiteral("1 Kitchen counter 20\n2,4 Range 50\n5 Spare\nno such thing\n"));
  lookAtDialog(window, QStringLiteral("directoryDialog"), QStringLiteral("dialog-directory"), look);
  window.action(Command::boards)->trigger();
  lookAtNextModal(QStringLiteral("dialog-template"), look);
  window.action(Command::keepTemplate)->trigger();
  window.action(Command::inspector)->trigger();
  window.inspector()->look({RecordKind::site});
  settle();
  auto* edition = window.inspector()
                      ->form({RecordKind::site})
                      ->editor("code_edition")
                      ->findChild<QComboBox*>(QStringLiteral("value"));
  lookAtNextModal(QStringLiteral("dialog-edition"), look);
  const int other = edition->currentIndex() == 1 ? 2 : 1;
  edition->setCurrentIndex(other);
  Q_EMIT edition->activated(other);
  settle();
}

/// All of it: the start page first, then the sample in each place.
inline void everyView(MainWindow& window, const Look& look) {
  settle();
  look(QStringLiteral("start"), window);
  window.openSample();
  window.action(Command::boards)->trigger();
  window.action(Command::answers)->trigger();
  settle();
  look(QStringLiteral("boards-answers"), window);
  const Plan plan = window.document().plan();
  if (const Circuit* circuit = movableCircuit(plan)) {
    const PanelId from = mainPanel(plan)->id, to = backupPanel(plan)->id;
    window.boards()->focusBreaker(circuit->planned);
    settle();
    look(QStringLiteral("boards-selected"), window);
    QTest::keyClick(window.boards()->boardWidget(from), Qt::Key_M);
    QTest::qWait(50);
    look(QStringLiteral("boards-choosing"), window);
    QTest::keyClick(window.boards()->boardWidget(from), Qt::Key_Escape);
    const std::vector<Placement> free = landings(plan, to, 1, {});
    if (!free.empty()) {
      carry(window, circuit->planned, from, to, free.front().position);
      QTest::qWait(50);
      look(QStringLiteral("boards-carrying"), window);
      QTest::keyClick(window.boards()->boardWidget(from), Qt::Key_Escape);
      QTest::mouseRelease(window.boards()->boardWidget(from), Qt::LeftButton, Qt::NoModifier, QPoint(1, 1));
      // It flies back to where it came from.
      const auto* picture = window.boards()->findChild<QWidget*>(QStringLiteral("carriedPicture"));
      if (!QTest::qWaitFor([picture] { return picture->isHidden(); }))
        QTest::qFail("it flies on", __FILE__, __LINE__);
    }
  }
  auto* asTable = window.findChild<QPushButton*>(QStringLiteral("asTable"));
  asTable->click();
  settle();
  look(QStringLiteral("boards-table"), window);
  asTable->click();
  window.action(Command::find)->trigger();
  QTest::keyClicks(window.searchBar()->findChild<QLineEdit*>(QStringLiteral("searchField")),
                   QStringLiteral("kit"));
  settle();
  look(QStringLiteral("boards-find"), window);
  QTest::keyClick(window.searchBar()->findChild<QLineEdit*>(QStringLiteral("searchField")), Qt::Key_Escape);
  window.action(Command::catalogue)->trigger();
  settle();
  look(QStringLiteral("boards-catalogue"), window);
  window.action(Command::onSite)->trigger();
  settle();
  look(QStringLiteral("boards-on-site"), window);
  everyForm(window, look);
  window.action(Command::answers)->trigger();
  window.action(Command::survey)->trigger();
  settle();
  for (int set = 0; set < 4; ++set) {
    window.survey()->findChild<QToolButton*>(QStringLiteral("surveyColumns%1").arg(set))->click();
    settle();
    look(QStringLiteral("survey-%1").arg(set), window);
  }
  window.survey()->findChild<QToolButton*>(QStringLiteral("surveyColumns0"))->click();
  window.action(Command::paper)->trigger();
  settle();
  look(QStringLiteral("paper"), window);
  everyDialog(window, look);
  // A third panel: each board has its chooser.
  if (const Result<Plan> more = addPanel(plan, PanelRole::subpanel); more.ok()) {
    window.startPlan(more.value());
    window.boards()->showPanel(more.value().panels.back()->id);
    settle();
    look(QStringLiteral("boards-third-panel"), window);
  }
}

}  // namespace stayalight::window
