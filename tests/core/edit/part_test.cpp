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

TEST(Keep, WhatIsKeptInAPlanComesBackEqualAndUnderANameOfItsOwn) {
  Plan plan = house({1, 1});
  Inverter inverter;
  inverter.continuous = Watts(6000);
  inverter.overload = {OverloadPoint{}};
  plan = takeInverter(plan, inverter);
  const EntityRef unit{RecordKind::inverter};
  for (const char* name : {"Six kilowatts", "Six kilowatts"}) {
    const Result<Plan> kept = keepInPlan(plan, unit, name);
    ASSERT_TRUE(kept.ok()) << said(kept);
    plan = kept.value();
  }
  ASSERT_EQ(plan.own->inverters.size(), 2u);
  EXPECT_EQ(plan.own->inverters[0].name, "Six kilowatts");
  EXPECT_EQ(plan.own->inverters[1].name, "Six kilowatts 2");

  inverter.name = "Six kilowatts";
  const Plan other = takeInverter(plan, Inverter{});
  const Result<Plan> taken = takeKept(other, {RecordKind::ownInverter, 0, 0}, unit);
  ASSERT_TRUE(taken.ok()) << said(taken);
  EXPECT_EQ(*taken.value().inverter, inverter);
  EXPECT_EQ(*taken.value().own, *plan.own) << "the list stays as it is";
}

TEST(Keep, ALoadHasNoIdThereAndBelongsToNoPlace) {
  Plan plan = house({1, 1});
  Load pump;
  pump.name = "Pump";
  pump.running.value = Watts(750);
  pump.running.grade = Grade::nameplate;
  pump.meantToRun = Answer::yes;
  plan = addLoad(plan, CircuitId{1}, pump).value();
  const Load& added = find(plan, CircuitId{1})->loads.back();
  const Result<Plan> kept = keepInPlan(plan, {RecordKind::load, added.id.number}, "Well pump");
  ASSERT_TRUE(kept.ok()) << said(kept);
  EXPECT_FALSE(kept.value().own->loads.front().id.valid());
  EXPECT_TRUE(kept.value().own->loads.front().meantToRun.is(Answer::unknown)) << "a matter of its place";

  EXPECT_EQ(kept.value().own->loads.front().name, "Well pump");
  EXPECT_EQ(kept.value().own->loads.front().running, pump.running);
  EXPECT_FALSE(takeKept(kept.value(), {RecordKind::ownLoad, 0, 0}, {RecordKind::circuit, 2}).ok());
}

TEST(Keep, APanelIsFedByNothingThereAndTakesThePlaceOfAnother) {
  const Plan plan = house({1, 1});
  const Result<Plan> kept = keepInPlan(plan, {RecordKind::panel, kBackup.number}, "Eight spaces");
  ASSERT_TRUE(kept.ok()) << said(kept);
  const Panel& panel = kept.value().own->panels.front();
  EXPECT_FALSE(panel.id.valid());
  EXPECT_FALSE(panel.fedFrom.valid());
  const Result<Plan> taken =
      takeKept(kept.value(), {RecordKind::ownPanel, 0, 0}, {RecordKind::panel, kMain.number});
  ASSERT_TRUE(taken.ok()) << said(taken);
  EXPECT_EQ(mainPanel(taken.value())->spaces, panel.spaces);
  EXPECT_EQ(mainPanel(taken.value())->id, kMain);
}

TEST(Keep, EntriesAreRenamedAndTakenAway) {
  Plan plan = house({1});
  const EntityRef battery{RecordKind::battery};
  plan = keepInPlan(keepInPlan(plan, battery, "One").value(), battery, "Two").value();
  const EntityRef second{RecordKind::ownBattery, 0, 1};
  EXPECT_EQ(renameKept(plan, second, "Three").value().own->batteries[1].name, "Three");
  EXPECT_TRUE(renameKept(plan, second, "Two").ok()) << "its own name";
  EXPECT_EQ(renameKept(plan, second, "One").refusal().id.key, "edit.kept_name_taken");
  EXPECT_EQ(renameKept(plan, second, "").refusal().id.key, "edit.kept_without_name");
  EXPECT_EQ(renameKept(plan, {RecordKind::ownBattery, 0, 2}, "Four").refusal().id.key, "edit.kept_is_gone");
  EXPECT_EQ(renameKept(plan, battery, "Four").refusal().id.key, "edit.kept_is_gone");
  const Plan left = remove(plan, {RecordKind::ownBattery, 0, 0}).value();
  ASSERT_EQ(left.own->batteries.size(), 1u);
  EXPECT_EQ(left.own->batteries[0].name, "Two");
  EXPECT_FALSE(remove(plan, {RecordKind::ownLists}).ok());
  EXPECT_EQ(keepInPlan(plan, {RecordKind::site}, "House").refusal().id.key, "edit.not_kept");
  EXPECT_EQ(keepInPlan(plan, battery, "").refusal().id.key, "edit.kept_without_name");
  EXPECT_EQ(takeKept(plan, {RecordKind::ownBattery, 0, 7}, battery).refusal().id.key, "edit.kept_is_gone");
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
