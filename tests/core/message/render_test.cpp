#include <gtest/gtest.h>

#include "core/message/result.h"

namespace stayalight {
namespace {

/// Says its patterns itself, so that these tests do not hang on any sentence of the program.
class OwnPatterns : public Language {
 public:
  [[nodiscard]] std::string pattern(MessageId id) const override { return std::string(id.key); }
};

std::string rendered(const Message& message) { return render(message, OwnPatterns()); }

TEST(Render, argumentsTakeTheirPlacesInAnyOrder) {
  EXPECT_EQ(rendered(say(MessageId{"%2 before %1, %1 again"}, std::string("one"), std::string("two"))),
            "two before one, one again");
  EXPECT_EQ(rendered(say(MessageId{"no argument"})), "no argument");
  EXPECT_EQ(rendered(say(MessageId{"80 %% of %1"}, std::string("all"))), "80 % of all");
  EXPECT_EQ(rendered(say(MessageId{"[%3]"}, std::string("one"))), "[]")
      << "a missing argument is empty, no crash";
  EXPECT_EQ(rendered(say(MessageId{"ends in %"})), "ends in %");
  EXPECT_EQ(rendered(say(MessageId{"%x"})), "%x");
}

TEST(Render, anArgumentIsTextAndNeverAPattern) {
  EXPECT_EQ(rendered(say(MessageId{"%1 and %2"}, std::string("%2"), std::string("x"))), "%2 and x");
}

TEST(Render, everyKindOfArgument) {
  struct Case {
    Argument argument;
    const char* expected;
  };
  const Case cases[] = {
      {Argument(std::string("Well pump")), "Well pump"},
      {Argument(std::int64_t{1234567}), "1234567"},
      {Argument(std::int64_t{-3}), "-3"},
      {Argument(Figure{26.458, "A", 1}), "26.5 A"},
      {Argument(Figure{0.5, "", 0}), "1"},
      {Argument(Figure{31.25, "A", 1}), "31.3 A"},
      {Argument(Figure{-0.04, "", 1}), "0.0"},
      {Argument(Figure{99.96, "%", 1}), "100.0 %"},
      {Argument(Figure{-0.04, "A", 1}), "0.0 A"},
      {Argument(Figure{-0.06, "A", 1}), "-0.1 A"},
      {Argument(ClockTime{0}), "00:00"},
      {Argument(ClockTime{18 * 60 + 5}), "18:05"},
      {Argument(ClockTime{25 * 60}), "01:00"},
      {Argument(Citation{RuleId{"multiwire.same_panel"}}), "multiwire.same_panel"},
      {Argument(std::vector<Message>{}), ""},
      {Argument(std::vector<Message>{say(MessageId{"a"}), say(MessageId{"b%1"}, std::int64_t{2})}), "a, b2"},
  };
  for (const Case& c : cases) EXPECT_EQ(rendered(Message{MessageId{"%1"}, {c.argument}}), c.expected);
}

TEST(Render, theFirstWholeNumberChoosesThePluralForm) {
  const auto spaces = [](std::int64_t count) {
    return rendered(say(MessageId{"%1 space free||%1 spaces free"}, count));
  };
  EXPECT_EQ(spaces(1), "1 space free");
  EXPECT_EQ(spaces(0), "0 spaces free");
  EXPECT_EQ(spaces(12), "12 spaces free");
  EXPECT_EQ(rendered(say(MessageId{"%1: %2 pole||%1: %2 poles"}, std::string("Main"), std::int64_t{1})),
            "Main: 1 pole");
}

TEST(Render, anIdWithoutTextIsSeenAtOnce) {
  EXPECT_EQ(render(say(MessageId{"nobody.wrote_this"}), plainEnglish()), "<nobody.wrote_this>");
}

TEST(Message, equalMeansSameIdAndArguments) {
  const MessageId id{"x"};
  EXPECT_TRUE(say(id, std::int64_t{1}) == say(id, std::int64_t{1}));
  EXPECT_FALSE(say(id, std::int64_t{1}) == say(id, std::int64_t{2}));
  EXPECT_FALSE(say(id, std::int64_t{1}) == say(id, std::string("1")));
  EXPECT_FALSE(say(id) == say(MessageId{"y"}));
}

TEST(Result, holdsAValueOrTheReason) {
  const Result<int> value(7);
  const Result<int> reason(say(MessageId{"why"}));
  EXPECT_TRUE(value.ok());
  EXPECT_EQ(value.value(), 7);
  EXPECT_FALSE(reason.ok());
  EXPECT_FALSE(static_cast<bool>(reason));
  EXPECT_EQ(reason.refusal().id.key, "why");
}

}  // namespace
}  // namespace stayalight
