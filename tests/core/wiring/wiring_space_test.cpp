// Room beside the breakers of a panel. Areas: NFPA 70 Chapter 9 Table 5 (THHN and XHHW), sizes of what is not
// entered: Table 310.16, aluminium, 60 C; grounds: Table 250.122. The share: 312.8(A)(1).

#include "core/wiring/wiring_space.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using Part = WiringSpaceContent::Part;

namespace {

constexpr double kThhn14 = 0.0097, kThhn8 = 0.0366, kXhhw14 = 0.0139, kXhhw12 = 0.0181, kXhhw8 = 0.0437,
                 kXhhw1_0 = 0.1825;
// Hot, neutral and ground of 14 AWG come in; 12 AWG with a 14 AWG ground goes on.
constexpr double kSpliced = 3 * kThhn14 + 2 * kXhhw12 + kXhhw14;
// A 30 A two-pole of which nobody read the wire: 8 AWG aluminium (10 AWG carries 25 A), ground 8 AWG.
constexpr double kStaying = 2 * kXhhw8 + kThhn8;
// A main of 100 A: 1/0 AWG aluminium (1 AWG carries 85 A), two hots and the neutral.
constexpr double kSupply = 3 * kXhhw1_0;

struct House {
  Plan plan = example::emptyHouse();
  CircuitId joined, staying;
  House() {
    example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(100);
    joined = example::addCircuit(plan, example::kMain, {Column::left, 1}, 1, 15, "Lights");
    staying = example::addCircuit(plan, example::kMain, {Column::left, 2}, 2, 30, "Water heater");
    example::moveByHand(plan, joined, example::kBackup, {Column::left, 1});
    Circuit& circuit = example::editCircuit(plan, joined);
    circuit.conductor = ConductorSize::awg14;
    circuit.extension = ConductorSize::awg12;
    circuit.extensionWire = WireType::xhhw2;
    circuit.splice = Splice::inPanel;
  }
  WiringSpaceFigures withSpace(double squareInches) {
    example::editPanel(plan, example::kMain).wiringSpace = SquareInches(squareInches);
    return only();
  }
  [[nodiscard]] WiringSpaceFigures only() const {
    const auto all = wiringSpaceFigures(plan, {});
    EXPECT_EQ(all.size(), 1u);
    return all.empty() ? WiringSpaceFigures{} : all.front();
  }
};

TEST(WiringSpace, CountsBothEndsOfAJointAndWhatStaysAndTheSupply) {
  const House house;
  const WiringSpaceFigures figures = house.only();
  EXPECT_EQ(figures.panel, example::kMain);
  EXPECT_EQ(figures.spliced, 6);
  EXPECT_NEAR(figures.splicedArea.count(), kSpliced, 1e-9);
  EXPECT_EQ(figures.conductors, 6 + 3 + 3);
  EXPECT_NEAR(figures.area.count(), kSpliced + kStaying + kSupply, 1e-9);
  for (const WiringSpaceContent& content : figures.contents)
    EXPECT_EQ(content.byRating, content.part != Part::spliced && content.wire == WireType::xhhw2);
  EXPECT_EQ(figures.verdict, Verdict::notKnown);
  EXPECT_TRUE(feeder::says(figures.notKnown, "wiring.space.no_space"));
}

TEST(WiringSpace, IsWithinOverOrByHowTheConductorsRun) {
  House house;
  const double all = kSpliced + kStaying + kSupply;
  struct Case {
    double space;
    Verdict verdict;
    bool byItsRun;
  };
  for (const Case& c :
       {Case{all / 0.40 + 1e-6, Verdict::within, false}, Case{all / 0.40 - 1e-3, Verdict::notKnown, true},
        Case{kSpliced / 0.40 + 1e-6, Verdict::notKnown, true},
        Case{kSpliced / 0.40 - 1e-3, Verdict::over, false}}) {
    const WiringSpaceFigures found = house.withSpace(c.space);
    EXPECT_EQ(found.verdict, c.verdict) << c.space;
    EXPECT_EQ(found.byItsRun, c.byItsRun) << c.space;
    EXPECT_EQ(feeder::says(found.notKnown, "wiring.space.its_run"), c.byItsRun) << c.space;
    EXPECT_DOUBLE_EQ(found.allowed->count(), c.space * 0.40);
    EXPECT_DOUBLE_EQ(found.withSplices->count(), c.space * 0.75);
  }
}

TEST(WiringSpace, ASizeOfASplicedCircuitThatNobodyEnteredLeavesItOpen) {
  House house;
  Circuit& circuit = example::editCircuit(house.plan, house.joined);
  circuit.conductor.reset();
  circuit.extension.reset();
  const WiringSpaceFigures open = house.withSpace(60.0);
  EXPECT_EQ(open.verdict, Verdict::notKnown);
  EXPECT_TRUE(feeder::says(open.notKnown, "wiring.raceway.no_size"));
  EXPECT_EQ(open.spliced, 6);
}

TEST(WiringSpace, ASizeThatIsEnteredTakesThePlaceOfTheRating) {
  House house;
  example::editCircuit(house.plan, house.staying).conductor = ConductorSize::awg10;
  // NFPA 70 Chapter 9 Table 5: 10 AWG THHN 0.0211 in2; the ground is not larger than its circuit's
  // conductors.
  EXPECT_NEAR(house.only().area.count(), kSpliced + 3 * 0.0211 + kSupply, 1e-9);
  example::editCircuit(house.plan, house.staying).ground = BranchGround::metal;
  EXPECT_NEAR(house.only().area.count(), kSpliced + 2 * 0.0211 + kSupply, 1e-9);
}

TEST(WiringSpace, GroundsFollowTheRaceway) {
  House house;
  Raceway raceway;
  raceway.id = {1};
  raceway.ground = GroundPath::raceway;
  house.plan.raceways.emplace_back(raceway);
  example::editCircuit(house.plan, house.joined).raceway = raceway.id;
  EXPECT_EQ(house.only().spliced, 5);
}

TEST(WiringSpace, WithoutAMainTheSupplyIsNotKnown) {
  House house;
  example::editPanel(house.plan, example::kMain).mainBreaker.reset();
  const WiringSpaceFigures open = house.withSpace(60.0);
  EXPECT_EQ(open.verdict, Verdict::notKnown);
  EXPECT_TRUE(feeder::says(open.notKnown, "wiring.space.no_supply"));
  // A main that stands in the panel's own spaces says it too.
  example::addBreaker(house.plan, example::kMain, {Column::right, 1}, 2, 100, Feeds::utility);
  EXPECT_EQ(house.withSpace(60.0).verdict, Verdict::within);
}

TEST(WiringSpace, TheFeederThatStartsHereIsInIt) {
  Plan plan = feeder::manualSwitch();
  Circuit& lights = example::editCircuit(plan, example::circuitNamed(plan, "Lights"));
  lights.conductor = ConductorSize::awg14;
  lights.splice = Splice::inPanel;
  const auto conductorsOf = [&](const std::vector<SegmentFigures>& segments) {
    int count = 0;
    const std::vector<WiringSpaceFigures> all = wiringSpaceFigures(plan, segments);
    for (const WiringSpaceContent& content : all.front().contents) {
      if (content.what == segmentName(Segment::mainToSwitch)) count += content.count;
    }
    return count;
  };
  SegmentFigures feeder;
  feeder.segment = Segment::mainToSwitch;
  feeder.conductor.size = feeder.neutral = ConductorSize::awg6;
  feeder.ground = ConductorSize::awg10;
  EXPECT_EQ(conductorsOf({feeder}), 4);
  EXPECT_EQ(conductorsOf({}), 0);
  feeder.conductor.size.reset();
  EXPECT_TRUE(stayalight::feeder::says(wiringSpaceFigures(plan, {feeder}).front().notKnown,
                                       "wiring.space.no_segment_size"));
}

TEST(WiringSpace, OfAPanelWithoutSplicesNothingIsSaid) {
  House house;
  example::editCircuit(house.plan, house.joined).splice = Splice::inBox;
  EXPECT_TRUE(wiringSpaceFigures(house.plan, {}).empty());
  example::editCircuit(house.plan, house.joined).splice = Splice::inPanel;
  house.plan.site.edit().country = Country::canada;
  EXPECT_TRUE(wiringSpaceFigures(house.plan, {}).empty());
}

}  // namespace
