#include "core/edit/part.h"

#include <map>

#include "core/edit/choose.h"
#include "core/panel/consistency.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoPanel{"panel.no_such_panel"};
constexpr MessageId kWithoutBreaker{"edit.circuit_without_breaker"};
constexpr MessageId kNothingInPart{"edit.nothing_in_part"};
constexpr MessageId kNoList{"edit.not_kept"};
constexpr MessageId kNoName{"edit.kept_without_name"};
constexpr MessageId kNameTaken{"edit.kept_name_taken"};
constexpr MessageId kNoEntry{"edit.kept_is_gone"};

/// Groups of circuits that must be placed together, those that need most room first.
std::vector<MovingGroup> groupsOf(const Plan& plan, const std::vector<CircuitId>& circuits) {
  std::vector<MovingGroup> groups;
  std::vector<CircuitId> done;
  for (const CircuitId start : circuits) {
    if (contains(done, start)) continue;
    MovingGroup group;
    const Result<std::vector<CircuitId>> linked = withCompanions(plan, std::span(&start, 1));
    for (const CircuitId id : linked.value()) {
      done.push_back(id);
      const Circuit& circuit = *find(plan, id);
      const Breaker& breaker = *find(plan, circuit.planned);
      const auto same = std::find_if(group.movers.begin(), group.movers.end(),
                                     [&](const Mover& mover) { return mover.breaker == breaker.id; });
      if (same == group.movers.end()) {
        group.movers.push_back({breaker.id, {id}, breaker.poles, true, connectedWatts(circuit)});
      } else {
        same->circuits.push_back(id);
        same->watts += connectedWatts(circuit);
      }
    }
    groups.push_back(std::move(group));
  }
  const auto poles = [](const MovingGroup& group) {
    std::int32_t sum = 0;
    for (const Mover& mover : group.movers) sum += mover.poles;
    return sum;
  };
  std::stable_sort(groups.begin(), groups.end(),
                   [&](const MovingGroup& a, const MovingGroup& b) { return poles(a) > poles(b); });
  return groups;
}

/// A circuit of the other house as one of this: found out on the wires there, not on these.
void forget(Circuit& circuit) {
  circuit.traced = Answer::unknown;
  if (circuit.multiwire == 0) circuit.neutralShared = Answer::unknown;
  circuit.neutralMoved = Answer::yes;
  circuit.splice = Splice::unknown;
  circuit.spliceBox = {};
  circuit.raceway = {};
  circuit.extension.reset();
  circuit.extensionLength.reset();
}

/// Puts panels, breakers and circuits of the part into the plan under new ids; the circuits that came.
std::vector<CircuitId> bringIn(Plan& plan, const Plan& part) {
  std::map<PanelId, PanelId> panels;
  for (const auto& panel : part.panels) {
    Panel copy = *panel;
    copy.id = nextPanelId(plan);
    copy.fedFrom = {};
    panels[panel->id] = copy.id;
    plan.panels.emplace_back(std::move(copy));
  }
  std::map<BreakerId, BreakerId> breakers;
  for (const auto& breaker : part.breakers) {
    Breaker copy = *breaker;
    copy.id = nextBreakerId(plan);
    copy.panel = panels[breaker->panel];
    copy.feedsPanel = {};
    breakers[breaker->id] = copy.id;
    plan.breakers.emplace_back(std::move(copy));
  }
  std::int32_t nextGroup = 1;
  for (const auto& circuit : plan.circuits) nextGroup = std::max(nextGroup, circuit->multiwire + 1);
  std::map<std::int32_t, std::int32_t> groups{{0, 0}};
  std::vector<CircuitId> came;
  for (const auto& circuit : part.circuits) {
    Circuit copy = *circuit;
    copy.id = nextCircuitId(plan);
    copy.planned = breakers[circuit->planned];
    copy.breaker = {};
    if (groups.emplace(circuit->multiwire, nextGroup).second) ++nextGroup;
    copy.multiwire = groups[circuit->multiwire];
    std::int64_t nextLoad = nextLoadId(plan).number;
    for (Load& load : copy.loads) load.id.number = nextLoad++;
    forget(copy);
    came.push_back(copy.id);
    plan.circuits.emplace_back(std::move(copy));
  }
  return came;
}

