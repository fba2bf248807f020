#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::editBreaker;
using example::kBackup;
using example::kMain;
using example::loadNamed;

std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}
Result<Plan> removeCircuit(const Plan& plan, std::string_view name) {
  return remove(plan, {RecordKind::circuit, circuitNamed(plan, name).number});
}

TEST(Remove, aCircuitGoesWithItsLoadsAndItsNewBreaker) {
  const Plan plan = example::exampleHouseMoved();
  const Circuit fridge = *find(plan, circuitNamed(plan, "Refrigerator"));
  const Plan left = removeCircuit(plan, "Refrigerator").value();
  EXPECT_EQ(find(left, fridge.id), nullptr);
  EXPECT_EQ(find(left, fridge.planned), nullptr);
  const Breaker* old = find(left, fridge.breaker);
  ASSERT_NE(old, nullptr) << "the old breaker is there, whatever hung on it";
  EXPECT_TRUE(old->feeds.is(Feeds::nothing));
  EXPECT_TRUE(old->stage.is(Stage::existing));
  EXPECT_FALSE(loadNamed(left, "Refrigerator").valid());
}

TEST(Remove, theLastOfAGroupSharesNoNeutral) {
  const Plan left = removeCircuit(example::exampleHouse(), "Counter A").value();
  EXPECT_EQ(find(left, circuitNamed(left, "Counter B"))->multiwire, 0);
}

TEST(Remove, aNewBreakerGoesAndItsCircuitHangsOnTheOldOneAgain) {
  const Plan plan = example::exampleHouse();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const Plan moved = moveCircuits(plan, std::vector<CircuitId>{freezer}, kBackup).value();
  const Result<Plan> left = remove(moved, {RecordKind::breaker, find(moved, freezer)->planned.number});
  ASSERT_TRUE(left.ok()) << said(left);
  EXPECT_TRUE(left.value() == plan);
}

TEST(Remove, anExistingBreakerTakesItsCircuitAlong) {
  const Plan plan = example::exampleHouse();
  const Circuit freezer = *find(plan, circuitNamed(plan, "Freezer"));
  const Plan left = remove(plan, {RecordKind::breaker, freezer.breaker.number}).value();
  EXPECT_EQ(find(left, freezer.id), nullptr);
  EXPECT_EQ(find(left, freezer.breaker), nullptr);
}

TEST(Remove, theOldBreakerOfAMovedCircuitGoesAloneAndTheCircuitCountsAsNew) {
  const Plan plan = example::exampleHouseMoved();
  const Circuit lights = *find(plan, circuitNamed(plan, "Lights"));
  const Plan left = remove(plan, {RecordKind::breaker, lights.breaker.number}).value();
  ASSERT_NE(find(left, lights.id), nullptr);
  EXPECT_FALSE(find(left, lights.id)->breaker.valid());
  EXPECT_TRUE(find(left, lights.id)->planned == lights.planned);
}

TEST(Remove, aBackupSubpanelGoesAndItsCircuitsReturn) {
  const Plan plan = example::exampleHouse();
  const Plan moved = example::exampleHouseMoved();
  const Result<Plan> left = remove(moved, {RecordKind::panel, kBackup.number});
  ASSERT_TRUE(left.ok()) << said(left);
  EXPECT_EQ(find(left.value(), kBackup), nullptr);
  EXPECT_TRUE(left.value().circuits == plan.circuits) << "as before anything moved";
  for (const auto& breaker : left.value().breakers) {
    EXPECT_TRUE(breaker->panel == kMain);
    EXPECT_FALSE(breaker->feeds.is(Feeds::feeder)) << "it was to be bought for this panel only";
  }
}

TEST(Remove, aPanelGoesWithTheCircuitsThatHaveNoOtherAndNoReferenceIsLeft) {
  Plan plan = example::exampleHouse();
  const PanelId garage = example::addPanel(plan, PanelRole::subpanel, "Garage", 8);
  const PanelId shed = example::addPanel(plan, PanelRole::subpanel, "Shed", 4);
  example::editPanel(plan, garage).fedFrom = kMain;
  example::editPanel(plan, shed).fedFrom = garage;
  const BreakerId feeder = example::addBreaker(plan, kMain, {Column::left, 8}, 2, 40, Feeds::feeder);
  editBreaker(plan, feeder).feedsPanel = garage;
  example::addCircuit(plan, garage, {Column::left, 1}, 1, 20, "Door");
  const Plan left = remove(plan, {RecordKind::panel, garage.number}).value();
  EXPECT_FALSE(circuitNamed(left, "Door").valid());
  EXPECT_TRUE(find(left, shed)->fedFrom == kMain) << "what hung behind it hangs on what was ahead";
  EXPECT_TRUE(find(left, feeder)->feeds.is(Feeds::nothing));
  EXPECT_FALSE(find(left, feeder)->feedsPanel.valid());
}

TEST(Remove, refusals) {
  const Plan plan = example::exampleHouse();
  EXPECT_EQ(said(remove(plan, {RecordKind::panel, kMain.number})), "A plan keeps its main panel");
  EXPECT_EQ(said(remove(plan, {RecordKind::battery})),
            "This part belongs to every plan and cannot be taken away");
  EXPECT_EQ(said(remove(plan, {RecordKind::circuit, 99})), "This part of the plan is not there any more");
  EXPECT_EQ(said(remove(plan, {RecordKind::overloadPoint, 0, 5})),
            "This part of the plan is not there any more");
}

TEST(Remove, loadsRunsAndRowsOfLists) {
  Plan plan = addFeederRun(example::exampleHouse(), Segment::mainToSwitch);
  plan = remove(plan, {RecordKind::feederRun, 1}).value();
  EXPECT_TRUE(plan.runs.empty());
  const LoadId toaster = loadNamed(plan, "Toaster");
  const CircuitId counter = circuitOf(plan, toaster)->id;
  plan = remove(plan, {RecordKind::load, toaster.number}).value();
  EXPECT_TRUE(find(plan, counter)->loads.empty());
  plan = remove(plan, {RecordKind::overloadPoint, 0, 0}).value();
  ASSERT_EQ(plan.inverter->overload.size(), 1u);
  EXPECT_DOUBLE_EQ(plan.inverter->overload[0].time.count(), 10.0);
}

}  // namespace
}  // namespace stayalight
