// New panels, breakers, circuits, loads and runs.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoCircuit{"edit.no_such_circuit"};
constexpr MessageId kNoSpaceFree{"edit.no_space_free"};
constexpr MessageId kMainName{"edit.main_panel_name"};
constexpr MessageId kSubpanelName{"edit.subpanel_name"};
constexpr MessageId kBackupName{"edit.backup_subpanel_name"};

// Sizes a new panel starts with, to be set as found. Common practice, no source.
constexpr std::int32_t kMainSpaces = 20;
constexpr std::int32_t kSubpanelSpaces = 8;

std::string startingName(PanelRole role) {
  return render(say(role == PanelRole::main     ? kMainName
                    : role == PanelRole::backup ? kBackupName
                                                : kSubpanelName),
                plainEnglish());
}

bool isSource(Feeds feeds) {
  return feeds == Feeds::inverterOutput || feeds == Feeds::solar || feeds == Feeds::generator ||
         feeds == Feeds::utility;
}

std::optional<Message> checkRating(RatingAmperes rating) {
  return check(*fieldOf(RecordKind::breaker, "rating_A"), std::int64_t{rating.count()});
}

// The backup subpanel that no feeder breaker reaches yet.
PanelId unfedBackupPanel(const Plan& plan, PanelId from) {
  const Panel* backup = backupPanel(plan);
  if (backup == nullptr || backup->id == from) return {};
  const bool fed = std::any_of(plan.breakers.begin(), plan.breakers.end(),
                               [&](const auto& breaker) { return breaker->feedsPanel == backup->id; });
  return fed ? PanelId{} : backup->id;
}

// One more record at the end of its list.
template <class Record>
Plan withRecord(const Plan& plan, std::vector<Shared<Record>> Plan::*list, Record record,
                decltype(Record::id) id) {
  record.id = id;
  Plan added = plan;
  (added.*list).emplace_back(std::move(record));
  return added;
}

}  // namespace
}  // namespace editing

using namespace editing;

Plan newPlan() { return addPanel(addPanel(Plan{}, PanelRole::main), PanelRole::backup); }

Plan addPanel(const Plan& plan, PanelRole role) {
  Panel panel;
  panel.id = nextPanelId(plan);
  panel.role = role;
  panel.name = startingName(role);
  panel.spaces = role == PanelRole::main ? kMainSpaces : kSubpanelSpaces;
  if (const Panel* ahead = mainPanel(plan); ahead != nullptr && role != PanelRole::main)
    panel.fedFrom = ahead->id;
  Plan added = plan;
  added.panels.emplace_back(panel);
  return added;
}

Result<Plan> addBreaker(const Plan& plan, const Placement& placement, RatingAmperes rating, Feeds feeds) {
  if (auto reason = refusal(plan, placement, {})) return *reason;
  if (auto reason = checkRating(rating)) return *reason;
  Breaker breaker;
  breaker.id = nextBreakerId(plan);
  setPlace(breaker, placement);
  breaker.rating = rating;
  breaker.feeds = feeds;
  breaker.stage = stageAt(plan, placement);
  breaker.listingLine = find(plan, placement.panel)->listingLine;
  if (feeds == Feeds::feeder) {
    breaker.feedsPanel = unfedBackupPanel(plan, placement.panel);
    if (breaker.feedsPanel.valid()) breaker.stage = Stage::fresh;
  }
  if (feeds == Feeds::inverterInput || feeds == Feeds::inverterOutput) breaker.stage = Stage::fresh;
  if (isSource(feeds)) breaker.backFed = Answer::yes;
  Plan added = plan;
  added.breakers.emplace_back(breaker);
  return added;
}

Result<Plan> addCircuit(const Plan& plan, PanelId panel, std::optional<Placement> placement,
                        std::int32_t poles, RatingAmperes rating, std::string name) {
  Placement place{panel, {}, Half::whole, poles};
  if (placement) {
    place.position = placement->position;
    place.half = placement->half;
  } else {
    if (auto missing = noSuchPlace(plan, {panel, {}, Half::whole, poles})) return *missing;
    const std::vector<Placement> free = landings(plan, panel, poles, {});
    if (free.empty()) return say(kNoSpaceFree, find(plan, panel)->name);
    place = free.front();
  }
  if (auto reason = check(*fieldOf(RecordKind::circuit, "name"), name)) return *reason;
  Result<Plan> added = addBreaker(plan, place, rating, Feeds::circuit);
  if (!added) return added;
  const Breaker& breaker = *added.value().breakers.back();
  Circuit circuit;
  circuit.id = nextCircuitId(plan);
  circuit.name = std::move(name);
  circuit.planned = breaker.id;
  if (stands(breaker, Reading::before)) circuit.breaker = breaker.id;
  circuit.voltage = poles == 2 ? VoltageClass::v240 : VoltageClass::v120;
  added.value().circuits.emplace_back(std::move(circuit));
  return added;
}

Result<Plan> addLoad(const Plan& plan, CircuitId circuit, Load load) {
  if (find(plan, circuit) == nullptr) return say(kNoCircuit);
  load.id = nextLoadId(plan);
  for (const Field& field : recordType(RecordKind::load).fields) {
    if (auto reason = check(field, field.get(&load))) return *reason;
  }
  for (const UseWindow& window : load.windows) {
    for (const Field& field : recordType(RecordKind::useWindow).fields) {
      if (auto reason = check(field, field.get(&window))) return *reason;
    }
  }
  Plan added = plan;
  edit(added, circuit).loads.push_back(std::move(load));
  return added;
}

Plan addFeederRun(const Plan& plan, Segment segment) {
  FeederRun run;
  run.segment = segment;
  return withRecord(plan, &Plan::runs, std::move(run), nextFeederRunId(plan));
}
Plan addRaceway(const Plan& plan) {
  return withRecord(plan, &Plan::raceways, Raceway{}, nextRacewayId(plan));
}
Plan addSpliceBox(const Plan& plan) {
  return withRecord(plan, &Plan::spliceBoxes, SpliceBox{}, nextSpliceBoxId(plan));
}

}  // namespace stayalight
