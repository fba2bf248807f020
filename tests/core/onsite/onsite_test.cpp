// The list of what has to be looked at on site: what is on it, when, for whom, in which order.

#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "core/assess/assess.h"
#include "core/onsite/facts.h"
#include "core/onsite/neutral_reading.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

using example::editBreaker;
using example::editCircuit;
using example::editPanel;

CircuitId counterA(const Plan& plan) { return example::circuitNamed(plan, "Counter A"); }
Circuit& fridge(Plan& plan) { return editCircuit(plan, example::circuitNamed(plan, "Refrigerator")); }

bool asks(const Plan& plan, std::string_view key) { return !itemsOf(onSiteList(plan), key).empty(); }

/// A plan that asks for a fact, the answer that takes it off, and a plan in which it does not apply.
struct Case {
  std::string_view key;
  Doer doer;
  std::function<void(Plan&)> ask;
  std::function<void(Plan&)> answer;
  std::function<void(Plan&)> without;  ///< from the asking plan to one where it does not apply
};
void backNothing(Plan& plan) {
  for (auto& circuit : plan.circuits) circuit.edit().planned = BreakerId(circuit->breaker);
}
void canada(Plan& plan) { plan.site.edit().country = Country::canada; }
void noArrangement(Plan& plan) { plan.transfer.edit().arrangement = Arrangement::none; }
void passThrough(Plan& plan) { plan.transfer.edit().arrangement = Arrangement::inverterPassThrough; }

AuthorityAnswer& answerOf(Plan& plan) { return plan.site.edit().answers.at(0); }
void ask(Plan& plan) {
  plan.site.edit().answers.resize(1);
  answerOf(plan).question = "Is a permit needed?";
}

/// The example house with the first piece of its feeder entered.
Plan house() {
  Plan plan = example::exampleHouseMoved();
  FeederRun run;
  run.id = {1};
  run.segment = Segment::mainToSwitch;
  plan.runs.emplace_back(run);
  return plan;
}

