// Checks the motor tables against a second typed copy and by the ratios between them.

#include "core/code/motors.h"

#include <gtest/gtest.h>

#include "tests/reference/tables/motors.h"

using namespace stayalight;

namespace {

constexpr std::array kColumns = {MotorVolts::v115, MotorVolts::v200, MotorVolts::v208, MotorVolts::v230};

TEST(FullLoadCurrent, EveryCellAgreesWithTheSecondCopy) {
  const std::array<const std::array<double, 12>*, 4> columns = {
      &reference::kFullLoad115, &reference::kFullLoad200, &reference::kFullLoad208, &reference::kFullLoad230};
  for (std::size_t c = 0; c < columns.size(); ++c) {
    for (std::size_t i = 0; i < 12; ++i) {
      const auto found = fullLoadCurrent(Horsepower(reference::kHorsepowerDownward[i]), kColumns[c]);
      ASSERT_TRUE(found) << reference::kHorsepowerDownward[i];
      EXPECT_DOUBLE_EQ(found->current.count(), (*columns[c])[i])
          << reference::kHorsepowerDownward[i] << " hp";
      EXPECT_FALSE(found->computed);
    }
  }
}

// A motor takes the same power at each voltage: current times volts is the same within rounding.
TEST(FullLoadCurrent, PowerIsTheSameAtEveryVoltage) {
  for (const double hp : reference::kHorsepowerDownward) {
    const double at230 = fullLoadCurrent(Horsepower(hp), MotorVolts::v230)->current.count() * 230.0;
    EXPECT_NEAR(fullLoadCurrent(Horsepower(hp), MotorVolts::v115)->current.count() * 115.0 / at230, 1.0, 0.01)
        << hp;
    EXPECT_NEAR(fullLoadCurrent(Horsepower(hp), MotorVolts::v200)->current.count() * 200.0 / at230, 1.0, 0.02)
        << hp;
    EXPECT_NEAR(fullLoadCurrent(Horsepower(hp), MotorVolts::v208)->current.count() * 208.0 / at230, 1.0, 0.02)
        << hp;
  }
}

TEST(LockedRotorCurrent, PrintedCellsAgreeWithTheSecondCopy) {
  for (std::size_t i = 0; i < 9; ++i) {
    const Horsepower power(reference::kHorsepowerDownward[i]);
    EXPECT_DOUBLE_EQ(lockedRotorCurrent(power, MotorVolts::v115)->current.count(),
                     reference::kLockedRotor115[i]);
    EXPECT_DOUBLE_EQ(lockedRotorCurrent(power, MotorVolts::v208)->current.count(),
                     reference::kLockedRotor208[i]);
    EXPECT_DOUBLE_EQ(lockedRotorCurrent(power, MotorVolts::v230)->current.count(),
                     reference::kLockedRotor230[i]);
    EXPECT_FALSE(lockedRotorCurrent(power, MotorVolts::v230)->computed);
    EXPECT_FALSE(lockedRotorCurrent(power, MotorVolts::v200));
  }
}

// Table 430.251(A) is six times Table 430.248, within 1 % of rounding at 208 V.
TEST(LockedRotorCurrent, IsSixTimesFullLoad) {
  for (const double hp : reference::kHorsepowerDownward) {
    for (const MotorVolts column : {MotorVolts::v115, MotorVolts::v208, MotorVolts::v230}) {
      const double ratio = lockedRotorCurrent(Horsepower(hp), column)->current.count() /
                           fullLoadCurrent(Horsepower(hp), column)->current.count();
      EXPECT_NEAR(ratio, 6.0, 0.0625) << hp << " hp at " << ratedVolts(column).count() << " V";
    }
  }
}

TEST(LockedRotorCurrent, RowsThatAreNotPrintedSaySo) {
  for (const double hp : {1.0 / 6.0, 0.25, 1.0 / 3.0}) {
    const auto found = lockedRotorCurrent(Horsepower(hp), MotorVolts::v115);
    ASSERT_TRUE(found);
    EXPECT_TRUE(found->computed) << hp;
  }
  EXPECT_DOUBLE_EQ(lockedRotorCurrent(Horsepower(1.0 / 6.0), MotorVolts::v115)->current.count(), 26.4);
  EXPECT_DOUBLE_EQ(lockedRotorCurrent(Horsepower(0.25), MotorVolts::v208)->current.count(), 19.2);
  EXPECT_DOUBLE_EQ(lockedRotorCurrent(Horsepower(1.0 / 3.0), MotorVolts::v230)->current.count(), 21.6);
  EXPECT_EQ(lockedRotorCell(Horsepower(0.25), MotorVolts::v208),
            "Table 430.251(A), 1/4 hp, 208 V (computed, six times full-load current)");
}

TEST(MotorRows, HorsepowerBetweenRowsTakesTheLarger) {
  struct Row {
    double typed;
    double amperes;
  };
  for (const Row& row : {Row{0.05, 4.4}, Row{0.17, 4.4}, Row{0.2, 5.8}, Row{0.33, 7.2}, Row{0.34, 7.2},
                         Row{0.4, 9.8}, Row{1.2, 20.0}, Row{10.0, 100.0}}) {
    EXPECT_DOUBLE_EQ(fullLoadCurrent(Horsepower(row.typed), MotorVolts::v115)->current.count(), row.amperes)
        << row.typed;
  }
  EXPECT_FALSE(fullLoadCurrent(Horsepower(0.0), MotorVolts::v115));
  EXPECT_FALSE(fullLoadCurrent(Horsepower(-1.0), MotorVolts::v115));
  EXPECT_FALSE(lockedRotorCurrent(Horsepower(15.0), MotorVolts::v230));
  EXPECT_EQ(fullLoadCell(Horsepower(1.2), MotorVolts::v230), "Table 430.248, 1 1/2 hp, 230 V");
}

TEST(MotorColumns, CoverTheSystemsTheTableNames) {
  EXPECT_EQ(motorColumn(AcVolts(110)), MotorVolts::v115);
  EXPECT_EQ(motorColumn(AcVolts(120)), MotorVolts::v115);
  EXPECT_EQ(motorColumn(AcVolts(200)), MotorVolts::v200);
  EXPECT_EQ(motorColumn(AcVolts(208)), MotorVolts::v208);
  EXPECT_EQ(motorColumn(AcVolts(230)), MotorVolts::v230);
  EXPECT_EQ(motorColumn(AcVolts(240)), MotorVolts::v230);
  EXPECT_FALSE(motorColumn(AcVolts(277)));
  EXPECT_FALSE(motorColumn(AcVolts(24)));
}

TEST(CodeLetters, BandsAgreeWithTheSecondCopyAndLeaveNoGap) {
  double above = 0.0;
  for (auto row = reference::kLetters.rbegin(); row != reference::kLetters.rend(); ++row) {
    const auto band = codeLetterBand(row->letter);
    ASSERT_TRUE(band) << row->letter;
    EXPECT_NEAR(band->least.count(), above, 1e-9) << row->letter;
    EXPECT_EQ(band->most.has_value(), row->most != 0.0) << row->letter;
    if (band->most) {
      EXPECT_DOUBLE_EQ(band->most->count(), row->most) << row->letter;
      above = row->most + 0.01;
    }
  }
  for (const char unused : {'I', 'O', 'Q', 'W', '1', ' '}) EXPECT_FALSE(codeLetterBand(unused)) << unused;
  EXPECT_DOUBLE_EQ(codeLetterBand('k')->most->count(), 8.99);
  EXPECT_EQ(codeLetterCell('k'), "Table 430.7(B), code letter K");
}

}  // namespace
