// Rise and set against an ephemeris, a second coding of the series, and a published example.

#include "core/sun/daylight.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

namespace stayalight {
namespace {

std::vector<std::vector<std::string>> rowsOf(const std::string& name) {
  std::ifstream in(std::string(STAYALIGHT_SOURCE_DIR) + "/tests/reference/" + name);
  std::vector<std::vector<std::string>> rows;
  bool head = true;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    if (std::exchange(head, false)) continue;
    std::istringstream cells(line);
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, ',');) rows.back().push_back(cell);
  }
  return rows;
}

int dayOfCommonYear(int month, int day) {
  constexpr int before[] = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};
  return before[month - 1] + day;
}

TEST(Declination, isThatOfASecondCoding) {
  const auto rows = rowsOf("sun_day_of_year.csv");
  ASSERT_EQ(rows.size(), 12u);
  for (const auto& row : rows) {
    const int day = std::stoi(row[0]);
    EXPECT_NEAR(declination(day).count(), std::stod(row[1]), 0.0005) << day;
    EXPECT_NEAR(equationOfTime(day).count() * 60.0, std::stod(row[2]), 0.0005) << day;
  }
}

// The height of the sun from declination, hour angle and latitude is what rise and set are solved from.
// Source of the zeniths: sun_positions.csv.
TEST(Declination, givesTheHeightOfAnEphemerisWithinItsSpread) {
  const auto rows = rowsOf("sun_positions.csv");
  ASSERT_EQ(rows.size(), 12u);
  constexpr double kRadian = std::numbers::pi / 180.0;
  for (const auto& row : rows) {
    int year = 0, month = 0, date = 0, hour = 0, minute = 0, second = 0;
    ASSERT_EQ(
        std::sscanf(row[0].c_str(), "%d-%d-%dT%d:%d:%dZ", &year, &month, &date, &hour, &minute, &second), 6);
    const int day = dayOfCommonYear(month, date);
    const double utc = hour + minute / 60.0 + second / 3600.0;
    const double latitude = std::stod(row[1]) * kRadian, longitude = std::stod(row[2]);
    const double angle = (utc + longitude / 15.0 + equationOfTime(day).count() - 12.0) * 15.0 * kRadian;
    const double dec = declination(day).count() * kRadian;
    const double zenith =
        std::acos(std::sin(latitude) * std::sin(dec) + std::cos(latitude) * std::cos(dec) * std::cos(angle)) /
        kRadian;
    EXPECT_NEAR(zenith, std::stod(row[3]), 0.7) << row[0];
  }
}

// Example of the Nautical Almanac Office, United States Naval Observatory, Almanac for Computers 1990 (from
// memory): 25 June, 40.9 N 74.3 W, zenith 90 degrees 50 minutes, clock four hours behind: sunrise 5:26.
TEST(SunTimes, riseOfAPublishedExample) {
  const SunTimes times = sunTimes(Degrees(40.9), Degrees(-74.3), Hours(-4), dayOfCommonYear(6, 25));
  ASSERT_EQ(times.kind, Daylight::risesAndSets);
  EXPECT_NEAR(times.rise.count(), 5.0 + 26.0 / 60.0, 2.0 / 60.0);
}

TEST(SunTimes, atTheEquatorOnAnEquinoxTheDayIsTwelveHoursAndTheRefraction) {
  // 2 x 0.833 degrees at 15 degrees an hour: 6.7 minutes.
  const SunTimes times = sunTimes(Degrees(0), Degrees(0), Hours(0), 80);
  EXPECT_NEAR((times.set - times.rise).count(), 12.0 + 2.0 * 0.833 / 15.0, 0.001);
}

TEST(SunTimes, northAndSouthMirrorEachOther) {
  // Day and night of one half are night and day of the other, but for the horizon's depth.
  for (const int day : {15, 105, 196, 288}) {
    const SunTimes north = sunTimes(Degrees(45), Degrees(0), Hours(0), day);
    const SunTimes south = sunTimes(Degrees(-45), Degrees(0), Hours(0), day);
    EXPECT_NEAR((north.set - north.rise).count() + (south.set - south.rise).count(), 24.3, 0.1) << day;
  }
}

TEST(SunTimes, beyondThePolarCircleItStaysUpOrDown) {
  EXPECT_EQ(sunTimes(Degrees(70), Degrees(0), Hours(0), 172).kind, Daylight::upAllDay);
  EXPECT_EQ(sunTimes(Degrees(70), Degrees(0), Hours(0), 355).kind, Daylight::downAllDay);
  EXPECT_EQ(sunTimes(Degrees(-70), Degrees(0), Hours(0), 355).kind, Daylight::upAllDay);
  EXPECT_EQ(sunTimes(Degrees(90), Degrees(0), Hours(0), 172).kind, Daylight::upAllDay);
  EXPECT_EQ(sunTimes(Degrees(90), Degrees(0), Hours(0), 355).kind, Daylight::downAllDay);
}

TEST(SunTimes, ofASiteFollowItsClock) {
  Site site;
  EXPECT_FALSE(sunTimes(site, 1).has_value()) << "without a latitude nobody knows";
  site.latitude = Degrees(44.0);
  site.longitude = Degrees(-75.0);
  site.utcOffset = Hours(-5.0);
  const auto noon = [&](int month) {
    const SunTimes times = *sunTimes(site, month);
    return (times.rise.count() + times.set.count()) / 2.0;
  };
  // In the middle of a zone the sun is south at noon, but for the equation of time; an hour later by summer
  // time.
  EXPECT_NEAR(noon(1), 12.0, 0.3);
  EXPECT_NEAR(noon(2), 12.0, 0.3);
  EXPECT_NEAR(noon(3), 13.0, 0.3);
  EXPECT_NEAR(noon(10), 13.0, 0.3);
  EXPECT_NEAR(noon(11), 12.0, 0.3);
  site.daylightSaving = false;
  EXPECT_NEAR(noon(7), 12.0, 0.3);
  const double winter = noon(1);
  site.longitude = Degrees(-82.5);  // half an hour of sun further west
  EXPECT_NEAR(noon(1), winter + 0.5, 1e-9);
  site.utcOffset.reset();  // -5.5 zones: the nearer one of the two
  EXPECT_NEAR(noon(1), 12.0, 0.8);
  site.utcOffset = Hours(-5.0);
  site.longitude.reset();
  EXPECT_NEAR(noon(1), winter, 1e-9);
}

}  // namespace
}  // namespace stayalight
