// What shares a raceway: area, count, ampacity of each moved circuit.

#include "core/wiring/raceway.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;
using namespace stayalight::feeder;

namespace {

RacewayId addRaceway(Plan& plan, RacewayType type, TradeSize size, double feet, GroundPath ground) {
  Raceway raceway;
  raceway.id = nextRacewayId(plan);
  raceway.name = "Pipe";
  raceway.type = type;
  raceway.size = size;
  raceway.length = Length::feet(feet);
  raceway.ground = ground;
  plan.raceways.emplace_back(raceway);
  return raceway.id;
}

/// A circuit on a new breaker of the backup subpanel, through the raceway, with singles.
CircuitId through(Plan& plan, RacewayId raceway, SpacePosition place, int poles, int amperes,
                  VoltageClass voltage, ConductorSize size) {
  const CircuitId id = example::addCircuit(plan, example::kBackup, place, poles, amperes,
                                           "Circuit " + std::to_string(plan.circuits.size() + 1));
  Circuit& circuit = example::editCircuit(plan, id);
  circuit.voltage = voltage;
  circuit.conductor = size;
  circuit.splice = Splice::inPanel;
  circuit.raceway = raceway;
  circuit.severalReceptacles = Answer::yes;
  return id;
}

Plan bare() {
  Plan plan = example::emptyHouse();
  example::editPanel(plan, example::kBackup).spaces = 24;
  example::editPanel(plan, example::kBackup).terminals75 = Answer::yes;
  return plan;
}

RacewayFigures only(const Plan& plan) {
  const std::vector<RacewayFigures> all = racewayFigures(plan, {}, Edition::y2023);
  EXPECT_EQ(all.size(), 1u);
  return all.front();
}

TEST(Raceway, ThreeOfEachInMetalTubing) {
  const reference::WorkedExample example("S-21");
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 10, GroundPath::raceway);
  through(plan, pipe, {Column::left, 1}, 2, 40, VoltageClass::v120_240, ConductorSize::awg8);
  through(plan, pipe, {Column::right, 1}, 2, 50, VoltageClass::v120_240, ConductorSize::awg6);
  const RacewayFigures figures = only(plan);
  EXPECT_EQ(figures.conductors, 6);
  example.expectNear("total_area_in2", figures.area.count());
  example.expectNear("min_raceway_total_area_in2", figures.area.count() / 0.40);
  example.expectNear("fill_pct_in_selected", figures.area.count() / figures.inside.count() * 100.0);
  example.expectWord("trade_size", std::string(Choice<TradeSize>(*figures.smallest).word()));
  EXPECT_EQ(figures.fill, Verdict::within);
  // The neutral of a 120/240 V circuit carries the difference only.
  EXPECT_EQ(figures.carrying.most(), 4);
}

