#include <gtest/gtest.h>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

Plan planWith(Arrangement arrangement) {
  Plan plan;
  plan.transfer.edit().arrangement = arrangement;
  return plan;
}

void addInput(Plan& plan, Stage stage) {
  Breaker breaker;
  breaker.id = nextBreakerId(plan);
  breaker.feeds = Feeds::inverterInput;
  breaker.stage = stage;
  plan.breakers.emplace_back(breaker);
}

using Segments = std::vector<Segment>;

TEST(Segments, FollowTheArrangement) {
  EXPECT_EQ(segments(planWith(Arrangement::none)), Segments{});
  const Segments withSwitch{Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup};
  EXPECT_EQ(segments(planWith(Arrangement::manualSwitch)), withSwitch);
  EXPECT_EQ(segments(planWith(Arrangement::automaticSwitch)), withSwitch);
  EXPECT_EQ(segments(planWith(Arrangement::inverterPassThrough)),
            (Segments{Segment::mainToInverter, Segment::inverterToBackup}));
}

TEST(Segments, ABreakerForTheInverterInputBringsItsRun) {
  Plan plan = planWith(Arrangement::manualSwitch);
  addInput(plan, Stage::removed);
  EXPECT_EQ(segments(plan).size(), 3u);
  addInput(plan, Stage::fresh);
  EXPECT_EQ(segments(plan), (Segments{Segment::mainToSwitch, Segment::mainToInverter,
                                      Segment::inverterToSwitch, Segment::switchToBackup}));
  EXPECT_TRUE(carries(plan, Segment::mainToInverter, Mode::ordinary));
  EXPECT_TRUE(carries(plan, Segment::mainToInverter, Mode::off));
  EXPECT_FALSE(carries(plan, Segment::mainToInverter, Mode::outage));
}

TEST(Segments, BypassAndGeneratorInlet) {
  Plan plan = planWith(Arrangement::inverterPassThrough);
  plan.transfer.edit().bypass = Answer::yes;
  EXPECT_EQ(segments(plan), (Segments{Segment::mainToInverter, Segment::inverterToBackup, Segment::bypass}));
  EXPECT_TRUE(carries(plan, Segment::bypass, Mode::bypass));
  EXPECT_FALSE(carries(plan, Segment::inverterToBackup, Mode::bypass));
  plan.generator.edit().comesIn = GeneratorPoint::inverterInput;
  EXPECT_EQ(segments(plan), (Segments{Segment::mainToInverter, Segment::generatorInlet,
                                      Segment::inverterToBackup, Segment::bypass}));
  EXPECT_TRUE(carries(plan, Segment::inverterToBackup, Mode::generator));
  EXPECT_FALSE(carries(plan, Segment::mainToInverter, Mode::generator));

  Plan manual = planWith(Arrangement::manualSwitch);
  manual.transfer.edit().bypass = Answer::yes;
  EXPECT_EQ(segments(manual).size(), 3u) << "the switch itself is the bypass";
  manual.generator.edit().comesIn = GeneratorPoint::transfer;
  EXPECT_EQ(segments(manual), (Segments{Segment::mainToSwitch, Segment::inverterToSwitch,
                                        Segment::generatorInlet, Segment::switchToBackup}));
  EXPECT_FALSE(carries(manual, Segment::mainToSwitch, Mode::generator));
  EXPECT_TRUE(carries(manual, Segment::switchToBackup, Mode::generator));
  manual.generator.edit().comesIn = GeneratorPoint::mainPanel;
  EXPECT_EQ(segments(manual).back(), Segment::generatorInlet);
  EXPECT_TRUE(carries(manual, Segment::mainToSwitch, Mode::generator));
}

TEST(Carries, GoesByTheSwitchPosition) {
  const Plan plan = planWith(Arrangement::manualSwitch);
  const struct {
    Segment segment;
    bool ordinary, outage, off;
  } rows[] = {{Segment::mainToSwitch, true, false, false},
              {Segment::inverterToSwitch, false, true, false},
              {Segment::switchToBackup, true, true, false},
              {Segment::mainToInverter, false, false, false},
              {Segment::inverterToBackup, false, false, false}};
  for (const auto& row : rows) {
    EXPECT_EQ(carries(plan, row.segment, Mode::ordinary), row.ordinary);
    EXPECT_EQ(carries(plan, row.segment, Mode::outage), row.outage);
    EXPECT_EQ(carries(plan, row.segment, Mode::off), row.off);
  }
  const Plan through = planWith(Arrangement::inverterPassThrough);
  EXPECT_TRUE(carries(through, Segment::mainToInverter, Mode::ordinary));
  EXPECT_FALSE(carries(through, Segment::mainToInverter, Mode::outage));
  EXPECT_TRUE(carries(through, Segment::inverterToBackup, Mode::outage));
}

TEST(RunOf, IsTheRunOfThatSegment) {
  Plan plan;
  FeederRun run;
  run.id = {1};
  run.segment = Segment::switchToBackup;
  plan.runs.emplace_back(run);
  ASSERT_NE(runOf(plan, Segment::switchToBackup), nullptr);
  EXPECT_EQ(runOf(plan, Segment::switchToBackup)->id, FeederRunId{1});
  EXPECT_EQ(runOf(plan, Segment::mainToSwitch), nullptr);
}

}  // namespace
}  // namespace stayalight
