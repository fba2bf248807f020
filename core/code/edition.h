#pragma once

// Editions of NFPA 70 (National Electrical Code) a plan can be made under. Which one holds is a matter of
// local adoption.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/plan/site.h"

namespace stayalight {

/// As the plan holds it.
using Edition = CodeEdition;

inline constexpr std::array<Edition, 4> kEditions = {Edition::y2017, Edition::y2020, Edition::y2023,
                                                     Edition::y2026};

[[nodiscard]] constexpr int year(Edition edition) { return 2017 + 3 * static_cast<int>(edition); }
[[nodiscard]] constexpr std::size_t index(Edition edition) { return static_cast<std::size_t>(edition); }
[[nodiscard]] constexpr std::string_view name(Edition edition) {
  constexpr std::array<std::string_view, 4> names = {"2017", "2020", "2023", "2026"};
  return names[index(edition)];
}
[[nodiscard]] constexpr std::optional<Edition> editionOfYear(int theYear) {
  for (const Edition edition : kEditions) {
    if (year(edition) == theYear) return edition;
  }
  return std::nullopt;
}

}  // namespace stayalight
