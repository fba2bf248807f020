#include "core/transfer/battery_output.h"

#include <algorithm>

namespace stayalight {

std::optional<Watts> batteryOutput(const Inverter& inverter, const Battery& battery) {
  if (!battery.continuousCurrent || !inverter.lowestInputVoltage || !inverter.continuous) return std::nullopt;
  const double available =
      std::max(1, battery.packs) * battery.continuousCurrent->count() * inverter.lowestInputVoltage->count();
  double low = 0.0, high = inverter.continuous->count() * std::max(1, inverter.units);
  const auto drawn = [&](double watts) { return batteryPower(inverter, Watts(watts)); };
  if (!drawn(high)) return std::nullopt;
  if (drawn(high)->count() <= available) return Watts(high);
  if (drawn(low)->count() >= available) return Watts(0.0);
  // The draw rises with the load.
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2.0;
    (drawn(middle)->count() <= available ? low : high) = middle;
  }
  return Watts(low);
}

}  // namespace stayalight
