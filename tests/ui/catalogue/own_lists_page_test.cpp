// A person's lists in the window: renamed and deleted by keys, taken back, and no plan loses anything by it.

#include <QtCore/QDir>
#include <QtCore/QDirIterator>
#include <QtGui/QAction>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableWidget>

#include "core/edit/part.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/catalogue/own_lists_dialog.h"

using namespace stayalight;
using namespace stayalight::window;

class OwnListsPageTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    QDir(ownFolder()).removeRecursively();
    openWithSample();
    Load load = householdLoads().entries.front().load;
    load.name = "Aquarium";
    QVERIFY(!keepLoad(load));
    QVERIFY(keepRecord(plan(), {RecordKind::inverter}, QStringLiteral("Hall inverter")).ok());
    QVERIFY(keepRecord(plan(), {RecordKind::battery}, QStringLiteral("Rack")).ok());
    QVERIFY(
        keepRecord(plan(), {RecordKind::panel, mainPanel(plan())->id.number}, QStringLiteral("Forty")).ok());
    QVERIFY(keepTemplate(plan(), QStringLiteral("Bungalow")).ok());
    window_->action(Command::ownLists)->trigger();
    dialog_ = window_->findChild<OwnListsDialog*>();
    QVERIFY(dialog_ != nullptr && QTest::qWaitForWindowActive(dialog_));
  }
  void cleanup() {
    closeWindow();
    QDir(ownFolder()).removeRecursively();
  }
  void everyKindIsListed();
  void eachIsRenamedAndTakenBack_data();
  void eachIsRenamedAndTakenBack();
  void eachIsDeletedAndTakenBack_data() { eachIsRenamedAndTakenBack_data(); }
  void eachIsDeletedAndTakenBack();
  void aNameThatIsTakenIsRefused();
  void listsOfThePlanAreStepsOfThePlan();

 private:
  [[nodiscard]] QStringList names() const {
    QStringList all;
    for (int row = 0; row < table()->rowCount(); ++row) all << table()->item(row, 1)->text();
    return all;
  }
  [[nodiscard]] QTableWidget* table() const { return dialog_->table(); }
  [[nodiscard]] QString told() const {
    return dialog_->findChild<QLabel*>(QStringLiteral("ownTold"))->text();
  }
  void goTo(const QString& name) {
    table()->setFocus();
    table()->setCurrentCell(0, 1);
    for (qsizetype i = 0; i < names().size() && table()->currentItem()->text() != name; ++i)
      QTest::keyClick(table(), Qt::Key_Down);
    QCOMPARE(table()->currentItem()->text(), name);
  }
  void rename(const QString& from, const QString& to) {
    goTo(from);
    QTest::keyClick(table(), Qt::Key_F2);
    auto* line = table()->findChild<QLineEdit*>();
    QVERIFY(line != nullptr);
    line->selectAll();
    QTest::keyClicks(line, to);
    QTest::keyClick(line, Qt::Key_Return);
    QCoreApplication::processEvents();
  }
  /// All files of the lists with what they hold.
  [[nodiscard]] static QMap<QString, QByteArray> files() {
    QMap<QString, QByteArray> all;
    QDirIterator each(ownFolder(), QDir::Files, QDirIterator::Subdirectories);
    while (each.hasNext()) {
      QFile file(each.next());
      if (file.open(QIODevice::ReadOnly)) all.insert(file.fileName(), file.readAll());
    }
    return all;
  }

  OwnListsDialog* dialog_ = nullptr;
};

void OwnListsPageTest::everyKindIsListed() {
  const QStringList wanted = {QStringLiteral("Aquarium"), QStringLiteral("Hall inverter"),
                              QStringLiteral("Rack"), QStringLiteral("Forty"), QStringLiteral("Bungalow")};
  QCOMPARE(names(), wanted);
  for (int row = 0; row < table()->rowCount(); ++row) {
    QVERIFY(!table()->item(row, 0)->text().isEmpty());
    QVERIFY(!table()->item(row, 0)->flags().testFlag(Qt::ItemIsEditable));
  }
}

void OwnListsPageTest::eachIsRenamedAndTakenBack_data() {
  QTest::addColumn<QString>("name");
  for (const char* name : {"Aquarium", "Hall inverter", "Rack", "Forty", "Bungalow"})
    QTest::newRow(name) << QString::fromLatin1(name);
}

