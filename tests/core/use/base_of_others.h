#pragma once

// The base of a start with the sums of the other loads built anew, to compare with sums that loads were taken
// out of.

#include <algorithm>

#include "core/use/hour_loads.h"

namespace stayalight::example {

inline Base baseOfOthers(const Plan& plan, const std::vector<Draw>& all, const SystemVoltages& system,
                         const std::vector<LoadId>& without) {
  std::vector<Draw> others;
  for (const Draw& draw : all) {
    if (std::find(without.begin(), without.end(), draw.load) == without.end()) others.push_back(draw);
  }
  return baseOf(HourLoads(plan, others, system, 1, 18));
}

}  // namespace stayalight::example
