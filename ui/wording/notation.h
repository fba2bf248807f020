#pragma once

// The notation of workings: the text of a formula, as the table of formulas writes it for muParser, as people
// write it.

#include <QtCore/QString>
#include <functional>
#include <span>
#include <vector>

#include "core/message/working.h"

namespace stayalight {

enum class Notation : std::uint8_t {
  plain,  ///< "I = √(P² + Q²) / V"
  html    ///< symbols in italics, indices below, powers above
};

/// A symbol: "I_L1" is I with the index L1, "eta" the Greek letter.
[[nodiscard]] QString symbolText(std::string_view symbol, Notation notation);
/// An expression of the table of formulas.
[[nodiscard]] QString formulaText(std::string_view expression, Notation notation);
/// The same with each symbol replaced by what `valueOf` gives for it; symbols it gives nothing for stand.
[[nodiscard]] QString formulaText(std::string_view expression, Notation notation,
                                  const std::function<QString(std::string_view)>& valueOf);

/// One input of a step, ready to be shown.
struct WorkedInput {
  QString symbol;
  QString value;  ///< with its unit
  QString from;   ///< field, table cell, or "step 3"
  QString grade;  ///< empty where it is no entered fact
};
/// One step of a working, ready to be shown.
struct WorkedStep {
  int number = 0;   ///< from 1
  QString formula;  ///< "I = √(P² + Q²) / V"
  QString filled;   ///< "√(1,200² + 300²) / 120"
  QString result;   ///< "10.3 A"
  QString rule;     ///< citation; empty where no rule is followed
  QString source;   ///< of the formula
  QString note;
  std::vector<WorkedInput> inputs;
};
/// These places and all that their steps rest on, in the order of the steps.
[[nodiscard]] std::vector<std::size_t> withWhatTheyRestOn(std::span<const Step> steps,
                                                          const std::vector<std::size_t>& places);
/// The steps at these places, in this order, their references to each other with the new places; a reference
/// to a step that is not among them is dropped.
[[nodiscard]] std::vector<Step> picked(std::span<const Step> steps, const std::vector<std::size_t>& places);
[[nodiscard]] std::vector<WorkedStep> workedSteps(std::span<const Step> steps, const Language& language,
                                                  Notation notation);

/// A number of a working: up to four significant digits, none lost before the decimal mark.
[[nodiscard]] QString workedNumber(double value, const Language& language);

}  // namespace stayalight
