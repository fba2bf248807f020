#include <gtest/gtest.h>

#include <clocale>
#include <sstream>

#include "core/file/file.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

Plan readWell(const std::string& text) {
  const auto read = readPlan(text, "house.stayalight");
  if (!read) {
    ADD_FAILURE() << render(read.refusal(), plainEnglish());
    return {};
  }
  return read.value().plan;
}

TEST(ReadWrite, WhatIsWrittenReadsBackEqual) {
  for (const Plan& plan :
       {Plan{}, example::emptyHouse(), example::exampleHouse(), example::exampleHouseMoved()}) {
    const std::string text = writePlan(plan);
    EXPECT_EQ(readWell(text), plan);
    EXPECT_EQ(writePlan(readWell(text)), text);
  }
}

TEST(ReadWrite, StandsOneThingALineInTheOrderOfTheFieldTable) {
  Plan plan;
  plan.scenario.edit().month = 12;
  std::istringstream lines(writePlan(plan));
  std::string line;
  std::getline(lines, line);
  EXPECT_EQ(line, "{");
  std::getline(lines, line);
  EXPECT_EQ(line, "  \"stayalight\": {\"format\": 1, \"level\": 1, \"program\": \"0.1.0\"},");
  std::getline(lines, line);
  EXPECT_EQ(line, "  \"site\": {");
  std::getline(lines, line);
  EXPECT_EQ(line, "    \"name\": \"\",");
  const std::string text = writePlan(plan);
  EXPECT_NE(text.find("  \"panels\": [],\n  \"breakers\": [],\n"), std::string::npos);
  EXPECT_TRUE(text.ends_with(
      "  \"scenario\": {\n    \"month\": 12,\n    \"start_min\": 1080,\n    \"start_charge\": 1\n  }\n}\n"));
}

TEST(ReadWrite, SmallRecordsAndFactsStandOnOneLine) {
  Plan plan = example::emptyHouse();
  Space space;
  space.row = 3;
  space.tandem = TandemRule::accepted;
  example::editPanel(plan, example::kMain).exceptions.push_back(space);
  Graded<Fraction> health;
  health.value = Fraction(0.92);
  health.grade = Grade::measured;
  health.low = Fraction(0.9);
  health.who = "owner";
  health.when = "2026-01-10";
  health.how = "capacity test";
  plan.battery.edit().health = health;
  const std::string text = writePlan(plan);
  EXPECT_NE(text.find("\"space_exceptions\": [\n        {\"column\": \"left\", \"row\": 3, "
                      "\"printed_number\": \"\", \"leg\": "
                      "\"by_row\", \"tandem\": \"accepted\"}\n      ]"),
            std::string::npos)
      << text;
  EXPECT_NE(text.find("\"health\": {\"value\": 0.92, \"grade\": \"measured\", \"low\": 0.9, \"who\": "
                      "\"owner\", \"when\": "
                      "\"2026-01-10\", \"how\": \"capacity test\"},\n"),
            std::string::npos)
      << text;
}

TEST(ReadWrite, EmptyFactsAndOptionalValuesAreLeftOut) {
  const std::string text = writePlan(Plan{});
  EXPECT_EQ(text.find("health"), std::string::npos);
  EXPECT_EQ(text.find("nominal_kWh"), std::string::npos);
  EXPECT_EQ(text.find("null"), std::string::npos);
  EXPECT_NE(text.find("\"reserve\": 0.2,"), std::string::npos);
}

TEST(ReadWrite, KeysThatAreLeftOutHaveTheirDefault) {
  EXPECT_EQ(readWell("{\"stayalight\": {\"format\": 1}}"), Plan{});
  const Plan plan = readWell("{\"stayalight\": {\"format\": 1}, \"panels\": [{\"id\": 7}]}");
  ASSERT_EQ(plan.panels.size(), 1u);
  Panel expected;
  expected.id = PanelId{7};
  EXPECT_EQ(*plan.panels[0], expected);
}

TEST(ReadWrite, ListsAreSortedByIdAndInnerListsKeepTheirOrder) {
  const Plan plan = readWell(
      "{\"stayalight\": {\"format\": 1}, \"circuits\": [{\"id\": 9, \"loads\": [{\"id\": 5}, {\"id\": 2}]}, "
      "{\"id\": 3}]}");
  ASSERT_EQ(plan.circuits.size(), 2u);
  EXPECT_EQ(plan.circuits[0]->id.number, 3);
  EXPECT_EQ(plan.circuits[1]->id.number, 9);
  ASSERT_EQ(plan.circuits[1]->loads.size(), 2u);
  EXPECT_EQ(plan.circuits[1]->loads[0].id.number, 5);
}

TEST(ReadWrite, NumbersComeBackToTheLastBit) {
  for (const double number : {0.1, 1.0 / 3.0, 5e-324, 0.30000000000000004, 1.0, 0.0}) {
    Plan plan;
    plan.scenario.edit().startCharge = Fraction(number);
    EXPECT_EQ(readWell(writePlan(plan)).scenario->startCharge.count(), number);
  }
}

TEST(ReadWrite, TextsComeBackWhateverTheyHold) {
  const std::string hostile = std::string("quote \" back \\ tab \t line \n nul ") + '\0' +
                              " del \x7f µ ° Ω 家 \xF0\x9F\x94\x8B </script>";
  Plan plan;
  plan.site.edit().name = hostile;
  const std::string text = writePlan(plan);
  EXPECT_EQ(text.find('\0'), std::string::npos);
  EXPECT_EQ(readWell(text).site->name, hostile);
}

TEST(ReadWrite, BytesThatAreNoTextBecomeTheReplacementCharacter) {
  Plan plan;
  plan.site.edit().name = "a\xFFz";
  EXPECT_EQ(readWell(writePlan(plan)).site->name, "a\xEF\xBF\xBDz");
}

TEST(ReadWrite, AByteOrderMarkIsNoHarm) { EXPECT_EQ(readWell("\xEF\xBB\xBF" + writePlan(Plan{})), Plan{}); }

TEST(ReadWrite, ADecimalCommaOfTheLocaleChangesNothing) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  Plan plan;
  plan.scenario.edit().startCharge = Fraction(0.75);
  const std::string text = writePlan(plan);
  // Where the machine has no such locale the plain one stays, and the test still holds.
  std::setlocale(LC_ALL, "de_DE.UTF-8");
  const std::string there = writePlan(plan);
  const Plan read = readWell(text);
  std::setlocale(LC_ALL, before.c_str());
  EXPECT_EQ(there, text);
  EXPECT_EQ(read, plan);
}

}  // namespace
}  // namespace stayalight
