// The one door, on a house small enough to be worked out by hand. Leg and neutral sums follow from
// Kirchhoff's laws, the likely peak from counting all on-off states, the hours from the energy balance.

#include "core/assess/assess.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using namespace example;

struct HandHouse {
  Plan plan;
  PanelId main, backup;
  CircuitId lights, heater, pump, freezer;
};

// 6 kW, 25 A a leg, 10 kWh to a floor of a tenth; efficiency 94 % and 45 W idle.
HandHouse handHouse() {
  HandHouse house;
  Plan& plan = house.plan;
  house.main = addPanel(plan, PanelRole::main, "Main panel", 20);
  house.backup = addPanel(plan, PanelRole::backup, "Backup subpanel", 8);
  const auto exact = [](Load load) {
    load.running.grade = load.duty.grade = load.powerFactor.grade = Grade::measured;
    load.running.low = load.running.high = load.running.value;
    load.duty.low = load.duty.high = load.duty.value;
    load.powerFactor.low = load.powerFactor.high = load.powerFactor.value;
    return load;
  };
  house.lights = addCircuitWithLoad(plan, house.main, {Column::left, 1}, 1, 15, "Lights",
                                    exact(plainLoad("Lights", 600)));
  house.heater = addCircuitWithLoad(plan, house.main, {Column::left, 2}, 1, 20, "Pond heater",
                                    exact(plainLoad("Pond heater", 1200, 0.8, 0.5)));
  house.pump = addCircuitWithLoad(plan, house.main, {Column::right, 3}, 2, 20, "Well pump",
                                  exact(lineToLineLoad("Well pump", 1440, 1.0, 0.25)));
  Load freezer = exact(plainLoad("Freezer", 120, 1.0, 0.0));
  freezer = withStart(freezer, 15.0, 0.4, 1.0);
  freezer.lockedRotor.low = freezer.lockedRotor.high = freezer.lockedRotor.value;
  freezer.startTime.low = freezer.startTime.high = freezer.startTime.value;
  house.freezer = addCircuitWithLoad(plan, house.main, {Column::left, 5}, 1, 20, "Freezer", freezer);
  moveByHand(plan, house.lights, house.backup, {Column::left, 1});
  moveByHand(plan, house.heater, house.backup, {Column::left, 2});
  moveByHand(plan, house.pump, house.backup, {Column::left, 3});
  moveByHand(plan, house.freezer, house.backup, {Column::right, 1});

  Inverter& inverter = plan.inverter.edit();
  inverter.continuous = Watts(6000);
  inverter.legCurrent = AcAmperes(25);
  inverter.marginalEfficiency = Fraction(0.94);
  inverter.idle = BatteryWatts(45);
  OverloadPoint point;
  point.time = Seconds(5);
  point.legCurrent = AcAmperes(37.5);
  inverter.overload.push_back(point);
  Battery& battery = plan.battery.edit();
  battery.nominalKilowattHours = 10.0;
  battery.health = known<Fraction>(1.0, Grade::measured);
  battery.health.low = battery.health.high = Fraction(1.0);
  battery.floor = Fraction(0.1);
  battery.continuousCurrent = DcAmperes(200);
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  return house;
}

TEST(Assess, AddsLegsInWattsAndVarsAndTakesTheNeutralAsAPhasor) {
  const HandHouse house = handHouse();
  const Assessment result = assess(house.plan);
  const HourLoad& l1 = result.hour.leg[0];
  const HourLoad& l2 = result.hour.leg[1];
  // L1: lights 600 W, half the pump at a quarter of the time, the freezer never on by its duty.
  EXPECT_NEAR(l1.average.likely.count(), 600 + 0.25 * 720, 1e-9);
  EXPECT_NEAR(l1.averageCurrent.likely.count(), 780.0 / 120, 1e-9);
  // L2: the heater at half the time (900 var while on), half the pump.
  EXPECT_NEAR(l2.average.likely.count(), 0.5 * 1200 + 0.25 * 720, 1e-9);
  EXPECT_NEAR(l2.averageCurrent.likely.count(), std::hypot(780.0, 450.0) / 120, 1e-9);
  // Line-to-neutral parts 600 + 0j and 600 + 450j VA: the watts cancel, the vars do not.
  EXPECT_NEAR(result.hour.neutralAverage.count(), 450.0 / 120, 1e-9);
  EXPECT_NEAR(l1.connected.real.count(), 600 + 720 + 120, 1e-9);
  EXPECT_NEAR(l2.connectedCurrent.count(), std::hypot(1200.0 + 720, 900.0) / 120, 1e-9);
  EXPECT_NEAR(result.hour.total.average.likely.count(), 1560, 1e-9);
}

