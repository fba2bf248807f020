#pragma once

// Every change a person can make, as a function from plan to plan or to the reason why not. Nothing moves on
// a refusal. One call is one undo step.

#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/panel/spaces.h"
#include "core/plan/field.h"

namespace stayalight {

/// Moves circuits, whole multiwire groups with them, onto new breakers in `panel`. `landing` is where the
/// first one goes; the others, or all without it, take the best free spaces: the leg with the smaller
/// connected load, a group's hots on opposite legs in adjacent spaces, then the topmost. The old breakers
/// stay in place without function; a circuit that stands on a new breaker already takes that breaker along.
/// Moving to the panel it came from is `sendBack`. Breakers of a moved multiwire group keep their tie.
[[nodiscard]] Result<Plan> moveCircuits(const Plan& plan, std::span<const CircuitId> circuits, PanelId panel,
                                        std::optional<SpacePosition> landing = std::nullopt);

/// Undoes a move: the circuits (with their groups) are fed by their old breakers again, which count as
/// existing. Afterwards the plan equals the one before the move. Where the old space was given to another
/// breaker: refused.
[[nodiscard]] Result<Plan> sendBack(const Plan& plan, std::span<const CircuitId> circuits);

/// Moves a breaker within its panel. One that is new simply changes its place; for an existing one the old
/// record is kept as removed, for the schedule before the work, and a new record stands in the new place.
[[nodiscard]] Result<Plan> relocate(const Plan& plan, BreakerId breaker, SpacePosition position);

/// Exchanges the places of two breakers of one panel that take the same room, or the panels of two circuits.
[[nodiscard]] Result<Plan> swapBreakers(const Plan& plan, BreakerId first, BreakerId second);

/// Decides what fills the space a moved circuit left: the old breaker as a spare (true) or a blank (false).
[[nodiscard]] Result<Plan> keepOldBreaker(const Plan& plan, BreakerId breaker, bool keep);

[[nodiscard]] Plan newPlan();  ///< a main panel of 20 spaces, an empty backup subpanel of 8, nothing else

[[nodiscard]] Plan addPanel(const Plan& plan, PanelRole role);
[[nodiscard]] Result<Plan> addBreaker(const Plan& plan, const Placement& placement, RatingAmperes rating,
                                      Feeds feeds);
/// A circuit with its breaker in an existing panel; without a placement on the first free space.
[[nodiscard]] Result<Plan> addCircuit(const Plan& plan, PanelId panel, std::optional<Placement> placement,
                                      std::int32_t poles, RatingAmperes rating, std::string name);
/// A circuit on a breaker that stands there and feeds nothing.
[[nodiscard]] Result<Plan> addCircuitOn(const Plan& plan, BreakerId breaker, std::string name);
[[nodiscard]] Result<Plan> addLoad(const Plan& plan, CircuitId circuit, Load load);
/// Makes a breaker a one- or two-pole where it stands. What hangs on it follows: the circuit's voltage (120
/// or 240), its loads from one hot and neutral to two hots or back, and its other breaker where it is moved.
[[nodiscard]] Result<Plan> setPoles(const Plan& plan, BreakerId breaker, std::int32_t poles);
/// The circuits, with the groups they are in, share one neutral. Where they stand and whether their handles
/// are tied stays as it is.
[[nodiscard]] Result<Plan> shareNeutral(const Plan& plan, std::span<const CircuitId> circuits);
/// Takes a circuit out of its group; of two, both are out.
[[nodiscard]] Result<Plan> partNeutral(const Plan& plan, CircuitId circuit);
[[nodiscard]] Plan addFeederRun(const Plan& plan, Segment segment);
[[nodiscard]] Plan addRaceway(const Plan& plan);
[[nodiscard]] Plan addSpliceBox(const Plan& plan);
/// A copy of a circuit with its loads on a free space of the same panel.
[[nodiscard]] Result<Plan> copyCircuit(const Plan& plan, CircuitId circuit);
[[nodiscard]] Result<Plan> copyLoad(const Plan& plan, LoadId load);
[[nodiscard]] Result<Plan> copyPanel(const Plan& plan, PanelId panel);
[[nodiscard]] Result<Plan> copyBreaker(const Plan& plan, BreakerId breaker);
/// Takes the entity away with what only it holds (a circuit's loads, its new breaker; a panel's breakers and
/// circuits).
[[nodiscard]] Result<Plan> remove(const Plan& plan, const EntityRef& entity);
/// Adds an item to a list inside a record (use window, curve point, space exception) or takes one away; an
/// entry of the plan's own lists is taken away likewise.
[[nodiscard]] Result<Plan> addItem(const Plan& plan, const EntityRef& owner, std::string_view list);
[[nodiscard]] Result<Plan> removeItem(const Plan& plan, const EntityRef& item);

/// Sets one field after `check`; also what fields say about each other: a breaker's place must fit, an id
/// must exist.
[[nodiscard]] Result<Plan> setField(const Plan& plan, const EntityRef& entity, std::string_view key,
                                    const FieldValue& value);

/// A repair that a finding offers, as data.
namespace fix {
struct Move {
  std::vector<CircuitId> circuits;
  PanelId panel;
  std::optional<SpacePosition> landing;
};
struct SendBack {
  std::vector<CircuitId> circuits;
};
struct SetField {
  EntityRef entity;
  std::string key;
  FieldValue value;
};
struct SetFields {
  std::vector<SetField> fields;
};  ///< all or none, as one step
struct Relocate {
  BreakerId breaker;
  SpacePosition position;
};
}  // namespace fix
using Fix = std::variant<fix::Move, fix::SendBack, fix::SetField, fix::SetFields, fix::Relocate>;
[[nodiscard]] Result<Plan> applyFix(const Plan& plan, const Fix& fix);

}  // namespace stayalight
