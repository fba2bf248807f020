#pragma once

// A small plan and profiles made by hand, so that these tests rest on no other room's figures. The house is
// made up.

#include <array>
#include <cstddef>

#include "core/outage/outage.h"
#include "tests/core/example_plans.h"

namespace stayalight::outage_plan {

/// A battery of 10 kWh, new at 25 C, used down to 10 %; an inverter without limits, 94 % marginal, 45 W idle.
inline Plan plan() {
  Plan made = example::emptyHouse();
  example::addCircuitWithLoad(made, example::kBackup, {Column::left, 1}, 1, 20, "Refrigerator",
                              example::plainLoad("Refrigerator", 100));
  Battery& battery = made.battery.edit();
  battery.nominalKilowattHours = 10.0;
  battery.health.value = battery.health.low = battery.health.high = Fraction(1.0);
  battery.health.grade = Grade::measured;
  battery.floor = Fraction(0.1);
  battery.reserve = Fraction(0.2);
  Inverter& inverter = made.inverter.edit();
  inverter.marginalEfficiency = Fraction(0.94);
  inverter.idle = BatteryWatts(45);
  Scenario& scenario = made.scenario.edit();
  scenario.start = TimeOfDay(18 * 60);
  scenario.startCharge = Fraction(1.0);
  return made;
}

/// The load of one hour, all on L1, at unity power factor.
inline void setHour(DayProfile& profile, std::size_t hour, Range<Watts> watts) {
  profile.total[hour] = watts;
  profile.leg[hour] = {watts.likely, Watts(0)};
  profile.current[hour] = {AcAmperes(watts.likely.count() / 120.0), AcAmperes(0)};
}
inline DayProfile constant(Range<Watts> watts) {
  DayProfile profile;
  for (std::size_t hour = 0; hour < 24; ++hour) setHour(profile, hour, watts);
  return profile;
}
inline DayProfile hourly(const std::array<double, 24>& watts) {
  DayProfile profile;
  for (std::size_t hour = 0; hour < 24; ++hour) setHour(profile, hour, exactly(Watts(watts[hour])));
  return profile;
}

inline OutageFigures figures(const Plan& plan, const DayProfile& profile, const InverterLimits& limits = {},
                             Working* working = nullptr) {
  return outageFigures(plan, *plan.scenario, profile, DayPeaks{}, limits, working);
}

}  // namespace stayalight::outage_plan
