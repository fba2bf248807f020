#include "core/code/raceways.h"

#include <algorithm>

namespace stayalight {

SquareInches conductorArea(ConductorSize size, WireType type, const Tables& tables) {
  return SquareInches(
      tables.conductorAreas[static_cast<std::size_t>(size)].insulated[static_cast<std::size_t>(type)]);
}
std::string conductorAreaCell(ConductorSize size, WireType type) {
  return "Chapter 9 Table 5, " + std::string(name(size)) + " " + std::string(unit(size)) +
         (type == WireType::thwn2 ? " THHN/THWN-2" : " XHHW-2");
}

SquareInches racewayArea(RacewayType type, TradeSize size, const Tables& tables) {
  return SquareInches(
      tables.racewayAreas[static_cast<std::size_t>(type)].area[static_cast<std::size_t>(size)]);
}
std::string racewayAreaCell(RacewayType type, TradeSize size) {
  constexpr std::string_view kTypes[] = {"EMT", "PVC 40", "PVC 80", "FMC", "LFMC"};
  return "Chapter 9 Table 4, " + std::string(kTypes[static_cast<std::size_t>(type)]) + " " +
         std::string(Choice<TradeSize>(size).word());
}

std::optional<Fraction> racewayFill(int conductors, const Tables& tables) {
  for (const RacewayFillRow& row : tables.racewayFill) {
    if (conductors >= row.from && (row.to == 0 || conductors <= row.to)) return Fraction(row.percent / 100.0);
  }
  return std::nullopt;
}

std::optional<CubicInches> boxConductorVolume(ConductorSize size, const Tables& tables) {
  for (const BoxConductorRow& row : tables.boxConductors) {
    if (row.size == size) return CubicInches(row.cubicInches);
  }
  return std::nullopt;
}

std::optional<CubicInches> boxVolume(BoxKind kind, const Tables& tables) {
  if (kind == BoxKind::marked) return std::nullopt;
  return CubicInches(tables.boxVolumes[static_cast<std::size_t>(kind) - 1]);
}

double groundsInBox(int grounds, Edition edition, const Tables& tables) {
  if (grounds <= 0) return 0.0;
  if (edition == Edition::y2017) return 1.0;
  const int together = static_cast<int>(codeNumber(CodeNumber::boxGroundsTogether, tables));
  return 1.0 + std::max(0, grounds - together) * codeNumber(CodeNumber::boxFurtherGround, tables);
}

}  // namespace stayalight