const std::vector<Case>& cases() {
  static const std::vector<Case> all = {
      {"site.fault_current_A", Doer::household, [](Plan& p) { p.site.edit().availableFaultCurrent.reset(); },
       [](Plan& p) { p.site.edit().availableFaultCurrent = AcAmperes(10000); }, nullptr},
      {"site.service_A", Doer::household,
       [](Plan& p) {
         p.site.edit().serviceRating.reset();
         editPanel(p, example::kMain).mainBreaker.reset();
       },
       [](Plan& p) { p.site.edit().serviceRating = RatingAmperes(200); },
       [](Plan& p) { editPanel(p, example::kMain).mainBreaker = RatingAmperes(200); }},
      {"site.floor_area_ft2", Doer::household, [](Plan& p) { p.site.edit().floorArea.reset(); },
       [](Plan& p) { p.site.edit().floorArea = SquareFeet(1800); }, canada},
      {"site.wye_order", Doer::qualifiedPerson,
       [](Plan& p) { p.site.edit().service = ServiceSystem::wye120_208; },
       [](Plan& p) { p.site.edit().wyeOrder = WyeOrder::l2Lags; },
       [](Plan& p) { p.site.edit().service = ServiceSystem::splitPhase120_240; }},
      {"panel.legs_measured", Doer::qualifiedPerson,
       [](Plan& p) {
         for (auto& panel : p.panels) panel.edit().legsMeasured = Answer::unknown;
       },
       [](Plan& p) {
         for (auto& panel : p.panels) panel.edit().legsMeasured = Answer::yes;
       },
       nullptr},
      {"panel.bus_A", Doer::qualifiedPerson, [](Plan& p) { editPanel(p, example::kMain).busRating.reset(); },
       [](Plan& p) { editPanel(p, example::kMain).busRating = RatingAmperes(200); }, nullptr},
      {"panel.terminals_75C", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kMain).terminals75 = Answer::unknown; },
       [](Plan& p) { editPanel(p, example::kMain).terminals75 = Answer::no; }, canada},
      {"panel.neutral_bonded", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kBackup).neutralBonded = Answer::unknown; },
       [](Plan& p) { editPanel(p, example::kBackup).neutralBonded = Answer::no; }, nullptr},
      {"panel.hold_down", Doer::qualifiedPerson,
       [](Plan& p) {
         editPanel(p, example::kBackup).mainBackFed = true;
         editPanel(p, example::kBackup).holdDown = Answer::unknown;
       },
       [](Plan& p) { editPanel(p, example::kBackup).holdDown = Answer::yes; },
       [](Plan& p) { editPanel(p, example::kBackup).mainBackFed = false; }},
      {"panel.tandems", Doer::qualifiedPerson,
       [](Plan& p) {
         editPanel(p, example::kMain).tandems = Answer::unknown;
         editBreaker(p, find(p, counterA(p))->breaker).half = Half::a;
         backNothing(p);
       },
       [](Plan& p) { editPanel(p, example::kMain).tandems = Answer::yes; },
       [](Plan& p) { editBreaker(p, find(p, counterA(p))->breaker).half = Half::whole; }},
      {"panel.pole_maximum", Doer::qualifiedPerson,
       [](Plan& p) {
         editPanel(p, example::kMain).poleMaximum.reset();
         editBreaker(p, find(p, counterA(p))->breaker).half = Half::a;
       },
       [](Plan& p) { editPanel(p, example::kMain).poleMaximum = 40; },
       [](Plan& p) { editBreaker(p, find(p, counterA(p))->breaker).half = Half::whole; }},
      {"panel.interrupting_A", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kBackup).interruptingRating.reset(); },
       [](Plan& p) { editPanel(p, example::kBackup).interruptingRating = AcAmperes(10000); },
       [](Plan& p) {
         for (auto& breaker : p.breakers) breaker.edit().interruptingRating = AcAmperes(10000);
       }},
      {"panel.listing_line", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kBackup).listingLine.clear(); },
       [](Plan& p) { editPanel(p, example::kBackup).listingLine = "A"; }, nullptr},
      {"panel.grounding_electrode", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kBackup).separateBuilding = true; },
       [](Plan& p) { editPanel(p, example::kBackup).groundingElectrode = Answer::no; },
       [](Plan& p) { editPanel(p, example::kBackup).separateBuilding = false; }},
      {"panel.building_disconnect", Doer::qualifiedPerson,
       [](Plan& p) {
         editPanel(p, example::kBackup).separateBuilding = true;
         editPanel(p, example::kBackup).mainBreaker.reset();
       },
       [](Plan& p) { editPanel(p, example::kBackup).buildingDisconnect = Answer::yes; },
       [](Plan& p) { editPanel(p, example::kBackup).mainBreaker = RatingAmperes(60); }},
      {"panel.neutral_terminals", Doer::qualifiedPerson,
       [](Plan& p) { editPanel(p, example::kBackup).neutralTerminals.reset(); },
       [](Plan& p) { editPanel(p, example::kBackup).neutralTerminals = 20; }, backNothing},
      {"panel.wiring_space_in2", Doer::qualifiedPerson,
       [](Plan& p) {
         editPanel(p, example::kMain).wiringSpace.reset();
         fridge(p).splice = Splice::inPanel;
       },
       [](Plan& p) { editPanel(p, example::kMain).wiringSpace = SquareInches(20); },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().splice = Splice::none;
       }},
      {"breaker.rating_read", Doer::household,
       [](Plan& p) { editBreaker(p, fridge(p).planned).ratingRead = Answer::unknown; },
       [](Plan& p) { editBreaker(p, fridge(p).planned).ratingRead = Answer::yes; }, nullptr},
      {"breaker.hold_down", Doer::qualifiedPerson,
       [](Plan& p) { editBreaker(p, fridge(p).planned).backFed = Answer::yes; },
       [](Plan& p) { editBreaker(p, fridge(p).planned).holdDown = Answer::yes; },
       [](Plan& p) { editBreaker(p, fridge(p).planned).feeds = Feeds::solar; }},
      {"breaker.source_A", Doer::household,
       [](Plan& p) { editBreaker(p, fridge(p).planned).feeds = Feeds::solar; },
       [](Plan& p) { editBreaker(p, fridge(p).planned).sourceCurrent = AcAmperes(16); }, canada},
      {"breaker.interlocked", Doer::qualifiedPerson,
       [](Plan& p) {
         p.transfer.edit().listing = TransferListing::unknown;
         editBreaker(p, fridge(p).planned).feeds = Feeds::generator;
         editBreaker(p, fridge(p).planned).backFed = Answer::yes;
       },
       [](Plan& p) { editBreaker(p, fridge(p).planned).interlocked = Answer::yes; },
       [](Plan& p) { p.transfer.edit().listing = TransferListing::listedInterlock; }},
      {"circuit.traced", Doer::household, [](Plan& p) { fridge(p).traced = Answer::no; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().traced = Answer::yes;
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().planned = {};
       }},
      {"circuit.loads", Doer::household, [](Plan& p) { fridge(p).loads.clear(); },
       [](Plan& p) { example::addLoad(p, fridge(p).id, example::plainLoad("Refrigerator", 150)); },
       backNothing},
      {"circuit.smoke_alarms", Doer::household, [](Plan& p) { fridge(p).smokeAlarms = Answer::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().smokeAlarms = Answer::no;
       },
       backNothing},
      {"circuit.ground", Doer::qualifiedPerson, [](Plan& p) { fridge(p).ground = BranchGround::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().ground = BranchGround::wire;
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().splice = Splice::none;
       }},
      {"circuit.arc_fault_area", Doer::household, [](Plan& p) { fridge(p).arcFaultArea = Answer::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().arcFaultArea = Answer::no;
       },
       [](Plan& p) {
         // 6 ft or less need none for that reason: 210.12(D), exception.
         for (auto& circuit : p.circuits) circuit.edit().extensionLength = Length::feet(6);
       }},
      {"circuit.extension_um", Doer::qualifiedPerson,
       [](Plan& p) {
         fridge(p).arcFaultArea = Answer::yes;
         fridge(p).extensionLength.reset();
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().extensionLength = Length::feet(10);
       },
       [](Plan& p) {
         for (auto& breaker : p.breakers) breaker.edit().protection = Protection::dual;
       }},
      {"circuit.calculation_use", Doer::household,
       [](Plan& p) {
         fridge(p).calculationUse = CircuitUse::unknown;
         fridge(p).loads.front().calculationClass = LoadClass::unknown;
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().calculationUse = CircuitUse::individual;
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) {
           for (Load& load : circuit.edit().loads) load.calculationClass = LoadClass::appliance;
           if (circuit->loads.empty()) circuit.edit().calculationUse = CircuitUse::laundry;
         }
       }},
      {"circuit.area_served_ft2", Doer::household,
       [](Plan& p) {
         fridge(p).calculationUse = CircuitUse::general;
         fridge(p).areaServed.reset();
       },
       [](Plan& p) { fridge(p).areaServed = SquareFeet(0); }, backNothing},
      {"circuit.several_receptacles", Doer::household,
       [](Plan& p) {
         // 6 AWG in the 60 °C column carries 55 A (Table 310.16), and 60 A is the next standard rating.
         fridge(p).conductor = ConductorSize::awg6;
         fridge(p).wiring = WiringMethod::nmCable;
         fridge(p).severalReceptacles = Answer::unknown;
         fridge(p).loads = {example::plainLoad("Lamp", 60)};
         editBreaker(p, fridge(p).planned).rating = RatingAmperes(60);
       },
       [](Plan& p) { fridge(p).severalReceptacles = Answer::no; }, canada},
      {"circuit.neutral_shared", Doer::qualifiedPerson,
       [](Plan& p) { fridge(p).neutralShared = Answer::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().neutralShared = Answer::no;
       },
       backNothing},
      {"circuit.multiwire", Doer::qualifiedPerson, [](Plan& p) { fridge(p).neutralShared = Answer::yes; },
       [](Plan& p) { fridge(p).multiwire = 7; }, backNothing},
      {"circuit.insulated_neutral", Doer::qualifiedPerson,
       [](Plan& p) {
         fridge(p).voltage = VoltageClass::v120_240;
         fridge(p).insulatedNeutral = Answer::unknown;
       },
       [](Plan& p) { fridge(p).insulatedNeutral = Answer::no; },
       [](Plan& p) { fridge(p).voltage = VoltageClass::v120; }},
      {"circuit.neutral_moved", Doer::qualifiedPerson,
       [](Plan& p) { fridge(p).neutralMoved = Answer::unknown; },
       [](Plan& p) { fridge(p).neutralMoved = Answer::yes; }, backNothing},
      {"circuit.conductor_AWG", Doer::qualifiedPerson, [](Plan& p) { fridge(p).conductor.reset(); },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().conductor = ConductorSize::awg12;
       },
       backNothing},
      {"circuit.wiring", Doer::qualifiedPerson, [](Plan& p) { fridge(p).wiring = WiringMethod::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().wiring = WiringMethod::nmCable;
       },
       backNothing},
      {"circuit.splice", Doer::qualifiedPerson, [](Plan& p) { fridge(p).splice = Splice::unknown; },
       [](Plan& p) {
         for (auto& circuit : p.circuits) circuit.edit().splice = Splice::none;
       },
       canada},
      {"circuit.splice_box", Doer::qualifiedPerson, [](Plan& p) { fridge(p).splice = Splice::inBox; },
       [](Plan& p) {
         SpliceBox box;
         box.id = {1};
         p.spliceBoxes.emplace_back(box);
         fridge(p).spliceBox = box.id;
       },
       backNothing},
      {"circuit.cable_width_um", Doer::qualifiedPerson,
       [](Plan& p) {
         Raceway raceway;
         raceway.id = {1};
         p.raceways.emplace_back(raceway);
         fridge(p).raceway = raceway.id;
         fridge(p).splice = Splice::none;
         fridge(p).wiring = WiringMethod::nmCable;
       },
       [](Plan& p) { fridge(p).cableWidth = Length::inches(0.4); },
       [](Plan& p) { fridge(p).splice = Splice::inPanel; }},
      {"load.running_W", Doer::household,
       [](Plan& p) { fridge(p).loads.front().running.grade = Grade::typical; },
       [](Plan& p) { fridge(p).loads.front().running.grade = Grade::nameplate; }, backNothing},
      {"load.duty", Doer::household, [](Plan& p) { fridge(p).loads.front().duty = {}; },
       [](Plan& p) { fridge(p).loads.front().duty = example::known<Fraction>(0.3, Grade::measured); },
       backNothing},
      {"load.locked_rotor_A", Doer::household,
       [](Plan& p) {
         Load& load = fridge(p).loads.front();
         load.start = StartKind::acrossTheLine;
         load.startClass = StartClass::refrigerationCompressor;
         load.lockedRotor = {};
         load.codeLetter.clear();
         load.horsepower.reset();
       },
       [](Plan& p) { fridge(p).loads.front().lockedRotor = example::known<AcAmperes>(12); },
       [](Plan& p) { fridge(p).loads.front().start = StartKind::variableSpeed; }},
      {"load.maximum_breaker_A", Doer::household,
       [](Plan& p) {
         // 14 AWG on 20 A: 240.4(D) says 15, unless the label of a motor says more.
         fridge(p).conductor = ConductorSize::awg14;
         fridge(p).loads.front().start = StartKind::acrossTheLine;
         fridge(p).loads.front().maximumBreaker.reset();
         editBreaker(p, fridge(p).planned).rating = RatingAmperes(20);
       },
       [](Plan& p) { fridge(p).loads.front().maximumBreaker = RatingAmperes(20); },
       [](Plan& p) { fridge(p).conductor = ConductorSize::awg12; }},
      {"transfer.listing", Doer::qualifiedPerson,
       [](Plan& p) { p.transfer.edit().listing = TransferListing::unknown; },
       [](Plan& p) { p.transfer.edit().listing = TransferListing::none; }, noArrangement},
      {"transfer.rating_A", Doer::qualifiedPerson, [](Plan& p) { p.transfer.edit().rating.reset(); },
       [](Plan& p) { p.transfer.edit().rating = RatingAmperes(60); }, passThrough},
      {"transfer.switches_neutral", Doer::qualifiedPerson,
       [](Plan& p) { p.transfer.edit().switchesNeutral = Answer::unknown; },
       [](Plan& p) { p.transfer.edit().switchesNeutral = Answer::no; }, backNothing},
      {"transfer.service_bond_upstream", Doer::qualifiedPerson,
       [](Plan& p) { p.transfer.edit().serviceBondUpstream = Answer::unknown; },
       [](Plan& p) { p.transfer.edit().serviceBondUpstream = Answer::no; }, noArrangement},
      {"transfer.main_to_switch", Doer::qualifiedPerson, [](Plan& p) { p.runs.clear(); },
       [](Plan& p) {
         FeederRun run;
         run.id = {1};
         run.segment = Segment::mainToSwitch;
         p.runs.emplace_back(run);
       },
       passThrough},
      {"feeder_run.length_um", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().length = Length(); },
       [](Plan& p) { p.runs.front().edit().length = Length::feet(8); }, noArrangement},
      {"feeder_run.terminals_from_75C", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().terminalsFrom75 = Answer::unknown; },
       [](Plan& p) {
         for (auto& run : p.runs) run.edit().terminalsFrom75 = Answer::yes;
       },
       canada},
      {"feeder_run.terminals_to_75C", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().terminalsTo75 = Answer::unknown; },
       [](Plan& p) {
         for (auto& run : p.runs) run.edit().terminalsTo75 = Answer::yes;
       },
       canada},
      {"feeder_run.fixed_neutral", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg6; },
       [](Plan& p) { p.runs.front().edit().fixedNeutral = ConductorSize::awg6; },
       [](Plan& p) { p.runs.front().edit().fixedConductor.reset(); }},
      {"feeder_run.fixed_ground", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg6; },
       [](Plan& p) { p.runs.front().edit().fixedGround = ConductorSize::awg10; },
       [](Plan& p) { p.runs.front().edit().fixedConductor.reset(); }},
      {"feeder_run.fixed_conductor", Doer::qualifiedPerson,
       [](Plan& p) { p.runs.front().edit().fixedGround = ConductorSize::awg10; },
       [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg6; },
       [](Plan& p) { p.runs.front().edit().fixedGround.reset(); }},
      {"raceway.length_um", Doer::qualifiedPerson,
       [](Plan& p) {
         Raceway raceway;
         raceway.id = {1};
         p.raceways.emplace_back(raceway);
         fridge(p).raceway = raceway.id;
       },
       [](Plan& p) { p.raceways.front().edit().length = Length::inches(18); },
       [](Plan& p) { fridge(p).raceway = {}; }},
      {"raceway.other_area_in2", Doer::qualifiedPerson,
       [](Plan& p) {
         Raceway raceway;
         raceway.id = {1};
         raceway.otherCarrying = 2;
         p.raceways.emplace_back(raceway);
         fridge(p).raceway = raceway.id;
       },
       [](Plan& p) { p.raceways.front().edit().otherArea = SquareInches(0.03); },
       [](Plan& p) { p.raceways.front().edit().otherCarrying = 0; }},
      {"splice_box.volume_in3", Doer::qualifiedPerson,
       [](Plan& p) {
         SpliceBox box;
         box.id = {1};
         p.spliceBoxes.emplace_back(box);
         fridge(p).spliceBox = box.id;
         fridge(p).splice = Splice::inBox;
       },
       [](Plan& p) { p.spliceBoxes.front().edit().volume = CubicInches(42); },
       [](Plan& p) { p.spliceBoxes.front().edit().kind = BoxKind::square4; }},
      {"splice_box.clamps_inside", Doer::qualifiedPerson,
       [](Plan& p) {
         SpliceBox box;
         box.id = {1};
         p.spliceBoxes.emplace_back(box);
         fridge(p).spliceBox = box.id;
         fridge(p).splice = Splice::inBox;
       },
       [](Plan& p) { p.spliceBoxes.front().edit().clampsInside = Answer::no; },
       [](Plan& p) { fridge(p).splice = Splice::inPanel; }},
      {"inverter.continuous_W", Doer::household, [](Plan& p) { p.inverter.edit().continuous.reset(); },
       [](Plan& p) { p.inverter.edit().continuous = Watts(6000); }, backNothing},
      {"inverter.leg_A", Doer::household,
       [](Plan& p) {
         p.inverter.edit().legCurrent.reset();
         p.inverter.edit().legContinuous.reset();
       },
       [](Plan& p) { p.inverter.edit().legCurrent = AcAmperes(25); },
       [](Plan& p) { p.inverter.edit().output = InverterOutput::single120; }},
      {"inverter.overload", Doer::household, [](Plan& p) { p.inverter.edit().overload.clear(); },
       [](Plan& p) {
         p.inverter.edit().overload = {{{}, Seconds(1), Watts(12000), std::nullopt}};
       },
       [](Plan& p) {
         for (auto& circuit : p.circuits) {
           for (Load& load : circuit.edit().loads) load.start = StartKind::none;
         }
       }},
      {"inverter.lowest_input_V", Doer::household,
       [](Plan& p) { p.inverter.edit().lowestInputVoltage.reset(); },
       [](Plan& p) { p.inverter.edit().lowestInputVoltage = DcVolts(44); }, backNothing},
      {"inverter.marginal_efficiency", Doer::household,
       [](Plan& p) {
         p.inverter.edit().marginalEfficiency.reset();
         p.inverter.edit().efficiency.clear();
       },
       [](Plan& p) { p.inverter.edit().marginalEfficiency = Fraction(0.94); },
       [](Plan& p) {
         p.inverter.edit().efficiency = {{{}, Fraction(1.0), Fraction(0.93)}};
       }},
      {"inverter.idle_W", Doer::household,
       [](Plan& p) {
         p.inverter.edit().idle.reset();
         p.inverter.edit().efficiency.clear();
       },
       [](Plan& p) { p.inverter.edit().idle = BatteryWatts(40); },
       [](Plan& p) {
         p.inverter.edit().efficiency = {{{}, Fraction(1.0), Fraction(0.93)}};
       }},
      {"inverter.maximum_output_device_A", Doer::household,
       [](Plan& p) { p.inverter.edit().maximumOutputDevice.reset(); },
       [](Plan& p) { p.inverter.edit().maximumOutputDevice = RatingAmperes(40); }, noArrangement},
      {"inverter.ac_input_A", Doer::household,
       [](Plan& p) {
         passThrough(p);
         p.inverter.edit().acInput.reset();
       },
       [](Plan& p) { p.inverter.edit().acInput = RatingAmperes(50); }, noArrangement},
      {"inverter.pass_through_A", Doer::household,
       [](Plan& p) {
         passThrough(p);
         p.inverter.edit().passThrough.reset();
       },
       [](Plan& p) { p.inverter.edit().passThrough = RatingAmperes(50); },
       [](Plan& p) { p.transfer.edit().arrangement = Arrangement::manualSwitch; }},
      {"inverter.adds_to_pass_through", Doer::household,
       [](Plan& p) {
         passThrough(p);
         p.inverter.edit().addsToPassThrough = Answer::unknown;
       },
       [](Plan& p) { p.inverter.edit().addsToPassThrough = Answer::no; }, noArrangement},
      {"inverter.charge_limit_W", Doer::household,
       [](Plan& p) {
         passThrough(p);
         p.inverter.edit().chargeLimit.reset();
       },
       [](Plan& p) { p.inverter.edit().chargeLimit = Watts(3000); }, noArrangement},
      {"inverter.bond", Doer::household, [](Plan& p) { p.inverter.edit().bond = BondBehaviour::unknown; },
       [](Plan& p) { p.inverter.edit().bond = BondBehaviour::neverBonds; }, noArrangement},
      {"battery.nominal_kWh", Doer::household, [](Plan& p) { p.battery.edit().nominalKilowattHours.reset(); },
       [](Plan& p) { p.battery.edit().nominalKilowattHours = 5.0; }, backNothing},
      {"battery.health", Doer::household, [](Plan& p) { p.battery.edit().health = {}; },
       [](Plan& p) { p.battery.edit().health = example::known<Fraction>(0.95); }, backNothing},
      {"battery.continuous_A", Doer::household, [](Plan& p) { p.battery.edit().continuousCurrent.reset(); },
       [](Plan& p) { p.battery.edit().continuousCurrent = DcAmperes(100); }, backNothing},
      {"battery.peak_A", Doer::household, [](Plan& p) { p.battery.edit().peakCurrent.reset(); },
       [](Plan& p) { p.battery.edit().peakCurrent = DcAmperes(150); }, backNothing},
      {"battery.cell_temperature_mC", Doer::household,
       [](Plan& p) {
         p.battery.edit().place = BatteryPlace::garage;
         p.battery.edit().cellTemperature.reset();
       },
       [](Plan& p) { p.battery.edit().cellTemperature = Temperature::celsius(5); },
       [](Plan& p) { p.battery.edit().place = BatteryPlace::basement; }},
      {"transfer.bypass_breaks_first", Doer::qualifiedPerson,
       [](Plan& p) { p.transfer.edit().bypass = Answer::yes; },
       [](Plan& p) { p.transfer.edit().bypassBreaksFirst = Answer::no; },
       [](Plan& p) { p.transfer.edit().bypass = Answer::no; }},
      {"transfer.bypass_switches_neutral", Doer::qualifiedPerson,
       [](Plan& p) { p.transfer.edit().bypass = Answer::yes; },
       [](Plan& p) { p.transfer.edit().bypassSwitchesNeutral = Answer::no; }, noArrangement},
      {"solar.modules_W", Doer::household, [](Plan& p) { p.solar.edit().coupling = SolarCoupling::battery; },
       [](Plan& p) { p.solar.edit().modules = Watts(4000); },
       [](Plan& p) { p.solar.edit().coupling = SolarCoupling::none; }},
      {"solar.output_W", Doer::household,
       [](Plan& p) { p.solar.edit().coupling = SolarCoupling::alternatingCurrent; },
       [](Plan& p) { p.solar.edit().output = Watts(3800); },
       [](Plan& p) { p.solar.edit().coupling = SolarCoupling::battery; }},
      {"solar.held_back", Doer::household,
       [](Plan& p) { p.solar.edit().coupling = SolarCoupling::alternatingCurrent; },
       [](Plan& p) { p.solar.edit().heldBack = Answer::no; },
       [](Plan& p) { p.solar.edit().coupling = SolarCoupling::battery; }},
      {"generator.continuous_W", Doer::household,
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::transfer; },
       [](Plan& p) { p.generator.edit().continuous = Watts(5500); },
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::none; }},
      {"generator.neutral", Doer::qualifiedPerson,
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::transfer; },
       [](Plan& p) { p.generator.edit().neutral = GeneratorNeutral::floating; },
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::none; }},
      {"generator.fuel", Doer::household,
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::transfer; },
       [](Plan& p) { p.generator.edit().fuel = Fuel::propane; },
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::none; }},
      {"generator.alarms_fitted", Doer::household,
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::transfer; },
       [](Plan& p) { p.generator.edit().alarmsFitted = Answer::yes; },
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::none; }},
      {"generator.switches_neutral", Doer::qualifiedPerson,
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::transfer; },
       [](Plan& p) { p.generator.edit().switchesNeutral = Answer::no; },
       [](Plan& p) { p.generator.edit().comesIn = GeneratorPoint::none; }},
      {"managed_load.load", Doer::household, [](Plan& p) { p.transfer.edit().managed.resize(1); },
       [](Plan& p) { p.transfer.edit().managed[0].load = fridge(p).loads[0].id; },
       [](Plan& p) { p.transfer.edit().managed.clear(); }},
      {"managed_load.shed_by", Doer::household, [](Plan& p) { p.transfer.edit().managed.resize(2); },
       [](Plan& p) { p.transfer.edit().managed[1].shedBy = ShedBy::inverter; },
       [](Plan& p) { p.transfer.edit().managed.clear(); }},
      {"managed_load.listed", Doer::household, [](Plan& p) { p.transfer.edit().managed.resize(1); },
       [](Plan& p) { p.transfer.edit().managed[0].listed = Answer::no; },
       [](Plan& p) { p.transfer.edit().managed[0].shedBy = ShedBy::byHand; }},
      {"managed_load.off_in_outage", Doer::household, [](Plan& p) { p.transfer.edit().managed.resize(1); },
       [](Plan& p) { p.transfer.edit().managed[0].offInOutage = Answer::yes; },
       [](Plan& p) { p.transfer.edit().managed.clear(); }},
      {"authority_answer.answer", Doer::household, ask, [](Plan& p) { answerOf(p).answer = "Yes"; },
       [](Plan& p) { answerOf(p).question.clear(); }},
      {"authority_answer.who", Doer::household,
       [](Plan& p) {
         ask(p);
         answerOf(p).answer = "Yes";
       },
       [](Plan& p) { answerOf(p).who = "Plan reviewer"; }, [](Plan& p) { answerOf(p).answer.clear(); }},
      {"authority_answer.in_writing", Doer::household,
       [](Plan& p) {
         ask(p);
         answerOf(p).answer = "Yes";
         answerOf(p).inWriting = Answer::no;
       },
       [](Plan& p) { answerOf(p).inWriting = Answer::yes; }, [](Plan& p) { answerOf(p).answer.clear(); }},
      {"dc_cable.length_um", Doer::qualifiedPerson, [](Plan& p) { p.dcCable.edit().length = Length(); },
       [](Plan& p) { p.dcCable.edit().length = Length::feet(5); }, canada},
      {"dc_cable.terminals_75C", Doer::qualifiedPerson,
       [](Plan& p) { p.dcCable.edit().terminals75 = Answer::unknown; },
       [](Plan& p) { p.dcCable.edit().terminals75 = Answer::no; },
       [](Plan& p) { p.dcCable.edit().freeAir = Answer::yes; }},
      {"dc_cable.fine_stranded", Doer::qualifiedPerson,
       [](Plan& p) { p.dcCable.edit().fineStranded = Answer::unknown; },
       [](Plan& p) { p.dcCable.edit().fineStranded = Answer::no; }, backNothing},
      {"dc_cable.lugs_listed", Doer::qualifiedPerson,
       [](Plan& p) { p.dcCable.edit().fineStranded = Answer::yes; },
       [](Plan& p) { p.dcCable.edit().lugsListed = Answer::yes; },
       [](Plan& p) { p.dcCable.edit().fineStranded = Answer::no; }},
  };
  return all;
}

