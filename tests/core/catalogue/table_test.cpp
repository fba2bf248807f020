// The table as text and back, what wrong rows say, search, and the load that is made.

#include <gtest/gtest.h>

#include "core/catalogue/catalogue.h"
#include "core/edit/edit.h"

namespace stayalight {
namespace {

Catalogue read(const std::string& text) { return readCatalogue(text, "own.csv"); }
std::string said(const Catalogue& catalogue) {
  std::string all;
  for (const Message& why : catalogue.refused) all += render(why, plainEnglish()) + "\n";
  return all;
}
std::vector<std::string> ids(const std::vector<const CatalogueEntry*>& entries) {
  std::vector<std::string> all;
  for (const CatalogueEntry* entry : entries) all.push_back(entry->load.catalogueId);
  return all;
}

TEST(CatalogueTable, ReadsEachKindOfColumn) {
  const Catalogue catalogue = read(
      "\xEF\xBB\xBF# a remark, with a comma\r\n"
      "id,name,words,connection,rated_V,running_W low,running_W,running_W "
      "high,old_unit_W,kind,start,automatic,windows,"
      "restart_delay_s,day_kWh low,day_kWh high,day_source,source\r\n"
      "\r\n"
      "pump,\"Pump, \"\"deep\"\"\",Water "
      "well,line_to_line,230,700,850,1000,1500,constant_power,across_the_line,no,"
      "winter 6-23 0.5; all 0-24 1/0.25/3,30,0.2,1.8,\"a line\nand another\",somewhere\r\n");
  ASSERT_EQ(said(catalogue), "");
  ASSERT_EQ(catalogue.entries.size(), 1u);
  const CatalogueEntry& entry = catalogue.entries.front();
  EXPECT_EQ(entry.load.catalogueId, "pump");
  EXPECT_EQ(entry.load.name, "Pump, \"deep\"");
  EXPECT_EQ(entry.words, (std::vector<std::string>{"water", "well"}));
  EXPECT_TRUE(entry.load.connection.is(Connection::lineToLine));
  EXPECT_EQ(entry.load.ratedVoltage, 230);
  EXPECT_EQ(entry.load.running.low, Watts(700));
  EXPECT_EQ(entry.load.running.value, Watts(850));
  EXPECT_EQ(entry.load.running.high, Watts(1000));
  EXPECT_EQ(entry.oldUnit, Watts(1500));
  EXPECT_TRUE(entry.load.start.is(StartKind::acrossTheLine));
  EXPECT_FALSE(entry.load.automatic);
  EXPECT_EQ(entry.load.restartDelay, Seconds(30));
  ASSERT_EQ(entry.load.windows.size(), 2u);
  EXPECT_TRUE(entry.load.windows[0].season.is(Season::winter));
  EXPECT_EQ(entry.load.windows[0].from.hour(), 6);
  EXPECT_EQ(entry.load.windows[0].to.hour(), 23);
  EXPECT_EQ(entry.load.windows[0].share, Fraction(0.5));
  EXPECT_EQ(entry.load.windows[1].duty, Fraction(0.25));
  EXPECT_EQ(entry.load.windows[1].startsPerHour, PerHour(3));
  EXPECT_EQ(entry.load.windows[1].from, entry.load.windows[1].to);
  EXPECT_EQ(entry.day, (DayEnergy{LoadWattHours(200), LoadWattHours(1800)}));
  EXPECT_EQ(entry.daySource, "a line\nand another");
  EXPECT_EQ(entry.source, "somewhere");
}

struct Wrong {
  const char* why;
  std::string heading, row;
  std::vector<std::string> names;  ///< what the message must name: line, column, value, expected
};

class WrongRow : public testing::TestWithParam<Wrong> {};

TEST_P(WrongRow, IsNamedAndTheOthersStay) {
  const auto& [why, heading, row, names] = GetParam();
  const Catalogue catalogue = read(heading + "\ngood,Good lamp,10" + "\n" + row + "\nlast,Last lamp,20\n");
  ASSERT_EQ(catalogue.refused.size(), 1u) << said(catalogue);
  const std::string text = said(catalogue);
  for (const std::string& name : names)
    EXPECT_NE(text.find(name), std::string::npos) << name << " in: " << text;
  EXPECT_NE(text.find("own.csv"), std::string::npos) << text;
  ASSERT_EQ(catalogue.entries.size(), 2u) << why;
  EXPECT_EQ(catalogue.entries.back().load.catalogueId, "last");
}

const std::string kPlain = "id,name,running_W";
INSTANTIATE_TEST_SUITE_P(
    Each, WrongRow,
    testing::Values(
        Wrong{"no number", kPlain, "bad,Bad lamp,many", {"line 3", "running_W", "\"many\"", "number"}},
        Wrong{"a comma as decimal mark",
              kPlain,
              "bad,Bad lamp,\"1,5\"",
              {"line 3", "running_W", "\"1,5\"", "point"}},
        Wrong{"not finite", kPlain, "bad,Bad lamp,inf", {"line 3", "running_W", "\"inf\"", "number"}},
        Wrong{"out of range", kPlain, "bad,Bad lamp,-5", {"line 3", "running_W", "\"-5\""}},
        Wrong{"no power", kPlain, "bad,Bad lamp,", {"line 3", "running_W", "Watts or amperes"}},
        Wrong{"no name", kPlain, "bad,,10", {"line 3", "\"name\"", "empty"}},
        Wrong{"no id", kPlain, ",Bad lamp,10", {"line 3", "\"id\"", "empty"}},
        Wrong{"an id twice", kPlain, "good,Bad lamp,10", {"line 3", "\"id\"", "\"good\"", "no row before"}},
        Wrong{"too many cells", kPlain, "bad,Bad lamp,10,20,30", {"line 3", "5 cells", "3 columns"}},
        Wrong{"a word not known",
              kPlain + ",kind",
              "bad,Bad lamp,10,magic",
              {"line 3", "\"kind\"", "\"magic\"", "constant_power, resistance"}},
        Wrong{"neither yes nor no",
              kPlain + ",automatic",
              "bad,Bad lamp,10,maybe",
              {"line 3", "\"automatic\"", "\"maybe\"", "yes"}},
        Wrong{"no whole number",
              kPlain + ",rated_V",
              "bad,Bad lamp,10,120.5",
              {"line 3", "\"rated_V\"", "\"120.5\"", "whole number"}},
        Wrong{"low above likely",
              kPlain + ",running_W low",
              "bad,Bad lamp,10,20",
              {"line 3", "running_W", "order"}},
        Wrong{"high below likely",
              kPlain + ",running_W high",
              "bad,Bad lamp,10,5",
              {"line 3", "running_W", "order"}},
        Wrong{"one end of a day",
              kPlain + ",day_kWh low,day_kWh high",
              "bad,Bad lamp,10,1,",
              {"line 3", "day_kWh high", "together"}},
        Wrong{"a day upside down",
              kPlain + ",day_kWh low,day_kWh high",
              "bad,Bad lamp,10,2,1",
              {"line 3", "day_kWh high", "\"1\"", "order"}},
        Wrong{"no season",
              kPlain + ",windows",
              "bad,Bad lamp,10,monsoon 6-8 1",
              {"line 3", "windows", "monsoon", "winter"}},
        Wrong{"hours past midnight",
              kPlain + ",windows",
              "bad,Bad lamp,10,all 6-25 1",
              {"line 3", "windows", "6-25"}},
        Wrong{"share above one",
              kPlain + ",windows",
              "bad,Bad lamp,10,all 6-8 2",
              {"line 3", "windows", "all 6-8 2"}},
        Wrong{"no share", kPlain + ",windows", "bad,Bad lamp,10,all 6-8", {"line 3", "windows", "all 6-8"}}),
    [](const auto& test) {
      std::string name;
      for (const char c : std::string(test.param.why)) name += c == ' ' ? '_' : c;
      return name;
    });

TEST(CatalogueTable, AnOpenQuotationIsNamedWithItsLine) {
  const Catalogue catalogue = read("id,name,running_W\ngood,Good lamp,10\nbad,\"Bad lamp,10\nnext,Next,20\n");
  EXPECT_NE(said(catalogue).find('3'), std::string::npos) << said(catalogue);
  EXPECT_TRUE(catalogue.entries.empty()) << "nobody knows where the rows end";
}

// What spreadsheets write where the comma is the decimal mark.
TEST(CatalogueTable, OtherSeparatorsAreRead) {
  for (const char* text :
       {"id;name;running_W\nlamp;Lamp, small;10\n", "id\tname\trunning_W\nlamp\tLamp, small\t10\n"}) {
    const Catalogue catalogue = read(text);
    ASSERT_EQ(catalogue.entries.size(), 1u) << said(catalogue);
    EXPECT_EQ(catalogue.entries[0].load.name, "Lamp, small");
  }
}

TEST(CatalogueTable, NamesColumnsItDoesNotKnow) {
  const Catalogue catalogue = read("id,name,runing_W,running_W,running_W\nlamp,Lamp,9,10,11\n");
  EXPECT_EQ(catalogue.refused.size(), 2u) << said(catalogue);
  EXPECT_NE(said(catalogue).find("runing_W"), std::string::npos);
  ASSERT_EQ(catalogue.entries.size(), 1u);
  EXPECT_EQ(catalogue.entries[0].load.running.value, Watts(10));
}

TEST(CatalogueTable, WithoutAHeadingSaysSo) {
  EXPECT_NE(said(read("")).find("own.csv is empty"), std::string::npos);
  EXPECT_NE(said(read("name,running_W\nLamp,10\n")).find("\"id\" is missing"), std::string::npos);
}

TEST(CatalogueTable, RefusesATableNobodyWrote) {
  const Catalogue catalogue = read("id,name,running_W\n" + std::string(9u << 20, 'x'));
  EXPECT_TRUE(catalogue.entries.empty());
  EXPECT_EQ(catalogue.refused.size(), 1u);
}

CatalogueEntry named(const std::string& id, const std::string& name, std::vector<std::string> words) {
  CatalogueEntry entry;
  entry.load.catalogueId = id;
  entry.load.name = name;
  entry.load.running.value = Watts(100);
  entry.words = std::move(words);
  return entry;
}

struct Typed {
  std::string typed;
  std::vector<std::string> found;
};
class Search : public testing::TestWithParam<Typed> {};

TEST_P(Search, Finds) {
  const std::vector<CatalogueEntry> entries = {
      named("sump", "Sump pump, 1/3 hp", {"basement", "water"}),
      named("heat", "Heat pump, 3 ton", {"cooling"}),
      named("pump", "Pump for the pool", {"swimming", "water"}),
      named("fridge", "Refrigerator", {"icebox", "kitchen"}),
  };
  EXPECT_EQ(ids(search(entries, GetParam().typed)), GetParam().found);
}

INSTANTIATE_TEST_SUITE_P(
    Each, Search,
    testing::Values(Typed{"", {"sump", "heat", "pump", "fridge"}},
                    Typed{"  ", {"sump", "heat", "pump", "fridge"}},
                    Typed{"pump", {"pump", "sump", "heat"}},  // whose name begins so comes first
                    Typed{"PUM", {"pump", "sump", "heat"}},
                    Typed{"ump", {}},  // the beginning of a word, not its middle
                    Typed{"water", {"sump", "pump"}}, Typed{"pump water", {"sump", "pump"}},
                    Typed{"wat pum", {"sump", "pump"}}, Typed{"1/3", {"sump"}}, Typed{"ice", {"fridge"}},
                    Typed{"pump, sump", {"sump"}}, Typed{"pump kitchen", {}}));

TEST(CatalogueLoad, IsTypicalWithTheRowsEnds) {
  const Catalogue catalogue = read(
      "id,name,running_W low,running_W,running_W high,power_factor,locked_rotor_A,start\n"
      "freezer,Freezer,80,110,250,0.85,11,across_the_line\n");
  ASSERT_EQ(catalogue.entries.size(), 1u) << said(catalogue);
  const Load load = loadFrom(catalogue.entries.front());
  EXPECT_EQ(load.catalogueId, "freezer");
  EXPECT_FALSE(load.id.valid());
  EXPECT_EQ(load.running.grade, Grade::typical);
  EXPECT_EQ(load.running.low, Watts(80));
  EXPECT_EQ(load.running.high, Watts(250));
  EXPECT_EQ(load.powerFactor.grade, Grade::typical);
  EXPECT_EQ(load.lockedRotor.grade, Grade::typical);
  EXPECT_EQ(load.duty.grade, Grade::unknown);  // the row says nothing of it

  // A measured value later leaves the trace of where the load came from.
  const Result<Plan> circuit =
      addCircuit(newPlan(), PanelId{1}, std::nullopt, 1, RatingAmperes(20), "Freezer");
  ASSERT_TRUE(circuit.ok());
  const Result<Plan> added = addLoad(circuit.value(), CircuitId{1}, load);
  ASSERT_TRUE(added.ok());
  FactValue metered;
  metered.value = 96.0;
  metered.grade = Grade::measured;
  const Result<Plan> measured = setField(added.value(), {RecordKind::load, 1}, "running_W", metered);
  ASSERT_TRUE(measured.ok());
  const Load& after = measured.value().circuits.front()->loads.front();
  EXPECT_EQ(after.running.value, Watts(96));
  EXPECT_EQ(after.catalogueId, "freezer");
}

TEST(CatalogueLoad, KeptInAnOwnListComesBack) {
  Load load;
  load.id = LoadId{7};
  load.name = "Well pump, \"old\"";
  load.connection = Connection::lineToLine;
  load.ratedVoltage = 230;
  load.pole = 2;
  load.running.value = Watts(880);
  load.running.grade = Grade::measured;
  load.running.who = "owner";
  load.running.how = "clamp meter";
  load.powerFactor.value = Fraction(0.76);
  load.lockedRotor.value = AcAmperes(29.4);
  load.lockedRotor.high = AcAmperes(35);
  load.duty.value = Fraction(0.04);
  load.start = StartKind::acrossTheLine;
  load.startClass = StartClass::wellPump;
  load.horsepower = Horsepower(0.5);
  load.restartDelay = Seconds(5);
  load.medical = true;
  load.meantToRun = Answer::yes;
  load.notes = "line one\nline two";
  UseWindow window;
  window.season = Season::winter;
  window.from = TimeOfDay(6 * 60 + 30);
  window.to = TimeOfDay(22 * 60);
  window.share = Fraction(0.7);
  window.startsPerHour = PerHour(2);
  load.windows = {window};

  const CatalogueEntry kept = entryFrom(load, {});
  EXPECT_EQ(kept.load.catalogueId, "own_well_pump_\"old\"");
  const std::vector<CatalogueEntry> list{kept, entryFrom(load, std::span(&kept, 1))};
  EXPECT_EQ(list[1].load.catalogueId, "own_well_pump_\"old\"_2");
  const Catalogue back = read(writeCatalogue(list));
  EXPECT_EQ(said(back), "");
  EXPECT_EQ(back.entries, list);

  const Load again = loadFrom(back.entries.front());
  EXPECT_EQ(again.running.value, Watts(880));
  EXPECT_EQ(again.running.grade, Grade::typical);  // measured on that pump, not on the next one
  EXPECT_EQ(again.running.who, "");
  EXPECT_EQ(again.lockedRotor.high, AcAmperes(35));
  EXPECT_EQ(again.pole, 1);
  EXPECT_TRUE(again.meantToRun.is(Answer::unknown));
  EXPECT_EQ(again.windows, load.windows);
  EXPECT_EQ(again.notes, load.notes);
  EXPECT_TRUE(again.medical);
}

}  // namespace
}  // namespace stayalight
