#include "ui/inspector/inspector.h"

#include <QtTest/QtTest>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QToolButton>

#include "core/edit/edit.h"
#include "ui/inspector/overload_picture.h"
#include "ui/style/fonts.h"

using namespace stayalight;

/// An inspector beside a plan that takes its edits, each a step.
class InspectorTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }
  void init();
  void cleanup() { delete inspector_; }
  void quantitiesTakeUnitsSumsAndEitherMark_data();
  void quantitiesTakeUnitsSumsAndEitherMark();
  void nonsenseIsRefusedInWordsAndKept();
  void outOfRangeIsRefusedInShownUnits();
  void factsCarryGradeRangeAndWho();
  void choicesKeepWordsOfALaterProgram();
  void textIsTakenAsItIsTyped();
  void addCopyAndDeleteAreStepsOfTheirOwn();
  void pointsOfTheOverloadCurve();
  void helpOpensByKeyAndByItsButton();
  void theCurveIsDrawnWithTheStarts();
  void everyRecordCanBeLookedAt();
  void formsAreThereWhenTheyAreSeen();

 private:
  [[nodiscard]] QLineEdit* line(const EntityRef& ref, const char* key) const {
    RecordForm* form = inspector_->form(ref);
    FieldEditor* editor = form != nullptr ? form->editor(key) : nullptr;
    return editor != nullptr ? editor->findChild<QLineEdit*>(QStringLiteral("value")) : nullptr;
  }
  [[nodiscard]] QString note(const EntityRef& ref, const char* key) const {
    const auto* label = inspector_->form(ref)->editor(key)->findChild<QLabel*>(QStringLiteral("note"));
    return label->isHidden() ? QString() : label->text();
  }
  void type(QLineEdit* line, const QString& text) const {
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
  }

  Plan plan_;
  EntityRef circuit_, load_;
  int steps_ = 0;
  Inspector* inspector_ = nullptr;
};

void InspectorTest::init() {
  plan_ = newPlan();
  const Result<Plan> with =
      addCircuit(plan_, mainPanel(plan_)->id, std::nullopt, 1, RatingAmperes(20), "Freezer");
  QVERIFY(with.ok());
  plan_ = with.value();
  circuit_ = {RecordKind::circuit, plan_.circuits.back()->id.number};
  load_ = {RecordKind::load, nextLoadId(plan_).number};
  const Result<Plan> loaded = addLoad(plan_, CircuitId{circuit_.id}, Load{});
  QVERIFY(loaded.ok());
  plan_ = loaded.value();
  steps_ = 0;
  inspector_ = new Inspector(FormStyle{});
  connect(inspector_, &Inspector::edited, this, [this](const FormEdit& edit) {
    plan_ = edit.plan;
    ++steps_;
    inspector_->setPlan(plan_);
  });
  inspector_->setPlan(plan_);
  inspector_->look(circuit_);
  inspector_->resize(360, 700);
  static_cast<QWidget*>(inspector_)->show();
  QVERIFY(QTest::qWaitForWindowActive(inspector_));
}

void InspectorTest::quantitiesTakeUnitsSumsAndEitherMark_data() {
  QTest::addColumn<QString>("typed");
  QTest::addColumn<double>("watts");
  QTest::newRow("unit") << "1.5 kW" << 1500.0;
  QTest::newRow("comma") << "1,5 kW" << 1500.0;
  QTest::newRow("sum") << "3*120+40" << 400.0;
  QTest::newRow("plain") << "250" << 250.0;
}

void InspectorTest::quantitiesTakeUnitsSumsAndEitherMark() {
  QFETCH(QString, typed);
  QFETCH(double, watts);
  QLineEdit* field = line(load_, "running_W");
  QVERIFY(field != nullptr);
  type(field, typed);
  QCOMPARE(steps_, 1);
  QCOMPARE(plan_.circuits.back()->loads.front().running.value->count(), watts);
  QCOMPARE(field->text().remove(QLatin1Char(',')), QString::number(watts));
}

