#include <gtest/gtest.h>

#include "core/use/use.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using namespace example;
const SystemVoltages kSplit{};
const SystemVoltages kWye{AcVolts(120), AcVolts(208), true, WyeOrder::l2Lags, false};

Draw drawOf(const Load& load, const SystemVoltages& system = kSplit, int poles = 2, int amperes = 30) {
  Plan plan = emptyHouse();
  addCircuitWithLoad(plan, kMain, {Column::left, 1}, poles, amperes, "Circuit", load);
  const std::vector<Draw> all = draws(plan, kMain, Reading::planned, system);
  EXPECT_EQ(all.size(), 1u);
  return all.at(0);
}

TEST(Draws, AHeatingElementKeepsThreeQuartersAt208V) {
  // (208 / 240)^2 = 0.751; common practice, no source.
  Load element = lineToLineLoad("Element", 4500);
  element.kind = LoadKind::resistance;
  element.running.grade = Grade::measured;
  EXPECT_NEAR(drawOf(element, kWye).watts.likely.count(), 4500 * 0.75111, 0.1);
  EXPECT_NEAR(drawOf(element).watts.likely.count(), 4500, 1e-9);
  EXPECT_NEAR(drawOf(lineToLineLoad("Drive", 4500), kWye).watts.likely.count(), 4500, 1e-9);
}

TEST(Draws, AmperesGiveWattsByThePowerFactor) {
  Load pump = lineToLineLoad("Pump", 0);
  pump.running = {};
  pump.runningCurrent = known<AcAmperes>(8, Grade::measured);
  pump.powerFactor = known<Fraction>(0.75, Grade::measured);
  pump.ratedVoltage = 230;
  const Draw draw = drawOf(pump);
  EXPECT_NEAR(draw.apparent.likely.count(), 1840, 1e-9);
  EXPECT_NEAR(draw.watts.likely.count(), 1380, 1e-9);
  EXPECT_NEAR(draw.apparent.high.count(), 1840 * 1.05, 1e-6);
  EXPECT_EQ(draw.grade, Grade::measured);
}

TEST(Draws, AMissingPowerFactorIsOneAndAtWorst07) {
  Load supply = plainLoad("Supply", 210);
  supply.powerFactor = {};
  const Draw draw = drawOf(supply, kSplit, 1);
  EXPECT_NEAR(draw.apparent.likely.count(), 210, 1e-9);
  EXPECT_NEAR(draw.apparent.high.count(), 300, 1e-9);
  supply.kind = LoadKind::resistance;
  EXPECT_NEAR(drawOf(supply, kSplit, 1).apparent.high.count(), 210, 1e-9);
}

TEST(Draws, ALoadNobodyKnowsIsBoundedByItsBreaker) {
  Load unknown = lineToLineLoad("What is this", 0);
  unknown.running = {};
  unknown.powerFactor = {};
  const Draw draw = drawOf(unknown);
  EXPECT_FALSE(draw.known);
  EXPECT_EQ(draw.watts.likely.count(), 0.0);
  EXPECT_NEAR(draw.watts.high.count(), 0.8 * 30 * 240, 1e-9);
}

TEST(Draws, LieOnTheLegOfTheirPole) {
  Load lamp = plainLoad("Lamp", 60);
  EXPECT_EQ(drawOf(lamp).onLeg, (std::array<bool, 2>{true, false}));
  lamp.pole = 2;
  EXPECT_EQ(drawOf(lamp).onLeg, (std::array<bool, 2>{false, true}));
  EXPECT_EQ(drawOf(lineToLineLoad("Pump", 500)).onLeg, (std::array<bool, 2>{true, true}));
}

TEST(Draws, FollowTheReading) {
  const Plan plan = exampleHouseMoved();
  EXPECT_TRUE(draws(plan, kBackup, Reading::before, kSplit).empty());
  EXPECT_EQ(draws(plan, kBackup, Reading::planned, kSplit).size(), 5u);
}

}  // namespace
}  // namespace stayalight
