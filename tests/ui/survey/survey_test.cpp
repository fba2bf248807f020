// The survey in the real window, by keys: a panel typed in, corrected, copied, pasted, and read from its
// door.

#include <QtCore/QTemporaryDir>
#include <QtGui/QAccessible>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtTest/QAbstractItemModelTester>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableWidget>
#include <QtWidgets/QToolButton>

#include "core/directory/directory.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/document/circuits_file.h"
#include "ui/survey/directory_dialog.h"
#include "ui/survey/known_bar.h"
#include "ui/survey/survey_table.h"
#include "ui/survey/survey_view.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

/// A breaker as a surveyor reads it off a panel of 42 spaces, in the order of typing: down the left, down the
/// right.
struct Line {
  const char* spaces;
  int rating;
  const char* name;
  int poles = 1;
  bool tandem = false;       ///< the upper half; its lower half follows
  bool sharesAbove = false;  ///< its neutral with the circuit above
};
constexpr Line kPanel[] = {
    {"1", 20, "Kitchen left"},
    {"3", 20, "Kitchen right", 1, false, true},
    {"5, 7", 50, "Range", 2},
    {"9", 20, "Dishwasher"},
    {"11", 20, "Disposal"},
    {"13", 20, "Microwave"},
    {"15", 20, "Refrigerator"},
    {"17, 19", 30, "Dryer", 2},
    {"21", 20, "Laundry"},
    {"23A", 15, "Doorbell", 1, true},
    {"23B", 15, "Alarms"},
    {"25A", 15, "Attic light", 1, true},
    {"25B", 15, "Attic fan"},
    {"27", 20, "Upper bath"},
    {"29", 20, "Lower bath"},
    {"31", 15, "Bedroom front"},
    {"33", 15, "Bedroom rear", 1, false, true},
    {"35", 15, "Hall"},
    {"37", 15, "Stairs"},
    {"39, 41", 40, "Heat pump", 2},
    {"2", 20, "Sump pump"},
    {"4", 20, "Well pump"},
    {"6", 15, "Boiler"},
    {"8", 15, "Circulators"},
    {"10", 20, "Freezer"},
    {"12", 15, "Internet"},
    {"14, 16", 50, "Car charger", 2},
    {"18", 20, "Garage door"},
    {"20", 20, "Garage"},
    {"22", 15, "Outdoor lights"},
    {"24", 15, "Yard"},
    {"26", 15, "Living room"},
    {"28", 15, "Dining room", 1, false, true},
    {"30A", 15, "Study", 1, true},
    {"30B", 15, "Guest room"},
    {"32", 15, "Basement lights"},
    {"34", 20, "Workshop"},
    {"36, 38", 30, "Water heater", 2},
    {"40", 20, "Septic pump"},
    {"42", 15, "Porch"},
};
static_assert(std::size(kPanel) == 40);

}  // namespace

class SurveyTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init();
  void cleanup() { delete window_; }
  void fortyCircuitsByKeystrokesAlone();
  void whatIsNotReadStaysBesideAReason();
  void keysMoveAsOnASchedule();
  void copyAndPasteAreTheSamePanel();
  void aPasteOfTooMuchSaysSo();
  void fillDuplicateGradeAndDelete();
  void machinesWithWhoWhenAndHow();
  void theFirstWordInASpaceIsAStepOfThatSpace();
  void theDirectoryIsReadLineByLine();
  void circuitsGoToAFileAndComeBack();
  void everyCellIsNamedForTheScreenReader();
  void aRowThatGoesWhileOneTypesTakesNothingWithIt();
  void keysInAnEmptyListDoNothing();
  void filtersPanelsAndOrders();
  void lettersOfTheLabelsReachTheChoosers();
  void aRowStaysWhileItIsWorkedOn();
  void theFactsFollowTheRow();
  void everyThemeAndSizeShows();

 private:
  [[nodiscard]] const Plan& plan() const { return window_->document().plan(); }
  [[nodiscard]] int steps() const { return window_->document().stack().index(); }
  [[nodiscard]] SurveyTable* table() const { return window_->survey()->table(); }
  [[nodiscard]] SurveyModel* model() const { return window_->survey()->model(); }

  /// A press that goes where the keyboard is.
  void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    ++keys_;
    QTest::keyClick(QApplication::focusWidget(), key, modifiers);
  }
  void type(const QString& text) {
    for (const QChar c : text) {
      ++keys_;
      QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    }
  }
  void openEmpty() {
    Plan plan = newPlan();
    plan.panels[0].edit().spaces = 42;
    plan.panels[0].edit().tandems = Answer::yes;
    window_->startPlan(plan);
    window_->action(Command::survey)->trigger();
    QVERIFY(table()->hasFocus());
  }
  void openSample() {
    window_->openSample();
    window_->action(Command::survey)->trigger();
    QVERIFY(table()->hasFocus());
    QCOMPARE(table()->currentColumn(), GridColumn::name);
  }
  void goTo(const QString& space, GridColumn column) {
    for (int row = 0; row < model()->rows(); ++row) {
      if (model()->index(row, 0).data().toString() != space) continue;
      table()->moveTo(row, column);
      return;
    }
    QFAIL(qPrintable(QStringLiteral("no row ") + space));
  }
  [[nodiscard]] QString at(GridColumn column) const {
    return model()->index(table()->currentIndex().row(), static_cast<int>(column)).data().toString();
  }

  MainWindow* window_ = nullptr;
  int keys_ = 0;
};

