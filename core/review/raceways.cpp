// Raceways between the panels, splices of moved circuits, arc-fault protection after a circuit is made
// longer.

#include <algorithm>

#include "core/review/rules.h"
#include "core/wiring/branch.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kFill{"raceway.fill"};
constexpr RuleId kNippleFill{"raceway.nipple_fill"};
constexpr RuleId kAdjustment{"conductor.adjustment"};
constexpr RuleId kSmall{"conductor.small"};
constexpr RuleId kProtected{"conductor.protected"};
constexpr RuleId kBoxFill{"box.fill"};
constexpr RuleId kBoxLarge{"box.large"};
constexpr RuleId kAccess{"box.access"};
constexpr RuleId kWiringSpace{"panel.wiring_space"};
constexpr RuleId kAfci{"afci.extended"};
constexpr RuleId kAfciOfDwelling{"afci.dwelling"};
constexpr RuleId kInRaceway{"conductor.single"};
constexpr RuleId kFlexibleGround{"ground.flexible"};
constexpr RuleId kGroundPath{"ground.size"};

constexpr RuleId kAmbient{"conductor.ambient"};
constexpr MessageId kTooHotPlain{"review.raceway.too_hot.plain"};
constexpr MessageId kTooHotTrade{"review.raceway.too_hot.trade"};
constexpr MessageId kNoLengthPlain{"review.raceway.no_length.plain"};
constexpr MessageId kNoLengthTrade{"review.raceway.no_length.trade"};
constexpr MessageId kEmptyPlain{"review.raceway.empty.plain"};
constexpr MessageId kEmptyTrade{"review.raceway.empty.trade"};
constexpr MessageId kFillPlain{"review.raceway.fill.plain"};
constexpr MessageId kFillTrade{"review.raceway.fill.trade"};
constexpr MessageId kFillTradeNone{"review.raceway.fill.trade_none"};
constexpr MessageId kFillFix{"review.raceway.fill.fix"};
constexpr MessageId kUnknownPlain{"review.raceway.unknown.plain"};
constexpr MessageId kUnknownTrade{"review.raceway.unknown.trade"};
constexpr MessageId kAdjustedPlain{"review.raceway.adjusted.plain"};
constexpr MessageId kAdjustedTrade{"review.raceway.adjusted.trade"};
constexpr MessageId kAdjustedAskPlain{"review.raceway.adjusted_ask.plain"};
constexpr MessageId kAskLabelTrade{"review.raceway.adjusted_ask.label"};
constexpr MessageId kAskReceptaclesTrade{"review.raceway.adjusted_ask.receptacles"};
constexpr MessageId kAdjustedLoadTrade{"review.raceway.adjusted.load"};
constexpr MessageId kAdjustedMotorTrade{"review.raceway.adjusted.motor_load"};
constexpr MessageId kExtensionPlain{"review.raceway.extension.plain"};
constexpr MessageId kExtensionTrade{"review.raceway.extension.trade"};
constexpr MessageId kFlexiblePlain{"review.raceway.flexible_ground.plain"};
constexpr MessageId kFlexibleTrade{"review.raceway.flexible_ground.trade"};
constexpr MessageId kPlasticPlain{"review.raceway.plastic_ground.plain"};
constexpr MessageId kPlasticTrade{"review.raceway.plastic_ground.trade"};
constexpr MessageId kPlasticFix{"review.raceway.plastic_ground.fix"};
constexpr MessageId kBoxPlain{"review.box.fill.plain"};
constexpr MessageId kBoxTrade{"review.box.fill.trade"};
constexpr MessageId kBoxUnknownPlain{"review.box.unknown.plain"};
constexpr MessageId kBoxUnknownTrade{"review.box.unknown.trade"};
constexpr MessageId kBoxLargePlain{"review.box.large.plain"};
constexpr MessageId kBoxLargeTrade{"review.box.large.trade"};
constexpr MessageId kSpaceRunPlain{"review.panel.wiring_space_run.plain"};
constexpr MessageId kSpaceRunTrade{"review.panel.wiring_space_run.trade"};
constexpr MessageId kSpacePlain{"review.panel.wiring_space.plain"};
constexpr MessageId kSpaceTrade{"review.panel.wiring_space.trade"};
constexpr MessageId kSplicePlain{"review.splice.unknown.plain"};
constexpr MessageId kSpliceTrade{"review.splice.unknown.trade"};
constexpr MessageId kNoBoxPlain{"review.splice.no_box.plain"};
constexpr MessageId kNoBoxTrade{"review.splice.no_box.trade"};
constexpr MessageId kArcPlain{"review.branch.arc_fault.plain"};
constexpr MessageId kArcTrade{"review.branch.arc_fault.trade"};
constexpr MessageId kArcInsidePlain{"review.branch.arc_fault_inside.plain"};
constexpr MessageId kArcInsideTrade{"review.branch.arc_fault_inside.trade"};
constexpr MessageId kArcNewPlain{"review.branch.arc_fault_new.plain"};
constexpr MessageId kArcNewTrade{"review.branch.arc_fault_new.trade"};
constexpr MessageId kNoRacewayPlain{"review.splice.no_raceway.plain"};
constexpr MessageId kNoRacewayTrade{"review.splice.no_raceway.trade"};
constexpr MessageId kArcFix{"review.branch.arc_fault.fix"};
constexpr MessageId kArcAskPlain{"review.branch.protection_decide.plain"};
constexpr MessageId kArcAskTrade{"review.branch.protection_decide.trade"};

