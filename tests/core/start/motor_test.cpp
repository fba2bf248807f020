#include <gtest/gtest.h>

#include "core/start/start.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using namespace example;
const SystemVoltages kSplit{};

MotorStart startOf(const Load& load, const SystemVoltages& system = kSplit) {
  Plan plan = emptyHouse();
  addCircuitWithLoad(plan, kMain, {Column::left, 1}, 2, 30, "Motor", load);
  const std::vector<MotorStart> all = motorStarts(plan, draws(plan, kMain, Reading::planned, system), system);
  EXPECT_EQ(all.size(), 1u);
  return all.at(0);
}

Load motor(bool between = true, std::int32_t volts = 230) {
  Load load = between ? lineToLineLoad("Motor", 1200, 0.8) : plainLoad("Motor", 1200, 0.8);
  load.ratedVoltage = volts;
  load.start = StartKind::acrossTheLine;
  return load;
}

TEST(MotorStarts, NameplateBeforeAllElseScaledToTheSystem) {
  Load load = motor();
  load.lockedRotor = known<AcAmperes>(46, Grade::measured);
  load.codeLetter = "G";
  load.horsepower = Horsepower(1);
  const MotorStart start = startOf(load);
  EXPECT_EQ(start.source, StartSource::nameplate);
  EXPECT_NEAR(start.current.likely.count(), 48, 1e-9);  // 46 x 240 / 230
  EXPECT_NEAR(start.apparent.likely.count(), 48 * 240, 1e-6);
  EXPECT_EQ(start.onLeg, (std::array<bool, 2>{true, true}));
}

TEST(MotorStarts, CodeLetterTimesHorsepower) {
  // NFPA 70, Table 430.7(B), letter K ends at 8.99 kVA/hp: 1 hp at 230 V takes up to 39.1 A.
  Load load = motor();
  load.codeLetter = "K";
  load.horsepower = Horsepower(1);
  const MotorStart start = startOf(load);
  EXPECT_EQ(start.source, StartSource::codeLetter);
  EXPECT_NEAR(start.current.likely.count() * 230 / 240, 39.087, 0.001);
  EXPECT_EQ(start.current.high, start.current.likely);
  EXPECT_LT(start.current.low, start.current.likely);
}

TEST(MotorStarts, HorsepowerTableByRatedVoltage) {
  // NFPA 70, Table 430.251(A): 1 hp 96 A at 115 V, 53 A at 208 V, 48 A at 230 V; below 1/2 hp six times Table
  // 430.248.
  const struct {
    double hp;
    std::int32_t volts;
    double amperes;
  } rows[] = {{1, 115, 96}, {1, 208, 53}, {1, 230, 48}, {0.5, 120, 58.8}, {0.333, 115, 43.2}};
  for (const auto& row : rows) {
    const bool between = row.volts > 150;
    Load load = motor(between, row.volts);
    load.horsepower = Horsepower(row.hp);
    const MotorStart start = startOf(load);
    EXPECT_EQ(start.source, StartSource::horsepowerTable);
    EXPECT_NEAR(start.current.likely.count() * row.volts / (between ? 240 : 120), row.amperes, 1e-6)
        << row.hp << " " << row.volts;
    EXPECT_TRUE(start.known);
  }
}

TEST(MotorStarts, AClassGivesAWideRange) {
  Load load = motor(false, 120);
  load.startClass = StartClass::sumpPump;
  const MotorStart start = startOf(load);
  EXPECT_EQ(start.source, StartSource::startClass);
  EXPECT_FALSE(start.known);
  EXPECT_NEAR(start.current.likely.count(), 5.5 * 1500 / 120, 1e-6);
  EXPECT_GT(start.current.high.count(), 1.2 * start.current.likely.count());
  EXPECT_LT(start.current.low.count(), 0.8 * start.current.likely.count());
  load.startClass = StartClass::unknown;
  EXPECT_EQ(startOf(load).source, StartSource::notKnown);
}

TEST(MotorStarts, ASoftStarterLeavesAPartAndADriveItsRunningCurrent) {
  Load load = motor();
  load.horsepower = Horsepower(1);
  const double full = startOf(load).current.likely.count();
  load.start = StartKind::softStart;
  EXPECT_NEAR(startOf(load).current.likely.count(), 0.4 * full, 1e-9);
  load.lockedRotor = known<AcAmperes>(20, Grade::measured);
  EXPECT_NEAR(startOf(load).current.likely.count(), 20 * 240.0 / 230, 1e-9);
  load.lockedRotor = {};
  load.start = StartKind::variableSpeed;
  const MotorStart drive = startOf(load);
  EXPECT_EQ(drive.source, StartSource::running);
  EXPECT_NEAR(drive.current.likely.count(), 1500.0 / 240, 1e-9);
  EXPECT_LE(drive.current.high.count(), 1.1 * 1500 / 240 * 1.1);
}

TEST(MotorStarts, AWyeHasTheWholeCurrentInBothLegsAt208V) {
  Load load = motor(true, 208);
  load.lockedRotor = known<AcAmperes>(50, Grade::measured);
  const MotorStart start = startOf(load, {AcVolts(120), AcVolts(208), true, WyeOrder::l2Lags, false});
  EXPECT_NEAR(start.current.likely.count(), 50, 1e-9);
  EXPECT_NEAR(start.apparent.likely.count(), 50 * 208, 1e-6);
}

TEST(MotorStarts, LoadsWithoutAMotorDoNotStart) {
  Plan plan = emptyHouse();
  addCircuitWithLoad(plan, kMain, {Column::left, 1}, 1, 20, "Lamp", plainLoad("Lamp", 60));
  EXPECT_TRUE(motorStarts(plan, draws(plan, kMain, Reading::planned, kSplit), kSplit).empty());
}

}  // namespace
}  // namespace stayalight
