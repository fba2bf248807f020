// A table put over rows of the survey: which rows and columns it meets, and what is not read.

#include "ui/survey/paste.h"

#include <gtest/gtest.h>

#include "core/directory/directory.h"

namespace stayalight {
namespace {

using Table = std::vector<std::vector<std::string>>;
constexpr GridColumn kColumns[] = {GridColumn::poles, GridColumn::rating, GridColumn::name,
                                   GridColumn::serves};

Plan house() {
  const Plan plan = newPlan();
  return enterDirectory(plan, mainPanel(plan)->id, readDirectory("1 Kitchen 20\n2 Lights 15\n3 Hall 15"))
      .plan;
}
Pasted paste(const Plan& plan, const Table& table, const Watch& watch = {}) {
  const PanelId main = mainPanel(plan)->id;
  const GridRow first = gridRows(plan, main, SpaceOrder::acrossRows).front();
  return pasteTable(plan, main, SpaceOrder::acrossRows, first, kColumns, table, {}, watch);
}
std::string textAt(const Plan& plan, std::size_t row, GridColumn column) {
  return cellText(plan, gridRows(plan, mainPanel(plan)->id, SpaceOrder::acrossRows).at(row), column, {}).text;
}

TEST(Paste, EachLineMeetsTheNextRow) {
  const Pasted made = paste(
      house(),
      {{"1", "15", "Counter", "Toaster"}, {"1", "20", "Porch"}, {"1", "15", "Stairs"}, {"", "", "Attic"}});
  EXPECT_TRUE(made.notRead.empty());
  EXPECT_EQ(made.lost, 0);
  EXPECT_EQ(textAt(made.plan, 0, GridColumn::name), "Counter");
  EXPECT_EQ(textAt(made.plan, 0, GridColumn::rating), "15");
  EXPECT_EQ(textAt(made.plan, 0, GridColumn::serves), "Toaster");
  EXPECT_EQ(textAt(made.plan, 1, GridColumn::name), "Porch");
  EXPECT_EQ(textAt(made.plan, 2, GridColumn::name), "Stairs");
  // The fourth row was free: a circuit stands there now.
  EXPECT_EQ(textAt(made.plan, 3, GridColumn::name), "Attic");
  EXPECT_EQ(made.plan.circuits.size(), 4u);
}

/// A two-pole takes the space two rows below, so the line after the next one meets the row after that.
TEST(Paste, ATwoPoleTakesARow) {
  const Plan plan = newPlan();
  const Pasted made = paste(plan, {{"2", "50", "Range"}, {"1", "15", "Lights"}, {"1", "20", "Freezer"}});
  EXPECT_TRUE(made.notRead.empty());
  const auto spaceOf = [&](const char* name) -> std::string {
    for (const GridRow& row : gridRows(made.plan, mainPanel(made.plan)->id, SpaceOrder::acrossRows)) {
      if (cellText(made.plan, row, GridColumn::name, {}).text == name)
        return cellText(made.plan, row, GridColumn::space, {}).text;
    }
    return "nowhere";
  };
  EXPECT_EQ(spaceOf("Range"), "1, 3");
  EXPECT_EQ(spaceOf("Lights"), "2");
  EXPECT_EQ(spaceOf("Freezer"), "4");  // 3 is the range's
}

TEST(Paste, WhatIsNotReadIsKeptWithItsPlace) {
  const Pasted made = paste(house(), {{"1", "as it is", "Counter"}, {"7"}});
  ASSERT_EQ(made.notRead.size(), 2u);
  EXPECT_EQ(made.notRead[0].text, "as it is");
  EXPECT_EQ(made.notRead[0].cell.column, GridColumn::rating);
  EXPECT_EQ(made.notRead[1].cell.column, GridColumn::poles);
  EXPECT_EQ(textAt(made.plan, 0, GridColumn::rating), "20");
  EXPECT_EQ(textAt(made.plan, 0, GridColumn::name), "Counter");
  EXPECT_EQ(made.done, 1);
  ASSERT_EQ(made.read.size(), 1u);
  EXPECT_EQ(made.read[0].column, GridColumn::name);
}

TEST(Paste, CountsWhatStandsBeyondTheGrid) {
  const Plan plan = house();
  Table table(mainPanel(plan)->spaces + 3, {"", "", "", "Serves"});
  table[0].push_back("beyond the last column");
  const Pasted made = paste(plan, table);
  EXPECT_EQ(made.lost, 1 + 3 * 4);
}

TEST(Paste, StopsWhenItIsTold) {
  int seen = 0;
  (void)paste(house(), {{"", "", "A"}, {"", "", "B"}, {"", "", "C"}}, [&](double) { return ++seen < 2; });
  EXPECT_EQ(seen, 2);
  const Plan plan = house();
  const std::vector<GridCell> cells(
      3, {gridRows(plan, mainPanel(plan)->id, SpaceOrder::acrossRows).front(), GridColumn::name});
  seen = 0;
  (void)pasteText(plan, cells, "X", {}, [&](double) { return ++seen < 2; });
  EXPECT_EQ(seen, 2);
}

}  // namespace
}  // namespace stayalight
