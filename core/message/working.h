#pragma once

// How a number came about: steps in one flat array, written down by the code that computes, on demand.
// Core builds no sentence: notation comes from the table of formulas, citations from the edition's table.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/message/message.h"

namespace stayalight {

/// Key of a printed formula, e.g. "current.from_power"; its text (which muParser can evaluate) is in
/// formulas.cpp.
struct FormulaId {
  std::string_view key;
  friend constexpr bool operator==(const FormulaId&, const FormulaId&) = default;
};

/// How well a fact is known, worst first.
enum class Grade : std::uint8_t { unknown, typical, nameplate, traced, measured };

using StepIndex = std::int32_t;
inline constexpr StepIndex kNoStep = -1;

/// One value that went into a step.
struct StepInput {
  std::string_view symbol;  ///< as in the formula, e.g. "P"
  double value = 0.0;
  std::string_view unit;
  std::optional<Grade> grade;  ///< of an entered fact
  StepIndex step = kNoStep;    ///< the earlier step this value is the result of
  std::string from;  ///< else: where from, e.g. "Well pump, running W" or "Table 310.16, 6 AWG Cu, 75 C"
};

struct Step {
  FormulaId formula;
  RuleId rule;  ///< empty key where no rule is followed
  double result = 0.0;
  std::string_view unit;
  std::vector<StepInput> inputs;
  Message note;  ///< what governed, the next candidate; empty id where there is nothing to say
};

/// Records steps. Computing code takes a `Working*` and does the same arithmetic with or without it.
class Working {
 public:
  StepIndex add(Step step) {
    steps_.push_back(std::move(step));
    return static_cast<StepIndex>(steps_.size()) - 1;
  }
  [[nodiscard]] std::span<const Step> steps() const { return steps_; }
  [[nodiscard]] bool empty() const { return steps_.empty(); }

 private:
  std::vector<Step> steps_;
};

/// One printed formula. `expression` uses the symbols of the inputs; "sum(x)" and the like with a single
/// symbol run over all inputs of that symbol, in order. Units: each formula states them in its inputs.
struct FormulaRow {
  std::string_view key;
  std::string_view expression;  ///< e.g. "sqrt(P^2 + Q^2) / V"
  std::string_view result;      ///< symbol of the result, e.g. "I"
  std::string_view source;      ///< where the formula is from
};
[[nodiscard]] const std::vector<FormulaRow>& formulas();
[[nodiscard]] const FormulaRow* formulaOf(FormulaId id);

/// The expression with run-over symbols written out for the inputs of this step, as muParser reads it:
/// inputs that repeat a symbol get numbered (x_1, x_2, ...), in the order they stand.
[[nodiscard]] std::string evaluableExpression(const Step& step);
/// Names given to the inputs in `evaluableExpression`, one for each input.
[[nodiscard]] std::vector<std::string> evaluableNames(const Step& step);

}  // namespace stayalight
