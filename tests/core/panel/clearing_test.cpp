// The order in which spaces come free for the breaker of the backup's supply, on panels made by hand.

#include "core/panel/clearing.h"

#include <gtest/gtest.h>

#include "tests/core/example_plans.h"

using namespace stayalight;
using namespace stayalight::example;

namespace {

constexpr Column kLeft = Column::left;
constexpr Column kRight = Column::right;

/// A main panel of six spaces, all taken by single poles: left 1, 3, 5, right 2, 4, 6.
Plan fullHouse() {
  Plan plan = emptyHouse();
  editPanel(plan, kMain).spaces = 6;
  for (int row = 1; row <= 3; ++row) {
    addCircuit(plan, kMain, {kLeft, row}, 1, 20, "Left " + std::to_string(row));
    addCircuit(plan, kMain, {kRight, row}, 1, 20, "Right " + std::to_string(row));
  }
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  return plan;
}
// Moves it onto the backup subpanel; the old breaker goes.
void moveOut(Plan& plan, const char* name, int row, Stage old = Stage::removed) {
  const CircuitId circuit = circuitNamed(plan, name);
  const BreakerId before = find(plan, circuit)->breaker;
  moveByHand(plan, circuit, kBackup, {kLeft, row});
  editBreaker(plan, before).stage = old;
}
// Another place in the main panel, as the plan records it: the old breaker goes, a new one stands.
void setElsewhere(Plan& plan, const char* name, SpacePosition position) {
  const CircuitId circuit = circuitNamed(plan, name);
  const BreakerId before = find(plan, circuit)->breaker;
  const BreakerId fresh =
      addBreaker(plan, kMain, position, find(plan, before)->poles, 20, Feeds::circuit, Stage::fresh);
  editBreaker(plan, before).stage = Stage::removed;
  editCircuit(plan, circuit).planned = fresh;
}
BreakerId addFeeder(Plan& plan, SpacePosition position) {
  const BreakerId feeder = addBreaker(plan, kMain, position, 2, 60, Feeds::feeder, Stage::fresh);
  editBreaker(plan, feeder).feedsPanel = kBackup;
  return feeder;
}
std::string nameOf(const Plan& plan, const ClearingStep& step) {
  const std::vector<CircuitId> on = circuitsOn(plan, step.breaker, Reading::before);
  return on.empty() ? "-" : find(plan, on.front())->name;
}
// "out Left 1 (dark 1), set Left 2 at 4"
std::string told(const Plan& plan, const ClearedPlace& place) {
  std::string all;
  for (const ClearingStep& step : place.steps) {
    if (!all.empty()) all += ", ";
    if (step.proposed) all += "propose ";
    all += step.what == Clearing::takenOut ? "out " : step.what == Clearing::lifted ? "lift " : "set ";
    all += nameOf(plan, step);
    if (step.to) all += " at " + spaceNames(*find(plan, step.to->panel), *step.to);
    if (!step.dark.empty()) all += " (dark " + std::to_string(step.dark.size()) + ")";
  }
  return all;
}
std::string spaces(const Plan& plan, const ClearedPlace& place) {
  return place.place ? spaceNames(*find(plan, place.place->panel), *place.place) : "none";
}
ClearedPlace only(const Plan& plan) {
  const std::vector<ClearedPlace> all = clearedPlaces(plan, kMain);
  EXPECT_EQ(all.size(), 1u);
  return all.empty() ? ClearedPlace{} : all.front();
}

TEST(Clearing, TwoNeighboursThatMoveGoFirstAndAreDarkUntilTheFeederWorks) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 2", 1);
  moveOut(plan, "Left 3", 2);
  moveOut(plan, "Right 1", 3);
  const ClearedPlace best = only(plan);
  EXPECT_FALSE(best.breaker.valid());
  EXPECT_EQ(spaces(plan, best), "3, 5");
  EXPECT_EQ(told(plan, best), "out Left 2 (dark 1), out Left 3 (dark 1)");
  // Right 1 can wait for the feeder: moved afterwards it is never dark.
  const BreakerId feeder = addFeeder(plan, {kLeft, 2});
  const ClearedPlace planned = only(plan);
  EXPECT_EQ(planned.breaker, feeder);
  EXPECT_TRUE(planned.supplies);
  EXPECT_EQ(told(plan, planned), told(plan, best));
}

