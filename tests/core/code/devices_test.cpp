// Checks standard ratings and small-conductor limits against a second typed copy of 240.6(A) and 240.4(D).

#include "core/code/devices.h"

#include <gtest/gtest.h>

#include "core/code/conductors.h"
#include "tests/reference/tables/devices.h"

using namespace stayalight;

namespace {

TEST(StandardRatings, AgreeWithTheSecondCopyIn2023) {
  std::vector<int> expected(reference::kRatingsDownward.rbegin(), reference::kRatingsDownward.rend());
  for (const Edition edition : {Edition::y2023, Edition::y2026}) {
    std::vector<int> found;
    for (const RatingAmperes rating : standardRatings(edition)) found.push_back(rating.count());
    EXPECT_EQ(found, expected);
  }
}

TEST(StandardRatings, TenAmperesCameIn2023) {
  for (const Edition edition : {Edition::y2017, Edition::y2020}) {
    const auto ratings = standardRatings(edition);
    EXPECT_EQ(ratings.size(), reference::kRatingsDownward.size() - 1);
    EXPECT_EQ(ratings.front(), RatingAmperes(15));
    EXPECT_EQ(nextStandardRating(AcAmperes(9.0), edition), RatingAmperes(15));
  }
  EXPECT_EQ(nextStandardRating(AcAmperes(9.0), Edition::y2023), RatingAmperes(10));
}

TEST(StandardRatings, NextIsAtOrAbove) {
  struct Row {
    double current;
    int next;
    int within;
  };
  // 37.5 A: 125 % of 30 A; 135.2 A: NFPA 70 Annex D Example D3; 49.2 A: 75 A x 0.82 x 0.80.
  for (const Row& row :
       {Row{37.5, 40, 35}, Row{40.0, 40, 40}, Row{1.25 * 200.0, 250, 250}, Row{135.2, 150, 125},
        Row{49.2, 50, 45}, Row{31.3, 35, 30}, Row{100.01, 110, 100}, Row{1200.0, 1200, 1200}}) {
    EXPECT_EQ(nextStandardRating(AcAmperes(row.current), Edition::y2023), RatingAmperes(row.next))
        << row.current;
    EXPECT_EQ(standardRatingWithin(AcAmperes(row.current), Edition::y2023), RatingAmperes(row.within))
        << row.current;
  }
  EXPECT_FALSE(nextStandardRating(AcAmperes(1200.1), Edition::y2023));
  EXPECT_EQ(standardRatingWithin(AcAmperes(5000.0), Edition::y2023), RatingAmperes(1200));
  EXPECT_FALSE(standardRatingWithin(AcAmperes(9.9), Edition::y2023));
}

TEST(StandardRatings, RoundingOfAProductDoesNotSkipARating) {
  // 0.1 + 0.2 is above 0.3 in binary; a load that comes to 40 A by way of such a sum still takes 40 A.
  EXPECT_EQ(nextStandardRating(AcAmperes(100.0 * (0.1 + 0.2) + 10.0), Edition::y2023), RatingAmperes(40));
  EXPECT_EQ(nextStandardRating(AcAmperes(40.001), Edition::y2023), RatingAmperes(45));
}

TEST(SmallConductors, AgreeWithTheSecondCopy) {
  for (const auto& row : reference::kSmallConductors) {
    const ConductorSize size = *conductorSizeNamed(row.size);
    EXPECT_EQ(smallConductorLimit(size, Metal::copper), RatingAmperes(row.copper));
    const auto aluminium = smallConductorLimit(size, Metal::aluminium);
    EXPECT_EQ(aluminium.has_value(), row.aluminium != 0);
    if (aluminium) {
      EXPECT_EQ(aluminium->count(), row.aluminium);
    }
  }
  for (std::size_t i = static_cast<std::size_t>(ConductorSize::awg8); i < kConductorSizeCount; ++i) {
    EXPECT_FALSE(smallConductorLimit(static_cast<ConductorSize>(i), Metal::copper));
    EXPECT_FALSE(smallConductorLimit(static_cast<ConductorSize>(i), Metal::aluminium));
  }
}

// The limits are the 60 C ampacities of Table 310.16, for both metals.
TEST(SmallConductors, LimitIsTheSixtyDegreeAmpacity) {
  for (const ConductorSize size : {ConductorSize::awg14, ConductorSize::awg12, ConductorSize::awg10}) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      const auto limit = smallConductorLimit(size, metal);
      const auto listed = ampacity(size, metal, TemperatureColumn::c60);
      ASSERT_EQ(limit.has_value(), listed.has_value());
      if (limit) {
        EXPECT_EQ(limit->amperes(), *listed);
      }
    }
  }
}

TEST(Devices, CellsAreNamed) {
  EXPECT_EQ(standardRatingCell(RatingAmperes(40), Edition::y2023), "Table 240.6(A), 40 A");
}

}  // namespace
