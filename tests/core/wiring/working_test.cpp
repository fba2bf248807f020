// Every printed formula of the feeder, read by muParser (Debian) on the inputs that were written down, gives
// the result that was written down; and writing down changes no figure.

#include <gtest/gtest.h>
#include <muParser.h>

#include <cmath>
#include <set>

#include "core/wiring/building.h"
#include "core/wiring/bus.h"
#include "core/wiring/dc_cable.h"
#include "core/wiring/raceway.h"
#include "core/wiring/splice.h"
#include "core/wiring/wiring_space.h"
#include "tests/core/demand/calculated_house.h"
#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using namespace stayalight::feeder;

namespace {

void expectEvaluates(const Working& working, std::set<std::string>& seen) {
  const auto steps = working.steps();
  for (std::size_t s = 0; s < steps.size(); ++s) {
    const Step& step = steps[s];
    seen.insert(std::string(step.formula.key));
    ASSERT_NE(formulaOf(step.formula), nullptr) << step.formula.key;
    mu::Parser parser;
    const std::vector<std::string> names = evaluableNames(step);
    for (std::size_t i = 0; i < names.size(); ++i) parser.DefineConst(names[i], step.inputs[i].value);
    parser.SetExpr(evaluableExpression(step));
    EXPECT_NEAR(parser.Eval(), step.result, 1e-9 * (1.0 + std::abs(step.result))) << step.formula.key;
    for (const StepInput& input : step.inputs) {
      EXPECT_TRUE(input.step != kNoStep || !input.from.empty()) << step.formula.key << ' ' << input.symbol;
      if (input.step == kNoStep) continue;
      ASSERT_LT(static_cast<std::size_t>(input.step), s) << step.formula.key;
      EXPECT_DOUBLE_EQ(input.value, steps[static_cast<std::size_t>(input.step)].result) << step.formula.key;
    }
  }
}

TEST(WiringWorking, EveryFormulaGivesTheRecordedResult) {
  std::set<std::string> seen;
  std::vector<Plan> plans = {manualSwitch(), passThrough(), manualSwitch(), passThrough()};
  editRun(plans[2], Segment::mainToSwitch).fixedConductor = ConductorSize::awg2;
  plans[2].transfer.edit().neutralLoad = VoltAmperes(30000);
  plans[2].inverter.edit().legCurrent.reset();
  plans[2].site.edit().edition = Edition::y2017;
  plans[3].inverter.edit().addsToPassThrough = Answer::yes;
  plans[3].site.edit().service = ServiceSystem::wye120_208;
  plans.push_back(calculated::house());
  addRun(plans.back(), Segment::mainToSwitch);
  for (const Plan& plan : plans) {
    Working working;
    (void)figuresOf(plan, &working);
    expectEvaluates(working, seen);
  }
  Plan piped = manualSwitch();
  Raceway raceway;
  raceway.id = {1};
  piped.raceways.emplace_back(raceway);
  SpliceBox box;
  box.id = {1};
  piped.spliceBoxes.emplace_back(box);
  for (auto& circuit : piped.circuits) {
    Circuit& changed = circuit.edit();
    changed.conductor = ConductorSize::awg12;
    changed.splice = Splice::inBox;
    changed.spliceBox = box.id;
    changed.raceway = raceway.id;
  }
  piped.inverter.edit().lowestInputVoltage = DcVolts(44);
  piped.dcCable.edit().length = Length::feet(5);
  piped.dcCable.edit().instructionsDevice = RatingAmperes(175);
  piped.spliceBoxes[0].edit().kind = BoxKind::square4Deep;
  {
    Circuit& cable = piped.circuits.front().edit();
    cable.splice = Splice::none;
    cable.wiring = WiringMethod::nmCable;
    cable.cableWidth = Length::inches(0.5);
  }
  example::editPanel(piped, example::kMain).busRating = RatingAmperes(200);
  example::addBreaker(piped, example::kMain, {Column::right, 9}, 2, 20, Feeds::solar, Stage::fresh);
  Plan generator = manualSwitch();
  generator.generator.edit().comesIn = GeneratorPoint::transfer;
  generator.generator.edit().ratedCurrent = AcAmperes(30);
  Working ofGenerator;
  (void)figuresOf(generator, &ofGenerator);
  expectEvaluates(ofGenerator, seen);
  Working shared;
  (void)dcCableFigures(piped, Edition::y2023, &shared);
  (void)busFigures(piped, inverterLimits(*piped.inverter), {}, &shared);
  example::editPanel(piped, example::kBackup).separateBuilding = true;
  (void)buildingFigures(piped, figuresOf(piped), &shared);
  (void)racewayFigures(piped, {}, Edition::y2023, &shared);
  (void)spliceBoxFigures(piped, Edition::y2023, &shared);
  for (auto& circuit : piped.circuits) circuit.edit().splice = Splice::inPanel;
  example::editPanel(piped, example::kMain).wiringSpace = SquareInches(6.0);
  (void)wiringSpaceFigures(piped, {}, &shared);
  expectEvaluates(shared, seen);
  for (const FormulaRow& row : formulas()) {
    if (row.key.starts_with("wiring.")) {
      EXPECT_TRUE(seen.count(std::string(row.key))) << row.key << " is never written down";
    }
  }
}

TEST(WiringWorking, CellsAreNamedByTheEdition) {
  Plan plan = manualSwitch();
  plan.site.edit().edition = Edition::y2017;
  Working working;
  (void)figuresOf(plan, &working);
  bool found = false;
  for (const Step& step : working.steps()) {
    for (const StepInput& input : step.inputs)
      found = found || input.from == "Table 310.15(B)(16), 6 AWG Cu, 75 C";
  }
  EXPECT_TRUE(found);
}

TEST(WiringWorking, ChangesNoFigure) {
  for (const Plan& plan : {manualSwitch(), passThrough()}) {
    Working working;
    const auto with = figuresOf(plan, &working);
    const auto without = figuresOf(plan);
    ASSERT_EQ(with.size(), without.size());
    for (std::size_t i = 0; i < with.size(); ++i) {
      EXPECT_EQ(with[i].device.rating, without[i].device.rating);
      EXPECT_EQ(with[i].device.minimum, without[i].device.minimum);
      EXPECT_EQ(with[i].conductor.size, without[i].conductor.size);
      EXPECT_EQ(with[i].conductor.ampacity, without[i].conductor.ampacity);
      EXPECT_EQ(with[i].neutral, without[i].neutral);
      EXPECT_EQ(with[i].ground, without[i].ground);
      ASSERT_EQ(with[i].drop.has_value(), without[i].drop.has_value());
      if (with[i].drop) {
        EXPECT_EQ(with[i].drop->leg, without[i].drop->leg);
      }
    }
    EXPECT_FALSE(working.empty());
  }
}

}  // namespace
