// What stands in print beside the tables, or follows from physics, notices a changed cell: worked examples,
// other columns of the same tables, the wire gauge, the resistivity of copper, the heat balance. The second
// typed copies of tests/core/code notice every cell too; they are not counted here.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <numbers>

#include "core/code/devices.h"
#include "core/code/motors.h"
#include "core/code/raceways.h"
#include "core/wiring/conductor.h"
#include "tests/core/assess/table_cells.h"
#include "tests/core/demand/questions.h"
#include "tests/reference/tables/raceways.h"

using namespace stayalight;

namespace {

constexpr auto kSizes = kConductorSizeCount;
constexpr ConductorSize sizeAt(std::size_t i) { return static_cast<ConductorSize>(i); }

// The last digit of two that are printed.
double digitOf(double value) { return value < 0.1 ? 0.001 : value < 1.0 ? 0.01 : 0.1; }
bool near(double found, double expected, double tolerance) { return std::abs(found - expected) <= tolerance; }
double amp(const Tables& t, ConductorSize size, Metal metal, TemperatureColumn column) {
  return ampacity(size, metal, column, t).value_or(AcAmperes(0)).count();
}

// Smallest size whose ampacity in a column carries a current.
std::optional<ConductorSize> sizeFor(const Tables& t, double amperes, Metal metal, TemperatureColumn column) {
  for (std::size_t i = 0; i < kSizes; ++i) {
    if (amp(t, sizeAt(i), metal, column) >= amperes) return sizeAt(i);
  }
  return std::nullopt;
}

// Each is true with the published tables.
using Check = bool (*)(const Tables& t);

// -- ampacity

// Table 310.12(A) of NFPA 70 (2020): service conductors of dwellings, copper and aluminium, 75 C; it is the
// 83 % rule worked out for each rating.
bool dwellingServices(const Tables& t) {
  struct Row {
    int service;
    const char* copper;
    const char* aluminium;
  };
  for (const Row& row : {Row{100, "4", "2"}, Row{110, "3", "1"}, Row{125, "2", "1/0"}, Row{150, "1", "2/0"},
                         Row{175, "1/0", "3/0"}, Row{200, "2/0", "4/0"}, Row{225, "3/0", "250"},
                         Row{250, "4/0", "300"}, Row{300, "250", "350"}, Row{350, "350", "500"}}) {
    if (sizeFor(t, row.service * 0.83, Metal::copper, TemperatureColumn::c75) !=
        conductorSizeNamed(row.copper))
      return false;
    if (sizeFor(t, row.service * 0.83, Metal::aluminium, TemperatureColumn::c75) !=
        conductorSizeNamed(row.aluminium))
      return false;
  }
  return true;
}
// Worked examples S-09 to S-14 and S-29 of tests/reference/worked_examples.json (their sources stand there);
// 14, 12 and 10 AWG at 60 C are the devices of 240.4(D) but for 14 AWG aluminium, which is not in the table;
// 8 AWG copper THHN is good for 50 A at 75 C and 6 AWG NM cable for 55 A (common practice, no source).
bool ampacityExamples(const Tables& t) {
  using enum TemperatureColumn;
  for (std::size_t i = 0; i < 3; ++i) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      const auto limit = smallConductorLimit(sizeAt(i), metal, t);
      if (limit && limit->count() != amp(t, sizeAt(i), metal, c60)) return false;
    }
  }
  return sizeFor(t, 250, Metal::copper, c75) == ConductorSize::kcmil250 &&
         amp(t, ConductorSize::kcmil250, Metal::copper, c75) == 255 &&
         sizeFor(t, 135.2, Metal::copper, c75) == ConductorSize::awg1_0 &&
         amp(t, ConductorSize::awg12, Metal::copper, c90) * 0.7 == 21.0 &&
         amp(t, ConductorSize::awg6, Metal::copper, c60) == 55 &&
         amp(t, ConductorSize::awg8, Metal::copper, c75) == 50 &&
         amp(t, ConductorSize::awg6, Metal::copper, c90) == 75 &&
         amp(t, ConductorSize::awg6, Metal::copper, c75) == 65 &&
         amp(t, ConductorSize::awg1_0, Metal::copper, c75) == 150 &&
         amp(t, ConductorSize::awg3_0, Metal::aluminium, c75) == 155 &&
         amp(t, ConductorSize::awg10, Metal::copper, c75) == 35;
}
// Neher and McGrath's heat balance: what a conductor carries is the root of its temperature rise over its
// resistance at that temperature, so that the columns of 60 and 90 C follow from that of 75 C, rounded to the
// nearest 5 A. It holds for every size and both metals.
bool heatBalance(const Tables& t) {
  for (const Metal metal : {Metal::copper, Metal::aluminium}) {
    const double coefficient = metal == Metal::copper ? 0.00323 : 0.00330;
    const auto currentAt = [&](double celsius) {
      return std::sqrt((celsius - 30.0) / (1.0 + coefficient * (celsius - 75.0)));
    };
    for (std::size_t i = 0; i < kSizes; ++i) {
      const double at75 = amp(t, sizeAt(i), metal, TemperatureColumn::c75);
      if (!near(amp(t, sizeAt(i), metal, TemperatureColumn::c60), at75 * currentAt(60) / currentAt(75), 2.5))
        return false;
      if (!near(amp(t, sizeAt(i), metal, TemperatureColumn::c90), at75 * currentAt(90) / currentAt(75), 2.5))
        return false;
    }
  }
  return true;
}

