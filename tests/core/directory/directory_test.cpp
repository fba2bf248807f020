#include "core/directory/directory.h"

#include <gtest/gtest.h>

#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

std::string said(const Message& message) { return render(message, plainEnglish()); }

/// An entry in one line: "3+5 'Range' 50A 2P".
std::string shown(const DirectoryEntry& entry) {
  std::string out;
  for (const std::string& space : entry.spaces) out += (out.empty() ? "" : "+") + space;
  if (entry.half == Half::a) out += "A";
  if (entry.half == Half::b) out += "B";
  out += " '" + entry.name + "'";
  if (!entry.serves.empty()) out += " (" + entry.serves + ")";
  if (entry.rating) out += " " + std::to_string(entry.rating->count()) + "A";
  if (entry.poles) out += " " + std::to_string(*entry.poles) + "P";
  if (entry.use == DirectoryUse::spare) out += " spare";
  if (entry.use == DirectoryUse::empty) out += " empty";
  return out;
}
std::string shown(const DirectoryLine& line) {
  if (line.notRead) return said(*line.notRead);
  std::string out;
  for (const DirectoryEntry& entry : line.entries) out += (out.empty() ? "" : " | ") + shown(entry);
  return out;
}

struct Row {
  const char* typed;
  const char* read;
};

// The first four are the forms this program promises; the rest are forms that directories are typed in
// (common practice, no source).
TEST(ReadDirectory, linesAsPeopleTypeThem) {
  const Row rows[] = {
      {"1 Kitchen", "1 'Kitchen'"},
      {"3/5 Range 50A 2P", "3+5 'Range' 50A 2P"},
      {"2) Lights", "2 'Lights'"},
      {"7,9 dryer 30", "7+9 'dryer' 30A 2P"},
      {"1. Kitchen counter", "1 'Kitchen counter'"},
      {"1: Kitchen", "1 'Kitchen'"},
      {"1 - Kitchen", "1 'Kitchen'"},
      {"1\tKitchen", "1 'Kitchen'"},
      {"#4 Furnace 15 A", "4 'Furnace' 15A"},
      {"Space 12: Well pump 20 amp", "12 'Well pump' 20A"},
      {"ckt 8 Bath", "8 'Bath'"},
      {"2-4 Water heater", "2+4 'Water heater' 2P"},
      {"2 & 4 Water heater", "2+4 'Water heater' 2P"},
      {"2 and 4 Water heater 30amp", "2+4 'Water heater' 30A 2P"},
      {"10 Car charger 2-pole 50 A", "10 'Car charger' 50A 2P"},
      {"10 Car charger 50/2", "10 'Car charger' 50A 2P"},
      {"10 Car charger 2P50", "10 'Car charger' 50A 2P"},
      {"10 Car charger double pole 50A", "10 'Car charger' 50A 2P"},
      {"11 20A Dishwasher", "11 'Dishwasher' 20A"},
      {"1 - 20A Kitchen", "1 'Kitchen' 20A"},
      {"6 Dryer (30 A)", "6 'Dryer' 30A"},
      {"6 Dryer, 30", "6 'Dryer' 30A"},
      {"6,Dryer,30", "6 'Dryer' 30A"},
      {"37A Doorbell", "37A 'Doorbell'"},
      {"37b Chime 15A", "37B 'Chime' 15A"},
      {"01 Attic", "1 'Attic'"},
      {"14 Bedroom 2", "14 'Bedroom 2'"},  // no rating of 2 A
      {"14 3 season porch", "14 '3 season porch'"},
      {"15 240V heater", "15 '240V heater'"},
      {"16 Spare", "16 'Spare' spare"},
      {"16 spare 20A", "16 'spare' 20A spare"},
      {"17 open", "17 'open' empty"},
      {"18 -", "18 '' empty"},
      {"19", "19 '' empty"},
      {"19 20A", "19 '' 20A"},
      {"20\tKitchen\t20", "20 'Kitchen' 20A"},
      {"20\t20\tKitchen", "20 'Kitchen' 20A"},
      {"20\tKitchen\tcounter left of the sink\t20A", "20 'Kitchen' (counter left of the sink) 20A"},
      {"1\tKitchen\t2\tLights", "1 'Kitchen' | 2 'Lights'"},
      {"1\tKitchen\t20\t2\tLights\t15", "1 'Kitchen' 20A | 2 'Lights' 15A"},
      {"9 \xE2\x80\x93 Freezer", "9 'Freezer'"},
      {"", ""},
      {"   \t ", ""},
  };
  for (const Row& row : rows) {
    const std::vector<DirectoryLine> lines = readDirectory(std::string(row.typed) + "\n");
    ASSERT_EQ(lines.size(), 1u) << row.typed;
    EXPECT_EQ(lines[0].text, row.typed);
    EXPECT_EQ(shown(lines[0]), row.read) << row.typed;
  }
}

