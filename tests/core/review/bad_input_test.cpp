// What is beyond the tables, or makes no sense, ends in a finding that says what to change; nothing is
// guessed.

#include <gtest/gtest.h>

#include <functional>

#include "core/edit/edit.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/review/sound_plan.h"
#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;

namespace {

struct BadInput {
  const char* what;
  Plan (*plan)();
  void (*spoil)(Plan& plan);
  const char* finding;
  const char* says;  // a part of its sentence for the trade
};

Plan fed() { return feeder::manualSwitch(); }
Plan sound() { return sound::plan(); }
Plan calculatedHouse() { return calculated::house(); }

// As many loads of a class on the backup subpanel as the table of Article 220 has no row for.
void many(Plan& plan, LoadClass loadClass, int count, double watts) {
  Circuit& circuit = calculated::circuit(plan, "Refrigerator");
  for (int i = 0; i < count; ++i) {
    Load load = example::lineToLineLoad("Load " + std::to_string(i + 1), watts);
    load.calculationClass = loadClass;
    load.nameplate = VoltAmperes(watts);
    load.id = nextLoadId(plan);
    circuit.loads.push_back(load);
  }
}

const BadInput kInputs[] = {
    {"ambient of a feeder beyond the table", fed,
     [](Plan& p) { feeder::editRun(p, Segment::mainToSwitch).ambient = Temperature::celsius(95); },
     "feeder.too_hot", "another ambient temperature"},
    {"ambient with a conductor in the wall", fed,
     [](Plan& p) {
       FeederRun& run = feeder::editRun(p, Segment::mainToSwitch);
       run.ambient = Temperature::celsius(95);
       run.fixedConductor = ConductorSize::awg6;
     },
     "feeder.too_hot", "another ambient temperature"},
    {"ambient of a raceway beyond the table", sound,
     [](Plan& p) { p.raceways[0].edit().ambient = Temperature::celsius(95); }, "raceway.too_hot",
     "another ambient temperature"},
    {"no length", fed, [](Plan& p) { feeder::editRun(p, Segment::mainToSwitch).length = Length(); },
     "feeder.no_length", "Enter the length"},
    {"load above the largest rating", fed,
     [](Plan& p) { p.transfer.edit().calculatedLoad = VoltAmperes(400000); }, "feeder.minimum_above_maximum",
     "A"},
    {"load above the largest rating, no limit known", fed,
     [](Plan& p) {
       p.transfer.edit().calculatedLoad = VoltAmperes(400000);
       p.transfer.edit().rating.reset();
       example::editPanel(p, example::kBackup).busRating.reset();
       std::erase_if(p.breakers, [](const auto& breaker) { return breaker->feeds.is(Feeds::feeder); });
     },
     "feeder.nothing_fits", "make the load smaller"},
    {"load above the largest conductor", fed,
     [](Plan& p) {
       p.transfer.edit().calculatedLoad = VoltAmperes(150000);
       p.transfer.edit().rating.reset();
       example::editPanel(p, example::kBackup).busRating.reset();
       for (auto& breaker : p.breakers) {
         if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(700);
       }
     },
     "feeder.nothing_fits", "make it smaller"},
    {"nothing in a raceway", fed,
     [](Plan& p) {
       Raceway raceway;
       raceway.id = nextRacewayId(p);
       raceway.name = "Pipe";
       p.raceways.emplace_back(raceway);
     },
     "raceway.empty", "take it out of the plan"},
    {"more dryers than the table", calculatedHouse, [](Plan& p) { many(p, LoadClass::dryer, 12, 5000); },
     "load.calculation", "enter the calculated load"},
    {"more ranges than the table", calculatedHouse, [](Plan& p) { many(p, LoadClass::cooking, 6, 8000); },
     "load.calculation", "enter the calculated load"},
};

TEST(BadInput, EndsInAFindingThatSaysWhatToChange) {
  for (const BadInput& input : kInputs) {
    Plan plan = input.plan();
    EXPECT_EQ(sound::findingOf(assess(plan).findings, input.finding), nullptr) << input.what << ", before";
    input.spoil(plan);
    const std::vector<Finding> findings = assess(plan).findings;
    std::string all;
    bool said = false;
    for (const Finding& finding : findings) {
      const std::string trade = render(finding.trade, plainEnglish());
      all += "\n" + std::string(finding.key) + ": " + trade;
      if (finding.key != input.finding || trade.find(input.says) == std::string::npos) continue;
      said = true;
      EXPECT_FALSE(finding.places.empty()) << input.what;
    }
    EXPECT_TRUE(said) << input.what << all;
  }
}

// What no field takes is refused where it is typed, with what is expected.
TEST(BadInput, IsRefusedWhereItIsTyped) {
  Plan plan = fed();
  const EntityRef run{RecordKind::feederRun, plan.runs[0]->id.number};
  const EntityRef circuit{RecordKind::circuit, plan.circuits[0]->id.number};
  const auto refused = [&](EntityRef place, std::string_view field, const FieldValue& value,
                           const char* says) {
    const Result<Plan> made = setField(plan, place, field, value);
    ASSERT_FALSE(made.ok()) << field;
    const std::string text = render(made.refusal(), plainEnglish());
    EXPECT_NE(text.find(says), std::string::npos) << text;
  };
  refused(run, "current_carrying", std::int64_t{0}, "1");
  refused(run, "current_carrying", std::int64_t{-3}, "1");
  refused(circuit, "conductor_AWG", std::string("7"), "7");
  refused(run, "fixed_conductor", std::string("350 mm"), "350 mm");
}

}  // namespace
