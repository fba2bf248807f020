// Conductor and breaker of each branch circuit, smoke alarms, aluminium, protection.

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/review/rules.h"
#include "core/use/use.h"
#include "core/wiring/branch.h"
#include "core/wiring/branch_load.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kProtected{"conductor.protected"};
constexpr RuleId kBranchLoad{"branch.load"};
constexpr RuleId kListing{"breaker.listing"};
constexpr RuleId kAlarmsTogether{"practice.alarms_together"};
constexpr RuleId kPoles{"practice.two_pole_legs"};
constexpr RuleId kRuntime{"practice.runtime"};
constexpr RuleId kArcFault{"afci.dwelling"};
constexpr RuleId kGroundFault{"gfci.receptacles"};
constexpr RuleId kOneWire{"terminal.one_conductor"};

constexpr MessageId kOverPlain{"review.branch.conductor.plain"};
constexpr MessageId kOverTrade{"review.branch.conductor.trade"};
constexpr MessageId kOverTradeNone{"review.branch.conductor.trade_none"};
constexpr MessageId kOverFix{"review.branch.conductor.fix"};
constexpr MessageId kLoadPlain{"review.branch.load_above.plain"};
constexpr MessageId kLoadTrade{"review.branch.load_above.trade"};
constexpr MessageId kMotorLoadTrade{"review.branch.load_above.motor"};
constexpr MessageId kReadLabelPlain{"review.branch.read_label.plain"};
constexpr MessageId kReadLabelTrade{"review.branch.read_label.trade"};
constexpr MessageId kNextPlain{"review.branch.next_size_up.plain"};
constexpr MessageId kNextTrade{"review.branch.next_size_up.trade"};
constexpr MessageId kNextUnknownPlain{"review.branch.next_size_unknown.plain"};
constexpr MessageId kNextUnknownTrade{"review.branch.next_size_unknown.trade"};
constexpr MessageId kTooMuchPlain{"review.branch.overload.plain"};
constexpr MessageId kTooMuchTrade{"review.branch.overload.trade"};
constexpr MessageId kVoltagePlain{"review.load.voltage.plain"};
constexpr MessageId kVoltageTrade{"review.load.voltage.trade"};
constexpr MessageId kToNeutral{"review.load.voltage.to_neutral"};
constexpr MessageId kBetweenHots{"review.load.voltage.between_hots"};
constexpr MessageId kGonePlain{"review.branch.breaker_gone.plain"};
constexpr MessageId kGoneTrade{"review.branch.breaker_gone.trade"};
constexpr MessageId kNoNeutralPlain{"review.load.no_neutral.plain"};
constexpr MessageId kNoNeutralTrade{"review.load.no_neutral.trade"};
constexpr MessageId kNoNeutralFix{"review.load.no_neutral.fix"};
constexpr MessageId kAmperesPlain{"review.load.amperes_above_watts.plain"};
constexpr MessageId kAmperesTrade{"review.load.amperes_above_watts.trade"};
constexpr MessageId kPlatePlain{"review.load.nameplate_low.plain"};
constexpr MessageId kPlateTrade{"review.load.nameplate_low.trade"};
constexpr MessageId kLabelPlain{"review.branch.label_maximum.plain"};
constexpr MessageId kLabelTrade{"review.branch.label_maximum.trade"};
constexpr MessageId kRaisedPlain{"review.branch.rating_raised.plain"};
constexpr MessageId kRaisedTrade{"review.branch.rating_raised.trade"};
constexpr MessageId kPolesPlain{"review.branch.poles.plain"};
constexpr MessageId kPolesTrade{"review.branch.poles.trade"};
constexpr MessageId kTwoWiresPlain{"review.branch.two_on_breaker.plain"};
constexpr MessageId kTwoWiresTrade{"review.branch.two_on_breaker.trade"};
constexpr MessageId kAluminiumPlain{"review.branch.aluminium.plain"};
constexpr MessageId kAluminiumTrade{"review.branch.aluminium.trade"};
constexpr MessageId kArcLostPlain{"review.branch.arc_fault_lost.plain"};
constexpr MessageId kArcLostTrade{"review.branch.arc_fault_lost.trade"};
constexpr MessageId kGroundLostPlain{"review.branch.ground_fault_lost.plain"};
constexpr MessageId kGroundLostTrade{"review.branch.ground_fault_lost.trade"};
constexpr MessageId kFixAfci{"review.branch.lost.fix_afci"};
constexpr MessageId kFixGfci{"review.branch.lost.fix_gfci"};
constexpr MessageId kFixDual{"review.branch.lost.fix_dual"};
constexpr MessageId kUntracedPlain{"review.branch.untraced.plain"};
constexpr MessageId kUntracedTrade{"review.branch.untraced.trade"};
constexpr MessageId kRatingPlain{"review.branch.rating_not_read.plain"};
constexpr MessageId kRatingTrade{"review.branch.rating_not_read.trade"};
constexpr MessageId kSplitAlarmsPlain{"review.alarms.split.plain"};
constexpr MessageId kSplitAlarmsTrade{"review.alarms.split.trade"};
constexpr MessageId kSplitAlarmsFix{"review.alarms.split.fix"};
constexpr MessageId kAlarmsUnknownPlain{"review.alarms.unknown.plain"};
constexpr MessageId kAlarmsUnknownTrade{"review.alarms.unknown.trade"};

