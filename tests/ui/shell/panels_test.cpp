// More panels than two: each board shows any panel of the plan, circuits go from an existing subpanel to the
// backup subpanel by hand and by key, and whatever leads to a circuit shows the panel that holds it.

#include <QtGui/QAction>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>

#include "core/edit/edit.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/search/search_bar.h"

using namespace stayalight;
using namespace stayalight::window;

class PanelsTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init();
  void cleanup() { closeWindow(); }
  void twoPanelsLeaveNothingToChoose();
  void anyPanelStandsOnEitherBoard();
  void theKeyboardReachesTheChooser();
  void aCircuitIsDraggedFromAnExistingSubpanel();
  void aCircuitGoesByKeyAndItsGoalIsShown();
  void findingShowsThePanelThatHoldsIt();
  void aPanelThatGoesLeavesTheUsualOnes();

 private:
  [[nodiscard]] QComboBox* chooser(bool right) const { return window_->boards()->chooser(right); }
  [[nodiscard]] bool isShown(PanelId panel) const { return window_->boards()->layoutOf(panel) != nullptr; }
  /// By the keys of the list itself.
  void choose(bool right, PanelId panel) {
    QComboBox* list = chooser(right);
    list->setFocus();
    const int wanted = list->findData(qlonglong{panel.number});
    for (int i = 0; i < list->count() && list->currentIndex() != wanted; ++i)
      QTest::keyClick(list, list->currentIndex() < wanted ? Qt::Key_Down : Qt::Key_Up);
    QCoreApplication::processEvents();
  }

  PanelId main_, backup_, garage_;
  CircuitId opener_;
};

void PanelsTest::init() {
  openWithSample();
  main_ = mainPanel(plan())->id;
  backup_ = backupPanel(plan())->id;
  if (QLatin1String(QTest::currentTestFunction()) == QLatin1String("twoPanelsLeaveNothingToChoose")) return;
  Result<Plan> next = addPanel(plan(), PanelRole::subpanel);
  QVERIFY(next.ok());
  garage_ = next.value().panels.back()->id;
  next = setField(next.value(), {RecordKind::panel, garage_.number}, "name", std::string("Garage"));
  QVERIFY(next.ok());
  opener_ = nextCircuitId(next.value());
  next = addCircuit(next.value(), garage_, Placement{garage_, {Column::left, 1}, Half::whole, 1}, 1,
                    RatingAmperes(15), "Door opener");
  QVERIFY(next.ok());
  window_->startPlan(next.value());
  QCoreApplication::processEvents();
}

void PanelsTest::twoPanelsLeaveNothingToChoose() {
  QVERIFY(!chooser(false)->isVisible() && !chooser(true)->isVisible());
  QVERIFY(isShown(main_) && isShown(backup_));
}

void PanelsTest::anyPanelStandsOnEitherBoard() {
  for (const bool right : {false, true}) {
    QVERIFY(chooser(right)->isVisible());
    QVERIFY(!chooser(right)->accessibleName().isEmpty());
    QCOMPARE(chooser(right)->count(), 3);
    for (const PanelId panel : {garage_, main_, backup_, garage_}) {
      choose(right, panel);
      QVERIFY(isShown(panel));
      QCOMPARE(chooser(right)->currentData().toLongLong(), qlonglong{panel.number});
      // Never the same panel twice.
      QVERIFY(chooser(false)->currentData() != chooser(true)->currentData());
      QWidget* board = window_->boards()->boardWidget(panel);
      const bool standsRight =
          board->mapTo(window_->boards(), QPoint(0, 0)).x() > window_->boards()->width() / 2 - 30;
      QCOMPARE(standsRight, right);
    }
  }
  // Another plan begins as usual.
  window_->openSample();
  QVERIFY(isShown(mainPanel(plan())->id) && isShown(backupPanel(plan())->id));
}

void PanelsTest::theKeyboardReachesTheChooser() {
  window_->boards()->boardWidget(main_)->setFocus();
  QTest::keyClick(window_->boards()->boardWidget(main_), Qt::Key_Tab, Qt::ShiftModifier);
  QCOMPARE(QApplication::focusWidget(), static_cast<QWidget*>(chooser(true)));
  QTest::keyClick(chooser(true), Qt::Key_Tab, Qt::ShiftModifier);
  QCOMPARE(QApplication::focusWidget(), static_cast<QWidget*>(chooser(false)));
  // And by the letter of the label in front of it.
  for (const auto& [letter, right] : {std::pair{Qt::Key_R, true}, std::pair{Qt::Key_L, false}}) {
    window_->boards()->boardWidget(main_)->setFocus();
    QTest::keyClick(QApplication::focusWidget(), letter, Qt::AltModifier);
    QCOMPARE(QApplication::focusWidget(), static_cast<QWidget*>(chooser(right)));
    const auto labels = window_->boards()->findChildren<QLabel*>();
    const auto label = std::find_if(labels.begin(), labels.end(),
                                    [&](const QLabel* one) { return one->buddy() == chooser(right); });
    QVERIFY(label != labels.end());
    QVERIFY((*label)->isVisible() && (*label)->geometry().right() < chooser(right)->geometry().left());
  }
}

