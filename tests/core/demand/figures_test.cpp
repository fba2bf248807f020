// From a plan to its figures: what is counted, what is missing, which method, which path.

#include <gtest/gtest.h>

#include "core/file/file.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/demand/questions.h"

using namespace stayalight;
using namespace stayalight::calculated;
using asking::loadOf;
using asking::says;

namespace {

// Feeder by hand: lighting 440 ft2 x 3 VA = 1,320 VA (900 on L1, 420 on L2); refrigerator 240 on L1; furnace
// 720 on L2; well pump 1,320 (660 each). Largest motor: the pump, 330 VA; on L1 the pump's 660 (165 VA), on
// L2 the furnace's 720 (180 VA).
TEST(Feeder, CountsWhatHangsOnIt) {
  const DemandFigures found = figures(house());
  ASSERT_TRUE(found.covered);
  ASSERT_TRUE(found.feeder.complete());
  EXPECT_NEAR(found.feeder.total.count(), 1320 + 240 + 720 + 1320 + 330, 1e-6);
  EXPECT_NEAR(found.feeder.leg[0].load.count(), 900 + 240 + 660 + 165, 1e-6);
  EXPECT_NEAR(found.feeder.leg[1].load.count(), 420 + 720 + 660 + 180, 1e-6);
  EXPECT_NEAR(found.feeder.heavierMinimum.count(), 1980.0 / 120.0, 1e-9);  // nothing of it is continuous
  EXPECT_NEAR(found.feeder.leg[0].neutral.count(), 900 + 240 + 60, 1e-6);
  EXPECT_NEAR(found.feeder.leg[1].neutral.count(), 420 + 720 + 180, 1e-6);
  EXPECT_FALSE(found.feederLoad.typed);
  EXPECT_EQ(found.feederLoad.load, found.feeder.total);
  ASSERT_TRUE(found.feederLoad.heavier);
  EXPECT_EQ(found.feederLoad.heavier->load, found.feeder.leg[1].load);
  EXPECT_NEAR(found.feederLoad.neutral->count(), 1320, 1e-6);
}

TEST(Feeder, ATypedLoadStandsBeforeTheComputedOne) {
  Plan plan = house();
  plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
  plan.transfer.edit().continuousPart = VoltAmperes(2400);
  const FeederLoad load = figures(plan).feederLoad;
  EXPECT_TRUE(load.typed);
  EXPECT_EQ(load.load, VoltAmperes(9000));
  EXPECT_EQ(load.continuous, VoltAmperes(2400));
  EXPECT_FALSE(load.heavier);
  EXPECT_FALSE(load.neutralTyped);
  EXPECT_NEAR(load.neutral->count(), 1320, 1e-6);  // its own field
}

TEST(Feeder, SaysOnceForEachKindWhatIsMissing) {
  Plan plan = house();
  circuit(plan, "Lights").areaServed.reset();
  circuit(plan, "Office").areaServed.reset();
  circuit(plan, "Furnace").calculationUse = CircuitUse::unknown;
  load(plan, "Furnace").calculationClass = LoadClass::unknown;
  load(plan, "Refrigerator").calculationClass = LoadClass::unknown;
  load(plan, "Well pump").nameplate.reset();
  load(plan, "Well pump").running.grade = Grade::typical;
  const DemandFigures found = figures(plan);
  EXPECT_FALSE(found.feeder.complete());
  EXPECT_EQ(found.feeder.missing.size(), 4u);
  for (const char* key : {"demand.missing.area_served", "demand.missing.circuit_use",
                          "demand.missing.load_class", "demand.missing.nameplate"})
    EXPECT_TRUE(says(found.feeder.missing, key)) << key;
  EXPECT_EQ(found.feeder.places.size(), 5u);
  EXPECT_FALSE(found.feederLoad.load);
  for (const Message& missing : found.feeder.missing)
    EXPECT_EQ(render(missing, plainEnglish()).find('<'), std::string::npos);
}

TEST(Feeder, LoadsWithAClassSayWhatTheirCircuitIs) {
  Plan plan = house();
  circuit(plan, "Furnace").calculationUse = CircuitUse::unknown;
  EXPECT_TRUE(figures(plan).feeder.complete());
}

// The nameplate first; a motor's horsepower by Table 430.248; then watts over the power factor, and amperes,
// of a grade that somebody read.
TEST(Nameplate, InTheOrderOfHowWellItIsKnown) {
  Load load = example::lineToLineLoad("Pump", 900, 0.75);
  load.calculationClass = LoadClass::motor;
  load.ratedVoltage = 230;
  EXPECT_NEAR(nameplateOf(load)->rating.count(), 1200, 1e-9);
  load.horsepower = Horsepower(0.5);
  EXPECT_NEAR(nameplateOf(load)->rating.count(), 4.9 * 240, 1e-9);  // Table 430.248: 1/2 hp, 230 V
  load.connection = Connection::lineToNeutral;
  load.ratedVoltage = 115;
  EXPECT_NEAR(nameplateOf(load)->rating.count(), 9.8 * 120, 1e-9);
  load.nameplate = VoltAmperes(1000);
  EXPECT_NEAR(nameplateOf(load)->rating.count(), 1000, 1e-9);
  load.nameplate.reset();
  load.horsepower.reset();
  load.running.grade = Grade::typical;
  EXPECT_FALSE(nameplateOf(load));
  load.runningCurrent = example::known<AcAmperes>(8, Grade::measured);
  EXPECT_NEAR(nameplateOf(load)->rating.count(), 920, 1e-9);
}

// Element and motor of one dryer are one dryer; two ovens on one circuit stay two.
TEST(Feeder, PartsOfADryerAreOneDryer) {
  Plan plan = house();
  const CircuitId dryer = example::addCircuit(plan, example::kBackup, {Column::left, 3}, 2, 30, "Dryer");
  Circuit& made = example::editCircuit(plan, dryer);
  made.voltage = VoltageClass::v120_240;
  made.calculationUse = CircuitUse::individual;
  Load motor = example::plainLoad("Drum", 300);
  Load coil = example::lineToLineLoad("Coil", 5000);
  motor.calculationClass = coil.calculationClass = LoadClass::dryer;
  example::addLoad(plan, dryer, motor);
  example::addLoad(plan, dryer, coil);
  const DemandFigures found = figures(plan);
  const DemandLine* line = asking::lineOf(found.feeder, "demand.line.dryers");
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(line->items, 1);
  EXPECT_NEAR(line->load->count(), 5300, 1e-9);
  EXPECT_NEAR(line->neutral.count(), 0.7 * 5300, 1e-9);
}

TEST(Service, IsNotLighterAfterTheMove) {
  Plan plan = house();
  const DemandFigures found = figures(plan);
  for (const DemandMethod which : {DemandMethod::standard, DemandMethod::optional, DemandMethod::existing}) {
    const MethodFigures method = calculated::method(found, which);
    ASSERT_FALSE(method.notApplicable);
    EXPECT_NEAR(method.before.total.count(), method.after.total.count(), 1e-6);
    EXPECT_EQ(method.verdictAfter, Verdict::within);
  }
  EXPECT_TRUE(calculated::method(found, DemandMethod::metered).notApplicable);
}

// Standard by hand: 4,500 + 4,500 = 9,000 VA, after the steps 5,100; range 8,000; water heater 4,500;
// refrigerator, freezer 540; furnace and pump 2,040; largest motor 330.
TEST(Service, StandardMethodByHand) {
  const MethodFigures found = method(figures(house()), DemandMethod::standard);
  EXPECT_NEAR(found.after.total.count(), 5100 + 8000 + 4500 + 540 + 2040 + 330, 1e-6);
}

TEST(Service, TheSmallestOfThoseThatApplyIsChosen) {
  const DemandFigures found = figures(house());
  ASSERT_TRUE(found.service.chosen);
  for (const MethodFigures& method : found.service.methods) {
    if (method.notApplicable) continue;
    EXPECT_LE(chosenMethod(found.service)->after.minimum, method.after.minimum);
  }
}

TEST(Service, MethodsSayWhyTheyDoNotApply) {
  const auto why = [](const Plan& plan, DemandMethod which) -> std::string {
    const auto found = method(figures(plan), which).notApplicable;
    return found ? std::string(found->id.key) : std::string();
  };
  Plan plan = house();
  example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(60);
  EXPECT_EQ(why(plan, DemandMethod::optional), "demand.not_applicable.below_100");
  example::editPanel(plan, example::kMain).mainBreaker.reset();
  plan.site.edit().serviceRating.reset();
  EXPECT_EQ(why(plan, DemandMethod::optional), "demand.not_applicable.rating_unknown");
  plan.site.edit().edition = Edition::y2026;
  EXPECT_EQ(why(plan, DemandMethod::existing), "demand.not_applicable.edition");

  plan = house();
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.no_demand");
  Site& site = plan.site.edit();
  site.maximumDemand = VoltAmperes();
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.zero_demand");
  plan.site.edit().maximumDemand = VoltAmperes(7000);
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.no_period");
  plan.site.edit().demandPeriod = DemandPeriod::thirtyDays;
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.gross_unknown");
  plan.site.edit().demandGross = Answer::no;
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.not_gross");
  plan.site.edit().demandGross = Answer::yes;
  EXPECT_EQ(why(plan, DemandMethod::metered), "demand.not_applicable.no_season");
  plan.site.edit().demandSeason = Answer::yes;
  EXPECT_EQ(why(plan, DemandMethod::metered), "");
  EXPECT_EQ(figures(plan).service.chosen, DemandMethod::metered);
}

TEST(Service, ChargingIsAddedAndItsSettingWorkedOut) {
  Plan plan = house();
  const DemandFigures before = figures(plan);
  EXPECT_FALSE(before.service.charge.asked);
  example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 60, Feeds::inverterInput, Stage::fresh);
  example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(100);
  plan.inverter.edit().chargeLimit = Watts(3000);
  plan.inverter.edit().acInput = RatingAmperes(50);
  DemandFigures found = figures(plan);
  const MethodFigures standard = method(found, DemandMethod::standard);
  EXPECT_NEAR(standard.after.total.count() - standard.before.total.count(), 3000, 1e-6);
  EXPECT_NEAR(standard.after.continuous.count(), 3000, 1e-6);
  // The input of 50 A leaves 50 x 240 / 1.25 W; the main of 100 A leaves (24,000 - load) / 1.25 W.
  const MethodFigures* chosen = chosenMethod(found.service);
  ASSERT_NE(chosen, nullptr);
  const double ofMain = (100 * 240 - (chosen->after.total.count() - 3000)) / 1.25;
  ASSERT_TRUE(found.service.charge.fits);
  EXPECT_NEAR(found.service.charge.fits->count(), std::min(9600.0, ofMain), 1e-6);
  EXPECT_EQ(found.service.charge.verdict, Verdict::within);
  plan.inverter.edit().chargeLimit = Watts(11000);
  found = figures(plan);
  EXPECT_EQ(found.service.charge.verdict, Verdict::over);
  EXPECT_NEAR(found.service.charge.fits->count(), std::min(9600.0, ofMain), 1e-6);  // whatever is set now
  plan.inverter.edit().chargeLimit.reset();
  found = figures(plan);
  EXPECT_TRUE(says(method(found, DemandMethod::standard).after.missing, "demand.missing.charge_limit"));
  // What fits is known before a limit is entered.
  ASSERT_TRUE(found.service.charge.fits);
  EXPECT_NEAR(found.service.charge.fits->count(), std::min(9600.0, ofMain), 1e-6);
  EXPECT_EQ(found.service.charge.verdict, Verdict::notKnown);
}