Figure whole(RatingAmperes rating) { return {static_cast<double>(rating.count()), "A", 0}; }

void conductorAndBreaker(const ReviewInput& in, Findings& out) {
  if (canadian(in.plan)) return;
  for (const auto& circuit : in.plan.circuits) {
    const std::optional<PlannedBranch> branch = plannedBranch(in.plan, *circuit, in.edition, in.tables);
    if (!branch) continue;
    const Breaker* breaker = &branch->breaker;
    const std::optional<AcAmperes>& carries = branch->ampacity;
    const std::string wire = conductorName(branch->size, branch->metal);
    const BranchAnswer& answer = branch->answer;
    switch (answer.protection) {
      case BranchProtection::holds:
      case BranchProtection::labelAllows:
        break;
      case BranchProtection::readLabel:
        out.add("branch.read_label", Severity::checkOnSite, answer.rule,
                say(kReadLabelPlain, nameOf(*circuit)),
                say(kReadLabelTrade, nameOf(*circuit), wire, whole(breaker->rating)), {at(*circuit)});
        break;
      case BranchProtection::receptacles:
        out.add("branch.next_size_up", Severity::mustFix, answer.rule, say(kNextPlain, nameOf(*circuit)),
                say(kNextTrade, nameOf(*circuit), wire, amperes(carries->count()), whole(breaker->rating)),
                {at(*circuit)});
        break;
      case BranchProtection::receptaclesUnknown:
        out.add(
            "branch.next_size_unknown", Severity::checkOnSite, answer.rule,
            say(kNextUnknownPlain, nameOf(*circuit)),
            say(kNextUnknownTrade, nameOf(*circuit), wire, amperes(carries->count()), whole(breaker->rating)),
            {at(*circuit)});
        break;
      case BranchProtection::loadAboveAmpacity:
        out.add("branch.load_above", Severity::mustFix, answer.rule, say(kLoadPlain, nameOf(*circuit)),
                say(answer.kind == BranchKind::ordinary ? kLoadTrade : kMotorLoadTrade, nameOf(*circuit),
                    wire, amperes(carries->count()), amperes(answer.asked->count())),
                {at(*circuit)});
        break;
      case BranchProtection::over: {
        Finding& finding = out.add(
            "branch.conductor", Severity::mustFix, answer.rule, say(kOverPlain, nameOf(*circuit)),
            answer.most ? say(kOverTrade, nameOf(*circuit), wire, whole(breaker->rating), whole(*answer.most))
                        : say(kOverTradeNone, nameOf(*circuit), wire, whole(breaker->rating)),
            {at(*circuit), at(*breaker)});
        if (answer.most && breaker->stage.is(Stage::fresh)) {
          out.offer(finding,
                    fix::SetField{at(*breaker), "rating_A", static_cast<std::int64_t>(answer.most->count())},
                    say(kOverFix, whole(*answer.most)));
        }
        break;
      }
    }
  }
}

