#include "core/assess/assess.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/use/hour_loads.h"

namespace stayalight {
namespace {

// A breaker's pole that stands on a leg; its first pole where both or none do.
std::size_t poleOnLeg(const std::vector<Leg>& legs, Leg leg) {
  const auto at = std::find(legs.begin(), legs.end(), leg);
  return at == legs.end() ? 0 : static_cast<std::size_t>(at - legs.begin());
}

Grade worseGrade(const std::optional<Grade>& so_far, Grade next) {
  return so_far ? std::min(*so_far, next) : next;
}

// How the current of one pole came about: its loads' watts and vars, and the volts of its leg.
void recordPole(const Plan& plan, const std::vector<Draw>& loads, const Panel& panel, const Breaker& breaker,
                Leg leg, WyeOrder order, const SystemVoltages& system, Working& working) {
  std::array<Step, 2> sums;
  for (const std::size_t part : {std::size_t{0}, std::size_t{1}}) {
    sums[part].formula = FormulaId{part == 0 ? "power.connected" : "power.connected_reactive"};
    sums[part].unit = part == 0 ? Watts::unit() : Vars::unit();
  }
  for (const Draw& draw : loads) {
    if (draw.breaker != breaker.id || !draw.onLeg[index(leg)]) continue;
    const auto* load = static_cast<const Load*>(findRecord(plan, {RecordKind::load, draw.load.number}));
    const ComplexPower power = inOrder(draw.likely, system, order).leg[index(leg)];
    const std::string from = load != nullptr ? load->name : std::string();
    sums[0].inputs.push_back({"P", power.real.count(), Watts::unit(), draw.grade, kNoStep, from});
    sums[1].inputs.push_back({"Q", power.reactive.count(), Vars::unit(), draw.grade, kNoStep, from});
    sums[0].result += power.real.count();
    sums[1].result += power.reactive.count();
  }
  if (sums[0].inputs.empty()) return;
  Step step;
  step.formula = FormulaId{"current.from_power"};
  step.inputs.push_back({"P", sums[0].result, Watts::unit(), std::nullopt, working.add(sums[0]), ""});
  step.inputs.push_back({"Q", sums[1].result, Vars::unit(), std::nullopt, working.add(sums[1]), ""});
  step.inputs.push_back(
      {"V", system.legToNeutral.count(), "V", std::nullopt, kNoStep, "nominal, leg to neutral"});
  step.result = std::hypot(sums[0].result, sums[1].result) / system.legToNeutral.count();
  step.unit = AcAmperes::unit();
  step.note = breakerRunning(panel, breaker, leg);
  working.add(std::move(step));
}

// What each breaker of a panel carries while all its loads run, and what that makes by leg.
void addPanel(const Plan& plan, const Panel& panel, Reading reading, std::vector<BreakerFigures>& breakers,
              std::array<ComplexPower, 2>& connected, Working* working, const Tables& tables) {
  const SystemVoltages system =
      voltages(plan, panel.role.is(PanelRole::backup) ? Mode::outage : Mode::ordinary, tables);
  struct OnBreaker {
    LegPower power;
    std::optional<Grade> grade;
    bool known = true;
  };
  std::vector<std::pair<BreakerId, OnBreaker>> sums;
  const std::vector<Draw> loads = draws(plan, panel.id, reading, system, tables);
  for (const Draw& draw : loads) {
    auto at = std::find_if(sums.begin(), sums.end(), [&](const auto& s) { return s.first == draw.breaker; });
    if (at == sums.end()) at = sums.insert(sums.end(), {draw.breaker, {}});
    OnBreaker& sum = at->second;
    sum.power += draw.likely;
    sum.grade = worseGrade(sum.grade, draw.grade);
    sum.known = sum.known && draw.known;
  }
  LegPower all;
  for (const auto& each : sums) all += each.second.power;
  for (const Leg leg : {Leg::l1, Leg::l2}) connected[index(leg)] = legPower(all, system, leg);
  for (const auto& [id, sum] : sums) {
    const Breaker* breaker = find(plan, id);
    if (breaker == nullptr) continue;
    const std::vector<Leg> legs = poleLegs(panel, placementOf(*breaker));
    BreakerFigures figures;
    figures.breaker = id;
    figures.grade = sum.grade;
    figures.known = sum.known;
    for (const Leg leg : legs) {
      const std::size_t pole = poleOnLeg(legs, leg);
      figures.running[pole] = legCurrent(sum.power, system, leg);
      figures.connected[pole] = legPower(sum.power, system, leg).apparent();
      if (working != nullptr) {
        recordPole(plan, loads, panel, *breaker, leg, orderOfLeg(sum.power, system, leg), system, *working);
      }
    }
    breakers.push_back(figures);
  }
}

// The panel a breaker carries the load of on an ordinary day; none where it feeds none.
PanelId panelFedBy(const Plan& plan, const Breaker& breaker) {
  if (!stands(breaker, Reading::planned)) return {};
  if (breaker.feeds.is(Feeds::feeder)) return breaker.feedsPanel;
  const Panel* backup = backupPanel(plan);
  const bool passesThrough = breaker.feeds.is(Feeds::inverterInput) &&
                             plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  return passesThrough && backup != nullptr ? backup->id : PanelId{};
}

// Load of a panel and of those behind it, by leg. `depth` ends a plan whose panels feed each other in a ring.
std::array<ComplexPower, 2> withFed(const Plan& plan, const Assessment& result, PanelId panel, int depth) {
  std::array<ComplexPower, 2> sum;
  for (const PanelFigures& figures : result.panels) {
    if (figures.panel == panel) sum = figures.connected;
  }
  if (depth <= 0) return sum;
  for (const auto& breaker : plan.breakers) {
    const PanelId fed = panelFedBy(plan, *breaker);
    if (breaker->panel != panel || !fed.valid() || fed == panel) continue;
    const std::array<ComplexPower, 2> behind = withFed(plan, result, fed, depth - 1);
    for (std::size_t leg = 0; leg < 2; ++leg) sum[leg] += behind[leg];
  }
  return sum;
}

// Gives feeder breakers the load of the panel behind them, and each panel the sum of what it feeds.
void addFeeders(const Plan& plan, Assessment& result, const Tables& tables) {
  const int panels = static_cast<int>(plan.panels.size());
  const AcVolts volts = voltages(plan, Mode::ordinary, tables).legToNeutral;
  for (const auto& breaker : plan.breakers) {
    const PanelId fed = panelFedBy(plan, *breaker);
    const Panel* panel = find(plan, breaker->panel);
    if (!fed.valid() || fed == breaker->panel || panel == nullptr) continue;
    const std::array<ComplexPower, 2> behind = withFed(plan, result, fed, panels);
    BreakerFigures figures;
    figures.breaker = breaker->id;
    const std::vector<Leg> legs = poleLegs(*panel, placementOf(*breaker));
    for (std::size_t pole = 0; pole < legs.size() && pole < 2; ++pole) {
      figures.connected[pole] = behind[index(legs[pole])].apparent();
      figures.running[pole] = figures.connected[pole] / volts;
    }
    result.breakers.push_back(figures);
    for (PanelFigures& mine : result.panels) {
      if (mine.panel != breaker->panel) continue;
      for (std::size_t leg = 0; leg < 2; ++leg) mine.fed[leg] += behind[leg];
    }
  }
}

}  // namespace

Message breakerRunning(const Panel& panel, const Breaker& breaker, Leg leg) {
  return say(MessageId{"use.breaker_running"}, spaceNames(panel, placementOf(breaker)), panel.name,
             std::string(legName(leg)));
}

Assessment assess(const Plan& plan, const Scenario& scenario, const Circumstances& circumstances) {
  Assessment result;
  Working* working = circumstances.record ? &result.working : nullptr;
  const Tables& tables = *circumstances.tables;

  for (const auto& panel : plan.panels) {
    PanelFigures figures;
    figures.panel = panel->id;
    figures.freeSpaces = freeSpaces(plan, panel->id);
    addPanel(plan, *panel, Reading::planned, result.breakers, figures.connected, working, tables);
    addPanel(plan, *panel, Reading::before, result.breakersBefore, figures.connectedBefore, nullptr, tables);
    result.panels.push_back(figures);
  }
  addFeeders(plan, result, tables);
  for (auto* figures : {&result.breakers, &result.breakersBefore}) {
    std::sort(figures->begin(), figures->end(),
              [](const BreakerFigures& a, const BreakerFigures& b) { return a.breaker < b.breaker; });
  }

  const Panel* backup = backupPanel(plan);
  result.hasBackup = backup != nullptr;
  result.system = voltages(plan, Mode::outage, tables);
  result.limits = inverterLimits(*plan.inverter, tables);
  const Edition edition = plan.site->edition.valueOr(Edition::y2023);
  result.demand = demandFigures(plan, edition, result.limits, working, tables);
  if (backup != nullptr) {
    const std::vector<Draw> all = draws(plan, backup->id, Reading::planned, result.system, tables);
    std::vector<Draw> loads;  // what may run in an outage
    std::copy_if(all.begin(), all.end(), std::back_inserter(loads),
                 [&](const Draw& draw) { return !offInOutage(plan, draw.load); });
    const HourLoads hour(plan, loads, result.system, scenario.month, scenario.start.hour());
    const DayUses day = dayUses(plan, loads, scenario.month);
    result.hour = hourFigures(hour, result.limits, working);
    result.profile = dayProfile(loads, day, result.system);
    result.peaks = dayPeaks(loads, day, result.system);
    result.starts = startFigures(plan, hour, result.limits, working, tables);
    LegPower operating;
    for (const Draw& draw : all) operating += draw.likely;
    result.segments = segmentFigures(
        plan,
        segmentLoads(plan, result.hour, operating, result.limits, result.demand.feederLoad, working, tables),
        edition, working, tables);
    result.outage =
        outageFigures(plan, scenario, result.profile, result.peaks, result.limits, working, tables);
  }

  result.dcCable = dcCableFigures(plan, edition, working, tables);
  result.buildings = buildingFigures(plan, result.segments, working, tables);
  result.buses = busFigures(plan, result.limits, result.segments, working, tables);
  result.raceways = racewayFigures(plan, result.segments, edition, working, tables);
  result.boxes = spliceBoxFigures(plan, edition, working, tables);
  result.wiringSpaces = wiringSpaceFigures(plan, result.segments, working, tables);

  if (const Panel* ahead = panelAhead(plan)) result.supplyPlaces = clearedPlaces(plan, ahead->id);
  result.onSite = onSiteList(plan, tables);

  ReviewInput input{.plan = plan, .tables = tables};
  input.onSite = &result.onSite;
  input.edition = edition;
  input.dcCable = result.dcCable ? &*result.dcCable : nullptr;
  input.buildings = &result.buildings;
  input.buses = &result.buses;
  input.raceways = &result.raceways;
  input.boxes = &result.boxes;
  input.wiringSpaces = &result.wiringSpaces;
  input.supplyPlaces = &result.supplyPlaces;
  input.demand = &result.demand;
  if (backup != nullptr) {
    input.hour = &result.hour;
    input.starts = &result.starts;
    input.segments = &result.segments;
    input.outage = &result.outage;
  }
  result.findings = review(input);
  return result;
}

}  // namespace stayalight
