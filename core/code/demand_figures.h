#pragma once

// Figures of the load calculation (NFPA 70 Article 220; from 2026 on Article 120), each a row of
// resources/tables/demand.csv with a value, and how sure it is, for every edition.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/code/edition.h"
#include "core/message/message.h"

namespace stayalight {

struct Tables;
[[nodiscard]] const Tables& publishedTables();

/// How sure a figure is for one edition: read in two or more public reproductions, on one page only, pages
/// disagree, or from memory. All but the first are said to be not confirmed.
enum class Certainty : std::uint8_t { seen, one, doubt, memory };

/// One row: values by edition, 0 where the edition has none or it is not known.
struct DemandRow {
  std::array<double, 4> value{};
  std::array<Certainty, 4> certainty{};
};

/// Keys of the table, in the order of its rows. Those that end in a number are a count of equal things.
enum class DemandKey : std::uint8_t {
  lightingUnit,
  lightingFirstUpTo,
  lightingSecondUpTo,
  lightingFirst,
  lightingSecond,
  lightingThird,
  smallApplianceCircuit,
  smallApplianceLeast,
  laundryCircuit,
  laundryLeast,
  appliancesCount,
  appliancesFactor,
  appliancesLeastPower,
  appliancesLeastHorsepower,
  dryerLeast,
  dryer1,
  dryer2,
  dryer3,
  dryer4,
  dryer5,
  dryer6,
  dryer7,
  dryer8,
  dryer9,
  dryer10,
  dryer11,
  cookingLeast,
  cookingBFrom,
  cookingCFrom,
  cookingCTo,
  cookingMost,
  cookingA1,
  cookingA2,
  cookingA3,
  cookingA4,
  cookingA5,
  cookingB1,
  cookingB2,
  cookingB3,
  cookingB4,
  cookingB5,
  cookingC1,
  cookingC2,
  cookingC3,
  cookingC4,
  cookingC5,
  cookingIncrease,
  vehicleChargerLeast,
  vehicleChargerUnknown,
  spaceHeating,
  largestMotor,
  optionalLeastRating,
  optionalFirst,
  optionalRest,
  optionalAirConditioning,
  optionalHeatPump,
  optionalSupplemental,
  optionalHeatFew,
  optionalHeatMany,
  optionalHeatManyFrom,
  optionalHeatContinuous,
  existingFirst,
  existingRest,
  existingAdded,
  existingHeatManyFrom,
  meteredFactor,
  meteredYear,
  meteredDays,
};
inline constexpr std::array<std::string_view, 68> kDemandKeys = {
    "lighting_unit",
    "lighting_first_up_to",
    "lighting_second_up_to",
    "lighting_first",
    "lighting_second",
    "lighting_third",
    "small_appliance_circuit",
    "small_appliance_least",
    "laundry_circuit",
    "laundry_least",
    "appliances_count",
    "appliances_factor",
    "appliances_least_power",
    "appliances_least_horsepower",
    "dryer_least",
    "dryer_1",
    "dryer_2",
    "dryer_3",
    "dryer_4",
    "dryer_5",
    "dryer_6",
    "dryer_7",
    "dryer_8",
    "dryer_9",
    "dryer_10",
    "dryer_11",
    "cooking_least",
    "cooking_b_from",
    "cooking_c_from",
    "cooking_c_to",
    "cooking_most",
    "cooking_a_1",
    "cooking_a_2",
    "cooking_a_3",
    "cooking_a_4",
    "cooking_a_5",
    "cooking_b_1",
    "cooking_b_2",
    "cooking_b_3",
    "cooking_b_4",
    "cooking_b_5",
    "cooking_c_1",
    "cooking_c_2",
    "cooking_c_3",
    "cooking_c_4",
    "cooking_c_5",
    "cooking_increase",
    "vehicle_charger_least",
    "vehicle_charger_unknown",
    "space_heating",
    "largest_motor",
    "optional_least_rating",
    "optional_first",
    "optional_rest",
    "optional_air_conditioning",
    "optional_heat_pump",
    "optional_supplemental",
    "optional_heat_few",
    "optional_heat_many",
    "optional_heat_many_from",
    "optional_heat_continuous",
    "existing_first",
    "existing_rest",
    "existing_added",
    "existing_heat_many_from",
    "metered_factor",
    "metered_year",
    "metered_days",
};
/// Largest counts that the rows of dryers and of cooking appliances reach.
inline constexpr int kDryerRows = 11;
inline constexpr int kCookingRows = 5;

struct DemandFigure {
  double value = 0.0;  ///< in the unit of its row
  bool confirmed = true;
};
/// Empty where the edition has no such figure, or nobody has confirmed which.
[[nodiscard]] std::optional<DemandFigure> demandFigure(DemandKey key, Edition edition,
                                                       const Tables& tables = publishedTables());
/// Demand factor of `count` dryers, 1 to kDryerRows; cooking appliances by Table 220.55, 1 to kCookingRows.
[[nodiscard]] std::optional<DemandFigure> dryerFactor(int count, Edition edition,
                                                      const Tables& tables = publishedTables());
enum class CookingColumn : std::uint8_t { a, b, c };
/// A factor in columns A and B, kW in column C.
[[nodiscard]] std::optional<DemandFigure> cookingDemand(CookingColumn column, int count, Edition edition,
                                                        const Tables& tables = publishedTables());
[[nodiscard]] std::string_view unitOf(DemandKey key);
[[nodiscard]] RuleId ruleOf(DemandKey key);
/// Name of the cell for a working: section by edition and the row's key in words.
[[nodiscard]] std::string demandCell(DemandKey key, Edition edition,
                                     const Tables& tables = publishedTables());

}  // namespace stayalight
