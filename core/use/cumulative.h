#pragma once

// Cumulative sums of a distribution, and the same sums with one of its loads taken out again: the base of a
// start and the odds of each start need the sum of all other loads, without building it anew for each.

#include "core/use/use.h"

namespace stayalight {

class Cumulative {
 public:
  explicit Cumulative(const Distribution& distribution);

  /// Smallest lattice value x with P(X <= x) >= q.
  [[nodiscard]] double quantile(double q) const;
  /// The same of the sum without one load that was added with this share and chance.
  [[nodiscard]] double quantileWithout(double share, double probabilityOn, double q) const;
  /// Chance that the others alone are within a limit and this load carries them over it.
  [[nodiscard]] double probabilityCarriedOver(double limit, double share, double probabilityOn) const;
  /// P(X > limit).
  [[nodiscard]] double probabilityOver(double limit) const { return above(stepOf(limit)); }
  /// The sums of all other loads.
  [[nodiscard]] Cumulative without(double share, double probabilityOn) const;

 private:
  using Step = std::ptrdiff_t;
  [[nodiscard]] Step end() const { return lowest_ + static_cast<Step>(upTo_.size()) - 1; }
  [[nodiscard]] Step stepOf(double limit) const;
  [[nodiscard]] double upTo(Step x) const;
  [[nodiscard]] double above(Step x) const;
  [[nodiscard]] double upToWithout(Step x, Step w, double q) const;
  [[nodiscard]] double aboveWithout(Step x, Step w, double q) const;

  double step_;
  Step lowest_;
  std::vector<double> upTo_, above_;  ///< P(X <= x), P(X > x) from `lowest_` on
};

}  // namespace stayalight
