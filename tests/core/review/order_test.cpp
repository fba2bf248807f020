// The order of findings and what each one carries.

#include <gtest/gtest.h>

#include "core/code/citations.h"
#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

/// Wrong in many ways at once.
Plan spoilt() {
  Plan made = sound::plan();
  example::moveByHand(made, example::circuitNamed(made, "Counter A"), example::kBackup, {Column::left, 3});
  made.transfer.edit().listing = TransferListing::none;
  made.transfer.edit().bypass = Answer::no;
  example::editPanel(made, example::kBackup).neutralBonded = Answer::yes;
  made.transfer.edit().calculatedLoad.reset();
  made.site.edit().amendments.clear();
  return made;
}

TEST(ReviewOrder, WorstFirstAndSourcesThatCanMeetBeforeAll) {
  const std::vector<Finding> list = sound::findings(spoilt());
  ASSERT_GT(list.size(), 5u);
  EXPECT_EQ(list.front().key, "transfer.not_listed");
  for (std::size_t i = 1; i < list.size(); ++i) EXPECT_LE(list[i - 1].severity, list[i].severity);
  EXPECT_EQ(list.back().severity, Severity::advice);
}

TEST(ReviewOrder, IsTheSameEveryTime) {
  const std::vector<Finding> one = sound::findings(spoilt()), two = sound::findings(spoilt());
  ASSERT_EQ(one.size(), two.size());
  for (std::size_t i = 0; i < one.size(); ++i) EXPECT_EQ(one[i].key, two[i].key);
}

TEST(ReviewFinding, RestsOnWhatItsRuleSays) {
  for (const Finding& finding : sound::findings(spoilt())) {
    if (finding.rule.key.empty()) {
      EXPECT_NE(finding.basis, Basis::code) << finding.key;
      continue;
    }
    const std::optional<RuleBasis> basis = stayalight::basis(finding.rule);
    ASSERT_TRUE(basis) << finding.key << ": " << finding.rule.key;
    const Basis expected = *basis == RuleBasis::code                ? Basis::code
                           : *basis == RuleBasis::listedInstruction ? Basis::listedInstruction
                                                                    : Basis::practice;
    EXPECT_EQ(finding.basis, expected) << finding.key;
  }
}

TEST(ReviewFinding, EveryPlaceIsThere) {
  const Plan made = spoilt();
  for (const Finding& finding : sound::findings(made)) {
    ASSERT_FALSE(finding.places.empty()) << finding.key;
    for (const EntityRef& place : finding.places) EXPECT_NE(findRecord(made, place), nullptr) << finding.key;
  }
}

}  // namespace
}  // namespace stayalight