/// Lists of the plan by what they hold, each handed to `use` as a list that can be changed.
template <class Use>
auto withList(OwnLists& own, RecordKind kind, Use&& use) {
  switch (kind) {
    case RecordKind::inverter:
    case RecordKind::ownInverter:
      return use(own.inverters);
    case RecordKind::battery:
    case RecordKind::ownBattery:
      return use(own.batteries);
    case RecordKind::panel:
    case RecordKind::ownPanel:
      return use(own.panels);
    default:
      return use(own.loads);
  }
}

template <class List>
bool taken(const List& list, const std::string& name) {
  return std::any_of(list.begin(), list.end(), [&](const auto& entry) { return entry.name == name; });
}

/// What belongs to its place in the house stays there.
void detach(Load& load) {
  load.id = {};
  load.meantToRun = Answer::unknown;
}
void detach(Panel& panel) {
  panel.id = {};
  panel.fedFrom = {};
}
void detach(Inverter&) {}
void detach(Battery&) {}

/// The breaker as one of this panel: rating, poles, protection and tie stay.
void settle(Plan& plan, const Mover& mover, const Placement& placement) {
  const Stage stage = stageAt(plan, placement);
  Breaker& breaker = edit(plan, mover.breaker);
  Breaker settled;
  settled.id = breaker.id;
  settled.rating = breaker.rating;
  settled.protection = breaker.protection;
  settled.tie = breaker.tie;
  settled.notes = breaker.notes;
  settled.feeds = Feeds::circuit;
  settled.stage = stage;
  settled.listingLine = find(plan, placement.panel)->listingLine;
  setPlace(settled, placement);
  breaker = settled;
  for (const CircuitId id : mover.circuits)
    edit(plan, id).breaker = stands(settled, Reading::before) ? settled.id : BreakerId{};
}

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> partOf(const Plan& plan, std::span<const CircuitId> circuits) {
  Result<std::vector<CircuitId>> all = withCompanions(plan, circuits);
  if (!all) return all.refusal();
  std::sort(all.value().begin(), all.value().end());
  std::vector<BreakerId> breakers;
  std::vector<PanelId> panels;
  Plan part;
  for (const CircuitId id : all.value()) {
    Circuit circuit = *find(plan, id);
    const Breaker* breaker = find(plan, circuit.planned);
    if (breaker == nullptr) return say(kWithoutBreaker, circuit.name);
    if (!contains(breakers, breaker->id)) breakers.push_back(breaker->id);
    if (!contains(panels, breaker->panel)) panels.push_back(breaker->panel);
    circuit.breaker = {};
    forget(circuit);
    part.circuits.emplace_back(std::move(circuit));
  }
  for (const auto& panel : plan.panels) {
    if (!contains(panels, panel->id)) continue;
    Panel bare = *panel;
    bare.fedFrom = {};
    part.panels.emplace_back(std::move(bare));
  }
  for (const auto& breaker : plan.breakers) {
    if (contains(breakers, breaker->id)) part.breakers.push_back(breaker);
  }
  return part;
}

