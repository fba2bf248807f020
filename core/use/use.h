#pragma once

// What runs: each load's draw by leg, how likely it is on, the load of an hour with its average, its likely
// peak and the odds of an overload.

#include <array>
#include <complex>
#include <optional>
#include <vector>

#include "core/message/working.h"
#include "core/plan/plan.h"
#include "core/quantity/verdict.h"
#include "core/transfer/transfer.h"

namespace stayalight {

// ---- spread (spread.cpp): the one table of what a grade means, common practice, no source
// -------------------------

/// Kinds of fact the table of spreads tells apart.
enum class FactKind : std::uint8_t {
  watts,
  amperes,
  powerFactor,
  duty,
  startsPerHour,
  startCurrent,
  startTime,
  startPowerFactor,
  health
};
/// Low, likely and high of an entered value: its own low and high where given, else by kind and grade
/// (measured ±5 %, nameplate watts 60 to 100 %, typical wider, unknown wider still), held within the kind's
/// natural range.
[[nodiscard]] Range<double> spread(FactKind kind, Grade grade, std::optional<double> value,
                                   std::optional<double> low, std::optional<double> high);
template <class Q>
[[nodiscard]] std::optional<Range<Q>> spread(FactKind kind, const Graded<Q>& fact) {
  if (!fact.value && !(fact.low && fact.high)) return std::nullopt;
  const auto number = [](const std::optional<Q>& q) {
    return q ? std::optional<double>(q->count()) : std::nullopt;
  };
  const Range<double> r = spread(kind, fact.grade, number(fact.value), number(fact.low), number(fact.high));
  return Range<Q>{Q(r.low), Q(r.likely), Q(r.high)};
}

// ---- legs (legs.cpp)
// ---------------------------------------------------------------------------------------------

/// Power by leg. Adds in W and var.
struct LegPower {
  std::array<ComplexPower, 2> leg;            ///< all loads
  std::array<ComplexPower, 2> lineToNeutral;  ///< the part that returns through the neutral
  friend bool operator==(const LegPower&, const LegPower&) = default;
  LegPower& operator+=(const LegPower& other);
  [[nodiscard]] ComplexPower total() const { return leg[0] + leg[1]; }
};
[[nodiscard]] LegPower operator*(const LegPower& power, double factor);
/// A load's power on the legs. On 120/240 a line-to-line load lies half on each; on a wye it puts S·V1/V12 on
/// L1 and the rest on L2 (S/√3 VA and P/2 ± Q/(2√3) W each; an unknown order is laid out as L2 lagging). A
/// single 120 V source drives nothing between the legs.
[[nodiscard]] LegPower onLegs(const ComplexPower& power, Connection connection, Leg leg,
                              const SystemVoltages& system);
/// Currents as phasors, the voltage of L1 at angle 0; the neutral returns what the legs do not cancel. Where
/// the order of a wye's phases is not known, the order with the larger neutral current.
struct Currents {
  std::array<std::complex<double>, 2> leg;
  std::complex<double> neutral;
  [[nodiscard]] AcAmperes legMagnitude(Leg which) const { return AcAmperes(std::abs(leg[index(which)])); }
  [[nodiscard]] AcAmperes neutralMagnitude() const { return AcAmperes(std::abs(neutral)); }
};
[[nodiscard]] Currents currents(const LegPower& power, const SystemVoltages& system);
/// What a leg carries. Where the order of a wye's phases is not known, of each leg in the order that is worse
/// for it.
[[nodiscard]] ComplexPower legPower(const LegPower& power, const SystemVoltages& system, Leg leg);
[[nodiscard]] AcAmperes legCurrent(const LegPower& power, const SystemVoltages& system, Leg leg);

// ---- loads (draw.cpp)
// ----------------------------------------------------------------------------------------------

/// One load as it draws from the supply of a mode, while it runs.
struct Draw {
  LoadId load;
  CircuitId circuit;
  BreakerId breaker;
  Connection connection = Connection::lineToNeutral;
  std::array<bool, 2> onLeg{};  ///< which legs it touches
  Range<Watts> watts;           ///< at the system's voltage (a resistance changes with the square of it)
  Range<VoltAmperes> apparent;  ///< high: high watts at the unfavourable power factor
  LegPower likely;              ///< by leg, likely watts and power factor
  LegPower high;                ///< by leg, unfavourable ends
  LegPower low;
  Grade grade = Grade::unknown;  ///< of the running watts or amperes
  bool known = true;  ///< false where nobody entered watts or amperes: then the breaker's rating bounds it
};
/// Draws of all loads on a panel's circuits in a reading, in the order of circuit and load.
[[nodiscard]] std::vector<Draw> draws(const Plan& plan, PanelId panel, Reading reading,
                                      const SystemVoltages& system, const Tables& tables = publishedTables());

/// How a load is used in one hour of one month.
struct HourUse {
  Range<double> on;                     ///< chance that it is running: duty × share of the window
  std::optional<Range<double>> starts;  ///< an hour, times the share of the window; none where nobody knows
};
/// `hour` 0 to 23. Without windows the load's own duty and starts at all hours; no duty entered: it runs all
/// the time in use.
[[nodiscard]] HourUse hourUse(const Load& load, int month, int hour, bool southern);
[[nodiscard]] Season seasonOf(int month, bool southern);

// ---- the load of an hour (coincidence.cpp)
// -----------------------------------------------------------------------

/// Distribution of a sum of independent on-off loads on a lattice of 10 W or 10 VA, each share rounded up to
/// it.
class Distribution {
 public:
  static constexpr double kStep = 10.0;
  /// A coarser lattice is for sums that no house reaches; shares are rounded up to it all the same.
  explicit Distribution(double step = kStep) : step_(step) {}
  void add(double share, double probabilityOn);
  /// Smallest value x of the lattice with P(X <= x) >= q.
  [[nodiscard]] double quantile(double q) const;
  /// P(X > limit).
  [[nodiscard]] double probabilityOver(double limit) const;
  /// P(low < X <= high).
  [[nodiscard]] double probabilityWithin(double low, double high) const;
  /// P(X = (lowest() + i) * step()) for each i. Ends of the lattice below 1e-24 are left out.
  [[nodiscard]] const std::vector<double>& probabilities() const { return p_; }
  [[nodiscard]] std::size_t lowest() const { return lowest_; }
  [[nodiscard]] double step() const { return step_; }
  /// Steps of the lattice that hold a share: rounded up.
  [[nodiscard]] static std::size_t steps(double share, double step);