// NFPA 70 Annex D (S-02) adds the two ungrounded conductors up one by one; a leg above the main trips it.
TEST(Service, TheHeavierLegIsHeldAgainstTheMainToo) {
  Plan plan = house();
  example::editPanel(plan, example::kMain).mainBreaker = RatingAmperes(200);
  // Four 3,000 VA line-to-neutral on L1: 12,000 VA, 100 A of it.
  for (const int row : {11, 13, 15, 17}) {
    Load heater = example::plainLoad("Heater", 3000);
    heater.calculationClass = LoadClass::other;
    heater.nameplate = VoltAmperes(3000);
    const CircuitId id =
        example::addCircuitWithLoad(plan, example::kMain, {Column::left, row}, 1, 30, "Heater", heater);
    example::editCircuit(plan, id).calculationUse = CircuitUse::individual;
  }
  const DemandCalculation load = method(figures(plan), DemandMethod::standard).after;
  ASSERT_TRUE(load.complete());
  ASSERT_GT(load.heavierMinimum.count(), load.minimum.count() + 5.0);
  const int between = static_cast<int>((load.heavierMinimum.count() + load.minimum.count()) / 2.0);
  plan.site.edit().serviceRating = RatingAmperes(between);
  const MethodFigures held = method(figures(plan), DemandMethod::standard);
  EXPECT_LT(held.after.minimum.count(), between);
  EXPECT_EQ(held.verdictAfter, Verdict::over);
  EXPECT_EQ(held.after.least(), held.after.heavierMinimum);
}

