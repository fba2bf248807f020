// Checks the conductor tables cell by cell against a second typed copy (tests/reference/tables) and by the
// arithmetic that holds between their columns.

#include "core/code/conductors.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/reference/tables/ampacity_columns.h"
#include "tests/reference/tables/conductor_data.h"
#include "tests/reference/tables/devices.h"
#include "tests/reference/tables/factors.h"

using namespace stayalight;

namespace {

constexpr std::array kColumns = {TemperatureColumn::c60, TemperatureColumn::c75, TemperatureColumn::c90};
constexpr std::array kMetals = {Metal::copper, Metal::aluminium};
constexpr std::array kRaceways = {RacewayMaterial::pvc, RacewayMaterial::aluminium, RacewayMaterial::steel};

ConductorSize sizeAt(std::size_t downward) {
  const auto size = conductorSizeNamed(reference::kSizesDownward[downward]);
  EXPECT_TRUE(size.has_value());
  return *size;
}

template <class Cell>
void expectCell(const std::optional<Cell>& found, double expected, const std::string& where) {
  if (expected == 0.0) {
    EXPECT_FALSE(found.has_value()) << where;
  } else {
    ASSERT_TRUE(found.has_value()) << where;
    EXPECT_DOUBLE_EQ(found->count(), expected) << where;
  }
}

TEST(Ampacity, EveryCellAgreesWithTheSecondCopy) {
  const std::array<const std::array<int, 18>*, 6> columns = {
      &reference::kCopper60,    &reference::kCopper75,    &reference::kCopper90,
      &reference::kAluminium60, &reference::kAluminium75, &reference::kAluminium90};
  for (std::size_t c = 0; c < columns.size(); ++c) {
    for (std::size_t i = 0; i < 18; ++i) {
      const Metal metal = kMetals[c / 3];
      const TemperatureColumn column = kColumns[c % 3];
      expectCell(ampacity(sizeAt(i), metal, column), (*columns[c])[i],
                 ampacityCell(sizeAt(i), metal, column, Edition::y2023));
    }
  }
}

// Neher and McGrath's heat balance behind the table: I^2 R is in proportion to the temperature rise, and R
// grows with temperature by 0.00323 (copper) or 0.00330 (aluminium) a degree from 75 C (note to Chapter 9
// Table 8). Cells are rounded to 5 A.
TEST(Ampacity, ColumnsFollowTheHeatBalance) {
  for (const Metal metal : kMetals) {
    const double coefficient = metal == Metal::copper ? 0.00323 : 0.00330;
    const auto currentAt = [&](double celsius) {
      return std::sqrt((celsius - 30.0) / (1.0 + coefficient * (celsius - 75.0)));
    };
    for (std::size_t i = static_cast<std::size_t>(ConductorSize::awg4); i < kConductorSizeCount; ++i) {
      const auto size = static_cast<ConductorSize>(i);
      const double at75 = ampacity(size, metal, TemperatureColumn::c75)->count();
      EXPECT_NEAR(ampacity(size, metal, TemperatureColumn::c60)->count(),
                  at75 * currentAt(60) / currentAt(75), 5.0)
          << conductorName(size, metal);
      EXPECT_NEAR(ampacity(size, metal, TemperatureColumn::c90)->count(),
                  at75 * currentAt(90) / currentAt(75), 5.0)
          << conductorName(size, metal);
    }
  }
}

TEST(Ampacity, RisesWithSizeAndColumnAndCopperCarriesMore) {
  for (const Metal metal : kMetals) {
    for (const TemperatureColumn column : kColumns) {
      for (std::size_t i = 2; i < kConductorSizeCount; ++i) {
        EXPECT_GT(*ampacity(static_cast<ConductorSize>(i), metal, column),
                  *ampacity(static_cast<ConductorSize>(i - 1), metal, column));
      }
    }
  }
  for (std::size_t i = 1; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    EXPECT_LT(*ampacity(size, Metal::copper, TemperatureColumn::c60),
              *ampacity(size, Metal::copper, TemperatureColumn::c75));
    EXPECT_LT(*ampacity(size, Metal::copper, TemperatureColumn::c75),
              *ampacity(size, Metal::copper, TemperatureColumn::c90));
    for (const TemperatureColumn column : kColumns) {
      EXPECT_LT(*ampacity(size, Metal::aluminium, column), *ampacity(size, Metal::copper, column));
    }
  }
}

TEST(Ampacity, CellIsNamedByTheEdition) {
  EXPECT_EQ(ampacityCell(ConductorSize::awg6, Metal::copper, TemperatureColumn::c75, Edition::y2023),
            "Table 310.16, 6 AWG Cu, 75 C");
  EXPECT_EQ(ampacityCell(ConductorSize::kcmil250, Metal::aluminium, TemperatureColumn::c90, Edition::y2017),
            "Table 310.15(B)(16), 250 kcmil Al, 90 C");
  EXPECT_EQ(ampacityCell(ConductorSize::awg6, Metal::copper, TemperatureColumn::c60, Edition::y2026),
            "Table 310.16 (2023; not confirmed for 2026), 6 AWG Cu, 60 C");
}

TEST(AmbientFactor, EveryCellAgreesWithTheSecondCopy) {
  for (std::size_t row = 0; row < reference::kAmbientFahrenheitUpTo.size(); ++row) {
    const Temperature ambient = Temperature::fahrenheit(reference::kAmbientFahrenheitUpTo[row]);
    const auto hundredths = [&](auto& column) { return row < column.size() ? column[row] / 100.0 : 0.0; };
    const std::string where = std::to_string(reference::kAmbientFahrenheitUpTo[row]) + " F";
    expectCell(ambientFactor(ambient, TemperatureColumn::c60), hundredths(reference::kAmbient60), where);
    expectCell(ambientFactor(ambient, TemperatureColumn::c75), hundredths(reference::kAmbient75), where);
    expectCell(ambientFactor(ambient, TemperatureColumn::c90), hundredths(reference::kAmbient90), where);
  }
}

// Equation in 310.15(B): I' = I sqrt((Tc - Ta) / (Tc - 30)); the table prints it for the hot end of each
// range.
TEST(AmbientFactor, IsTheRootOfTheRemainingTemperatureRise) {
  for (const TemperatureColumn column : kColumns) {
    for (int celsius = 10; celsius < degrees(column); celsius += 5) {
      const auto factor = ambientFactor(Temperature::celsius(celsius), column);
      ASSERT_TRUE(factor) << celsius;
      const double tc = degrees(column);
      EXPECT_NEAR(factor->count(), std::sqrt((tc - celsius) / (tc - 30.0)), 0.00501)
          << celsius << " C, column " << tc;
    }
  }
}

TEST(AmbientFactor, BetweenTwoRangesTakesTheHotterOne) {
  struct Row {
    double celsius;
    double factor75;
  };
  for (const Row& row :
       {Row{-40.0, 1.20}, Row{10.0, 1.20}, Row{10.1, 1.15}, Row{30.0, 1.00}, Row{30.001, 0.94},
        Row{30.4, 0.94}, Row{31.0, 0.94}, Row{35.0, 0.94}, Row{69.9, 0.33}}) {
    const auto factor = ambientFactor(Temperature::celsius(row.celsius), TemperatureColumn::c75);
    ASSERT_TRUE(factor) << row.celsius;
    EXPECT_DOUBLE_EQ(factor->count(), row.factor75) << row.celsius;
  }
}

TEST(AmbientFactor, NoCellMeansNotPermitted) {
  EXPECT_FALSE(ambientFactor(Temperature::celsius(55.5), TemperatureColumn::c60));
  EXPECT_FALSE(ambientFactor(Temperature::celsius(71), TemperatureColumn::c75));
  EXPECT_FALSE(ambientFactor(Temperature::celsius(85.5), TemperatureColumn::c90));
  EXPECT_FALSE(ambientFactor(Temperature::celsius(120), TemperatureColumn::c90));
}

TEST(AmbientFactor, CellIsNamed) {
  EXPECT_EQ(ambientCell(Temperature::celsius(46), TemperatureColumn::c90, Edition::y2020),
            "Table 310.15(B)(1), up to 50 C, 90 C column");
  EXPECT_EQ(ambientCell(Temperature::celsius(90), TemperatureColumn::c90, Edition::y2017),
            "Table 310.15(B)(2)(a), above the last row, 90 C column");
}

TEST(Adjustment, EveryRangeEndAgreesWithTheSecondCopy) {
  for (const auto& row : reference::kAdjustment) {
    expectCell(adjustmentFactor(row.count), row.percent / 100.0, std::to_string(row.count));
  }
  EXPECT_FALSE(adjustmentFactor(0));
  EXPECT_FALSE(adjustmentFactor(-3));
  for (int count = 2; count < 60; ++count) EXPECT_LE(*adjustmentFactor(count), *adjustmentFactor(count - 1));
}

TEST(Adjustment, CellIsNamed) {
  EXPECT_EQ(adjustmentCell(9, Edition::y2023), "Table 310.15(C)(1), 7 to 9 current-carrying conductors");
  EXPECT_EQ(adjustmentCell(50, Edition::y2017),
            "Table 310.15(B)(3)(a), 41 and more current-carrying conductors");
}

TEST(GroundingConductor, EveryRowAgreesWithTheSecondCopy) {
  int below = 0;
  for (auto row = reference::kGroundingDownward.rbegin(); row != reference::kGroundingDownward.rend();
       ++row) {
    for (const int device : {below + 1, row->device}) {
      const auto copper = groundingConductor(RatingAmperes(device), Metal::copper);
      const auto aluminium = groundingConductor(RatingAmperes(device), Metal::aluminium);
      ASSERT_TRUE(copper && aluminium) << device;
      EXPECT_EQ(name(*copper), row->copper) << device;
      EXPECT_EQ(name(*aluminium), row->aluminium) << device;
      EXPECT_GT(*aluminium, *copper) << device;
    }
    below = row->device;
  }
  EXPECT_FALSE(groundingConductor(RatingAmperes(450), Metal::copper));
  EXPECT_EQ(groundingCell(RatingAmperes(50), Metal::copper, Edition::y2023), "Table 250.122, up to 60 A, Cu");
}

TEST(ConductorProperties, EveryCellAgreesWithTheSecondCopy) {
  for (std::size_t i = 0; i < 18; ++i) {
    const ConductorSize size = sizeAt(i);
    EXPECT_DOUBLE_EQ(circularMils(size).count(), reference::kCircularMils[i]) << name(size);
    EXPECT_DOUBLE_EQ(directCurrentResistance(size, Metal::copper).count(), reference::kCopperStranded[i]);
    EXPECT_DOUBLE_EQ(directCurrentResistance(size, Metal::aluminium).count(),
                     reference::kAluminiumStranded[i]);
  }
}

// Resistance times area is the resistivity at 75 C: about 12.8 ohm cmil/ft for copper and 21.1 for aluminium
// (standard annealed copper is 10.371 ohm cmil/ft at 20 C, ASTM B193; x (1 + 0.00393 x 55) = 12.6 and
// stranding adds 2 %).
TEST(ConductorProperties, ResistanceTimesAreaIsConstant) {
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    const double mils = circularMils(size).count();
    EXPECT_NEAR(directCurrentResistance(size, Metal::copper).count() * mils / 1000.0, 12.86, 0.13)
        << name(size);
    EXPECT_NEAR(directCurrentResistance(size, Metal::aluminium).count() * mils / 1000.0, 21.2, 0.15)
        << name(size);
    // A mil is 1/1000 in across: 1 cmil is 5.067e-4 mm2. The table rounds to whole mm2 from 250 kcmil on.
    EXPECT_NEAR(crossSection(size).count(), mils * 5.06707e-4, mils < 250000 ? 0.03 : 0.5) << name(size);
  }
}

