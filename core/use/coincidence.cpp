#include "core/use/coincidence.h"

#include <algorithm>

namespace stayalight {
namespace {

// Beyond this many steps the lattice is made coarser, so that a mistyped load cannot exhaust memory or
// patience.
constexpr double kMostSteps = 20000.0;

struct Share {
  double size = 0.0;
  double on = 0.0;
};

double wattsOnLeg(const LegPower& power, std::size_t leg, bool eitherOrder) {
  const double watts = power.leg[leg].real.count();
  return std::max(0.0, eitherOrder ? std::max(watts, power.leg[1 - leg].real.count()) : watts);
}

// On a wye another power factor takes watts from one leg to the other; the end of a leg's watts is then that
// of the likely power factor.
double wattsOnLeg(const Draw& draw, End end, std::size_t leg, const SystemVoltages& system) {
  const bool eitherOrder =
      system.wye && system.order == WyeOrder::unknown && draw.connection == Connection::lineToLine;
  const double likely = wattsOnLeg(draw.likely, leg, eitherOrder);
  const double there = wattsOnLeg(powerAt(draw, end), leg, eitherOrder);
  return end == End::high ? std::max(likely, there) : end == End::low ? std::min(likely, there) : likely;
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
      return wattsOnLeg(draw, end, 0, system);
    case Measure::wattsL2:
      return wattsOnLeg(draw, end, 1, system);
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

}  // namespace stayalight
