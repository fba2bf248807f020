#pragma once

// What another edition of the code changes in a plan's answers.

#include <string>
#include <vector>

#include "core/assess/assess.h"

namespace stayalight {

/// One figure, citation or finding that differs; `before` or `after` says so where there is none.
struct EditionChange {
  Message what;
  Message before;
  Message after;
};
/// By comparing the answers under the plan's edition with those under `to`: load calculation, devices and
/// conductors of the feeder, ways to size the source, findings that come or go, sections that have another
/// number or none confirmed. Empty for a Canadian site.
[[nodiscard]] std::vector<EditionChange> editionChanges(const Plan& plan, Edition to,
                                                        const Tables& tables = publishedTables());

}  // namespace stayalight
