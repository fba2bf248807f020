// No cell of the tables is without effect: each one, changed alone and handed in by the circumstances,
// changes an answer of assess(). So no room reads the published tables behind its back.

#include <gtest/gtest.h>

#include <cstdio>
#include <map>

#include "core/assess/assess.h"
#include "core/code/raceways.h"
#include "tests/core/assess/table_cells.h"
#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using feeder::editRun;

namespace {

using Numbers = std::vector<double>;

// Answers only, no inputs: what a working records as results, and the figures of the rooms.
Numbers answersOf(const Plan& plan, const Tables& tables, bool sentences) {
  const Assessment found = assess(plan, {.record = true, .tables = &tables});
  Numbers all;
  const auto add = [&](double value) { all.push_back(value); };
  const auto current = [&](const std::optional<AcAmperes>& value) { add(value ? value->count() : -1.0); };
  const auto rating = [&](const std::optional<RatingAmperes>& value) { add(value ? value->count() : -1.0); };
  const auto size = [&](const std::optional<ConductorSize>& value) {
    add(value ? static_cast<int>(*value) : -1);
  };
  for (const Step& step : found.working.steps()) add(step.result);
  for (const SegmentFigures& segment : found.segments) {
    rating(segment.device.rating);
    current(segment.conductor.terminalAmpacity);
    current(segment.conductor.deratedAmpacity);
    size(segment.conductor.required);
    add(segment.conductor.notProtected ? 1 : 0);
    size(segment.neutral);
    size(segment.ground);
  }
  if (found.dcCable) add(found.dcCable->drop.value_or(DcVolts(-1)).count());
  for (const BusFigures& bus : found.buses) {
    for (const BusOptionFigure& option : bus.options) {
      current(option.sum);
      current(option.most);
    }
  }
  for (const BuildingFigures& building : found.buildings) {
    size(building.electrodeConductor);
    add(building.leastDisconnect.count());
  }
  for (const RacewayFigures& raceway : found.raceways) {
    add(raceway.area.count());
    add(raceway.inside.count());
    add(raceway.allowed.count());
    add(raceway.adjustment.count());
    for (const RacewayBranch& branch : raceway.branches) current(branch.ampacity.governing);
  }
  for (const SpliceBoxFigures& box : found.boxes) {
    add(box.needed.count());
    add(box.volume.value_or(CubicInches(-1)).count());
  }
  for (const WiringSpaceFigures& space : found.wiringSpaces) add(static_cast<int>(space.verdict));
  for (const MotorStart& motor : found.starts.motors) {
    add(motor.current.low.count());
    add(motor.current.likely.count());
  }
  add(found.demand.feeder.total.count());
  add(found.demand.feeder.neutral.count());
  for (const Finding& finding : found.findings) {
    for (const char c : finding.key) add(c);
    if (!sentences) continue;
    for (const char c : render(finding.trade, plainEnglish())) add(c);
  }
  return all;
}

using Plans = std::vector<Plan>;

FeederRun& fixed(Plan& plan, Segment segment, ConductorSize size, Metal metal, Insulation insulation) {
  FeederRun& run = editRun(plan, segment);
  run.fixedConductor = size;
  run.metal = metal;
  run.insulation = insulation;
  return run;
}

// Every size and metal in the wall, in the three insulations and the three kinds of raceway.
Plans runsOfEachSize() {
  Plans plans;
  for (std::size_t s = 0; s < kConductorSizeCount; ++s) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      const auto size = static_cast<ConductorSize>(s);
      Plan plan = feeder::manualSwitch();
      fixed(plan, Segment::mainToSwitch, size, metal, Insulation::c60).raceway = RacewayKind::pvc;
      fixed(plan, Segment::inverterToSwitch, size, metal, Insulation::c75).raceway = RacewayKind::aluminium;
      fixed(plan, Segment::switchToBackup, size, metal, Insulation::c90).raceway = RacewayKind::steel;
      plan.dcCable.edit().fixedConductor = size;
      plan.dcCable.edit().metal = metal;
      plan.dcCable.edit().length = Length::feet(10);
      plans.push_back(plan);
    }
  }
  // Small wires made larger, and their grounds with them.
  for (const int device : {15, 20}) {
    Plan plan = feeder::manualSwitch();
    plan.transfer.edit().calculatedLoad = VoltAmperes(240.0 * device);
    plan.transfer.edit().continuousPart = VoltAmperes(0.0);
    FeederRun& run = fixed(plan, Segment::mainToSwitch, ConductorSize::awg6, Metal::copper, Insulation::c90);
    run.fixedDevice = RatingAmperes(device);
    run.ambient = Temperature::celsius(70);  // asks for a larger wire than the device alone
    for (auto& breaker : plan.breakers) {
      if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(device);
    }
    plans.push_back(plan);
  }
  return plans;
}

