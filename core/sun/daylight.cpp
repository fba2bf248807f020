#include "core/sun/daylight.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stayalight {
namespace {

constexpr double kRadian = std::numbers::pi / 180.0;
constexpr double kDegreesPerHour = 15.0;
constexpr double kHorizon = -0.833;  // degrees, of the centre when the upper limb shows
constexpr int kSummerFirst = 3, kSummerLast = 10;
constexpr int kMiddleOfMonth = 15;

double yearAngle(int dayOfYear) { return 2.0 * std::numbers::pi * (dayOfYear - 1) / 365.0; }

int dayOfYearAt(int month) {
  constexpr std::array<int, 12> before = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};
  return before[static_cast<std::size_t>(std::clamp(month, 1, 12) - 1)] + kMiddleOfMonth;
}

}  // namespace

Degrees declination(int dayOfYear) {
  const double b = yearAngle(dayOfYear);
  const double radians = 0.006918 - 0.399912 * std::cos(b) + 0.070257 * std::sin(b) -
                         0.006758 * std::cos(2.0 * b) + 0.000907 * std::sin(2.0 * b) -
                         0.002697 * std::cos(3.0 * b) + 0.00148 * std::sin(3.0 * b);
  return Degrees(radians / kRadian);
}

Hours equationOfTime(int dayOfYear) {
  const double b = yearAngle(dayOfYear);
  const double minutes = 229.18 * (0.000075 + 0.001868 * std::cos(b) - 0.032077 * std::sin(b) -
                                   0.014615 * std::cos(2.0 * b) - 0.04089 * std::sin(2.0 * b));
  return Hours(minutes / 60.0);
}

SunTimes sunTimes(Degrees latitude, Degrees longitude, Hours utcOffset, int dayOfYear) {
  // At a pole every hour angle is alike; a hair beside it the same formula holds.
  const double lat = std::clamp(latitude.count(), -89.999, 89.999) * kRadian;
  const double dec = declination(dayOfYear).count() * kRadian;
  const double cosine =
      (std::sin(kHorizon * kRadian) - std::sin(lat) * std::sin(dec)) / (std::cos(lat) * std::cos(dec));
  if (cosine < -1.0) return {Daylight::upAllDay, {}, {}};
  if (cosine > 1.0) return {Daylight::downAllDay, {}, {}};
  const Hours half(std::acos(cosine) / kRadian / kDegreesPerHour);
  const Hours noon =
      Hours(12.0 - longitude.count() / kDegreesPerHour) + utcOffset - equationOfTime(dayOfYear);
  return {Daylight::risesAndSets, noon - half, noon + half};
}

std::optional<SunTimes> sunTimes(const Site& site, int month) {
  if (!site.latitude) return std::nullopt;
  Hours offset;
  if (site.utcOffset) {
    offset = *site.utcOffset;
  } else if (site.longitude) {
    offset = Hours(std::round(site.longitude->count() / kDegreesPerHour));
  }
  const Degrees longitude = site.longitude.value_or(Degrees(offset.count() * kDegreesPerHour));
  if (site.daylightSaving && month >= kSummerFirst && month <= kSummerLast) offset += Hours(1.0);
  return sunTimes(*site.latitude, longitude, offset, dayOfYearAt(month));
}

}  // namespace stayalight
