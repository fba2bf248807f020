// What a hostile or broken file must end in: one clear message with file and place, never a crash.

#include <gtest/gtest.h>

#include "core/file/file.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

std::string messageOf(std::string_view text, const ReadLimits& limits = {}) {
  const auto read = readPlan(text, "house.stayalight", limits);
  return read ? "read" : render(read.refusal(), plainEnglish());
}

/// A plan with `inside` after the header.
std::string plan(const std::string& inside) {
  return "{\"stayalight\": {\"format\": 1, \"level\": 1},\n" + inside + "\n}\n";
}

struct BadInput {
  const char* what;
  std::string text;
  std::string message;
};

TEST(BadInput, EndsInItsMessage) {
  const std::string panel = "{\"id\": 1, \"name\": \"Main\", \"spaces\": 20}";
  const std::string inPanel = "\"panels\": [" + panel + "],\n\"breakers\": [\n";
  const std::vector<BadInput> inputs = {
      {"nothing", "", "house.stayalight is empty"},
      {"white space", " \n\t", "house.stayalight is empty"},
      {"no JSON", "Panel schedule\n1 Kitchen\n",
       "house.stayalight is not a plan: line 1, column 1: no JSON is written so: Panel"},
      {"cut off", "{\"stayalight\": {\"format\": 1},\n\"panels\": [",
       "house.stayalight is not a plan: line 2, column 12: the text ends too early, as if the file were cut "
       "off"},
      {"cut off in a text", plan("").substr(0, 14),
       "house.stayalight is not a plan: line 1, column 15: the text ends too early, as if the file were cut "
       "off"},
      {"something behind the end", plan("\"site\": {}") + "{}",
       "house.stayalight is not a plan: line 4, column 1: no JSON is written so: {"},
      {"a NUL behind the end", plan("\"site\": {}") + std::string(1, '\0'),
       "house.stayalight is no plan: it is not UTF-8 text (line 4, byte 1)"},
      {"a comment", "// plan\n{}",
       "house.stayalight is not a plan: line 1, column 1: no JSON is written so: /"},
      {"a comma too many", plan("\"panels\": [],"),
       "house.stayalight is not a plan: line 3, column 1: no JSON is written so: }"},
      {"a picture", "\x89PNG\r\n\x1a\n",
       "house.stayalight is no plan: it is not UTF-8 text (line 1, byte 1)"},
      {"Latin-1", plan("\"site\": {\"name\": \"M\xFCller\"}"),
       "house.stayalight is no plan: it is not UTF-8 text (line 2, byte 20)"},
      {"UTF-8 longer than need be", "{\"a\xC0\xAF\": 1}",
       "house.stayalight is no plan: it is not UTF-8 text (line 1, byte 4)"},
      {"a list", "[]",
       "house.stayalight is JSON, but no Stayalight plan: it does not begin with \"stayalight\" and a "
       "format"},
      {"a number", "7",
       "house.stayalight is JSON, but no Stayalight plan: it does not begin with \"stayalight\" and a "
       "format"},
      {"other JSON", "{\"panels\": []}",
       "house.stayalight is JSON, but no Stayalight plan: it does not begin with \"stayalight\" and a "
       "format"},
      {"a header of another type", "{\"stayalight\": 1}",
       "house.stayalight is JSON, but no Stayalight plan: it does not begin with \"stayalight\" and a "
       "format"},
      {"format 2", "{\"stayalight\": {\"format\": 2, \"level\": 1}}",
       "house.stayalight is written in format 2 of plans; this program reads format 1"},
      {"format as a text", "{\"stayalight\": {\"format\": \"1\"}}",
       "house.stayalight: line 1, /stayalight/format: wants a whole number, but has a text"},
      {"level 0", "{\"stayalight\": {\"format\": 1, \"level\": 0}}",
       "house.stayalight: line 1, /stayalight/level: level is 0, but it must lie between 1 and 1000000"},
      {"a list that is an object", plan("\"panels\": {}"),
       "house.stayalight: line 2, /panels: wants a list, but has an object"},
      {"a record that is a list", plan("\"site\": []"),
       "house.stayalight: line 2, /site: wants an object, but has a list"},
      {"a record that is nothing", plan("\"battery\": null"),
       "house.stayalight: line 2, /battery: wants an object, but has nothing (null)"},
      {"a text that is a number", plan("\"site\": {\"name\": 5}"),
       "house.stayalight: line 2, /site/name: wants a text, but has a whole number"},
      {"a whole number with a fraction", plan("\"scenario\": {\n\"month\": 1.5}"),
       "house.stayalight: line 3, /scenario/month: wants a whole number, but has a number"},
      {"a fact that is a number", plan("\"battery\": {\"health\": 0.9}"),
       "house.stayalight: line 2, /battery/health: wants an object, but has a number"},
      {"a fact's value that is a text", plan("\"battery\": {\"health\": {\"value\": \"good\"}}"),
       "house.stayalight: line 2, /battery/health/value: wants a number, but has a text"},
      {"a grade that is a number", plan("\"battery\": {\"health\": {\"grade\": 4}}"),
       "house.stayalight: line 2, /battery/health/grade: wants a text, but has a whole number"},
      {"NaN", plan("\"scenario\": {\"start_charge\": NaN}"),
       "house.stayalight is not a plan: line 2, column 30: no JSON is written so: NaN"},
      {"1e308", plan("\"scenario\": {\"start_charge\": 1e308}"),
       "house.stayalight: line 2, /scenario/start_charge: start_charge is "
       "1e+308, but it must lie between 0 and 1"},
      {"1e999", plan("\"scenario\": {\"start_charge\": 1e999}"),
       "house.stayalight is not a plan: line 2, column 34: the number 1e999 is too large"},
      {"a whole number over 64 bits", plan("\"scenario\": {\"month\": 18446744073709551616}"),
       "house.stayalight: line 2: the whole number 18446744073709551616 does not fit in 64 bits"},
      {"a whole number just over 63 bits", plan("\"scenario\": {\"month\": 9223372036854775808}"),
       "house.stayalight: line 2: the whole number 9223372036854775808 does not fit in 64 bits"},
      {"a month out of range", plan("\"scenario\": {\n\"month\": 13\n}"),
       "house.stayalight: line 3, /scenario/month: month is 13, but it must lie between 1 and 12"},
      {"a negative rating", plan(inPanel + "{\"id\": 1, \"panel\": 1, \"row\": 1,\n\"rating_A\": -20}]"),
       "house.stayalight: line 5, /breakers/0/rating_A: rating_A is -20, but it must lie between 5 and 400"},
      {"low above high", plan("\"battery\": {\"health\": {\"value\": 0.9, \"low\": 0.95}}"),
       "house.stayalight: line 2, /battery/health: health: low 0.950, likely 0.900 and high 0.900 must stand "
       "in this order"},
      {"no conductor size", plan("\"feeder_runs\": [{\"id\": 1, \"fixed_conductor\": \"7\"}]"),
       "house.stayalight: line 2, /feeder_runs/0/fixed_conductor: fixed_conductor is \"7\", which is no "
       "conductor size from "
       "14 AWG to 500 kcmil"},
      {"duplicate keys", plan("\"site\": {\"name\": \"a\",\n\"name\": \"b\"}"),
       "house.stayalight: line 3: the key \"name\" stands twice, first in line 2"},
      {"duplicate keys, one escaped", plan("\"site\": {\"name\": \"a\", \"n\\u0061me\": \"b\"}"),
       "house.stayalight: line 2: the key \"name\" stands twice, first in line 2"},
      {"duplicate unknown keys", plan("\"later\": {\"x\": 1, \"x\": 2}"),
       "house.stayalight: line 2: the key \"x\" stands twice, first in line 2"},
      {"an id missing", plan("\"panels\": [{\"name\": \"Main\"}]"),
       "house.stayalight: line 2, /panels/0: the id is missing"},
      {"an id of 0", plan("\"panels\": [{\"id\": 0}]"),
       "house.stayalight: line 2, /panels/0/id: id is 0, but it must lie between 1 and 1000000000"},
      {"an id below 0", plan("\"panels\": [{\"id\": -1}]"),
       "house.stayalight: line 2, /panels/0/id: id is -1, but it must lie between 1 and 1000000000"},
      {"duplicate ids", plan("\"panels\": [" + panel + ",\n" + panel + "]"),
       "house.stayalight: line 3, /panels/1/id: panel 1 stands twice, first in line 2"},
      {"duplicate load ids in two circuits",
       plan("\"circuits\": [{\"id\": 1, \"loads\": [{\"id\": 4}]},\n{\"id\": 2, \"loads\": [{\"id\": 4}]}]"),
       "house.stayalight: line 3, /circuits/1/loads/0/id: load 4 stands twice, first in line 2"},
      {"a breaker of a panel that is not there", plan("\"breakers\": [{\"id\": 1, \"panel\": 3}]"),
       "house.stayalight: line 2, /breakers/0/panel: there is no panel 3"},
      {"a breaker of no panel", plan("\"breakers\": [{\"id\": 1}]"),
       "house.stayalight: breaker 1 stands in no panel"},
      {"a circuit on a breaker that is not there", plan("\"circuits\": [{\"id\": 1,\n\"planned\": 9}]"),
       "house.stayalight: line 3, /circuits/0/planned: there is no breaker 9"},
      {"overlapping spaces",
       plan(inPanel +
            "{\"id\": 1, \"panel\": 1, \"row\": 2},\n{\"id\": 2, \"panel\": 1, \"row\": 1, \"poles\": 2}]"),
       "house.stayalight: before the work breaker 1 (space 3) and breaker 2 (space 1, 3) of Main take the "
       "same room"},
      {"overlapping as planned only",
       plan(inPanel + "{\"id\": 1, \"panel\": 1, \"row\": 2},\n{\"id\": 2, \"panel\": 1, \"row\": 2, "
                      "\"stage\": \"new\"}]"),
       "house.stayalight: as planned breaker 1 (space 3) and breaker 2 (space 3) of Main take the same room"},
      {"a whole breaker on a tandem's half",
       plan(inPanel + "{\"id\": 1, \"panel\": 1, \"half\": \"b\"},\n{\"id\": 2, \"panel\": 1}]"),
       "house.stayalight: before the work breaker 1 (space 1B) and breaker 2 (space 1) of Main take the same "
       "room"},
      {"a two-pole in the last row",
       plan(inPanel + "{\"id\": 5, \"panel\": 1, \"column\": \"right\", \"row\": 10, \"poles\": 2}]"),
       "house.stayalight: breaker 5 takes the right column's row 11, and Main with its 20 spaces has no such "
       "space"},
      {"a row below the panel", plan(inPanel + "{\"id\": 5, \"panel\": 1, \"row\": 11}]"),
       "house.stayalight: breaker 5 takes the left column's row 11, and Main with its 20 spaces has no such "
       "space"},
      {"a panel that feeds itself", plan("\"panels\": [{\"id\": 1, \"name\": \"Main\", \"fed_from\": 1}]"),
       "house.stayalight: Main is fed from itself, round other panels or straight"},
      {"panels that feed each other",
       plan("\"panels\": [{\"id\": 1, \"name\": \"A\", \"fed_from\": 2}, {\"id\": 2, \"name\": \"B\", "
            "\"fed_from\": 1}]"),
       "house.stayalight: A is fed from itself, round other panels or straight"},
  };
  for (const BadInput& input : inputs) {
    EXPECT_EQ(messageOf(input.text), input.message) << input.what;
  }
}

