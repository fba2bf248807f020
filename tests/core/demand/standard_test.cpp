// The standard method rule by rule; each figure is worked out by hand from the section named beside it.

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/demand/questions.h"

using namespace stayalight;
using namespace stayalight::asking;

namespace {

DemandQuestion of(std::vector<DemandItem> items, Edition edition = Edition::y2023) {
  DemandQuestion question;
  question.edition = edition;
  question.items = std::move(items);
  return question;
}
double totalOf(std::vector<DemandItem> items, Edition edition = Edition::y2023) {
  return standardLoad(of(std::move(items), edition)).total.count();
}

// 220.45: 100 % to 3,000 VA, 35 % to 120,000 VA, 25 % above.
TEST(Standard, LightingSteps) {
  struct Row {
    double area, load;
  };
  for (const Row& row : {Row{500, 1500}, Row{1000, 3000}, Row{2000, 3000 + 0.35 * 3000},
                         Row{50000, 3000 + 0.35 * 117000 + 0.25 * 30000}}) {
    EXPECT_NEAR(standardLoad(dwelling(row.area, 0, 0)).total.count(), row.load, 1e-6) << row.area;
  }
}

// 120.41 (2026): 2 VA for each square foot.
TEST(Standard, LightingUnitOfTheEdition) {
  for (const Edition edition : kEditions) {
    const double unit = edition == Edition::y2026 ? 2.0 : 3.0;
    EXPECT_NEAR(standardLoad(dwelling(600, 0, 0, edition)).total.count(), 600 * unit, 1e-9) << name(edition);
  }
}

// 220.53: 75 % from four appliances on, not counting those below 500 W and 1/4 hp since 2020.
TEST(Standard, FourAppliancesCountAtThreeQuarters) {
  const auto four = [](double smallest) {
    return std::vector{item(LoadClass::appliance, 4500), item(LoadClass::appliance, 1200),
                       item(LoadClass::appliance, 1000), item(LoadClass::appliance, smallest)};
  };
  EXPECT_NEAR(totalOf({item(LoadClass::appliance, 4500), item(LoadClass::appliance, 1200),
                       item(LoadClass::appliance, 1000)}),
              6700, 1e-9);
  EXPECT_NEAR(totalOf(four(500)), 0.75 * 7200, 1e-9);
  EXPECT_NEAR(totalOf(four(499)), 7199, 1e-9);
  EXPECT_NEAR(totalOf(four(499), Edition::y2017), 0.75 * 7199, 1e-9);
  std::vector<DemandItem> withMotor = four(400);
  withMotor.back().horsepower = Horsepower(0.25);
  EXPECT_NEAR(totalOf(withMotor), 0.75 * 7100, 1e-9);
}

// 220.53 names what does not count: cooking, dryers, heating, cooling, vehicle chargers.
TEST(Standard, OtherClassesDoNotMakeTheFour) {
  const DemandCalculation found = standardLoad(of(
      {item(LoadClass::appliance, 4500), item(LoadClass::appliance, 1200), item(LoadClass::appliance, 1000),
       item(LoadClass::dryer, 5000), item(LoadClass::cooking, 12000), item(LoadClass::airConditioning, 3000),
       item(LoadClass::motor, 1000), item(LoadClass::vehicleCharger, 7200), item(LoadClass::other, 900)}));
  EXPECT_NEAR(loadOf(found, "demand.line.appliances"), 6700, 1e-9);
}

// 220.54: nameplate, at least 5,000 VA; 85 % for five.
TEST(Standard, Dryers) {
  EXPECT_NEAR(totalOf({item(LoadClass::dryer, 4500)}), 5000, 1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::dryer, 5500)}), 5500, 1e-9);
  EXPECT_NEAR(totalOf(std::vector<DemandItem>(5, item(LoadClass::dryer, 6000))), 0.85 * 30000, 1e-9);
  const DemandCalculation many = standardLoad(of(std::vector<DemandItem>(12, item(LoadClass::dryer, 6000))));
  ASSERT_TRUE(many.refused);
  EXPECT_EQ(many.refused->id.key, "demand.refused_dryers");
  EXPECT_FALSE(many.complete());
}

