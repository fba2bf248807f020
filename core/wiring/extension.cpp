#include "core/wiring/extension.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr MessageId kNumbered{"wiring.circuit_number"};

bool hasNeutral(const Circuit& circuit) { return !circuit.voltage.is(VoltageClass::v240); }

}  // namespace

std::string circuitName(const Circuit& circuit) {
  if (!circuit.name.empty()) return circuit.name;
  if (!circuit.serves.empty()) return circuit.serves;
  return render(say(kNumbered, circuit.id.number), plainEnglish());
}

int hotCount(const Plan& plan, const Circuit& circuit) {
  const Breaker* breaker = find(plan, circuit.planned);
  if (breaker == nullptr) return circuit.voltage.is(VoltageClass::v120) ? 1 : 2;
  // Members of a multiwire group on one two-pole breaker have a pole each.
  const bool sharesBreaker =
      circuit.multiwire > 0 && circuitsOn(plan, breaker->id, Reading::planned).size() > 1;
  return breaker->poles == 2 && !sharesBreaker ? 2 : 1;
}

bool ownNeutral(const Plan& plan, const Circuit& circuit, RacewayId raceway) {
  if (!hasNeutral(circuit)) return false;
  if (circuit.multiwire == 0) return true;
  for (const auto& other : plan.circuits) {
    if (other->multiwire != circuit.multiwire || !hasNeutral(*other)) continue;
    if (other->raceway != raceway && raceway.valid()) continue;
    if (find(plan, other->planned) == nullptr) continue;
    return other->id == circuit.id;
  }
  return true;
}

bool carriesDifferenceOnly(const Plan& plan, const Circuit& circuit) {
  const Breaker* breaker = find(plan, circuit.planned);
  const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
  if (panel == nullptr) return false;
  std::vector<Leg> legs = poleLegs(*panel, placementOf(*breaker));
  if (circuit.multiwire > 0) {
    for (const auto& other : plan.circuits) {
      const Breaker* theirs = find(plan, other->planned);
      if (other->multiwire != circuit.multiwire || other->id == circuit.id || theirs == nullptr) continue;
      if (theirs->panel != panel->id) return false;
      const std::vector<Leg> more = poleLegs(*panel, placementOf(*theirs));
      legs.insert(legs.end(), more.begin(), more.end());
    }
  }
  return std::find(legs.begin(), legs.end(), Leg::l1) != legs.end() &&
         std::find(legs.begin(), legs.end(), Leg::l2) != legs.end();
}

}  // namespace stayalight
