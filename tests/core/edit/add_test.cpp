#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::editBreaker;
using example::editPanel;
using example::kBackup;
using example::kMain;
using example::loadNamed;

constexpr Column left = Column::left;
constexpr Column right = Column::right;

std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}

TEST(Add, aNewPlanHasTwoEmptyPanels) {
  const Plan plan = newPlan();
  ASSERT_EQ(plan.panels.size(), 2u);
  EXPECT_TRUE(mainPanel(plan)->id == kMain);
  EXPECT_EQ(mainPanel(plan)->spaces, 20);
  EXPECT_EQ(mainPanel(plan)->name, "Main panel");
  EXPECT_EQ(backupPanel(plan)->spaces, 8);
  EXPECT_TRUE(backupPanel(plan)->fedFrom == kMain);
  EXPECT_TRUE(plan.breakers.empty() && plan.circuits.empty() && plan.runs.empty());
  EXPECT_FALSE(mainPanel(plan)->busRating) << "what nobody has read is not made up";
}

TEST(Add, aPanelGetsTheNextIdAndHangsOnTheMain) {
  const Plan plan = addPanel(newPlan(), PanelRole::subpanel);
  ASSERT_EQ(plan.panels.size(), 3u);
  EXPECT_EQ(plan.panels.back()->id.number, 3);
  EXPECT_TRUE(plan.panels.back()->fedFrom == kMain);
}

TEST(Add, breakersInABackupSubpanelAreNew) {
  const Plan plan = newPlan();
  for (const auto& [panel, stage] : {std::pair{kMain, Stage::existing}, std::pair{kBackup, Stage::fresh}}) {
    const Result<Plan> added =
        addBreaker(plan, {panel, {left, 1}, Half::whole, 1}, RatingAmperes(20), Feeds::nothing);
    ASSERT_TRUE(added.ok()) << said(added);
    EXPECT_TRUE(added.value().breakers.back()->stage.is(stage));
  }
}

TEST(Add, aFeederBreakerIsNewAndReachesTheBackupSubpanelOnce) {
  const Plan one =
      addBreaker(newPlan(), {kMain, {left, 1}, Half::whole, 2}, RatingAmperes(60), Feeds::feeder).value();
  EXPECT_TRUE(one.breakers.back()->feedsPanel == kBackup);
  EXPECT_TRUE(one.breakers.back()->stage.is(Stage::fresh));
  const Plan two =
      addBreaker(one, {kMain, {left, 3}, Half::whole, 2}, RatingAmperes(60), Feeds::feeder).value();
  EXPECT_FALSE(two.breakers.back()->feedsPanel.valid());
}

TEST(Add, aSourceFeedsTheBusBackwards) {
  const Plan plan = newPlan();
  struct Case {
    Feeds feeds;
    Answer backFed;
  };
  for (const Case c : {Case{Feeds::solar, Answer::yes}, Case{Feeds::generator, Answer::yes},
                       Case{Feeds::utility, Answer::yes}, Case{Feeds::inverterOutput, Answer::yes},
                       Case{Feeds::inverterInput, Answer::no}, Case{Feeds::feeder, Answer::no},
                       Case{Feeds::surgeDevice, Answer::no}, Case{Feeds::nothing, Answer::no}}) {
    const Plan added =
        addBreaker(plan, {kMain, {left, 1}, Half::whole, 2}, RatingAmperes(20), c.feeds).value();
    EXPECT_TRUE(added.breakers.back()->backFed.is(c.backFed)) << static_cast<int>(c.feeds);
  }
}

TEST(Add, ratingsAndPlacesAreChecked) {
  const Plan plan = example::exampleHouse();
  const Placement free{kMain, {left, 8}, Half::whole, 1};
  EXPECT_EQ(said(addBreaker(plan, free, RatingAmperes(4), Feeds::nothing)),
            "rating_A is 4, but it must lie between 5 and 400");
  EXPECT_EQ(said(addBreaker(plan, {kMain, {left, 1}, Half::whole, 1}, RatingAmperes(20), Feeds::nothing)),
            "Already taken by Refrigerator, at 1");
}

