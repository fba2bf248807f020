// A second source on a bus. NFPA 70 (2023) 705.12(B)(1), (2), (3).

#include "core/wiring/bus.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using example::kMain;

namespace {

/// Main panel of a 200 A bus with a 200 A main; solar of 32 A on a 40 A breaker in the last two rows on the
/// right.
Plan withSolar(std::int32_t busAmperes, std::int32_t mainAmperes, std::optional<double> output) {
  Plan plan = example::emptyHouse();
  Panel& panel = example::editPanel(plan, kMain);
  panel.spaces = 40;
  panel.busRating = RatingAmperes(busAmperes);
  panel.mainBreaker = RatingAmperes(mainAmperes);
  const BreakerId solar =
      example::addBreaker(plan, kMain, {Column::right, 19}, 2, 40, Feeds::solar, Stage::fresh);
  if (output) example::editBreaker(plan, solar).sourceCurrent = AcAmperes(*output);
  return plan;
}

const BusFigures only(const Plan& plan) {
  const std::vector<BusFigures> all = busFigures(plan, inverterLimits(*plan.inverter), {});
  EXPECT_EQ(all.size(), 1u);
  return all.front();
}

TEST(Bus, TheCurrentCountsAndNotItsBreaker) {
  // 200 + 1.25 x 32 = 240 A: over a 200 A bus, within 120 % of it at the opposite end.
  const BusFigures figures = only(withSolar(200, 200, 32));
  EXPECT_NEAR(figures.sourceCurrent.count(), 40.0, 1e-9);
  EXPECT_NEAR(figures.options[0].sum->count(), 240.0, 1e-9);
  EXPECT_EQ(figures.options[0].verdict, Verdict::over);
  EXPECT_NEAR(figures.options[1].most->count(), 240.0, 1e-9);
  EXPECT_EQ(figures.options[1].verdict, Verdict::within);
  EXPECT_EQ(figures.verdict, Verdict::notKnown);  // until one is chosen
  // One ampere more of output is too much for the ends.
  EXPECT_EQ(only(withSolar(200, 200, 33)).options[1].verdict, Verdict::over);
}

TEST(Bus, OppositeEndsAsksWhereItStands) {
  Plan plan = withSolar(200, 200, 32);
  example::editPanel(plan, kMain).feedEnd = FeedEnd::bottom;
  EXPECT_FALSE(only(plan).options[1].applies);
  EXPECT_EQ(only(plan).options[1].verdict, Verdict::over);
  Plan upper = withSolar(200, 200, 32);
  upper.breakers.back().edit().row = 5;
  EXPECT_FALSE(only(upper).options[1].applies);
}

TEST(Bus, TheDeviceOnTheWayToTheBackupIsTheOneAhead) {
  Plan plan = feeder::passThrough();
  example::editPanel(plan, example::kBackup).mainBreaker.reset();
  const BreakerId solar =
      example::addBreaker(plan, example::kBackup, {Column::right, 7}, 2, 40, Feeds::solar, Stage::fresh);
  example::editBreaker(plan, solar).sourceCurrent = AcAmperes(32);
  const InverterLimits limits = inverterLimits(*plan.inverter);
  const auto sumOf = [&] {
    for (const BusFigures& figures : busFigures(plan, limits, feeder::figuresOf(plan))) {
      if (figures.panel == example::kBackup) return figures.options[0].sum;
    }
    return std::optional<AcAmperes>();
  };
  // With the relay closed 60 A stand ahead, and the source gives 1.25 x 32 A.
  ASSERT_TRUE(sumOf());
  EXPECT_NEAR(sumOf()->count(), 100.0, 1e-9);
  feeder::editRun(plan, Segment::inverterToBackup).fixedDevice = RatingAmperes(40);
  EXPECT_NEAR(sumOf()->count(), 80.0, 1e-9);
  // The breaker of a bypass stands ahead as well, in its turn.
  const BreakerId around =
      example::addBreaker(plan, kMain, {Column::right, 9}, 2, 50, Feeds::feeder, Stage::fresh);
  example::editBreaker(plan, around).feedsPanel = example::kBackup;
  EXPECT_NEAR(sumOf()->count(), 90.0, 1e-9);
}

TEST(Bus, SourcesBehindABreakerComeInThroughIt) {
  // AC-side solar of 24 A on the backup subpanel, whose feeder breaker stands at the far end of a main of
  // 100 A with a bus of 100 A: 100 + 1.25 x 24 = 130 A, over 100 A and over 120 %.
  Plan plan = feeder::manualSwitch();
  example::editPanel(plan, kMain).busRating = RatingAmperes(100);
  example::editPanel(plan, kMain).mainBreaker = RatingAmperes(100);
  const BreakerId solar =
      example::addBreaker(plan, example::kBackup, {Column::right, 7}, 2, 30, Feeds::solar, Stage::fresh);
  example::editBreaker(plan, solar).sourceCurrent = AcAmperes(24);
  const auto ofMain = [](const Plan& of) {
    for (const BusFigures& figures : busFigures(of, inverterLimits(*of.inverter), {})) {
      if (figures.panel == kMain) return std::optional(figures);
    }
    return std::optional<BusFigures>();
  };
  const auto found = ofMain(plan);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->sources, std::vector<BreakerId>{solar});
  EXPECT_NEAR(found->options[0].sum->count(), 130.0, 1e-9);
  EXPECT_EQ(found->options[0].verdict, Verdict::over);
  EXPECT_EQ(found->options[1].verdict, Verdict::over);
  example::editBreaker(plan, solar).stage = Stage::removed;
  EXPECT_FALSE(ofMain(plan));
  // Through the relay of a pass-through inverter as well.
  Plan through = feeder::passThrough();
  example::addBreaker(through, example::kBackup, {Column::right, 7}, 2, 30, Feeds::solar, Stage::fresh);
  EXPECT_TRUE(ofMain(through));
}

