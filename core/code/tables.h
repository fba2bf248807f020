#pragma once

// All figures of the code as one value. The published ones are generated from resources/tables at build time;
// whoever computes takes the value as an argument, so that a test (or an authority's amendment) can put
// another in its place. A cell of 0 is a blank cell: no value in the published table. The look-ups in the
// other headers give it no name.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "core/code/citations.h"
#include "core/code/demand_figures.h"
#include "core/code/edition.h"
#include "core/code/numbers.h"
#include "core/quantity/conductor.h"

namespace stayalight {

/// Table 310.16: amperes by [metal][column], 60, 75, 90 C.
struct AmpacityRow {
  std::array<std::array<double, 3>, 2> amperes{};
};
/// Table 310.15(B)(1): factors for ambients up to `upToCelsius`, by column.
struct AmbientRow {
  double upToCelsius = 0.0;
  std::array<double, 3> factor{};
};
/// Table 310.15(C)(1): `to` of the last row is 0, no upper end.
struct AdjustmentRow {
  int from = 0;
  int to = 0;
  double percent = 0.0;
};
/// Table 240.6(A): a standard rating and the first edition that lists it.
struct StandardRatingRow {
  std::int32_t amperes = 0;
  Edition since = Edition::y2017;
};
/// 240.4(D).
struct SmallConductorRow {
  ConductorSize size{};
  Metal metal{};
  std::int32_t amperes = 0;
};
/// Table 250.122: sizes by metal for devices up to `deviceUpTo` amperes.
struct GroundingRow {
  std::int32_t deviceUpTo = 0;
  std::array<ConductorSize, 2> size{};
};
/// Table 250.66: for supply conductors of each metal up to a size, in the order of the list; blank for the
/// last row, which holds for what is larger.
struct ElectrodeRow {
  std::array<std::optional<ConductorSize>, 2> upTo{};
  ConductorSize copper{};
};
/// Chapter 9 Table 8: ohm per 1000 ft at 75 C, direct current, stranded, by metal.
struct PropertiesRow {
  double circularMils = 0.0;
  double squareMillimetres = 0.0;  ///< as the table prints it
  std::array<double, 2> ohmsPerKilofoot{};
};
/// Chapter 9 Table 9: ohm per 1000 ft at 75 C and 60 Hz, one conductor one way; raceways pvc, aluminium,
/// steel.
struct ImpedanceRow {
  std::array<double, 3> reactance{};
  std::array<std::array<double, 3>, 2> resistance{};
};
/// Tables 430.248 (115, 200, 208, 230 V) and 430.251(A) (no 200 V column).
struct MotorRow {
  std::string_view name;
  double horsepower = 0.0;
  std::array<double, 4> amperes{};
  bool computed = false;
};
/// Table 430.7(B): kVA per horsepower; `most` of the last letter is 0, no upper end.
struct CodeLetterRow {
  char letter = 0;
  double least = 0.0;
  double most = 0.0;
};

/// Chapter 9 Table 5: square inches by wire type.
struct ConductorAreaRow {
  std::array<double, 2> insulated{};
};
/// Chapter 9 Table 4: square inches by trade size.
struct RacewayAreaRow {
  std::array<double, 8> area{};
};
/// Chapter 9 Table 1: `to` of the last row is 0, no upper end.
using RacewayFillRow = AdjustmentRow;
/// Table 314.16(B).
struct BoxConductorRow {
  ConductorSize size{};
  double cubicInches = 0.0;
};

struct Tables {
  std::array<AmpacityRow, kConductorSizeCount> ampacity;
  std::array<AmbientRow, 16> ambient;
  std::array<AdjustmentRow, 7> adjustment;
  std::array<StandardRatingRow, 31> ratings;
  std::array<SmallConductorRow, 5> smallConductors;
  std::array<GroundingRow, 7> grounding;
  std::array<ElectrodeRow, 5> electrode;
  std::array<PropertiesRow, kConductorSizeCount> properties;
  std::array<ImpedanceRow, kConductorSizeCount> impedance;
  std::array<MotorRow, 12> fullLoad;
  std::array<MotorRow, 12> lockedRotor;
  std::array<CodeLetterRow, 19> codeLetters;
  std::array<ConductorAreaRow, kConductorSizeCount> conductorAreas;
  std::array<RacewayAreaRow, 5> racewayAreas;  ///< by RacewayType
  std::array<RacewayFillRow, 3> racewayFill;
  std::array<BoxConductorRow, 5> boxConductors;
  std::array<double, 9> boxVolumes;  ///< Table 314.16(A), by BoxKind without the marked one
  std::array<double, kCodeNumberKeys.size()> numbers;
  std::array<DemandRow, kDemandKeys.size()> demand;
  std::span<const CitationRow> citations;  ///< all rules, sorted by id
};

/// The tables as published.
[[nodiscard]] const Tables& publishedTables();

}  // namespace stayalight
