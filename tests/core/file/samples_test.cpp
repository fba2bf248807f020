// The committed samples are exactly what the program writes.

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/file/file.h"

namespace stayalight {
namespace {

std::string textOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

Plan sample(const std::string& name) {
  const auto read = readPlan(textOf(std::string(STAYALIGHT_SOURCE_DIR "/samples/") + name), name);
  if (!read) {
    ADD_FAILURE() << render(read.refusal(), plainEnglish());
    return {};
  }
  EXPECT_TRUE(read.value().notes.empty());
  return read.value().plan;
}

TEST(Samples, EachIsWrittenBackByteForByte) {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(STAYALIGHT_SOURCE_DIR "/samples")) {
    if (entry.path().extension() != ".stayalight") continue;
    ++count;
    const std::string text = textOf(entry.path());
    const auto read = readPlan(text, entry.path().filename());
    ASSERT_TRUE(read.ok()) << render(read.refusal(), plainEnglish());
    EXPECT_EQ(writePlan(read.value().plan), text) << entry.path();
  }
  EXPECT_EQ(count, 2);
}

TEST(Samples, ThePlainHouseHasAboutFourteenCircuits) {
  const Plan plan = sample("plain-house.stayalight");
  EXPECT_EQ(plan.circuits.size(), 14u);
  EXPECT_NE(backupPanel(plan), nullptr);
}

TEST(Samples, TheRiverHouseHasWhatMakesAHouseHard) {
  const Plan plan = sample("river-house.stayalight");
  EXPECT_EQ(plan.circuits.size(), 30u);
  int moved = 0, shared = 0, tandems = 0, withNeutral = 0, motors = 0, alarms = 0;
  for (const auto& circuit : plan.circuits) {
    moved += backedUp(plan, *circuit) ? 1 : 0;
    shared += circuit->multiwire > 0 ? 1 : 0;
    withNeutral += circuit->voltage.is(VoltageClass::v120_240) ? 1 : 0;
    alarms += circuit->smokeAlarms.is(Answer::yes) ? 1 : 0;
    for (const Load& load : circuit->loads) motors += load.start.is(StartKind::none) ? 0 : 1;
  }
  for (const auto& breaker : plan.breakers) tandems += breaker->half.is(Half::a) ? 1 : 0;
  EXPECT_GE(moved, 9);
  EXPECT_GE(shared, 4);
  EXPECT_GE(tandems, 2);
  EXPECT_GE(withNeutral, 1);
  EXPECT_GE(motors, 5);
  EXPECT_GE(alarms, 1);
}

}  // namespace
}  // namespace stayalight