TEST(Service, TheRelayOfTheTransferIsOnTheWayToo) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.inverter.edit().acInput = RatingAmperes(100);
  plan.inverter.edit().passThrough = RatingAmperes(100);
  plan.inverter.edit().chargeLimit = Watts(1000);
  plan.transfer.edit().rating = RatingAmperes(40);
  const DemandFigures found = figures(plan);
  ASSERT_TRUE(found.service.charge.fits);
  EXPECT_NEAR(found.service.charge.fits->count(), (40 * 240 - 2 * found.feeder.leg[1].load.count()) / 1.25,
              1e-6);
}

TEST(Service, OutOfASubpanelWhatFitsIsNotKnown) {
  Plan plan = house();
  example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 60, Feeds::inverterInput, Stage::fresh);
  plan.inverter.edit().acInput = RatingAmperes(50);
  ASSERT_TRUE(figures(plan).service.charge.fits);
  const PanelId garage = example::addPanel(plan, PanelRole::subpanel, "Garage", 8);
  example::editPanel(plan, example::kBackup).fedFrom = garage;
  EXPECT_FALSE(figures(plan).service.charge.fits);
}

// The breaker ahead of the input, in the plan or in the wall already, is a rating on the way: 240.4,
// 210.20(A) and 215.3 ask for 125 % of what is continuous.
TEST(Service, ChargingKeepsToTheBreakerAheadOfTheInput) {
  Plan plan = house();
  example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 30, Feeds::inverterInput, Stage::fresh);
  plan.inverter.edit().chargeLimit = Watts(5900);
  plan.inverter.edit().acInput = RatingAmperes(50);
  ChargeSetting charge = figures(plan).service.charge;
  ASSERT_TRUE(charge.fits);
  EXPECT_NEAR(charge.fits->count(), 30 * 240 / 1.25, 1e-6);
  EXPECT_EQ(charge.governs.id.key, "demand.rating.input_breaker");
  EXPECT_EQ(charge.verdict, Verdict::over);
  FeederRun run;
  run.id = {1};
  run.segment = Segment::mainToInverter;
  run.fixedDevice = RatingAmperes(25);
  plan.runs.emplace_back(run);
  charge = figures(plan).service.charge;
  EXPECT_NEAR(charge.fits->count(), 25 * 240 / 1.25, 1e-6);
}