TEST(Clearing, AFreePairAsksForNothing) {
  Plan plan = fullHouse();
  editPanel(plan, kMain).spaces = 10;
  moveOut(plan, "Left 2", 1);
  const ClearedPlace best = only(plan);
  EXPECT_EQ(spaces(plan, best), "7, 9");
  EXPECT_TRUE(best.steps.empty());
}

TEST(Clearing, ARelocationWithinTheMainWaitsForItsNewPlace) {
  Plan plan = fullHouse();
  moveOut(plan, "Right 3", 1);
  moveOut(plan, "Left 2", 2);
  setElsewhere(plan, "Left 3", {kRight, 3});
  addFeeder(plan, {kLeft, 2});
  EXPECT_EQ(told(plan, only(plan)), "out Left 2 (dark 1), out Right 3 (dark 1), set Left 3 at 6");
}

TEST(Clearing, TwoThatTradePlacesAreLiftedOnce) {
  Plan plan = fullHouse();
  setElsewhere(plan, "Left 1", {kRight, 1});
  setElsewhere(plan, "Right 1", {kLeft, 3});
  moveOut(plan, "Left 3", 1);
  moveOut(plan, "Left 2", 2);
  addFeeder(plan, {kLeft, 1});
  EXPECT_EQ(told(plan, only(plan)),
            "out Left 3 (dark 1), set Right 1 at 5, set Left 1 at 2, out Left 2 (dark 1)");
  // A ring: the pump waits for Right 1, Right 1 for the pump's upper space.
  Plan ring = emptyHouse();
  editPanel(ring, kMain).spaces = 6;
  ring.transfer.edit().arrangement = Arrangement::manualSwitch;
  addCircuit(ring, kMain, {kLeft, 1}, 2, 20, "Pump");
  for (const auto& [name, position] :
       {std::pair{"Left 3", SpacePosition{kLeft, 3}}, std::pair{"Right 1", SpacePosition{kRight, 1}},
        std::pair{"Right 2", SpacePosition{kRight, 2}}})
    addCircuit(ring, kMain, position, 1, 20, name);
  setElsewhere(ring, "Pump", {kRight, 1});
  setElsewhere(ring, "Right 1", {kLeft, 1});
  moveOut(ring, "Right 2", 1);
  moveOut(ring, "Left 3", 2);
  addFeeder(ring, {kLeft, 2});
  EXPECT_EQ(
      told(ring, only(ring)),
      "lift Pump (dark 1), set Right 1 at 1, out Right 2 (dark 1), set Pump at 2, 4, out Left 3 (dark 1)");
  // A place that something else of the plan takes as well is none.
  Plan taken = fullHouse();
  setElsewhere(taken, "Left 1", {kRight, 1});
  moveOut(taken, "Right 1", 1);
  moveOut(taken, "Right 2", 2);
  addFeeder(taken, {kRight, 1});
  EXPECT_FALSE(only(taken).place.has_value());
  EXPECT_EQ(only(taken).refusal->id.key, "panel.clearing.stays");
  Plan apart = fullHouse();
  setElsewhere(apart, "Left 1", {kRight, 3});
  setElsewhere(apart, "Right 3", {kRight, 1});
  setElsewhere(apart, "Right 1", {kLeft, 3});
  moveOut(apart, "Left 3", 1);
  moveOut(apart, "Left 2", 2);
  addFeeder(apart, {kLeft, 1});
  EXPECT_EQ(told(apart, only(apart)),
            "out Left 3 (dark 1), set Right 1 at 5, set Right 3 at 2, set Left 1 at 6, out Left 2 (dark 1)");
}