TEST(ReadDirectory, whatIsNotReadIsNamedWithTheReason) {
  const Row rows[] = {
      {"Panel A, 200 A main", "does not begin with the number of a space"},
      {"Kitchen 20A", "does not begin with the number of a space"},
      {"123 Street", "does not begin with the number of a space"},
      {"0 Nothing", "does not begin with the number of a space"},
      {"2,4,6 Motor", "more than two spaces"},
      {"3/5 Range 1P", "two spaces, but one pole"},
      {"13A/15B Heater", "a half of a space takes one pole"},
      {"13A Heater 2P", "a half of a space takes one pole"},
      {"1\tKitchen\tx\tLights of 2", "1 'Kitchen' (x, Lights of 2)"},
  };
  for (const Row& row : rows) {
    const std::vector<DirectoryLine> lines = readDirectory(row.typed);
    ASSERT_EQ(lines.size(), 1u) << row.typed;
    EXPECT_NE(shown(lines[0]).find(row.read), std::string::npos) << row.typed << ": " << shown(lines[0]);
  }
}

TEST(ReadDirectory, everyLineEndCountsAndNumbersAreThoseOfTheText) {
  const std::vector<DirectoryLine> lines = readDirectory("1 A\r\n\r\n2 B\n3 C\r4 D");
  ASSERT_EQ(lines.size(), 5u);
  EXPECT_EQ(lines[4].number, 5);
  EXPECT_EQ(shown(lines[1]), "");
  EXPECT_EQ(shown(lines[4]), "4 'D'");
}

TEST(ReadDirectory, anAmbiguousWordIsSaid) {
  const auto alone = readDirectory("20A Kitchen");
  ASSERT_TRUE(alone[0].entries[0].note);
  EXPECT_NE(said(*alone[0].entries[0].note).find("upper half of space 20"), std::string::npos);
  const auto pair = readDirectory("20A Kitchen\n20B Lights");
  EXPECT_FALSE(pair[0].entries[0].note);
  const auto bare = readDirectory("7,9 dryer 30");
  ASSERT_TRUE(bare[0].entries[0].note);
  EXPECT_EQ(said(*bare[0].entries[0].note), "30 was taken for the rating");
}

TEST(ReadRating, asTheTradeWritesIt) {
  struct Case {
    const char* text;
    int rating, poles;
  };
  for (const Case& each : {Case{"50", 50, 0}, Case{"50A", 50, 0}, Case{"50 2P", 50, 2}, Case{"2p 50", 50, 2},
                           Case{"2P50", 50, 2}, Case{"50/2", 50, 2}, Case{"2P", 0, 2}, Case{"50 amp", 50, 0},
                           Case{"20 kitchen", 0, 0}, Case{"", 0, 0}, Case{"37", 0, 0}}) {
    const auto read = readRating(each.text);
    EXPECT_EQ(read ? read->rating.value_or(0) : 0, each.rating) << each.text;
    EXPECT_EQ(read ? read->poles.value_or(0) : 0, each.poles) << each.text;
  }
}

