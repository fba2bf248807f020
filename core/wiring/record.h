#pragma once

// Small words for writing down steps and figures.

#include <initializer_list>

#include "core/wiring/wiring.h"

namespace stayalight::wiring {

inline StepInput fromStep(std::string_view symbol, double value, std::string_view unit, StepIndex step) {
  StepInput input;
  input.symbol = symbol;
  input.value = value;
  input.unit = unit;
  input.step = step;
  return input;
}

inline StepInput fromPlace(std::string_view symbol, double value, std::string_view unit, std::string from) {
  StepInput input;
  input.symbol = symbol;
  input.value = value;
  input.unit = unit;
  input.from = std::move(from);
  return input;
}

/// An earlier step where one was recorded, else the place.
inline StepInput fromStepOr(std::string_view symbol, double value, std::string_view unit, StepIndex step,
                            std::string place) {
  return step == kNoStep ? fromPlace(symbol, value, unit, std::move(place))
                         : fromStep(symbol, value, unit, step);
}

inline StepIndex record(Working& working, FormulaId formula, RuleId rule, double result,
                        std::string_view unit, std::vector<StepInput> inputs, Message note = {}) {
  Step step;
  step.formula = formula;
  step.rule = rule;
  step.result = result;
  step.unit = unit;
  step.inputs = std::move(inputs);
  step.note = std::move(note);
  return working.add(std::move(step));
}

inline Figure amperes(AcAmperes current, int decimals = 1) { return Figure{current.count(), "A", decimals}; }
inline Figure amperes(RatingAmperes rating) { return Figure{static_cast<double>(rating.count()), "A", 0}; }

}  // namespace stayalight::wiring
