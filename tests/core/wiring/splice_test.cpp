// Volume of splice boxes, connectors.

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

TEST(SpliceBox, TheNeutralOfHalfAPairCountsInItsBoxWhicheverHalfItIs) {
  // NFPA 70 314.16(B)(1): each conductor that is spliced in the box. The other half is joined elsewhere.
  for (const std::size_t elsewhere : {0u, 1u}) {
    Plan plan = twoCablesOn(ConductorSize::awg12, 30, Answer::no);
    for (auto& circuit : plan.circuits) circuit.edit().multiwire = 3;
    plan.circuits[elsewhere].edit().splice = Splice::inPanel;
    double count = 0;
    for (const BoxLine& line : only(plan).lines) count += line.count;
    EXPECT_DOUBLE_EQ(count, 2 * 2 + 1 + 2) << elsewhere;  // hot and neutral in and out, grounds, yoke
    EXPECT_EQ(joints(plan).front().count, 4);             // a neutral at each of the two places
  }
}

TEST(SpliceBox, WithoutAMarkItIsNotKnown) {
  Plan plan = twoCablesOn(ConductorSize::awg12, 30, Answer::no);
  plan.spliceBoxes.front().edit().volume.reset();
  EXPECT_EQ(only(plan).verdict, Verdict::notKnown);
  EXPECT_EQ(only(plan).notKnown.front().id.key, "wiring.box.no_volume");
}

TEST(SpliceBox, OldCableWithoutAGroundBringsNone) {
  Plan plan = twoCablesOn(ConductorSize::awg12, 30, Answer::no);
  const auto counts = [&] {
    double count = 0;
    for (const BoxLine& line : only(plan, Edition::y2023).lines) count += line.count;
    return count;
  };
  // Two grounds more would be four in all: still the one volume of 314.16(B)(5). A fifth costs a quarter.
  const double four = counts();
  const CircuitId third = example::addCircuit(plan, example::kBackup, {Column::left, 3}, 1, 20, "Third");
  Circuit& circuit = example::editCircuit(plan, third);
  circuit.conductor = ConductorSize::awg12;
  circuit.splice = Splice::inBox;
  circuit.spliceBox = {1};
  EXPECT_DOUBLE_EQ(counts(), four + 4 + 0.5);
  circuit.ground = BranchGround::none;
  EXPECT_DOUBLE_EQ(counts(), four + 4 + 0.25);
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