// Two legs of a wye: the charger draws W / 208 V on each line, what passes through lies on the heavier leg.
TEST(Service, OnAWyeChargingIsWorkedOutInAmperes) {
  Plan plan = house();
  plan.site.edit().service = ServiceSystem::wye120_208;
  plan.inverter.edit().output = InverterOutput::wye120_208;
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.inverter.edit().passThrough = RatingAmperes(50);
  plan.inverter.edit().chargeLimit = Watts(1000);
  const DemandFigures found = figures(plan);
  ASSERT_TRUE(found.feederLoad.heavier);
  const double amperes = (50 - found.feederLoad.heavier->load.count() / 120 -
                          0.25 * found.feederLoad.heavier->continuous.count() / 120) /
                         1.25;
  ASSERT_TRUE(found.service.charge.fits);
  EXPECT_NEAR(found.service.charge.fits->count(), amperes * 208, 1e-6);
}

// Through the inverter the feeder's load leaves less of its input for charging.
TEST(Service, PassThroughLeavesWhatTheFeederDoesNotTake) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.inverter.edit().acInput = RatingAmperes(60);
  plan.inverter.edit().passThrough = RatingAmperes(50);
  plan.inverter.edit().chargeLimit = Watts(1000);
  const DemandFigures found = figures(plan);
  ASSERT_TRUE(found.service.charge.fits);
  EXPECT_NEAR(found.service.charge.fits->count(), (50 * 240 - 2 * found.feeder.leg[1].load.count()) / 1.25,
              1e-6);
  EXPECT_EQ(found.service.charge.governs.id.key, "demand.rating.relay");
}

TEST(Service, MissingFactsAreNeverWithin) {
  Plan plan = house();
  plan.site.edit().floorArea.reset();
  const MethodFigures found = method(figures(plan), DemandMethod::standard);
  EXPECT_EQ(found.verdictAfter, Verdict::notKnown);
  EXPECT_TRUE(says(found.after.missing, "demand.missing.floor_area"));
}

