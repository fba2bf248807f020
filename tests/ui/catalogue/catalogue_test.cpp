// The catalogue in the real window, by keys and by mouse; own lists, templates and the clipboard.

#include <QtCore/QDir>
#include <QtCore/QTemporaryDir>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtWidgets/QInputDialog>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListView>
#include <QtWidgets/QMenu>

#include "core/edit/part.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/catalogue/catalogue_panel.h"
#include "ui/catalogue/load_rows.h"
#include "ui/catalogue/own_lists.h"
#include "ui/document/plan_file.h"

using namespace stayalight;
using namespace stayalight::window;

namespace {

const Circuit* firstCircuit(const Plan& plan) { return movableCircuit(plan); }

void choose(MainWindow& window, const Circuit& circuit) {
  window.boards()->focusBreaker(circuit.planned);
  QCoreApplication::processEvents();
}

}  // namespace

class CatalogueTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    QDir(ownFolder()).removeRecursively();
    openWithSample();
  }
  void cleanup() { closeWindow(); }

  void aKeyTypedWordsAndEnterAddALoad();
  void arrowsChooseWhileOneTypes();
  void withoutACircuitItSaysSo();
  void theFormOfACircuitLeadsToIt();
  void aLoadIsDraggedOntoABreaker();
  void aDragBesideABreakerAddsNothing();
  void ownLoadsStandFirstAndBadRowsAreNamed();
  void aLoadOfThePlanIsKept();
  void anInverterIsKeptAndTaken();
  void whatIsKeptInThePlanGoesWithItsFile();
  void aPlanStartsFromATemplate();
  void circuitsGoOverTheClipboardIntoAnotherWindow();
  void aPasteWithoutRoomIsRefused();
  void everythingIsNamed();

 private:
  QLineEdit* search() const { return window_->catalogue()->findChild<QLineEdit*>(QStringLiteral("search")); }
  QListView* list() const { return window_->catalogue()->findChild<QListView*>(QStringLiteral("loads")); }
  /// The entry of the open menu that stands in this line, by keys.
  static void chooseInMenu(const char* name, int line) {
    QTRY_VERIFY(QApplication::activePopupWidget() != nullptr);
    QWidget* menu = QApplication::activePopupWidget();
    QCOMPARE(menu->objectName(), QString::fromLatin1(name));
    for (int i = 0; i < line; ++i) QTest::keyClick(menu, Qt::Key_Down);
    QTest::keyClick(menu, Qt::Key_Return);
  }
  void openCatalogue() {
    pressKey(*window_, Qt::Key_L, Qt::ControlModifier);
    QTRY_VERIFY(search()->hasFocus());
  }
};

void CatalogueTest::aKeyTypedWordsAndEnterAddALoad() {
  const Circuit* circuit = firstCircuit(plan());
  QVERIFY(circuit != nullptr);
  const CircuitId id = circuit->id;
  const std::size_t before = circuit->loads.size();
  choose(*window_, *circuit);
  openCatalogue();
  QVERIFY(window_->catalogue()->isVisible());
  QTest::keyClicks(search(), QStringLiteral("deep freeze"));
  QCOMPARE(list()->currentIndex().data().toString(), QStringLiteral("Freezer, chest"));
  const QString target = window_->catalogue()->findChild<QLabel*>(QStringLiteral("target"))->text();
  QVERIFY2(target.contains(QString::fromStdString(circuit->name)), qPrintable(target));
  QTest::keyClick(search(), Qt::Key_Return);
  const Circuit* after = find(plan(), id);
  QCOMPARE(after->loads.size(), before + 1);
  const Load& load = after->loads.back();
  QVERIFY(load.catalogueId == "freezer_chest");
  QVERIFY(load.running.grade == Grade::typical);
  QVERIFY(load.running.low && load.running.high);
  QVERIFY2(window_->statusText().contains(QStringLiteral("Freezer")), qPrintable(window_->statusText()));
  QVERIFY2(search()->hasFocus(), "the next load can be typed at once");
  pressKey(*window_, Qt::Key_1, Qt::ControlModifier);
  window_->action(Command::undo)->trigger();
  QCOMPARE(find(plan(), id)->loads.size(), before);
}

void CatalogueTest::arrowsChooseWhileOneTypes() {
  choose(*window_, *firstCircuit(plan()));
  openCatalogue();
  QTest::keyClicks(search(), QStringLiteral("pump"));
  const QString first = list()->currentIndex().data().toString();
  QTest::keyClick(search(), Qt::Key_Down);
  QCOMPARE(list()->currentIndex().row(), 1);
  QVERIFY(list()->currentIndex().data().toString() != first);
  QTest::keyClick(search(), Qt::Key_Up);
  QCOMPARE(list()->currentIndex().data().toString(), first);
  QTest::keyClick(search(), Qt::Key_Escape);
  QVERIFY(search()->text().isEmpty());
  QCOMPARE(list()->model()->rowCount(), static_cast<int>(householdLoads().entries.size()));
  QTest::keyClicks(search(), QStringLiteral("zzz"));
  QCOMPARE(list()->model()->rowCount(), 0);
  QTest::keyClick(search(), Qt::Key_Return);
  QVERIFY(!window_->document().isModified());
}

