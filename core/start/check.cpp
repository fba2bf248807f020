#include <algorithm>

#include "core/start/moment.h"
#include "core/start/working.h"
#include "core/use/hour_loads.h"

namespace stayalight {
namespace {

using Set = std::vector<const RecordedStart*>;

/// The smaller of both in each figure. The likely peak of the others without two loads is at most that
/// without one.
Base lesser(const Base& a, const Base& b) {
  Base out = a;
  for (std::size_t leg = 0; leg < 2; ++leg) {
    out.average[leg] = std::min(a.average[leg], b.average[leg]);
    out.likely[leg] = std::min(a.likely[leg], b.likely[leg]);
    out.high[leg] = std::min(a.high[leg], b.high[leg]);
  }
  out.likelyTotal = std::min(a.likelyTotal, b.likelyTotal);
  out.highTotal = std::min(a.highTotal, b.highTotal);
  out.likelyApparent = std::min(a.likelyApparent, b.likelyApparent);
  out.highApparent = std::min(a.highApparent, b.highApparent);
  return out;
}

/// Orders checks by their smallest margin and, where two have the same, by the next one; without limits by
/// the VA they ask for.
using Order = std::vector<double>;
Order order(const StartCheck& check) {
  Order margins = sortedMargins(check);
  if (margins.empty()) margins.push_back(-check.total.highSum.count());
  return margins;
}
/// The smallest margin alone bounds it: what follows is not known before the exact figures are.
double smallest(const StartCheck& check) { return order(check).front(); }

class Starts {
 public:
  Starts(const Plan& plan, const HourLoads& hour, const InverterLimits& limits, Working* working,
         const Tables& tables)
      : hour_(hour),
        draws_(hour.draws()),
        system_(hour.system()),
        limits_{limits, *plan.inverter, *plan.battery},
        working_(working),
        starts_(recordedStarts(plan, hour.draws(), hour.system(), working, tables)) {}

  StartFigures figures() {
    StartFigures out;
    if (starts_.empty()) return out;
    for (const RecordedStart& start : starts_) {
      out.motors.push_back(start.motor);
      bases_.push_back(baseWithout(hour_, start.draw));
      const Set alone{&start};
      const CheckedSet checked = checkSet(alone, bases_.back(), draws_, system_, limits_);
      if (working_ != nullptr)
        recordCheck(alone, checked, bases_.back(), draws_, system_, limits_, *working_);
      out.checks.push_back(checked.check);
    }
    out.worstPair = worstPair();
    out.allAtOnce = allAtOnce();
    return out;
  }

 private:
  struct Candidate {
    double bound = 0.0;
    std::size_t a = 0, b = 0;
  };

  /// Exact figures are worked out only for pairs that may still be the worst.
  std::optional<StartCheck> worstPair() {
    std::vector<Candidate> candidates;
    for (std::size_t a = 0; a < starts_.size(); ++a) {
      for (std::size_t b = a + 1; b < starts_.size() && starts_[a].motor.automatic; ++b) {
        if (!starts_[b].motor.automatic) continue;
        const Base most = lesser(bases_[a], bases_[b]);
        candidates.push_back(
            {smallest(checkSet({&starts_[a], &starts_[b]}, most, draws_, system_, limits_).check), a, b});
      }
    }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const auto& x, const auto& y) { return x.bound < y.bound; });
    std::optional<CheckedSet> worst;
    Set worstSet;
    Base worstBase;
    Order least;
    for (const Candidate& candidate : candidates) {
      if (worst && candidate.bound > least.front()) break;
      const Set pair{&starts_[candidate.a], &starts_[candidate.b]};
      const Base base = baseWithout(hour_, pair[0]->draw, pair[1]->draw);
      CheckedSet checked = checkSet(pair, base, draws_, system_, limits_);
      Order margins = order(checked.check);
      if (worst && margins >= least) continue;
      least = std::move(margins);
      worst = std::move(checked);
      worstSet = pair;
      worstBase = base;
    }
    if (!worst) return std::nullopt;
    if (working_ != nullptr) recordCheck(worstSet, *worst, worstBase, draws_, system_, limits_, *working_);
    return worst->check;
  }

  /// After a dead interval every motor starts and everything else runs.
  std::optional<StartCheck> allAtOnce() const {
    Base base;
    LegPower average;
    double likelyWatts = 0.0, highWatts = 0.0;
    for (std::size_t i = 0; i < draws_.size(); ++i) {
      if (std::any_of(starts_.begin(), starts_.end(),
                      [i](const RecordedStart& start) { return start.draw == i; }))
        continue;
      const Draw& draw = draws_[i];
      average += draw.likely * hour_.uses()[i].on.likely;
      for (std::size_t leg = 0; leg < 2; ++leg) {
        base.likely[leg] += draw.likely.leg[leg].apparent() / system_.legToNeutral;
        base.high[leg] += draw.high.leg[leg].apparent() / system_.legToNeutral;
        base.known[leg] = base.known[leg] && (draw.known || !draw.onLeg[leg]);
      }
      base.likelyApparent += draw.likely.total().apparent();
      base.highApparent += draw.high.total().apparent();
      likelyWatts += draw.likely.total().real.count();
      highWatts += draw.high.total().real.count();
    }
    base.likelyTotal = Watts(likelyWatts);
    base.highTotal = Watts(highWatts);
    base.average = {legCurrent(average, system_, Leg::l1), legCurrent(average, system_, Leg::l2)};
    base.averageTotal = average.total().real;
    base.averageApparent = average.total().apparent();
    Set all;
    for (const RecordedStart& start : starts_) all.push_back(&start);
    const CheckedSet checked = checkSet(all, base, draws_, system_, limits_);
    if (working_ != nullptr) recordCheck(all, checked, base, draws_, system_, limits_, *working_);
    return checked.check;
  }

  const HourLoads& hour_;
  const std::vector<Draw>& draws_;
  const SystemVoltages& system_;
  StartLimits limits_;
  Working* working_;
  std::vector<RecordedStart> starts_;
  std::vector<Base> bases_;
};

}  // namespace

StartFigures startFigures(const Plan& plan, const HourLoads& hour, const InverterLimits& limits,
                          Working* working, const Tables& tables) {
  return Starts(plan, hour, limits, working, tables).figures();
}

}  // namespace stayalight
