#include "core/wiring/conductor.h"

#include <gtest/gtest.h>

#include "core/code/devices.h"
#include "tests/reference/worked_examples.h"

using namespace stayalight;
using reference::WorkedExample;

namespace {

ConductorQuestion question(double load, std::optional<int> device, bool terminals75 = false,
                           Metal metal = Metal::copper) {
  ConductorQuestion q;
  q.terminalLoad = AcAmperes(load);
  q.load = AcAmperes(load);
  if (device) q.device = RatingAmperes(*device);
  q.conditions.metal = metal;
  q.conditions.terminals75 = terminals75;
  return q;
}

std::string sizeOf(const ConductorChoice& choice) {
  return choice.size ? std::string(name(*choice.size)) : "none";
}
std::string sizeFor(const ConductorQuestion& q) { return sizeOf(chooseConductor(q, Edition::y2023)); }

// ---- published examples

TEST(Conductor, ContinuousFeederOf200Amperes) {
  const WorkedExample example("S-09");
  ConductorQuestion q = question(example.expected("required_A"), 250);
  q.load = AcAmperes(example.input("continuous_A"));
  const ConductorChoice choice = chooseConductor(q, Edition::y2023);
  example.expectWord("conductor", sizeOf(choice));
  example.expectNear("conductor_ampacity_A", choice.terminalAmpacity->count());
  EXPECT_EQ(choice.terminalColumn, TemperatureColumn::c75);
}

TEST(Conductor, StoreBuilding) {
  const WorkedExample example("S-10");
  ConductorQuestion q = question(example.expected("ocpd_basis_A"), 150);
  q.load = AcAmperes(example.expected("load_A"));
  example.expectWord("min_conductor_75C", sizeFor(q));
}

TEST(Conductor, NineConductorsInARaceway) {
  const WorkedExample example("S-11");
  RunConditions conditions;
  conditions.currentCarrying = static_cast<int>(example.input("current_carrying"));
  conditions.ambient = Temperature::celsius(example.input("ambient_C"));
  const ConductorSize size = *conductorSizeNamed(example.word("size"));
  const Ampacities found = ampacities(size, conditions, RatingAmperes(20));
  example.expectNear("adjusted_A", found.derated->count());
  EXPECT_DOUBLE_EQ(found.adjustment.count(), example.input("adjustment"));
  EXPECT_EQ(protects(RatingAmperes(20), size, Metal::copper, *found.derated, true, Edition::y2023),
            example.expectedWord("usable_on_20A") == "true");
}

TEST(Conductor, FiftyAmperesByTerminals) {
  const WorkedExample example("S-12");
  example.expectWord("size_60C", sizeFor(question(example.input("load_A"), 50, false)));
  example.expectWord("size_75C", sizeFor(question(example.input("load_A"), 50, true)));
}

TEST(Conductor, SmallestSizesForAGivenAmpacity) {
  const WorkedExample example("S-13");
  const double required = example.input("service_A") * example.input("factor");
  example.expectNear("required_A", required);
  example.expectWord("cu_size", sizeFor(question(required, std::nullopt)));
  example.expectWord("al_size", sizeFor(question(required, std::nullopt, false, Metal::aluminium)));
}

TEST(Conductor, AtticWithFourConductors) {
  const WorkedExample example("S-14");
  RunConditions conditions;
  conditions.ambient = Temperature::celsius(example.input("ambient_C"));
  conditions.currentCarrying = static_cast<int>(example.input("current_carrying"));
  conditions.terminals75 = true;
  const ConductorSize size = *conductorSizeNamed(example.word("size"));
  const Ampacities found = ampacities(size, conditions, RatingAmperes(50));
  example.expectNear("corrected_A", found.derated->count());
  example.expectNear("governing_A", found.governing->count());
  EXPECT_DOUBLE_EQ(found.terminal->count(), example.input("terminal_column_A"));
  const int allowed = static_cast<int>(example.expected("max_ocpd_next_size_up_A"));
  EXPECT_TRUE(protects(RatingAmperes(allowed), size, Metal::copper, *found.governing, true, Edition::y2023));
  EXPECT_FALSE(protects(RatingAmperes(60), size, Metal::copper, *found.governing, true, Edition::y2023));
}

TEST(Conductor, MotorOfFiveHorsepower) {
  const WorkedExample example("S-29");
  ConductorQuestion q =
      question(example.input("flc_table_A") * example.input("conductor_pct") / 100.0, std::nullopt, true);
  example.expectNear("conductor_min_A", q.terminalLoad->count());
  example.expectWord("conductor", sizeFor(q));
}

// ---- facts of the trade (common practice, no source)

TEST(Conductor, FeedersOfTheTrade) {
  struct Row {
    int device;
    bool terminals75;
    Metal metal;
    const char* size;
  };
  for (const Row& row : {Row{50, false, Metal::copper, "6"}, Row{50, true, Metal::copper, "8"},
                         Row{60, true, Metal::copper, "6"}, Row{60, false, Metal::copper, "4"},
                         Row{100, true, Metal::copper, "3"}, Row{100, true, Metal::aluminium, "1"},
                         Row{20, false, Metal::copper, "12"}, Row{15, false, Metal::copper, "14"},
                         Row{30, false, Metal::copper, "10"}}) {
    EXPECT_EQ(sizeFor(question(row.device, row.device, row.terminals75, row.metal)), row.size) << row.device;
  }
}

// 6 AWG in nonmetallic-sheathed cable ends in the 60 C column with 55 A: a 60 A device is the next size up,
// but the load may not exceed 55 A, whatever the terminals are marked (334.80, 240.4(B)).
TEST(Conductor, NmCableEndsInTheSixtyDegreeColumn) {
  ConductorQuestion q = question(55.0, 60, true);
  q.conditions.nmCable = true;
  ConductorChoice choice = chooseConductor(q, Edition::y2023);
  EXPECT_EQ(sizeOf(choice), "6");
  EXPECT_TRUE(choice.nmColumn);
  EXPECT_DOUBLE_EQ(choice.ampacity->count(), 55.0);
  EXPECT_DOUBLE_EQ(choice.deratedAmpacity->count(), 75.0);
  q.terminalLoad = q.load = AcAmperes(55.5);
  choice = chooseConductor(q, Edition::y2023);
  EXPECT_EQ(sizeOf(choice), "4");
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.nm_column"});
  q.fixed = ConductorSize::awg6;
  choice = chooseConductor(q, Edition::y2023);
  EXPECT_TRUE(choice.tooSmall);
  EXPECT_FALSE(choice.notProtected);
  q.conditions.nmCable = false;
  choice = chooseConductor(q, Edition::y2023);
  EXPECT_FALSE(choice.tooSmall);
  EXPECT_FALSE(choice.nmColumn);
}

// Derating starts from 90 C in new cable and from 60 C in old: 75 A x 0.58 against nothing left at 60 C above
// 55 C.
TEST(Conductor, NmCableDeratesFromItsInsulation) {
  RunConditions conditions;
  conditions.nmCable = true;
  conditions.ambient = Temperature::celsius(50);
  EXPECT_NEAR(ampacities(ConductorSize::awg6, conditions, RatingAmperes(40)).derated->count(), 75.0 * 0.82,
              1e-9);
  conditions.insulation = TemperatureColumn::c60;
  EXPECT_NEAR(ampacities(ConductorSize::awg6, conditions, RatingAmperes(40)).derated->count(), 55.0 * 0.58,
              1e-9);
}

// ---- terminals

TEST(Conductor, TerminalColumnGoesByRatingMarksAndInsulation) {
  RunConditions plain;
  RunConditions marked;
  marked.terminals75 = true;
  RunConditions old = marked;
  old.insulation = TemperatureColumn::c60;
  const auto column = [](const RunConditions& conditions, int device) {
    return ampacities(ConductorSize::awg2, conditions, RatingAmperes(device)).terminalColumn;
  };
  EXPECT_EQ(column(plain, 100), TemperatureColumn::c60);
  EXPECT_EQ(column(plain, 110), TemperatureColumn::c75);
  EXPECT_EQ(column(marked, 100), TemperatureColumn::c75);
  EXPECT_EQ(column(old, 110), TemperatureColumn::c60);
  // Without a device the size tells which terminals it goes to.
  EXPECT_EQ(ampacities(ConductorSize::awg1, plain, std::nullopt).terminalColumn, TemperatureColumn::c60);
  EXPECT_EQ(ampacities(ConductorSize::awg1_0, plain, std::nullopt).terminalColumn, TemperatureColumn::c75);
}

TEST(Conductor, OneEndMarkedIsNotEnough) {
  FeederRun run;
  run.terminalsFrom75 = Answer::yes;
  run.terminalsTo75 = Answer::unknown;
  EXPECT_FALSE(runConditions(&run, false).terminals75);
  run.terminalsTo75 = Answer::no;
  EXPECT_FALSE(runConditions(&run, false).terminals75);
  run.terminalsTo75 = Answer::yes;
  EXPECT_TRUE(runConditions(&run, false).terminals75);
}

// ---- the two tests, and protection

TEST(Conductor, DeratingAndTerminalsAreTestedApartAndTheLargerWins) {
  // Continuous load of 40 A: 50 A against the 60 C column takes 6 AWG (55 A).
  ConductorQuestion q = question(50.0, 50);
  q.load = AcAmperes(40.0);
  EXPECT_EQ(sizeFor(q), "6");
  // In a hot attic the load itself still passes: 75 x 0.82 = 61.5 A.
  q.conditions.ambient = Temperature::celsius(48);
  EXPECT_EQ(sizeFor(q), "6");
  // Nine conductors there: 75 x 0.82 x 0.7 = 43 A carries 40 A but takes no more than a 45 A device; 4
  // AWG: 54.5 A.
  q.conditions.currentCarrying = 9;
  const ConductorChoice choice = chooseConductor(q, Edition::y2023);
  EXPECT_EQ(sizeOf(choice), "4");
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.device"});
  EXPECT_NEAR(choice.deratedAmpacity->count(), 95.0 * 0.82 * 0.7, 1e-9);
  EXPECT_DOUBLE_EQ(choice.ambientFactor->count(), 0.82);
  EXPECT_DOUBLE_EQ(choice.adjustmentFactor->count(), 0.7);
}

TEST(Conductor, NextSizeUpStopsAt800Amperes) {
  const auto allowed = [](int device, double ampacity, bool nextSizeUp = true) {
    return protects(RatingAmperes(device), ConductorSize::kcmil500, Metal::copper, AcAmperes(ampacity),
                    nextSizeUp, Edition::y2023);
  };
  EXPECT_TRUE(allowed(800, 701));
  EXPECT_TRUE(allowed(800, 790));
  EXPECT_FALSE(allowed(1000, 810));
  EXPECT_TRUE(allowed(1000, 1000));
  EXPECT_FALSE(allowed(60, 50));  // 50 A is itself a standard rating
  EXPECT_TRUE(allowed(60, 50.5));
  EXPECT_FALSE(allowed(60, 50.5, false));
}

TEST(Conductor, SmallConductorsKeepTheirLimit) {
  // 12 AWG has 25 A at 75 C and 10 AWG 35 A; 240.4(D) still holds them to 20 and 30 A.
  EXPECT_EQ(sizeFor(question(22, 25, true)), "10");
  EXPECT_EQ(sizeFor(question(33, 35, true)), "8");
  EXPECT_EQ(sizeFor(question(24, 25, true, Metal::aluminium)), "10");
  EXPECT_FALSE(
      protects(RatingAmperes(25), ConductorSize::awg12, Metal::copper, AcAmperes(25), true, Edition::y2023));
  ConductorQuestion q = question(22, 25, true);
  EXPECT_EQ(chooseConductor(q, Edition::y2023).governs.id, MessageId{"wiring.conductor.small"});
}

TEST(Conductor, WithoutALoadTheAmpacityReachesTheDevice) {
  ConductorQuestion q;
  q.device = RatingAmperes(60);
  // 55 A with the next size up would do for a known load; nothing is known here.
  EXPECT_EQ(sizeFor(q), "4");
  q.load = q.terminalLoad = AcAmperes(50);
  EXPECT_EQ(sizeFor(q), "6");
}

TEST(Conductor, NothingKnownGivesNoSize) {
  const ConductorChoice choice = chooseConductor({}, Edition::y2023);
  EXPECT_FALSE(choice.size);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.load_unknown"});
}

TEST(Conductor, BeyondTheTableSaysSo) {
  ConductorQuestion q = question(600, 600);
  ConductorChoice choice = chooseConductor(q, Edition::y2023);
  EXPECT_FALSE(choice.size);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.none_listed"});
  q = question(40, 40);
  q.conditions.ambient = Temperature::celsius(88);
  choice = chooseConductor(q, Edition::y2023);
  EXPECT_FALSE(choice.size);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.too_hot"});
  q.fixed = ConductorSize::awg6;
  choice = chooseConductor(q, Edition::y2023);
  EXPECT_TRUE(choice.tooSmall && choice.notProtected);
  EXPECT_EQ(choice.governs.id, MessageId{"wiring.conductor.too_hot"});
}

// ---- raceway

TEST(Conductor, NippleNeedsNoAdjustment) {
  RunConditions conditions;
  conditions.currentCarrying = 12;
  conditions.length = Length::inches(24);
  EXPECT_DOUBLE_EQ(ampacities(ConductorSize::awg8, conditions, RatingAmperes(40)).adjustment.count(), 1.0);
  conditions.length = Length::inches(24.5);
  EXPECT_DOUBLE_EQ(ampacities(ConductorSize::awg8, conditions, RatingAmperes(40)).adjustment.count(), 0.5);
  conditions.length = Length();  // not entered: no nipple
  EXPECT_DOUBLE_EQ(ampacities(ConductorSize::awg8, conditions, RatingAmperes(40)).adjustment.count(), 0.5);
}

TEST(Conductor, NeutralCountsOnAWye) {
  FeederRun run;
  run.currentCarrying = 2;
  EXPECT_EQ(runConditions(&run, false).currentCarrying, 2);
  EXPECT_EQ(runConditions(&run, true).currentCarrying, 3);
  run.currentCarrying = 7;
  EXPECT_EQ(runConditions(&run, true).currentCarrying, 7);
}

TEST(Conductor, ConditionsFollowTheRun) {
  FeederRun run;
  run.wiring = FeederWiring::nmCable;
  run.raceway = RacewayKind::none;
  run.metal = Metal::aluminium;
  run.insulation = Insulation::c75;
  run.ambient = Temperature::celsius(40);
  run.length = Length::feet(30);
  const RunConditions conditions = runConditions(&run, false);
  EXPECT_TRUE(conditions.nmCable);
  EXPECT_EQ(conditions.raceway, RacewayMaterial::pvc);
  EXPECT_EQ(conditions.metal, Metal::aluminium);
  EXPECT_EQ(conditions.insulation, TemperatureColumn::c75);
  EXPECT_EQ(conditions.ambient, Temperature::celsius(40));
  run.raceway = RacewayKind::steel;
  EXPECT_EQ(runConditions(&run, false).raceway, RacewayMaterial::steel);
  run.raceway = RacewayKind::aluminium;
  EXPECT_EQ(runConditions(&run, false).raceway, RacewayMaterial::aluminium);
  EXPECT_EQ(runConditions(nullptr, false).insulation, TemperatureColumn::c90);
}

// ---- a conductor that is there already

TEST(Conductor, FixedOneIsCheckedNotChosen) {
  struct Row {
    const char* size;
    bool tooSmall;
    bool notProtected;
  };
  // Load 40 A, device 50 A, terminals 60 C: 8 AWG carries 40 A, yet 50 A does not protect it (next size is 40
  // itself).
  for (const Row& row :
       {Row{"10", true, true}, Row{"8", false, true}, Row{"6", false, false}, Row{"2", false, false}}) {
    ConductorQuestion q = question(40, 50);
    q.fixed = conductorSizeNamed(row.size);
    const ConductorChoice choice = chooseConductor(q, Edition::y2023);
    EXPECT_TRUE(choice.fixed);
    EXPECT_EQ(sizeOf(choice), row.size);
    EXPECT_EQ(choice.tooSmall, row.tooSmall) << row.size;
    EXPECT_EQ(choice.notProtected, row.notProtected) << row.size;
    EXPECT_EQ(choice.required, ConductorSize::awg6) << row.size;
  }
}

TEST(Conductor, AluminiumHasNoFourteenGauge) {
  ConductorQuestion q = question(10, 15, false, Metal::aluminium);
  EXPECT_EQ(sizeFor(q), "12");
  q.fixed = ConductorSize::awg14;
  const ConductorChoice choice = chooseConductor(q, Edition::y2023);
  EXPECT_TRUE(choice.tooSmall && choice.notProtected);
}

}  // namespace
