#include <gtest/gtest.h>

#include "core/start/start.h"
#include "tests/core/example_plans.h"
#include "tests/core/use/base_of_others.h"
#include "tests/core/working_check.h"

namespace stayalight {
namespace {

using namespace example;
const SystemVoltages kSplit{};

template <class Q>
Graded<Q> exact(double value) {
  Graded<Q> fact = known<Q>(value, Grade::measured);
  fact.low = fact.high = Q(value);
  return fact;
}

Load motor(std::string name, bool between, double watts, double lockedRotor, double seconds) {
  Load load = between ? lineToLineLoad(std::move(name), watts) : plainLoad(std::move(name), watts);
  load.running = exact<Watts>(watts);
  load.powerFactor = exact<Fraction>(1.0);
  load.duty = exact<Fraction>(0.001);  // hardly ever on: the likely peak of the others does not hold it
  load.start = StartKind::acrossTheLine;
  load.lockedRotor = exact<AcAmperes>(lockedRotor);
  load.startTime = exact<Seconds>(seconds);
  load.startPowerFactor = exact<Fraction>(0.5);
  return load;
}
Load steady(double watts) {
  Load load = plainLoad("Steady", watts);
  load.running = exact<Watts>(watts);
  load.powerFactor = exact<Fraction>(1.0);
  load.duty = exact<Fraction>(1.0);
  return load;
}

struct House {
  Plan plan = emptyHouse();
  std::int32_t row = 1;
  House() {
    Inverter& inverter = plan.inverter.edit();
    inverter.continuous = Watts(7200);
    inverter.overload.resize(2);
    inverter.overload[0].time = Seconds(0.5);
    inverter.overload[0].watts = Watts(14400);
    inverter.overload[1].time = Seconds(10);
    inverter.overload[1].watts = Watts(10800);
  }
  LoadId add(Load load) {
    addCircuitWithLoad(plan, kMain, {Column::left, row}, 2, 30, load.name, load);
    row += 2;
    return plan.circuits.back()->loads[0].id;
  }
  StartFigures figures(Working* working = nullptr, const SystemVoltages& system = kSplit) const {
    const std::vector<Draw> all = draws(plan, kMain, Reading::planned, system);
    return startFigures(plan, HourLoads(plan, all, system, 1, 18), inverterLimits(*plan.inverter), working);
  }
};

TEST(StartFigures, AStartStandsOnAllOtherLoadsOfItsLeg) {
  House house;
  house.add(steady(1200));                          // 10 A on L1
  house.add(motor("Fridge", false, 120, 20, 0.4));  // 20 A for 0.4 s on L1
  const StartCheck check = house.figures().checks.at(0);
  ASSERT_TRUE(check.leg[0]);
  EXPECT_FALSE(check.leg[1]);
  EXPECT_NEAR(check.leg[0]->likelyBase.count(), 10, 1e-9);
  EXPECT_NEAR(check.leg[0]->averageBase.count(), 10, 1e-9);
  EXPECT_NEAR(check.leg[0]->highSum.count(), 30, 1e-9);
  EXPECT_NEAR(check.leg[0]->likelyLimit->count(), 60, 1e-9);
  EXPECT_NEAR(check.leg[0]->margin->count(), 30, 1e-9);
  EXPECT_NEAR(check.total.likelySum.count(), 1200 + 20 * 120, 1e-9);
  EXPECT_FALSE(check.battery);
  // Legs and both together hold, and nothing is known of the battery that gives it.
  EXPECT_EQ(check.leg[0]->verdict, Verdict::within);
  EXPECT_EQ(check.total.verdict, Verdict::within);
  EXPECT_EQ(check.verdict, Verdict::notKnown);
}

TEST(StartFigures, TheLimitFollowsTheLengthOfTheStart) {
  const struct {
    double seconds, limit;
    Verdict verdict;
  } rows[] = {{0.5, 60, Verdict::within}, {0.6, 45, Verdict::within}, {11, 30, Verdict::over}};
  for (const auto& row : rows) {
    House house;
    house.add(motor("Pump", true, 1000, 40, row.seconds));
    const StartCheck check = house.figures().checks.at(0);
    EXPECT_NEAR(check.leg[1]->highLimit->count(), row.limit, 1e-9);
    EXPECT_EQ(check.leg[0]->verdict, row.verdict) << row.seconds;
  }
}

TEST(StartFigures, TheUnfavourableEndMakesItNotKnown) {
  House house;
  Load pump = motor("Pump", true, 1000, 40, 0.4);
  pump.lockedRotor.high = AcAmperes(62);
  house.add(pump);
  EXPECT_EQ(house.figures().checks.at(0).leg[0]->verdict, Verdict::notKnown);
}

TEST(StartFigures, APumpNobodyKnowsIsNeverWithin) {
  House house;
  Load pump = motor("Pump", true, 100, 0, 0.4);
  pump.lockedRotor = {};
  house.add(pump);
  const StartCheck check = house.figures().checks.at(0);
  EXPECT_FALSE(check.known);
  EXPECT_EQ(check.verdict, Verdict::notKnown);
}

TEST(StartFigures, TheBatteryCarriesTheStartAtItsLowestVoltage) {
  House house;
  house.plan.inverter.edit().marginalEfficiency = Fraction(0.9);
  house.plan.inverter.edit().lowestInputVoltage = DcVolts(44);
  Battery& battery = house.plan.battery.edit();
  battery.packs = 2;
  battery.continuousCurrent = DcAmperes(50);
  battery.peakCurrent = DcAmperes(100);
  battery.peakTime = Seconds(1);
  house.add(steady(1000));
  house.add(motor("Pump", true, 1000, 40, 0.5));
  const StartCheck brief = house.figures().checks.at(0);
  ASSERT_TRUE(brief.battery);
  // Power over efficiency and lowest volts: (1000 + 40 x 240 x 0.5) / 0.9 / 44.
  EXPECT_NEAR(brief.battery->likelySum.count(), 5800 / 0.9 / 44, 1e-9);
  EXPECT_NEAR(brief.battery->likelyLimit->count(), 200, 1e-9);
  // What the unit takes for itself comes out of the packs as well.
  house.plan.inverter.edit().idle = BatteryWatts(45);
  EXPECT_NEAR(house.figures().checks.at(0).battery->likelySum.count(), (5800 / 0.9 + 45) / 44, 1e-9);
  house.plan.battery.edit().peakTime = Seconds(0.4);  // the start lasts longer than the peak
  EXPECT_NEAR(house.figures().checks.at(0).battery->likelyLimit->count(), 100, 1e-9);
  EXPECT_EQ(house.figures().checks.at(0).battery->verdict, Verdict::over);
}

TEST(StartFigures, AtTheLongerTimeTheOtherOfAPairRuns) {
  House house;
  const LoadId pump = house.add(motor("Pump", true, 1200, 28, 2.0));
  const LoadId fridge = house.add(motor("Fridge", false, 240, 20, 0.4));
  const StartFigures figures = house.figures();
  ASSERT_TRUE(figures.worstPair);
  EXPECT_EQ(figures.worstPair->loads, (std::vector<LoadId>{pump, fridge}));
  // 0.4 s: 28 + 20 = 48 A of 60; 2 s: 28 + 2 = 30 A of 45. The first leaves 12 A, the second 15 A.
  EXPECT_NEAR(figures.worstPair->leg[0]->margin->count(), 12, 1e-9);
  // On L2 the pump starts alone: 0.4 s leaves 32 A, 2 s leaves 17 A.
  EXPECT_NEAR(figures.worstPair->leg[1]->margin->count(), 17, 1e-9);
  EXPECT_EQ(figures.worstPair->worstLeg, Leg::l1);
  // With nothing else the two together are all there is.
  EXPECT_NEAR(figures.allAtOnce->leg[0]->margin->count(), 12, 1e-9);
}

TEST(StartFigures, OnlyMotorsThatStartByThemselvesPair) {
  House house;
  house.add(motor("Pump", true, 1200, 28, 2.0));
  Load saw = motor("Saw", false, 900, 40, 1.0);
  saw.automatic = false;
  house.add(saw);
  EXPECT_FALSE(house.figures().worstPair);
  EXPECT_TRUE(house.figures().allAtOnce);
}

TEST(StartFigures, TheWorstPairIsTheWorstOfAll) {
  House house;
  house.add(steady(800));
  const double currents[] = {12, 30, 22, 9, 25};
  std::vector<LoadId> ids;
  for (const double current : currents) {
    Load load = motor("Motor", false, 30 * current, current, 0.4);
    load.duty = exact<Fraction>(0.3);
    ids.push_back(house.add(load));
  }
  const StartFigures figures = house.figures();
  // Every pair, with the base built anew.
  const std::vector<Draw> all = draws(house.plan, kMain, Reading::planned, kSplit);
  double least = 1e9;
  for (std::size_t a = 0; a < ids.size(); ++a) {
    for (std::size_t b = a + 1; b < ids.size(); ++b) {
      const Base base = baseOfOthers(house.plan, all, kSplit, {ids[a], ids[b]});
      least = std::min(least, 60 - (base.high[0].count() + currents[a] + currents[b]));
    }
  }
  EXPECT_NEAR(figures.worstPair->leg[0]->margin->count(), least, 1e-9);
}

TEST(StartFigures, OfPairsWithTheSameWorstLegTheOtherLegDecides) {
  // One motor alone breaks its leg; whichever starts on the other leg beside it, that leg's margin is the
  // same.
  for (const bool largeFirst : {false, true}) {
    House house;
    const LoadId breaks = house.add(motor("Large", false, 1200, 100, 0.4));
    std::vector<LoadId> others;
    for (const double current : largeFirst ? std::vector{40.0, 20.0} : std::vector{20.0, 40.0}) {
      Load load = motor("Other", false, 600, current, 0.4);
      load.pole = 2;
      others.push_back(house.add(load));
    }
    const std::optional<StartCheck> worst = house.figures().worstPair;
    ASSERT_TRUE(worst);
    EXPECT_EQ(worst->loads, (std::vector<LoadId>{breaks, others[largeFirst ? 0 : 1]}));
  }
}

TEST(StartFigures, EveryRecordedStepHolds) {
  House house;
  house.plan.inverter.edit().marginalEfficiency = Fraction(0.9);
  house.plan.inverter.edit().lowestInputVoltage = DcVolts(44);
  house.plan.battery.edit().continuousCurrent = DcAmperes(50);
  house.add(steady(1000));
  house.add(motor("Nameplate", true, 1200, 28, 2.0));
  Load code = motor("Code letter", true, 900, 0, 0.5);
  code.lockedRotor = {};
  code.codeLetter = "J";
  code.horsepower = Horsepower(0.75);
  code.start = StartKind::softStart;
  house.add(code);
  Load table = motor("Table", false, 600, 0, 0.5);
  table.lockedRotor = {};
  table.horsepower = Horsepower(0.5);
  house.add(table);
  Load byClass = motor("Class", false, 300, 0, 0.5);
  byClass.lockedRotor = {};
  byClass.startClass = StartClass::blower;
  house.add(byClass);
  Load drive = motor("Drive", true, 1500, 0, 30);
  drive.lockedRotor = {};
  drive.start = StartKind::variableSpeed;
  house.add(drive);
  for (const SystemVoltages& system :
       {kSplit, SystemVoltages{AcVolts(120), AcVolts(208), true, WyeOrder::unknown, false}}) {
    Working working;
    const StartFigures figures = house.figures(&working, system);
    EXPECT_EQ(figures.motors.size(), 5u);
    testing_working::expectWorkingHolds(working);
    EXPECT_TRUE(std::any_of(working.steps().begin(), working.steps().end(), [&](const Step& step) {
      return std::abs(step.result - figures.worstPair->leg[0]->highSum.count()) < 1e-9;
    }));
    const StartFigures unrecorded = house.figures(nullptr, system);
    EXPECT_EQ(unrecorded.checks[0].total.highSum, figures.checks[0].total.highSum);
  }
}

}  // namespace
}  // namespace stayalight
