#include "core/onsite/neutral_reading.h"

#include <algorithm>

namespace stayalight {
NeutralProof neutralProof(const ClampReading& reading) {
  if (!reading.conductor.is(ReadConductor::neutral)) return NeutralProof::none;
  if (!reading.ownBreakerOff.is(Answer::yes)) return NeutralProof::ownBreakerOn;
  if (reading.current > kClampShows) return NeutralProof::shared;
  return reading.partnerLoaded.is(Answer::yes) ? NeutralProof::notShared : NeutralProof::partnerNotLoaded;
}

NeutralProof neutralProof(const Circuit& circuit) {
  NeutralProof most = NeutralProof::none;
  for (const ClampReading& reading : circuit.readings) most = std::max(most, neutralProof(reading));
  return most;
}

Answer neutralShared(const Circuit& circuit) {
  const NeutralProof proof = neutralProof(circuit);
  if (proof == NeutralProof::shared) return Answer::yes;
  const Answer typed = circuit.neutralShared.valueOr(Answer::unknown);
  if (typed != Answer::unknown) return typed;
  return proof == NeutralProof::notShared ? Answer::no : Answer::unknown;
}

}  // namespace stayalight