/// The load of this circuit that draws so; null for one of another circuit or not known.
const Load* loadOf(const Circuit& circuit, const Draw& draw) {
  if (draw.circuit != circuit.id || !draw.known) return nullptr;
  const auto load = std::find_if(circuit.loads.begin(), circuit.loads.end(),
                                 [&](const Load& each) { return each.id == draw.load; });
  return load == circuit.loads.end() ? nullptr : &*load;
}

// One load that is more than its breaker is for, or continuous loads that together are. Other loads of a
// circuit need not run at one time, but for those of an individual circuit: after an outage all start at
// once.
void loadAboveBreaker(const ReviewInput& in, Findings& out) {
  const double factor = continuousFactor(in.tables).count();
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const Panel* panel = breaker != nullptr ? find(in.plan, breaker->panel) : nullptr;
    if (panel == nullptr) continue;
    const SystemVoltages system = voltages(in.plan, Mode::ordinary, in.tables);
    const bool individual = circuit->calculationUse.is(CircuitUse::individual);
    LegPower continuous, all;
    AcAmperes asked;
    const Load* largest = nullptr;
    const std::vector<Draw> onPanel = draws(in.plan, panel->id, Reading::planned, system, in.tables);
    VoltAmperes cooking;
    for (const Draw& draw : onPanel) {
      const Load* load = loadOf(*circuit, draw);
      if (load != nullptr && load->calculationClass.is(LoadClass::cooking))
        cooking += draw.likely.total().apparent();
    }
    const double ofRange = rangeShare(cooking, in.edition, in.tables);
    for (const Draw& draw : onPanel) {
      const Load* load = loadOf(*circuit, draw);
      if (load == nullptr) continue;
      const LegPower power = draw.likely * (load->calculationClass.is(LoadClass::cooking) ? ofRange : 1.0);
      const bool lastingLoad = countsAsContinuous(*load);
      if (lastingLoad) continuous += power;
      all += power;
      for (const Leg leg : {Leg::l1, Leg::l2}) {
        const AcAmperes alone = legCurrent(power, system, leg) * (lastingLoad ? factor : 1.0);
        const AcAmperes lasting = legCurrent(continuous, system, leg);
        const AcAmperes together =
            individual ? legCurrent(all, system, leg) + lasting * (factor - 1.0) : lasting * factor;
        if (std::max(alone, together) <= asked) continue;
        asked = std::max(alone, together);
        largest = load;
      }
    }
    if (largest == nullptr || asked.count() <= breaker->rating.count() * (1.0 + 1e-9)) continue;
    out.add("branch.overload", Severity::mustFix, kBranchLoad, say(kTooMuchPlain, nameOf(*circuit)),
            say(kTooMuchTrade, nameOf(*largest, *circuit), amperes(asked.count()), whole(breaker->rating)),
            {at(*circuit), at(*largest), at(*breaker)});
  }
}

