// Several windows, each with its own plan; recent files that are gone; places that come back.

#include <QtGui/QAction>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMenuBar>

#include "tests/ui/shell/window_fixture.h"
#include "ui/survey/survey_view.h"

using namespace stayalight;
using namespace stayalight::window;

class WindowsTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    QSettings().clear();
    window_ = windowWithSample();
    QVERIFY(window_->isActiveWindow());
  }
  void cleanup() {
    for (MainWindow* window : MainWindow::windows()) {
      if (window != window_) delete window;
    }
    delete window_;
    window_ = nullptr;
  }
  void eachWindowHasItsOwnPlan();
  void openingInANewWindowLeavesThisOne();
  void aFileIsOpenInOneWindowOnly();
  void quittingAsksForEach();
  void recentFilesThatAreGoneCanBeTakenOut();
  void placesComeBack();

 private:
  static void change(MainWindow* window) {
    window->boards()->focusBreaker(movableCircuit(window->document().plan())->planned);
    window->action(Command::move)->trigger();
    QVERIFY(window->document().isModified());
  }
  static MainWindow* other(MainWindow* than) {
    for (MainWindow* window : MainWindow::windows()) {
      if (window != than) return window;
    }
    return nullptr;
  }
  QMenu* menuNamed(const QString& title) const {
    for (QMenu* menu : window_->findChildren<QMenu*>()) {
      if (menu->title() == title) return menu;
    }
    return nullptr;
  }
  // Opened as a person does, so that it is filled afresh.
  static QStringList entries(QMenu* menu, const QWidget* over) {
    menu->popup(over->mapToGlobal(QPoint(60, 60)));
    QStringList out;
    for (const QAction* action : menu->actions()) out << action->text();
    return out;
  }

  QTemporaryDir folder_;
  MainWindow* window_ = nullptr;
};

void WindowsTest::eachWindowHasItsOwnPlan() {
  pressKey(*window_, Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
  MainWindow* second = other(window_);
  QVERIFY(second != nullptr);
  QVERIFY(QTest::qWaitForWindowActive(second));
  second->openSample();
  change(second);
  QVERIFY(!window_->document().isModified());
  QVERIFY(second->isWindowModified());
  QVERIFY(!window_->isWindowModified());
  QVERIFY(second->document().plan() != window_->document().plan());
  // The menu of windows names both and brings the other one forward.
  QMenu* windows = menuNamed(QStringLiteral("&Window"));
  QVERIFY(windows != nullptr);
  const QStringList rows = entries(windows, window_);
  QCOMPARE(rows.size(), 2);
  QVERIFY(!rows[0].contains(QStringLiteral("not saved")));
  QVERIFY(rows[1].contains(QStringLiteral("not saved")));
  QVERIFY(windows->actions()[0]->isChecked() && !windows->actions()[1]->isChecked());
  QTest::mouseClick(windows, Qt::LeftButton, {}, windows->actionGeometry(windows->actions()[0]).center());
  QVERIFY(QTest::qWaitForWindowActive(window_));
  // Closed by its key it goes alone.
  second->activateWindow();
  QVERIFY(QTest::qWaitForWindowActive(second));
  answerNextBox(QStringLiteral("discard"));
  QTest::keyClick(second, Qt::Key_W, Qt::ControlModifier);
  QTRY_COMPARE(MainWindow::windows().size(), std::size_t{1});
  QVERIFY(window_->isVisible());
}

void WindowsTest::openingInANewWindowLeavesThisOne() {
  const QString path = folder_.filePath(QStringLiteral("other.stayalight"));
  QVERIFY(!window_->document().saveAs(path).has_value());
  window_->openSample();
  const Plan before = window_->document().plan();
  answerFileDialog(path);
  pressKey(*window_, Qt::Key_O, Qt::ControlModifier | Qt::ShiftModifier);
  MainWindow* second = other(window_);
  QVERIFY(second != nullptr);
  QCOMPARE(second->document().path(), path);
  QVERIFY(!second->document().lockedBy().has_value());
  QVERIFY(window_->document().path().isEmpty());
  QCOMPARE(window_->document().plan(), before);
}

void WindowsTest::aFileIsOpenInOneWindowOnly() {
  const QString path = folder_.filePath(QStringLiteral("one.stayalight"));
  QVERIFY(!window_->document().saveAs(path).has_value());
  MainWindow* second = window_->newWindow();
  QVERIFY(QTest::qWaitForWindowActive(second));
  QVERIFY(!second->openFile(path));
  QVERIFY(second->document().path().isEmpty());
  QVERIFY(QTest::qWaitForWindowActive(window_));
  QVERIFY(window_->statusText().contains(QStringLiteral("one")));
}

void WindowsTest::quittingAsksForEach() {
  MainWindow* second = window_->newWindow();
  QVERIFY(QTest::qWaitForWindowActive(second));
  second->openSample();
  change(window_);
  change(second);
  // One "stay" keeps all of them, whatever was answered before.
  QStringList asked;
  auto* timer = new QTimer(this);
  connect(timer, &QTimer::timeout, this, [&] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    if (box == nullptr) return;
    asked << box->text();
    for (QAbstractButton* button : box->buttons()) {
      if (button->objectName() == (asked.size() == 2 ? QLatin1String("cancel") : QLatin1String("discard")))
        return button->click();
    }
  });
  timer->start(30);
  second->activateWindow();
  QVERIFY(QTest::qWaitForWindowActive(second));
  QTest::keyClick(second, Qt::Key_Q, Qt::ControlModifier);
  QCOMPARE(asked.size(), 2);
  QCOMPARE(MainWindow::windows().size(), std::size_t{2});
  QVERIFY(window_->document().isModified() && second->document().isModified());
  QVERIFY(MainWindow::closeAll());
  QCOMPARE(asked.size(), 4);
  timer->stop();
  QVERIFY(!window_->isVisible());
  QTRY_VERIFY(other(window_) == nullptr);
}

