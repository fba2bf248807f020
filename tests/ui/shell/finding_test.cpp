// Find: the field over the boards, by keys and by mouse.

#include <QtGui/QAction>
#include <QtWidgets/QToolButton>

#include "tests/ui/shell/window_fixture.h"
#include "ui/search/found_list.h"
#include "ui/search/search_bar.h"
#include "ui/survey/survey_view.h"

using namespace stayalight;
using namespace stayalight::window;

class FindingTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void enterSelectsTheBreakerAndOpensItsFacts();
  void escapeRestoresWhatWas();
  void aSpaceIsFoundByItsNumber();
  void aClickOpensTheSecondRow();
  void whatIsFoundFollowsThePlan();

 private:
  [[nodiscard]] QLineEdit* field() const { return window_->searchBar()->field(); }
  void type(const QString& text) {
    pressKey(*window_, Qt::Key_F, Qt::ControlModifier);
    QVERIFY(window_->searchBar()->isVisible());
    QTRY_VERIFY(field()->hasFocus());
    QTest::keyClicks(field(), text);
  }
  // A tab of the right column that looks chosen.
  [[nodiscard]] bool anySideChosen() const {
    for (const char* name : {"sideAnswers", "sideFacts", "sideCatalogue"}) {
      if (window_->findChild<QToolButton*>(QLatin1String(name))->isChecked()) return true;
    }
    return false;
  }
  [[nodiscard]] std::size_t quietCells(PanelId panel) const {
    std::size_t quiet = 0;
    for (const BoardCell& cell : window_->boards()->layoutOf(panel)->cells) quiet += cell.quiet ? 1 : 0;
    return quiet;
  }
};

void FindingTest::enterSelectsTheBreakerAndOpensItsFacts() {
  const Plan& plan = window_->document().plan();
  const Circuit* wanted = movableCircuit(plan);
  QVERIFY(wanted != nullptr);
  const PanelId panel = mainPanel(plan)->id;
  QCOMPARE(quietCells(panel), std::size_t{0});
  type(QString::fromStdString(wanted->name));
  QVERIFY(window_->foundList()->isVisible());
  QVERIFY(window_->foundList()->count() > 0);
  QVERIFY(!anySideChosen());
  QVERIFY(quietCells(panel) > 10);
  QTest::keyClick(field(), Qt::Key_Return);
  const std::vector<EntityRef> selected = window_->boards()->selection();
  QCOMPARE(selected.size(), std::size_t{1});
  QCOMPARE(selected.front().id, wanted->planned.number);
  QVERIFY(window_->inspector()->isVisible());
  QVERIFY(window_->boards()->boardWidget(panel)->hasFocus());
  // The filter stays until the search is closed, and then the choice stays.
  QVERIFY(quietCells(panel) > 10);
  pressKey(*window_, Qt::Key_F, Qt::ControlModifier);
  QTRY_VERIFY(field()->hasFocus());
  QTest::keyClick(field(), Qt::Key_Escape);
  QVERIFY(!window_->searchBar()->isVisible());
  QCOMPARE(quietCells(panel), std::size_t{0});
  QCOMPARE(window_->boards()->selection().size(), std::size_t{1});
  // The list has gone with the search.
  QVERIFY(!window_->foundList()->isVisible() && window_->inspector()->isVisible());
  QVERIFY(window_->action(Command::inspector)->isChecked());
}

void FindingTest::escapeRestoresWhatWas() {
  window_->action(Command::survey)->trigger();
  QVERIFY(window_->survey()->isVisible());
  type(QStringLiteral("e"));
  QVERIFY(!window_->survey()->isVisible());
  QTest::keyClick(field(), Qt::Key_Down);
  QTest::keyClick(field(), Qt::Key_Down);
  QCOMPARE(window_->foundList()->currentRow(), 2);
  QVERIFY(!anySideChosen());
  QTest::keyClick(field(), Qt::Key_Escape);
  QVERIFY(anySideChosen());
  QVERIFY(window_->survey()->isVisible());
  QVERIFY(window_->inspector()->isVisible());
  QVERIFY(window_->boards()->selection().empty());
}

void FindingTest::aSpaceIsFoundByItsNumber() {
  const Plan& plan = window_->document().plan();
  const Panel* backup = backupPanel(plan);
  std::optional<CellAddress> free;
  for (const BoardCell& cell : window_->boards()->layoutOf(backup->id)->cells) {
    if (cell.kind == CellKind::free) free = cell.address;
  }
  QVERIFY(free.has_value());
  type(QStringLiteral("backup ") + QString::fromStdString(printedNumber(*backup, free->position)));
  QCOMPARE(window_->foundList()->count(), 1);
  QTest::keyClick(field(), Qt::Key_Return);
  QVERIFY(window_->boards()->boardWidget(backup->id)->hasFocus());
  QVERIFY(window_->boards()->selection().empty());
}

void FindingTest::aClickOpensTheSecondRow() {
  type(QStringLiteral("e"));
  FoundList* list = window_->foundList();
  QVERIFY(list->count() > 2);
  const BreakerId second = list->found()[1].breaker;
  QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualItemRect(list->item(1)).center());
  QVERIFY(window_->inspector()->isVisible());
  if (second.valid()) QCOMPARE(window_->boards()->selection().front().id, second.number);
  auto* close = window_->searchBar()->findChild<QToolButton*>(QStringLiteral("searchClose"));
  QTest::mouseClick(close, Qt::LeftButton);
  QVERIFY(!window_->searchBar()->isVisible());
}

void FindingTest::whatIsFoundFollowsThePlan() {
  const Circuit* wanted = movableCircuit(window_->document().plan());
  const CircuitId id = wanted->id;
  type(QString::fromStdString(wanted->name));
  const QString before = window_->foundList()->found().front().place;
  const CircuitId ids[] = {id};
  const Result<Plan> moved =
      moveCircuits(window_->document().plan(), ids, backupPanel(window_->document().plan())->id);
  QVERIFY(moved.ok());
  QVERIFY(!window_->document().apply(moved.value(), QStringLiteral("move")).has_value());
  QVERIFY(window_->foundList()->found().front().place != before);
  QVERIFY(window_->foundList()->isVisible());
}

QTEST_MAIN(FindingTest)
#include "finding_test.moc"