void CatalogueTest::withoutACircuitItSaysSo() {
  window_->inspector()->look({RecordKind::battery});
  openCatalogue();
  QVERIFY(!window_->catalogue()->findChild<QPushButton*>(QStringLiteral("addLoad"))->isEnabled());
  QTest::keyClick(search(), Qt::Key_Return);
  QVERIFY(!window_->document().isModified());
  QVERIFY2(window_->statusText().contains(QStringLiteral("circuit")), qPrintable(window_->statusText()));
}

void CatalogueTest::theFormOfACircuitLeadsToIt() {
  const Circuit* circuit = firstCircuit(plan());
  choose(*window_, *circuit);
  window_->action(Command::inspector)->trigger();
  RecordForm* form = window_->inspector()->form({RecordKind::circuit, circuit->id.number});
  QVERIFY(form != nullptr);
  auto* button = form->findChild<QPushButton*>(QStringLiteral("fromCatalogue"));
  QVERIFY(button != nullptr);
  button->setFocus();
  QTest::keyClick(button, Qt::Key_Space);
  QTRY_VERIFY(search()->hasFocus());
}

void CatalogueTest::aLoadIsDraggedOntoABreaker() {
  const Circuit* circuit = firstCircuit(plan());
  const CircuitId id = circuit->id;
  const BreakerId breaker = circuit->planned;
  const PanelId panel = find(plan(), breaker)->panel;
  const std::size_t before = circuit->loads.size();
  window_->inspector()->look({RecordKind::site});
  openCatalogue();
  QTest::keyClicks(search(), QStringLiteral("television"));
  const QPoint from = list()->viewport()->mapTo(window_, list()->visualRect(list()->currentIndex()).center());
  const QPoint to =
      window_->boards()->boardWidget(panel)->mapTo(window_, cellPoint(*window_, panel, breaker));
  QString held;
  // The drag runs a loop of its own: the pointer moves on while it does, and looks at what the window says.
  int step = 0;
  QTimer hand;
  hand.setInterval(30);
  connect(&hand, &QTimer::timeout, this, [&] {
    ++step;
    if (step <= 8) QTest::mouseMove(window_->windowHandle(), from + (to - from) * step / 8);
    if (step == 11) held = window_->statusText();
    if (step == 12) {
      QTest::mouseRelease(window_->windowHandle(), Qt::LeftButton, Qt::NoModifier, to);
      hand.stop();
    }
  });
  QTest::mousePress(window_->windowHandle(), Qt::LeftButton, Qt::NoModifier, from);
  hand.start();
  QTest::mouseMove(window_->windowHandle(), from + QPoint(2, 2));
  QTest::mouseMove(window_->windowHandle(), from + QPoint(-20, 4));
  QTRY_VERIFY(!hand.isActive());
  QTRY_COMPARE(find(plan(), id)->loads.size(), before + 1);
  QVERIFY(find(plan(), id)->loads.back().catalogueId == "television");
  // While it was held there the window named circuit and leg.
  QVERIFY2(held.contains(QStringLiteral("Television")) &&
               held.contains(QString::fromStdString(find(plan(), id)->name)) &&
               held.contains(QStringLiteral("L")),
           qPrintable(held));
  QCOMPARE(window_->document().stack().count(), 1);
}

