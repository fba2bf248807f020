#pragma once

// Parts of a plan that go from one plan to another: circuits, and the records that a person keeps in lists of
// their own.

#include <span>

#include "core/message/result.h"
#include "core/plan/plan.h"

namespace stayalight {

/// These circuits, with their multiwire groups and what shares a breaker with them, as a plan that holds
/// nothing else of the house: their breakers, and the panels those stand in.
[[nodiscard]] Result<Plan> partOf(const Plan& plan, std::span<const CircuitId> circuits);
/// Adds all circuits of such a part to a panel, on whole breakers of their own in the best free places (as
/// `moveCircuits` chooses them), with new ids. All or none: refused where one finds no place. What was found
/// out on the wires of the other house, and how a circuit reached its new breaker there, stays behind.
[[nodiscard]] Result<Plan> pasteCircuits(const Plan& plan, const Plan& part, PanelId panel);

/// The plan with a copy of this load, inverter, battery or panel in its own lists; it is called `name` there,
/// or "name 2" where another entry of that list has that name. Refused: a record of another kind or none, an
/// empty name.
[[nodiscard]] Result<Plan> keepInPlan(const Plan& plan, const EntityRef& record, const std::string& name);
/// Gives an entry of the own lists another name. Refused: an empty one, one that another entry of its list
/// has.
[[nodiscard]] Result<Plan> renameKept(const Plan& plan, const EntityRef& entry, const std::string& name);
/// Puts a copy of a kept inverter, battery or panel in the place of this one, as the functions below do.
/// Refused: an entry that is gone, or a load; that goes onto a circuit as a typical one (core/catalogue).
[[nodiscard]] Result<Plan> takeKept(const Plan& plan, const EntityRef& entry, const EntityRef& place);

[[nodiscard]] Plan takeInverter(const Plan& plan, Inverter inverter);
[[nodiscard]] Plan takeBattery(const Plan& plan, Battery battery);
/// Gives a panel the enclosure of another: its spaces, ratings and label. Name, role, what feeds it and its
/// neutral bond stay. Refused where a breaker of it would then stand nowhere.
[[nodiscard]] Result<Plan> takePanel(const Plan& plan, PanelId panel, const Panel& enclosure);

}  // namespace stayalight
