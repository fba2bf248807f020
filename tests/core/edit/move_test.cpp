#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::addCircuit;
using example::addCircuitWithLoad;
using example::circuitNamed;
using example::editBreaker;
using example::editCircuit;
using example::editPanel;
using example::kBackup;
using example::kMain;
using example::plainLoad;

constexpr Column left = Column::left;
constexpr Column right = Column::right;

Result<Plan> move(const Plan& plan, std::vector<CircuitId> circuits,
                  std::optional<SpacePosition> landing = std::nullopt, PanelId panel = kBackup) {
  return moveCircuits(plan, circuits, panel, landing);
}
Result<Plan> back(const Plan& plan, std::vector<CircuitId> circuits) { return sendBack(plan, circuits); }

const Breaker& planned(const Plan& plan, CircuitId circuit) {
  return *find(plan, find(plan, circuit)->planned);
}
const Breaker& before(const Plan& plan, CircuitId circuit) {
  return *find(plan, find(plan, circuit)->breaker);
}
Leg legPlanned(const Plan& plan, CircuitId circuit) {
  const Breaker& breaker = planned(plan, circuit);
  return legOf(*find(plan, breaker.panel), breaker.position());
}
std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("moved") : render(result.refusal(), plainEnglish());
}

TEST(Move, aNewBreakerIsBoughtAndTheOldOneStaysWithoutFunction) {
  Plan plan = example::exampleHouse();
  editPanel(plan, kMain).listingLine = "line of the main panel";
  editPanel(plan, kBackup).listingLine = "line of the new panel";
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  Breaker& old = editBreaker(plan, find(plan, freezer)->breaker);
  old.protection = Protection::dual;
  old.listingLine = "line of the main panel";
  old.interruptingRating = AcAmperes(10000);
  old.notes = "sticks";

  const Result<Plan> moved = move(plan, {freezer}, SpacePosition{right, 2});
  ASSERT_TRUE(moved.ok()) << said(moved);
  const Breaker& fresh = planned(moved.value(), freezer);
  EXPECT_TRUE(fresh.panel == kBackup);
  EXPECT_TRUE(fresh.position() == (SpacePosition{right, 2}));
  EXPECT_TRUE(fresh.stage.is(Stage::fresh));
  EXPECT_TRUE(fresh.feeds.is(Feeds::circuit));
  EXPECT_EQ(fresh.rating.count(), 20);
  EXPECT_EQ(fresh.poles, 1);
  EXPECT_TRUE(fresh.protection.is(Protection::dual));
  EXPECT_EQ(fresh.listingLine, "line of the new panel");
  EXPECT_FALSE(fresh.interruptingRating.has_value());
  EXPECT_EQ(fresh.notes, "");
  EXPECT_EQ(fresh.id.number, nextBreakerId(plan).number);

  const Breaker& left_ = before(moved.value(), freezer);
  EXPECT_TRUE(left_.stage.is(Stage::leftInPlace));
  EXPECT_TRUE(stands(left_, Reading::before));
  EXPECT_TRUE(stands(left_, Reading::planned));
  EXPECT_TRUE(backedUp(moved.value(), *find(moved.value(), freezer)));
  EXPECT_TRUE(find(plan, freezer)->planned == find(plan, freezer)->breaker)
      << "the plan given stays as it was";
}

TEST(Move, aRefusedLandingMovesNothingAndSaysWhy) {
  const Plan plan = example::exampleHouseMoved();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const CircuitId heater = circuitNamed(plan, "Water heater");
  EXPECT_EQ(said(move(plan, {freezer}, SpacePosition{left, 1})), "Already taken by Refrigerator, at 1");
  EXPECT_EQ(said(move(plan, {freezer}, SpacePosition{left, 5})), "Backup subpanel has no such space");
  EXPECT_EQ(said(move(plan, {heater}, SpacePosition{left, 4})),
            "A two-pole breaker at space 7 would reach below the last row of Backup subpanel");
  EXPECT_EQ(said(move(plan, {freezer}, std::nullopt, {9})), "There is no such panel");
  EXPECT_EQ(said(move(plan, {})), "No circuit is chosen");
  EXPECT_EQ(said(move(plan, {{99}})), "There is no such circuit");
  EXPECT_EQ(said(move(plan, {heater, freezer})), "Backup subpanel has no free place left for Freezer")
      << "the two-pole takes the last two spaces";
}