void CatalogueTest::aDragBesideABreakerAddsNothing() {
  QMimeData data;
  data.setData(QStringLiteral("application/x-stayalight-load"), "no table");
  const Circuit* circuit = firstCircuit(plan());
  const PanelId panel = find(plan(), circuit->planned)->panel;
  QWidget* board = window_->boards()->boardWidget(panel);
  const auto drop = [&](QPoint at) {
    QDragEnterEvent enter(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(board, &enter);
    QDropEvent event(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(board, &event);
    return event.isAccepted();
  };
  QVERIFY(!drop(QPoint(1, 1)));
  drop(cellPoint(*window_, panel, circuit->planned));  // a load that cannot be read
  QVERIFY(!window_->document().isModified());
}

void CatalogueTest::ownLoadsStandFirstAndBadRowsAreNamed() {
  QDir().mkpath(ownFolder());
  QFile file(ownFolder() + QStringLiteral("/loads.csv"));
  QVERIFY(file.open(QIODevice::WriteOnly));
  file.write("id,name,running_W\nkiln,Pottery kiln,1800\nbad,Broken,hot\n");
  file.close();
  choose(*window_, *firstCircuit(plan()));
  openCatalogue();
  QCOMPARE(list()->model()->index(0, 0).data().toString(), QStringLiteral("Pottery kiln (my list)"));
  auto* wrong = window_->catalogue()->findChild<QLabel*>(QStringLiteral("wrong"));
  QVERIFY(wrong->isVisible());
  for (const char* part : {"loads.csv", "line 3", "running_W", "hot"})
    QVERIFY2(wrong->text().contains(QLatin1String(part)), qPrintable(wrong->text()));
  QTest::keyClicks(search(), QStringLiteral("kiln"));
  QTest::keyClick(search(), Qt::Key_Return);
  QVERIFY(window_->document().isModified());
}

void CatalogueTest::aLoadOfThePlanIsKept() {
  const Circuit* circuit = nullptr;
  for (const auto& each : plan().circuits) {
    if (!each->loads.empty() && each->loads.front().running.value) circuit = &*each;
  }
  QVERIFY(circuit != nullptr);
  choose(*window_, *circuit);
  window_->action(Command::inspector)->trigger();
  RecordForm* form = window_->inspector()->form({RecordKind::load, circuit->loads.front().id.number});
  QVERIFY(form != nullptr);
  auto* button = form->findChild<QPushButton*>(QStringLiteral("keepInList"));
  button->setFocus();
  QTest::keyClick(button, Qt::Key_Space);
  chooseInMenu("keepWhere", 1);
  QVERIFY2(window_->statusText().contains(QStringLiteral("Kept")), qPrintable(window_->statusText()));
  QCOMPARE(ownLoads().entries.size(), 1u);
  QVERIFY(ownLoads().entries.front().load.name == circuit->loads.front().name);
  openCatalogue();
  QVERIFY(list()->model()->index(0, 0).data().toString().contains(QStringLiteral("my list")));
}

void CatalogueTest::anInverterIsKeptAndTaken() {
  const Inverter sample = *plan().inverter;
  window_->inspector()->look({RecordKind::inverter});
  window_->action(Command::inspector)->trigger();
  const auto press = [&](const char* name) {
    auto* button =
        window_->inspector()->form({RecordKind::inverter})->findChild<QPushButton*>(QLatin1String(name));
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
  };
  press("takeFromList");
  QVERIFY2(window_->statusText().contains(QStringLiteral("Nothing is kept")),
           qPrintable(window_->statusText()));
  press("keepInList");
  chooseInMenu("keepWhere", 1);
  QCOMPARE(ownRecords(RecordKind::inverter).size(), 1u);
  window_->startPlan(newPlan());
  QVERIFY(!(*plan().inverter == sample));
  window_->inspector()->look({RecordKind::inverter});
  window_->action(Command::inspector)->trigger();
  press("takeFromList");
  chooseInMenu("ownList", 1);
  QVERIFY(*plan().inverter == sample);
  QCOMPARE(window_->document().stack().count(), 1);
}

void CatalogueTest::whatIsKeptInThePlanGoesWithItsFile() {
  window_->inspector()->look({RecordKind::battery});
  window_->action(Command::inspector)->trigger();
  const auto press = [&](const char* name) {
    auto* button =
        window_->inspector()->form({RecordKind::battery})->findChild<QPushButton*>(QLatin1String(name));
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
  };
  const Battery sample = *plan().battery;
  press("keepInList");
  chooseInMenu("keepWhere", 2);
  QCOMPARE(plan().own->batteries.size(), 1u);
  QCOMPARE(window_->document().stack().count(), 1);
  QVERIFY2(ownRecords(RecordKind::battery).empty(), "no file of the person's");

  const Circuit* circuit = nullptr;
  for (const auto& each : plan().circuits) {
    if (!each->loads.empty() && each->loads.front().running.value) circuit = &*each;
  }
  const std::string load = circuit->loads.front().name;
  window_->inspector()->look({RecordKind::circuit, circuit->id.number});
  auto* keepLoad = window_->inspector()
                       ->form({RecordKind::load, circuit->loads.front().id.number})
                       ->findChild<QPushButton*>(QStringLiteral("keepInList"));
  keepLoad->setFocus();
  QTest::keyClick(keepLoad, Qt::Key_Space);
  chooseInMenu("keepWhere", 2);
  QCOMPARE(plan().own->loads.size(), 1u);

  // To the disk and into another window.
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("kept.stayalight"));
  QVERIFY(!writeBytes(path, planBytes(plan(), path).value()));
  MainWindow other;
  other.show();
  QVERIFY(QTest::qWaitForWindowActive(&other));
  QVERIFY(other.openFile(path));
  QVERIFY(*other.document().plan().own == *plan().own);
  other.action(Command::fromCatalogue)->trigger();
  QCOMPARE(other.catalogue()->findChild<QListView*>(QStringLiteral("loads"))->model()->index(0, 0).data(),
           QVariant(QString::fromStdString(load + " (this plan)")));
  other.close();

  // It comes back in the place of another battery.
  Battery changed = sample;
  changed.packs = sample.packs + 3;
  window_->startPlan(takeBattery(plan(), changed));
  window_->inspector()->look({RecordKind::battery});
  window_->action(Command::inspector)->trigger();
  press("takeFromList");
  chooseInMenu("ownList", 1);
  QVERIFY(*plan().battery == sample);
}

void CatalogueTest::aPlanStartsFromATemplate() {
  QTimer::singleShot(200, this, [] {
    auto* dialog = qobject_cast<QInputDialog*>(QApplication::activeModalWidget());
    if (dialog == nullptr) return;
    dialog->setTextValue(QStringLiteral("Two wells & a barn"));
    QTest::keyClick(dialog, Qt::Key_Return);
  });
  const std::size_t circuits = plan().circuits.size();
  window_->action(Command::keepTemplate)->trigger();
  QCOMPARE(ownTemplates().size(), 1u);
  window_->startPlan(newPlan());
  QCOMPARE(plan().circuits.size(), 0u);
  QMenu* templates = nullptr;
  for (QMenu* menu : window_->findChildren<QMenu*>()) {
    if (menu->title().contains(QStringLiteral("template"))) templates = menu;
  }
  QVERIFY(templates != nullptr);
  Q_EMIT templates->aboutToShow();
  QCOMPARE(templates->actions().size(), 1);
  templates->actions().front()->trigger();
  QCOMPARE(plan().circuits.size(), circuits);
  QVERIFY2(window_->document().path().isEmpty(), "the template itself is not what gets saved");
}

void CatalogueTest::circuitsGoOverTheClipboardIntoAnotherWindow() {
  const Circuit* circuit = firstCircuit(plan());
  const std::string name = circuit->name;
  const std::size_t loads = circuit->loads.size();
  choose(*window_, *circuit);
  pressKey(*window_, Qt::Key_C, Qt::ControlModifier);
  QVERIFY2(window_->statusText().contains(QStringLiteral("copied")), qPrintable(window_->statusText()));
  QVERIFY(QGuiApplication::clipboard()->text().contains(QString::fromStdString(name)));

  MainWindow other;
  other.show();
  QVERIFY(QTest::qWaitForWindowActive(&other));
  other.startPlan(newPlan());
  QCoreApplication::processEvents();
  pressKey(other, Qt::Key_V, Qt::ControlModifier);
  const Plan& there = other.document().plan();
  QCOMPARE(there.circuits.size(), 1u);
  QVERIFY(there.circuits[0]->name == name);
  QCOMPARE(there.circuits[0]->loads.size(), loads);
  QCOMPARE(other.document().stack().count(), 1);
  QCOMPARE(other.boards()->selection().size(), 1u);
  other.action(Command::undo)->trigger();
  QCOMPARE(other.document().plan().circuits.size(), 0u);
  QVERIFY(!window_->document().isModified());
}

void CatalogueTest::aPasteWithoutRoomIsRefused() {
  choose(*window_, *firstCircuit(plan()));
  window_->action(Command::copyCircuits)->trigger();
  Plan full = newPlan();
  const PanelId main = mainPanel(full)->id;
  for (;;) {
    Result<Plan> more = addCircuit(full, main, std::nullopt, 1, RatingAmperes(15), "Taken");
    if (!more) break;
    full = std::move(more).value();
  }
  window_->startPlan(full);
  window_->action(Command::pasteCircuits)->trigger();
  QVERIFY(plan() == full);
  QVERIFY2(window_->statusText().contains(QStringLiteral("no free place")),
           qPrintable(window_->statusText()));
  QGuiApplication::clipboard()->setText(QStringLiteral("only words"));
  window_->action(Command::pasteCircuits)->trigger();
  QVERIFY(plan() == full);
  QVERIFY2(window_->statusText().contains(QStringLiteral("No circuits were copied")),
           qPrintable(window_->statusText()));
}

void CatalogueTest::everythingIsNamed() {
  choose(*window_, *firstCircuit(plan()));
  openCatalogue();
  QVERIFY(!search()->accessibleName().isEmpty());
  QVERIFY(!list()->accessibleName().isEmpty());
  const QModelIndex row = list()->currentIndex();
  const QString spoken = row.data(Qt::AccessibleTextRole).toString();
  QVERIFY2(spoken.contains(row.data().toString()) && spoken.contains(QStringLiteral("W")),
           qPrintable(spoken));
  QVERIFY(row.data(Qt::ToolTipRole).toString().contains(QStringLiteral("Source")));
}

QTEST_MAIN(CatalogueTest)
#include "catalogue_test.moc"
