// The list of undo steps: by mouse, by Enter, and live while it is open.

#include <QtGui/QAction>
#include <QtWidgets/QListWidget>

#include "tests/ui/shell/window_fixture.h"
#include "ui/shell/history_window.h"

using namespace stayalight;
using namespace stayalight::window;

class HistoryTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() { openWithSample(); }
  void cleanup() { closeWindow(); }
  void stepsAreNamedAndReached();
  void manyStepsAreOneChange();

 private:
  void rename(const std::string& name) {
    const Plan& plan = window_->document().plan();
    const EntityRef ref{RecordKind::circuit, plan.circuits.front()->id.number};
    QVERIFY(!window_->document()
                 .apply(setField(plan, ref, "name", FieldValue(name)).value(),
                        QStringLiteral("Rename to ") + QString::fromStdString(name))
                 .has_value());
  }
  [[nodiscard]] std::string name() const { return window_->document().plan().circuits.front()->name; }
};

void HistoryTest::stepsAreNamedAndReached() {
  const std::string original = name();
  rename("one");
  rename("two");
  rename("three");
  window_->action(Command::history)->trigger();
  auto* history = window_->findChild<HistoryWindow*>();
  QVERIFY(history != nullptr && QTest::qWaitForWindowActive(history));
  QListWidget* list = history->list();
  QCOMPARE(list->count(), 4);
  QCOMPARE(list->item(2)->text(), QStringLiteral("Rename to two"));
  QCOMPARE(list->currentRow(), 3);
  QVERIFY(list->item(3)->text().contains(QStringLiteral("now")));
  // By mouse, two steps back.
  QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualItemRect(list->item(1)).center());
  QCOMPARE(name(), std::string("one"));
  QCOMPARE(list->count(), 4);
  QVERIFY(list->item(1)->text().contains(QStringLiteral("now")));
  QVERIFY(list->item(2)->text().contains(QStringLiteral("undone")));
  // By keys: choosing a row does nothing yet, Enter goes there.
  QTRY_VERIFY(list->hasFocus());
  QTest::keyClick(list, Qt::Key_End);
  QCOMPARE(name(), std::string("one"));
  QTest::keyClick(list, Qt::Key_Return);
  QCOMPARE(name(), std::string("three"));
  QTest::keyClick(list, Qt::Key_Home);
  QTest::keyClick(list, Qt::Key_Return);
  QCOMPARE(name(), original);
  QVERIFY(!window_->document().isModified());
  // Live: a new edit drops what was undone.
  rename("four");
  QCOMPARE(list->count(), 2);
  QVERIFY(list->item(1)->text().startsWith(QStringLiteral("Rename to four")));
}

void HistoryTest::manyStepsAreOneChange() {
  for (int i = 0; i < 50; ++i) rename("name " + std::to_string(i));
  int changes = 0;
  connect(&window_->document(), &PlanDocument::planChanged, this, [&] { ++changes; });
  window_->document().goTo(3);
  QCOMPARE(changes, 1);
  QCOMPARE(name(), std::string("name 2"));
  window_->document().goTo(50);
  QCOMPARE(changes, 2);
  QCOMPARE(name(), std::string("name 49"));
}

QTEST_MAIN(HistoryTest)
#include "history_test.moc"
