#pragma once

// The most that a plan file may hold: 2,000 circuits, in subpanels of 84 spaces beside the large house. No
// dwelling is like that; what stays quick here stays quick anywhere.

#include "core/file/file.h"
#include "tests/bench/large_house.h"

namespace stayalight::bench {

inline Plan manyCircuits(std::size_t count = ReadLimits{}.circuits) {
  constexpr std::int32_t kSpaces = 84;
  Plan plan = largeHouse();
  PanelId panel;
  for (std::int32_t at = 0; plan.circuits.size() < count; ++at) {
    const std::int32_t space = at % kSpaces;
    if (space == 0) {
      panel = example::addPanel(plan, PanelRole::subpanel, "Subpanel " + std::to_string(at / kSpaces + 1),
                                kSpaces);
      example::editPanel(plan, panel).fedFrom = example::kMain;
    }
    const std::string name = "Circuit " + std::to_string(plan.circuits.size() + 1);
    example::addCircuitWithLoad(plan, panel, {space % 2 == 0 ? Column::left : Column::right, space / 2 + 1},
                                1, 20, name, example::plainLoad(name + " load", 40.0 + at % 900, 0.95, 0.3));
  }
  return plan;
}

}  // namespace stayalight::bench
