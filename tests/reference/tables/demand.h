#pragma once

// Figures of the load calculation of dwellings, typed apart from resources/tables: factors in percent, steps
// in VA. Sources: public reproductions of NFPA 70 Article 220 (2020, 2023), Annex D examples D1, D2 and D6 as
// reproduced on public book pages, and trade pages on the 2026 edition (lighting 2 VA/ft2, optional method
// 8 kVA). Where nothing was seen the figure is from memory, and says so.

#include <array>
#include <string_view>

namespace reference {

/// 2017, 2020, 2023, 2026; -1: the edition has none, or it is not known. `seen` in the same order, as a word
/// of four letters: y (read on two pages or more) or n.
struct DemandRow {
  std::string_view key;
  std::array<double, 4> value;
  std::string_view seen;
};

inline constexpr std::array<DemandRow, 68> kDemand = {{
    // 220.41 (220.12, 220.14(J), 120.41); 220.45 (220.42, 120.45)
    {"lighting_unit", {3, 3, 3, 2}, "yyyy"},
    {"lighting_first_up_to", {3000, 3000, 3000, 3000}, "yyyy"},
    {"lighting_second_up_to", {120000, 120000, 120000, 120000}, "yyyy"},
    {"lighting_first", {1, 1, 1, 1}, "yyyy"},
    {"lighting_second", {.35, .35, .35, .35}, "yyyy"},
    {"lighting_third", {.25, .25, .25, .25}, "yyyy"},
    // 220.52, 210.11(C)
    {"small_appliance_circuit", {1500, 1500, 1500, 1500}, "nyyy"},
    {"small_appliance_least", {2, 2, 2, 2}, "nyyy"},
    {"laundry_circuit", {1500, 1500, 1500, 1500}, "nyyy"},
    {"laundry_least", {1, 1, 1, 1}, "nyyy"},
    // 220.53: the size is named from 2020 on
    {"appliances_count", {4, 4, 4, 4}, "nyyy"},
    {"appliances_factor", {.75, .75, .75, .75}, "nyyy"},
    {"appliances_least_power", {-1, 500, 500, 500}, "-yyy"},
    {"appliances_least_horsepower", {-1, .25, .25, .25}, "-yyy"},
    // 220.54
    {"dryer_least", {5000, 5000, 5000, 5000}, "nyyy"},
    {"dryer_1", {1, 1, 1, 1}, "nyyy"},
    {"dryer_2", {1, 1, 1, 1}, "nyyy"},
    {"dryer_3", {1, 1, 1, 1}, "nyyy"},
    {"dryer_4", {1, 1, 1, 1}, "nyyy"},
    {"dryer_5", {.85, .85, .85, .85}, "nnnn"},
    {"dryer_6", {.75, .75, .75, .75}, "nnnn"},
    {"dryer_7", {.65, .65, .65, .65}, "nnnn"},
    {"dryer_8", {.60, .60, .60, .60}, "nnnn"},
    {"dryer_9", {.55, .55, .55, .55}, "nyyy"},
    {"dryer_10", {.50, .50, .50, .50}, "nyyy"},
    {"dryer_11", {.47, .47, .47, .47}, "nyyy"},
    // Table 220.55
    {"cooking_least", {1.75, 1.75, 1.75, 1.75}, "nyyy"},
    {"cooking_b_from", {3.5, 3.5, 3.5, 3.5}, "nyyy"},
    {"cooking_c_from", {8.75, 8.75, 8.75, 8.75}, "nyyy"},
    {"cooking_c_to", {12, 12, 12, 12}, "nyyy"},
    {"cooking_most", {27, 27, 27, 27}, "nyyy"},
    {"cooking_a_1", {.80, .80, .80, .80}, "nyyy"},
    {"cooking_a_2", {.75, .75, .75, .75}, "nnnn"},
    {"cooking_a_3", {.70, .70, .70, .70}, "nnnn"},
    {"cooking_a_4", {.66, .66, .66, .66}, "nnnn"},
    {"cooking_a_5", {.62, .62, .62, .62}, "nnnn"},
    {"cooking_b_1", {.80, .80, .80, .80}, "nyyy"},
    {"cooking_b_2", {.65, .65, .65, .65}, "nyyy"},
    {"cooking_b_3", {.55, .55, .55, .55}, "nyyy"},
    {"cooking_b_4", {.50, .50, .50, .50}, "nnnn"},
    {"cooking_b_5", {.45, .45, .45, .45}, "nnnn"},
    {"cooking_c_1", {8, 8, 8, 8}, "nyyy"},
    {"cooking_c_2", {11, 11, 11, 11}, "nnnn"},
    {"cooking_c_3", {14, 14, 14, 14}, "nnnn"},
    {"cooking_c_4", {17, 17, 17, 17}, "nnnn"},
    {"cooking_c_5", {20, 20, 20, 20}, "nnnn"},
    {"cooking_increase", {.05, .05, .05, .05}, "nyyy"},
    // 220.57 is new in 2023; 2026: one page, only where the nameplate is not known
    {"vehicle_charger_least", {-1, -1, 7200, -1}, "--y-"},
    {"vehicle_charger_unknown", {-1, -1, -1, 7200}, "---n"},
    // 220.51, 220.50: memory
    {"space_heating", {1, 1, 1, 1}, "nnnn"},
    {"largest_motor", {.25, .25, .25, .25}, "nnnn"},
    // 220.82 (120.82)
    {"optional_least_rating", {100, 100, 100, 100}, "yyyy"},
    {"optional_first", {10000, 10000, 10000, 8000}, "yyyy"},
    {"optional_rest", {.40, .40, .40, .40}, "yyyy"},
    {"optional_air_conditioning", {1, 1, 1, 1}, "nyyy"},
    {"optional_heat_pump", {1, 1, 1, 1}, "nyyy"},
    {"optional_supplemental", {.65, .65, .65, .65}, "nnnn"},
    {"optional_heat_few", {.65, .65, .65, .65}, "nyyy"},
    {"optional_heat_many", {.40, .40, .40, .40}, "nyyy"},
    {"optional_heat_many_from", {4, 4, 4, 4}, "nyyy"},
    {"optional_heat_continuous", {1, 1, 1, 1}, "nnnn"},
    // 220.83; the table of 120.83 is not known
    {"existing_first", {8000, 8000, 8000, -1}, "yyy-"},
    {"existing_rest", {.40, .40, .40, -1}, "yyy-"},
    {"existing_added", {1, 1, 1, -1}, "yyy-"},
    {"existing_heat_many_from", {4, 4, 4, -1}, "yyy-"},
    // 220.87
    {"metered_factor", {1.25, 1.25, 1.25, 1.25}, "yyyy"},
    {"metered_year", {1, 1, 1, 1}, "yyyy"},
    {"metered_days", {30, 30, 30, 30}, "yyyy"},
}};

}  // namespace reference
