#pragma once

// How long the battery lasts: an exact energy balance in events. Load is constant within its hour; every crossing of
// the floor or a limit is solved for. An estimate, and called so.

#include "core/use/use.h"

namespace stayalight {

/// From the label to what reaches the loads.
struct UsableEnergy {
  std::optional<BatteryWattHours> nominal;   ///< packs × nominal
  Range<double> health;
  double temperatureFactor = 1.0;
  std::optional<Range<BatteryWattHours>> capacityNow;
  double startCharge = 1.0, floor = 0.0, reserve = 0.0;
  std::optional<Range<BatteryWattHours>> usable;  ///< capacity now × (start charge − floor)
};

/// What ends the first run.
enum class OutageEnd : std::uint8_t { floorReached, legOverload, totalOverload, batteryCurrent, beyondHorizon, notKnown };

struct OutagePoint {
  Hours at;                              ///< since the power failed
  double charge = 0.0;                   ///< of capacity now
  std::array<AcAmperes, 2> legAverage;   ///< during the piece that begins here
  std::array<AcAmperes, 2> legLikelyPeak;
  Watts load;
};
struct OutageRun {
  std::vector<OutagePoint> points;       ///< events only, at most 300
  Hours end;                             ///< first time the panel goes dark, or the horizon
  std::optional<Hours> toReserve;        ///< when the reserve mark is passed
  OutageEnd reason = OutageEnd::notKnown;
  BatteryWattHours drawn;
  LoadWattHours delivered;
  BatteryWattHours idle, losses;
};
struct OutageFigures {
  bool known = false;                    ///< battery, efficiency and load are there
  UsableEnergy energy;
  OutageRun low, likely, high;           ///< by runtime: low is the short one (favourable and unfavourable facts)
  Range<Hours> runtime;
  TimeOfDay endLow, endLikely, endHigh;  ///< clock times
  std::vector<Message> missing;          ///< what has to be entered before hours can be estimated
};
inline constexpr Hours kOutageHorizon{72.0};

/// Battery power for an AC load: load / marginal efficiency + idle; or load / efficiency of the label's curve at that
/// load (idle inside, at no load the smallest point's loss); never both.
[[nodiscard]] std::optional<BatteryWatts> batteryPower(const Inverter& inverter, Watts load);
/// Usable share of the 25 C capacity at a cell temperature (lithium iron phosphate; common practice, no source).
[[nodiscard]] double capacityAtTemperature(Temperature cells);
[[nodiscard]] UsableEnergy usableEnergy(const Battery& battery, Fraction startCharge);

/// The outage of a scenario with the day's profile; `peaks` only colour the trace.
[[nodiscard]] OutageFigures outageFigures(const Plan& plan, const Scenario& scenario, const DayProfile& profile, const DayPeaks& peaks,
                                          const InverterLimits& limits, Working* working = nullptr);

}  // namespace stayalight