void SurveyTest::init() {
  QSettings().clear();
  window_ = new MainWindow;
  window_->resize(1440, 900);
  window_->show();
  QVERIFY(QTest::qWaitForWindowActive(window_));
  keys_ = 0;
}

void SurveyTest::fortyCircuitsByKeystrokesAlone() {
  openEmpty();
  const QAbstractItemModelTester tester(model(), QAbstractItemModelTester::FailureReportingMode::QtTest);
  const Plan start = plan();
  keys_ = 0;
  // To the first space and the column of ratings, which is where each line begins.
  press(Qt::Key_Home, Qt::ControlModifier);
  press(Qt::Key_Right);
  press(Qt::Key_Right);
  for (const Line& line : kPanel) {
    if (line.poles == 2) press(Qt::Key_F6);
    if (line.tandem) press(Qt::Key_F7);
    type(QString::number(line.rating));
    press(Qt::Key_Tab);
    type(QString::fromLatin1(line.name));
    if (line.sharesAbove) press(Qt::Key_F8);
    press(Qt::Key_Return);
  }
  const double each = keys_ / static_cast<double>(std::size(kPanel));
  qInfo("%d keystrokes for %zu circuits, %.1f a circuit", keys_, std::size(kPanel), each);
  QVERIFY2(each < 25.0, qPrintable(QString::number(each)));

  QCOMPARE(plan().circuits.size(), std::size(kPanel));
  QCOMPARE(plan().breakers.size(), std::size(kPanel));
  const Panel& main = *mainPanel(plan());
  const Circuit* above = nullptr;
  for (const Line& line : kPanel) {
    const Circuit* circuit = circuitNamed(plan(), line.name);
    QVERIFY2(circuit != nullptr, line.name);
    const Breaker* breaker = stayalight::find(plan(), circuit->breaker);
    QVERIFY2(breaker != nullptr && circuit->planned == breaker->id, line.name);
    QCOMPARE(spaceNames(main, placementOf(*breaker)), std::string(line.spaces));
    QCOMPARE(breaker->rating.count(), line.rating);
    QCOMPARE(breaker->poles, line.poles);
    QVERIFY(breaker->stage.is(Stage::existing));
    QVERIFY(circuit->voltage.is(line.poles == 2 ? VoltageClass::v240 : VoltageClass::v120));
    if (line.sharesAbove) {
      QVERIFY(circuit->multiwire > 0);
      QCOMPARE(circuit->multiwire, above->multiwire);
      QVERIFY(circuit->neutralShared.is(Answer::yes));
    }
    above = circuit;
  }
  const int made = steps();
  while (window_->document().canUndo()) window_->document().undo();
  QVERIFY(plan() == start);
  for (int i = 0; i < made; ++i) window_->document().redo();
  QCOMPARE(plan().circuits.size(), std::size(kPanel));
}

