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

  // One inch is 25.4 mm, one foot 0.3048 m (international yard and pound, 1959); 0 °C is 32 °F; 6 AWG is 13.3
  // mm² (NFPA 70 Chapter 9 Table 8).
  void figuresAreShownInTheUnitsOfTheSetting() {
    ProgramLanguage language;
    QCOMPARE(figureText({10.0, "ft", 0}, language), QStringLiteral("10 ft"));
    QCOMPARE(figureText({50.0, "°C", 0}, language), QStringLiteral("122 °F"));
    QCOMPARE(figureText({-40.0, "°C", 0}, language), QStringLiteral("-40 °F"));
    QCOMPARE(figureText({12.5, "A", 1}, language), QStringLiteral("12.5 A"));
    QCOMPARE(conductorText(ConductorSize::awg6, language), QStringLiteral("6 AWG"));
    language.setUnits(UnitSystem::metric);
    QCOMPARE(figureText({10.0, "ft", 0}, language), QStringLiteral("3.0 m"));
    QCOMPARE(figureText({24.0, "in", 0}, language), QStringLiteral("610 mm"));
    QCOMPARE(figureText({0.304, "in²", 4}, language), QStringLiteral("1.961 cm²"));
    QCOMPARE(figureText({22.5, "in³", 1}, language), QStringLiteral("369 cm³"));
    QCOMPARE(figureText({3.0, "VA/ft²", 0}, language), QStringLiteral("32.3 VA/m²"));
    QCOMPARE(figureText({50.0, "°C", 0}, language), QStringLiteral("50 °C"));
    QCOMPARE(figureText({12.5, "A", 1}, language), QStringLiteral("12.5 A"));
    QCOMPARE(conductorText(ConductorSize::awg6, language), QStringLiteral("6 AWG (13.3 mm²)"));
    QCOMPARE(conductorText(ConductorSize::kcmil250, Metal::aluminium, language),
             QStringLiteral("250 kcmil Al (127 mm²)"));
    QCOMPARE(conductorText(ConductorSize::awg12, Metal::copper, language),
             QStringLiteral("12 AWG Cu (3.31 mm²)"));
  }
  // Within a sentence too, at any depth; a name that a person gave stays.
  void messagesAreShownInTheUnitsOfTheSetting() {
    ProgramLanguage language;
    language.setUnits(UnitSystem::metric);
    const Message inner =
        say(MessageId{"wiring.conductor.fixed"}, std::string("6 AWG Cu"), Figure{65.0, "A", 0});
    const QString text =
        words(say(MessageId{"wiring.over.no_conductor"}, std::vector<Message>{inner}), language);
    QVERIFY2(text.contains(QStringLiteral("6 AWG Cu (13.3 mm²)")), qPrintable(text));
    QVERIFY2(text.contains(QStringLiteral("65 A")), qPrintable(text));
    const Message named = say(MessageId{"wiring.box.note"}, std::string("6 AWG box"));
    QVERIFY(words(named, language).contains(QStringLiteral("6 AWG box")));
    language.setUnits(UnitSystem::us);
    QVERIFY(!words(say(MessageId{"wiring.over.no_conductor"}, std::vector<Message>{inner}), language)
                 .contains(QStringLiteral("mm²")));
  }
};

QTEST_MAIN(WordingTest)
#include "wording_test.moc"
