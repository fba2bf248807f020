#include "core/code/citations.h"

#include <algorithm>
#include <iterator>

#include "stayalight/code_tables.h"

namespace stayalight {

std::span<const CitationRow> citationRows() { return generated::kCitations; }

const CitationRow* ruleOf(RuleId rule) {
  const auto rows = citationRows();
  const auto found =
      std::lower_bound(rows.begin(), rows.end(), rule.key,
                       [](const CitationRow& row, std::string_view key) { return row.rule < key; });
  return found == rows.end() || found->rule != rule.key ? nullptr : &*found;
}

std::optional<std::string_view> citation(RuleId rule, Edition edition) {
  const CitationRow* const row = ruleOf(rule);
  if (row == nullptr || row->sections[index(edition)].empty()) return std::nullopt;
  return row->sections[index(edition)];
}

std::optional<RuleBasis> basis(RuleId rule) {
  const CitationRow* const row = ruleOf(rule);
  if (row == nullptr) return std::nullopt;
  return row->basis;
}

std::string citationOrNearest(RuleId rule, Edition edition) {
  if (const auto section = citation(rule, edition)) return std::string(*section);
  if (const auto section = citation(rule, Edition::y2023)) {
    return std::string(*section) + " (2023; not confirmed for " + std::string(name(edition)) + ")";
  }
  return std::string(rule.key);
}

}  // namespace stayalight
