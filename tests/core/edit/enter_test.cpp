#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

constexpr Column left = Column::left;

std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}

/// Circuits 1 and 2 at rows 1 and 2, a spare at row 4, a feeder at row 6.
Plan house() {
  Plan plan = newPlan();
  const PanelId main = mainPanel(plan)->id;
  plan = addCircuit(plan, main, Placement{main, {left, 1}}, 1, RatingAmperes(20), "One").value();
  plan = addCircuit(plan, main, Placement{main, {left, 2}}, 1, RatingAmperes(20), "Two").value();
  plan = addBreaker(plan, {main, {left, 4}}, RatingAmperes(15), Feeds::nothing).value();
  plan = addBreaker(plan, {main, {left, 6}, Half::whole, 2}, RatingAmperes(50), Feeds::feeder).value();
  return plan;
}

TEST(Enter, aSpareBreakerTakesACircuit) {
  const Plan plan = house();
  const BreakerId spare = plan.breakers[2]->id;
  const Result<Plan> added = addCircuitOn(plan, spare, "Three");
  ASSERT_TRUE(added.ok()) << said(added);
  const Circuit& circuit = *added.value().circuits.back();
  EXPECT_EQ(circuit.breaker, spare);
  EXPECT_EQ(circuit.planned, spare);
  EXPECT_TRUE(find(added.value(), spare)->feeds.is(Feeds::circuit));
  EXPECT_EQ(find(added.value(), spare)->rating.count(), 15);
  EXPECT_EQ(said(addCircuitOn(added.value(), spare, "Four")), "This breaker feeds Three as planned");
  EXPECT_NE(said(addCircuitOn(plan, plan.breakers[3]->id, "Four")).find("feeds something else"),
            std::string::npos);
}

TEST(Enter, aBreakerThatWasLeftInPlaceFeedsAgain) {
  Plan plan = house();
  const CircuitId moved[] = {plan.circuits[0]->id};
  plan = moveCircuits(plan, moved, backupPanel(plan)->id).value();
  const BreakerId old = plan.circuits[0]->breaker;
  const Plan added = addCircuitOn(plan, old, "Five").value();
  EXPECT_TRUE(find(added, old)->stage.is(Stage::existing));
  EXPECT_FALSE(added.circuits.back()->breaker.valid()) << "before the work it fed the other";
  EXPECT_EQ(added.circuits.back()->planned, old);
}

TEST(Enter, polesTakeVoltageAndLoadsAlong) {
  Plan plan = house();
  plan = remove(plan, {RecordKind::circuit, plan.circuits[1]->id.number}).value();
  plan = remove(plan, {RecordKind::breaker, plan.breakers[1]->id.number}).value();
  const BreakerId breaker = plan.circuits[0]->breaker;
  plan = addLoad(plan, plan.circuits[0]->id, Load{}).value();
  const Result<Plan> two = setPoles(plan, breaker, 2);
  ASSERT_TRUE(two.ok()) << said(two);
  const Circuit& circuit = *two.value().circuits[0];
  EXPECT_EQ(find(two.value(), breaker)->poles, 2);
  EXPECT_TRUE(circuit.voltage.is(VoltageClass::v240));
  EXPECT_TRUE(circuit.loads[0].connection.is(Connection::lineToLine));
  EXPECT_EQ(circuit.loads[0].ratedVoltage, 240);
  EXPECT_TRUE(setPoles(two.value(), breaker, 1).value() == plan);
  EXPECT_TRUE(setPoles(plan, breaker, 1).value() == plan);
}

TEST(Enter, twoPolesWantTheNextSpace) {
  const Plan plan = house();
  EXPECT_NE(said(setPoles(plan, plan.circuits[0]->breaker, 2)).find("Two"), std::string::npos);
}

TEST(Enter, bothBreakersOfAMovedCircuitKeepOneNumberOfPoles) {
  Plan plan = house();
  plan = remove(plan, {RecordKind::circuit, plan.circuits[1]->id.number}).value();
  plan = remove(plan, {RecordKind::breaker, plan.breakers[1]->id.number}).value();
  const CircuitId moved[] = {plan.circuits[0]->id};
  plan = moveCircuits(plan, moved, backupPanel(plan)->id).value();
  const Plan two = setPoles(plan, plan.circuits[0]->breaker, 2).value();
  EXPECT_EQ(find(two, two.circuits[0]->breaker)->poles, 2);
  EXPECT_EQ(find(two, two.circuits[0]->planned)->poles, 2);
}

TEST(Enter, circuitsShareANeutralAndPart) {
  Plan plan = house();
  const PanelId main = mainPanel(plan)->id;
  plan = addCircuit(plan, main, Placement{main, {left, 3}}, 1, RatingAmperes(20), "Three").value();
  const CircuitId one = plan.circuits[0]->id, two = plan.circuits[1]->id, three = plan.circuits[2]->id;
  const CircuitId pair[] = {one, two};
  const Plan shared = shareNeutral(plan, pair).value();
  EXPECT_EQ(find(shared, one)->multiwire, 1);
  EXPECT_EQ(find(shared, two)->multiwire, 1);
  EXPECT_TRUE(find(shared, one)->neutralShared.is(Answer::yes));
  // A third one joins the group that stands.
  const CircuitId more[] = {two, three};
  const Plan all = shareNeutral(shared, more).value();
  EXPECT_EQ(multiwireGroup(all, *find(all, one)).size(), 3u);
  const Plan parted = partNeutral(all, three).value();
  EXPECT_EQ(find(parted, three)->multiwire, 0);
  EXPECT_EQ(multiwireGroup(parted, *find(parted, one)).size(), 2u);
  EXPECT_TRUE(partNeutral(shared, one).value() == plan) << "of two, both are out";
  const CircuitId lone[] = {one};
  EXPECT_EQ(said(shareNeutral(plan, lone)), "A neutral is shared by two circuits or more");
  EXPECT_EQ(said(partNeutral(plan, one)), "One shares its neutral with no other circuit");
}

}  // namespace
}  // namespace stayalight