// -- correction and adjustment

// Each factor is the root of what is left of the temperature rise at the hot end of its row, in steps of 5 C.
bool ambientRoots(const Tables& t) {
  for (const TemperatureColumn column :
       {TemperatureColumn::c60, TemperatureColumn::c75, TemperatureColumn::c90}) {
    const double rating = degrees(column);
    for (int celsius = 10; celsius < rating; celsius += 5) {
      const double root = std::sqrt((rating - celsius) / (rating - 30.0));
      for (const double ambient : {celsius - 4.9, celsius * 1.0}) {
        const auto factor = ambientFactor(Temperature::celsius(ambient), column, t);
        if (celsius == 10 && ambient < 10) continue;  // the first row has no lower end
        if (!factor || !near(factor->count(), root, 0.00501)) return false;
      }
    }
    if (ambientFactor(Temperature::celsius(rating), column, t)) return false;
  }
  for (std::size_t r = 0; r < t.ambient.size(); ++r) {
    if (t.ambient[r].upToCelsius != 10.0 + 5.0 * static_cast<double>(r)) return false;
  }
  return true;
}
// S-11: nine conductors 70 %; S-14: four 80 %; three need none. Ends of the rows: the count printed as the
// first of the next row. With the tenth, 12 AWG of 30 A is left with 15 A and no longer good for 20 A (rule
// of thumb of the trade).
bool adjustmentExamples(const Tables& t) {
  const auto share = [&](int count) { return adjustmentFactor(count, t).value_or(Fraction(0)).count(); };
  return share(9) == 0.7 && share(4) == 0.8 && share(3) == 1.0 && share(6) == 0.8 && share(7) == 0.7 &&
         30.0 * share(10) == 15.0;
}
// From there the rows end at full tens, and each is five hundredths lower. The last one with a load diversity
// of a half is the 50 % of Annex B for 43 and more: the root of a half of it (Annex B, from memory).
bool adjustmentSteps(const Tables& t) {
  for (std::size_t r = 3; r + 1 < t.adjustment.size(); ++r) {
    if (t.adjustment[r].to % 10 != 0) return false;
    if (!near(t.adjustment[r].percent - t.adjustment[r + 1].percent, 5.0, 1e-9)) return false;
  }
  return near(t.adjustment.back().percent, 50.0 * std::sqrt(0.5), 0.5);
}

