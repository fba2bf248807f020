#include "ui/survey/hours_text.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

TEST(HoursText, readAndShown) {
  struct Case {
    const char* typed;
    const char* shown;
  };
  const Case cases[] = {
      {"all day", "all day"},
      {"24 h", "all day"},
      {"6-22", "06:00 to 22:00"},
      {"6 to 22", "06:00 to 22:00"},
      {"18:00-23:00", "18:00 to 23:00"},
      {"6 p.m. to 11 p.m.", "18:00 to 23:00"},
      {"22\xE2\x80\x93"
       "6",
       "22:00 to 06:00"},
      {"5 h", "5 h a day"},
      {"5", "5 h a day"},
      {"90 min", "1.5 h a day"},
      {"0", "0 h a day"},
  };
  for (const Case& each : cases) {
    const auto read = readHours(each.typed, '.');
    ASSERT_TRUE(read.ok()) << each.typed << ": " << render(read.refusal(), plainEnglish());
    EXPECT_TRUE(plainHours(read.value())) << each.typed;
    EXPECT_EQ(hoursText(read.value(), plainEnglish()), each.shown) << each.typed;
    // What is shown reads back as the same.
    std::string again = hoursText(read.value(), plainEnglish());
    if (again.ends_with(" a day")) again.resize(again.size() - 6);
    ASSERT_TRUE(readHours(again, '.').ok()) << again;
    EXPECT_EQ(readHours(again, '.').value(), read.value()) << each.typed;
  }
  for (const char* wrong : {"25", "-3", "sometimes", "6-", "30 m"})
    EXPECT_FALSE(readHours(wrong, '.').ok()) << wrong;
  EXPECT_EQ(render(readHours("6:30-8", '.').refusal(), plainEnglish()), "Whole hours are wanted here.");
}

TEST(HoursText, whatOnlyTheFactsShowIsCounted) {
  std::vector<UseWindow> windows(2);
  EXPECT_FALSE(plainHours(windows));
  EXPECT_EQ(hoursText(windows, plainEnglish()), "2 times");
  windows.resize(1);
  windows[0].season = Season::winter;
  EXPECT_FALSE(plainHours(windows));
}

}  // namespace
}  // namespace stayalight
