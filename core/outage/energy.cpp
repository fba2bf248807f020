#include <algorithm>
#include <vector>

#include "core/outage/outage.h"

namespace stayalight {
namespace {

struct TemperaturePoint {
  double celsius;
  double share;
};
// Lithium iron phosphate cells, discharge at a fifth to a half of the capacity an hour to the usual cut-off,
// typical values. Common practice, no source: pages of the trade agree within several points, least of all in
// the cold.
constexpr std::array<TemperaturePoint, 8> kCapacityByTemperature = {
    {{-20, 0.55}, {-10, 0.70}, {0, 0.82}, {5, 0.88}, {10, 0.94}, {15, 0.97}, {25, 1.00}, {45, 1.00}}};
constexpr double kIndoorsCelsius = 25;

double between(double x, double x0, double y0, double x1, double y1) {
  return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
}

}  // namespace

std::optional<double> capacityAtTemperature(Temperature cells) {
  const double celsius = cells.inCelsius();
  if (celsius < kCapacityByTemperature.front().celsius) return std::nullopt;
  for (std::size_t i = 1; i < kCapacityByTemperature.size(); ++i) {
    const TemperaturePoint& a = kCapacityByTemperature[i - 1];
    const TemperaturePoint& b = kCapacityByTemperature[i];
    if (celsius <= b.celsius) return between(celsius, a.celsius, a.share, b.celsius, b.share);
  }
  return kCapacityByTemperature.back().share;
}

std::optional<Temperature> cellTemperature(const Battery& battery) {
  if (battery.cellTemperature) return battery.cellTemperature;
  const bool indoors =
      battery.place.is(BatteryPlace::conditioned) || battery.place.is(BatteryPlace::basement);
  return indoors ? std::optional(Temperature::celsius(kIndoorsCelsius)) : std::nullopt;
}

UsableEnergy usableEnergy(const Battery& battery, Fraction startCharge) {
  UsableEnergy energy;
  energy.startCharge = std::clamp(startCharge.count(), 0.0, 1.0);
  energy.floor = std::clamp(battery.floor.count(), 0.0, 1.0);
  energy.reserve = std::clamp(battery.reserve.count(), 0.0, 1.0);
  if (battery.nominalKilowattHours) {
    energy.nominal = BatteryWattHours(1000.0 * *battery.nominalKilowattHours * std::max(1, battery.packs));
  }
  const std::optional<Range<Fraction>> health = spread(FactKind::health, battery.health);
  if (health) energy.health = {health->low.count(), health->likely.count(), health->high.count()};
  const std::optional<Temperature> cells = cellTemperature(battery);
  const std::optional<double> factor = cells ? capacityAtTemperature(*cells) : std::nullopt;
  energy.temperatureFactor = factor.value_or(0.0);
  if (energy.nominal && health && factor) {
    const auto now = [&](double healthNow) { return *energy.nominal * healthNow * *factor; };
    energy.capacityNow = {now(energy.health.low), now(energy.health.likely), now(energy.health.high)};
    const double share = std::max(0.0, energy.startCharge - energy.floor);
    energy.usable = {energy.capacityNow->low * share, energy.capacityNow->likely * share,
                     energy.capacityNow->high * share};
  }
  return energy;
}

}  // namespace stayalight
