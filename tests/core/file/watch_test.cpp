// Reading that somebody watches, and stops.

#include <gtest/gtest.h>

#include "core/file/file.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

std::string longText() {
  Plan plan = example::exampleHouse();
  for (int copy = 0; copy < 40; ++copy) {
    for (std::size_t i = 0; i < 10; ++i) {
      Circuit circuit = *plan.circuits[i];
      circuit.id = nextCircuitId(plan);
      circuit.loads.clear();
      circuit.breaker = {};
      circuit.planned = {};
      plan.circuits.emplace_back(circuit);
    }
  }
  return writePlan(plan);
}

TEST(Watched, IsToldAShareThatOnlyGrows) {
  std::vector<double> shares;
  const Result<ReadPlan> read = readPlan(longText(), "house", {}, [&](double share) {
    shares.push_back(share);
    return true;
  });
  ASSERT_TRUE(read.ok());
  ASSERT_GT(shares.size(), 10u);
  EXPECT_LT(shares.front(), 0.1);
  EXPECT_GT(shares.back(), 0.8);
  for (std::size_t i = 0; i < shares.size(); ++i) {
    EXPECT_GE(shares[i], i == 0 ? 0.0 : shares[i - 1]) << i;
    EXPECT_LE(shares[i], 1.0) << i;
  }
}

/// Stopped at any look it has: no plan, and the message says so.
TEST(Watched, StopsWhereverItIsTold) {
  const std::string text = longText();
  int looks = 0;
  ASSERT_TRUE(readPlan(text, "house", {}, [&](double) { return ++looks > 0; }).ok());
  for (int last = 0; last < looks; last += 1 + looks / 25) {
    int seen = 0;
    const Result<ReadPlan> read = readPlan(text, "house", {}, [&](double) { return seen++ < last; });
    ASSERT_FALSE(read.ok()) << last;
    EXPECT_EQ(read.refusal().id.key, "file.stopped") << last;
    EXPECT_EQ(seen, last + 1) << "it went on after it was told to stop";
  }
}

}  // namespace
}  // namespace stayalight
