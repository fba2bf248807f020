#pragma once

// One type per meaning. Two quantities of the same unit but another meaning (energy at the battery and energy
// at the loads, AC and DC amperes) are different types and do not mix. A value leaves the typed world only by
// `count()`, whose unit is the type's name.

#include <cmath>
#include <compare>
#include <concepts>
#include <cstdint>
#include <string_view>

namespace stayalight {

template <class Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  constexpr explicit Quantity(double value) : value_(value) {}

  /// The number in the unit the kind names.
  [[nodiscard]] constexpr double count() const { return value_; }
  [[nodiscard]] static constexpr std::string_view unit() { return Kind::unit; }

  friend constexpr auto operator<=>(Quantity, Quantity) = default;

  constexpr Quantity& operator+=(Quantity other) {
    value_ += other.value_;
    return *this;
  }
  constexpr Quantity& operator-=(Quantity other) {
    value_ -= other.value_;
    return *this;
  }
  constexpr Quantity& operator*=(double factor) {
    value_ *= factor;
    return *this;
  }

  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
  friend constexpr Quantity operator*(Quantity a, double factor) { return Quantity(a.value_ * factor); }
  friend constexpr Quantity operator*(double factor, Quantity a) { return Quantity(a.value_ * factor); }
  friend constexpr Quantity operator/(Quantity a, double divisor) { return Quantity(a.value_ / divisor); }
  /// How many times `b` goes into `a`: a plain number.
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }

 private:
  double value_ = 0.0;
};

namespace kind {
struct Watt {
  static constexpr std::string_view unit = "W";
};
struct Var {
  static constexpr std::string_view unit = "var";
};
struct VoltAmpere {
  static constexpr std::string_view unit = "VA";
};
struct BatteryWatt {
  static constexpr std::string_view unit = "W";
};
struct AcAmpere {
  static constexpr std::string_view unit = "A";
};
struct DcAmpere {
  static constexpr std::string_view unit = "A";
};
struct AcVolt {
  static constexpr std::string_view unit = "V";
};
struct DcVolt {
  static constexpr std::string_view unit = "V";
};
struct LoadWattHour {
  static constexpr std::string_view unit = "Wh";
};
struct BatteryWattHour {
  static constexpr std::string_view unit = "Wh";
};
struct Hour {
  static constexpr std::string_view unit = "h";
};
struct Second {
  static constexpr std::string_view unit = "s";
};
struct PerHour {
  static constexpr std::string_view unit = "1/h";
};
struct Fraction {
  static constexpr std::string_view unit = "";
};
struct Horsepower {
  static constexpr std::string_view unit = "hp";
};
struct Ohm {
  static constexpr std::string_view unit = "ohm";
};
struct OhmPerKilofoot {
  static constexpr std::string_view unit = "ohm/kft";
};
struct SquareFoot {
  static constexpr std::string_view unit = "ft2";
};
struct SquareInch {
  static constexpr std::string_view unit = "in2";
};
struct CubicInch {
  static constexpr std::string_view unit = "in3";
};
struct Degree {
  static constexpr std::string_view unit = "deg";
};
}  // namespace kind

using Watts = Quantity<kind::Watt>;                ///< real power on the AC side
using Vars = Quantity<kind::Var>;                  ///< reactive power, lagging positive
using VoltAmperes = Quantity<kind::VoltAmpere>;    ///< apparent power
using BatteryWatts = Quantity<kind::BatteryWatt>;  ///< power at the battery terminals
using AcAmperes = Quantity<kind::AcAmpere>;
using DcAmperes = Quantity<kind::DcAmpere>;
using AcVolts = Quantity<kind::AcVolt>;
using DcVolts = Quantity<kind::DcVolt>;
using LoadWattHours = Quantity<kind::LoadWattHour>;        ///< energy that reaches the loads
using BatteryWattHours = Quantity<kind::BatteryWattHour>;  ///< energy at the battery terminals
using Hours = Quantity<kind::Hour>;
using Seconds = Quantity<kind::Second>;
using PerHour = Quantity<kind::PerHour>;
using Fraction = Quantity<kind::Fraction>;  ///< 1 is the whole
using Horsepower = Quantity<kind::Horsepower>;
using Ohms = Quantity<kind::Ohm>;
using OhmsPerKilofoot = Quantity<kind::OhmPerKilofoot>;
using SquareFeet = Quantity<kind::SquareFoot>;
using SquareInches = Quantity<kind::SquareInch>;
using CubicInches = Quantity<kind::CubicInch>;
using Degrees = Quantity<kind::Degree>;

constexpr VoltAmperes operator*(AcVolts v, AcAmperes a) { return VoltAmperes(v.count() * a.count()); }
constexpr AcAmperes operator/(VoltAmperes s, AcVolts v) { return AcAmperes(s.count() / v.count()); }
constexpr BatteryWatts operator*(DcVolts v, DcAmperes a) { return BatteryWatts(v.count() * a.count()); }
constexpr DcAmperes operator/(BatteryWatts p, DcVolts v) { return DcAmperes(p.count() / v.count()); }
constexpr LoadWattHours operator*(Watts p, Hours t) { return LoadWattHours(p.count() * t.count()); }
constexpr BatteryWattHours operator*(BatteryWatts p, Hours t) {
  return BatteryWattHours(p.count() * t.count());
}
constexpr Hours operator/(BatteryWattHours e, BatteryWatts p) { return Hours(e.count() / p.count()); }
constexpr AcVolts operator*(AcAmperes i, Ohms r) { return AcVolts(i.count() * r.count()); }