// 120 V between two hots, or 208 V and more between a hot and the neutral.
void voltageOfLoads(const ReviewInput& in, Findings& out) {
  const double between = 0.5 * (nominalLegVolts(in.tables).count() + nominalLineVoltsWye(in.tables).count());
  for (const auto& circuit : in.plan.circuits) {
    for (const Load& load : circuit->loads) {
      const bool lineToLine = load.connection.is(Connection::lineToLine);
      if (!load.connection.known() || lineToLine == (load.ratedVoltage > between)) continue;
      out.add("load.voltage", Severity::mustFix, {}, say(kVoltagePlain, nameOf(load, *circuit)),
              say(kVoltageTrade, Figure{static_cast<double>(load.ratedVoltage), "V", 0},
                  std::vector<Message>{say(lineToLine ? kBetweenHots : kToNeutral)}),
              {at(load)});
    }
  }
}

/// Of two facts of one load the larger is taken for a slip from so many times the other on: measured and
/// printed figures of one appliance differ less (common practice, no source).
constexpr double kSlip = 1.5;

// Facts of one load, or of a load and its circuit, that cannot both be.
void contradictions(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* planned = find(in.plan, circuit->planned);
    if (planned != nullptr && !stands(*planned, Reading::planned)) {
      out.add("branch.breaker_gone", Severity::mustFix, {}, say(kGonePlain, nameOf(*circuit)),
              say(kGoneTrade, nameOf(*circuit), spacesOf(in.plan, *planned)), {at(*circuit), at(*planned)});
    }
    for (const Load& load : circuit->loads) {
      if (circuit->voltage.is(VoltageClass::v240) && load.connection.is(Connection::lineToNeutral)) {
        Finding& finding = out.add(
            "load.no_neutral", Severity::checkOnSite, {}, say(kNoNeutralPlain, nameOf(load, *circuit)),
            say(kNoNeutralTrade, nameOf(load, *circuit), nameOf(*circuit)), {at(load), at(*circuit)});
        out.offer(finding, fix::SetField{at(*circuit), "voltage", std::string("120/240")},
                  say(kNoNeutralFix));
      }
      const double factor = load.powerFactor.value ? std::max(0.1, load.powerFactor.value->count()) : 1.0;
      const double byWatts = load.running.value ? load.running.value->count() / factor : 0.0;
      const double byAmperes =
          load.runningCurrent.value ? load.runningCurrent.value->count() * load.ratedVoltage : 0.0;
      if (byWatts > 0.0 && byAmperes > byWatts * kSlip) {
        out.add("load.amperes_above_watts", Severity::checkOnSite, {},
                say(kAmperesPlain, nameOf(load, *circuit)),
                say(kAmperesTrade, nameOf(load, *circuit), amperes(load.runningCurrent.value->count()),
                    Figure{byAmperes, "VA", 0}, watts(load.running.value->count())),
                {at(load)});
      }
      const double running = std::max(byWatts, byAmperes);
      if (load.nameplate && running > load.nameplate->count() * kSlip) {
        out.add("load.nameplate_low", Severity::checkOnSite, {}, say(kPlatePlain, nameOf(load, *circuit)),
                say(kPlateTrade, nameOf(load, *circuit), Figure{load.nameplate->count(), "VA", 0},
                    Figure{running, "VA", 0}),
                {at(load)});
      }
    }
  }
}

void labelMaximum(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    if (breaker == nullptr) continue;
    for (const Load& load : circuit->loads) {
      if (!load.maximumBreaker || breaker->rating <= *load.maximumBreaker) continue;
      out.add("branch.label_maximum", Severity::mustFix, kListing, say(kLabelPlain, nameOf(load, *circuit)),
              say(kLabelTrade, nameOf(load, *circuit), whole(*load.maximumBreaker), whole(breaker->rating)),
              {at(load), at(*breaker)});
    }
  }
}

bool guardsArcs(const Breaker& breaker) {
  return breaker.protection.is(Protection::afci) || breaker.protection.is(Protection::dual);
}
bool guardsGroundFaults(const Breaker& breaker) {
  return breaker.protection.is(Protection::gfci) || breaker.protection.is(Protection::dual);
}