TEST(Move, theLighterLegIsTakenThenTheTopmostSpace) {
  // Backup: 120 W on L1 (left 1). A single goes to L2, topmost: left 2.
  Plan plan = example::exampleHouse();
  const CircuitId lights = circuitNamed(plan, "Lights");
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const CircuitId office = circuitNamed(plan, "Office");
  Result<Plan> moved = move(plan, {lights});
  ASSERT_TRUE(moved.ok());
  EXPECT_TRUE(planned(moved.value(), lights).position() == (SpacePosition{left, 1}))
      << "nothing there yet: topmost";
  moved = move(moved.value(), {office});
  EXPECT_TRUE(planned(moved.value(), office).position() == (SpacePosition{left, 2}))
      << "L1 carries 120 W, L2 none";
  moved = move(moved.value(), {freezer});
  EXPECT_TRUE(planned(moved.value(), freezer).position() == (SpacePosition{right, 2}))
      << "L2 carries 30 W, L1 120 W";
}

TEST(Move, severalAtOnceBalanceWhateverTheOrderTheyWereChosenIn) {
  Plan plan = example::emptyHouse();
  std::vector<CircuitId> circuits;
  const double watts[] = {100, 400, 200, 300};
  for (std::int32_t i = 0; i < 4; ++i) {
    circuits.push_back(addCircuitWithLoad(plan, kMain, {left, i + 1}, 1, 15, "C" + std::to_string(i),
                                          plainLoad("L", watts[i])));
  }
  const Result<Plan> one = move(plan, circuits);
  const Result<Plan> other = move(plan, {circuits[3], circuits[1], circuits[0], circuits[2]});
  ASSERT_TRUE(one.ok() && other.ok());
  double legs[2] = {0, 0};
  for (std::size_t i = 0; i < 4; ++i) {
    legs[index(legPlanned(one.value(), circuits[i]))] += watts[i];
    EXPECT_TRUE(planned(one.value(), circuits[i]).position() ==
                planned(other.value(), circuits[i]).position());
  }
  // Heaviest first on the lighter leg: 400 | 300, then 200 to 300, then 100 to 400.
  EXPECT_DOUBLE_EQ(legs[0], 500);
  EXPECT_DOUBLE_EQ(legs[1], 500);
}

TEST(Move, twoPoleBreakersFindRoomBeforeSinglesTakeIt) {
  Plan plan = example::exampleHouse();
  editPanel(plan, kBackup).spaces = 4;
  const CircuitId pump = circuitNamed(plan, "Well pump");
  const CircuitId lights = circuitNamed(plan, "Lights");
  const CircuitId office = circuitNamed(plan, "Office");
  const Result<Plan> moved = move(plan, {lights, office, pump});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_EQ(freeSpaces(moved.value(), kBackup), 0);
}

TEST(Move, aMultiwireGroupGoesWholeSideBySideOnOppositeLegs) {
  const Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  const CircuitId b = circuitNamed(plan, "Counter B");
  for (const CircuitId chosen : {a, b}) {
    const Result<Plan> moved = move(plan, {chosen});
    ASSERT_TRUE(moved.ok()) << said(moved);
    const Breaker& one = planned(moved.value(), a);
    const Breaker& other = planned(moved.value(), b);
    EXPECT_TRUE(one.panel == kBackup && other.panel == kBackup);
    EXPECT_NE(legPlanned(moved.value(), a), legPlanned(moved.value(), b));
    EXPECT_TRUE(one.column == other.column);
    EXPECT_EQ(std::abs(one.row - other.row), 1);
    EXPECT_TRUE(one.tie.is(Tie::handleTie) && other.tie.is(Tie::handleTie)) << "they keep their tie";
    const Result<Plan> returned = back(moved.value(), {chosen});
    ASSERT_TRUE(returned.ok());
    EXPECT_TRUE(returned.value() == plan);
  }
}

TEST(Move, theLandingIsForTheChosenHotAndItsPartnerStandsBeside) {
  const Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  const CircuitId b = circuitNamed(plan, "Counter B");
  for (std::int32_t row = 1; row <= 4; ++row) {
    const Result<Plan> moved = move(plan, {b}, SpacePosition{right, row});
    ASSERT_TRUE(moved.ok()) << said(moved);
    EXPECT_TRUE(planned(moved.value(), b).position() == (SpacePosition{right, row}));
    EXPECT_TRUE(planned(moved.value(), a).column.is(right));
    EXPECT_EQ(std::abs(planned(moved.value(), a).row - row), 1);
  }
}