TEST(OnSiteList, AsksForAFactUntilItIsEnteredAndOnlyWhereItApplies) {
  for (const Case& one : cases()) {
    SCOPED_TRACE(one.key);
    Plan asking = house();
    one.ask(asking);
    const std::vector<OnSiteItem> list = onSiteList(asking);
    const std::vector<const OnSiteItem*> items = itemsOf(list, one.key);
    ASSERT_FALSE(items.empty());
    EXPECT_EQ(items.front()->doer, one.doer);
    EXPECT_NE(findRecord(asking, items.front()->place), nullptr);
    // Answered all at once, whatever else is open.
    Plan answered = asking;
    one.answer(answered);
    const std::size_t left = itemsOf(onSiteList(answered), one.key).size();
    EXPECT_LT(left, items.size());
    if (!one.without) continue;
    Plan other = asking;
    one.without(other);
    EXPECT_LT(itemsOf(onSiteList(other), one.key).size(), items.size());
  }
}

TEST(OnSiteList, EveryFactOfTheTableHasACase) {
  std::set<std::string_view> tested;
  for (const Case& one : cases()) tested.insert(one.key);
  const auto all = [&](auto facts) {
    for (const auto& fact : facts) EXPECT_TRUE(tested.count(fact.key) > 0) << fact.key;
  };
  all(on_site::siteFacts());
  all(on_site::panelFacts());
  all(on_site::breakerFacts());
  all(on_site::circuitFacts());
  all(on_site::loadFacts());
  all(on_site::transferFacts());
  all(on_site::runFacts());
  all(on_site::racewayFacts());
  all(on_site::boxFacts());
  all(on_site::inverterFacts());
  all(on_site::batteryFacts());
  all(on_site::solarFacts());
  all(on_site::generatorFacts());
  all(on_site::cableFacts());
  all(on_site::managedFacts());
  all(on_site::authorityFacts());
}

