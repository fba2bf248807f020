#include <QtGui/QAccessible>
#include <QtGui/QWindow>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include "tests/core/example_plans.h"
#include "ui/boards/boards_view.h"
#include "ui/boards/carrying.h"
#include "ui/style/motion.h"

using namespace stayalight;
using example::kBackup;
using example::kMain;

class BoardsTest : public QObject {
  Q_OBJECT
 private:
  std::unique_ptr<BoardsView> view_;
  Plan plan_;
  std::vector<BoardMove> moves_;
  int selections_ = 0;
  std::vector<Message> refusals_;

  QPoint at(PanelId panel, Column column, int row) const {
    const BoardLayout* board = view_->layoutOf(panel);
    const int cell = board->cellOf(CellAddress{panel, {column, row}, Half::whole});
    return board->cells[static_cast<std::size_t>(cell)].rect.center().toPoint();
  }
  void drag(PanelId from, QPoint press, PanelId to, QPoint release, bool drop = true) {
    // Through the window, as the desktop delivers them: the pressed board keeps the pointer.
    QWindow* window = view_->windowHandle();
    const QPoint start = view_->boardWidget(from)->mapTo(view_.get(), press);
    const QPoint target = view_->boardWidget(to)->mapTo(view_.get(), release);
    QTest::mousePress(window, Qt::LeftButton, {}, start);
    QTest::mouseMove(window, start + QPoint(4, 0));
    QTest::mouseMove(window, (start + target) / 2);
    QTest::mouseMove(window, target);
    if (drop) QTest::mouseRelease(window, Qt::LeftButton, {}, target);
  }
  void show(const Plan& plan) {
    plan_ = plan;
    view_->setPlan(plan_, assess(plan_));
  }

 private Q_SLOTS:
  void init() {
    view_ = std::make_unique<BoardsView>();
    moves_.clear();
    refusals_.clear();
    selections_ = 0;
    connect(view_.get(), &BoardsView::moveRequested, this,
            [this](const std::vector<CircuitId>& circuits, PanelId panel, std::optional<SpacePosition> p) {
              moves_.push_back({MoveKind::move, circuits, panel, p, {}, {}});
            });
    connect(view_.get(), &BoardsView::sendBackRequested, this,
            [this](const std::vector<CircuitId>& circuits) {
              moves_.push_back({MoveKind::sendBack, circuits, {}, {}, {}, {}});
            });
    connect(view_.get(), &BoardsView::relocateRequested, this, [this](BreakerId breaker, SpacePosition p) {
      moves_.push_back({MoveKind::relocate, {}, {}, p, breaker, {}});
    });
    connect(view_.get(), &BoardsView::swapRequested, this, [this](BreakerId a, BreakerId b) {
      moves_.push_back({MoveKind::swap, {}, {}, {}, a, b});
    });
    connect(view_.get(), &BoardsView::selectionChanged, this, [this] { ++selections_; });
    connect(view_.get(), &BoardsView::refused, this,
            [this](const Message& reason) { refusals_.push_back(reason); });
    view_->resize(1028, 523);
    show(example::exampleHouseMoved());
    view_->show();
    QVERIFY(QTest::qWaitForWindowActive(view_.get()));
  }
  void cleanup() { view_.reset(); }

  // Wherever one presses within 24 pixels of a row's height and a little beside it, the nearest row is meant.
  void aPressAtTheEdgeMeansTheNearestRow() {
    const BoardLayout* board = view_->layoutOf(kMain);
    int pressed = 0;
    for (const BoardCell& cell : std::vector<BoardCell>(board->cells)) {
      if (!cell.breaker.valid() || cell.address.half != Half::whole) continue;
      const QRectF rect = cell.rect;
      const double off = std::max(3.0, (24.0 - rect.height()) / 2.0 - 0.5);
      for (const QPointF point :
           {QPointF(rect.center().x(), rect.top() - off), QPointF(rect.center().x(), rect.bottom() + off),
            QPointF(rect.left() - 3.0, rect.center().y()), QPointF(rect.right() + 3.0, rect.center().y())}) {
        double nearest = 1e9;
        for (const BoardCell& other : board->cells) {
          const QRectF& r = other.rect;
          nearest = std::min(nearest, std::max({r.left() - point.x(), point.x() - r.right(),
                                                r.top() - point.y(), point.y() - r.bottom(), 0.0}));
        }
        const double own = std::max({rect.left() - point.x(), point.x() - rect.right(),
                                     rect.top() - point.y(), point.y() - rect.bottom(), 0.0});
        if (own > nearest + 1e-6) continue;  // on its neighbour
        const int found = board->cellPressed(point);
        QVERIFY2(found >= 0, qPrintable(cell.name));
        QCOMPARE(board->cells[static_cast<std::size_t>(found)].breaker, cell.breaker);
        ++pressed;
      }
    }
    QVERIFY(pressed > 20);
    const BoardCell first = board->cells.front();
    view_->select({});
    QTest::mouseClick(view_->boardWidget(kMain), Qt::LeftButton, {},
                      (QPointF(first.rect.center().x(), first.rect.top() - 3.0)).toPoint());
    QCOMPARE(view_->selection().size(), std::size_t{1});
    QCOMPARE(view_->selection().front().id, first.breaker.number);
    QCOMPARE(board->cellPressed(QPointF(first.rect.center().x(), 2.0)), -1);
  }