EntityRef at(RacewayId id) { return {RecordKind::raceway, id.number}; }
EntityRef at(SpliceBoxId id) { return {RecordKind::spliceBox, id.number}; }

std::string nameOf(const Raceway& raceway) {
  return raceway.name.empty() ? std::string(raceway.type.word()) + " " + std::string(raceway.size.word())
                              : raceway.name;
}
std::string nameOf(const SpliceBox& box) {
  return box.name.empty() ? std::to_string(box.id.number) : box.name;
}

bool isHard(BranchProtection protection) {
  return protection == BranchProtection::over || protection == BranchProtection::receptacles ||
         protection == BranchProtection::loadAboveAmpacity;
}
bool isAsked(BranchProtection protection) {
  return protection == BranchProtection::readLabel || protection == BranchProtection::receptaclesUnknown;
}

void raceways(const ReviewInput& in, Findings& out) {
  if (in.raceways == nullptr) return;
  for (const RacewayFigures& figures : *in.raceways) {
    const Raceway& raceway = *find(in.plan, figures.raceway);
    const std::string name = nameOf(raceway);
    const double share = figures.area.count() / figures.inside.count();
    const double allowed = figures.allowed.count() / figures.inside.count();
    if (figures.contents.empty()) {
      out.add("raceway.empty", Severity::advice, {}, say(kEmptyPlain, name), say(kEmptyTrade, name),
              {at(raceway.id)});
      continue;
    }
    if (raceway.length.inMicrometres() == 0) {
      out.add("raceway.no_length", Severity::checkOnSite, kAdjustment, say(kNoLengthPlain, name),
              say(kNoLengthTrade, name, Figure{nippleLength(in.tables).inInches(), "in", 0}),
              {at(raceway.id)});
    }
    if (figures.plasticGround) {
      Finding& finding = out.add("raceway.plastic_ground", Severity::mustFix, kGroundPath,
                                 say(kPlasticPlain, name), say(kPlasticTrade, name), {at(raceway.id)});
      out.offer(finding, fix::SetField{at(raceway.id), "ground", std::string("one_wire")}, say(kPlasticFix));
    }
    const bool flexible =
        raceway.type.is(RacewayType::flexibleMetal) || raceway.type.is(RacewayType::liquidtightFlexibleMetal);
    if (flexible && raceway.ground.is(GroundPath::raceway)) {
      Finding& finding = out.add("raceway.flexible_ground", Severity::checkOnSite, kFlexibleGround,
                                 say(kFlexiblePlain, name), say(kFlexibleTrade, name), {at(raceway.id)});
      out.offer(finding, fix::SetField{at(raceway.id), "ground", std::string("one_wire")}, say(kPlasticFix));
    }
    if (figures.fill == Verdict::over) {
      const std::string larger =
          figures.smallest ? std::string(Choice<TradeSize>(*figures.smallest).word()) : std::string();
      Finding& finding = out.add(
          "raceway.fill", Severity::mustFix, figures.nipple ? kNippleFill : kFill, say(kFillPlain, name),
          figures.smallest ? say(kFillTrade, name, static_cast<std::int64_t>(figures.conductors),
                                 percent(share), percent(allowed), larger)
                           : say(kFillTradeNone, name, static_cast<std::int64_t>(figures.conductors),
                                 percent(share), percent(allowed)),
          {at(raceway.id)});
      if (figures.smallest) {
        out.offer(finding, fix::SetField{at(raceway.id), "trade_size", larger}, say(kFillFix, larger));
      }
    } else if (!figures.notKnown.empty()) {
      out.add("raceway.unknown", Severity::checkOnSite, kFill, say(kUnknownPlain, name),
              say(kUnknownTrade, name, figures.notKnown), {at(raceway.id)});
    }
    for (const RacewayBranch& branch : figures.branches) {
      const Circuit& circuit = *find(in.plan, branch.circuit);
      const bool hard = isHard(branch.protection), ask = isAsked(branch.protection);
      if (!hard && !ask) continue;
      if (!branch.ampacity.governing) {
        const Figure ambient{raceway.ambient.inCelsius(), "°C", 1};
        out.add("raceway.too_hot", Severity::mustFix, kAmbient,
                say(kTooHotPlain, name, ambient, reviewing::nameOf(circuit)),
                say(kTooHotTrade, name, ambient, reviewing::nameOf(circuit)),
                {at(raceway.id), {RecordKind::circuit, circuit.id.number}});
        continue;
      }
      const Figure carries = amperes(branch.ampacity.governing->count());
      const std::string wire = conductorName(branch.size, Metal::copper);
      const Figure device{static_cast<double>(branch.device.count()), "A", 0};
      const std::vector<EntityRef> places{{RecordKind::circuit, circuit.id.number}, at(raceway.id)};
      // Size and breaker do not go together in any raceway: where the circuit's own conductor is of that
      // size, that is said of the circuit.
      const bool derated = branch.ampacity.derated && branch.ampacity.terminal &&
                           *branch.ampacity.derated < *branch.ampacity.terminal;
      const bool load = branch.protection == BranchProtection::loadAboveAmpacity;
      if (!derated || (branch.small && !load)) {
        const auto own = plannedBranch(in.plan, circuit, in.edition, in.tables);
        if (own && own->size == branch.size && own->answer.protection == branch.protection) continue;
        if (hard) {
          out.add("raceway.extension", Severity::mustFix, branch.small ? kSmall : kProtected,
                  say(kExtensionPlain, reviewing::nameOf(circuit)),
                  say(kExtensionTrade, reviewing::nameOf(circuit), wire, device,
                      branch.most ? Figure{static_cast<double>(branch.most->count()), "A", 0} : carries),
                  places);
          continue;
        }
      }
      const auto count = static_cast<std::int64_t>(figures.carrying.most());
      if (ask) {
        const bool label = branch.protection == BranchProtection::readLabel;
        out.add("raceway.adjusted_ask", Severity::checkOnSite, kAdjustment,
                say(kAdjustedAskPlain, reviewing::nameOf(circuit), name),
                say(label ? kAskLabelTrade : kAskReceptaclesTrade, reviewing::nameOf(circuit), wire, count,
                    carries, device),
                places);
        continue;
      }
      out.add("raceway.adjusted", Severity::mustFix, kAdjustment,
              say(kAdjustedPlain, reviewing::nameOf(circuit), name),
              branch.asked
                  ? say(branch.kind == BranchKind::ordinary ? kAdjustedLoadTrade : kAdjustedMotorTrade,
                        reviewing::nameOf(circuit), wire, count, carries, amperes(branch.asked->count()))
                  : say(kAdjustedTrade, reviewing::nameOf(circuit), wire, count, carries, device),
              places);
    }
  }
}