void SurveyTest::whatIsNotReadStaysBesideAReason() {
  openEmpty();
  goTo(QStringLiteral("1"), GridColumn::rating);
  type(QStringLiteral("20"));
  press(Qt::Key_Return);
  const Plan before = plan();
  const int made = steps();
  goTo(QStringLiteral("1"), GridColumn::rating);
  type(QStringLiteral("twenty"));
  press(Qt::Key_Return);
  // No box stopped it: the keyboard is one row on, the text and its reason stand where they were typed.
  QVERIFY(QApplication::activeModalWidget() == nullptr);
  QCOMPARE(table()->currentIndex().row(), 1);
  QVERIFY(plan() == before);
  QCOMPARE(steps(), made);
  goTo(QStringLiteral("1"), GridColumn::rating);
  QCOMPARE(at(GridColumn::rating), QStringLiteral("twenty"));
  QVERIFY(at(GridColumn::finding).contains(QStringLiteral("no number")));
  auto* reason = table()->findChild<QLabel*>(QStringLiteral("cellReason"));
  QVERIFY(reason->isVisible());
  QVERIFY(reason->text().contains(QStringLiteral("no number")));
  // Nobody leaves the plan without having been told.
  answerNextBox(QStringLiteral("stay"));
  window_->action(Command::newPlan)->trigger();
  QVERIFY(plan() == before);
  QVERIFY(QTest::qWaitForWindowActive(window_));
  QVERIFY(table()->hasFocus());
  // It stays through other edits, and F2 goes on with it.
  goTo(QStringLiteral("3"), GridColumn::name);
  type(QStringLiteral("Hall"));
  press(Qt::Key_Return);
  goTo(QStringLiteral("1"), GridColumn::rating);
  press(Qt::Key_F2);
  QCOMPARE(table()->typing()->text(), QStringLiteral("twenty"));
  press(Qt::Key_Escape);
  QCOMPARE(at(GridColumn::rating), QStringLiteral("twenty"));
  press(Qt::Key_Escape);
  QCOMPARE(at(GridColumn::rating), QStringLiteral("20"));
  QVERIFY(!reason->isVisible());
  // Escape while typing keeps what was there.
  type(QStringLiteral("30"));
  press(Qt::Key_Escape);
  QCOMPARE(at(GridColumn::rating), QStringLiteral("20"));
  // A correct value takes the place of the wrong one.
  type(QStringLiteral("x"));
  press(Qt::Key_Return);
  goTo(QStringLiteral("1"), GridColumn::rating);
  type(QStringLiteral("15+15"));
  press(Qt::Key_Return);
  goTo(QStringLiteral("1"), GridColumn::rating);
  QCOMPARE(at(GridColumn::rating), QStringLiteral("30"));
  QVERIFY(model()->allUnread().empty());
}

void SurveyTest::keysMoveAsOnASchedule() {
  openEmpty();
  const auto where = [this] {
    return QStringLiteral("%1/%2")
        .arg(table()->currentIndex().row())
        .arg(model()->columnName(table()->currentColumn()));
  };
  goTo(QStringLiteral("1"), GridColumn::rating);
  press(Qt::Key_Tab);
  QCOMPARE(where(), QStringLiteral("0/Circuit"));
  press(Qt::Key_Tab);
  QCOMPARE(where(), QStringLiteral("0/Serves"));
  press(Qt::Key_Return);
  QCOMPARE(where(), QStringLiteral("1/A"));
  press(Qt::Key_Return, Qt::ShiftModifier);
  QCOMPARE(where(), QStringLiteral("0/A"));
  press(Qt::Key_Backtab, Qt::ShiftModifier);
  QCOMPARE(where(), QStringLiteral("0/Poles"));
  press(Qt::Key_Down);
  QCOMPARE(where(), QStringLiteral("1/Poles"));
  // An arrow ends typing where typing began it, and moves within the text after F2.
  press(Qt::Key_Right);
  type(QStringLiteral("2"));
  press(Qt::Key_Right);
  QCOMPARE(where(), QStringLiteral("1/Circuit"));
  type(QStringLiteral("Hal"));
  press(Qt::Key_Up);
  QCOMPARE(where(), QStringLiteral("0/Circuit"));
  press(Qt::Key_Down);
  press(Qt::Key_F2);
  type(QStringLiteral("k"));
  press(Qt::Key_Left);
  press(Qt::Key_Backspace);
  type(QStringLiteral("l"));
  press(Qt::Key_Return);
  QVERIFY(circuitNamed(plan(), "Halk") != nullptr);
  // The same from what is being typed over; a second F2 changes nothing.
  type(QStringLiteral("Hal"));
  press(Qt::Key_F2);
  press(Qt::Key_F2);
  press(Qt::Key_Left);
  type(QStringLiteral("l"));
  QCOMPARE(table()->typing()->text(), QStringLiteral("Hall"));
  press(Qt::Key_Escape);
  // Ctrl+Tab leaves the grid.
  press(Qt::Key_Tab, Qt::ControlModifier);
  QVERIFY(!table()->hasFocus());
}

