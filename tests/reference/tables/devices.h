#pragma once

// 240.6(A), 240.4(D) and Table 250.122 of NFPA 70 (2023), typed apart from resources/tables: ratings from the
// largest down, the grounding table turned round (which device a size is good for). Source: public
// reproductions of the sections.

#include <array>
#include <string_view>

namespace reference {

inline constexpr std::array<int, 31> kRatingsDownward = {
    1200, 1000, 800, 700, 600, 500, 450, 400, 350, 300, 250, 225, 200, 175, 150, 125,
    110,  100,  90,  80,  70,  60,  50,  45,  40,  35,  30,  25,  20,  15,  10};

struct SmallConductor {
  std::string_view size;
  int copper;  // 0: the section gives no figure
  int aluminium;
};
inline constexpr std::array<SmallConductor, 3> kSmallConductors = {
    {{"10", 30, 25}, {"12", 20, 15}, {"14", 15, 0}}};

struct GroundingSize {
  int device;  // the largest device of the row
  std::string_view copper;
  std::string_view aluminium;
};
inline constexpr std::array<GroundingSize, 7> kGroundingDownward = {{{400, "3", "1"},
                                                                     {300, "4", "2"},
                                                                     {200, "6", "4"},
                                                                     {100, "8", "6"},
                                                                     {60, "10", "8"},
                                                                     {20, "12", "10"},
                                                                     {15, "14", "12"}}};

}  // namespace reference
