#include "core/code/conductors.h"

namespace stayalight {
namespace {

template <class Q>
std::optional<Q> cell(double value) {
  if (value <= 0.0) return std::nullopt;
  return Q(value);
}

std::size_t index(ConductorSize size) { return static_cast<std::size_t>(size); }
std::size_t index(Metal metal) { return static_cast<std::size_t>(metal); }
std::size_t index(TemperatureColumn column) { return static_cast<std::size_t>(column); }
std::size_t index(RacewayMaterial raceway) { return static_cast<std::size_t>(raceway); }

const AmbientRow* ambientRow(Temperature ambient, const Tables& tables) {
  for (const AmbientRow& row : tables.ambient) {
    if (ambient.inCelsius() <= row.upToCelsius) return &row;
  }
  return nullptr;
}

const AdjustmentRow* adjustmentRow(int currentCarrying, const Tables& tables) {
  for (const AdjustmentRow& row : tables.adjustment) {
    if (currentCarrying >= row.from && (row.to == 0 || currentCarrying <= row.to)) return &row;
  }
  return nullptr;
}

const GroundingRow* groundingRow(RatingAmperes device, const Tables& tables) {
  for (const GroundingRow& row : tables.grounding) {
    if (device.count() <= row.deviceUpTo) return &row;
  }
  return nullptr;
}

std::string tableOf(RuleId rule, Edition edition, const Tables& tables) {
  return "Table " + citationOrNearest(rule, edition, tables);
}

std::string wholeNumber(double value) { return std::to_string(static_cast<int>(value)); }

}  // namespace

std::optional<AcAmperes> ampacity(ConductorSize size, Metal metal, TemperatureColumn column,
                                  const Tables& tables) {
  return cell<AcAmperes>(tables.ampacity[index(size)].amperes[index(metal)][index(column)]);
}
std::string ampacityCell(ConductorSize size, Metal metal, TemperatureColumn column, Edition edition,
                         const Tables& tables) {
  return tableOf(RuleId{"conductor.ampacity"}, edition, tables) + ", " + conductorName(size, metal) + ", " +
         std::to_string(degrees(column)) + " C";
}

std::optional<Fraction> ambientFactor(Temperature ambient, TemperatureColumn column, const Tables& tables) {
  const AmbientRow* const row = ambientRow(ambient, tables);
  return row == nullptr ? std::nullopt : cell<Fraction>(row->factor[index(column)]);
}
std::string ambientCell(Temperature ambient, TemperatureColumn column, Edition edition,
                        const Tables& tables) {
  const AmbientRow* const row = ambientRow(ambient, tables);
  const std::string place =
      row == nullptr ? "above the last row" : "up to " + wholeNumber(row->upToCelsius) + " C";
  return tableOf(RuleId{"conductor.ambient"}, edition, tables) + ", " + place + ", " +
         std::to_string(degrees(column)) + " C column";
}

std::optional<Fraction> adjustmentFactor(int currentCarrying, const Tables& tables) {
  const AdjustmentRow* const row = adjustmentRow(currentCarrying, tables);
  return row == nullptr ? std::nullopt : cell<Fraction>(row->percent / 100.0);
}
std::string adjustmentCell(int currentCarrying, Edition edition, const Tables& tables) {
  const AdjustmentRow* const row = adjustmentRow(currentCarrying, tables);
  std::string place = "no row";
  if (row != nullptr) {
    place = row->to == 0 ? std::to_string(row->from) + " and more"
                         : std::to_string(row->from) + " to " + std::to_string(row->to);
  }
  return tableOf(RuleId{"conductor.adjustment"}, edition, tables) + ", " + place +
         " current-carrying conductors";
}

ConductorSize electrodeConductor(ConductorSize supply, Metal metal, const Tables& tables) {
  for (const ElectrodeRow& row : tables.electrode) {
    const std::optional<ConductorSize>& end = row.upTo[index(metal)];
    if (!end || supply <= *end) return row.copper;
  }
  return tables.electrode.back().copper;
}

std::optional<ConductorSize> groundingConductor(RatingAmperes device, Metal metal, const Tables& tables) {
  const GroundingRow* const row = groundingRow(device, tables);
  if (row == nullptr) return std::nullopt;
  return row->size[index(metal)];
}
std::string groundingCell(RatingAmperes device, Metal metal, Edition edition, const Tables& tables) {
  const GroundingRow* const row = groundingRow(device, tables);
  const std::string place =
      row == nullptr ? "above the last row" : "up to " + std::to_string(row->deviceUpTo) + " A";
  return tableOf(RuleId{"ground.size"}, edition, tables) + ", " + place + ", " +
         (metal == Metal::copper ? "Cu" : "Al");
}

CircularMils circularMils(ConductorSize size, const Tables& tables) {
  return CircularMils(tables.properties[index(size)].circularMils);
}
SquareMillimetres crossSection(ConductorSize size, const Tables& tables) {
  return SquareMillimetres(tables.properties[index(size)].squareMillimetres);
}
OhmsPerKilofoot directCurrentResistance(ConductorSize size, Metal metal, const Tables& tables) {
  return OhmsPerKilofoot(tables.properties[index(size)].ohmsPerKilofoot[index(metal)]);
}
std::string directCurrentResistanceCell(ConductorSize size, Metal metal) {
  return "Chapter 9 Table 8, " + conductorName(size, metal) + ", stranded";
}

std::optional<Impedance> impedance(ConductorSize size, Metal metal, RacewayMaterial raceway,
                                   const Tables& tables) {
  const ImpedanceRow& row = tables.impedance[index(size)];
  const auto resistance = cell<OhmsPerKilofoot>(row.resistance[index(metal)][index(raceway)]);
  const auto reactance = cell<OhmsPerKilofoot>(row.reactance[index(raceway)]);
  if (!resistance || !reactance) return std::nullopt;
  return Impedance{*resistance, *reactance};
}
std::string impedanceCell(ConductorSize size, Metal metal, RacewayMaterial raceway) {
  constexpr std::string_view names[] = {"PVC", "aluminium", "steel"};
  return "Chapter 9 Table 9, " + conductorName(size, metal) + ", " + std::string(names[index(raceway)]) +
         " raceway";
}

std::string conductorName(ConductorSize size, Metal metal) {
  return std::string(name(size)) + " " + std::string(unit(size)) + (metal == Metal::copper ? " Cu" : " Al");
}

}  // namespace stayalight
