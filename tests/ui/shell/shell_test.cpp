// The window walked with mouse and keys: moving, reading, editing, the strip, the paper.

#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QMenu>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QTableWidget>
#include <cmath>

#include "tests/bench/many_circuits.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/answers/answers_column.h"
#include "ui/answers/working_window.h"
#include "ui/findings/findings_list.h"
#include "ui/paper/paper_view.h"
#include "ui/shell/effect_card.h"
#include "ui/shell/start_page.h"
#include "ui/strip/outage_strip.h"
#include "ui/strip/strip_chart.h"

using namespace stayalight;
using namespace stayalight::window;

class ShellTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openEmpty(); }
  void cleanup() { closeWindow(); }
  void firstAnswersStartAPlan();
  void theSampleShowsBothBoardsAndAnswers();
  void dragMovesACircuitAndUndoPutsItBack();
  void escapeDuringADragRestoresEverything();
  void commandsMoveSendBackCopyAndDelete();
  void aFigureOpensItsWorking();
  void anEditInTheFactsIsOneStepAndAnswers();
  void theStartIsDraggedAndStepped();
  void monthAndChargeAreSteps();
  void theTableHoldsTheValuesOfTheStrip();
  void aFindingIsRepairedInOneStepAndJumpedTo();
  void findingsThatStayKeepTheirRowsAndTheKeyboard();
  void aLongListOfFindingsGrowsAsOneGoesDown();
  void paperPlaceHasPages();
  void cautionsStandInTheHelpMenu();
  void everyThemeShows();
  void fitsASmallScreen();

 private:
  void openSample() {
    window_->openSample();
    QCoreApplication::processEvents();
    QVERIFY(mainPanel(plan()) != nullptr && backupPanel(plan()) != nullptr);
  }

  QPoint carriedTo_;
};

void ShellTest::firstAnswersStartAPlan() {
  QVERIFY(window_->startPage()->isVisible());
  FieldEditor* name = window_->startPage()->editor(RecordKind::site, "name");
  auto* line = name->findChild<QLineEdit*>(QStringLiteral("value"));
  line->setFocus();
  QTest::keyClicks(line, QStringLiteral("Lake cabin"));
  const Panel* main = mainPanel(window_->startPage()->draft());
  FieldEditor* spaces = window_->startPage()->editor(RecordKind::panel, "spaces", main->id.number);
  auto* count = spaces->findChild<QLineEdit*>(QStringLiteral("value"));
  count->setFocus();
  count->selectAll();
  QTest::keyClicks(count, QStringLiteral("30"));
  QTest::keyClick(count, Qt::Key_Return);
  QTest::mouseClick(window_->startPage()->findChild<QPushButton*>(QStringLiteral("startPlan")),
                    Qt::LeftButton);
  QVERIFY(!window_->startPage()->isVisible());
  QCOMPARE(plan().site->name, std::string("Lake cabin"));
  QCOMPARE(mainPanel(plan())->spaces, 30);
  QVERIFY(window_->windowTitle().contains(QStringLiteral("Lake cabin")));
}

void ShellTest::theSampleShowsBothBoardsAndAnswers() {
  openSample();
  for (const PanelId panel : {mainPanel(plan())->id, backupPanel(plan())->id}) {
    QVERIFY(window_->boards()->layoutOf(panel) != nullptr);
    QVERIFY(!window_->boards()->layoutOf(panel)->cells.empty());
  }
  const Answers& answers = window_->answers()->answers();
  QVERIFY2(answers.headline.contains(QStringLiteral("estimated")), qPrintable(answers.headline));
  QVERIFY(answers.hasBars);
  QVERIFY(answers.sections.size() >= 4);
  QVERIFY(!window_->statusText().contains(QLatin1Char('<')));
}

