// Rows, printed numbers and legs. Which leg a row lies on and how panels are numbered: common practice, no
// source.

#include <gtest/gtest.h>

#include "core/panel/spaces.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

constexpr Column left = Column::left;
constexpr Column right = Column::right;

Panel panelOf(std::int32_t spaces, Numbering numbering = Numbering::oddEven) {
  Panel panel;
  panel.id = {1};
  panel.name = "P";
  panel.spaces = spaces;
  panel.numbering = numbering;
  return panel;
}

Space exceptionAt(SpacePosition position) {
  Space space;
  space.column = position.column;
  space.row = position.row;
  return space;
}

TEST(Spaces, printedNumbersOfBothNumberings) {
  struct Case {
    std::int32_t spaces;
    Numbering numbering;
    SpacePosition position;
    const char* printed;
  };
  const Case cases[] = {
      {20, Numbering::oddEven, {left, 1}, "1"},        {20, Numbering::oddEven, {right, 1}, "2"},
      {20, Numbering::oddEven, {left, 10}, "19"},      {20, Numbering::oddEven, {right, 10}, "20"},
      {84, Numbering::oddEven, {left, 42}, "83"},      {84, Numbering::oddEven, {right, 42}, "84"},
      {7, Numbering::oddEven, {left, 4}, "7"},         {20, Numbering::downColumns, {left, 1}, "1"},
      {20, Numbering::downColumns, {left, 10}, "10"},  {20, Numbering::downColumns, {right, 1}, "11"},
      {20, Numbering::downColumns, {right, 10}, "20"}, {7, Numbering::downColumns, {left, 4}, "4"},
      {7, Numbering::downColumns, {right, 1}, "5"},    {7, Numbering::downColumns, {right, 3}, "7"},
  };
  for (const Case& c : cases) {
    EXPECT_EQ(printedNumber(panelOf(c.spaces, c.numbering), c.position), c.printed) << c.spaces << " spaces";
  }
}

TEST(Spaces, everySizeCountsNumbersAndFindsEachSpaceOnce) {
  for (std::int32_t spaces = 4; spaces <= 84; ++spaces) {
    for (const Numbering numbering : {Numbering::oddEven, Numbering::downColumns}) {
      const Panel panel = panelOf(spaces, numbering);
      const std::vector<SpacePosition> all = allSpaces(panel);
      ASSERT_EQ(static_cast<std::int32_t>(all.size()), spaces);
      EXPECT_EQ(rowCount(panel), spaces / 2 + spaces % 2);
      for (const SpacePosition position : all) {
        const auto found = spaceNumbered(panel, printedNumber(panel, position));
        ASSERT_TRUE(found);
        EXPECT_TRUE(*found == position) << spaces << " spaces, " << printedNumber(panel, position);
      }
      // Numbers 1 to n and no other.
      EXPECT_TRUE(spaceNumbered(panel, "1"));
      EXPECT_TRUE(spaceNumbered(panel, std::to_string(spaces)));
      EXPECT_FALSE(spaceNumbered(panel, std::to_string(spaces + 1)));
      EXPECT_FALSE(spaceNumbered(panel, "0"));
    }
  }
}

TEST(Spaces, anOddLastSpaceStandsLeft) {
  const Panel panel = panelOf(9);
  EXPECT_TRUE(hasSpace(panel, {left, 5}));
  EXPECT_FALSE(hasSpace(panel, {right, 5}));
  EXPECT_FALSE(hasSpace(panel, {left, 6}));
  EXPECT_FALSE(hasSpace(panel, {left, 0}));
  EXPECT_FALSE(hasSpace(panel, {right, -1}));
}

TEST(Spaces, spacesComeRowByRow) {
  const std::vector<SpacePosition> expected = {{left, 1}, {right, 1}, {left, 2}, {right, 2}, {left, 3}};
  EXPECT_EQ(allSpaces(panelOf(5)), expected);
}

TEST(Spaces, aPrintedNumberCanDiffer) {
  Panel panel = panelOf(8);
  panel.exceptions.push_back(exceptionAt({right, 2}));
  panel.exceptions.back().printedNumber = "12B";
  EXPECT_EQ(printedNumber(panel, {right, 2}), "12B");
  ASSERT_TRUE(spaceNumbered(panel, "12B"));
  EXPECT_TRUE(*spaceNumbered(panel, "12B") == (SpacePosition{right, 2}));
  EXPECT_FALSE(spaceNumbered(panel, "4")) << "the number it would have had is not printed anywhere";
  EXPECT_FALSE(spaceNumbered(panel, "12")) << "only the whole text counts";
}

TEST(Spaces, legsGoByRowInBothColumnsWhateverTheNumbers) {
  for (const Numbering numbering : {Numbering::oddEven, Numbering::downColumns}) {
    const Panel panel = panelOf(84, numbering);
    for (const SpacePosition position : allSpaces(panel)) {
      EXPECT_EQ(legOf(panel, position), position.row % 2 == 1 ? Leg::l1 : Leg::l2);
    }
  }
  // The numbers of the trade: 1, 2 on L1; 3, 4 on L2; 5, 6 on L1.
  const Panel panel = panelOf(20);
  const char* const onL1[] = {"1", "2", "5", "6", "9", "10", "17", "18"};
  const char* const onL2[] = {"3", "4", "7", "8", "19", "20"};
  for (const char* number : onL1) EXPECT_EQ(legOf(panel, *spaceNumbered(panel, number)), Leg::l1) << number;
  for (const char* number : onL2) EXPECT_EQ(legOf(panel, *spaceNumbered(panel, number)), Leg::l2) << number;
}