// Each kind by itself: a breaker with the one does not stand in for the other.
void lostProtection(const Plan& plan, const Circuit& circuit, const Breaker& before, const Breaker& planned,
                    Findings& out) {
  const bool arcs = guardsArcs(before) && !guardsArcs(planned);
  const bool groundFaults = guardsGroundFaults(before) && !guardsGroundFaults(planned);
  const bool bothWanted = (arcs || guardsArcs(planned)) && (groundFaults || guardsGroundFaults(planned));
  const auto offer = [&](Finding& finding) {
    // On one breaker of a multiwire pair it would trip at once.
    if (circuit.multiwire > 0 && planned.poles == 1) return;
    const std::string word = bothWanted ? "dual" : arcs ? "afci" : "gfci";
    out.offer(finding, fix::SetField{at(planned), "protection", word},
              say(bothWanted ? kFixDual
                  : arcs     ? kFixAfci
                             : kFixGfci));
  };
  const std::string spaces = spacesOf(plan, planned);
  if (arcs) {
    offer(out.add("branch.arc_fault_lost", Severity::mustFix, kArcFault, say(kArcLostPlain, nameOf(circuit)),
                  say(kArcLostTrade, nameOf(circuit), spaces), {at(circuit), at(planned)}));
  }
  if (groundFaults) {
    offer(out.add("branch.ground_fault_lost", Severity::mustFix, kGroundFault,
                  say(kGroundLostPlain, nameOf(circuit)), say(kGroundLostTrade, nameOf(circuit), spaces),
                  {at(circuit), at(planned)}));
  }
}

void changedBreaker(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const Breaker* before = find(in.plan, circuit->breaker);
    if (breaker == nullptr || before == nullptr || before->id == breaker->id) continue;
    if (!circuit->conductor && breaker->rating > before->rating) {
      out.add("branch.rating_raised", Severity::checkOnSite, kProtected, say(kRaisedPlain, nameOf(*circuit)),
              say(kRaisedTrade, nameOf(*circuit), whole(before->rating), whole(breaker->rating)),
              {at(*circuit)});
    }
    lostProtection(in.plan, *circuit, *before, *breaker, out);
  }
}

void poles(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    if (breaker == nullptr || breaker->poles != 1 || circuit->multiwire > 0) continue;
    const bool lineToLine =
        circuit->voltage.is(VoltageClass::v240) || circuit->voltage.is(VoltageClass::v120_240) ||
        std::any_of(circuit->loads.begin(), circuit->loads.end(),
                    [](const Load& load) { return load.connection.is(Connection::lineToLine); });
    if (!lineToLine) continue;
    out.add("branch.poles", Severity::mustFix, kPoles, say(kPolesPlain, nameOf(*circuit)),
            say(kPolesTrade, nameOf(*circuit), spacesOf(in.plan, *breaker)), {at(*circuit), at(*breaker)});
  }
}

/// Several circuits on one breaker: fine for the hots of one multiwire circuit, a pole each.
void twoOnOneBreaker(const ReviewInput& in, Findings& out) {
  for (const auto& breaker : in.plan.breakers) {
    if (!stands(*breaker, Reading::planned)) continue;
    const std::vector<CircuitId> on = circuitsOn(in.plan, breaker->id, Reading::planned);
    if (on.size() < 2) continue;
    std::vector<std::string> names;
    std::vector<EntityRef> places;
    bool oneGroup = static_cast<std::int32_t>(on.size()) <= breaker->poles;
    bool touched = breaker->stage.is(Stage::fresh);
    const std::int32_t group = find(in.plan, on.front())->multiwire;
    for (const CircuitId id : on) {
      const Circuit& circuit = *find(in.plan, id);
      oneGroup = oneGroup && group > 0 && circuit.multiwire == group;
      touched = touched || moved(in.plan, circuit);
      names.push_back(nameOf(circuit));
      places.push_back(at(circuit));
    }
    if (oneGroup) continue;
    places.push_back(at(*breaker));
    const std::string spaces = spacesOf(in.plan, *breaker);
    out.add("branch.two_on_breaker", touched ? Severity::mustFix : Severity::checkOnSite, kOneWire,
            say(kTwoWiresPlain, listed(names)), say(kTwoWiresTrade, listed(names), spaces), places);
  }
}

