// What each segment has to carry: expected amperes worked out by hand beside each case.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using namespace stayalight::feeder;

namespace {

void expectLoad(const SegmentLoad& load, double continuous, double other, double operating) {
  EXPECT_NEAR(load.continuous.value_or(AcAmperes()).count(), continuous, 1e-9);
  EXPECT_NEAR(load.other.value_or(AcAmperes()).count(), other, 1e-9);
  ASSERT_TRUE(load.operating);
  EXPECT_NEAR(load.operating->count(), operating, 1e-9);
}

TEST(SegmentLoads, UtilitySideIsTheCalculatedLoad) {
  const auto loads = loadsOf(manualSwitch());
  ASSERT_EQ(loads.size(), 3u);
  // 2,400 / 240 = 10 A continuous, 6,600 / 240 = 27.5 A other.
  expectLoad(at(loads, Segment::mainToSwitch), 10.0, 27.5, 37.5);
  EXPECT_TRUE(at(loads, Segment::mainToSwitch).complete);
}

TEST(SegmentLoads, InverterSideIsTheRatedOutput) {
  Plan plan = manualSwitch();
  expectLoad(at(loadsOf(plan), Segment::inverterToSwitch), 25.0, 0.0, 25.0);
  EXPECT_EQ(at(loadsOf(plan), Segment::inverterToSwitch).labelMaximum, RatingAmperes(40));

  // Without amperes on the label: 7,200 W over two legs of 120 V are 30 A; 7,200 VA of a leg cap of 4,000
  // W 33.3 A.
  plan.inverter.edit().legCurrent.reset();
  plan.inverter.edit().legContinuous.reset();
  plan.inverter.edit().continuous = Watts(7200);
  plan.inverter.edit().continuousApparent.reset();
  expectLoad(at(loadsOf(plan), Segment::inverterToSwitch), 30.0, 0.0, 30.0);
  plan.inverter.edit().legContinuous = Watts(4000);
  expectLoad(at(loadsOf(plan), Segment::inverterToSwitch), 4000.0 / 120.0, 0.0, 4000.0 / 120.0);
  plan.inverter.edit().legContinuous.reset();
  plan.inverter.edit().continuousApparent = VoltAmperes(8400);
  expectLoad(at(loadsOf(plan), Segment::inverterToSwitch), 35.0, 0.0, 35.0);
}

TEST(SegmentLoads, WireAfterTheSwitchTakesTheLargerSide) {
  Plan plan = manualSwitch();
  // Utility 1.25 x 10 + 27.5 = 40 A against inverter 1.25 x 25 = 31.25 A.
  expectLoad(at(loadsOf(plan), Segment::switchToBackup), 10.0, 27.5, 37.5);
  plan.inverter.edit().legCurrent = AcAmperes(36);
  // Now 45 A of the inverter; the load itself is still larger on the utility side, 37.5 against 36 A.
  expectLoad(at(loadsOf(plan), Segment::switchToBackup), 36.0, 0.0, 37.5);
}

TEST(SegmentLoads, PassThroughAddsChargingAsContinuous) {
  const auto loads = loadsOf(passThrough());
  ASSERT_EQ(loads.size(), 2u);
  // 3,000 W / 240 V = 12.5 A of charging on top of 10 A continuous.
  expectLoad(at(loads, Segment::mainToInverter), 22.5, 27.5, 50.0);
  // 40 A of the ordinary day against 31.25 A of the outage.
  expectLoad(at(loads, Segment::inverterToBackup), 10.0, 27.5, 37.5);
  EXPECT_TRUE(at(loads, Segment::inverterToBackup).complete);
}

TEST(SegmentLoads, OutputThatAddsToPassThroughCountsOnTop) {
  Plan plan = passThrough();
  plan.inverter.edit().addsToPassThrough = Answer::yes;
  expectLoad(at(loadsOf(plan), Segment::inverterToBackup), 35.0, 27.5, 62.5);
  plan.inverter.edit().addsToPassThrough = Answer::unknown;
  const auto loads = loadsOf(plan);
  EXPECT_FALSE(at(loads, Segment::inverterToBackup).complete);
  EXPECT_TRUE(says(at(loads, Segment::inverterToBackup).missing, "wiring.missing.adds"));
}

TEST(SegmentLoads, BesideASwitchTheInputOnlyCharges) {
  Plan plan = manualSwitch();
  example::addBreaker(plan, example::kMain, {Column::left, 9}, 2, 20, Feeds::inverterInput, Stage::fresh);
  const auto loads = loadsOf(plan);
  ASSERT_EQ(loads.size(), 4u);
  const SegmentLoad& input = at(loads, Segment::mainToInverter);
  expectLoad(input, 12.5, 0.0, 12.5);
  EXPECT_EQ(input.neutral, AcAmperes(0.0));
  EXPECT_NEAR(std::abs(input.legCurrent[0] + input.legCurrent[1]), 0.0, 1e-9);
  EXPECT_NEAR(std::abs(input.legCurrent[0]), 12.5, 1e-9);
  // The wire after the switch does not carry what charges the battery.
  expectLoad(at(loads, Segment::switchToBackup), 10.0, 27.5, 37.5);
}

TEST(SegmentLoads, ParallelUnitsAdd) {
  Plan plan = passThrough();
  plan.inverter.edit().units = 2;
  plan.inverter.edit().addsToPassThrough = Answer::yes;
  const auto loads = loadsOf(plan);
  expectLoad(at(loads, Segment::mainToInverter), 10.0 + 25.0, 27.5, 62.5);
  expectLoad(at(loads, Segment::inverterToBackup), 60.0, 27.5, 87.5);
  EXPECT_EQ(at(loads, Segment::inverterToBackup).labelMaximum, RatingAmperes(160));
}

TEST(SegmentLoads, WyeDividesByTheVoltsBetweenItsLegs) {
  Plan plan = manualSwitch();
  plan.site.edit().service = ServiceSystem::wye120_208;
  expectLoad(at(loadsOf(plan), Segment::mainToSwitch), 2400.0 / 208.0, 6600.0 / 208.0, 9000.0 / 208.0);
}

TEST(SegmentLoads, OneHundredTwentyVoltSourceCarriesAllOnOneLeg) {
  Plan plan = manualSwitch();
  plan.inverter.edit().output = InverterOutput::single120;
  plan.inverter.edit().legCurrent.reset();
  plan.inverter.edit().legContinuous.reset();
  expectLoad(at(loadsOf(plan), Segment::inverterToSwitch), 50.0, 0.0, 50.0);
}

TEST(SegmentLoads, WhatIsNotEnteredIsMissing) {
  Plan plan = manualSwitch();
  plan.transfer.edit().calculatedLoad.reset();
  auto loads = loadsOf(plan);
  EXPECT_FALSE(at(loads, Segment::mainToSwitch).operating);
  EXPECT_TRUE(says(at(loads, Segment::mainToSwitch).missing, "wiring.missing.calculated_load"));
  EXPECT_FALSE(at(loads, Segment::switchToBackup).complete);
  expectLoad(at(loads, Segment::switchToBackup), 25.0, 0.0, 25.0);
  plan.inverter.edit() = Inverter();
  loads = loadsOf(plan);
  EXPECT_TRUE(says(at(loads, Segment::inverterToSwitch).missing, "wiring.missing.rated_output"));
  EXPECT_FALSE(at(loads, Segment::switchToBackup).operating);

  Plan through = passThrough();
  through.inverter.edit().chargeLimit.reset();
  loads = loadsOf(through);
  EXPECT_TRUE(says(at(loads, Segment::mainToInverter).missing, "wiring.missing.charge_limit"));
}

TEST(SegmentLoads, ContinuousPartNeverExceedsTheLoad) {
  Plan plan = manualSwitch();
  plan.transfer.edit().continuousPart = VoltAmperes(20000);
  expectLoad(at(loadsOf(plan), Segment::mainToSwitch), 37.5, 0.0, 37.5);
}

// Worked out from the plan the load is that of the leg that asks for the larger device (core/demand), at 120
// V.
TEST(SegmentLoads, WithoutATypedLoadTheWorkedOutOneCounts) {
  Plan plan = calculated::house();
  for (const Segment segment : {Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup})
    addRun(plan, segment);
  calculated::load(plan, "Furnace").continuous = true;
  const FeederLoad feeder = feederOf(plan);
  ASSERT_TRUE(feeder.heavier);
  const double continuous = 720.0 / 120.0;  // the furnace, on L2
  const double all = (420.0 + 720.0 + 660.0 + 180.0) / 120.0;
  const auto loads = loadsOf(plan);
  expectLoad(at(loads, Segment::mainToSwitch), continuous, all - continuous, all);
  EXPECT_NEAR(at(loads, Segment::mainToSwitch).neutral->count(), 1320.0 / 120.0, 1e-9);
  EXPECT_TRUE(at(loads, Segment::mainToSwitch).complete);
  plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
  expectLoad(at(loadsOf(plan), Segment::mainToSwitch), 0.0, 37.5, 37.5);
}

TEST(SegmentLoads, NeutralIsTheTypedLoadElseTheWorstLeg) {
  Plan plan = manualSwitch();
  plan.transfer.edit().neutralLoad = VoltAmperes(3000);
  EXPECT_NEAR(at(loadsOf(plan), Segment::mainToSwitch).neutral->count(), 25.0, 1e-9);
  plan.transfer.edit().neutralLoad.reset();
  HourFigures hour;
  hour.neutralWorst = AcAmperes(17.0);
  FeederLoad feeder = feederOf(plan);
  EXPECT_FALSE(segmentLoads(plan, hour, LegPower(), inverterLimits(*plan.inverter), feeder)[0].neutral)
      << "behind a typed load: as large as the lines";
  feeder.typed = false;
  const auto loads = segmentLoads(plan, hour, LegPower(), inverterLimits(*plan.inverter), feeder);
  EXPECT_NEAR(loads[0].neutral->count(), 17.0, 1e-9);
  EXPECT_FALSE(
      segmentLoads(plan, HourFigures(), LegPower(), inverterLimits(*plan.inverter), feederOf(plan))[0]
          .neutral);
}

TEST(SegmentLoads, HeavierLegIsAtTheLoadAndTheOtherInProportion) {
  const Plan plan = manualSwitch();
  LegPower operating;
  operating.leg = {complexPower(Watts(1200), Fraction(1.0)), complexPower(Watts(480), Fraction(0.8))};
  operating.lineToNeutral = operating.leg;
  const auto loads =
      segmentLoads(plan, HourFigures(), operating, inverterLimits(*plan.inverter), feederOf(plan));
  const SegmentLoad& load = at(loads, Segment::mainToSwitch);
  // 10 A at unity on L1; 480 W at 0.8 are 600 VA, 5 A on L2: half of it.
  EXPECT_NEAR(std::abs(load.legCurrent[0]), 37.5, 1e-9);
  EXPECT_NEAR(std::abs(load.legCurrent[1]), 18.75, 1e-9);
  EXPECT_NEAR(load.legCurrent[1].real(), -18.75 * 0.8, 1e-9);
  EXPECT_NEAR(load.legCurrent[1].imag(), 18.75 * 0.6, 1e-9);
  // 10 A against (5 A, lagging): |10 - 4 + 3j| = 6.708 A.
  EXPECT_NEAR(load.neutralOperating.count(), std::hypot(6.0, 3.0), 1e-9);
}

TEST(SegmentLoads, ACalculatedLoadGivesTheLegsTheirShares) {
  const Plan plan = manualSwitch();
  LegPower operating;
  operating.leg = {complexPower(Watts(480), Fraction(0.8)), complexPower(Watts(1200), Fraction(1.0))};
  operating.lineToNeutral = operating.leg;
  FeederLoad feeder = feederOf(plan);
  feeder.legs = {{VoltAmperes(4500), VoltAmperes(1500)}};
  const auto loads = segmentLoads(plan, HourFigures(), operating, inverterLimits(*plan.inverter), feeder);
  const SegmentLoad& load = at(loads, Segment::mainToSwitch);
  // The calculation has L1 three times as heavy, whatever operates now; the angles are those of what
  // operates.
  EXPECT_NEAR(std::abs(load.legCurrent[0]), 37.5, 1e-9);
  EXPECT_NEAR(std::abs(load.legCurrent[1]), 12.5, 1e-9);
  EXPECT_NEAR(load.legCurrent[0].imag(), -37.5 * 0.6, 1e-9);
  EXPECT_NEAR(load.legCurrent[1].real(), -12.5, 1e-9);
}

TEST(SegmentLoads, WithoutKnownLoadsTheLegsAreInBalance) {
  const Plan plan = manualSwitch();
  const auto loads =
      segmentLoads(plan, HourFigures(), LegPower(), inverterLimits(*plan.inverter), feederOf(plan));
  EXPECT_NEAR(std::abs(loads[0].legCurrent[0] + loads[0].legCurrent[1]), 0.0, 1e-9);
  EXPECT_NEAR(std::abs(loads[0].legCurrent[0]), 37.5, 1e-9);
}

}  // namespace
