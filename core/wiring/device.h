#pragma once

// The overcurrent device of one segment.

#include "core/wiring/wiring.h"

namespace stayalight {

/// A rating that the device may not exceed, and whose it is.
struct DeviceLimit {
  RatingAmperes rating;
  Message from;
  RuleId rule{"source.label_device"};
};

struct DeviceQuestion {
  std::optional<AcAmperes> continuous;
  std::optional<AcAmperes> other;
  std::optional<RatingAmperes> fixed;
  std::optional<RatingAmperes> inPlan;
  std::vector<DeviceLimit> limits;
  StepIndex continuousStep = kNoStep;  ///< of the working, where the two are worked out
  StepIndex otherStep = kNoStep;
};

/// Minimum: continuousFactor() × continuous + other. Rating: the next standard one at or above it, unless
/// fixed.
[[nodiscard]] DeviceChoice chooseDevice(const DeviceQuestion& question, Edition edition,
                                        Working* working = nullptr, const Tables& tables = publishedTables());

/// The larger of what is chosen, fixed, or stands in the plan: what a wire behind it must be protected at.
[[nodiscard]] std::optional<RatingAmperes> largestRating(const DeviceChoice& device);

}  // namespace stayalight
