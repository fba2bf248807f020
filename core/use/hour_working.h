#pragma once

// Writes down how the currents of an hour came about.

#include "core/use/hour_loads.h"

namespace stayalight {

void recordHour(const HourLoads& hour, const HourFigures& figures, Working& working);

}  // namespace stayalight