TEST(Add, aCircuitTakesTheFirstFreeSpaceOrTheOneGiven) {
  const Plan plan = example::exampleHouse();
  Plan added = addCircuit(plan, kMain, std::nullopt, 1, RatingAmperes(15), "Attic").value();
  const Circuit& attic = *find(added, circuitNamed(added, "Attic"));
  EXPECT_TRUE(find(added, attic.planned)->position() == (SpacePosition{left, 8}));
  EXPECT_TRUE(attic.breaker == attic.planned) << "found in an existing panel: it fed the circuit before too";
  EXPECT_TRUE(attic.voltage.is(VoltageClass::v120));
  added = addCircuit(plan, kMain, Placement{kMain, {right, 9}, Half::whole, 2}, 2, RatingAmperes(30), "Dryer")
              .value();
  const Circuit& dryer = *find(added, circuitNamed(added, "Dryer"));
  EXPECT_TRUE(find(added, dryer.planned)->position() == (SpacePosition{right, 9}));
  EXPECT_TRUE(dryer.voltage.is(VoltageClass::v240));
  added =
      addCircuit(plan, kMain, Placement{kMain, {left, 8}, Half::b, 1}, 1, RatingAmperes(15), "Half").value();
  EXPECT_TRUE(added.breakers.back()->half.is(Half::b));
  EXPECT_EQ(
      said(addCircuit(plan, kMain, Placement{kMain, {left, 1}, Half::whole, 1}, 1, RatingAmperes(15), "X")),
      "Already taken by Refrigerator, at 1");
}

TEST(Add, aCircuitPlannedIntoTheBackupSubpanelIsNew) {
  const Plan plan = addCircuit(newPlan(), kBackup, std::nullopt, 1, RatingAmperes(20), "Outlet").value();
  const Circuit& outlet = *find(plan, circuitNamed(plan, "Outlet"));
  EXPECT_FALSE(outlet.breaker.valid());
  EXPECT_TRUE(backedUp(plan, outlet));
}

TEST(Add, whereAnotherBreakerStoodBeforeTheNewOneIsNew) {
  Plan plan = example::exampleHouseMoved();
  const BreakerId old = find(plan, circuitNamed(plan, "Lights"))->breaker;
  plan = keepOldBreaker(plan, old, false).value();
  const Plan added =
      addCircuit(plan, kMain, Placement{kMain, {right, 1}, Half::whole, 1}, 1, RatingAmperes(15), "Hall")
          .value();
  EXPECT_TRUE(added.breakers.back()->stage.is(Stage::fresh));
  EXPECT_EQ(breakersAt(added, kMain, {right, 1}, Reading::before), std::vector<BreakerId>{old});
}

TEST(Add, aFullPanelHasNoPlace) {
  Plan plan = newPlan();
  for (int i = 0; i < 8; ++i)
    plan = addCircuit(plan, kBackup, std::nullopt, 1, RatingAmperes(20), "C").value();
  EXPECT_EQ(said(addCircuit(plan, kBackup, std::nullopt, 1, RatingAmperes(20), "C")),
            "Backup subpanel has no free place of this size");
  EXPECT_EQ(said(addCircuit(plan, {7}, std::nullopt, 1, RatingAmperes(20), "C")), "There is no such panel");
}

TEST(Add, loadsGetIdsOfTheWholePlanAndAreChecked) {
  const Plan plan = example::exampleHouse();
  const CircuitId lights = circuitNamed(plan, "Lights");
  const Plan added = addLoad(plan, lights, example::plainLoad("Radio", 20)).value();
  EXPECT_TRUE(find(added, lights)->loads.back().id == nextLoadId(plan));
  Load wrong = example::plainLoad("Broken", 20);
  wrong.ratedVoltage = 12;
  EXPECT_EQ(said(addLoad(plan, lights, wrong)), "rated_V is 12, but it must lie between 100 and 277");
  Load windows = example::plainLoad("Broken", 20);
  windows.windows.emplace_back().share = Fraction(1.5);
  EXPECT_EQ(said(addLoad(plan, lights, windows)), "share is 1.50, but it must lie between 0 and 1");
  EXPECT_EQ(said(addLoad(plan, {99}, Load{})), "There is no such circuit");
}

