// Printed formulas as muParser reads them.

#include <gtest/gtest.h>
#include <muParser.h>

#include <cmath>
#include <set>

#include "core/message/working.h"

namespace stayalight {
namespace {

double evaluated(const Step& step) {
  mu::Parser parser;
  std::vector<double> values;
  for (const StepInput& input : step.inputs) values.push_back(input.value);
  const std::vector<std::string> names = evaluableNames(step);
  for (std::size_t i = 0; i < names.size(); ++i) parser.DefineVar(names[i], &values[i]);
  parser.SetExpr(evaluableExpression(step));
  return parser.Eval();
}

StepInput input(std::string_view symbol, double value) {
  StepInput one;
  one.symbol = symbol;
  one.value = value;
  return one;
}

Step stepOf(std::string_view formula, std::vector<StepInput> inputs) {
  Step step;
  step.formula = FormulaId{formula};
  step.inputs = std::move(inputs);
  return step;
}

/// The words of an expression that are no function calls.
std::set<std::string> symbolsOf(std::string_view expression) {
  std::set<std::string> symbols;
  const auto isWord = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; };
  for (std::size_t i = 0; i < expression.size();) {
    if (!isWord(expression[i])) {
      ++i;
      continue;
    }
    std::size_t end = i;
    while (end < expression.size() && isWord(expression[end])) ++end;
    const bool number = std::isdigit(static_cast<unsigned char>(expression[i])) != 0;
    const bool call = end < expression.size() && expression[end] == '(';
    if (!number && !call) symbols.emplace(expression.substr(i, end - i));
    i = end;
  }
  return symbols;
}

TEST(Formulas, everyRowIsWholeAndItsKeyUnique) {
  std::set<std::string_view> keys;
  for (const FormulaRow& row : formulas()) {
    EXPECT_TRUE(keys.insert(row.key).second) << row.key;
    EXPECT_FALSE(row.result.empty()) << row.key;
    EXPECT_FALSE(row.source.empty()) << row.key << " names no source";
    EXPECT_EQ(formulaOf(FormulaId{row.key}), &row);
  }
  EXPECT_EQ(formulaOf(FormulaId{"nobody.wrote_this"}), nullptr);
}

TEST(Formulas, muParserReadsEveryOne) {
  for (const FormulaRow& row : formulas()) {
    Step step = stepOf(row.key, {});
    const std::set<std::string> symbols = symbolsOf(row.expression);
    for (const std::string& symbol : symbols) step.inputs.push_back(input(symbol, 0.5));
    EXPECT_NO_THROW({ EXPECT_TRUE(std::isfinite(evaluated(step))) << row.key; })
        << row.key << ": " << row.expression;
  }
}

TEST(Evaluable, aPlainFormulaStandsAsPrinted) {
  const Step step = stepOf("current.from_power", {input("P", 3), input("Q", 4), input("V", 2)});
  EXPECT_EQ(evaluableExpression(step), "sqrt(P^2 + Q^2) / V");
  EXPECT_EQ(evaluableNames(step), (std::vector<std::string>{"P", "Q", "V"}));
  EXPECT_DOUBLE_EQ(evaluated(step), 2.5);
}

TEST(Evaluable, aSumRunsOverRepeatedSymbolsInTheirOrder) {
  const Step step =
      stepOf("power.average", {input("P", 100), input("u", 0.5), input("P", 40), input("u", 0.25)});
  EXPECT_EQ(evaluableNames(step), (std::vector<std::string>{"P_1", "u_1", "P_2", "u_2"}));
  EXPECT_EQ(evaluableExpression(step), "sum(P_1 * u_1, P_2 * u_2)");
  EXPECT_DOUBLE_EQ(evaluated(step), 60.0);
}

TEST(Evaluable, aSumOfOneIsTheOne) {
  const Step step = stepOf("power.average", {input("P", 100), input("u", 0.5)});
  EXPECT_EQ(evaluableExpression(step), "sum(P * u)");
  EXPECT_DOUBLE_EQ(evaluated(step), 50.0);
}

TEST(Evaluable, whatStandsBesideTheSumIsLeftAlone) {
  const Step step = stepOf("outage.crossing", {input("U", 100), input("p", 10), input("t", 2), input("p", 20),
                                               input("t", 1), input("q", 5)});
  EXPECT_EQ(evaluableExpression(step), "(U - sum(p_1 * t_1, p_2 * t_2)) / q");
  EXPECT_DOUBLE_EQ(evaluated(step), 12.0);
}

TEST(Evaluable, aStepWithoutAFormulaHasNoExpression) {
  EXPECT_EQ(evaluableExpression(stepOf("nobody.wrote_this", {input("x", 1)})), "");
}

TEST(Working, stepsCountFromZero) {
  Working working;
  EXPECT_TRUE(working.empty());
  EXPECT_EQ(working.add(stepOf("power.apparent", {})), 0);
  EXPECT_EQ(working.add(stepOf("current.from_apparent", {})), 1);
  ASSERT_EQ(working.steps().size(), 2u);
  EXPECT_EQ(working.steps()[1].formula.key, "current.from_apparent");
}

}  // namespace
}  // namespace stayalight