// -- 702.4, 710.15(A)

// 702.4 asks for the capacity of the source: packs that give less than the inverter's rating bound it.
TEST(Capacity, ThePacksBehindTheInverterBoundTheSource) {
  Plan plan = house();
  EXPECT_EQ(figures(plan).carries, VoltAmperes(6000));  // 2 packs x 100 A x 44 V = 8,800 W
  plan.battery.edit().packs = 1;
  plan.battery.edit().continuousCurrent = DcAmperes(50);
  const DemandFigures bound = figures(plan);
  ASSERT_TRUE(bound.carries);
  EXPECT_LT(bound.carries->count(), 2200);
  // What the inverter draws for that is what one pack gives: 50 A x 44 V.
  EXPECT_NEAR(batteryPower(*plan.inverter, Watts(bound.carries->count()))->count(), 2200, 1e-3);
  EXPECT_EQ(path(bound, CapacityPath::manual).verdict, Verdict::over);
  // A fact that is taken away makes nothing better.
  plan.battery.edit().continuousCurrent.reset();
  for (const PathFigures& one : figures(plan).paths) EXPECT_NE(one.verdict, Verdict::within);
}

TEST(Capacity, ManualTransferAsksForTheDeclaredSet) {
  Plan plan = house();
  DemandFigures found = figures(plan);
  const PathFigures manual = path(found, CapacityPath::manual);
  EXPECT_FALSE(manual.closed);
  // 240 + 30 + 120 + 720 + 1,320 VA, the lights and the office by what they run at.
  EXPECT_NEAR(manual.asked->count(), 240 + 30 + 120 + 720 + 1320, 1e-6);
  EXPECT_EQ(manual.verdict, Verdict::within);
  load(plan, "Well pump").meantToRun = Answer::no;
  found = figures(plan);
  EXPECT_NEAR(path(found, CapacityPath::manual).asked->count(), 1110, 1e-6);
  plan.inverter.edit().continuousApparent = VoltAmperes(1000);
  EXPECT_EQ(path(figures(plan), CapacityPath::manual).verdict, Verdict::over);
  plan.inverter.edit().continuousApparent = VoltAmperes(6000);
  plan.inverter.edit().legCurrent = AcAmperes(5);
  EXPECT_EQ(path(figures(plan), CapacityPath::manual).verdict, Verdict::over);  // one leg
  load(plan, "Office").running = {};
  plan.inverter.edit().legCurrent = AcAmperes(25);
  EXPECT_EQ(path(figures(plan), CapacityPath::manual).verdict, Verdict::notKnown);
}

TEST(Capacity, AutomaticTransferAsksForTheFullCalculatedLoad) {
  Plan plan = house();
  EXPECT_EQ(path(figures(plan), CapacityPath::automaticFull).closed->id.key, "capacity.closed_not_automatic");
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  const DemandFigures found = figures(plan);
  EXPECT_EQ(path(found, CapacityPath::manual).closed->id.key, "capacity.closed_not_manual");
  EXPECT_EQ(path(found, CapacityPath::automaticFull).asked, found.feeder.total);
  EXPECT_EQ(path(found, CapacityPath::automaticFull).verdict, Verdict::within);
  plan.transfer.edit().calculatedLoad = VoltAmperes(6001);
  EXPECT_EQ(path(figures(plan), CapacityPath::automaticFull).verdict, Verdict::over);
}

TEST(Capacity, ManagedLoadAsksForAListing) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  EXPECT_EQ(path(figures(plan), CapacityPath::managed).verdict, Verdict::notKnown);
  plan.transfer.edit().managedLimit = VoltAmperes(5000);
  plan.transfer.edit().managedListed = Answer::yes;
  EXPECT_EQ(path(figures(plan), CapacityPath::managed).verdict, Verdict::within);
  plan.transfer.edit().managedListed = Answer::no;
  EXPECT_EQ(path(figures(plan), CapacityPath::managed).verdict, Verdict::over);
}

