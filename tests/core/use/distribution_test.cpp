#include <gtest/gtest.h>

#include "core/use/cumulative.h"

namespace stayalight {
namespace {

Distribution alike(int n, double share, double p) {
  Distribution d;
  for (int i = 0; i < n; ++i) d.add(share, p);
  return d;
}

TEST(Distribution, TenUsersOnTwelveMinutesAnHour) {
  // Feller, An Introduction to Probability Theory and Its Applications, vol. 1, ch. VI: P(at least 7 of 10)
  // at p = 0.2.
  EXPECT_NEAR(alike(10, 100, 0.2).probabilityOver(600), 0.0008643584, 1e-12);
}

TEST(Distribution, FiveMachines) {
  // Public statistics question with worked answer, p = 0.2.
  const Distribution d = alike(5, 100, 0.2);
  EXPECT_NEAR(d.probabilityWithin(-1, 0), 0.32768, 1e-12);
  EXPECT_NEAR(d.probabilityWithin(399, 400), 0.0064, 1e-12);
  EXPECT_NEAR(d.probabilityOver(400), 0.00032, 1e-12);
  EXPECT_NEAR(d.probabilityOver(200), 0.05792, 1e-12);
}

TEST(Distribution, SharesAreRoundedUpToTheLattice) {
  Distribution d;
  d.add(101, 1.0);
  EXPECT_DOUBLE_EQ(d.quantile(0.5), 110);
  d.add(0.5, 1.0);
  EXPECT_DOUBLE_EQ(d.quantile(0.5), 120);
  d.add(30, 0.0);
  EXPECT_DOUBLE_EQ(d.quantile(1.0), 120);
}

TEST(Distribution, AQuantileIsTheSmallestValueThatReaches) {
  Distribution d;
  d.add(100, 0.01);
  EXPECT_DOUBLE_EQ(d.quantile(0.99), 0);  // P(X <= 0) is 0.99 itself
  EXPECT_DOUBLE_EQ(d.quantile(0.991), 100);
  d.add(50, 0.01);
  EXPECT_DOUBLE_EQ(d.quantile(0.99), 50);
}

TEST(Cumulative, TakesALoadOutAgain) {
  for (const double p : {0.0, 0.03, 0.5, 0.61, 0.98, 1.0}) {
    Distribution others = alike(12, 170, 0.35);
    others.add(1900, 0.7);
    others.add(400, 1.0);
    Distribution all = others;
    all.add(640, p);
    const Cumulative sums(all);
    const Cumulative expected(others);
    for (const double q : {0.001, 0.5, 0.9, 0.99, 0.9999}) {
      EXPECT_DOUBLE_EQ(sums.quantileWithout(640, p, q), expected.quantile(q)) << p << " " << q;
      EXPECT_DOUBLE_EQ(sums.without(640, p).quantile(q), expected.quantile(q)) << p << " " << q;
    }
    for (const double limit : {900.0, 2000.0, 3100.0}) {
      EXPECT_NEAR(sums.probabilityCarriedOver(limit, 640, p), others.probabilityWithin(limit - 640, limit),
                  1e-12);
    }
  }
}

TEST(Distribution, AMistypedLoadStaysWithinReason) {
  Distribution coarse(5000);
  coarse.add(1e7, 0.5);
  EXPECT_DOUBLE_EQ(coarse.quantile(0.99), 1e7);
}

}  // namespace
}  // namespace stayalight
