#pragma once

// Sources, modes, the way of the current, and where neutral and ground are joined in each mode.

#include <array>
#include <optional>
#include <vector>

#include "core/code/tables.h"
#include "core/panel/spaces.h"
#include "core/plan/plan.h"

namespace stayalight {

/// `ordinary`: the utility feeds the backup subpanel. `outage`: the inverter does. `off`: the switch's
/// centre. `generator`: the utility is away and the generator runs. `bypass`: the utility feeds the backup
/// subpanel around the inverter.
enum class Mode : std::uint8_t { ordinary, outage, off, generator, bypass };
/// Modes besides `off` that the plan has equipment for.
[[nodiscard]] std::vector<Mode> modes(const Plan& plan);

/// Voltages between the conductors of a supply.
struct SystemVoltages {
  AcVolts legToNeutral{120};
  AcVolts legToLeg{240};
  bool wye = false;  ///< two legs of a 120/208 wye
  WyeOrder order = WyeOrder::unknown;
  bool single = false;  ///< one 120 V source: nothing between the legs
};
/// Of what feeds the backup subpanel in that mode: the service, the inverter's output, or the generator.
[[nodiscard]] SystemVoltages voltages(const Plan& plan, Mode mode, const Tables& tables = publishedTables());

/// What the inverters together carry. Values stand only where the label gives them or they follow from it.
struct InverterLimits {
  std::optional<Watts> total;  ///< all day
  std::optional<VoltAmperes> totalApparent;
  std::optional<AcAmperes>
      leg;  ///< all day, one leg: entered amperes, else leg watts, else half the total, over 120 V
  std::optional<Watts> legWatts;  ///< all day, one leg: only where the label gives watts for it
  /// Overload curve of all units, times ascending; each point with both figures, the missing one filled in.
  struct Point {
    Seconds time;
    Watts total;
    VoltAmperes apparent;
    AcAmperes leg;
  };
  std::vector<Point> curve;
};
[[nodiscard]] InverterLimits inverterLimits(const Inverter& inverter,
                                            const Tables& tables = publishedTables());

/// Battery power for an AC load of all units together: load / marginal efficiency + idle of each unit; or,
/// with a label's curve, load / efficiency at that share of the rated output (idle inside), never both. The
/// curve is linear between its points and flat above the last; below the first the loss in watts stays that
/// of the first point, so that no load still draws something. Points at zero load say nothing and are left
/// out. Nothing where the label's figures are not entered.
[[nodiscard]] std::optional<BatteryWatts> batteryPower(const Inverter& inverter, Watts load);

/// The limit at a duration: between points the safe side (the longer time's value), before the first point
/// the first point (no extrapolation), after the last the all-day rating; without a curve the all-day rating.
struct LimitAt {
  std::optional<AcAmperes> leg;
  std::optional<Watts> total;
  std::optional<VoltAmperes> apparent;
  Seconds pointTime;  ///< time of the curve point that gives it; 0 for the all-day rating
};
[[nodiscard]] LimitAt limitAt(const InverterLimits& limits, Seconds duration);

/// Pieces of the way from the sources to the backup subpanel that this arrangement has, in the order of the
/// current. A manual or automatic switch has main to switch, inverter to switch, switch to backup;
/// pass-through has main to inverter and inverter to backup. Beside a switch, main to inverter exists where a
/// breaker feeds the inverter's input. The generator's inlet stands ahead of the piece that its current goes
/// on through, else with the bypass at the end; the bypass position of a manual switch is the switch itself.
[[nodiscard]] std::vector<Segment> segments(const Plan& plan);
/// The run that describes a segment, or nullptr where nobody has entered it.
[[nodiscard]] const FeederRun* runOf(const Plan& plan, Segment segment);
/// Does the segment carry current in that mode?
[[nodiscard]] bool carries(const Plan& plan, Segment segment, Mode mode);

/// Joins of neutral and ground that are connected to the neutral of the backup subpanel in one mode. A bond
/// on the opened side of a transfer that switches the neutral does not count; the service bond behind a solid
/// neutral counts even while the utility is dead. Exactly one is right in every mode (702.11 for a generator:
/// bonded where its transfer switches the neutral, else not); a generator on a cord counts only while it
/// runs.
struct BondCount {
  Mode mode = Mode::ordinary;
  std::int32_t certain = 0;   ///< bonds that are surely there
  std::int32_t possible = 0;  ///< more that nobody has looked for
  std::vector<Message> places;
  [[nodiscard]] bool known() const { return possible == 0; }
};
[[nodiscard]] std::vector<BondCount> bondCounts(const Plan& plan);

/// Current comes in at this breaker's load side: a source feeds the bus through it, whatever the plan says of
/// how it is fed.
[[nodiscard]] bool fedBackwards(const Breaker& breaker);

/// Breakers through which a source can feed a panel's bus, and whether something listed keeps them apart.
struct BusSources {
  PanelId panel;
  std::vector<BreakerId> breakers;  ///< feeding breakers besides the panel's own main
  std::int32_t sources = 0;         ///< main or feeder included
  Answer keptApart = Answer::unknown;
};
[[nodiscard]] std::vector<BusSources> busSources(const Plan& plan);

}  // namespace stayalight
