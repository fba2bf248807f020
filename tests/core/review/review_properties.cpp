// What holds for the findings of any plan, however wrong.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "tests/core/random_plan.h"
#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

std::int64_t draw(std::int64_t low, std::int64_t high) {
  return *rc::gen::inRange<std::int64_t>(low, high + 1);
}

RC_GTEST_PROP(ReviewProperties, EveryFindingHasItsPlacesItsTextsAndAFixThatCanBeMade, ()) {
  const Plan plan = example::randomPlan(draw);
  const std::vector<Finding> list = assess(plan).findings;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Finding& finding = list[i];
    RC_ASSERT(!finding.key.empty());
    RC_ASSERT(!finding.places.empty());
    for (const EntityRef& place : finding.places) {
      const bool there = findRecord(plan, place) != nullptr;
      RC_ASSERT(there);
    }
    for (const Message& sentence : {finding.plain, finding.trade}) {
      RC_ASSERT(render(sentence, plainEnglish()).find('<') == std::string::npos);
    }
    if (finding.fix) RC_ASSERT(applyFix(plan, *finding.fix).ok());
    if (finding.otherFix) RC_ASSERT(applyFix(plan, *finding.otherFix).ok());
    if (i > 0) RC_ASSERT(list[i - 1].severity <= finding.severity);
    if (plan.site->country.is(Country::canada)) RC_ASSERT(finding.rule.key.empty());
  }
}

RC_GTEST_PROP(ReviewProperties, DirectoryWordsNeverFail, ()) {
  const std::string text = *rc::gen::arbitrary<std::string>();
  (void)directoryFault(text);
}

}  // namespace
}  // namespace stayalight
