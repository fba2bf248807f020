#pragma once

// The sheet of the load calculation: backup feeder line by line, the main by each method, charging, and by
// which rule the source is large enough.

#include "ui/paper/flow.h"

namespace stayalight {

/// False for a site whose code is not covered, and where there is no backup subpanel.
[[nodiscard]] bool hasCalculation(const Plan& plan);
void drawCalculation(SheetFlow& flow, const Plan& plan, const Assessment& assessment,
                     const Language& language);

}  // namespace stayalight
