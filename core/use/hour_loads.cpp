#include "core/use/hour_loads.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr std::array<Measure, 4> kBaseSums = {Measure::apparentL1, Measure::apparentL2, Measure::apparent,
                                              Measure::watts};

/// A load as part of a sum.
struct Part {
  double share, on;
};
Part partOf(const HourLoads& hour, std::size_t draw, Measure measure, End end) {
  return {shareOf(hour.draws()[draw], measure, end, hour.system()), at(hour.uses()[draw].on, end)};
}

/// `peakOf(measure, end)` is the likely peak of what `runs(draw)` leaves.
template <class Runs, class PeakOf>
Base base(const HourLoads& hour, const Runs& runs, const PeakOf& peakOf) {
  const SystemVoltages& system = hour.system();
  Base out;
  LegPower average;
  for (std::size_t i = 0; i < hour.draws().size(); ++i) {
    if (!runs(i)) continue;
    const Draw& draw = hour.draws()[i];
    average += draw.likely * hour.uses()[i].on.likely;
    for (std::size_t leg = 0; leg < 2; ++leg)
      out.known[leg] = out.known[leg] && (draw.known || !draw.onLeg[leg]);
  }
  std::array<double, kBaseSums.size()> likely{}, high{};
  for (std::size_t m = 0; m < kBaseSums.size(); ++m) {
    likely[m] = peakOf(kBaseSums[m], End::likely);
    high[m] = peakOf(kBaseSums[m], End::high);
  }
  for (std::size_t leg = 0; leg < 2; ++leg) {
    out.average[leg] = legCurrent(average, system, leg == 0 ? Leg::l1 : Leg::l2);
    out.likely[leg] = VoltAmperes(likely[leg]) / system.legToNeutral;
    out.high[leg] = VoltAmperes(high[leg]) / system.legToNeutral;
  }
  out.averageTotal = average.total().real;
  out.averageApparent = average.total().apparent();
  out.likelyApparent = VoltAmperes(likely[2]);
  out.highApparent = VoltAmperes(high[2]);
  out.likelyTotal = Watts(likely[3]);
  out.highTotal = Watts(high[3]);
  return out;
}

}  // namespace

HourLoads::HourLoads(const Plan& plan, const std::vector<Draw>& draws, const SystemVoltages& system,
                     int month, int hour)
    : draws_(draws),
      system_(system),
      hour_(hour),
      loads_(loadsOf(plan, draws)),
      uses_(usesOf(plan, loads_, month, hour)) {
  for (const End end : {End::low, End::likely, End::high}) {
    bool& reactive = reactive_[static_cast<std::size_t>(end)];
    reactive = system.wye || std::any_of(draws.begin(), draws.end(), [end](const Draw& draw) {
                 return powerAt(draw, end).total().reactive.count() != 0.0;
               });
    for (std::size_t m = 0; m < kMeasures; ++m) {
      const auto measure = static_cast<Measure>(m);
      if (&kept(measure, end) != &sums_[m]) continue;
      const Distribution sum = distributionOf(draws, uses_, measure, end, system);
      if (end == End::low)
        sums_[m].lowPeak = sum.quantile(kLikelyPeakQuantile);
      else
        (end == End::likely ? sums_[m].likely : sums_[m].high).emplace(sum);
    }
  }
}

const HourLoads::Sum& HourLoads::kept(Measure measure, End end) const {
  // Where nothing is reactive, watts and volt-amperes are one distribution.
  if (!reactive_[static_cast<std::size_t>(end)]) {
    if (measure == Measure::wattsL1) measure = Measure::apparentL1;
    if (measure == Measure::wattsL2) measure = Measure::apparentL2;
    if (measure == Measure::watts) measure = Measure::apparent;
  }
  return sums_[static_cast<std::size_t>(measure)];
}

const Cumulative& HourLoads::sum(Measure measure, End end) const {
  const Sum& all = kept(measure, end);
  return end == End::high ? *all.high : *all.likely;
}

double HourLoads::peak(Measure measure, End end) const {
  return end == End::low ? kept(measure, end).lowPeak : sum(measure, end).quantile(kLikelyPeakQuantile);
}

Base baseOf(const HourLoads& hour) {
  return base(
      hour, [](std::size_t) { return true; },
      [&](Measure measure, End end) { return hour.peak(measure, end); });
}

Base baseWithout(const HourLoads& hour, std::size_t one) {
  return base(
      hour, [&](std::size_t draw) { return draw != one; },
      [&](Measure measure, End end) {
        const Part gone = partOf(hour, one, measure, end);
        return hour.sum(measure, end).quantileWithout(gone.share, gone.on, kLikelyPeakQuantile);
      });
}

Base baseWithout(const HourLoads& hour, std::size_t one, std::size_t other) {
  return base(
      hour, [&](std::size_t draw) { return draw != one && draw != other; },
      [&](Measure measure, End end) {
        const Part first = partOf(hour, one, measure, end);
        const Part second = partOf(hour, other, measure, end);
        return hour.sum(measure, end)
            .without(first.share, first.on)
            .quantileWithout(second.share, second.on, kLikelyPeakQuantile);
      });
}

}  // namespace stayalight
