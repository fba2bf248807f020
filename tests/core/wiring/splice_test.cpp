// Volume of splice boxes, room in gutters, connectors.

#include "core/wiring/splice.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;

namespace {

/// Circuits that come in by a cable and go on by a cable: what four cables do in a box.
Plan twoCablesOn(ConductorSize size, double cubicInches, Answer clamps) {
  Plan plan = example::emptyHouse();
  SpliceBox box;
  box.id = {1};
  box.name = "Basement box";
  box.volume = CubicInches(cubicInches);
  box.clampsInside = clamps;
  box.devices = 1;
  plan.spliceBoxes.emplace_back(box);
  for (const int row : {1, 2}) {
    const CircuitId id = example::addCircuit(plan, example::kBackup, {Column::left, row}, 1,
                                             size == ConductorSize::awg14 ? 15 : 20, "Circuit");
    Circuit& circuit = example::editCircuit(plan, id);
    circuit.conductor = size;
    circuit.splice = Splice::inBox;
    circuit.spliceBox = box.id;
  }
  return plan;
}

SpliceBoxFigures only(const Plan& plan, Edition edition = Edition::y2023) {
  const auto all = spliceBoxFigures(plan, edition);
  EXPECT_EQ(all.size(), 1u);
  return all.front();
}

TEST(SpliceBox, FourCablesAndAReceptacle) {
  const reference::WorkedExample example("S-22");
  const SpliceBoxFigures figures = only(twoCablesOn(ConductorSize::awg12, 30.3, Answer::no));
  example.expectNear("required_in3", figures.needed.count());
  double count = 0;
  for (const BoxLine& line : figures.lines) count += line.count;
  example.expectNear("allowances", count);
  EXPECT_EQ(figures.verdict, Verdict::within);
}

TEST(SpliceBox, ClampsInsideTakeRoom) {
  const reference::WorkedExample example("S-23");
  const SpliceBoxFigures without =
      only(twoCablesOn(ConductorSize::awg14, example.input("box_in3"), Answer::no));
  example.expectNear("no_clamp_in3", without.needed.count());
  EXPECT_EQ(without.verdict, Verdict::within);
  const SpliceBoxFigures with =
      only(twoCablesOn(ConductorSize::awg14, example.input("box_in3"), Answer::yes));
  example.expectNear("clamp_in3", with.needed.count());
  EXPECT_EQ(with.verdict, Verdict::over);
  // Nobody has looked: they count.
  EXPECT_EQ(only(twoCablesOn(ConductorSize::awg14, 22.5, Answer::unknown)).verdict, Verdict::over);
}

TEST(SpliceBox, AStandardBoxHasTheVolumeOfTheTable) {
  Plan plan = twoCablesOn(ConductorSize::awg12, 5, Answer::no);
  plan.spliceBoxes.front().edit().kind = BoxKind::square4Deep;
  EXPECT_DOUBLE_EQ(only(plan).volume->count(), 30.3);
  EXPECT_EQ(only(plan).verdict, Verdict::within);
}

TEST(SpliceBox, LargeConductorsGoByAnotherRule) {
  EXPECT_TRUE(only(twoCablesOn(ConductorSize::awg4, 100, Answer::no)).large);
  EXPECT_EQ(only(twoCablesOn(ConductorSize::awg4, 100, Answer::no)).verdict, Verdict::notKnown);
}

TEST(SpliceBox, TheGroundsOfAMultiwireGroupAreThoseOfOneCable) {
  Plan plan = twoCablesOn(ConductorSize::awg12, 30, Answer::no);
  for (auto& circuit : plan.circuits) circuit.edit().multiwire = 3;
  double count = 0;
  for (const BoxLine& line : only(plan).lines) count += line.count;
  EXPECT_DOUBLE_EQ(count, 2 * 3 + 1 + 2);  // three-wire cable in and out, grounds, yoke
}

TEST(SpliceBox, WithoutAMarkItIsNotKnown) {
  Plan plan = twoCablesOn(ConductorSize::awg12, 30, Answer::no);
  plan.spliceBoxes.front().edit().volume.reset();
  EXPECT_EQ(only(plan).verdict, Verdict::notKnown);
  EXPECT_EQ(only(plan).notKnown.front().id.key, "wiring.box.no_volume");
}

TEST(WiringSpace, ConductorsTakeAtMostTwoFifths) {
  // NFPA 70 312.8(A)(1). Ten 12 AWG THHN of 0.0133 in2 each.
  Plan plan = feeder::manualSwitch();
  for (auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    Circuit& moved = circuit.edit();
    moved.conductor = ConductorSize::awg12;
    moved.splice = Splice::inPanel;
  }
  const auto none = wiringSpaceFigures(plan);
  ASSERT_EQ(none.size(), 1u);
  EXPECT_EQ(none.front().verdict, Verdict::notKnown);
  EXPECT_NEAR(none.front().area.count(), none.front().conductors * 0.0133, 1e-9);
  const double area = none.front().area.count();
  for (const auto& [space, verdict] :
       {std::pair(area / 0.40 + 1e-6, Verdict::within), std::pair(area / 0.40 - 1e-3, Verdict::over)}) {
    example::editPanel(plan, example::kMain).wiringSpace = SquareInches(space);
    const WiringSpaceFigures found = wiringSpaceFigures(plan).front();
    EXPECT_EQ(found.verdict, verdict);
    EXPECT_DOUBLE_EQ(found.allowed->count(), space * 0.40);
    EXPECT_DOUBLE_EQ(found.withSplices->count(), space * 0.75);
    EXPECT_TRUE(found.notKnown.empty());
  }
  // A size that nobody entered leaves it open, and says which.
  example::editCircuit(plan, example::circuitNamed(plan, "Lights")).conductor.reset();
  example::editPanel(plan, example::kMain).wiringSpace = SquareInches(6.0);
  const WiringSpaceFigures open = wiringSpaceFigures(plan).front();
  EXPECT_EQ(open.verdict, Verdict::notKnown);
  EXPECT_TRUE(feeder::says(open.notKnown, "wiring.raceway.no_size"));
}

TEST(Joints, AreListedBySize) {
  Plan plan = twoCablesOn(ConductorSize::awg14, 30, Answer::no);
  plan.circuits.front().edit().extension = ConductorSize::awg12;
  plan.circuits.front().edit().metal = Metal::aluminium;
  const std::vector<Joint> expected = {{ConductorSize::awg14, Metal::copper, ConductorSize::awg14, 2},
                                       {ConductorSize::awg14, Metal::aluminium, ConductorSize::awg12, 2}};
  EXPECT_EQ(joints(plan), expected);
}

}  // namespace
