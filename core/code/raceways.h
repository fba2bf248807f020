#pragma once

// What the tables say about room: conductors in raceways and in boxes. Look-ups only; the counting is in
// core/wiring. An empty answer means that the table has no such cell.

#include <optional>
#include <string>

#include "core/code/tables.h"
#include "core/plan/raceway.h"

namespace stayalight {

/// Chapter 9 Table 5: area of one insulated conductor.
[[nodiscard]] SquareInches conductorArea(ConductorSize size, WireType type,
                                         const Tables& tables = publishedTables());
[[nodiscard]] std::string conductorAreaCell(ConductorSize size, WireType type);
/// Chapter 9 Table 4: inside area.
[[nodiscard]] SquareInches racewayArea(RacewayType type, TradeSize size,
                                       const Tables& tables = publishedTables());
[[nodiscard]] std::string racewayAreaCell(RacewayType type, TradeSize size);
/// Chapter 9 Table 1 for a number of conductors, cables counted as one each, 1 or more; empty for none.
[[nodiscard]] std::optional<Fraction> racewayFill(int conductors, const Tables& tables = publishedTables());
/// Table 314.16(B): volume of one conductor; empty above 6 AWG, where 314.28 counts instead.
[[nodiscard]] std::optional<CubicInches> boxConductorVolume(ConductorSize size,
                                                            const Tables& tables = publishedTables());
/// Table 314.16(A); empty for a box that goes by its mark.
[[nodiscard]] std::optional<CubicInches> boxVolume(BoxKind kind, const Tables& tables = publishedTables());
/// 314.16(B)(5): how many conductor volumes the grounding conductors of a box take together, as volumes of
/// the largest: one for the first four and a quarter for each further; before the 2020 edition one for all.
[[nodiscard]] double groundsInBox(int grounds, Edition edition, const Tables& tables = publishedTables());

}  // namespace stayalight