Result<Plan> pasteCircuits(const Plan& plan, const Plan& part, PanelId panel) {
  if (find(plan, panel) == nullptr) return say(kNoPanel);
  if (part.circuits.empty()) return say(kNothingInPart);
  for (const auto& circuit : part.circuits) {
    if (find(part, circuit->planned) == nullptr) return say(kWithoutBreaker, circuit->name);
  }
  // They stand in panels of their own first, so that the rules of a move choose where they go.
  Plan pasted = plan;
  for (const MovingGroup& group : groupsOf(pasted, bringIn(pasted, part))) {
    const Result<std::vector<Placement>> places = choosePlaces(pasted, panel, group, {}, std::nullopt);
    if (!places) return places.refusal();
    for (std::size_t i = 0; i < group.movers.size(); ++i) settle(pasted, group.movers[i], places.value()[i]);
  }
  std::vector<BreakerId> gone;
  for (const auto& breaker : pasted.breakers) {
    if (find(plan, breaker->panel) == nullptr) gone.push_back(breaker->id);
  }
  for (const BreakerId breaker : gone) eraseFrom(pasted.breakers, breaker);
  for (std::size_t i = pasted.panels.size(); i > plan.panels.size(); --i) pasted.panels.pop_back();
  return pasted;
}

Result<Plan> keepInPlan(const Plan& plan, const EntityRef& record, const std::string& name) {
  const bool kept = record.kind == RecordKind::load || record.kind == RecordKind::inverter ||
                    record.kind == RecordKind::battery || record.kind == RecordKind::panel;
  const void* found = findRecord(plan, record);
  if (!kept || found == nullptr) return say(kNoList);
  if (name.empty()) return say(kNoName);
  Plan after = plan;
  withList(after.own.edit(), record.kind, [&](auto& list) {
    auto entry = *static_cast<typename std::decay_t<decltype(list)>::const_pointer>(found);
    detach(entry);
    entry.name = name;
    for (int next = 2; taken(list, entry.name); ++next) entry.name = name + ' ' + std::to_string(next);
    list.push_back(std::move(entry));
  });
  return after;
}

Result<Plan> renameKept(const Plan& plan, const EntityRef& entry, const std::string& name) {
  if (!isOwn(entry.kind) || findRecord(plan, entry) == nullptr) return say(kNoEntry);
  if (name.empty()) return say(kNoName);
  Plan after = plan;
  const bool free = withList(after.own.edit(), entry.kind, [&](auto& list) {
    auto& renamed = list[static_cast<std::size_t>(entry.item)];
    if (renamed.name != name && taken(list, name)) return false;
    renamed.name = name;
    return true;
  });
  if (!free) return say(kNameTaken, name);
  return after;
}

Result<Plan> takeKept(const Plan& plan, const EntityRef& entry, const EntityRef& place) {
  const void* found = findRecord(plan, entry);
  if (found != nullptr && entry.kind == RecordKind::ownInverter)
    return takeInverter(plan, *static_cast<const Inverter*>(found));
  if (found != nullptr && entry.kind == RecordKind::ownBattery)
    return takeBattery(plan, *static_cast<const Battery*>(found));
  if (found != nullptr && entry.kind == RecordKind::ownPanel)
    return takePanel(plan, PanelId{place.id}, *static_cast<const Panel*>(found));
  return say(kNoEntry);
}

Plan takeInverter(const Plan& plan, Inverter inverter) {
  Plan taken = plan;
  taken.inverter = Shared<Inverter>(std::move(inverter));
  return taken;
}

Plan takeBattery(const Plan& plan, Battery battery) {
  Plan taken = plan;
  taken.battery = Shared<Battery>(std::move(battery));
  return taken;
}

Result<Plan> takePanel(const Plan& plan, PanelId panel, const Panel& enclosure) {
  const Panel* old = find(plan, panel);
  if (old == nullptr) return say(kNoPanel);
  Panel fresh = enclosure;
  fresh.id = old->id;
  fresh.name = old->name;
  fresh.role = old->role;
  fresh.fedFrom = old->fedFrom;
  fresh.neutralBonded = old->neutralBonded;
  fresh.place = old->place;
  fresh.separateBuilding = old->separateBuilding;
  fresh.groundingElectrode = old->groundingElectrode;
  fresh.buildingDisconnect = old->buildingDisconnect;
  Plan taken = plan;
  edit(taken, panel) = std::move(fresh);
  if (auto wrong = inconsistency(taken)) return *wrong;
  return taken;
}

}  // namespace stayalight
