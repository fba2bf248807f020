#include "ui/survey/cells.h"

#include <gtest/gtest.h>

#include "core/directory/directory.h"

namespace stayalight {
namespace {

Plan planOf(const char* directory) {
  const Plan plan = newPlan();
  return enterDirectory(plan, mainPanel(plan)->id, readDirectory(directory)).plan;
}

/// The row of a printed space, upper half first.
GridRow rowAt(const Plan& plan, std::string_view space) {
  const PanelId main = mainPanel(plan)->id;
  for (const GridRow& row : gridRows(plan, main, SpaceOrder::acrossRows)) {
    if (!row.ofLoad && spaceNames(*mainPanel(plan), {main, row.position, row.half, row.poles}) == space)
      return row;
  }
  ADD_FAILURE() << "no row " << space;
  return {};
}

struct Typed {
  Plan plan;
  std::string wrong;
};
Typed type(const Plan& plan, std::string_view space, GridColumn column, const std::string& text,
           Grade grade = Grade::nameplate) {
  CellStyle style;
  style.grade = grade;
  const Result<Plan> after = enterCell(plan, rowAt(plan, space), column, text, style);
  if (!after) return {plan, render(after.refusal(), plainEnglish())};
  return {after.value(), {}};
}
std::string text(const Plan& plan, std::string_view space, GridColumn column) {
  return cellText(plan, rowAt(plan, space), column, {}).text;
}

TEST(Cells, typingIntoAFreeSpaceMakesBreakerAndCircuit) {
  struct Case {
    GridColumn column;
    const char* typed;
    const char* shown;
  };
  const Case cases[] = {
      {GridColumn::name, "Kitchen", "Kitchen"},      {GridColumn::rating, "15", "15"},
      {GridColumn::serves, "Counter", "Counter"},    {GridColumn::room, "Hall", "Hall"},
      {GridColumn::conductor, "12", "12"},           {GridColumn::running, "900", "900"},
      {GridColumn::hours, "6-22", "06:00 to 22:00"}, {GridColumn::motor, "sump", "sump pump"},
  };
  for (const Case& each : cases) {
    const Typed typed = type(newPlan(), "7", each.column, each.typed);
    EXPECT_EQ(typed.wrong, "") << each.typed;
    ASSERT_EQ(typed.plan.breakers.size(), 1u) << each.typed;
    ASSERT_EQ(typed.plan.circuits.size(), 1u) << each.typed;
    EXPECT_EQ(text(typed.plan, "7", each.column), each.shown) << each.typed;
    EXPECT_EQ(typed.plan.breakers[0]->position(), (SpacePosition{Column::left, 4}));
  }
  const Typed two = type(newPlan(), "7", GridColumn::poles, "2");
  EXPECT_EQ(text(two.plan, "7, 9", GridColumn::poles), "2");
  EXPECT_TRUE(two.plan.circuits[0]->voltage.is(VoltageClass::v240));
  EXPECT_EQ(text(type(newPlan(), "7", GridColumn::name, "Hall").plan, "7", GridColumn::rating), "20?");
  const Typed both = type(newPlan(), "7", GridColumn::rating, "50 2p");
  EXPECT_EQ(text(both.plan, "7, 9", GridColumn::rating), "50");
}

TEST(Cells, wordsAndFiguresAsTheTradeTypesThem) {
  struct Case {
    GridColumn column;
    const char* typed;
    const char* shown;
  };
  const Case cases[] = {
      {GridColumn::rating, "10+10", "20"},
      {GridColumn::rating, "30 A", "30"},
      {GridColumn::rating, "30?", "30?"},
      {GridColumn::rating, "?", "20?"},
      {GridColumn::conductor, "#10 AWG", "10"},
      {GridColumn::conductor, "12/2", "12"},
      {GridColumn::conductor, "1/0", "1/0"},
      {GridColumn::conductor, "8 al", "8"},
      {GridColumn::metal, "al", "aluminium"},
      {GridColumn::metal, "Copper", "copper"},
      {GridColumn::wiring, "nm", "nonmetallic cable"},
      {GridColumn::protection, "gfi", "ground-fault"},
      {GridColumn::protection, "dual", "arc-fault and ground-fault"},
      {GridColumn::multiwire, "3", "3"},
      {GridColumn::running, "1.5 kW", "1500"},
      {GridColumn::running, "3*120", "360"},
      {GridColumn::running, "8.2 A", "8.2 A"},
      {GridColumn::startCurrent, "30", "30"},
      {GridColumn::startTime, "500 ms", "0.5"},
      {GridColumn::duty, "30", "30"},
      {GridColumn::startsPerHour, "48/day", "2"},
      {GridColumn::motor, "fridge", "refrigerator or freezer"},
      {GridColumn::motor, "soft", "soft start"},
      {GridColumn::motor, "none", "no motor"},
      {GridColumn::hours, "5 h", "5 h a day"},
  };
  Plan plan = planOf("1 Kitchen 20A");
  plan = type(plan, "1", GridColumn::startCurrent, "20").plan;  // a motor, so that its cells show
  for (const Case& each : cases) {
    const Typed typed = type(plan, "1", each.column, each.typed);
    EXPECT_EQ(typed.wrong, "") << each.typed;
    const std::string conductorFirst = each.column == GridColumn::metal ? "12" : "";
    const Plan shown = conductorFirst.empty()
                           ? typed.plan
                           : type(typed.plan, "1", GridColumn::conductor, conductorFirst).plan;
    EXPECT_EQ(text(shown, "1", each.column), each.shown) << each.typed;
  }
}

TEST(Cells, whatIsNotReadIsRefusedWithAReasonAndChangesNothing) {
  struct Case {
    GridColumn column;
    const char* typed;
    const char* words;
  };
  const Case cases[] = {
      {GridColumn::rating, "twenty", "no number"},
      {GridColumn::rating, "1000", "between 5 A and 400 A"},
      {GridColumn::rating, "", "cannot be left empty"},
      {GridColumn::voltage, "?", "Nothing unknown"},
      {GridColumn::rating, "20.5", "whole number"},
      {GridColumn::poles, "3", "1 or 2"},
      {GridColumn::conductor, "11", "none of"},
      {GridColumn::metal, "gold", "none of: copper, aluminium"},
      {GridColumn::voltage, "12", "more than one"},
      {GridColumn::running, "12 h", "Another unit"},
      {GridColumn::duty, "150", "between 0 % and 100 %"},
      {GridColumn::hours, "noonish", "no time of use"},
      {GridColumn::goesTo, "backup 2", "not typed here"},
      {GridColumn::who, "owner", "no figure yet"},
  };
  const Plan plan = planOf("1 Kitchen 20A\n3 Range 50A");
  for (const Case& each : cases) {
    const Typed typed = type(plan, "1", each.column, each.typed);
    EXPECT_NE(typed.wrong.find(each.words), std::string::npos) << each.typed << ": " << typed.wrong;
    EXPECT_TRUE(typed.plan == plan);
  }
  EXPECT_NE(type(plan, "1", GridColumn::poles, "2").wrong.find("Range"), std::string::npos);
}

TEST(Cells, aQuestionMarkSaysThatNobodyKnows) {
  Plan plan = planOf("1 Kitchen 20A");
  const Plan bare = plan;
  for (const auto& [column, typed] :
       {std::pair{GridColumn::conductor, "12"}, std::pair{GridColumn::running, "900"},
        std::pair{GridColumn::wiring, "nm"}, std::pair{GridColumn::duty, "20"}}) {
    const Plan known = type(plan, "1", column, typed).plan;
    EXPECT_NE(text(known, "1", column), "?") << typed;
    const Typed unknown = type(known, "1", column, "?");
    EXPECT_EQ(unknown.wrong, "");
    EXPECT_EQ(text(unknown.plan, "1", column), "?") << typed;
  }
  EXPECT_EQ(text(bare, "1", GridColumn::running), "?");
}

TEST(Cells, figuresTakeTheGradeAndKeepWhoFoundThem) {
  Plan plan = type(planOf("1 Kitchen 20A"), "1", GridColumn::running, "900", Grade::typical).plan;
  plan = type(plan, "1", GridColumn::who, "owner").plan;
  plan = type(plan, "1", GridColumn::how, "plug-in meter").plan;
  EXPECT_EQ(text(plan, "1", GridColumn::who), "owner");
  const Load& load = plan.circuits[0]->loads[0];
  EXPECT_EQ(load.running.grade, Grade::typical);
  EXPECT_EQ(load.name, "Kitchen") << "the only load bears the circuit's name";
  const Plan measured = gradeCell(plan, rowAt(plan, "1"), GridColumn::running, Grade::measured);
  EXPECT_EQ(measured.circuits[0]->loads[0].running.grade, Grade::measured);
  EXPECT_EQ(measured.circuits[0]->loads[0].running.how, "plug-in meter");
  const Plan traced = gradeCell(plan, rowAt(plan, "1"), GridColumn::serves, Grade::traced);
  EXPECT_TRUE(traced.circuits[0]->traced.is(Answer::yes));
  EXPECT_TRUE(gradeCell(plan, rowAt(plan, "1"), GridColumn::rating, Grade::measured) == plan);
  // Another figure of another grade was found by somebody else.
  const Plan other = type(plan, "1", GridColumn::running, "950", Grade::measured).plan;
  EXPECT_EQ(other.circuits[0]->loads[0].running.who, "");
  EXPECT_TRUE(type(plan, "1", GridColumn::running, "900", Grade::measured).plan == plan)
      << "the same says nothing";
}

TEST(Cells, everyShownTextIsReadBackAsTheSame) {
  Plan plan = planOf("1 Kitchen 20A\n3/5 Range 50A\n2A Bell 15A\n4 Hall");
  for (const auto& [column, typed] :
       {std::pair{GridColumn::running, "8.2 A"}, std::pair{GridColumn::startCurrent, "30"},
        std::pair{GridColumn::motor, "well"}, std::pair{GridColumn::startTime, "0.5"},
        std::pair{GridColumn::duty, "33"}, std::pair{GridColumn::hours, "6-22"},
        std::pair{GridColumn::conductor, "12"}, std::pair{GridColumn::wiring, "mc"},
        std::pair{GridColumn::protection, "dual"}}) {
    const Typed after = type(plan, "1", column, typed);
    ASSERT_EQ(after.wrong, "") << after.wrong;
    plan = after.plan;
  }
  for (const GridRow& row : gridRows(plan, mainPanel(plan)->id, SpaceOrder::downColumns)) {
    for (const GridColumnRow& column : gridColumns()) {
      const CellText cell = cellText(plan, row, column.column, {});
      if (cell.fixed || cell.text.empty()) continue;
      CellStyle style;
      style.grade = Grade::measured;
      const Result<Plan> again = enterCell(plan, row, column.column, cell.text, style);
      ASSERT_TRUE(again.ok()) << column.name << " " << cell.text << ": "
                              << render(again.refusal(), plainEnglish());
      EXPECT_TRUE(again.value() == plan) << column.name << " " << cell.text;
    }
  }
}

TEST(Cells, fillTakesFactsWithWhoFoundThem) {
  Plan plan =
      type(planOf("1 Kitchen 20A\n3 Bath 20A"), "1", GridColumn::running, "900", Grade::measured).plan;
  plan = type(plan, "1", GridColumn::who, "owner").plan;
  const Result<Plan> filled = fillCell(plan, rowAt(plan, "1"), rowAt(plan, "3"), GridColumn::running, {});
  ASSERT_TRUE(filled.ok());
  EXPECT_EQ(filled.value().circuits[1]->loads[0].running, plan.circuits[0]->loads[0].running);
  const Result<Plan> name = fillCell(plan, rowAt(plan, "1"), rowAt(plan, "5"), GridColumn::name, {});
  EXPECT_EQ(name.value().circuits.size(), 3u) << "into a free space";
}

TEST(Cells, oneKeyMakesTwoPoleTandemAndSharedNeutral) {
  const Plan empty = newPlan();
  const Plan two = toggleTwoPole(empty, rowAt(empty, "1")).value();
  EXPECT_EQ(two.breakers[0]->poles, 2);
  EXPECT_EQ(toggleTwoPole(two, rowAt(two, "1, 3")).value().breakers[0]->poles, 1);
  const Plan tandem = toggleTandem(empty, rowAt(empty, "1")).value();
  EXPECT_TRUE(tandem.breakers[0]->half.is(Half::a));
  EXPECT_TRUE(toggleTandem(tandem, rowAt(tandem, "1A")).value().breakers[0]->half.is(Half::whole));
  const Plan plan = planOf("1 Kitchen 20A\n3 Bath 20A\n5 Hall 15A");
  const GridRow bath = rowAt(plan, "3");
  const Plan shared = toggleSharedNeutral(plan, std::span(&bath, 1)).value();
  EXPECT_EQ(shared.circuits[0]->multiwire, 1);
  EXPECT_EQ(shared.circuits[1]->multiwire, 1);
  EXPECT_TRUE(toggleSharedNeutral(shared, std::span(&bath, 1)).value() == plan);
  const GridRow rows[] = {rowAt(plan, "1"), rowAt(plan, "5")};
  const Plan pair = toggleSharedNeutral(plan, rows).value();
  EXPECT_EQ(pair.circuits[2]->multiwire, 1);
  EXPECT_TRUE(toggleSharedNeutral(pair, rows).value() == plan);
  const GridRow first = rowAt(plan, "1");
  EXPECT_FALSE(toggleSharedNeutral(plan, std::span(&first, 1)).ok());
}

TEST(Cells, aCircuitOfSeveralLoadsIsTypedInItsRows) {
  Plan plan = planOf("1 Kitchen 20A");
  plan = addLoad(plan, plan.circuits[0]->id, Load{}).value();
  plan = addLoad(plan, plan.circuits[0]->id, Load{}).value();
  EXPECT_EQ(text(plan, "1", GridColumn::running), "2 loads");
  EXPECT_NE(type(plan, "1", GridColumn::running, "900").wrong.find("2 loads"), std::string::npos);
  const std::vector<GridRow> rows = gridRows(plan, mainPanel(plan)->id, SpaceOrder::downColumns);
  ASSERT_TRUE(rows[2].ofLoad);
  const Plan typed = enterCell(plan, rows[2], GridColumn::running, "60", {}).value();
  EXPECT_EQ(typed.circuits[0]->loads[1].running.value, Watts(60));
  EXPECT_FALSE(enterCell(plan, rows[2], GridColumn::rating, "60", {}).ok());
}

}  // namespace
}  // namespace stayalight