// American wire gauge: the diameter falls by 92^(1/39) from one number to the next (ASTM B258), 4/0 is 0.46
// in.
TEST(ConductorProperties, CircularMilsFollowTheWireGauge) {
  const auto gaugeMils = [](int number) {
    const double inches = 0.005 * std::pow(92.0, (36.0 - number) / 39.0);
    return inches * inches * 1e6;
  };
  const std::array<int, 13> numbers = {14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3};
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const double expected = gaugeMils(numbers[i]);
    EXPECT_NEAR(circularMils(static_cast<ConductorSize>(i)).count() / expected, 1.0, 0.001) << numbers[i];
  }
  EXPECT_DOUBLE_EQ(circularMils(ConductorSize::kcmil350).count(), 350000.0);
}

TEST(Impedance, EveryCellAgreesWithTheSecondCopy) {
  const std::array<const std::array<double, 18>*, 6> resistances = {
      &reference::kCopperPvc,    &reference::kCopperAluminium,    &reference::kCopperSteel,
      &reference::kAluminiumPvc, &reference::kAluminiumAluminium, &reference::kAluminiumSteel};
  for (std::size_t c = 0; c < resistances.size(); ++c) {
    for (std::size_t i = 0; i < 18; ++i) {
      const RacewayMaterial raceway = kRaceways[c % 3];
      const std::string where = impedanceCell(sizeAt(i), kMetals[c / 3], raceway);
      const auto found = impedance(sizeAt(i), kMetals[c / 3], raceway);
      if ((*resistances[c])[i] == 0.0) {
        EXPECT_FALSE(found) << where;
        continue;
      }
      ASSERT_TRUE(found) << where;
      EXPECT_DOUBLE_EQ(found->resistance.count(), (*resistances[c])[i]) << where;
      const auto& reactance =
          raceway == RacewayMaterial::steel ? reference::kReactanceSteel : reference::kReactancePvc;
      EXPECT_DOUBLE_EQ(found->reactance.count(), reactance[i]) << where;
    }
  }
}

