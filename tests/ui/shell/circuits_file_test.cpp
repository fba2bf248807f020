// Circuits out to a table and in again, through the dialogs of the real window.

#include <QtCore/QTemporaryDir>
#include <QtGui/QAction>

#include "tests/ui/shell/window_fixture.h"

using namespace stayalight;
using namespace stayalight::window;

class CircuitsFileTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare() && folder_.isValid()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void writtenAndReadAgainChangesNothing();
  void whatWasWrittenElsewhereComesIn();
  void aTableThatIsNoneIsToldAndChangesNothing();
  void aDialogThatIsLeftDoesNothing();

 private:
  [[nodiscard]] QString written(const QString& name) {
    const QString path = folder_.filePath(name);
    answerFileDialog(path);
    window_->action(Command::writeCircuits)->trigger();
    return path;
  }
  [[nodiscard]] static QByteArray bytes(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }

  QTemporaryDir folder_;
};

void CircuitsFileTest::writtenAndReadAgainChangesNothing() {
  // Without a suffix it gets one.
  answerFileDialog(folder_.filePath(QStringLiteral("first")));
  window_->action(Command::writeCircuits)->trigger();
  const QString path = folder_.filePath(QStringLiteral("first.csv"));
  QVERIFY(QFileInfo::exists(path));
  QVERIFY(window_->statusText().contains(QStringLiteral("first.csv")));
  const QByteArray table = bytes(path);
  for (const auto& circuit : plan().circuits)
    QVERIFY(table.contains(QByteArray::fromStdString(circuit->name)));
  const Plan before = plan();
  answerFileDialog(path);
  window_->action(Command::readCircuits)->trigger();
  QCOMPARE(plan(), before);
}

void CircuitsFileTest::whatWasWrittenElsewhereComesIn() {
  const QString path = written(QStringLiteral("second.csv"));
  const QByteArray table = bytes(path);
  const Circuit* freezer = circuitNamed(plan(), "Freezer");
  QVERIFY(freezer != nullptr && table.contains("Freezer"));
  const CircuitId id = freezer->id;
  QFile file(path);
  QVERIFY(file.open(QIODevice::WriteOnly));
  file.write(QByteArray(table).replace("Freezer", "Chest freezer"));
  file.close();
  const Plan before = plan();
  answerFileDialog(path);
  window_->action(Command::readCircuits)->trigger();
  QCOMPARE(steps(), 1);
  QVERIFY(QString::fromStdString(find(plan(), id)->name).contains(QStringLiteral("Chest freezer")));
  window_->action(Command::undo)->trigger();
  QCOMPARE(plan(), before);
}

void CircuitsFileTest::aTableThatIsNoneIsToldAndChangesNothing() {
  const QString path = folder_.filePath(QStringLiteral("none.csv"));
  QFile file(path);
  QVERIFY(file.open(QIODevice::WriteOnly));
  file.write("this is a letter\nand no table\n");
  file.close();
  const Plan before = plan();
  QString told;
  answerFileDialog(path);
  QTimer::singleShot(0, this, [&told] { answerNextBox(QString(), &told); });
  window_->action(Command::readCircuits)->trigger();
  QVERIFY2(told.contains(QStringLiteral("none.csv")), qPrintable(told));
  QCOMPARE(plan(), before);
  QCOMPARE(steps(), 0);
}

void CircuitsFileTest::aDialogThatIsLeftDoesNothing() {
  const Plan before = plan();
  for (const Command command : {Command::writeCircuits, Command::readCircuits}) {
    answerFileDialog(QString());
    window_->action(command)->trigger();
  }
  QCOMPARE(plan(), before);
  QCOMPARE(steps(), 0);
}

QTEST_MAIN(CircuitsFileTest)
#include "circuits_file_test.moc"
