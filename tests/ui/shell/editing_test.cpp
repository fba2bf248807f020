// Adding, copying and deleting what a plan is made of, through the menu and the buttons of the facts.

#include <QtCore/QTimer>
#include <QtGui/QAction>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QTableWidget>

#include "tests/ui/shell/window_fixture.h"
#include "ui/shell/edition_dialog.h"

using namespace stayalight;
using namespace stayalight::window;

class EditingTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void everyKindIsAddedCopiedAndDeleted_data();
  void everyKindIsAddedCopiedAndDeleted();
  void nonsenseInAFieldIsSaidBesideItAndKept();
  void enterOnABreakerOpensItsFactsAtAFieldInSight();
  void anotherEditionIsAskedForWithWhatItChanges();

 private:
  void add(const QString& kind) {
    window_->action(Command::inspector)->trigger();
    auto* button = window_->inspector()->findChild<QPushButton*>(QStringLiteral("addNew"));
    QVERIFY(button != nullptr && button->isVisible());
    QMenu* menu = button->menu();
    menu->popup(button->mapToGlobal(button->rect().bottomLeft()));
    for (QAction* action : menu->actions()) {
      if (action->objectName() == QStringLiteral("add.") + kind) {
        QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(action).center());
        return;
      }
    }
    QFAIL(qPrintable(kind));
  }
  [[nodiscard]] std::size_t count(RecordKind kind) const {
    std::size_t loads = 0;
    for (const auto& circuit : plan().circuits) loads += circuit->loads.size();
    switch (kind) {
      case RecordKind::panel:
        return plan().panels.size();
      case RecordKind::breaker:
        return plan().breakers.size();
      case RecordKind::circuit:
        return plan().circuits.size();
      case RecordKind::load:
        return loads;
      case RecordKind::feederRun:
        return plan().runs.size();
      case RecordKind::raceway:
        return plan().raceways.size();
      case RecordKind::spliceBox:
        return plan().spliceBoxes.size();
      default:
        return 0;
    }
  }
};

void EditingTest::everyKindIsAddedCopiedAndDeleted_data() {
  QTest::addColumn<int>("kind");
  QTest::addColumn<bool>("copies");
  const auto row = [](RecordKind kind, bool copies) {
    QTest::newRow(std::string(recordType(kind).name).c_str()) << static_cast<int>(kind) << copies;
  };
  row(RecordKind::circuit, true);
  row(RecordKind::load, true);
  row(RecordKind::breaker, true);
  row(RecordKind::panel, true);
  row(RecordKind::feederRun, false);
  row(RecordKind::raceway, false);
  row(RecordKind::spliceBox, false);
}

void EditingTest::everyKindIsAddedCopiedAndDeleted() {
  QFETCH(int, kind);
  QFETCH(bool, copies);
  const auto record = static_cast<RecordKind>(kind);
  // A free space for what takes one, and a circuit for a load.
  window_->boards()->focusBreaker(movableCircuit(plan())->planned);
  window_->inspector()->look({RecordKind::panel, backupPanel(plan())->id.number});
  if (record == RecordKind::load)
    window_->inspector()->look({RecordKind::circuit, movableCircuit(plan())->id.number});
  const Plan before = plan();
  const std::size_t were = count(record);
  add(QString::fromUtf8(recordType(record).name.data(), qsizetype(recordType(record).name.size())));
  QCOMPARE(count(record), were + 1);
  QCOMPARE(steps(), 1);
  QVERIFY(!window_->statusText().isEmpty());
  EntityRef made = window_->inspector()->lookingAt();
  if (record == RecordKind::load)
    made = {RecordKind::load, find(plan(), CircuitId{made.id})->loads.back().id.number};
  const auto press = [&](const char* button) {
    RecordForm* form = window_->inspector()->form(made);
    QVERIFY(form != nullptr);
    auto* found = form->findChild<QPushButton*>(QString::fromLatin1(button));
    QVERIFY2(found != nullptr, button);
    found->click();
  };
  if (copies) {
    press("copy");
    QCOMPARE(count(record), were + 2);
    QCOMPARE(steps(), 2);
    window_->action(Command::undo)->trigger();
    QCOMPARE(count(record), were + 1);
    window_->inspector()->look(made);
  }
  press("delete");
  QCOMPARE(count(record), were);
  while (window_->document().canUndo()) pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
}

void EditingTest::nonsenseInAFieldIsSaidBesideItAndKept() {
  const Circuit* circuit = circuitNamed(plan(), "Freezer");
  QVERIFY(circuit != nullptr);
  window_->inspector()->look({RecordKind::circuit, circuit->id.number});
  window_->action(Command::inspector)->trigger();
  const EntityRef load{RecordKind::load, circuit->loads.front().id.number};
  FieldEditor* editor = window_->inspector()->form(load)->editor("running_W");
  auto* line = editor->findChild<QLineEdit*>(QStringLiteral("value"));
  line->setFocus();
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("plenty"));
  QTest::keyClick(line, Qt::Key_Return);
  QCOMPARE(steps(), 0);
  QCOMPARE(line->text(), QStringLiteral("plenty"));
  auto* note = editor->findChild<QLabel*>(QStringLiteral("note"));
  QVERIFY(note != nullptr && note->isVisible() && !note->text().isEmpty());
  QTest::keyClick(line, Qt::Key_Escape);
  QVERIFY(line->text() != QStringLiteral("plenty"));
}

void EditingTest::enterOnABreakerOpensItsFactsAtAFieldInSight() {
  const Circuit* circuit = circuitNamed(plan(), "Freezer");
  window_->boards()->focusBreaker(circuit->planned);
  QTest::keyClick(window_->boards()->boardWidget(backupPanel(plan())->id), Qt::Key_Return);
  QVERIFY(window_->inspector()->isVisible());
  QCOMPARE(window_->inspector()->lookingAt(), (EntityRef{RecordKind::circuit, circuit->id.number}));
  const auto inSight = [this] {
    const QWidget* field = window_->focusWidget();
    return field != nullptr && window_->inspector()->isAncestorOf(field) &&
           field->visibleRegion().boundingRect().size() == field->size();
  };
  QTRY_VERIFY(inSight());
}

void EditingTest::anotherEditionIsAskedForWithWhatItChanges() {
  window_->action(Command::inspector)->trigger();
  window_->inspector()->look({RecordKind::site});
  const auto combo = [this] {
    return window_->inspector()
        ->form({RecordKind::site})
        ->editor("code_edition")
        ->findChild<QComboBox*>(QStringLiteral("value"));
  };
  const auto choose = [&](const char* button, int& rows) {
    QTimer::singleShot(0, window_, [&rows, button] {
      auto* dialog = qobject_cast<EditionDialog*>(QApplication::activeModalWidget());
      QVERIFY(dialog != nullptr);
      rows = dialog->table()->rowCount();
      QTest::mouseClick(dialog->findChild<QPushButton*>(QString::fromLatin1(button)), Qt::LeftButton);
    });
    combo()->setFocus();
    QTest::keyClick(combo(), Qt::Key_Up);
  };
  const Plan before = plan();
  int rows = 0;
  choose("keep", rows);
  QVERIFY(rows > 0);
  QCOMPARE(plan(), before);
  QCOMPARE(combo()->currentText(), QStringLiteral("2023"));
  choose("take", rows);
  QVERIFY(plan().site->edition.is(CodeEdition::y2020));
  QCOMPARE(steps(), 1);
}

QTEST_MAIN(EditingTest)
#include "editing_test.moc"