TEST(Move, aGroupWithoutRoomOnBothLegsIsRefused) {
  Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  // All of L2 is taken: rows 2 and 4.
  for (const SpacePosition taken : {SpacePosition{left, 2}, {right, 2}, {left, 4}, {right, 4}}) {
    example::addBreaker(plan, kBackup, taken, 1, 15, Feeds::nothing, Stage::fresh);
  }
  EXPECT_EQ(said(move(plan, {a})),
            "Backup subpanel has no free places on opposite legs for Counter A and the circuits that share "
            "its neutral");
  // With one space of L2 free but not beside one of L1 it goes apart rather than on one leg.
  editBreaker(plan, plan.breakers.back()->id).stage = Stage::removed;
  example::addBreaker(plan, kBackup, {right, 3}, 1, 15, Feeds::nothing, Stage::fresh);
  const Result<Plan> moved = move(plan, {a});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_NE(legPlanned(moved.value(), a), legPlanned(moved.value(), circuitNamed(plan, "Counter B")));
}

TEST(Move, aMeasuredLegCountsForAGroup) {
  Plan plan = example::exampleHouse();
  Space space;
  space.column = left;
  space.row = 2;
  space.leg = LegOverride::l1;
  editPanel(plan, kBackup).exceptions.push_back(space);
  const CircuitId a = circuitNamed(plan, "Counter A");
  const Result<Plan> moved = move(plan, {a}, SpacePosition{left, 1});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_NE(legPlanned(moved.value(), a), legPlanned(moved.value(), circuitNamed(plan, "Counter B")));
}

TEST(Move, aSplitGroupIsBroughtTogether) {
  Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  const CircuitId b = circuitNamed(plan, "Counter B");
  example::moveByHand(plan, a, kBackup, {left, 2});
  const Result<Plan> moved = move(plan, {b});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(planned(moved.value(), a).position() == (SpacePosition{left, 2})) << "who is there stays";
  EXPECT_TRUE(planned(moved.value(), b).position() == (SpacePosition{left, 1}));
}

TEST(Move, twoHotsOnOneTwoPoleBreakerMoveOntoOneNewBreaker) {
  Plan plan = example::emptyHouse();
  const CircuitId a = addCircuit(plan, kMain, {left, 1}, 2, 20, "A");
  const CircuitId b = addCircuit(plan, kMain, {left, 5}, 1, 20, "B");
  Circuit& second = editCircuit(plan, b);
  second.breaker = second.planned = find(plan, a)->breaker;
  plan.breakers.pop_back();
  const Result<Plan> moved = move(plan, {b}, SpacePosition{left, 2});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(find(moved.value(), a)->planned == find(moved.value(), b)->planned);
  EXPECT_EQ(moved.value().breakers.size(), 2u);
  const Result<Plan> returned = back(moved.value(), {a});
  ASSERT_TRUE(returned.ok());
  EXPECT_TRUE(returned.value() == plan);
}

TEST(Move, tandemHalvesAndQuadPairsBecomeWholeBreakers) {
  struct Case {
    Half half;
    std::int32_t poles;
  };
  for (const Case c : {Case{Half::a, 1}, Case{Half::b, 1}, Case{Half::outer, 2}, Case{Half::inner, 2}}) {
    Plan plan = example::emptyHouse();
    const CircuitId circuit = addCircuit(plan, kMain, {left, 1}, c.poles, 20, "C", c.half);
    const Result<Plan> moved = move(plan, {circuit});
    ASSERT_TRUE(moved.ok()) << said(moved);
    EXPECT_TRUE(planned(moved.value(), circuit).half.is(Half::whole));
    EXPECT_EQ(planned(moved.value(), circuit).poles, c.poles);
    EXPECT_TRUE(before(moved.value(), circuit).half.is(c.half));
    EXPECT_TRUE(back(moved.value(), {circuit}).value() == plan);
  }
}

TEST(Move, aCircuitOnANewBreakerTakesItAlong) {
  Plan plan = example::exampleHouseMoved();
  const CircuitId fridge = circuitNamed(plan, "Refrigerator");
  const BreakerId fresh = find(plan, fridge)->planned;
  Result<Plan> moved = move(plan, {fridge}, SpacePosition{left, 3});
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(find(moved.value(), fridge)->planned == fresh);
  EXPECT_TRUE(planned(moved.value(), fridge).position() == (SpacePosition{left, 3}));
  EXPECT_EQ(moved.value().breakers.size(), plan.breakers.size());

  const PanelId other = example::addPanel(plan, PanelRole::subpanel, "Garage", 6);
  editPanel(plan, kBackup).listingLine = "one";
  editPanel(plan, other).listingLine = "another";
  editBreaker(plan, fresh).listingLine = "one";
  moved = move(plan, {fridge}, std::nullopt, other);
  ASSERT_TRUE(moved.ok()) << said(moved);
  EXPECT_TRUE(find(moved.value(), fridge)->planned == fresh);
  EXPECT_EQ(planned(moved.value(), fridge).listingLine, "another")
      << "not bought yet: the line of the panel it goes to";
}

