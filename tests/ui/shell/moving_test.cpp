// Moving circuits in the real window: by hand, by key, by menu; several, groups, swaps; refusals; undo.

#include <QtGui/QAction>
#include <QtGui/QContextMenuEvent>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>

#include "tests/ui/shell/window_fixture.h"
#include "ui/answers/answers_column.h"
#include "ui/shell/effect_card.h"
#include "ui/strip/outage_strip.h"
#include "ui/strip/strip_chart.h"

using namespace stayalight;
using namespace stayalight::window;

class MovingTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void aKeyTakesUpArrowsChooseAndEnterDrops();
  void escapeWhileChoosingByKeyRestoresEverything();
  void theStatusLineFollowsThePointer();
  void theBestFreeSpaceIsTakenWithoutChoosing();
  void severalMoveInOneStep();
  void aGroupThatSharesANeutralTravelsWhole();
  void breakersOfAPanelAreSwappedAndMovedWithin();
  void circuitsOfTwoPanelsAreSwapped();
  void aCircuitIsSentBackByHandByKeyAndByMenu();
  void whatCannotBeBuiltIsRefusedWithTheReason();
  void theContextMenuMoves();
  void undoAndRedoSayWhatTheyDo();
  void breakersAreCopiedAndDeletedByKey();

 private:
  [[nodiscard]] PanelId main() const { return mainPanel(plan())->id; }
  [[nodiscard]] PanelId backup() const { return backupPanel(plan())->id; }
  [[nodiscard]] QWidget* board(PanelId panel) const { return window_->boards()->boardWidget(panel); }
  [[nodiscard]] const Circuit* circuit(CircuitId id) const { return find(plan(), id); }
  [[nodiscard]] PanelId panelOfCircuit(CircuitId id) const {
    return panelOf(plan(), *circuit(id), Reading::planned);
  }
  // Circuits of the main panel that could each go by itself.
  [[nodiscard]] std::vector<CircuitId> movable() const {
    std::vector<CircuitId> all;
    for (const auto& each : plan().circuits) {
      const Breaker* breaker = find(plan(), each->planned);
      const CircuitId ids[] = {each->id};
      if (breaker != nullptr && breaker->panel == main() && breaker->poles == 1 && each->multiwire == 0 &&
          breaker->half.is(Half::whole) && moveCircuits(plan(), ids, backup()).ok())
        all.push_back(each->id);
    }
    return all;
  }
  // What the window shows, to be compared before and after.
  struct Shown {
    Plan plan;
    QString headline, card;
    std::vector<QPointF> likely;
    std::vector<QString> cells;
  };
  [[nodiscard]] Shown shown() const {
    Shown now{plan(),
              window_->answers()->answers().headline,
              window_->card()->accessibleName(),
              window_->strip()->chart()->data().likely,
              {}};
    for (const PanelId panel : {main(), backup()}) {
      for (const BoardCell& cell : window_->boards()->layoutOf(panel)->cells) now.cells.push_back(cell.name);
    }
    return now;
  }
  void compare(const Shown& before) const {
    const Shown now = shown();
    QCOMPARE(now.plan, before.plan);
    QCOMPARE(now.headline, before.headline);
    QCOMPARE(now.card, before.card);
    QCOMPARE(now.likely, before.likely);
    QCOMPARE(now.cells, before.cells);
  }
};

void MovingTest::aKeyTakesUpArrowsChooseAndEnterDrops() {
  const Shown before = shown();
  const CircuitId id = movable().front();
  window_->boards()->focusBreaker(circuit(id)->planned);
  QTest::keyClick(board(main()), Qt::Key_M);
  QVERIFY(window_->boards()->carrying());
  QVERIFY(window_->card()->effect().moving);
  const auto first = window_->boards()->pendingMove();
  QVERIFY(first.has_value());
  QTest::keyClick(board(main()), Qt::Key_Down);
  const auto second = window_->boards()->pendingMove();
  QVERIFY(second && !(second->position == first->position));
  QTest::keyClick(board(main()), Qt::Key_Left);
  QTest::keyClick(board(main()), Qt::Key_Up);
  const auto last = window_->boards()->pendingMove();
  QVERIFY(last && last->panel == backup());
  QCOMPARE(plan(), before.plan);
  QTest::keyClick(board(main()), Qt::Key_Return);
  QVERIFY(!window_->boards()->carrying());
  QCOMPARE(steps(), 1);
  QCOMPARE(panelOfCircuit(id).number, backup().number);
  QCOMPARE(find(plan(), circuit(id)->planned)->position(), *last->position);
}

