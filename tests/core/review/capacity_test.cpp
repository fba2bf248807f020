// Findings about the load calculation, the main, charging and the capacity of the source.

#include <gtest/gtest.h>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

using calculated::house;
using calculated::load;
using sound::findingOf;

std::vector<Finding> findings(const Plan& plan) { return assess(plan).findings; }

/// The house with an input breaker for the inverter: its battery charges from the utility.
Plan charging() {
  Plan plan = house();
  example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 30, Feeds::inverterInput, Stage::fresh);
  return plan;
}

TEST(ReviewOfTheCalculation, NothingIsSaidWhereAllIsWithin) {
  for (const Plan& plan : {house(), charging()}) {
    const std::vector<Finding> list = findings(plan);
    for (const char* key : {"load.calculation", "load.typed_below", "load.area", "service.over",
                            "service.over_before", "service.not_known", "charge.over", "capacity.over",
                            "capacity.not_known", "capacity.not_chosen", "transfer.automatic_capacity"})
      EXPECT_EQ(findingOf(list, key), nullptr) << key;
  }
}

TEST(ReviewOfTheCalculation, OneFindingForAllThatIsMissing) {
  Plan plan = house();
  calculated::circuit(plan, "Lights").areaServed.reset();
  load(plan, "Furnace").calculationClass = LoadClass::unknown;
  load(plan, "Refrigerator").calculationClass = LoadClass::unknown;
  const std::vector<Finding> list = findings(plan);
  EXPECT_EQ(
      std::count_if(list.begin(), list.end(), [](const Finding& f) { return f.key == "load.calculation"; }),
      1);
  const Finding* found = findingOf(list, "load.calculation");
  const std::string text = render(found->trade, plainEnglish());
  for (const char* name : {"Lights", "Furnace", "Refrigerator"})
    EXPECT_NE(text.find(name), std::string::npos) << text;
  EXPECT_EQ(found->places.front(),
            (EntityRef{RecordKind::load, example::loadNamed(plan, "Refrigerator").number}));
  plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
  EXPECT_EQ(findingOf(findings(plan), "load.calculation"), nullptr);
}

TEST(ReviewOfTheCalculation, ATypedLoadBelowTheWorkedOutOneIsSaid) {
  Plan plan = house();
  plan.transfer.edit().calculatedLoad = VoltAmperes(2000);
  EXPECT_NE(findingOf(findings(plan), "load.typed_below"), nullptr);
  plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
  EXPECT_EQ(findingOf(findings(plan), "load.typed_below"), nullptr);
}

TEST(ReviewOfTheCalculation, AreasCountOnce) {
  Plan plan = house();
  plan.site.edit().floorArea = SquareFeet(439);
  EXPECT_NE(findingOf(findings(plan), "load.area"), nullptr);
  plan.site.edit().floorArea = SquareFeet(440);
  EXPECT_EQ(findingOf(findings(plan), "load.area"), nullptr);
}

TEST(ReviewOfTheMain, OverOnlyAfterTheWorkOrBeforeToo) {
  Plan plan = charging();
  const double before = [&] {
    const DemandFigures figures = calculated::figures(plan);
    return chosenMethod(figures.service)->before.minimum.count();
  }();
  example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(static_cast<std::int32_t>(before) + 5);
  std::vector<Finding> list = findings(plan);
  ASSERT_NE(findingOf(list, "service.over"), nullptr);
  EXPECT_EQ(findingOf(list, "service.over")->severity, Severity::mustFix);
  ASSERT_NE(findingOf(list, "charge.over"), nullptr);
  example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(static_cast<std::int32_t>(before) - 5);
  list = findings(plan);
  EXPECT_EQ(findingOf(list, "service.over"), nullptr);
  EXPECT_NE(findingOf(list, "service.over_before"), nullptr);
}

TEST(ReviewOfTheMain, NotKnownIsSaidWhereTheWorkAddsToIt) {
  Plan plan = charging();
  load(plan, "Range").calculationClass = LoadClass::unknown;
  EXPECT_NE(findingOf(findings(plan), "service.not_known"), nullptr);
  plan = house();
  load(plan, "Range").calculationClass = LoadClass::unknown;
  EXPECT_EQ(findingOf(findings(plan), "service.not_known"), nullptr);
}

TEST(ReviewOfTheCharging, ALimitThatNothingFeedsIsSaid) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  plan.inverter.edit().chargeLimit = Watts(3000);
  EXPECT_NE(findingOf(findings(plan), "charge.not_counted"), nullptr);
  example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 30, Feeds::inverterInput, Stage::fresh);
  EXPECT_EQ(findingOf(findings(plan), "charge.not_counted"), nullptr);
  plan = house();
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  plan.inverter.edit().chargeLimit = Watts(0);
  EXPECT_EQ(findingOf(findings(plan), "charge.not_counted"), nullptr);
}

TEST(ReviewOfTheCharging, TheFixSetsWhatFits) {
  Plan plan = charging();
  plan.inverter.edit().acInput = RatingAmperes(20);  // 20 A x 240 V / 1.25 = 3,840 W
  plan.inverter.edit().chargeLimit = Watts(5000);
  std::vector<Finding> list = findings(plan);
  const Finding* found = findingOf(list, "charge.over");
  ASSERT_NE(found, nullptr);
  ASSERT_TRUE(found->fix);
  const Result<Plan> after = applyFix(plan, *found->fix);
  ASSERT_TRUE(after.ok());
  EXPECT_DOUBLE_EQ(after.value().inverter->chargeLimit->count(), 3840.0);
  EXPECT_EQ(findingOf(findings(after.value()), "charge.over"), nullptr);
}

TEST(ReviewOfTheCapacity, AChosenPathIsHeldToItsConditions) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  EXPECT_NE(findingOf(findings(plan), "capacity.not_chosen"), nullptr);
  plan.transfer.edit().capacityPath = CapacityPath::automaticFull;
  EXPECT_EQ(findingOf(findings(plan), "capacity.not_chosen"), nullptr);
  EXPECT_EQ(findingOf(findings(plan), "capacity.over"), nullptr);
  plan.transfer.edit().calculatedLoad = VoltAmperes(6500);
  ASSERT_NE(findingOf(findings(plan), "capacity.over"), nullptr);
  EXPECT_EQ(findingOf(findings(plan), "transfer.automatic_capacity"), nullptr);
  plan.transfer.edit().capacityPath = CapacityPath::island;
  const std::vector<Finding> list = findings(plan);
  const Finding* open = findingOf(list, "capacity.not_known");
  ASSERT_NE(open, nullptr);
  EXPECT_EQ(open->severity, Severity::checkOnSite);
  EXPECT_NE(render(open->trade, plainEnglish()).find("in writing"), std::string::npos);
  plan.transfer.edit().capacityPath = CapacityPath::powerControl;  // 2026 only
  EXPECT_NE(findingOf(findings(plan), "capacity.over"), nullptr);
}

TEST(ReviewOfTheCapacity, ACanadianSiteIsHeldToNone) {
  Plan plan = charging();
  plan.site.edit().country = Country::canada;
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  plan.transfer.edit().capacityPath = CapacityPath::powerControl;
  plan.site.edit().floorArea = SquareFeet(10);
  plan.inverter.edit().chargeLimit = Watts(50000);
  for (const Finding& finding : findings(plan)) {
    for (const std::string_view room : {"capacity.", "service.", "charge."})
      EXPECT_NE(finding.key.substr(0, room.size()), room) << finding.key;
    EXPECT_NE(finding.key, "load.calculation");
    EXPECT_NE(finding.key, "load.area");
  }
}

}  // namespace
}  // namespace stayalight
