// What takes long in the real window is done beside it: a file opened, saved, circuits read, cells pasted, a
// picture. Here the dialog stands before the work begins, so that each is met with certainty.

#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QCloseEvent>
#include <QtGui/QGuiApplication>
#include <QtGui/QWindow>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QTableView>

#include "tests/ui/shell/window_fixture.h"
#include "tests/ui/waiting/waiting_seen.h"
#include "ui/document/circuits_file.h"
#include "ui/survey/survey_table.h"
#include "ui/survey/survey_view.h"
#include "ui/waiting/beside.h"

using namespace stayalight;
using namespace stayalight::window;

class WaitingTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init();
  void cleanup();
  void aFileIsOpenedFromTheMenuWhileTheWindowAnswers();
  void openingIsCancelled();
  void theWindowClosesWhileAFileIsRead();
  void theProgramEndsWhileAFileIsRead();
  void savingIsCancelled();
  void savingWhileClosing();
  void readingCircuitsIsCancelled();
  void pastingIsCancelled();
  void aPictureIsCancelled();

 private:
  /// Another house than the one that is open, in a file.
  void writeOther() {
    other_ = setField(plan(), {RecordKind::site}, "name", std::string("Another house")).value();
    PlanDocument document;
    document.start(other_);
    path_ = folder_->filePath(QStringLiteral("other.stayalight"));
    QVERIFY(!document.saveAs(path_));
    document.close();
  }
  void change() {
    const Result<Plan> after = setField(plan(), {RecordKind::site}, "name", std::string("Changed"));
    QVERIFY(!window_->document().apply(after.value(), QStringLiteral("change")));
  }
  /// The item of the menu, found by its command and chosen with the mouse.
  void chooseInMenu(Command command) {
    for (QMenu* menu : window_->findChildren<QMenu*>()) {
      if (!menu->actions().contains(window_->action(command))) continue;
      menu->popup(window_->mapToGlobal(QPoint(20, 40)));
      QVERIFY(QTest::qWaitForWindowExposed(menu));
      QTest::mouseClick(menu, Qt::LeftButton, Qt::NoModifier,
                        menu->actionGeometry(window_->action(command)).center());
      return;
    }
    QFAIL("the command stands in no menu");
  }
  static void cancel(QDialog& dialog) { dialog.reject(); }

  std::unique_ptr<QTemporaryDir> folder_;
  QString path_;
  Plan other_;
};

void WaitingTest::init() {
  for (const Leftover& leftover : leftovers()) removeLeftover(leftover);
  folder_ = std::make_unique<QTemporaryDir>();
  openWithSample();
  writeOther();
  setUnseenMilliseconds(0);
}

void WaitingTest::cleanup() {
  setUnseenMilliseconds(kUnseenMilliseconds);
  closeWindow();
}

void WaitingTest::aFileIsOpenedFromTheMenuWhileTheWindowAnswers() {
  const Plan before = plan();
  bool answered = false, formerPlan = false;
  WhenWaiting waiting([&](QDialog&) {
    // Posted before the reading begins, it is handled before the reading has ended: the plan is the former
    // one.
    afterwards(window_, [&] {
      answered = true;
      formerPlan = plan() == before;
      window_->repaint();
    });
  });
  answerFileDialog(path_);
  chooseInMenu(Command::open);
  QVERIFY(waiting.seen);
  QVERIFY(answered);
  QVERIFY(formerPlan);
  QCOMPARE(plan(), other_);
  QCOMPARE(window_->document().path(), path_);
  QVERIFY(QApplication::activeModalWidget() == nullptr);
}

void WaitingTest::openingIsCancelled() {
  change();
  const Plan before = plan();
  WhenWaiting waiting(cancel);
  answerNextBox(QStringLiteral("discard"));
  QVERIFY(!window_->openFile(path_));
  QVERIFY(waiting.seen);
  QCOMPARE(plan(), before);
  QVERIFY(window_->document().isModified());
  QVERIFY(window_->document().canUndo());
  QVERIFY(window_->document().path().isEmpty());
  QVERIFY2(window_->statusText().contains(QStringLiteral("cancelled")), qPrintable(window_->statusText()));
  // It opens the next time.
  answerNextBox(QStringLiteral("discard"));
  QVERIFY(window_->openFile(path_));
  QCOMPARE(plan(), other_);
}

