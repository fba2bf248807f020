#include <gtest/gtest.h>

#include "core/panel/spaces.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::addBreaker;
using example::addCircuit;
using example::editBreaker;
using example::editPanel;
using example::kBackup;
using example::kMain;

constexpr Column left = Column::left;
constexpr Column right = Column::right;

std::string reason(const Plan& plan, const Placement& placement,
                   const std::vector<BreakerId>& ignoring = {}) {
  const std::optional<Message> message = refusal(plan, placement, ignoring);
  return message ? render(*message, plainEnglish()) : "";
}

Space measured(SpacePosition position, LegOverride leg) {
  Space space;
  space.column = position.column;
  space.row = position.row;
  space.leg = leg;
  return space;
}

TEST(Fits, anEmptyPanelTakesWholeBreakersEverywhereButBelowTheLastRow) {
  for (std::int32_t spaces = 4; spaces <= 84; ++spaces) {
    Plan plan = example::emptyHouse();
    editPanel(plan, kBackup).spaces = spaces;
    EXPECT_EQ(static_cast<std::int32_t>(landings(plan, kBackup, 1, {}).size()), spaces);
    // A column of k rows has k - 1 places for two poles.
    EXPECT_EQ(static_cast<std::int32_t>(landings(plan, kBackup, 2, {}).size()), spaces - 2) << spaces;
    EXPECT_EQ(freeSpaces(plan, kBackup), spaces);
  }
}

TEST(Fits, refusalsSayWhatIsWrong) {
  Plan plan = example::exampleHouse();
  struct Case {
    Placement placement;
    const char* expected;
  };
  const Case cases[] = {
      {{{9}, {left, 1}, Half::whole, 1}, "There is no such panel"},
      {{kMain, {left, 11}, Half::whole, 1}, "Main panel has no such space"},
      {{kMain, {right, 0}, Half::whole, 1}, "Main panel has no such space"},
      {{kMain, {left, 10}, Half::whole, 2},
       "A two-pole breaker at space 19 would reach below the last row of Main panel"},
      {{kBackup, {left, 4}, Half::outer, 2},
       "A two-pole breaker at space 7 would reach below the last row of Backup subpanel"},
      {{kMain, {left, 1}, Half::whole, 1}, "Already taken by Refrigerator, at 1"},
      {{kMain, {left, 1}, Half::b, 1}, "Already taken by Refrigerator, at 1"},
      {{kMain, {left, 5}, Half::whole, 1}, "Already taken by Well pump, at 7, 9"},
      {{kMain, {right, 6}, Half::whole, 2}, "Already taken by Freezer, at 12"},
      {{kMain, {right, 8}, Half::whole, 1}, "Already taken by a feeder breaker, at 14, 16"},
      {{kMain, {left, 8}, Half::whole, 2}, ""},
      {{kMain, {left, 8}, Half::a, 1}, ""},
  };
  for (const Case& c : cases) EXPECT_EQ(reason(plan, c.placement), c.expected);
  for (const Placement& shape :
       {Placement{kMain, {left, 8}, Half::a, 2}, Placement{kMain, {left, 8}, Half::b, 2},
        Placement{kMain, {left, 8}, Half::outer, 1}, Placement{kMain, {left, 8}, Half::inner, 1},
        Placement{kMain, {left, 8}, Half::whole, 3}, Placement{kMain, {left, 8}, Half::whole, 0}}) {
    ASSERT_TRUE(refusal(plan, shape, {}));
    EXPECT_EQ(refusal(plan, shape, {})->id.key, "panel.no_such_shape");
  }
}

TEST(Fits, theOldBreakerOfAMovedCircuitStillTakesItsSpaceUntilItIsTakenOut) {
  Plan plan = example::exampleHouseMoved();
  EXPECT_EQ(reason(plan, {kMain, {left, 1}, Half::whole, 1}),
            "Already taken by the old breaker of Refrigerator, at 1");
  const BreakerId old = find(plan, example::circuitNamed(plan, "Refrigerator"))->breaker;
  editBreaker(plan, old).stage = Stage::removed;
  EXPECT_EQ(reason(plan, {kMain, {left, 1}, Half::whole, 1}), "");
  EXPECT_EQ(occupantOf(plan, {kMain, {left, 1}, Half::whole, 1}, Reading::before, {}), old);
  EXPECT_FALSE(occupantOf(plan, {kMain, {left, 1}, Half::whole, 1}, Reading::planned, {}).valid());
}

TEST(Fits, readingsHoldWhatStandsThen) {
  const Plan plan = example::exampleHouseMoved();
  EXPECT_TRUE(occupants(plan, kBackup, Reading::before).empty());
  EXPECT_EQ(occupants(plan, kBackup, Reading::planned).size(), 5u);
  // The feeder breaker is new: before the work its spaces were free.
  EXPECT_EQ(occupants(plan, kMain, Reading::before).size(), 10u);
  EXPECT_EQ(occupants(plan, kMain, Reading::planned).size(), 11u);
  EXPECT_EQ(freeSpaces(plan, kBackup), 2);
}

TEST(Fits, whatIsIgnoredDoesNotCount) {
  const Plan plan = example::exampleHouse();
  const BreakerId freezer = find(plan, example::circuitNamed(plan, "Freezer"))->breaker;
  EXPECT_EQ(reason(plan, {kMain, {right, 6}, Half::whole, 1}, {freezer}), "");
}