TEST(Spaces, aMeasuredLegWins) {
  Panel panel = panelOf(8);
  panel.exceptions.push_back(exceptionAt({left, 1}));
  panel.exceptions.back().leg = LegOverride::l2;
  panel.exceptions.push_back(exceptionAt({right, 2}));
  panel.exceptions.back().leg = LegOverride::byRow;
  EXPECT_EQ(legOf(panel, {left, 1}), Leg::l2);
  EXPECT_EQ(legOf(panel, {right, 1}), Leg::l1) << "its neighbour is not touched";
  EXPECT_EQ(legOf(panel, {right, 2}), Leg::l2);
}

TEST(Spaces, aTandemIsAcceptedByPanelOrBySpace) {
  Panel panel = panelOf(8);
  EXPECT_EQ(takesTandem(panel, {left, 1}), Answer::unknown);
  panel.tandems = Answer::no;
  panel.exceptions.push_back(exceptionAt({left, 1}));
  panel.exceptions.back().tandem = TandemRule::accepted;
  EXPECT_EQ(takesTandem(panel, {left, 1}), Answer::yes);
  EXPECT_EQ(takesTandem(panel, {left, 2}), Answer::no);
  panel.tandems = Answer::yes;
  panel.exceptions.back().tandem = TandemRule::notAccepted;
  EXPECT_EQ(takesTandem(panel, {left, 1}), Answer::no);
  EXPECT_EQ(takesTandem(panel, {left, 2}), Answer::yes);
}

TEST(Spaces, whatABreakerCovers) {
  struct Case {
    Half half;
    std::int32_t poles;
    std::vector<HalfSpace> covered;
    const char* names;
  };
  const SpacePosition first{right, 2};
  const SpacePosition second{right, 3};
  const Case cases[] = {
      {Half::whole, 1, {{first, SpaceHalf::upper}, {first, SpaceHalf::lower}}, "4"},
      {Half::whole,
       2,
       {{first, SpaceHalf::upper},
        {first, SpaceHalf::lower},
        {second, SpaceHalf::upper},
        {second, SpaceHalf::lower}},
       "4, 6"},
      {Half::a, 1, {{first, SpaceHalf::upper}}, "4A"},
      {Half::b, 1, {{first, SpaceHalf::lower}}, "4B"},
      {Half::outer, 2, {{first, SpaceHalf::upper}, {second, SpaceHalf::lower}}, "4A, 6B"},
      {Half::inner, 2, {{first, SpaceHalf::lower}, {second, SpaceHalf::upper}}, "4B, 6A"},
  };
  const Panel panel = panelOf(8);
  for (const Case& c : cases) {
    const Placement placement{panel.id, first, c.half, c.poles};
    EXPECT_TRUE(coveredHalves(placement) == c.covered) << c.names;
    EXPECT_EQ(spaceNames(panel, placement), c.names);
  }
}

TEST(Spaces, twoPoleShapesLieOnBothLegs) {
  const Panel panel = panelOf(20);
  const std::vector<Leg> fromOdd = {Leg::l1, Leg::l2};
  const std::vector<Leg> fromEven = {Leg::l2, Leg::l1};
  for (const Half half : {Half::whole, Half::outer, Half::inner}) {
    EXPECT_EQ(poleLegs(panel, {panel.id, {left, 3}, half, 2}), fromOdd);
    EXPECT_EQ(poleLegs(panel, {panel.id, {right, 4}, half, 2}), fromEven);
  }
  // Both halves of a tandem hang on one stab.
  EXPECT_EQ(poleLegs(panel, {panel.id, {left, 2}, Half::a, 1}),
            poleLegs(panel, {panel.id, {left, 2}, Half::b, 1}));
}

TEST(Spaces, aTwoPoleTakesTheNextRowNotTheNextNumber) {
  const Panel panel = panelOf(20, Numbering::downColumns);
  EXPECT_EQ(spaceNames(panel, {panel.id, {left, 3}, Half::whole, 2}), "3, 4");
  EXPECT_EQ(spaceNames(panelOf(20), {panel.id, {left, 3}, Half::whole, 2}), "5, 7");
}

TEST(Spaces, aMultiwireGroupIsAllWithItsNumber) {
  const Plan plan = example::exampleHouse();
  const CircuitId a = example::circuitNamed(plan, "Counter A");
  const CircuitId b = example::circuitNamed(plan, "Counter B");
  EXPECT_EQ(multiwireGroup(plan, *find(plan, b)), (std::vector<CircuitId>{a, b}));
  const CircuitId freezer = example::circuitNamed(plan, "Freezer");
  EXPECT_EQ(multiwireGroup(plan, *find(plan, freezer)), std::vector<CircuitId>{freezer}) << "0 is no group";
}

}  // namespace
}  // namespace stayalight
