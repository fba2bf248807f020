#include "core/edit/parts.h"

namespace stayalight::editing {

std::string nameOf(const Plan& plan, BreakerId breaker) {
  if (const Circuit* circuit = circuitOn(plan, breaker, Reading::planned)) return circuit->name;
  if (const Circuit* circuit = circuitOn(plan, breaker, Reading::before)) return circuit->name;
  const Breaker* record = find(plan, breaker);
  const Panel* panel = record != nullptr ? find(plan, record->panel) : nullptr;
  return panel != nullptr ? spaceNames(*panel, placementOf(*record)) : std::string();
}

void setPlace(Breaker& breaker, const Placement& placement) {
  breaker.panel = placement.panel;
  breaker.column = placement.position.column;
  breaker.row = placement.position.row;
  breaker.half = placement.half;
  breaker.poles = placement.poles;
}

Stage stageAt(const Plan& plan, const Placement& placement) {
  const Panel* panel = find(plan, placement.panel);
  const bool isNewPanel = panel != nullptr && panel->role.is(PanelRole::backup);
  return isNewPanel || occupantOf(plan, placement, Reading::before, {}).valid() ? Stage::fresh
                                                                                : Stage::existing;
}

BreakerId putAt(Plan& plan, BreakerId breaker, const Placement& placement) {
  const Breaker before = *find(plan, breaker);
  if (before.stage.is(Stage::fresh)) {
    setPlace(edit(plan, breaker), placement);
    return breaker;
  }
  Breaker fresh = before;
  fresh.id = nextBreakerId(plan);
  fresh.stage = Stage::fresh;
  setPlace(fresh, placement);
  edit(plan, breaker).stage = Stage::removed;
  for (const CircuitId circuit : circuitsOn(plan, breaker, Reading::planned))
    edit(plan, circuit).planned = fresh.id;
  plan.breakers.emplace_back(fresh);
  return fresh.id;
}

}  // namespace stayalight::editing
