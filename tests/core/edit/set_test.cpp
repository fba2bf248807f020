#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::kBackup;
using example::kMain;
using example::loadNamed;

std::string said(const Result<Plan>& result) {
  return result.ok() ? std::string("done") : render(result.refusal(), plainEnglish());
}
EntityRef circuitRef(const Plan& plan, std::string_view name) {
  return {RecordKind::circuit, circuitNamed(plan, name).number};
}
EntityRef breakerRef(const Plan& plan, std::string_view circuit) {
  return {RecordKind::breaker, find(plan, circuitNamed(plan, circuit))->planned.number};
}
FieldValue whole(std::int64_t value) { return value; }
FieldValue word(const char* value) { return std::string(value); }

TEST(SetField, setsOneFieldAndNothingElse) {
  const Plan plan = example::exampleHouse();
  const EntityRef lights = circuitRef(plan, "Lights");
  Plan expected = plan;
  example::editCircuit(expected, circuitNamed(plan, "Lights")).room = "hall";
  EXPECT_TRUE(setField(plan, lights, "room", word("hall")).value() == expected);
}

TEST(SetField, aFactOfALoadIsReachedThroughItsCircuit) {
  const Plan plan = example::exampleHouse();
  FactValue fact;
  fact.value = 640.0;
  fact.grade = Grade::measured;
  fact.who = "Ann";
  const LoadId toaster = loadNamed(plan, "Toaster");
  const Plan set = setField(plan, {RecordKind::load, toaster.number}, "running_W", fact).value();
  const Load& load = circuitOf(set, toaster)->loads.front();
  EXPECT_DOUBLE_EQ(load.running.value->count(), 640.0);
  EXPECT_EQ(load.running.grade, Grade::measured);
  EXPECT_EQ(load.running.who, "Ann");
}

TEST(SetField, refusals) {
  Plan plan = example::exampleHouseMoved();
  const EntityRef lights = circuitRef(plan, "Lights");
  const EntityRef lightsBreaker = breakerRef(plan, "Lights");
  const EntityRef mainRef{RecordKind::panel, kMain.number};
  struct Case {
    EntityRef entity;
    const char* key;
    FieldValue value;
    const char* expected;
  };
  const Case cases[] = {
      {{RecordKind::circuit, 99}, "name", word("x"), "This part of the plan is not there any more"},
      {lights, "colour", word("x"), "A circuit has no field \"colour\""},
      {lights, "id", whole(5), "An id never changes"},
      {lights, "name", whole(5), "name wants a text"},
      {lights, "multiwire", whole(-1), "multiwire is -1, but it must lie between 0 and 1000"},
      {lights, "planned", whole(99), "planned names 99, which is not in the plan"},
      {lightsBreaker, "panel", whole(99), "panel names 99, which is not in the plan"},
      {lightsBreaker, "panel", whole(0), "A breaker stands in a panel"},
      {lightsBreaker, "row", whole(2), "Already taken by Furnace, at 4"},
      {lightsBreaker, "row", whole(5), "Backup subpanel has no such space"},
      {lightsBreaker, "column", word("left"), "Already taken by Refrigerator, at 1"},
      {lightsBreaker, "poles", whole(2), "Already taken by Furnace, at 4"},
      {lightsBreaker, "half", word("inner"),
       "No breaker has this shape: a tandem half has one pole, the outer or inner pair of a quad two"},
      {lightsBreaker, "panel", whole(1), "Already taken by the old breaker of Lights, at 2"},
      {lightsBreaker, "stage", word("removed"), "This breaker feeds Lights as planned"},
      {lightsBreaker, "stage", word("left_in_place"), "This breaker feeds Lights as planned"},
      {lightsBreaker, "feeds", word("solar"), "This breaker feeds Lights as planned"},
      {mainRef, "spaces", whole(14), "Main panel would have no space for 14, 16, which stands there"},
      {mainRef, "spaces", whole(3), "spaces is 3, but it must lie between 4 and 84"},
      {mainRef, "fed_from", whole(2), "Main panel would be fed from itself"},
      {mainRef, "fed_from", whole(1), "Main panel would be fed from itself"},
      {{RecordKind::overloadPoint, 0, 0},
       "time_s",
       10.0,
       "The times of the overload curve must rise from row to row"},
      {{RecordKind::overloadPoint, 0, 1},
       "time_s",
       0.2,
       "The times of the overload curve must rise from row to row"},
  };
  for (const Case& c : cases) EXPECT_EQ(said(setField(plan, c.entity, c.key, c.value)), c.expected) << c.key;
}

