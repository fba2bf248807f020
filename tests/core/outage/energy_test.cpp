// Capacity, temperature and losses.

#include <gtest/gtest.h>

#include "tests/core/outage/outage_plan.h"

namespace stayalight {
namespace {

struct TemperatureCase {
  double celsius;
  double low, typical, high;
};

TEST(CapacityAtTemperature, LiesInTheBandOfTheTrade) {
  // Common practice, no source: usable share of an LFP pack's capacity, the band pages of the trade give.
  const TemperatureCase cases[] = {{45, 0.98, 1.00, 1.02},  {25, 1.00, 1.00, 1.00}, {15, 0.94, 0.97, 0.98},
                                   {10, 0.90, 0.94, 0.96},  {5, 0.80, 0.88, 0.93},  {0, 0.70, 0.82, 0.90},
                                   {-10, 0.55, 0.70, 0.85}, {-20, 0.30, 0.55, 0.70}};
  for (const TemperatureCase& c : cases) {
    const std::optional<Range<double>> share = capacityAtTemperature(Temperature::celsius(c.celsius));
    ASSERT_TRUE(share) << c.celsius;
    EXPECT_NEAR(share->likely, c.typical, 1e-12) << c.celsius;
    EXPECT_NEAR(share->low, c.low, 1e-12) << c.celsius;
    EXPECT_NEAR(share->high, c.high, 1e-12) << c.celsius;
  }
}

TEST(CapacityAtTemperature, IsLinearBetweenPointsAndRefusesBelowTheLast) {
  EXPECT_NEAR(capacityAtTemperature(Temperature::celsius(2.5))->likely, (0.82 + 0.88) / 2, 1e-12);
  EXPECT_NEAR(capacityAtTemperature(Temperature::celsius(-5))->likely, (0.82 + 0.70) / 2, 1e-12);
  EXPECT_NEAR(capacityAtTemperature(Temperature::celsius(50))->likely, 1.0, 1e-12);
  EXPECT_FALSE(capacityAtTemperature(Temperature::celsius(-20.001)));
}

TEST(UsableEnergy, TheColdWidensTheBand) {
  // -20 C: 0.55 likely, 0.30 to 0.70; health measured to a tenth. Independent facts add in quadrature.
  Battery battery;
  battery.nominalKilowattHours = 10.0;
  battery.cellTemperature = Temperature::celsius(-20);
  battery.health.value = Fraction(1.0);
  battery.health.low = Fraction(0.9);
  battery.health.high = Fraction(1.0);
  const UsableEnergy energy = usableEnergy(battery, Fraction(1.0));
  ASSERT_TRUE(energy.capacityNow);
  EXPECT_NEAR(energy.capacityNow->likely.count(), 5500, 1e-9);
  EXPECT_NEAR(energy.capacityNow->low.count(), 5500 * (1 - std::hypot(0.1, 0.25 / 0.55)), 1e-6);
  EXPECT_NEAR(energy.capacityNow->high.count(), 7000, 1e-6);
}

TEST(CellTemperature, IsTwentyFiveIndoorsAndNotKnownOutside) {
  Battery battery;
  battery.place = BatteryPlace::basement;
  EXPECT_EQ(cellTemperature(battery), Temperature::celsius(25));
  battery.place = BatteryPlace::garage;
  EXPECT_FALSE(cellTemperature(battery));
  battery.cellTemperature = Temperature::celsius(4);
  EXPECT_EQ(cellTemperature(battery), Temperature::celsius(4));
}

TEST(UsableEnergy, IsCapacityNowTimesStartLessFloor) {
  // Worked example of the trade (common practice, no source): 15 kWh nominal, health 90 %, floor 10 % of
  // present capacity gives 12.15 kWh.
  Battery battery;
  battery.nominalKilowattHours = 15.0;
  battery.health.value = battery.health.low = battery.health.high = Fraction(0.9);
  battery.floor = Fraction(0.1);
  const UsableEnergy energy = usableEnergy(battery, Fraction(1.0));
  ASSERT_TRUE(energy.usable);
  EXPECT_NEAR(energy.usable->likely.count(), 12150, 1e-9);
  EXPECT_NEAR(energy.capacityNow->likely.count(), 13500, 1e-9);
}

TEST(UsableEnergy, TakesTheReserveOffNothing) {
  Battery battery;
  battery.nominalKilowattHours = 10.0;
  battery.health.value = battery.health.low = battery.health.high = Fraction(1.0);
  battery.floor = Fraction(0.1);
  battery.reserve = Fraction(0.2);
  // A start at the reserve has (reserve - floor), not zero and not the whole.
  EXPECT_NEAR(usableEnergy(battery, Fraction(0.2)).usable->likely.count(), 1000, 1e-9);
  EXPECT_NEAR(usableEnergy(battery, Fraction(1.0)).usable->likely.count(), 9000, 1e-9);
  EXPECT_NEAR(usableEnergy(battery, Fraction(0.05)).usable->likely.count(), 0, 1e-9);
}

TEST(UsableEnergy, CountsPacks) {
  // Public inverter owner's guide, appendix on battery wiring: four units of 6 V 200 Ah store 4.8 kWh.
  Battery battery;
  battery.nominalKilowattHours = 6.0 * 200.0 / 1000.0;
  battery.packs = 4;
  EXPECT_NEAR(usableEnergy(battery, Fraction(1.0)).nominal->count(), 4800, 1e-9);
  EXPECT_FALSE(usableEnergy(battery, Fraction(1.0)).capacityNow);  // health was not entered
}

TEST(BatteryPower, AddsTheIdleDrawOfEachUnitToTheMarginalLoss) {
  Inverter inverter;
  inverter.marginalEfficiency = Fraction(0.94);
  inverter.idle = BatteryWatts(45);
  EXPECT_NEAR(batteryPower(inverter, Watts(650))->count(), 736.5, 0.05);  // energy balance: 650 / 0.94 + 45
  inverter.units = 2;
  EXPECT_NEAR(batteryPower(inverter, Watts(650))->count(), 736.489 + 45, 0.001);
  EXPECT_NEAR(batteryPower(inverter, Watts(0))->count(), 90, 1e-12);
}

TEST(BatteryPower, TakesTheLabelsCurveAloneWhereItIsEntered) {
  Inverter inverter;
  inverter.continuous = Watts(5000);
  inverter.marginalEfficiency = Fraction(0.5);
  inverter.idle = BatteryWatts(1000);  // neither counts once a curve stands
  // P_dc = P_ac + c0 + c1 P_ac + c2 P_ac^2 per unit with 0.010, 0.020, 0.030 (form after Schmidt and Sauer,
  // 1996).
  for (const auto& [load, efficiency] :
       {std::pair{0.10, 0.891}, {0.05, 0.819}, {0.50, 0.948}, {1.00, 0.943}}) {
    EfficiencyPoint point;
    point.load = Fraction(load);
    point.efficiency = Fraction(efficiency);
    inverter.efficiency.push_back(point);
  }
  EXPECT_NEAR(batteryPower(inverter, Watts(500))->count(), 500 / 0.891, 1e-9);
  EXPECT_NEAR(batteryPower(inverter, Watts(375))->count(), 375 / 0.855, 1e-9);  // halfway between two points
  EXPECT_NEAR(batteryPower(inverter, Watts(7500))->count(), 7500 / 0.943, 1e-9);  // flat above the last
  const double lossAtFirst = 250 / 0.819 - 250;
  EXPECT_NEAR(batteryPower(inverter, Watts(100))->count(), 100 + lossAtFirst, 1e-9);
  EXPECT_NEAR(batteryPower(inverter, Watts(0))->count(), lossAtFirst, 1e-9);
  inverter.units = 2;  // the same share of twice the rated output
  EXPECT_NEAR(batteryPower(inverter, Watts(1000))->count(), 1000 / 0.891, 1e-9);
}

TEST(BatteryPower, IsNotKnownWithoutTheLabel) {
  Inverter inverter;
  EXPECT_FALSE(batteryPower(inverter, Watts(100)));
  inverter.marginalEfficiency = Fraction(0.94);
  EXPECT_FALSE(batteryPower(inverter, Watts(100)));
  inverter.idle = BatteryWatts(0);
  EXPECT_TRUE(batteryPower(inverter, Watts(100)));
  EfficiencyPoint zero;
  zero.load = Fraction(0);
  zero.efficiency = Fraction(0.5);
  inverter.efficiency.push_back(zero);  // a point at no load says nothing
  inverter.continuous = Watts(5000);
  EXPECT_FALSE(batteryPower(inverter, Watts(100)));
}

}  // namespace
}  // namespace stayalight
