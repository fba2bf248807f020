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

struct Tables;
[[nodiscard]] const Tables& publishedTables();

/// What binds: the code's text, the listing and its instructions, or habit of the trade without a section.
enum class RuleBasis : std::uint8_t { code, listedInstruction, practice };

/// Whether the section was read in a public reproduction or is quoted from memory.
enum class RuleCertainty : std::uint8_t { seen, memory };

/// In the place of a section: that edition has no such rule.
inline constexpr std::string_view kNotInEdition = "-";

struct CitationRow {
  std::string_view rule;
  RuleBasis basis = RuleBasis::code;
  RuleCertainty certainty = RuleCertainty::seen;
  std::string_view
      sections[4];         ///< by edition; empty where the number is not confirmed there, or kNotInEdition
  std::string_view about;  ///< what the rule asks, in our words
};

/// Null for an id that no rule has.
[[nodiscard]] const CitationRow* citationRow(RuleId rule, const Tables& tables = publishedTables());

/// The section, e.g. "210.4(A)". Empty for practice without a section, and for a rule not confirmed in that
/// edition.
[[nodiscard]] std::optional<std::string_view> sectionOf(RuleId rule, Edition edition,
                                                        const Tables& tables = publishedTables());
/// True where it is known that the edition has no such rule.
[[nodiscard]] bool notInEdition(RuleId rule, Edition edition, const Tables& tables = publishedTables());
[[nodiscard]] std::optional<RuleBasis> basis(RuleId rule, const Tables& tables = publishedTables());

/// Table or section for the name of a cell: that of the edition, or else the 2023 one with a word on it.
[[nodiscard]] std::string citationOrNearest(RuleId rule, Edition edition,
                                            const Tables& tables = publishedTables());

}  // namespace stayalight
