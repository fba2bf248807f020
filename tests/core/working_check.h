#pragma once

// Reads every printed formula of a working with muParser and holds it against the recorded result.

#include <gtest/gtest.h>
#include <muParser.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/message/working.h"

namespace stayalight::testing_working {

inline void expectWorkingHolds(const Working& working) {
  const auto steps = working.steps();
  for (std::size_t s = 0; s < steps.size(); ++s) {
    const Step& step = steps[s];
    const std::string expression = evaluableExpression(step);
    ASSERT_FALSE(expression.empty()) << "no formula " << step.formula.key;
    const std::vector<std::string> names = evaluableNames(step);
    mu::Parser parser;
    std::vector<double> values;
    values.reserve(step.inputs.size());
    for (std::size_t i = 0; i < step.inputs.size(); ++i) {
      const StepInput& input = step.inputs[i];
      values.push_back(input.value);
      if (input.step != kNoStep) {
        ASSERT_LT(static_cast<std::size_t>(input.step), s) << step.formula.key;
        EXPECT_DOUBLE_EQ(steps[static_cast<std::size_t>(input.step)].result, input.value)
            << step.formula.key << " " << input.symbol;
      }
    }
    try {
      for (std::size_t i = 0; i < names.size(); ++i) parser.DefineVar(names[i], &values[i]);
      parser.SetExpr(expression);
      const double read = parser.Eval();
      EXPECT_NEAR(read, step.result, 1e-9 * std::max(1.0, std::abs(step.result)))
          << step.formula.key << ": " << expression;
    } catch (const mu::ParserError& error) {
      ADD_FAILURE() << step.formula.key << ": " << expression << ": " << error.GetMsg();
    }
  }
}

}  // namespace stayalight::testing_working