 private:
  double step_;
  std::size_t lowest_ = 0;
  std::vector<double> p_{1.0};
};
inline constexpr double kLikelyPeakQuantile = 0.99;

/// Load of one leg, or of both together, in one hour.
struct HourLoad {
  ComplexPower connected;  ///< everything on at once, likely values
  AcAmperes
      connectedCurrent;  ///< one leg: phasor sum over the leg's volts; both: VA over the line-to-line volts
  Range<Watts> average;
  Range<AcAmperes> averageCurrent;
  Range<Watts> likelyPeak;  ///< 99th percentile of the watts
  Range<VoltAmperes> likelyPeakApparent;
  Range<AcAmperes> likelyPeakCurrent;
  std::optional<AcAmperes> limit;            ///< all day; none for both together
  std::optional<Watts> limitWatts;           ///< all day; of one leg only where its label gives watts
  std::optional<VoltAmperes> limitApparent;  ///< all day; none for one leg
  std::optional<double> oddsOver;      ///< chance at a moment of the hour that a limit is exceeded, likely
                                       ///< values; none without a limit or where a load is not known
  std::optional<double> oddsOverHigh;  ///< the same with the unfavourable ends; unknown loads at their bound
  std::optional<double>
      timesOver;  ///< expected times an hour that a start carries it over; none: starts not known
  Verdict verdict = Verdict::notKnown;  ///< likely peak against the limits in A, W and VA that are there
};
struct HourFigures {
  int hour = 0;
  std::array<HourLoad, 2> leg;
  HourLoad total;
  AcAmperes neutralAverage;  ///< phasor
  AcAmperes neutralWorst;    ///< likely peak of the line-to-neutral load of the heavier leg alone
  bool allKnown = true;      ///< every load's watts were entered
};
class HourLoads;
/// One hour of a panel's load against the inverter's limits, or against none. Records the leg currents in
/// `working`.
[[nodiscard]] HourFigures hourFigures(const HourLoads& hour, const InverterLimits& limits,
                                      Working* working = nullptr);

/// The likely peak, and the average, of all loads but some: the base of a start.
struct Base {
  std::array<AcAmperes, 2> average, likely, high;  ///< by leg; high: unfavourable ends
  Watts averageTotal, likelyTotal, highTotal;
  VoltAmperes averageApparent, likelyApparent, highApparent;
  std::array<bool, 2> known{true, true};  ///< by leg: every load of it was entered
};

/// Use of each draw's load in each hour of a day.
using DayUses = std::array<std::vector<HourUse>, 24>;
[[nodiscard]] DayUses dayUses(const Plan& plan, const std::vector<Draw>& draws, int month);

/// Average power by hour of the day for the energy balance: by leg, with the spread of the mean.
struct DayProfile {
  std::array<std::array<Watts, 2>, 24> leg;          ///< likely average
  std::array<std::array<AcAmperes, 2>, 24> current;  ///< phasor magnitude of the average power
  std::array<Range<Watts>, 24> total;                ///< independent facts added in quadrature
};
[[nodiscard]] DayProfile dayProfile(const std::vector<Draw>& draws, const DayUses& uses,
                                    const SystemVoltages& system);

/// Likely peak (99th percentile, likely values) of each leg by hour of the day. Hours in which every load has
/// the same chance to be on share one distribution.
using DayPeaks = std::array<std::array<AcAmperes, 2>, 24>;
[[nodiscard]] DayPeaks dayPeaks(const std::vector<Draw>& draws, const DayUses& uses,
                                const SystemVoltages& system);

}  // namespace stayalight