void SurveyTest::copyAndPasteAreTheSamePanel() {
  openEmpty();
  std::string door;
  for (const Line& line : kPanel) {
    std::string spaces = line.spaces;
    door += spaces + " " + line.name + " " + std::to_string(line.rating) + "A\n";
  }
  const Plan typed = enterDirectory(plan(), mainPanel(plan())->id, readDirectory(door)).plan;
  QCOMPARE(typed.circuits.size(), std::size(kPanel));
  const Plan empty = plan();
  window_->startPlan(typed);
  window_->action(Command::survey)->trigger();
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyColumns3"))->click();
  table()->selectAll();
  press(Qt::Key_C, Qt::ControlModifier);
  const QString copied = QGuiApplication::clipboard()->text();
  QVERIFY(copied.contains(QStringLiteral("5, 7\t2\t50\tRange\t")));

  window_->startPlan(empty);
  window_->action(Command::survey)->trigger();
  table()->setCurrentIndex(model()->index(0, 0));
  table()->selectionModel()->clearSelection();
  press(Qt::Key_V, Qt::ControlModifier);
  QCOMPARE(steps(), 1);
  QVERIFY2(model()->allUnread().empty(),
           qPrintable(model()->allUnread().empty() ? QString() : model()->allUnread()[0].why));
  QCOMPARE(plan().circuits.size(), typed.circuits.size());
  for (const auto& circuit : typed.circuits) {
    const Circuit* same = circuitNamed(plan(), circuit->name);
    QVERIFY2(same != nullptr, circuit->name.c_str());
    const Breaker& one = *stayalight::find(typed, circuit->breaker);
    const Breaker& other = *stayalight::find(plan(), same->breaker);
    QCOMPARE(placementOf(one), placementOf(other));
    QCOMPARE(one.rating.count(), other.rating.count());
    QVERIFY(circuit->voltage == same->voltage);
  }
  window_->document().undo();
  QVERIFY(plan() == empty);
}

void SurveyTest::aPasteOfTooMuchSaysSo() {
  openEmpty();
  QGuiApplication::clipboard()->setText(QStringLiteral("20,Kitchen\r\nabc,Bath\r\n15,Hall\r\n"));
  goTo(QStringLiteral("40"), GridColumn::rating);
  press(Qt::Key_V, Qt::ControlModifier);
  QVERIFY(circuitNamed(plan(), "Kitchen") != nullptr);
  QVERIFY(circuitNamed(plan(), "Bath") != nullptr);
  QVERIFY(circuitNamed(plan(), "Hall") == nullptr);
  QVERIFY(window_->statusText().contains(QStringLiteral("2 cells did not fit")));
  QCOMPARE(model()->allUnread().size(), std::size_t{1});
  QCOMPARE(model()->allUnread()[0].text, QStringLiteral("abc"));
  QCOMPARE(steps(), 1);
}

