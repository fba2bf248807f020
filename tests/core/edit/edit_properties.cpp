// What holds for any plan and any row of edits.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

#include "core/edit/edit.h"
#include "tests/core/random_plan.h"

namespace stayalight {
namespace {

std::int64_t draw(std::int64_t low, std::int64_t high) {
  return *rc::gen::inRange<std::int64_t>(low, high + 1);
}

SpacePosition anyPosition(const Panel& panel) {
  return {static_cast<Column>(draw(0, 1)), static_cast<std::int32_t>(draw(1, rowCount(panel)))};
}

std::vector<CircuitId> someCircuits(const Plan& plan) {
  std::vector<CircuitId> some;
  for (const auto& circuit : plan.circuits) {
    if (draw(0, 2) == 0) some.push_back(circuit->id);
  }
  return some;
}

template <class Entity>
Id<Entity> anyId(const std::vector<Shared<Entity>>& list) {
  if (list.empty()) return {draw(0, 3)};
  return list[static_cast<std::size_t>(draw(0, static_cast<std::int64_t>(list.size()) - 1))]->id;
}

template <class Entity>
void expectAscending(const std::vector<Shared<Entity>>& list) {
  for (std::size_t i = 1; i < list.size(); ++i) RC_ASSERT(list[i - 1]->id < list[i]->id);
}

void expectAllChecked(const RecordType& type, const void* record) {
  for (const Field& field : type.fields) RC_ASSERT(!check(field, field.get(record)));
  for (const Children& children : type.children) {
    for (std::size_t i = 0; i < children.count(record); ++i) {
      expectAllChecked(recordType(children.kind), children.at(record, i));
    }
  }
}

void expectSound(const Plan& plan) {
  expectAscending(plan.panels);
  expectAscending(plan.breakers);
  expectAscending(plan.circuits);
  expectAscending(plan.runs);
  std::set<std::int64_t> loads;
  for (const auto& circuit : plan.circuits) {
    for (const Load& load : circuit->loads) RC_ASSERT(loads.insert(load.id.number).second);
    for (const Reading reading : {Reading::before, Reading::planned}) {
      const BreakerId id = breakerOf(*circuit, reading);
      if (!id.valid()) continue;
      const Breaker* breaker = find(plan, id);
      RC_ASSERT(breaker != nullptr);
      RC_ASSERT(stands(*breaker, reading));
    }
  }
  for (const auto& panel : plan.panels) {
    RC_ASSERT(!panel->fedFrom.valid() || find(plan, panel->fedFrom) != nullptr);
    for (const Reading reading : {Reading::before, Reading::planned}) {
      std::set<std::tuple<Column, std::int32_t, SpaceHalf>> taken;
      for (const Occupant& occupant : occupants(plan, panel->id, reading)) {
        for (const HalfSpace& half : coveredHalves(occupant.placement)) {
          RC_ASSERT(hasSpace(*panel, half.position));
          RC_ASSERT(taken.insert({half.position.column, half.position.row, half.half}).second);
        }
      }
    }
  }
  for (const auto& breaker : plan.breakers) {
    RC_ASSERT(find(plan, breaker->panel) != nullptr);
    RC_ASSERT(!breaker->feedsPanel.valid() || find(plan, breaker->feedsPanel) != nullptr);
  }
  expectAllChecked(recordType(RecordKind::plan), &plan);
}

EntityRef anyEntity(const Plan& plan) {
  switch (draw(0, 8)) {
    case 0:
      return {RecordKind::panel, anyId(plan.panels).number};
    case 1:
      return {RecordKind::circuit, anyId(plan.circuits).number};
    case 2:
      return {RecordKind::feederRun, anyId(plan.runs).number};
    case 3:
      return {RecordKind::load, draw(1, 12)};
    case 4:
      return {RecordKind::space, anyId(plan.panels).number, static_cast<std::int32_t>(draw(0, 1))};
    case 5:
      return {draw(0, 1) == 0 ? RecordKind::overloadPoint : RecordKind::useWindow, draw(1, 6),
              static_cast<std::int32_t>(draw(0, 1))};
    case 6:
      return {RecordKind::raceway, anyId(plan.raceways).number};
    case 7:
      return {RecordKind::spliceBox, anyId(plan.spliceBoxes).number};
    default:
      return {RecordKind::breaker, anyId(plan.breakers).number};
  }
}

Result<Plan> anyFieldSet(const Plan& plan) {
  const EntityRef entity = anyEntity(plan);
  const auto fields = recordType(entity.kind).fields;
  const Field& field =
      fields[static_cast<std::size_t>(draw(0, static_cast<std::int64_t>(fields.size()) - 1))];
  return setField(plan, entity, field.key, example::randomValue(field, draw));
}

Placement anyPlacement(const Plan& plan) {
  const PanelId panel = anyId(plan.panels);
  return {panel, anyPosition(*find(plan, panel)), static_cast<Half>(draw(0, 4)),
          static_cast<std::int32_t>(draw(1, 2))};
}

Result<Plan> anyEdit(const Plan& plan) {
  const auto feeds = static_cast<Feeds>(draw(0, 8));
  switch (draw(0, 17)) {
    case 0:
    case 1:
      return moveCircuits(plan, someCircuits(plan), anyId(plan.panels));
    case 2: {
      const Placement place = anyPlacement(plan);
      return moveCircuits(plan, someCircuits(plan), place.panel, place.position);
    }
    case 3:
      return sendBack(plan, someCircuits(plan));
    case 4:
      return relocate(plan, anyId(plan.breakers), anyPlacement(plan).position);
    case 5:
      return swapBreakers(plan, anyId(plan.breakers), anyId(plan.breakers));
    case 6:
      return keepOldBreaker(plan, anyId(plan.breakers), draw(0, 1) == 0);
    case 7:
      return draw(0, 3) == 0 ? Result<Plan>(addPanel(plan, static_cast<PanelRole>(draw(0, 2))))
                             : Result<Plan>(addFeederRun(plan, static_cast<Segment>(draw(0, 4))));
    case 8:
      return addBreaker(plan, anyPlacement(plan), RatingAmperes(20), feeds);
    case 9:
      return addCircuit(plan, anyId(plan.panels), std::nullopt, static_cast<std::int32_t>(draw(1, 2)),
                        RatingAmperes(20), "New");
    case 10: {
      const Placement place = anyPlacement(plan);
      return addCircuit(plan, place.panel, place, place.poles, RatingAmperes(15), "Here");
    }
    case 11:
      return addLoad(plan, anyId(plan.circuits), example::plainLoad("Load", 100));
    case 12: {
      const std::int64_t kind = draw(0, 3);
      if (kind == 0) return copyCircuit(plan, anyId(plan.circuits));
      if (kind == 1) return copyLoad(plan, LoadId{draw(1, 12)});
      if (kind == 2) return copyPanel(plan, anyId(plan.panels));
      return copyBreaker(plan, anyId(plan.breakers));
    }
    case 13:
      return remove(plan, anyEntity(plan));
    case 14: {
      const std::int64_t list = draw(0, 3);
      if (list == 0) return addItem(plan, {RecordKind::inverter}, "overload");
      if (list == 1) return addItem(plan, {RecordKind::inverter}, "efficiency");
      if (list == 2) return addItem(plan, {RecordKind::panel, anyId(plan.panels).number}, "space_exceptions");
      return addItem(plan, {RecordKind::load, draw(1, 12)}, "windows");
    }
    default:
      return anyFieldSet(plan);
  }
}

RC_GTEST_PROP(EditProperties, sendingBackUndoesAMoveExactly, ()) {
  const Plan plan = example::randomPlan(draw);
  const std::vector<CircuitId> circuits = someCircuits(plan);
  std::optional<SpacePosition> landing;
  if (draw(0, 1) == 0) landing = anyPosition(*find(plan, example::kBackup));
  const Result<Plan> moved = moveCircuits(plan, circuits, example::kBackup, landing);
  if (!moved) {
    RC_CLASSIFY(true, "refused");
    RC_ASSERT(render(moved.refusal(), plainEnglish()).find('<') == std::string::npos);
    return;
  }
  expectSound(moved.value());
  for (const CircuitId id : circuits)
    RC_ASSERT(panelOf(moved.value(), *find(moved.value(), id), Reading::planned) == example::kBackup);
  const Result<Plan> back = sendBack(moved.value(), circuits);
  RC_ASSERT(back.ok());
  RC_ASSERT(back.value() == plan);
}

RC_GTEST_PROP(EditProperties, aMovedGroupStaysWholeOnOppositeLegs, ()) {
  const Plan plan = example::randomPlan(draw);
  const Result<Plan> moved = moveCircuits(plan, someCircuits(plan), example::kBackup);
  if (!moved) return;
  for (const auto& circuit : moved.value().circuits) {
    const std::vector<CircuitId> group = multiwireGroup(moved.value(), *circuit);
    if (group.size() != 2) continue;
    const Breaker& one = *find(moved.value(), find(moved.value(), group[0])->planned);
    const Breaker& other = *find(moved.value(), find(moved.value(), group[1])->planned);
    RC_ASSERT(one.panel == other.panel);
    const Panel& panel = *find(moved.value(), one.panel);
    RC_ASSERT(legOf(panel, one.position()) != legOf(panel, other.position()));
  }
}

RC_GTEST_PROP(EditProperties, anyRowOfEditsKeepsThePlanSound, ()) {
  Plan plan = example::randomPlan(draw);
  expectSound(plan);
  for (std::int64_t left = draw(1, 25); left > 0; --left) {
    const Plan before = plan;
    const Result<Plan> edited = anyEdit(plan);
    RC_ASSERT(plan == before);
    if (!edited) {
      RC_ASSERT(render(edited.refusal(), plainEnglish()).find('<') == std::string::npos);
      continue;
    }
    plan = edited.value();
    expectSound(plan);
  }
}

RC_GTEST_PROP(EditProperties, aFieldSetToWhatItHoldsChangesNothing, ()) {
  const Plan plan = example::randomPlan(draw);
  const EntityRef entity = anyEntity(plan);
  const void* record = findRecord(plan, entity);
  if (record == nullptr) return;
  for (const Field& field : recordType(entity.kind).fields) {
    if (field.kind == FieldKind::identity) continue;
    // Whoever enters a rating has read it, which is a change by itself.
    if (entity.kind == RecordKind::breaker && field.key == "rating_A") continue;
    const Result<Plan> same = setField(plan, entity, field.key, field.get(record));
    // Hours of a window drawn at random need not be whole ones; those are refused.
    if (!same && entity.kind == RecordKind::useWindow) continue;
    RC_ASSERT(same.ok());
    RC_ASSERT(same.value() == plan);
  }
}

}  // namespace
}  // namespace stayalight