// Table 220.55 with its notes.
TEST(Standard, CookingAppliances) {
  struct Row {
    std::vector<double> kilowatts;
    double load;
  };
  const Row rows[] = {
      {{12}, 8000},  // column C
      {{8.76}, 8000},
      {{8.75}, 7000},  // Note 3: 80 %, column B
      {{3.5}, 2800},
      {{3.0}, 2400},  // column A
      {{13}, 8400},   // Note 1: one kW above 12
      {{12.49}, 8000},
      {{12.5}, 8400},  // half a kW is a major fraction: common practice, no source
      {{13.5}, 8800},
      {{12.6}, 8400},
      {{16}, 9600},
      {{27}, 14000},
      {{6, 6}, 0.65 * 12000},               // Note 3: two in column B
      {{3, 6}, 0.80 * 3000 + 0.80 * 6000},  // one in each column
      {{6, 12}, 11000},                     // column C for two is less than 4,800 + 8,000
      {{12, 16}, 11000 * 1.10},             // Note 2: average 14 kW
      {{2, 2, 2}, 0.70 * 6000},
  };
  for (const Row& row : rows) {
    const auto found = cookingLoad(row.kilowatts, Edition::y2023);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->load.count(), row.load, 1e-6)
        << row.kilowatts.front() << " of " << row.kilowatts.size();
  }
  EXPECT_FALSE(cookingLoad({27.1}, Edition::y2023));
  EXPECT_FALSE(cookingLoad({12, 12, 12, 12, 12, 12}, Edition::y2023));
  EXPECT_TRUE(cookingLoad({12}, Edition::y2023)->confirmed);
  EXPECT_FALSE(cookingLoad({12, 12}, Edition::y2023)->confirmed);
  EXPECT_FALSE(cookingLoad({12, 16}, Edition::y2023)->confirmed);
}

TEST(Standard, SmallCookingAppliancesAreOutsideTheTable) {
  EXPECT_NEAR(totalOf({item(LoadClass::cooking, 1750)}), 1750, 1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::cooking, 1751)}), 0.8 * 1751, 1e-9);
}

// 220.57 (2023): at least 7,200 VA; before, and in 2026 where it is known, the nameplate. Always continuous.
TEST(Standard, VehicleChargers) {
  const DemandItem small = continuous(item(LoadClass::vehicleCharger, 3800));
  EXPECT_NEAR(totalOf({small}), 7200, 1e-9);
  EXPECT_NEAR(totalOf({small}, Edition::y2020), 3800, 1e-9);
  EXPECT_NEAR(totalOf({small}, Edition::y2026), 3800, 1e-9);
  EXPECT_NEAR(totalOf({continuous(item(LoadClass::vehicleCharger, 9600))}), 9600, 1e-9);
  DemandItem unknown = small;
  unknown.rating.reset();
  const DemandCalculation found = standardLoad(of({unknown}, Edition::y2026));
  EXPECT_NEAR(found.total.count(), 7200, 1e-9);
  EXPECT_FALSE(found.confirmed);
  EXPECT_NEAR(found.minimum.count(), 1.25 * 7200 / 240, 1e-9);
}

// 220.60: the larger of heating and cooling; a heat pump runs in both.
// 220.60 omits the smaller, but the feeder still has to carry it for three hours (215.2(A)(1)).
TEST(Standard, ContinuousPartOfTheSmallerOfHeatingAndCoolingCounts) {
  DemandQuestion question;
  DemandItem cooling = item(LoadClass::airConditioning, 5000.0);
  cooling.continuous = true;
  question.items = {item(LoadClass::spaceHeating, 5100.0), cooling};
  for (auto* method : {&standardLoad, &existingLoad, &optionalLoad}) {
    const DemandCalculation found = method(question, nullptr, publishedTables());
    EXPECT_DOUBLE_EQ(found.continuous.count(), 5000.0);
    EXPECT_DOUBLE_EQ(found.minimum.count(), (found.total.count() + 0.25 * 5000.0) / 240.0);
  }
}

// A dryer without a nameplate still counts with the least figure of 220.54, on its legs as in the sum.
TEST(Standard, DryerWithoutNameplateLoadsItsLegs) {
  DemandQuestion question;
  question.items = {item(LoadClass::dryer, 0.0)};
  const DemandCalculation found = standardLoad(question);
  EXPECT_DOUBLE_EQ(found.total.count(), 5000.0);
  EXPECT_DOUBLE_EQ(found.leg[0].load.count(), 2500.0);
  EXPECT_DOUBLE_EQ(found.leg[1].load.count(), 2500.0);
}

TEST(Standard, HeatingAndCoolingAreNotAddedUp) {
  EXPECT_NEAR(totalOf({item(LoadClass::spaceHeating, 9000), item(LoadClass::airConditioning, 4000)}), 9000,
              1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::spaceHeating, 3000), item(LoadClass::airConditioning, 4000)}), 4000,
              1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::heatPump, 5000), item(LoadClass::supplementalHeat, 10000),
                       item(LoadClass::airConditioning, 4000)}),
              15000, 1e-9);
  const DemandCalculation found =
      standardLoad(of({item(LoadClass::spaceHeating, 9000), item(LoadClass::airConditioning, 4000)}));
  const DemandLine* left = lineOf(found, "demand.line.item_left_out");
  ASSERT_NE(left, nullptr);
  EXPECT_FALSE(left->load);
}

