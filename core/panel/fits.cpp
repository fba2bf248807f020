// What stands where, and whether one more breaker fits.

#include <algorithm>

#include "core/panel/names.h"
#include "core/panel/spaces.h"

namespace stayalight {
namespace {

constexpr MessageId kNoPanel{"panel.no_such_panel"};
constexpr MessageId kNoSpace{"panel.no_such_space"};
constexpr MessageId kNoShape{"panel.no_such_shape"};
constexpr MessageId kLastRow{"panel.below_last_row"};
constexpr MessageId kTaken{"panel.taken"};
constexpr MessageId kSameLeg{"panel.poles_on_one_leg"};
constexpr MessageId kNoTandem{"panel.no_tandem"};
constexpr MessageId kTooManyPoles{"panel.too_many_poles"};

// Who has the place already.
constexpr MessageId kByCircuit{"panel.by_circuit"};
constexpr MessageId kByOldBreaker{"panel.by_old_breaker"};

Message nameOf(const Plan& plan, const Breaker& breaker) {
  if (const Circuit* circuit = circuitOn(plan, breaker.id, Reading::planned))
    return say(kByCircuit, circuit->name);
  if (const Circuit* circuit = circuitOn(plan, breaker.id, Reading::before))
    return say(kByOldBreaker, circuit->name);
  return feedsInSentence(breaker.feeds.valueOr(Feeds::nothing));
}

bool contains(const std::vector<BreakerId>& list, BreakerId id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

bool overlap(const Placement& one, const Placement& other) {
  if (one.panel != other.panel) return false;
  const std::vector<HalfSpace> mine = coveredHalves(one);
  const std::vector<HalfSpace> theirs = coveredHalves(other);
  return std::any_of(mine.begin(), mine.end(), [&](const HalfSpace& half) {
    return std::find(theirs.begin(), theirs.end(), half) != theirs.end();
  });
}

}  // namespace

std::vector<Occupant> occupants(const Plan& plan, PanelId panel, Reading reading) {
  std::vector<Occupant> all;
  for (const auto& breaker : plan.breakers) {
    if (breaker->panel == panel && stands(*breaker, reading))
      all.push_back({breaker->id, placementOf(*breaker)});
  }
  return all;
}

std::vector<BreakerId> breakersAt(const Plan& plan, PanelId panel, SpacePosition position, Reading reading) {
  std::vector<std::pair<SpaceHalf, BreakerId>> found;
  for (const Occupant& occupant : occupants(plan, panel, reading)) {
    for (const HalfSpace& half : coveredHalves(occupant.placement)) {
      if (half.position != position) continue;
      found.emplace_back(half.half, occupant.breaker);
      break;  // a whole breaker covers both halves and counts once
    }
  }
  std::sort(found.begin(), found.end());
  std::vector<BreakerId> breakers;
  breakers.reserve(found.size());
  for (const auto& [half, breaker] : found) breakers.push_back(breaker);
  return breakers;
}

BreakerId occupantOf(const Plan& plan, const Placement& placement, Reading reading,
                     const std::vector<BreakerId>& ignoring) {
  for (const auto& breaker : plan.breakers) {
    if (stands(*breaker, reading) && !contains(ignoring, breaker->id) &&
        overlap(placement, placementOf(*breaker))) {
      return breaker->id;
    }
  }
  return {};
}

std::optional<Message> noSuchPlace(const Plan& plan, const Placement& placement) {
  const Panel* panel = find(plan, placement.panel);
  if (panel == nullptr) return say(kNoPanel);
  const bool tandemHalf = placement.half == Half::a || placement.half == Half::b;
  const bool quadPair = placement.half == Half::outer || placement.half == Half::inner;
  if (placement.poles < 1 || placement.poles > 2 || (tandemHalf && placement.poles != 1) ||
      (quadPair && placement.poles != 2)) {
    return say(kNoShape);
  }
  if (!hasSpace(*panel, placement.position)) return say(kNoSpace, panel->name);
  for (const SpacePosition space : poleSpaces(placement)) {
    if (!hasSpace(*panel, space))
      return say(kLastRow, printedNumber(*panel, placement.position), panel->name);
  }
  return std::nullopt;
}

std::optional<Message> refusal(const Plan& plan, const Placement& placement,
                               const std::vector<BreakerId>& ignoring) {
  if (auto missing = noSuchPlace(plan, placement)) return missing;
  const Panel& panel = *find(plan, placement.panel);
  if (const Breaker* other = find(plan, occupantOf(plan, placement, Reading::planned, ignoring))) {
    return say(kTaken, spaceNames(panel, placementOf(*other)), std::vector<Message>{nameOf(plan, *other)});
  }
  const std::vector<Leg> legs = poleLegs(panel, placement);
  if (legs.size() == 2 && legs[0] == legs[1]) {
    return say(kSameLeg, spaceNames(panel, placement), std::string(legName(legs[0])));
  }
  if (placement.half != Half::whole) {
    for (const SpacePosition space : poleSpaces(placement)) {
      if (takesTandem(panel, space) == Answer::no) return say(kNoTandem, printedNumber(panel, space));
    }
  }
  if (panel.poleMaximum) {
    std::int64_t poles = placement.poles;
    for (const Occupant& occupant : occupants(plan, placement.panel, Reading::planned)) {
      if (!contains(ignoring, occupant.breaker)) poles += occupant.placement.poles;
    }
    if (poles > *panel.poleMaximum) {
      return say(kTooManyPoles, panel.name, std::int64_t{*panel.poleMaximum}, poles);
    }
  }
  return std::nullopt;
}

std::vector<Placement> landings(const Plan& plan, PanelId panel, std::int32_t poles,
                                const std::vector<BreakerId>& ignoring) {
  const Panel* record = find(plan, panel);
  if (record == nullptr) return {};
  std::vector<Placement> fitting;
  for (const SpacePosition position : allSpaces(*record)) {
    const Placement placement{panel, position, Half::whole, poles};
    if (!refusal(plan, placement, ignoring)) fitting.push_back(placement);
  }
  return fitting;
}

std::int32_t freeSpaces(const Plan& plan, PanelId panel) {
  const Panel* record = find(plan, panel);
  if (record == nullptr) return 0;
  const std::vector<SpacePosition> all = allSpaces(*record);
  return static_cast<std::int32_t>(std::count_if(all.begin(), all.end(), [&](SpacePosition position) {
    return breakersAt(plan, panel, position, Reading::planned).empty();
  }));
}

}  // namespace stayalight
