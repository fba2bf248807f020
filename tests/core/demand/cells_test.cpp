// No cell of the table is without effect: each figure of each edition, changed alone, changes a result.

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/demand/questions.h"

using namespace stayalight;
using namespace stayalight::asking;

namespace {

// Figures and verdicts as one text.
std::string digest(const DemandCalculation& found) {
  char line[160];
  std::snprintf(line, sizeof line, "%.6f %.6f %.6f %.6f %d %d %d;", found.total.count(),
                found.minimum.count(), found.neutral.count(), found.continuous.count(), found.refused ? 1 : 0,
                found.confirmed ? 1 : 0, static_cast<int>(found.lines.size()));
  return line;
}

DemandQuestion with(std::vector<DemandItem> items, Edition edition) {
  DemandQuestion question = dwelling(2000, 3, 1, edition);
  question.items = std::move(items);
  return question;
}

// Questions that stand on, above and below every limit of the table.
std::string resultsOf(Edition edition, const Tables& tables) {
  std::string all;
  const auto standard = [&](std::vector<DemandItem> items) {
    all += digest(standardLoad(with(std::move(items), edition), nullptr, tables));
  };
  for (const double area : {900.0, 2000.0, 60000.0})
    all += digest(standardLoad(dwelling(area, 2, 1, edition), nullptr, tables));
  for (int appliances = 2; appliances <= 5; ++appliances)
    standard(std::vector<DemandItem>(static_cast<std::size_t>(appliances), item(LoadClass::appliance, 1200)));
  for (const double smallest : {460.0, 499.0, 500.0, 540.0}) {
    std::vector<DemandItem> items(3, item(LoadClass::appliance, 1200));
    items.push_back(item(LoadClass::appliance, smallest));
    standard(items);
  }
  for (const double horsepower : {0.24, 0.25, 0.26}) {
    std::vector<DemandItem> items(3, item(LoadClass::appliance, 1200));
    items.push_back(item(LoadClass::appliance, 100));
    items.back().horsepower = Horsepower(horsepower);
    standard(items);
  }
  for (std::size_t dryers = 1; dryers <= static_cast<std::size_t>(kDryerRows); ++dryers)
    standard(std::vector<DemandItem>(dryers, item(LoadClass::dryer, 4800)));
  for (const double each : {1700.0, 1750.0, 1800.0, 1900.0, 3000.0, 3400.0, 3600.0, 8000.0, 8750.0, 9000.0,
                            11500.0, 12000.0, 13000.0, 16000.0, 24000.0, 26000.0, 28000.0}) {
    for (std::size_t count = 1; count <= static_cast<std::size_t>(kCookingRows); ++count)
      standard(std::vector<DemandItem>(count, item(LoadClass::cooking, each)));
  }
  standard({continuous(item(LoadClass::vehicleCharger, 7000)), item(LoadClass::spaceHeating, 9000),
            motor(item(LoadClass::motor, 2000))});
  DemandItem unknown = continuous(item(LoadClass::vehicleCharger, 0));
  unknown.rating.reset();
  if (demandFigure(DemandKey::vehicleChargerUnknown, edition)) standard({unknown});

  const auto whole = [&](std::vector<DemandItem> items) {
    const DemandQuestion question = with(std::move(items), edition);
    all += digest(optionalLoad(question, nullptr, tables));
    if (demandFigure(DemandKey::existingFirst, edition))
      all += digest(existingLoad(question, nullptr, tables));
    all += digest(meteredLoad(VoltAmperes(8000), question, true, nullptr, tables));
  };
  for (int controls = 2; controls <= 6; ++controls) {
    DemandItem heaters = added(item(LoadClass::spaceHeating, 10000));
    heaters.controls = controls;
    whole({heaters, item(LoadClass::cooking, 12000)});
  }
  whole({continuous(item(LoadClass::spaceHeating, 10000))});
  whole({item(LoadClass::airConditioning, 10000), item(LoadClass::cooking, 12000)});
  whole({item(LoadClass::heatPump, 10000)});
  whole({item(LoadClass::heatPump, 5000), item(LoadClass::supplementalHeat, 10000)});
  whole({added(item(LoadClass::airConditioning, 10000)), item(LoadClass::cooking, 12000)});

  // What a plan is held to: least circuits, least rating, what a metered demand rests on.
  Plan plan = calculated::house();
  plan.site.edit().edition = edition;
  plan.site.edit().smallApplianceCircuits.reset();
  plan.site.edit().laundryCircuits.reset();
  for (const char* counter : {"Counter A", "Counter B"})
    calculated::circuit(plan, counter).calculationUse = CircuitUse::general;
  for (const int rating : {95, 100, 105}) {
    example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(rating);
    for (const DemandPeriod period : {DemandPeriod::unknown, DemandPeriod::thirtyDays}) {
      Site& site = plan.site.edit();
      site.maximumDemand = VoltAmperes(8000);
      site.demandGross = Answer::yes;
      site.demandPeriod = period;
      const DemandFigures found =
          demandFigures(plan, edition, inverterLimits(*plan.inverter), nullptr, tables);
      for (const MethodFigures& method : found.service.methods) {
        all += method.notApplicable ? render(*method.notApplicable, plainEnglish()) : digest(method.after);
      }
    }
  }
  return all;
}

TEST(DemandCells, EachFigureChangedAloneChangesAResult) {
  int changed = 0, cells = 0;
  for (const Edition edition : kEditions) {
    const std::string published = resultsOf(edition, publishedTables());
    for (std::size_t key = 0; key < kDemandKeys.size(); ++key) {
      if (!demandFigure(static_cast<DemandKey>(key), edition)) continue;
      // Counts by a whole one, all else by a twentieth, up and down.
      const double value = publishedTables().demand[key].value[index(edition)];
      const bool count = kDemandKeys[key].ends_with("_from") || kDemandKeys[key].ends_with("_count") ||
                         kDemandKeys[key].ends_with("least") || kDemandKeys[key].starts_with("metered_");
      const double step = count && value == static_cast<int>(value) && value < 100.0 ? 1.0 : value / 20.0;
      for (const double sign : {1.0, -1.0}) {
        if (value + sign * step <= 0.0) continue;
        Tables tables = publishedTables();
        tables.demand[key].value[index(edition)] += sign * step;
        ++cells;
        const bool told = resultsOf(edition, tables) != published;
        changed += told ? 1 : 0;
        EXPECT_TRUE(told) << kDemandKeys[key] << ' ' << name(edition) << (sign > 0 ? " up" : " down");
      }
    }
  }
  std::printf("%d of %d changed cells are noticed\n", changed, cells);
}

}  // namespace