TEST(BadInput, EachLimitHoldsWhileReading) {
  std::string deep = "{\"stayalight\": {\"format\": 1}, \"later\": ";
  EXPECT_EQ(messageOf(deep + std::string(100000, '[')),
            "house.stayalight: line 1: nested more than 64 deep, which no plan is");
  // The root is the first of 64.
  EXPECT_EQ(messageOf(deep + std::string(63, '[') + std::string(63, ']') + "}"), "read");
  EXPECT_EQ(messageOf(deep + std::string(64, '[') + std::string(64, ']') + "}"),
            "house.stayalight: line 1: nested more than 64 deep, which no plan is");

  ReadLimits limits;
  limits.values = 100;
  std::string many = deep + "[\n";
  for (int i = 0; i < 200; ++i) many += "0,\n";
  EXPECT_EQ(messageOf(many + "0]}", limits),
            "house.stayalight: line 98: more than 100 values, which no plan holds");

  std::string circuits = "{\"stayalight\": {\"format\": 1}, \"circuits\": [\n";
  for (int i = 1; i <= 2001; ++i) circuits += (i > 1 ? ",\n" : "") + ("{\"id\": " + std::to_string(i)) + "}";
  EXPECT_EQ(messageOf(circuits + "]}"),
            "house.stayalight: line 2002: more than 2000 circuits, which no plan holds");
  EXPECT_EQ(messageOf(circuits.substr(0, circuits.rfind(',')) + "]}"), "read");

  const std::string large(100u << 20, ' ');
  EXPECT_EQ(messageOf(large), "house.stayalight is 104857600 bytes long; a plan file has at most 33554432");
}

