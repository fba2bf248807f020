// An inverter and a battery typed from their labels by keys alone, in the order in which a label states them;
// the number of keystrokes is printed. What a person does in a minute: some 150 keys (common practice, no
// source).

#include <QtGui/QAction>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>

#include "core/edit/edit.h"
#include "tests/ui/shell/window_fixture.h"
#include "ui/inspector/record_form.h"

using namespace stayalight;
using namespace stayalight::window;

class LabelEntryTest : public WindowTest {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(prepare()); }
  void init() {
    openEmpty(QSize(1280, 720));
    window_->startPlan(newPlan());
    QCoreApplication::processEvents();
    keys_ = 0;
  }
  void cleanup() { closeWindow(); }
  void anInverterFromItsLabel();
  void aBatteryFromItsLabel();
  void theFieldsStandInTheOrderOfTheLabel();

 private:
  void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
    QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    ++keys_;
  }
  void type(const QString& text) {
    QTest::keyClicks(QApplication::focusWidget(), text);
    keys_ += static_cast<int>(text.size());
  }
  /// Tab until the field of this name has the keyboard; its editor carries the field's key as its name.
  void tabTo(const QString& key, const QString& form = {}) {
    for (int i = 0; i < 40; ++i) {
      const QWidget* now = QApplication::focusWidget();
      const QWidget* editor = now != nullptr ? now->parentWidget() : nullptr;
      if (editor != nullptr && editor->objectName() == key && now->objectName() == QLatin1String("value") &&
          (form.isEmpty() || editor->parentWidget()->objectName() == form))
        return;
      press(Qt::Key_Tab);
    }
    QFAIL(qPrintable(key));
  }
  void tabToButton(const QString& name) {
    for (int i = 0; i < 40; ++i) {
      if (QApplication::focusWidget()->objectName() == name) return;
      press(Qt::Key_Tab);
    }
    QFAIL(qPrintable(name));
  }
  /// The form of a record, by the keys that the menu and the list name.
  void openForm(RecordKind kind, const QString& first) {
    QTest::keyClick(window_, Qt::Key_6, Qt::ControlModifier);
    ++keys_;
    auto* chooser = window_->inspector()->findChild<QComboBox*>(QStringLiteral("lookAt"));
    chooser->setFocus();
    ++keys_;
    // Typing in a closed list goes to the entry that begins so.
    type(first);
    QCOMPARE(window_->inspector()->lookingAt().kind, kind);
  }

  int keys_ = 0;
};

void LabelEntryTest::anInverterFromItsLabel() {
  openForm(RecordKind::inverter, QStringLiteral("inv"));
  const std::pair<const char*, const char*> rows[] = {{"name", "Hall 8 kW"},
                                                      {"units", "1"},
                                                      {"continuous_W", "8000"},
                                                      {"continuous_VA", "8000"},
                                                      {"leg_W", "4000"}};
  for (const auto& [key, text] : rows) {
    tabTo(QLatin1String(key));
    type(QLatin1String(text));
  }
  // Two points of the overload curve, added where they stand.
  const std::pair<const char*, const char*> points[] = {{"0.5", "16000"}, {"10", "12000"}};
  for (int i = 0; i < 2; ++i) {
    tabToButton(QStringLiteral("add.overload"));
    press(Qt::Key_Space);
    QCoreApplication::processEvents();
    const QString form = QStringLiteral("overload_point.0.%1").arg(i);
    // The new row has the keyboard.
    const QWidget* editor = QApplication::focusWidget()->parentWidget();
    QCOMPARE(editor->objectName(), QStringLiteral("time_s"));
    QCOMPARE(editor->parentWidget()->objectName(), form);
    type(QLatin1String(points[i].first));
    tabTo(QStringLiteral("total_W"), form);
    type(QLatin1String(points[i].second));
  }
  const std::pair<const char*, const char*> later[] = {
      {"ac_input_A", "60"},     {"pass_through_A", "60"},   {"transfer_gap_s", "0.02"},
      {"lowest_input_V", "42"}, {"charge_limit_W", "5000"}, {"marginal_efficiency", "93"},
      {"idle_W", "60"}};
  for (const auto& [key, text] : later) {
    tabTo(QLatin1String(key));
    type(QLatin1String(text));
  }
  press(Qt::Key_Return);
  const Inverter& inverter = *plan().inverter;
  QCOMPARE(inverter.name, std::string("Hall 8 kW"));
  QCOMPARE(inverter.continuous->count(), 8000.0);
  QCOMPARE(inverter.legContinuous->count(), 4000.0);
  QCOMPARE(inverter.overload.size(), std::size_t{2});
  QCOMPARE(inverter.overload[0].time.count(), 0.5);
  QCOMPARE(inverter.overload[0].watts->count(), 16000.0);
  QCOMPARE(inverter.overload[1].time.count(), 10.0);
  QCOMPARE(inverter.overload[1].watts->count(), 12000.0);
  QCOMPARE(inverter.acInput->count(), 60.0);
  QCOMPARE(inverter.transferGap->count(), 0.02);
  QCOMPARE(inverter.lowestInputVoltage->count(), 42.0);
  QCOMPARE(inverter.marginalEfficiency->count(), 0.93);
  QCOMPARE(inverter.idle->count(), 60.0);
  qInfo("an inverter with two points of its curve: %d keystrokes", keys_);
  QVERIFY(keys_ <= 160);
}