// At the end of each row and just above it.
Plans ambients() {
  Plans plans;
  for (const AmbientRow& row : publishedTables().ambient) {
    for (const double celsius : {row.upToCelsius, row.upToCelsius + 0.2}) {
      Plan plan = feeder::manualSwitch();
      for (const auto& [segment, insulation] : {std::pair{Segment::mainToSwitch, Insulation::c60},
                                                std::pair{Segment::inverterToSwitch, Insulation::c75},
                                                std::pair{Segment::switchToBackup, Insulation::c90}})
        fixed(plan, segment, ConductorSize::awg4, Metal::copper, insulation).ambient =
            Temperature::celsius(celsius);
      plans.push_back(plan);
    }
  }
  return plans;
}

Plans counts() {
  Plans plans;
  for (const AdjustmentRow& row : publishedTables().adjustment) {
    for (const int count : {row.from, std::max(row.from, row.to)}) {
      Plan plan = feeder::manualSwitch();
      fixed(plan, Segment::mainToSwitch, ConductorSize::awg4, Metal::copper, Insulation::c90)
          .currentCarrying = count;
      plans.push_back(plan);
    }
  }
  return plans;
}

// A load that asks for exactly each rating, in the editions on both sides of the newest row.
Plans ratedLoads() {
  Plans plans;
  for (const StandardRatingRow& row : publishedTables().ratings) {
    for (const Edition edition : kEditions) {
      Plan plan = feeder::manualSwitch();
      plan.site.edit().edition = edition;
      plan.transfer.edit().calculatedLoad = VoltAmperes(240.0 * row.amperes);
      plan.transfer.edit().continuousPart = VoltAmperes(0.0);
      plans.push_back(plan);
    }
  }
  return plans;
}

Plans smallDevices() {
  Plans plans;
  for (const SmallConductorRow& row : publishedTables().smallConductors) {
    for (const int device : {row.amperes, row.amperes + 1}) {
      Plan plan = feeder::manualSwitch();
      fixed(plan, Segment::mainToSwitch, row.size, row.metal, Insulation::c90).fixedDevice =
          RatingAmperes(device);
      for (auto& breaker : plan.breakers) {
        if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(device);
      }
      plans.push_back(plan);
    }
  }
  return plans;
}

Plans groundedDevices() {
  Plans plans;
  for (const GroundingRow& row : publishedTables().grounding) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      for (const int device : {row.deviceUpTo, row.deviceUpTo + 1}) {
        Plan plan = feeder::manualSwitch();
        FeederRun& run = editRun(plan, Segment::mainToSwitch);
        run.metal = metal;
        run.fixedDevice = RatingAmperes(device);
        for (auto& breaker : plan.breakers) {
          if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(device);
        }
        plans.push_back(plan);
      }
    }
  }
  return plans;
}

// Every size and metal leads to a building apart.
Plans buildings() {
  Plans plans;
  for (std::size_t s = 0; s < kConductorSizeCount; ++s) {
    for (const Metal metal : {Metal::copper, Metal::aluminium}) {
      Plan plan = feeder::manualSwitch();
      example::editPanel(plan, example::kBackup).separateBuilding = true;
      for (const Segment segment :
           {Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup})
        fixed(plan, segment, static_cast<ConductorSize>(s), metal, Insulation::c90);
      plans.push_back(plan);
    }
  }
  return plans;
}

