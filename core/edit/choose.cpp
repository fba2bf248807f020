#include "core/edit/choose.h"

#include <array>
#include <cmath>
#include <tuple>

namespace stayalight::editing {
namespace {

constexpr MessageId kNoRoom{"edit.no_room"};
constexpr MessageId kNoOtherLeg{"edit.no_room_on_other_leg"};

// Watts by leg. Only the choice of a leg looks at them, so power factors and hours of use do not matter.
using LegWatts = std::array<double, 2>;

double watts(const Load& load) {
  if (load.running.value) return load.running.value->count();
  if (load.runningCurrent.value) {
    return load.runningCurrent.value->count() * load.ratedVoltage *
           load.powerFactor.value.value_or(Fraction(1.0)).count();
  }
  return 0.0;
}

LegWatts wattsByLeg(const Plan& plan, const Panel& panel, const std::vector<BreakerId>& ignoring) {
  LegWatts legs{};
  for (const auto& circuit : plan.circuits) {
    const Breaker* breaker = find(plan, circuit->planned);
    if (breaker == nullptr || breaker->panel != panel.id || contains(ignoring, breaker->id)) continue;
    const std::vector<Leg> poles = poleLegs(panel, placementOf(*breaker));
    for (const Load& load : circuit->loads) {
      if (load.connection.is(Connection::lineToLine)) {
        for (double& leg : legs) leg += watts(load) / 2;
      } else {
        const std::size_t pole = load.pole == 2 && poles.size() == 2 ? 1 : 0;
        legs[index(poles[pole])] += watts(load);
      }
    }
  }
  return legs;
}

// Smaller is better. Milliwatts, so that sums in another order compare equal.
struct Score {
  int apart = 0;             ///< members of a group that no handle tie can join
  long long heavierLeg = 0;  ///< of a group: the heavier leg with the group on it
  long long leg = 0;         ///< of a single: what its leg carries already
  std::size_t place = 0;     ///< sum of the places in the order of spaces
  friend bool operator<(const Score& a, const Score& b) {
    return std::tie(a.apart, a.heavierLeg, a.leg, a.place) < std::tie(b.apart, b.heavierLeg, b.leg, b.place);
  }
};

long long milliwatts(double value) { return std::llround(value * 1000.0); }

struct Candidate {
  Placement placement;
  std::vector<Leg> legs;
  std::size_t place = 0;
};

bool adjacent(const Placement& one, const Placement& other) {
  if (one.panel != other.panel || one.position.column != other.position.column) return false;
  const std::int32_t top = std::min(one.position.row, other.position.row);
  const Placement& upper = one.position.row == top ? one : other;
  const Placement& lower = one.position.row == top ? other : one;
  return lower.position.row == upper.position.row + upper.poles;
}

bool overlaps(const Placement& one, const Placement& other) {
  const std::vector<SpacePosition> mine = poleSpaces(one);
  const std::vector<SpacePosition> theirs = poleSpaces(other);
  return std::any_of(mine.begin(), mine.end(), [&](SpacePosition space) { return contains(theirs, space); });
}

// What stands of a group so far while places are tried.
struct Standing {
  std::vector<Placement> places;
  std::array<int, 2> hots{};
  LegWatts watts{};

  void add(const Placement& place, const std::vector<Leg>& legs, double load) {
    places.push_back(place);
    for (const Leg leg : legs) {
      ++hots[index(leg)];
      watts[index(leg)] += load / static_cast<double>(legs.size());
    }
  }
  // A hot must go to the leg with fewer hots of its group, or the shared neutral carries their sum.
  [[nodiscard]] bool opposite(const std::vector<Leg>& legs) const {
    return legs.size() != 1 || hots[index(legs[0])] <= hots[index(otherLeg(legs[0]))];
  }
  [[nodiscard]] bool apart(const Placement& place) const {
    return !places.empty() && std::none_of(places.begin(), places.end(),
                                           [&](const Placement& other) { return adjacent(place, other); });
  }
};

class Chooser {
 public:
  Chooser(const Plan& plan, const Panel& panel, const MovingGroup& group,
          const std::vector<BreakerId>& ignoring)
      : group_(group) {
    const std::vector<SpacePosition> order = allSpaces(panel);
    for (const std::int32_t poles : {1, 2}) {
      for (const Placement& placement : landings(plan, panel.id, poles, ignoring)) {
        const auto at = std::find(order.begin(), order.end(), placement.position);
        candidates_[static_cast<std::size_t>(poles - 1)].push_back(
            {placement, poleLegs(panel, placement), static_cast<std::size_t>(at - order.begin())});
      }
    }
    start_.watts = wattsByLeg(plan, panel, ignoring);
    for (const CircuitId member : group.staying) {
      const Breaker* breaker = find(plan, find(plan, member)->planned);
      start_.add(placementOf(*breaker), poleLegs(panel, placementOf(*breaker)), 0.0);
    }
    alone_ = group.movers.size() == 1 && group.staying.empty();
  }

