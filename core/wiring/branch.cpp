#include "core/wiring/branch.h"

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/devices.h"
#include "core/demand/demand.h"

namespace stayalight {
namespace {

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
bool hasMotor(const Circuit& circuit) {
  return std::any_of(circuit.loads.begin(), circuit.loads.end(), isMotor);
}
bool hasElement(const Circuit& circuit) {
  return std::any_of(circuit.loads.begin(), circuit.loads.end(),
                     [](const Load& load) { return load.kind.is(LoadKind::resistance); });
}

}  // namespace

AcAmperes askedByLoads(const Circuit& circuit, Edition edition, const Tables& tables) {
  double sum = 0.0, largestMotor = 0.0;
  for (const Load& load : circuit.loads) {
    const std::optional<Nameplate> nameplate = nameplateOf(load, tables);
    if (!nameplate) continue;
    const AcVolts volts = !load.connection.is(Connection::lineToLine) ? nominalLegVolts(tables)
                          : AcVolts(load.ratedVoltage) <= nominalLineVoltsWye(tables)
                              ? nominalLineVoltsWye(tables)
                              : nominalLineVoltsSplitPhase(tables);
    const double current = nameplate->rating.count() / volts.count();
    sum += current;
    if (isMotor(load)) largestMotor = std::max(largestMotor, current);
  }
  const auto share = demandFigure(DemandKey::largestMotor, edition, tables);
  return AcAmperes(sum + (share ? share->value : 0.0) * largestMotor);
}

BranchAnswer branchProtection(const BranchQuestion& question, Edition edition, const Tables& tables) {
  const Circuit& circuit = question.circuit;
  BranchAnswer answer;
  const std::optional<RatingAmperes> limit = smallConductorLimit(question.size, question.metal, tables);
  answer.small = limit && question.device > *limit;
  const bool aboveAmpacity = question.ampacity && question.device.amperes() > *question.ampacity;
  if (!answer.small && !aboveAmpacity) return answer;
  if (question.ampacity) answer.most = standardRatingWithin(*question.ampacity, edition, tables);
  // Where no rating lies within the ampacity none protects it, whatever 240.4(D) says.
  if (limit && (answer.most || !question.ampacity))
    answer.most = answer.most ? std::min(*answer.most, *limit) : *limit;

  const auto next = answer.small || !question.ampacity
                        ? std::nullopt
                        : nextStandardRating(*question.ampacity, edition, tables);
  const bool nextSize = next && question.device <= *next;
  const bool several = circuit.severalReceptacles.is(Answer::yes);
  // Lighting, receptacle, small-appliance and laundry circuits are no motor circuits, whatever is plugged in.
  const bool ofItsOwn = !several && !circuit.calculationUse.is(CircuitUse::general) &&
                        !circuit.calculationUse.is(CircuitUse::smallAppliance) &&
                        !circuit.calculationUse.is(CircuitUse::laundry);
  // A motor or an air conditioner may have the larger breaker that its label names, on a circuit of its own.
  const std::optional<RatingAmperes> allowed = labelsAllow(circuit);
  const bool labelled = allowed && question.device <= *allowed;
  if (nextSize && circuit.severalReceptacles.is(Answer::no)) {
    answer.protection = BranchProtection::holds;
  } else if (ofItsOwn && hasMotor(circuit) && labelled) {
    answer.protection = BranchProtection::labelAllows;
  } else if (nextSize) {
    answer.protection = several ? BranchProtection::receptacles : BranchProtection::receptaclesUnknown;
  } else if (ofItsOwn && ((hasMotor(circuit) && !allowed) || (labelled && !hasElement(circuit)))) {
    answer.protection = BranchProtection::readLabel;
  } else {
    answer.protection = BranchProtection::over;
  }
  // No exception for the device lets a conductor carry more than it is good for.
  const AcAmperes asked = askedByLoads(circuit, edition, tables);
  const bool excepted =
      answer.protection != BranchProtection::over && answer.protection != BranchProtection::receptacles;
  if (excepted && question.ampacity && asked.count() > question.ampacity->count() * (1.0 + 1e-9)) {
    answer.protection = BranchProtection::loadAboveAmpacity;
    answer.asked = asked;
  }
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
  branch.answer = branchProtection({circuit, breaker->rating, branch.size, branch.metal, branch.ampacity},
                                   edition, tables);
  return branch;
}

}  // namespace stayalight