void boxes(const ReviewInput& in, Findings& out) {
  if (in.boxes == nullptr) return;
  for (const SpliceBoxFigures& figures : *in.boxes) {
    const SpliceBox& box = *find(in.plan, figures.box);
    const std::string name = nameOf(box);
    const Figure needed{figures.needed.count(), "in³", 2};
    if (figures.large) {
      out.add("box.large", Severity::checkOnSite, kBoxLarge, say(kBoxLargePlain, name),
              say(kBoxLargeTrade, name), {at(box.id)});
    } else if (figures.verdict == Verdict::over) {
      out.add("box.fill", Severity::mustFix, kBoxFill, say(kBoxPlain, name),
              say(kBoxTrade, name, needed, Figure{figures.volume->count(), "in³", 1}), {at(box.id)});
    } else if (!figures.notKnown.empty() && !figures.circuits.empty()) {
      out.add("box.unknown", Severity::checkOnSite, kBoxFill, say(kBoxUnknownPlain, name),
              say(kBoxUnknownTrade, name, needed, figures.notKnown), {at(box.id)});
    }
  }
}

void wiringSpace(const ReviewInput& in, Findings& out) {
  if (in.wiringSpaces == nullptr) return;
  for (const WiringSpaceFigures& figures : *in.wiringSpaces) {
    const Panel& panel = *find(in.plan, figures.panel);
    if (figures.byItsRun) {
      out.add("panel.wiring_space_run", Severity::checkOnSite, kWiringSpace,
              say(kSpaceRunPlain, reviewing::nameOf(panel)),
              say(kSpaceRunTrade, reviewing::nameOf(panel), static_cast<std::int64_t>(figures.conductors),
                  Figure{figures.area.count(), "in²", 2}, Figure{figures.splicedArea.count(), "in²", 2},
                  Figure{figures.allowed->count(), "in²", 2}, Figure{figures.withSplices->count(), "in²", 2}),
              {reviewing::at(panel)});
    }
    if (figures.verdict != Verdict::over) continue;
    out.add("panel.wiring_space", Severity::mustFix, kWiringSpace, say(kSpacePlain, reviewing::nameOf(panel)),
            say(kSpaceTrade, reviewing::nameOf(panel), static_cast<std::int64_t>(figures.spliced),
                Figure{figures.splicedArea.count(), "in²", 2}, Figure{figures.space->count(), "in²", 1},
                Figure{figures.allowed->count(), "in²", 2}, Figure{figures.withSplices->count(), "in²", 2}),
            {reviewing::at(panel)});
  }
}

