// No section of a rule is without effect: each one, put in by the tables of the circumstances, comes out in
// the report of some plan. So every rule of the table is cited where a person reads it, and no room reads the
// published sections behind the circumstances' back. Whether the sections are right is asked in
// tests/core/code.

#include <gtest/gtest.h>

#include <cstdio>
#include <deque>
#include <map>

#include "core/code/citations.h"
#include "core/report/report.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/review/rule_cases.h"
#include "tests/core/wiring/feeder_plans.h"

namespace stayalight {
namespace {

/// Sections that stand nowhere else: "[feeder.device 2020]".
class MarkedTables {
 public:
  MarkedTables() : tables_(publishedTables()) {
    for (const CitationRow& row : publishedTables().citations) {
      rows_.push_back(row);
      for (const Edition edition : kEditions) {
        std::string_view& section = rows_.back().sections[index(edition)];
        if (section.empty() || section == kNotInEdition) continue;
        marks_.push_back("[" + std::string(row.rule) + " " + std::string(name(edition)) + "]");
        section = marks_.back();
      }
    }
    tables_.citations = rows_;
  }
  MarkedTables(const MarkedTables&) = delete;
  MarkedTables& operator=(const MarkedTables&) = delete;
  [[nodiscard]] const Tables& tables() const { return tables_; }
  [[nodiscard]] const std::deque<std::string>& marks() const { return marks_; }

 private:
  std::vector<CitationRow> rows_;
  std::deque<std::string> marks_;
  Tables tables_;
};

class Sections : public Language {
 public:
  Sections(Edition edition, const Tables& tables) : edition_(edition), tables_(tables) {}
  [[nodiscard]] std::string citation(RuleId rule) const override {
    return std::string(sectionOf(rule, edition_, tables_).value_or(""));
  }

