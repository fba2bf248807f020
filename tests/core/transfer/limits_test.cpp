#include <gtest/gtest.h>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

OverloadPoint point(double seconds, std::optional<double> watts, std::optional<double> legAmperes) {
  OverloadPoint p;
  p.time = Seconds(seconds);
  if (watts) p.watts = Watts(*watts);
  if (legAmperes) p.legCurrent = AcAmperes(*legAmperes);
  return p;
}

Inverter inverterOf(double watts) {
  Inverter inverter;
  inverter.continuous = Watts(watts);
  return inverter;
}

TEST(Voltages, FollowTheServiceOnAnOrdinaryDayAndTheInverterInAnOutage) {
  Plan plan;
  plan.site.edit().service = ServiceSystem::wye120_208;
  plan.site.edit().wyeOrder = WyeOrder::l2Leads;
  const SystemVoltages ordinary = voltages(plan, Mode::ordinary);
  EXPECT_TRUE(ordinary.wye);
  EXPECT_EQ(ordinary.order, WyeOrder::l2Leads);
  EXPECT_EQ(ordinary.legToLeg, AcVolts(208));
  const SystemVoltages outage = voltages(plan, Mode::outage);
  EXPECT_FALSE(outage.wye);
  EXPECT_EQ(outage.legToNeutral, AcVolts(120));
  EXPECT_EQ(outage.legToLeg, AcVolts(240));
}

TEST(Voltages, OneSourceOf120VHasNothingBetweenTheLegs) {
  Plan plan;
  plan.inverter.edit().output = InverterOutput::single120;
  const SystemVoltages outage = voltages(plan, Mode::outage);
  EXPECT_TRUE(outage.single);
  EXPECT_EQ(outage.legToLeg, AcVolts(0));
}

TEST(InverterLimits, ASplitPhaseSourceCarriesHalfItsRatingOnALeg) {
  // Common practice, no source: 7,200 W carries 30 A a leg.
  const InverterLimits limits = inverterLimits(inverterOf(7200));
  EXPECT_DOUBLE_EQ(limits.leg->count(), 30.0);
  EXPECT_DOUBLE_EQ(limits.total->count(), 7200.0);
  EXPECT_DOUBLE_EQ(limits.totalApparent->count(), 7200.0);
}

TEST(InverterLimits, AmperesBeforeLegWattsBeforeHalfTheTotal) {
  Inverter inverter = inverterOf(7200);
  inverter.legContinuous = Watts(4320);
  EXPECT_DOUBLE_EQ(inverterLimits(inverter).leg->count(), 36.0);
  inverter.legCurrent = AcAmperes(27.5);
  EXPECT_DOUBLE_EQ(inverterLimits(inverter).leg->count(), 27.5);
}

TEST(InverterLimits, UnitsAdd) {
  Inverter inverter = inverterOf(6000);
  inverter.units = 2;
  inverter.continuousApparent = VoltAmperes(6600);
  inverter.overload = {point(5, 9000, std::nullopt)};
  const InverterLimits limits = inverterLimits(inverter);
  EXPECT_DOUBLE_EQ(limits.total->count(), 12000.0);
  EXPECT_DOUBLE_EQ(limits.totalApparent->count(), 13200.0);
  EXPECT_DOUBLE_EQ(limits.leg->count(), 50.0);
  ASSERT_EQ(limits.curve.size(), 1u);
  EXPECT_DOUBLE_EQ(limits.curve[0].total.count(), 18000.0);
  EXPECT_DOUBLE_EQ(limits.curve[0].leg.count(), 75.0);
  EXPECT_DOUBLE_EQ(limits.curve[0].apparent.count(), 19800.0);
}

TEST(InverterLimits, AMissingFigureOfAPointIsTheSmallerOfProportionAndNominalVolts) {
  Inverter inverter = inverterOf(7200);
  inverter.legCurrent = AcAmperes(36);  // more than half
  inverter.overload = {point(10, std::nullopt, 54), point(0.5, 14400, std::nullopt)};
  const InverterLimits limits = inverterLimits(inverter);
  ASSERT_EQ(limits.curve.size(), 2u);
  EXPECT_DOUBLE_EQ(limits.curve[0].time.count(), 0.5);  // ascending whatever the order typed
  EXPECT_DOUBLE_EQ(limits.curve[0].leg.count(), 60.0);  // 14,400 W / 240 V; in proportion 72 A
  EXPECT_DOUBLE_EQ(limits.curve[1].total.count(), 10800.0);
}

TEST(InverterLimits, OneLegCarriesAllOfA120VSource) {
  Inverter inverter = inverterOf(2400);
  inverter.output = InverterOutput::single120;
  EXPECT_DOUBLE_EQ(inverterLimits(inverter).leg->count(), 20.0);
  inverter.continuous.reset();
  inverter.legCurrent = AcAmperes(25);
  const InverterLimits limits = inverterLimits(inverter);
  EXPECT_FALSE(limits.total);
  EXPECT_DOUBLE_EQ(limits.totalApparent->count(), 3000.0);
}

TEST(InverterLimits, NothingEnteredGivesNoLimit) {
  const InverterLimits limits = inverterLimits(Inverter{});
  EXPECT_FALSE(limits.total || limits.totalApparent || limits.leg);
  EXPECT_FALSE(limitAt(limits, Seconds(1)).leg);
}

TEST(LimitAt, TakesTheSafeSideBetweenPoints) {
  Inverter inverter = inverterOf(7200);
  inverter.overload = {point(0.5, 14400, std::nullopt), point(10, 10800, std::nullopt),
                       point(1800, 7920, std::nullopt)};
  const InverterLimits limits = inverterLimits(inverter);
  const struct {
    double seconds, leg, total, pointTime;
  } rows[] = {
      {0.1, 60, 14400, 0.5},                         // before the first point the first, no more
      {0.5, 60, 14400, 0.5}, {0.51, 45, 10800, 10},  // between points the longer time's
      {10, 45, 10800, 10},   {600, 33, 7920, 1800}, {1801, 30, 7200, 0},  // after the last the all-day rating
  };
  for (const auto& row : rows) {
    const LimitAt at = limitAt(limits, Seconds(row.seconds));
    EXPECT_DOUBLE_EQ(at.leg->count(), row.leg) << row.seconds;
    EXPECT_DOUBLE_EQ(at.total->count(), row.total) << row.seconds;
    EXPECT_DOUBLE_EQ(at.pointTime.count(), row.pointTime) << row.seconds;
  }
  // Common practice, no source: a tenth above the rating is held many minutes, half a second well above it.
  EXPECT_GE(limitAt(limits, Seconds(900)).total->count(), 7200 * 1.1 - 1e-9);
  EXPECT_GE(limitAt(limits, Seconds(0.5)).total->count(), 7200 * 1.5);
}

TEST(LimitAt, WithoutACurveTheAllDayRatingHoldsAtAnyTime) {
  const InverterLimits limits = inverterLimits(inverterOf(7200));
  EXPECT_DOUBLE_EQ(limitAt(limits, Seconds(0.1)).leg->count(), 30.0);
}

}  // namespace
}  // namespace stayalight
