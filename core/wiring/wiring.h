#pragma once

// Overcurrent device, conductors and voltage drop of each piece of the feeder.

#include "core/code/edition.h"
#include "core/transfer/transfer.h"
#include "core/use/use.h"

namespace stayalight {

/// What a segment has to carry.
struct SegmentLoad {
  Segment segment = Segment::mainToSwitch;
  std::optional<AcAmperes> continuous;     ///< counted at 125 %
  std::optional<AcAmperes> other;
  std::optional<AcAmperes> operating;      ///< actual load, for the derated conductor and the drop
  std::optional<RatingAmperes> labelMaximum;  ///< of the inverter's output device
  std::optional<RatingAmperes> atLeast;    ///< device of another segment that this wire follows (after the switch)
  std::optional<AcAmperes> neutral;        ///< 220.61 load, or the worst single leg where none is typed
  AcAmperes neutralOperating;
  std::array<std::complex<double>, 2> legCurrent;  ///< operating phasors, for the drop
};

/// Why a device or a conductor is the size it is.
struct DeviceChoice {
  std::optional<AcAmperes> minimum;          ///< 125 % of the continuous part plus the rest
  std::optional<RatingAmperes> rating;       ///< next standard rating, or the fixed one
  std::optional<RatingAmperes> maximum;      ///< label's maximum, bus, switch or relay: the smallest
  Message maximumFrom;
  bool fixed = false;
  bool minimumAboveMaximum = false;
  bool belowMinimum = false;                 ///< a fixed one that is too small
  Message governs;
};
struct ConductorChoice {
  std::optional<ConductorSize> size;
  Metal metal = Metal::copper;
  std::optional<AcAmperes> terminalAmpacity;  ///< of the terminal column
  TemperatureColumn terminalColumn = TemperatureColumn::c60;
  std::optional<AcAmperes> deratedAmpacity;   ///< insulation column × ambient × adjustment
  double ambientFactor = 1.0;
  double adjustmentFactor = 1.0;
  std::optional<AcAmperes> ampacity;          ///< the lesser of both
  bool fixed = false;
  bool notProtected = false;                  ///< the device does not protect it
  bool tooSmall = false;                      ///< a fixed one below the load
  bool nmColumn = false;                      ///< the NM cable column governs
  std::optional<ConductorSize> withoutDerating;  ///< what the load alone would ask, for grounding upsizing
  Message governs;
};
struct DropFigure {
  std::array<AcVolts, 2> leg;       ///< fall of the leg's volts at the far end; below zero where a light leg rises
  std::array<double, 2> fraction;   ///< of the leg's nominal volts
  AcVolts lineToLine;
};
struct SegmentFigures {
  Segment segment = Segment::mainToSwitch;
  bool entered = false;             ///< a run describes it; else defaults stand in and length is 0
  SegmentLoad load;
  DeviceChoice device;
  ConductorChoice conductor;
  std::optional<ConductorSize> neutral;
  Message neutralGoverns;
  std::optional<ConductorSize> ground;
  Message groundGoverns;
  std::optional<DropFigure> drop;
  Verdict verdict = Verdict::notKnown;  ///< over where a flag above says so
};

/// Loads of all segments of the plan: the utility side from the typed calculated load (plus charging as a continuous
/// load where it passes through), the inverter side from its rated output, the sum where it adds to pass-through, the
/// wire after the switch for the larger device. `hour` gives operating currents and the worst single leg.
[[nodiscard]] std::vector<SegmentLoad> segmentLoads(const Plan& plan, const HourFigures& hour, const LegPower& operating, const InverterLimits& limits);
/// Device, conductors and drop for each segment; `working` records them.
[[nodiscard]] std::vector<SegmentFigures> segmentFigures(const Plan& plan, const std::vector<SegmentLoad>& loads, Edition edition,
                                                         Working* working = nullptr);

/// Drop of a three-wire run: impedance of the line conductors and of the neutral for its length, operating phasors.
[[nodiscard]] DropFigure threeWireDrop(const std::array<std::complex<double>, 2>& legCurrent, std::complex<double> lineOhm,
                                       std::complex<double> neutralOhm, const SystemVoltages& system);

}  // namespace stayalight
