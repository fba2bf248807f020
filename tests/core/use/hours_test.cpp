#include <gtest/gtest.h>

#include "core/use/use.h"

namespace stayalight {
namespace {

UseWindow window(Season season, int from, int to, double share) {
  UseWindow w;
  w.season = season;
  w.from = TimeOfDay(from * 60);
  w.to = TimeOfDay(to * 60);
  w.share = Fraction(share);
  return w;
}

Load fridge() {
  Load load;
  load.duty = {Fraction(0.4), Grade::measured, {}, {}, {}, {}, {}};
  load.startsPerHour = {PerHour(2), Grade::measured, {}, {}, {}, {}, {}};
  return load;
}

TEST(SeasonOf, SwapsSouthOfTheEquator) {
  EXPECT_EQ(seasonOf(12, false), Season::winter);
  EXPECT_EQ(seasonOf(2, false), Season::winter);
  EXPECT_EQ(seasonOf(3, false), Season::spring);
  EXPECT_EQ(seasonOf(8, false), Season::summer);
  EXPECT_EQ(seasonOf(11, false), Season::autumn);
  EXPECT_EQ(seasonOf(1, true), Season::summer);
  EXPECT_EQ(seasonOf(7, true), Season::winter);
}

TEST(HourUse, WithoutWindowsTheOwnDutyHolds) {
  const HourUse use = hourUse(fridge(), 1, 3, false);
  EXPECT_DOUBLE_EQ(use.on.likely, 0.4);
  EXPECT_DOUBLE_EQ(use.starts->likely, 2.0);
}

TEST(HourUse, NoDutyMeansOnAllTheTimeAndThenItNeverStarts) {
  const HourUse use = hourUse(Load{}, 1, 3, false);
  EXPECT_DOUBLE_EQ(use.on.low, 1.0);
  ASSERT_TRUE(use.starts);
  EXPECT_DOUBLE_EQ(use.starts->likely, 0.0);
  Load cycling;
  cycling.duty = fridge().duty;
  EXPECT_FALSE(hourUse(cycling, 1, 3, false).starts);
}

TEST(HourUse, WindowsRunOverMidnightAndByTheSeason) {
  Load load = fridge();
  load.windows = {window(Season::winter, 22, 2, 0.5)};
  EXPECT_DOUBLE_EQ(hourUse(load, 1, 23, false).on.likely, 0.2);
  EXPECT_DOUBLE_EQ(hourUse(load, 1, 1, false).on.likely, 0.2);
  EXPECT_DOUBLE_EQ(hourUse(load, 1, 2, false).on.likely, 0.0);
  EXPECT_DOUBLE_EQ(hourUse(load, 7, 23, false).on.likely, 0.0);
  EXPECT_DOUBLE_EQ(hourUse(load, 7, 23, true).on.likely, 0.2);
  EXPECT_DOUBLE_EQ(hourUse(load, 1, 23, false).starts->likely, 1.0);
}

TEST(HourUse, TheLargerShareCountsAndItsOwnFiguresReplace) {
  Load load = fridge();
  load.windows = {window(Season::all, 0, 0, 0.3), window(Season::all, 17, 20, 1.0)};
  load.windows[1].duty = Fraction(0.9);
  load.windows[1].startsPerHour = PerHour(5);
  EXPECT_DOUBLE_EQ(hourUse(load, 5, 18, false).on.likely, 0.9);
  EXPECT_DOUBLE_EQ(hourUse(load, 5, 18, false).starts->likely, 5.0);
  EXPECT_NEAR(hourUse(load, 5, 12, false).on.likely, 0.12, 1e-12);
}

}  // namespace
}  // namespace stayalight
