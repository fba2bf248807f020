// What the answers column says of a plan, held against the assessment it was given; and which steps a working
// shows.

#include <QtTest/QtTest>
#include <algorithm>
#include <cmath>

#include "core/file/file.h"
#include "tests/core/demand/calculated_house.h"
#include "ui/answers/answers_text.h"
#include "ui/answers/working_window.h"
#include "ui/wording/language.h"

using namespace stayalight;

class AnswersTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void theLoadCalculationStandsThereAndOpens() {
    const ProgramLanguage language;
    Plan plan = calculated::house();
    const auto sectionOf = [&](const Assessment& assessment) {
      for (const AnswerSection& section : answersFor(plan, assessment, language).sections) {
        if (section.heading == QStringLiteral("Load calculation")) return section;
      }
      return AnswerSection{};
    };
    Assessment a = assess(plan, Circumstances{true});
    AnswerSection section = sectionOf(a);
    QVERIFY(section.lines.size() >= 4);
    QCOMPARE(section.lines[0].value, QStringLiteral("3,930 VA, 16.5 A on L2"));
    QVERIFY(section.lines[0].detail.contains(QStringLiteral("not confirmed")));
    QCOMPARE(section.lines[1].value, QStringLiteral("11.0 A"));  // 1,320 VA on L2
    for (const AnswerLine& line : section.lines) {
      // A way that is closed and a method that does not apply have a reason, no figure.
      if (line.working.values.empty()) {
        QVERIFY2(!line.verdict && !line.detail.isEmpty(), qPrintable(line.label));
        continue;
      }
      QVERIFY(!stepsFor(a.working, line.working).empty());
    }
    const auto steps = stepsFor(a.working, section.lines[0].working);
    const bool lighting = std::any_of(steps.begin(), steps.end(),
                                      [](const Step& step) { return step.formula.key == "demand.lighting"; });
    QVERIFY(lighting);

    plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
    section = sectionOf(assess(plan));
    QCOMPARE(section.lines[0].value, QStringLiteral("9,000 VA"));
    QVERIFY(section.lines[0].detail.contains(QStringLiteral("typed in; worked out: 3,930 VA")));

    plan.transfer.edit().calculatedLoad.reset();
    calculated::circuit(plan, "Lights").areaServed.reset();
    section = sectionOf(assess(plan));
    QVERIFY(section.lines[0].verdict == Verdict::notKnown);
    QVERIFY(section.lines[0].detail.contains(QStringLiteral("area served by Lights")));

    plan.site.edit().country = Country::canada;
    QVERIFY(sectionOf(assess(plan)).lines.empty());
  }
  void initTestCase();
  void hoursSayTheyAreEstimates();
  void rangeComesFirst();
  void barsFollowTheAssessment();
  void theWorstStartOfALegIsTheOneWithTheSmallestMargin();
  void aMedicalLoadIsNoPromise();
  void nothingMovedIsSaid();
  void workingHoldsTheFigureAndWhatItCameFrom();
  void equalFiguresOpenTheirOwnSteps();

 private:
  Plan plan_;
  ProgramLanguage language_;
};

void AnswersTest::initTestCase() {
  QFile file(QStringLiteral(STAYALIGHT_SOURCE_DIR "/samples/river-house.stayalight"));
  QVERIFY(file.open(QIODevice::ReadOnly));
  const Result<ReadPlan> read = readPlan(file.readAll().toStdString(), "river house");
  QVERIFY(read.ok());
  plan_ = read.value().plan;
}

void AnswersTest::hoursSayTheyAreEstimates() {
  Assessment a = assess(plan_);
  QVERIFY(hoursSentence(plan_, a, language_).contains(QStringLiteral("estimated")));
  a.outage.known = false;
  QVERIFY(hoursSentence(plan_, a, language_).contains(QStringLiteral("not known")));
}

void AnswersTest::rangeComesFirst() {
  Assessment a = assess(plan_);
  a.outage.known = true;
  a.outage.low.reason = a.outage.likely.reason = a.outage.high.reason = OutageEnd::floorReached;
  a.outage.runtime = {Hours(12.1), Hours(14.4), Hours(16.9)};
  Plan winter = plan_;
  winter.scenario.edit().month = 1;
  winter.scenario.edit().start = TimeOfDay(18 * 60);
  QCOMPARE(hoursSentence(winter, a, language_),
           QStringLiteral("An estimated 12 to 17 hours from 6 p.m. in January."));
  a.outage.runtime = {Hours(80), Hours(90), Hours(95)};
  QVERIFY(hoursSentence(winter, a, language_).contains(QStringLiteral("72 hours or more")));
}

