#pragma once

// The sheet "How the figures came about": every step of the load calculation, the source, the feeder, the
// raceways and panels, the motor starts and the outage, with its inputs, table cells and rules.

#include "ui/paper/flow.h"

namespace stayalight {

/// False where nothing is backed up.
[[nodiscard]] bool hasWorking(const Plan& plan);
/// `assessment` may hold no steps: they are then written down by assessing the plan anew.
void drawWorking(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language);

}  // namespace stayalight
