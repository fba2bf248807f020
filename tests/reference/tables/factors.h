#pragma once

// Tables 310.15(B)(1) and 310.15(C)(1) of NFPA 70 (2020), typed apart from resources/tables: the ambient
// factors in hundredths by column with the Fahrenheit ends of the rows, the adjustment as a list of counts.
// Source: public reproductions of the tables (ambient also IRC 2018 Table E3705.2).

#include <array>

namespace reference {

inline constexpr std::array<int, 16> kAmbientFahrenheitUpTo = {50,  59,  68,  77,  86,  95,  104, 113,
                                                               122, 131, 140, 149, 158, 167, 176, 185};
inline constexpr std::array<int, 10> kAmbient60 = {129, 122, 115, 108, 100, 91, 82, 71, 58, 41};
inline constexpr std::array<int, 13> kAmbient75 = {120, 115, 111, 105, 100, 94, 88, 82, 75, 67, 58, 47, 33};
inline constexpr std::array<int, 16> kAmbient90 = {115, 112, 108, 104, 100, 96, 91, 87,
                                                   82,  76,  71,  65,  58,  50, 41, 29};

struct CountAndPercent {
  int count;
  int percent;
};
// Both ends of each range, and one count far beyond.
inline constexpr std::array<CountAndPercent, 14> kAdjustment = {{{1, 100},
                                                                 {3, 100},
                                                                 {4, 80},
                                                                 {6, 80},
                                                                 {7, 70},
                                                                 {9, 70},
                                                                 {10, 50},
                                                                 {20, 50},
                                                                 {21, 45},
                                                                 {30, 45},
                                                                 {31, 40},
                                                                 {40, 40},
                                                                 {41, 35},
                                                                 {200, 35}}};

}  // namespace reference
