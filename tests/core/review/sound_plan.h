#pragma once

// A plan with nothing dangerous and nothing that must be fixed: every question is answered. The house is made
// up.

#include <algorithm>

#include "core/assess/assess.h"
#include "tests/core/example_plans.h"

namespace stayalight::sound {

inline Plan plan() {
  Plan made = example::exampleHouseMoved();
  Site& site = made.site.edit();
  site.amendments = "none";
  site.availableFaultCurrent = AcAmperes(9000);
  for (const PanelId id : {example::kMain, example::kBackup}) {
    Panel& panel = example::editPanel(made, id);
    panel.interruptingRating = AcAmperes(10000);
    panel.tandems = Answer::no;
    panel.terminals75 = Answer::yes;
    panel.neutralTerminals = 24;
    panel.poleMaximum = 40;
  }
  example::editPanel(made, example::kBackup).spaces = 16;
  made.dcCable.edit().length = Length::feet(6);
  example::addBreaker(made, example::kBackup, {Column::left, 5}, 2, 50, Feeds::surgeDevice, Stage::fresh);
  struct Words {
    const char* name;
    const char* serves;
    ConductorSize size;
  };
  for (const Words& words : {Words{"Refrigerator", "Kitchen refrigerator", ConductorSize::awg12},
                             Words{"Counter A", "Kitchen counter left of sink", ConductorSize::awg12},
                             Words{"Counter B", "Kitchen counter right of sink", ConductorSize::awg12},
                             Words{"Well pump", "Well pump in basement", ConductorSize::awg12},
                             Words{"Range", "Kitchen range", ConductorSize::awg6},
                             Words{"Lights", "Hall lights and smoke alarms", ConductorSize::awg14},
                             Words{"Office", "Office receptacles, internet", ConductorSize::awg14},
                             Words{"Furnace", "Furnace in basement", ConductorSize::awg14},
                             Words{"Water heater", "Water heater in basement", ConductorSize::awg10},
                             Words{"Freezer", "Garage freezer", ConductorSize::awg12}}) {
    Circuit& circuit = example::editCircuit(made, example::circuitNamed(made, words.name));
    circuit.serves = words.serves;
    circuit.conductor = words.size;
    circuit.wiring = WiringMethod::nmCable;
    circuit.traced = Answer::yes;
    circuit.ground = BranchGround::wire;
    circuit.neutralShared = circuit.multiwire > 0 ? Answer::yes : Answer::no;
    if (!circuit.smokeAlarms.is(Answer::yes)) circuit.smokeAlarms = Answer::no;
    circuit.arcFaultArea = Answer::no;
    circuit.splice = Splice::inPanel;
    circuit.raceway = {1};
    circuit.extensionLength = Length::inches(18);
  }
  Raceway nipple;
  nipple.id = {1};
  nipple.name = "Nipple";
  nipple.size = TradeSize::oneHalf;
  nipple.length = Length::inches(18);
  made.raceways.emplace_back(nipple);
  made.inverter.edit().lowestInputVoltage = DcVolts(44);
  SpliceBox box;
  box.id = {1};
  box.name = "Box";
  box.volume = CubicInches(30.3);
  box.clampsInside = Answer::no;
  made.spliceBoxes.emplace_back(box);
  Transfer& transfer = made.transfer.edit();
  transfer.serviceBondUpstream = Answer::no;
  transfer.bypass = Answer::yes;
  transfer.calculatedLoad = VoltAmperes(6000);
  transfer.continuousPart = VoltAmperes(500);
  transfer.neutralLoad = VoltAmperes(2500);
  for (const Segment segment : {Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup}) {
    FeederRun run;
    run.id = nextFeederRunId(made);
    run.segment = segment;
    run.length = Length::feet(20);
    run.terminalsFrom75 = run.terminalsTo75 = Answer::yes;
    made.runs.emplace_back(run);
  }
  // A small pump, and a blower of today with little inrush.
  example::editCircuit(made, example::circuitNamed(made, "Well pump")).loads.front().lockedRotor =
      example::known<AcAmperes>(20);
  Load& blower = example::editCircuit(made, example::circuitNamed(made, "Furnace")).loads.front();
  blower.lockedRotor = example::known<AcAmperes>(12);
  return made;
}

inline std::vector<Finding> findings(const Plan& made) { return assess(made).findings; }

inline const Finding* findingOf(const std::vector<Finding>& list, std::string_view key) {
  const auto at = std::find_if(list.begin(), list.end(), [&](const Finding& f) { return f.key == key; });
  return at == list.end() ? nullptr : &*at;
}

}  // namespace stayalight::sound
