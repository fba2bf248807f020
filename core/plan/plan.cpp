#include "core/plan/plan.h"

namespace stayalight {
namespace {

// Lists are sorted by id, so a binary search finds an entity.
template <class Entity>
const Entity* findIn(const std::vector<Shared<Entity>>& list, Id<Entity> id) {
  const auto at =
      std::lower_bound(list.begin(), list.end(), id,
                       [](const Shared<Entity>& entity, Id<Entity> wanted) { return entity->id < wanted; });
  return at != list.end() && (*at)->id == id ? &**at : nullptr;
}

template <class Entity>
Id<Entity> nextIn(const std::vector<Shared<Entity>>& list) {
  return {list.empty() ? 1 : list.back()->id.number + 1};
}

}  // namespace

const Panel* find(const Plan& plan, PanelId id) { return findIn(plan.panels, id); }
const Breaker* find(const Plan& plan, BreakerId id) { return findIn(plan.breakers, id); }
const Circuit* find(const Plan& plan, CircuitId id) { return findIn(plan.circuits, id); }
const FeederRun* find(const Plan& plan, FeederRunId id) { return findIn(plan.runs, id); }
const Raceway* find(const Plan& plan, RacewayId id) { return findIn(plan.raceways, id); }
const SpliceBox* find(const Plan& plan, SpliceBoxId id) { return findIn(plan.spliceBoxes, id); }

const Circuit* circuitOf(const Plan& plan, LoadId id) {
  for (const auto& circuit : plan.circuits) {
    for (const Load& load : circuit->loads) {
      if (load.id == id) return &*circuit;
    }
  }
  return nullptr;
}

const Panel* panelInRole(const Plan& plan, PanelRole role) {
  for (const auto& panel : plan.panels) {
    if (panel->role.is(role)) return &*panel;
  }
  return nullptr;
}

bool stands(const Breaker& breaker, Reading reading) {
  if (!breaker.stage.known()) return true;
  return !breaker.stage.is(reading == Reading::before ? Stage::fresh : Stage::removed);
}

BreakerId breakerOf(const Circuit& circuit, Reading reading) {
  return reading == Reading::before ? circuit.breaker : circuit.planned;
}

std::vector<CircuitId> circuitsOn(const Plan& plan, BreakerId breaker, Reading reading) {
  std::vector<CircuitId> circuits;
  for (const auto& circuit : plan.circuits) {
    if (breaker.valid() && breakerOf(*circuit, reading) == breaker) circuits.push_back(circuit->id);
  }
  return circuits;
}

const Circuit* circuitOn(const Plan& plan, BreakerId breaker, Reading reading) {
  if (!breaker.valid()) return nullptr;
  for (const auto& circuit : plan.circuits) {
    if (breakerOf(*circuit, reading) == breaker) return &*circuit;
  }
  return nullptr;
}

PanelId panelOf(const Plan& plan, const Circuit& circuit, Reading reading) {
  const Breaker* breaker = find(plan, breakerOf(circuit, reading));
  return breaker != nullptr ? breaker->panel : PanelId{};
}

bool offInOutage(const Plan& plan, LoadId load) {
  const auto& managed = plan.transfer->managed;
  return std::any_of(managed.begin(), managed.end(), [&](const ManagedLoad& row) {
    return row.load == load && load.valid() && row.offInOutage.is(Answer::yes);
  });
}

bool backedUp(const Plan& plan, const Circuit& circuit) {
  const Panel* panel = find(plan, panelOf(plan, circuit, Reading::planned));
  return panel != nullptr && panel->role.is(PanelRole::backup);
}

PanelId nextPanelId(const Plan& plan) { return nextIn(plan.panels); }
BreakerId nextBreakerId(const Plan& plan) { return nextIn(plan.breakers); }
CircuitId nextCircuitId(const Plan& plan) { return nextIn(plan.circuits); }
FeederRunId nextFeederRunId(const Plan& plan) { return nextIn(plan.runs); }
RacewayId nextRacewayId(const Plan& plan) { return nextIn(plan.raceways); }
SpliceBoxId nextSpliceBoxId(const Plan& plan) { return nextIn(plan.spliceBoxes); }

LoadId nextLoadId(const Plan& plan) {
  std::int64_t last = 0;
  for (const auto& circuit : plan.circuits) {
    for (const Load& load : circuit->loads) last = std::max(last, load.id.number);
  }
  return {last + 1};
}

}  // namespace stayalight
