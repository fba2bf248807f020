#include <algorithm>
#include <cmath>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

/// Points of the label's curve that say something, by rising load.
std::vector<EfficiencyPoint> usablePoints(const Inverter& inverter) {
  std::vector<EfficiencyPoint> points;
  for (const EfficiencyPoint& point : inverter.efficiency) {
    if (point.load.count() > 0 && point.efficiency.count() > 0) points.push_back(point);
  }
  std::stable_sort(points.begin(), points.end(),
                   [](const EfficiencyPoint& a, const EfficiencyPoint& b) { return a.load < b.load; });
  return points;
}

}  // namespace

std::optional<BatteryWatts> batteryPower(const Inverter& inverter, Watts load) {
  const double watts = std::max(0.0, load.count());
  const double units = std::max(1, inverter.units);
  if (!inverter.efficiency.empty()) {
    const std::vector<EfficiencyPoint> points = usablePoints(inverter);
    if (points.empty() || !inverter.continuous || inverter.continuous->count() <= 0) return std::nullopt;
    const double rated = inverter.continuous->count() * units;
    const double share = watts / rated;
    const EfficiencyPoint& first = points.front();
    if (share < first.load.count()) {
      const double firstWatts = first.load.count() * rated;
      return BatteryWatts(watts + firstWatts / first.efficiency.count() - firstWatts);
    }
    double efficiency = points.back().efficiency.count();
    for (std::size_t i = 1; i < points.size(); ++i) {
      if (share > points[i].load.count()) continue;
      const EfficiencyPoint& before = points[i - 1];
      const double width = points[i].load.count() - before.load.count();
      const double along = width > 0 ? (share - before.load.count()) / width : 1.0;
      efficiency = std::lerp(before.efficiency.count(), points[i].efficiency.count(), along);
      break;
    }
    return BatteryWatts(watts / efficiency);
  }
  if (!inverter.marginalEfficiency || inverter.marginalEfficiency->count() <= 0 || !inverter.idle)
    return std::nullopt;
  return BatteryWatts(watts / inverter.marginalEfficiency->count() + units * inverter.idle->count());
}

}  // namespace stayalight