/// Real and reactive power together. Both add over loads and legs; apparent power and amperes do not.
struct ComplexPower {
  Watts real;
  Vars reactive;

  friend constexpr bool operator==(const ComplexPower&, const ComplexPower&) = default;
  constexpr ComplexPower& operator+=(const ComplexPower& other) {
    real += other.real;
    reactive += other.reactive;
    return *this;
  }
  friend constexpr ComplexPower operator+(ComplexPower a, const ComplexPower& b) { return a += b; }
  friend constexpr ComplexPower operator*(const ComplexPower& a, double factor) {
    return {a.real * factor, a.reactive * factor};
  }
  [[nodiscard]] VoltAmperes apparent() const {
    return VoltAmperes(std::hypot(real.count(), reactive.count()));
  }
};

/// Power of a load of `real` watts at a lagging power factor in (0, 1].
[[nodiscard]] inline ComplexPower complexPower(Watts real, Fraction powerFactor) {
  const double pf = powerFactor.count();
  return {real, Vars(pf >= 1.0 ? 0.0 : real.count() * std::sqrt(1.0 - pf * pf) / pf)};
}

/// A rating stamped on a device, in whole amperes (a breaker, a bus, a switch).
class RatingAmperes {
 public:
  constexpr RatingAmperes() = default;
  constexpr explicit RatingAmperes(std::int32_t amperes) : amperes_(amperes) {}
  [[nodiscard]] constexpr std::int32_t count() const { return amperes_; }
  [[nodiscard]] constexpr AcAmperes amperes() const { return AcAmperes(amperes_); }
  friend constexpr auto operator<=>(RatingAmperes, RatingAmperes) = default;

 private:
  std::int32_t amperes_ = 0;
};

/// A length in whole micrometres, so that feet and inches come back as they were typed.
class Length {
 public:
  constexpr Length() = default;
  [[nodiscard]] static constexpr Length micrometres(std::int64_t um) { return Length(um); }
  [[nodiscard]] static Length feet(double ft) { return Length(std::llround(ft * 304800.0)); }
  [[nodiscard]] static Length inches(double in) { return Length(std::llround(in * 25400.0)); }
  [[nodiscard]] static Length metres(double m) { return Length(std::llround(m * 1e6)); }
  [[nodiscard]] constexpr std::int64_t inMicrometres() const { return um_; }
  [[nodiscard]] constexpr double inFeet() const { return static_cast<double>(um_) / 304800.0; }
  [[nodiscard]] constexpr double inInches() const { return static_cast<double>(um_) / 25400.0; }
  [[nodiscard]] constexpr double inMetres() const { return static_cast<double>(um_) / 1e6; }
  friend constexpr auto operator<=>(Length, Length) = default;

 private:
  constexpr explicit Length(std::int64_t um) : um_(um) {}
  std::int64_t um_ = 0;
};

/// A temperature in whole thousandths of a degree Celsius.
class Temperature {
 public:
  constexpr Temperature() = default;
  [[nodiscard]] static constexpr Temperature milliCelsius(std::int32_t t) { return Temperature(t); }
  [[nodiscard]] static Temperature celsius(double t) {
    return Temperature(static_cast<std::int32_t>(std::lround(t * 1000.0)));
  }
  [[nodiscard]] static Temperature fahrenheit(double f) { return celsius((f - 32.0) / 1.8); }
  [[nodiscard]] constexpr std::int32_t inMilliCelsius() const { return mC_; }
  [[nodiscard]] constexpr double inCelsius() const { return mC_ / 1000.0; }
  [[nodiscard]] constexpr double inFahrenheit() const { return mC_ / 1000.0 * 1.8 + 32.0; }
  friend constexpr auto operator<=>(Temperature, Temperature) = default;

 private:
  constexpr explicit Temperature(std::int32_t mC) : mC_(mC) {}
  std::int32_t mC_ = 0;
};

/// A time of day in whole minutes after midnight, 0 to 1439.
class TimeOfDay {
 public:
  constexpr TimeOfDay() = default;
  constexpr explicit TimeOfDay(int minutes) : minutes_(((minutes % 1440) + 1440) % 1440) {}
  [[nodiscard]] constexpr int minutes() const { return minutes_; }
  [[nodiscard]] constexpr int hour() const { return minutes_ / 60; }
  friend constexpr auto operator<=>(TimeOfDay, TimeOfDay) = default;

 private:
  int minutes_ = 0;
};

/// 1 is January.
enum class Month : std::uint8_t {
  january = 1,
  february,
  march,
  april,
  may,
  june,
  july,
  august,
  september,
  october,
  november,
  december
};

/// The two ungrounded conductors of the service.
enum class Leg : std::uint8_t { l1, l2 };
[[nodiscard]] constexpr Leg otherLeg(Leg leg) { return leg == Leg::l1 ? Leg::l2 : Leg::l1; }
[[nodiscard]] constexpr std::string_view legName(Leg leg) { return leg == Leg::l1 ? "L1" : "L2"; }
[[nodiscard]] constexpr std::size_t index(Leg leg) { return leg == Leg::l1 ? 0 : 1; }

/// Low, likely and high are the 10th, 50th and 90th percentile of what is believed about one figure.
template <class T>
struct Range {
  T low{};
  T likely{};
  T high{};
  friend constexpr bool operator==(const Range&, const Range&) = default;
};

template <class T>
[[nodiscard]] constexpr Range<T> exactly(T value) {
  return {value, value, value};
}

}  // namespace stayalight
