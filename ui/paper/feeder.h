#pragma once

// The sheet "Feeder and raceways": each piece of the feeder with its load, device, conductors and drop and
// what governs them, the raceways, the battery's cable, and buses with two sources. For the electrician.

#include "ui/paper/flow.h"

namespace stayalight {

/// False for a site whose code is not covered, and where nothing is backed up.
[[nodiscard]] bool hasFeeder(const Plan& plan);
void drawFeeder(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language);

}  // namespace stayalight
