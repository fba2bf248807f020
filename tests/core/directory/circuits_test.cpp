#include "core/directory/circuits.h"

#include <gtest/gtest.h>

#include "core/directory/directory.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

Plan house() {
  const Plan plan = newPlan();
  return enterDirectory(plan, mainPanel(plan)->id,
                        readDirectory("1 Kitchen 20A\n3/5 Range 50A\n2 Lights 15A"))
      .plan;
}

std::string problemOf(const Plan& plan, const std::string& text) {
  const auto read = readCircuits(plan, text, "t.csv");
  const auto* refused = std::get_if<CircuitsRefused>(&read);
  return refused != nullptr ? render(refused->problems.front(), plainEnglish()) : std::string("read");
}
ReadCircuits readOf(const Plan& plan, const std::string& text) {
  const auto read = readCircuits(plan, text, "t.csv");
  if (const auto* refused = std::get_if<CircuitsRefused>(&read)) {
    ADD_FAILURE() << render(refused->problems.front(), plainEnglish());
    return {};
  }
  return std::get<ReadCircuits>(read);
}

TEST(CircuitsCsv, theFirstRowNamesUnits) {
  const std::string text = circuitsCsv(house());
  const std::string head = text.substr(0, text.find("\r\n"));
  for (const char* name :
       {"circuit,panel,space,", "breaker_rating_A", "circuit_name", "circuit_conductor_AWG",
        "load_running_W,", "load_running_W_grade", "load_start_s"})
    EXPECT_NE(head.find(name), std::string::npos) << name;
}

TEST(CircuitsCsv, aFewColumnsAreEnough) {
  const ReadCircuits read =
      readOf(house(),
             "panel,space,circuit_name,breaker_rating_A,load_name,load_running_W,load_running_W_grade\n"
             "Main panel,1,Kitchen counter,15,Toaster,900,nameplate\n"
             "Main panel,4,Freezer,20,,,\n");
  EXPECT_EQ(read.added, 1);
  EXPECT_EQ(read.changed, 1);
  ASSERT_EQ(read.plan.circuits.size(), 4u);
  EXPECT_EQ(read.plan.circuits[0]->name, "Kitchen counter");
  EXPECT_EQ(find(read.plan, read.plan.circuits[0]->breaker)->rating.count(), 15);
  ASSERT_EQ(read.plan.circuits[0]->loads.size(), 1u);
  EXPECT_EQ(read.plan.circuits[0]->loads[0].running.value, Watts(900));
  EXPECT_EQ(read.plan.circuits[0]->loads[0].running.grade, Grade::nameplate);
  EXPECT_TRUE(read.plan.circuits[3]->loads.empty());
}

TEST(CircuitsCsv, readingStopsWhenItIsTold) {
  const Plan before = house();
  const std::string text = circuitsCsv(before);
  int looks = 0;
  (void)readCircuits(before, text, "t.csv", [&](double share) {
    EXPECT_GE(share, 0.0);
    EXPECT_LE(share, 1.0);
    return ++looks > 0;
  });
  ASSERT_GE(looks, 3);  // a look a row
  for (int last = 0; last < looks; ++last) {
    int seen = 0;
    const auto read = readCircuits(before, text, "t.csv", [&](double) { return seen++ < last; });
    const auto* refused = std::get_if<CircuitsRefused>(&read);
    ASSERT_NE(refused, nullptr) << last;
    EXPECT_EQ(refused->problems.front().id.key, "file.stopped");
  }
}

TEST(CircuitsCsv, rowsOfOneCircuitAreItsLoads) {
  const ReadCircuits read = readOf(house(),
                                   "circuit;panel;space;load_name;load_running_W\n"
                                   "a;Main panel;2;Lamp;9,5\n"
                                   "a;Main panel;2;Fan;60\n");
  ASSERT_EQ(read.plan.circuits[2]->loads.size(), 2u);
  EXPECT_EQ(read.plan.circuits[2]->loads[0].running.value, Watts(9.5));
  EXPECT_EQ(read.plan.circuits[2]->loads[1].name, "Fan");
}

TEST(CircuitsCsv, wrongCellsNameRowColumnValueAndWhatWasExpected) {
  struct Case {
    const char* text;
    const char* problem;
  };
  const Case cases[] = {
      {"", "t.csv is empty"},
      {"panel,circuit_name\n", "t.csv has no column \"space\""},
      {"panel,space,space\n", "t.csv has the column \"space\" twice"},
      {"panel,space\nGarage,1\n",
       "t.csv, line 2, column panel: \"Garage\"; expected: a panel of the plan: Main panel, Backup subpanel"},
      {"panel,space\nMain panel,99\n",
       "t.csv, line 2, column space: \"99\"; expected: a space of Main panel"},
      {"panel,space,breaker_rating_A\nMain panel,1,ten\n",
       "t.csv, line 2, column breaker_rating_A: \"ten\"; expected: a number"},
      {"panel,space,breaker_rating_A\nMain panel,1,1000\n",
       "t.csv, line 2, column breaker_rating_A: \"1000\"; expected: a number from 5 to 400"},
      {"panel,space,breaker_rating_A\nMain panel,1,20.5\n",
       "t.csv, line 2, column breaker_rating_A: \"20.5\"; expected: a whole number"},
      {"panel,space,circuit_metal\n\nMain panel,1,gold\n",
       "t.csv, line 3, column circuit_metal: \"gold\"; expected: one of copper, aluminium"},
      {"panel,space,load_automatic\nMain panel,1,maybe\n",
       "t.csv, line 2, column load_automatic: \"maybe\"; expected: yes or no"},
      {"panel,space,load_running_W_grade\nMain panel,1,sure\n",
       "t.csv, line 2, column load_running_W_grade: \"sure\"; expected: one of unknown"},
      {"panel,space\nMain panel,1,2\n", "t.csv, line 2: 3 cells, but the first row names 2 columns"},
      {"panel,space,breaker_poles\nMain panel,7,2\nMain panel,9,1\n", "t.csv, line 3"},
      {"panel,space,load_running_W,load_running_W_low\nMain panel,1,100,200\n",
       "expected: low, value and high"},
      {"panel,space\n\"Main panel,1\n", "t.csv, line 2: a quotation mark opens a cell"},
  };
  const Plan plan = house();
  for (const Case& each : cases) {
    EXPECT_NE(problemOf(plan, each.text).find(each.problem), std::string::npos) << each.text << "\n"
                                                                                << problemOf(plan, each.text);
  }
}

TEST(CircuitsCsv, aColumnThatIsNotKnownIsNotedAndNothingIsLost) {
  Plan plan = house();
  plan.circuits[0].edit().loads.push_back(example::plainLoad("Toaster", 900));
  plan.circuits[0].edit().loads[0].id = LoadId{1};
  plan.circuits[0].edit().loads[0].windows.resize(2);
  const ReadCircuits read = readOf(plan, "panel,space,colour\nMain panel,1,red\n");
  ASSERT_EQ(read.notes.size(), 1u);
  EXPECT_NE(render(read.notes[0], plainEnglish()).find("colour"), std::string::npos);
  EXPECT_TRUE(read.plan == plan);
  EXPECT_TRUE(readOf(plan, circuitsCsv(plan)).plan == plan) << "its own table changes nothing";
}

}  // namespace
}  // namespace stayalight
