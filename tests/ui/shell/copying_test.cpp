// Figures and boards on the clipboard.

#include <QtCore/QMimeData>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QTextBrowser>

#include "tests/ui/shell/window_fixture.h"
#include "ui/answers/answers_column.h"
#include "ui/answers/leg_bars.h"
#include "ui/answers/working_window.h"

using namespace stayalight;
using namespace stayalight::window;

class CopyingTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    openWithSample();
    QGuiApplication::clipboard()->clear();
  }
  void cleanup() { closeWindow(); }
  void aFigureIsCopiedByKeyAndByMenu();
  void aLegIsCopiedWithItsName();
  void theWorkingCopiesItsFigures();
  void boardsAreCopiedAsPictures();

 private:
  [[nodiscard]] static QString copied() { return QGuiApplication::clipboard()->text(); }
};

void CopyingTest::aFigureIsCopiedByKeyAndByMenu() {
  const QList<FigureRow*> rows = window_->answers()->findChildren<FigureRow*>();
  QVERIFY(rows.size() > 4);
  for (FigureRow* row : rows.mid(0, 4)) {
    QGuiApplication::clipboard()->clear();
    row->setFocus();
    QTest::keyClick(row, Qt::Key_C, Qt::ControlModifier);
    QCOMPARE(copied(), QString(row->line().label + QLatin1Char(' ') + row->line().value).simplified());
  }
  // While the survey has the key for its cells, a focused figure still has its own.
  window_->action(Command::survey)->trigger();
  window_->action(Command::answers)->trigger();
  FigureRow* row = rows.front();
  QGuiApplication::clipboard()->clear();
  row->setFocus();
  QTRY_VERIFY(row->hasFocus());
  QTest::keyClick(row, Qt::Key_C, Qt::ControlModifier);
  QVERIFY(copied().startsWith(row->line().label.simplified()));
  QGuiApplication::clipboard()->clear();
  QContextMenuEvent asked(QContextMenuEvent::Mouse, QPoint(5, 5), row->mapToGlobal(QPoint(5, 5)));
  QApplication::sendEvent(row, &asked);
  auto* menu = row->findChild<QMenu*>(QStringLiteral("figureMenu"));
  QVERIFY(menu != nullptr && menu->isVisible());
  QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(menu->actions().front()).center());
  QVERIFY(copied().startsWith(row->line().label.simplified()));
}

void CopyingTest::aLegIsCopiedWithItsName() {
  auto* bars = window_->answers()->findChild<LegBars*>();
  QVERIFY(bars != nullptr && bars->isVisible());
  bars->setFocus();
  for (int i = 0; i < 4; ++i) QTest::keyClick(bars, Qt::Key_Up);
  QTest::keyClick(bars, Qt::Key_Down);
  QTest::keyClick(bars, Qt::Key_Down);
  QTest::keyClick(bars, Qt::Key_C, Qt::ControlModifier);
  const WorkingTarget& peak = window_->answers()->answers().bars[1].peakWorking;
  QCOMPARE(copied(), QString(peak.title + QLatin1Char(' ') + peak.shown).simplified());
  QVERIFY2(copied().contains(QStringLiteral("L2")) && copied().contains(QStringLiteral(" A")),
           qPrintable(copied()));
}

void CopyingTest::theWorkingCopiesItsFigures() {
  auto* bars = window_->answers()->findChild<LegBars*>();
  bars->setFocus();
  QTest::keyClick(bars, Qt::Key_W);
  auto* working = window_->findChild<WorkingWindow*>();
  QVERIFY(working != nullptr && QTest::qWaitForWindowActive(working));
  auto* head = working->findChild<QLabel*>(QStringLiteral("figure"));
  head->setFocus();
  QTest::keyClick(head, Qt::Key_C, Qt::ControlModifier);
  QVERIFY2(copied().contains(QStringLiteral(" A")), qPrintable(copied()));
  // Tab goes to the first result; the key copies it with its unit.
  QGuiApplication::clipboard()->clear();
  auto* steps = working->findChild<QTextBrowser*>(QStringLiteral("steps"));
  steps->setFocus();
  QTest::keyClick(steps, Qt::Key_Tab);
  QTest::keyClick(steps, Qt::Key_C, Qt::ControlModifier);
  QVERIFY2(QRegularExpression(QStringLiteral("^[0-9.,]+( \\S+)?$")).match(copied()).hasMatch(),
           qPrintable(copied()));
  const QString byKey = copied();
  QGuiApplication::clipboard()->clear();
  QTest::keyClick(steps, Qt::Key_Return);
  QCOMPARE(copied(), byKey);
  working->close();
}

void CopyingTest::boardsAreCopiedAsPictures() {
  const auto picture = [] { return QGuiApplication::clipboard()->image(); };
  const auto svg = [] {
    return QGuiApplication::clipboard()->mimeData()->data(QStringLiteral("image/svg+xml"));
  };
  window_->boards()->select({});
  pressKey(*window_, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
  const QSize all = picture().size();
  QVERIFY(all.width() > 1900);
  QVERIFY(svg().contains("<svg"));
  // With a selection only its board; at twice the size it has on the screen.
  const Plan& plan = window_->document().plan();
  window_->boards()->focusBreaker(movableCircuit(plan)->planned);
  pressKey(*window_, Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
  QCOMPARE(picture().width(), 2 * (487 + 24));
  QVERIFY(svg().contains("width=\""));
  QVERIFY(window_->statusText().contains(QString::fromStdString(mainPanel(plan)->name)));
}

QTEST_MAIN(CopyingTest)
#include "copying_test.moc"
