#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <thread>

#include "tests/core/example_plans.h"
#include "tests/core/use/base_of_others.h"

namespace stayalight {
namespace {

using namespace example;

SystemVoltages anySystem() {
  const int which = *rc::gen::inRange(0, 4);
  if (which == 0) return {};
  const WyeOrder order = which == 1 ? WyeOrder::unknown : which == 2 ? WyeOrder::l2Lags : WyeOrder::l2Leads;
  return {AcVolts(120), AcVolts(208), true, order, false};
}

Load anyLoad() {
  const double watts = *rc::gen::inRange(0, 3000);
  const double factor = *rc::gen::inRange(30, 101) / 100.0;
  const double duty = *rc::gen::inRange(0, 101) / 100.0;
  Load load = *rc::gen::arbitrary<bool>() ? plainLoad("Load", watts, factor, duty)
                                          : lineToLineLoad("Load", watts, factor, duty);
  load.pole = *rc::gen::inRange(1, 3);
  load.running.grade = static_cast<Grade>(*rc::gen::inRange(0, 5));
  return load;
}

Plan anyPlan(int most = 10) {
  Plan plan = emptyHouse();
  const int n = *rc::gen::inRange(1, most);
  for (int i = 0; i < n; ++i) {
    addCircuitWithLoad(plan, kMain, {Column::left, i + 1}, 2, 30, "Circuit", anyLoad());
  }
  return plan;
}

RC_GTEST_PROP(UseProperties, WattsAndVarsOfTheLegsAddToTheTotal, ()) {
  const SystemVoltages system = anySystem();
  const Plan plan = anyPlan();
  for (const Draw& draw : draws(plan, kMain, Reading::planned, system)) {
    RC_ASSERT(std::abs(draw.likely.total().real.count() - draw.watts.likely.count()) < 1e-6);
    RC_ASSERT(std::abs(draw.likely.total().apparent().count() - draw.apparent.likely.count()) < 1e-6);
  }
}

RC_GTEST_PROP(UseProperties, MoreLoadNeverLowersALikelyPeakNorBettersAVerdict, ()) {
  const SystemVoltages system = anySystem();
  Plan plan = anyPlan();
  InverterLimits limits;
  limits.leg = AcAmperes(*rc::gen::inRange(5, 60));
  limits.total = Watts(*rc::gen::inRange(1000, 12000));
  limits.totalApparent = VoltAmperes(limits.total->count());
  const auto figures = [&] {
    return hourFigures(HourLoads(plan, draws(plan, kMain, Reading::planned, system), system, 1, 18), limits);
  };
  const HourFigures before = figures();
  addCircuitWithLoad(plan, kMain, {Column::right, 1}, 2, 30, "More", anyLoad());
  const HourFigures after = figures();
  const auto rank = [](Verdict v) { return v == Verdict::over ? 2 : v == Verdict::notKnown ? 1 : 0; };
  for (const auto& [a, b] :
       {std::pair{&before.leg[0], &after.leg[0]}, std::pair{&before.leg[1], &after.leg[1]},
        std::pair{&before.total, &after.total}}) {
    RC_ASSERT(b->likelyPeak.likely >= a->likelyPeak.likely);
    RC_ASSERT(b->likelyPeak.high >= a->likelyPeak.high);
    RC_ASSERT(b->likelyPeakApparent.likely >= a->likelyPeakApparent.likely);
    RC_ASSERT(rank(b->verdict) >= rank(a->verdict));
  }
}

RC_GTEST_PROP(UseProperties, TakingLoadsOutGivesWhatTheOthersGive, ()) {
  const SystemVoltages system = anySystem();
  Plan plan = anyPlan(14);
  addCircuitWithLoad(plan, kMain, {Column::right, 1}, 2, 30, "One", anyLoad());
  addCircuitWithLoad(plan, kMain, {Column::right, 3}, 2, 30, "Two", anyLoad());
  const std::vector<Draw> all = draws(plan, kMain, Reading::planned, system);
  const HourLoads hour(plan, all, system, 1, 18);
  const std::size_t last = all.size() - 1;
  const auto same = [](const Base& a, const Base& b) {
    const auto near = [](double x, double y) { return std::abs(x - y) < 1e-6; };
    for (std::size_t leg = 0; leg < 2; ++leg) {
      RC_ASSERT(near(a.likely[leg].count(), b.likely[leg].count()));
      RC_ASSERT(near(a.high[leg].count(), b.high[leg].count()));
      RC_ASSERT(near(a.average[leg].count(), b.average[leg].count()));
    }
    RC_ASSERT(near(a.likelyTotal.count(), b.likelyTotal.count()));
    RC_ASSERT(near(a.highApparent.count(), b.highApparent.count()));
  };
  same(baseWithout(hour, last), baseOfOthers(plan, all, system, {all[last].load}));
  same(baseWithout(hour, last - 1, last),
       baseOfOthers(plan, all, system, {all[last].load, all[last - 1].load}));
}

RC_GTEST_PROP(UseProperties, CopiesAndThreadsGiveTheSameAnswers, ()) {
  const Plan plan = anyPlan();
  const SystemVoltages system = anySystem();
  const auto peakOf = [&system](const Plan& p) {
    return hourFigures(HourLoads(p, draws(p, kMain, Reading::planned, system), system, 1, 18), {})
        .total.likelyPeakApparent;
  };
  const Range<VoltAmperes> here = peakOf(plan);
  Range<VoltAmperes> there;
  const Plan copy = plan;
  std::thread([&] { there = peakOf(copy); }).join();
  RC_ASSERT(here == there);
}

}  // namespace
}  // namespace stayalight
