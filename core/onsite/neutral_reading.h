#pragma once

// What clamp readings say about a shared or borrowed neutral. Common practice, no source.

#include "core/plan/circuit.h"

namespace stayalight {

/// A clamp shows some tenths of an ampere around nothing.
inline constexpr AcAmperes kClampShows{0.2};

/// With the circuit's own breaker off no current of its own flows on its neutral: what is read there comes
/// from a circuit that shares or borrows it. None proves something only while the suspected partner carried
/// load.
enum class NeutralProof : std::uint8_t {
  none,              ///< nothing was read on the neutral
  ownBreakerOn,      ///< or nobody knows; its own current hides the other's
  partnerNotLoaded,  ///< no current, but the suspected partner carried none either, or nobody knows
  notShared,
  shared
};
[[nodiscard]] NeutralProof neutralProof(const ClampReading& reading);
/// Of all its readings the one that says most.
[[nodiscard]] NeutralProof neutralProof(const Circuit& circuit);
/// Shared where a reading proves it; else as somebody entered it; else as a reading proves it.
[[nodiscard]] Answer neutralShared(const Circuit& circuit);

}  // namespace stayalight
