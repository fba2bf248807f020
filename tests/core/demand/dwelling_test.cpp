// Methods for the whole dwelling beside the worked examples.

#include <gtest/gtest.h>

#include "tests/core/demand/questions.h"

using namespace stayalight;
using namespace stayalight::asking;

namespace {

DemandQuestion bare(std::vector<DemandItem> items, Edition edition = Edition::y2023) {
  DemandQuestion question = dwelling(1000, 2, 1, edition);  // 3,000 + 4,500 VA; 2026: 2,000 + 4,500 VA
  question.items = std::move(items);
  return question;
}

// 220.82(B): 10 kVA in full, 40 % of the rest; 120.82(B): 8 kVA.
TEST(Optional, FirstPartOfTheEdition) {
  const auto total = [](Edition edition) {
    return optionalLoad(bare({item(LoadClass::appliance, 10000)}, edition)).total.count();
  };
  EXPECT_NEAR(total(Edition::y2023), 10000 + 0.4 * 7500, 1e-9);
  EXPECT_NEAR(total(Edition::y2020), 10000 + 0.4 * 7500, 1e-9);
  EXPECT_NEAR(total(Edition::y2026), 8000 + 0.4 * 8500, 1e-9);
}

// 220.82(C): one of heating and cooling, each with its part.
TEST(Optional, LargestOfTheClimateItems) {
  const auto climate = [](std::vector<DemandItem> items) {
    return optionalLoad(bare(std::move(items))).total.count() - 7500;
  };
  DemandItem four = item(LoadClass::spaceHeating, 10000);
  four.controls = 4;
  DemandItem three = four;
  three.controls = 3;
  EXPECT_NEAR(climate({four}), 4000, 1e-9);
  EXPECT_NEAR(climate({three}), 6500, 1e-9);
  EXPECT_NEAR(climate({continuous(four)}), 10000, 1e-9);
  EXPECT_NEAR(climate({three, item(LoadClass::airConditioning, 6600)}), 6600, 1e-9);
  EXPECT_NEAR(climate({item(LoadClass::heatPump, 5000)}), 5000, 1e-9);
  EXPECT_NEAR(climate({item(LoadClass::heatPump, 5000), item(LoadClass::supplementalHeat, 10000)}), 11500,
              1e-9);
}

// 120.82: chargers beside the steps is reported by some pages only.
TEST(Optional, ChargersOf2026AreNotConfirmed) {
  const DemandItem charger = continuous(item(LoadClass::vehicleCharger, 7200, "Charger"));
  EXPECT_NEAR(optionalLoad(bare({charger})).total.count(), 10000 + 0.4 * 4700, 1e-9);
  const DemandCalculation found = optionalLoad(bare({charger}, Edition::y2026));
  EXPECT_NEAR(found.total.count(), 6500 + 7200, 1e-9);
  EXPECT_FALSE(lineOf(found, "demand.line.vehicle_charger")->confirmed);
}

// 220.83(A) and (B).
TEST(Existing, NewHeatingOrCoolingStandsBesideTheSteps) {
  DemandItem air = item(LoadClass::airConditioning, 5000);
  const DemandItem range = item(LoadClass::cooking, 12000);
  EXPECT_NEAR(existingLoad(bare({range, air})).total.count(), 8000 + 0.4 * (7500 + 12000 + 5000 - 8000),
              1e-9);
  EXPECT_NEAR(existingLoad(bare({range, added(air)})).total.count(), 8000 + 0.4 * (19500 - 8000) + 5000,
              1e-9);
  DemandItem heaters = added(item(LoadClass::spaceHeating, 10000));
  heaters.controls = 4;  // four and more count with all other load
  EXPECT_NEAR(existingLoad(bare({range, heaters})).total.count(), 8000 + 0.4 * (29500 - 8000), 1e-9);
  heaters.controls = 3;
  EXPECT_NEAR(existingLoad(bare({range, heaters})).total.count(), 8000 + 0.4 * (19500 - 8000) + 10000, 1e-9);
}

TEST(Existing, Edition2026IsRefused) {
  const DemandCalculation found = existingLoad(bare({item(LoadClass::cooking, 12000)}, Edition::y2026));
  ASSERT_TRUE(found.refused);
  EXPECT_FALSE(found.complete());
}

// 220.87: 125 % of the maximum and what is new.
TEST(Metered, MaximumAndNewLoad) {
  DemandQuestion question = bare({item(LoadClass::cooking, 12000), added(item(LoadClass::appliance, 4500)),
                                  added(continuous(item(LoadClass::vehicleCharger, 7200)))});
  question.charging = VoltAmperes(2400);
  question.addedArea = SquareFeet(200);
  question.addedCircuits = 1;
  EXPECT_NEAR(meteredLoad(VoltAmperes(8000), question, false).total.count(), 10000, 1e-9);
  const DemandCalculation found = meteredLoad(VoltAmperes(8000), question, true);
  EXPECT_NEAR(found.total.count(), 10000 + 4500 + 7200 + 600 + 1500 + 2400, 1e-9);
  EXPECT_NEAR(found.continuous.count(), 9600, 1e-9);
}

}  // namespace
