#include "core/wiring/branch.h"

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/devices.h"
#include "core/code/numbers.h"
#include "core/demand/demand.h"
#include "core/wiring/branch_load.h"

namespace stayalight {
namespace {

constexpr RuleId kNextSizeUp{"conductor.next_size_up"};
constexpr RuleId kMotorException{"conductor.motor_exception"};
constexpr RuleId kSmall{"conductor.small"};
constexpr RuleId kMotorConductor{"motor.conductor"};
constexpr RuleId kHermeticConductor{"air_conditioning.conductor"};
constexpr RuleId kBranchLoad{"branch.load"};

constexpr double kSlack = 1.0 + 1e-9;

/// The largest breaker that the labels of all loads on the circuit allow, where each has one.
std::optional<RatingAmperes> labelsAllow(const Circuit& circuit) {
  std::optional<RatingAmperes> smallest;
  for (const Load& load : circuit.loads) {
    if (!load.maximumBreaker) return std::nullopt;
    smallest = smallest ? std::min(*smallest, *load.maximumBreaker) : *load.maximumBreaker;
  }
  return smallest;
}
/// Anything on it that says motor: its start, its class, its nameplate.
bool isMotor(const Load& load) {
  return !load.start.is(StartKind::none) || !load.startClass.is(StartClass::unknown) ||
         load.lockedRotor.value || load.horsepower || !load.codeLetter.empty();
}
bool isAirConditioner(const Load& load) {
  return load.calculationClass.is(LoadClass::airConditioning) ||
         load.calculationClass.is(LoadClass::heatPump) || load.startClass.is(StartClass::airConditioner);
}
/// An appliance of Article 422 or a charger: a motor in it makes no motor circuit.
bool isAppliance(const Load& load) {
  const Choice<LoadClass>& what = load.calculationClass;
  return what.is(LoadClass::dryer) || what.is(LoadClass::cooking) || what.is(LoadClass::vehicleCharger) ||
         (what.is(LoadClass::appliance) && load.startClass.is(StartClass::refrigerationCompressor));
}
bool heats(const Load& load) {
  return load.kind.is(LoadKind::resistance) || load.calculationClass.is(LoadClass::spaceHeating) ||
         load.calculationClass.is(LoadClass::supplementalHeat);
}
template <class Test>
bool any(const Circuit& circuit, Test test) {
  return std::any_of(circuit.loads.begin(), circuit.loads.end(), test);
}

/// All but the largest device that would hold.
BranchAnswer judged(const BranchQuestion& question, Edition edition, const Tables& tables) {
  const Circuit& circuit = question.circuit;
  BranchAnswer answer;
  answer.kind = branchKind(circuit);
  const std::optional<RatingAmperes> limit = smallConductorLimit(question.size, question.metal, tables);
  answer.small = limit && question.device > *limit;
  const bool aboveAmpacity = question.ampacity && question.device.amperes() > *question.ampacity;
  if (!answer.small && !aboveAmpacity) return answer;

  const auto next = answer.small || !question.ampacity
                        ? std::nullopt
                        : nextStandardRating(*question.ampacity, edition, tables);
  const bool nextSize = next && question.device <= *next;
  const bool several = circuit.severalReceptacles.is(Answer::yes);
  // Lighting, receptacle, small-appliance and laundry circuits are no motor circuits, whatever is plugged in.
  const bool ofItsOwn = !several && !circuit.calculationUse.is(CircuitUse::general) &&
                        !circuit.calculationUse.is(CircuitUse::smallAppliance) &&
                        !circuit.calculationUse.is(CircuitUse::laundry);
  const bool motor = answer.kind != BranchKind::ordinary;
  // What nobody has called a motor yet may be one, unless it heats or is an appliance.
  const bool perhapsMotor = !motor && !any(circuit, heats) && !any(circuit, isAppliance);
  // A motor or an air conditioner may have the larger breaker that its label names, on a circuit of its own.
  const std::optional<RatingAmperes> allowed = labelsAllow(circuit);
  const bool labelled = allowed && question.device <= *allowed;
  if (nextSize && circuit.severalReceptacles.is(Answer::no)) {
    answer.protection = BranchProtection::holds;
    answer.rule = kNextSizeUp;
  } else if (ofItsOwn && motor && labelled) {
    answer.protection = BranchProtection::labelAllows;
    answer.rule = kMotorException;
  } else if (nextSize) {
    answer.protection = several ? BranchProtection::receptacles : BranchProtection::receptaclesUnknown;
    answer.rule = kNextSizeUp;
  } else if (ofItsOwn && ((motor && !allowed) || (perhapsMotor && labelled))) {
    answer.protection = BranchProtection::readLabel;
    answer.rule = kMotorException;
  } else {
    answer.protection = BranchProtection::over;
    if (answer.small) answer.rule = kSmall;
  }
  // No exception for the device lets a conductor carry more than it is good for.
  const bool excepted =
      answer.protection != BranchProtection::over && answer.protection != BranchProtection::receptacles;
  if (!excepted || !question.ampacity) return answer;
  const AskedByLoads asked = askedByLoads(circuit, edition, tables);
  const AcAmperes terminal = question.terminal.value_or(*question.ampacity);
  const bool conductorOver = asked.conductor.count() > question.ampacity->count() * kSlack;
  if (conductorOver || asked.terminal.count() > terminal.count() * kSlack) {
    answer.protection = BranchProtection::loadAboveAmpacity;
    answer.rule = answer.kind == BranchKind::motor             ? kMotorConductor
                  : answer.kind == BranchKind::airConditioning ? kHermeticConductor
                                                               : kBranchLoad;
    answer.asked = conductorOver ? asked.conductor : asked.terminal;
  }
  return answer;
}

/// The largest standard rating below the one asked about that holds without a further condition.
std::optional<RatingAmperes> largestThatHolds(const BranchQuestion& question, Edition edition,
                                              const Tables& tables) {
  const auto below = [&](RatingAmperes rating) {
    return standardRatingWithin(AcAmperes(rating.count() - 1.0), edition, tables);
  };
  for (auto rating = below(question.device); rating; rating = below(*rating)) {
    BranchQuestion smaller = question;
    smaller.device = *rating;
    const BranchProtection found = judged(smaller, edition, tables).protection;
    if (found == BranchProtection::holds || found == BranchProtection::labelAllows) return rating;
  }
  return std::nullopt;
}

}  // namespace

BranchKind branchKind(const Circuit& circuit) {
  if (any(circuit, isAppliance)) return BranchKind::ordinary;
  if (any(circuit, isAirConditioner)) return BranchKind::airConditioning;
  if (any(circuit, heats)) return BranchKind::ordinary;
  return any(circuit, isMotor) ? BranchKind::motor : BranchKind::ordinary;
}

AskedByLoads askedByLoads(const Circuit& circuit, Edition edition, const Tables& tables) {
  double sum = 0.0, largestMotor = 0.0, continuous = 0.0, cooking = 0.0;
  for (const Load& load : circuit.loads) {
    const std::optional<Nameplate> nameplate = nameplateOf(load, tables);
    if (nameplate && load.calculationClass.is(LoadClass::cooking)) cooking += nameplate->rating.count();
  }
  const double ofRange = rangeShare(VoltAmperes(cooking), edition, tables);
  for (const Load& load : circuit.loads) {
    const std::optional<Nameplate> nameplate = nameplateOf(load, tables);
    if (!nameplate) continue;
    const AcVolts volts = !load.connection.is(Connection::lineToLine) ? nominalLegVolts(tables)
                          : AcVolts(load.ratedVoltage) <= nominalLineVoltsWye(tables)
                              ? nominalLineVoltsWye(tables)
                              : nominalLineVoltsSplitPhase(tables);
    const double share = load.calculationClass.is(LoadClass::cooking) ? ofRange : 1.0;
    const double current = nameplate->rating.count() * share / volts.count();
    sum += current;
    if (countsAsContinuous(load)) continuous += current;
    if (isMotor(load) || isAirConditioner(load)) largestMotor = std::max(largestMotor, current);
  }
  if (branchKind(circuit) == BranchKind::ordinary)
    return {AcAmperes(sum), AcAmperes(sum + (continuousFactor(tables).count() - 1.0) * continuous)};
  const auto more = demandFigure(DemandKey::largestMotor, edition, tables);
  const AcAmperes asked(sum + (more ? more->value : 0.0) * largestMotor);
  return {asked, asked};
}

BranchAnswer branchProtection(const BranchQuestion& question, Edition edition, const Tables& tables) {
  BranchAnswer answer = judged(question, edition, tables);
  if (answer.protection == BranchProtection::over || answer.protection == BranchProtection::receptacles)
    answer.most = largestThatHolds(question, edition, tables);
  return answer;
}

std::optional<PlannedBranch> plannedBranch(const Plan& plan, const Circuit& circuit, Edition edition,
                                           const Tables& tables) {
  const Breaker* breaker = find(plan, circuit.planned);
  if (breaker == nullptr || !circuit.conductor) return std::nullopt;
  const Panel* panel = find(plan, breaker->panel);
  PlannedBranch branch{*breaker, *circuit.conductor, circuit.metal.valueOr(Metal::copper), {}, {}};
  // Cable goes by its own column in the end.
  const bool hot = panel != nullptr && panel->terminals75.is(Answer::yes) &&
                   !circuit.wiring.is(WiringMethod::nmCable) && !circuit.wiring.is(WiringMethod::unknown);
  branch.ampacity =
      ampacity(branch.size, branch.metal, hot ? TemperatureColumn::c75 : TemperatureColumn::c60, tables);
  branch.answer = branchProtection(
      {circuit, breaker->rating, branch.size, branch.metal, branch.ampacity, std::nullopt}, edition, tables);
  return branch;
}

}  // namespace stayalight