  // The best whole set, trying each place of the first mover (or the landing) and the best for each further
  // one.
  [[nodiscard]] std::vector<Placement> best(const std::optional<Placement>& landing) const {
    std::vector<Placement> chosen;
    std::optional<Score> chosenScore;
    for (const Candidate& first : candidatesOf(group_.movers.front())) {
      if (landing && first.placement != *landing) continue;
      if (!start_.opposite(first.legs)) continue;
      Standing standing = start_;
      Score score = take(standing, group_.movers.front(), first);
      std::vector<Placement> places = {first.placement};
      for (std::size_t i = 1; i < group_.movers.size(); ++i) {
        const Candidate* next = bestNext(standing, group_.movers[i]);
        if (next == nullptr) break;
        const Score more = take(standing, group_.movers[i], *next);
        score.apart += more.apart;
        score.place += more.place;
        places.push_back(next->placement);
      }
      if (places.size() < group_.movers.size()) continue;
      if (!alone_) {
        score.leg = 0;
        score.heavierLeg = milliwatts(std::max(standing.watts[0], standing.watts[1]));
      }
      if (!chosenScore || score < *chosenScore) {
        chosenScore = score;
        chosen = std::move(places);
      }
    }
    return chosen;
  }

  [[nodiscard]] bool anyFor(const Mover& mover) const { return !candidatesOf(mover).empty(); }

 private:
  [[nodiscard]] const std::vector<Candidate>& candidatesOf(const Mover& mover) const {
    return candidates_[mover.poles == 2 ? 1 : 0];
  }

  [[nodiscard]] Score scoreOf(const Standing& standing, const Candidate& candidate) const {
    Score score;
    score.apart = standing.apart(candidate.placement) ? 1 : 0;
    if (candidate.legs.size() == 1) score.leg = milliwatts(standing.watts[index(candidate.legs[0])]);
    score.place = candidate.place;
    return score;
  }

  [[nodiscard]] Score take(Standing& standing, const Mover& mover, const Candidate& candidate) const {
    const Score score = scoreOf(standing, candidate);
    standing.add(candidate.placement, candidate.legs, mover.watts);
    return score;
  }

  [[nodiscard]] const Candidate* bestNext(const Standing& standing, const Mover& mover) const {
    const Candidate* best = nullptr;
    std::optional<Score> bestScore;
    for (const Candidate& candidate : candidatesOf(mover)) {
      if (!standing.opposite(candidate.legs)) continue;
      if (std::any_of(standing.places.begin(), standing.places.end(),
                      [&](const Placement& taken) { return overlaps(taken, candidate.placement); })) {
        continue;
      }
      const Score score = scoreOf(standing, candidate);
      if (!bestScore || score < *bestScore) {
        bestScore = score;
        best = &candidate;
      }
    }
    return best;
  }

  const MovingGroup& group_;
  std::array<std::vector<Candidate>, 2> candidates_;
  Standing start_;
  bool alone_ = true;
};

}  // namespace

double connectedWatts(const Circuit& circuit) {
  double sum = 0.0;
  for (const Load& load : circuit.loads) sum += watts(load);
  return sum;
}

Result<std::vector<Placement>> choosePlaces(const Plan& plan, PanelId panel, const MovingGroup& group,
                                            const std::vector<BreakerId>& ignoring,
                                            std::optional<SpacePosition> landing) {
  const Panel& record = *find(plan, panel);
  std::optional<Placement> first;
  if (landing) {
    first = Placement{panel, *landing, Half::whole, group.movers.front().poles};
    if (auto reason = refusal(plan, *first, ignoring)) return *reason;
  }
  const Chooser chooser(plan, record, group, ignoring);
  std::vector<Placement> places = chooser.best(first);
  if (!places.empty()) return places;
  for (const Mover& mover : group.movers) {
    if (!chooser.anyFor(mover)) return say(kNoRoom, record.name, nameOf(plan, mover.breaker));
  }
  if (group.movers.size() == 1 && group.staying.empty()) {
    return say(kNoRoom, record.name, nameOf(plan, group.movers.front().breaker));
  }
  return say(kNoOtherLeg, record.name, nameOf(plan, group.movers.front().breaker));
}

}  // namespace stayalight::editing
