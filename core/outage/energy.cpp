#include <algorithm>
#include <cmath>
#include <vector>

#include "core/outage/outage.h"

namespace stayalight {
namespace {

struct TemperaturePoint {
  double celsius;
  Range<double> share;
};
// Lithium iron phosphate cells, discharge at a fifth to a half of the capacity an hour to the usual cut-off:
// low, typical and high share. Common practice, no source: pages of the trade agree within these, least of
// all in the cold.
constexpr std::array<TemperaturePoint, 8> kCapacityByTemperature = {{{-20, {0.30, 0.55, 0.70}},
                                                                     {-10, {0.55, 0.70, 0.85}},
                                                                     {0, {0.70, 0.82, 0.90}},
                                                                     {5, {0.80, 0.88, 0.93}},
                                                                     {10, {0.90, 0.94, 0.96}},
                                                                     {15, {0.94, 0.97, 0.98}},
                                                                     {25, {1.00, 1.00, 1.00}},
                                                                     {45, {0.98, 1.00, 1.02}}}};
constexpr double kIndoorsCelsius = 25;

double between(double x, double x0, double y0, double x1, double y1) {
  return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
}

}  // namespace

std::optional<Range<double>> capacityAtTemperature(Temperature cells) {
  const double celsius = cells.inCelsius();
  if (celsius < kCapacityByTemperature.front().celsius) return std::nullopt;
  for (std::size_t i = 1; i < kCapacityByTemperature.size(); ++i) {
    const TemperaturePoint& a = kCapacityByTemperature[i - 1];
    const TemperaturePoint& b = kCapacityByTemperature[i];
    const auto share = [&](double Range<double>::*end) {
      return between(celsius, a.celsius, a.share.*end, b.celsius, b.share.*end);
    };
    if (celsius <= b.celsius)
      return Range<double>{share(&Range<double>::low), share(&Range<double>::likely),
                           share(&Range<double>::high)};
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
  const auto factor = cells ? capacityAtTemperature(*cells) : std::nullopt;
  energy.temperatureFactor = factor ? factor->likely : 0.0;
  if (energy.nominal && health && factor) {
    const double likely = energy.health.likely * factor->likely;
    // Health and cold are facts of their own: their shares of what is likely add in quadrature.
    const auto apart = [&](double ofHealth, double ofCold) {
      return std::hypot(ofHealth / energy.health.likely - 1.0, ofCold / factor->likely - 1.0);
    };
    const double low = std::max(0.0, 1.0 - apart(energy.health.low, factor->low));
    const double high = 1.0 + apart(energy.health.high, factor->high);
    energy.capacityNow = {*energy.nominal * likely * low, *energy.nominal * likely,
                          *energy.nominal * likely * high};
    const double share = std::max(0.0, energy.startCharge - energy.floor);
    energy.usable = {energy.capacityNow->low * share, energy.capacityNow->likely * share,
                     energy.capacityNow->high * share};
  }
  return energy;
}

}  // namespace stayalight
