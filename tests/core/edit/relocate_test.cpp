#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::editPanel;
using example::kBackup;
using example::kMain;

constexpr Column left = Column::left;
constexpr Column right = Column::right;

std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}
SpacePosition plannedAt(const Plan& plan, std::string_view circuit) {
  return find(plan, find(plan, circuitNamed(plan, circuit))->planned)->position();
}
PanelId plannedIn(const Plan& plan, std::string_view circuit) {
  return panelOf(plan, *find(plan, circuitNamed(plan, circuit)), Reading::planned);
}
BreakerId plannedOn(const Plan& plan, std::string_view circuit) {
  return find(plan, circuitNamed(plan, circuit))->planned;
}

TEST(Relocate, anExistingBreakerKeepsItsPlaceInTheScheduleBefore) {
  const Plan plan = example::exampleHouse();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const BreakerId old = find(plan, freezer)->breaker;
  const Result<Plan> moved = relocate(plan, old, {left, 9});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_EQ(breakersAt(moved.value(), kMain, {right, 6}, Reading::before), std::vector<BreakerId>{old});
  EXPECT_TRUE(breakersAt(moved.value(), kMain, {right, 6}, Reading::planned).empty());
  EXPECT_TRUE(breakersAt(moved.value(), kMain, {left, 9}, Reading::before).empty());
  const BreakerId fresh = find(moved.value(), freezer)->planned;
  EXPECT_NE(fresh, old);
  EXPECT_EQ(breakersAt(moved.value(), kMain, {left, 9}, Reading::planned), std::vector<BreakerId>{fresh});
  EXPECT_TRUE(find(moved.value(), freezer)->breaker == old);
  EXPECT_EQ(occupants(moved.value(), kMain, Reading::before).size(),
            occupants(plan, kMain, Reading::before).size());
  EXPECT_TRUE(sendBack(moved.value(), std::vector<CircuitId>{freezer}).value() == plan);
}

TEST(Relocate, aNewBreakerSimplyChangesItsPlace) {
  const Plan plan = example::exampleHouseMoved();
  const Result<Plan> moved = relocate(plan, plannedOn(plan, "Lights"), {left, 4});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_EQ(moved.value().breakers.size(), plan.breakers.size());
  EXPECT_TRUE(plannedAt(moved.value(), "Lights") == (SpacePosition{left, 4}));
  EXPECT_TRUE(relocate(plan, plannedOn(plan, "Lights"), {right, 1}).value() == plan) << "where it is already";
}

TEST(Relocate, aTwoPoleMayShiftByOneRowOverItself) {
  const Plan plan = example::exampleHouse();
  const Result<Plan> moved = relocate(plan, plannedOn(plan, "Range"), {left, 7});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(plannedAt(moved.value(), "Range") == (SpacePosition{left, 7}));
}

TEST(Relocate, refusals) {
  const Plan plan = example::exampleHouseMoved();
  EXPECT_EQ(said(relocate(plan, {99}, {left, 1})), "There is no such breaker");
  EXPECT_EQ(said(relocate(plan, plannedOn(plan, "Lights"), {left, 2})), "Already taken by Office, at 3");
  EXPECT_EQ(said(relocate(plan, plannedOn(plan, "Well pump"), {left, 4})),
            "A two-pole breaker at space 7 would reach below the last row of Backup subpanel");
  const BreakerId old = find(plan, circuitNamed(plan, "Lights"))->breaker;
  const Plan blank = keepOldBreaker(plan, old, false).value();
  EXPECT_EQ(said(relocate(blank, old, {left, 10})), "The breaker of Lights is taken out in this plan");
}

TEST(Relocate, aTandemHalfTakesTheFreeHalf) {
  Plan plan = example::emptyHouse();
  const BreakerId moving =
      example::addBreaker(plan, kMain, {left, 1}, 1, 15, Feeds::nothing, Stage::fresh, Half::a);
  example::addBreaker(plan, kMain, {left, 2}, 1, 15, Feeds::nothing, Stage::fresh, Half::a);
  const Result<Plan> moved = relocate(plan, moving, {left, 2});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(find(moved.value(), moving)->half.is(Half::b));
}

TEST(Swap, newBreakersOfOnePanelExchangePlaces) {
  const Plan plan = example::exampleHouseMoved();
  const Result<Plan> swapped = swapBreakers(plan, plannedOn(plan, "Lights"), plannedOn(plan, "Office"));
  ASSERT_TRUE(swapped.ok()) << said(swapped);
  EXPECT_TRUE(plannedAt(swapped.value(), "Lights") == plannedAt(plan, "Office"));
  EXPECT_TRUE(plannedAt(swapped.value(), "Office") == plannedAt(plan, "Lights"));
  EXPECT_TRUE(swapBreakers(swapped.value(), plannedOn(plan, "Lights"), plannedOn(plan, "Office")).value() ==
              plan);
}