void SurveyTest::fillDuplicateGradeAndDelete() {
  openEmpty();
  goTo(QStringLiteral("1"), GridColumn::name);
  type(QStringLiteral("Kitchen"));
  press(Qt::Key_Return);
  goTo(QStringLiteral("1"), GridColumn::room);
  type(QStringLiteral("Ground floor"));
  press(Qt::Key_Return);
  press(Qt::Key_D, Qt::ControlModifier);
  QCOMPARE(at(GridColumn::room), QStringLiteral("Ground floor"));
  QCOMPARE(plan().circuits.size(), std::size_t{2});
  // Four rows at once, one step.
  const int made = steps();
  goTo(QStringLiteral("1"), GridColumn::room);
  for (int i = 0; i < 3; ++i) press(Qt::Key_Down, Qt::ShiftModifier);
  press(Qt::Key_D, Qt::ControlModifier);
  QCOMPARE(steps(), made + 1);
  QCOMPARE(plan().circuits.size(), std::size_t{4});
  for (const auto& circuit : plan().circuits) QCOMPARE(circuit->room, std::string("Ground floor"));
  goTo(QStringLiteral("1"), GridColumn::name);
  press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  QCOMPARE(plan().circuits.size(), std::size_t{5});
  QCOMPARE(plan().circuits.back()->name, std::string("Kitchen"));
  QCOMPARE(at(GridColumn::name), QStringLiteral("Kitchen"));
  press(Qt::Key_Delete, Qt::ControlModifier);
  QCOMPARE(plan().circuits.size(), std::size_t{4});
  goTo(QStringLiteral("1"), GridColumn::room);
  press(Qt::Key_Delete);
  QCOMPARE(plan().circuits[0]->room, std::string());
  goTo(QStringLiteral("1"), GridColumn::serves);
  type(QStringLiteral("Counter"));
  press(Qt::Key_4, Qt::AltModifier);
  QCOMPARE(plan().circuits[0]->serves, std::string("Counter"));
  QVERIFY(plan().circuits[0]->traced.is(Answer::yes));
}

void SurveyTest::machinesWithWhoWhenAndHow() {
  openEmpty();
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyColumns2"))->click();
  goTo(QStringLiteral("1"), GridColumn::name);
  for (const char* text :
       {"Well pump", "1000", "45", "well", "0.8", "20", "3", "6-22", "owner", "2026-03-01", "label"}) {
    type(QString::fromLatin1(text));
    press(Qt::Key_Tab);
  }
  QCOMPARE(plan().circuits.size(), std::size_t{1});
  QCOMPARE(plan().circuits[0]->loads.size(), std::size_t{1});
  const Load load = plan().circuits[0]->loads[0];
  QCOMPARE(load.name, std::string("Well pump"));
  QVERIFY(load.running.value == Watts(1000));
  QVERIFY(load.lockedRotor.value == AcAmperes(45));
  QVERIFY(load.start.is(StartKind::acrossTheLine));
  QVERIFY(load.startClass.is(StartClass::wellPump));
  QVERIFY(load.startTime.value == Seconds(0.8));
  QVERIFY(load.duty.value == Fraction(0.2));
  QVERIFY(load.startsPerHour.value == PerHour(3));
  QCOMPARE(load.windows.size(), std::size_t{1});
  QCOMPARE(load.windows[0].to.hour(), 22);
  QCOMPARE(load.lockedRotor.who, std::string("owner"));
  QCOMPARE(load.duty.how, std::string("label"));
  QCOMPARE(load.running.grade, Grade::unknown);
  // A grade for the row's figures at once.
  goTo(QStringLiteral("1"), GridColumn::running);
  for (int i = 0; i < 5; ++i) press(Qt::Key_Right, Qt::ShiftModifier);
  const int made = steps();
  press(Qt::Key_3, Qt::AltModifier);
  QCOMPARE(steps(), made + 1);
  for (const Grade grade :
       {plan().circuits[0]->loads[0].running.grade, plan().circuits[0]->loads[0].lockedRotor.grade,
        plan().circuits[0]->loads[0].startsPerHour.grade})
    QCOMPARE(grade, Grade::nameplate);
  QCOMPARE(window_->survey()->knownBar()->known()[static_cast<std::size_t>(Grade::nameplate)], 4);
  // What nobody knows.
  goTo(QStringLiteral("1"), GridColumn::duty);
  type(QStringLiteral("?"));
  press(Qt::Key_Return);
  QVERIFY(!plan().circuits[0]->loads[0].duty.value);
  QCOMPARE(window_->survey()->knownBar()->known()[0], 2);  // and the rating, which nobody has read yet
}

// A step names the space that was free, not that it was.
void SurveyTest::theFirstWordInASpaceIsAStepOfThatSpace() {
  openEmpty();
  table()->moveTo(0, GridColumn::name);
  type(QStringLiteral("Kitchen"));
  press(Qt::Key_Return);
  QCOMPARE(plan().circuits.size(), std::size_t{1});
  QVERIFY2(window_->document().undoText().endsWith(QStringLiteral("of space 1")),
           qPrintable(window_->document().undoText()));
}

