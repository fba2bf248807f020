#pragma once

// What the tables say about conductors. Look-ups only; which column counts and what protects what is
// core/wiring. An empty answer means that the table has no such cell. `...Cell` gives the cell's name for a
// working.

#include <cstdint>
#include <optional>
#include <string>

#include "core/code/tables.h"
#include "core/quantity/conductor.h"
#include "core/quantity/quantity.h"

namespace stayalight {

namespace kind {
struct CircularMil {
  static constexpr std::string_view unit = "cmil";
};
struct SquareMillimetre {
  static constexpr std::string_view unit = "mm²";
};
}  // namespace kind
using CircularMils = Quantity<kind::CircularMil>;
using SquareMillimetres = Quantity<kind::SquareMillimetre>;

/// Material of the raceway round a conductor as Chapter 9 Table 9 tells them apart. Cable without metal
/// counts as pvc.
enum class RacewayMaterial : std::uint8_t { pvc, aluminium, steel };

struct Impedance {
  OhmsPerKilofoot resistance;  ///< one conductor, one way
  OhmsPerKilofoot reactance;
  friend constexpr bool operator==(const Impedance&, const Impedance&) = default;
};

/// Table 310.16: not more than three current-carrying conductors, ambient 30 C.
[[nodiscard]] std::optional<AcAmperes> ampacity(ConductorSize size, Metal metal, TemperatureColumn column,
                                                const Tables& tables = publishedTables());
[[nodiscard]] std::string ampacityCell(ConductorSize size, Metal metal, TemperatureColumn column,
                                       Edition edition, const Tables& tables = publishedTables());

/// Table 310.15(B)(1). Empty: conductors of that column are not permitted there. An ambient between two
/// printed ranges (30.4 C) takes the hotter row.
[[nodiscard]] std::optional<Fraction> ambientFactor(Temperature ambient, TemperatureColumn column,
                                                    const Tables& tables = publishedTables());
[[nodiscard]] std::string ambientCell(Temperature ambient, TemperatureColumn column, Edition edition,
                                      const Tables& tables = publishedTables());

/// Table 310.15(C)(1) for a count of current-carrying conductors, 1 or more; empty for none.
[[nodiscard]] std::optional<Fraction> adjustmentFactor(int currentCarrying,
                                                       const Tables& tables = publishedTables());
[[nodiscard]] std::string adjustmentCell(int currentCarrying, Edition edition,
                                         const Tables& tables = publishedTables());

/// Table 250.66: smallest copper grounding electrode conductor for the conductors that supply a building.
[[nodiscard]] ConductorSize electrodeConductor(ConductorSize supply, Metal metal,
                                               const Tables& tables = publishedTables());
/// Table 250.122: smallest equipment grounding conductor behind a device. Empty above the last row.
[[nodiscard]] std::optional<ConductorSize> groundingConductor(RatingAmperes device, Metal metal,
                                                              const Tables& tables = publishedTables());
[[nodiscard]] std::string groundingCell(RatingAmperes device, Metal metal, Edition edition,
                                        const Tables& tables = publishedTables());

/// Chapter 9 Table 8.
[[nodiscard]] CircularMils circularMils(ConductorSize size, const Tables& tables = publishedTables());
/// The same area in mm², as Chapter 9 Table 8 prints it.
[[nodiscard]] SquareMillimetres crossSection(ConductorSize size, const Tables& tables = publishedTables());
/// Chapter 9 Table 8, 75 C, uncoated copper or aluminium, stranded.
[[nodiscard]] OhmsPerKilofoot directCurrentResistance(ConductorSize size, Metal metal,
                                                      const Tables& tables = publishedTables());
[[nodiscard]] std::string directCurrentResistanceCell(ConductorSize size, Metal metal);

/// Chapter 9 Table 9, three single conductors in a raceway. Empty where the table is blank (14 AWG
/// aluminium).
[[nodiscard]] std::optional<Impedance> impedance(ConductorSize size, Metal metal, RacewayMaterial raceway,
                                                 const Tables& tables = publishedTables());
[[nodiscard]] std::string impedanceCell(ConductorSize size, Metal metal, RacewayMaterial raceway);

/// "6 AWG Cu", "250 kcmil Al".
[[nodiscard]] std::string conductorName(ConductorSize size, Metal metal);

}  // namespace stayalight
