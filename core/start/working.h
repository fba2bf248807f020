#pragma once

// Writes down the sums of a start and what is left to its limits.

#include "core/start/moment.h"

namespace stayalight {

void recordCheck(const std::vector<const RecordedStart*>& set, const CheckedSet& checked, const Base& base,
                 const std::vector<Draw>& draws, const SystemVoltages& system, const StartLimits& limits,
                 Working& working);

}  // namespace stayalight
