// The likely peak against a count of every on-off state, for rows of loads that are not round numbers. The
// count knows nothing of the lattice but its step.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "core/assess/assess.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using namespace example;

struct Item {
  double watts, powerFactor, duty;
};

double countedPeak(const std::vector<Item>& items) {
  std::map<long, double> chance;
  for (unsigned state = 0; state < (1u << items.size()); ++state) {
    long sum = 0;
    double p = 1.0;
    for (std::size_t i = 0; i < items.size(); ++i) {
      const bool on = (state >> i) & 1u;
      p *= on ? items[i].duty : 1.0 - items[i].duty;
      if (on) sum += static_cast<long>(std::ceil(items[i].watts / items[i].powerFactor / 10.0 - 1e-9)) * 10;
    }
    chance[sum] += p;
  }
  double reached = 0.0;
  for (const auto& [sum, p] : chance) {
    reached += p;
    if (reached >= 0.99 - 1e-12) return static_cast<double>(sum);
  }
  return 0.0;
}

class CountedPeak : public testing::TestWithParam<std::vector<Item>> {};

TEST_P(CountedPeak, IsTheLikelyPeak) {
  Plan plan;
  const PanelId backup = addPanel(plan, PanelRole::backup, "Backup subpanel", 40);
  int row = 1;
  for (const Item& item : GetParam()) {
    addCircuitWithLoad(plan, backup, {Column::left, row}, 1, 20, "Circuit",
                       plainLoad("Load", item.watts, item.powerFactor, item.duty));
    row += 2;  // every other row: all on L1
  }
  const Assessment result = assess(plan);
  EXPECT_NEAR(result.hour.leg[0].likelyPeakApparent.likely.count(), countedPeak(GetParam()), 1e-9);
  EXPECT_DOUBLE_EQ(result.hour.leg[1].likelyPeakApparent.likely.count(), 0.0);
}

INSTANTIATE_TEST_SUITE_P(
    Houses, CountedPeak,
    testing::Values(std::vector<Item>{{333, 0.9, 0.35}},
                    std::vector<Item>{{150, 0.9, 0.35}, {110, 0.85, 0.3}, {805, 0.7, 0.05}, {7, 0.6, 1.0}},
                    std::vector<Item>{
                        {1450, 0.95, 0.01}, {61, 1, 0.5}, {92, 0.7, 0.5}, {500, 1, 0.2}, {501, 1, 0.2}},
                    std::vector<Item>{{10, 1, 0.5},
                                      {20, 1, 0.5},
                                      {30, 1, 0.5},
                                      {40, 1, 0.5},
                                      {50, 1, 0.5},
                                      {60, 1, 0.5},
                                      {70, 1, 0.5},
                                      {80, 1, 0.5},
                                      {90, 1, 0.5},
                                      {100, 1, 0.5}}));

}  // namespace
}  // namespace stayalight
