// Circuits that go from one plan to another, and records taken from a person's own lists.

#include "core/edit/part.h"

#include <gtest/gtest.h>

#include <set>

#include "core/edit/edit.h"
#include "core/panel/consistency.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::kBackup;
using example::kMain;

template <class T>
std::string said(const Result<T>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}

/// A plan with circuits of so many poles in the main panel, named "1", "2", ...
Plan house(const std::vector<std::int32_t>& poles) {
  Plan plan = newPlan();
  for (std::size_t i = 0; i < poles.size(); ++i) {
    plan = addCircuit(plan, kMain, std::nullopt, poles[i], RatingAmperes(15), std::to_string(i + 1)).value();
    plan = addLoad(plan, plan.circuits.back()->id, example::plainLoad("Load " + std::to_string(i + 1), 100.0))
               .value();
  }
  return plan;
}

/// Circuits 1 and 2 share a neutral and a handle tie.
Plan multiwireHouse() {
  Plan plan = house({1, 1, 2});
  for (const std::int64_t id : {1, 2}) {
    plan = setField(plan, {RecordKind::circuit, id}, "multiwire", std::int64_t{4}).value();
    plan = setField(plan, {RecordKind::circuit, id}, "neutral_shared", std::string("yes")).value();
  }
  return plan;
}

std::vector<CircuitId> every(const Plan& plan) {
  std::vector<CircuitId> all;
  for (const auto& circuit : plan.circuits) all.push_back(circuit->id);
  return all;
}

TEST(Part, HoldsNothingElseOfTheHouse) {
  Plan plan = house({1, 2, 1});
  plan.site.edit().name = "Somebody's house";
  const CircuitId wanted[] = {CircuitId{2}};
  const Result<Plan> part = partOf(plan, wanted);
  ASSERT_TRUE(part.ok()) << said(part);
  ASSERT_EQ(part.value().circuits.size(), 1u);
  EXPECT_EQ(part.value().circuits[0]->name, "2");
  EXPECT_EQ(part.value().breakers.size(), 1u);
  EXPECT_EQ(part.value().panels.size(), 1u);
  EXPECT_EQ(part.value().site->name, "");
  EXPECT_FALSE(inconsistency(part.value()));
}

TEST(Part, TakesTheWholeMultiwireGroup) {
  const CircuitId one[] = {CircuitId{2}};
  const Result<Plan> part = partOf(multiwireHouse(), one);
  ASSERT_TRUE(part.ok());
  EXPECT_EQ(part.value().circuits.size(), 2u);
}

TEST(Part, RefusesWhatHasNoBreakerOrIsNotThere) {
  Plan plan = house({1});
  plan.circuits[0].edit().planned = {};
  const CircuitId first[] = {CircuitId{1}};
  EXPECT_NE(said(partOf(plan, first)).find("no breaker"), std::string::npos) << said(partOf(plan, first));
  const CircuitId none[] = {CircuitId{9}};
  EXPECT_FALSE(partOf(plan, none).ok());
}

TEST(Paste, GivesNewIdsAndKeepsTheFacts) {
  const Plan from = house({1, 2, 1});
  const Plan into = house({1, 1});
  const Result<Plan> pasted = pasteCircuits(into, partOf(from, every(from)).value(), kMain);
  ASSERT_TRUE(pasted.ok()) << said(pasted);
  const Plan& plan = pasted.value();
  EXPECT_EQ(plan.panels.size(), into.panels.size());
  EXPECT_EQ(plan.breakers.size(), 5u);
  ASSERT_EQ(plan.circuits.size(), 5u);
  EXPECT_FALSE(inconsistency(plan));
  std::set<std::int64_t> loads;
  for (const auto& circuit : plan.circuits) {
    ASSERT_NE(find(plan, circuit->planned), nullptr);
    EXPECT_TRUE(find(plan, circuit->planned)->panel == kMain);
    EXPECT_TRUE(circuit->breaker == circuit->planned) << "existing in a main panel";
    for (const Load& load : circuit->loads) EXPECT_TRUE(loads.insert(load.id.number).second);
  }
  EXPECT_EQ(loads.size(), 5u);
  EXPECT_EQ(plan.circuits[3]->loads[0].name, "Load 2");
  EXPECT_EQ(find(plan, plan.circuits[3]->planned)->poles, 2);
  EXPECT_EQ(find(plan, plan.circuits[3]->planned)->rating, RatingAmperes(15));
  // What was there is as it was.
  EXPECT_TRUE(plan.circuits[0].same(into.circuits[0]));
}

TEST(Paste, IntoABackupSubpanelIsNew) {
  const Plan from = house({1});
  const Result<Plan> pasted = pasteCircuits(newPlan(), partOf(from, every(from)).value(), kBackup);
  ASSERT_TRUE(pasted.ok()) << said(pasted);
  EXPECT_TRUE(pasted.value().breakers[0]->stage.is(Stage::fresh));
  EXPECT_FALSE(pasted.value().circuits[0]->breaker.valid());
}