void ShellTest::dragMovesACircuitAndUndoPutsItBack() {
  openSample();
  const Plan before = plan();
  const Circuit* circuit = movableCircuit(before);
  QVERIFY(circuit != nullptr);
  const PanelId main = mainPanel(before)->id, backup = backupPanel(before)->id;
  const std::vector<Placement> free = landings(before, backup, 1, {});
  QVERIFY(!free.empty());
  const QString headline = window_->answers()->answers().headline;
  carriedTo_ = carry(*window_, circuit->planned, main, backup, free.back().position);
  QVERIFY(window_->boards()->carrying());
  QVERIFY(window_->card()->effect().moving);
  QCOMPARE(plan(), before);  // a preview changes nothing
  QTest::mouseRelease(window_->boards()->boardWidget(main), Qt::LeftButton, Qt::NoModifier, carriedTo_);
  QCOMPARE(steps(), 1);
  const Circuit* moved = find(plan(), circuit->id);
  QCOMPARE(panelOf(plan(), *moved, Reading::planned).number, backup.number);
  QCOMPARE(find(plan(), moved->planned)->position(), free.back().position);
  QTest::keyClick(window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
  QCOMPARE(window_->answers()->answers().headline, headline);
  QTest::keyClick(window_, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  QCOMPARE(panelOf(plan(), *find(plan(), circuit->id), Reading::planned).number, backup.number);
}

void ShellTest::escapeDuringADragRestoresEverything() {
  openSample();
  const Plan before = plan();
  const Circuit* circuit = movableCircuit(before);
  const PanelId main = mainPanel(before)->id, backup = backupPanel(before)->id;
  const QString headline = window_->answers()->answers().headline;
  carriedTo_ =
      carry(*window_, circuit->planned, main, backup, landings(before, backup, 1, {}).front().position);
  QTest::keyClick(window_->boards()->boardWidget(main), Qt::Key_Escape);
  QTest::mouseRelease(window_->boards()->boardWidget(main), Qt::LeftButton, Qt::NoModifier, carriedTo_);
  QVERIFY(!window_->boards()->carrying());
  QCOMPARE(steps(), 0);
  QCOMPARE(plan(), before);
  QCOMPARE(window_->answers()->answers().headline, headline);
}

void ShellTest::commandsMoveSendBackCopyAndDelete() {
  openSample();
  const Plan before = plan();
  const CircuitId id = movableCircuit(before)->id;
  window_->boards()->focusBreaker(find(before, id)->planned);
  window_->action(Command::move)->trigger();
  QCOMPARE(steps(), 1);
  QVERIFY(backedUp(plan(), *find(plan(), id)));
  window_->boards()->focusBreaker(find(plan(), id)->planned);
  window_->action(Command::sendBack)->trigger();
  QCOMPARE(steps(), 2);
  QCOMPARE(plan(), before);
  window_->boards()->focusBreaker(find(plan(), id)->planned);
  window_->action(Command::remove)->trigger();
  QCOMPARE(steps(), 3);
  QVERIFY(find(plan(), id) == nullptr);
  while (window_->document().canUndo()) window_->action(Command::undo)->trigger();
  QCOMPARE(plan(), before);
  // Without a selection a command says so and changes nothing.
  window_->boards()->select({});
  window_->action(Command::sendBack)->trigger();
  QCOMPARE(steps(), 0);
  QVERIFY(!window_->statusText().isEmpty());
}

void ShellTest::aFigureOpensItsWorking() {
  openSample();
  const auto rows = window_->answers()->findChildren<FigureRow*>();
  QVERIFY(rows.size() > 8);
  int opened = 0;
  for (FigureRow* row : rows) {
    if (row->line().working.values.empty()) continue;
    row->setFocus();
    if (opened % 2 == 0)
      QTest::keyClick(row, Qt::Key_W);
    else
      QTest::mouseClick(row, Qt::LeftButton);
    auto* working = window_->findChild<WorkingWindow*>();
    QVERIFY2(working != nullptr, qPrintable(row->line().label));
    QVERIFY(working->text().contains(row->line().label));
    QVERIFY2(working->text().contains(QLatin1Char('=')),
             qPrintable(QString(row->line().label + QLatin1String(" has no step"))));
    QVERIFY(!working->text().contains(QLatin1Char('<')));
    QTest::mouseClick(working->findChild<QPushButton*>(QStringLiteral("copy")), Qt::LeftButton);
    QCOMPARE(QGuiApplication::clipboard()->text(), working->text());
    working->close();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    ++opened;
  }
  QVERIFY(opened > 8);
}

void ShellTest::anEditInTheFactsIsOneStepAndAnswers() {
  openSample();
  const Plan before = plan();
  const Circuit* freezer = circuitNamed(before, "Freezer");
  QVERIFY(freezer != nullptr);
  window_->boards()->focusBreaker(freezer->planned);
  window_->inspector()->look({RecordKind::circuit, freezer->id.number});
  window_->action(Command::inspector)->trigger();
  const EntityRef load{RecordKind::load, freezer->loads.front().id.number};
  auto* line =
      window_->inspector()->form(load)->editor("running_W")->findChild<QLineEdit*>(QStringLiteral("value"));
  line->setFocus();
  line->selectAll();
  const auto& running = freezer->loads.front().running;
  // Within its range, so that nothing contradicts it.
  const double likely = running.high ? running.high->count() : 600.0;
  QTest::keyClicks(line, QStringLiteral("2*%1 W").arg(likely / 2));
  QTest::keyClick(line, Qt::Key_Return);
  QCOMPARE(steps(), 1);
  QCOMPARE(find(plan(), freezer->id)->loads.front().running.value->count(), likely);
  const auto average = [this] { return window_->assessment().hour.total.connected.real.count(); };
  const double after = average();
  window_->action(Command::undo)->trigger();
  QCOMPARE(plan(), before);
  QVERIFY(std::abs(after - average()) > 1.0);
}

void ShellTest::theStartIsDraggedAndStepped() {
  openSample();
  StripChart* chart = window_->strip()->chart();
  QTRY_VERIFY(chart->viewport()->width() > 300);
  const int before = plan().scenario->start.minutes();
  const QPoint tab = chart->startTab().center().toPoint();
  QTest::mousePress(chart->viewport(), Qt::LeftButton, Qt::NoModifier, tab);
  for (int i = 1; i <= 5; ++i) QTest::mouseMove(chart->viewport(), tab + QPoint(i * 8, 0));
  QCOMPARE(steps(), 0);
  QTest::mouseRelease(chart->viewport(), Qt::LeftButton, Qt::NoModifier, tab + QPoint(40, 0));
  QCOMPARE(steps(), 1);
  QVERIFY(plan().scenario->start.minutes() != before);
  const int dragged = plan().scenario->start.minutes();
  chart->setFocus();
  QTest::keyClick(chart, Qt::Key_Right);
  QCOMPARE(plan().scenario->start.minutes(), TimeOfDay(dragged + 60).minutes());
  QTest::keyClick(chart, Qt::Key_Left, Qt::ShiftModifier);
  QCOMPARE(plan().scenario->start.minutes(), TimeOfDay(dragged + 45).minutes());
  // hover; a pointer that rests there already would send no event
  QTest::mouseMove(chart->viewport(), QPoint(3, 3));
  QTest::mouseMove(chart->viewport(), chart->positionOf(chart->data().start + 1.0, 50.0).toPoint());
  QTRY_VERIFY(!chart->hoverText().isEmpty());
  QVERIFY(chart->hoverText().contains(QStringLiteral("L1")));
}

void ShellTest::monthAndChargeAreSteps() {
  openSample();
  auto* month = window_->strip()->findChild<QComboBox*>(QStringLiteral("month"));
  month->setFocus();
  QTest::keyClick(month, plan().scenario->month == 7 ? Qt::Key_Up : Qt::Key_Down);
  QCOMPARE(steps(), 1);
  auto* charge = window_->strip()->findChild<QComboBox*>(QStringLiteral("startCharge"));
  charge->setFocus();
  QTest::keyClick(charge, Qt::Key_End);
  QCOMPARE(steps(), 2);
  QCOMPARE(plan().scenario->startCharge.count(), 0.1);
}

void ShellTest::theTableHoldsTheValuesOfTheStrip() {
  openSample();
  QTest::mouseClick(window_->strip()->findChild<QPushButton*>(QStringLiteral("asTable")), Qt::LeftButton);
  QTableWidget* table = window_->strip()->table();
  QVERIFY(table->isVisible());
  QVERIFY(table->rowCount() > 2);
  const auto first = readingAt(window_->strip()->chart()->data(), window_->strip()->chart()->data().start);
  QVERIFY(first.has_value());
  QCOMPARE(table->item(0, 2)->text(), QString::number(std::lround(first->likely)));
}

void ShellTest::aFindingIsRepairedInOneStepAndJumpedTo() {
  openSample();
  // A neutral left behind in the other panel can be repaired by the program.
  for (const auto& circuit : plan().circuits) {
    if (!backedUp(plan(), *circuit) || circuit->voltage.is(VoltageClass::v240)) continue;
    const Result<Plan> left = setField(plan(), {RecordKind::circuit, circuit->id.number}, "neutral_moved",
                                       FieldValue(std::string("no")));
    QVERIFY(left.ok());
    QVERIFY(!window_->document().apply(left.value(), QStringLiteral("neutral stays")));
    break;
  }
  bool repaired = false, jumped = false;
  for (std::size_t i = 0; i < window_->findings()->rows().size() && !(repaired && jumped); ++i) {
    FindingRow* row = window_->findings()->rows()[i];
    if (!jumped && !row->finding().places.empty()) {
      QTest::mouseDClick(row, Qt::LeftButton, Qt::NoModifier, QPoint(60, 8));
      jumped = true;
    }
    auto* fix = row->findChild<QPushButton*>(QStringLiteral("fix"));
    if (!repaired && fix != nullptr) {
      const int before = steps();
      const Plan was = plan();
      fix->click();
      QCOMPARE(steps(), before + 1);
      QVERIFY(!(plan() == was));
      window_->action(Command::undo)->trigger();
      QCOMPARE(plan(), was);
      repaired = true;
    }
  }
  QVERIFY(jumped);
  QVERIFY2(repaired, "the sample has no finding with a repair");
}

void ShellTest::findingsThatStayKeepTheirRowsAndTheKeyboard() {
  openSample();
  const std::vector<FindingRow*> before = window_->findings()->rows();
  QVERIFY(before.size() > 2);
  before.back()->setFocus();
  QVERIFY(before.back()->hasFocus());
  // A neutral left behind adds a finding; those that read as before stay.
  const Circuit* kept = nullptr;
  for (const auto& circuit : plan().circuits) {
    if (backedUp(plan(), *circuit) && circuit->voltage.is(VoltageClass::v120)) kept = &*circuit;
  }
  QVERIFY(kept != nullptr);
  const Result<Plan> left = setField(plan(), {RecordKind::circuit, kept->id.number}, "neutral_moved",
                                     FieldValue(std::string("no")));
  QVERIFY(left.ok() && !window_->document().apply(left.value(), QStringLiteral("neutral stays")));
  const std::vector<FindingRow*>& after = window_->findings()->rows();
  QCOMPARE(after.size(), window_->assessment().findings.size());
  QVERIFY(after.size() > before.size());
  QCOMPARE(after.back(), before.back());
  QVERIFY(before.back()->hasFocus());
  QCoreApplication::processEvents();
  // Down the page and along the keyboard in the order of the findings.
  for (std::size_t i = 0; i < after.size(); ++i) {
    QCOMPARE(after[i]->finding().key, window_->assessment().findings[i].key);
    QVERIFY(after[i]->isVisible());
    if (i == 0) continue;
    QVERIFY(after[i]->y() >= after[i - 1]->geometry().bottom());
    const QWidget* next = after[i - 1]->nextInFocusChain();
    while (qobject_cast<const FindingRow*>(next) == nullptr) next = next->nextInFocusChain();
    QCOMPARE(next, static_cast<const QWidget*>(after[i]));
  }
}

// Rows are made as one comes near them, by the wheel or by the keyboard; none is left out.
void ShellTest::aLongListOfFindingsGrowsAsOneGoesDown() {
  openSample();
  window_->startPlan(bench::manyCircuits(300));
  QCoreApplication::processEvents();
  const std::size_t all = window_->assessment().findings.size();
  QVERIFY(all > 2 * FindingsList::kRowsAtOnce);
  const std::vector<FindingRow*>& rows = window_->findings()->rows();
  QCOMPARE(rows.size(), FindingsList::kRowsAtOnce);
  auto* bar = window_->findings()->findChild<QScrollArea*>()->verticalScrollBar();
  QTRY_VERIFY(bar->maximum() > 0);
  bar->setValue(bar->maximum());
  QTRY_COMPARE(rows.size(), 2 * FindingsList::kRowsAtOnce);
  QTRY_VERIFY(bar->value() < bar->maximum());
  while (rows.size() < all) {
    FindingRow* last = rows.back();
    const std::size_t before = rows.size();
    last->setFocus();
    QTRY_VERIFY(rows.size() > before);
    QTRY_VERIFY(rows[before]->y() > last->y());
    QTest::keyClick(last, Qt::Key_Down);
    QVERIFY(rows[before]->hasFocus());
  }
  for (std::size_t i = 0; i < all; ++i)
    QCOMPARE(rows[i]->finding().key, window_->assessment().findings[i].key);
}

void ShellTest::paperPlaceHasPages() {
  openSample();
  QTest::mouseClick(window_->findChild<QWidget*>(QStringLiteral("placePaper")), Qt::LeftButton);
  QVERIFY(window_->paper()->isVisible());
  QTRY_VERIFY(window_->paper()->pages().size() >= 2);
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("sheets.pdf"));
  answerFileDialog(path);
  QTest::mouseClick(window_->paper()->findChild<QPushButton*>(QStringLiteral("savePdf")), Qt::LeftButton);
  QTRY_VERIFY(!window_->paper()->writing());
  QFile file(path);
  QVERIFY(file.open(QIODevice::ReadOnly));
  QVERIFY(file.readAll().startsWith("%PDF"));
}

void ShellTest::cautionsStandInTheHelpMenu() {
  window_->action(Command::cautions)->trigger();
  auto* page = window_->findChild<QDialog*>(QStringLiteral("cautionsPage"));
  QVERIFY(page != nullptr);
  QString text;
  for (const QLabel* label : page->findChildren<QLabel*>()) text += label->text() + QLatin1Char('\n');
  for (const char* word : {"planning aid", "stay live", "licensed", "adopted code", "estimates", "medical"}) {
    QVERIFY2(text.contains(QLatin1String(word)), word);
  }
  page->close();
}

void ShellTest::everyThemeShows() {
  openSample();
  for (const Command theme : {Command::dark, Command::contrast, Command::light}) {
    window_->action(theme)->trigger();
    QCoreApplication::processEvents();
    QVERIFY(window_->action(theme)->isChecked());
    QVERIFY(!window_->grab().isNull());
  }
}

void ShellTest::fitsASmallScreen() {
  openSample();
  window_->resize(1280, 720);
  QCoreApplication::processEvents();
  QCOMPARE(window_->size(), QSize(1280, 720));
  QVERIFY(window_->minimumSizeHint().width() <= 1280);
  QVERIFY(window_->minimumSizeHint().height() <= 720);
}

QTEST_MAIN(ShellTest)
#include "shell_test.moc"
