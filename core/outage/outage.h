#pragma once

// How long the battery lasts: an exact energy balance in events. Load is constant within its hour; every
// crossing of the floor or a limit is solved for. An estimate, and called so.

#include <array>
#include <optional>
#include <vector>

#include "core/use/use.h"

namespace stayalight {

/// From the label to what reaches the loads.
struct UsableEnergy {
  std::optional<BatteryWattHours> nominal;  ///< packs × nominal
  Range<double> health;
  double temperatureFactor = 1.0;  ///< likely share at the cells' temperature; 0 where it is not known
  std::optional<Range<BatteryWattHours>>
      capacityNow;  ///< nominal × health × temperature factor; ends in quadrature
  double startCharge = 1.0, floor = 0.0, reserve = 0.0;
  std::optional<Range<BatteryWattHours>> usable;  ///< capacity now × (start charge − floor)
};

/// What ends the first run.
enum class OutageEnd : std::uint8_t {
  floorReached,
  legOverload,
  totalOverload,
  batteryCurrent,
  beyondHorizon,
  notKnown
};

struct OutagePoint {
  Hours at;                             ///< since the power failed
  double charge = 0.0;                  ///< of capacity now
  std::array<AcAmperes, 2> legAverage;  ///< during the piece that begins here
  std::array<AcAmperes, 2> legLikelyPeak;
  Watts load;
};
struct OutageRun {
  /// Events only, at most 300: the start, whole hours, the reserve mark, the end. The last one shows no load
  /// where the floor was reached, and the load that ended the run where it was an overload.
  std::vector<OutagePoint> points;
  Hours end;                       ///< first time the panel goes dark, or the horizon
  std::optional<Hours> toReserve;  ///< when the reserve mark is passed
  OutageEnd reason = OutageEnd::notKnown;
  BatteryWattHours drawn;  ///< delivered + idle + losses
  LoadWattHours delivered;
  BatteryWattHours idle, losses;  ///< with a label's curve the idle draw is inside the losses
};
struct OutageFigures {
  bool known = false;  ///< battery, efficiency and load are there
  UsableEnergy energy;
  OutageRun low, likely, high;  ///< by runtime: low is the short one (favourable and unfavourable facts)
  Range<Hours> runtime;
  TimeOfDay endLow, endLikely, endHigh;  ///< clock times
  std::vector<Message> missing;          ///< what has to be entered before hours can be estimated
};
inline constexpr Hours kOutageHorizon{72.0};

/// Usable share of the 25 C capacity at a cell temperature (lithium iron phosphate; common practice, no
/// source): linear between the points of the table, flat above the last, nothing below -20 C, where most
/// packs stop.
[[nodiscard]] std::optional<Range<double>> capacityAtTemperature(Temperature cells);
/// Temperature of the cells: as entered, else 25 C indoors; nothing for a garage or outdoors.
[[nodiscard]] std::optional<Temperature> cellTemperature(const Battery& battery);
[[nodiscard]] UsableEnergy usableEnergy(const Battery& battery, Fraction startCharge);

/// The outage of a scenario with the day's profile; `peaks` only colour the trace. The short and the long run
/// move mean power and health, taken as independent, together to the 90th percentile of both: each by its own
/// deviation times its share of the combined one, so that to first order the runtime moves by the root of the
/// sum of the squares.
[[nodiscard]] OutageFigures outageFigures(const Plan& plan, const Scenario& scenario,
                                          const DayProfile& profile, const DayPeaks& peaks,
                                          const InverterLimits& limits, Working* working = nullptr,
                                          const Tables& tables = publishedTables());

}  // namespace stayalight
