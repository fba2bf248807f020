#pragma once

// Neutral and equipment grounding conductor of one segment.

#include "core/wiring/conductor.h"

namespace stayalight {

struct SizeAndReason {
  std::optional<ConductorSize> size;
  bool tooSmall = false;  ///< a fixed one
  Message governs;
  RuleId rule;  ///< by which it governs
};

/// Table 250.122 by the device; where the ungrounded conductors are larger than required, larger in
/// proportion of circular mils (250.122(B)); never larger than them (250.122(A)).
struct GroundingQuestion {
  std::optional<RatingAmperes> device;
  std::optional<ConductorSize> conductor;
  std::optional<ConductorSize> required;
  Metal metal = Metal::copper;
  std::optional<ConductorSize> fixed;
};
[[nodiscard]] SizeAndReason groundingConductorFor(const GroundingQuestion& question, Edition edition,
                                                  Working* working = nullptr,
                                                  const Tables& tables = publishedTables());

/// The largest of three: the size for the net load of the worse leg (220.61; its part above
/// neutralReductionAbove() counts with neutralReductionFactor(), not on a wye), the size for the operating
/// phasor, the 250.122 size. The first never exceeds the ungrounded conductors, which bound one leg's load.
struct NeutralQuestion {
  std::optional<AcAmperes> load;  ///< empty: not known, then as large as the ungrounded conductors
  AcAmperes operating;
  bool wye = false;
  bool single = false;  ///< one 120 V source: the neutral carries all that the leg carries
  std::optional<RatingAmperes> device;
  std::optional<ConductorSize> conductor;
  std::optional<ConductorSize> fixed;
  RunConditions conditions;
};
[[nodiscard]] SizeAndReason neutralFor(const NeutralQuestion& question, Edition edition,
                                       Working* working = nullptr, const Tables& tables = publishedTables());

}  // namespace stayalight