void SurveyTest::theDirectoryIsReadLineByLine() {
  openEmpty();
  const Plan before = plan();
  QGuiApplication::clipboard()->setText(
      QStringLiteral("1 Kitchen\n3/5 Range 50A 2P\n2) Lights\n7,9 dryer 30\nPanel A\n99 Attic\n"));
  press(Qt::Key_V, Qt::ControlModifier | Qt::ShiftModifier);
  auto* dialog = window_->findChild<DirectoryDialog*>(QStringLiteral("directoryDialog"));
  QVERIFY(dialog != nullptr);
  QVERIFY(QTest::qWaitForWindowActive(dialog));
  dialog->text()->setFocus();
  QTest::keyClick(dialog->text(), Qt::Key_V, Qt::ControlModifier);
  QCOMPARE(dialog->preview()->rowCount(), 6);
  QCOMPARE(dialog->preview()->item(1, 1)->text(), QStringLiteral("3, 5"));
  QCOMPARE(dialog->preview()->item(1, 3)->text(), QStringLiteral("50"));
  QCOMPARE(dialog->preview()->item(4, 4)->text(), QStringLiteral("Panel A"));
  QVERIFY(dialog->preview()->item(4, 5)->text().contains(QStringLiteral("Not read")));
  QVERIFY(dialog->preview()->item(5, 5)->text().contains(QStringLiteral("no space 99")));
  QVERIFY(plan() == before);
  // What is no directory is not read, and says so; the text stays where it was put.
  auto* accept = dialog->findChild<QPushButton*>(QStringLiteral("directoryAccept"));
  const QString typed = dialog->text()->toPlainText();
  dialog->text()->setPlainText(QStringLiteral("1 Kitchen\n").repeated(static_cast<int>(kMostDirectoryLines)));
  QCOMPARE(dialog->preview()->rowCount(), 0);
  QVERIFY(!accept->isEnabled());
  QVERIFY(dialog->findChild<QLabel*>(QStringLiteral("directorySummary"))
              ->text()
              .contains(QStringLiteral("1,001")));
  dialog->text()->setPlainText(typed);
  QCOMPARE(dialog->preview()->rowCount(), 6);
  QTest::mouseClick(accept, Qt::LeftButton);
  QCOMPARE(plan().circuits.size(), std::size_t{4});
  QCOMPARE(steps(), 1);
  window_->document().undo();
  QVERIFY(plan() == before);
}

void SurveyTest::circuitsGoToAFileAndComeBack() {
  openSample();
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("circuits.csv"));
  QVERIFY(!saveCircuits(plan(), path));
  const auto read = loadCircuits(plan(), path);
  QVERIFY(std::holds_alternative<ReadCircuits>(read));
  QVERIFY(std::get<ReadCircuits>(read).plan == plan());
  QCOMPARE(std::get<ReadCircuits>(read).changed, static_cast<std::int32_t>(plan().circuits.size()));
  const auto missing = loadCircuits(plan(), folder.filePath(QStringLiteral("none.csv")));
  QVERIFY(std::holds_alternative<CircuitsRefused>(missing));
  QVERIFY(saveCircuits(plan(), folder.path()).has_value());
}

void SurveyTest::everyCellIsNamedForTheScreenReader() {
  openSample();
  QAccessibleInterface* grid = QAccessible::queryAccessibleInterface(table());
  QVERIFY(grid != nullptr && grid->tableInterface() != nullptr);
  QVERIFY(!grid->text(QAccessible::Name).isEmpty());
  for (int row = 0; row < model()->rows(); ++row) {
    for (int column = 0; column < kGridColumns; ++column) {
      QAccessibleInterface* cell = grid->tableInterface()->cellAt(row, column);
      const QString name = cell->text(QAccessible::Name);
      QVERIFY2(name.contains(model()->columnName(static_cast<GridColumn>(column))), qPrintable(name));
    }
  }
  const int row = model()->rowOf(circuitNamed(plan(), "Refrigerator")->breaker);
  const QString running =
      grid->tableInterface()->cellAt(row, static_cast<int>(GridColumn::running))->text(QAccessible::Name);
  QVERIFY2(running.startsWith(QStringLiteral("1 Refrigerator, Running W: 150, measured")),
           qPrintable(running));
  for (QWidget* control : window_->survey()->findChildren<QWidget*>()) {
    if (control->focusPolicy() == Qt::NoFocus || !control->isVisible()) continue;
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(control);
    const bool inner = control->parentWidget() != nullptr && control->parentWidget()->inherits("QComboBox");
    QVERIFY2(inner || (face != nullptr && !face->text(QAccessible::Name).isEmpty()) ||
                 control == table()->viewport() || qobject_cast<QHeaderView*>(control) != nullptr,
             qPrintable(control->objectName() + QLatin1Char(' ') +
                        QString::fromLatin1(control->metaObject()->className())));
  }
}

