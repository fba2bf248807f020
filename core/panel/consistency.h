#pragma once

// What a plan of good fields can still get wrong as a whole: breakers that cannot stand where they are said
// to stand. A reader of plans refuses such a plan, and an edit must not make one.

#include <optional>

#include "core/panel/spaces.h"

namespace stayalight {

/// The first of: a breaker without a panel or on a space its panel does not have (a two-pole in the last
/// row), two breakers that stand on one half space before the work or as planned, panels fed from each other
/// in a ring.
[[nodiscard]] std::optional<Message> inconsistency(const Plan& plan);

}  // namespace stayalight