// -- devices

// S-09 250 A, S-10 150 A, S-14 50 A, S-16 40 A and 10 A conductor steps, S-29 70 A; 240.4(D) 15, 20, 25 and
// 30 A; the services of Table 310.12(A); 240.4(B) 800 A and 230.95 1000 A; heads of Table 250.122.
bool ratingsNamedElsewhere(const Tables& t) {
  for (const int amperes :
       {15, 20, 25, 30, 40, 50, 60, 70, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 800, 1000}) {
    for (const Edition edition : kEditions) {
      if (nextStandardRating(AcAmperes(amperes), edition, t) != RatingAmperes(amperes)) return false;
      if (standardRatingWithin(AcAmperes(amperes), edition, t) != RatingAmperes(amperes)) return false;
    }
  }
  return true;
}
// Vehicle supply equipment draws four fifths of its circuit, and is sold so: 28 A on 35 A, 36 A on 45 A
// (625.42 and common practice).
bool chargerCircuits(const Tables& t) {
  const double factor = continuousFactor(t).count();
  return nextStandardRating(AcAmperes(28 * factor), Edition::y2023, t) == RatingAmperes(35) &&
         nextStandardRating(AcAmperes(36 * factor), Edition::y2023, t) == RatingAmperes(45);
}
// The list is printed in steps of 5 A to 50, of 10 to 110, of 25 to 250, of 50 to 500 and of 100 A above; 10
// A came with the 2023 edition.
bool ratingSteps(const Tables& t) {
  for (const StandardRatingRow& row : t.ratings) {
    const int a = row.amperes;
    const int step = a <= 50 ? 5 : a <= 110 ? 10 : a <= 250 ? 25 : a <= 500 ? 50 : 100;
    if (a % step != 0) return false;
    if (row.since != (a == 10 ? Edition::y2023 : Edition::y2017)) return false;
  }
  return true;
}
// Worked examples S-15 and S-16; aluminium is two gauge numbers larger throughout; each row ends at a
// standard rating, and the first two at what 240.4(D) lets a wire of that size have.
bool grounding(const Tables& t) {
  if (groundingConductor(RatingAmperes(300), Metal::copper, t) != ConductorSize::awg4) return false;
  if (groundingConductor(RatingAmperes(40), Metal::copper, t) != ConductorSize::awg10) return false;
  for (const GroundingRow& row : t.grounding) {
    const double ratio = circularMils(row.size[1]).count() / circularMils(row.size[0]).count();
    if (!near(ratio, std::pow(92.0, 4.0 / 39.0), 0.02)) return false;
    if (standardRatingWithin(AcAmperes(row.deviceUpTo), Edition::y2023) != RatingAmperes(row.deviceUpTo))
      return false;
  }
  return true;
}

// The dwelling code lists service conductors and their grounding electrode conductors side by side (IRC Table
// E3603.1 and its successors, from memory).
bool electrodeConductors(const Tables& t) {
  struct Row {
    const char *copper, *aluminium, *electrode;
  };
  for (const Row& row :
       {Row{"4", "2", "8"}, Row{"3", "1", "8"}, Row{"2", "1/0", "8"}, Row{"1", "2/0", "6"},
        Row{"1/0", "3/0", "6"}, Row{"2/0", "4/0", "4"}, Row{"3/0", "250", "4"}, Row{"4/0", "300", "2"},
        Row{"250", "350", "2"}, Row{"350", "500", "2"}, Row{"400", "500", "1/0"}}) {
    const auto electrode = conductorSizeNamed(row.electrode);
    if (electrodeConductor(*conductorSizeNamed(row.copper), Metal::copper, t) != electrode) return false;
    // Above 500 kcmil of aluminium the last row begins, which no size of the list reaches.
    if (row.electrode != std::string_view("1/0") &&
        electrodeConductor(*conductorSizeNamed(row.aluminium), Metal::aluminium, t) != electrode)
      return false;
  }
  return true;
}