// 702.4(A)(2)(b): the most that load management connects. Without a limit that is the calculation of Article
// 220 for what stays on, with its demand factors.
TEST(Capacity, ManagedLoadWithoutALimitIsCalculated) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  for (const char* name : {"Well pump", "Furnace"}) {
    ManagedLoad row;
    row.load = load(plan, name).id;
    row.listed = Answer::yes;
    row.shedBy = ShedBy::energyManagement;
    row.offInOutage = Answer::yes;
    plan.transfer.edit().managed.push_back(row);
  }
  const auto managed = [&] { return path(figures(plan), CapacityPath::managed); };
  const double calculated = managed().asked->count();
  EXPECT_LT(calculated, figures(plan).feeder.total.count());
  EXPECT_EQ(managed().conditions.size(), 2U);
  EXPECT_EQ(managed().rule.key, "capacity.managed");
  EXPECT_EQ(managed().verdict, Verdict::within);

  // What comes back counts again.
  for (ManagedLoad& row : plan.transfer.edit().managed) row.offInOutage = Answer::no;
  EXPECT_DOUBLE_EQ(managed().asked->count(), figures(plan).feeder.total.count());
  EXPECT_EQ(managed().caution->id.key, "capacity.caution_comes_back");

  // Not known whether it does: between the two, nobody knows; below both, it is within and still to be asked.
  for (ManagedLoad& row : plan.transfer.edit().managed) row.offInOutage = Answer::unknown;
  EXPECT_DOUBLE_EQ(managed().asked->count(), figures(plan).feeder.total.count());
  EXPECT_EQ(managed().verdict, Verdict::notKnown);
  const double between = (calculated + figures(plan).feeder.total.count()) / 2.0;
  plan.inverter.edit().continuousApparent = VoltAmperes(between);
  EXPECT_EQ(managed().conditions.front().state, Condition::notKnown);
  plan.inverter.edit().continuousApparent = VoltAmperes(calculated * 0.9);
  EXPECT_EQ(managed().conditions.front().state, Condition::broken);

  // Switched off by a hand, or by what is not listed, nothing is taken off.
  plan.transfer.edit().managed[0].shedBy = ShedBy::byHand;
  plan.transfer.edit().managed[1].listed = Answer::no;
  for (ManagedLoad& row : plan.transfer.edit().managed) row.offInOutage = Answer::yes;
  EXPECT_DOUBLE_EQ(managed().asked->count(), figures(plan).feeder.total.count());

  // A limit that is set stands before all of it.
  plan.transfer.edit().managedLimit = VoltAmperes(1234);
  EXPECT_DOUBLE_EQ(managed().asked->count(), 1234.0);
  EXPECT_EQ(managed().caution->id.key, "capacity.caution_set_point");
}

TEST(Capacity, ManagedLoadsLeaveTheCalculationLineByLine) {
  Plan plan = house();
  const DemandCalculation all = standardLoad(feederQuestion(plan, Edition::y2023));
  const LoadId pump[] = {load(plan, "Well pump").id};
  const DemandCalculation left = standardLoad(feederQuestion(plan, Edition::y2023, publishedTables(), pump));
  Plan gone = plan;
  example::editCircuit(gone, example::circuitNamed(gone, "Well pump")).loads.clear();
  EXPECT_DOUBLE_EQ(left.total.count(), standardLoad(feederQuestion(gone, Edition::y2023)).total.count());
  // 1,320 VA and a quarter of it as the largest motor, against a quarter of the next one.
  EXPECT_GT(all.total.count() - left.total.count(), 1320.0);
}

// 710.15(A): by argument in 2017 and 2020, with a written agreement in 2023, gone in 2026.
TEST(Capacity, IslandRuleIsNeverWithinWithoutAWrittenAgreement) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  for (const CodeEdition edition : {Edition::y2017, Edition::y2020, Edition::y2023}) {
    Plan now = plan;
    now.site.edit().edition = edition;
    const DemandFigures found = figures(now);
    EXPECT_EQ(found.largestName, "Well pump");
    EXPECT_EQ(path(found, CapacityPath::island).verdict, Verdict::notKnown);
    EXPECT_EQ(path(found, CapacityPath::island).caution->id.key, edition == Edition::y2023
                                                                     ? "capacity.caution_island_2023"
                                                                     : "capacity.caution_island_arguable");
    Transfer& transfer = now.transfer.edit();
    transfer.capacityPath = CapacityPath::island;
    transfer.capacityAgreedInWriting = Answer::yes;
    EXPECT_EQ(path(figures(now), CapacityPath::island).verdict, Verdict::notKnown);  // who and when?
    now.transfer.edit().capacityAgreedBy = "Building office";
    now.transfer.edit().capacityAgreedOn = "2026-02-01";
    EXPECT_EQ(path(figures(now), CapacityPath::island).verdict, Verdict::within);
    now.inverter.edit().continuousApparent = VoltAmperes(1000);
    EXPECT_EQ(path(figures(now), CapacityPath::island).verdict, Verdict::over);
  }
  plan.site.edit().edition = Edition::y2026;
  EXPECT_TRUE(path(figures(plan), CapacityPath::island).closed);
  EXPECT_EQ(path(figures(plan), CapacityPath::island).verdict, Verdict::over);
}

