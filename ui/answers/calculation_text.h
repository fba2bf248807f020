#pragma once

// What the answers column says of the load calculation: feeder, main, charging, capacity of the source.

#include "ui/answers/answers_text.h"

namespace stayalight {

/// "edition 2023", and that the rule has no confirmed section there.
[[nodiscard]] QString editionNote(const Plan& plan, RuleId rule, const Language& language);
/// No lines where the code is not covered.
[[nodiscard]] AnswerSection calculationSection(const Plan& plan, const Assessment& assessment,
                                               const Language& language);

}  // namespace stayalight
