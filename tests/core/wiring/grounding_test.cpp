#include "core/wiring/grounding.h"

#include <gtest/gtest.h>

#include "tests/reference/worked_examples.h"

using namespace stayalight;
using reference::WorkedExample;

namespace {

std::string sizeOf(const SizeAndReason& result) {
  return result.size ? std::string(name(*result.size)) : "none";
}

GroundingQuestion question(int device, const std::string& required, const std::string& there,
                           Metal metal = Metal::copper) {
  GroundingQuestion q;
  q.device = RatingAmperes(device);
  q.required = conductorSizeNamed(required);
  q.conductor = conductorSizeNamed(there);
  q.metal = metal;
  return q;
}

class PublishedUpsizing : public testing::TestWithParam<const char*> {};

TEST_P(PublishedUpsizing, GrowsInProportionOfCircularMils) {
  const WorkedExample example(GetParam());
  const int device = static_cast<int>(example.input("ocpd_A"));
  const std::string original = example.word("original");
  example.expectWord("base_egc",
                     sizeOf(groundingConductorFor(question(device, original, original), Edition::y2023)));
  Working working;
  example.expectWord("egc",
                     sizeOf(groundingConductorFor(question(device, original, example.word("increased")),
                                                  Edition::y2023, &working)));
  ASSERT_EQ(working.steps().size(), 2u);  // as it grows, and held against the conductors
  const Step& step = working.steps()[0];
  example.expectNear("required_cmil", step.result);
  example.expectNear("ratio", step.inputs[1].value / step.inputs[2].value);
}
INSTANTIATE_TEST_SUITE_P(Examples, PublishedUpsizing, testing::Values("S-15", "S-16"));

// Table 250.122: 60 A 10 AWG copper, 100 A 8 AWG; aluminium two sizes up.
TEST(GroundingConductor, FollowsTheTable) {
  EXPECT_EQ(sizeOf(groundingConductorFor(question(60, "4", "4"), Edition::y2023)), "10");
  EXPECT_EQ(sizeOf(groundingConductorFor(question(100, "1", "1"), Edition::y2023)), "8");
  EXPECT_EQ(sizeOf(groundingConductorFor(question(40, "6", "6", Metal::aluminium), Edition::y2023)), "8");
}

TEST(GroundingConductor, IsNeverLargerThanTheConductors) {
  // 8 AWG raised to 2 AWG behind 40 A: 10380 x 66360 / 16510 = 41721 cmil is 4 AWG; well within.
  EXPECT_EQ(sizeOf(groundingConductorFor(question(40, "8", "2"), Edition::y2023)), "4");
  // 14 AWG raised to 12 behind 15 A: 14 AWG grows with it to 12 and no further.
  EXPECT_EQ(sizeOf(groundingConductorFor(question(15, "14", "12"), Edition::y2023)), "12");
  // A 45 A device on a 10 AWG motor circuit: the table's 10 AWG; on 12 AWG no more than that.
  EXPECT_EQ(sizeOf(groundingConductorFor(question(45, "12", "12"), Edition::y2023)), "12");
}

TEST(GroundingConductor, SmallerConductorThanRequiredDoesNotShrinkIt) {
  EXPECT_EQ(sizeOf(groundingConductorFor(question(100, "1", "3"), Edition::y2023)), "8");
}

TEST(GroundingConductor, FixedOneIsChecked) {
  GroundingQuestion q = question(60, "6", "4");
  q.fixed = ConductorSize::awg10;
  // 10 380 x 41 740 / 26 240 = 16 511 cmil: 8 AWG has 16 510, so 6 AWG is needed.
  SizeAndReason result = groundingConductorFor(q, Edition::y2023);
  EXPECT_TRUE(result.tooSmall);
  EXPECT_EQ(sizeOf(result), "10");
  q.fixed = ConductorSize::awg6;
  result = groundingConductorFor(q, Edition::y2023);
  EXPECT_FALSE(result.tooSmall);
}

TEST(GroundingConductor, UnknownDeviceAndBeyondTheTable) {
  EXPECT_EQ(sizeOf(groundingConductorFor({}, Edition::y2023)), "none");
  EXPECT_EQ(sizeOf(groundingConductorFor(question(600, "500", "500"), Edition::y2023)), "none");
}

// ---- neutral

NeutralQuestion neutral(double load, double operating, int device, const std::string& conductor) {
  NeutralQuestion q;
  q.load = AcAmperes(load);
  q.operating = AcAmperes(operating);
  q.device = RatingAmperes(device);
  q.conductor = conductorSizeNamed(conductor);
  return q;
}

TEST(Neutral, TakesTheWorseLegNotTheDifference) {
  // 33 A on one leg alone: 8 AWG at 60 C (40 A), whatever the legs' difference is.
  const SizeAndReason result = neutralFor(neutral(33, 5, 50, "6"), Edition::y2023);
  EXPECT_EQ(sizeOf(result), "8");
  EXPECT_EQ(result.governs.id, MessageId{"wiring.neutral.leg_load"});
}

TEST(Neutral, IsNotBelowTheGroundingTable) {
  // 215.2(B) with Table 250.122: 100 A asks for 8 AWG even where the neutral carries next to nothing.
  const SizeAndReason result = neutralFor(neutral(4, 1, 100, "1"), Edition::y2023);
  EXPECT_EQ(sizeOf(result), "8");
  EXPECT_EQ(result.governs.id, MessageId{"wiring.neutral.minimum"});
}

TEST(Neutral, PhasorOfUnequalPowerFactorsCanGovern) {
  // 30 A at 1.0 and 30 A at 0 lagging leave 42.4 A in the neutral, more than either leg.
  const SizeAndReason result = neutralFor(neutral(30, 42.4, 40, "8"), Edition::y2023);
  EXPECT_EQ(sizeOf(result), "6");
  EXPECT_EQ(result.governs.id, MessageId{"wiring.neutral.phasor"});
}

TEST(Neutral, LegLoadIsBoundedByTheUngroundedConductors) {
  const SizeAndReason result = neutralFor(neutral(80, 10, 50, "6"), Edition::y2023);
  EXPECT_EQ(sizeOf(result), "6");
  EXPECT_EQ(result.governs.id, MessageId{"wiring.neutral.bounded"});
}

TEST(Neutral, WithoutALoadItIsAsLargeAsTheConductors) {
  NeutralQuestion q = neutral(0, 0, 50, "6");
  q.load.reset();
  EXPECT_EQ(sizeOf(neutralFor(q, Edition::y2023)), "6");
  q.load = AcAmperes(10);
  q.single = true;
  EXPECT_EQ(sizeOf(neutralFor(q, Edition::y2023)), "6");
  q.conductor.reset();
  EXPECT_EQ(sizeOf(neutralFor(q, Edition::y2023)), "none");
}

// Common practice, no source: 6-3 cable holds three conductors of 6 AWG.
TEST(Neutral, InCableHasTheSizeOfTheOthers) {
  NeutralQuestion q = neutral(10, 5, 50, "6");
  q.conditions.nmCable = true;
  const SizeAndReason result = neutralFor(q, Edition::y2023);
  EXPECT_EQ(sizeOf(result), "6");
  EXPECT_EQ(result.governs.id, MessageId{"wiring.neutral.in_cable"});
}

// 220.61(B): the part above 200 A counts 70 %; 220.61(C): never on two legs of a wye.
TEST(Neutral, ReductionAbove200AmperesNotOnAWye) {
  NeutralQuestion q = neutral(300, 0, 350, "500");
  // 200 + 0.7 x 100 = 270 A: 300 kcmil at 75 C has 285.
  EXPECT_EQ(sizeOf(neutralFor(q, Edition::y2023)), "300");
  q.wye = true;
  EXPECT_EQ(sizeOf(neutralFor(q, Edition::y2023)), "350");
}

TEST(Neutral, FixedOneIsChecked) {
  NeutralQuestion q = neutral(38, 5, 50, "6");
  q.fixed = ConductorSize::awg10;
  EXPECT_TRUE(neutralFor(q, Edition::y2023).tooSmall);
  q.fixed = ConductorSize::awg8;
  EXPECT_FALSE(neutralFor(q, Edition::y2023).tooSmall);
}

}  // namespace
