#pragma once

// The loads of one hour with the distributions of their sums, worked out once: likely peaks, odds of an
// overload and the bases of starts are all read from them.

#include "core/use/coincidence.h"
#include "core/use/cumulative.h"

namespace stayalight {

class HourLoads {
 public:
  /// Keeps a reference to the draws. `hour` 0 to 23.
  HourLoads(const Plan& plan, const std::vector<Draw>& draws, const SystemVoltages& system, int month,
            int hour);

  [[nodiscard]] int hour() const { return hour_; }
  [[nodiscard]] const SystemVoltages& system() const { return system_; }
  [[nodiscard]] const std::vector<Draw>& draws() const { return draws_; }
  [[nodiscard]] const std::vector<const Load*>& loads() const { return loads_; }
  [[nodiscard]] const std::vector<HourUse>& uses() const { return uses_; }

  /// Likely peak of a sum of all loads in W or VA. No measure here is one of the neutral's.
  [[nodiscard]] double peak(Measure measure, End end) const;
  /// The sum of all loads; `end` is likely or high.
  [[nodiscard]] const Cumulative& sum(Measure measure, End end) const;

 private:
  /// Measures that are kept; those of the neutral are asked for once and stand last.
  static constexpr std::size_t kMeasures = 6;
  struct Sum {
    double lowPeak = 0.0;
    std::optional<Cumulative> likely, high;
  };
  [[nodiscard]] const Sum& kept(Measure measure, End end) const;

  const std::vector<Draw>& draws_;
  SystemVoltages system_;
  int hour_;
  std::vector<const Load*> loads_;
  std::vector<HourUse> uses_;
  std::array<bool, 3> reactive_{};  ///< by end
  std::array<Sum, kMeasures> sums_;
};

/// The base of a start: all loads but the one that starts, or the two. Indices are those of the draws.
[[nodiscard]] Base baseOf(const HourLoads& hour);
[[nodiscard]] Base baseWithout(const HourLoads& hour, std::size_t one);
[[nodiscard]] Base baseWithout(const HourLoads& hour, std::size_t one, std::size_t other);

}  // namespace stayalight
