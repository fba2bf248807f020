#include <QtTest/QTest>

#include "ui/wording/language.h"
#include "ui/wording/notation.h"

using namespace stayalight;

class WordingTest : public QObject {
  Q_OBJECT
 private Q_SLOTS:
  void clockTimes() {
    const ProgramLanguage language;
    const std::pair<int, const char*> rows[] = {{0, "midnight"},    {60, "1 a.m."},      {375, "6:15 a.m."},
                                                {720, "noon"},      {725, "12:05 p.m."}, {18 * 60, "6 p.m."},
                                                {1440, "midnight"}, {5, "12:05 a.m."}};
    for (const auto& [minutes, expected] : rows) QCOMPARE(language.clock({minutes}), std::string(expected));
  }
  void numbers() {
    const ProgramLanguage language;
    QCOMPARE(language.number(1200.5, 1), std::string("1,200.5"));
    QCOMPARE(language.number(-0.04, 1), std::string("0.0"));
    QCOMPARE(amperes(AcAmperes(12), language), QString("12.0 A"));
    QCOMPARE(amperes(AcAmperes(120.4), language), QString("120 A"));
    QCOMPARE(watts(Watts(1499.6), language), QString("1,500 W"));
    QCOMPARE(duration(Hours(14.5), language), QString("14 h 30"));
    QCOMPARE(duration(Hours(2.0 + 5.0 / 60.0), language), QString("2 h 05"));
    QCOMPARE(halfHours(Hours(14.4), language), QString("14½"));
    QCOMPARE(halfHours(Hours(11.8), language), QString("12"));
    const ProgramLanguage german(QLocale(QLocale::German));
    QCOMPARE(german.number(1200.5, 1), std::string("1.200,5"));
  }
  // NFPA 70, 2023: 210.4(A) for one panelboard for all conductors of a multiwire circuit, as quoted in the
  // tables.
  void citationsFollowTheEditionAndTheCountry() {
    ProgramLanguage language;
    QVERIFY(QString::fromStdString(language.citation(RuleId{"multiwire.same_panel"})).startsWith("210.4"));
    QCOMPARE(language.citation(RuleId{"no.such_rule"}), std::string("practice"));
    Plan plan;
    plan.site.edit().country = Country::canada;
    language.follow(plan);
    QVERIFY(!QString::fromStdString(language.citation(RuleId{"multiwire.same_panel"})).contains("210"));
  }
  void pluralForms() {
    const ProgramLanguage language;
    QCOMPARE(words(language, MessageId{"board.spaces"}, std::int64_t{1}), QString("1 space"));
    QCOMPARE(words(language, MessageId{"board.spaces"}, std::int64_t{40}), QString("40 spaces"));
    QCOMPARE(words(language, MessageId{"board.spaces"}, std::int64_t{0}), QString("0 spaces"));
  }
  void formulas() {
    QCOMPARE(formulaText("sqrt(P^2 + Q^2) / V", Notation::plain), QString("√(P² + Q²) / V"));
    QCOMPARE(formulaText("sqrt(x)", Notation::plain), QString("√x"));
    QCOMPARE(formulaText("1.25*I_c + I_n", Notation::plain), QString("1.25 · I_c + I_n"));
    QCOMPARE(formulaText("I_c", Notation::html), QString("<i>I</i><sub>c</sub>"));
    QCOMPARE(formulaText("P^2", Notation::html), QString("<i>P</i><sup>2</sup>"));
    QCOMPARE(formulaText("-a - b*(c - d)", Notation::plain), QString("−a − b · (c − d)"));
    QCOMPARE(formulaText("sum(P)", Notation::plain), QString("Σ P"));
    QCOMPARE(formulaText("sum(P*d)", Notation::plain), QString("Σ(P · d)"));
    QCOMPARE(formulaText("eta", Notation::plain), QString("η"));
    QCOMPARE(formulaText("a <= b", Notation::plain), QString("a ≤ b"));
    // A hostile text ends.
    QCOMPARE(formulaText("sqrt((", Notation::plain), QString("√(())"));
  }
  void stepsAreFilledIn() {
    Step step;
    step.formula = FormulaId{"current.from_power"};
    step.result = 10.307764;
    step.unit = "A";
    step.inputs = {{"P", 1200, "W", Grade::nameplate, kNoStep, "Pump, running W"},
                   {"Q", 300, "var", std::nullopt, 0, {}},
                   {"V", 120, "V", std::nullopt, kNoStep, "service"}};
    const ProgramLanguage language;
    const auto shown = workedSteps(std::vector<Step>{step}, language, Notation::plain);
    QCOMPARE(shown.size(), std::size_t(1));
    QCOMPARE(shown[0].formula, QString("I = √(P² + Q²) / V"));
    QCOMPARE(shown[0].filled, QString("√(1,200² + 300²) / 120"));
    QCOMPARE(shown[0].result, QString("10.31 A"));
    QCOMPARE(shown[0].inputs[0].grade, QString("nameplate"));
    QCOMPARE(shown[0].inputs[1].from, QString("step 1"));
  }
  void workedNumbers() {
    const ProgramLanguage language;
    QCOMPARE(workedNumber(12000, language), QString("12,000"));
    QCOMPARE(workedNumber(0.95, language), QString("0.95"));
    QCOMPARE(workedNumber(34.8712, language), QString("34.87"));
    QCOMPARE(workedNumber(0, language), QString("0"));
  }
};

QTEST_MAIN(WordingTest)
#include "wording_test.moc"
