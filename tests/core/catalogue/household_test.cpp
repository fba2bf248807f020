// The table the program brings along: each row can be put on a circuit, and a day of it takes what such a
// thing takes.

#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "core/catalogue/catalogue.h"
#include "core/edit/edit.h"
#include "core/use/use.h"

namespace stayalight {
namespace {

const Catalogue& household() {
  static const Catalogue catalogue = [] {
    std::ifstream file(STAYALIGHT_SOURCE_DIR "/resources/catalogue/loads.csv");
    std::stringstream text;
    text << file.rdbuf();
    return readCatalogue(text.str(), "loads.csv");
  }();
  return catalogue;
}

// Energy of a day of the month in which it takes most, as the program reckons the hours of a load.
LoadWattHours dayOf(const Load& load) {
  LoadWattHours most;
  for (const int month : {1, 4, 7, 10}) {
    LoadWattHours sum;
    for (int hour = 0; hour < 24; ++hour)
      sum += *load.running.value * hourUse(load, month, hour, false).on.likely * Hours(1.0);
    most = std::max(most, sum);
  }
  return most;
}

TEST(HouseholdLoads, AllRowsAreRead) {
  for (const Message& why : household().refused) ADD_FAILURE() << render(why, plainEnglish());
  EXPECT_GE(household().entries.size(), 40u);
  EXPECT_LE(household().entries.size(), 60u);
}

// The range stands in the table itself, with its source beside it: energy labels, water heated, hours of
// running.
TEST(HouseholdLoads, ADayTakesWhatSuchAThingTakes) {
  ASSERT_FALSE(household().entries.empty());
  for (const CatalogueEntry& entry : household().entries) {
    ASSERT_TRUE(entry.day) << entry.load.catalogueId;
    EXPECT_FALSE(entry.daySource.empty()) << entry.load.catalogueId;
    const LoadWattHours day = dayOf(loadFrom(entry));
    EXPECT_GE(day, entry.day->low) << entry.load.catalogueId << " takes " << day.count() << " Wh a day";
    EXPECT_LE(day, entry.day->high) << entry.load.catalogueId << " takes " << day.count() << " Wh a day";
    // A range that anything fits into would say nothing.
    EXPECT_LE(entry.day->high / entry.day->low, 30.0) << entry.load.catalogueId;
  }
}

TEST(HouseholdLoads, EachRowSaysWhatItIsAndWhereFrom) {
  for (const CatalogueEntry& entry : household().entries) {
    const std::string& id = entry.load.catalogueId;
    EXPECT_FALSE(entry.source.empty()) << id;
    EXPECT_FALSE(entry.words.empty()) << id;
    ASSERT_TRUE(entry.load.running.value && entry.load.running.low && entry.load.running.high) << id;
    if (entry.oldUnit) {
      EXPECT_GT(*entry.oldUnit, *entry.load.running.high) << id;
    }
    ASSERT_TRUE(entry.load.powerFactor.value) << id;
    EXPECT_EQ(entry.load.connection.is(Connection::lineToLine), entry.load.ratedVoltage > 200) << id;
    if (entry.load.start.is(StartKind::acrossTheLine)) {
      EXPECT_TRUE(entry.load.startTime.value) << id;
      EXPECT_TRUE(entry.load.startPowerFactor.value) << id;
    }
    ASSERT_TRUE(entry.load.duty.value) << id;
    EXPECT_FALSE(entry.load.calculationClass.is(LoadClass::unknown)) << id;
  }
}

// NFPA 70 (2023) Table 430.248, single-phase motors, full-load amperes at 115 and 230 V: a running motor
// takes no more watts than those amperes at its volts.
TEST(HouseholdLoads, MotorsOfGivenHorsepowerTakeWhatTheTableSays) {
  const std::pair<double, double> fullLoad[] = {
      {0.33, 7.2}, {0.5, 9.8}, {0.75, 13.8}, {1.0, 16.0}};  // at 115 V
  int checked = 0;
  for (const CatalogueEntry& entry : household().entries) {
    if (!entry.load.horsepower) continue;
    const auto row = std::find_if(std::begin(fullLoad), std::end(fullLoad), [&](const auto& each) {
      return std::abs(each.first - entry.load.horsepower->count()) < 0.005;
    });
    ASSERT_NE(row, std::end(fullLoad)) << entry.load.catalogueId;
    const double voltAmperes = row->second * 115.0;
    const double apparent = entry.load.running.value->count() / entry.load.powerFactor.value->count();
    EXPECT_LE(apparent, voltAmperes * 1.02) << entry.load.catalogueId;
    EXPECT_GE(apparent, voltAmperes * 0.8) << entry.load.catalogueId;
    ++checked;
  }
  EXPECT_GE(checked, 8);
}

TEST(HouseholdLoads, EachCanStandOnACircuit) {
  Result<Plan> plan = addCircuit(newPlan(), PanelId{1}, std::nullopt, 2, RatingAmperes(50), "All");
  ASSERT_TRUE(plan.ok());
  for (const CatalogueEntry& entry : household().entries) {
    plan = addLoad(plan.value(), CircuitId{1}, loadFrom(entry));
    ASSERT_TRUE(plan.ok()) << entry.load.catalogueId << ": " << render(plan.refusal(), plainEnglish());
  }
  EXPECT_EQ(plan.value().circuits.front()->loads.size(), household().entries.size());
}

TEST(HouseholdLoads, IsWrittenAndReadBack) {
  const Catalogue back = readCatalogue(writeCatalogue(household().entries), "again.csv");
  EXPECT_TRUE(back.refused.empty());
  EXPECT_EQ(back.entries, household().entries);
}

struct Look {
  const char* typed;
  const char* first;
};
class HouseholdSearch : public testing::TestWithParam<Look> {};
TEST_P(HouseholdSearch, FindsItFirst) {
  const auto found = search(household().entries, GetParam().typed);
  ASSERT_FALSE(found.empty()) << GetParam().typed;
  EXPECT_EQ(found.front()->load.catalogueId, GetParam().first);
}
INSTANTIATE_TEST_SUITE_P(Each, HouseholdSearch,
                         testing::Values(Look{"fridge", "refrigerator"}, Look{"well 3/4", "well_pump_3_4"},
                                         Look{"sump", "sump_pump_1_3"}, Look{"deep freeze", "freezer_chest"},
                                         Look{"wi fi", "internet"}, Look{"tv", "television"},
                                         Look{"ev", "ev_charger_120"},
                                         Look{"Geothermal", "ground_source_3"}));

}  // namespace
}  // namespace stayalight