  void carryingIsLeftAsItWasEntered() {
    Carrying carrying;
    carrying.press({0, 0}, {1, 1}, {BreakerId{3}});
    QVERIFY(!carrying.moved({3, 3}, 10));
    QVERIFY(!carrying.active());
    QVERIFY(carrying.moved({20, 0}, 10));
    QVERIFY(carrying.active());
    QVERIFY(carrying.aim(CellAddress{kBackup, {Column::left, 3}, Half::whole}));
    QVERIFY(!carrying.aim(CellAddress{kBackup, {Column::left, 3}, Half::whole}));
    carrying.cancel();
    QVERIFY(!carrying.drop() && carrying.breakers().empty());
  }
  void dragToTheBackupAsksForTheMove() {
    drag(kMain, at(kMain, Column::right, 6), kBackup, at(kBackup, Column::left, 3));
    QCOMPARE(moves_.size(), std::size_t(1));
    QCOMPARE(moves_[0], (BoardMove{MoveKind::move,
                                   {example::circuitNamed(plan_, "Freezer")},
                                   kBackup,
                                   SpacePosition{Column::left, 3},
                                   {},
                                   {}}));
    QVERIFY(!view_->carrying());
  }
  void dragHomeSendsBack() {
    drag(kBackup, at(kBackup, Column::left, 2), kMain, at(kMain, Column::left, 9));
    QCOMPARE(moves_.size(), std::size_t(1));
    QCOMPARE(moves_[0].kind, MoveKind::sendBack);
    QCOMPARE(moves_[0].circuits, std::vector<CircuitId>{example::circuitNamed(plan_, "Office")});
  }
  void dragWithinAPanelRelocatesOrSwaps() {
    drag(kBackup, at(kBackup, Column::left, 2), kBackup, at(kBackup, Column::left, 4));
    drag(kBackup, at(kBackup, Column::left, 2), kBackup, at(kBackup, Column::left, 1));
    QCOMPARE(moves_.size(), std::size_t(2));
    QCOMPARE(moves_[0].kind, MoveKind::relocate);
    QCOMPARE(*moves_[0].position, (SpacePosition{Column::left, 4}));
    QCOMPARE(moves_[1].kind, MoveKind::swap);
  }
  void escapeAndShortPressesChangeNothing() {
    const BoardLayout* before = view_->layoutOf(kMain);
    const std::size_t marks = before->marks.size();
    drag(kMain, at(kMain, Column::right, 6), kBackup, at(kBackup, Column::left, 3), false);
    QVERIFY(view_->carrying());
    QVERIFY(view_->pendingMove().has_value());
    QTest::keyClick(view_->boardWidget(kMain), Qt::Key_Escape);
    QVERIFY(!view_->carrying());
    QTest::mouseRelease(view_->windowHandle(), Qt::LeftButton, {}, QPoint(700, 60));
    QVERIFY(moves_.empty());
    view_->select({});
    QVERIFY(view_->layoutOf(kMain)->marks.size() <= marks + 3);
    QTest::mouseClick(view_->boardWidget(kMain), Qt::LeftButton, {}, at(kMain, Column::right, 6));
    QVERIFY(moves_.empty());
    QCOMPARE(view_->selection().size(), std::size_t(1));
  }
  void refusedDropTellsWhy() {
    view_->setPreview([](const BoardMove&) {
      return Preview{false, say(MessageId{"board.no_space_free"}), {}, {}, {}, {}, {}};
    });
    drag(kMain, at(kMain, Column::right, 6), kBackup, at(kBackup, Column::left, 3));
    QVERIFY(moves_.empty());
    QCOMPARE(refusals_.size(), std::size_t(1));
  }
  void whatIsLetGoGlidesOnlyWhereMotionIsWanted() {
    auto* picture = view_->findChild<QWidget*>(QStringLiteral("carriedPicture"));
    const QPoint freezer = at(kMain, Column::right, 6), free = at(kBackup, Column::left, 3);
    setMotionWanted(true);
    drag(kMain, freezer, kBackup, free);
    QCOMPARE(moves_.size(), std::size_t(1));  // at once: what glides is a picture
    QVERIFY(picture->isVisible());
    QTRY_VERIFY(!picture->isVisible());
    drag(kMain, freezer, kBackup, at(kBackup, Column::left, 1), false);
    QTest::keyClick(view_->boardWidget(kMain), Qt::Key_Escape);
    QVERIFY(!view_->carrying());
    QVERIFY(picture->isVisible());
    drag(kMain, freezer, kBackup, free, false);  // taken up again before it is home
    QVERIFY(view_->carrying() && picture->isVisible());
    QTest::mouseRelease(view_->windowHandle(), Qt::LeftButton, {},
                        view_->boardWidget(kBackup)->mapTo(view_.get(), free));
    QTRY_VERIFY(!picture->isVisible());
    setMotionWanted(false);
    drag(kMain, freezer, kBackup, free);
    QCOMPARE(moves_.size(), std::size_t(3));
    QVERIFY(!picture->isVisible());
    setMotionWanted(true);
  }
  void severalAreSelectedAndCarriedTogether() {
    QWidget* main = view_->boardWidget(kMain);
    QTest::mouseClick(main, Qt::LeftButton, {}, at(kMain, Column::right, 6));
    QTest::mouseClick(main, Qt::LeftButton, Qt::ControlModifier, at(kMain, Column::right, 4));
    QCOMPARE(view_->selection().size(), std::size_t(2));
    QCOMPARE(selections_, 2);
    drag(kMain, at(kMain, Column::right, 6), kBackup, at(kBackup, Column::left, 3));
    if (!moves_.empty()) QCOMPARE(moves_[0].circuits.size(), std::size_t(2));
    QVERIFY(moves_.size() + refusals_.size() == 1);
  }
  void keysMoveFocusChooseASpaceAndDrop() {
    QWidget* main = view_->boardWidget(kMain);
    view_->focusBreaker(find(plan_, example::circuitNamed(plan_, "Freezer"))->planned);
    QVERIFY(main->hasFocus());
    QTest::keyClick(main, Qt::Key_M);
    QVERIFY(view_->carrying());
    const auto first = view_->pendingMove();
    QVERIFY(first && first->kind == MoveKind::move && first->panel == kBackup);
    QTest::keyClick(main, Qt::Key_M);
    QVERIFY(view_->pendingMove() && view_->pendingMove()->position != first->position);
    QTest::keyClick(main, Qt::Key_Escape);
    QVERIFY(!view_->carrying());
    QTest::keyClick(main, Qt::Key_M);
    QTest::keyClick(main, Qt::Key_Return);
    QCOMPARE(moves_.size(), std::size_t(1));
    QCOMPARE(moves_[0].circuits, first->circuits);
    QCOMPARE(moves_[0].position, first->position);
  }
  void keysSendBackAndWalk() {
    QWidget* backup = view_->boardWidget(kBackup);
    view_->focusBreaker(find(plan_, example::circuitNamed(plan_, "Refrigerator"))->planned);
    QTest::keyClick(backup, Qt::Key_Down);
    QTest::keyClick(backup, Qt::Key_Space);
    QCOMPARE(view_->selection().front().id,
             find(plan_, example::circuitNamed(plan_, "Office"))->planned.number);
    QTest::keyClick(backup, Qt::Key_B);
    QCOMPARE(moves_.size(), std::size_t(1));
    QCOMPARE(moves_[0].kind, MoveKind::sendBack);
    QTest::keyClick(backup, Qt::Key_Left);
    QVERIFY(view_->boardWidget(kMain)->hasFocus());
  }
  void boardsAreTablesForAScreenReader() {
    QAccessibleInterface* board = QAccessible::queryAccessibleInterface(view_->boardWidget(kBackup));
    QVERIFY(board != nullptr);
    QCOMPARE(board->role(), QAccessible::Table);
    QVERIFY(board->text(QAccessible::Name).contains("2 of 8 free"));
    QAccessibleTableInterface* table = board->tableInterface();
    QVERIFY(table != nullptr);
    QCOMPARE(table->rowCount(), 4);
    QCOMPARE(table->columnCount(), 2);
    QAccessibleInterface* pump = table->cellAt(2, 1);
    QVERIFY(pump != nullptr && pump == table->cellAt(3, 1));
    QCOMPARE(pump->tableCellInterface()->rowExtent(), 2);
    QVERIFY(pump->text(QAccessible::Name).startsWith("Spaces 6, 8, Well pump"));
    for (int row = 0; row < 4; ++row) {
      for (int column = 0; column < 2; ++column) {
        QAccessibleInterface* cell = table->cellAt(row, column);
        QVERIFY(cell != nullptr && !cell->text(QAccessible::Name).isEmpty());
        QCOMPARE(board->child(board->indexOfChild(cell)), cell);
      }
    }
    pump->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    QVERIFY(pump->state().selected);
    QCOMPARE(table->selectedCellCount(), 1);
  }
};

QTEST_MAIN(BoardsTest)
#include "boards_test.moc"
