#pragma once

// The conductors of a moved circuit between its splice and its new breaker.

#include "core/panel/spaces.h"
#include "core/plan/plan.h"

namespace stayalight {

/// The circuit's name, else what it serves, else its number.
[[nodiscard]] std::string circuitName(const Circuit& circuit);
/// Size of the extension: as entered, else the circuit's own; none where neither is known.
[[nodiscard]] inline std::optional<ConductorSize> extensionSize(const Circuit& circuit) {
  return circuit.extension ? circuit.extension : circuit.conductor;
}
/// Ungrounded conductors of the circuit: as many as its breaker has poles that are its own.
[[nodiscard]] int hotCount(const Plan& plan, const Circuit& circuit);
/// Does a neutral run along for this circuit? One for a multiwire group, with the first member of the group
/// that goes the same way (through this raceway; none asks about all that move).
[[nodiscard]] bool ownNeutral(const Plan& plan, const Circuit& circuit, RacewayId raceway);
/// Its neutral returns only what the two legs do not cancel: 120/240 V on two poles, or a multiwire group
/// whose members stand on both legs of one panel.
[[nodiscard]] bool carriesDifferenceOnly(const Plan& plan, const Circuit& circuit);

}  // namespace stayalight