void MovingTest::escapeWhileChoosingByKeyRestoresEverything() {
  const CircuitId id = movable().back();
  window_->boards()->focusBreaker(circuit(id)->planned);
  const Shown before = shown();
  const QString status = window_->statusText();
  QTest::keyClick(board(main()), Qt::Key_M);
  QTest::keyClick(board(main()), Qt::Key_Down);
  QVERIFY(window_->statusText() != status);
  QVERIFY(window_->answers()->answers().headline != before.headline ||
          window_->card()->accessibleName() != before.card);
  QTest::keyClick(board(main()), Qt::Key_Escape);
  QVERIFY(!window_->boards()->carrying());
  QCOMPARE(steps(), 0);
  compare(before);
  QCOMPARE(window_->statusText(), status);
}

// Word for word the space under the pointer, also where nothing at all could be done there.
void MovingTest::theStatusLineFollowsThePointer() {
  const Breaker* feeder = nullptr;
  for (const auto& each : plan().breakers) {
    if (each->panel == main() && each->feeds.is(Feeds::inverterInput) && stands(*each, Reading::planned))
      feeder = &*each;
  }
  QVERIFY2(feeder != nullptr, "the sample feeds its inverter from the main panel");
  const BreakerId id = feeder->id;
  carry(*window_, id, main(), main(), find(plan(), circuit(movable().front())->planned)->position());
  const QString overAnother = window_->statusText();
  QWidget* pressed = board(main());
  QTest::mouseMove(pressed, pressed->mapFrom(window_->boards(),
                                             spacePoint(*window_, backup(),
                                                        landings(plan(), backup(), 1, {}).front().position)));
  QVERIFY(window_->statusText() != overAnother);
  QTest::mouseMove(pressed, pressed->mapFrom(window_, QPoint(window_->width() / 2, window_->height() - 40)));
  QVERIFY(window_->statusText().contains(QStringLiteral("main")));
  QTest::keyClick(pressed, Qt::Key_Escape);
  QCOMPARE(steps(), 0);
}

void MovingTest::theBestFreeSpaceIsTakenWithoutChoosing() {
  const CircuitId id = movable().front();
  const CircuitId ids[] = {id};
  const Result<Plan> expected = moveCircuits(plan(), ids, backup());
  QVERIFY(expected.ok());
  window_->boards()->focusBreaker(circuit(id)->planned);
  QTest::keyClick(board(main()), Qt::Key_M);
  QTest::keyClick(board(main()), Qt::Key_Return);
  QCOMPARE(plan(), expected.value());
}

void MovingTest::severalMoveInOneStep() {
  const Shown before = shown();
  const std::vector<CircuitId> ids = movable();
  QVERIFY(ids.size() >= 2);
  const BreakerId first = circuit(ids[0])->planned, second = circuit(ids[1])->planned;
  QTest::mouseClick(board(main()), Qt::LeftButton, {}, cellPoint(*window_, main(), first));
  QTest::mouseClick(board(main()), Qt::LeftButton, Qt::ControlModifier, cellPoint(*window_, main(), second));
  QCOMPARE(window_->boards()->selection().size(), std::size_t{2});
  QVERIFY(window_->statusText().contains(QLatin1Char('2')));
  drag(*window_, first, main(), backup(), landings(plan(), backup(), 1, {}).front().position);
  QCOMPARE(steps(), 1);
  for (const CircuitId id : {ids[0], ids[1]}) QCOMPARE(panelOfCircuit(id).number, backup().number);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before.plan);
  // The same by the command.
  window_->boards()->select({first, second});
  window_->action(Command::move)->trigger();
  QCOMPARE(steps(), 1);
  for (const CircuitId id : {ids[0], ids[1]}) QCOMPARE(panelOfCircuit(id).number, backup().number);
}