TEST(SetField, aPanelMayShrinkToWhatStandsInIt) {
  const Plan plan = example::exampleHouse();
  EXPECT_EQ(said(setField(plan, {RecordKind::panel, kMain.number}, "spaces", whole(16))), "done");
  EXPECT_EQ(said(setField(plan, {RecordKind::panel, kMain.number}, "spaces", whole(15))),
            "Main panel would have no space for 14, 16, which stands there");
}

TEST(SetField, theScheduleBeforeIsKeptFreeOfOverlaps) {
  Plan plan = example::exampleHouseMoved();
  const Circuit lights = *find(plan, circuitNamed(plan, "Lights"));
  plan = keepOldBreaker(plan, lights.breaker, false).value();
  // The freezer's breaker is existing: corrected onto the place of the removed one it would have stood there
  // before too.
  Result<Plan> set = setField(plan, breakerRef(plan, "Freezer"), "row", whole(1));
  EXPECT_EQ(said(set), "Lights stood at 2 before the work");
}

TEST(SetField, aStageTellsWhatFedTheCircuitBefore) {
  Plan plan = example::exampleHouse();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const BreakerId breaker = find(plan, freezer)->planned;
  const Plan fresh = setField(plan, breakerRef(plan, "Freezer"), "stage", word("new")).value();
  EXPECT_FALSE(find(fresh, freezer)->breaker.valid());
  EXPECT_TRUE(find(fresh, freezer)->planned == breaker);
  EXPECT_TRUE(setField(fresh, breakerRef(plan, "Freezer"), "stage", word("existing")).value() == plan);
}

TEST(SetField, aCircuitPutOnASpareBreakerGivesItAFunction) {
  Plan plan = example::exampleHouseMoved();
  const Circuit lights = *find(plan, circuitNamed(plan, "Lights"));
  const Plan set =
      setField(plan, circuitRef(plan, "Lights"), "planned", whole(lights.breaker.number)).value();
  EXPECT_TRUE(find(set, lights.breaker)->stage.is(Stage::existing));
  const BreakerId solar = example::addBreaker(plan, kMain, {Column::left, 8}, 2, 20, Feeds::solar);
  EXPECT_EQ(said(setField(plan, circuitRef(plan, "Lights"), "planned", whole(solar.number))),
            "The breaker at 15, 17 feeds something else");
  EXPECT_EQ(said(setField(plan, circuitRef(plan, "Lights"), "breaker", whole(lights.planned.number))),
            "The breaker of Lights does not stand in its panel in that state");
}

TEST(SetField, hoursOfUseAreWholeHours) {
  Plan plan = example::exampleHouse();
  const LoadId toaster = loadNamed(plan, "Toaster");
  plan = addItem(plan, {RecordKind::load, toaster.number}, "windows").value();
  const EntityRef window{RecordKind::useWindow, toaster.number, 0};
  EXPECT_EQ(said(setField(plan, window, "from_min", whole(90))), "from_min wants a whole hour");
  const Plan set = setField(plan, window, "from_min", whole(420)).value();
  EXPECT_EQ(circuitOf(set, toaster)->loads[0].windows[0].from.hour(), 7);
}