TEST(BadInput, ATextThatIsTooLongIsRefusedWithItsLength) {
  const std::string text = plan("\"site\": {\"notes\": \"" + std::string(kLongestText + 1, 'x') + "\"}");
  EXPECT_EQ(messageOf(text),
            "house.stayalight: line 2, /site/notes: notes is 4001 bytes long, but at most 4000 are kept");
  EXPECT_EQ(messageOf(plan("\"site\": {\"notes\": \"" + std::string(kLongestText, 'x') + "\"}")), "read");
}

TEST(BadInput, AMessageStaysOnOneLineWhateverTheFileSays) {
  const std::string long_key = "a\\nb\\u0007" + std::string(500, 'k');
  const std::string message = messageOf(plan("\"x\": {\"" + long_key + "\": 1, \"" + long_key + "\": 2}"));
  EXPECT_EQ(message.find('\n'), std::string::npos);
  EXPECT_EQ(message, "house.stayalight: line 2: the key \"a?b?" + std::string(56, 'k') +
                         "...\" stands twice, first in line 2");
}

/// Every cut of a whole plan is refused, and none crashes.
TEST(BadInput, AFileCutOffAnywhereIsRefused) {
  const std::string whole = writePlan(example::exampleHouseMoved());
  const std::size_t end = whole.rfind('}');
  for (std::size_t length = 0; length <= end; length += 37) {
    EXPECT_NE(messageOf(whole.substr(0, length)), "read") << length;
  }
  EXPECT_EQ(messageOf(whole.substr(0, end + 1)), "read");
}

}  // namespace
}  // namespace stayalight