// -- conductors

// ASTM B258: from one gauge number to the next the diameter falls by 92^(1/39); kcmil sizes are named after
// the area.
bool wireGauge(const Tables& t) {
  const std::array<int, 13> numbers = {14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
  for (std::size_t i = 0; i < kSizes; ++i) {
    const double inches = i < numbers.size() ? 0.005 * std::pow(92.0, (36.0 - numbers[i]) / 39.0) : 0.0;
    const double mils =
        i < numbers.size() ? inches * inches * 1e6 : std::stod(std::string(name(sizeAt(i)))) * 1000.0;
    if (!near(circularMils(sizeAt(i), t).count() / mils, 1.0, 0.001)) return false;
    if (!near(crossSection(sizeAt(i), t).count() / (mils * 5.06707e-4), 1.0, 0.006)) return false;
  }
  return true;
}
// 12.86 ohm cmil/ft for stranded copper at 75 C (ASTM B193 and the strands' lay), 21.2 for aluminium.
bool resistivity(const Tables& t) {
  for (std::size_t i = 0; i < kSizes; ++i) {
    const double mils = circularMils(sizeAt(i)).count();
    if (!near(directCurrentResistance(sizeAt(i), Metal::copper, t).count() * mils / 1000.0, 12.86, 0.13))
      return false;
    if (!near(directCurrentResistance(sizeAt(i), Metal::aluminium, t).count() * mils / 1000.0, 21.2, 0.15))
      return false;
  }
  return true;
}
// Alternating current meets the direct-current resistance with the skin effect of a round conductor (IEC
// 60287-1-1: 1 + x^4 / (192 + 0.8 x^4), x^2 = 8 pi f 10^-7 over the resistance in ohm per m), within the
// table's rounding to two digits and 2 % beside plastic. A raceway of aluminium adds at most 0.01 ohm, of
// steel 0.01 up to 2 AWG and 0.003 above; from 3/0 on aluminium adds 0.005 throughout. Steel has 1.25 times
// the reactance of plastic.
bool alternating(const Tables& t) {
  for (std::size_t i = 0; i < kSizes; ++i) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      const double direct = directCurrentResistance(sizeAt(i), metal).count();
      const double xSquared = 8.0 * std::numbers::pi * 60.0 * 1e-7 / (direct * 3.28084e-3);
      const double skin = 1.0 + xSquared * xSquared / (192.0 + 0.8 * xSquared * xSquared);
      const auto& r = t.impedance[i].resistance[metal == Metal::copper ? 0 : 1];
      if (r[0] == 0.0) continue;
      const double digit = digitOf(r[0]);
      if (r[0] < direct * skin - 0.55 * digit || r[0] > direct * skin * 1.02 + 0.75 * digit) return false;
      const double aluminium = r[1] - r[0], steel = r[2] - r[0];
      if (aluminium < -1e-9 || aluminium > 0.0101 || steel < -1e-9 || steel > 0.0101) return false;
      if (i >= static_cast<std::size_t>(ConductorSize::awg3_0) && r[0] < 0.1 &&
          (!near(aluminium, 0.005, 1e-9) || steel > 0.0031 || steel < 0.0005))
        return false;
    }
    const auto& x = t.impedance[i].reactance;
    if (!near(x[2] / x[0], 1.25, 0.031) || x[1] != x[0]) return false;
  }
  return true;
}
// Table 9 prints ohm per kilometre beside ohm per 1000 ft (from memory; every one of them, divided
// by 3.28084, gives the other column of the reproductions to its last digit). Plastic, aluminium, steel.
bool impedancePerKilometre(const Tables& t) {
  struct Row {
    ConductorSize size;
    double copper[3], aluminium[3];
  };
  using enum ConductorSize;
  for (const Row& row :
       {Row{awg3, {0.82, 0.82, 0.82}, {1.31, 1.35, 1.31}}, Row{awg2, {0.62, 0.66, 0.66}, {1.05, 1.05, 1.05}},
        Row{awg1, {0.49, 0.52, 0.52}, {0.82, 0.85, 0.82}},
        Row{awg1_0, {0.39, 0.43, 0.39}, {0.66, 0.69, 0.66}},
        Row{awg2_0, {0.33, 0.33, 0.33}, {0.52, 0.52, 0.52}},
        Row{awg3_0, {0.253, 0.269, 0.259}, {0.43, 0.43, 0.43}},
        Row{awg4_0, {0.203, 0.220, 0.207}, {0.33, 0.36, 0.33}},
        Row{kcmil250, {0.171, 0.187, 0.177}, {0.279, 0.295, 0.282}},
        Row{kcmil300, {0.144, 0.161, 0.148}, {0.233, 0.249, 0.236}},
        Row{kcmil350, {0.125, 0.141, 0.128}, {0.200, 0.217, 0.207}},
        Row{kcmil400, {0.108, 0.125, 0.115}, {0.177, 0.194, 0.180}},
        Row{kcmil500, {0.089, 0.105, 0.095}, {0.141, 0.157, 0.148}}}) {
    const auto& r = t.impedance[static_cast<std::size_t>(row.size)].resistance;
    for (std::size_t c = 0; c < 3; ++c) {
      const auto agrees = [](double perKilofoot, double perKilometre) {
        return near(perKilofoot, perKilometre / 3.28084, perKilofoot < 0.1 ? 0.00051 : 0.0051);
      };
      if (!agrees(r[0][c], row.copper[c]) || !agrees(r[1][c], row.aluminium[c])) return false;
    }
  }
  return true;
}