TEST(EnterDirectory, linesBecomeBreakersAndCircuitsOfThePanel) {
  const Plan plan = newPlan();
  const PanelId main = mainPanel(plan)->id;
  const auto lines = readDirectory(
      "1 Kitchen 20A\n3/5 Range 50A\n2) Lights\n7,9 dryer 30\n11A Bell 15A\n11B Chime 15A\n13 spare\n15 "
      "open\n");
  const EnteredDirectory entered = enterDirectory(plan, main, lines);
  EXPECT_EQ(entered.added, 7);
  ASSERT_EQ(entered.plan.circuits.size(), 6u);
  ASSERT_EQ(entered.plan.breakers.size(), 7u);
  const Circuit& range = *entered.plan.circuits[1];
  const Breaker& rangeBreaker = *find(entered.plan, range.breaker);
  EXPECT_EQ(range.name, "Range");
  EXPECT_TRUE(range.voltage.is(VoltageClass::v240));
  EXPECT_EQ(rangeBreaker.poles, 2);
  EXPECT_EQ(rangeBreaker.rating.count(), 50);
  EXPECT_EQ(rangeBreaker.position(), (SpacePosition{Column::left, 2}));
  EXPECT_TRUE(rangeBreaker.ratingRead.is(Answer::yes));
  EXPECT_TRUE(find(entered.plan, entered.plan.circuits[2]->breaker)->ratingRead.is(Answer::unknown))
      << "no rating stood beside the lights";
  EXPECT_TRUE(find(entered.plan, entered.plan.circuits[5]->breaker)->half.is(Half::b));
  EXPECT_TRUE(entered.plan.breakers.back()->feeds.is(Feeds::nothing));
  EXPECT_NE(said(entered.outcomes[2].said).find("no rating given"), std::string::npos);
  EXPECT_EQ(entered.outcomes.back().done, DirectoryDone::nothingToAdd);
}

TEST(EnterDirectory, whatStandsThereStays) {
  const PanelId main = mainPanel(newPlan())->id;
  const Plan plan = enterDirectory(newPlan(), main, readDirectory("1 Kitchen 20A\n13 spare 15A")).plan;
  struct Case {
    const char* line;
    DirectoryDone done;
    const char* words;
  };
  const Case cases[] = {
      {"1 Kitchen 20A", DirectoryDone::alreadyThere, "There already"},
      {"1 Lights", DirectoryDone::refused, "Kitchen stands there"},
      {"1/3 Range", DirectoryDone::refused, "Kitchen stands there"},
      {"13 Freezer", DirectoryDone::added, "New"},
      {"13 spare", DirectoryDone::alreadyThere, "There already"},
      {"1 open", DirectoryDone::nothingToAdd, "a breaker stands there"},
      {"55 Attic", DirectoryDone::refused, "has no space 55"},
      {"1,2 Range", DirectoryDone::refused, "do not stand one above the other"},
      {"19 Range 2P", DirectoryDone::refused, "below the last row"},
      {"Attic", DirectoryDone::refused, "Not read"},
  };
  for (const Case& each : cases) {
    const EnteredDirectory entered = enterDirectory(plan, main, readDirectory(each.line));
    ASSERT_EQ(entered.outcomes.size(), 1u) << each.line;
    EXPECT_EQ(entered.outcomes[0].done, each.done) << each.line << ": " << said(entered.outcomes[0].said);
    EXPECT_NE(said(entered.outcomes[0].said).find(each.words), std::string::npos)
        << each.line << ": " << said(entered.outcomes[0].said);
    EXPECT_EQ(entered.plan == plan, each.done != DirectoryDone::added) << each.line;
  }
  // A circuit goes onto the spare breaker that is there, with its rating.
  const Plan used = enterDirectory(plan, main, readDirectory("13 Freezer")).plan;
  EXPECT_EQ(used.breakers.size(), plan.breakers.size());
  EXPECT_EQ(find(used, used.circuits.back()->breaker)->rating.count(), 15);
}

}  // namespace
}  // namespace stayalight
