#include "core/wiring/building.h"

#include <algorithm>
#include <array>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/panel/clearing.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kAbout{"wiring.building.about"};

RatingAmperes amperesOf(CodeNumber which, const Tables& tables) {
  return RatingAmperes(static_cast<std::int32_t>(codeNumber(which, tables)));
}

bool apart(const Plan& plan, const Panel& panel) {
  return panel.separateBuilding &&
         (!panel.role.is(PanelRole::main) || plan.transfer->serviceBondUpstream.is(Answer::yes));
}
const Panel* feeding(const Plan& plan, const Panel& panel) {
  return panel.role.is(PanelRole::backup) ? panelAhead(plan) : find(plan, panel.fedFrom);
}

// A run's own equipment ground.
Answer groundOf(const FeederRun* run) {
  if (run == nullptr || !run->fixedConductor || run->fixedGround) return Answer::yes;
  const bool metal = run->raceway.is(RacewayKind::steel) || run->raceway.is(RacewayKind::aluminium);
  return run->wiring.is(FeederWiring::nmCable) || (run->wiring.is(FeederWiring::singles) && metal)
             ? Answer::yes
             : Answer::unknown;
}

// Pieces that lead to the backup subpanel on an ordinary day or in an outage: the inverter's input beside a
// switch leads to the inverter alone.
bool onTheWay(const Plan& plan, Segment segment) {
  return segment != Segment::generatorInlet && segment != Segment::bypass &&
         (segment != Segment::mainToInverter ||
          plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
}

void recordDisconnect(const BuildingFigures& figures, Working& working) {
  const auto least = static_cast<double>(figures.leastDisconnect.count());
  record(working, FormulaId{"wiring.least_disconnect"}, RuleId{"building.disconnect_rating"}, least, "A",
         {fromPlace("D", least, "A", "225.39, circuits there: " + std::to_string(figures.circuits))});
}

void addFeeder(const Plan& plan, const std::vector<SegmentFigures>& segments, BuildingFigures& figures,
               Working* working, const Tables& tables) {
  figures.feederInPlan = true;
  figures.ownGround = segments.empty() ? Answer::unknown : Answer::yes;
  for (const SegmentFigures& segment : segments) {
    if (!onTheWay(plan, segment.segment)) continue;
    figures.pieces.push_back(segment.segment);
    if (groundOf(runOf(plan, segment.segment)) != Answer::yes) figures.ownGround = Answer::unknown;
    const ConductorChoice& wire = segment.conductor;
    if (wire.size && (!figures.supply || *wire.size > *figures.supply)) {
      figures.supply = wire.size;
      figures.metal = wire.metal;
    }
  }
  if (figures.supply) {
    figures.electrodeConductor = electrodeConductor(*figures.supply, figures.metal, tables);
    if (working != nullptr) {
      const double mils = circularMils(*figures.electrodeConductor, tables).count();
      record(*working, FormulaId{"wiring.electrode_conductor"}, RuleId{"building.electrode_conductor"}, mils,
             "cmil",
             {fromPlace("G", mils, "cmil",
                        "Table 250.66, supply of " + conductorName(*figures.supply, figures.metal) + ": " +
                            conductorName(*figures.electrodeConductor, Metal::copper))});
    }
  }
  for (const Mode mode : {Mode::ordinary, Mode::outage}) {
    const std::optional<double> drop = dropOfWay(plan, segments, mode, working);
    if (!drop) {
      figures.drop.reset();
      break;
    }
    figures.drop = std::max(figures.drop.value_or(*drop), *drop);
  }
}

}  // namespace

std::optional<double> dropOfWay(const Plan& plan, const std::vector<SegmentFigures>& segments, Mode mode,
                                Working* working) {
  std::array<double, 2> sum{};
  std::array<std::vector<StepInput>, 2> parts;
  for (const SegmentFigures& segment : segments) {
    if (!onTheWay(plan, segment.segment) || !carries(plan, segment.segment, mode)) continue;
    if (!segment.drop || !segment.entered) return std::nullopt;
    for (std::size_t leg = 0; leg < 2; ++leg) {
      sum[leg] += segment.drop->fraction[leg];
      parts[leg].push_back(fromPlace("d", segment.drop->fraction[leg], "",
                                     render(segmentName(segment.segment), plainEnglish())));
    }
  }
  if (parts[0].empty()) return std::nullopt;
  const std::size_t worse = sum[1] > sum[0] ? 1 : 0;
  if (working != nullptr)
    record(*working, FormulaId{"wiring.drop_of_way"}, RuleId{"drop.advice"}, sum[worse], "",
           std::move(parts[worse]));
  return sum[worse];
}

std::vector<const Panel*> panelsApart(const Plan& plan) {
  std::vector<const Panel*> first;
  for (const auto& panel : plan.panels) {
    if (!apart(plan, *panel) || occupants(plan, panel->id, Reading::planned).empty()) continue;
    const Panel* const ahead = feeding(plan, *panel);
    if (ahead == nullptr || ahead->id == panel->id || !apart(plan, *ahead)) first.push_back(&*panel);
  }
  return first;
}

WorkingSubject buildingSubject(const Panel& panel) { return {say(kAbout, panel.name), panel.id.number}; }

std::vector<BuildingFigures> buildingFigures(const Plan& plan, const std::vector<SegmentFigures>& segments,
                                             Working* working, const Tables& tables) {
  std::vector<BuildingFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const Panel* const panel : panelsApart(plan)) {
    BuildingFigures figures;
    figures.panel = panel->id;
    figures.electrode = panel->groundingElectrode.valueOr(Answer::unknown);
    figures.disconnect = panel->buildingDisconnect.valueOr(Answer::unknown);
    if (figures.disconnect == Answer::unknown && panel->mainBreaker) figures.disconnect = Answer::yes;
    bool twoWires = true;
    for (const auto& circuit : plan.circuits) {
      if (panelOf(plan, *circuit, Reading::planned) != panel->id) continue;
      ++figures.circuits;
      twoWires = twoWires && circuit->multiwire == 0 && !circuit->voltage.is(VoltageClass::v120_240);
    }
    figures.breakers = static_cast<std::int32_t>(occupants(plan, panel->id, Reading::planned).size());
    figures.leastDisconnect = amperesOf(figures.circuits <= 1               ? CodeNumber::buildingOneCircuit
                                        : figures.circuits == 2 && twoWires ? CodeNumber::buildingTwoCircuits
                                                                            : CodeNumber::buildingDisconnect,
                                        tables);
    figures.mainBreaker = panel->mainBreaker;
    figures.mainBelowLeast = panel->mainBreaker && *panel->mainBreaker < figures.leastDisconnect;
    const WorkingOf about(working, buildingSubject(*panel));
    if (panel->role.is(PanelRole::backup)) addFeeder(plan, segments, figures, working, tables);
    if (working != nullptr) recordDisconnect(figures, *working);
    all.push_back(std::move(figures));
  }
  return all;
}

bool crossesBuildings(const Plan& plan, const Circuit& circuit) {
  const Panel* const from = find(plan, panelOf(plan, circuit, Reading::before));
  const Panel* const to = find(plan, panelOf(plan, circuit, Reading::planned));
  return from != nullptr && to != nullptr && from->id != to->id &&
         from->separateBuilding != to->separateBuilding;
}

}  // namespace stayalight
