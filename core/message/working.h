#pragma once

// How a number came about: steps in one flat array, written down by the code that computes, on demand.
// Core builds no sentence: notation comes from the table of formulas, citations from the edition's table.

#include <algorithm>
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

/// What a step belongs to where several of a kind are worked out: a segment, a raceway, a method of the load
/// calculation. Things of one name are told apart by the number of their record.
struct WorkingSubject {
  Message name;
  std::int64_t number = 0;
  friend bool operator==(const WorkingSubject&, const WorkingSubject&) = default;
};
inline constexpr std::int32_t kNoSubject = -1;

struct Step {
  FormulaId formula;
  RuleId rule;  ///< empty key where no rule is followed
  double result = 0.0;
  std::string_view unit;
  std::vector<StepInput> inputs;
  Message note;  ///< what governed, the next candidate; empty id where there is nothing to say
  std::int32_t subject = kNoSubject;  ///< in Working::subjects(); set by add()
};

/// Records steps. Computing code takes a `Working*` and does the same arithmetic with or without it.
class Working {
 public:
  StepIndex add(Step step) {
    step.subject = current_;
    steps_.push_back(std::move(step));
    return static_cast<StepIndex>(steps_.size()) - 1;
  }
  [[nodiscard]] std::span<const Step> steps() const { return steps_; }
  [[nodiscard]] std::span<const WorkingSubject> subjects() const { return subjects_; }
  [[nodiscard]] const WorkingSubject* subjectOf(const Step& step) const {
    return step.subject == kNoSubject ? nullptr : &subjects_[static_cast<std::size_t>(step.subject)];
  }
  [[nodiscard]] bool empty() const { return steps_.empty(); }

 private:
  friend class WorkingOf;
  std::vector<Step> steps_;
  std::vector<WorkingSubject> subjects_;
  std::int32_t current_ = kNoSubject;
};

/// Steps that are added while it lives belong to the subject. Null: nothing is written down.
class WorkingOf {
 public:
  WorkingOf(Working* working, const WorkingSubject& subject) : working_(working) {
    if (working_ == nullptr) return;
    before_ = working_->current_;
    auto& all = working_->subjects_;
    const auto found = std::find(all.begin(), all.end(), subject);
    working_->current_ = static_cast<std::int32_t>(found - all.begin());
    if (found == all.end()) all.push_back(subject);
  }
  ~WorkingOf() {
    if (working_ != nullptr) working_->current_ = before_;
  }
  WorkingOf(const WorkingOf&) = delete;
  WorkingOf& operator=(const WorkingOf&) = delete;

 private:
  Working* working_;
  std::int32_t before_ = kNoSubject;
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
