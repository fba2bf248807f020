#pragma once

// Chapter 9 Tables 8 and 9 of NFPA 70, typed apart from resources/tables, column by column in the order of
// kSizesDownward (500 kcmil first, 14 AWG last).
// Source: Table 8 and 9 as reproduced publicly; Table 8 in ohm per 1000 ft at 75 C, Table 9 in ohm to neutral
// per 1000 ft.

#include <array>

namespace reference {

inline constexpr std::array<int, 18> kCircularMils = {500000, 400000, 350000, 300000, 250000, 211600,
                                                      167800, 133100, 105600, 83690,  66360,  52620,
                                                      41740,  26240,  16510,  10380,  6530,   4110};
inline constexpr std::array<double, 18> kCopperStranded = {0.0258, 0.0321, 0.0367, 0.0429, 0.0515, 0.0608,
                                                           0.0766, 0.0967, 0.122,  0.154,  0.194,  0.245,
                                                           0.308,  0.491,  0.778,  1.24,   1.98,   3.14};
inline constexpr std::array<double, 18> kAluminiumStranded = {0.0424, 0.0529, 0.0605, 0.0707, 0.0847, 0.100,
                                                              0.126,  0.159,  0.201,  0.253,  0.319,  0.403,
                                                              0.508,  0.808,  1.28,   2.04,   3.25,   5.17};

inline constexpr std::array<double, 18> kReactancePvc = {0.039, 0.040, 0.040, 0.041, 0.041, 0.041,
                                                         0.042, 0.043, 0.044, 0.046, 0.045, 0.047,
                                                         0.048, 0.051, 0.052, 0.050, 0.054, 0.058};
inline constexpr std::array<double, 18> kReactanceSteel = {0.048, 0.049, 0.050, 0.051, 0.052, 0.051,
                                                           0.052, 0.054, 0.055, 0.057, 0.057, 0.059,
                                                           0.060, 0.064, 0.065, 0.063, 0.068, 0.073};
inline constexpr std::array<double, 18> kCopperPvc = {0.027, 0.033, 0.038, 0.044, 0.052, 0.062,
                                                      0.077, 0.10,  0.12,  0.15,  0.19,  0.25,
                                                      0.31,  0.49,  0.78,  1.2,   2.0,   3.1};
inline constexpr std::array<double, 18> kCopperAluminium = {0.032, 0.038, 0.043, 0.049, 0.057, 0.067,
                                                            0.082, 0.10,  0.13,  0.16,  0.20,  0.25,
                                                            0.31,  0.49,  0.78,  1.2,   2.0,   3.1};
inline constexpr std::array<double, 18> kCopperSteel = {0.029, 0.035, 0.039, 0.045, 0.054, 0.063,
                                                        0.079, 0.10,  0.12,  0.16,  0.20,  0.25,
                                                        0.31,  0.49,  0.78,  1.2,   2.0,   3.1};
inline constexpr std::array<double, 18> kAluminiumPvc = {0.043, 0.054, 0.061, 0.071, 0.085, 0.10,
                                                         0.13,  0.16,  0.20,  0.25,  0.32,  0.40,
                                                         0.51,  0.81,  1.3,   2.0,   3.2,   0.0};
inline constexpr std::array<double, 18> kAluminiumAluminium = {0.048, 0.059, 0.066, 0.076, 0.090, 0.11,
                                                               0.13,  0.16,  0.21,  0.26,  0.32,  0.41,
                                                               0.51,  0.81,  1.3,   2.0,   3.2,   0.0};
inline constexpr std::array<double, 18> kAluminiumSteel = {0.045, 0.055, 0.063, 0.072, 0.086, 0.10,
                                                           0.13,  0.16,  0.20,  0.25,  0.32,  0.40,
                                                           0.51,  0.81,  1.3,   2.0,   3.2,   0.0};

}  // namespace reference