void AnswersTest::barsFollowTheAssessment() {
  const Assessment a = assess(plan_);
  const Answers answers = answersFor(plan_, a, language_);
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const LegBar& bar = answers.bars[index(leg)];
    QCOMPARE(bar.likelyPeak, a.hour.leg[index(leg)].likelyPeakCurrent.likely);
    QCOMPARE(bar.connected, a.hour.leg[index(leg)].connectedCurrent);
    QCOMPARE(bar.running, a.hour.leg[index(leg)].verdict);
  }
}

void AnswersTest::theWorstStartOfALegIsTheOneWithTheSmallestMargin() {
  const Assessment a = assess(plan_);
  const Answers answers = answersFor(plan_, a, language_);
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    double least = 1e12;
    for (const StartCheck& check : a.starts.checks) {
      const auto& figure = check.leg[index(leg)];
      if (figure && figure->margin) least = std::min(least, figure->margin->count());
    }
    const LegBar& bar = answers.bars[index(leg)];
    QVERIFY(bar.hasStart);
    QVERIFY(bar.startLimit.has_value());
    QVERIFY(std::abs(bar.startLimit->count() - bar.highSum.count() - least) < 1e-9);
  }
}

// Two pieces of the feeder with one ampacity, the second hotter with better insulation: each has its own
// table rows.
void AnswersTest::equalFiguresOpenTheirOwnSteps() {
  Plan plan = plan_;
  for (auto& run : plan.runs) {
    if (run->segment.is(Segment::switchToBackup)) run.edit().ambient = Temperature::celsius(35);
  }
  const Assessment a = assess(plan, {.record = true});
  const Answers answers = answersFor(plan, a, language_);
  int compared = 0;
  for (const AnswerSection& section : answers.sections) {
    for (const AnswerLine& line : section.lines) {
      if (!line.working.about) continue;
      const std::vector<Step> steps = stepsFor(a.working, line.working);
      QVERIFY2(!steps.empty(), qPrintable(line.label));
      for (const double value : line.working.values) {
        bool own = false;
        for (const Step& step : a.working.steps()) {
          const WorkingSubject* subject = a.working.subjectOf(step);
          own = own || (subject != nullptr && *subject == *line.working.about &&
                        std::abs(step.result - value) <= 1e-9 * (1.0 + std::abs(value)));
        }
        QVERIFY2(own, qPrintable(line.label));
        ++compared;
      }
    }
  }
  QVERIFY(compared > 10);
  const auto cellsOf = [&](Segment segment) {
    WorkingTarget target;
    target.rooms = {"wiring"};
    target.about = workingSubject(segment);
    target.wholeSubject = true;
    QString cells;
    for (const Step& step : stepsFor(a.working, target)) {
      for (const StepInput& input : step.inputs) cells += QString::fromStdString(input.from) + u';';
    }
    return cells;
  };
  QVERIFY(cellsOf(Segment::switchToBackup).contains(QStringLiteral("up to 35 C")));
  QVERIFY(!cellsOf(Segment::mainToSwitch).contains(QStringLiteral("up to 35 C")));
}

void AnswersTest::aMedicalLoadIsNoPromise() {
  Plan plan = plan_;
  QVERIFY(answersFor(plan, assess(plan), language_).caution.isEmpty());
  for (auto& circuit : plan.circuits) {
    if (circuit->loads.empty()) continue;
    circuit.edit().loads.front().medical = true;
    break;
  }
  QVERIFY(answersFor(plan, assess(plan), language_).caution.contains(QStringLiteral("no promise")));
}

void AnswersTest::nothingMovedIsSaid() {
  Plan plan = plan_;
  for (auto& circuit : plan.circuits) circuit.edit().planned = BreakerId(circuit->breaker);
  QVERIFY(hoursSentence(plan, assess(plan), language_)
              .contains(QStringLiteral("Nothing is on the backup subpanel")));
}

void AnswersTest::workingHoldsTheFigureAndWhatItCameFrom() {
  Working working;
  Step first;
  first.formula = FormulaId{"outage.capacity_now"};
  first.result = 10.0;
  working.add(first);
  Step other = first;
  other.result = 11.0;
  working.add(other);
  Step last;
  last.formula = FormulaId{"outage.usable"};
  last.result = 9.0;
  StepInput input;
  input.symbol = "C";
  input.step = 0;
  last.inputs.push_back(input);
  working.add(last);
  const std::vector<Step> steps = stepsFor(working, {QString(), QString(), {9.0}, {"outage"}});
  QCOMPARE(steps.size(), std::size_t{2});
  QCOMPARE(steps[0].result, 10.0);
  QCOMPARE(steps[1].inputs.front().step, StepIndex{0});
  // A figure no step has: the room's steps, rather than nothing.
  QCOMPARE(stepsFor(working, {QString(), QString(), {123.0}, {"outage"}}).size(), std::size_t{3});
  QVERIFY(stepsFor(working, {QString(), QString(), {9.0}, {"wiring"}}).empty());
}

QTEST_MAIN(AnswersTest)
#include "answers_test.moc"