void splices(const ReviewInput& in, Findings& out) {
  std::vector<std::string> open, boxless;
  std::vector<EntityRef> openPlaces, boxlessPlaces;
  for (const Circuit* circuit : openCircuits(in, "circuit.splice")) {
    open.push_back(reviewing::nameOf(*circuit));
    openPlaces.push_back(reviewing::at(*circuit));
  }
  for (const Circuit* circuit : openCircuits(in, "circuit.splice_box")) {
    boxless.push_back(reviewing::nameOf(*circuit));
    boxlessPlaces.push_back(reviewing::at(*circuit));
  }
  if (!open.empty()) {
    out.add("splice.unknown", Severity::checkOnSite, kAccess, say(kSplicePlain, listed(open)),
            say(kSpliceTrade, listed(open)), openPlaces);
  }
  if (!boxless.empty()) {
    out.add("splice.no_box", Severity::checkOnSite, kAccess, say(kNoBoxPlain, listed(boxless)),
            say(kNoBoxTrade, listed(boxless)), boxlessPlaces);
  }
}

/// Single wires from the splice on want a raceway; without one nothing of fill and adjustment is worked out.
void withoutRaceway(const ReviewInput& in, Findings& out) {
  std::vector<std::string> names;
  std::vector<EntityRef> places;
  for (const auto& circuit : in.plan.circuits) {
    if (!moved(in.plan, *circuit) || !joined(in.plan, *circuit) || circuit->raceway.valid()) continue;
    names.push_back(reviewing::nameOf(*circuit));
    places.push_back(reviewing::at(*circuit));
  }
  if (names.empty()) return;
  out.add("splice.no_raceway", Severity::advice, kInRaceway, say(kNoRacewayPlain, listed(names)),
          say(kNoRacewayTrade, listed(names)), places);
}

