#include "core/wiring/branch.h"

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/devices.h"

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
bool hasMotor(const Circuit& circuit) {
  return std::any_of(circuit.loads.begin(), circuit.loads.end(), [](const Load& load) {
    return !load.start.is(StartKind::none) || !load.startClass.is(StartClass::unknown) ||
           load.lockedRotor.value || load.horsepower || !load.codeLetter.empty();
  });
}
bool hasElement(const Circuit& circuit) {
  return std::any_of(circuit.loads.begin(), circuit.loads.end(),
                     [](const Load& load) { return load.kind.is(LoadKind::resistance); });
}

}  // namespace

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

  // The label comes first: a motor or an air conditioner may have the larger breaker it names.
  const std::optional<RatingAmperes> allowed = labelsAllow(circuit);
  const bool labelled = allowed && question.device <= *allowed;
  if (hasMotor(circuit) && labelled) {
    answer.protection = BranchProtection::labelAllows;
  } else if ((hasMotor(circuit) && !allowed) || (labelled && !hasElement(circuit))) {
    answer.protection = BranchProtection::readLabel;
  } else {
    answer.protection = BranchProtection::over;
    const auto next = answer.small ? std::nullopt : nextStandardRating(*question.ampacity, edition, tables);
    if (next && question.device <= *next) {
      answer.protection = circuit.severalReceptacles.is(Answer::yes)  ? BranchProtection::receptacles
                          : circuit.severalReceptacles.is(Answer::no) ? BranchProtection::holds
                                                                      : BranchProtection::receptaclesUnknown;
    }
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