void aluminium(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    if (!moved(in.plan, *circuit) || !circuit->metal.is(Metal::aluminium)) continue;
    Finding& finding =
        out.add("branch.aluminium", Severity::checkOnSite, {}, say(kAluminiumPlain, nameOf(*circuit)),
                say(kAluminiumTrade, nameOf(*circuit)), {at(*circuit)});
    finding.basis = Basis::listedInstruction;
  }
}

/// Circuits that a question is asked for all at once.
struct Asked {
  std::vector<std::string> names;
  std::vector<EntityRef> places;
  void add(const Circuit& circuit) {
    names.push_back(nameOf(circuit));
    places.push_back(at(circuit));
  }
};

void untraced(const ReviewInput& in, Findings& out) {
  Asked asked;
  for (const Circuit* circuit : openCircuits(in, "circuit.traced")) {
    if (backedUp(in.plan, *circuit)) asked.add(*circuit);
  }
  if (asked.names.empty()) return;
  out.add("branch.untraced", Severity::checkOnSite, kRuntime, say(kUntracedPlain, listed(asked.names)),
          say(kUntracedTrade, listed(asked.names)), asked.places);
}

void ratingNotRead(const ReviewInput& in, Findings& out) {
  Asked asked;
  for (const OnSiteItem* item : open(in, "breaker.rating_read")) {
    for (const CircuitId id : circuitsOn(in.plan, BreakerId{item->place.id}, Reading::planned))
      asked.add(*find(in.plan, id));
  }
  if (asked.names.empty()) return;
  out.add("branch.rating_not_read", Severity::checkOnSite, kRuntime, say(kRatingPlain, listed(asked.names)),
          say(kRatingTrade, listed(asked.names)), asked.places);
}

void alarms(const ReviewInput& in, Findings& out) {
  Asked on, off, unknown;
  std::vector<CircuitId> offIds;
  for (const auto& circuit : in.plan.circuits) {
    if (plannedBreaker(in.plan, *circuit) == nullptr) continue;
    const bool backed = backedUp(in.plan, *circuit);
    if (circuit->smokeAlarms.is(Answer::yes)) {
      (backed ? on : off).add(*circuit);
      if (!backed) offIds.push_back(circuit->id);
    }
  }
  for (const Circuit* circuit : openCircuits(in, "circuit.smoke_alarms")) unknown.add(*circuit);
  if (!on.names.empty() && !off.names.empty()) {
    std::vector<EntityRef> places = off.places;
    places.insert(places.end(), on.places.begin(), on.places.end());
    Finding& finding = out.add("alarms.split", Severity::mustFix, kAlarmsTogether, say(kSplitAlarmsPlain),
                               say(kSplitAlarmsTrade, listed(on.names), listed(off.names)), places);
    out.offer(finding, fix::Move{offIds, backupPanel(in.plan)->id, std::nullopt}, say(kSplitAlarmsFix));
  }
  if (!unknown.names.empty()) {
    out.add("alarms.unknown", Severity::checkOnSite, kAlarmsTogether,
            say(kAlarmsUnknownPlain, listed(unknown.names)), say(kAlarmsUnknownTrade, listed(unknown.names)),
            unknown.places);
  }
}

constexpr Rule kRules[] = {conductorAndBreaker, loadAboveBreaker, voltageOfLoads, contradictions,
                           labelMaximum,        changedBreaker,   poles,          twoOnOneBreaker,
                           aluminium,           untraced,         ratingNotRead,  alarms};

}  // namespace

std::span<const Rule> circuitRules() { return kRules; }

}  // namespace stayalight::reviewing