void InspectorTest::nonsenseIsRefusedInWordsAndKept() {
  QLineEdit* field = line(load_, "running_W");
  type(field, QStringLiteral("a lot"));
  QCOMPARE(steps_, 0);
  QCOMPARE(field->text(), QStringLiteral("a lot"));
  QVERIFY(!note(load_, "running_W").isEmpty());
  // Something else changes the plan: what was typed stays.
  inspector_->setPlan(plan_);
  QCOMPARE(field->text(), QStringLiteral("a lot"));
  type(field, QStringLiteral("12 A"));
  QCOMPARE(steps_, 0);
  QVERIFY(note(load_, "running_W").contains(QStringLiteral("kW")));
  type(field, QStringLiteral("80 W"));
  QCOMPARE(steps_, 1);
  QVERIFY(note(load_, "running_W").isEmpty());
}

void InspectorTest::outOfRangeIsRefusedInShownUnits() {
  inspector_->look({RecordKind::battery});
  QLineEdit* field = line({RecordKind::battery}, "floor");
  QVERIFY(field != nullptr);
  type(field, QStringLiteral("120 %"));
  QCOMPARE(steps_, 0);
  QVERIFY2(note({RecordKind::battery}, "floor").contains(QStringLiteral("100 %")),
           qPrintable(note({RecordKind::battery}, "floor")));
  type(field, QStringLiteral("15"));
  QCOMPARE(steps_, 1);
  QCOMPARE(plan_.battery->floor.count(), 0.15);
  // Temperatures come back as they were typed.
  QLineEdit* cells = line({RecordKind::battery}, "cell_temperature_mC");
  type(cells, QStringLiteral("68 F"));
  QCOMPARE(plan_.battery->cellTemperature->inMilliCelsius(), 20000);
  QCOMPARE(cells->text(), QStringLiteral("68"));
}

void InspectorTest::factsCarryGradeRangeAndWho() {
  FieldEditor* editor = inspector_->form(load_)->editor("running_W");
  type(line(load_, "running_W"), QStringLiteral("100"));
  auto* grade = editor->findChild<QComboBox*>(QStringLiteral("grade"));
  grade->setFocus();
  QTest::keyClick(grade, Qt::Key_End);
  QCOMPARE(plan_.circuits.back()->loads.front().running.grade, Grade::measured);
  QTest::mouseClick(editor->findChild<QWidget*>(QStringLiteral("more")), Qt::LeftButton);
  type(editor->findChild<QLineEdit*>(QStringLiteral("low")), QStringLiteral("90"));
  type(editor->findChild<QLineEdit*>(QStringLiteral("who")), QStringLiteral("clamp meter"));
  const Graded<Watts>& fact = plan_.circuits.back()->loads.front().running;
  QCOMPARE(fact.low->count(), 90.0);
  QCOMPARE(fact.who, std::string("clamp meter"));
  // A low end above the likely one is refused.
  const int before = steps_;
  type(editor->findChild<QLineEdit*>(QStringLiteral("low")), QStringLiteral("200"));
  QCOMPARE(steps_, before);
  QVERIFY(!note(load_, "running_W").isEmpty());
}

void InspectorTest::choicesKeepWordsOfALaterProgram() {
  const Result<Plan> later = setField(plan_, circuit_, "wiring", FieldValue(std::string("woven_cable")));
  QVERIFY(later.ok());
  plan_ = later.value();
  inspector_->setPlan(plan_);
  auto* list = inspector_->form(circuit_)->editor("wiring")->findChild<QComboBox*>(QStringLiteral("value"));
  QVERIFY(list->currentText().contains(QStringLiteral("woven_cable")));
  list->setFocus();
  QTest::keyClick(list, Qt::Key_Home);
  QCOMPARE(steps_, 1);
  QVERIFY(plan_.circuits.back()->wiring.known());
}

