#include <algorithm>
#include <cmath>

#include "core/use/coincidence.h"

namespace stayalight {

DayUses dayUses(const Plan& plan, const std::vector<Draw>& draws, int month) {
  const std::vector<const Load*> loads = loadsOf(plan, draws);
  DayUses out;
  for (int hour = 0; hour < 24; ++hour)
    out[static_cast<std::size_t>(hour)] = usesOf(plan, loads, month, hour);
  return out;
}

DayProfile dayProfile(const std::vector<Draw>& draws, const DayUses& uses, const SystemVoltages& system) {
  DayProfile out;
  for (std::size_t h = 0; h < 24; ++h) {
    LegPower average;
    // Variance of the mean power: watts and duty of each load are facts of their own, and add in quadrature.
    double below = 0.0;
    double above = 0.0;
    const auto add = [&](double low, double high) {
      below += low * low;
      above += high * high;
    };
    for (std::size_t i = 0; i < draws.size(); ++i) {
      const Range<double>& on = uses[h][i].on;
      const Range<Watts>& watts = draws[i].watts;
      average += draws[i].likely * on.likely;
      for (const Leg leg : {Leg::l1, Leg::l2}) {
        const Measure onLeg = leg == Leg::l1 ? Measure::wattsL1 : Measure::wattsL2;
        out.leg[h][index(leg)] += Watts(shareOf(draws[i], onLeg, End::likely, system) * on.likely);
      }
      add((watts.likely - watts.low).count() * on.likely, (watts.high - watts.likely).count() * on.likely);
      add(watts.likely.count() * (on.likely - on.low), watts.likely.count() * (on.high - on.likely));
    }
    for (const Leg leg : {Leg::l1, Leg::l2}) out.current[h][index(leg)] = legCurrent(average, system, leg);
    const Watts likely = average.total().real;
    out.total[h] = {std::max(Watts(0.0), likely - Watts(std::sqrt(below))), likely,
                    likely + Watts(std::sqrt(above))};
  }
  return out;
}

DayPeaks dayPeaks(const std::vector<Draw>& draws, const DayUses& uses, const SystemVoltages& system) {
  constexpr std::array<Measure, 2> measures = {Measure::apparentL1, Measure::apparentL2};
  std::array<std::array<std::vector<double>, 2>, 24> chances;
  DayPeaks out{};
  for (std::size_t h = 0; h < 24; ++h) {
    for (std::size_t leg = 0; leg < 2; ++leg) {
      for (std::size_t i = 0; i < draws.size(); ++i) {
        if (draws[i].onLeg[leg]) chances[h][leg].push_back(uses[h][i].on.likely);
      }
      const auto same = std::find_if(chances.begin(), chances.begin() + static_cast<std::ptrdiff_t>(h),
                                     [&](const auto& earlier) { return earlier[leg] == chances[h][leg]; });
      const auto before = static_cast<std::size_t>(same - chances.begin());
      out[h][leg] = before < h
                        ? out[before][leg]
                        : VoltAmperes(distributionOf(draws, uses[h], measures[leg], End::likely, system)
                                          .quantile(kLikelyPeakQuantile)) /
                              system.legToNeutral;
    }
  }
  return out;
}

}  // namespace stayalight
