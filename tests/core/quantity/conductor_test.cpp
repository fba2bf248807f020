#include <gtest/gtest.h>

#include "core/quantity/conductor.h"

namespace stayalight {
namespace {

static_assert(ConductorSize::awg14 < ConductorSize::awg12);
static_assert(ConductorSize::awg1 < ConductorSize::awg1_0);
static_assert(ConductorSize::awg4_0 < ConductorSize::kcmil250);
static_assert(static_cast<std::size_t>(ConductorSize::kcmil500) + 1 == kConductorSizeCount);

TEST(Conductor, namesGoBothWaysInTheOrderOfTable310_16) {
  // Sizes of NFPA 70, Table 310.16, first column, 14 AWG to 500 kcmil.
  const char* const sizes[] = {"14",  "12",  "10",  "8",   "6",   "4",   "3",   "2",   "1",
                               "1/0", "2/0", "3/0", "4/0", "250", "300", "350", "400", "500"};
  ASSERT_EQ(std::size(sizes), kConductorSizeCount);
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    EXPECT_EQ(name(size), sizes[i]);
    EXPECT_EQ(conductorSizeNamed(sizes[i]), size);
    EXPECT_EQ(unit(size), i < 13 ? "AWG" : "kcmil") << sizes[i];
  }
  for (const char* none : {"", "5", "600", "14 ", "1/00"}) EXPECT_FALSE(conductorSizeNamed(none)) << none;
}

TEST(Conductor, temperatureColumns) {
  EXPECT_EQ(degrees(TemperatureColumn::c60), 60);
  EXPECT_EQ(degrees(TemperatureColumn::c75), 75);
  EXPECT_EQ(degrees(TemperatureColumn::c90), 90);
}

}  // namespace
}  // namespace stayalight
