// Places within a panel, exchanges, and what becomes of old breakers.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoBreaker{"edit.no_such_breaker"};
constexpr MessageId kRemoved{"edit.breaker_removed"};
constexpr MessageId kSwapItself{"edit.swap_with_itself"};
constexpr MessageId kOtherRoom{"edit.swap_other_room"};
constexpr MessageId kSwapNeedsCircuits{"edit.swap_needs_circuits"};
constexpr MessageId kSwapSameGroup{"edit.swap_within_group"};
constexpr MessageId kNotOld{"edit.not_an_old_breaker"};
constexpr MessageId kStillFeeds{"edit.still_feeds"};

Placement at(const Placement& placement, SpacePosition position, Half half) {
  return {placement.panel, position, half, placement.poles};
}

Half otherHalf(Half half) { return half == Half::a ? Half::b : half == Half::b ? Half::a : half; }

// Exchanges the places of two new breakers, in whatever panels they are.
void exchange(Plan& plan, const Breaker& first, const Breaker& second) {
  const auto follow = [&](const Breaker& from, const Breaker& to) {
    const bool followsPanel = from.listingLine == find(plan, from.panel)->listingLine;
    Breaker& breaker = edit(plan, from.id);
    setPlace(breaker, placementOf(to));
    if (followsPanel) breaker.listingLine = find(plan, to.panel)->listingLine;
  };
  follow(first, second);
  follow(second, first);
}

std::optional<Message> exchangeRefusal(const Plan& plan, const Breaker& first, const Breaker& second) {
  for (const Placement& place : {placementOf(second), placementOf(first)}) {
    if (auto reason = refusal(plan, place, {first.id, second.id})) return reason;
  }
  return std::nullopt;
}

bool sameRoom(const Breaker& first, const Breaker& second) {
  return first.poles == second.poles &&
         coveredHalves(placementOf(first)).size() == coveredHalves(placementOf(second)).size();
}

// One circuit hangs on it that shares its neutral with no other.
bool feedsLoneCircuit(const Plan& plan, BreakerId breaker) {
  const std::vector<CircuitId> circuits = circuitsOn(plan, breaker, Reading::planned);
  return circuits.size() == 1 && multiwireGroup(plan, *find(plan, circuits.front())).size() == 1;
}

// The circuits of two panels change sides: the second one goes first, so that its place is free for the
// first.
Result<Plan> exchangePanels(const Plan& plan, const Breaker& first, const Breaker& second) {
  const std::vector<CircuitId> here = circuitsOn(plan, first.id, Reading::planned);
  const std::vector<CircuitId> there = circuitsOn(plan, second.id, Reading::planned);
  if (here.empty() || there.empty()) return say(kSwapNeedsCircuits);
  if (contains(multiwireGroup(plan, *find(plan, here.front())), there.front())) return say(kSwapSameGroup);
  // The breaker that was there before the work keeps its place, so the other one lands where a new one stood.
  const bool landOnSecond = second.stage.is(Stage::fresh);
  const std::vector<CircuitId>& leaving = landOnSecond ? there : here;
  const std::vector<CircuitId>& landing = landOnSecond ? here : there;
  const Breaker& left = landOnSecond ? second : first;
  const Breaker& other = landOnSecond ? first : second;
  Result<Plan> half = moveCircuits(plan, leaving, other.panel);
  if (!half) return half;
  const bool free =
      !occupantOf(half.value(), at(placementOf(left), left.position(), Half::whole), Reading::planned, {})
           .valid();
  return moveCircuits(half.value(), landing, left.panel,
                      free ? std::optional<SpacePosition>(left.position()) : std::nullopt);
}

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> relocate(const Plan& plan, BreakerId breaker, SpacePosition position) {
  const Breaker* record = find(plan, breaker);
  if (record == nullptr) return say(kNoBreaker);
  if (!stands(*record, Reading::planned)) return say(kRemoved, nameOf(plan, breaker));
  if (record->position() == position) return plan;
  const Placement now = placementOf(*record);
  Placement wanted = at(now, position, now.half);
  std::optional<Message> reason = refusal(plan, wanted, {breaker});
  if (reason && otherHalf(now.half) != now.half) {
    // A tandem's halves are alike: the free half of the space will do.
    wanted = at(now, position, otherHalf(now.half));
    if (!refusal(plan, wanted, {breaker})) reason.reset();
  }
  if (reason) return *reason;
  Plan moved = plan;
  putAt(moved, breaker, wanted);
  return moved;
}

Result<Plan> swapBreakers(const Plan& plan, BreakerId first, BreakerId second) {
  const Breaker* one = find(plan, first);
  const Breaker* other = find(plan, second);
  if (one == nullptr || other == nullptr) return say(kNoBreaker);
  if (first == second) return say(kSwapItself);
  for (const Breaker* breaker : {one, other}) {
    if (!stands(*breaker, Reading::planned)) return say(kRemoved, nameOf(plan, breaker->id));
  }
  if (one->panel != other->panel) {
    const bool bothNew = one->stage.is(Stage::fresh) && other->stage.is(Stage::fresh);
    const bool plain =
        bothNew && sameRoom(*one, *other) && feedsLoneCircuit(plan, first) && feedsLoneCircuit(plan, second);
    if (!plain) return exchangePanels(plan, *one, *other);
    if (auto reason = exchangeRefusal(plan, *one, *other)) return *reason;
    Plan swapped = plan;
    exchange(swapped, *one, *other);
    return swapped;
  }
  if (!sameRoom(*one, *other)) return say(kOtherRoom, nameOf(plan, first), nameOf(plan, second));
  if (auto reason = exchangeRefusal(plan, *one, *other)) return *reason;
  const Placement firstPlace = placementOf(*one);
  const Placement secondPlace = placementOf(*other);
  Plan swapped = plan;
  putAt(swapped, first, secondPlace);
  putAt(swapped, second, firstPlace);
  return swapped;
}

Result<Plan> keepOldBreaker(const Plan& plan, BreakerId breaker, bool keep) {
  const Breaker* record = find(plan, breaker);
  if (record == nullptr) return say(kNoBreaker);
  if (const Circuit* circuit = circuitOn(plan, breaker, Reading::planned))
    return say(kStillFeeds, circuit->name);
  const bool old = record->stage.is(Stage::leftInPlace) || record->stage.is(Stage::removed) ||
                   (record->stage.is(Stage::existing) && record->feeds.is(Feeds::nothing));
  if (!old) return say(kNotOld, nameOf(plan, breaker));
  if (keep && !stands(*record, Reading::planned)) {
    if (auto reason = refusal(plan, placementOf(*record), {breaker})) return *reason;
  }
  Plan kept = plan;
  edit(kept, breaker).stage = keep ? Stage::leftInPlace : Stage::removed;
  return kept;
}

}  // namespace stayalight
