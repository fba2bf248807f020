#include <gtest/gtest.h>

#include "core/edit/edit.h"
#include "core/edit/part.h"
#include "core/file/file.h"

namespace stayalight {
namespace {

TEST(WritePart, HoldsOnlyWhatWasNamed) {
  Plan plan = newPlan();
  plan.site.edit().name = "Somebody's house";
  plan.inverter.edit().name = "Kept";
  plan.inverter.edit().continuous = Watts(6000);
  plan.inverter.edit().unknown = {{"colour", "\"grey\"", "name"}};
  const std::string_view parts[] = {"inverter"};
  const std::string text = writePart(plan, parts);
  EXPECT_EQ(text.find("house"), std::string::npos) << text;
  EXPECT_EQ(text.find("panels"), std::string::npos) << text;
  const Result<ReadPlan> read = readPlan(text, "part");
  ASSERT_TRUE(read.ok()) << render(read.refusal(), plainEnglish());
  EXPECT_EQ(*read.value().plan.inverter, *plan.inverter);
  EXPECT_TRUE(read.value().plan.panels.empty());
}

TEST(WritePart, CircuitsComeBackWithTheirBreakersAndPanels) {
  Plan plan = addCircuit(newPlan(), PanelId{1}, std::nullopt, 2, RatingAmperes(30), "Dryer").value();
  plan = addLoad(plan, CircuitId{1}, Load{}).value();
  const CircuitId all[] = {CircuitId{1}};
  const Plan part = partOf(plan, all).value();
  const std::string_view parts[] = {"panels", "breakers", "circuits"};
  const Result<ReadPlan> read = readPlan(writePart(part, parts), "clipboard");
  ASSERT_TRUE(read.ok()) << render(read.refusal(), plainEnglish());
  EXPECT_EQ(read.value().plan, part);
}

}  // namespace
}  // namespace stayalight