/// A circuit that is made longer than the exception allows, in a room that the rule lists, gets arc-fault
/// protection; a shorter one does not need it for that reason. What is not known is asked for all at once.
void arcFault(const ReviewInput& in, Findings& out) {
  std::vector<std::string> asked;
  std::vector<EntityRef> askedPlaces;
  for (const auto& circuit : in.plan.circuits) {
    if (!plannedWithoutArcFault(in.plan, *circuit, in.tables)) continue;
    const ArcFaultNeed need = arcFaultNeed(in.plan, *circuit, in.edition, in.tables);
    if (!canadian(in.plan) && need == ArcFaultNeed::no) continue;
    const Figure most{afciExtensionLength(in.tables).inFeet(), "ft", 0};
    if (!canadian(in.plan) && need == ArcFaultNeed::insideUnknown) {
      out.add("branch.arc_fault_inside", Severity::checkOnSite, kAfci,
              say(kArcInsidePlain, reviewing::nameOf(*circuit)),
              say(kArcInsideTrade, reviewing::nameOf(*circuit),
                  Figure{circuit->extensionLength->inFeet(), "ft", 1}, most),
              {reviewing::at(*circuit)});
      continue;
    }
    if (!canadian(in.plan) && need == ArcFaultNeed::yes) {
      const Breaker* breaker = plannedBreaker(in.plan, *circuit);
      const std::string name = reviewing::nameOf(*circuit);
      const std::vector<EntityRef> places{reviewing::at(*circuit), reviewing::at(*breaker)};
      Finding& finding =
          isNew(in.plan, *circuit)
              ? out.add("branch.arc_fault_new", Severity::mustFix, kAfciOfDwelling, say(kArcNewPlain, name),
                        say(kArcNewTrade, name), places)
              : out.add("branch.arc_fault", Severity::mustFix, kAfci, say(kArcPlain, name),
                        say(kArcTrade, name, Figure{circuit->extensionLength->inFeet(), "ft", 1}, most),
                        places);
      const bool ground = breaker->protection.is(Protection::gfci);
      // On one breaker of a multiwire pair it would trip at once.
      if (circuit->multiwire == 0) {
        out.offer(finding,
                  fix::SetField{{RecordKind::breaker, breaker->id.number},
                                "protection",
                                std::string(ground ? "dual" : "afci")},
                  say(kArcFix));
      }
      continue;
    }
    asked.push_back(reviewing::nameOf(*circuit));
    askedPlaces.push_back({RecordKind::circuit, circuit->id.number});
  }
  if (asked.empty()) return;
  out.add("branch.protection_decide", Severity::checkOnSite, kAfci, say(kArcAskPlain, listed(asked)),
          say(kArcAskTrade, listed(asked)), askedPlaces);
}

constexpr Rule kRules[] = {raceways, boxes, wiringSpace, splices, withoutRaceway, arcFault};

}  // namespace

std::span<const Rule> racewayRules() { return kRules; }

}  // namespace stayalight::reviewing
