#pragma once

// Standard ratings of overcurrent devices and what a small conductor may be protected at.

#include <optional>
#include <string>
#include <vector>

#include "core/code/tables.h"
#include "core/quantity/conductor.h"
#include "core/quantity/quantity.h"

namespace stayalight {

/// 240.6(A), smallest first. Fuse-only ratings are left out: breakers feed panels here.
[[nodiscard]] std::vector<RatingAmperes> standardRatings(Edition edition,
                                                         const Tables& tables = publishedTables());
/// Smallest standard rating at or above a current (a billionth below counts as at); empty above the largest.
[[nodiscard]] std::optional<RatingAmperes> nextStandardRating(AcAmperes current, Edition edition,
                                                              const Tables& tables = publishedTables());
/// Largest standard rating at or below a current; empty below the smallest.
[[nodiscard]] std::optional<RatingAmperes> standardRatingWithin(AcAmperes current, Edition edition,
                                                                const Tables& tables = publishedTables());
[[nodiscard]] std::string standardRatingCell(RatingAmperes rating, Edition edition,
                                             const Tables& tables = publishedTables());

/// 240.4(D): the largest device a small conductor takes, whatever its ampacity; empty where the size is not
/// small. 240.4(E) and (G) (taps, motors, air conditioners) stand above it.
[[nodiscard]] std::optional<RatingAmperes> smallConductorLimit(ConductorSize size, Metal metal,
                                                               const Tables& tables = publishedTables());

}  // namespace stayalight