TEST(Paste, AMultiwireGroupStaysOneOnOppositeLegs) {
  const Plan from = multiwireHouse();
  const CircuitId one[] = {CircuitId{1}};
  // The same number stands for another group there.
  const Plan into = multiwireHouse();
  const Result<Plan> pasted = pasteCircuits(into, partOf(from, one).value(), kBackup);
  ASSERT_TRUE(pasted.ok()) << said(pasted);
  const Plan& plan = pasted.value();
  ASSERT_EQ(plan.circuits.size(), 5u);
  const Circuit &a = *plan.circuits[3], &b = *plan.circuits[4];
  EXPECT_EQ(a.multiwire, b.multiwire);
  EXPECT_NE(a.multiwire, 4);
  EXPECT_TRUE(a.neutralShared.is(Answer::yes));
  const Panel& backup = *backupPanel(plan);
  EXPECT_NE(poleLegs(backup, placementOf(*find(plan, a.planned)))[0],
            poleLegs(backup, placementOf(*find(plan, b.planned)))[0]);
}

TEST(Paste, LeavesBehindWhatBelongsToTheOtherHouse) {
  Plan from = house({1});
  from = addSpliceBox(addRaceway(from));
  Circuit& circuit = from.circuits[0].edit();
  circuit.raceway = RacewayId{1};
  circuit.spliceBox = SpliceBoxId{1};
  circuit.extensionLength = Length::feet(6);
  circuit.traced = Answer::yes;
  circuit.conductor = ConductorSize::awg12;
  const Result<Plan> pasted = pasteCircuits(newPlan(), partOf(from, every(from)).value(), kMain);
  ASSERT_TRUE(pasted.ok()) << said(pasted);
  const Circuit& copy = *pasted.value().circuits[0];
  EXPECT_FALSE(copy.raceway.valid());
  EXPECT_FALSE(copy.spliceBox.valid());
  EXPECT_FALSE(copy.extensionLength);
  EXPECT_TRUE(copy.traced.is(Answer::unknown));
  EXPECT_EQ(copy.conductor, ConductorSize::awg12);
}

TEST(Paste, IsRefusedWholeWhereNoSpaceIsFree) {
  const Plan from = house({1, 1, 1});
  Plan into = newPlan();
  for (int i = 0; i < 6; ++i)
    into = addCircuit(into, kBackup, std::nullopt, 1, RatingAmperes(20), "Taken").value();
  const Result<Plan> pasted = pasteCircuits(into, partOf(from, every(from)).value(), kBackup);
  ASSERT_FALSE(pasted.ok());
  EXPECT_NE(said(pasted).find("Backup subpanel has no free place left for 3"), std::string::npos)
      << said(pasted);
  EXPECT_FALSE(pasteCircuits(into, Plan{}, kBackup).ok());
  EXPECT_FALSE(pasteCircuits(into, partOf(from, every(from)).value(), PanelId{9}).ok());
}

TEST(Take, AnInverterAndABatteryAreReplacedWhole) {
  Inverter inverter;
  inverter.name = "Kept";
  inverter.continuous = Watts(6000);
  inverter.overload = {OverloadPoint{}};
  EXPECT_EQ(*takeInverter(newPlan(), inverter).inverter, inverter);
  Battery battery;
  battery.packs = 3;
  EXPECT_EQ(*takeBattery(newPlan(), battery).battery, battery);
}

TEST(Take, AnEnclosureKeepsWhatThePanelIsInThisHouse) {
  Panel enclosure;
  enclosure.name = "From the list";
  enclosure.spaces = 12;
  enclosure.busRating = RatingAmperes(125);
  enclosure.place = "another cellar";
  const Plan plan = house({1, 1});
  const Result<Plan> taken = takePanel(plan, kBackup, enclosure);
  ASSERT_TRUE(taken.ok()) << said(taken);
  const Panel& panel = *backupPanel(taken.value());
  EXPECT_EQ(panel.spaces, 12);
  EXPECT_EQ(panel.busRating, RatingAmperes(125));
  EXPECT_EQ(panel.name, "Backup subpanel");
  EXPECT_EQ(panel.place, "");
  EXPECT_TRUE(panel.fedFrom == kMain);

  enclosure.spaces = 4;
  const Result<Plan> small = takePanel(house({1, 1, 1, 1, 1, 1}), kMain, enclosure);
  EXPECT_FALSE(small.ok()) << "breakers would stand nowhere";
  EXPECT_FALSE(takePanel(plan, PanelId{9}, enclosure).ok());
}

}  // namespace
}  // namespace stayalight