Plans motors() {
  Plans plans;
  for (const MotorRow& row : publishedTables().fullLoad) {
    for (const double horsepower : {row.horsepower, row.horsepower * 1.03}) {
      Plan plan = feeder::manualSwitch();
      plan.transfer.edit().calculatedLoad.reset();
      plan.transfer.edit().continuousPart.reset();
      for (const char* name : {"Refrigerator", "Office", "Well pump", "Furnace"}) {
        Load& load = example::editCircuit(plan, example::circuitNamed(plan, name)).loads.front();
        load.lockedRotor = {};
        load.start = StartKind::acrossTheLine;
        load.horsepower = Horsepower(horsepower);
        load.calculationClass = LoadClass::motor;
        const std::string_view which = name;
        load.ratedVoltage = which == "Refrigerator" ? 120
                            : which == "Office"     ? 200
                            : which == "Well pump"  ? 240
                                                    : 208;
      }
      plans.push_back(plan);
    }
  }
  for (const CodeLetterRow& row : publishedTables().codeLetters) {
    Plan plan = feeder::manualSwitch();
    Load& load = example::editCircuit(plan, example::circuitNamed(plan, "Well pump")).loads.front();
    load.lockedRotor = {};
    load.horsepower = Horsepower(1.0);
    load.codeLetter = std::string(1, row.letter);
    plans.push_back(plan);
  }
  return plans;
}

// One circuit of each size and insulation alone in a raceway, spliced in a box; and each raceway, each box.
Plans roomOfEachSize() {
  Plans plans;
  const auto spliced = [](Plan& plan, ConductorSize size, WireType wire) {
    plan.raceways.clear();
    plan.spliceBoxes.clear();
    Raceway raceway;
    raceway.id = nextRacewayId(plan);
    raceway.name = "Pipe";
    raceway.length = Length::feet(6);
    plan.raceways.emplace_back(raceway);
    SpliceBox box;
    box.id = nextSpliceBoxId(plan);
    box.name = "Box";
    plan.spliceBoxes.emplace_back(box);
    for (const char* name : {"Lights", "Office", "Furnace", "Refrigerator", "Well pump"}) {
      Circuit& circuit = example::editCircuit(plan, example::circuitNamed(plan, name));
      circuit.conductor = size;
      circuit.extension = size;
      circuit.extensionWire = wire;
      circuit.raceway = raceway.id;
      circuit.splice = Splice::inBox;
      circuit.spliceBox = box.id;
    }
  };
  for (std::size_t s = 0; s < kConductorSizeCount; ++s) {
    for (const WireType wire : {WireType::thwn2, WireType::xhhw2}) {
      Plan plan = feeder::manualSwitch();
      spliced(plan, static_cast<ConductorSize>(s), wire);
      plans.push_back(plan);
    }
  }
  for (std::size_t type = 0; type < ChoiceWords<RacewayType>::words.size(); ++type) {
    for (std::size_t size = 0; size < ChoiceWords<TradeSize>::words.size(); ++size) {
      Plan plan = feeder::manualSwitch();
      spliced(plan, ConductorSize::awg12, WireType::thwn2);
      plan.raceways[0].edit().type = static_cast<RacewayType>(type);
      plan.raceways[0].edit().size = static_cast<TradeSize>(size);
      plans.push_back(plan);
    }
  }
  for (std::size_t kind = 0; kind < ChoiceWords<BoxKind>::words.size(); ++kind) {
    Plan plan = feeder::manualSwitch();
    spliced(plan, ConductorSize::awg12, WireType::thwn2);
    plan.spliceBoxes[0].edit().kind = static_cast<BoxKind>(kind);
    plans.push_back(plan);
  }
  // One, two, three and more in the raceway.
  for (const int others : {1, 2, 3, 8}) {
    Plan plan = feeder::manualSwitch();
    Raceway raceway;
    raceway.id = nextRacewayId(plan);
    raceway.otherCarrying = others;
    raceway.otherArea = SquareInches(0.02 * others);
    raceway.length = Length::feet(6);
    plan.raceways.emplace_back(raceway);
    plans.push_back(plan);
  }
  return plans;
}