// 220.50, 430.24: a quarter of the largest motor, also where it is the smaller of heating and cooling.
TEST(Standard, LargestMotor) {
  EXPECT_NEAR(totalOf({motor(item(LoadClass::motor, 2000)), motor(item(LoadClass::appliance, 800))}),
              2800 + 500, 1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::spaceHeating, 9000), motor(item(LoadClass::airConditioning, 4000)),
                       motor(item(LoadClass::motor, 2000))}),
              9000 + 2000 + 1000, 1e-9);
  EXPECT_NEAR(totalOf({item(LoadClass::appliance, 800)}), 800, 1e-9);
}

// 220.61: heavier leg alone, the other off; range and dryer at 70 % of their demand; 240 V loads add nothing.
TEST(Standard, NeutralIsTheHeavierLegAlone) {
  const DemandCalculation found =
      standardLoad(of({onLeg(item(LoadClass::other, 1200), Leg::l1),
                       onLeg(item(LoadClass::other, 1800), Leg::l2), item(LoadClass::appliance, 4500),
                       withNeutral(item(LoadClass::dryer, 4000)), item(LoadClass::cooking, 12000)}));
  EXPECT_NEAR(found.leg[0].neutral.count(), 1200 + 0.7 * 2500, 1e-9);
  EXPECT_NEAR(found.leg[1].neutral.count(), 1800 + 0.7 * 2500, 1e-9);
  EXPECT_NEAR(found.neutral.count(), (1800 + 1750) / 120.0, 1e-9);
  EXPECT_NEAR(found.leg[1].load.count(), 1800 + 2250 + 2500 + 4000, 1e-9);
  EXPECT_NEAR(found.heavier.count(), found.leg[1].load.count() / 120.0, 1e-9);
}

// 220.61(B)(2): the part above 200 A at 70 %.
TEST(Standard, NeutralAbove200Amperes) {
  const DemandCalculation found = standardLoad(of({onLeg(item(LoadClass::other, 36000), Leg::l1)}));
  EXPECT_NEAR(found.neutral.count(), 200 + 0.7 * 100, 1e-9);
}

// Two legs of a wye: a line-to-line load of S carries S / 208 V; no reduction of the neutral (220.61(C)).
TEST(Standard, TwoLegsOfAWye) {
  DemandItem heater = item(LoadClass::appliance, 4160);
  heater.leg = {1.0 / std::sqrt(3.0), 1.0 / std::sqrt(3.0)};
  DemandItem dryer = withNeutral(item(LoadClass::dryer, 5000));
  dryer.leg = heater.leg;
  DemandQuestion question = of({heater, dryer});
  question.wye = true;
  question.lineVolts = AcVolts(208);
  const DemandCalculation found = standardLoad(question);
  EXPECT_NEAR(found.heavier.count(), (4160 + 5000) / 208.0,
              0.1);  // 208 V is the root of 3 times 120 V, rounded
  EXPECT_NEAR(found.leg[0].neutral.count(), 5000 / std::sqrt(3.0), 1e-9);
}

// Charging from the utility is continuous and lies between the legs.
TEST(Standard, ChargingIsContinuous) {
  DemandQuestion question = of({});
  question.charging = VoltAmperes(4800);
  const DemandCalculation found = standardLoad(question);
  EXPECT_NEAR(found.total.count(), 4800, 1e-9);
  EXPECT_NEAR(found.minimum.count(), 25, 1e-9);
  EXPECT_NEAR(found.neutral.count(), 0, 1e-9);
}

TEST(Standard, SaysWhichLinesAreNotConfirmed) {
  const DemandCalculation found =
      standardLoad(of({motor(item(LoadClass::motor, 2000)), item(LoadClass::dryer, 6000)}));
  EXPECT_FALSE(lineOf(found, "demand.line.largest_motor")->confirmed);
  EXPECT_TRUE(lineOf(found, "demand.line.dryers")->confirmed);
  EXPECT_FALSE(found.confirmed);
  EXPECT_TRUE(standardLoad(of({item(LoadClass::dryer, 6000)})).confirmed);
  EXPECT_FALSE(standardLoad(of({item(LoadClass::dryer, 6000)}, Edition::y2017)).confirmed);
}

TEST(Standard, AFigureThatIsNotThereRefusesTheResult) {
  Tables changed = publishedTables();
  changed.demand[static_cast<std::size_t>(DemandKey::dryerLeast)].value = {};
  const DemandCalculation found = standardLoad(of({item(LoadClass::dryer, 6000)}), nullptr, changed);
  ASSERT_TRUE(found.refused);
  EXPECT_EQ(found.refused->id.key, "demand.refused");
}

}  // namespace