 private:
  Edition edition_;
  const Tables& tables_;
};

/// Every kind of line that a load calculation can have.
std::vector<Plan> loads() {
  const auto as = [](const char* circuit, LoadClass loadClass, double nameplate) {
    return [=](Plan& plan) {
      calculated::load(plan, circuit).calculationClass = loadClass;
      calculated::load(plan, circuit).nameplate = VoltAmperes(nameplate);
    };
  };
  std::vector<Plan> all;
  const auto with = [&](std::initializer_list<std::function<void(Plan&)>> changes) {
    Plan plan = calculated::house();
    plan.site.edit().serviceRating = RatingAmperes(200);
    for (const auto& change : changes) change(plan);
    all.push_back(std::move(plan));
  };
  with({as("Water heater", LoadClass::dryer, 5400), as("Freezer", LoadClass::vehicleCharger, 7200)});
  with({as("Furnace", LoadClass::spaceHeating, 9000), as("Well pump", LoadClass::airConditioning, 4200)});
  with({as("Water heater", LoadClass::appliance, 4500), as("Freezer", LoadClass::appliance, 1200),
        as("Furnace", LoadClass::appliance, 900), as("Refrigerator", LoadClass::appliance, 800)});
  const auto start = [](const std::function<void(Load&)>& change) {
    return [=](Plan& plan) {
      Load& load = calculated::load(plan, "Well pump");
      load.start = StartKind::acrossTheLine;
      load.lockedRotor = {};
      load.horsepower = Horsepower(1.0);
      change(load);
    };
  };
  with({start([](Load&) {})});
  with({start([](Load& load) { load.codeLetter = "J"; })});
  with({[](Plan& plan) {
    plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
    plan.transfer.edit().managedLimit = VoltAmperes(5000);
    plan.transfer.edit().capacityPath = CapacityPath::managed;
  }});
  return all;
}

/// Solar at the far end of the bus, a box of the table, a cable that runs on, another building, a generator,
/// a wye.
std::vector<Plan> rooms() {
  std::vector<Plan> all;
  Plan solar = feeder::manualSwitch();
  example::editPanel(solar, example::kMain).busRating = RatingAmperes(200);
  example::editPanel(solar, example::kMain).mainBreaker = RatingAmperes(200);
  const BreakerId source =
      example::addBreaker(solar, example::kMain, {Column::left, 10}, 2, 20, Feeds::solar);
  example::editBreaker(solar, source).sourceCurrent = AcAmperes(16);
  all.push_back(solar);
  Plan boxed = soundPlanOfTheCases();
  SpliceBox box;
  box.id = {1};
  box.kind = BoxKind::square4Deep;
  boxed.spliceBoxes.emplace_back(box);
  Circuit& joined = example::editCircuit(boxed, example::circuitNamed(boxed, "Office"));
  joined.splice = Splice::inBox;
  joined.spliceBox = box.id;
  Circuit& cable = example::editCircuit(boxed, example::circuitNamed(boxed, "Lights"));
  cable.splice = Splice::none;
  cable.cableWidth = Length::inches(0.45);
  all.push_back(boxed);
  Plan cooled = soundPlanOfTheCases();
  // 18 A on 14 AWG of 15 A, on the breaker that its label allows.
  const CircuitId condenser = example::circuitNamed(cooled, "Well pump");
  example::editCircuit(cooled, condenser).conductor = ConductorSize::awg14;
  Load& compressor = example::editCircuit(cooled, condenser).loads.front();
  compressor.calculationClass = LoadClass::airConditioning;
  compressor.nameplate = VoltAmperes(4320);
  compressor.maximumBreaker = RatingAmperes(30);
  example::editBreaker(cooled, find(cooled, condenser)->planned).rating = RatingAmperes(30);
  all.push_back(cooled);
  Plan apart = soundPlanOfTheCases();
  example::editPanel(apart, example::kBackup).separateBuilding = true;
  const PanelId garage = example::addPanel(apart, PanelRole::subpanel, "Garage", 8);
  example::editPanel(apart, garage).separateBuilding = true;
  example::editPanel(apart, garage).fedFrom = example::kMain;
  example::addCircuit(apart, garage, {Column::left, 1}, 1, 15, "Garage lights");
  std::erase_if(apart.breakers, [](const auto& breaker) { return breaker->feeds.is(Feeds::surgeDevice); });
  all.push_back(apart);
  Plan generator = feeder::manualSwitch();
  generator.generator.edit().comesIn = GeneratorPoint::transfer;
  generator.generator.edit().ratedCurrent = AcAmperes(30);
  all.push_back(generator);
  Plan wye = soundPlanOfTheCases();
  wye.site.edit().service = ServiceSystem::wye120_208;
  all.push_back(wye);
  return all;
}

struct Asked {
  Plan plan;
  bool record = false;  ///< its steps are asked for, not its findings alone
};
std::vector<Asked> plans() {
  std::vector<Asked> all{
      {feeder::manualSwitch(), true}, {feeder::passThrough(), true}, {soundPlanOfTheCases(), true}};
  for (const auto& more : {loads(), rooms()}) {
    for (const Plan& plan : more) all.push_back({plan, true});
  }
  for (const RuleCase& one : ruleCases()) {
    all.push_back({soundPlanOfTheCases(), false});
    one.spoil(all.back().plan);
  }
  return all;
}

TEST(CitationReach, EachSectionHandedInIsReadInSomeReport) {
  const MarkedTables marked;
  std::map<std::string, bool> read;
  for (const std::string& mark : marked.marks()) read[mark] = false;
  const std::vector<Asked> all = plans();
  for (const Edition edition : kEditions) {
    const Sections language(edition, marked.tables());
    for (const Asked& asked : all) {
      Plan plan = asked.plan;
      plan.site.edit().edition = static_cast<CodeEdition>(edition);
      const Assessment found = assess(plan, {.record = asked.record, .tables = &marked.tables()});
      const std::string report = reportJson(plan, found, "plan", language);
      for (std::size_t at = report.find('['); at != std::string::npos; at = report.find('[', at + 1)) {
        const std::size_t end = report.find(']', at);
        const auto mark = read.find(report.substr(at, end + 1 - at));
        if (mark != read.end()) mark->second = true;
      }
    }
  }
  int reached = 0;
  for (const auto& [mark, seen] : read) {
    EXPECT_TRUE(seen) << mark << " is cited nowhere";
    reached += seen ? 1 : 0;
  }
  std::printf("%d of %zu sections, handed in, are read in a report\n", reached, read.size());
}

}  // namespace
}  // namespace stayalight
