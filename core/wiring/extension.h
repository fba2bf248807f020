#pragma once

// The conductors of a moved circuit between its splice and its new breaker.

#include <set>

#include "core/code/tables.h"
#include "core/panel/spaces.h"
#include "core/plan/plan.h"

namespace stayalight {

/// The circuit's name, else what it serves, else its number.
[[nodiscard]] std::string circuitName(const Circuit& circuit);
/// True where the circuit's panel changes with the work and it lands in the backup subpanel.
[[nodiscard]] bool moved(const Plan& plan, const Circuit& circuit);
/// Something on it returns over the neutral, or its voltage says so.
[[nodiscard]] bool usesNeutral(const Circuit& circuit);
/// Its own cable reaches the new breaker: nothing is spliced.
[[nodiscard]] bool cableRunsOn(const Circuit& circuit);
/// Its conductors are spliced, in the old panel or in a box.
[[nodiscard]] bool joined(const Plan& plan, const Circuit& circuit);
/// Size of the extension: as entered, else the circuit's own; none where neither is known.
[[nodiscard]] inline std::optional<ConductorSize> extensionSize(const Circuit& circuit) {
  return circuit.extension ? circuit.extension : circuit.conductor;
}
/// Ungrounded conductors of the circuit: as many as its breaker has poles that are its own.
[[nodiscard]] int hotCount(const Plan& plan, const Circuit& circuit);
/// Does a neutral run along for this circuit? One for a multiwire group, with the first member of the group
/// that goes the same way (through this raceway; none asks about all that move).
[[nodiscard]] bool ownNeutral(const Plan& plan, const Circuit& circuit, RacewayId raceway);
/// Conductors of circuits that are joined at one place, grounds not among them: hots, and a neutral for each
/// circuit or multiwire group, once at each place that a part of the group goes through.
class ConductorsAtJoint {
 public:
  explicit ConductorsAtJoint(const Plan& plan) : plan_(plan) {}
  [[nodiscard]] int take(const Circuit& circuit);

 private:
  const Plan& plan_;
  std::set<std::int32_t> groups_;
};

/// Counts the equipment grounds of circuits that are joined at one place, one circuit after the other.
class GroundsAtJoint {
 public:
  explicit GroundsAtJoint(const Plan& plan) : plan_(plan) {}
  struct Count {
    int in = 0;   ///< with the circuit's own cable: a multiwire group has one, old cable may have none
    int out = 0;  ///< with the extension: none where the raceway is the ground or its one wire was counted
  };
  [[nodiscard]] Count take(const Circuit& circuit);

 private:
  const Plan& plan_;
  std::set<std::int32_t> groups_;
  std::set<RacewayId> shared_;
};

/// Its neutral returns only what the two legs do not cancel: 120/240 V on two poles, or a multiwire group
/// whose members stand on both legs of one panel.
[[nodiscard]] bool carriesDifferenceOnly(const Plan& plan, const Circuit& circuit);

/// A circuit that the work brings: it has no breaker today, and one in the backup subpanel afterwards.
[[nodiscard]] bool isNew(const Plan& plan, const Circuit& circuit);
/// A 120 V circuit of at most 20 A that moves onto a breaker without arc-fault protection, or begins on one.
[[nodiscard]] bool plannedWithoutArcFault(const Plan& plan, const Circuit& circuit,
                                          const Tables& tables = publishedTables());
/// Must a circuit that is made longer get arc-fault protection (210.12(D))? A short extension needs none for
/// that reason, nor does one that has it already; a new circuit has no such exception (210.12).
/// A length of 0 of a circuit that is joined is not a length: then it is asked for. The text of 2017 does not
/// leave what is inside enclosures out of the length, so that one near the limit is `insideUnknown`.
enum class ArcFaultNeed : std::uint8_t { no, yes, areaUnknown, lengthUnknown, insideUnknown };
[[nodiscard]] ArcFaultNeed arcFaultNeed(const Plan& plan, const Circuit& circuit, Edition edition,
                                        const Tables& tables = publishedTables());
/// Of its extension outside enclosures; none where it is not entered.
[[nodiscard]] std::optional<Length> extensionLengthOf(const Circuit& circuit);

}  // namespace stayalight
