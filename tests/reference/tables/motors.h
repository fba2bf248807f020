#pragma once

// Tables 430.248, 430.251(A) and 430.7(B) of NFPA 70, typed apart from resources/tables: motors from 10 hp
// down, column by column; letters as the upper ends of their bands. Source: public reproductions; 430.251(A)
// from the 2008 text, which prints no row below 1/2 hp.

#include <array>

namespace reference {

inline constexpr std::array<double, 12> kHorsepowerDownward = {10.0, 7.5,  5.0, 3.0,       2.0,  1.5,
                                                               1.0,  0.75, 0.5, 1.0 / 3.0, 0.25, 1.0 / 6.0};
inline constexpr std::array<double, 12> kFullLoad115 = {100, 80,   56,  34,  24,  20,
                                                        16,  13.8, 9.8, 7.2, 5.8, 4.4};
inline constexpr std::array<double, 12> kFullLoad200 = {57.5, 46.0, 32.2, 19.6, 13.8, 11.5,
                                                        9.2,  7.9,  5.6,  4.1,  3.3,  2.5};
inline constexpr std::array<double, 12> kFullLoad208 = {55.0, 44.0, 30.8, 18.7, 13.2, 11.0,
                                                        8.8,  7.6,  5.4,  4.0,  3.2,  2.4};
inline constexpr std::array<double, 12> kFullLoad230 = {50, 40, 28, 17, 12, 10, 8.0, 6.9, 4.9, 3.6, 2.9, 2.2};

// Printed rows only: 10 hp to 1/2 hp.
inline constexpr std::array<double, 9> kLockedRotor115 = {600, 480, 336, 204, 144, 120, 96, 82.8, 58.8};
inline constexpr std::array<double, 9> kLockedRotor208 = {332, 265, 186, 113, 80, 66, 53, 45.8, 32.5};
inline constexpr std::array<double, 9> kLockedRotor230 = {300, 240, 168, 102, 72, 60, 48, 41.4, 29.4};

struct LetterEnd {
  char letter;
  double most;  // kVA per horsepower; 0: no upper end
};
inline constexpr std::array<LetterEnd, 19> kLetters = {{{'V', 0},
                                                        {'U', 22.39},
                                                        {'T', 19.99},
                                                        {'S', 17.99},
                                                        {'R', 15.99},
                                                        {'P', 13.99},
                                                        {'N', 12.49},
                                                        {'M', 11.19},
                                                        {'L', 9.99},
                                                        {'K', 8.99},
                                                        {'J', 7.99},
                                                        {'H', 7.09},
                                                        {'G', 6.29},
                                                        {'F', 5.59},
                                                        {'E', 4.99},
                                                        {'D', 4.49},
                                                        {'C', 3.99},
                                                        {'B', 3.54},
                                                        {'A', 3.14}}};

}  // namespace reference