TEST(Assess, LikelyPeakIsTheQuantileOfAllStates) {
  const HandHouse house = handHouse();
  const Assessment result = assess(house.plan);
  // L1 is 600 VA with chance 0.75 and 1,320 VA with 0.25; L2 up to 1,500 + 720 VA with chance 0.125.
  EXPECT_NEAR(result.hour.leg[0].likelyPeakCurrent.likely.count(), 1320.0 / 120, 1e-9);
  EXPECT_NEAR(result.hour.leg[1].likelyPeakCurrent.likely.count(), 2220.0 / 120, 1e-9);
  EXPECT_EQ(result.hour.leg[1].verdict, Verdict::within);
  ASSERT_TRUE(result.hour.leg[1].oddsOver);
  EXPECT_DOUBLE_EQ(*result.hour.leg[1].oddsOver, 0.0);
}

TEST(Assess, AStartStandsOnTheLikelyPeakOfAllOthers) {
  const HandHouse house = handHouse();
  const Assessment result = assess(house.plan);
  ASSERT_EQ(result.starts.checks.size(), 1u);
  const auto& figure = result.starts.checks[0].leg[0];
  ASSERT_TRUE(figure);
  EXPECT_NEAR(figure->likelyBase.count(), 11.0, 1e-9);
  EXPECT_NEAR(figure->averageBase.count(), 6.5, 1e-9);
  EXPECT_NEAR(figure->likelySum.count(), 26.0, 1e-9);
  ASSERT_TRUE(figure->highLimit && figure->margin);
  // 0.4 s lies before the curve's first point, which then holds: 37.5 A.
  EXPECT_NEAR(figure->highLimit->count(), 37.5, 1e-9);
  EXPECT_NEAR(figure->margin->count(), 11.5, 1e-9);
  EXPECT_FALSE(result.starts.checks[0].leg[1]);
  // 15 A at 120 V and a power factor of one half, typical where none is entered, on the others' likely peak
  // in watts: 600 W and the pump's 1,440 W on L1 and L2, and the heater's 1,200 W. The curve's 37.5 A a leg
  // is one and a half of 6 kW.
  const auto& real = result.starts.checks[0].real;
  EXPECT_NEAR(real.likelyBase.count(), 600 + 1440 + 1200, 1e-9);
  EXPECT_NEAR(real.likelySum.count(), 3240 + 15 * 120 * 0.5, 1e-9);
  ASSERT_TRUE(real.highLimit && real.margin);
  EXPECT_NEAR(real.highLimit->count(), 9000, 1e-9);
  EXPECT_NEAR(real.margin->count(), 9000 - real.highSum.count(), 1e-9);
}

TEST(Assess, HoursFollowFromTheEnergyBalance) {
  const HandHouse house = handHouse();
  const Assessment result = assess(house.plan);
  ASSERT_TRUE(result.outage.known);
  const double hours = 10000.0 * 0.9 / (1560 / 0.94 + 45);
  EXPECT_NEAR(result.outage.runtime.likely.count(), hours, 1e-6);
  EXPECT_EQ(result.outage.endLikely.minutes(), static_cast<int>(std::lround(18 * 60 + hours * 60)) % 1440);
}

TEST(Assess, MovingACircuitBackTakesItsLoadOffTheLeg) {
  const HandHouse house = handHouse();
  const Result<Plan> without = sendBack(house.plan, std::array{house.pump});
  ASSERT_TRUE(without);
  const Assessment before = assess(house.plan), after = assess(without.value());
  EXPECT_NEAR(before.hour.leg[0].average.likely.count() - after.hour.leg[0].average.likely.count(), 180,
              1e-9);
  EXPECT_GT(after.outage.runtime.likely, before.outage.runtime.likely);
}