void SurveyTest::aRowThatGoesWhileOneTypesTakesNothingWithIt() {
  openSample();
  window_->survey()->choosePanel({});
  const int rows = model()->rows();
  QVERIFY(rows > 2);
  const CircuitId gone = model()->row(0).circuit;
  table()->setFocus();
  table()->moveTo(0, GridColumn::name);
  type(QStringLiteral("half a na"));
  QVERIFY(table()->typing() != nullptr);
  const Result<Plan> without = stayalight::remove(plan(), {RecordKind::circuit, gone.number});
  QVERIFY(without.ok());
  QVERIFY(!window_->document().apply(without.value(), QStringLiteral("delete")));
  QVERIFY(model()->rows() < rows);
  QVERIFY(table()->typing() == nullptr);
  QCoreApplication::processEvents();
  // The next row is typed into as ever.
  table()->setFocus();
  table()->moveTo(0, GridColumn::name);
  type(QStringLiteral("Den"));
  press(Qt::Key_Return);
  QVERIFY(circuitNamed(plan(), "Den") != nullptr);
}

void SurveyTest::keysInAnEmptyListDoNothing() {
  openEmpty();
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyFilter1"))->click();
  QCOMPARE(model()->rows(), 0);
  table()->setFocus();
  const Plan before = plan();
  QApplication::clipboard()->setText(QStringLiteral("a\tb"));
  for (const Command command :
       {Command::twoPole, Command::tandem, Command::sharedNeutral, Command::gradeTraced, Command::copyCells,
        Command::pasteCells, Command::fillDown, Command::copy, Command::remove}) {
    window_->action(command)->trigger();
    QCOMPARE(plan(), before);
    QVERIFY(!window_->statusText().isEmpty());
  }
  for (const Qt::Key key :
       {Qt::Key_Return, Qt::Key_Tab, Qt::Key_F2, Qt::Key_Delete, Qt::Key_Escape, Qt::Key_Down, Qt::Key_X}) {
    table()->setFocus();
    press(key);
  }
  QCOMPARE(plan(), before);
}

void SurveyTest::filtersPanelsAndOrders() {
  openSample();
  const int all = model()->rows();
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyFilter1"))->click();
  QVERIFY(model()->rows() > 0 && model()->rows() < all);
  for (int row = 0; row < model()->rows(); ++row) QVERIFY(model()->backedUp(row));
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyFilter0"))->click();
  QCOMPARE(model()->rows(), all);
  window_->survey()->choosePanel(backupPanel(plan())->id);
  for (int row = 0; row < model()->rows(); ++row) QCOMPARE(model()->row(row).panel, backupPanel(plan())->id);
  window_->survey()->choosePanel({});
  QSet<qint64> seen;
  for (int row = 0; row < model()->rows(); ++row) seen.insert(model()->row(row).circuit.number);
  QCOMPARE(static_cast<std::size_t>(seen.size()), plan().circuits.size());
  window_->survey()->choosePanel(mainPanel(plan())->id);
  model()->setOrder(SpaceOrder::acrossRows);
  QCOMPARE(model()->row(1).position.column == Column::right || model()->row(1).ofLoad, true);
  // Chosen once, kept for the next time.
  auto* orders = window_->survey()->findChild<QComboBox*>(QStringLiteral("surveyOrder"));
  orders->setFocus();
  QTest::keyClick(orders, Qt::Key_Down);
  delete window_;
  window_ = new MainWindow;
  window_->show();
  QVERIFY(QTest::qWaitForWindowActive(window_));
  QCOMPARE(model()->order(), SpaceOrder::acrossRows);
}

