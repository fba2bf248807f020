// What is said of a panel in another building, and what is not.

#include <gtest/gtest.h>

#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

using example::editPanel;
using example::kBackup;
using sound::findingOf;
using sound::findings;

std::string tradeOf(const Plan& plan, std::string_view key) {
  const std::vector<Finding> list = findings(plan);
  const Finding* finding = findingOf(list, key);
  return finding == nullptr ? std::string() : render(finding->trade, plainEnglish());
}
Plan apart() {
  Plan made = sound::plan();
  Panel& panel = editPanel(made, kBackup);
  panel.separateBuilding = true;
  panel.groundingElectrode = Answer::yes;
  panel.buildingDisconnect = Answer::yes;
  return made;
}
/// A subpanel in the garage from before, fed from the main panel.
Panel& garage(Plan& plan) {
  Panel panel;
  panel.id = nextPanelId(plan);
  panel.name = "Garage panel";
  panel.role = PanelRole::subpanel;
  panel.separateBuilding = true;
  panel.neutralBonded = Answer::no;
  panel.mainBreaker = RatingAmperes(60);
  panel.groundingElectrode = Answer::yes;
  panel.fedFrom = example::kMain;
  const PanelId id = panel.id;
  plan.panels.emplace_back(panel);
  example::addBreaker(plan, id, {Column::left, 1}, 1, 20, Feeds::nothing);
  return plan.panels.back().edit();
}

TEST(Buildings, ABuildingWithAllOfItIsLeftAlone) {
  Plan made = apart();
  // Nothing moves into it from elsewhere.
  for (auto& circuit : made.circuits) {
    if (backedUp(made, *circuit)) circuit.edit().breaker = {};
  }
  for (const Finding& finding : findings(made))
    EXPECT_NE(finding.key.substr(0, 9), "building.") << finding.key;
}

TEST(Buildings, TheElectrodeConductorIsNamedByItsTable) {
  Plan made = apart();
  editPanel(made, kBackup).groundingElectrode = Answer::no;
  for (auto& run : made.runs) run.edit().fixedConductor = ConductorSize::awg1_0;
  const std::string text = tradeOf(made, "building.electrode_missing");
  EXPECT_NE(text.find("6 AWG Cu"), std::string::npos) << text;
  EXPECT_NE(text.find("1/0 AWG Cu"), std::string::npos) << text;
}

TEST(Buildings, ASwitchAheadMayBeLargerThanTheMainBreaker) {
  Plan made = apart();
  editPanel(made, kBackup).mainBreaker = RatingAmperes(40);
  EXPECT_TRUE(tradeOf(made, "building.disconnect_small").empty());
  editPanel(made, kBackup).buildingDisconnect = Answer::unknown;
  EXPECT_NE(tradeOf(made, "building.disconnect_small").find("60 A"), std::string::npos);
  EXPECT_TRUE(tradeOf(made, "building.disconnect_unknown").empty());  // the main breaker is one
}

TEST(Buildings, ABondOfAnOldFeederIsNotSimplyTakenOut) {
  Plan made = sound::plan();
  garage(made);
  EXPECT_TRUE(tradeOf(made, "building.bond").empty());
  made.panels.back().edit().neutralBonded = Answer::yes;
  const std::vector<Finding> list = findings(made);
  EXPECT_EQ(findingOf(list, "bond.backup"), nullptr);
  ASSERT_NE(findingOf(list, "building.bond"), nullptr);
  EXPECT_FALSE(findingOf(list, "building.bond")->fix);
  // In the new panel any bond is a danger, and taking it out the cure.
  Plan backup = apart();
  editPanel(backup, kBackup).neutralBonded = Answer::yes;
  const std::vector<Finding> other = findings(backup);
  ASSERT_NE(findingOf(other, "bond.backup"), nullptr);
  EXPECT_EQ(findingOf(other, "bond.backup")->severity, Severity::danger);
  EXPECT_EQ(findingOf(other, "building.bond"), nullptr);
}

TEST(Buildings, TwoFeedersAskForAPlaque) {
  Plan made = apart();
  garage(made);
  EXPECT_NE(tradeOf(made, "building.supplies").find("plaque"), std::string::npos);
  // One that the backup subpanel feeds stands behind it.
  made.panels.back().edit().fedFrom = kBackup;
  EXPECT_TRUE(tradeOf(made, "building.supplies").empty());
}

TEST(Buildings, CableAllTheWayIsNotForOutdoors) {
  Plan made = apart();
  made.runs.front().edit().wiring = FeederWiring::nmCable;
  std::vector<Finding> list = findings(made);
  EXPECT_EQ(findingOf(list, "building.cable")->severity, Severity::checkOnSite);
  for (auto& run : made.runs) run.edit().wiring = FeederWiring::nmCable;
  list = findings(made);
  EXPECT_EQ(findingOf(list, "building.cable")->severity, Severity::mustFix);
}

TEST(Buildings, TheWholeWayLosesMoreThanItsPieces) {
  Plan made = apart();
  const auto worst = [&](const Plan& plan) {
    double most = 0.0;
    for (const SegmentFigures& segment : assess(plan).segments)
      most = std::max({most, segment.drop->fraction[0], segment.drop->fraction[1]});
    return most;
  };
  for (auto& run : made.runs) run.edit().length = Length::feet(20.0 * 0.028 / worst(sound::plan()));
  ASSERT_LT(worst(made), 0.03);
  EXPECT_NE(tradeOf(made, "building.drop").find("3 %"), std::string::npos);
  EXPECT_TRUE(tradeOf(made, "feeder.drop").empty());
  editPanel(made, kBackup).separateBuilding = false;
  EXPECT_TRUE(tradeOf(made, "building.drop").empty());
}

TEST(Buildings, AnOutsideFeederHasASurgeRuleOfItsOwn) {
  Plan made = apart();
  made.breakers.erase(std::remove_if(made.breakers.begin(), made.breakers.end(),
                                     [](const auto& b) { return b->feeds.is(Feeds::surgeDevice); }),
                      made.breakers.end());
  const std::vector<Finding> list = findings(made);
  EXPECT_EQ(findingOf(list, "panel.surge")->rule.key, "feeder.surge_outside");
}

}  // namespace
}  // namespace stayalight