void MovingTest::aGroupThatSharesANeutralTravelsWhole() {
  const Circuit* hot = nullptr;
  for (const auto& each : plan().circuits) {
    const Breaker* breaker = find(plan(), each->planned);
    if (breaker != nullptr && breaker->panel == main() && each->multiwire != 0) hot = &*each;
  }
  QVERIFY2(hot != nullptr, "the sample has no shared neutral in its main panel");
  const std::vector<CircuitId> group = multiwireGroup(plan(), *hot);
  QVERIFY(group.size() == 2);
  const Plan before = plan();
  window_->boards()->focusBreaker(hot->planned);
  QTest::keyClick(board(main()), Qt::Key_M);
  QTest::keyClick(board(main()), Qt::Key_Return);
  QCOMPARE(steps(), 1);
  for (const CircuitId id : group) QCOMPARE(panelOfCircuit(id).number, backup().number);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
}

void MovingTest::breakersOfAPanelAreSwappedAndMovedWithin() {
  const Plan before = plan();
  const Circuit *one = nullptr, *other = nullptr;
  for (const auto& each : plan().circuits) {
    const Breaker* breaker = find(plan(), each->planned);
    if (breaker == nullptr || breaker->panel != backup() || breaker->poles != 1 || each->multiwire != 0)
      continue;
    (one == nullptr ? one : other) = &*each;
    if (other != nullptr) break;
  }
  QVERIFY(one != nullptr && other != nullptr);
  const CircuitId first = one->id, second = other->id;
  const SpacePosition here = find(before, one->planned)->position();
  const SpacePosition there = find(before, other->planned)->position();
  drag(*window_, one->planned, backup(), backup(), there);
  QCOMPARE(steps(), 1);
  QCOMPARE(find(plan(), circuit(first)->planned)->position(), there);
  QCOMPARE(find(plan(), circuit(second)->planned)->position(), here);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
  const SpacePosition free = landings(plan(), backup(), 1, {}).back().position;
  drag(*window_, circuit(first)->planned, backup(), backup(), free);
  QCOMPARE(steps(), 1);
  QCOMPARE(find(plan(), circuit(first)->planned)->position(), free);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
}

void MovingTest::circuitsOfTwoPanelsAreSwapped() {
  const Plan before = plan();
  // Any two that the edit would take.
  for (const CircuitId id : movable()) {
    for (const auto& each : before.circuits) {
      const Breaker* there = find(before, each->planned);
      if (there == nullptr || there->panel != backup() || there->poles != 1) continue;
      if (!swapBreakers(before, circuit(id)->planned, each->planned).ok()) continue;
      drag(*window_, circuit(id)->planned, main(), backup(), there->position());
      QCOMPARE(steps(), 1);
      QCOMPARE(panelOfCircuit(id).number, backup().number);
      QCOMPARE(panelOfCircuit(each->id).number, main().number);
      pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
      QCOMPARE(plan(), before);
      return;
    }
  }
  QFAIL("the sample has no two circuits that could change panels");
}

void MovingTest::aCircuitIsSentBackByHandByKeyAndByMenu() {
  const Plan before = plan();
  const CircuitId id = movable().front();
  const SpacePosition home = find(plan(), circuit(id)->planned)->position();
  const auto move = [&] {
    window_->boards()->focusBreaker(circuit(id)->planned);
    window_->action(Command::move)->trigger();
    QCOMPARE(panelOfCircuit(id).number, backup().number);
  };
  move();
  drag(*window_, circuit(id)->planned, backup(), main(), home);
  QCOMPARE(plan(), before);
  QCOMPARE(steps(), 2);
  move();
  window_->boards()->focusBreaker(circuit(id)->planned);
  QTest::keyClick(board(backup()), Qt::Key_B);
  QCOMPARE(plan(), before);
  move();
  window_->boards()->focusBreaker(circuit(id)->planned);
  window_->action(Command::sendBack)->trigger();
  QCOMPARE(plan(), before);
  QVERIFY(window_->statusText().contains(QString::fromStdString(circuit(id)->name)));
}

