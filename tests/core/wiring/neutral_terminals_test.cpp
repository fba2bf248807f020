// How many neutrals land on the bar of each panel. NFPA 70 (2023) 408.41: one to a terminal.

#include "core/wiring/neutral_terminals.h"

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using example::kBackup;
using example::kMain;

namespace {

NeutralTerminals of(const Plan& plan, PanelId panel) {
  for (const NeutralTerminals& figures : neutralTerminals(plan)) {
    if (figures.panel == panel) return figures;
  }
  throw std::runtime_error("no such panel");
}

CircuitId add(Plan& plan, PanelId panel, SpacePosition place, VoltageClass voltage, std::int32_t group = 0) {
  const CircuitId id = example::addCircuit(plan, panel, place, voltage == VoltageClass::v120 ? 1 : 2, 20,
                                           "Circuit " + std::to_string(plan.circuits.size()));
  Circuit& circuit = example::editCircuit(plan, id);
  circuit.voltage = voltage;
  circuit.multiwire = group;
  return id;
}

TEST(NeutralTerminals, CountsCircuitsFeedersAndTheSurgeDevice) {
  Plan plan = example::emptyHouse();
  plan.breakers.clear();
  add(plan, kMain, {Column::left, 1}, VoltageClass::v120);
  add(plan, kMain, {Column::left, 2}, VoltageClass::v120, 3);  // one neutral for the two
  add(plan, kMain, {Column::left, 3}, VoltageClass::v120, 3);
  add(plan, kMain, {Column::left, 4}, VoltageClass::v240);  // none
  add(plan, kMain, {Column::left, 6}, VoltageClass::v120_240);
  EXPECT_EQ(of(plan, kMain).landed(), 3);
  EXPECT_FALSE(of(plan, kMain).left());
  example::editPanel(plan, kMain).neutralTerminals = 5;
  EXPECT_EQ(of(plan, kMain).left(), 2);
  const BreakerId feeder =
      example::addBreaker(plan, kMain, {Column::right, 1}, 2, 60, Feeds::feeder, Stage::fresh);
  example::editBreaker(plan, feeder).feedsPanel = kBackup;
  example::addBreaker(plan, kMain, {Column::right, 3}, 2, 50, Feeds::surgeDevice, Stage::fresh);
  EXPECT_EQ(of(plan, kMain).feeders, 1);
  EXPECT_EQ(of(plan, kMain).surgeDevices, 1);
  EXPECT_EQ(of(plan, kMain).left(), 0);
  // The backup subpanel's own supply lands in its lug.
  EXPECT_EQ(of(plan, kBackup).landed(), 0);
  example::addBreaker(plan, kMain, {Column::right, 5}, 2, 30, Feeds::solar, Stage::fresh);
  EXPECT_EQ(of(plan, kMain).left(), -1);
}

TEST(NeutralTerminals, TheInputOfAnInverterHasANeutralWhereItPassesThrough) {
  Plan plan = feeder::passThrough();
  const std::int32_t through = of(plan, kMain).feeders;
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;  // then it only charges, between the legs
  EXPECT_EQ(of(plan, kMain).feeders, through - 1);
}

TEST(NeutralTerminals, ANeutralLeftBehindStaysOnTheOldBar) {
  Plan plan = example::exampleHouseMoved();
  const CircuitId id = example::circuitNamed(plan, "Office");
  const std::int32_t main = of(plan, kMain).circuits, backup = of(plan, kBackup).circuits;
  example::editCircuit(plan, id).neutralMoved = Answer::no;
  EXPECT_EQ(of(plan, kMain).circuits, main + 1);
  EXPECT_EQ(of(plan, kBackup).circuits, backup - 1);
}

}  // namespace
