// Every printed formula of the load calculation, read by muParser on the inputs that were written down, gives
// the recorded result; each formula is written down somewhere; and writing down changes nothing.

#include <gtest/gtest.h>

#include <set>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/demand/questions.h"
#include "tests/core/working_check.h"

using namespace stayalight;
using namespace stayalight::asking;

namespace {

std::vector<DemandItem> everything() {
  DemandItem heaters = item(LoadClass::spaceHeating, 9000, "Heaters");
  heaters.controls = 4;
  return {heaters,
          item(LoadClass::heatPump, 5000, "Heat pump"),
          item(LoadClass::supplementalHeat, 8000, "Elements"),
          motor(item(LoadClass::airConditioning, 4000, "Air conditioner")),
          item(LoadClass::appliance, 4500, "Water heater"),
          onLeg(item(LoadClass::appliance, 1200, "Dishwasher"), Leg::l1),
          onLeg(item(LoadClass::appliance, 900, "Disposer"), Leg::l2),
          item(LoadClass::appliance, 1500, "Pool pump"),
          withNeutral(item(LoadClass::dryer, 4500, "Dryer")),
          item(LoadClass::cooking, 6000, "Oven"),
          item(LoadClass::cooking, 3000, "Cooktop"),
          item(LoadClass::cooking, 14000, "Range"),
          item(LoadClass::cooking, 1500, "Hot plate"),
          continuous(item(LoadClass::vehicleCharger, 7200, "Charger")),
          added(item(LoadClass::other, 900, "Freezer"))};
}

TEST(DemandWorking, EveryFormulaGivesTheRecordedResult) {
  std::set<std::string> seen;
  const auto check = [&](const Working& working) {
    testing_working::expectWorkingHolds(working);
    for (const Step& step : working.steps()) {
      seen.insert(std::string(step.formula.key));
      for (const StepInput& input : step.inputs)
        EXPECT_TRUE(input.step != kNoStep || !input.from.empty()) << step.formula.key << ' ' << input.symbol;
    }
  };
  for (const Edition edition : kEditions) {
    DemandQuestion question = dwelling(2500, 3, 1, edition);
    question.items = everything();
    question.charging = VoltAmperes(2500);
    question.addedArea = SquareFeet(100);
    question.addedCircuits = 1;
    Working working;
    (void)standardLoad(question, &working);
    (void)optionalLoad(question, &working);
    (void)meteredLoad(VoltAmperes(9000), question, true, &working);
    if (edition != Edition::y2026) (void)existingLoad(question, &working);
    question.area = {SquareFeet(60000), SquareFeet(0)};
    (void)standardLoad(question, &working);
    check(working);
  }
  Plan plan = calculated::house();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  Working working;
  (void)calculated::figures(plan, &working);
  check(working);
  for (const FormulaRow& row : formulas()) {
    if (row.key.starts_with("demand.")) {
      EXPECT_TRUE(seen.count(std::string(row.key))) << row.key << " is never written down";
    }
  }
}

TEST(DemandWorking, EveryLineThatCountsHasItsStep) {
  DemandQuestion question = dwelling(2500);
  question.items = everything();
  Working working;
  for (const DemandCalculation& found :
       {standardLoad(question, &working), optionalLoad(question, &working)}) {
    for (const DemandLine& line : found.lines) {
      if (!line.load) continue;
      ASSERT_NE(line.step, kNoStep) << line.what.id.key;
      EXPECT_NEAR(working.steps()[static_cast<std::size_t>(line.step)].result, line.load->count(), 1e-9)
          << line.what.id.key;
    }
    EXPECT_NEAR(working.steps()[static_cast<std::size_t>(found.totalStep)].result, found.total.count(), 1e-9);
  }
}

TEST(DemandWorking, ChangesNoFigure) {
  DemandQuestion question = dwelling(2500);
  question.items = everything();
  Working working;
  EXPECT_EQ(standardLoad(question, &working).total, standardLoad(question).total);
  EXPECT_EQ(standardLoad(question, &working).leg[0].neutral, standardLoad(question).leg[0].neutral);
  EXPECT_EQ(optionalLoad(question, &working).minimum, optionalLoad(question).minimum);
  EXPECT_EQ(existingLoad(question, &working).total, existingLoad(question).total);
}

}  // namespace
