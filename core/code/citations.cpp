#include "core/code/citations.h"

#include <algorithm>
#include <iterator>

#include "core/code/tables.h"

namespace stayalight {

const CitationRow* citationRow(RuleId rule, const Tables& tables) {
  const auto rows = tables.citations;
  const auto found =
      std::lower_bound(rows.begin(), rows.end(), rule.key,
                       [](const CitationRow& row, std::string_view key) { return row.rule < key; });
  return found == rows.end() || found->rule != rule.key ? nullptr : &*found;
}

std::optional<std::string_view> sectionOf(RuleId rule, Edition edition, const Tables& tables) {
  const CitationRow* const row = citationRow(rule, tables);
  if (row == nullptr) return std::nullopt;
  const std::string_view section = row->sections[index(edition)];
  if (section.empty() || section == kNotInEdition) return std::nullopt;
  return section;
}

bool notInEdition(RuleId rule, Edition edition, const Tables& tables) {
  const CitationRow* const row = citationRow(rule, tables);
  return row != nullptr && row->sections[index(edition)] == kNotInEdition;
}

std::optional<RuleBasis> basis(RuleId rule, const Tables& tables) {
  const CitationRow* const row = citationRow(rule, tables);
  if (row == nullptr) return std::nullopt;
  return row->basis;
}

std::string citationOrNearest(RuleId rule, Edition edition, const Tables& tables) {
  if (const auto section = sectionOf(rule, edition, tables)) return std::string(*section);
  if (const auto section = sectionOf(rule, Edition::y2023, tables)) {
    return std::string(*section) + " (2023; not confirmed for " + std::string(name(edition)) + ")";
  }
  return std::string(rule.key);
}

}  // namespace stayalight
