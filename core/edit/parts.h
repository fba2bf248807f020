#pragma once

// What the edits share: reaching a part to change it, and the stages a breaker goes through.

#include <algorithm>
#include <vector>

#include "core/edit/edit.h"

namespace stayalight::editing {

template <class Entity>
Entity& editIn(std::vector<Shared<Entity>>& list, Id<Entity> id) {
  const auto at =
      std::find_if(list.begin(), list.end(), [&](const Shared<Entity>& part) { return part->id == id; });
  return at->edit();
}
/// The entity, to change; it must exist.
inline Panel& edit(Plan& plan, PanelId id) { return editIn(plan.panels, id); }
inline Breaker& edit(Plan& plan, BreakerId id) { return editIn(plan.breakers, id); }
inline Circuit& edit(Plan& plan, CircuitId id) { return editIn(plan.circuits, id); }

template <class Entity>
void eraseFrom(std::vector<Shared<Entity>>& list, Id<Entity> id) {
  list.erase(
      std::remove_if(list.begin(), list.end(), [&](const Shared<Entity>& part) { return part->id == id; }),
      list.end());
}

template <class T>
bool contains(const std::vector<T>& list, const T& value) {
  return std::find(list.begin(), list.end(), value) != list.end();
}

/// Name of what a breaker feeds, for a refusal; its spaces where it feeds no circuit.
[[nodiscard]] std::string nameOf(const Plan& plan, BreakerId breaker);

void setPlace(Breaker& breaker, const Placement& placement);

/// Existing breakers may stand where nothing stood before the work; anywhere else a breaker is new. A breaker
/// in a backup subpanel is always new.
[[nodiscard]] Stage stageAt(const Plan& plan, const Placement& placement);

/// Replaces the record of an existing breaker by a removed one and a new one at `placement`; a new one simply
/// changes its place. No check. Gives the breaker that stands there.
BreakerId putAt(Plan& plan, BreakerId breaker, const Placement& placement);

/// As `sendBack`, for exactly these circuits and without their groups.
[[nodiscard]] Result<Plan> sendExactlyBack(const Plan& plan, const std::vector<CircuitId>& circuits);

}  // namespace stayalight::editing
