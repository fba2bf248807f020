#pragma once

// The loads of one hour as shares of sums: how much each adds to a leg or to both, and how likely it is on.

#include "core/use/use.h"

namespace stayalight {

/// Ends of a range, as an index.
enum class End : std::uint8_t { low, likely, high };
template <class T>
[[nodiscard]] const T& at(const Range<T>& range, End end) {
  return end == End::low ? range.low : end == End::likely ? range.likely : range.high;
}
[[nodiscard]] inline const LegPower& powerAt(const Draw& draw, End end) {
  return end == End::low ? draw.low : end == End::likely ? draw.likely : draw.high;
}

/// What a sum is of.
enum class Measure : std::uint8_t {
  apparentL1,
  apparentL2,
  wattsL1,
  wattsL2,
  apparent,
  watts,
  neutralL1,  ///< VA of the line-to-neutral loads alone
  neutralL2
};
/// What a load adds to a sum while it runs. On two legs of a wye whose order is not known the share of a leg
/// is the larger of both orders; a share is never below zero.
[[nodiscard]] double shareOf(const Draw& draw, Measure measure, End end, const SystemVoltages& system);

/// The order of a wye's phases that `currents` takes for this power and `legPower` for a leg of it, and a
/// load's power laid out in an order.
[[nodiscard]] WyeOrder orderTaken(const LegPower& power, const SystemVoltages& system);
[[nodiscard]] WyeOrder orderOfLeg(const LegPower& power, const SystemVoltages& system, Leg leg);
[[nodiscard]] LegPower inOrder(const LegPower& power, const SystemVoltages& system, WyeOrder order);

/// Load records of the draws, in their order; the loads stay in the plan.
[[nodiscard]] std::vector<const Load*> loadsOf(const Plan& plan, const std::vector<Draw>& draws);
/// Use of each draw's load in that hour.
[[nodiscard]] std::vector<HourUse> usesOf(const Plan& plan, const std::vector<const Load*>& loads, int month,
                                          int hour);

/// Distribution of a sum over all draws. Small shares are added first, which keeps the lattice short; the
/// order does not depend on the order of the draws.
[[nodiscard]] Distribution distributionOf(const std::vector<Draw>& draws, const std::vector<HourUse>& uses,
                                          Measure measure, End end, const SystemVoltages& system);

}  // namespace stayalight