TEST(Assess, RecordingChangesNoAnswer) {
  const HandHouse house = handHouse();
  const Assessment plain = assess(house.plan), recorded = assess(house.plan, Circumstances{.record = true});
  EXPECT_TRUE(plain.working.empty());
  EXPECT_FALSE(recorded.working.empty());
  EXPECT_EQ(plain.hour.leg[0].likelyPeakCurrent, recorded.hour.leg[0].likelyPeakCurrent);
  EXPECT_EQ(plain.outage.runtime, recorded.outage.runtime);
  EXPECT_EQ(plain.findings.size(), recorded.findings.size());
}

TEST(Assess, BreakersShowTheirPolesAndBothReadings) {
  const HandHouse house = handHouse();
  const Assessment result = assess(house.plan);
  const Circuit& pump = *find(house.plan, house.pump);
  const auto figures = [](const std::vector<BreakerFigures>& all, BreakerId id) {
    return std::find_if(all.begin(), all.end(), [&](const BreakerFigures& f) { return f.breaker == id; });
  };
  const auto planned = figures(result.breakers, pump.planned);
  ASSERT_NE(planned, result.breakers.end());
  EXPECT_NEAR(planned->running[0].count(), 6.0, 1e-9);
  EXPECT_NEAR(planned->running[1].count(), 6.0, 1e-9);
  EXPECT_EQ(figures(result.breakers, pump.breaker), result.breakers.end());
  const auto before = figures(result.breakersBefore, pump.breaker);
  ASSERT_NE(before, result.breakersBefore.end());
  EXPECT_NEAR(before->connected[0].count(), 720.0, 1e-9);
}

TEST(Assess, OnAnOrdinaryDayTheMovedLoadComesBackThroughTheFeeder) {
  HandHouse house = handHouse();
  const BreakerId feeder =
      addBreaker(house.plan, house.main, {Column::right, 8}, 2, 50, Feeds::feeder, Stage::fresh);
  editBreaker(house.plan, feeder).feedsPanel = house.backup;
  const Assessment result = assess(house.plan);
  ASSERT_EQ(result.panels.size(), 2u);
  EXPECT_NEAR(result.panels[0].connected[0].real.count(), 0.0, 1e-9);
  EXPECT_NEAR(result.panels[0].fed[0].real.count(), 600 + 720 + 120, 1e-9);
  EXPECT_NEAR(result.panels[0].fed[1].apparent().count(), std::hypot(1920.0, 900.0), 1e-9);
  // Row 8 is on L2, row 9 on L1.
  ASSERT_EQ(result.breakers.back().breaker, feeder);
  EXPECT_NEAR(result.breakers.back().connected[1].count(), 1440.0, 1e-9);
  EXPECT_NEAR(result.breakers.back().running[0].count(), std::hypot(1920.0, 900.0) / 120, 1e-9);
}

TEST(Assess, APlanWithoutABackupSubpanelOrAnythingElseIsAnswered) {
  for (const Plan& plan : {Plan{}, newPlan()}) {
    const Assessment result = assess(plan, Circumstances{.record = true});
    EXPECT_FALSE(result.outage.known);
    EXPECT_TRUE(result.starts.checks.empty());
  }
  EXPECT_FALSE(assess(Plan{}).hasBackup);
}

TEST(Assess, AManagedLoadThatStaysOffTakesNoPartInTheOutage) {
  Plan plan = example::exampleHouseMoved();
  const Assessment before = assess(plan);
  const Circuit& office = *find(plan, example::circuitNamed(plan, "Office"));
  ASSERT_FALSE(office.loads.empty());
  ManagedLoad& row = plan.transfer.edit().managed.emplace_back();
  row.load = office.loads.front().id;
  row.offInOutage = Answer::no;
  EXPECT_EQ(assess(plan).hour.total.connected.real, before.hour.total.connected.real);
  plan.transfer.edit().managed.front().offInOutage = Answer::yes;
  const Assessment after = assess(plan);
  EXPECT_LT(after.hour.total.connected.real.count(), before.hour.total.connected.real.count());
  EXPECT_GE(after.outage.runtime.likely, before.outage.runtime.likely);
}

}  // namespace
}  // namespace stayalight