TEST(Bus, ABackFedInputIsASource) {
  Plan plan = feeder::passThrough();
  for (auto& breaker : plan.breakers) {
    if (breaker->feeds.is(Feeds::inverterInput)) {
      breaker.edit().backFed = Answer::yes;
      breaker.edit().sourceCurrent = AcAmperes(20);
    }
  }
  EXPECT_NEAR(only(plan).sourceCurrent.count(), 25.0, 1e-9);
}

TEST(Bus, TheSumOptionBreaksWithABreakerMore) {
  Plan plan = withSolar(125, 125, 32);
  for (int row = 1; row <= 4; ++row)
    example::addBreaker(plan, kMain, {Column::left, row}, 1, 20, Feeds::circuit, Stage::existing);
  example::editPanel(plan, kMain).busOption = BusOption::sumOfBreakers;
  EXPECT_NEAR(only(plan).options[2].sum->count(), 120.0, 1e-9);
  EXPECT_EQ(only(plan).verdict, Verdict::within);
  example::addBreaker(plan, kMain, {Column::left, 5}, 1, 15, Feeds::circuit, Stage::fresh);
  EXPECT_EQ(only(plan).verdict, Verdict::over);
}

TEST(Bus, AnOutputThatIsNotEnteredIsBoundedByItsBreaker) {
  // The breaker carries 125 % of the output, so it is the most that can be: within is sure, over is not.
  BusFigures figures = only(withSolar(225, 175, std::nullopt));
  EXPECT_TRUE(figures.bounded);
  EXPECT_EQ(figures.options[0].verdict, Verdict::within);  // 175 + 40 = 215
  figures = only(withSolar(200, 200, std::nullopt));
  EXPECT_EQ(figures.options[0].verdict, Verdict::notKnown);
}

TEST(Bus, WhatIsInterlockedDoesNotCount) {
  Plan plan = withSolar(200, 200, 32);
  plan.breakers.back().edit().interlocked = Answer::yes;
  EXPECT_TRUE(busFigures(plan, {}, {}).empty());
  EXPECT_TRUE(busFigures(example::exampleHouse(), {}, {}).empty());
}

TEST(Bus, AnInverterThatAddsToWhatPassesThroughUsesUpItsBus) {
  Plan plan = feeder::passThrough();
  EXPECT_TRUE(busFigures(plan, inverterLimits(*plan.inverter), {}).empty());
  plan.inverter.edit().addsToPassThrough = Answer::yes;
  const BusFigures figures = only(plan);
  EXPECT_EQ(figures.panel, kMain);
  EXPECT_NEAR(figures.sourceCurrent.count(), 1.25 * inverterLimits(*plan.inverter).leg->count(), 1e-9);
}

}  // namespace