void InspectorTest::textIsTakenAsItIsTyped() {
  QLineEdit* field = line(circuit_, "name");
  field->setFocus();
  field->selectAll();
  QTest::keyClicks(field, QStringLiteral("Icebox"));
  QCOMPARE(plan_.circuits.back()->name, std::string("Icebox"));
  QCOMPARE(field->text(), QStringLiteral("Icebox"));
}

void InspectorTest::addCopyAndDeleteAreStepsOfTheirOwn() {
  const auto press = [this](const EntityRef& ref, const char* button) {
    auto* found = inspector_->form(ref)->findChild<QPushButton*>(QString::fromLatin1(button));
    QVERIFY2(found != nullptr, button);
    found->click();
  };
  press(circuit_, "add.loads");
  QCOMPARE(steps_, 1);
  QCOMPARE(plan_.circuits.back()->loads.size(), std::size_t{2});
  press(load_, "add.windows");
  QCOMPARE(plan_.circuits.back()->loads.front().windows.size(), std::size_t{1});
  press({RecordKind::useWindow, load_.id, 0}, "delete");
  QCOMPARE(plan_.circuits.back()->loads.front().windows.size(), std::size_t{0});
  press(load_, "delete");
  QCOMPARE(plan_.circuits.back()->loads.size(), std::size_t{1});
  press(circuit_, "copy");
  QCOMPARE(plan_.circuits.size(), std::size_t{2});
  press(circuit_, "delete");
  QCOMPARE(plan_.circuits.size(), std::size_t{1});
  QCOMPARE(steps_, 6);
  QVERIFY(inspector_->lookingAt() != circuit_);
}

void InspectorTest::pointsOfTheOverloadCurve() {
  inspector_->look({RecordKind::inverter});
  inspector_->form({RecordKind::inverter})->findChild<QPushButton*>(QStringLiteral("add.overload"))->click();
  QCOMPARE(plan_.inverter->overload.size(), std::size_t{1});
  const EntityRef point{RecordKind::overloadPoint, 0, 0};
  type(line(point, "total_W"), QStringLiteral("9 kW"));
  type(line(point, "time_s"), QStringLiteral("5"));
  QCOMPARE(plan_.inverter->overload.front().watts->count(), 9000.0);
  QCOMPARE(plan_.inverter->overload.front().time.count(), 5.0);
}

void InspectorTest::helpOpensByKeyAndByItsButton() {
  const auto popup = [] {
    for (QWidget* widget : QApplication::topLevelWidgets()) {
      if (widget->inherits("QWhatsThat") && widget->isVisible()) return widget;
    }
    return static_cast<QWidget*>(nullptr);
  };
  QLineEdit* field = line(load_, "running_W");
  for (const Qt::KeyboardModifiers modifiers : {Qt::NoModifier, Qt::ShiftModifier}) {
    field->setFocus();
    QTest::keyClick(field, Qt::Key_F1, modifiers);
    QVERIFY(popup() != nullptr);
    QTest::keyClick(popup(), Qt::Key_Escape);
    QTRY_VERIFY(popup() == nullptr);
  }
  // Every field has its button, named and described; F1 is its key, so Tab goes from field to field.
  for (const Field& each : recordType(RecordKind::load).fields) {
    if (each.kind == FieldKind::identity) continue;
    auto* button = inspector_->form(load_)->findChild<QToolButton*>(
        QStringLiteral("help.") + QString::fromStdString(std::string(each.key)));
    QVERIFY2(button != nullptr, std::string(each.key).c_str());
    QVERIFY(!(button->focusPolicy() & Qt::TabFocus));
    QVERIFY(button->accessibleName().startsWith(QStringLiteral("Help on ")));
    QVERIFY(!button->accessibleDescription().isEmpty());
  }
  QVERIFY(line(load_, "name")->accessibleDescription().endsWith(QStringLiteral("F1 shows this.")));
  line(load_, "name")->setFocus();
  QTest::keyClick(line(load_, "name"), Qt::Key_Tab);
  QVERIFY(qobject_cast<QToolButton*>(inspector_->focusWidget()) == nullptr);
  QTest::mouseClick(inspector_->form(load_)->findChild<QToolButton*>(QStringLiteral("help.name")),
                    Qt::LeftButton);
  QVERIFY(popup() != nullptr);
  QTest::keyClick(popup(), Qt::Key_Escape);
  QCOMPARE(steps_, 0);
}

