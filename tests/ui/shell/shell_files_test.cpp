// Files: save, open, recent, drop, the question before leaving, and messages for what cannot be opened.

#include <QtCore/QLockFile>
#include <QtCore/QMimeData>
#include <QtGui/QAction>
#include <QtGui/QDropEvent>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMenuBar>

#include "tests/ui/shell/window_fixture.h"

using namespace stayalight;
using namespace stayalight::window;

class ShellFilesTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void saveAndOpenGiveTheSamePlan();
  void badFilesEndInOneMessage_data();
  void badFilesEndInOneMessage();
  void closingAsksAboutChanges();
  void closingSavesWhereThatIsAnswered();
  void aPlanWithoutAFileAsksForOneBeforeClosing();
  void openAndSaveAsGoThroughTheirDialogs();
  void aDroppedFileOpens();
  void recentFilesAreOffered();
  void aFileOpenElsewhereIsSaid();

 private:
  void change() {
    window_->boards()->focusBreaker(movableCircuit(plan())->planned);
    window_->action(Command::move)->trigger();
    QVERIFY(window_->document().isModified());
  }
  [[nodiscard]] QString saved() {
    const QString path = folder_.filePath(QStringLiteral("house.stayalight"));
    if (window_->document().saveAs(path)) return {};
    return path;
  }

  QTemporaryDir folder_;
};

void ShellFilesTest::saveAndOpenGiveTheSamePlan() {
  change();
  const QString path = saved();
  QVERIFY(!path.isEmpty());
  QVERIFY(!window_->document().isModified());
  const Plan before = plan();
  window_->openSample();
  QVERIFY(window_->openFile(path));
  QCOMPARE(plan(), before);
  QVERIFY(window_->windowTitle().contains(QStringLiteral("house")));
  // Saved by its key.
  change();
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QVERIFY(!window_->document().isModified());
}

void ShellFilesTest::badFilesEndInOneMessage_data() {
  QTest::addColumn<QByteArray>("bytes");
  QTest::newRow("empty") << QByteArray();
  QTest::newRow("not json") << QByteArray("this is no plan");
  QTest::newRow("cut off") << QByteArray("{\"stayalight\": {\"format\": 1,");
  QTest::newRow("other format") << QByteArray("{\"stayalight\": {\"format\": 99, \"level\": 1}}");
  QTest::newRow("deep") << QByteArray(100000, '[');
}

void ShellFilesTest::badFilesEndInOneMessage() {
  QFETCH(QByteArray, bytes);
  const Plan before = plan();
  const QString path = folder_.filePath(QStringLiteral("bad.stayalight"));
  QFile file(path);
  QVERIFY(file.open(QIODevice::WriteOnly));
  file.write(bytes);
  file.close();
  QString text;
  answerNextBox(QString(), &text);
  QVERIFY(!window_->openFile(path));
  QVERIFY(text.contains(QStringLiteral("bad.stayalight")));
  QCOMPARE(plan(), before);
  // A folder, and a file that is not there.
  for (const QString& other : {folder_.path(), folder_.filePath(QStringLiteral("gone.stayalight"))}) {
    text.clear();
    answerNextBox(QString(), &text);
    QVERIFY(!window_->openFile(other));
    QVERIFY(!text.isEmpty());
    QCOMPARE(plan(), before);
  }
}

void ShellFilesTest::closingAsksAboutChanges() {
  change();
  answerNextBox(QStringLiteral("cancel"));
  QVERIFY(!window_->close());
  QVERIFY(window_->isVisible());
  answerNextBox(QStringLiteral("discard"));
  QVERIFY(window_->close());
}

void ShellFilesTest::closingSavesWhereThatIsAnswered() {
  const QString path = saved();
  change();
  const Plan changed = plan();
  QString text;
  answerNextBox(QStringLiteral("save"), &text);
  QVERIFY(window_->close());
  QVERIFY(text.contains(QStringLiteral("house")));
  QCOMPARE(loadPlan(path).value().plan, changed);
}

void ShellFilesTest::aPlanWithoutAFileAsksForOneBeforeClosing() {
  change();
  const Plan changed = plan();
  // The file dialog left: nothing is lost, the window stays.
  answerNextBox(QStringLiteral("save"));
  answerFileDialog({});
  QVERIFY(!window_->close());
  QVERIFY(window_->isVisible());
  QCOMPARE(plan(), changed);
  const QString path = folder_.filePath(QStringLiteral("new.stayalight"));
  QFile::remove(path);
  answerNextBox(QStringLiteral("save"));
  answerFileDialog(path);
  QVERIFY(window_->close());
  QCOMPARE(loadPlan(path).value().plan, changed);
}

void ShellFilesTest::openAndSaveAsGoThroughTheirDialogs() {
  const QString path = folder_.filePath(QStringLiteral("second"));
  QFile::remove(path + QStringLiteral(".stayalight"));
  answerFileDialog(path);
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
  QCOMPARE(window_->document().path(), path + QStringLiteral(".stayalight"));
  const Plan kept = plan();
  window_->openSample();
  QVERIFY(window_->document().path().isEmpty());
  answerFileDialog(path + QStringLiteral(".stayalight"));
  pressKey(*window_, Qt::Key_O, Qt::ControlModifier);
  QCOMPARE(window_->document().path(), path + QStringLiteral(".stayalight"));
  QCOMPARE(plan(), kept);
}

void ShellFilesTest::aDroppedFileOpens() {
  const QString path = saved();
  window_->openSample();
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(path)});
  QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window_, &enter);
  QVERIFY(enter.isAccepted());
  QDropEvent drop(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window_, &drop);
  QTRY_COMPARE(QFileInfo(window_->document().path()).fileName(), QStringLiteral("house.stayalight"));
}

void ShellFilesTest::recentFilesAreOffered() {
  const QString path = saved();
  QVERIFY(window_->openFile(path));
  const QStringList recent = PlanDocument::recentFiles();
  QVERIFY(!recent.isEmpty());
  QCOMPARE(QFileInfo(recent.front()).fileName(), QStringLiteral("house.stayalight"));
  // From the menu.
  window_->openSample();
  QVERIFY(window_->document().path().isEmpty());
  auto* bar = window_->findChild<QMenuBar*>();
  QMenu* files = bar->actions().front()->menu();
  QMenu* recents = nullptr;
  for (QAction* action : files->actions()) {
    if (action->menu() != nullptr) recents = action->menu();
  }
  QVERIFY(recents != nullptr);
  recents->popup(window_->mapToGlobal(QPoint(40, 40)));
  QTest::mouseClick(recents, Qt::LeftButton, {},
                    recents->actionGeometry(recents->actions().front()).center());
  QCOMPARE(window_->document().path(), path);
}

void ShellFilesTest::aFileOpenElsewhereIsSaid() {
  const QString path = saved();
  QLockFile foreign(lockPath(path));
  window_->openSample();  // lets go of it
  QVERIFY(foreign.tryLock());
  QString text;
  answerNextBox(QString(), &text);
  QVERIFY(window_->openFile(path));
  QVERIFY2(!text.isEmpty(), "the lock of another session was not noticed");
}

QTEST_MAIN(ShellFilesTest)
#include "shell_files_test.moc"
