#pragma once

// Plans for tests, built by hand so that no test of a room leans on `edit`. The house and its figures are
// made up.

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/plan/plan.h"

namespace stayalight::example {

// -- values

template <class T>
Graded<T> known(double value, Grade grade = Grade::nameplate) {
  Graded<T> fact;
  fact.value = T(value);
  fact.grade = grade;
  return fact;
}

/// A load between one leg and neutral that is on all the time.
inline Load plainLoad(std::string name, double watts, double powerFactor = 1.0, double duty = 1.0) {
  Load load;
  load.name = std::move(name);
  load.running = known<Watts>(watts);
  load.powerFactor = known<Fraction>(powerFactor);
  load.duty = known<Fraction>(duty);
  return load;
}

/// A load between the two legs, rated 240 V.
inline Load lineToLineLoad(std::string name, double watts, double powerFactor = 1.0, double duty = 1.0) {
  Load load = plainLoad(std::move(name), watts, powerFactor, duty);
  load.connection = Connection::lineToLine;
  load.ratedVoltage = 240;
  return load;
}

/// The same load with a motor that starts across the line.
inline Load withStart(Load load, double lockedRotorAmperes, double startSeconds, double startsPerHour) {
  load.start = StartKind::acrossTheLine;
  load.lockedRotor = known<AcAmperes>(lockedRotorAmperes);
  load.startTime = known<Seconds>(startSeconds);
  load.startsPerHour = known<PerHour>(startsPerHour);
  return load;
}

// -- makers: each appends with the next id and returns it

inline PanelId addPanel(Plan& plan, PanelRole role, std::string name, std::int32_t spaces) {
  Panel panel;
  panel.id = nextPanelId(plan);
  panel.role = role;
  panel.name = std::move(name);
  panel.spaces = spaces;
  plan.panels.emplace_back(panel);
  return panel.id;
}

inline BreakerId addBreaker(Plan& plan, PanelId panel, SpacePosition position, std::int32_t poles,
                            std::int32_t amperes, Feeds feeds = Feeds::circuit, Stage stage = Stage::existing,
                            Half half = Half::whole) {
  Breaker breaker;
  breaker.id = nextBreakerId(plan);
  breaker.panel = panel;
  breaker.column = position.column;
  breaker.row = position.row;
  breaker.half = half;
  breaker.poles = poles;
  breaker.rating = RatingAmperes(amperes);
  breaker.feeds = feeds;
  breaker.stage = stage;
  plan.breakers.emplace_back(breaker);
  return breaker.id;
}

/// The panel, to change.
inline Panel& editPanel(Plan& plan, PanelId id) {
  return std::find_if(plan.panels.begin(), plan.panels.end(), [&](const auto& p) { return p->id == id; })
      ->edit();
}
inline Breaker& editBreaker(Plan& plan, BreakerId id) {
  return std::find_if(plan.breakers.begin(), plan.breakers.end(), [&](const auto& b) { return b->id == id; })
      ->edit();
}
inline Circuit& editCircuit(Plan& plan, CircuitId id) {
  return std::find_if(plan.circuits.begin(), plan.circuits.end(), [&](const auto& c) { return c->id == id; })
      ->edit();
}

/// A circuit with its existing breaker. Two poles make a 240 V circuit.
inline CircuitId addCircuit(Plan& plan, PanelId panel, SpacePosition position, std::int32_t poles,
                            std::int32_t amperes, std::string name, Half half = Half::whole) {
  const BreakerId breaker =
      addBreaker(plan, panel, position, poles, amperes, Feeds::circuit, Stage::existing, half);
  Circuit circuit;
  circuit.id = nextCircuitId(plan);
  circuit.name = std::move(name);
  circuit.breaker = breaker;
  circuit.planned = breaker;
  circuit.voltage = poles == 2 ? VoltageClass::v240 : VoltageClass::v120;
  plan.circuits.emplace_back(circuit);
  return circuit.id;
}

inline LoadId addLoad(Plan& plan, CircuitId circuit, Load load) {
  load.id = nextLoadId(plan);
  editCircuit(plan, circuit).loads.push_back(load);
  return load.id;
}

inline CircuitId addCircuitWithLoad(Plan& plan, PanelId panel, SpacePosition position, std::int32_t poles,
                                    std::int32_t amperes, std::string name, Load load) {
  const CircuitId circuit = addCircuit(plan, panel, position, poles, amperes, std::move(name));
  addLoad(plan, circuit, std::move(load));
  return circuit;
}

/// Plans the circuit onto a new breaker of the same shape; the old one stays in place without function.
inline BreakerId moveByHand(Plan& plan, CircuitId circuit, PanelId panel, SpacePosition position) {
  const BreakerId old = find(plan, circuit)->planned;
  const Breaker before = *find(plan, old);
  const BreakerId fresh =
      addBreaker(plan, panel, position, before.poles, before.rating.count(), Feeds::circuit, Stage::fresh);
  editBreaker(plan, fresh).tie = before.tie;
  editBreaker(plan, fresh).protection = before.protection;
  editBreaker(plan, old).stage = Stage::leftInPlace;
  editCircuit(plan, circuit).planned = fresh;
  return fresh;
}

/// The circuit, load or panel with this name; an id of 0 where there is none.
inline CircuitId circuitNamed(const Plan& plan, std::string_view name) {
  for (const auto& circuit : plan.circuits) {
    if (circuit->name == name) return circuit->id;
  }
  return {};
}
inline LoadId loadNamed(const Plan& plan, std::string_view name) {
  for (const auto& circuit : plan.circuits) {
    for (const Load& load : circuit->loads) {
      if (load.name == name) return load.id;
    }
  }
  return {};
}

// -- houses

inline constexpr PanelId kMain{1};
inline constexpr PanelId kBackup{2};

/// A main panel of 20 spaces with a 200 A main breaker and an empty backup subpanel of 8; no breaker yet.
inline Plan emptyHouse() {
  Plan plan;
  addPanel(plan, PanelRole::main, "Main panel", 20);
  addPanel(plan, PanelRole::backup, "Backup subpanel", 8);
  Panel& mainPanelRecord = editPanel(plan, kMain);
  mainPanelRecord.busRating = RatingAmperes(200);
  mainPanelRecord.mainBreaker = RatingAmperes(200);
  mainPanelRecord.neutralBonded = Answer::yes;
  Panel& backupPanelRecord = editPanel(plan, kBackup);
  backupPanelRecord.busRating = RatingAmperes(125);
  backupPanelRecord.neutralBonded = Answer::no;
  backupPanelRecord.fedFrom = kMain;
  return plan;
}

/// A 120/240 V house before anything moves.
///   main, left column:  1 Refrigerator; 3 and 5 Counter A and B (multiwire group 1, handle tie); 7, 9 Well
///   pump;
///                       11, 13 Range
///   main, right column: 2 Lights (smoke alarms); 4 Office; 6 Furnace; 8, 10 Water heater; 12 Freezer;
///                       14, 16 feeder to the backup subpanel
///   backup: empty
inline Plan exampleHouse() {
  constexpr Column left = Column::left;
  constexpr Column right = Column::right;
  Plan plan = emptyHouse();
  Site& site = plan.site.edit();
  site.name = "Example house";
  site.latitude = Degrees(44.0);
  site.longitude = Degrees(-72.0);
  site.utcOffset = Hours(-5);
  site.serviceRating = RatingAmperes(200);

  addCircuitWithLoad(plan, kMain, {left, 1}, 1, 20, "Refrigerator",
                     withStart(plainLoad("Refrigerator", 150, 0.8, 0.4), 12, 0.4, 2));
  const CircuitId counterA =
      addCircuitWithLoad(plan, kMain, {left, 2}, 1, 20, "Counter A", plainLoad("Toaster", 900, 1.0, 0.02));
  const CircuitId counterB = addCircuitWithLoad(plan, kMain, {left, 3}, 1, 20, "Counter B",
                                                plainLoad("Coffee maker", 1000, 1.0, 0.05));
  for (const CircuitId counter : {counterA, counterB}) {
    editCircuit(plan, counter).multiwire = 1;
    editBreaker(plan, find(plan, counter)->breaker).tie = Tie::handleTie;
  }
  addCircuitWithLoad(plan, kMain, {left, 4}, 2, 20, "Well pump",
                     withStart(lineToLineLoad("Well pump", 1000, 0.75, 0.1), 30, 0.6, 3));
  const CircuitId range =
      addCircuitWithLoad(plan, kMain, {left, 6}, 2, 50, "Range", lineToLineLoad("Range", 6000, 1.0, 0.05));
  editCircuit(plan, range).voltage = VoltageClass::v120_240;
  const CircuitId lights =
      addCircuitWithLoad(plan, kMain, {right, 1}, 1, 15, "Lights", plainLoad("Lights", 120, 1.0, 0.3));
  editCircuit(plan, lights).smokeAlarms = Answer::yes;
  addCircuitWithLoad(plan, kMain, {right, 2}, 1, 15, "Office", plainLoad("Internet", 30));
  addCircuitWithLoad(plan, kMain, {right, 3}, 1, 15, "Furnace",
                     withStart(plainLoad("Furnace blower", 500, 0.7, 0.3), 30, 1.5, 3));
  Load heater = lineToLineLoad("Water heater", 4500, 1.0, 0.1);
  heater.kind = LoadKind::resistance;
  addCircuitWithLoad(plan, kMain, {right, 4}, 2, 30, "Water heater", heater);
  addCircuitWithLoad(plan, kMain, {right, 6}, 1, 20, "Freezer",
                     withStart(plainLoad("Freezer", 120, 0.8, 0.35), 10, 0.4, 2));
  const BreakerId feeder = addBreaker(plan, kMain, {right, 7}, 2, 60, Feeds::feeder, Stage::fresh);
  editBreaker(plan, feeder).feedsPanel = kBackup;

  Inverter& inverter = plan.inverter.edit();
  inverter.continuous = Watts(6000);
  inverter.continuousApparent = VoltAmperes(6000);
  inverter.legContinuous = Watts(3000);
  inverter.legCurrent = AcAmperes(25);
  inverter.overload.resize(2);
  inverter.overload[0].time = Seconds(0.5);
  inverter.overload[0].watts = Watts(12000);
  inverter.overload[0].legCurrent = AcAmperes(50);
  inverter.overload[1].time = Seconds(10);
  inverter.overload[1].watts = Watts(9000);
  inverter.overload[1].legCurrent = AcAmperes(37.5);
  inverter.marginalEfficiency = Fraction(0.93);
  inverter.idle = BatteryWatts(50);
  inverter.lowestInputVoltage = DcVolts(44);
  inverter.acInput = RatingAmperes(50);
  inverter.passThrough = RatingAmperes(50);
  inverter.addsToPassThrough = Answer::no;
  inverter.chargeLimit = Watts(3000);
  inverter.maximumOutputDevice = RatingAmperes(40);
  inverter.bond = BondBehaviour::neverBonds;

  Battery& battery = plan.battery.edit();
  battery.nominalKilowattHours = 5.0;
  battery.packs = 2;
  battery.health = known<Fraction>(1.0, Grade::measured);
  battery.continuousCurrent = DcAmperes(100);
  battery.peakCurrent = DcAmperes(200);
  battery.peakTime = Seconds(5);
  battery.place = BatteryPlace::basement;

  Transfer& transfer = plan.transfer.edit();
  transfer.arrangement = Arrangement::manualSwitch;
  transfer.listing = TransferListing::listedTransferEquipment;
  transfer.switchesNeutral = Answer::no;
  transfer.rating = RatingAmperes(60);
  return plan;
}

/// The same house with Refrigerator, Well pump, Lights, Office and Furnace planned onto the backup subpanel:
/// left 1 Refrigerator, 3 Office (L2), 5 free, 7 free; right 2 Lights (L1), 4 Furnace (L2), 6 and 8 Well
/// pump.
inline Plan exampleHouseMoved() {
  Plan plan = exampleHouse();
  moveByHand(plan, circuitNamed(plan, "Refrigerator"), kBackup, {Column::left, 1});
  moveByHand(plan, circuitNamed(plan, "Office"), kBackup, {Column::left, 2});
  moveByHand(plan, circuitNamed(plan, "Lights"), kBackup, {Column::right, 1});
  moveByHand(plan, circuitNamed(plan, "Furnace"), kBackup, {Column::right, 2});
  moveByHand(plan, circuitNamed(plan, "Well pump"), kBackup, {Column::right, 3});
  return plan;
}

}  // namespace stayalight::example
