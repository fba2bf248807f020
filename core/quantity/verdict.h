#pragma once

#include <cstdint>
#include <optional>

#include "core/quantity/quantity.h"

namespace stayalight {

/// A limit is within, over, or not known. Never "passed".
enum class Verdict : std::uint8_t { within, over, notKnown };

/// The one comparison of a figure with a limit. Over: the likely value is above it. Not known: only the
/// unfavourable end is above, or there is no limit. A figure equal to its limit is within; differences below
/// one part in 10^9 are taken as equal.
template <class Q>
[[nodiscard]] Verdict compare(Q likely, Q unfavourable, const std::optional<Q>& limit) {
  if (!limit) return Verdict::notKnown;
  const double slack = 1e-9 * (1.0 + (limit->count() < 0 ? -limit->count() : limit->count()));
  if (likely.count() > limit->count() + slack) return Verdict::over;
  if (unfavourable.count() > limit->count() + slack) return Verdict::notKnown;
  return Verdict::within;
}

[[nodiscard]] constexpr Verdict worse(Verdict a, Verdict b) {
  if (a == Verdict::over || b == Verdict::over) return Verdict::over;
  if (a == Verdict::notKnown || b == Verdict::notKnown) return Verdict::notKnown;
  return Verdict::within;
}

}  // namespace stayalight
