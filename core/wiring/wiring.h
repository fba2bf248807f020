#pragma once

// Overcurrent device, conductors and voltage drop of each piece of the feeder.

#include "core/code/edition.h"
#include "core/code/tables.h"
#include "core/demand/demand.h"
#include "core/transfer/transfer.h"
#include "core/use/use.h"

namespace stayalight {

/// What a segment has to carry.
struct SegmentLoad {
  Segment segment = Segment::mainToSwitch;
  std::optional<AcAmperes> continuous;  ///< counted at 125 %
  std::optional<AcAmperes> other;
  std::optional<AcAmperes> operating;         ///< actual load, for the derated conductor and the drop
  std::optional<RatingAmperes> labelMaximum;  ///< of the inverter's output device
  std::optional<RatingAmperes>
      atLeast;                       ///< device of another segment that this wire follows (after the switch)
  std::optional<AcAmperes> neutral;  ///< 220.61 load, or the worst single leg where none is typed
  AcAmperes neutralOperating;
  std::array<std::complex<double>, 2> legCurrent;  ///< operating phasors, for the drop
  bool complete = true;                ///< false where a part of the load is not known: never "within" then
  std::vector<Message> missing;        ///< what is not known then
  StepIndex continuousStep = kNoStep;  ///< where they are worked out, when recorded
  StepIndex otherStep = kNoStep;
};

/// Why a device or a conductor is the size it is.
struct DeviceChoice {
  std::optional<AcAmperes> minimum;  ///< 125 % of the continuous part plus the rest
  std::optional<RatingAmperes>
      rating;  ///< next standard rating, or the fixed one; after a switch the larger one ahead
  std::optional<RatingAmperes> inPlan;   ///< of the breaker that stands for it in a panel of the plan
  std::optional<RatingAmperes> maximum;  ///< label's maximum, bus, switch or relay: the smallest
  Message maximumFrom;
  RuleId maximumRule;  ///< by which it is the limit
  bool fixed = false;
  bool minimumAboveMaximum = false;  ///< no standard rating lies between the two
  bool belowMinimum = false;         ///< the fixed one, or the breaker in the plan, is too small
  bool aboveMaximum = false;         ///< the fixed one, or the breaker in the plan, is too large
  bool panelMainTooSmall = false;    ///< the main breaker of the backup subpanel is below the minimum
  /// The device at the utility's end, which the bus of the backup subpanel sees through the closed relay,
  /// where it is above that bus and no output device stands between.
  std::optional<RatingAmperes> aheadOfBus;
  std::optional<RatingAmperes> next;  ///< the next larger standard rating; none above the largest
  Message governs;
  RuleId rule;  ///< by which it governs
};
struct ConductorChoice {
  std::optional<ConductorSize> size;
  Metal metal = Metal::copper;
  std::optional<AcAmperes> terminalAmpacity;  ///< of the terminal column
  TemperatureColumn terminalColumn = TemperatureColumn::c60;
  std::optional<AcAmperes> deratedAmpacity;  ///< insulation column × ambient × adjustment
  std::optional<Fraction> ambientFactor;     ///< none: not permitted in that ambient, or no size
  std::optional<Fraction> adjustmentFactor;  ///< for conductors bundled together
  std::optional<AcAmperes> ampacity;         ///< the lesser of both
  std::optional<RatingAmperes> device;       ///< the largest device ahead of it
  bool fixed = false;
  bool notProtected = false;  ///< the device does not protect it
  bool tooSmall = false;      ///< a fixed one below the load
  bool nmColumn = false;      ///< the NM cable column governs
  std::optional<ConductorSize>
      required;  ///< what the rules ask here; a larger one enlarges the grounding conductor
  Message governs;
  RuleId rule;  ///< by which it governs
  /// The next larger size, and what it carries here; none above the largest.
  std::optional<ConductorSize> next;
  std::optional<AcAmperes> nextAmpacity;
};
struct DropFigure {
  std::array<AcVolts, 2> leg;  ///< fall of the leg's volts at the far end; below zero where a light leg rises
  std::array<double, 2> fraction;  ///< of the leg's nominal volts
  AcVolts lineToLine;
};
struct SegmentFigures {
  Segment segment = Segment::mainToSwitch;
  bool entered = false;  ///< a run describes it; else defaults stand in and length is 0
  SegmentLoad load;
  DeviceChoice device;
  ConductorChoice conductor;
  std::optional<ConductorSize> neutral;
  bool neutralTooSmall = false;  ///< a fixed one
  Message neutralGoverns;
  RuleId neutralRule;
  std::optional<ConductorSize> ground;
  bool groundTooSmall = false;  ///< a fixed one
  Message groundGoverns;
  RuleId groundRule;
  std::optional<DropFigure> drop;
  Verdict verdict = Verdict::notKnown;  ///< over where a flag above says so
  std::vector<Message> over;            ///< one for each flag that is set
  std::vector<Message> notKnown;        ///< what is missing for a verdict
};

/// "main panel to transfer switch"
[[nodiscard]] Message segmentName(Segment segment);
/// Whose steps they are in a working; other things have the like beside their figures.
[[nodiscard]] inline WorkingSubject workingSubject(Segment segment) { return {segmentName(segment), 0}; }
/// Loads of all segments of the plan: the utility side from the calculated load, typed or worked out (plus
/// charging as a continuous load where it passes through), the inverter side from its rated output, the sum
/// where it adds to pass-through, the wire after the switch for the larger device. `hour` gives the worst
/// single leg, `operating` how the load lies on the legs: the heavier leg is taken at the segment's load, the
/// other in proportion.
[[nodiscard]] std::vector<SegmentLoad> segmentLoads(const Plan& plan, const HourFigures& hour,
                                                    const LegPower& operating, const InverterLimits& limits,
                                                    const FeederLoad& feeder, Working* working = nullptr,
                                                    const Tables& tables = publishedTables());
/// Device, conductors and drop for each segment; `working` records them. None for a Canadian site, whose code
/// is not covered.
[[nodiscard]] std::vector<SegmentFigures> segmentFigures(const Plan& plan,
                                                         const std::vector<SegmentLoad>& loads,
                                                         Edition edition, Working* working = nullptr,
                                                         const Tables& tables = publishedTables());

/// Drop of a three-wire run: impedance of the line conductors and of the neutral for its length, operating
/// phasors in one frame with the volts of L1 at angle 0. Leg volts at the load are E - I Z - In Zn with In =
/// I1 + I2.
[[nodiscard]] DropFigure threeWireDrop(const std::array<std::complex<double>, 2>& legCurrent,
                                       std::complex<double> lineOhm, std::complex<double> neutralOhm,
                                       const SystemVoltages& system);

}  // namespace stayalight
