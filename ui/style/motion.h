#pragma once

namespace stayalight {

/// False where the desktop or the person asks for less motion.
[[nodiscard]] bool motionWanted();
void setMotionWanted(bool wanted);  ///< kept among the settings; the desktop's wish stands above it
/// As set here, whatever the desktop says.
[[nodiscard]] bool motionChosen();

}  // namespace stayalight