// -- motors

bool motorPower(const Tables& t) {
  for (const MotorRow& row : publishedTables().fullLoad) {
    const auto at = [&](MotorVolts column, double power) {
      return fullLoadCurrent(Horsepower(power), column, t).value_or(MotorCurrent{}).current.count() *
             ratedVolts(column).count();
    };
    const double at230 = at(MotorVolts::v230, row.horsepower);
    if (!near(at(MotorVolts::v115, row.horsepower) / at230, 1.0, 0.01)) return false;
    if (!near(at(MotorVolts::v200, row.horsepower) / at230, 1.0, 0.02)) return false;
    if (!near(at(MotorVolts::v208, row.horsepower) / at230, 1.0, 0.02)) return false;
  }
  return true;
}
// The name of a row is its horsepower; Table 430.251(A) is six times Table 430.248.
bool motorRows(const Tables& t) {
  const auto number = [](std::string_view name) {
    double sum = 0.0;
    std::string text(name);
    if (const auto space = text.find(' '); space != std::string::npos) {
      sum = std::stod(text.substr(0, space));
      text = text.substr(space + 1);
    }
    const auto slash = text.find('/');
    return sum + (slash == std::string::npos
                      ? std::stod(text)
                      : std::stod(text.substr(0, slash)) / std::stod(text.substr(slash + 1)));
  };
  for (std::size_t r = 0; r < t.fullLoad.size(); ++r) {
    if (!near(t.fullLoad[r].horsepower, number(t.fullLoad[r].name), 1e-4)) return false;
    if (!near(t.lockedRotor[r].horsepower, number(t.lockedRotor[r].name), 1e-4)) return false;
    for (std::size_t c = 0; c < 4; ++c) {
      if (t.lockedRotor[r].amperes[c] > 0.0 &&
          !near(t.lockedRotor[r].amperes[c] / t.fullLoad[r].amperes[c], 6.0, 0.0625))
        return false;
    }
  }
  return true;
}
// One band begins a hundredth above the one before; S-31: K ends at 8.99, G at 6.29.
bool letterBands(const Tables& t) {
  for (std::size_t r = 1; r < t.codeLetters.size(); ++r) {
    if (!near(t.codeLetters[r].least, t.codeLetters[r - 1].most + 0.01, 1e-9)) return false;
  }
  return codeLetterBand('K', t)->most->count() == 8.99 && codeLetterBand('G', t)->most->count() == 6.29;
}

