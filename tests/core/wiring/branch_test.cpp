// Does the breaker of a branch circuit protect its conductor? NFPA 70 (2023) 240.4(B), 240.4(D), 240.4(G),
// 210.19(A)(1), 430.22, 440.32; ampacities of Table 310.16, 60 C.

#include "core/wiring/branch.h"

#include <gtest/gtest.h>

#include "core/code/conductors.h"
#include "core/wiring/branch_load.h"

using namespace stayalight;

namespace {

struct Part {
  LoadClass what = LoadClass::unknown;
  LoadKind kind = LoadKind::constantPower;
  StartKind start = StartKind::none;
  StartClass startClass = StartClass::unknown;
};
constexpr Part kElement{LoadClass::dryer, LoadKind::resistance};
constexpr Part kDrum{LoadClass::unknown, LoadKind::constantPower, StartKind::acrossTheLine,
                     StartClass::washerOrDoor};
constexpr Part kRange{LoadClass::cooking, LoadKind::resistance};
constexpr Part kFan{LoadClass::unknown, LoadKind::constantPower, StartKind::acrossTheLine,
                    StartClass::blower};
constexpr Part kStrips{LoadClass::supplementalHeat, LoadKind::resistance};
constexpr Part kHeatPump{LoadClass::heatPump, LoadKind::constantPower, StartKind::acrossTheLine,
                         StartClass::airConditioner};
constexpr Part kCondenser{LoadClass::airConditioning, LoadKind::constantPower, StartKind::acrossTheLine,
                          StartClass::airConditioner};
constexpr Part kMiniSplit{LoadClass::airConditioning, LoadKind::constantPower, StartKind::variableSpeed};
constexpr Part kHeatPumpWaterHeater{LoadClass::appliance, LoadKind::constantPower, StartKind::acrossTheLine,
                                    StartClass::refrigerationCompressor};
constexpr Part kPlainElement{LoadClass::unknown, LoadKind::resistance};
constexpr Part kPump{LoadClass::motor, LoadKind::constantPower, StartKind::acrossTheLine,
                     StartClass::wellPump};
constexpr Part kHeater{LoadClass::spaceHeating, LoadKind::resistance};
constexpr Part kCharger{LoadClass::vehicleCharger};

Circuit circuitWith(const std::vector<Part>& parts, int label) {
  Circuit circuit;
  circuit.voltage = VoltageClass::v240;
  circuit.severalReceptacles = Answer::no;
  for (const Part& part : parts) {
    Load& load = circuit.loads.emplace_back();
    load.connection = Connection::lineToLine;
    load.ratedVoltage = 240;
    load.calculationClass = part.what;
    load.kind = part.kind;
    load.start = part.start;
    load.startClass = part.startClass;
    if (label > 0) load.maximumBreaker = RatingAmperes(label);
  }
  return circuit;
}

BranchAnswer answerFor(const Circuit& circuit, ConductorSize size, Metal metal, int device) {
  return branchProtection({circuit, RatingAmperes(device), size, metal,
                           ampacity(size, metal, TemperatureColumn::c60), std::nullopt},
                          Edition::y2023);
}

struct Case {
  const char* what;
  std::vector<Part> parts;
  int label;
  ConductorSize size;
  int device;
  BranchProtection expected;
  const char* rule;
  int most;  ///< 0: holds, none named
};

TEST(Branch, TheExceptionForMotorsIsNoneForAppliancesAndHeat) {
  const auto awg12 = ConductorSize::awg12;
  const auto awg8 = ConductorSize::awg8;
  for (const Case& c : {
           // 240.4(D): 12 AWG copper takes 20 A, whatever the plate of a dryer says.
           Case{"dryer", {kElement, kDrum}, 30, awg12, 30, BranchProtection::over, "conductor.small", 20},
           Case{"dryer without a label",
                {kElement, kDrum},
                0,
                awg12,
                30,
                BranchProtection::over,
                "conductor.small",
                20},
           Case{"dryer as one load",
                {Part{LoadClass::dryer, LoadKind::constantPower, StartKind::acrossTheLine}},
                30,
                awg12,
                30,
                BranchProtection::over,
                "conductor.small",
                20},
           Case{"dishwasher",
                {kPlainElement, kDrum},
                25,
                awg12,
                25,
                BranchProtection::over,
                "conductor.small",
                20},
           Case{"heat pump water heater",
                {kHeatPumpWaterHeater},
                30,
                awg12,
                30,
                BranchProtection::over,
                "conductor.small",
                20},
           Case{"charger", {kCharger}, 30, awg12, 30, BranchProtection::over, "conductor.small", 20},
           Case{"air handler with strips",
                {kStrips, kFan},
                30,
                awg12,
                30,
                BranchProtection::over,
                "conductor.small",
                20},
           // 8 AWG of 40 A: 40 A is a standard rating, so 45 A is not the next one above.
           Case{"range with a fan",
                {kRange, kFan},
                50,
                awg8,
                50,
                BranchProtection::over,
                "conductor.protected",
                40},
           // 240.4(G)
           Case{
               "pump", {kPump}, 30, awg12, 30, BranchProtection::labelAllows, "conductor.motor_exception", 0},
           Case{"pump without a label",
                {kPump},
                0,
                awg12,
                30,
                BranchProtection::readLabel,
                "conductor.motor_exception",
                0},
           Case{"furnace",
                {kFan, Part{}},
                30,
                awg12,
                30,
                BranchProtection::labelAllows,
                "conductor.motor_exception",
                0},
           Case{"condenser",
                {kCondenser},
                30,
                awg12,
                30,
                BranchProtection::labelAllows,
                "conductor.motor_exception",
                0},
           Case{"mini-split",
                {kMiniSplit},
                30,
                awg12,
                30,
                BranchProtection::labelAllows,
                "conductor.motor_exception",
                0},
           Case{"heat pump with strips",
                {kHeatPump, kStrips},
                60,
                awg8,
                60,
                BranchProtection::labelAllows,
                "conductor.motor_exception",
                0},
           // The label is the greatest that holds, not 240.4(D).
           Case{"condenser above its label",
                {kCondenser},
                35,
                ConductorSize::awg10,
                40,
                BranchProtection::over,
                "conductor.small",
                35},
           Case{"something with a label",
                {Part{}},
                30,
                awg12,
                30,
                BranchProtection::readLabel,
                "conductor.motor_exception",
                0},
       }) {
    const Circuit circuit = circuitWith(c.parts, c.label);
    const BranchAnswer answer = answerFor(circuit, c.size, Metal::copper, c.device);
    EXPECT_EQ(answer.protection, c.expected) << c.what;
    EXPECT_EQ(answer.rule.key, c.rule) << c.what;
    EXPECT_EQ(answer.most, c.most > 0 ? std::optional(RatingAmperes(c.most)) : std::nullopt) << c.what;
  }
}

TEST(Branch, TheGreatestBreakerNamedIsTheGreatestThatHolds) {
  // 240.4(B) and 240.6(A): 6 AWG Cu 55 A takes 60 A, 3 AWG Cu 85 A and 1 AWG Al 85 A take 90 A, 2 AWG Al 75 A
  // takes 80 A.
  struct Row {
    ConductorSize size;
    Metal metal;
    int device;
    int most;
  };
  for (const Row& row :
       {Row{ConductorSize::awg6, Metal::copper, 70, 60}, Row{ConductorSize::awg3, Metal::copper, 100, 90},
        Row{ConductorSize::awg1, Metal::aluminium, 100, 90},
        Row{ConductorSize::awg2, Metal::aluminium, 100, 80}}) {
    Circuit circuit = circuitWith({kRange}, 0);
    const BranchAnswer over = answerFor(circuit, row.size, row.metal, row.device);
    EXPECT_EQ(over.protection, BranchProtection::over);
    EXPECT_EQ(over.most, RatingAmperes(row.most)) << name(row.size);
    const BranchAnswer there = answerFor(circuit, row.size, row.metal, row.most);
    EXPECT_EQ(there.protection, BranchProtection::holds);
    EXPECT_EQ(there.rule.key, "conductor.next_size_up");
    // Several receptacles bar the next size up: the largest within the ampacity is left.
    circuit.severalReceptacles = Answer::yes;
    EXPECT_LE(answerFor(circuit, row.size, row.metal, row.device).most->amperes(),
              *ampacity(row.size, row.metal, TemperatureColumn::c60));
  }
}

TEST(Branch, TheLoadIsCountedByTheArticleItGoesBy) {
  struct Row {
    const char* what;
    Part part;
    double amperes;
    bool continuous;
    int label;
    ConductorSize size;
    int device;
    double asked;  ///< 0: holds
    const char* rule;
  };
  for (const Row& row : {
           // 210.19(A)(1): the load itself; 125 % of it where it is continuous. 6 AWG has 55 A.
           Row{"element", kPlainElement, 58, false, 0, ConductorSize::awg6, 60, 58.0, "branch.load"},
           Row{"element within", kPlainElement, 54, false, 0, ConductorSize::awg6, 60, 0.0, ""},
           Row{"lasting element", kPlainElement, 47, true, 0, ConductorSize::awg6, 60, 58.75, "branch.load"},
           Row{"lasting within", kPlainElement, 44, true, 0, ConductorSize::awg6, 60, 0.0, ""},
           Row{"space heater", kHeater, 47, false, 0, ConductorSize::awg6, 60, 58.75, "branch.load"},
           // A motor in an appliance adds nothing.
           Row{"dryer", kElement, 54, false, 0, ConductorSize::awg6, 60, 0.0, ""},
           // 430.22 and 440.32: a quarter more, lasting or not. 12 AWG has 20 A.
           Row{"pump", kPump, 17, false, 30, ConductorSize::awg12, 30, 21.25, "motor.conductor"},
           Row{"pump within", kPump, 16, true, 30, ConductorSize::awg12, 30, 0.0, ""},
           Row{"condenser", kCondenser, 17, false, 30, ConductorSize::awg12, 30, 21.25,
               "air_conditioning.conductor"},
           Row{"mini-split", kMiniSplit, 17, false, 30, ConductorSize::awg12, 30, 21.25,
               "air_conditioning.conductor"},
       }) {
    Circuit circuit = circuitWith({row.part}, row.label);
    circuit.loads.front().nameplate = VoltAmperes(240.0 * row.amperes);
    circuit.loads.front().continuous = row.continuous;
    const BranchAnswer answer = answerFor(circuit, row.size, Metal::copper, row.device);
    EXPECT_EQ(answer.protection == BranchProtection::loadAboveAmpacity, row.asked > 0.0) << row.what;
    if (row.asked <= 0.0) continue;
    ASSERT_TRUE(answer.asked) << row.what;
    EXPECT_NEAR(answer.asked->count(), row.asked, 1e-9) << row.what;
    EXPECT_EQ(answer.rule.key, row.rule) << row.what;
  }
}

TEST(Branch, OneRangeCountsByItsTable) {
  // NFPA 70 (2023) Table 220.55 Note 4, column C: 12 kW is 8 kW, 16 kW is 20 % more; below 8.75 kW and for an
  // oven the nameplate.
  EXPECT_NEAR(rangeShare(VoltAmperes(12000), Edition::y2023) * 12000, 8000, 1e-9);
  EXPECT_NEAR(rangeShare(VoltAmperes(16000), Edition::y2023) * 16000, 9600, 1e-9);
  EXPECT_DOUBLE_EQ(rangeShare(VoltAmperes(8000), Edition::y2023), 1.0);
  Circuit circuit = circuitWith({kRange}, 0);
  circuit.loads.front().nameplate = VoltAmperes(16000);
  EXPECT_NEAR(askedByLoads(circuit, Edition::y2023).conductor.count(), 40.0, 1e-9);
}

TEST(Branch, SomeLoadsLastByWhatTheyAre) {
  // NFPA 70 424.4(B), 422.13, 625.42, from memory.
  Circuit circuit = circuitWith({kHeater}, 0);
  circuit.loads.front().nameplate = VoltAmperes(240.0 * 20.0);
  EXPECT_NEAR(askedByLoads(circuit, Edition::y2023).terminal.count(), 25.0, 1e-9);
  Load tank;
  tank.kind = LoadKind::resistance;
  EXPECT_FALSE(countsAsContinuous(tank));
  tank.catalogueId = "water_heater";
  EXPECT_TRUE(countsAsContinuous(tank));
  Load charger;
  charger.calculationClass = LoadClass::vehicleCharger;
  EXPECT_TRUE(countsAsContinuous(charger));
}

TEST(Branch, LastingLoadCountsAtTheTerminalsAndNotInTheRaceway) {
  // 210.19(A)(1)(a) is before adjustment: 44 A lasting asks 55 A of the terminals, and 44 A of the wire.
  Circuit circuit = circuitWith({kHeater}, 0);
  circuit.loads.front().nameplate = VoltAmperes(240.0 * 44.0);
  circuit.loads.front().continuous = true;
  const auto with = [&](double derated) {
    return branchProtection({circuit, RatingAmperes(60), ConductorSize::awg6, Metal::copper,
                             AcAmperes(derated), AcAmperes(55)},
                            Edition::y2023)
        .protection;
  };
  EXPECT_EQ(with(52.5), BranchProtection::holds);
  EXPECT_EQ(with(51.0), BranchProtection::holds);
}

}  // namespace
