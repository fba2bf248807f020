#include "app/command_line.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

CommandLine parsed(const std::vector<std::string>& words) {
  const auto line = parseCommandLine(words);
  EXPECT_TRUE(line.ok()) << (line ? "" : render(line.refusal(), plainEnglish()));
  return line ? line.value() : CommandLine{};
}

TEST(CommandLine, WithoutACommandTheWindowOpens) {
  EXPECT_EQ(parsed({}).task, Task::window);
  EXPECT_TRUE(parsed({}).plans.empty());
  EXPECT_EQ(parsed({"house.stayalight"}).plans, std::vector<std::string>{"house.stayalight"});
  // A file that is named like a command opens behind "--".
  EXPECT_EQ(parsed({"--", "assess"}).task, Task::window);
  EXPECT_EQ(parsed({"--", "assess"}).plans, std::vector<std::string>{"assess"});
  EXPECT_EQ(parsed({"assess", "--", "-x.stayalight"}).plans, std::vector<std::string>{"-x.stayalight"});
}

TEST(CommandLine, TakesOptionsInBothSpellings) {
  const CommandLine a =
      parsed({"print", "a", "--out", "b.pdf", "--sheets", "main,backup,,", "--paper", "a4"});
  const CommandLine b = parsed({"print", "--out=b.pdf", "--paper=a4", "--sheets=main,backup", "a"});
  for (const CommandLine& line : {a, b}) {
    EXPECT_EQ(line.task, Task::print);
    EXPECT_EQ(line.plans, std::vector<std::string>{"a"});
    EXPECT_EQ(line.out, "b.pdf");
    EXPECT_EQ(line.sheets, (std::vector<std::string>{"main", "backup"}));
    EXPECT_EQ(line.paper, "a4");
  }
}

TEST(CommandLine, UnitsAreUsUnlessAsked) {
  EXPECT_FALSE(parsed({"review", "a"}).metric);
  EXPECT_FALSE(parsed({"assess", "a", "--units", "us"}).metric);
  EXPECT_TRUE(parsed({"assess", "a", "b", "--units", "metric"}).metric);
  EXPECT_TRUE(parsed({"review", "--units=metric", "a"}).metric);
  EXPECT_TRUE(parsed({"print", "a", "--out", "b.pdf", "--units=metric"}).metric);
}

TEST(CommandLine, HelpAndVersionWinOverTheRest) {
  EXPECT_EQ(parsed({"--help"}).task, Task::help);
  EXPECT_EQ(parsed({"print", "-h"}).task, Task::help);
  EXPECT_EQ(parsed({"--version"}).task, Task::version);
}

TEST(CommandLine, RefusesInWords) {
  const std::vector<std::pair<std::vector<std::string>, std::string>> wrong = {
      {{"assess"}, "assess wants a plan file; --help says more"},
      {{"assess", "a", "--out", "b"}, "--out is no option of assess; --help says which there are"},
      {{"--fast"}, "--fast is no option of stayalight; --help says which there are"},
      {{"print", "a"}, "print wants --out FILE"},
      {{"print", "a", "--out"}, "--out wants a value behind it"},
      {{"print", "a", "--out="}, "--out wants a value behind it"},
      {{"print", "a", "b", "--out", "c.pdf"}, "one plan at a time: b is one too many"},
      {{"print", "a", "--out", "c.pdf", "--paper", "a5"}, "--paper a5: the paper is letter or a4"},
      {{"review", "a", "--units", "feet"}, "--units feet: the units are us or metric"},
      {{"draw", "a", "--out", "c.png", "--units", "us"},
       "--units is no option of draw; --help says which there are"},
      {{"draw", "a", "--out", "c.jpg"}, "--out c.jpg: the picture is a .png or a .svg"},
      {{"draw", "a", "--out", "c.png", "--sheets", "main"},
       "--sheets is no option of draw; --help says which there are"},
      {{"assess", "-", "-"}, "the standard input can be read only once"},
      {{"a", "b"}, "one plan at a time: b is one too many"},
  };
  for (const auto& [words, message] : wrong) {
    const auto line = parseCommandLine(words);
    ASSERT_FALSE(line.ok()) << message;
    EXPECT_EQ(render(line.refusal(), plainEnglish()), message);
  }
}

}  // namespace
}  // namespace stayalight
