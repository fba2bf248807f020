// What a crash, another program or another session does to a plan, and what the window then asks.

#include <QtCore/QDir>
#include <QtGui/QAction>
#include <utility>

#include "tests/ui/shell/window_fixture.h"

using namespace stayalight;
using namespace stayalight::window;

class RecoveryTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init();
  void cleanup() { delete window_; }
  void afterACrashTheLastChangesAreOffered();
  void aPlanThatWasNeverSavedHasAName();
  void aFileThatWasChangedSinceIsSaid();
  void whoAsksLaterIsAskedAgain();
  void whatIsThrownAwayIsGone();
  void aFileChangedOnTheDiskIsReadAgain();
  void aFileChangedOnTheDiskIsKept();
  void savingOverAChangedFileAsks();
  void aLockedFileOpensWithItsHolderAndIsNotWritten();

 private:
  [[nodiscard]] const Plan& plan() const { return window_->document().plan(); }
  void change() {
    window_->boards()->focusBreaker(movableCircuit(plan())->planned);
    window_->action(Command::move)->trigger();
    QVERIFY(window_->document().isModified());
  }
  // The window writes its plan aside and dies: what it kept stays, with nobody alive to hold it.
  void crash() {
    const QDir aside(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) +
                     QStringLiteral("/aside"));
    const auto kept = [&] {
      return aside.entryList({QStringLiteral("*.stayalight"), QStringLiteral("*.origin")}, QDir::Files);
    };
    QTRY_COMPARE_WITH_TIMEOUT(kept().size(), 2, 20000);
    QTemporaryDir safe;
    for (const QString& name : kept()) QVERIFY(QFile::copy(aside.filePath(name), safe.filePath(name)));
    const QStringList names = kept();
    answerNextBox(QStringLiteral("discard"));
    QVERIFY(window_->close());
    delete std::exchange(window_, nullptr);
    for (const QString& name : names) QVERIFY(QFile::copy(safe.filePath(name), aside.filePath(name)));
    window_ = new MainWindow;
    window_->show();
    QVERIFY(QTest::qWaitForWindowActive(window_));
  }
  // Something else writes the file.
  [[nodiscard]] Plan writeElsewhere() {
    Plan other = plan();
    other.site.edit().name = "Written elsewhere";
    const std::string text = writePlan(other);
    QFile file(path_);
    if (!file.open(QIODevice::WriteOnly)) return {};
    file.write(text.data(), static_cast<qint64>(text.size()));
    return other;
  }
  void answerReload(const char* button) {
    QMessageBox* box = nullptr;
    QTRY_VERIFY((box = window_->findChild<QMessageBox*>(QStringLiteral("reloadBox"))) != nullptr &&
                box->isVisible());
    QVERIFY(box->text().contains(QStringLiteral("house")));
    for (QAbstractButton* each : box->buttons()) {
      if (each->objectName() == QLatin1String(button)) QTest::mouseClick(each, Qt::LeftButton);
    }
    QTRY_VERIFY(window_->findChild<QMessageBox*>(QStringLiteral("reloadBox")) == nullptr);
  }

  std::unique_ptr<QTemporaryDir> folder_;
  QString path_;
  MainWindow* window_ = nullptr;
};

void RecoveryTest::init() {
  // Windows that a test drops without closing leave theirs.
  for (const Leftover& leftover : leftovers()) removeLeftover(leftover);
  folder_ = std::make_unique<QTemporaryDir>();
  path_ = folder_->filePath(QStringLiteral("house.stayalight"));
  window_ = windowWithSample();
  QVERIFY(!window_->document().saveAs(path_));
}

void RecoveryTest::afterACrashTheLastChangesAreOffered() {
  const Plan onDisk = plan();
  change();
  const Plan changed = plan();
  crash();
  QString text;
  answerNextBox(QStringLiteral("recover"), &text);
  window_->offerAutosaves();
  QVERIFY(text.contains(QStringLiteral("house")));
  QCOMPARE(plan(), changed);
  QVERIFY(window_->document().isModified());
  QCOMPARE(window_->document().path(), path_);
  QVERIFY(window_->windowTitle().contains(QStringLiteral("house")));
  // The file is as it was until it is saved; then nothing is left to offer.
  QCOMPARE(loadPlan(path_).value().plan, onDisk);
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QCOMPARE(loadPlan(path_).value().plan, changed);
  QVERIFY(leftovers().empty());
}

void RecoveryTest::aPlanThatWasNeverSavedHasAName() {
  window_->startPlan(newPlan());
  const Result<Plan> after =
      addCircuit(plan(), mainPanel(plan())->id, std::nullopt, 1, RatingAmperes(20), "Hall");
  QVERIFY(after.ok() && !window_->document().apply(after.value(), QStringLiteral("circuit")));
  crash();
  QString text;
  answerNextBox(QStringLiteral("recover"), &text);
  window_->offerAutosaves();
  QVERIFY2(text.contains(QStringLiteral("Untitled")) && !text.contains(QStringLiteral("\"\"")),
           qPrintable(text));
  QCOMPARE(plan(), after.value());
  QVERIFY(window_->document().path().isEmpty());
}

