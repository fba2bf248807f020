#pragma once

// Where a rule stands in each edition. Rules have ids of our own ("multiwire.same_panel"), since section
// numbers move.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/code/edition.h"
#include "core/message/message.h"

namespace stayalight {

/// What binds: the code's text, the listing and its instructions, or habit of the trade without a section.
enum class RuleBasis : std::uint8_t { code, listedInstruction, practice };

/// Whether the section was read in a public reproduction or is quoted from memory.
enum class RuleCertainty : std::uint8_t { seen, memory };

struct CitationRow {
  std::string_view rule;
  RuleBasis basis = RuleBasis::code;
  RuleCertainty certainty = RuleCertainty::seen;
  std::string_view sections[4];  ///< by edition; empty where the number is not confirmed there
  std::string_view about;        ///< what the rule asks, in our words
};

/// All rules, sorted by id.
[[nodiscard]] std::span<const CitationRow> citationRows();
/// Null for an id that no rule has.
[[nodiscard]] const CitationRow* ruleOf(RuleId rule);

/// The section, e.g. "210.4(A)". Empty for practice without a section, and for a rule not confirmed in that
/// edition.
[[nodiscard]] std::optional<std::string_view> citation(RuleId rule, Edition edition);
[[nodiscard]] std::optional<RuleBasis> basis(RuleId rule);

/// Table or section for the name of a cell: that of the edition, or else the 2023 one with a word on it.
[[nodiscard]] std::string citationOrNearest(RuleId rule, Edition edition);

}  // namespace stayalight
