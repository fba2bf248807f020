#include "core/use/coincidence.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr std::array<Measure, 4> kMeasures = {Measure::apparentL1, Measure::apparentL2, Measure::apparent,
                                              Measure::watts};

// Beyond this many steps the lattice is made coarser, so that a mistyped load cannot exhaust memory or
// patience.
constexpr double kMostSteps = 20000.0;

struct Share {
  double size = 0.0;
  double on = 0.0;
};

double wattsOnLeg(const Draw& draw, const LegPower& power, std::size_t leg, const SystemVoltages& system) {
  double watts = power.leg[leg].real.count();
  if (system.wye && system.order == WyeOrder::unknown && draw.connection == Connection::lineToLine) {
    watts = std::max(watts, power.leg[1 - leg].real.count());
  }
  return std::max(0.0, watts);
}

}  // namespace

double shareOf(const Draw& draw, Measure measure, End end, const SystemVoltages& system) {
  const LegPower& power = powerAt(draw, end);
  switch (measure) {
    case Measure::apparentL1:
      return power.leg[0].apparent().count();
    case Measure::apparentL2:
      return power.leg[1].apparent().count();
    case Measure::wattsL1:
      return wattsOnLeg(draw, power, 0, system);
    case Measure::wattsL2:
      return wattsOnLeg(draw, power, 1, system);
    case Measure::apparent:
      return power.total().apparent().count();
    case Measure::watts:
      return std::max(0.0, power.total().real.count());
    case Measure::neutralL1:
      return power.lineToNeutral[0].apparent().count();
    case Measure::neutralL2:
      return power.lineToNeutral[1].apparent().count();
  }
  return 0.0;
}

std::vector<const Load*> loadsOf(const Plan& plan, const std::vector<Draw>& draws) {
  std::vector<const Load*> out;
  out.reserve(draws.size());
  for (const Draw& draw : draws) {
    const Load* found = nullptr;
    if (const Circuit* circuit = find(plan, draw.circuit)) {
      for (const Load& load : circuit->loads) {
        if (load.id == draw.load) found = &load;
      }
    }
    out.push_back(found);
  }
  return out;
}

std::vector<HourUse> usesOf(const Plan& plan, const std::vector<const Load*>& loads, int month, int hour) {
  const bool southern = plan.site->latitude && plan.site->latitude->count() < 0.0;
  std::vector<HourUse> out;
  out.reserve(loads.size());
  for (const Load* load : loads) {
    out.push_back(load != nullptr ? hourUse(*load, month, hour, southern)
                                  : HourUse{exactly(1.0), std::nullopt});
  }
  return out;
}

Distribution distributionOf(const std::vector<Draw>& draws, const std::vector<HourUse>& uses, Measure measure,
                            End end, const SystemVoltages& system) {
  thread_local std::vector<Share> shares;
  shares.clear();
  double total = 0.0;
  for (std::size_t i = 0; i < draws.size(); ++i) {
    const double size = shareOf(draws[i], measure, end, system);
    if (size <= 0.0) continue;
    total += size;
    shares.push_back({size, at(uses[i].on, end)});
  }
  std::sort(shares.begin(), shares.end(),
            [](const Share& a, const Share& b) { return a.size != b.size ? a.size < b.size : a.on < b.on; });
  Distribution sum(Distribution::kStep * std::max(1.0, std::ceil(total / Distribution::kStep / kMostSteps)));
  for (const Share& share : shares) sum.add(share.size, share.on);
  return sum;
}

BaseLoads::BaseLoads(const Plan& plan, const std::vector<Draw>& draws, const SystemVoltages& system,
                     int month, int hour)
    : draws_(&draws),
      system_(system),
      uses_(usesOf(plan, loadsOf(plan, draws), month, hour)),
      out_(draws.size(), false) {
  likely_.reserve(kMeasures.size());
  high_.reserve(kMeasures.size());
  for (const Measure measure : kMeasures) {
    likely_.emplace_back(distributionOf(draws, uses_, measure, End::likely, system));
    high_.emplace_back(distributionOf(draws, uses_, measure, End::high, system));
  }
}

Base BaseLoads::all() const { return base(std::nullopt); }
Base BaseLoads::without(std::size_t one) const { return base(one); }

Base BaseLoads::base(std::optional<std::size_t> without) const {
  Base out;
  LegPower average;
  for (std::size_t i = 0; i < draws_->size(); ++i) {
    if (out_[i] || i == without) continue;
    const Draw& draw = (*draws_)[i];
    average += draw.likely * uses_[i].on.likely;
    for (std::size_t leg = 0; leg < 2; ++leg)
      out.known[leg] = out.known[leg] && (draw.known || !draw.onLeg[leg]);
  }
  std::array<double, kMeasures.size()> likely{}, high{};
  for (std::size_t m = 0; m < kMeasures.size(); ++m) {
    if (without) {
      const Draw& gone = (*draws_)[*without];
      const Range<double>& on = uses_[*without].on;
      likely[m] = likely_[m].quantileWithout(shareOf(gone, kMeasures[m], End::likely, system_), on.likely,
                                             kLikelyPeakQuantile);
      high[m] = high_[m].quantileWithout(shareOf(gone, kMeasures[m], End::high, system_), on.high,
                                         kLikelyPeakQuantile);
    } else {
      likely[m] = likely_[m].quantile(kLikelyPeakQuantile);
      high[m] = high_[m].quantile(kLikelyPeakQuantile);
    }
  }
  const Currents flowing = currents(average, system_);
  for (std::size_t leg = 0; leg < 2; ++leg) {
    out.average[leg] = flowing.legMagnitude(leg == 0 ? Leg::l1 : Leg::l2);
    out.likely[leg] = VoltAmperes(likely[leg]) / system_.legToNeutral;
    out.high[leg] = VoltAmperes(high[leg]) / system_.legToNeutral;
  }
  out.averageTotal = average.total().real;
  out.averageApparent = average.total().apparent();
  out.likelyApparent = VoltAmperes(likely[2]);
  out.highApparent = VoltAmperes(high[2]);
  out.likelyTotal = Watts(likely[3]);
  out.highTotal = Watts(high[3]);
  return out;
}

BaseLoads BaseLoads::reduced(std::size_t one) const {
  BaseLoads out = *this;
  out.out_[one] = true;
  const Draw& gone = (*draws_)[one];
  for (std::size_t m = 0; m < kMeasures.size(); ++m) {
    out.likely_[m] =
        likely_[m].without(shareOf(gone, kMeasures[m], End::likely, system_), uses_[one].on.likely);
    out.high_[m] = high_[m].without(shareOf(gone, kMeasures[m], End::high, system_), uses_[one].on.high);
  }
  return out;
}

Base baseWithout(const Plan& plan, const std::vector<Draw>& draws, const SystemVoltages& system, int month,
                 int hour, const std::vector<LoadId>& without) {
  std::vector<Draw> others;
  for (const Draw& draw : draws) {
    if (std::find(without.begin(), without.end(), draw.load) == without.end()) others.push_back(draw);
  }
  return BaseLoads(plan, others, system, month, hour).all();
}

}  // namespace stayalight
