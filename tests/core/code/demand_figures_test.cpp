// The table of the load calculation against a second copy, typed apart (tests/reference/tables/demand.h).

#include "core/code/demand_figures.h"

#include <gtest/gtest.h>

#include "core/code/citations.h"
#include "core/code/tables.h"
#include "tests/reference/tables/demand.h"

using namespace stayalight;

namespace {

TEST(DemandFigures, EqualTheCopyTypedApartEditionByEdition) {
  ASSERT_EQ(kDemandKeys.size(), reference::kDemand.size());
  for (std::size_t i = 0; i < kDemandKeys.size(); ++i) {
    const reference::DemandRow& row = reference::kDemand[i];
    ASSERT_EQ(kDemandKeys[i], row.key);
    for (const Edition edition : kEditions) {
      const auto figure = demandFigure(static_cast<DemandKey>(i), edition);
      const double expected = row.value[index(edition)];
      ASSERT_EQ(figure.has_value(), expected >= 0.0) << row.key << ' ' << name(edition);
      if (!figure) continue;
      EXPECT_DOUBLE_EQ(figure->value, expected) << row.key << ' ' << name(edition);
      EXPECT_EQ(figure->confirmed, row.seen[index(edition)] == 'y') << row.key << ' ' << name(edition);
    }
  }
}

TEST(DemandFigures, EachHasARuleThatIsCitedWhereItHasAValue) {
  for (std::size_t i = 0; i < kDemandKeys.size(); ++i) {
    const auto key = static_cast<DemandKey>(i);
    ASSERT_NE(citationRow(ruleOf(key)), nullptr) << kDemandKeys[i];
    EXPECT_TRUE(demandFigure(key, Edition::y2023).has_value() || key == DemandKey::vehicleChargerUnknown);
  }
  EXPECT_EQ(unitOf(DemandKey::lightingUnit), "VA/ft2");
  EXPECT_EQ(demandCell(DemandKey::dryerLeast, Edition::y2023), "220.54, dryer least");
  EXPECT_EQ(demandCell(DemandKey::dryerLeast, Edition::y2026), "120.54, dryer least");
}

TEST(DemandFigures, CountedRowsEndWhereTheTableEnds) {
  EXPECT_DOUBLE_EQ(dryerFactor(4, Edition::y2023)->value, 1.0);
  EXPECT_DOUBLE_EQ(dryerFactor(11, Edition::y2023)->value, 0.47);
  EXPECT_FALSE(dryerFactor(12, Edition::y2023));
  EXPECT_FALSE(dryerFactor(0, Edition::y2023));
  EXPECT_DOUBLE_EQ(cookingDemand(CookingColumn::a, 5, Edition::y2023)->value, 0.62);
  EXPECT_DOUBLE_EQ(cookingDemand(CookingColumn::b, 2, Edition::y2023)->value, 0.65);
  EXPECT_DOUBLE_EQ(cookingDemand(CookingColumn::c, 3, Edition::y2023)->value, 14.0);
  EXPECT_FALSE(cookingDemand(CookingColumn::c, 6, Edition::y2023));
}

// Demand factors of more dryers, and of more cooking appliances, never rise; column C never falls.
TEST(DemandFigures, ColumnsAreMonotone) {
  for (const Edition edition : kEditions) {
    for (int count = 1; count < kDryerRows; ++count)
      EXPECT_GE(dryerFactor(count, edition)->value, dryerFactor(count + 1, edition)->value);
    for (int count = 1; count < kCookingRows; ++count) {
      for (const CookingColumn column : {CookingColumn::a, CookingColumn::b})
        EXPECT_GT(cookingDemand(column, count, edition)->value,
                  cookingDemand(column, count + 1, edition)->value);
      EXPECT_LT(cookingDemand(CookingColumn::c, count, edition)->value,
                cookingDemand(CookingColumn::c, count + 1, edition)->value);
    }
  }
}

TEST(DemandFigures, ABlankOrChangedCellReachesTheAnswer) {
  Tables changed = publishedTables();
  changed.demand[static_cast<std::size_t>(DemandKey::dryerLeast)].value[index(Edition::y2023)] = 0.0;
  changed.demand[static_cast<std::size_t>(DemandKey::largestMotor)].certainty[index(Edition::y2023)] =
      Certainty::seen;
  EXPECT_FALSE(demandFigure(DemandKey::dryerLeast, Edition::y2023, changed));
  EXPECT_TRUE(demandFigure(DemandKey::largestMotor, Edition::y2023, changed)->confirmed);
}

}  // namespace