void InspectorTest::theCurveIsDrawnWithTheStarts() {
  Plan plan = plan_;
  Inverter inverter;
  inverter.continuous = Watts(8000);
  inverter.overload = {{{}, Seconds(0.5), Watts(16000), {}}, {{}, Seconds(5), Watts(12000), {}}};
  plan.inverter = inverter;
  plan_ = plan;
  StartFigures starts;
  StartCheck check;
  check.loads = {LoadId{load_.id}};
  StartFigure<AcAmperes> leg;
  leg.highSum = AcAmperes(61.5);
  leg.highTime = Seconds(0.8);
  leg.verdict = Verdict::over;
  check.leg[1] = leg;
  check.real.highSum = Watts(7400);
  check.real.highTime = Seconds(0.8);
  check.real.verdict = Verdict::within;
  starts.checks = {check};
  inspector_->setPlan(plan_);
  inspector_->setStarts(starts);
  inspector_->look({RecordKind::inverter});
  auto* picture = inspector_->findChild<QWidget*>(QStringLiteral("overloadPicture"));
  QVERIFY(picture != nullptr);
  const auto* curve = dynamic_cast<OverloadPicture*>(picture);
  QVERIFY(curve != nullptr);
  QCOMPARE(curve->legPoints().size(), std::size_t{1});
  QCOMPARE(curve->legPoints().front().value, 61.5);
  const QString told = picture->accessibleDescription();
  for (const char* part : {"L2", "61.5 A", "7400 W", "0.8 s", "over"})
    QVERIFY2(told.contains(QString::fromLatin1(part)), qPrintable(told));
  // The points are rows of one table: heads once.
  QVERIFY(inspector_->form({RecordKind::overloadPoint, 0, 1}) != nullptr);
  int heads = 0;
  for (int item = 0; item < 2; ++item) {
    const RecordForm* form = inspector_->form({RecordKind::overloadPoint, 0, item});
    for (const QLabel* label : form->findChildren<QLabel*>(QString(), Qt::FindDirectChildrenOnly))
      heads += label->isHidden() ? 0 : 1;
  }
  QCOMPARE(heads, 3);
  QCOMPARE(steps_, 0);
}

void InspectorTest::everyRecordCanBeLookedAt() {
  auto* chooser = inspector_->findChild<QComboBox*>(QStringLiteral("lookAt"));
  QVERIFY(chooser->count() >= 8);
  for (int i = 0; i < chooser->count(); ++i) {
    chooser->setCurrentIndex(i);
    Q_EMIT chooser->activated(i);
    QVERIFY(inspector_->form(inspector_->lookingAt()) != nullptr);
  }
  QCOMPARE(steps_, 0);
}

void InspectorTest::formsAreThereWhenTheyAreSeen() {
  auto* shown = static_cast<QWidget*>(inspector_);
  shown->hide();
  const Result<Plan> renamed = setField(plan_, circuit_, "name", FieldValue(std::string("Cellar freezer")));
  QVERIFY(renamed.ok());
  plan_ = renamed.value();
  inspector_->setPlan(plan_);
  inspector_->look({RecordKind::battery});
  QCOMPARE(inspector_->lookingAt(), (EntityRef{RecordKind::battery}));
  shown->show();
  QVERIFY(inspector_->form({RecordKind::battery}) != nullptr);
  shown->hide();
  inspector_->look(circuit_);
  shown->show();
  QCOMPARE(line(circuit_, "name")->text(), QStringLiteral("Cellar freezer"));
  QCOMPARE(steps_, 0);
}

QTEST_MAIN(InspectorTest)
#include "inspector_test.moc"
