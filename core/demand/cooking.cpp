// The table of cooking appliances, 220.55, with its notes.

#include <algorithm>
#include <cmath>
#include <string>

#include "core/demand/record.h"

namespace stayalight {

using namespace demanding;

namespace {

// Whole kW above, a major fraction counted as one: half a kW or more. Common practice, no source.
double stepsAbove(double kilowatts, double upTo) {
  return std::max(0.0, std::floor(kilowatts - upTo + 0.5 + 1e-9));
}

}  // namespace

double cookingIncreased(double columnC, double average, Edition edition, const Tables& tables) {
  const auto upTo = demandFigure(DemandKey::cookingCTo, edition, tables);
  const auto increase = demandFigure(DemandKey::cookingIncrease, edition, tables);
  if (!upTo || !increase) return columnC;
  const double steps = stepsAbove(average, upTo->value);
  return columnC * (1.0 + increase->value * steps);
}

namespace {

// Column C for a set of ratings: Note 1, and Note 2 where they differ.
std::optional<CookingLoad> byColumnC(const std::vector<double>& ratings, Figures& figures, Working* working) {
  const int count = static_cast<int>(ratings.size());
  const auto table = cookingDemand(CookingColumn::c, count, figures.edition(), figures.tables());
  if (!table) return std::nullopt;
  const double kilowatts = figures.take(table, ruleOf(DemandKey::cookingC1));
  const double upTo = figures(DemandKey::cookingCTo);
  const double increase = figures(DemandKey::cookingIncrease);
  double average = 0.0;
  bool differ = false;
  std::vector<StepInput> raised;
  for (const double rating : ratings) {
    average += std::max(rating, upTo) / count;
    differ = differ || std::max(rating, upTo) != std::max(ratings.front(), upTo);
  }
  if (differ && average > upTo) figures.doubt();  // Note 2 is from memory
  const double result = 1000.0 * cookingIncreased(kilowatts, average, figures.edition(), figures.tables());
  const double steps = stepsAbove(average, upTo);
  CookingLoad load{VoltAmperes(result), true, false, kNoStep};
  load.step =
      record(working, "demand.cooking_column_c", ruleOf(DemandKey::cookingC1), result, "VA",
             {input("C", kilowatts, "kW", kNoStep,
                    figures.cell(DemandKey::cookingC1) + " and following, " + std::to_string(count)),
              figures.input("p", DemandKey::cookingIncrease, increase),
              input("k", steps, "", kNoStep, "kW or major fraction of the average rating above column C")});
  return load;
}

}  // namespace

std::optional<CookingLoad> cookingLoad(const std::vector<double>& kilowatts, Edition edition,
                                       Working* working, const Tables& tables) {
  if (kilowatts.empty()) return CookingLoad{};
  Figures figures(edition, tables, working != nullptr);
  const double fromB = figures(DemandKey::cookingBFrom), fromC = figures(DemandKey::cookingCFrom),
               most = figures(DemandKey::cookingMost);
  std::vector<double> a, b, c;
  for (const double rating : kilowatts) {
    if (rating > most) return std::nullopt;
    (rating < fromB ? a : rating <= fromC ? b : c).push_back(rating);
  }
  figures.confirmed();
  std::optional<CookingLoad> all = byColumnC(kilowatts, figures, working);
  if (all) all->confirmed = figures.confirmed();
  if (a.empty() && b.empty()) return all;

  CookingLoad parts{VoltAmperes(), true, true, kNoStep};
  std::vector<StepInput> sum;
  const auto share = [&](const std::vector<double>& ratings, CookingColumn column, DemandKey key) {
    if (ratings.empty()) return true;
    const auto factor = cookingDemand(column, static_cast<int>(ratings.size()), edition, tables);
    if (!factor) return false;
    const double f = figures.take(factor, ruleOf(key));
    std::vector<StepInput> inputs{
        input("f", f, "", kNoStep, figures.cell(key) + " and following, " + std::to_string(ratings.size()))};
    double total = 0.0;
    for (const double rating : ratings) {
      total += rating * 1000.0;
      inputs.push_back(input("S", rating * 1000.0, "VA", kNoStep, "nameplate"));
    }
    const StepIndex step =
        record(working, "demand.share_of_sum", ruleOf(key), f * total, "VA", std::move(inputs));
    parts.load += VoltAmperes(f * total);
    sum.push_back(input("S", f * total, "VA", step, "column"));
    return true;
  };
  bool good =
      share(a, CookingColumn::a, DemandKey::cookingA1) && share(b, CookingColumn::b, DemandKey::cookingB1);
  if (good && !c.empty()) {
    const auto rest = byColumnC(c, figures, working);
    good = rest.has_value();
    if (rest) {
      parts.load += rest->load;
      sum.push_back(input("S", rest->load.count(), "VA", rest->step, "column C"));
    }
  }
  if (!good) return all;
  parts.confirmed = figures.confirmed();
  parts.step =
      record(working, "demand.total", ruleOf(DemandKey::cookingC1), parts.load.count(), "VA", std::move(sum));
  if (!all) return parts;
  const VoltAmperes lesser = std::min(all->load, parts.load);
  const StepIndex step = record(working, "demand.lesser", ruleOf(DemandKey::cookingC1), lesser.count(), "VA",
                                {input("A", all->load.count(), "VA", all->step, ""),
                                 input("B", parts.load.count(), "VA", parts.step, "")});
  CookingLoad chosen = parts.load < all->load ? parts : *all;
  chosen.confirmed = all->confirmed && parts.confirmed;
  chosen.step = step;
  return chosen;
}

}  // namespace stayalight
