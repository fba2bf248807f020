#pragma once

// Small words for writing down steps, and for keeping in mind whether each figure used is confirmed.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/demand/demand.h"

namespace stayalight::demanding {

inline StepInput input(std::string_view symbol, double value, std::string_view unit, StepIndex step,
                       std::string from) {
  StepInput made;
  made.symbol = symbol;
  made.value = value;
  made.unit = unit;
  made.step = step;
  if (step == kNoStep) made.from = std::move(from);
  return made;
}

inline StepIndex record(Working* working, std::string_view formula, RuleId rule, double result,
                        std::string_view unit, std::vector<StepInput> inputs, Message note = {}) {
  if (working == nullptr) return kNoStep;
  Step step;
  step.formula = FormulaId{formula};
  step.rule = rule;
  step.result = result;
  step.unit = unit;
  step.inputs = std::move(inputs);
  step.note = std::move(note);
  return working->add(std::move(step));
}

/// Looks figures up for one edition. A figure that is not there is remembered, and the calculation refused.
class Figures {
 public:
  Figures(Edition edition, const Tables& tables, bool recording)
      : edition_(edition), tables_(tables), recording_(recording) {}

  double operator()(DemandKey key) { return take(demandFigure(key, edition_, tables_), ruleOf(key)); }
  double take(const std::optional<DemandFigure>& figure, RuleId rule) {
    if (!figure) {
      if (!missing_) missing_ = rule;
      return 0.0;
    }
    confirmed_ = confirmed_ && figure->confirmed;
    return figure->value;
  }
  /// Whether all figures since the last call are confirmed.
  bool confirmed() { return std::exchange(confirmed_, true); }
  void doubt() { confirmed_ = false; }
  [[nodiscard]] std::optional<RuleId> missing() const { return missing_; }
  [[nodiscard]] Edition edition() const { return edition_; }
  [[nodiscard]] const Tables& tables() const { return tables_; }
  /// Name of a cell; empty where nothing is written down.
  [[nodiscard]] std::string cell(DemandKey key) const {
    return recording_ ? demandCell(key, edition_, tables_) : std::string();
  }
  [[nodiscard]] StepInput input(std::string_view symbol, DemandKey key, double value) const {
    return demanding::input(symbol, value, unitOf(key), kNoStep, cell(key));
  }

 private:
  Edition edition_;
  const Tables& tables_;
  bool recording_;
  bool confirmed_ = true;
  std::optional<RuleId> missing_;
};

/// Rating of an item as an input, with where it is from and how well it is known.
inline StepInput ratingOf(const DemandItem& item) {
  StepInput made = input("S", item.rating.value_or(VoltAmperes()).count(), "VA", kNoStep,
                         item.from.empty() ? item.name : item.name + ", " + item.from);
  made.grade = item.grade;
  return made;
}

inline Figure voltAmperes(VoltAmperes value) { return Figure{value.count(), "VA", 0}; }

/// Adds a line; what it needs of the others is given by the caller.
/// How many circuits of that kind there are at least (210.11(C)).
inline DemandKey leastOf(DemandKey circuit) {
  return circuit == DemandKey::laundryCircuit ? DemandKey::laundryLeast : DemandKey::smallApplianceLeast;
}

inline DemandLine& addLine(DemandCalculation& to, Message what, RuleId rule, VoltAmperes gross,
                           std::int32_t items = 1) {
  DemandLine line;
  line.what = std::move(what);
  line.rule = rule;
  line.gross = gross;
  line.items = items;
  to.lines.push_back(std::move(line));
  return to.lines.back();
}

/// Sums the lines, and from the sums the currents. `legs` says whether legs were worked out; else each
/// carries half.
void conclude(DemandCalculation& calculation, const DemandQuestion& question, Figures& figures,
              Working* working);

}  // namespace stayalight::demanding