// Steel raises the reactance by about a quarter; alternating current meets at least the direct-current
// resistance, but for the rounding of the table to two digits.
TEST(Impedance, StandsInProportionToTableEight) {
  for (const Metal metal : kMetals) {
    for (std::size_t i = 1; i < kConductorSizeCount; ++i) {
      const auto size = static_cast<ConductorSize>(i);
      const auto open = impedance(size, metal, RacewayMaterial::pvc);
      const auto steel = impedance(size, metal, RacewayMaterial::steel);
      EXPECT_NEAR(steel->reactance / open->reactance, 1.25, 0.03) << name(size);
      EXPECT_GE(steel->resistance, open->resistance) << name(size);
      const double direct = directCurrentResistance(size, metal).count();
      EXPECT_GE(open->resistance.count(), direct * 0.965) << name(size);
      EXPECT_LE(open->resistance.count(), direct * 1.06) << name(size);
    }
  }
}

TEST(Tables, ChangedCellReachesTheAnswer) {
  Tables changed = publishedTables();
  changed.ampacity[static_cast<std::size_t>(ConductorSize::awg8)].amperes[0][1] = 51.0;
  changed.adjustment[1].percent = 79.0;
  EXPECT_DOUBLE_EQ(ampacity(ConductorSize::awg8, Metal::copper, TemperatureColumn::c75, changed)->count(),
                   51.0);
  EXPECT_DOUBLE_EQ(adjustmentFactor(5, changed)->count(), 0.79);
  EXPECT_DOUBLE_EQ(ampacity(ConductorSize::awg8, Metal::copper, TemperatureColumn::c75)->count(), 50.0);
}

