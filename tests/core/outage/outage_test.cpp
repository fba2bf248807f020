// Runs of an outage: when the floor is reached, what ends a run, and what has to be entered.

#include "core/outage/outage.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/outage/outage_plan.h"

namespace stayalight {
namespace {

using outage_plan::constant;
using outage_plan::figures;
using outage_plan::hourly;
using outage_plan::plan;

void setEfficiency(Plan& made, double marginal, double idle) {
  made.inverter.edit().marginalEfficiency = Fraction(marginal);
  made.inverter.edit().idle = BatteryWatts(idle);
}

TEST(OutageRuntime, MarginalEfficiencyAndIdleApart) {
  // Energy balance, computed: 9000 Wh / (650 / 0.94 + 45) W = 12.22 h.
  const OutageFigures out = figures(plan(), constant(exactly(Watts(650))));
  ASSERT_TRUE(out.known);
  EXPECT_NEAR(out.runtime.likely.count(), 12.22, 0.005);
  EXPECT_EQ(out.likely.reason, OutageEnd::floorReached);
}

TEST(OutageRuntime, LabelEfficiencyHoldsTheIdleDraw) {
  // The same with 94 % as a label figure: 9000 Wh / 691.5 W = 13.02 h.
  Plan made = plan();
  made.inverter.edit().continuous = Watts(6500);
  EfficiencyPoint point;
  point.load = Fraction(0.1);
  point.efficiency = Fraction(0.94);
  made.inverter.edit().efficiency.push_back(point);
  EXPECT_NEAR(figures(made, constant(exactly(Watts(650)))).runtime.likely.count(), 13.02, 0.005);
}

TEST(OutageRuntime, SmallBatteryOfAVendorsArticle) {
  // Public battery vendor's article: hours = V x Ah x efficiency x depth / W; 12 V 100 Ah at 600 W: 0.85 h at
  // 85 % and half depth, 1.44 h at 90 % and 80 % depth.
  struct Case {
    double efficiency, depth, hours;
  };
  for (const Case& c : {Case{0.85, 0.5, 0.85}, Case{0.90, 0.8, 1.44}}) {
    Plan made = plan();
    made.battery.edit().nominalKilowattHours = 1.2;
    made.battery.edit().floor = Fraction(1.0 - c.depth);
    setEfficiency(made, c.efficiency, 0);
    EXPECT_NEAR(figures(made, constant(exactly(Watts(600)))).runtime.likely.count(), c.hours, 0.001);
  }
}

TEST(OutageRuntime, RealAgainstNaive) {
  // Worked example of the trade (common practice, no source): 15 kWh, health 90 %, floor 10 %, 600 W: 17.4 h
  // with 94 % marginal and 60 W idle.
  Plan made = plan();
  Battery& battery = made.battery.edit();
  battery.nominalKilowattHours = 15.0;
  battery.health.value = battery.health.low = battery.health.high = Fraction(0.9);
  setEfficiency(made, 0.94, 60);
  EXPECT_NEAR(figures(made, constant(exactly(Watts(600)))).runtime.likely.count(), 17.4, 0.05);
}

TEST(OutageRuntime, ApplianceTableByHours) {
  // Public inverter owner's guide, battery-sizing worksheet: seven appliances, 1227.5 Wh in 5.4 h, 227.3 W on
  // average.
  const double watts[] = {115, 150, 90, 300, 750, 100, 800};
  const double hours[] = {3, 1, 0.25, 0.25, 0.3, 0.1, 0.5};
  double energy = 0, time = 0;
  for (std::size_t i = 0; i < std::size(watts); ++i) {
    energy += watts[i] * hours[i];
    time += hours[i];
  }
  EXPECT_NEAR(energy, 1227.5, 0.05);
  // A battery that holds just this, without losses and floor, carries the average for those hours.
  Plan made = plan();
  made.battery.edit().nominalKilowattHours = 1.2275;
  made.battery.edit().floor = Fraction(0);
  setEfficiency(made, 1.0, 0);
  const OutageFigures out = figures(made, constant(exactly(Watts(227.3))));
  EXPECT_NEAR(out.runtime.likely.count(), time, 0.005);
  EXPECT_NEAR(out.likely.delivered.count(), 1227.5, 0.05);
}

TEST(OutageRuntime, EqualsASimulationSecondBySecond) {
  // An independent way to the same number: step through the outage in seconds.
  Plan made = plan();
  made.scenario.edit().start = TimeOfDay(17 * 60 + 23);
  std::array<double, 24> watts{};
  for (std::size_t h = 0; h < 24; ++h) watts[h] = 150 + 70.0 * static_cast<double>((h * 7) % 11);
  const OutageFigures out = figures(made, hourly(watts));
  double left = 10000.0 * 0.9;
  long seconds = 0;
  while (left > 0) {
    const auto hour = static_cast<std::size_t>((17 * 3600 + 23 * 60 + seconds) / 3600 % 24);
    left -= (watts[hour] / 0.94 + 45) / 3600.0;
    ++seconds;
  }
  EXPECT_NEAR(out.runtime.likely.count() * 3600.0, static_cast<double>(seconds), 1.5);
}

TEST(OutageRuntime, IsExactWhereThePieceEndsOnTheHour) {
  Plan made = plan();
  setEfficiency(made, 1.0, 0);
  made.battery.edit().nominalKilowattHours = 1.0;  // 900 Wh usable
  made.scenario.edit().start = TimeOfDay(18 * 60 + 30);
  std::array<double, 24> watts{};
  watts[18] = 800;  // 400 Wh to 19:00
  watts[19] = 500;  // and 500 Wh to 20:00
  watts[20] = 5000;
  const OutageFigures out = figures(made, hourly(watts));
  EXPECT_NEAR(out.runtime.likely.count(), 1.5, 1e-12);
  EXPECT_EQ(out.endLikely, TimeOfDay(20 * 60));
}

TEST(OutageRuntime, ClockTimeWrapsOverMidnight) {
  Plan made = plan();
  setEfficiency(made, 1.0, 0);
  const OutageFigures out = figures(made, constant(exactly(Watts(1000))));  // nine hours from 18:00
  EXPECT_EQ(out.endLikely, TimeOfDay(3 * 60));
}

TEST(OutageMarks, ReserveAndFloorAreTwoMarksOnOneCurve) {
  Plan made = plan();
  setEfficiency(made, 1.0, 0);
  const OutageFigures out = figures(made, constant(exactly(Watts(1000))));
  ASSERT_TRUE(out.likely.toReserve);
  EXPECT_NEAR(out.likely.toReserve->count(), 8.0, 1e-9);  // from 100 to 20 %
  EXPECT_NEAR(out.runtime.likely.count(), 9.0, 1e-9);     // and on to 10 %
}

TEST(OutageMarks, AStartAtTheReserveHasNoTimeToIt) {
  Plan made = plan();
  made.scenario.edit().startCharge = Fraction(0.2);
  const OutageFigures out = figures(made, constant(exactly(Watts(1000))));
  EXPECT_EQ(out.likely.toReserve, Hours(0));
  EXPECT_GT(out.runtime.likely.count(), 0.5);
}

TEST(OutageMarks, AStartAtOrBelowTheFloorHasNoHours) {
  for (const double start : {0.1, 0.05, 0.0}) {
    Plan made = plan();
    made.scenario.edit().startCharge = Fraction(start);
    const OutageFigures out = figures(made, constant(exactly(Watts(500))));
    EXPECT_EQ(out.runtime.likely, Hours(0)) << start;
    EXPECT_EQ(out.likely.reason, OutageEnd::floorReached);
    EXPECT_EQ(out.endLikely, made.scenario->start);
  }
}

TEST(OutagePoints, StandAtEventsAndFallMonotonously) {
  Plan made = plan();
  made.scenario.edit().start = TimeOfDay(18 * 60 + 20);
  const OutageFigures out = figures(made, constant(exactly(Watts(100))));  // very long: 60 h and more
  const auto& points = out.likely.points;
  ASSERT_GE(points.size(), 3u);
  EXPECT_LE(points.size(), 300u);
  EXPECT_EQ(points.front().at, Hours(0));
  EXPECT_EQ(points.front().charge, 1.0);
  EXPECT_NEAR(points[1].at.count(), 40.0 / 60.0, 1e-12);  // to the next whole clock hour
  for (std::size_t i = 1; i < points.size(); ++i) {
    EXPECT_GT(points[i].at, points[i - 1].at);
    EXPECT_LT(points[i].charge, points[i - 1].charge);
  }
  EXPECT_EQ(points.back().at, out.likely.end);
  EXPECT_EQ(points.back().charge, 0.1);
  EXPECT_EQ(points.back().load, Watts(0));  // dark
}

TEST(OutagePoints, ABigBatteryEndsAtTheHorizon) {
  Plan made = plan();
  made.battery.edit().packs = 64;
  const OutageFigures out = figures(made, constant(exactly(Watts(10))));
  EXPECT_EQ(out.likely.reason, OutageEnd::beyondHorizon);
  EXPECT_EQ(out.likely.end, kOutageHorizon);
  EXPECT_LE(out.likely.points.size(), 300u);
}

TEST(OutageEnds, AtTheStepWhoseAverageIsOverALimit) {
  std::array<double, 24> watts{};
  watts.fill(600);
  watts[21] = 3000;  // 25 A on L1, three hours into the outage
  struct Case {
    const char* name;
    InverterLimits limits;
    std::optional<DcAmperes> pack;
    OutageEnd reason;
  };
  InverterLimits leg, total, apparent, wide;
  leg.leg = AcAmperes(24.9);
  total.total = Watts(2999);
  apparent.totalApparent = VoltAmperes(2999);
  wide.leg = AcAmperes(25);
  wide.total = Watts(3000);
  wide.totalApparent = VoltAmperes(3000);
  // (3000 / 0.94 + 45) W at 44 V are 73.6 A.
  for (const Case& c :
       {Case{"leg", leg, {}, OutageEnd::legOverload}, Case{"total", total, {}, OutageEnd::totalOverload},
        Case{"VA", apparent, {}, OutageEnd::totalOverload},
        Case{"battery", wide, DcAmperes(73), OutageEnd::batteryCurrent},
        Case{"none", wide, DcAmperes(74), OutageEnd::floorReached}}) {
    Plan made = plan();
    made.inverter.edit().lowestInputVoltage = DcVolts(44);
    made.battery.edit().continuousCurrent = c.pack;
    const OutageFigures out = figures(made, hourly(watts), c.limits);
    EXPECT_EQ(out.likely.reason, c.reason) << c.name;
    if (c.reason != OutageEnd::floorReached) {
      EXPECT_NEAR(out.likely.end.count(), 3.0, 1e-12) << c.name;
      EXPECT_EQ(out.likely.points.back().load, Watts(3000)) << c.name;
    }
  }
}

TEST(OutageEnds, AtOnceWhereTheFirstHourIsOver) {
  InverterLimits limits;
  limits.leg = AcAmperes(2);
  const OutageFigures out = figures(plan(), constant(exactly(Watts(600))), limits);
  EXPECT_EQ(out.likely.reason, OutageEnd::legOverload);
  EXPECT_EQ(out.runtime.likely, Hours(0));
}

TEST(OutageSpread, LowIsTheShortRun) {
  const OutageFigures out = figures(plan(), constant({Watts(500), Watts(650), Watts(900)}));
  EXPECT_LT(out.runtime.low, out.runtime.likely);
  EXPECT_LT(out.runtime.likely, out.runtime.high);
  // With health exact the runs take the ends of the power: 9000 / (P / 0.94 + 45).
  EXPECT_NEAR(out.runtime.low.count(), 9000 / (900 / 0.94 + 45), 1e-9);
  EXPECT_NEAR(out.runtime.high.count(), 9000 / (500 / 0.94 + 45), 1e-9);
}

TEST(OutageSpread, HealthAloneMovesTheEnergyByItsWholeSpread) {
  Plan made = plan();
  made.battery.edit().health.low = Fraction(0.8);
  const OutageFigures out = figures(made, constant(exactly(Watts(650))));
  EXPECT_NEAR(out.runtime.low / out.runtime.likely, 0.8, 1e-9);
}

TEST(OutageSpread, IndependentFactsAddInQuadrature) {
  // Power +30 %, health -40 %: combined 50 %. Each moves by its share, 3/5 and 4/5 of its own deviation.
  Plan made = plan();
  setEfficiency(made, 1.0, 0);
  made.battery.edit().health.low = Fraction(0.6);
  const OutageFigures out = figures(made, constant({Watts(1000), Watts(1000), Watts(1300)}));
  const double expected = 9.0 * (1 - 0.4 * 0.8) / (1 + 0.3 * 0.6);
  EXPECT_NEAR(out.runtime.low.count(), expected, 1e-9);
  // Milder than both ends at once, harsher than either alone.
  EXPECT_GT(out.runtime.low.count(), 9.0 * 0.6 / 1.3);
  EXPECT_LT(out.runtime.low.count(), 9.0 / 1.3);
}

TEST(OutageMissing, NamesWhatHasToBeEntered) {
  struct Case {
    const char* key;
    void (*takeAway)(Plan&);
  };
  const Case cases[] = {
      {"outage.missing.nominal", [](Plan& p) { p.battery.edit().nominalKilowattHours.reset(); }},
      {"outage.missing.health", [](Plan& p) { p.battery.edit().health = {}; }},
      {"outage.missing.temperature", [](Plan& p) { p.battery.edit().place = BatteryPlace::garage; }},
      {"outage.missing.too_cold",
       [](Plan& p) { p.battery.edit().cellTemperature = Temperature::celsius(-25); }},
      {"outage.missing.efficiency", [](Plan& p) { p.inverter.edit().marginalEfficiency.reset(); }},
      {"outage.missing.idle", [](Plan& p) { p.inverter.edit().idle.reset(); }},
      {"outage.missing.rated_output",
       [](Plan& p) {
         EfficiencyPoint point;
         point.load = Fraction(0.5);
         point.efficiency = Fraction(0.9);
         p.inverter.edit().efficiency.push_back(point);
         p.inverter.edit().continuous.reset();
       }},
      {"outage.missing.loads", [](Plan& p) { p.circuits.clear(); }},
      {"outage.missing.backup", [](Plan& p) { p.panels.pop_back(); }},
  };
  for (const Case& c : cases) {
    Plan made = plan();
    ASSERT_TRUE(figures(made, constant(exactly(Watts(100)))).known);
    c.takeAway(made);
    const OutageFigures out = figures(made, constant(exactly(Watts(100))));
    EXPECT_FALSE(out.known) << c.key;
    ASSERT_EQ(out.missing.size(), 1u) << c.key;
    EXPECT_EQ(out.missing.front().id.key, c.key);
    EXPECT_EQ(out.likely.reason, OutageEnd::notKnown);
    EXPECT_EQ(render(out.missing.front(), plainEnglish()).find('<'), std::string::npos) << c.key;
  }
}

TEST(OutageMissing, ALoadWithoutWattsIsNamedAndBoundedByItsBreaker) {
  Plan made = plan();
  Load nobodyRead;
  nobodyRead.name = "Freezer";
  example::addCircuitWithLoad(made, example::kBackup, {Column::left, 2}, 1, 20, "Freezer", nobodyRead);
  const OutageFigures out = figures(made, constant({Watts(100), Watts(100), Watts(2000)}));
  EXPECT_TRUE(out.known);
  ASSERT_EQ(out.missing.size(), 1u);
  EXPECT_EQ(render(out.missing.front(), plainEnglish()), "Running watts of Freezer");
}

}  // namespace
}  // namespace stayalight
