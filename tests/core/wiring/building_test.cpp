// What a building apart is asked for: NFPA 70 250.32, 225.31, 225.39 (figures from memory, see the tables).

#include "core/wiring/building.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using feeder::editRun;

namespace {

Plan apart() {
  Plan plan = feeder::manualSwitch();
  example::editPanel(plan, example::kBackup).separateBuilding = true;
  return plan;
}
BuildingFigures only(const Plan& plan) {
  const auto all = buildingFigures(plan, feeder::figuresOf(plan));
  EXPECT_EQ(all.size(), 1U);
  return all.empty() ? BuildingFigures() : all.front();
}
void keepCircuits(Plan& plan, int count) {
  int kept = 0;
  for (auto& circuit : plan.circuits) {
    if (backedUp(plan, *circuit) && kept++ >= count) circuit.edit().planned = {};
  }
}

TEST(Building, OnlyPanelsApartAndTheFirstThere) {
  EXPECT_TRUE(panelsApart(feeder::manualSwitch()).empty());
  Plan plan = apart();
  ASSERT_EQ(panelsApart(plan).size(), 1U);
  EXPECT_EQ(panelsApart(plan).front()->id, example::kBackup);
  // The panel ahead stands there too: the feeder between the two is no feeder between buildings.
  example::editPanel(plan, example::kMain).separateBuilding = true;
  plan.transfer.edit().serviceBondUpstream = Answer::yes;
  ASSERT_EQ(panelsApart(plan).size(), 1U);
  EXPECT_EQ(panelsApart(plan).front()->id, example::kMain);
  // A service panel is where its building's service is.
  plan.transfer.edit().serviceBondUpstream = Answer::no;
  EXPECT_EQ(panelsApart(plan).front()->id, example::kBackup);
  plan.site.edit().country = Country::canada;
  EXPECT_TRUE(buildingFigures(plan, {}).empty());
}

TEST(Building, ADisconnectGoesByTheCircuits) {
  // 225.39: 15 A for one circuit, 30 A for two of two wires, 60 A otherwise.
  for (const auto& [circuits, least] :
       {std::pair{1, 15}, std::pair{2, 30}, std::pair{3, 60}, std::pair{9, 60}}) {
    Plan plan = apart();
    keepCircuits(plan, circuits);
    for (auto& circuit : plan.circuits) circuit.edit().voltage = VoltageClass::v120;
    EXPECT_EQ(only(plan).leastDisconnect, RatingAmperes(least)) << circuits;
    // Two circuits of which one has three wires are no two-wire circuits.
    if (circuits != 2) continue;
    for (auto& circuit : plan.circuits) circuit.edit().voltage = VoltageClass::v120_240;
    EXPECT_EQ(only(plan).leastDisconnect, RatingAmperes(60));
  }
  Plan plan = apart();
  Panel& panel = example::editPanel(plan, example::kBackup);
  panel.mainBreaker = RatingAmperes(50);
  EXPECT_TRUE(only(plan).mainBelowLeast);
  EXPECT_EQ(only(plan).disconnect, Answer::yes);
  panel.mainBreaker = RatingAmperes(60);
  EXPECT_FALSE(only(plan).mainBelowLeast);
  panel.mainBreaker.reset();
  EXPECT_EQ(only(plan).disconnect, Answer::unknown);
  panel.buildingDisconnect = Answer::no;
  EXPECT_EQ(only(plan).disconnect, Answer::no);
}

TEST(Building, TheFeederBringsItsOwnGround) {
  Plan plan = apart();
  EXPECT_EQ(only(plan).ownGround, Answer::yes);  // it is chosen here
  FeederRun& run = editRun(plan, Segment::mainToSwitch);
  run.fixedConductor = ConductorSize::awg4;
  EXPECT_EQ(only(plan).ownGround, Answer::unknown);
  run.fixedGround = ConductorSize::awg10;
  EXPECT_EQ(only(plan).ownGround, Answer::yes);
  run.fixedGround.reset();
  run.raceway = RacewayKind::steel;  // 250.118: the pipe is the ground
  EXPECT_EQ(only(plan).ownGround, Answer::yes);
  run.wiring = FeederWiring::serviceEntranceCable;  // with three wires or four
  EXPECT_EQ(only(plan).ownGround, Answer::unknown);
  run.wiring = FeederWiring::nmCable;
  EXPECT_EQ(only(plan).ownGround, Answer::yes);
}

TEST(Building, TheElectrodeConductorGoesByTheLargestSupplyConductor) {
  Plan plan = apart();
  EXPECT_EQ(only(plan).electrodeConductor, ConductorSize::awg8);
  editRun(plan, Segment::switchToBackup).fixedConductor = ConductorSize::awg2_0;
  EXPECT_EQ(only(plan).supply, ConductorSize::awg2_0);
  EXPECT_EQ(only(plan).electrodeConductor, ConductorSize::awg4);
  editRun(plan, Segment::switchToBackup).metal = Metal::aluminium;
  EXPECT_EQ(only(plan).electrodeConductor, ConductorSize::awg6);
}

TEST(Building, TheDropIsThatOfTheWholeWay) {
  const Plan plan = apart();
  const auto segments = feeder::figuresOf(plan);
  const BuildingFigures building = buildingFigures(plan, segments).front();
  const auto heavier = [&](Segment first) {
    const auto& a = feeder::at(segments, first).drop->fraction;
    const auto& b = feeder::at(segments, Segment::switchToBackup).drop->fraction;
    return std::max(a[0] + b[0], a[1] + b[1]);
  };
  ASSERT_TRUE(building.drop);
  EXPECT_DOUBLE_EQ(*building.drop,
                   std::max(heavier(Segment::mainToSwitch), heavier(Segment::inverterToSwitch)));
  EXPECT_GT(*building.drop, feeder::at(segments, Segment::switchToBackup).drop->fraction[0]);
  // What charges the battery beside the switch is not on the way.
  Plan charging = plan;
  example::addBreaker(charging, example::kMain, {Column::right, 9}, 2, 30, Feeds::inverterInput,
                      Stage::fresh);
  editRun(charging, Segment::mainToInverter).length = Length::feet(300);
  EXPECT_EQ(only(charging).pieces, building.pieces);
  EXPECT_NEAR(*only(charging).drop, *building.drop, 1e-9);
  Plan unknown = plan;
  editRun(unknown, Segment::inverterToSwitch).length = Length();
  EXPECT_FALSE(only(unknown).drop);
}

TEST(Building, CircuitsThatChangeTheBuildingCross) {
  Plan plan = apart();
  const Circuit& moved = *find(plan, example::circuitNamed(plan, "Refrigerator"));
  EXPECT_TRUE(crossesBuildings(plan, moved));
  EXPECT_FALSE(crossesBuildings(plan, *find(plan, example::circuitNamed(plan, "Counter A"))));  // stays
  EXPECT_FALSE(crossesBuildings(feeder::manualSwitch(), moved));
}

}  // namespace
