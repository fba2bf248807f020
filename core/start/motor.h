#pragma once

#include "core/start/start.h"

namespace stayalight {

/// A motor with the draw it belongs to and, where written down, the step that gave its start current.
struct RecordedStart {
  MotorStart motor;
  std::size_t draw = 0;  ///< index among the draws
  StepIndex step = kNoStep;
};
[[nodiscard]] std::vector<RecordedStart> recordedStarts(const Plan& plan, const std::vector<Draw>& draws,
                                                        const SystemVoltages& system, Working* working,
                                                        const Tables& tables);

}  // namespace stayalight