TEST(Items, rowsStartWhereTheyChangeNothing) {
  Plan plan = example::exampleHouse();
  const LoadId toaster = loadNamed(plan, "Toaster");
  plan = addItem(plan, {RecordKind::load, toaster.number}, "windows").value();
  const UseWindow& window = circuitOf(plan, toaster)->loads[0].windows.at(0);
  EXPECT_TRUE(window.season.is(Season::all));
  EXPECT_EQ(window.from, window.to) << "all day";
  EXPECT_DOUBLE_EQ(window.share.count(), 1.0);

  plan = addItem(plan, {RecordKind::inverter}, "overload").value();
  ASSERT_EQ(plan.inverter->overload.size(), 3u);
  EXPECT_GT(plan.inverter->overload[2].time, plan.inverter->overload[1].time);
  EXPECT_EQ(plan.inverter->overload[2].watts, plan.inverter->overload[1].watts);

  plan = addItem(plan, {RecordKind::inverter}, "efficiency").value();
  EXPECT_DOUBLE_EQ(plan.inverter->efficiency.at(0).efficiency.count(), 0.93)
      << "the marginal one, until it is read";

  plan = addItem(plan, {RecordKind::panel, kBackup.number}, "space_exceptions").value();
  plan = addItem(plan, {RecordKind::panel, kBackup.number}, "space_exceptions").value();
  ASSERT_EQ(find(plan, kBackup)->exceptions.size(), 2u);
  EXPECT_TRUE(find(plan, kBackup)->exceptions[1].column.is(Column::right))
      << "the next space that is not listed";
  EXPECT_EQ(said(setField(plan, {RecordKind::space, kBackup.number, 1}, "column", word("left"))),
            "Space 1 is listed already");
  EXPECT_EQ(said(setField(plan, {RecordKind::space, kBackup.number, 1}, "row", whole(5))),
            "Backup subpanel has no such space");
  const Plan left = removeItem(plan, {RecordKind::space, kBackup.number, 0}).value();
  ASSERT_EQ(find(left, kBackup)->exceptions.size(), 1u);
  EXPECT_TRUE(find(left, kBackup)->exceptions[0].column.is(Column::right));
}

TEST(Items, refusals) {
  Plan plan = example::emptyHouse();
  EXPECT_EQ(said(addItem(plan, {RecordKind::plan}, "panels")), "A plan has no list \"panels\" to add to");
  EXPECT_EQ(said(addItem(plan, {RecordKind::panel, 99}, "space_exceptions")),
            "This part of the plan is not there any more");
  EXPECT_EQ(said(removeItem(plan, {RecordKind::space, kBackup.number, 0})),
            "This part of the plan is not there any more");
  EXPECT_EQ(said(removeItem(plan, {RecordKind::panel, kBackup.number})),
            "This part of the plan is not there any more");
  for (int i = 0; i < 8; ++i)
    plan = addItem(plan, {RecordKind::panel, kBackup.number}, "space_exceptions").value();
  EXPECT_EQ(said(addItem(plan, {RecordKind::panel, kBackup.number}, "space_exceptions")),
            "Every space is listed already");
}

TEST(ApplyFix, doesWhatTheEditDoes) {
  const Plan plan = example::exampleHouse();
  const CircuitId freezer = circuitNamed(plan, "Freezer");
  const Plan moved = applyFix(plan, fix::Move{{freezer}, kBackup, SpacePosition{Column::left, 2}}).value();
  EXPECT_TRUE(
      moved ==
      moveCircuits(plan, std::vector<CircuitId>{freezer}, kBackup, SpacePosition{Column::left, 2}).value());
  EXPECT_TRUE(applyFix(moved, fix::SendBack{{freezer}}).value() == plan);
  const BreakerId breaker = find(moved, freezer)->planned;
  const Plan placed = applyFix(moved, fix::Relocate{breaker, {Column::right, 4}}).value();
  EXPECT_EQ(find(placed, breaker)->row, 4);
  const Plan set =
      applyFix(plan, fix::SetField{circuitRef(plan, "Lights"), "smoke_alarms", word("no")}).value();
  EXPECT_TRUE(find(set, circuitNamed(plan, "Lights"))->smokeAlarms.is(Answer::no));
}

TEST(Set, aRatingThatIsEnteredWasRead) {
  Plan plan =
      addBreaker(newPlan(), {example::kMain, {Column::left, 1}}, RatingAmperes(20), Feeds::nothing).value();
  const EntityRef breaker{RecordKind::breaker, plan.breakers[0]->id.number};
  plan = setField(plan, breaker, "rating_read", std::string("unknown")).value();
  EXPECT_TRUE(plan.breakers[0]->ratingRead.is(Answer::unknown));
  plan = setField(plan, breaker, "rating_A", std::int64_t{15}).value();
  EXPECT_TRUE(plan.breakers[0]->ratingRead.is(Answer::yes));
}

}  // namespace
}  // namespace stayalight