// -- room

double disc(double diameter) { return std::numbers::pi / 4.0 * diameter * diameter; }

// Table 4 and Table 5 list the diameters beside the areas.
bool diameters(const Tables& t) {
  for (std::size_t type = 0; type < reference::kRaceways.size(); ++type) {
    for (std::size_t size = 0; size < 8; ++size) {
      if (!near(t.racewayAreas[type].area[size], disc(reference::kRaceways[type].diameter[size]), 0.002))
        return false;
    }
  }
  for (std::size_t i = 0; i < kSizes; ++i) {
    if (!near(t.conductorAreas[i].insulated[0], disc(reference::kThwnDiameter[i]), 0.0002)) return false;
    if (!near(t.conductorAreas[i].insulated[1], disc(reference::kXhhwDiameter[i]), 0.0002)) return false;
  }
  return true;
}
// Table 4 prints for EMT of trade size 2 what one, two and more conductors, and those of a nipple, may fill.
bool fills(const Tables& t) {
  const double area = racewayArea(RacewayType::emt, TradeSize::two).count();
  const auto share = [&](int count) { return racewayFill(count, t).value_or(Fraction(0)).count() * area; };
  return near(share(1), 1.778, 0.002) && near(share(2), 1.040, 0.002) && near(share(3), 1.342, 0.002) &&
         near(share(9), 1.342, 0.002) && near(nippleFill(t).count() * area, 2.013, 0.002);
}
// Table 314.16(A) prints how many 14, 12, 10, 8 and 6 AWG each box takes; the sum of the two is the volume
// over that of one conductor, rounded down. (It prints 5 for 8 AWG in the first box, where 12.5 over 3 is 4.)
bool boxes(const Tables& t) {
  constexpr int kCounts[9][5] = {{6, 5, 5, 4, 2},    {7, 6, 6, 5, 3},    {10, 9, 8, 7, 4},
                                 {9, 8, 7, 6, 3},    {10, 9, 8, 7, 4},   {15, 13, 12, 10, 6},
                                 {12, 11, 10, 8, 5}, {14, 13, 11, 9, 5}, {21, 18, 16, 14, 8}};
  for (std::size_t box = 0; box < 9; ++box) {
    for (std::size_t size = 0; size < 5; ++size) {
      if (static_cast<int>(t.boxVolumes[box] / t.boxConductors[size].cubicInches + 1e-9) !=
          kCounts[box][size])
        return false;
    }
  }
  return true;
}
// It prints cubic centimetres beside (from memory), within one.
bool boxesInMetric(const Tables& t) {
  constexpr double kCubicCentimetres[9] = {205, 254, 353, 295, 344, 497, 418, 484, 689};
  for (std::size_t box = 0; box < 9; ++box) {
    if (!near(t.boxVolumes[box] * 16.387064, kCubicCentimetres[box], 1.0)) return false;
  }
  return true;
}

// -- small numbers

