// Each printed formula of a runtime, evaluated by another program's parser on the recorded inputs, gives the
// recorded result.

#include <gtest/gtest.h>
#include <muParser.h>

#include "tests/core/outage/outage_plan.h"

namespace stayalight {
namespace {

void checkSteps(const Working& working) {
  for (const Step& step : working.steps()) {
    ASSERT_NE(formulaOf(step.formula), nullptr) << step.formula.key;
    mu::Parser parser;
    const std::vector<std::string> names = evaluableNames(step);
    for (std::size_t i = 0; i < names.size(); ++i) parser.DefineConst(names[i], step.inputs[i].value);
    parser.SetExpr(evaluableExpression(step));
    EXPECT_NEAR(parser.Eval(), step.result, 1e-9 * (1 + std::abs(step.result))) << step.formula.key;
    for (const StepInput& input : step.inputs) {
      if (input.step == kNoStep) continue;
      EXPECT_NEAR(input.value, working.steps()[static_cast<std::size_t>(input.step)].result,
                  1e-9 * (1 + std::abs(input.value)));
    }
  }
}

TEST(OutageWorking, MarginalEfficiencyOverSeveralHours) {
  std::array<double, 24> watts{};
  for (std::size_t h = 0; h < 24; ++h) watts[h] = 200 + 50.0 * static_cast<double>(h % 5);
  Working working;
  const OutageFigures out =
      outage_plan::figures(outage_plan::plan(), outage_plan::hourly(watts), {}, &working);
  ASSERT_GE(working.steps().size(), 5u);
  EXPECT_EQ(working.steps().back().formula.key, "outage.runtime");
  EXPECT_NEAR(working.steps().back().result, out.runtime.likely.count(), 1e-12);
  checkSteps(working);
}

TEST(OutageWorking, LabelCurveBelowAndWithinItsPoints) {
  Plan made = outage_plan::plan();
  made.inverter.edit().continuous = Watts(5000);
  for (const auto& [load, efficiency] : {std::pair{0.05, 0.82}, {0.5, 0.95}}) {
    EfficiencyPoint point;
    point.load = Fraction(load);
    point.efficiency = Fraction(efficiency);
    made.inverter.edit().efficiency.push_back(point);
  }
  std::array<double, 24> watts{};
  for (std::size_t h = 0; h < 24; ++h) watts[h] = h % 2 == 0 ? 0.0 : 900.0;
  Working working;
  (void)outage_plan::figures(made, outage_plan::hourly(watts), {}, &working);
  checkSteps(working);
}

TEST(OutageWorking, OnePieceAndAnEndAtTheHorizon) {
  Plan made = outage_plan::plan();
  Working shortOne;
  (void)outage_plan::figures(made, outage_plan::constant(exactly(Watts(20000))), {}, &shortOne);
  checkSteps(shortOne);
  made.battery.edit().packs = 64;
  Working longOne;
  const OutageFigures out =
      outage_plan::figures(made, outage_plan::constant(exactly(Watts(10))), {}, &longOne);
  EXPECT_NEAR(longOne.steps().back().result, out.runtime.likely.count(), 1e-9);
  checkSteps(longOne);
}

TEST(OutageWorking, ChangesNoFigure) {
  const DayProfile profile = outage_plan::constant({Watts(300), Watts(400), Watts(700)});
  Working working;
  const OutageFigures with = outage_plan::figures(outage_plan::plan(), profile, {}, &working);
  const OutageFigures without = outage_plan::figures(outage_plan::plan(), profile);
  EXPECT_EQ(with.runtime, without.runtime);
}

}  // namespace
}  // namespace stayalight