// Plans that stand where the small numbers decide.
Plans numbers() {
  Plans plans = roomOfEachSize();
  plans.resize(4);
  Plan plan = feeder::manualSwitch();
  plans.push_back(plan);
  // Joints in the gutter of the main panel.
  Plan spliced = plan;
  Circuit& lights = example::editCircuit(spliced, example::circuitNamed(spliced, "Lights"));
  lights.splice = Splice::inPanel;
  lights.conductor = lights.extension = ConductorSize::awg12;
  example::editPanel(spliced, example::kMain).wiringSpace = SquareInches(2.0);
  // An extension longer than the arc-fault rule leaves alone.
  lights.arcFaultArea = Answer::yes;
  lights.extensionLength = Length::feet(6.2);
  plans.push_back(spliced);
  // Cable on terminals marked 75 C, a long run, a raceway that is a nipple.
  Plan cable = plan;
  FeederRun& run = fixed(cable, Segment::mainToSwitch, ConductorSize::awg6, Metal::copper, Insulation::c90);
  run.wiring = FeederWiring::nmCable;
  run.length = Length::feet(400);
  Raceway nipple;
  nipple.id = nextRacewayId(cable);
  nipple.length = Length::inches(24);
  nipple.otherCarrying = 4;
  nipple.otherArea = SquareInches(0.1);
  cable.raceways.emplace_back(nipple);
  plans.push_back(cable);
  nipple.length = Length::inches(24.5);
  cable.raceways[0] = nipple;
  plans.push_back(cable);
  // Terminals of the limit, and devices at the limit of the next size up.
  for (const int device : {100, 101, 800, 801}) {
    Plan large = plan;
    FeederRun& feeder =
        fixed(large, Segment::mainToSwitch, ConductorSize::kcmil500, Metal::copper, Insulation::c90);
    feeder.terminalsFrom75 = Answer::no;
    feeder.fixedDevice = RatingAmperes(device);
    plans.push_back(large);
  }
  for (const ConductorSize size : {ConductorSize::awg2, ConductorSize::awg1, ConductorSize::awg1_0}) {
    Plan unknown = plan;
    unknown.transfer.edit().calculatedLoad.reset();
    for (auto& breaker : unknown.breakers) {
      if (breaker->feeds.is(Feeds::feeder)) breaker.edit().stage = Stage::removed;
    }
    fixed(unknown, Segment::mainToSwitch, size, Metal::copper, Insulation::c90).terminalsTo75 = Answer::no;
    plans.push_back(unknown);
  }
  // Range and dryer on the backup subpanel, and a neutral above 200 A.
  Plan cooking = plan;
  cooking.transfer.edit().calculatedLoad.reset();
  for (const auto& [name, use, watts] : {std::tuple{"Range", LoadClass::cooking, 12000.0},
                                         std::tuple{"Well pump", LoadClass::dryer, 5000.0}}) {
    Load& load = example::editCircuit(cooking, example::circuitNamed(cooking, name)).loads.front();
    load.calculationClass = use;
    load.nameplate = VoltAmperes(watts);
  }
  example::moveByHand(cooking, example::circuitNamed(cooking, "Range"), example::kBackup, {Column::left, 3});
  plans.push_back(cooking);
  Plan neutral = plan;
  neutral.transfer.edit().calculatedLoad = VoltAmperes(90000);
  neutral.transfer.edit().neutralLoad = VoltAmperes(42000);
  plans.push_back(neutral);
  // A second source on the bus, and a leg between the margin and its limit.
  Plan solar = plan;
  const BreakerId source =
      example::addBreaker(solar, example::kMain, {Column::left, 10}, 1, 20, Feeds::solar);
  example::editBreaker(solar, source).sourceCurrent = AcAmperes(16);
  solar.inverter.edit().legCurrent = AcAmperes(8.5);
  plans.push_back(solar);
  // A drop a little above the advice, and a leg a little above the margin.
  Plan longRun = plan;
  FeederRun& way = editRun(longRun, Segment::mainToSwitch);
  const auto drop = feeder::at(assess(longRun).segments, Segment::mainToSwitch).drop;
  way.length = Length::feet(way.length.inFeet() * 0.0302 / std::max(drop->fraction[0], drop->fraction[1]));
  plans.push_back(longRun);
  Plan nearly = plan;
  nearly.inverter.edit().legContinuous.reset();
  const auto& legs = assess(nearly).hour.leg;
  nearly.inverter.edit().legCurrent =
      std::max(legs[0].likelyPeakCurrent.likely, legs[1].likelyPeakCurrent.likely) / 0.81;
  plans.push_back(nearly);
  Plan wye = plan;
  wye.site.edit().service = ServiceSystem::wye120_208;
  plans.push_back(wye);
  // 20 A is in the arc-fault rule, a little more is not.
  for (const int device : {20, 21}) {
    Plan arc = spliced;
    for (auto& circuit : arc.circuits) {
      if (circuit->name != "Lights") continue;
      example::editBreaker(arc, circuit->planned).rating = RatingAmperes(device);
    }
    plans.push_back(arc);
  }
  // A building of one circuit, of two, of more, its main breaker as large as each asks, and no larger.
  for (const int circuits : {1, 2, 3}) {
    Plan garage = plan;
    Panel& panel = example::editPanel(garage, example::kBackup);
    panel.separateBuilding = true;
    int kept = 0;
    for (auto& circuit : garage.circuits) {
      if (backedUp(garage, *circuit) && kept++ >= circuits) circuit.edit().planned = {};
    }
    for (const int main : {15, 30, 60}) {
      panel.mainBreaker = RatingAmperes(main);
      plans.push_back(garage);
    }
  }
  Plan generator = plan;
  generator.generator.edit().comesIn = GeneratorPoint::transfer;
  generator.generator.edit().ratedCurrent = AcAmperes(30);
  plans.push_back(generator);
  return plans;
}

