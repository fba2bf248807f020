#include <gtest/gtest.h>

#include "core/use/use.h"

namespace stayalight {
namespace {

constexpr std::nullopt_t none = std::nullopt;

TEST(Spread, GivesEachGradeItsWidth) {  // common practice, no source
  const struct {
    FactKind kind;
    Grade grade;
    double value, low, high;
  } rows[] = {
      {FactKind::watts, Grade::measured, 1000, 950, 1050},
      {FactKind::watts, Grade::traced, 1000, 900, 1100},
      {FactKind::watts, Grade::nameplate, 1000, 600, 1000},
      {FactKind::watts, Grade::typical, 1000, 700, 1400},
      {FactKind::watts, Grade::unknown, 1000, 500, 2000},
      {FactKind::duty, Grade::typical, 0.5, 0.35, 0.7},
      {FactKind::duty, Grade::unknown, 0.8, 0.4, 1.0},
      {FactKind::powerFactor, Grade::unknown, 0.95, 0.665, 1.0},
      {FactKind::powerFactor, Grade::unknown, 0.12, 0.1, 0.138},
      {FactKind::startPowerFactor, Grade::typical, 0.5, 0.4, 0.8},
  };
  for (const auto& row : rows) {
    const Range<double> r = spread(row.kind, row.grade, row.value, none, none);
    EXPECT_NEAR(r.low, row.low, 1e-9);
    EXPECT_DOUBLE_EQ(r.likely, row.value);
    EXPECT_NEAR(r.high, row.high, 1e-9);
  }
}

TEST(Spread, OwnEndsCountBeforeTheGrade) {
  const Range<double> r = spread(FactKind::watts, Grade::unknown, 100.0, 90.0, none);
  EXPECT_DOUBLE_EQ(r.low, 90.0);
  EXPECT_DOUBLE_EQ(r.high, 200.0);
  const Range<double> both = spread(FactKind::watts, Grade::unknown, none, 90.0, 110.0);
  EXPECT_DOUBLE_EQ(both.likely, 100.0);
}

TEST(Spread, NothingEnteredIsNothing) {
  Graded<Watts> fact;
  EXPECT_FALSE(spread(FactKind::watts, fact));
  fact.low = Watts(3);
  EXPECT_FALSE(spread(FactKind::watts, fact));
}

TEST(Spread, BetterGradesAreNarrowerAndEndsStandInOrder) {
  for (int kind = 0; kind <= static_cast<int>(FactKind::health); ++kind) {
    double width = 1e9;
    for (const Grade grade : {Grade::unknown, Grade::typical, Grade::traced, Grade::measured}) {
      const Range<double> r = spread(static_cast<FactKind>(kind), grade, 0.5, none, none);
      EXPECT_LE(r.low, r.likely);
      EXPECT_LE(r.likely, r.high);
      EXPECT_LE(r.high - r.low, width);
      width = r.high - r.low;
    }
  }
}

}  // namespace
}  // namespace stayalight
