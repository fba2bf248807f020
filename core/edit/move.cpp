#include "core/edit/choose.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNothingChosen{"edit.nothing_chosen"};
constexpr MessageId kNoCircuit{"edit.no_such_circuit"};
constexpr MessageId kNoPanel{"panel.no_such_panel"};
constexpr MessageId kNoBreaker{"edit.circuit_without_breaker"};
constexpr MessageId kAlreadyThere{"edit.already_there"};
constexpr MessageId kNeverMoved{"edit.never_moved"};
constexpr MessageId kNoOldBreaker{"edit.no_old_breaker"};
constexpr MessageId kOldBreakerInUse{"edit.old_breaker_in_use"};

// Sorts circuits into groups that must be placed together, each a list of breakers. The first circuit's group
// is first.
std::vector<MovingGroup> groupsOf(const Plan& plan, const std::vector<CircuitId>& circuits, PanelId panel,
                                  bool moveWithin) {
  std::vector<MovingGroup> groups;
  std::vector<CircuitId> done;
  for (const CircuitId start : circuits) {
    if (contains(done, start)) continue;
    const Result<std::vector<CircuitId>> linked = withCompanions(plan, std::span(&start, 1));
    MovingGroup group;
    const bool withLanding = moveWithin && groups.empty();
    for (const CircuitId id : linked.value()) {
      done.push_back(id);
      const Circuit& circuit = *find(plan, id);
      const Breaker* breaker = find(plan, circuit.planned);
      if (breaker == nullptr) continue;
      if (breaker->panel == panel && !withLanding) {
        group.staying.push_back(id);
        continue;
      }
      const auto same = std::find_if(group.movers.begin(), group.movers.end(),
                                     [&](const Mover& mover) { return mover.breaker == breaker->id; });
      if (same != group.movers.end()) {
        same->circuits.push_back(id);
        same->watts += connectedWatts(circuit);
        continue;
      }
      group.movers.push_back(
          {breaker->id, {id}, breaker->poles, breaker->stage.is(Stage::fresh), connectedWatts(circuit)});
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

// Those that need the most room in a row first, then the heaviest: the order in which free places are given
// out.
void sortForPlacing(std::vector<MovingGroup>& groups) {
  const auto poles = [](const MovingGroup& group) {
    std::int32_t sum = 0;
    for (const Mover& mover : group.movers) sum += mover.poles;
    return sum;
  };
  const auto watts = [](const MovingGroup& group) {
    double sum = 0.0;
    for (const Mover& mover : group.movers) sum += mover.watts;
    return sum;
  };
  std::sort(groups.begin(), groups.end(), [&](const MovingGroup& a, const MovingGroup& b) {
    if (poles(a) != poles(b)) return poles(a) > poles(b);
    if (watts(a) != watts(b)) return watts(a) > watts(b);
    return a.movers.front().circuits.front() < b.movers.front().circuits.front();
  });
}

// A breaker made for the new panel: rating, poles, protection and tie stay, what belongs to the old one does
// not.
Breaker boughtFor(const Plan& plan, const Breaker& old, const Placement& placement) {
  Breaker fresh;
  fresh.id = nextBreakerId(plan);
  fresh.rating = old.rating;
  fresh.ratingRead = old.ratingRead;
  fresh.protection = old.protection;
  fresh.tie = old.tie;
  fresh.feeds = Feeds::circuit;
  fresh.stage = Stage::fresh;
  fresh.listingLine = find(plan, placement.panel)->listingLine;
  setPlace(fresh, placement);
  return fresh;
}

void moveTo(Plan& plan, const Mover& mover, const Placement& placement) {
  const Breaker old = *find(plan, mover.breaker);
  if (old.panel == placement.panel) {
    putAt(plan, mover.breaker, placement);
    return;
  }
  if (mover.takenAlong) {
    const Panel* left = find(plan, old.panel);
    const bool followsPanel = left != nullptr && old.listingLine == left->listingLine;
    Breaker& breaker = edit(plan, mover.breaker);
    setPlace(breaker, placement);
    if (followsPanel) breaker.listingLine = find(plan, placement.panel)->listingLine;
    return;
  }
  const Breaker fresh = boughtFor(plan, old, placement);
  plan.breakers.emplace_back(fresh);
  for (const CircuitId circuit : mover.circuits) edit(plan, circuit).planned = fresh.id;
  if (old.stage.is(Stage::existing)) edit(plan, mover.breaker).stage = Stage::leftInPlace;
}

bool cameFrom(const Plan& plan, const Circuit& circuit, PanelId panel) {
  return panelOf(plan, circuit, Reading::before) == panel &&
         panelOf(plan, circuit, Reading::planned) != panel;
}

}  // namespace

Result<std::vector<CircuitId>> withCompanions(const Plan& plan, std::span<const CircuitId> circuits) {
  std::vector<CircuitId> all;
  for (const CircuitId id : circuits) {
    if (find(plan, id) == nullptr) return say(kNoCircuit);
    if (!contains(all, id)) all.push_back(id);
  }
  if (all.empty()) return say(kNothingChosen);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Circuit& circuit = *find(plan, all[i]);
    for (const CircuitId member : multiwireGroup(plan, circuit)) {
      if (!contains(all, member)) all.push_back(member);
    }
    for (const CircuitId sharer : circuitsOn(plan, circuit.planned, Reading::planned)) {
      if (!contains(all, sharer)) all.push_back(sharer);
    }
  }
  return all;
}

Result<Plan> sendExactlyBack(const Plan& plan, const std::vector<CircuitId>& circuits) {
  Plan sent = plan;
  std::vector<CircuitId> moved;
  for (const CircuitId id : circuits) {
    const Circuit& circuit = *find(plan, id);
    if (circuit.planned != circuit.breaker) moved.push_back(id);
  }
  if (moved.empty())
    return say(kNeverMoved, circuits.empty() ? std::string() : find(plan, circuits.front())->name);

  std::vector<BreakerId> given;  // back to the shop: new breakers that nothing else hangs on
  for (const CircuitId id : moved) {
    const Circuit& circuit = *find(plan, id);
    if (find(plan, circuit.breaker) == nullptr) return say(kNoOldBreaker, circuit.name);
    const std::vector<CircuitId> sharers = circuitsOn(plan, circuit.planned, Reading::planned);
    const bool all = std::all_of(sharers.begin(), sharers.end(),
                                 [&](CircuitId sharer) { return contains(moved, sharer); });
    const Breaker* fresh = find(plan, circuit.planned);
    if (fresh != nullptr && fresh->stage.is(Stage::fresh) && all && !contains(given, fresh->id))
      given.push_back(fresh->id);
  }
  for (const BreakerId id : given) eraseFrom(sent.breakers, id);

  for (const CircuitId id : moved) {
    const Circuit circuit = *find(plan, id);
    const Breaker old = *find(plan, circuit.breaker);
    const Panel* panel = find(plan, old.panel);
    const std::string spaces = panel != nullptr ? spaceNames(*panel, placementOf(old)) : std::string();
    for (const CircuitId other : circuitsOn(plan, old.id, Reading::planned)) {
      if (contains(moved, other) || contains(multiwireGroup(plan, circuit), other)) continue;
      return say(kOldBreakerInUse, circuit.name, spaces);
    }
    if (!old.feeds.is(Feeds::circuit) && !old.feeds.is(Feeds::nothing)) {
      return say(kOldBreakerInUse, circuit.name, spaces);
    }
    if (old.stage.is(Stage::removed)) {
      if (auto reason = refusal(sent, placementOf(old), {old.id})) return *reason;
    }
    if (old.stage.is(Stage::removed) || old.stage.is(Stage::leftInPlace) || old.feeds.is(Feeds::nothing)) {
      Breaker& breaker = edit(sent, old.id);
      breaker.feeds = Feeds::circuit;
      if (!old.stage.is(Stage::fresh)) breaker.stage = Stage::existing;
    }
    edit(sent, id).planned = circuit.breaker;
  }
  return sent;
}

}  // namespace editing

