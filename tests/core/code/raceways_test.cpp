// Tables of room against a second typed copy and the identities between their columns.

#include "core/code/raceways.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/reference/tables/raceways.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;

namespace {

double disc(double diameter) { return std::numbers::pi / 4.0 * diameter * diameter; }

TEST(Raceways, InsideAreasAreThoseOfTableFour) {
  for (std::size_t type = 0; type < reference::kRaceways.size(); ++type) {
    for (std::size_t size = 0; size < 8; ++size) {
      const double area = racewayArea(static_cast<RacewayType>(type), static_cast<TradeSize>(size)).count();
      EXPECT_DOUBLE_EQ(area, reference::kRaceways[type].area[size]) << type << ' ' << size;
      // Table 4 lists the inside diameter beside the area it makes.
      EXPECT_NEAR(area, disc(reference::kRaceways[type].diameter[size]), 0.002) << type << ' ' << size;
    }
  }
}

TEST(Raceways, ConductorAreasAreThoseOfTableFive) {
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    EXPECT_DOUBLE_EQ(conductorArea(size, WireType::thwn2).count(), reference::kThwnArea[i]);
    EXPECT_DOUBLE_EQ(conductorArea(size, WireType::xhhw2).count(), reference::kXhhwArea[i]);
    EXPECT_NEAR(reference::kThwnArea[i], disc(reference::kThwnDiameter[i]), 0.0002) << i;
    EXPECT_NEAR(reference::kXhhwArea[i], disc(reference::kXhhwDiameter[i]), 0.0002) << i;
  }
}

TEST(Raceways, FillByNumber) {
  EXPECT_FALSE(racewayFill(0));
  for (const auto& [count, percent] : reference::kFill)
    EXPECT_DOUBLE_EQ(racewayFill(count)->count(), percent / 100.0) << count;
  EXPECT_DOUBLE_EQ(nippleFill().count(), 0.60);  // Chapter 9 Note 4
}

TEST(Raceways, MixedConductorsInPlasticConduit) {
  const reference::WorkedExample example("S-20");
  const double total = 3 * conductorArea(ConductorSize::kcmil500, WireType::thwn2).count() +
                       conductorArea(ConductorSize::kcmil250, WireType::thwn2).count() +
                       conductorArea(ConductorSize::awg3, WireType::thwn2).count();
  example.expectNear("total_area_in2", total);
  const double share = racewayFill(5)->count();
  EXPECT_GT(total, racewayArea(RacewayType::pvc40, TradeSize::twoHalf).count() * share);
  EXPECT_LE(total, racewayArea(RacewayType::pvc40, TradeSize::three).count() * share);
}

TEST(Boxes, VolumesAndTheCountsTheyAllow) {
  for (std::size_t i = 0; i < reference::kBoxConductor.size(); ++i)
    EXPECT_DOUBLE_EQ(boxConductorVolume(static_cast<ConductorSize>(i))->count(), reference::kBoxConductor[i]);
  EXPECT_FALSE(boxConductorVolume(ConductorSize::awg4));
  EXPECT_FALSE(boxVolume(BoxKind::marked));
  for (std::size_t i = 0; i < reference::kBoxes.size(); ++i) {
    const double volume = boxVolume(static_cast<BoxKind>(i + 1))->count();
    EXPECT_DOUBLE_EQ(volume, reference::kBoxes[i][0]);
    // The published columns are the volume over the volume of one conductor, rounded down.
    EXPECT_EQ(std::floor(volume / reference::kBoxConductor[0]), reference::kBoxes[i][1]) << i;
    EXPECT_EQ(std::floor(volume / reference::kBoxConductor[1]), reference::kBoxes[i][2]) << i;
  }
}

TEST(Boxes, GroundsTogether) {
  const reference::WorkedExample example("S-24");
  example.expectNear("egc_allowances", groundsInBox(7, Edition::y2020));
  EXPECT_DOUBLE_EQ(groundsInBox(0, Edition::y2023), 0.0);
  EXPECT_DOUBLE_EQ(groundsInBox(4, Edition::y2023), 1.0);
  // Before the 2020 edition all of them together were one.
  EXPECT_DOUBLE_EQ(groundsInBox(7, Edition::y2017), 1.0);
}

}  // namespace
