#pragma once

// Chapter 9 Tables 1, 4 and 5 and 314.16 of NFPA 70, typed apart from resources/tables.
// Source: the tables as reproduced publicly; Table 4 and 5 with the diameters that their areas follow from.

#include <array>

namespace reference {

struct RacewayRow {
  std::array<double, 8> diameter;  ///< in
  std::array<double, 8> area;      ///< in2
};
/// EMT, PVC 40, PVC 80, FMC, LFMC; trade sizes 1/2 to 3. LFMC from memory.
inline constexpr std::array<RacewayRow, 5> kRaceways = {{
    {{0.622, 0.824, 1.049, 1.380, 1.610, 2.067, 2.731, 3.356},
     {.304, .533, .864, 1.496, 2.036, 3.356, 5.858, 8.846}},
    {{0.602, 0.804, 1.029, 1.360, 1.590, 2.047, 2.445, 3.042},
     {.285, .508, .832, 1.453, 1.986, 3.291, 4.695, 7.268}},
    {{0.526, 0.722, 0.936, 1.255, 1.476, 1.913, 2.290, 2.864},
     {.217, .409, .688, 1.237, 1.711, 2.874, 4.119, 6.442}},
    {{0.635, 0.824, 1.020, 1.275, 1.538, 2.040, 2.500, 3.000},
     {.317, .533, .817, 1.277, 1.858, 3.269, 4.909, 7.069}},
    {{0.632, 0.830, 1.054, 1.395, 1.588, 2.033, 2.493, 3.085},
     {.314, .541, .873, 1.528, 1.981, 3.246, 4.881, 7.475}},
}};

/// 14 AWG to 500 kcmil.
inline constexpr std::array<double, 18> kThwnDiameter = {.111, .130, .164, .216, .254, .324,
                                                         .352, .384, .446, .486, .532, .584,
                                                         .642, .711, .766, .817, .864, .949};
inline constexpr std::array<double, 18> kThwnArea = {.0097, .0133, .0211, .0366, .0507, .0824,
                                                     .0973, .1158, .1562, .1855, .2223, .2679,
                                                     .3237, .3970, .4608, .5242, .5863, .7073};
inline constexpr std::array<double, 18> kXhhwDiameter = {.133, .152, .176, .236, .274, .322,
                                                         .350, .382, .442, .482, .528, .580,
                                                         .638, .705, .760, .811, .858, .943};
inline constexpr std::array<double, 18> kXhhwArea = {.0139, .0181, .0243, .0437, .0590, .0814,
                                                     .0962, .1146, .1534, .1825, .2190, .2642,
                                                     .3197, .3904, .4536, .5166, .5782, .6984};
/// Conductors, percent.
inline constexpr std::array<std::array<int, 2>, 6> kFill = {
    {{1, 53}, {2, 31}, {3, 40}, {4, 40}, {9, 40}, {60, 40}}};

/// 14, 12, 10, 8, 6 AWG: Table 314.16(B).
inline constexpr std::array<double, 5> kBoxConductor = {2.00, 2.25, 2.50, 3.00, 5.00};
/// Octagon 4 in and squares 4 and 4-11/16 in, three depths each: volume, and how many 14 and 12 AWG the
/// published columns allow.
inline constexpr std::array<std::array<double, 3>, 9> kBoxes = {{{12.5, 6, 5},
                                                                 {15.5, 7, 6},
                                                                 {21.5, 10, 9},
                                                                 {18.0, 9, 8},
                                                                 {21.0, 10, 9},
                                                                 {30.3, 15, 13},
                                                                 {25.5, 12, 11},
                                                                 {29.5, 14, 13},
                                                                 {42.0, 21, 18}}};

}  // namespace reference