void SurveyTest::lettersOfTheLabelsReachTheChoosers() {
  openSample();
  struct Row {
    Qt::Key letter;
    const char* chooser;
    const char* label;
  };
  for (const Row& row : {Row{Qt::Key_P, "surveyPanel", "&Panel"}, Row{Qt::Key_O, "surveyOrder", "&Order"},
                         Row{Qt::Key_T, "surveyGrade", "&Typed as"}}) {
    table()->setFocus();
    auto* chooser = window_->survey()->findChild<QComboBox*>(QLatin1String(row.chooser));
    const auto labels = window_->survey()->findChildren<QLabel*>();
    const auto label = std::find_if(labels.begin(), labels.end(),
                                    [&](const QLabel* one) { return one->buddy() == chooser; });
    QVERIFY2(label != labels.end(), row.chooser);
    QVERIFY((*label)->isVisible());
    QCOMPARE((*label)->text(), QString::fromLatin1(row.label));
    QVERIFY((*label)->geometry().right() < chooser->geometry().left());
    QVERIFY(!chooser->hasFocus());
    press(row.letter, Qt::AltModifier);
    QVERIFY2(chooser->hasFocus(), row.chooser);
  }
}

void SurveyTest::aRowStaysWhileItIsWorkedOn() {
  openEmpty();
  model()->setTypedGrade(Grade::nameplate);
  for (const char* name : {"Kitchen", "Bath", "Hall"}) {
    type(QString::fromLatin1(name));
    press(Qt::Key_Return);
  }
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyColumns3"))->click();
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyFilter2"))->click();
  QCOMPARE(model()->rows(), 3);
  // Known by now, and still there until the filter is chosen anew.
  for (const auto& [column, text] :
       {std::pair{GridColumn::rating, "20"}, std::pair{GridColumn::running, "900"},
        std::pair{GridColumn::duty, "10"}}) {
    goTo(QStringLiteral("1"), column);
    type(QString::fromLatin1(text));
    press(Qt::Key_Return);
    QCOMPARE(table()->currentIndex().row(), 1);
  }
  QCOMPARE(model()->rows(), 3);
  QCOMPARE(model()->count(RowFilter::notKnown), 2);
  window_->survey()->findChild<QToolButton*>(QStringLiteral("surveyFilter2"))->click();
  QCOMPARE(model()->rows(), 2);
}

void SurveyTest::theFactsFollowTheRow() {
  openSample();
  const Circuit* freezer = circuitNamed(plan(), "Freezer");
  window_->survey()->focusBreaker(freezer->breaker);
  const EntityRef wanted{RecordKind::circuit, freezer->id.number};
  QTRY_COMPARE(window_->inspector()->lookingAt().id, wanted.id);
  QVERIFY(window_->inspector()->lookingAt() == wanted);
  // The same right column in both places, and no outage strip below the grid.
  QVERIFY(window_->inspector()->isVisible());
  QVERIFY(!window_->boards()->isVisible());
  window_->action(Command::boards)->trigger();
  QVERIFY(window_->boards()->isVisible());
  QVERIFY(!window_->survey()->isVisible());
}

void SurveyTest::everyThemeAndSizeShows() {
  openSample();
  for (const Theme theme : {Theme::light, Theme::dark, Theme::contrast}) {
    window_->setTheme(theme);
    for (const QSize size : {QSize(1440, 900), QSize(1280, 720)}) {
      window_->resize(size);
      QTRY_COMPARE(window_->size(), size);
      QVERIFY(!window_->grab().isNull());
      // The last column is in sight, and the grid keeps most of the height.
      if (table()->columns() == ColumnSet::panel) {
        const QRect last = table()->visualRect(model()->index(0, static_cast<int>(GridColumn::finding)));
        QVERIFY2(last.right() <= table()->viewport()->width(),
                 qPrintable(QStringLiteral("%1 of %2").arg(last.right()).arg(table()->viewport()->width())));
      }
      QVERIFY(table()->height() > window_->height() * 6 / 10);
    }
  }
}

QTEST_MAIN(SurveyTest)
#include "survey_test.moc"
