#pragma once

// The columns of the table, made from the field table. Inside core/catalogue only.

#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/plan/field.h"

namespace stayalight::table {

enum class Part : std::uint8_t { value, low, high };

/// A column that is part of a field of the load.
struct LoadColumn {
  const Field* field = nullptr;
  Part part = Part::value;
  [[nodiscard]] std::string name() const;
};
/// All of them, in the order of the field table; what belongs to one plan alone is left out.
[[nodiscard]] const std::vector<LoadColumn>& loadColumns();

inline constexpr std::string_view kId = "id";
inline constexpr std::string_view kName = "name";
inline constexpr std::string_view kWords = "words";
inline constexpr std::string_view kOldUnit = "old_unit_W";
inline constexpr std::string_view kWindows = "windows";
inline constexpr std::string_view kDayLow = "day_kWh low";
inline constexpr std::string_view kDayHigh = "day_kWh high";
inline constexpr std::string_view kDaySource = "day_source";
inline constexpr std::string_view kSource = "source";

/// Words of a text, parted at spaces and at marks between words; in lower case.
[[nodiscard]] std::vector<std::string> wordsOf(std::string_view text);

}  // namespace stayalight::table
