#include "core/wiring/device.h"

#include <gtest/gtest.h>

#include "core/wiring/conductor.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;
using reference::WorkedExample;

namespace {

DeviceQuestion load(double continuous, double other) {
  DeviceQuestion question;
  question.continuous = AcAmperes(continuous);
  question.other = AcAmperes(other);
  return question;
}

DeviceLimit limit(std::int32_t amperes) {
  return {RatingAmperes(amperes), say(MessageId{"wiring.maximum.label"})};
}

TEST(Device, ContinuousFeederOf200Amperes) {
  const WorkedExample example("S-09");
  const DeviceChoice choice =
      chooseDevice(load(example.input("continuous_A"), example.input("noncontinuous_A")), Edition::y2023);
  example.expectNear("required_A", choice.minimum->count());
  example.expectNear("ocpd_A", choice.rating->count());
}

TEST(Device, StoreBuildingWithContinuousAndOtherLoad) {
  const WorkedExample example("S-10");
  const double volts = example.input("service_V");
  const DeviceChoice choice = chooseDevice(
      load(example.expected("continuous_VA") / volts, example.expected("noncontinuous_VA") / volts),
      Edition::y2017);
  example.expectNear("ocpd_basis_A", choice.minimum->count());
  example.expectNear("ocpd_basis_VA", choice.minimum->count() * volts);
  example.expectNear("ocpd_A", choice.rating->count());
}

// Common practice, no source: a split-phase source carries half its rating a leg, 125 % of it asks for the
// device.
TEST(Device, InverterOutputs) {
  struct Row {
    double watts;
    double minimum;
    int rating;
  };
  for (const Row& row : {Row{7200, 37.5, 40}, Row{6000, 31.25, 35}, Row{5000, 26.0417, 30},
                         Row{9600, 50.0, 50}, Row{7680, 40.0, 40}, Row{12000, 62.5, 70}}) {
    DeviceQuestion question;
    question.continuous = AcAmperes(row.watts / 2.0 / 120.0);
    const DeviceChoice choice = chooseDevice(question, Edition::y2023);
    EXPECT_NEAR(choice.minimum->count(), row.minimum, 1e-3) << row.watts;
    EXPECT_EQ(choice.rating, RatingAmperes(row.rating)) << row.watts;
    EXPECT_FALSE(choice.minimumAboveMaximum);
  }
}

TEST(Device, FactorStandsOnTheContinuousPartOnly) {
  EXPECT_NEAR(chooseDevice(load(0, 41), Edition::y2023).minimum->count(), 41.0, 1e-12);
  EXPECT_EQ(chooseDevice(load(0, 41), Edition::y2023).rating, RatingAmperes(45));
  EXPECT_NEAR(chooseDevice(load(20, 21), Edition::y2023).minimum->count(), 46.0, 1e-12);
  EXPECT_EQ(chooseDevice(load(0, 45), Edition::y2023).rating, RatingAmperes(45));
}

TEST(Device, MaximumIsTheSmallestLimitAndIsNamed) {
  DeviceQuestion question = load(25, 0);
  question.limits = {limit(60), {RatingAmperes(40), say(MessageId{"wiring.maximum.switch"})}, limit(50)};
  const DeviceChoice choice = chooseDevice(question, Edition::y2023);
  EXPECT_EQ(choice.maximum, RatingAmperes(40));
  EXPECT_EQ(choice.maximumFrom.id, MessageId{"wiring.maximum.switch"});
  EXPECT_FALSE(choice.minimumAboveMaximum);
  EXPECT_FALSE(choice.aboveMaximum);
}

TEST(Device, MinimumAboveMaximumIsAFinding) {
  struct Row {
    double continuous;
    int maximum;
    bool above;
  };
  // 25 A asks for 31.25, next standard 35: a label of 33 A leaves no standard rating between.
  for (const Row& row : {Row{25, 30, true}, Row{25, 33, true}, Row{25, 35, false}, Row{24, 30, false}}) {
    DeviceQuestion question = load(row.continuous, 0);
    question.limits = {limit(row.maximum)};
    EXPECT_EQ(chooseDevice(question, Edition::y2023).minimumAboveMaximum, row.above) << row.maximum;
  }
}

TEST(Device, FixedOneIsCheckedAndNotReplaced) {
  DeviceQuestion question = load(30, 0);
  question.fixed = RatingAmperes(35);
  question.limits = {limit(40)};
  DeviceChoice choice = chooseDevice(question, Edition::y2023);
  EXPECT_TRUE(choice.fixed);
  EXPECT_EQ(choice.rating, RatingAmperes(35));
  EXPECT_TRUE(choice.belowMinimum);
  EXPECT_FALSE(choice.aboveMaximum);
  question.fixed = RatingAmperes(45);
  choice = chooseDevice(question, Edition::y2023);
  EXPECT_FALSE(choice.belowMinimum);
  EXPECT_TRUE(choice.aboveMaximum);
  question.fixed = RatingAmperes(40);
  choice = chooseDevice(question, Edition::y2023);
  EXPECT_FALSE(choice.belowMinimum || choice.aboveMaximum);
}

TEST(Device, BreakerInThePlanIsHeldAgainstBothEnds) {
  DeviceQuestion question = load(30, 0);
  question.inPlan = RatingAmperes(60);
  question.limits = {limit(50)};
  DeviceChoice choice = chooseDevice(question, Edition::y2023);
  EXPECT_EQ(choice.rating, RatingAmperes(40));
  EXPECT_TRUE(choice.aboveMaximum);
  EXPECT_EQ(largestRating(choice), RatingAmperes(60));
  question.inPlan = RatingAmperes(30);
  choice = chooseDevice(question, Edition::y2023);
  EXPECT_TRUE(choice.belowMinimum);
  EXPECT_EQ(largestRating(choice), RatingAmperes(40));
}

TEST(Device, UnknownLoadAndLoadBeyondTheListGiveNoRating) {
  DeviceChoice choice = chooseDevice({}, Edition::y2023);
  EXPECT_FALSE(choice.minimum || choice.rating);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.device.load_unknown"});
  EXPECT_FALSE(largestRating(choice));
  choice = chooseDevice(load(1000, 0), Edition::y2023);
  EXPECT_TRUE(choice.minimum);
  EXPECT_FALSE(choice.rating);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.device.none_listed"});
}

TEST(Device, LimitOnlyIsKeptWithoutALoad) {
  DeviceQuestion question;
  question.fixed = RatingAmperes(60);
  question.limits = {limit(50)};
  const DeviceChoice choice = chooseDevice(question, Edition::y2023);
  EXPECT_TRUE(choice.aboveMaximum);
  EXPECT_FALSE(choice.belowMinimum);
  EXPECT_FALSE(choice.minimumAboveMaximum);
}

}  // namespace
