// A fix is one edit that makes its finding go away and brings no danger of its own.

#include <gtest/gtest.h>

#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::editBreaker;
using example::editCircuit;
using example::editPanel;
using example::kBackup;
using sound::findingOf;
using sound::findings;

Plan countersMoved() {
  Plan made = sound::plan();
  example::moveByHand(made, circuitNamed(made, "Counter A"), kBackup, {Column::left, 3});
  example::moveByHand(made, circuitNamed(made, "Counter B"), kBackup, {Column::left, 4});
  return made;
}
Breaker& planned(Plan& plan, const char* name) {
  return editBreaker(plan, find(plan, circuitNamed(plan, name))->planned);
}

std::size_t dangers(const Plan& plan) {
  const std::vector<Finding> list = findings(plan);
  return static_cast<std::size_t>(std::count_if(
      list.begin(), list.end(), [](const Finding& f) { return f.severity == Severity::danger; }));
}

void expectFixed(const Plan& made, std::string_view key) {
  const std::vector<Finding> list = findings(made);
  const Finding* finding = findingOf(list, key);
  ASSERT_NE(finding, nullptr) << key;
  ASSERT_TRUE(finding->fix) << key;
  EXPECT_EQ(render(finding->fixName, plainEnglish()).find('<'), std::string::npos);
  const Result<Plan> fixed = applyFix(made, *finding->fix);
  ASSERT_TRUE(fixed.ok()) << key;
  EXPECT_EQ(findingOf(findings(fixed.value()), key), nullptr) << key;
  EXPECT_LE(dangers(fixed.value()), dangers(made)) << key;
}

TEST(ReviewFixes, SplitPairMovesTogetherOrStaysTogether) {
  Plan made = sound::plan();
  example::moveByHand(made, circuitNamed(made, "Counter A"), kBackup, {Column::left, 3});
  expectFixed(made, "multiwire.split");
  const std::vector<Finding> list = findings(made);
  const Finding* split = findingOf(list, "multiwire.split");
  ASSERT_TRUE(split->otherFix);
  EXPECT_EQ(render(split->fixName, plainEnglish()), "Move both");
  EXPECT_EQ(render(split->otherFixName, plainEnglish()), "Keep both");
  const Result<Plan> kept = applyFix(made, *split->otherFix);
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(findingOf(findings(kept.value()), "multiwire.split"), nullptr);
}

TEST(ReviewFixes, PairOnOneLegGoesToOppositeLegsSideBySide) {
  Plan made = countersMoved();
  planned(made, "Counter B").row = 7;
  expectFixed(made, "multiwire.leg");
  const std::vector<Finding> list = findings(made);
  const Plan fixed = applyFix(made, *findingOf(list, "multiwire.leg")->fix).value();
  EXPECT_EQ(findingOf(findings(fixed), "multiwire.apart"), nullptr);
}

TEST(ReviewFixes, TiesAreSetOnBothAtOnce) {
  Plan made = countersMoved();
  planned(made, "Counter A").tie = Tie::none;
  planned(made, "Counter B").tie = Tie::none;
  expectFixed(made, "multiwire.disconnect");
  Plan trip = countersMoved();
  editCircuit(trip, circuitNamed(trip, "Counter B")).loads.front().connection = Connection::lineToLine;
  expectFixed(trip, "multiwire.common_trip");
}

TEST(ReviewFixes, BondNeutralBreakerRetainerAndAlarms) {
  Plan bonded = sound::plan();
  editPanel(bonded, kBackup).neutralBonded = Answer::yes;
  expectFixed(bonded, "bond.backup");
  Plan left = sound::plan();
  editCircuit(left, circuitNamed(left, "Office")).neutralMoved = Answer::no;
  expectFixed(left, "neutral.left");
  Plan large = sound::plan();
  planned(large, "Office").rating = RatingAmperes(20);
  expectFixed(large, "branch.conductor");
  Plan loose = sound::plan();
  editPanel(loose, kBackup).mainBackFed = true;
  editPanel(loose, kBackup).holdDown = Answer::no;
  expectFixed(loose, "holddown.main");
  Plan alarms = sound::plan();
  editCircuit(alarms, circuitNamed(alarms, "Freezer")).smokeAlarms = Answer::yes;
  expectFixed(alarms, "alarms.split");
}

TEST(ReviewFixes, NoneIsOfferedThatCannotBeMade) {
  Plan made = sound::plan();
  example::moveByHand(made, circuitNamed(made, "Counter A"), kBackup, {Column::left, 3});
  // A full subpanel: there is no way to move the partner.
  const Panel& backup = *find(made, kBackup);
  for (const SpacePosition space : allSpaces(backup)) {
    if (breakersAt(made, kBackup, space, Reading::planned).empty())
      example::addBreaker(made, kBackup, space, 1, 20, Feeds::nothing, Stage::fresh);
  }
  const std::vector<Finding> list = findings(made);
  const Finding* split = findingOf(list, "multiwire.split");
  ASSERT_NE(split, nullptr);
  ASSERT_TRUE(split->fix);  // the pair can still go back
  EXPECT_TRUE(std::holds_alternative<fix::SendBack>(*split->fix));
  EXPECT_FALSE(split->otherFix);
}

}  // namespace
}  // namespace stayalight
