#include <gtest/gtest.h>

#include "core/plan/plan.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::kBackup;
using example::kMain;

TEST(Plan, findsByIdAndGivesNothingForOthers) {
  const Plan plan = example::exampleHouse();
  for (const auto& breaker : plan.breakers) EXPECT_EQ(find(plan, breaker->id), &*breaker);
  for (const auto& circuit : plan.circuits) EXPECT_EQ(find(plan, circuit->id), &*circuit);
  EXPECT_EQ(find(plan, PanelId{3}), nullptr);
  EXPECT_EQ(find(plan, BreakerId{}), nullptr);
  EXPECT_EQ(find(plan, CircuitId{-5}), nullptr);
  EXPECT_EQ(find(Plan{}, FeederRunId{1}), nullptr);
}

TEST(Plan, findsAmongIdsWithGaps) {
  Plan plan = example::exampleHouse();
  plan.breakers.erase(plan.breakers.begin() + 2);
  EXPECT_EQ(find(plan, BreakerId{3}), nullptr);
  ASSERT_NE(find(plan, BreakerId{4}), nullptr);
  EXPECT_EQ(find(plan, BreakerId{4})->id.number, 4);
  EXPECT_EQ(nextBreakerId(plan).number, 12) << "above all in use, not the gap";
}

TEST(Plan, nextIdsStartAtOne) {
  const Plan plan;
  EXPECT_EQ(nextPanelId(plan).number, 1);
  EXPECT_EQ(nextLoadId(plan).number, 1);
  EXPECT_EQ(nextLoadId(example::exampleHouse()).number, 11);
}

TEST(Plan, panelsByRole) {
  const Plan plan = example::exampleHouse();
  EXPECT_TRUE(mainPanel(plan)->id == kMain);
  EXPECT_TRUE(backupPanel(plan)->id == kBackup);
  EXPECT_EQ(panelInRole(plan, PanelRole::subpanel), nullptr);
}

TEST(Plan, whatStandsInWhichReading) {
  struct Case {
    Choice<Stage> stage;
    bool before, planned;
  };
  const Case cases[] = {{Stage::existing, true, true},
                        {Stage::leftInPlace, true, true},
                        {Stage::fresh, false, true},
                        {Stage::removed, true, false},
                        {Choice<Stage>::otherWord("stored"), true, true}};
  for (const Case& c : cases) {
    Breaker breaker;
    breaker.stage = c.stage;
    EXPECT_EQ(stands(breaker, Reading::before), c.before) << c.stage.word();
    EXPECT_EQ(stands(breaker, Reading::planned), c.planned) << c.stage.word();
  }
}

TEST(Plan, beforeAndPlannedAreTwoReadingsOfOnePlan) {
  const Plan plan = example::exampleHouseMoved();
  const Circuit& lights = *find(plan, circuitNamed(plan, "Lights"));
  EXPECT_TRUE(panelOf(plan, lights, Reading::before) == kMain);
  EXPECT_TRUE(panelOf(plan, lights, Reading::planned) == kBackup);
  EXPECT_TRUE(backedUp(plan, lights));
  EXPECT_EQ(circuitOn(plan, lights.breaker, Reading::before), &lights);
  EXPECT_EQ(circuitOn(plan, lights.breaker, Reading::planned), nullptr);
  EXPECT_EQ(circuitOn(plan, lights.planned, Reading::planned), &lights);
  const Circuit& range = *find(plan, circuitNamed(plan, "Range"));
  EXPECT_FALSE(backedUp(plan, range));
  Circuit none;
  EXPECT_FALSE(panelOf(plan, none, Reading::planned).valid());
  EXPECT_EQ(circuitOn(plan, BreakerId{}, Reading::planned), nullptr) << "no breaker, no circuit";
}

TEST(Plan, aLoadKnowsItsCircuit) {
  const Plan plan = example::exampleHouse();
  const LoadId pump = example::loadNamed(plan, "Well pump");
  EXPECT_EQ(circuitOf(plan, pump)->name, "Well pump");
  EXPECT_EQ(circuitOf(plan, {}), nullptr);
}

TEST(Plan, aCopySharesEveryPart) {
  const Plan plan = example::exampleHouse();
  const Plan copy = plan;
  for (std::size_t i = 0; i < plan.circuits.size(); ++i) EXPECT_TRUE(plan.circuits[i].same(copy.circuits[i]));
  EXPECT_TRUE(plan.battery.same(copy.battery));
}

}  // namespace
}  // namespace stayalight
