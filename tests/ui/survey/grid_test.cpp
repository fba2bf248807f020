#include "ui/survey/grid.h"

#include <gtest/gtest.h>

#include "core/directory/directory.h"
#include "core/edit/edit.h"

namespace stayalight {
namespace {

Plan planOf(const char* directory) {
  const Plan plan = newPlan();
  return enterDirectory(plan, mainPanel(plan)->id, readDirectory(directory)).plan;
}

std::string shown(const Plan& plan, const std::vector<GridRow>& rows) {
  std::string out;
  for (const GridRow& row : rows) {
    const Panel* panel = find(plan, row.panel);
    const Circuit* circuit = find(plan, row.circuit);
    out +=
        (out.empty() ? "" : " | ") + (panel != nullptr && !row.ofLoad
                                          ? spaceNames(*panel, {row.panel, row.position, row.half, row.poles})
                                          : std::string("+"));
    if (circuit != nullptr && !row.ofLoad) out += " " + circuit->name;
  }
  return out;
}

TEST(Grid, columnsStandInTheOrderOfTheirNames) {
  ASSERT_EQ(gridColumns().size(), static_cast<std::size_t>(kGridColumns));
  for (int i = 0; i < kGridColumns; ++i)
    EXPECT_EQ(static_cast<int>(gridColumns()[static_cast<std::size_t>(i)].column), i);
  for (const GridColumnRow& row : gridColumns()) {
    EXPECT_TRUE(row.key.empty() || fieldOf(row.record, row.key) != nullptr) << row.key;
    EXPECT_NE(row.sets, 0) << row.name;
  }
}

TEST(Grid, aRowForEachBreakerAndEachFreeSpace) {
  Plan plan = planOf("1 Kitchen 20A\n3/5 Range 50A\n4A Bell 15A\n8 spare");
  plan.panels[0].edit().spaces = 10;
  const PanelId main = mainPanel(plan)->id;
  EXPECT_EQ(shown(plan, gridRows(plan, main, SpaceOrder::downColumns)),
            "1 Kitchen | 3, 5 Range | 7 | 9 | 2 | 4A Bell | 4B | 6 | 8 | 10");
  EXPECT_EQ(shown(plan, gridRows(plan, main, SpaceOrder::acrossRows)),
            "1 Kitchen | 2 | 3, 5 Range | 4A Bell | 4B | 6 | 7 | 8 | 9 | 10");
  EXPECT_EQ(shown(plan, circuitRows(plan, SpaceOrder::downColumns)), "1 Kitchen | 3, 5 Range | 4A Bell");
}

TEST(Grid, severalLoadsHaveRowsBelowTheirCircuit) {
  Plan plan = planOf("1 Kitchen 20A");
  plan.panels[0].edit().spaces = 4;
  const CircuitId kitchen = plan.circuits[0]->id;
  const PanelId main = mainPanel(plan)->id;
  plan = addLoad(plan, kitchen, Load{}).value();
  EXPECT_EQ(gridRows(plan, main, SpaceOrder::downColumns).size(), 4u);
  EXPECT_TRUE(gridRows(plan, main, SpaceOrder::downColumns)[0].load.valid());
  plan = addLoad(plan, kitchen, Load{}).value();
  EXPECT_EQ(shown(plan, gridRows(plan, main, SpaceOrder::downColumns)), "1 Kitchen | + | + | 3 | 2 | 4");
  EXPECT_FALSE(gridRows(plan, main, SpaceOrder::downColumns)[0].load.valid());
}

TEST(Grid, aMovedCircuitStandsWhereItHangsTodayAndWhereItGoes) {
  Plan plan = planOf("1 Kitchen 20A\n3 Lights 15A");
  const CircuitId moved[] = {plan.circuits[0]->id};
  plan = moveCircuits(plan, moved, backupPanel(plan)->id).value();
  const std::vector<GridRow> main = gridRows(plan, mainPanel(plan)->id, SpaceOrder::downColumns);
  EXPECT_EQ(main[0].circuit, moved[0]);
  const std::vector<GridRow> backup = gridRows(plan, backupPanel(plan)->id, SpaceOrder::downColumns);
  EXPECT_TRUE(
      std::any_of(backup.begin(), backup.end(), [&](const GridRow& row) { return row.circuit == moved[0]; }));
  EXPECT_EQ(circuitRows(plan, SpaceOrder::downColumns).size(), 2u) << "once among all circuits";
  EXPECT_EQ(rowNow(plan, main[0]), main[0]);
}

TEST(Grid, whatIsKnownIsCountedByGrade) {
  Plan plan = planOf("1 Kitchen 20A\n3 Pump 20A");
  Load load;
  load.running.value = Watts(800);
  load.running.grade = Grade::measured;
  plan = addLoad(plan, plan.circuits[1]->id, load).value();
  const std::vector<GridRow> rows = gridRows(plan, mainPanel(plan)->id, SpaceOrder::downColumns);
  // The kitchen has no load at all; the pump's watts are measured, its duty is not known.
  EXPECT_EQ(knownFacts(plan, rows), (std::array<std::int32_t, 5>{2, 0, 0, 0, 1}));
  EXPECT_TRUE(hasUnknown(plan, rows[0]));
  Plan motor = setField(plan, {RecordKind::load, 1}, "start", std::string("across_the_line")).value();
  EXPECT_EQ(knownFacts(motor, rows)[0], 4) << "start current and start time";
}

}  // namespace
}  // namespace stayalight
