#include <gtest/gtest.h>

#include "core/use/hour_loads.h"
#include "tests/core/example_plans.h"
#include "tests/core/working_check.h"

namespace stayalight {
namespace {

using namespace example;
const SystemVoltages kSplit{};

Load measured(std::string name, double watts, double powerFactor, double duty, std::optional<double> starts) {
  Load load = plainLoad(std::move(name), watts, powerFactor, duty);
  load.running = {Watts(watts), Grade::measured, Watts(watts), Watts(watts), {}, {}, {}};
  load.powerFactor = {
      Fraction(powerFactor), Grade::measured, Fraction(powerFactor), Fraction(powerFactor), {}, {}, {}};
  load.duty = {Fraction(duty), Grade::measured, Fraction(duty), Fraction(duty), {}, {}, {}};
  if (starts) load.startsPerHour = {PerHour(*starts), Grade::measured, {}, {}, {}, {}, {}};
  return load;
}

struct Figures {
  Plan plan;
  std::vector<Draw> all;
  HourFigures hour;
};
Figures figuresOf(const std::vector<Load>& loads, const InverterLimits& limits = {},
                  Working* working = nullptr, const SystemVoltages& system = kSplit) {
  Figures out;
  out.plan = emptyHouse();
  for (std::size_t i = 0; i < loads.size(); ++i) {
    addCircuitWithLoad(out.plan, kMain, {Column::left, static_cast<std::int32_t>(2 * i + 1)}, 2, 20,
                       loads[i].name, loads[i]);
  }
  out.all = draws(out.plan, kMain, Reading::planned, system);
  out.hour = hourFigures(HourLoads(out.plan, out.all, system, 1, 18), limits, working);
  return out;
}

TEST(HourFigures, TwoLoadsThatOverlap) {
  // A refrigerator (1.5 starts an hour, 35 % on) and a sump pump (6, 10 %) meet 3.5 % of the time, and one
  // carries the other over 1.5 x 0.10 + 6 x 0.35 = 2.25 times an hour, 54 times a day (common practice, no
  // source; arithmetic).
  InverterLimits limits;
  limits.leg = AcAmperes(10);
  const Figures f = figuresOf(
      {measured("Refrigerator", 600, 1, 0.35, 1.5), measured("Sump pump", 800, 1, 0.10, 6)}, limits);
  const HourLoad& l1 = f.hour.leg[0];
  EXPECT_NEAR(*l1.oddsOver, 0.035, 1e-12);
  EXPECT_NEAR(*l1.timesOver, 2.25, 1e-12);
  EXPECT_EQ(l1.verdict, Verdict::over);  // 3.5 % is more than the 1 % that a likely peak leaves
  EXPECT_NEAR(l1.likelyPeakCurrent.likely.count(), 1400.0 / 120, 1e-9);
  EXPECT_NEAR(l1.average.likely.count(), 600 * 0.35 + 80, 1e-9);
  EXPECT_EQ(f.hour.leg[1].verdict, Verdict::within);
  EXPECT_NEAR(f.hour.neutralWorst.count(), 1400.0 / 120, 1e-9);
}

TEST(HourFigures, WithoutStartsTheTimesAreNotKnown) {
  InverterLimits limits;
  limits.leg = AcAmperes(10);
  const Figures f = figuresOf(
      {measured("Refrigerator", 600, 1, 0.35, std::nullopt), measured("Pump", 800, 1, 0.10, 6)}, limits);
  EXPECT_TRUE(f.hour.leg[0].oddsOver);
  EXPECT_FALSE(f.hour.leg[0].timesOver);
}

TEST(HourFigures, ALoadNobodyKnowsIsNeverWithin) {
  Load unknown = measured("Unknown", 0, 1, 1, std::nullopt);
  unknown.running = {};
  InverterLimits limits;
  limits.leg = AcAmperes(1000);
  limits.total = Watts(1e6);
  const Figures f = figuresOf({unknown}, limits);
  EXPECT_FALSE(f.hour.allKnown);
  EXPECT_EQ(f.hour.leg[0].verdict, Verdict::notKnown);
  EXPECT_EQ(f.hour.leg[1].verdict, Verdict::within);
  EXPECT_EQ(f.hour.total.verdict, Verdict::notKnown);
  EXPECT_FALSE(f.hour.leg[0].oddsOver);
}

TEST(HourFigures, WattsAndVoltAmperesAreHeldApart) {
  InverterLimits limits;
  limits.leg = AcAmperes(10);
  limits.total = Watts(900);
  limits.totalApparent = VoltAmperes(1100);
  const Figures f = figuresOf({measured("Motor", 840, 0.7, 1, std::nullopt)}, limits);
  EXPECT_EQ(f.hour.leg[0].verdict, Verdict::within);
  EXPECT_EQ(f.hour.total.verdict, Verdict::over);
  EXPECT_NEAR(f.hour.total.likelyPeak.likely.count(), 840, 1e-9);
  EXPECT_NEAR(f.hour.total.likelyPeakApparent.likely.count(), 1200, 1e-9);
}

TEST(HourFigures, EveryRecordedStepHolds) {
  for (const SystemVoltages& system :
       {kSplit, SystemVoltages{AcVolts(120), AcVolts(208), true, WyeOrder::unknown, false},
        SystemVoltages{AcVolts(120), AcVolts(208), true, WyeOrder::l2Leads, false},
        SystemVoltages{AcVolts(120), AcVolts(0), false, WyeOrder::unknown, true}}) {
    Load pump = measured("Pump", 900, 0.7, 0.2, 3);
    pump.connection = Connection::lineToLine;
    pump.ratedVoltage = 240;
    Load lamp = measured("Lamp", 300, 0.9, 0.5, std::nullopt);
    lamp.pole = 2;
    Working working;
    const Figures f = figuresOf({measured("Fridge", 150, 0.8, 0.4, 2), pump, lamp}, {}, &working, system);
    EXPECT_GT(working.steps().size(), 15u);
    testing_working::expectWorkingHolds(working);
    // The same arithmetic with and without the record.
    const HourFigures again = hourFigures(HourLoads(f.plan, f.all, system, 1, 18), {});
    EXPECT_EQ(again.leg[0].averageCurrent.likely, f.hour.leg[0].averageCurrent.likely);
    // The average current of each leg is among the results.
    for (const HourLoad& leg : f.hour.leg) {
      EXPECT_TRUE(std::any_of(working.steps().begin(), working.steps().end(), [&](const Step& step) {
        return std::abs(step.result - leg.averageCurrent.likely.count()) < 1e-9;
      }));
    }
  }
}

TEST(HourFigures, TheHighEndOfALegsWattsIsNeverBelowItsLikelyOne) {
  // On a wye a lower power factor takes watts from one leg to the other: P/2 - Q/(2 sqrt 3) shrinks as Q
  // grows.
  for (const WyeOrder order : {WyeOrder::l2Lags, WyeOrder::l2Leads}) {
    Load pump = measured("Pump", 3000, 0.8, 1.0, std::nullopt);
    pump.connection = Connection::lineToLine;
    pump.ratedVoltage = 208;
    pump.powerFactor.low = Fraction(0.6);
    pump.powerFactor.high = Fraction(0.9);
    const Figures f =
        figuresOf({pump}, {}, nullptr, SystemVoltages{AcVolts(120), AcVolts(208), true, order, false});
    for (const HourLoad& leg : f.hour.leg) {
      EXPECT_LE(leg.average.low, leg.average.likely);
      EXPECT_LE(leg.average.likely, leg.average.high);
      EXPECT_LE(leg.likelyPeak.likely, leg.likelyPeak.high);
    }
  }
}

TEST(BaseWithout, LeavesTheLoadOut) {
  const Figures f =
      figuresOf({measured("A", 600, 1, 1, {}), measured("B", 500, 1, 1, {}), measured("C", 100, 1, 0.3, {})});
  const Base base = baseWithout(HourLoads(f.plan, f.all, kSplit, 1, 18), 1);
  EXPECT_NEAR(base.likely[0].count(), 700.0 / 120, 1e-9);
  EXPECT_NEAR(base.average[0].count(), 630.0 / 120, 1e-9);
  EXPECT_NEAR(base.averageTotal.count(), 630, 1e-9);
  EXPECT_NEAR(base.likelyTotal.count(), 700, 1e-9);
}

TEST(DayProfile, AddsIndependentFactsInQuadrature) {
  Load a = measured("A", 300, 1, 1, {});
  a.running.low = Watts(270);
  a.running.high = Watts(330);
  Load b = measured("B", 400, 1, 1, {});
  b.running.low = Watts(360);
  b.running.high = Watts(480);
  const Figures f = figuresOf({a, b});
  const DayProfile day = dayProfile(f.all, dayUses(f.plan, f.all, 1), kSplit);
  EXPECT_NEAR(day.total[5].likely.count(), 700, 1e-9);
  EXPECT_NEAR(day.total[5].low.count(), 700 - 50, 1e-9);  // 30 and 40
  EXPECT_NEAR(day.total[5].high.count(), 700 + std::hypot(30, 80), 1e-9);
  EXPECT_NEAR(day.current[5][0].count(), 700.0 / 120, 1e-9);
}

TEST(DayPeaks, AreTheLikelyPeaksOfTheHours) {
  const Plan plan = exampleHouseMoved();
  const std::vector<Draw> all = draws(plan, kBackup, Reading::planned, kSplit);
  const DayPeaks peaks = dayPeaks(all, dayUses(plan, all, 1), kSplit);
  for (const int hour : {0, 7, 18}) {
    const HourFigures figures = hourFigures(HourLoads(plan, all, kSplit, 1, hour), {});
    for (std::size_t leg = 0; leg < 2; ++leg) {
      EXPECT_EQ(peaks[static_cast<std::size_t>(hour)][leg], figures.leg[leg].likelyPeakCurrent.likely);
    }
  }
}

}  // namespace
}  // namespace stayalight
