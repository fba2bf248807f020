#pragma once

// Table 310.16 of NFPA 70 (2020), typed apart from resources/tables, by column and from the largest size
// down. Source: public reproductions of the table (also IRC 2018 Table E3705.1).

#include <array>
#include <string_view>

namespace reference {

inline constexpr std::array<std::string_view, 18> kSizesDownward = {"500", "400", "350", "300", "250", "4/0",
                                                                    "3/0", "2/0", "1/0", "1",   "2",   "3",
                                                                    "4",   "6",   "8",   "10",  "12",  "14"};

inline constexpr std::array<int, 18> kCopper60 = {320, 280, 260, 240, 215, 195, 165, 145, 125,
                                                  110, 95,  85,  70,  55,  40,  30,  20,  15};
inline constexpr std::array<int, 18> kCopper75 = {380, 335, 310, 285, 255, 230, 200, 175, 150,
                                                  130, 115, 100, 85,  65,  50,  35,  25,  20};
inline constexpr std::array<int, 18> kCopper90 = {430, 380, 350, 320, 290, 260, 225, 195, 170,
                                                  145, 130, 115, 95,  75,  55,  40,  30,  25};
// The table starts at 12 AWG for aluminium: 0 is a blank cell.
inline constexpr std::array<int, 18> kAluminium60 = {260, 225, 210, 195, 170, 150, 130, 115, 100,
                                                     85,  75,  65,  55,  40,  35,  25,  15,  0};
inline constexpr std::array<int, 18> kAluminium75 = {310, 270, 250, 230, 205, 180, 155, 135, 120,
                                                     100, 90,  75,  65,  50,  40,  30,  20,  0};
inline constexpr std::array<int, 18> kAluminium90 = {350, 305, 280, 260, 230, 205, 175, 150, 135,
                                                     115, 100, 85,  75,  55,  45,  35,  25,  0};

}  // namespace reference