const std::map<std::string, Plans (*)()>& questions() {
  static const std::map<std::string, Plans (*)()> all = {
      {"ampacity", runsOfEachSize},
      {"conductor_impedance", runsOfEachSize},
      {"conductor_properties", runsOfEachSize},
      {"ambient_correction", ambients},
      {"adjustment", counts},
      {"standard_ratings", ratedLoads},
      {"small_conductors", smallDevices},
      {"grounding_conductors", groundedDevices},
      {"electrode_conductors", buildings},
      {"motor_full_load", motors},
      {"motor_locked_rotor", motors},
      {"motor_code_letters", motors},
      {"conductor_areas", roomOfEachSize},
      {"raceway_areas", roomOfEachSize},
      {"raceway_fill", roomOfEachSize},
      {"box_conductor_volumes", roomOfEachSize},
      {"box_volumes", roomOfEachSize},
      {"code_numbers", numbers},
  };
  return all;
}

// Cells that no answer can depend on, and why.
bool excepted(const cells::Cell& cell) {
  // Shown beside the size; nothing is worked out from it.
  if (cell.name.ends_with(" mm2")) return true;
  // No single conductor of the table carries what a device of 800 A asks for: the limit is above all that is
  // asked.
  return cell.name == "next_size_up_limit";
}

TEST(Cells, EachOneChangedAloneChangesAnAnswer) {
  std::map<std::string, std::pair<Plans, std::vector<Numbers>>> asked;
  for (const auto& [table, make] : questions()) {
    auto& [plans, answers] = asked[table];
    plans = make();
    for (const Plan& plan : plans)
      answers.push_back(answersOf(plan, publishedTables(), table == "code_numbers"));
  }
  int all = 0, reached = 0;
  std::map<std::string, std::size_t> first;  // neighbours in the list mostly change neighbouring plans
  for (const cells::Cell& cell : cells::cells()) {
    if (excepted(cell)) continue;
    const auto& [plans, answers] = asked.at(cell.table);
    std::size_t& start = first[cell.table];
    bool changes = false;
    for (const auto& change : cell.changes) {
      Tables tables = publishedTables();
      change(tables);
      for (std::size_t i = 0; i < plans.size() && !changes; ++i) {
        const std::size_t at = (start + i) % plans.size();
        changes = answersOf(plans[at], tables, cell.table == "code_numbers") != answers[at];
        if (changes) start = at;
      }
      if (changes) break;
    }
    ++all;
    reached += changes ? 1 : 0;
    EXPECT_TRUE(changes) << cell.table << ": " << cell.name;
  }
  std::printf("%d of %d cells, changed alone, change an answer\n", reached, all);
}

}  // namespace