// 702.4(A)(3), 2026: every condition.
TEST(Capacity, PowerControlAsksForAllItsConditions) {
  Plan plan = house();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.site.edit().edition = Edition::y2026;
  plan.site.edit().dwelling = DwellingKind::oneOrTwoFamily;
  Inverter& inverter = plan.inverter.edit();
  inverter.multimode = inverter.powerControlListed = inverter.reconnectsByHand = Answer::yes;
  inverter.controlSetting = VoltAmperes(5500);
  EXPECT_EQ(path(figures(plan), CapacityPath::powerControl).verdict, Verdict::within);
  const std::pair<void (*)(Plan&), Verdict> spoilt[] = {
      {[](Plan& p) { p.site.edit().dwelling = DwellingKind::other; }, Verdict::over},
      {[](Plan& p) { p.site.edit().dwelling = DwellingKind::unknown; }, Verdict::notKnown},
      {[](Plan& p) { p.inverter.edit().multimode = Answer::no; }, Verdict::over},
      {[](Plan& p) { p.inverter.edit().powerControlListed = Answer::unknown; }, Verdict::notKnown},
      {[](Plan& p) { p.inverter.edit().reconnectsByHand = Answer::no; }, Verdict::over},
      {[](Plan& p) { p.inverter.edit().controlSetting = VoltAmperes(6500); }, Verdict::over},
      {[](Plan& p) { p.inverter.edit().controlSetting.reset(); }, Verdict::notKnown},
      {[](Plan& p) { load(p, "Well pump").nameplate = VoltAmperes(6500); }, Verdict::over},
      // 25 A a leg is 3,000 VA: a load between hot and neutral lies on one.
      {[](Plan& p) { load(p, "Furnace").nameplate = VoltAmperes(3100); }, Verdict::over},
      {[](Plan& p) { load(p, "Well pump").nameplate = VoltAmperes(3100); }, Verdict::within},
      {[](Plan& p) { p.site.edit().edition = Edition::y2023; }, Verdict::over},
  };
  for (std::size_t i = 0; i < std::size(spoilt); ++i) {
    Plan now = plan;
    spoilt[i].first(now);
    EXPECT_EQ(path(figures(now), CapacityPath::powerControl).verdict, spoilt[i].second) << i;
  }
}

TEST(Figures, ACanadianOrThreePhaseSiteHasNone) {
  Plan plan = house();
  plan.site.edit().country = Country::canada;
  DemandFigures found = figures(plan);
  EXPECT_FALSE(found.covered);
  EXPECT_TRUE(found.feeder.lines.empty());
  EXPECT_FALSE(found.feederLoad.load);
  EXPECT_TRUE(found.service.methods.empty());
  EXPECT_TRUE(found.paths.empty());
  plan.site.edit().country = Country::unitedStates;
  plan.site.edit().service = ServiceSystem::threePhase;
  EXPECT_FALSE(figures(plan).covered);
}

TEST(Figures, EveryMessageHasWordsAndArguments) {
  for (const Edition edition : kEditions) {
    Plan plan = house();
    plan.site.edit().edition = edition;
    plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
    const DemandFigures found = figures(plan);
    const auto good = [](const Message& message) {
      const std::string text = render(message, plainEnglish());
      EXPECT_EQ(text.find('<'), std::string::npos) << text;
      EXPECT_EQ(text.find('%'), std::string::npos) << text;
    };
    for (const DemandLine& line : found.feeder.lines) good(line.what);
    for (const MethodFigures& method : found.service.methods) {
      good(methodName(method.method));
      if (method.notApplicable) good(*method.notApplicable);
      for (const DemandLine& line : method.after.lines) good(line.what);
    }
    for (const PathFigures& path : found.paths) {
      good(pathName(path.path));
      if (path.closed) good(*path.closed);
      if (path.caution) good(*path.caution);
      for (const CapacityCondition& condition : path.conditions) good(condition.what);
    }
  }
}

}  // namespace
