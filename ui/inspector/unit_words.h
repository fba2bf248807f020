#pragma once

// The words of units that people type, and what they measure. Inside ui/inspector only; free of Qt.

#include <string_view>

namespace stayalight::typed_units {

/// Powers of the base units a value carries. Watts and volt-amperes are kept apart on purpose: 12 A at 120 V
/// says nothing about watts before the power factor is known.
struct Dimension {
  int ampere = 0, volt = 0, watt = 0, second = 0, metre = 0, horsepower = 0, degree = 0, temperature = 0;
  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
  [[nodiscard]] constexpr bool none() const { return *this == Dimension{}; }
};
constexpr Dimension combined(const Dimension& a, const Dimension& b, int sign) {
  return {a.ampere + sign * b.ampere, a.volt + sign * b.volt,
          a.watt + sign * b.watt,     a.second + sign * b.second,
          a.metre + sign * b.metre,   a.horsepower + sign * b.horsepower,
          a.degree + sign * b.degree, a.temperature + sign * b.temperature};
}

inline constexpr Dimension kAmpere{.ampere = 1};
inline constexpr Dimension kVolt{.volt = 1};
inline constexpr Dimension kVoltAmpere{.ampere = 1, .volt = 1};
inline constexpr Dimension kWatt{.watt = 1};
inline constexpr Dimension kSecond{.second = 1};
inline constexpr Dimension kPerSecond{.second = -1};
inline constexpr Dimension kWattSecond{.watt = 1, .second = 1};
inline constexpr Dimension kBatterySecond{.ampere = 1, .volt = 1, .second = 1};
inline constexpr Dimension kMetre{.metre = 1};
inline constexpr Dimension kSquareMetre{.metre = 2};
inline constexpr Dimension kCubicMetre{.metre = 3};
inline constexpr Dimension kHorsepower{.horsepower = 1};
inline constexpr Dimension kDegree{.degree = 1};
inline constexpr Dimension kTemperature{.temperature = 1};

struct UnitWord {
  std::string_view word;
  double factor;
  Dimension dimension;
  double offset = 0.0;  // of a temperature: degrees Celsius = (number - offset) * factor
};

/// The unit of a word as written, else in small letters; nullptr where there is none, or where capitals alone
/// tell two apart.
[[nodiscard]] const UnitWord* unitOf(std::string_view word);

}  // namespace stayalight::typed_units