void OwnListsPageTest::eachIsRenamedAndTakenBack() {
  QFETCH(QString, name);
  const QMap<QString, QByteArray> before = files();
  const Plan planBefore = plan();
  rename(name, QStringLiteral("Other name"));
  QVERIFY(names().contains(QStringLiteral("Other name")) && !names().contains(name));
  QVERIFY(told().contains(QStringLiteral("Other name")));
  QCOMPARE(files().size(), before.size());
  QCOMPARE(ownEntries().size(), std::size_t{5});
  QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(files(), before);
  QVERIFY(names().contains(name));
  // The window's own undo is the plan's, and it was not meant.
  QCOMPARE(plan(), planBefore);
  QCOMPARE(steps(), 0);
}

void OwnListsPageTest::eachIsDeletedAndTakenBack() {
  QFETCH(QString, name);
  const QMap<QString, QByteArray> before = files();
  const Plan planBefore = plan();
  goTo(name);
  QTest::keyClick(table(), Qt::Key_Delete);
  QCoreApplication::processEvents();
  QVERIFY(!names().contains(name));
  QCOMPARE(names().size(), 4);
  QCOMPARE(plan(), planBefore);
  QTest::mouseClick(dialog_->findChild<QPushButton*>(QStringLiteral("ownUndo")), Qt::LeftButton);
  QCOMPARE(files(), before);
  QCOMPARE(names().size(), 5);
  QVERIFY(!dialog_->findChild<QPushButton*>(QStringLiteral("ownUndo"))->isEnabled());
}

void OwnListsPageTest::aNameThatIsTakenIsRefused() {
  QVERIFY(keepTemplate(plan(), QStringLiteral("Cabin")).ok());
  dialog_->close();
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  window_->action(Command::ownLists)->trigger();
  dialog_ = window_->findChild<OwnListsDialog*>();
  QVERIFY(QTest::qWaitForWindowActive(dialog_));
  const QMap<QString, QByteArray> before = files();
  rename(QStringLiteral("Cabin"), QStringLiteral("Bungalow"));
  QVERIFY2(told().contains(QStringLiteral("Bungalow")), qPrintable(told()));
  QCOMPARE(files(), before);
  QTRY_VERIFY(names().contains(QStringLiteral("Cabin")));
  rename(QStringLiteral("Cabin"), QStringLiteral("  "));
  QCOMPARE(files(), before);
  QTRY_VERIFY(names().contains(QStringLiteral("Cabin")));
}

void OwnListsPageTest::listsOfThePlanAreStepsOfThePlan() {
  const auto& document = window_->document();
  const Plan kept = keepInPlan(plan(), {RecordKind::battery}, "Spare rack").value();
  window_->startPlan(kept);
  QTRY_COMPARE(names().size(), 6);
  QCOMPARE(table()->item(5, 1)->text(), QStringLiteral("Spare rack"));
  QCOMPARE(table()->item(5, 2)->text(), QStringLiteral("this plan"));
  QCOMPARE(table()->item(0, 2)->text(), QStringLiteral("for every plan"));
  const QMap<QString, QByteArray> before = files();

  rename(QStringLiteral("Spare rack"), QStringLiteral("Second rack"));
  QVERIFY(plan().own->batteries.front().name == "Second rack");
  QCOMPARE(document.stack().count(), 1);
  goTo(QStringLiteral("Second rack"));
  QTest::keyClick(table(), Qt::Key_Delete);
  QCoreApplication::processEvents();
  QVERIFY(plan().own->batteries.empty());
  QCOMPARE(document.stack().count(), 2);
  // Undo of this window, twice: as it was, and each a step that the plan's own undo knows.
  QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier);
  QVERIFY(plan().own->batteries.front().name == "Second rack");
  QTest::keyClick(table(), Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), kept);
  QCOMPARE(names().size(), 6);

  // The plan's own undo is shown here, and takes what this window could put back with it.
  window_->action(Command::undo)->trigger();
  QVERIFY(plan().own->batteries.front().name == "Second rack");
  QVERIFY(names().contains(QStringLiteral("Second rack")));
  QVERIFY(!dialog_->findChild<QPushButton*>(QStringLiteral("ownUndo"))->isEnabled());
  QCOMPARE(files(), before);
}

QTEST_MAIN(OwnListsPageTest)
#include "own_lists_page_test.moc"