// The sections quoted in tests/core/code/numbers_test.cpp in words, here in what follows from them: S-09 and
// S-10 the 125 % of continuous loads (S-09: 200 A continuous ask for 250 A), S-24 seven grounds as 1.75
// volumes, a wye's 208 V as root three times 120 V and the split phase's as twice that; a backup panel of 200
// A with 160 A of sources stands at 240 A of 705.12(B)(2); S-12 for the terminals.
bool numberExamples(const Tables& t) {
  const auto number = [&](CodeNumber which) { return codeNumber(which, t); };
  if (!near(continuousFactor(t).count() * 200.0, 250.0, 1e-9)) return false;
  if (!near(groundsInBox(7, Edition::y2020, t), 1.75, 1e-9)) return false;
  if (groundsInBox(4, Edition::y2023, t) != 1.0) return false;
  if (!near(number(CodeNumber::lineVoltsWye), number(CodeNumber::legVolts) * std::sqrt(3.0), 0.2))
    return false;
  if (number(CodeNumber::lineVoltsSplitPhase) != 2.0 * number(CodeNumber::legVolts)) return false;
  if (!near(number(CodeNumber::legVolts), 120.0, 1.0)) return false;
  // S-01: the neutral of its range and dryer counts 70 %: 5100 + 0.7 x (8000 + 5500) VA on 240 V.
  DemandQuestion house = asking::dwelling(1500, 2, 1, Edition::y2020);
  house.items = {asking::withNeutral(asking::item(LoadClass::cooking, 12000)),
                 asking::withNeutral(asking::item(LoadClass::dryer, 5500))};
  if (!near(standardLoad(house, nullptr, t).neutral.count(), 60.6, 0.05)) return false;
  // 705.12(B): a bus of 200 A behind a main of 200 A leaves 40 A for the breaker of a source at its other
  // end, and that is 125 % of 32 A (worked so on many trade pages).
  if (!near(number(CodeNumber::busOppositeEndsFactor) * 200.0 - 200.0, 40.0, 1e-9)) return false;
  if (!near(number(CodeNumber::sourceCurrentFactor) * 32.0, 40.0, 1e-9)) return false;
  // Annex D, Example D4(a), neutral of twenty dwelling units (from memory): of 247 A the first 200 A and 70 %
  // of the 47 A above them, 233 A.
  const double above = neutralReductionAbove(t).count();
  if (!near(above + neutralReductionFactor(t).count() * (247.0 - above), 233.0, 0.5)) return false;
  // The sections print metres beside feet, 6 ft (1.8 m); 3 % of 120 V are 3.6 V (worked so on many trade
  // pages).
  if (!near(number(CodeNumber::afciExtensionLength) * 0.3048, 1.8, 0.05)) return false;
  if (!near(number(CodeNumber::dropAdviceOneRun) * 120.0, 3.6, 1e-9)) return false;
  // A wiring space of 12 square inches takes 4.8 of conductors, 9 where they are spliced (commentary of the
  // Handbook on 312.8, from memory).
  if (!near(number(CodeNumber::wiringSpaceConductors) * 12.0, 4.8, 1e-9)) return false;
  if (!near(number(CodeNumber::wiringSpaceSplices) * 12.0, 9.0, 1e-9)) return false;
  // The margin kept on running load is the share of a device that continuous load may take (common practice).
  if (!near(number(CodeNumber::loadingMargin) * continuousFactor(t).count(), 1.0, 1e-9)) return false;
  // A driven ground rod takes 6 AWG copper, a garage with one circuit a disconnect of 15 A, with two 30 A,
  // else 60 A: so in the dwelling code's pages on detached garages as on many trade pages (from memory).
  // Arc-fault protection is for 15 and 20 A circuits (title of many trade pages on 210.12).
  if (number(CodeNumber::afciDevice) != 20.0) return false;
  if (rodElectrodeConductor(t) != ConductorSize::awg6) return false;
  if (number(CodeNumber::buildingOneCircuit) != 15.0 || number(CodeNumber::buildingTwoCircuits) != 30.0 ||
      number(CodeNumber::buildingDisconnect) != 60.0)
    return false;
  // S-12: 50 A on terminals that are not marked takes 6 AWG by the 60 C column, and 8 AWG at 75 C.
  RunConditions conditions;
  conditions.nmCable = false;
  if (ampacities(ConductorSize::awg8, conditions, RatingAmperes(100), t).terminalColumn !=
          TemperatureColumn::c60 ||
      ampacities(ConductorSize::awg8, conditions, RatingAmperes(101), t).terminalColumn !=
          TemperatureColumn::c75 ||
      ampacities(ConductorSize::awg1, conditions, std::nullopt, t).terminalColumn != TemperatureColumn::c60 ||
      ampacities(ConductorSize::awg1_0, conditions, std::nullopt, t).terminalColumn != TemperatureColumn::c75)
    return false;
  // 310.15(C)(1)(b): a nipple of 24 in is not adjusted, a longer raceway is. 334.80: NM cable by its 60 C
  // column.
  conditions.currentCarrying = 9;
  conditions.terminals75 = true;
  conditions.length = Length::inches(24);
  const double nipple = ampacities(ConductorSize::awg8, conditions, RatingAmperes(40), t).adjustment.count();
  conditions.length = Length::inches(24.1);
  const double longer = ampacities(ConductorSize::awg8, conditions, RatingAmperes(40), t).adjustment.count();
  if (nipple != 1.0 || longer >= 1.0) return false;
  conditions.nmCable = true;
  if (ampacities(ConductorSize::awg6, conditions, RatingAmperes(50), t).terminalColumn !=
      TemperatureColumn::c60)
    return false;
  // 240.4(B): the next size up to 800 A, not above.
  return protects(RatingAmperes(800), ConductorSize::kcmil500, Metal::copper, AcAmperes(720), true,
                  Edition::y2023, t) &&
         !protects(RatingAmperes(1000), ConductorSize::kcmil500, Metal::copper, AcAmperes(850), true,
                   Edition::y2023, t) &&
         nextSizeUpLimit(t) == RatingAmperes(800);
}

