// Taking entities away, and nothing left behind that names them.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoSuchThing{"edit.no_such_record"};
constexpr MessageId kStays{"edit.record_stays"};
constexpr MessageId kLastMain{"edit.last_main_panel"};

bool anyCircuitNames(const Plan& plan, BreakerId breaker) {
  return std::any_of(plan.circuits.begin(), plan.circuits.end(), [&](const auto& circuit) {
    return circuit->breaker == breaker || circuit->planned == breaker;
  });
}

void forgetLoad(Plan& plan, LoadId id) {
  for (std::size_t i = 0; i < plan.transfer->managed.size(); ++i) {
    if (plan.transfer->managed[i].load == id) plan.transfer.edit().managed[i].load = {};
  }
}

void dropCircuit(Plan& plan, CircuitId id) {
  const Circuit gone = *find(plan, id);
  for (const Load& load : gone.loads) forgetLoad(plan, load.id);
  for (auto& circuit : plan.circuits) {
    for (std::size_t i = 0; i < circuit->readings.size(); ++i) {
      if (circuit->readings[i].partner == id) circuit.edit().readings[i].partner = {};
    }
  }
  eraseFrom(plan.circuits, id);
  for (const BreakerId held : {gone.planned, gone.breaker}) {
    const Breaker* breaker = find(plan, held);
    if (breaker == nullptr || anyCircuitNames(plan, held)) continue;
    if (breaker->stage.is(Stage::fresh)) {
      eraseFrom(plan.breakers, held);
      continue;
    }
    Breaker& spare = edit(plan, held);
    if (spare.feeds.is(Feeds::circuit)) spare.feeds = Feeds::nothing;
    if (spare.stage.is(Stage::leftInPlace)) spare.stage = Stage::existing;
  }
  if (gone.multiwire > 0) {
    const std::vector<CircuitId> rest = multiwireGroup(plan, gone);
    if (rest.size() == 1) edit(plan, rest.front()).multiwire = 0;  // one alone shares no neutral
  }
}

// Circuits that had another breaker before the work go back to it; those that have only this one go with it.
Result<Plan> withoutBreaker(const Plan& plan, BreakerId id) {
  Plan left = plan;
  std::vector<CircuitId> returning;
  for (const CircuitId circuit : circuitsOn(plan, id, Reading::planned)) {
    const BreakerId before = find(plan, circuit)->breaker;
    if (before != id && find(plan, before) != nullptr) returning.push_back(circuit);
  }
  if (!returning.empty()) {
    Result<Plan> back = sendBack(plan, returning);
    if (!back) return back;
    left = std::move(back).value();
  }
  for (const CircuitId circuit : circuitsOn(left, id, Reading::planned)) dropCircuit(left, circuit);
  for (const CircuitId circuit : circuitsOn(left, id, Reading::before)) edit(left, circuit).breaker = {};
  eraseFrom(left.breakers, id);
  return left;
}

Result<Plan> withoutPanel(const Plan& plan, PanelId id) {
  const Panel gone = *find(plan, id);
  const auto mains = std::count_if(plan.panels.begin(), plan.panels.end(),
                                   [](const auto& panel) { return panel->role.is(PanelRole::main); });
  if (gone.role.is(PanelRole::main) && mains == 1) return say(kLastMain);
  Plan left = plan;
  for (;;) {
    const auto inside = std::find_if(left.breakers.begin(), left.breakers.end(),
                                     [&](const auto& breaker) { return breaker->panel == id; });
    if (inside == left.breakers.end()) break;
    Result<Plan> less = withoutBreaker(left, (*inside)->id);
    if (!less) return less;
    left = std::move(less).value();
  }
  std::vector<BreakerId> feeders;
  for (const auto& breaker : left.breakers) {
    if (breaker->feedsPanel == id) feeders.push_back(breaker->id);
  }
  for (const BreakerId feeder : feeders) {
    if (find(left, feeder)->stage.is(Stage::fresh)) {
      eraseFrom(left.breakers, feeder);  // it was to be bought for this panel only
      continue;
    }
    Breaker& spare = edit(left, feeder);
    spare.feedsPanel = {};
    spare.feeds = Feeds::nothing;
  }
  std::vector<PanelId> behind;
  for (const auto& panel : left.panels) {
    if (panel->fedFrom == id) behind.push_back(panel->id);
  }
  for (const PanelId panel : behind)
    edit(left, panel).fedFrom = gone.fedFrom == panel ? PanelId{} : gone.fedFrom;
  if (left.solar->panel == id) left.solar.edit().panel = {};
  eraseFrom(left.panels, id);
  return left;
}

// Whatever ran through it, or was spliced in it, says nothing about that any more.
Plan withoutRaceway(const Plan& plan, RacewayId id) {
  Plan left = plan;
  for (auto& circuit : left.circuits) {
    if (circuit->raceway == id) circuit.edit().raceway = {};
  }
  for (auto& run : left.runs) {
    if (run->inRaceway == id) run.edit().inRaceway = {};
  }
  eraseFrom(left.raceways, id);
  return left;
}
Plan withoutSpliceBox(const Plan& plan, SpliceBoxId id) {
  Plan left = plan;
  for (auto& circuit : left.circuits) {
    if (circuit->spliceBox == id) circuit.edit().spliceBox = {};
  }
  eraseFrom(left.spliceBoxes, id);
  return left;
}

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> remove(const Plan& plan, const EntityRef& entity) {
  if (findRecord(plan, entity) == nullptr) return say(kNoSuchThing);
  Plan left = plan;
  switch (entity.kind) {
    case RecordKind::panel:
      return withoutPanel(plan, PanelId{entity.id});
    case RecordKind::breaker:
      return withoutBreaker(plan, BreakerId{entity.id});
    case RecordKind::circuit:
      dropCircuit(left, CircuitId{entity.id});
      return left;
    case RecordKind::feederRun:
      eraseFrom(left.runs, FeederRunId{entity.id});
      return left;
    case RecordKind::raceway:
      return withoutRaceway(plan, RacewayId{entity.id});
    case RecordKind::spliceBox:
      return withoutSpliceBox(plan, SpliceBoxId{entity.id});
    case RecordKind::load: {
      auto& loads = edit(left, circuitOf(plan, LoadId{entity.id})->id).loads;
      loads.erase(std::remove_if(loads.begin(), loads.end(),
                                 [&](const Load& load) { return load.id.number == entity.id; }),
                  loads.end());
      forgetLoad(left, LoadId{entity.id});
      return left;
    }
    case RecordKind::space:
    case RecordKind::useWindow:
    case RecordKind::authorityAnswer:
    case RecordKind::clampReading:
    case RecordKind::overloadPoint:
    case RecordKind::efficiencyPoint:
    case RecordKind::managedLoad:
    case RecordKind::ownLoad:
    case RecordKind::ownInverter:
    case RecordKind::ownBattery:
    case RecordKind::ownPanel:
      return removeItem(plan, entity);
    case RecordKind::plan:
    case RecordKind::site:
    case RecordKind::inverter:
    case RecordKind::battery:
    case RecordKind::solar:
    case RecordKind::generator:
    case RecordKind::transfer:
    case RecordKind::dcCable:
    case RecordKind::ownLists:
    case RecordKind::scenario:
      break;
  }
  return say(kStays);
}

}  // namespace stayalight