void PanelsTest::aCircuitIsDraggedFromAnExistingSubpanel() {
  choose(false, garage_);
  const Plan before = plan();
  const std::vector<Placement> free = landings(before, backup_, 1, {});
  QVERIFY(!free.empty());
  drag(*window_, find(before, opener_)->planned, garage_, backup_, free.back().position);
  QCOMPARE(steps(), 1);
  QCOMPARE(panelOf(plan(), *find(plan(), opener_), Reading::planned), backup_);
  QTest::keyClick(window_, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(plan(), before);
  QVERIFY(isShown(garage_) && isShown(backup_));
  // And back again by hand, into the space it came from.
  drag(*window_, find(before, opener_)->planned, garage_, backup_, free.back().position);
  drag(*window_, find(plan(), opener_)->planned, backup_, garage_, SpacePosition{Column::left, 1});
  QCOMPARE(panelOf(plan(), *find(plan(), opener_), Reading::planned), garage_);
}

void PanelsTest::aCircuitGoesByKeyAndItsGoalIsShown() {
  choose(true, garage_);
  QVERIFY(!isShown(backup_));
  window_->boards()->focusBreaker(find(plan(), opener_)->planned);
  QWidget* board = window_->boards()->boardWidget(garage_);
  QTest::keyClick(board, Qt::Key_M);
  QVERIFY(window_->boards()->carrying());
  QVERIFY(isShown(garage_) && isShown(backup_));
  QTest::keyClick(board, Qt::Key_Return);
  QCOMPARE(steps(), 1);
  QCOMPARE(panelOf(plan(), *find(plan(), opener_), Reading::planned), backup_);
  window_->boards()->focusBreaker(find(plan(), opener_)->planned);
  QTest::keyClick(window_->boards()->boardWidget(backup_), Qt::Key_B);
  QCOMPARE(panelOf(plan(), *find(plan(), opener_), Reading::planned), garage_);
}

void PanelsTest::findingShowsThePanelThatHoldsIt() {
  QVERIFY(!isShown(garage_));
  window_->action(Command::find)->trigger();
  auto* field = window_->searchBar()->findChild<QLineEdit*>(QStringLiteral("searchField"));
  QTest::keyClicks(field, QStringLiteral("door opener"));
  QTest::keyClick(field, Qt::Key_Return);
  QVERIFY(isShown(garage_) && isShown(backup_));
  QVERIFY(window_->boards()->boardWidget(garage_)->hasFocus());
  QCOMPARE(window_->boards()->selection().front().id, find(plan(), opener_)->planned.number);
}

void PanelsTest::aPanelThatGoesLeavesTheUsualOnes() {
  choose(false, garage_);
  Result<Plan> without = stayalight::remove(plan(), {RecordKind::circuit, opener_.number});
  QVERIFY(without.ok());
  window_->inspector()->look({RecordKind::panel, garage_.number});
  window_->action(Command::inspector)->trigger();
  QCoreApplication::processEvents();
  auto* form = window_->inspector()->form({RecordKind::panel, garage_.number});
  QVERIFY(form != nullptr);
  // With its circuit it cannot go; without it does, and undo brings it back.
  window_->boards()->focusBreaker(find(plan(), opener_)->planned);
  window_->action(Command::remove)->trigger();
  window_->inspector()->look({RecordKind::panel, garage_.number});
  QCoreApplication::processEvents();
  form = window_->inspector()->form({RecordKind::panel, garage_.number});
  QTest::mouseClick(form->findChild<QPushButton*>(QStringLiteral("delete")), Qt::LeftButton);
  QVERIFY(find(plan(), garage_) == nullptr);
  QVERIFY(isShown(main_) && isShown(backup_));
  QVERIFY(!chooser(false)->isVisible());
  while (window_->document().canUndo()) window_->action(Command::undo)->trigger();
  QVERIFY(chooser(false)->isVisible());
}

QTEST_MAIN(PanelsTest)
#include "panels_test.moc"
