#pragma once

// Conductors as the tables of NFPA 70 list them: an ordered list of sizes, two metals, three insulation
// ratings.

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace stayalight {

/// Sizes of Table 310.16 that the program knows, smallest first; comparing two enumerators compares sizes.
enum class ConductorSize : std::uint8_t {
  awg14,
  awg12,
  awg10,
  awg8,
  awg6,
  awg4,
  awg3,
  awg2,
  awg1,
  awg1_0,
  awg2_0,
  awg3_0,
  awg4_0,
  kcmil250,
  kcmil300,
  kcmil350,
  kcmil400,
  kcmil500
};

inline constexpr std::array<std::string_view, 18> kConductorSizeNames = {
    "14",  "12",  "10",  "8",   "6",   "4",   "3",   "2",   "1",
    "1/0", "2/0", "3/0", "4/0", "250", "300", "350", "400", "500"};
inline constexpr std::size_t kConductorSizeCount = kConductorSizeNames.size();

/// "6" or "1/0" or "250", without the unit.
[[nodiscard]] constexpr std::string_view name(ConductorSize size) {
  return kConductorSizeNames[static_cast<std::size_t>(size)];
}
/// "AWG" up to 4/0, "kcmil" above.
[[nodiscard]] constexpr std::string_view unit(ConductorSize size) {
  return size >= ConductorSize::kcmil250 ? "kcmil" : "AWG";
}
[[nodiscard]] constexpr std::optional<ConductorSize> conductorSizeNamed(std::string_view text) {
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    if (kConductorSizeNames[i] == text) return static_cast<ConductorSize>(i);
  }
  return std::nullopt;
}

/// Copper-clad aluminium uses the aluminium columns.
enum class Metal : std::uint8_t { copper, aluminium };

/// Temperature columns of Table 310.16.
enum class TemperatureColumn : std::uint8_t { c60, c75, c90 };
[[nodiscard]] constexpr int degrees(TemperatureColumn column) {
  return column == TemperatureColumn::c60 ? 60 : column == TemperatureColumn::c75 ? 75 : 90;
}

}  // namespace stayalight
