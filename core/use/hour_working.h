#pragma once

// Writes down how the currents of an hour came about.

#include "core/use/use.h"

namespace stayalight {

void recordHour(const std::vector<Draw>& draws, const std::vector<const Load*>& loads,
                const std::vector<HourUse>& uses, const SystemVoltages& system, const HourFigures& figures,
                Working& working);

}  // namespace stayalight
