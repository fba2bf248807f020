#pragma once

// What a breaker is called that feeds no circuit.

#include "core/plan/plan.h"

namespace stayalight {

/// As a name that stands alone: "Solar"; "Feeder" without its panel; "Spare" where it feeds nothing.
[[nodiscard]] Message feedsName(const Breaker& breaker);
/// As a part of a sentence: "the solar breaker", "a spare breaker".
[[nodiscard]] Message feedsInSentence(Feeds feeds);

}  // namespace stayalight
