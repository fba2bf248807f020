#pragma once

#include "core/plan/plan.h"

namespace stayalight {

/// Rating of the breaker of a panel that stands, as planned, for the device of this segment; of several the
/// largest. Nothing where none is placed, and for a segment that has no breaker of a panel.
[[nodiscard]] std::optional<RatingAmperes> breakerInPlan(const Plan& plan, Segment segment);

}  // namespace stayalight