// NFPA 70 Table 250.66, typed from memory a second time: ends of its rows and the sizes above them.
TEST(Conductors, ElectrodeConductorByTheSupplyConductors) {
  using enum ConductorSize;
  struct Case {
    ConductorSize supply;
    Metal metal;
    ConductorSize electrode;
  };
  for (const Case& c :
       {Case{awg14, Metal::copper, awg8}, Case{awg2, Metal::copper, awg8}, Case{awg1, Metal::copper, awg6},
        Case{awg1_0, Metal::copper, awg6}, Case{awg2_0, Metal::copper, awg4},
        Case{awg3_0, Metal::copper, awg4}, Case{awg4_0, Metal::copper, awg2},
        Case{kcmil350, Metal::copper, awg2}, Case{kcmil400, Metal::copper, awg1_0},
        Case{kcmil500, Metal::copper, awg1_0}, Case{awg1_0, Metal::aluminium, awg8},
        Case{awg2_0, Metal::aluminium, awg6}, Case{awg3_0, Metal::aluminium, awg6},
        Case{awg4_0, Metal::aluminium, awg4}, Case{kcmil250, Metal::aluminium, awg4},
        Case{kcmil300, Metal::aluminium, awg2}, Case{kcmil500, Metal::aluminium, awg2}}) {
    EXPECT_EQ(electrodeConductor(c.supply, c.metal), c.electrode) << conductorName(c.supply, c.metal);
  }
}

}  // namespace