TEST(Clearing, OldBreakersLeftInPlaceComeOutBeforeOthersAreSetElsewhere) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1, Stage::leftInPlace);
  moveOut(plan, "Left 2", 2, Stage::leftInPlace);
  moveOut(plan, "Right 1", 3);
  const ClearedPlace best = only(plan);
  EXPECT_EQ(spaces(plan, best), "1, 3");
  EXPECT_EQ(told(plan, best), "propose out Left 1 (dark 1), propose out Left 2 (dark 1)");
}

TEST(Clearing, ApartFreeSpacesAreBroughtTogether) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1);
  moveOut(plan, "Right 3", 2);
  const ClearedPlace best = only(plan);
  EXPECT_EQ(spaces(plan, best), "1, 3");
  EXPECT_EQ(told(plan, best), "out Left 1 (dark 1), out Right 3 (dark 1), propose set Left 2 at 6");
}

TEST(Clearing, ASpareMakesRoomForTheNeighbourOfAnother) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1, Stage::leftInPlace);
  moveOut(plan, "Right 3", 2, Stage::leftInPlace);
  const ClearedPlace best = only(plan);
  EXPECT_EQ(spaces(plan, best), "1, 3");
  EXPECT_EQ(told(plan, best),
            "propose out Left 1 (dark 1), propose out Right 3 (dark 1), propose set Left 2 at 6");
}

TEST(Clearing, OneFreeSpaceIsNotEnough) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1);
  const ClearedPlace none = only(plan);
  EXPECT_FALSE(none.place);
  EXPECT_TRUE(none.steps.empty());
  ASSERT_TRUE(none.refusal);
  EXPECT_EQ(none.refusal->id.key, "panel.clearing.nothing_free");
}

TEST(Clearing, HalvesOfATandemAndAQuadGoOneByOne) {
  Plan plan = emptyHouse();
  editPanel(plan, kMain).spaces = 4;
  editPanel(plan, kMain).tandems = Answer::yes;
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  for (const Half half : {Half::a, Half::b})
    addCircuit(plan, kMain, {kLeft, 1}, 1, 20, half == Half::a ? "Upper" : "Lower", half);
  addCircuit(plan, kMain, {kLeft, 2}, 1, 20, "Below");
  addCircuit(plan, kMain, {kRight, 1}, 2, 30, "Outer", Half::outer);
  addCircuit(plan, kMain, {kRight, 1}, 2, 20, "Inner", Half::inner);
  for (const char* name : {"Upper", "Below"}) moveOut(plan, name, name[0] == 'U' ? 1 : 2);
  // Its lower half stays: no room yet.
  EXPECT_FALSE(only(plan).place);
  moveOut(plan, "Lower", 3);
  EXPECT_EQ(told(plan, only(plan)), "out Upper (dark 1), out Lower (dark 1), out Below (dark 1)");
  Plan quad = plan;
  for (auto& circuit : quad.circuits) circuit.edit().planned = BreakerId(circuit->breaker);
  for (auto& breaker : quad.breakers) breaker.edit().stage = Stage::existing;
  std::erase_if(quad.breakers, [](const auto& breaker) { return breaker->panel == kBackup; });
  moveOut(quad, "Outer", 1);
  moveOut(quad, "Inner", 3);
  EXPECT_EQ(spaces(quad, only(quad)), "2, 4");
  EXPECT_EQ(told(quad, only(quad)), "out Outer (dark 1), out Inner (dark 1)");
}

TEST(Clearing, FourInTheWayGoWhereNobodyLosesItsSupply) {
  // Two tandems hold the only pair that can come free. The first free halves are those of circuits that
  // leave; others stand empty.
  Plan plan = emptyHouse();
  editPanel(plan, kMain).spaces = 8;
  editPanel(plan, kMain).tandems = Answer::yes;
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  for (const int row : {1, 2}) {
    for (const Half half : {Half::a, Half::b})
      addCircuit(plan, kMain, {kLeft, row}, 1, 20, "Keep " + std::to_string(row), half);
  }
  for (const auto& [name, half] : {std::pair{"Leaves A", Half::a}, std::pair{"Leaves B", Half::b}})
    addCircuit(plan, kMain, {kRight, 1}, 1, 20, name, half);
  for (const SpacePosition fixed :
       {SpacePosition{kLeft, 3}, SpacePosition{kRight, 2}, SpacePosition{kRight, 4}})
    addBreaker(plan, kMain, fixed, 1, 20, Feeds::solar);
  moveOut(plan, "Leaves A", 1);
  moveOut(plan, "Leaves B", 2);
  const ClearedPlace best = only(plan);
  EXPECT_EQ(spaces(plan, best), "1, 3");
  EXPECT_EQ(best.steps.size(), 4U);
  for (const ClearingStep& step : best.steps) {
    EXPECT_EQ(step.what, Clearing::relocated);
    EXPECT_TRUE(step.dark.empty());
  }
}