using namespace editing;

Result<Plan> moveCircuits(const Plan& plan, std::span<const CircuitId> circuits, PanelId panel,
                          std::optional<SpacePosition> landing) {
  if (find(plan, panel) == nullptr) return say(kNoPanel);
  const Result<std::vector<CircuitId>> companions = withCompanions(plan, circuits);
  if (!companions) return companions.refusal();
  for (const CircuitId id : companions.value()) {
    const Circuit& circuit = *find(plan, id);
    if (find(plan, circuit.planned) == nullptr) return say(kNoBreaker, circuit.name);
  }

  Plan moved = plan;
  std::vector<CircuitId> returning;
  for (const CircuitId id : companions.value()) {
    if (cameFrom(plan, *find(plan, id), panel)) returning.push_back(id);
  }
  if (!returning.empty()) {
    Result<Plan> back = sendExactlyBack(plan, returning);
    if (!back) return back;
    moved = std::move(back).value();
  }

  // A circuit that returns has its place; a landing is for one that goes somewhere else.
  const bool landed = landing && !contains(returning, companions.value().front());
  std::vector<MovingGroup> groups = groupsOf(moved, companions.value(), panel, landed);
  std::optional<MovingGroup> first;
  if (landed) {
    first = std::move(groups.front());
    groups.erase(groups.begin());
  }
  groups.erase(
      std::remove_if(groups.begin(), groups.end(), [](const MovingGroup& g) { return g.movers.empty(); }),
      groups.end());
  sortForPlacing(groups);
  if (first) groups.insert(groups.begin(), std::move(*first));
  if (groups.empty() && returning.empty()) {
    return say(kAlreadyThere, find(plan, circuits.front())->name, find(plan, panel)->name);
  }

  // Breakers that are taken along leave their old places first.
  std::vector<BreakerId> leaving;
  for (const MovingGroup& group : groups) {
    for (const Mover& mover : group.movers) {
      if (mover.takenAlong || find(moved, mover.breaker)->panel == panel) leaving.push_back(mover.breaker);
    }
  }
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const MovingGroup& group = groups[i];
    const Result<std::vector<Placement>> places =
        choosePlaces(moved, panel, group, leaving, i == 0 && landed ? landing : std::nullopt);
    if (!places) return places.refusal();
    for (std::size_t m = 0; m < group.movers.size(); ++m) {
      if (auto reason = refusal(moved, places.value()[m], leaving)) return *reason;
      moveTo(moved, group.movers[m], places.value()[m]);
      leaving.erase(std::remove(leaving.begin(), leaving.end(), group.movers[m].breaker), leaving.end());
    }
  }
  return moved;
}

Result<Plan> sendBack(const Plan& plan, std::span<const CircuitId> circuits) {
  const Result<std::vector<CircuitId>> companions = withCompanions(plan, circuits);
  if (!companions) return companions.refusal();
  return sendExactlyBack(plan, companions.value());
}

}  // namespace stayalight
