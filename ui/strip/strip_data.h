#pragma once

// The outage as points of curves: hours of the clock on one axis, charge in per cent, amperes by leg. No
// widget here.

#include <QtCore/QPointF>
#include <QtCore/QString>
#include <array>
#include <optional>
#include <vector>

#include "core/assess/assess.h"

namespace stayalight {

struct StripData {
  bool known = false;
  double start = 18.0;  ///< clock hour at which the power goes out, 0 to 24
  double first = 12.0;  ///< left end of the axis, clock hours
  double last = 48.0;   ///< right end; hours after midnight of the first day
  double floor = 10.0;  ///< per cent
  double reserve = 20.0;
  double endLow = 0.0, endLikely = 0.0, endHigh = 0.0;  ///< clock hours
  bool ends = false;                                    ///< within the horizon
  std::vector<QPointF> low, likely, high;               ///< charge in per cent over clock hours
  std::array<std::vector<QPointF>, 2> average, peak;    ///< amperes, steps
  std::optional<double> limit;                          ///< of one leg, amperes
  std::vector<QPointF>
      nights;             ///< sunset and sunrise in clock hours, within the axis; empty: not known, or none
  double amperes = 10.0;  ///< of the half axis of a leg
};
/// `first`, if given, keeps the axis where it is while the start is dragged.
[[nodiscard]] StripData stripData(const Scenario& scenario, const Assessment& assessment,
                                  std::optional<double> first = std::nullopt);

/// From sunset to sunrise by the clock of the site in the month that is looked at, cut to the axis. Nothing
/// where the site has no latitude, or the sun stays up.
[[nodiscard]] std::vector<QPointF> nights(const Plan& plan, double first, double last);

/// What stands at one hour of the clock.
struct StripReading {
  double hour = 0.0;
  double low = 0.0, likely = 0.0, high = 0.0;
  std::array<double, 2> average{}, peak{};
  bool dark = false;  ///< the likely run is over
};
/// Nothing before the outage or where no curve is known.
[[nodiscard]] std::optional<StripReading> readingAt(const StripData& data, double hour);

/// An hour of the axis as a time of day.
[[nodiscard]] QString clockText(double hour, const Language& language);
/// The same to five minutes: an estimate has no single minutes.
[[nodiscard]] QString aboutClockText(double hour, const Language& language);

}  // namespace stayalight
