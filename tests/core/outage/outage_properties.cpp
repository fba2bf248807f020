// What holds for every battery and every day.

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "tests/core/outage/outage_plan.h"

namespace stayalight {
namespace {

using outage_plan::figures;
using outage_plan::hourly;

double number(double low, double high) {
  return low + (high - low) * static_cast<double>(*rc::gen::inRange(0, 100001)) / 100000.0;
}

Plan anyPlan() {
  Plan made = outage_plan::plan();
  Battery& battery = made.battery.edit();
  battery.nominalKilowattHours = number(1, 40);
  battery.packs = *rc::gen::inRange(1, 4);
  battery.health.value = battery.health.low = battery.health.high = Fraction(number(0.5, 1.0));
  battery.floor = Fraction(number(0, 0.5));
  battery.reserve = Fraction(number(0, 0.6));
  Inverter& inverter = made.inverter.edit();
  inverter.units = *rc::gen::inRange(1, 3);
  if (*rc::gen::arbitrary<bool>()) {
    inverter.continuous = Watts(number(2000, 8000));
    for (const auto& [load, efficiency] :
         {std::pair{0.05, 0.82}, {0.1, 0.89}, {0.2, 0.93}, {0.5, 0.95}, {1.0, 0.94}}) {
      EfficiencyPoint point;
      point.load = Fraction(load);
      point.efficiency = Fraction(efficiency);
      inverter.efficiency.push_back(point);
    }
  } else {
    inverter.marginalEfficiency = Fraction(number(0.8, 1.0));
    inverter.idle = BatteryWatts(number(0, 150));
  }
  Scenario& scenario = made.scenario.edit();
  scenario.start = TimeOfDay(*rc::gen::inRange(0, 1440));
  scenario.startCharge = Fraction(number(0, 1));
  return made;
}

std::array<double, 24> anyDay() {
  std::array<double, 24> watts{};
  for (double& w : watts) w = number(0, 3000);
  return watts;
}

RC_GTEST_PROP(OutageProperties, MoreLoadNeverLastsLonger, ()) {
  const Plan made = anyPlan();
  std::array<double, 24> watts = anyDay();
  const Hours before = figures(made, hourly(watts)).runtime.likely;
  const auto hour = static_cast<std::size_t>(*rc::gen::inRange(0, 24));
  watts[hour] += number(0, 2000);
  RC_ASSERT(figures(made, hourly(watts)).runtime.likely.count() <= before.count() + 1e-9);
}

RC_GTEST_PROP(OutageProperties, MoreIdleDrawNeverLastsLonger, ()) {
  Plan made = anyPlan();
  made.inverter.edit().efficiency.clear();
  made.inverter.edit().marginalEfficiency = Fraction(0.93);
  made.inverter.edit().idle = BatteryWatts(30);
  const std::array<double, 24> watts = anyDay();
  const Hours before = figures(made, hourly(watts)).runtime.likely;
  made.inverter.edit().idle = BatteryWatts(30 + number(0, 200));
  RC_ASSERT(figures(made, hourly(watts)).runtime.likely.count() <= before.count() + 1e-9);
}

RC_GTEST_PROP(OutageProperties, LessHealthNeverLastsLonger, ()) {
  Plan made = anyPlan();
  const std::array<double, 24> watts = anyDay();
  const Hours before = figures(made, hourly(watts)).runtime.likely;
  Battery& battery = made.battery.edit();
  const Fraction worn = *battery.health.value * number(0.5, 1.0);
  battery.health.value = battery.health.low = battery.health.high = worn;
  RC_ASSERT(figures(made, hourly(watts)).runtime.likely.count() <= before.count() + 1e-9);
}

RC_GTEST_PROP(OutageProperties, EnergyIsNeitherLostNorMade, ()) {
  const Plan made = anyPlan();
  const OutageFigures out = figures(made, hourly(anyDay()));
  for (const OutageRun* run : {&out.low, &out.likely, &out.high}) {
    const double drawn = run->drawn.count();
    RC_ASSERT(std::abs(drawn - run->delivered.count() - run->idle.count() - run->losses.count()) <=
              1e-6 * (1 + drawn));
    const double fell =
        (run->points.front().charge - run->points.back().charge) * out.energy.capacityNow->likely.count();
    RC_ASSERT(std::abs(drawn - fell) <= 1e-6 * (1 + drawn));
    RC_ASSERT(run->losses.count() >= -1e-9);
    RC_ASSERT(run->points.size() <= 300u);
    RC_ASSERT(run->end <= kOutageHorizon);
  }
}

RC_GTEST_PROP(OutageProperties, ShortRunIsShortestAndMarksStandInOrder, ()) {
  Plan made = anyPlan();
  made.battery.edit().health.low = *made.battery->health.value * number(0.6, 1.0);
  DayProfile profile = hourly(anyDay());
  for (Range<Watts>& hour : profile.total) {
    hour.low = hour.likely * number(0.3, 1.0);
    hour.high = hour.likely * number(1.0, 2.0);
  }
  const OutageFigures out = figures(made, profile);
  RC_ASSERT(out.runtime.low.count() <= out.runtime.likely.count() + 1e-9);
  RC_ASSERT(out.runtime.likely.count() <= out.runtime.high.count() + 1e-9);
  if (out.likely.toReserve) RC_ASSERT(out.likely.toReserve->count() <= out.likely.end.count() + 1e-9);
}

}  // namespace
}  // namespace stayalight