TEST(Add, runsCount) {
  const Plan plan = addFeederRun(addFeederRun(newPlan(), Segment::mainToSwitch), Segment::switchToBackup);
  ASSERT_EQ(plan.runs.size(), 2u);
  EXPECT_EQ(plan.runs[1]->id.number, 2);
  EXPECT_TRUE(plan.runs[1]->segment.is(Segment::switchToBackup));
}

TEST(Copy, aCircuitStandsAloneOnAPlaceOfItsOwn) {
  Plan plan = example::exampleHouse();
  const CircuitId a = circuitNamed(plan, "Counter A");
  example::editCircuit(plan, a).traced = Answer::yes;
  const Plan copied = copyCircuit(plan, a).value();
  const Circuit& copy = *copied.circuits.back();
  EXPECT_EQ(copy.name, "Counter A");
  EXPECT_EQ(copy.multiwire, 0) << "it shares nobody's neutral";
  EXPECT_TRUE(copy.traced.is(Answer::unknown)) << "those wires were not traced";
  EXPECT_TRUE(find(copied, copy.planned)->tie.is(Tie::none));
  EXPECT_TRUE(find(copied, copy.planned)->panel == kMain);
  ASSERT_EQ(copy.loads.size(), 1u);
  EXPECT_TRUE(copy.loads[0].id == nextLoadId(plan));
  EXPECT_EQ(copy.loads[0].name, "Toaster");
}

TEST(Copy, loadsPanelsAndBreakers) {
  const Plan plan = example::exampleHouseMoved();
  const LoadId toaster = loadNamed(plan, "Toaster");
  Plan copied = copyLoad(plan, toaster).value();
  EXPECT_EQ(circuitOf(copied, toaster)->loads.size(), 2u);
  EXPECT_TRUE(circuitOf(copied, toaster)->loads.back().id == nextLoadId(plan));

  copied = copyPanel(plan, kMain).value();
  EXPECT_TRUE(copied.panels.back()->role.is(PanelRole::subpanel)) << "one main panel a house";
  EXPECT_TRUE(copied.panels.back()->fedFrom == kMain);
  EXPECT_TRUE(copied.panels.back()->neutralBonded.is(Answer::unknown));
  EXPECT_TRUE(occupants(copied, copied.panels.back()->id, Reading::planned).empty());

  const BreakerId lights = find(plan, circuitNamed(plan, "Lights"))->planned;
  copied = copyBreaker(plan, lights).value();
  EXPECT_TRUE(copied.breakers.back()->feeds.is(Feeds::nothing));
  EXPECT_TRUE(copied.breakers.back()->position() == (SpacePosition{left, 3}));

  EXPECT_EQ(said(copyCircuit(plan, {99})), "There is no such circuit");
  EXPECT_EQ(said(copyLoad(plan, {99})), "There is no such load");
  EXPECT_EQ(said(copyPanel(plan, {99})), "There is no such panel");
  EXPECT_EQ(said(copyBreaker(plan, {99})), "There is no such breaker");
}

TEST(Copy, aTandemHalfIsCopiedIntoTheHalfBesideIt) {
  Plan plan = example::emptyHouse();
  const BreakerId half =
      example::addBreaker(plan, kMain, {right, 4}, 1, 15, Feeds::nothing, Stage::existing, Half::b);
  const Plan copied = copyBreaker(plan, half).value();
  EXPECT_TRUE(copied.breakers.back()->position() == (SpacePosition{right, 4}));
  EXPECT_TRUE(copied.breakers.back()->half.is(Half::a));
}

}  // namespace
}  // namespace stayalight