TEST(Clearing, TheInputOfTheInverterComesAfterTheFeederAndFindsTheBackupSupplied) {
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1);
  moveOut(plan, "Left 2", 2);
  moveOut(plan, "Right 1", 3);
  moveOut(plan, "Right 2", 4);
  addBreaker(plan, kMain, {kRight, 1}, 2, 30, Feeds::inverterInput, Stage::fresh);
  addFeeder(plan, {kLeft, 1});
  const std::vector<ClearedPlace> all = clearedPlaces(plan, kMain);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(told(plan, all[0]), "out Left 1 (dark 1), out Left 2 (dark 1)");
  EXPECT_TRUE(all[0].supplies);
  EXPECT_EQ(told(plan, all[1]), "out Right 1, out Right 2");
  EXPECT_FALSE(all[1].supplies);
}

TEST(Clearing, TheBypassOfAPassThroughInverterWantsASpaceOfItsOwn) {
  Plan plan = fullHouse();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.transfer.edit().bypass = Answer::yes;
  moveOut(plan, "Left 1", 1);
  moveOut(plan, "Left 2", 2);
  moveOut(plan, "Right 1", 3);
  moveOut(plan, "Right 2", 4);
  // Neither is in the plan: two places, one for the input and one for the bypass.
  std::vector<ClearedPlace> all = clearedPlaces(plan, kMain);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_FALSE(all[0].bypass);
  EXPECT_TRUE(all[1].bypass);
  EXPECT_EQ(spaces(plan, all[0]), "1, 3");
  EXPECT_EQ(spaces(plan, all[1]), "2, 4");
  // The first supplies, so what makes room for the second is not dark.
  EXPECT_EQ(told(plan, all[1]), "out Right 1, out Right 2");
  addBreaker(plan, kMain, {kRight, 1}, 2, 60, Feeds::inverterInput, Stage::fresh);
  all = clearedPlaces(plan, kMain);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(spaces(plan, all[1]), "1, 3");
  EXPECT_FALSE(feedsBypass(plan, *find(plan, all[0].breaker)));
  const BreakerId around = addFeeder(plan, {kLeft, 1});
  EXPECT_TRUE(feedsBypass(plan, *find(plan, around)));
  all = clearedPlaces(plan, kMain);
  ASSERT_EQ(all.size(), 2u);
  for (const ClearedPlace& place : all) EXPECT_EQ(place.bypass, place.breaker == around);
  // Without a bypass, or where the switch is one of its own, nothing more is asked.
  plan.transfer.edit().bypass = Answer::no;
  EXPECT_EQ(clearedPlaces(plan, kMain).size(), 2u);
  std::erase_if(plan.breakers, [&](const auto& breaker) { return breaker->id == around; });
  EXPECT_EQ(clearedPlaces(plan, kMain).size(), 1u);
}

TEST(Clearing, NothingIsAskedWhereNothingIsBackedUp) {
  EXPECT_TRUE(clearedPlaces(fullHouse(), kMain).empty());
  Plan plan = fullHouse();
  moveOut(plan, "Left 1", 1);
  EXPECT_TRUE(clearedPlaces(plan, kBackup).empty());
  plan.transfer.edit().arrangement = Arrangement::none;
  EXPECT_TRUE(clearedPlaces(plan, kMain).empty());
}

}  // namespace