void RecoveryTest::aFileThatWasChangedSinceIsSaid() {
  change();
  const Plan changed = plan();
  const Plan other = [&] {
    Plan made = plan();
    made.site.edit().name = "Written elsewhere";
    return made;
  }();
  crash();
  QVERIFY(!writeBytes(path_, QByteArray::fromStdString(writePlan(other))));
  QString text;
  answerNextBox(QStringLiteral("recover"), &text);
  window_->offerAutosaves();
  QVERIFY2(text.contains(QStringLiteral("something else")), qPrintable(text));
  QCOMPARE(plan(), changed);
  // Nothing is overwritten until it is saved.
  QCOMPARE(loadPlan(path_).value().plan, other);
}

void RecoveryTest::whoAsksLaterIsAskedAgain() {
  change();
  const Plan changed = plan();
  crash();
  answerNextBox(QStringLiteral("later"));
  window_->offerAutosaves();
  QVERIFY(window_->document().path().isEmpty());
  QCOMPARE(leftovers().size(), std::size_t{1});
  answerNextBox(QString::fromLatin1("none of them"));  // Escape is the same
  window_->offerAutosaves();
  QCOMPARE(leftovers().size(), std::size_t{1});
  answerNextBox(QStringLiteral("recover"));
  window_->offerAutosaves();
  QCOMPARE(plan(), changed);
}

void RecoveryTest::whatIsThrownAwayIsGone() {
  const Plan onDisk = plan();
  change();
  crash();
  answerNextBox(QStringLiteral("throwAway"));
  window_->offerAutosaves();
  QVERIFY(leftovers().empty());
  QVERIFY(window_->openFile(path_));
  QCOMPARE(plan(), onDisk);
  QVERIFY(!window_->document().isModified());
}

void RecoveryTest::aFileChangedOnTheDiskIsReadAgain() {
  change();
  const Plan other = writeElsewhere();
  answerReload("reload");
  QCOMPARE(plan(), other);
  QVERIFY(!window_->document().isModified());
  QCOMPARE(window_->document().path(), path_);
}

void RecoveryTest::aFileChangedOnTheDiskIsKept() {
  change();
  const Plan mine = plan();
  const Plan other = writeElsewhere();
  answerReload("keep");
  QCOMPARE(plan(), mine);
  QVERIFY(window_->document().isModified());
  QVERIFY(window_->document().canUndo());
  QCOMPARE(loadPlan(path_).value().plan, other);
}

void RecoveryTest::savingOverAChangedFileAsks() {
  change();
  const Plan mine = plan();
  const Plan other = writeElsewhere();
  answerReload("keep");
  answerNextBox(QString::fromLatin1("none of them"));
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QCOMPARE(loadPlan(path_).value().plan, other);
  QVERIFY(window_->document().isModified());
  const QString elsewhere = folder_->filePath(QStringLiteral("mine.stayalight"));
  answerNextBox(QStringLiteral("elsewhere"));
  answerFileDialog(elsewhere);
  pressKey(*window_, Qt::Key_S, Qt::ControlModifier);
  QCOMPARE(window_->document().path(), elsewhere);
  QCOMPARE(loadPlan(elsewhere).value().plan, mine);
  QCOMPARE(loadPlan(path_).value().plan, other);
}

void RecoveryTest::aLockedFileOpensWithItsHolderAndIsNotWritten() {
  // Not by another window of this program, which would only come forward.
  const Plan kept = plan();
  delete std::exchange(window_, nullptr);
  PlanDocument elsewhere;
  QVERIFY(!elsewhere.open(path_));
  MainWindow second;
  second.show();
  QString text;
  answerNextBox(QString(), &text);
  QVERIFY(second.openFile(path_));
  // Who, on which machine.
  const auto& holder = second.document().lockedBy();
  QVERIFY(holder.has_value() && !holder->host.isEmpty());
  QVERIFY2(text.contains(holder->host) && text.contains(holder->user), qPrintable(text));
  QCOMPARE(second.document().plan(), kept);
  const CircuitId ids[] = {movableCircuit(kept)->id};
  const Result<Plan> moved = moveCircuits(kept, ids, backupPanel(kept)->id);
  QVERIFY(moved.ok());
  QVERIFY(!second.document().apply(moved.value(), QStringLiteral("move")));
  answerNextBox(QString(), &text);
  second.action(Command::save)->trigger();
  QVERIFY2(text.contains(QStringLiteral("house")), qPrintable(text));
  QCOMPARE(loadPlan(path_).value().plan, kept);
  QVERIFY(second.document().isModified());
}

QTEST_MAIN(RecoveryTest)
#include "recovery_test.moc"
