#pragma once

// The plans that make each rule speak; the table is in rules_test.cpp.

#include <functional>
#include <span>

#include "core/review/review.h"

namespace stayalight {

struct RuleCase {
  const char* key;
  Severity severity;
  std::function<void(Plan&)> spoil;
};
[[nodiscard]] std::span<const RuleCase> ruleCases();
/// What each case spoils: nothing dangerous is in it and nothing that must be fixed.
[[nodiscard]] Plan soundPlanOfTheCases();

}  // namespace stayalight
