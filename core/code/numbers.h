#pragma once

// The small numbers of the rules, each a row of resources/tables/code_numbers.csv with the rule it belongs
// to.

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/message/message.h"
#include "core/quantity/conductor.h"
#include "core/quantity/quantity.h"

namespace stayalight {

struct Tables;
[[nodiscard]] const Tables& publishedTables();

/// Keys of the table, in the order of its rows.
enum class CodeNumber : std::uint8_t {
  continuousFactor,
  nextSizeUpLimit,
  terminalCurrent,
  terminalSize,
  nippleLength,
  nmColumn,
  neutralRangeDryerFactor,
  neutralAbove200Limit,
  neutralAbove200Factor,
  dropAdviceOneRun,
  busOppositeEndsFactor,
  sourceCurrentFactor,
  afciExtensionLength,
  wiringSpaceConductors,
  wiringSpaceSplices,
  loadingMargin,
  legVolts,
  lineVoltsSplitPhase,
  lineVoltsWye,
  nippleFill,
  boxGroundsTogether,
  boxFurtherGround,
  generatorConductorFactor,
  rodElectrodeSize,
  buildingOneCircuit,
  buildingTwoCircuits,
  buildingDisconnect,
  afciDevice,
};
inline constexpr std::array<std::string_view, 28> kCodeNumberKeys = {
    "continuous_factor",
    "next_size_up_limit",
    "terminal_current",
    "terminal_size",
    "nipple_length",
    "nm_column",
    "neutral_range_dryer_factor",
    "neutral_above_200_limit",
    "neutral_above_200_factor",
    "drop_advice_one_run",
    "bus_opposite_ends_factor",
    "source_current_factor",
    "afci_extension_length",
    "wiring_space_conductors",
    "wiring_space_splices",
    "loading_margin",
    "leg_volts",
    "line_volts_split_phase",
    "line_volts_wye",
    "nipple_fill",
    "box_grounds_together",
    "box_further_ground",
    "generator_conductor_factor",
    "rod_electrode_size",
    "building_one_circuit",
    "building_two_circuits",
    "building_disconnect",
    "afci_device",
};

/// The number in the unit of its row, and the rule it is from.
[[nodiscard]] double codeNumber(CodeNumber which, const Tables& tables = publishedTables());
[[nodiscard]] std::string_view unitOf(CodeNumber which);
[[nodiscard]] RuleId ruleOf(CodeNumber which);

/// Factor on the continuous part of a load, for devices and conductors only.
[[nodiscard]] Fraction continuousFactor(const Tables& tables = publishedTables());
/// Largest device that may be the next standard size above its conductor's ampacity.
[[nodiscard]] RatingAmperes nextSizeUpLimit(const Tables& tables = publishedTables());
/// Largest grounding electrode conductor that rods alone ask for, copper.
[[nodiscard]] ConductorSize rodElectrodeConductor(const Tables& tables = publishedTables());
/// Up to this rating, and this size, terminals count as 60 C unless marked for 75 C.
[[nodiscard]] RatingAmperes terminalCurrent(const Tables& tables = publishedTables());
[[nodiscard]] ConductorSize terminalSize(const Tables& tables = publishedTables());
/// A raceway not longer than this is a nipple: no adjustment for the number of conductors.
[[nodiscard]] Length nippleLength(const Tables& tables = publishedTables());
/// Share of its area that a nipple may be filled to.
[[nodiscard]] Fraction nippleFill(const Tables& tables = publishedTables());
/// A circuit made longer by at most this much, inside enclosures not counted, needs no arc-fault protection.
[[nodiscard]] Length afciExtensionLength(const Tables& tables = publishedTables());
/// Largest breaker of the branch circuits that the arc-fault rule is about.
[[nodiscard]] RatingAmperes afciDevice(const Tables& tables = publishedTables());
/// Share of a panel's wiring space that conductors alone, and conductors with their splices, may take.
[[nodiscard]] Fraction wiringSpaceConductors(const Tables& tables = publishedTables());
[[nodiscard]] Fraction wiringSpaceSplices(const Tables& tables = publishedTables());
/// Column that limits nonmetallic-sheathed cable in the end.
[[nodiscard]] TemperatureColumn nmColumn(const Tables& tables = publishedTables());
/// Part of a range's or dryer's demand that counts on the neutral.
[[nodiscard]] Fraction neutralRangeDryerFactor(const Tables& tables = publishedTables());
/// The neutral load above this current counts with the factor below; never on two legs of a wye.
[[nodiscard]] AcAmperes neutralReductionAbove(const Tables& tables = publishedTables());
[[nodiscard]] Fraction neutralReductionFactor(const Tables& tables = publishedTables());
/// Advice for the drop of one feeder or branch circuit.
[[nodiscard]] Fraction dropAdviceOneRun(const Tables& tables = publishedTables());
/// Nominal volts of one leg to neutral, and between the legs of a split-phase or a 120/208 V supply.
[[nodiscard]] AcVolts nominalLegVolts(const Tables& tables = publishedTables());
[[nodiscard]] AcVolts nominalLineVoltsSplitPhase(const Tables& tables = publishedTables());
[[nodiscard]] AcVolts nominalLineVoltsWye(const Tables& tables = publishedTables());
/// Common practice: keep the running load below this part of an inverter's rating.
[[nodiscard]] Fraction loadingMargin(const Tables& tables = publishedTables());

}  // namespace stayalight
