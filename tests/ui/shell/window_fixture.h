#pragma once

// The real main window with the sample in it, and what a hand does to it.

#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtGui/QCursor>
#include <QtGui/QScreen>
#include <QtTest/QtTest>
#include <QtWidgets/QApplication>
#include <QtWidgets/QFileDialog>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QPushButton>

#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace stayalight::window {

inline bool prepare() {
  QApplication::setOrganizationName(QStringLiteral("stayalight"));
  QApplication::setApplicationName(QStringLiteral("stayalight-test"));
  QStandardPaths::setTestModeEnabled(true);
  QSettings().clear();
  // The real pointer out of the way: its own enter and leave events would mix with those of a test.
  QCursor::setPos(QGuiApplication::primaryScreen()->geometry().bottomRight());
  return loadFaces();
}

inline const Circuit* circuitNamed(const Plan& plan, const std::string& name) {
  for (const auto& circuit : plan.circuits) {
    if (circuit->name == name) return &*circuit;
  }
  return nullptr;
}

/// A circuit of the main panel that stays there and could go to the backup subpanel by itself.
inline const Circuit* movableCircuit(const Plan& plan) {
  for (const auto& circuit : plan.circuits) {
    const Breaker* breaker = find(plan, circuit->planned);
    const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (panel == nullptr || !panel->role.is(PanelRole::main) || breaker->poles != 1 ||
        circuit->multiwire != 0 || !breaker->half.is(Half::whole))
      continue;
    const CircuitId ids[] = {circuit->id};
    if (moveCircuits(plan, ids, backupPanel(plan)->id).ok()) return &*circuit;
  }
  return nullptr;
}

/// The middle of a breaker's cell, in the coordinates of the widget that takes its mouse events.
inline QPoint cellPoint(MainWindow& window, PanelId panel, BreakerId breaker) {
  const BoardLayout* board = window.boards()->layoutOf(panel);
  const int cell = board->cellOf(breaker);
  const QPoint inView =
      window.boards()->pointIn(panel, board->cells[static_cast<std::size_t>(cell)].rect.center());
  return window.boards()->boardWidget(panel)->mapFrom(window.boards(), inView);
}
inline QPoint spacePoint(MainWindow& window, PanelId panel, SpacePosition position) {
  const BoardLayout* board = window.boards()->layoutOf(panel);
  const int cell = board->cellOf(CellAddress{panel, position, Half::whole});
  return window.boards()->pointIn(panel, board->cells[static_cast<std::size_t>(cell)].rect.center());
}

/// Presses on a breaker and carries it over a space of a board; the button stays down. Where the pointer is
/// then, in the coordinates of the board it was pressed on.
inline QPoint carry(MainWindow& window, BreakerId breaker, PanelId from, PanelId to, SpacePosition position) {
  QWidget* board = window.boards()->boardWidget(from);
  const QPoint start = cellPoint(window, from, breaker);
  const QPoint end = board->mapFrom(window.boards(), spacePoint(window, to, position));
  QTest::mousePress(board, Qt::LeftButton, Qt::NoModifier, start);
  for (int i = 1; i <= 8; ++i) QTest::mouseMove(board, start + (end - start) * i / 8);
  return end;
}
inline void drag(MainWindow& window, BreakerId breaker, PanelId from, PanelId to, SpacePosition position) {
  const QPoint end = carry(window, breaker, from, to, position);
  QTest::mouseRelease(window.boards()->boardWidget(from), Qt::LeftButton, Qt::NoModifier, end);
}

/// Presses a button of the next message box; the box runs an event loop of its own.
inline void answerNextBox(const QString& button, QString* text = nullptr) {
  auto* timer = new QTimer(qApp);
  timer->setInterval(30);
  QObject::connect(timer, &QTimer::timeout, timer, [timer, button, text] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    if (box == nullptr) return;
    timer->stop();
    timer->deleteLater();
    if (text != nullptr) *text = box->text();
    for (QAbstractButton* each : box->buttons()) {
      if (each->objectName() == button || button.isEmpty()) {
        each->click();
        return;
      }
    }
    box->reject();
  });
  timer->start();
}

/// Types a path into the next file dialog and accepts it; without a path it is left by Escape.
inline void answerFileDialog(const QString& path) {
  auto* timer = new QTimer(qApp);
  timer->setInterval(30);
  QObject::connect(timer, &QTimer::timeout, timer, [timer, path] {
    auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
    if (dialog == nullptr) return;
    timer->stop();
    timer->deleteLater();
    auto* line = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
    if (path.isEmpty() || line == nullptr) {
      dialog->reject();
      return;
    }
    // Set, not typed: while one types, a list of completions takes the Enter.
    line->setFocus();
    line->setText(path);
    QTest::keyClick(line, Qt::Key_Return);
  });
  timer->start();
}

/// A key of the window as a person presses it: once the window is in front again, after whatever dialog.
inline void pressKey(MainWindow& window, Qt::Key key, Qt::KeyboardModifiers modifiers) {
  QVERIFY(QTest::qWaitForWindowActive(&window));
  QTest::keyClick(&window, key, modifiers);
}

/// The window in front, with the sample as plan.
inline MainWindow* windowWithSample() {
  auto* window = new MainWindow;
  window->resize(1440, 900);
  window->show();
  if (!QTest::qWaitForWindowActive(window)) return window;
  window->openSample();
  QCoreApplication::processEvents();
  return window;
}

/// What every test of the window has: the window, its plan, and how many steps were made.
class WindowTest : public QObject {
 protected:
  /// Settings as at the first start, and the window in front with the sample in it.
  void openWithSample() {
    QSettings().clear();
    window_ = windowWithSample();
    QVERIFY(window_->isActiveWindow());
    QVERIFY(mainPanel(plan()) != nullptr && backupPanel(plan()) != nullptr);
  }
  /// The same without a plan: the start page.
  void openEmpty(QSize size = QSize(1440, 900)) {
    QSettings().clear();
    window_ = new MainWindow;
    window_->resize(size);
    window_->show();
    QVERIFY(QTest::qWaitForWindowActive(window_));
  }
  void closeWindow() {
    delete window_;
    window_ = nullptr;
  }
  [[nodiscard]] const Plan& plan() const { return window_->document().plan(); }
  [[nodiscard]] int steps() const { return window_->document().stack().index(); }

  MainWindow* window_ = nullptr;
};

}  // namespace stayalight::window
