#pragma once

// The terminals of each panel's neutral bar, and how many neutrals land on them.

#include <optional>
#include <vector>

#include "core/plan/plan.h"

namespace stayalight {

/// 408.41: one neutral to a terminal. Of the circuits one for each, of a multiwire group one together; a
/// neutral that stays behind when its circuit moves lands in the old panel. A feeder and the way of a source
/// bring one each, a surge device one; the panel's own supply lands in its lug and is not among them.
struct NeutralTerminals {
  PanelId panel;
  std::int32_t circuits = 0;
  std::int32_t feeders = 0;  ///< to other panels and to sources
  std::int32_t surgeDevices = 0;
  [[nodiscard]] std::int32_t landed() const { return circuits + feeders + surgeDevices; }
  std::optional<std::int32_t> terminals;                    ///< none where nobody has counted them
  [[nodiscard]] std::optional<std::int32_t> left() const {  ///< below 0: so many are missing
    return terminals ? std::optional(*terminals - landed()) : std::nullopt;
  }
};
/// Of each panel, the work done.
[[nodiscard]] std::vector<NeutralTerminals> neutralTerminals(const Plan& plan);

}  // namespace stayalight
