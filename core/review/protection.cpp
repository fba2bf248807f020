// Ground-fault protection that stays, neutrals that have to be proven before it is fitted, old wiring without
// a ground.

#include <algorithm>

#include "core/onsite/neutral_reading.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kGroundFault{"gfci.receptacles"};
constexpr RuleId kGroundPath{"ground.branch_extension"};
constexpr RuleId kBorrowed{"practice.borrowed_neutral"};

constexpr MessageId kKeepPlain{"review.protection.keep.plain"};
constexpr MessageId kKeepTrade{"review.protection.keep.trade"};
constexpr MessageId kNewPlain{"review.branch.ground_fault_new.plain"};
constexpr MessageId kNewTrade{"review.branch.ground_fault_new.trade"};
constexpr MessageId kProvePlain{"review.protection.prove_neutral.plain"};
constexpr MessageId kProveTrade{"review.protection.prove_neutral.trade"};
constexpr MessageId kNoGroundPlain{"review.branch.no_ground.plain"};
constexpr MessageId kNoGroundTrade{"review.branch.no_ground.trade"};
constexpr MessageId kGroundAskPlain{"review.branch.ground_unknown.plain"};
constexpr MessageId kGroundAskTrade{"review.branch.ground_unknown.trade"};

bool groundFault(const Breaker& breaker) {
  return breaker.protection.is(Protection::gfci) || breaker.protection.is(Protection::dual);
}

// What is lost, or floods, where it trips and nobody notices.
bool failsUnseen(const Load& load) {
  return load.startClass.is(StartClass::refrigerationCompressor) || load.startClass.is(StartClass::sumpPump);
}

// The cure for a trip that nobody sees is an alarm and a device within reach, never less protection.
void keepAndWatch(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    if (breaker == nullptr || !backedUp(in.plan, *circuit) || !groundFault(*breaker)) continue;
    const auto load = std::find_if(circuit->loads.begin(), circuit->loads.end(), failsUnseen);
    if (load == circuit->loads.end()) continue;
    out.add("protection.keep", Severity::advice, kGroundFault, say(kKeepPlain, nameOf(*load, *circuit)),
            say(kKeepTrade, nameOf(*circuit)), {at(*circuit), at(*load)});
  }
}

// A breaker with electronics trips on a borrowed neutral that nobody noticed under the old one.
void proveNeutral(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const Breaker* before = find(in.plan, circuit->breaker);
    if (breaker == nullptr || before == nullptr || before->id == breaker->id || circuit->multiwire > 0)
      continue;
    const bool fitted = before->protection.is(Protection::none) && !breaker->protection.is(Protection::none);
    if (!fitted || neutralShared(*circuit) == Answer::no) continue;
    out.add("protection.prove_neutral", Severity::checkOnSite, kBorrowed, say(kProvePlain, nameOf(*circuit)),
            say(kProveTrade, nameOf(*circuit)), {at(*circuit), at(*breaker)});
  }
}

// The work brings new receptacles; whether their places are listed nobody has entered.
void newReceptacles(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    if (breaker == nullptr || !isNew(in.plan, *circuit) || groundFault(*breaker) ||
        !circuit->voltage.is(VoltageClass::v120))
      continue;
    const bool receptacles = circuit->severalReceptacles.is(Answer::yes) ||
                             circuit->calculationUse.is(CircuitUse::smallAppliance) ||
                             circuit->calculationUse.is(CircuitUse::laundry);
    if (!receptacles) continue;
    out.add("branch.ground_fault_new", Severity::advice, kGroundFault, say(kNewPlain, nameOf(*circuit)),
            say(kNewTrade, nameOf(*circuit)), {at(*circuit), at(*breaker)});
  }
}

void oldWiring(const ReviewInput& in, Findings& out) {
  for (const Circuit* circuit : openCircuits(in, "circuit.ground")) {
    out.add("branch.ground_unknown", Severity::checkOnSite, kGroundPath,
            say(kGroundAskPlain, nameOf(*circuit)), say(kGroundAskTrade, nameOf(*circuit)), {at(*circuit)});
  }
  for (const auto& circuit : in.plan.circuits) {
    if (!moved(in.plan, *circuit) || !circuit->ground.is(BranchGround::none)) continue;
    out.add("branch.no_ground", Severity::mustFix, kGroundPath, say(kNoGroundPlain, nameOf(*circuit)),
            say(kNoGroundTrade, nameOf(*circuit)), {at(*circuit)});
  }
}

constexpr Rule kRules[] = {keepAndWatch, proveNeutral, newReceptacles, oldWiring};

}  // namespace

std::span<const Rule> protectionRules() { return kRules; }

}  // namespace stayalight::reviewing