TEST(Fits, twoPolesOnOneLegAreRefused) {
  Plan plan = example::emptyHouse();
  editPanel(plan, kBackup).exceptions.push_back(measured({left, 2}, LegOverride::l1));
  for (const Half half : {Half::whole, Half::outer, Half::inner}) {
    const std::optional<Message> message = refusal(plan, {kBackup, {left, 1}, half, 2}, {});
    ASSERT_TRUE(message);
    EXPECT_EQ(message->id.key, "panel.poles_on_one_leg");
  }
  EXPECT_EQ(reason(plan, {kBackup, {left, 1}, Half::whole, 2}),
            "Spaces 1, 3 both lie on L1; a two-pole breaker needs both legs");
  EXPECT_EQ(reason(plan, {kBackup, {right, 1}, Half::whole, 2}), "");
  // Rows 2 and 3 both measure L1 now; only 3-4 and the right column are left.
  EXPECT_EQ(landings(plan, kBackup, 2, {}).size(), 4u);
}

TEST(Fits, aTandemIsRefusedOnlyWhereItIsKnownNotToFit) {
  Plan plan = example::emptyHouse();
  const Placement half{kBackup, {left, 1}, Half::a, 1};
  EXPECT_EQ(reason(plan, half), "") << "nobody has looked: a finding, not a refusal";
  editPanel(plan, kBackup).tandems = Answer::no;
  EXPECT_EQ(reason(plan, half), "Space 1 does not accept a tandem breaker");
  EXPECT_EQ(reason(plan, {kBackup, {left, 1}, Half::outer, 2}), "Space 1 does not accept a tandem breaker");
  EXPECT_EQ(reason(plan, {kBackup, {left, 1}, Half::whole, 2}), "");
  Space space;
  space.tandem = TandemRule::accepted;
  editPanel(plan, kBackup).exceptions.push_back(space);
  EXPECT_EQ(reason(plan, half), "");
  EXPECT_EQ(reason(plan, {kBackup, {left, 1}, Half::inner, 2}), "Space 3 does not accept a tandem breaker");
}

TEST(Fits, aTandemHasTwoHalvesAndAQuadFour) {
  Plan plan = example::emptyHouse();
  const BreakerId upper = addBreaker(plan, kMain, {left, 1}, 1, 15, Feeds::nothing, Stage::existing, Half::a);
  EXPECT_EQ(reason(plan, {kMain, {left, 1}, Half::a, 1}), "Already taken by a spare breaker, at 1A");
  EXPECT_EQ(reason(plan, {kMain, {left, 1}, Half::b, 1}), "");
  EXPECT_EQ(reason(plan, {kMain, {left, 1}, Half::inner, 2}), "") << "the lower half of row 1 is free";
  EXPECT_NE(reason(plan, {kMain, {left, 1}, Half::outer, 2}), "");
  const BreakerId lower = addBreaker(plan, kMain, {left, 1}, 1, 15, Feeds::nothing, Stage::existing, Half::b);
  EXPECT_EQ(breakersAt(plan, kMain, {left, 1}, Reading::planned), (std::vector<BreakerId>{upper, lower}));

  const BreakerId inner =
      addBreaker(plan, kMain, {right, 1}, 2, 30, Feeds::nothing, Stage::existing, Half::inner);
  const BreakerId outer =
      addBreaker(plan, kMain, {right, 1}, 2, 20, Feeds::nothing, Stage::existing, Half::outer);
  EXPECT_EQ(breakersAt(plan, kMain, {right, 1}, Reading::planned), (std::vector<BreakerId>{outer, inner}));
  EXPECT_EQ(breakersAt(plan, kMain, {right, 2}, Reading::planned), (std::vector<BreakerId>{inner, outer}));
  for (const Half half : {Half::a, Half::b, Half::whole})
    EXPECT_NE(reason(plan, {kMain, {right, 2}, half, 1}), "");
  EXPECT_EQ(freeSpaces(plan, kMain), 20 - 3);
}

TEST(Fits, aTriplexIsAnInnerPairBetweenTwoSinglePoles) {
  Plan plan = example::emptyHouse();
  addBreaker(plan, kMain, {left, 3}, 1, 15, Feeds::nothing, Stage::existing, Half::a);
  addBreaker(plan, kMain, {left, 4}, 1, 15, Feeds::nothing, Stage::existing, Half::b);
  EXPECT_EQ(reason(plan, {kMain, {left, 3}, Half::inner, 2}), "");
  EXPECT_NE(reason(plan, {kMain, {left, 3}, Half::outer, 2}), "");
}

TEST(Fits, theLabelsPoleMaximumCountsPolesOfAllBreakers) {
  Plan plan = example::emptyHouse();
  editPanel(plan, kBackup).poleMaximum = 4;
  addBreaker(plan, kBackup, {left, 1}, 2, 20, Feeds::nothing, Stage::fresh);
  const BreakerId single = addBreaker(plan, kBackup, {right, 1}, 1, 20, Feeds::nothing, Stage::fresh);
  EXPECT_EQ(reason(plan, {kBackup, {right, 2}, Half::whole, 1}), "");
  EXPECT_EQ(reason(plan, {kBackup, {right, 2}, Half::whole, 2}),
            "The label of Backup subpanel allows 4 poles; this would make 5");
  EXPECT_EQ(reason(plan, {kBackup, {right, 2}, Half::whole, 2}, {single}), "");
}

TEST(Fits, placesOfAPanelThatIsNotThere) {
  const Plan plan = example::emptyHouse();
  EXPECT_TRUE(landings(plan, {7}, 1, {}).empty());
  EXPECT_EQ(freeSpaces(plan, {7}), 0);
  EXPECT_TRUE(occupants(plan, {7}, Reading::planned).empty());
}

}  // namespace
}  // namespace stayalight