constexpr Check kChecks[] = {dwellingServices,
                             ampacityExamples,
                             heatBalance,
                             ambientRoots,
                             adjustmentExamples,
                             adjustmentSteps,
                             ratingsNamedElsewhere,
                             chargerCircuits,
                             ratingSteps,
                             grounding,
                             electrodeConductors,
                             wireGauge,
                             resistivity,
                             alternating,
                             impedancePerKilometre,
                             motorPower,
                             motorRows,
                             letterBands,
                             diameters,
                             fills,
                             boxes,
                             boxesInMetric,
                             numberExamples};

// Cells that only their own table prints, so that nothing but a second copy of it can notice a change. At
// most so many of a table, each with the reason.
struct Alone {
  const char* table;
  int cells;
  const char* reason;
};
constexpr Alone kAlone[] = {
    {"code_numbers", 1, "115 % of 445.13(A) stands in that section alone"},
};

TEST(PublishedChecks, NoticeAChangedCell) {
  for (const Check& check : kChecks) ASSERT_TRUE(check(publishedTables())) << "check " << (&check - kChecks);
  std::map<std::string, std::pair<int, int>> score;  // noticed, all
  std::map<std::string, std::string> missed;
  for (const cells::Cell& cell : cells::cells()) {
    bool noticed = true;
    for (const auto& change : cell.changes) {
      Tables tables = publishedTables();
      change(tables);
      noticed = noticed && std::any_of(std::begin(kChecks), std::end(kChecks),
                                       [&](Check check) { return !check(tables); });
    }
    ++score[cell.table].second;
    score[cell.table].first += noticed ? 1 : 0;
    if (!noticed) missed[cell.table] += " [" + cell.name + "]";
  }
  int noticed = 0, all = 0;
  for (const auto& [table, counts] : score) {
    const auto* const alone = std::find_if(std::begin(kAlone), std::end(kAlone),
                                           [&name = table](const Alone& a) { return a.table == name; });
    const int allowed = alone == std::end(kAlone) ? 0 : alone->cells;
    EXPECT_LE(counts.second - counts.first, allowed) << table << missed[table];
    std::printf("%-24s %3d of %3d%s%s\n", table.c_str(), counts.first, counts.second, allowed > 0 ? ": " : "",
                allowed > 0 ? alone->reason : "");
    noticed += counts.first;
    all += counts.second;
  }
  std::printf("%d of %d cells, changed up or down, are noticed without a second copy\n", noticed, all);
}

}  // namespace
