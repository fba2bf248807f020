#include "core/code/devices.h"

#include "core/code/conductors.h"

namespace stayalight {
namespace {

// A product such as 1.25 x 32 A may come out a hair above the rating it equals.
constexpr double kSlack = 1.0 + 1e-9;

bool listed(const StandardRatingRow& row, Edition edition) { return row.since <= edition; }

}  // namespace

std::vector<RatingAmperes> standardRatings(Edition edition, const Tables& tables) {
  std::vector<RatingAmperes> ratings;
  for (const StandardRatingRow& row : tables.ratings) {
    if (listed(row, edition)) ratings.emplace_back(row.amperes);
  }
  return ratings;
}

std::optional<RatingAmperes> nextStandardRating(AcAmperes current, Edition edition, const Tables& tables) {
  for (const StandardRatingRow& row : tables.ratings) {
    if (listed(row, edition) && current.count() <= row.amperes * kSlack) return RatingAmperes(row.amperes);
  }
  return std::nullopt;
}

std::optional<RatingAmperes> standardRatingWithin(AcAmperes current, Edition edition, const Tables& tables) {
  std::optional<RatingAmperes> found;
  for (const StandardRatingRow& row : tables.ratings) {
    if (listed(row, edition) && row.amperes <= current.count() * kSlack) found = RatingAmperes(row.amperes);
  }
  return found;
}

std::string standardRatingCell(RatingAmperes rating, Edition edition, const Tables& tables) {
  return "Table " + citationOrNearest(RuleId{"rating.standard"}, edition, tables) + ", " +
         std::to_string(rating.count()) + " A";
}

std::optional<RatingAmperes> smallConductorLimit(ConductorSize size, Metal metal, const Tables& tables) {
  for (const SmallConductorRow& row : tables.smallConductors) {
    if (row.size == size && row.metal == metal) return RatingAmperes(row.amperes);
  }
  return std::nullopt;
}

}  // namespace stayalight
