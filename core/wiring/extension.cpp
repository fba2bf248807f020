#include "core/wiring/extension.h"

#include <algorithm>

#include "core/code/numbers.h"

namespace stayalight {
namespace {

constexpr MessageId kNumbered{"wiring.circuit_number"};

/// Share of the length of the exception from which on what is inside two enclosures can take it beyond: some
/// feet in each (common practice, no source).
constexpr double kNearTheLimit = 0.5;

bool hasNeutral(const Circuit& circuit) { return !circuit.voltage.is(VoltageClass::v240); }

}  // namespace

std::string circuitName(const Circuit& circuit) {
  if (!circuit.name.empty()) return circuit.name;
  if (!circuit.serves.empty()) return circuit.serves;
  return render(say(kNumbered, circuit.id.number), plainEnglish());
}

bool moved(const Plan& plan, const Circuit& circuit) {
  return circuit.breaker.valid() && backedUp(plan, circuit) &&
         panelOf(plan, circuit, Reading::before) != panelOf(plan, circuit, Reading::planned);
}

bool isNew(const Plan& plan, const Circuit& circuit) {
  return !circuit.breaker.valid() && backedUp(plan, circuit);
}

bool usesNeutral(const Circuit& circuit) {
  return hasNeutral(circuit) || std::any_of(circuit.loads.begin(), circuit.loads.end(), [](const Load& load) {
           return load.connection.is(Connection::lineToNeutral);
         });
}

bool cableRunsOn(const Circuit& circuit) {
  return circuit.splice.is(Splice::none) && !circuit.wiring.is(WiringMethod::singlesInRaceway);
}

bool joined(const Plan& plan, const Circuit& circuit) {
  return find(plan, circuit.planned) != nullptr &&
         (circuit.splice.is(Splice::inPanel) || circuit.splice.is(Splice::inBox));
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

int ConductorsAtJoint::take(const Circuit& circuit) {
  const bool neutral =
      hasNeutral(circuit) && (circuit.multiwire == 0 || groups_.insert(circuit.multiwire).second);
  return hotCount(plan_, circuit) + (neutral ? 1 : 0);
}

GroundsAtJoint::Count GroundsAtJoint::take(const Circuit& circuit) {
  Count count;
  const bool ownCable = circuit.multiwire == 0 || groups_.insert(circuit.multiwire).second;
  if (ownCable && !circuit.ground.is(BranchGround::none) && !circuit.ground.is(BranchGround::metal))
    count.in = 1;
  const Raceway* raceway = find(plan_, circuit.raceway);
  if (raceway == nullptr || raceway->ground.is(GroundPath::oneEach)) {
    count.out = ownCable ? 1 : 0;
  } else if (raceway->ground.is(GroundPath::oneWire) && shared_.insert(raceway->id).second) {
    count.out = 1;
  }
  return count;
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

bool plannedWithoutArcFault(const Plan& plan, const Circuit& circuit, const Tables& tables) {
  const Breaker* breaker = find(plan, circuit.planned);
  if (breaker == nullptr || (!moved(plan, circuit) && !isNew(plan, circuit)) ||
      !circuit.voltage.is(VoltageClass::v120) || breaker->rating > afciDevice(tables))
    return false;
  return !breaker->protection.is(Protection::afci) && !breaker->protection.is(Protection::dual);
}

std::optional<Length> extensionLengthOf(const Circuit& circuit) {
  if (!circuit.extensionLength) return std::nullopt;
  if (circuit.extensionLength->inMicrometres() > 0 || cableRunsOn(circuit)) return circuit.extensionLength;
  return std::nullopt;
}

ArcFaultNeed arcFaultNeed(const Plan& plan, const Circuit& circuit, Edition edition, const Tables& tables) {
  if (!plannedWithoutArcFault(plan, circuit, tables) || circuit.arcFaultArea.is(Answer::no))
    return ArcFaultNeed::no;
  if (isNew(plan, circuit))
    return circuit.arcFaultArea.is(Answer::yes) ? ArcFaultNeed::yes : ArcFaultNeed::areaUnknown;
  const std::optional<Length> length = extensionLengthOf(circuit);
  const Length most = afciExtensionLength(tables);
  if (length && *length <= most) {
    const bool near = length->inFeet() > kNearTheLimit * most.inFeet();
    return edition == Edition::y2017 && near ? ArcFaultNeed::insideUnknown : ArcFaultNeed::no;
  }
  if (!circuit.arcFaultArea.is(Answer::yes)) return ArcFaultNeed::areaUnknown;
  return length ? ArcFaultNeed::yes : ArcFaultNeed::lengthUnknown;
}

}  // namespace stayalight
