// Keys and words of a later program are kept with the record they stood in.

#include <gtest/gtest.h>

#include "core/file/file.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

std::vector<std::string> notesOf(const ReadPlan& read) {
  std::vector<std::string> notes;
  for (const Message& note : read.notes) notes.push_back(render(note, plainEnglish()));
  return notes;
}

/// The text of a plan in which `from` stands once, with `to` in its place.
std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

TEST(Unknown, KeysAreWrittenBackBehindTheKeyTheyFollowed) {
  Plan plan = example::exampleHouse();
  plan.battery.edit().health.value = Fraction(0.9);
  std::string text = writePlan(plan);
  text =
      changed(text, "{\n  \"stayalight\": {\"format\": 1, \"level\": 1, ",
              "{\n  \"first\": true,\n  \"stayalight\": {\"format\": 1, \"mood\": [1, 2.5], \"level\": 1, ");
  text = changed(text, "\"customer\": \"\",\n",
                 "\"customer\": \"\",\n    \"utility\": {\"name\": \"x\", \"rates\": [0.1, 1e+300, null, "
                 "false]},\n    \"meter\": 3.0,\n");
  text = changed(text, "\"loads\": [\n", "\"wall\": -7,\n      \"loads\": [\n");
  text = changed(text, "\"health\": {\"value\": 0.9, ", "\"health\": {\"value\": 0.9, \"cycles\": 12, ");
  text = changed(text, "{\"time_s\": 0.5, ", "{\"time_s\": 0.5, \"sag_V\": 11, ");
  text = changed(text, "\n  \"scenario\": {",
                 "\n  \"outage_log\": [{\"from\": \"2026-01-02\"}],\n  \"scenario\": {");

  const auto read = readPlan(text, "a.stayalight");
  ASSERT_TRUE(read.ok()) << render(read.refusal(), plainEnglish());
  EXPECT_EQ(writePlan(read.value().plan), text);
  EXPECT_EQ(notesOf(read.value()),
            std::vector<std::string>{"a.stayalight: 8 entries are not known to this program and are kept as "
                                     "they are, first /stayalight/mood"});
  const auto again = readPlan(writePlan(read.value().plan), "a.stayalight");
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again.value().plan, read.value().plan);
}

TEST(Unknown, KeysInAnotherOrderSettleAfterOneReading) {
  const std::string text =
      "{\"scenario\": {\"x\": 1, \"start_charge\": 0.5, \"y\": 2, \"month\": 3, \"z\": 3}, \"later\": 0, "
      "\"stayalight\": {\"format\": 1}}";
  const auto first = readPlan(text, "a");
  ASSERT_TRUE(first.ok());
  const auto second = readPlan(writePlan(first.value().plan), "a");
  ASSERT_TRUE(second.ok());
  EXPECT_EQ(second.value().plan, first.value().plan);
  EXPECT_EQ(writePlan(second.value().plan), writePlan(first.value().plan));
}

TEST(Unknown, AKeyBehindAValueThatWasClearedIsStillWritten) {
  auto read = readPlan(
      "{\"stayalight\": {\"format\": 1}, \"transfer\": {\"rating_A\": 60, \"maker_note\": \"x\"}}", "a");
  ASSERT_TRUE(read.ok());
  Plan plan = read.value().plan;
  plan.transfer.edit().rating.reset();
  const auto again = readPlan(writePlan(plan), "a");
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again.value().plan, plan);
  ASSERT_EQ(again.value().plan.transfer->unknown.size(), 1u);
  EXPECT_EQ(again.value().plan.transfer->unknown[0].json, "\"x\"");
}

TEST(Unknown, WordsOfALaterProgramAreKept) {
  std::string text = writePlan(example::exampleHouse());
  text = changed(text, "\"arrangement\": \"manual_switch\"", "\"arrangement\": \"meter_collar\"");
  text = changed(text, "\"grade\": \"measured\"", "\"grade\": \"logged\"");
  const auto read = readPlan(text, "a.stayalight");
  ASSERT_TRUE(read.ok()) << render(read.refusal(), plainEnglish());
  const Plan& plan = read.value().plan;
  EXPECT_FALSE(plan.transfer->arrangement.known());
  EXPECT_EQ(plan.transfer->arrangement.word(), "meter_collar");
  EXPECT_EQ(plan.battery->health.grade, Grade::unknown);
  EXPECT_EQ(writePlan(plan), text);
  EXPECT_EQ(notesOf(read.value()),
            std::vector<std::string>{
                "a.stayalight: 2 choices are not known to this program and are kept as they are, first "
                "/battery/health/grade \"logged\""});

  Plan graded = plan;
  graded.battery.edit().health.grade = Grade::traced;
  EXPECT_NE(writePlan(graded).find("\"grade\": \"traced\""), std::string::npos);
  EXPECT_EQ(writePlan(graded).find("logged"), std::string::npos);
}

TEST(Unknown, AHigherLevelOpensWithANoteAndKeepsItsNumber) {
  const std::string text = changed(writePlan(example::emptyHouse()), "\"level\": 1", "\"level\": 4");
  const auto read = readPlan(text, "a.stayalight");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(notesOf(read.value()),
            std::vector<std::string>{"a.stayalight is of level 4, and this program knows level 1: what it "
                                     "does not know is kept as it is"});
  EXPECT_EQ(writePlan(read.value().plan), text);
}

TEST(Unknown, APlanOfThisProgramHasNoNotes) {
  const auto read = readPlan(writePlan(example::exampleHouse()), "a");
  ASSERT_TRUE(read.ok());
  EXPECT_TRUE(read.value().notes.empty());
}

}  // namespace
}  // namespace stayalight
