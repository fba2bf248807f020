#pragma once

// Motor tables of Article 430, single phase. A nameplate, where there is one, comes before every figure here.

#include <cstdint>
#include <optional>
#include <string>

#include "core/code/tables.h"
#include "core/quantity/quantity.h"

namespace stayalight {

namespace kind {
struct KilovoltAmperePerHorsepower {
  static constexpr std::string_view unit = "kVA/hp";
};
}  // namespace kind
using KilovoltAmperesPerHorsepower = Quantity<kind::KilovoltAmperePerHorsepower>;

/// Columns of the motor tables. 115 V is read for systems of 110 to 120 V, 230 V for 220 to 240 V.
enum class MotorVolts : std::uint8_t { v115, v200, v208, v230 };
[[nodiscard]] constexpr AcVolts ratedVolts(MotorVolts column) {
  constexpr double volts[] = {115.0, 200.0, 208.0, 230.0};
  return AcVolts(volts[static_cast<int>(column)]);
}
/// Column for a motor's rated or its system's nominal voltage; empty where no column is meant for it.
[[nodiscard]] std::optional<MotorVolts> motorColumn(AcVolts volts);

/// One cell: the current, and whether the row is printed in the table or computed (locked rotor below 1/2 hp,
/// as six times the full-load current, the ratio of all printed rows).
struct MotorCurrent {
  AcAmperes current;
  bool computed = false;
};

/// Table 430.248. A horsepower between rows takes the larger row (2.5 % of slack for rounded fractions: 0.17
/// is 1/6); empty for none or above the last row.
[[nodiscard]] std::optional<MotorCurrent> fullLoadCurrent(Horsepower power, MotorVolts column,
                                                          const Tables& tables = publishedTables());
[[nodiscard]] std::string fullLoadCell(Horsepower power, MotorVolts column,
                                       const Tables& tables = publishedTables());
/// Table 430.251(A), rows as above; the table has no 200 V column.
[[nodiscard]] std::optional<MotorCurrent> lockedRotorCurrent(Horsepower power, MotorVolts column,
                                                             const Tables& tables = publishedTables());
[[nodiscard]] std::string lockedRotorCell(Horsepower power, MotorVolts column,
                                          const Tables& tables = publishedTables());

/// Table 430.7(B): band of a code letter; the last letter has no upper end. Small letters count as capitals.
struct CodeLetterBand {
  KilovoltAmperesPerHorsepower least;
  std::optional<KilovoltAmperesPerHorsepower> most;
};
[[nodiscard]] std::optional<CodeLetterBand> codeLetterBand(char letter,
                                                           const Tables& tables = publishedTables());
[[nodiscard]] std::string codeLetterCell(char letter);

}  // namespace stayalight