/// A reading on the neutral, with everything that makes it prove something.
ClampReading neutralReading(double current) {
  ClampReading reading;
  reading.conductor = ReadConductor::neutral;
  reading.current = AcAmperes(current);
  reading.ownBreakerOff = Answer::yes;
  reading.partnerLoaded = Answer::yes;
  return reading;
}

/// Common practice, no source: only with the own breaker off does a reading speak of another circuit, and
/// only with the partner under load does "no current" say something.
TEST(OnSiteList, AReadingThatProvesSomethingClosesTheQuestionOfTheNeutral) {
  struct Reading {
    const char* of;
    double current;
    Answer ownOff, loaded;
    ReadConductor conductor;
    NeutralProof proof;
    Answer shared;
    const char* asked;  ///< text of the row that stays open; empty: closed
  };
  const Reading readings[] = {
      {"no current, partner loaded", 0.0, Answer::yes, Answer::yes, ReadConductor::neutral,
       NeutralProof::notShared, Answer::no, ""},
      {"as good as none", 0.2, Answer::yes, Answer::yes, ReadConductor::neutral, NeutralProof::notShared,
       Answer::no, ""},
      {"no current, partner idle", 0.0, Answer::yes, Answer::no, ReadConductor::neutral,
       NeutralProof::partnerNotLoaded, Answer::unknown, "onsite.circuit.neutral_partner"},
      {"no current, partner not known", 0.0, Answer::yes, Answer::unknown, ReadConductor::neutral,
       NeutralProof::partnerNotLoaded, Answer::unknown, "onsite.circuit.neutral_partner"},
      {"own breaker on", 0.0, Answer::no, Answer::yes, ReadConductor::neutral, NeutralProof::ownBreakerOn,
       Answer::unknown, "onsite.circuit.neutral_own_breaker"},
      {"own current", 5.0, Answer::unknown, Answer::yes, ReadConductor::neutral, NeutralProof::ownBreakerOn,
       Answer::unknown, "onsite.circuit.neutral_own_breaker"},
      {"a line", 0.0, Answer::yes, Answer::yes, ReadConductor::line, NeutralProof::none, Answer::unknown,
       "onsite.circuit.neutral_shared"},
      {"current of another circuit", 0.5, Answer::yes, Answer::unknown, ReadConductor::neutral,
       NeutralProof::shared, Answer::yes, ""},
  };
  for (const Reading& one : readings) {
    SCOPED_TRACE(one.of);
    Plan plan = house();
    fridge(plan).neutralShared = Answer::unknown;
    ASSERT_TRUE(asks(plan, "circuit.neutral_shared"));
    ClampReading reading = neutralReading(one.current);
    reading.ownBreakerOff = one.ownOff;
    reading.partnerLoaded = one.loaded;
    reading.conductor = one.conductor;
    EXPECT_EQ(neutralProof(reading), one.proof);
    fridge(plan).readings.push_back(reading);
    EXPECT_EQ(neutralShared(fridge(plan)), one.shared);
    const std::int64_t id = fridge(plan).id.number;
    const std::vector<OnSiteItem> list = onSiteList(plan);
    const auto rowOf = [&](std::string_view key) {
      std::string what;
      for (const OnSiteItem* item : itemsOf(list, key)) {
        if (item->place.id == id) what = std::string(item->what.id.key);
      }
      return what;
    };
    EXPECT_EQ(rowOf("circuit.neutral_shared"), one.asked);
    // Proven shared, the partner is looked for.
    EXPECT_EQ(!rowOf("circuit.multiwire").empty(), one.shared == Answer::yes);
  }
}

