// A panel in another building: its feeder's ground, its electrodes and disconnect, what runs between the
// buildings.

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kGround{"building.ground"};
constexpr RuleId kElectrode{"building.electrode"};
constexpr RuleId kElectrodeConductor{"building.electrode_conductor"};
constexpr RuleId kDisconnect{"building.disconnect"};
constexpr RuleId kDisconnectRating{"building.disconnect_rating"};
constexpr RuleId kSixHandles{"building.six_handles"};
constexpr RuleId kCable{"building.nm_outside"};
constexpr RuleId kSupplies{"building.supplies"};
constexpr RuleId kCircuit{"building.circuit"};
constexpr RuleId kDrop{"drop.advice"};

constexpr MessageId kGroundPlain{"review.building.ground.plain"};
constexpr MessageId kGroundTrade{"review.building.ground.trade"};
constexpr MessageId kBondPlain{"review.building.bond.plain"};
constexpr MessageId kBondTrade{"review.building.bond.trade"};
constexpr MessageId kNoElectrodePlain{"review.building.electrode_missing.plain"};
constexpr MessageId kNoElectrodeTrade{"review.building.electrode_missing.trade"};
constexpr MessageId kElectrodePlain{"review.building.electrode_unknown.plain"};
constexpr MessageId kElectrodeTrade{"review.building.electrode_unknown.trade"};
constexpr MessageId kElectrodeSize{"review.building.electrode_size"};
constexpr MessageId kElectrodeByTable{"review.building.electrode_by_table"};
constexpr MessageId kNoDisconnectPlain{"review.building.disconnect_missing.plain"};
constexpr MessageId kNoDisconnectTrade{"review.building.disconnect_missing.trade"};
constexpr MessageId kDisconnectPlain{"review.building.disconnect_unknown.plain"};
constexpr MessageId kDisconnectTrade{"review.building.disconnect_unknown.trade"};
constexpr MessageId kSmallPlain{"review.building.disconnect_small.plain"};
constexpr MessageId kSmallTrade{"review.building.disconnect_small.trade"};
constexpr MessageId kCablePlain{"review.building.cable.plain"};
constexpr MessageId kCableTrade{"review.building.cable.trade"};
constexpr MessageId kSuppliesPlain{"review.building.supplies.plain"};
constexpr MessageId kSuppliesTrade{"review.building.supplies.trade"};
constexpr MessageId kCircuitsPlain{"review.building.circuits.plain"};
constexpr MessageId kCircuitsTrade{"review.building.circuits.trade"};
constexpr MessageId kDropPlain{"review.building.drop.plain"};
constexpr MessageId kDropTrade{"review.building.drop.trade"};

Figure rating(RatingAmperes value) { return {static_cast<double>(value.count()), "A", 0}; }

/// Runs among the pieces of which this holds.
template <class Test>
std::vector<const FeederRun*> runsThat(const ReviewInput& in, const BuildingFigures& building, Test test) {
  std::vector<const FeederRun*> runs;
  for (const Segment piece : building.pieces) {
    const FeederRun* run = runOf(in.plan, piece);
    if (run != nullptr && test(*run)) runs.push_back(run);
  }
  return runs;
}
std::vector<Message> namesOf(const std::vector<const FeederRun*>& runs) {
  std::vector<Message> names;
  names.reserve(runs.size());
  for (const FeederRun* run : runs) names.push_back(segmentName(run->segment.valueOr(Segment::mainToSwitch)));
  return names;
}
std::vector<EntityRef> placesOf(const std::vector<const FeederRun*>& runs, const Panel& panel) {
  std::vector<EntityRef> places;
  places.reserve(runs.size() + 1);
  for (const FeederRun* run : runs) places.push_back({RecordKind::feederRun, run->id.number});
  places.push_back(at(panel));
  return places;
}

void grounding(const ReviewInput& in, const BuildingFigures& building, const Panel& panel, Findings& out) {
  const auto runs = runsThat(in, building, [&](const FeederRun& run) {
    return isOpen(in, "feeder_run.fixed_ground", {RecordKind::feederRun, run.id.number});
  });
  if (building.feederInPlan && building.ownGround != Answer::yes && !runs.empty()) {
    out.add("building.ground", Severity::checkOnSite, kGround, say(kGroundPlain, nameOf(panel)),
            say(kGroundTrade, nameOf(panel), namesOf(runs)), placesOf(runs, panel));
  }
  // In the backup subpanel, which is new, any bond is a danger: core/review/sources.cpp.
  if (panel.neutralBonded.is(Answer::yes) && !panel.role.is(PanelRole::backup)) {
    out.add("building.bond", Severity::mustFix, kGround, say(kBondPlain, nameOf(panel)),
            say(kBondTrade, nameOf(panel)), {at(panel)});
  }
  const std::vector<Message> size{
      building.electrodeConductor
          ? say(kElectrodeSize, conductorName(*building.electrodeConductor, Metal::copper),
                Citation{kElectrodeConductor}, conductorName(*building.supply, building.metal),
                conductorName(rodElectrodeConductor(in.tables), Metal::copper))
          : say(kElectrodeByTable, Citation{kElectrodeConductor})};
  if (building.electrode == Answer::no) {
    out.add("building.electrode_missing", Severity::mustFix, kElectrode,
            say(kNoElectrodePlain, nameOf(panel)), say(kNoElectrodeTrade, nameOf(panel), size), {at(panel)});
  } else if (isOpen(in, "panel.grounding_electrode", at(panel))) {
    out.add("building.electrode_unknown", Severity::checkOnSite, kElectrode,
            say(kElectrodePlain, nameOf(panel)), say(kElectrodeTrade, nameOf(panel), size), {at(panel)});
  }
}

