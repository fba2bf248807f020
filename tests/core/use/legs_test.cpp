#include <gtest/gtest.h>

#include <numbers>

#include "core/use/use.h"

namespace stayalight {
namespace {

const SystemVoltages kSplit{};
SystemVoltages wye(WyeOrder order) { return {AcVolts(120), AcVolts(208), true, order, false}; }

ComplexPower ofAmperes(double amperes, double powerFactor) {
  return complexPower(Watts(120 * amperes * powerFactor), Fraction(powerFactor));
}
LegPower onNeutral(ComplexPower a, ComplexPower b, const SystemVoltages& system = kSplit) {
  LegPower out = onLegs(a, Connection::lineToNeutral, Leg::l1, system);
  out += onLegs(b, Connection::lineToNeutral, Leg::l2, system);
  return out;
}

TEST(Legs, NeutralAtEqualPowerFactorIsTheDifference) {
  // Answered question of a public electrical code forum: legs of 5 A and 8 A leave 3 A.
  EXPECT_NEAR(currents(onNeutral(ofAmperes(5, 0.9), ofAmperes(8, 0.9)), kSplit).neutralMagnitude().count(),
              3.0, 1e-9);
}

TEST(Legs, NeutralAtUnlikePowerFactorsIsAPhasorDifference) {
  // Kirchhoff's law: sqrt(30^2 + 20^2 - 2 x 30 x 20 x 0.7) = 21.45 A, where magnitudes would say 10 A.
  EXPECT_NEAR(currents(onNeutral(ofAmperes(30, 1.0), ofAmperes(20, 0.7)), kSplit).neutralMagnitude().count(),
              21.4476, 5e-5);
}

TEST(Legs, MultiwireCircuitOf100And200Watts) {
  // Public training slides on the lost neutral: 0.833 A in the neutral of 100 W against 200 W at 120 V.
  EXPECT_NEAR(
      currents(onNeutral({Watts(100), Vars(0)}, {Watts(200), Vars(0)}), kSplit).neutralMagnitude().count(),
      0.8333, 1e-4);
}

TEST(Legs, SixCircuitsOfAHouse) {
  // Arithmetic at power factor 1: 2100 VA and 780 VA line to neutral, 1920 VA between the legs.
  LegPower power = onNeutral({Watts(720 + 600 + 780), Vars(0)}, {Watts(480 + 300), Vars(0)});
  power += onLegs({Watts(1920), Vars(0)}, Connection::lineToLine, Leg::l1, kSplit);
  const Currents c = currents(power, kSplit);
  EXPECT_NEAR(c.legMagnitude(Leg::l1).count(), 25.5, 1e-9);
  EXPECT_NEAR(c.legMagnitude(Leg::l2).count(), 14.5, 1e-9);
  EXPECT_NEAR(c.neutralMagnitude().count(), 11.0, 1e-9);
  EXPECT_NEAR(power.total().real.count(), 4800, 1e-9);
}

TEST(Legs, ALoadBetweenTheLegsOfAWyeSplitsUnevenly) {
  const double p = 1500, q = 900;
  const double share = q / (2 * std::numbers::sqrt3);
  const LegPower lagging =
      onLegs({Watts(p), Vars(q)}, Connection::lineToLine, Leg::l1, wye(WyeOrder::l2Lags));
  EXPECT_NEAR(lagging.leg[0].real.count(), p / 2 + share, 1e-9);
  EXPECT_NEAR(lagging.leg[1].real.count(), p / 2 - share, 1e-9);
  const LegPower leading =
      onLegs({Watts(p), Vars(q)}, Connection::lineToLine, Leg::l1, wye(WyeOrder::l2Leads));
  EXPECT_NEAR(leading.leg[1].real.count(), p / 2 + share, 1e-9);
  for (const auto& leg : lagging.leg) {
    EXPECT_NEAR(leg.apparent().count(), std::hypot(p, q) / std::numbers::sqrt3, 1e-9);
  }
  EXPECT_NEAR(lagging.total().real.count(), p, 1e-9);
  EXPECT_NEAR(lagging.total().reactive.count(), q, 1e-9);
}

TEST(Legs, CurrentsOfAWyeDoNotAddByMagnitude) {
  // Phasors: 20 A line to neutral and 7.22 A line to line, both at power factor 1, stand 30 degrees
  // apart: 26.5 A.
  LegPower power = onLegs({Watts(2400), Vars(0)}, Connection::lineToNeutral, Leg::l1, wye(WyeOrder::l2Lags));
  power += onLegs({Watts(7.22 * 120 * std::numbers::sqrt3), Vars(0)}, Connection::lineToLine, Leg::l1,
                  wye(WyeOrder::l2Lags));
  EXPECT_NEAR(currents(power, wye(WyeOrder::l2Lags)).legMagnitude(Leg::l1).count(), 26.5, 0.05);
}

TEST(Legs, NeutralOfTwoWyeLegs) {
  // sqrt(I1^2 + I2^2 - I1 I2) at like power factors: equal legs leave as much as one of them.
  const Currents equal = currents(onNeutral(ofAmperes(20, 0.8), ofAmperes(20, 0.8)), wye(WyeOrder::l2Lags));
  EXPECT_NEAR(equal.neutralMagnitude().count(), 20.0, 1e-9);
  const Currents other = currents(onNeutral(ofAmperes(20, 1), ofAmperes(12, 1)), wye(WyeOrder::l2Leads));
  EXPECT_NEAR(other.neutralMagnitude().count(), std::sqrt(400.0 + 144 - 240), 1e-9);
}

TEST(Legs, AnUnknownOrderTakesTheLargerNeutral) {
  LegPower power = onNeutral(ofAmperes(20, 1.0), ofAmperes(15, 0.6), wye(WyeOrder::unknown));
  power += onLegs({Watts(2000), Vars(1500)}, Connection::lineToLine, Leg::l1, wye(WyeOrder::unknown));
  double largest = 0;
  for (const WyeOrder order : {WyeOrder::l2Lags, WyeOrder::l2Leads}) {
    LegPower laid = onNeutral(ofAmperes(20, 1.0), ofAmperes(15, 0.6), wye(order));
    laid += onLegs({Watts(2000), Vars(1500)}, Connection::lineToLine, Leg::l1, wye(order));
    largest = std::max(largest, currents(laid, wye(order)).neutralMagnitude().count());
  }
  EXPECT_NEAR(currents(power, wye(WyeOrder::unknown)).neutralMagnitude().count(), largest, 1e-9);
}

TEST(Legs, AnUnknownOrderTakesForEachLegTheOrderThatIsWorseForIt) {
  // Inductive loads to neutral on both legs, a resistance between them: one order adds its reactive part on
  // L1, the other on L2. By phasors of each order.
  const auto laidOut = [](WyeOrder order) {
    LegPower power = onNeutral(ofAmperes(20, 0.7), ofAmperes(15, 0.6), wye(order));
    power += onLegs({Watts(3000), Vars(0)}, Connection::lineToLine, Leg::l1, wye(order));
    return power;
  };
  const LegPower unknown = laidOut(WyeOrder::unknown);
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const double lags = currents(laidOut(WyeOrder::l2Lags), wye(WyeOrder::l2Lags)).legMagnitude(leg).count();
    const double leads =
        currents(laidOut(WyeOrder::l2Leads), wye(WyeOrder::l2Leads)).legMagnitude(leg).count();
    EXPECT_GT(std::abs(lags - leads), 1.0) << "or nothing is tried here";
    EXPECT_NEAR(legCurrent(unknown, wye(WyeOrder::unknown), leg).count(), std::max(lags, leads), 1e-9);
    EXPECT_NEAR(legPower(unknown, wye(WyeOrder::unknown), leg).apparent().count(),
                std::max(lags, leads) * 120, 1e-6);
    EXPECT_NEAR(legCurrent(laidOut(WyeOrder::l2Lags), wye(WyeOrder::l2Lags), leg).count(), lags, 1e-9);
  }
}

TEST(Legs, OneSourceOf120VAddsBothLegsInTheNeutral) {
  const SystemVoltages single{AcVolts(120), AcVolts(0), false, WyeOrder::unknown, true};
  LegPower power = onNeutral(ofAmperes(8, 1), ofAmperes(5, 1), single);
  power += onLegs({Watts(1000), Vars(0)}, Connection::lineToLine, Leg::l1, single);
  EXPECT_NEAR(currents(power, single).neutralMagnitude().count(), 13.0, 1e-9);
  EXPECT_NEAR(power.total().real.count(), 13 * 120, 1e-9);  // nothing between the legs
}

}  // namespace
}  // namespace stayalight