TEST(OnSiteList, OfSeveralReadingsTheOneThatSaysMostCounts) {
  Circuit circuit;
  EXPECT_EQ(neutralShared(circuit), Answer::unknown);
  ClampReading idle = neutralReading(0.0);
  idle.partnerLoaded = Answer::no;
  circuit.readings = {idle, neutralReading(0.0), idle};
  EXPECT_EQ(neutralShared(circuit), Answer::no);
  circuit.neutralShared = Answer::yes;  // somebody knows better
  EXPECT_EQ(neutralShared(circuit), Answer::yes);
  // What is proven stands before what was entered.
  circuit.neutralShared = Answer::no;
  circuit.readings.push_back(neutralReading(1.5));
  EXPECT_EQ(neutralShared(circuit), Answer::yes);
}

TEST(OnSiteList, AsksTheHouseholdForNothingWithACoverOff) {
  // What hides behind a cover or in a wall, and what stands on a conductor; common practice, no source.
  for (const Case& one : cases()) {
    const bool covered = one.key.starts_with("panel.") || one.key.starts_with("feeder_run.") ||
                         one.key.starts_with("raceway.") || one.key.starts_with("splice_box.") ||
                         one.key.starts_with("dc_cable.") ||
                         one.key.find("neutral") != std::string_view::npos ||
                         one.key.find("conductor") != std::string_view::npos;
    if (covered) {
      EXPECT_EQ(one.doer, Doer::qualifiedPerson) << one.key;
    }
  }
}

