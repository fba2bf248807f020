// Most of this is settled while compiling: what must not mix does not compile, what does gives the right
// type.

#include <gtest/gtest.h>

#include <type_traits>

#include "core/quantity/quantity.h"

namespace stayalight {
namespace {

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b) {
  a* b;
};
template <class A, class B>
concept Divides = requires(A a, B b) {
  a / b;
};
template <class A, class B>
concept Compares = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept Assigns = requires(A a, B b) {
  a = b;
};

// One meaning adds to itself and to nothing else, whatever the unit's name.
static_assert(Adds<Watts, Watts>);
static_assert(!Adds<Watts, VoltAmperes>);
static_assert(!Adds<Watts, Vars>);
static_assert(!Adds<Watts, BatteryWatts>);
static_assert(!Adds<AcAmperes, DcAmperes>);
static_assert(!Adds<LoadWattHours, BatteryWattHours>);
static_assert(!Adds<Hours, Seconds>);
static_assert(!Adds<Watts, double>);
static_assert(!Adds<RatingAmperes, AcAmperes>);
static_assert(!Compares<AcAmperes, DcAmperes>);
static_assert(!Compares<Watts, VoltAmperes>);
static_assert(!Assigns<Watts&, double>);
static_assert(!Assigns<LoadWattHours&, BatteryWattHours>);
static_assert(!std::is_convertible_v<double, Watts>);
static_assert(!std::is_convertible_v<Watts, double>);
static_assert(!std::is_convertible_v<std::int32_t, RatingAmperes>);

// What multiplies, and to what.
static_assert(std::is_same_v<decltype(AcVolts(1) * AcAmperes(1)), VoltAmperes>);
static_assert(std::is_same_v<decltype(VoltAmperes(1) / AcVolts(1)), AcAmperes>);
static_assert(std::is_same_v<decltype(BatteryWatts(1) / DcVolts(1)), DcAmperes>);
static_assert(std::is_same_v<decltype(Watts(1) * Hours(1)), LoadWattHours>);
static_assert(std::is_same_v<decltype(BatteryWatts(1) * Hours(1)), BatteryWattHours>);
static_assert(std::is_same_v<decltype(BatteryWattHours(1) / BatteryWatts(1)), Hours>);
static_assert(std::is_same_v<decltype(Watts(1) / Watts(1)), double>);
static_assert(!Multiplies<AcVolts, DcAmperes>);
static_assert(!Multiplies<DcVolts, AcAmperes>);
static_assert(!Multiplies<Watts, Seconds>);
static_assert(!Divides<Watts, AcVolts>);  // real power over volts is no current: the power factor is missing
static_assert(!Divides<LoadWattHours, BatteryWatts>);

static_assert((Watts(3) + Watts(4)).count() == 7.0);
static_assert((Watts(3) - Watts(4)).count() == -1.0);
static_assert((-Watts(3)).count() == -3.0);
static_assert((Watts(3) * 2.0).count() == 6.0);
static_assert((2.0 * Watts(3)).count() == 6.0);
static_assert((Watts(3) / 2.0).count() == 1.5);
static_assert(Watts(6) / Watts(4) == 1.5);
static_assert((AcVolts(240) * AcAmperes(20)).count() == 4800.0);
static_assert((Watts(250) * Hours(2)).count() == 500.0);
static_assert(Watts(1) < Watts(2));
static_assert(Watts().count() == 0.0);
static_assert(AcAmperes::unit() == "A" && DcAmperes::unit() == "A" && Vars::unit() == "var");
static_assert(RatingAmperes(60).amperes() == AcAmperes(60));
static_assert(otherLeg(Leg::l1) == Leg::l2 && otherLeg(Leg::l2) == Leg::l1);
static_assert(legName(Leg::l1) == "L1" && legName(Leg::l2) == "L2");
static_assert(index(Leg::l1) == 0 && index(Leg::l2) == 1);
static_assert(exactly(Watts(5)) == Range<Watts>{Watts(5), Watts(5), Watts(5)});

TEST(Quantity, accumulates) {
  Watts sum;
  sum += Watts(5);
  sum -= Watts(2);
  sum *= 3.0;
  EXPECT_DOUBLE_EQ(sum.count(), 9.0);
}

TEST(ComplexPower, apparentPowerIsThePhasorSum) {
  // Triangle 3-4-5, and 100 W at a power factor of 0.8 lagging: 75 var, 125 VA. Definitions of power factor.
  EXPECT_DOUBLE_EQ((ComplexPower{Watts(3), Vars(4)}).apparent().count(), 5.0);
  const ComplexPower motor = complexPower(Watts(100), Fraction(0.8));
  EXPECT_NEAR(motor.reactive.count(), 75.0, 1e-12);
  EXPECT_NEAR(motor.apparent().count(), 125.0, 1e-12);
  EXPECT_EQ(complexPower(Watts(100), Fraction(1.0)).reactive, Vars(0));
}

TEST(ComplexPower, wattsAndVarsAddWhereVoltAmperesDoNot) {
  const ComplexPower heater = complexPower(Watts(1000), Fraction(1.0));
  const ComplexPower motor = complexPower(Watts(600), Fraction(0.6));
  const ComplexPower both = heater + motor;
  EXPECT_NEAR(both.real.count(), 1600.0, 1e-9);
  EXPECT_NEAR(both.reactive.count(), 800.0, 1e-9);
  EXPECT_LT(both.apparent().count(), heater.apparent().count() + motor.apparent().count());
}

TEST(ComplexPower, theNeutralOfTwoLegsIsThePhasorDifference) {
  // 30 A at unity on one leg, 20 A at 0.7 on the other, 120 V: 21.45 A in the neutral, not 10. Worked by
  // hand.
  const ComplexPower one = complexPower(Watts(120 * 30), Fraction(1.0));
  const ComplexPower other = complexPower(Watts(120 * 20 * 0.7), Fraction(0.7));
  const VoltAmperes difference = (one + other * -1.0).apparent();
  EXPECT_NEAR((difference / AcVolts(120)).count(), 21.45, 0.005);
}

TEST(Length, feetAndInchesComeBackAsTyped) {
  // The foot is 0.3048 m by definition (international yard and pound agreement, 1959).
  EXPECT_EQ(Length::feet(1).inMicrometres(), 304800);
  EXPECT_EQ(Length::inches(1).inMicrometres(), 25400);
  EXPECT_EQ(Length::metres(1).inMicrometres(), 1000000);
  EXPECT_EQ(Length::feet(1), Length::inches(12));
  for (int tenths = 0; tenths <= 10000; ++tenths) {
    const double typed = tenths / 10.0;
    EXPECT_NEAR(Length::feet(typed).inFeet(), typed, 1e-9);
    EXPECT_NEAR(Length::inches(typed).inInches(), typed, 1e-9);
    EXPECT_NEAR(Length::metres(typed).inMetres(), typed, 1e-9);
  }
}

TEST(Temperature, degreesComeBackAsTyped) {
  EXPECT_EQ(Temperature::fahrenheit(32), Temperature::milliCelsius(0));
  EXPECT_EQ(Temperature::fahrenheit(212), Temperature::celsius(100));
  EXPECT_EQ(Temperature::fahrenheit(-40), Temperature::celsius(-40));
  EXPECT_EQ(Temperature::fahrenheit(86), Temperature::celsius(30));
  for (int f = -60; f <= 180; ++f)
    EXPECT_EQ(std::lround(Temperature::fahrenheit(f).inFahrenheit() * 10.0), f * 10L) << f;
}

TEST(TimeOfDay, wrapsAroundMidnight) {
  EXPECT_EQ(TimeOfDay(0).minutes(), 0);
  EXPECT_EQ(TimeOfDay(1439).hour(), 23);
  EXPECT_EQ(TimeOfDay(1440), TimeOfDay(0));
  EXPECT_EQ(TimeOfDay(-30), TimeOfDay(23 * 60 + 30));
  EXPECT_EQ(TimeOfDay(3 * 1440 + 61).minutes(), 61);
}

}  // namespace
}  // namespace stayalight
