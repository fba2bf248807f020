#pragma once

// The sheets for a visit: what is known is printed, what is not is a blank to write on. The household's part
// asks for nothing with a cover off; the other is for a qualified person.

#include "ui/paper/flow.h"

namespace stayalight {

/// There is a panel to look at.
[[nodiscard]] bool hasSurvey(const Plan& plan);
void drawHouseholdSurvey(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                         const Language& language);
void drawQualifiedSurvey(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                         const Language& language);

}  // namespace stayalight