void MovingTest::whatCannotBeBuiltIsRefusedWithTheReason() {
  const Circuit* wide = nullptr;
  for (const auto& each : plan().circuits) {
    const Breaker* breaker = find(plan(), each->planned);
    if (breaker != nullptr && breaker->panel == main() && breaker->poles == 2) wide = &*each;
  }
  QVERIFY(wide != nullptr);
  const Panel* panel = backupPanel(plan());
  const SpacePosition last{Column::right, rowCount(*panel)};
  const Shown before = shown();
  const QPoint end = carry(*window_, wide->planned, main(), backup(), last);
  QVERIFY(window_->boards()->carrying());
  // The reason, whole, in the card and the status line; of the figures nothing but what stands.
  QVERIFY(window_->statusText().contains(QString::fromStdString(panel->name)));
  QCOMPARE(window_->card()->effect().place, window_->statusText());
  QVERIFY(window_->card()->effect().rows.empty());
  QCOMPARE(window_->answers()->answers().headline, before.headline);
  QCOMPARE(window_->strip()->chart()->data().likely, before.likely);
  bool brief = false;
  for (const BoardText& text : window_->boards()->layoutOf(backup())->texts) {
    if (text.role != TextRole::landing) continue;
    QCOMPARE(text.text, text.whole);
    brief = brief ||
            window_->boards()->layoutOf(backup())->cells[std::size_t(text.cell)].address.position == last;
  }
  QVERIFY(brief);
  QTest::mouseRelease(board(main()), Qt::LeftButton, {}, end);
  QCOMPARE(steps(), 0);
  QCOMPARE(plan(), before.plan);
  QVERIFY2(window_->statusText().contains(QString::fromStdString(panel->name)),
           qPrintable(window_->statusText()));
}

void MovingTest::theContextMenuMoves() {
  const CircuitId id = movable().front();
  const QPoint at = cellPoint(*window_, main(), circuit(id)->planned);
  QContextMenuEvent event(QContextMenuEvent::Mouse, at, board(main())->mapToGlobal(at));
  QApplication::sendEvent(board(main()), &event);
  auto* menu = window_->findChild<QMenu*>(QStringLiteral("cellMenu"));
  QVERIFY(menu != nullptr && menu->isVisible());
  QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(window_->action(Command::move)).center());
  QCOMPARE(steps(), 1);
  QCOMPARE(panelOfCircuit(id).number, backup().number);
}

void MovingTest::undoAndRedoSayWhatTheyDo() {
  QVERIFY(!window_->action(Command::undo)->isEnabled());
  const QString plain = window_->action(Command::undo)->text();
  const CircuitId id = movable().front();
  const QString name = QString::fromStdString(circuit(id)->name);
  const QString cardAtRest = window_->card()->accessibleName();
  window_->boards()->focusBreaker(circuit(id)->planned);
  window_->action(Command::move)->trigger();
  QVERIFY(window_->statusText().contains(name));
  const QString done = window_->statusText();
  QVERIFY(window_->action(Command::undo)->text().contains(name));
  QVERIFY(window_->findChild<QLabel*>(QStringLiteral("undoText"))->text().contains(name));
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QVERIFY(window_->statusText().contains(name));
  QVERIFY2(window_->statusText() != done, "after undo the line still says it was done");
  QCOMPARE(window_->action(Command::undo)->text(), plain);
  QVERIFY(window_->action(Command::redo)->text().contains(name));
  // The card shows the plan as it is now.
  window_->boards()->select({});
  Q_EMIT window_->boards()->selectionChanged({});
  QCOMPARE(window_->card()->accessibleName(), cardAtRest);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  QVERIFY(window_->statusText().contains(name));
  QCOMPARE(panelOfCircuit(id).number, backup().number);
  QVERIFY(window_->action(Command::undo)->text().contains(name));
}

void MovingTest::breakersAreCopiedAndDeletedByKey() {
  const Plan before = plan();
  const CircuitId id = movable().front();
  window_->boards()->focusBreaker(circuit(id)->planned);
  pressKey(*window_, Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  QCOMPARE(steps(), 1);
  QCOMPARE(plan().circuits.size(), before.circuits.size() + 1);
  window_->boards()->focusBreaker(circuit(id)->planned);
  QTest::keyClick(board(main()), Qt::Key_Delete);
  QCOMPARE(steps(), 2);
  QVERIFY(circuit(id) == nullptr);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  pressKey(*window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
}

QTEST_MAIN(MovingTest)
#include "moving_test.moc"
