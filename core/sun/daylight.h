#pragma once

// When it is dark: sunrise and sunset on the clock of the house, good to some minutes. Not for shading or
// yield.

#include <optional>

#include "core/plan/site.h"

namespace stayalight {

/// Declination of the sun, north positive, on day 1 to 365 of a common year. Series of J. W. Spencer,
/// "Fourier series representation of the position of the sun", Search 2 (1971) 172, as in NOAA, "General
/// Solar Position Calculations"; within 0.7 degrees of an ephemeris in any year from 1990 to 2050.
[[nodiscard]] Degrees declination(int dayOfYear);
/// True solar time less mean solar time, by the same author; within a minute.
[[nodiscard]] Hours equationOfTime(int dayOfYear);

enum class Daylight : std::uint8_t { risesAndSets, upAllDay, downAllDay };
/// Hours of the clock; a place far from the middle of its zone may have them outside 0 to 24.
struct SunTimes {
  Daylight kind = Daylight::risesAndSets;
  Hours rise, set;  ///< where it rises and sets
};
/// The upper limb on a level horizon, refraction included: the sun's centre 0.833 degrees below (NOAA, as
/// above). `utcOffset` is that of the clock, summer time included. Latitude -90 to 90, longitude east
/// positive.
[[nodiscard]] SunTimes sunTimes(Degrees latitude, Degrees longitude, Hours utcOffset, int dayOfYear);

/// On the 15th of a month, 1 to 12, by the clock of the site: summer time from March to October where the
/// site has it (second Sunday of March to first Sunday of November, 15 U.S.C. 260a). Without an offset that
/// of the nearest zone, without a longitude the middle of its zone, both within an hour or so. Nothing
/// without a latitude.
[[nodiscard]] std::optional<SunTimes> sunTimes(const Site& site, int month);

}  // namespace stayalight