TEST(Move, aGroupMovedWithinItsPanelStaysTogether) {
  const Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  const CircuitId b = circuitNamed(plan, "Counter B");
  const Plan first = move(plan, {a}, SpacePosition{left, 1}).value();
  const Result<Plan> second = move(first, {a}, SpacePosition{right, 3});
  ASSERT_TRUE(second.ok()) << said(second);
  EXPECT_TRUE(planned(second.value(), a).position() == (SpacePosition{right, 3}));
  EXPECT_TRUE(planned(second.value(), b).column.is(right));
  EXPECT_NE(legPlanned(second.value(), a), legPlanned(second.value(), b));
  EXPECT_EQ(second.value().breakers.size(), first.breakers.size());
}

TEST(Move, movingToThePanelItCameFromSendsBack) {
  const Plan plan = example::exampleHouse();
  const CircuitId pump = circuitNamed(plan, "Well pump");
  const Plan moved = move(plan, {pump}).value();
  EXPECT_TRUE(move(moved, {pump}, std::nullopt, kMain).value() == plan);
  EXPECT_TRUE(move(moved, {pump}, SpacePosition{left, 9}, kMain).value() == plan);
  EXPECT_EQ(said(move(plan, {pump}, std::nullopt, kMain)), "Well pump stands in Main panel already");
}

TEST(SendBack, refusesWhatNeverMovedAndWhatHasNoOldBreaker) {
  const Plan plan = example::exampleHouse();
  const CircuitId pump = circuitNamed(plan, "Well pump");
  EXPECT_EQ(said(back(plan, {pump})), "Well pump stands where it always stood");
  const Plan added = addCircuit(plan, kBackup, std::nullopt, 1, RatingAmperes(15), "New one").value();
  EXPECT_EQ(said(back(added, {circuitNamed(added, "New one")})),
            "New one is new: no old breaker fed it before");
}

TEST(SendBack, refusesWhereTheOldSpaceWasGivenAway) {
  const Plan plan = example::exampleHouse();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const BreakerId old = find(plan, freezer)->breaker;
  const Plan moved = keepOldBreaker(move(plan, {freezer}).value(), old, false).value();
  EXPECT_TRUE(back(moved, {freezer}).value() == plan) << "a blank takes the breaker again";
  const Plan given =
      addBreaker(moved, {kMain, {right, 6}, Half::whole, 1}, RatingAmperes(20), Feeds::surgeDevice).value();
  EXPECT_EQ(said(back(given, {freezer})), "Already taken by the breaker of the surge device, at 12");
  // The old breaker itself feeds something else now.
  Plan reused = move(plan, {freezer}).value();
  editBreaker(reused, old).feeds = Feeds::solar;
  EXPECT_EQ(said(back(reused, {freezer})), "The old breaker of Freezer, at 12, has another use now");
}

TEST(Move, aWholeHouseMovesAndComesBack) {
  Plan plan = example::exampleHouse();
  editPanel(plan, kBackup).spaces = 20;
  std::vector<CircuitId> all;
  for (const auto& circuit : plan.circuits) all.push_back(circuit->id);
  const Result<Plan> moved = move(plan, all);
  ASSERT_TRUE(moved.ok()) << said(moved);
  for (const auto& circuit : moved.value().circuits)
    EXPECT_TRUE(backedUp(moved.value(), *circuit)) << circuit->name;
  EXPECT_TRUE(back(moved.value(), all).value() == plan);
}

TEST(Move, aCopyOfThePlanIsTheUndo) {
  const Plan plan = example::exampleHouse();
  const Plan kept = plan;
  const Plan moved = move(plan, {circuitNamed(plan, "Freezer")}).value();
  EXPECT_FALSE(moved == kept);
  EXPECT_TRUE(plan == kept);
  // Untouched parts are the very same, so views see at once what changed.
  EXPECT_TRUE(moved.site.same(kept.site));
  EXPECT_TRUE(moved.panels[0].same(kept.panels[0]));
  EXPECT_TRUE(moved.circuits[0].same(kept.circuits[0]));
}

}  // namespace
}  // namespace stayalight