void disconnect(const ReviewInput& in, const BuildingFigures& building, const Panel& panel, Findings& out) {
  const Figure least = rating(building.leastDisconnect);
  if (building.disconnect == Answer::no) {
    out.add("building.disconnect_missing", Severity::mustFix, kDisconnect,
            say(kNoDisconnectPlain, nameOf(panel)), say(kNoDisconnectTrade, nameOf(panel), least),
            {at(panel)});
  } else if (isOpen(in, "panel.building_disconnect", at(panel))) {
    out.add("building.disconnect_unknown", Severity::checkOnSite, kDisconnect,
            say(kDisconnectPlain, nameOf(panel)),
            say(kDisconnectTrade, nameOf(panel), least, static_cast<std::int64_t>(building.breakers),
                Citation{kSixHandles}),
            {at(panel)});
  }
  // A switch ahead of the panel, answered with yes, may be the larger one.
  if (building.mainBelowLeast && !panel.buildingDisconnect.is(Answer::yes)) {
    out.add("building.disconnect_small", Severity::mustFix, kDisconnectRating,
            say(kSmallPlain, nameOf(panel)),
            say(kSmallTrade, nameOf(panel), rating(*building.mainBreaker),
                static_cast<std::int64_t>(building.circuits), least),
            {at(panel)});
  }
}

void feederBetween(const ReviewInput& in, const BuildingFigures& building, const Panel& panel,
                   Findings& out) {
  const auto cables =
      runsThat(in, building, [](const FeederRun& run) { return run.wiring.is(FeederWiring::nmCable); });
  // Where only some of the pieces are cable, nobody knows which of them leads outdoors.
  if (!cables.empty()) {
    out.add("building.cable",
            cables.size() == building.pieces.size() ? Severity::mustFix : Severity::checkOnSite, kCable,
            say(kCablePlain, nameOf(panel)), say(kCableTrade, nameOf(panel), namesOf(cables)),
            placesOf(cables, panel));
  }
  const double advice = dropAdviceOneRun(in.tables).count();
  const bool said = in.segments != nullptr &&
                    std::any_of(in.segments->begin(), in.segments->end(), [&](const SegmentFigures& segment) {
                      return segment.drop && segment.entered &&
                             std::max(segment.drop->fraction[0], segment.drop->fraction[1]) > advice;
                    });
  if (building.drop && *building.drop > advice && !said) {
    out.add("building.drop", Severity::advice, kDrop, say(kDropPlain, nameOf(panel)),
            say(kDropTrade, nameOf(panel), percent(*building.drop, 1), percent(advice, 0)), {at(panel)});
  }
}

void buildings(const ReviewInput& in, Findings& out) {
  if (in.buildings == nullptr) return;
  std::vector<std::string> names;
  std::vector<EntityRef> places;
  for (const BuildingFigures& building : *in.buildings) {
    const Panel& panel = *find(in.plan, building.panel);
    grounding(in, building, panel, out);
    disconnect(in, building, panel, out);
    feederBetween(in, building, panel, out);
    names.push_back(nameOf(panel));
    places.push_back(at(panel));
  }
  if (names.size() > 1) {
    out.add("building.supplies", Severity::checkOnSite, kSupplies, say(kSuppliesPlain, listed(names)),
            say(kSuppliesTrade, listed(names)), places);
  }
}

void circuitsBetween(const ReviewInput& in, Findings& out) {
  if (canadian(in.plan)) return;
  std::vector<std::string> names;
  std::vector<EntityRef> places;
  for (const auto& circuit : in.plan.circuits) {
    if (!crossesBuildings(in.plan, *circuit)) continue;
    names.push_back(nameOf(*circuit));
    places.push_back(at(*circuit));
  }
  if (names.empty()) return;
  out.add("building.circuits", Severity::checkOnSite, kCircuit, say(kCircuitsPlain, listed(names)),
          say(kCircuitsTrade, listed(names)), places);
}

constexpr Rule kRules[] = {buildings, circuitsBetween};

}  // namespace

std::span<const Rule> buildingRules() { return kRules; }

}  // namespace stayalight::reviewing
