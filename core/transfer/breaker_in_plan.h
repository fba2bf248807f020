#pragma once

#include "core/plan/plan.h"

namespace stayalight {

/// Does this breaker of a panel stand, as planned, for the device of this segment? No segment behind a switch
/// has one; the bypass of a pass-through inverter has one of its own.
[[nodiscard]] bool standsFor(const Plan& plan, const Breaker& breaker, Segment segment);
/// Rating of the breaker that does; of several the largest. Nothing where none is placed.
[[nodiscard]] std::optional<RatingAmperes> breakerInPlan(const Plan& plan, Segment segment);

}  // namespace stayalight