void WaitingTest::theWindowClosesWhileAFileIsRead() {
  bool closedAtOnce = true;
  WhenWaiting waiting([&](QDialog&) { closedAtOnce = window_->close(); });
  QVERIFY(!window_->openFile(path_));
  QVERIFY(!closedAtOnce);
  QTRY_VERIFY(!window_->isVisible());
}

void WaitingTest::theProgramEndsWhileAFileIsRead() {
  MainWindow* second = window_->newWindow();
  QVERIFY(QTest::qWaitForWindowActive(second));
  QPointer<MainWindow> gone(second);
  WhenWaiting waiting([&](QDialog&) { QVERIFY(MainWindow::closeAll()); });
  QVERIFY(!second->openFile(path_));
  QTRY_VERIFY(gone.isNull());
  QTRY_VERIFY(!window_->isVisible());
}

void WaitingTest::savingIsCancelled() {
  QVERIFY(window_->openFile(path_));
  change();
  const Plan changed = plan();
  WhenWaiting waiting(cancel);
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QVERIFY(waiting.seen);
  QCOMPARE(loadPlan(path_).value().plan, other_);
  QCOMPARE(plan(), changed);
  QVERIFY(window_->document().isModified());
  QVERIFY2(window_->statusText().contains(QStringLiteral("as it was")), qPrintable(window_->statusText()));
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QCOMPARE(loadPlan(path_).value().plan, changed);
  QVERIFY(!window_->document().isModified());
}

// The question before closing is answered with "save", and closing comes again while that is written.
void WaitingTest::savingWhileClosing() {
  QVERIFY(window_->openFile(path_));
  change();
  const Plan changed = plan();
  WhenWaiting waiting([&](QDialog&) {
    // As the desktop says it.
    QCloseEvent again;
    QCoreApplication::sendEvent(window_->windowHandle(), &again);
    QVERIFY(!again.isAccepted());
    answerNextBox(QStringLiteral("save"));  // asked again, once it has stopped
  });
  answerNextBox(QStringLiteral("save"));
  QVERIFY(!window_->close());
  QTRY_VERIFY(!window_->isVisible());
  QCOMPARE(loadPlan(path_).value().plan, changed);
}

void WaitingTest::readingCircuitsIsCancelled() {
  const QString table = folder_->filePath(QStringLiteral("circuits.csv"));
  Plan renamed = plan();
  renamed.circuits.front().edit().name = "Renamed";
  QVERIFY(!saveCircuits(renamed, table));
  const Plan before = plan();
  const int done = steps();
  WhenWaiting waiting(cancel);
  answerFileDialog(table);
  window_->action(Command::readCircuits)->trigger();
  QVERIFY(waiting.seen);
  QCOMPARE(plan(), before);
  QCOMPARE(steps(), done);
  answerFileDialog(table);
  window_->action(Command::readCircuits)->trigger();
  QCOMPARE(plan().circuits.front()->name, std::string("Renamed"));
  QCOMPARE(steps(), done + 1);
}

void WaitingTest::pastingIsCancelled() {
  window_->action(Command::survey)->trigger();
  SurveyTable& table = *window_->survey()->table();
  table.moveTo(0, GridColumn::name);
  QGuiApplication::clipboard()->setText(QStringLiteral("First\tfor this\nSecond\tfor that"));
  const Plan before = plan();
  const int done = steps();
  WhenWaiting waiting(cancel);
  window_->action(Command::pasteCells)->trigger();
  QVERIFY(waiting.seen);
  QCOMPARE(plan(), before);
  QCOMPARE(steps(), done);
  window_->action(Command::pasteCells)->trigger();
  QVERIFY(plan() != before);
  QCOMPARE(steps(), done + 1);
}

void WaitingTest::aPictureIsCancelled() {
  QGuiApplication::clipboard()->setText(QStringLiteral("kept"));
  WhenWaiting waiting(cancel);
  window_->action(Command::copyPicture)->trigger();
  QVERIFY(waiting.seen);
  QCOMPARE(QGuiApplication::clipboard()->text(), QStringLiteral("kept"));
  window_->action(Command::copyPicture)->trigger();
  QVERIFY(!QGuiApplication::clipboard()->image().isNull());
}

QTEST_MAIN(WaitingTest)
#include "waiting_test.moc"
