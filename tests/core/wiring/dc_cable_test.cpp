// The battery's cable against a published example.

#include "core/wiring/dc_cable.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;

namespace {

/// The inverter of the published example.
Plan published(const reference::WorkedExample& example) {
  Plan plan = example::emptyHouse();
  Inverter& inverter = plan.inverter.edit();
  inverter.units = 3;  // each unit has a cable of its own
  inverter.continuous = Watts(example.input("inverter_W"));
  inverter.efficiency = {};
  EfficiencyPoint point;
  point.load = Fraction(1.0);
  point.efficiency = Fraction(example.input("efficiency"));
  inverter.efficiency.push_back(point);
  inverter.lowestInputVoltage = DcVolts(example.input("lowest_battery_V"));
  DcCable& cable = plan.dcCable.edit();
  cable.length = Length::feet(example.input("cable_one_way_ft"));
  cable.insulation = Insulation::c60;
  cable.ambient = Temperature::celsius(example.input("ambient_C"));
  return plan;
}

TEST(DcCable, CurrentAndCableAtTheLowestVoltage) {
  const reference::WorkedExample example("S-36");
  const auto figures = dcCableFigures(published(example), Edition::y2023);
  ASSERT_TRUE(figures);
  example.expectNear("dc_A", figures->current->count());
  example.expectNear("ampacity_required_A", figures->required->count());
  EXPECT_DOUBLE_EQ(figures->conductor.ambientFactor->count(), example.input("ambient_factor_60C"));
  example.expectNear("ampacity_required_hot_A",
                     figures->required->count() / figures->conductor.ambientFactor->count());
  example.expectWord("conductor_60C", std::string(name(*figures->conductor.size)));
  EXPECT_EQ(figures->device, RatingAmperes(175));  // 240.6(A), next above 167.1 A
  EXPECT_EQ(figures->verdict, Verdict::within);
}

TEST(DcCable, DropGoesBothWays) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().fixedConductor = conductorSizeNamed(example.word("cable"));
  const auto figures = dcCableFigures(plan, Edition::y2023);
  example.expectNear("drop_V", figures->drop->count());
  example.expectNear("drop_pct_of_22V", *figures->dropFraction * 100.0);
  EXPECT_EQ(figures->verdict, Verdict::over);  // 2/0 does not carry it at 45 C
}

TEST(DcCable, InstructionsComeFirst) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().instructionsConductor = ConductorSize::kcmil400;
  plan.dcCable.edit().instructionsDevice = RatingAmperes(200);
  auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_EQ(figures->conductor.size, ConductorSize::kcmil400);
  EXPECT_EQ(figures->device, RatingAmperes(200));
  plan.dcCable.edit().instructionsDevice = RatingAmperes(150);
  EXPECT_TRUE(dcCableFigures(plan, Edition::y2023)->deviceTooSmall);
  plan.dcCable.edit().fixedConductor = ConductorSize::kcmil350;
  EXPECT_TRUE(dcCableFigures(plan, Edition::y2023)->belowInstructions);
}

// A larger cable of the instructions has the figures of its own row: 4/0 AWG carries 195 A at 60 C, 230 A at
// 75 C (Table 310.16).
TEST(DcCable, TheCableOfTheInstructionsHasItsOwnAmpacity) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().ambient = Temperature::celsius(30);
  plan.dcCable.edit().instructionsConductor = ConductorSize::kcmil300;
  auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_EQ(figures->conductor.size, ConductorSize::kcmil300);
  EXPECT_EQ(figures->conductor.ampacity, AcAmperes(240));  // 300 kcmil, 60 C
  EXPECT_TRUE(figures->byInstructions);
  EXPECT_EQ(figures->conductor.governs.id.key, "wiring.dc.by_instructions");
  // One smaller than the table asks for does not govern.
  plan.dcCable.edit().instructionsConductor = ConductorSize::awg8;
  figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_FALSE(figures->byInstructions);
  EXPECT_GT(*figures->conductor.size, ConductorSize::awg8);
}

TEST(DcCable, AFuseInPlaceIsHeldAgainstTheInstructions) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().instructionsDevice = RatingAmperes(175);
  plan.dcCable.edit().fixedDevice = RatingAmperes(200);
  const auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_TRUE(figures->aboveInstructions);
  EXPECT_EQ(figures->verdict, Verdict::over);
  plan.dcCable.edit().fixedDevice = RatingAmperes(175);
  EXPECT_FALSE(dcCableFigures(plan, Edition::y2023)->aboveInstructions);
}

TEST(DcCable, NoLengthAndUnknownLugsLeaveItOpen) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().fineStranded = Answer::yes;
  EXPECT_TRUE(feeder::says(dcCableFigures(plan, Edition::y2023)->notKnown, "wiring.dc.lugs_unknown"));
  plan.dcCable.edit().lugsListed = Answer::yes;
  EXPECT_EQ(dcCableFigures(plan, Edition::y2023)->verdict, Verdict::within);
  plan.dcCable.edit().length = Length();
  EXPECT_TRUE(feeder::says(dcCableFigures(plan, Edition::y2023)->notKnown, "wiring.dc.no_length"));
}

TEST(DcCable, InFreeAirTheInstructionsGiveBothParts) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().freeAir = Answer::yes;
  plan.dcCable.edit().instructionsConductor = ConductorSize::awg2_0;
  plan.dcCable.edit().instructionsDevice = RatingAmperes(175);
  auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_EQ(figures->verdict, Verdict::within);
  EXPECT_EQ(figures->conductor.size, ConductorSize::awg2_0);
  plan.dcCable.edit().fixedDevice = RatingAmperes(250);
  figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_TRUE(figures->conductor.notProtected);
  EXPECT_EQ(figures->verdict, Verdict::over);
}

TEST(DcCable, SingleCablesInFreeAirAreNotSizedByThatTable) {
  const reference::WorkedExample example("S-36");
  Plan plan = published(example);
  plan.dcCable.edit().freeAir = Answer::yes;
  const auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_FALSE(figures->conductor.size);
  EXPECT_EQ(figures->verdict, Verdict::notKnown);
  EXPECT_TRUE(feeder::says(figures->notKnown, "wiring.dc.free_air"));
}

TEST(DcCable, WhatIsMissingIsNamed) {
  Plan plan = example::emptyHouse();
  plan.inverter.edit() = Inverter{};
  EXPECT_FALSE(dcCableFigures(plan, Edition::y2023));
  plan.inverter.edit().continuous = Watts(6000);
  const auto figures = dcCableFigures(plan, Edition::y2023);
  EXPECT_TRUE(feeder::says(figures->notKnown, "wiring.dc.no_voltage"));
  EXPECT_TRUE(feeder::says(figures->notKnown, "wiring.dc.no_efficiency"));
  EXPECT_EQ(figures->verdict, Verdict::notKnown);
  plan.site.edit().country = Country::canada;
  EXPECT_FALSE(dcCableFigures(plan, Edition::y2023));
}

}  // namespace