void LabelEntryTest::aBatteryFromItsLabel() {
  openForm(RecordKind::battery, QStringLiteral("bat"));
  const std::pair<const char*, const char*> rows[] = {
      {"name", "Rack"},  {"packs", "3"},   {"nominal_kWh", "5.12"},     {"continuous_A", "100"},
      {"peak_A", "200"}, {"peak_s", "15"}, {"charge_cut_off_mC", "32"}, {"floor", "10"}};
  for (const auto& [key, text] : rows) {
    tabTo(QLatin1String(key));
    type(QLatin1String(text));
  }
  press(Qt::Key_Return);
  const Battery& battery = *plan().battery;
  QCOMPARE(battery.name, std::string("Rack"));
  QCOMPARE(battery.packs, 3);
  QCOMPARE(battery.nominalKilowattHours.value(), 5.12);
  QCOMPARE(battery.continuousCurrent->count(), 100.0);
  QCOMPARE(battery.peakCurrent->count(), 200.0);
  QCOMPARE(battery.peakTime->count(), 15.0);
  qInfo("a battery: %d keystrokes", keys_);
  QVERIFY(keys_ <= 110);
}

// Every field of the table has its place, once; what is read first stands above.
void LabelEntryTest::theFieldsStandInTheOrderOfTheLabel() {
  for (const RecordKind kind : {RecordKind::inverter, RecordKind::battery}) {
    std::vector<std::string_view> order;
    for (const LabelGroup& group : labelGroups(kind)) {
      QVERIFY(!group.fields.empty() || !group.list.empty());
      for (const std::string_view key : group.fields) {
        QVERIFY2(fieldOf(kind, key) != nullptr, std::string(key).c_str());
        QVERIFY2(std::find(order.begin(), order.end(), key) == order.end(), std::string(key).c_str());
        order.push_back(key);
      }
    }
    QVERIFY(order.size() > 8);
    window_->action(Command::inspector)->trigger();
    window_->inspector()->look({kind});
    QCoreApplication::processEvents();
    RecordForm* form = window_->inspector()->form({kind});
    int last = -1;
    for (const std::string_view key : order) {
      const int y = form->editor(key)->mapTo(form, QPoint(0, 0)).y();
      QVERIFY2(y > last, std::string(key).c_str());
      last = y;
    }
    std::size_t shown = 0;
    for (const Field& field : recordType(kind).fields) shown += form->editor(field.key) != nullptr ? 1 : 0;
    QVERIFY(shown >= order.size());
  }
}

QTEST_MAIN(LabelEntryTest)
#include "label_entry_test.moc"
