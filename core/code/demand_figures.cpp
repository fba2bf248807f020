#include "core/code/demand_figures.h"

#include <algorithm>

#include "stayalight/code_tables.h"

namespace stayalight {
namespace {

std::optional<DemandFigure> counted(DemandKey first, int count, int rows, Edition edition,
                                    const Tables& tables) {
  if (count < 1 || count > rows) return std::nullopt;
  return demandFigure(static_cast<DemandKey>(static_cast<int>(first) + count - 1), edition, tables);
}

}  // namespace

std::optional<DemandFigure> demandFigure(DemandKey key, Edition edition, const Tables& tables) {
  const DemandRow& row = tables.demand[static_cast<std::size_t>(key)];
  const double value = row.value[index(edition)];
  if (value <= 0.0) return std::nullopt;
  return DemandFigure{value, row.certainty[index(edition)] == Certainty::seen};
}

std::optional<DemandFigure> dryerFactor(int count, Edition edition, const Tables& tables) {
  return counted(DemandKey::dryer1, count, kDryerRows, edition, tables);
}

std::optional<DemandFigure> cookingDemand(CookingColumn column, int count, Edition edition,
                                          const Tables& tables) {
  const DemandKey first = column == CookingColumn::a   ? DemandKey::cookingA1
                          : column == CookingColumn::b ? DemandKey::cookingB1
                                                       : DemandKey::cookingC1;
  return counted(first, count, kCookingRows, edition, tables);
}

std::string_view unitOf(DemandKey key) { return generated::kDemandUnits[static_cast<std::size_t>(key)]; }
RuleId ruleOf(DemandKey key) { return RuleId{generated::kDemandRules[static_cast<std::size_t>(key)]}; }

std::string demandCell(DemandKey key, Edition edition, const Tables& tables) {
  std::string words(kDemandKeys[static_cast<std::size_t>(key)]);
  std::replace(words.begin(), words.end(), '_', ' ');
  return citationOrNearest(ruleOf(key), edition, tables) + ", " + words;
}

}  // namespace stayalight