TEST(OnSiteList, GoesByPanelAndSpaceAsTheyStandToday) {
  Plan plan = example::exampleHouseMoved();
  for (auto& circuit : plan.circuits) circuit.edit().traced = Answer::unknown;
  const std::vector<OnSiteItem> list = onSiteList(plan);
  std::vector<SpacePosition> seen;
  for (const OnSiteItem* item : itemsOf(list, "circuit.traced")) {
    const Circuit& circuit = *find(plan, CircuitId{item->place.id});
    EXPECT_EQ(item->panel, find(plan, circuit.breaker)->panel);
    seen.push_back(find(plan, circuit.breaker)->position());
  }
  ASSERT_GT(seen.size(), 5u);
  for (std::size_t i = 1; i < seen.size(); ++i) {
    EXPECT_TRUE(seen[i - 1].row < seen[i].row ||
                (seen[i - 1].row == seen[i].row && seen[i - 1].column < seen[i].column));
  }
}

TEST(OnSiteList, AsksOnceForEachPieceOfTheFeederThatNobodyEntered) {
  Plan plan = example::exampleHouseMoved();
  plan.runs.clear();
  std::set<std::string_view> keys;
  for (const OnSiteItem& item : onSiteList(plan)) {
    if (item.place.kind == RecordKind::transfer && item.field.empty()) keys.insert(item.key);
  }
  EXPECT_EQ(keys, (std::set<std::string_view>{"transfer.main_to_switch", "transfer.inverter_to_switch",
                                              "transfer.switch_to_backup"}));
}

TEST(OnSiteList, OfANewPlanAsksAboutTheMainPanelAndItsService) {
  for (const OnSiteItem& item : onSiteList(newPlan())) {
    if (item.key == "site.service_A") continue;
    EXPECT_EQ(item.place.kind, RecordKind::panel);
    EXPECT_EQ(item.panel, mainPanel(newPlan())->id);
  }
  EXPECT_TRUE(asks(newPlan(), "panel.bus_A"));
}

TEST(OnSiteList, IsWhatTheReviewAsksBy) {
  Plan plan = example::exampleHouseMoved();
  for (auto& circuit : plan.circuits) circuit.edit().neutralShared = Answer::unknown;
  const Assessment answers = assess(plan);
  const auto asked = static_cast<std::size_t>(
      std::count_if(answers.findings.begin(), answers.findings.end(),
                    [](const Finding& finding) { return finding.key == "neutral.not_looked_for"; }));
  EXPECT_GT(asked, 0u);
  EXPECT_EQ(asked, itemsOf(answers.onSite, "circuit.neutral_shared").size());
}

}  // namespace
}  // namespace stayalight