TEST(Raceway, FourTwoWireCircuitsKeepTheirBreakersAndFiveDoNot) {
  // NFPA 70 Table 310.15(C)(1) and 310.16: 12 AWG at 90 C is 30 A; 8 conductors 70 % = 21 A, 10 conductors
  // 50 % = 15 A, on breakers of 20 A with several receptacles.
  for (const int circuits : {4, 5}) {
    Plan plan = bare();
    const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
    for (int i = 0; i < circuits; ++i)
      through(plan, pipe, {Column::left, i + 1}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
    const RacewayFigures figures = only(plan);
    EXPECT_EQ(figures.carrying.most(), 2 * circuits);
    EXPECT_EQ(figures.conductors, 2 * circuits + 1);
    for (const RacewayBranch& branch : figures.branches) {
      EXPECT_NEAR(branch.ampacity.governing->count(), circuits == 4 ? 21.0 : 15.0, 1e-9);
      EXPECT_EQ(branch.protection, circuits == 4 ? BranchProtection::holds : BranchProtection::over);
    }
    EXPECT_EQ(figures.verdict, circuits == 4 ? Verdict::within : Verdict::over);
  }
}

TEST(Raceway, ANippleIsNotAdjustedAndMayBeFuller) {
  // NFPA 70 310.15(C)(1)(b) and Chapter 9 Note 4: 24 in or less.
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::threeQuarters, 2, GroundPath::oneWire);
  for (int i = 0; i < 8; ++i)
    through(plan, pipe, {Column::left, i + 1}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
  RacewayFigures figures = only(plan);
  EXPECT_TRUE(figures.nipple);
  EXPECT_EQ(figures.verdict, Verdict::within);  // 17 x 0.0133 = 0.226 in2, 60 % of 0.533 = 0.320
  EXPECT_NEAR(figures.branches.front().ampacity.governing->count(), 25.0, 1e-9);
  plan.raceways.front().edit().length = Length::inches(24.5);
  figures = only(plan);
  EXPECT_FALSE(figures.nipple);
  EXPECT_EQ(figures.fill, Verdict::over);  // 40 % = 0.213
  EXPECT_EQ(figures.smallest, TradeSize::one);
  EXPECT_NEAR(figures.branches.front().ampacity.derated->count(), 15.0, 1e-9);
  // Not measured counts as longer.
  plan.raceways.front().edit().length = {};
  EXPECT_FALSE(only(plan).nipple);
}

TEST(Raceway, SharedNeutralsCountOnAWyeOnly) {
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  for (const int row : {1, 2}) {
    const CircuitId id =
        through(plan, pipe, {Column::left, row}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
    example::editCircuit(plan, id).multiwire = 7;
  }
  EXPECT_EQ(carryingCount(plan, pipe).most(), 2);  // 310.15(E)(1)
  EXPECT_EQ(only(plan).conductors, 4);             // two hots, one neutral, one ground
  plan.site.edit().service = ServiceSystem::wye120_208;
  EXPECT_EQ(carryingCount(plan, pipe).most(), 3);  // 310.15(E)(2)
  plan.site.edit().service = ServiceSystem::splitPhase120_240;
  // Both hots on one leg: the neutral carries their sum.
  example::editBreaker(plan, plan.circuits.back()->planned).row = 3;
  EXPECT_EQ(carryingCount(plan, pipe).most(), 3);
}

TEST(Raceway, ApartFromItsPartnerANeutralCarriesAllOfItsHalf) {
  // NFPA 70 310.15(E): only a neutral that carries the difference alone does not count.
  Plan plan = bare();
  const RacewayId one = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  const RacewayId two = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  for (const int row : {1, 2}) {
    const CircuitId id = through(plan, row == 1 ? one : two, {Column::left, row}, 1, 20, VoltageClass::v120,
                                 ConductorSize::awg12);
    example::editCircuit(plan, id).multiwire = 7;
  }
  EXPECT_EQ(carryingCount(plan, one).most(), 2);
  EXPECT_EQ(carryingCount(plan, two).most(), 2);
}

TEST(Raceway, WhatHasNoAreaLeavesTheSizeOpen) {
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  const CircuitId id =
      through(plan, pipe, {Column::left, 1}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
  EXPECT_TRUE(only(plan).smallest);
  example::editCircuit(plan, id).conductor.reset();
  EXPECT_FALSE(only(plan).smallest);
}

TEST(Raceway, FeedersThatAreNeverLiveTogetherAreNotCountedTogether) {
  Plan plan = manualSwitch();
  const RacewayId pipe = addRaceway(plan, RacewayType::pvc40, TradeSize::two, 6, GroundPath::oneWire);
  editRun(plan, Segment::mainToSwitch).inRaceway = pipe;
  editRun(plan, Segment::inverterToSwitch).inRaceway = pipe;
  EXPECT_EQ(carryingCount(plan, pipe).ordinary, 2);
  EXPECT_EQ(carryingCount(plan, pipe).outage, 2);
  EXPECT_EQ(carryingCount(plan, pipe).most(), 2);
  editRun(plan, Segment::switchToBackup).inRaceway = pipe;
  EXPECT_EQ(carryingCount(plan, pipe).most(), 4);
  const std::vector<RacewayFigures> all = racewayFigures(plan, figuresOf(plan), Edition::y2023);
  EXPECT_EQ(all.front().conductors, 10);  // three times two hots and a neutral, one ground
  EXPECT_TRUE(all.front().notKnown.empty());
}

TEST(Raceway, TheCountOfARacewayAdjustsTheFeederInIt) {
  Plan plan = manualSwitch();
  const RacewayId pipe = addRaceway(plan, RacewayType::pvc40, TradeSize::two, 6, GroundPath::oneWire);
  editRun(plan, Segment::mainToSwitch).inRaceway = pipe;
  editRun(plan, Segment::mainToSwitch).currentCarrying = 2;
  EXPECT_DOUBLE_EQ(at(figuresOf(plan), Segment::mainToSwitch).conductor.adjustmentFactor->count(), 1.0);
  plan.raceways.front().edit().otherCarrying = 6;
  EXPECT_DOUBLE_EQ(at(figuresOf(plan), Segment::mainToSwitch).conductor.adjustmentFactor->count(), 0.70);
}

// 310.15(B): one ambient for all in one pipe. 6 AWG copper at 90 C: 75 A x 0.82 at 50 C.
TEST(Raceway, TheHotterAmbientHoldsForTheFeederInIt) {
  Plan plan = manualSwitch();
  const RacewayId pipe = addRaceway(plan, RacewayType::pvc40, TradeSize::two, 6, GroundPath::oneWire);
  FeederRun& run = editRun(plan, Segment::mainToSwitch);
  run.inRaceway = pipe;
  run.fixedConductor = ConductorSize::awg6;
  const auto derated = [&] { return at(figuresOf(plan), Segment::mainToSwitch).conductor.deratedAmpacity; };
  EXPECT_DOUBLE_EQ(derated()->count(), 75.0);
  plan.raceways.front().edit().ambient = Temperature::celsius(50);
  EXPECT_DOUBLE_EQ(derated()->count(), 75.0 * 0.82);
  editRun(plan, Segment::mainToSwitch).ambient = Temperature::celsius(60);
  EXPECT_DOUBLE_EQ(derated()->count(), 75.0 * 0.71);
}

// 250.122(B): 12 AWG made 8 AWG behind 20 A: 6,530 x 16,510 / 6,530 cmil is 8 AWG.
TEST(Raceway, TheGroundGrowsWithAnExtensionMadeLarger) {
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 30, GroundPath::oneWire);
  const CircuitId id =
      through(plan, pipe, {Column::left, 1}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
  const auto ground = [&] {
    const RacewayFigures figures = only(plan);
    for (const RacewayContent& content : figures.contents) {
      if (content.role == RacewayContent::Role::ground) return content.size;
    }
    return std::optional<ConductorSize>();
  };
  EXPECT_EQ(ground(), ConductorSize::awg12);
  example::editCircuit(plan, id).extension = ConductorSize::awg8;
  EXPECT_EQ(ground(), ConductorSize::awg8);
}

TEST(Raceway, WhatIsNotKnownIsNamedAndNeverWithin) {
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  const CircuitId id =
      through(plan, pipe, {Column::left, 1}, 1, 20, VoltageClass::v120, ConductorSize::awg12);
  example::editCircuit(plan, id).conductor.reset();
  EXPECT_TRUE(says(only(plan).notKnown, "wiring.raceway.no_size"));
  EXPECT_EQ(only(plan).verdict, Verdict::notKnown);
  // The cable itself runs on: it counts as one conductor of its width (Chapter 9 Note 9).
  example::editCircuit(plan, id).splice = Splice::none;
  example::editCircuit(plan, id).wiring = WiringMethod::nmCable;
  EXPECT_TRUE(says(only(plan).notKnown, "wiring.raceway.no_width"));
  example::editCircuit(plan, id).cableWidth = Length::inches(0.4);
  EXPECT_EQ(only(plan).conductors, 1);
  EXPECT_EQ(only(plan).fill, Verdict::within);
}

TEST(Raceway, PlasticIsNoGround) {
  Plan plan = bare();
  addRaceway(plan, RacewayType::pvc40, TradeSize::one, 6, GroundPath::raceway);
  EXPECT_TRUE(only(plan).plasticGround);
  EXPECT_EQ(only(plan).verdict, Verdict::over);
}

TEST(Raceway, ConductorsOfOneSizeRoundUpFromFourFifths) {
  // Chapter 9 Note 7. 14 AWG in 1/2 EMT: 0.304 x 40 % / 0.0097 = 12.5, twelve.
  Plan plan = bare();
  const RacewayId pipe = addRaceway(plan, RacewayType::emt, TradeSize::half, 10, GroundPath::raceway);
  for (int i = 0; i < 6; ++i)
    through(plan, pipe, {Column::left, i + 1}, 1, 15, VoltageClass::v120, ConductorSize::awg14);
  EXPECT_EQ(only(plan).fill, Verdict::within);  // twelve
  through(plan, pipe, {Column::left, 7}, 2, 15, VoltageClass::v240, ConductorSize::awg14);
  EXPECT_EQ(only(plan).fill, Verdict::over);
  // 6 AWG in 1-1/4 EMT: 1.496 x 40 % / 0.0507 = 11.8, which goes up to 12.
  Plan large = bare();
  const RacewayId pipeTwo =
      addRaceway(large, RacewayType::emt, TradeSize::oneQuarter, 10, GroundPath::raceway);
  for (int i = 0; i < 4; ++i)
    through(large, pipeTwo, {Column::left, 2 * i + 1}, 2, 50, VoltageClass::v120_240, ConductorSize::awg6);
  EXPECT_EQ(only(large).conductors, 12);
  EXPECT_EQ(only(large).fill, Verdict::within);
}

// NFPA 70 Annex C, Tables C.1 (EMT), C.10 (rigid PVC schedule 40) and C.9 (schedule 80), THHN and THWN-2 of
// one size: the most in trade sizes 1/2 to 2. Typed from memory; they follow from Chapter 9 Tables 1, 4 and 5
// with Note 7.
struct AnnexRow {
  RacewayType type;
  ConductorSize size;
  std::array<int, 6> most;
};
constexpr AnnexRow kAnnexC[] = {
    {RacewayType::emt, ConductorSize::awg14, {12, 22, 35, 61, 84, 138}},
    {RacewayType::emt, ConductorSize::awg12, {9, 16, 26, 45, 61, 101}},
    {RacewayType::emt, ConductorSize::awg10, {5, 10, 16, 28, 38, 63}},
    {RacewayType::emt, ConductorSize::awg8, {3, 6, 9, 16, 22, 36}},
    {RacewayType::emt, ConductorSize::awg6, {2, 4, 7, 12, 16, 26}},
    {RacewayType::emt, ConductorSize::awg4, {1, 2, 4, 7, 10, 16}},
    {RacewayType::emt, ConductorSize::awg3, {1, 1, 3, 6, 8, 13}},
    {RacewayType::emt, ConductorSize::awg2, {1, 1, 3, 5, 7, 11}},
    {RacewayType::emt, ConductorSize::awg1, {1, 1, 1, 4, 5, 8}},
    {RacewayType::pvc40, ConductorSize::awg14, {11, 21, 34, 60, 82, 135}},
    {RacewayType::pvc40, ConductorSize::awg12, {8, 15, 25, 43, 59, 99}},
    {RacewayType::pvc40, ConductorSize::awg10, {5, 9, 15, 27, 37, 62}},
    {RacewayType::pvc40, ConductorSize::awg8, {3, 5, 9, 16, 21, 36}},
    {RacewayType::pvc40, ConductorSize::awg6, {1, 4, 6, 11, 15, 26}},
    {RacewayType::pvc40, ConductorSize::awg4, {1, 2, 4, 7, 9, 16}},
    {RacewayType::pvc80, ConductorSize::awg14, {9, 17, 28, 51, 70, 118}},
    {RacewayType::pvc80, ConductorSize::awg12, {6, 12, 20, 37, 51, 86}},
    {RacewayType::pvc80, ConductorSize::awg10, {4, 7, 13, 23, 32, 54}},
    {RacewayType::pvc80, ConductorSize::awg8, {2, 4, 7, 13, 18, 31}},
    {RacewayType::pvc80, ConductorSize::awg6, {1, 3, 5, 9, 13, 22}},
};
TEST(Raceway, TakesAsManyOfOneSizeAsAnnexC) {
  const auto fill = [](const AnnexRow& row, std::size_t trade, int conductors) {
    Plan plan = bare();
    // The ground is left to the tubing here, whatever it is made of: fill alone is asked.
    const RacewayId pipe = addRaceway(plan, row.type, static_cast<TradeSize>(trade), 10, GroundPath::raceway);
    for (int i = 0; i < conductors / 2; ++i)
      through(plan, pipe, {Column::left, 2 * i + 1}, 2, 15, VoltageClass::v240, row.size);
    return only(plan).fill;
  };
  for (const AnnexRow& row : kAnnexC) {
    for (std::size_t trade = 0; trade < row.most.size(); ++trade) {
      // Two at a time: the largest even count within, the next one over.
      const int most = row.most[trade] / 2 * 2;
      const std::string where = std::string(name(row.size)) + " in " +
                                std::string(Choice<TradeSize>(static_cast<TradeSize>(trade)).word()) + " " +
                                std::string(Choice<RacewayType>(row.type).word());
      if (most > 0) {
        EXPECT_EQ(fill(row, trade, most), Verdict::within) << most << " x " << where;
      }
      EXPECT_EQ(fill(row, trade, most + 2), Verdict::over) << most + 2 << " x " << where;
    }
  }
}

TEST(Raceway, ACanadianSiteHasNone) {
  Plan plan = bare();
  addRaceway(plan, RacewayType::emt, TradeSize::one, 6, GroundPath::oneWire);
  plan.site.edit().country = Country::canada;
  EXPECT_TRUE(racewayFigures(plan, {}, Edition::y2023).empty());
}

}  // namespace