TEST(Swap, existingBreakersExchangePlacesAndTheScheduleBeforeStays) {
  const Plan plan = example::exampleHouse();
  const Result<Plan> swapped =
      swapBreakers(plan, plannedOn(plan, "Well pump"), plannedOn(plan, "Water heater"));
  ASSERT_TRUE(swapped.ok()) << said(swapped);
  EXPECT_TRUE(plannedAt(swapped.value(), "Well pump") == (SpacePosition{right, 4}));
  EXPECT_TRUE(plannedAt(swapped.value(), "Water heater") == (SpacePosition{left, 4}));
  EXPECT_EQ(breakersAt(swapped.value(), kMain, {left, 4}, Reading::before),
            breakersAt(plan, kMain, {left, 4}, Reading::before));
}

TEST(Swap, refusals) {
  const Plan plan = example::exampleHouseMoved();
  EXPECT_EQ(said(swapBreakers(plan, plannedOn(plan, "Lights"), plannedOn(plan, "Well pump"))),
            "Lights and Well pump do not take the same room");
  EXPECT_EQ(said(swapBreakers(plan, plannedOn(plan, "Lights"), plannedOn(plan, "Lights"))),
            "Two breakers are needed for an exchange");
  EXPECT_EQ(said(swapBreakers(plan, plannedOn(plan, "Lights"), {99})), "There is no such breaker");
  BreakerId feeder;
  for (const auto& breaker : plan.breakers) {
    if (breaker->feeds.is(Feeds::feeder)) feeder = breaker->id;
  }
  // Both new and of one size, but a feeder must not land in the panel it feeds.
  EXPECT_EQ(said(swapBreakers(plan, feeder, plannedOn(plan, "Well pump"))),
            "Breakers of two panels can be exchanged only where both feed a circuit");
}

TEST(Swap, circuitsOfTwoPanelsChangeSides) {
  const Plan plan = example::exampleHouseMoved();
  for (const bool mainFirst : {true, false}) {
    const BreakerId freezer = plannedOn(plan, "Freezer");
    const BreakerId lights = plannedOn(plan, "Lights");
    const Result<Plan> swapped =
        mainFirst ? swapBreakers(plan, freezer, lights) : swapBreakers(plan, lights, freezer);
    ASSERT_TRUE(swapped.ok()) << said(swapped);
    EXPECT_TRUE(plannedIn(swapped.value(), "Freezer") == kBackup);
    EXPECT_TRUE(plannedAt(swapped.value(), "Freezer") == (SpacePosition{right, 1}))
        << "where the other one stood";
    EXPECT_TRUE(plannedIn(swapped.value(), "Lights") == kMain);
    EXPECT_TRUE(plannedAt(swapped.value(), "Lights") == (SpacePosition{right, 1}))
        << "fed by its old breaker again";
  }
}

TEST(Swap, aMultiwireGroupIsNotTornApart) {
  const Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  const CircuitId b = circuitNamed(plan, "Counter B");
  const Plan moved =
      moveCircuits(plan, std::vector<CircuitId>{circuitNamed(plan, "Lights")}, kBackup).value();
  const Result<Plan> swapped = swapBreakers(moved, plannedOn(moved, "Lights"), plannedOn(moved, "Counter A"));
  ASSERT_TRUE(swapped.ok()) << said(swapped);
  EXPECT_TRUE(plannedIn(swapped.value(), "Counter A") == kBackup);
  EXPECT_TRUE(plannedIn(swapped.value(), "Counter B") == kBackup);
  EXPECT_TRUE(plannedIn(swapped.value(), "Lights") == kMain);
  // A group that stands in two panels is no exchange.
  Plan split = plan;
  example::moveByHand(split, a, kBackup, {left, 1});
  EXPECT_EQ(said(swapBreakers(split, find(split, a)->planned, find(split, b)->planned)),
            "Both circuits share one neutral and belong in one panel");
}

TEST(KeepOldBreaker, spareOrBlank) {
  const Plan plan = example::exampleHouseMoved();
  const BreakerId old = find(plan, circuitNamed(plan, "Office"))->breaker;
  const Plan blank = keepOldBreaker(plan, old, false).value();
  EXPECT_FALSE(stands(*find(blank, old), Reading::planned));
  EXPECT_TRUE(stands(*find(blank, old), Reading::before));
  EXPECT_TRUE(keepOldBreaker(blank, old, true).value() == plan);
  EXPECT_EQ(said(keepOldBreaker(plan, plannedOn(plan, "Office"), false)),
            "This breaker feeds Office as planned");
  const Plan used =
      addBreaker(blank, {kMain, {right, 2}, Half::whole, 1}, RatingAmperes(20), Feeds::nothing).value();
  EXPECT_EQ(said(keepOldBreaker(used, old, true)), "Already taken by a spare breaker, at 4");
}

}  // namespace
}  // namespace stayalight