void WindowsTest::recentFilesThatAreGoneCanBeTakenOut() {
  const QString kept = folder_.filePath(QStringLiteral("kept.stayalight"));
  const QString gone = folder_.filePath(QStringLiteral("gone.stayalight"));
  const QString lost = folder_.filePath(QStringLiteral("lost.stayalight"));
  for (const QString& path : {lost, gone, kept}) QVERIFY(!window_->document().saveAs(path).has_value());
  QVERIFY(QFile::remove(gone) && QFile::remove(lost));
  QMenu* recent = menuNamed(QStringLiteral("Open recent"));
  QVERIFY(recent != nullptr);
  QStringList rows = entries(recent, window_);
  QCOMPARE(rows.mid(0, 3), QStringList({"kept", "gone (gone)", "lost (gone)"}));
  // One by one, after a question.
  answerNextBox(QStringLiteral("takeOut"));
  QTest::mouseClick(recent, Qt::LeftButton, {}, recent->actionGeometry(recent->actions()[1]).center());
  QCOMPARE(PlanDocument::recentFiles(), QStringList({kept, lost}));
  QCOMPARE(window_->document().path(), kept);
  // All at once.
  rows = entries(recent, window_);
  QAction* clean = recent->actions().back();
  QCOMPARE(clean->objectName(), QStringLiteral("takeOutGone"));
  QTest::mouseClick(recent, Qt::LeftButton, {}, recent->actionGeometry(clean).center());
  QCOMPARE(PlanDocument::recentFiles(), QStringList(kept));
  QCOMPARE(entries(recent, window_), QStringList("kept"));
  recent->close();
}

void WindowsTest::placesComeBack() {
  window_->resize(1200, 760);
  window_->action(Command::survey)->trigger();
  window_->action(Command::inspector)->trigger();
  QTRY_COMPARE(window_->size(), QSize(1200, 760));
  QVERIFY(window_->close());
  delete window_;
  window_ = new MainWindow;
  window_->show();
  QVERIFY(QTest::qWaitForWindowActive(window_));
  QCOMPARE(window_->size(), QSize(1200, 760));
  window_->openSample();
  QVERIFY(window_->action(Command::survey)->isChecked());
  QVERIFY(window_->survey()->isVisible());
  QVERIFY(window_->action(Command::inspector)->isChecked());
  // The next plan in this window starts at the boards.
  window_->openSample();
  QVERIFY(window_->boards()->isVisible());
}

QTEST_MAIN(WindowsTest)
#include "windows_test.moc"
