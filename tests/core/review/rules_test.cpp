// Each rule about what the plan says: it speaks where one thing is made wrong, and not on the sound plan.

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/review/rule_cases.h"
#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

using example::circuitNamed;
using example::editBreaker;
using example::editCircuit;
using example::editPanel;
using example::kBackup;
using example::kMain;
using sound::findingOf;
using sound::findings;

Circuit& circuit(Plan& plan, const char* name) { return editCircuit(plan, circuitNamed(plan, name)); }
Breaker& planned(Plan& plan, const char* name) {
  return editBreaker(plan, find(plan, circuitNamed(plan, name))->planned);
}
Load& load(Plan& plan, const char* name) { return circuit(plan, name).loads.front(); }

/// A generator on a cord at the switch, everything about it known.
void generator(Plan& plan) {
  Generator& made = plan.generator.edit();
  made.comesIn = GeneratorPoint::transfer;
  made.continuous = Watts(9000);
  made.neutral = GeneratorNeutral::floating;
  made.device = RatingAmperes(50);
  made.inlet = RatingAmperes(50);
  made.switchesNeutral = Answer::no;
  made.alarmsFitted = Answer::yes;
}
/// An automatic switch with a bypass that breaks first and leaves the inverter's neutral out.
Transfer& bypass(Plan& plan) {
  Transfer& transfer = plan.transfer.edit();
  transfer.arrangement = Arrangement::automaticSwitch;
  transfer.bypass = Answer::yes;
  transfer.bypassBreaksFirst = Answer::yes;
  transfer.bypassSwitchesNeutral = Answer::yes;
  return transfer;
}
/// The backup subpanel stands in another building, all of it known.
Panel& inAnotherBuilding(Plan& plan) {
  Panel& panel = editPanel(plan, kBackup);
  panel.separateBuilding = true;
  panel.groundingElectrode = Answer::yes;
  panel.buildingDisconnect = Answer::yes;
  return panel;
}
/// Only this circuit runs through the nipple.
void aloneInTheNipple(Plan& plan, const char* name) {
  for (auto& other : plan.circuits) {
    if (other->name != name) other.edit().raceway = {};
  }
}
/// The neutral of the office read with its breaker off, the counter loaded: no current.
ClampReading& neutralReading(Plan& plan) {
  ClampReading& reading = circuit(plan, "Office").readings.emplace_back();
  reading.conductor = ReadConductor::neutral;
  reading.ownBreakerOff = Answer::yes;
  reading.partner = circuitNamed(plan, "Counter A");
  reading.partnerLoaded = Answer::yes;
  return reading;
}

/// Both counters planned onto the backup subpanel, side by side on opposite legs, tied.
Plan countersMoved() {
  Plan made = sound::plan();
  example::moveByHand(made, circuitNamed(made, "Counter A"), kBackup, {Column::left, 3});
  example::moveByHand(made, circuitNamed(made, "Counter B"), kBackup, {Column::left, 4});
  return made;
}

TEST(ReviewOfASoundPlan, FindsNoDangerAndNothingThatMustBeFixed) {
  for (const Plan& made : {sound::plan(), countersMoved()}) {
    for (const Finding& finding : findings(made)) {
      EXPECT_GT(finding.severity, Severity::mustFix)
          << finding.key << ": " << render(finding.trade, plainEnglish());
    }
  }
}

class ReviewRule : public ::testing::TestWithParam<RuleCase> {};

TEST_P(ReviewRule, SpeaksWhereItMustAndNotOnTheSoundPlan) {
  const RuleCase& c = GetParam();
  Plan made = countersMoved();
  EXPECT_EQ(findingOf(findings(made), c.key), nullptr) << "on the sound plan";
  c.spoil(made);
  const std::vector<Finding> list = findings(made);
  const Finding* finding = findingOf(list, c.key);
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->severity, c.severity);
  EXPECT_FALSE(finding->places.empty());
  for (const Message& sentence : {finding->plain, finding->trade}) {
    const std::string text = render(sentence, plainEnglish());
    EXPECT_EQ(text.find('<'), std::string::npos) << text;
    EXPECT_GT(text.size(), 10u);
    EXPECT_EQ(text.find("compliant"), std::string::npos);
    EXPECT_EQ(text.find("passed"), std::string::npos);
  }
}

const RuleCase kCases[] = {
    // sources and transfer
    {"sources.not_kept_apart", Severity::danger,
     [](Plan& p) {
       const BreakerId id =
           example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
       editBreaker(p, id).interlocked = Answer::no;
       p.transfer.edit().listing = TransferListing::none;
     }},
    {"sources.unnamed", Severity::danger,
     [](Plan& p) {
       example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
       p.transfer.edit().listing = TransferListing::unknown;
     }},
    {"sources.perhaps", Severity::checkOnSite,
     [](Plan& p) {
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 30, Feeds::solar, Stage::existing);
     }},
    {"transfer.not_listed", Severity::danger,
     [](Plan& p) { p.transfer.edit().listing = TransferListing::none; }},
    {"transfer.listing_unknown", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().listing = TransferListing::unknown; }},
    {"transfer.none", Severity::mustFix, [](Plan& p) { p.transfer.edit().arrangement = Arrangement::none; }},
    {"transfer.no_bypass", Severity::advice, [](Plan& p) { p.transfer.edit().bypass = Answer::no; }},
    {"transfer.automatic_capacity", Severity::checkOnSite,
     [](Plan& p) {
       p.transfer.edit().arrangement = Arrangement::automaticSwitch;
       p.transfer.edit().calculatedLoad = VoltAmperes(6001);
     }},
    // hold-down
    {"holddown.missing", Severity::danger,
     [](Plan& p) {
       const BreakerId id =
           example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
       editBreaker(p, id).backFed = Answer::yes;
       editBreaker(p, id).holdDown = Answer::no;
     }},
    {"holddown.unknown", Severity::checkOnSite,
     [](Plan& p) {
       const BreakerId id =
           example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
       editBreaker(p, id).backFed = Answer::yes;
     }},
    {"holddown.said_forwards", Severity::checkOnSite,
     [](Plan& p) {
       example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
     }},
    {"holddown.marked", Severity::mustFix,
     [](Plan& p) {
       const BreakerId id =
           example::addBreaker(p, kBackup, {Column::right, 7}, 2, 40, Feeds::inverterOutput, Stage::fresh);
       editBreaker(p, id).backFed = Answer::yes;
       editBreaker(p, id).holdDown = Answer::yes;
       editBreaker(p, id).protection = Protection::gfci;
     }},
    {"holddown.main", Severity::danger,
     [](Plan& p) {
       editPanel(p, kBackup).mainBackFed = true;
       editPanel(p, kBackup).holdDown = Answer::no;
     }},
    {"holddown.main_unknown", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kBackup).mainBackFed = true; }},
    // bonds
    {"bond.backup", Severity::danger, [](Plan& p) { editPanel(p, kBackup).neutralBonded = Answer::yes; }},
    {"bond.backup_unknown", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kBackup).neutralBonded = Answer::unknown; }},
    {"bond.too_many_ordinary", Severity::danger,
     [](Plan& p) { editPanel(p, kBackup).neutralBonded = Answer::yes; }},
    {"bond.too_many_outage", Severity::danger,
     [](Plan& p) { p.inverter.edit().bond = BondBehaviour::bondsInIsland; }},
    {"bond.none_ordinary", Severity::danger, [](Plan& p) { editPanel(p, kMain).neutralBonded = Answer::no; }},
    {"bond.none_outage", Severity::danger, [](Plan& p) { p.transfer.edit().switchesNeutral = Answer::yes; }},
    {"bond.unknown_ordinary", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kMain).neutralBonded = Answer::unknown; }},
    {"bond.unknown_outage", Severity::checkOnSite,
     [](Plan& p) { p.inverter.edit().bond = BondBehaviour::unknown; }},
    {"bond.generator", Severity::checkOnSite,
     [](Plan& p) {
       const BreakerId id =
           example::addBreaker(p, kMain, {Column::right, 9}, 2, 30, Feeds::generator, Stage::fresh);
       editBreaker(p, id).interlocked = Answer::yes;
     }},
    // room for the supply
    {"panel.supply_room", Severity::mustFix,
     [](Plan& p) {
       for (auto& breaker : p.breakers) {
         if (breaker->feeds.is(Feeds::feeder)) breaker.edit().row = 6;  // where the freezer stays
       }
     }},
    {"panel.supply_place", Severity::checkOnSite,
     [](Plan& p) {
       editPanel(p, kMain).spaces = 14;
       std::erase_if(p.breakers, [](const auto& breaker) { return breaker->feeds.is(Feeds::feeder); });
     }},
    {"panel.supply_order", Severity::advice,
     [](Plan& p) {
       Breaker& old = editBreaker(p, find(p, circuitNamed(p, "Lights"))->breaker);
       old.row = 7;
       old.stage = Stage::removed;
     }},
    // voltages
    {"system.wye", Severity::danger, [](Plan& p) { p.site.edit().service = ServiceSystem::wye120_208; }},
    {"system.wye_output", Severity::danger,
     [](Plan& p) { p.inverter.edit().output = InverterOutput::wye120_208; }},
    {"system.three_phase", Severity::danger,
     [](Plan& p) { p.site.edit().service = ServiceSystem::threePhase; }},
    {"system.single_120", Severity::danger,
     [](Plan& p) { p.inverter.edit().output = InverterOutput::single120; }},
    // multiwire
    {"multiwire.split", Severity::danger,
     [](Plan& p) {
       const Circuit b = circuit(p, "Counter B");  // a copy: each edit takes the shared part anew
       editBreaker(p, b.planned).stage = Stage::removed;
       editBreaker(p, b.breaker).stage = Stage::existing;
       circuit(p, "Counter B").planned = b.breaker;
     }},
    {"multiwire.leg", Severity::danger,
     [](Plan& p) {
       planned(p, "Counter B").row = 5;
       planned(p, "Counter B").column = Column::right;
     }},
    {"multiwire.tandem", Severity::danger,
     [](Plan& p) {
       planned(p, "Counter A").half = Half::a;
       planned(p, "Counter B").half = Half::b;
       planned(p, "Counter B").row = 3;
     }},
    {"multiwire.disconnect", Severity::mustFix, [](Plan& p) { planned(p, "Counter A").tie = Tie::none; }},
    {"multiwire.apart", Severity::mustFix, [](Plan& p) { planned(p, "Counter B").row = 8; }},
    {"multiwire.common_trip", Severity::mustFix,
     [](Plan& p) { load(p, "Counter B").connection = Connection::lineToLine; }},
    {"multiwire.protection", Severity::mustFix,
     [](Plan& p) { planned(p, "Counter A").protection = Protection::afci; }},
    {"multiwire.partner", Severity::mustFix, [](Plan& p) { circuit(p, "Office").multiwire = 9; }},
    {"multiwire.raceways_metal", Severity::mustFix,
     [](Plan& p) {
       Raceway other = *p.raceways.front();
       other.id = {2};
       p.raceways.emplace_back(other);
       circuit(p, "Counter B").raceway = other.id;
     }},
    {"multiwire.raceways", Severity::mustFix,
     [](Plan& p) {
       Raceway& first = p.raceways.front().edit();
       first.type = RacewayType::pvc40;
       first.ground = GroundPath::oneWire;
       Raceway other = first;
       other.id = {2};
       p.raceways.emplace_back(other);
       circuit(p, "Counter B").raceway = other.id;
     }},
    // neutrals
    {"neutral.left", Severity::mustFix, [](Plan& p) { circuit(p, "Office").neutralMoved = Answer::no; }},
    {"neutral.unknown", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").neutralMoved = Answer::unknown; }},
    {"neutral.not_looked_for", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").neutralShared = Answer::unknown; }},
    {"neutral.unnamed_partner", Severity::mustFix,
     [](Plan& p) { circuit(p, "Office").neutralShared = Answer::yes; }},
    {"neutral.bare", Severity::mustFix,
     [](Plan& p) {
       example::moveByHand(p, circuitNamed(p, "Range"), kBackup, {Column::right, 7});
       circuit(p, "Range").insulatedNeutral = Answer::no;
     }},
    {"neutral.bare_unknown", Severity::checkOnSite,
     [](Plan& p) {
       example::moveByHand(p, circuitNamed(p, "Range"), kBackup, {Column::right, 7});
     }},
    {"neutral.terminals", Severity::mustFix, [](Plan& p) { editPanel(p, kBackup).neutralTerminals = 4; }},
    // what hangs on the circuits
    {"load.medical", Severity::checkOnSite, [](Plan& p) { load(p, "Office").medical = true; }},
    {"load.watts", Severity::checkOnSite, [](Plan& p) { load(p, "Office").running = {}; }},
    {"load.none", Severity::checkOnSite, [](Plan& p) { circuit(p, "Office").loads.clear(); }},
    {"load.heater", Severity::advice,
     [](Plan& p) {
       example::moveByHand(p, circuitNamed(p, "Water heater"), kBackup, {Column::right, 7});
     }},
    {"load.vehicle", Severity::advice, [](Plan& p) { load(p, "Office").name = "EV charger"; }},
    {"load.calculation", Severity::mustFix, [](Plan& p) { p.transfer.edit().calculatedLoad.reset(); }},
    // inverter and battery
    {"inverter.ratings", Severity::checkOnSite,
     [](Plan& p) {
       p.inverter.edit().continuous.reset();
       p.inverter.edit().continuousApparent.reset();
       p.inverter.edit().legContinuous.reset();
       p.inverter.edit().legCurrent.reset();
     }},
    {"inverter.curve", Severity::checkOnSite, [](Plan& p) { p.inverter.edit().overload.clear(); }},
    {"battery.missing", Severity::checkOnSite, [](Plan& p) { p.battery.edit().continuousCurrent.reset(); }},
    {"battery.over", Severity::mustFix, [](Plan& p) { p.battery.edit().continuousCurrent = DcAmperes(5); }},
    {"battery.too_cold", Severity::checkOnSite,
     [](Plan& p) {
       p.battery.edit().cellTemperature = Temperature::celsius(-5);
       p.battery.edit().chargeCutOff = Temperature::celsius(0);
     }},
    {"battery.peak_low", Severity::checkOnSite,
     [](Plan& p) {
       p.battery.edit().continuousCurrent = DcAmperes(100);
       p.battery.edit().peakCurrent = DcAmperes(50);
     }},
    {"battery.restart", Severity::advice,
     [](Plan& p) {
       const Fraction floor = p.battery->floor;
       p.battery.edit().restart = floor;
     }},
    {"battery.reserve", Severity::advice, [](Plan& p) { p.battery.edit().reserve = Fraction(0.05); }},
    {"outage.overload", Severity::mustFix,
     [](Plan& p) { load(p, "Office").running = example::known<Watts>(3500); }},
    {"leg.over_l2", Severity::mustFix,
     [](Plan& p) { load(p, "Office").running = example::known<Watts>(3500); }},
    {"total.over", Severity::mustFix,
     [](Plan& p) {
       load(p, "Office").running = example::known<Watts>(3500);
       load(p, "Lights").running = example::known<Watts>(3500);
       load(p, "Lights").duty = example::known<Fraction>(1);
     }},
    {"start.over", Severity::mustFix,
     [](Plan& p) { load(p, "Well pump").lockedRotor = example::known<AcAmperes>(60); }},
    // feeder
    {"feeder.minimum_above_maximum", Severity::mustFix,
     [](Plan& p) { p.inverter.edit().maximumOutputDevice = RatingAmperes(30); }},
    {"feeder.device_over", Severity::mustFix, [](Plan& p) { p.transfer.edit().rating = RatingAmperes(50); }},
    {"feeder.device_small", Severity::mustFix,
     [](Plan& p) { p.transfer.edit().calculatedLoad = VoltAmperes(15000); }},
    {"feeder.bus_over", Severity::mustFix,
     [](Plan& p) {
       p.transfer.edit().arrangement = Arrangement::inverterPassThrough;
       editPanel(p, kBackup).mainBreaker.reset();
       editPanel(p, kBackup).busRating = RatingAmperes(50);
     }},
    {"feeder.too_hot", Severity::mustFix,
     [](Plan& p) { p.runs.front().edit().ambient = Temperature::celsius(88); }},
    {"feeder.not_protected", Severity::mustFix,
     [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg12; }},
    {"feeder.conductor_small", Severity::mustFix,
     [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg14; }},
    {"feeder.nm_column", Severity::advice,
     [](Plan& p) { p.runs.front().edit().wiring = FeederWiring::nmCable; }},
    {"feeder.drop", Severity::advice, [](Plan& p) { p.runs.front().edit().length = Length::feet(600); }},
    {"feeder.drop_together", Severity::advice,
     [](Plan& p) {
       for (auto& run : p.runs) run.edit().length = Length::feet(90);
     }},
    {"feeder.run_not_counted", Severity::mustFix,
     [](Plan& p) {
       FeederRun again = *p.runs.front();
       again.id = nextFeederRunId(p);
       p.runs.emplace_back(again);
     }},
    {"feeder.unknown", Severity::checkOnSite, [](Plan& p) { p.runs.clear(); }},
    // places
    {"place.two_pole_leg", Severity::mustFix,
     [](Plan& p) {
       Space space;
       space.column = Column::right;
       space.row = 4;
       space.leg = LegOverride::l1;
       editPanel(p, kBackup).exceptions.push_back(space);
     }},
    {"place.overlap", Severity::mustFix, [](Plan& p) { planned(p, "Office").row = 1; }},
    {"place.outside", Severity::mustFix, [](Plan& p) { planned(p, "Office").row = 40; }},
    {"place.tandem", Severity::mustFix, [](Plan& p) { planned(p, "Office").half = Half::a; }},
    {"place.tandem_unknown", Severity::checkOnSite,
     [](Plan& p) {
       editPanel(p, kBackup).tandems = Answer::unknown;
       planned(p, "Office").half = Half::a;
     }},
    {"place.pole_maximum", Severity::mustFix, [](Plan& p) { editPanel(p, kBackup).poleMaximum = 5; }},
    {"place.listing", Severity::mustFix,
     [](Plan& p) {
       editPanel(p, kBackup).listingLine = "Line one";
       planned(p, "Office").listingLine = "Line two";
     }},
    // directory
    {"directory.words", Severity::mustFix, [](Plan& p) { circuit(p, "Office").serves = "plugs"; }},
    {"directory.twice", Severity::mustFix,
     [](Plan& p) { circuit(p, "Office").serves = "kitchen  Refrigerator"; }},
    {"directory.blank", Severity::advice,
     [](Plan& p) { editBreaker(p, find(p, circuitNamed(p, "Office"))->breaker).stage = Stage::removed; }},
    // panels
    {"panel.main_over_bus", Severity::mustFix,
     [](Plan& p) {
       editPanel(p, kBackup).busRating = RatingAmperes(100);
       editPanel(p, kBackup).mainBreaker = RatingAmperes(125);
     }},
    {"building.electrode_missing", Severity::mustFix,
     [](Plan& p) { inAnotherBuilding(p).groundingElectrode = Answer::no; }},
    {"building.electrode_unknown", Severity::checkOnSite,
     [](Plan& p) { inAnotherBuilding(p).groundingElectrode = Answer::unknown; }},
    {"building.disconnect_missing", Severity::mustFix,
     [](Plan& p) { inAnotherBuilding(p).buildingDisconnect = Answer::no; }},
    {"building.disconnect_unknown", Severity::checkOnSite,
     [](Plan& p) {
       Panel& panel = inAnotherBuilding(p);
       panel.buildingDisconnect = Answer::unknown;
       panel.mainBreaker.reset();
     }},
    {"building.disconnect_small", Severity::mustFix,
     [](Plan& p) {
       Panel& panel = inAnotherBuilding(p);
       panel.buildingDisconnect = Answer::unknown;
       panel.mainBreaker = RatingAmperes(50);
     }},
    {"building.ground", Severity::checkOnSite,
     [](Plan& p) {
       inAnotherBuilding(p);
       p.runs.front().edit().fixedConductor = ConductorSize::awg4;
       p.runs.front().edit().fixedNeutral = ConductorSize::awg4;
     }},
    {"building.cable", Severity::checkOnSite,
     [](Plan& p) {
       inAnotherBuilding(p);
       p.runs.front().edit().wiring = FeederWiring::nmCable;
     }},
    {"building.circuits", Severity::checkOnSite, [](Plan& p) { inAnotherBuilding(p); }},
    {"panel.surge", Severity::checkOnSite,
     [](Plan& p) {
       p.breakers.erase(std::remove_if(p.breakers.begin(), p.breakers.end(),
                                       [](const auto& b) { return b->feeds.is(Feeds::surgeDevice); }),
                        p.breakers.end());
     }},
    {"panel.spare_spaces", Severity::advice, [](Plan& p) { editPanel(p, kBackup).spaces = 10; }},
    // branch circuits
    {"branch.conductor", Severity::mustFix, [](Plan& p) { planned(p, "Office").rating = RatingAmperes(20); }},
    {"branch.read_label", Severity::checkOnSite,
     [](Plan& p) { planned(p, "Furnace").rating = RatingAmperes(25); }},
    {"branch.label_maximum", Severity::mustFix,
     [](Plan& p) { load(p, "Office").maximumBreaker = RatingAmperes(10); }},
    {"branch.rating_raised", Severity::checkOnSite,
     [](Plan& p) {
       circuit(p, "Office").conductor.reset();
       planned(p, "Office").rating = RatingAmperes(20);
     }},
    {"branch.next_size_up", Severity::mustFix,
     [](Plan& p) {
       planned(p, "Range").rating = RatingAmperes(60);
       circuit(p, "Range").severalReceptacles = Answer::yes;
     }},
    {"branch.next_size_unknown", Severity::checkOnSite,
     [](Plan& p) { planned(p, "Range").rating = RatingAmperes(60); }},
    {"branch.poles", Severity::mustFix, [](Plan& p) { circuit(p, "Office").voltage = VoltageClass::v240; }},
    {"branch.two_on_breaker", Severity::mustFix,
     [](Plan& p) {
       const BreakerId moved = find(p, circuitNamed(p, "Office"))->planned;
       circuit(p, "Freezer").planned = moved;
     }},
    {"branch.aluminium", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").metal = Metal::aluminium; }},
    {"branch.arc_fault_lost", Severity::mustFix,
     [](Plan& p) {
       editBreaker(p, find(p, circuitNamed(p, "Office"))->breaker).protection = Protection::afci;
     }},
    {"branch.ground_fault_lost", Severity::mustFix,
     [](Plan& p) {
       editBreaker(p, find(p, circuitNamed(p, "Office"))->breaker).protection = Protection::gfci;
     }},
    {"branch.arc_fault_inside", Severity::checkOnSite,
     [](Plan& p) {
       p.site.edit().edition = CodeEdition::y2017;
       circuit(p, "Office").arcFaultArea = Answer::yes;
       circuit(p, "Office").extensionLength = Length::feet(5);
     }},
    {"branch.arc_fault", Severity::mustFix,
     [](Plan& p) {
       circuit(p, "Office").arcFaultArea = Answer::yes;
       circuit(p, "Office").extensionLength = Length::feet(6.1);
     }},
    {"branch.arc_fault_new", Severity::mustFix,
     [](Plan& p) {
       circuit(p, "Office").breaker = {};
       circuit(p, "Office").arcFaultArea = Answer::yes;
     }},
    {"branch.ground_fault_new", Severity::advice,
     [](Plan& p) {
       circuit(p, "Office").breaker = {};
       circuit(p, "Office").severalReceptacles = Answer::yes;
     }},
    {"branch.protection_decide", Severity::checkOnSite,
     [](Plan& p) {
       circuit(p, "Office").arcFaultArea = Answer::unknown;
       circuit(p, "Office").extensionLength.reset();
     }},
    // protection, old wiring
    {"protection.keep", Severity::advice,
     [](Plan& p) {
       planned(p, "Refrigerator").protection = Protection::gfci;
       load(p, "Refrigerator").startClass = StartClass::refrigerationCompressor;
     }},
    {"protection.prove_neutral", Severity::checkOnSite,
     [](Plan& p) {
       planned(p, "Office").protection = Protection::afci;
       circuit(p, "Office").neutralShared = Answer::unknown;
     }},
    {"branch.no_ground", Severity::mustFix,
     [](Plan& p) { circuit(p, "Office").ground = BranchGround::none; }},
    {"branch.ground_unknown", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").ground = BranchGround::unknown; }},
    // generator, bypass, solar, managed loads
    {"generator.monoxide", Severity::danger,
     [](Plan& p) {
       generator(p);
       p.generator.edit().alarmsFitted = Answer::no;
     }},
    {"generator.small", Severity::mustFix,
     [](Plan& p) {
       generator(p);
       p.generator.edit().continuous = Watts(300);
     }},
    {"generator.charge", Severity::advice,
     [](Plan& p) {
       generator(p);
       p.generator.edit().comesIn = GeneratorPoint::inverterInput;
       p.generator.edit().continuous = Watts(7000);
       p.inverter.edit().chargeLimit = Watts(6000);
     }},
    {"generator.single_120", Severity::danger,
     [](Plan& p) {
       generator(p);
       p.generator.edit().output = InverterOutput::single120;
     }},
    {"bond.too_many_generator", Severity::danger,
     [](Plan& p) {
       generator(p);
       p.generator.edit().neutral = GeneratorNeutral::bonded;
     }},
    {"bond.none_generator", Severity::danger,
     [](Plan& p) {
       generator(p);
       p.generator.edit().switchesNeutral = Answer::yes;
     }},
    {"bond.unknown_generator", Severity::checkOnSite,
     [](Plan& p) {
       generator(p);
       p.generator.edit().neutral = GeneratorNeutral::unknown;
     }},
    {"bypass.makes_first", Severity::danger, [](Plan& p) { bypass(p).bypassBreaksFirst = Answer::no; }},
    {"bypass.no_breaker", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().arrangement = Arrangement::inverterPassThrough; }},
    {"bypass.not_said", Severity::checkOnSite,
     [](Plan& p) {
       p.transfer.edit().arrangement = Arrangement::inverterPassThrough;
       p.transfer.edit().bypass = Answer::unknown;
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 60, Feeds::inverterInput, Stage::fresh);
     }},
    {"bypass.unknown", Severity::checkOnSite,
     [](Plan& p) { bypass(p).bypassBreaksFirst = Answer::unknown; }},
    {"bond.too_many_bypass", Severity::danger,
     [](Plan& p) {
       bypass(p).bypassSwitchesNeutral = Answer::no;
       p.inverter.edit().bond = BondBehaviour::alwaysBonded;
     }},
    {"bond.unknown_bypass", Severity::checkOnSite,
     [](Plan& p) {
       bypass(p).bypassSwitchesNeutral = Answer::unknown;
       p.inverter.edit().bond = BondBehaviour::alwaysBonded;
     }},
    {"bond.none_bypass", Severity::danger,
     [](Plan& p) {
       bypass(p);
       p.transfer.edit().serviceBondUpstream = Answer::no;
       editPanel(p, kMain).neutralBonded = Answer::no;
     }},
    {"service.bond_stays", Severity::mustFix,
     [](Plan& p) {
       p.transfer.edit().serviceDisconnectMoved = Answer::yes;
       p.transfer.edit().serviceBondUpstream = Answer::no;
     }},
    {"neutral.bare_service", Severity::mustFix,
     [](Plan& p) {
       p.transfer.edit().serviceDisconnectMoved = Answer::yes;
       circuit(p, "Range").voltage = VoltageClass::v120_240;
       circuit(p, "Range").insulatedNeutral = Answer::no;
     }},
    {"neutral.bare_service_ask", Severity::checkOnSite,
     [](Plan& p) {
       p.transfer.edit().serviceDisconnectMoved = Answer::yes;
       circuit(p, "Range").voltage = VoltageClass::v120_240;
       circuit(p, "Range").insulatedNeutral = Answer::unknown;
     }},
    {"service.demand_zero", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().maximumDemand = VoltAmperes(); }},
    {"service.emergency", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().serviceDisconnectMoved = Answer::yes; }},
    {"service.moved", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().serviceDisconnectMoved = Answer::yes; }},
    {"solar.held_back", Severity::mustFix,
     [](Plan& p) {
       p.solar.edit().coupling = SolarCoupling::alternatingCurrent;
       p.solar.edit().panel = kBackup;
       p.solar.edit().heldBack = Answer::no;
     }},
    {"solar.stays", Severity::advice,
     [](Plan& p) {
       p.solar.edit().coupling = SolarCoupling::alternatingCurrent;
       p.solar.edit().panel = kMain;
     }},
    {"solar.large", Severity::mustFix,
     [](Plan& p) {
       p.solar.edit().coupling = SolarCoupling::alternatingCurrent;
       p.solar.edit().panel = kBackup;
       p.solar.edit().heldBack = Answer::yes;
       p.solar.edit().output = Watts(20000);
     }},
    {"generator.starts", Severity::checkOnSite,
     [](Plan& p) {
       generator(p);
       p.generator.edit().ratedCurrent = AcAmperes(21);
     }},
    {"managed.unlisted", Severity::mustFix,
     [](Plan& p) {
       ManagedLoad& row = p.transfer.edit().managed.emplace_back();
       row.load = example::loadNamed(p, "Toaster");
       row.listed = Answer::no;
     }},
    {"managed.alarms", Severity::checkOnSite,
     [](Plan& p) {
       ManagedLoad& row = p.transfer.edit().managed.emplace_back();
       row.load = load(p, "Lights").id;
       row.listed = Answer::yes;
     }},
    {"managed.no_load", Severity::checkOnSite, [](Plan& p) { p.transfer.edit().managed.emplace_back(); }},
    // clamp readings, answers of the authority
    {"reading.shared", Severity::danger, [](Plan& p) { neutralReading(p).current = AcAmperes(3.1); }},
    {"reading.proves_nothing", Severity::checkOnSite,
     [](Plan& p) { neutralReading(p).partnerLoaded = Answer::no; }},
    {"reading.more", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Refrigerator").readings.emplace_back().current = AcAmperes(14); }},
    {"authority.open", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().answers.emplace_back().question = "May the nipple be PVC?"; }},
    // buses and the battery's cable
    {"bus.choose", Severity::checkOnSite,
     [](Plan& p) {
       editPanel(p, kMain).busRating = RatingAmperes(225);
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 20, Feeds::solar, Stage::fresh);
     }},
    {"bus.over", Severity::mustFix,
     [](Plan& p) {
       editPanel(p, kMain).busRating = RatingAmperes(100);
       editPanel(p, kMain).mainBreaker = RatingAmperes(100);
       const BreakerId id = example::addBreaker(p, kMain, {Column::right, 9}, 2, 40, Feeds::solar, Stage::fresh);
       editBreaker(p, id).sourceCurrent = AcAmperes(32);
     }},
    {"bus.chosen", Severity::mustFix,
     [](Plan& p) {
       editPanel(p, kMain).busRating = RatingAmperes(100);
       editPanel(p, kMain).busOption = BusOption::sumOfBreakers;
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 40, Feeds::solar, Stage::fresh);
     }},
    {"bus.output_unknown", Severity::checkOnSite,
     [](Plan& p) {
       editPanel(p, kMain).busRating = RatingAmperes(225);
       editPanel(p, kMain).busOption = BusOption::anywhere;
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 40, Feeds::solar, Stage::fresh);
     }},
    {"bus.unknown", Severity::checkOnSite,
     [](Plan& p) {
       editPanel(p, kMain).busRating.reset();
       example::addBreaker(p, kMain, {Column::right, 9}, 2, 40, Feeds::solar, Stage::fresh);
     }},
    {"dc.over", Severity::mustFix, [](Plan& p) { p.dcCable.edit().fixedConductor = ConductorSize::awg8; }},
    {"dc.instructions", Severity::mustFix,
     [](Plan& p) {
       p.dcCable.edit().fixedConductor = ConductorSize::awg4_0;
       p.dcCable.edit().instructionsConductor = ConductorSize::kcmil250;
     }},
    {"dc.lugs", Severity::mustFix,
     [](Plan& p) {
       p.dcCable.edit().fineStranded = Answer::yes;
       p.dcCable.edit().lugsListed = Answer::no;
     }},
    {"dc.unknown", Severity::checkOnSite, [](Plan& p) { p.inverter.edit().lowestInputVoltage.reset(); }},
    // raceways and splices
    {"raceway.fill", Severity::mustFix, [](Plan& p) { p.raceways.front().edit().size = TradeSize::half; }},
    {"raceway.no_length", Severity::checkOnSite, [](Plan& p) { p.raceways.front().edit().length = {}; }},
    {"raceway.unknown", Severity::checkOnSite, [](Plan& p) { circuit(p, "Office").conductor.reset(); }},
    {"raceway.adjusted", Severity::mustFix,
     [](Plan& p) {
       p.raceways.front().edit().length = Length::feet(6);
       p.raceways.front().edit().otherCarrying = 12;
       p.raceways.front().edit().otherArea = SquareInches(0.1);
       circuit(p, "Office").severalReceptacles = Answer::yes;
     }},
    {"raceway.adjusted_ask", Severity::checkOnSite,
     [](Plan& p) {
       p.raceways.front().edit().length = Length::feet(6);
       p.raceways.front().edit().otherCarrying = 12;
       p.raceways.front().edit().otherArea = SquareInches(0.1);
       circuit(p, "Office").severalReceptacles = Answer::unknown;
     }},
    {"raceway.extension", Severity::mustFix,
     [](Plan& p) {
       circuit(p, "Office").conductor = ConductorSize::awg12;
       circuit(p, "Office").extension = ConductorSize::awg14;
       planned(p, "Office").rating = RatingAmperes(20);
     }},
    {"branch.load_above", Severity::mustFix,
     [](Plan& p) {
       // 4,320 VA / 240 V = 18 A, a quarter more as a motor: 22.5 A on 14 AWG of 15 A.
       load(p, "Well pump").nameplate = VoltAmperes(4320);
       load(p, "Well pump").maximumBreaker = RatingAmperes(30);
       circuit(p, "Well pump").conductor = ConductorSize::awg14;
       planned(p, "Well pump").rating = RatingAmperes(30);
     }},
    {"raceway.flexible_ground", Severity::checkOnSite,
     [](Plan& p) {
       p.raceways.front().edit().type = RacewayType::flexibleMetal;
       p.raceways.front().edit().ground = GroundPath::raceway;
     }},
    {"raceway.plastic_ground", Severity::mustFix,
     [](Plan& p) {
       p.raceways.front().edit().type = RacewayType::pvc80;
       p.raceways.front().edit().ground = GroundPath::raceway;
     }},
    {"box.fill", Severity::mustFix,
     [](Plan& p) {
       p.spliceBoxes.front().edit().volume = CubicInches(6);
       circuit(p, "Office").splice = Splice::inBox;
       circuit(p, "Office").spliceBox = {1};
     }},
    {"box.unknown", Severity::checkOnSite,
     [](Plan& p) {
       p.spliceBoxes.front().edit().volume.reset();
       circuit(p, "Office").splice = Splice::inBox;
       circuit(p, "Office").spliceBox = {1};
     }},
    {"box.large", Severity::checkOnSite,
     [](Plan& p) {
       circuit(p, "Office").extension = ConductorSize::awg4;
       circuit(p, "Office").splice = Splice::inBox;
       circuit(p, "Office").spliceBox = {1};
     }},
    {"panel.wiring_space", Severity::mustFix,
     [](Plan& p) { editPanel(p, kMain).wiringSpace = SquareInches(0.2); }},
    {"panel.wiring_space_run", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kMain).wiringSpace = SquareInches(3.0); }},
    {"splice.unknown", Severity::checkOnSite, [](Plan& p) { circuit(p, "Office").splice = Splice::unknown; }},
    {"splice.no_raceway", Severity::advice, [](Plan& p) { circuit(p, "Office").raceway = {}; }},
    {"splice.no_box", Severity::checkOnSite, [](Plan& p) { circuit(p, "Office").splice = Splice::inBox; }},
    {"branch.untraced", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").traced = Answer::unknown; }},
    {"branch.rating_not_read", Severity::checkOnSite,
     [](Plan& p) { planned(p, "Office").ratingRead = Answer::unknown; }},
    {"alarms.split", Severity::mustFix, [](Plan& p) { circuit(p, "Freezer").smokeAlarms = Answer::yes; }},
    {"alarms.unknown", Severity::checkOnSite,
     [](Plan& p) { circuit(p, "Office").smokeAlarms = Answer::unknown; }},
    // site
    {"generator.no_breaker", Severity::danger,
     [](Plan& p) {
       generator(p);
       p.generator.edit().comesIn = GeneratorPoint::mainPanel;
     }},
    {"generator.no_switch", Severity::mustFix,
     [](Plan& p) {
       generator(p);
       p.transfer.edit().arrangement = Arrangement::inverterPassThrough;
     }},
    {"start.locked_rotor_low", Severity::mustFix,
     [](Plan& p) {
       load(p, "Refrigerator").start = StartKind::acrossTheLine;
       load(p, "Refrigerator").lockedRotor.value = AcAmperes(1.5);
     }},
    {"plan.later_word", Severity::mustFix,
     [](Plan& p) { planned(p, "Refrigerator").protection = Choice<Protection>::otherWord("light_fault"); }},
    {"branch.breaker_gone", Severity::mustFix,
     [](Plan& p) { planned(p, "Office").stage = Stage::removed; }},
    {"load.no_neutral", Severity::checkOnSite,
     [](Plan& p) { load(p, "Water heater").connection = Connection::lineToNeutral; }},
    {"load.amperes_above_watts", Severity::checkOnSite,
     [](Plan& p) {
       load(p, "Refrigerator").running = example::known<Watts>(100);
       load(p, "Refrigerator").runningCurrent = example::known<AcAmperes>(12);
     }},
    {"load.nameplate_low", Severity::checkOnSite,
     [](Plan& p) { load(p, "Water heater").nameplate = VoltAmperes(450); }},
    {"branch.overload", Severity::mustFix,
     [](Plan& p) { load(p, "Refrigerator").running.value = Watts(4800); }},
    {"load.voltage", Severity::mustFix, [](Plan& p) { load(p, "Refrigerator").ratedVoltage = 240; }},
    {"feeder.one_pole", Severity::mustFix,
     [](Plan& p) {
       for (auto& breaker : p.breakers) {
         if (breaker->feeds.is(Feeds::feeder)) breaker.edit().poles = 1;
       }
     }},
    {"feeder.two_breakers", Severity::checkOnSite,
     [](Plan& p) {
       const BreakerId id = example::addBreaker(p, kMain, {Column::right, 9}, 2, 60, Feeds::feeder, Stage::fresh);
       editBreaker(p, id).feedsPanel = kBackup;
     }},
    {"inverter.units_each", Severity::checkOnSite, [](Plan& p) { p.inverter.edit().units = 2; }},
    {"source.battery_below", Severity::checkOnSite,
     [](Plan& p) {
       p.battery.edit().packs = 1;
       p.battery.edit().continuousCurrent = DcAmperes(20);
       p.inverter.edit().lowestInputVoltage = DcVolts(44);
     }},
    {"generator.other_system", Severity::mustFix,
     [](Plan& p) {
       generator(p);
       p.generator.edit().output = InverterOutput::wye120_208;
     }},
    {"generator.solar", Severity::mustFix,
     [](Plan& p) {
       generator(p);
       example::addBreaker(p, kBackup, {Column::right, 7}, 2, 20, Feeds::solar, Stage::fresh);
     }},
    {"start.kind", Severity::mustFix,
     [](Plan& p) { load(p, "Office").startClass = StartClass::blower; }},
    {"service.subpanel_feeder", Severity::checkOnSite,
     [](Plan& p) {
       p = addPanel(p, PanelRole::subpanel);
       editPanel(p, kBackup).fedFrom = p.panels.back()->id;
     }},
    {"site.no_main", Severity::mustFix,
     [](Plan& p) { editPanel(p, kMain).role = PanelRole::subpanel; }},
    {"site.no_backup", Severity::mustFix,
     [](Plan& p) { editPanel(p, kBackup).role = PanelRole::subpanel; }},
    {"site.second_panel", Severity::mustFix, [](Plan& p) { p = addPanel(p, PanelRole::backup); }},
    {"inverter.curve_below", Severity::mustFix,
     [](Plan& p) { p.inverter.edit().overload.back().watts = Watts(10); }},
    {"site.canada", Severity::checkOnSite, [](Plan& p) { p.site.edit().country = Country::canada; }},
    {"site.edition", Severity::checkOnSite, [](Plan& p) { p.site.edit().edition = CodeEdition::y2026; }},
    {"site.edition_word", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().edition = Choice<CodeEdition>::otherWord("2029"); }},
    {"site.amendments", Severity::checkOnSite, [](Plan& p) { p.site.edit().amendments.clear(); }},
    {"site.fault_unknown", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().availableFaultCurrent.reset(); }},
    {"site.fault_over", Severity::mustFix,
     [](Plan& p) { p.site.edit().availableFaultCurrent = AcAmperes(10001); }},
    {"site.permit_date", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().permitDate = "yesterday"; }},
    {"site.permit_edition", Severity::checkOnSite,
     [](Plan& p) { p.site.edit().permitDate = "2020-05-01"; }},
    {"site.fault_panel", Severity::mustFix,
     [](Plan& p) {
       for (auto& breaker : p.breakers) breaker.edit().interruptingRating = AcAmperes(25000);
       p.site.edit().availableFaultCurrent = AcAmperes(22000);
     }},
    {"site.marking_unknown", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kMain).interruptingRating.reset(); }},
    {"load.typed_zero", Severity::checkOnSite,
     [](Plan& p) {
       p.transfer.edit().calculatedLoad = VoltAmperes();
       p.transfer.edit().continuousPart.reset();
       p.transfer.edit().neutralLoad.reset();
     }},
    {"load.typed_continuous", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().continuousPart = VoltAmperes(6001); }},
    {"load.typed_neutral", Severity::checkOnSite,
     [](Plan& p) { p.transfer.edit().neutralLoad = VoltAmperes(6001); }},
    {"site.interrupting_unknown", Severity::checkOnSite,
     [](Plan& p) { editPanel(p, kBackup).interruptingRating.reset(); }},
};

}  // namespace

std::span<const RuleCase> ruleCases() { return kCases; }
Plan soundPlanOfTheCases() { return countersMoved(); }

namespace {

INSTANTIATE_TEST_SUITE_P(All, ReviewRule, ::testing::ValuesIn(kCases), [](const auto& one) {
  std::string name = one.param.key;
  std::replace(name.begin(), name.end(), '.', '_');
  return name;
});

TEST(ReviewRules, NoFalseAlarmAtACondenserWhoseLabelAllowsTheBreaker) {
  // NFPA 70 240.4(G): an air conditioner's label (its minimum ampacity and maximum breaker) stands above
  // 240.4(D): 12 AWG on 30 A.
  Plan made = sound::plan();
  Circuit& pump = circuit(made, "Well pump");
  pump.loads.front().maximumBreaker = RatingAmperes(30);
  planned(made, "Well pump").rating = RatingAmperes(30);
  EXPECT_EQ(findingOf(findings(made), "branch.conductor"), nullptr);
  EXPECT_EQ(findingOf(findings(made), "branch.read_label"), nullptr);
  // A label that allows less is another matter.
  load(made, "Well pump").maximumBreaker = RatingAmperes(25);
  EXPECT_NE(findingOf(findings(made), "branch.conductor"), nullptr);
  EXPECT_NE(findingOf(findings(made), "branch.label_maximum"), nullptr);
  // A heating element has no such exception, whatever its label says.
  Plan heater = sound::plan();
  circuit(heater, "Water heater").conductor = ConductorSize::awg12;
  load(heater, "Water heater").maximumBreaker = RatingAmperes(30);
  EXPECT_NE(findingOf(findings(heater), "branch.conductor"), nullptr);
}

TEST(ReviewRules, ADryerOnAWireTooThinIsOverWhateverItsPlateSays) {
  // NFPA 70 240.4(D): 12 AWG copper takes 20 A; 240.4(G) is for motors and air conditioners.
  Plan made = sound::plan();
  circuit(made, "Water heater").conductor = ConductorSize::awg12;
  Load& dryer = load(made, "Water heater");
  dryer.calculationClass = LoadClass::dryer;
  dryer.start = StartKind::acrossTheLine;
  dryer.startClass = StartClass::washerOrDoor;
  for (const std::optional<RatingAmperes> label :
       {std::optional<RatingAmperes>(), std::optional(RatingAmperes(30))}) {
    load(made, "Water heater").maximumBreaker = label;
    const std::vector<Finding> list = findings(made);
    const Finding* finding = findingOf(list, "branch.conductor");
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->rule.key, "conductor.small");
    EXPECT_NE(render(finding->trade, plainEnglish()).find("at most 20 A"), std::string::npos);
    EXPECT_EQ(findingOf(list, "branch.read_label"), nullptr);
  }
}

TEST(ReviewRules, AHeaterIsNotSpokenOfAsAMotor) {
  // NFPA 70 210.19(A): 58 A of heat on 6 AWG of 55 A, on the next standard rating.
  Plan made = sound::plan();
  circuit(made, "Water heater").conductor = ConductorSize::awg6;
  circuit(made, "Water heater").severalReceptacles = Answer::no;
  load(made, "Water heater").nameplate = VoltAmperes(58.0 * 240.0);
  planned(made, "Water heater").rating = RatingAmperes(60);
  const std::vector<Finding> list = findings(made);
  const Finding* finding = findingOf(list, "branch.load_above");
  ASSERT_NE(finding, nullptr);
  EXPECT_EQ(finding->rule.key, "branch.load");
  const std::string text = render(finding->trade, plainEnglish());
  EXPECT_EQ(text.find("motor"), std::string::npos) << text;
  EXPECT_NE(text.find("58.0 A"), std::string::npos) << text;
}

TEST(ReviewRules, EachKindOfProtectionIsLostByItself) {
  // NFPA 70 210.8(A) and 210.12: a breaker with the one kind does not stand in for the other.
  struct Row {
    Protection before, after;
    bool arcs, groundFaults;
    const char* cure;
  };
  for (const Row& row : {Row{Protection::dual, Protection::afci, false, true, "dual"},
                         Row{Protection::dual, Protection::gfci, true, false, "dual"},
                         Row{Protection::gfci, Protection::afci, false, true, "dual"},
                         Row{Protection::afci, Protection::gfci, true, false, "dual"},
                         Row{Protection::dual, Protection::none, true, true, "dual"},
                         Row{Protection::afci, Protection::none, true, false, "afci"},
                         Row{Protection::gfci, Protection::none, false, true, "gfci"},
                         Row{Protection::afci, Protection::dual, false, false, ""},
                         Row{Protection::none, Protection::none, false, false, ""}}) {
    Plan made = sound::plan();
    editBreaker(made, find(made, circuitNamed(made, "Office"))->breaker).protection = row.before;
    planned(made, "Office").protection = row.after;
    const std::vector<Finding> list = findings(made);
    const Finding* arcs = findingOf(list, "branch.arc_fault_lost");
    const Finding* groundFaults = findingOf(list, "branch.ground_fault_lost");
    EXPECT_EQ(arcs != nullptr, row.arcs);
    EXPECT_EQ(groundFaults != nullptr, row.groundFaults);
    if (arcs != nullptr) {
      EXPECT_EQ(arcs->rule.key, "afci.dwelling");
    }
    if (groundFaults != nullptr) {
      EXPECT_EQ(groundFaults->rule.key, "gfci.receptacles");
    }
    const Finding* either = arcs != nullptr ? arcs : groundFaults;
    if (either == nullptr) continue;
    ASSERT_TRUE(either->fix);
    const Result<Plan> cured = applyFix(made, *either->fix);
    ASSERT_TRUE(cured.ok());
    const Breaker& breaker = *find(cured.value(), find(cured.value(), circuitNamed(made, "Office"))->planned);
    EXPECT_EQ(breaker.protection.word(), row.cure);
  }
}

TEST(ReviewRules, AnExtensionOfNoLengthIsNotShort) {
  Plan made = sound::plan();
  circuit(made, "Office").arcFaultArea = Answer::yes;
  circuit(made, "Office").extensionLength = Length();
  EXPECT_NE(findingOf(findings(made), "branch.protection_decide"), nullptr);
  circuit(made, "Office").extensionLength = Length::inches(18);
  EXPECT_EQ(findingOf(findings(made), "branch.protection_decide"), nullptr);
  // Its own cable reaches the new breaker: then there is none.
  circuit(made, "Office").splice = Splice::none;
  circuit(made, "Office").extensionLength = Length();
  EXPECT_EQ(findingOf(findings(made), "branch.protection_decide"), nullptr);
}

TEST(ReviewRules, WhatIsInsideEnclosuresIsAskedForOnlyByTheTextOf2017) {
  Plan made = sound::plan();
  circuit(made, "Office").arcFaultArea = Answer::yes;
  struct Row {
    CodeEdition edition;
    double feet;
    bool asked;
  };
  for (const Row& row : {Row{CodeEdition::y2017, 5.9, true}, Row{CodeEdition::y2017, 1.5, false},
                         Row{CodeEdition::y2020, 5.9, false}, Row{CodeEdition::y2023, 5.9, false}}) {
    made.site.edit().edition = row.edition;
    circuit(made, "Office").extensionLength = Length::feet(row.feet);
    EXPECT_EQ(findingOf(findings(made), "branch.arc_fault_inside") != nullptr, row.asked) << row.feet;
  }
}

TEST(ReviewRules, ASourcesBreakerIsFedBackwardsWhateverIsEntered) {
  // NFPA 70 408.36(D), 710.15(E).
  for (const Feeds feeds : {Feeds::inverterOutput, Feeds::generator, Feeds::utility}) {
    Plan made = sound::plan();
    const BreakerId id = example::addBreaker(made, kMain, {Column::right, 9}, 2, 30, feeds, Stage::fresh);
    for (const Answer answer : {Answer::no, Answer::unknown, Answer::yes}) {
      editBreaker(made, id).backFed = answer;
      editBreaker(made, id).holdDown = Answer::no;
      EXPECT_NE(findingOf(findings(made), "holddown.missing"), nullptr) << static_cast<int>(feeds);
      editBreaker(made, id).holdDown = Answer::unknown;
      EXPECT_NE(findingOf(findings(made), "holddown.unknown"), nullptr) << static_cast<int>(feeds);
      EXPECT_EQ(findingOf(findings(made), "holddown.said_forwards") != nullptr, answer == Answer::no);
    }
  }
  Plan feeder = sound::plan();
  const BreakerId plain =
      example::addBreaker(feeder, kMain, {Column::right, 9}, 2, 30, Feeds::feeder, Stage::fresh);
  editBreaker(feeder, plain).holdDown = Answer::no;
  EXPECT_EQ(findingOf(findings(feeder), "holddown.missing"), nullptr);
}

TEST(ReviewRules, TheMovedServiceIsToldByEdition) {
  // NFPA 70: 230.85 and 230.67 came with 2020; 250.140 has another text in 2026.
  Plan made = sound::plan();
  made.transfer.edit().serviceDisconnectMoved = Answer::yes;
  struct Row {
    CodeEdition edition;
    bool emergency, fourth;
  };
  for (const Row& row : {Row{CodeEdition::y2017, false, true}, Row{CodeEdition::y2020, true, true},
                         Row{CodeEdition::y2023, true, true}, Row{CodeEdition::y2026, true, false}}) {
    made.site.edit().edition = row.edition;
    const std::vector<Finding> list = findings(made);
    const std::string text = render(findingOf(list, "service.moved")->trade, plainEnglish());
    EXPECT_EQ(findingOf(list, "service.emergency") != nullptr, row.emergency) << text;
    EXPECT_EQ(text.find("need a fourth wire") != std::string::npos, row.fourth) << text;
  }
}

TEST(ReviewRules, TheFeederIsCitedByWhatGoverns) {
  struct Row {
    const char* key;
    const char* rule;
    std::function<void(Plan&)> spoil;
  };
  const Row rows[] = {
      {"feeder.device_over", "source.label_device",  // the switch
       [](Plan& p) { p.transfer.edit().rating = RatingAmperes(50); }},
      {"feeder.device_over", "panel.protection",
       [](Plan& p) {
         editPanel(p, kBackup).mainBreaker.reset();
         editPanel(p, kBackup).busRating = RatingAmperes(50);
       }},
      {"feeder.neutral_small", "feeder.neutral_minimum",
       [](Plan& p) {
         p.transfer.edit().neutralLoad = VoltAmperes(100);
         p.runs.front().edit().fixedNeutral = ConductorSize::awg12;
       }},
      {"feeder.ground_small", "ground.upsized",
       [](Plan& p) {
         p.runs.front().edit().fixedConductor = ConductorSize::awg2;
         p.runs.front().edit().fixedGround = ConductorSize::awg10;
       }},
      {"feeder.ground_small", "ground.size",
       [](Plan& p) { p.runs.front().edit().fixedGround = ConductorSize::awg14; }},
      {"feeder.not_protected", "conductor.small",
       [](Plan& p) { p.runs.front().edit().fixedConductor = ConductorSize::awg10; }},
      {"dc.over", "conductor.protected",
       [](Plan& p) { p.dcCable.edit().fixedConductor = ConductorSize::awg8; }},
  };
  for (const Row& row : rows) {
    Plan made = sound::plan();
    row.spoil(made);
    const std::vector<Finding> list = findings(made);
    const Finding* finding = findingOf(list, row.key);
    ASSERT_NE(finding, nullptr) << row.key << ' ' << row.rule;
    EXPECT_EQ(finding->rule.key, row.rule) << row.key;
  }
}

TEST(ReviewRules, ADeviceBetweenLoadAndMinimumDoesNotTrip) {
  Plan made = sound::plan();
  made.transfer.edit().calculatedLoad = VoltAmperes(12000);
  made.transfer.edit().continuousPart = VoltAmperes(12000);  // 50 A, 62.5 A asked of a device of 60 A
  std::vector<Finding> list = findings(made);
  ASSERT_NE(findingOf(list, "feeder.device_small"), nullptr);
  EXPECT_EQ(findingOf(list, "feeder.device_small")->plain.id.key, "review.feeder.device_low.plain");
  made.transfer.edit().calculatedLoad = VoltAmperes(16800);  // 70 A
  list = findings(made);
  EXPECT_EQ(findingOf(list, "feeder.device_small")->plain.id.key, "review.feeder.device_small.plain");
}

TEST(ReviewRules, BeyondTheTableOfAmbientsHeatIsTheTrouble) {
  Plan made = sound::plan();
  made.runs.front().edit().ambient = Temperature::celsius(88);
  for (const std::optional<ConductorSize> fixed :
       {std::optional<ConductorSize>(), std::optional(ConductorSize::awg4)}) {
    made.runs.front().edit().fixedConductor = fixed;
    const std::vector<Finding> list = findings(made);
    ASSERT_NE(findingOf(list, "feeder.too_hot"), nullptr);
    EXPECT_EQ(findingOf(list, "feeder.too_hot")->rule.key, "conductor.ambient");
    for (const char* other : {"feeder.nothing_fits", "feeder.conductor_small", "feeder.not_protected"})
      EXPECT_EQ(findingOf(list, other), nullptr) << other;
  }
}

TEST(ReviewRules, APointOfTheCurveIsHeldAgainstWhatFollowsFromTheWatts) {
  // 6 kW over two legs is 25 A a leg; a point of 5 A below it cannot be.
  Plan made = sound::plan();
  made.inverter.edit().legCurrent.reset();
  made.inverter.edit().legContinuous.reset();
  EXPECT_EQ(findingOf(findings(made), "inverter.curve_below"), nullptr);
  made.inverter.edit().overload.front().legCurrent = AcAmperes(5);
  EXPECT_NE(findingOf(findings(made), "inverter.curve_below"), nullptr);
}

TEST(ReviewRules, TheLoadsOfAnIndividualCircuitCountTogether) {
  // NFPA 70 210.19(A)(1), 210.20(A): 10 A and 125 % of 8.33 A are 20.4 A on a breaker of 20 A.
  Plan made = sound::plan();
  Circuit& two = circuit(made, "Refrigerator");
  two.loads.front().running = example::known<Watts>(1200);
  two.loads.front().powerFactor = example::known<Fraction>(1.0);
  Load second = two.loads.front();
  second.id = nextLoadId(made);
  second.running = example::known<Watts>(1000);
  second.continuous = true;
  circuit(made, "Refrigerator").loads.push_back(second);
  for (const CircuitUse use : {CircuitUse::general, CircuitUse::individual}) {
    circuit(made, "Refrigerator").calculationUse = use;
    const std::vector<Finding> list = findings(made);
    EXPECT_EQ(findingOf(list, "branch.overload") != nullptr, use == CircuitUse::individual);
    if (use != CircuitUse::individual) continue;
    EXPECT_NE(render(findingOf(list, "branch.overload")->trade, plainEnglish()).find("20.4 A"),
              std::string::npos);
  }
}

TEST(ReviewRules, ARangeOnItsUsualBreakerIsNoTrouble) {
  // NFPA 70 (2023) Table 220.55 Note 4: 12 kW is 8 kW, 33.3 A on 40 A, and too much for 30 A.
  Plan made = sound::plan();
  load(made, "Range").running = example::known<Watts>(12000);
  load(made, "Range").calculationClass = LoadClass::cooking;
  for (const int rating : {40, 30}) {
    planned(made, "Range").rating = RatingAmperes(rating);
    EXPECT_EQ(findingOf(findings(made), "branch.overload") != nullptr, rating == 30) << rating;
  }
}

TEST(ReviewRules, APermitIsHeldAgainstTheEdition) {
  // NFPA 70 comes out in the autumn before the year of its edition.
  struct Row {
    const char* date;
    bool noDate, tooOld;
  };
  for (const Row& row :
       {Row{"", false, false}, Row{"2023-06-01", false, false}, Row{"2022-12-01", false, false},
        Row{"2021-12-31", false, true}, Row{"2023-13-01", true, false}, Row{"2023-06-32", true, false},
        Row{"01/06/2023", true, false}}) {
    Plan made = sound::plan();
    made.site.edit().permitDate = row.date;
    const std::vector<Finding> list = findings(made);
    EXPECT_EQ(findingOf(list, "site.permit_date") != nullptr, row.noDate) << row.date;
    EXPECT_EQ(findingOf(list, "site.permit_edition") != nullptr, row.tooOld) << row.date;
  }
}

TEST(ReviewRules, TypedPartsAreHeldAgainstTheLoadThatIsWorkedOut) {
  Plan made = sound::plan();
  made.transfer.edit().calculatedLoad.reset();
  made.transfer.edit().continuousPart.reset();
  made.transfer.edit().neutralLoad = VoltAmperes(60000);
  const bool known = assess(made).demand.feederLoad.load.has_value();
  EXPECT_EQ(findingOf(findings(made), "load.typed_neutral") != nullptr, known);
}

TEST(ReviewRules, ATypedNeutralBelowTheOneWorkedOutIsTold) {
  Plan made = calculated::house();
  EXPECT_EQ(findingOf(findings(made), "load.neutral_below"), nullptr);
  const DemandCalculation feeder = assess(made).demand.feeder;
  ASSERT_TRUE(feeder.complete());
  const double worked = std::max(feeder.leg[0].neutral.count(), feeder.leg[1].neutral.count());
  made.transfer.edit().neutralLoad = VoltAmperes(worked);
  EXPECT_EQ(findingOf(findings(made), "load.neutral_below"), nullptr);
  made.transfer.edit().neutralLoad = VoltAmperes(worked - 10.0);
  EXPECT_NE(findingOf(findings(made), "load.neutral_below"), nullptr);
}

TEST(ReviewRules, ANewCircuitHasNoShortExtension) {
  // NFPA 70 210.12: the exception is for a circuit that is made longer.
  Plan made = sound::plan();
  circuit(made, "Office").breaker = {};
  circuit(made, "Office").arcFaultArea = Answer::yes;
  EXPECT_EQ(findingOf(findings(made), "branch.arc_fault"), nullptr);
  const std::vector<Finding> list = findings(made);
  ASSERT_NE(findingOf(list, "branch.arc_fault_new"), nullptr);
  EXPECT_EQ(findingOf(list, "branch.arc_fault_new")->rule.key, "afci.dwelling");
  planned(made, "Office").protection = Protection::dual;
  EXPECT_EQ(findingOf(findings(made), "branch.arc_fault_new"), nullptr);
}

TEST(ReviewRules, AThinExtensionNamesTheBreakerThatHolds) {
  // NFPA 70 240.4(D): 14 AWG copper takes 15 A, whatever its ampacity.
  Plan made = sound::plan();
  circuit(made, "Office").conductor = ConductorSize::awg12;
  circuit(made, "Office").extension = ConductorSize::awg14;
  planned(made, "Office").rating = RatingAmperes(20);
  const std::vector<Finding> list = findings(made);
  ASSERT_NE(findingOf(list, "raceway.extension"), nullptr);
  EXPECT_NE(render(findingOf(list, "raceway.extension")->trade, plainEnglish()).find("at most 15 A"),
            std::string::npos);
}

TEST(ReviewRules, ALabelForTheBreakerIsNoneForTheWire) {
  // NFPA 70 430.22: the conductor carries 125 % of the motor's current whatever 430.52 or its label lets the
  // breaker be. 12 AWG among 16 and more is good for 15 A (30 x 0.5).
  Plan made = sound::plan();
  aloneInTheNipple(made, "Well pump");
  Raceway& pipe = made.raceways.front().edit();
  pipe.length = Length::feet(6);
  pipe.otherCarrying = 12;
  pipe.otherArea = SquareInches(0.1);
  planned(made, "Well pump").rating = RatingAmperes(30);
  load(made, "Well pump").maximumBreaker = RatingAmperes(30);
  load(made, "Well pump").nameplate = VoltAmperes(2880);  // 12 A, 15 A with a quarter more
  EXPECT_EQ(findingOf(findings(made), "raceway.adjusted"), nullptr);
  load(made, "Well pump").nameplate = VoltAmperes(2928);  // 12.2 A, 15.25 A
  const std::vector<Finding> list = findings(made);
  ASSERT_NE(findingOf(list, "raceway.adjusted"), nullptr);
  EXPECT_NE(render(findingOf(list, "raceway.adjusted")->trade, plainEnglish()).find("15.3 A"),
            std::string::npos);
  EXPECT_EQ(findingOf(list, "branch.load_above"), nullptr);  // its own cable carries it
  // Without its label the question is what the label says, not how many receptacles there are.
  load(made, "Well pump").nameplate = VoltAmperes(1000);
  load(made, "Well pump").maximumBreaker.reset();
  circuit(made, "Well pump").conductor = ConductorSize::awg10;  // 20 A in the pipe, 30 A alone
  const std::vector<Finding> asked = findings(made);
  const Finding* label = findingOf(asked, "raceway.adjusted_ask");
  ASSERT_NE(label, nullptr);
  EXPECT_EQ(label->trade.id.key, "review.raceway.adjusted_ask.label");
}

TEST(ReviewRules, TheNextStandardRatingNeedsNoLabel) {
  // NFPA 70 240.4(B): 15.6 A at 25 C (30 x 1.04 x 0.5) on 20 A, with one outlet, whatever hangs on it.
  Plan made = sound::plan();
  Raceway& pipe = made.raceways.front().edit();
  pipe.length = Length::feet(6);
  pipe.ambient = Temperature::celsius(25);
  pipe.otherCarrying = 12;
  pipe.otherArea = SquareInches(0.1);
  aloneInTheNipple(made, "Refrigerator");
  planned(made, "Refrigerator").rating = RatingAmperes(20);
  struct Case {
    Answer several;
    const char* key;
  };
  for (const Case& c : {Case{Answer::no, nullptr}, Case{Answer::unknown, "raceway.adjusted_ask"},
                        Case{Answer::yes, "raceway.adjusted"}}) {
    circuit(made, "Refrigerator").severalReceptacles = c.several;
    const std::vector<Finding> list = findings(made);
    for (const char* key : {"raceway.adjusted_ask", "raceway.adjusted"}) {
      const bool wanted = c.key != nullptr && std::string_view(c.key) == key;
      EXPECT_EQ(findingOf(list, key) != nullptr, wanted) << key << static_cast<int>(c.several);
    }
  }
}

TEST(ReviewRules, AWireTooThinAnywhereIsSaidOnceAndNotOfItsRaceway) {
  Plan made = sound::plan();
  planned(made, "Office").rating = RatingAmperes(20);  // 14 AWG, its extension too
  std::vector<Finding> list = findings(made);
  EXPECT_NE(findingOf(list, "branch.conductor"), nullptr);
  EXPECT_EQ(findingOf(list, "raceway.adjusted"), nullptr);
  EXPECT_EQ(findingOf(list, "raceway.extension"), nullptr);
  circuit(made, "Office").conductor = ConductorSize::awg12;
  circuit(made, "Office").extension = ConductorSize::awg14;
  list = findings(made);
  EXPECT_EQ(findingOf(list, "branch.conductor"), nullptr);
  ASSERT_NE(findingOf(list, "raceway.extension"), nullptr);
  EXPECT_EQ(findingOf(list, "raceway.extension")->rule.key, "conductor.small");
}

TEST(ReviewRules, SmallConductorsKeepTheirLimit) {
  // NFPA 70 240.4(D): 14 AWG copper 15 A, 12 AWG 20 A, 10 AWG 30 A; 12 AWG aluminium 15 A, 10 AWG 25 A.
  struct Case {
    ConductorSize size;
    Metal metal;
    int rating;
    bool over;
  };
  for (const Case& c : {Case{ConductorSize::awg14, Metal::copper, 15, false},
                        Case{ConductorSize::awg14, Metal::copper, 20, true},
                        Case{ConductorSize::awg12, Metal::copper, 20, false},
                        Case{ConductorSize::awg12, Metal::copper, 25, true},
                        Case{ConductorSize::awg10, Metal::copper, 30, false},
                        Case{ConductorSize::awg10, Metal::copper, 35, true},
                        Case{ConductorSize::awg12, Metal::aluminium, 15, false},
                        Case{ConductorSize::awg12, Metal::aluminium, 20, true},
                        Case{ConductorSize::awg10, Metal::aluminium, 25, false}}) {
    Plan made = sound::plan();
    circuit(made, "Office").conductor = c.size;
    circuit(made, "Office").metal = c.metal;
    planned(made, "Office").rating = RatingAmperes(c.rating);
    EXPECT_EQ(findingOf(findings(made), "branch.conductor") != nullptr, c.over)
        << name(c.size) << " on " << c.rating;
  }
}

TEST(ReviewRules, ANeutralLeftBehindAProtectedBreakerIsADanger) {
  Plan made = sound::plan();
  circuit(made, "Office").neutralMoved = Answer::no;
  planned(made, "Office").protection = Protection::afci;
  EXPECT_EQ(findingOf(findings(made), "neutral.left")->severity, Severity::danger);
}

TEST(ReviewRules, ATwoPoleBreakerIsAWholeMultiwireGroup) {
  Plan made = sound::plan();
  circuit(made, "Range").multiwire = 7;
  for (const char* key : {"multiwire.partner", "multiwire.leg", "multiwire.disconnect"})
    EXPECT_EQ(findingOf(findings(made), key), nullptr) << key;
}

TEST(ReviewRules, AnUntouchedGroupWithoutATieIsOnlyAdvice) {
  Plan made = sound::plan();  // the counters stay in the main panel
  planned(made, "Counter A").tie = Tie::none;
  const std::vector<Finding> list = findings(made);
  EXPECT_EQ(findingOf(list, "multiwire.disconnect"), nullptr);
  ASSERT_NE(findingOf(list, "multiwire.disconnect_existing"), nullptr);
  EXPECT_EQ(findingOf(list, "multiwire.disconnect_existing")->severity, Severity::advice);
}

TEST(ReviewRules, SolarBackFeedingNeedsNoRetainer) {
  Plan made = sound::plan();
  const BreakerId id =
      example::addBreaker(made, kMain, {Column::right, 9}, 2, 30, Feeds::solar, Stage::existing);
  editBreaker(made, id).backFed = Answer::yes;
  EXPECT_EQ(findingOf(findings(made), "holddown.unknown"), nullptr);
}

TEST(ReviewRules, TheTrapOfTheClampStandsInTheSentence) {
  Plan made = sound::plan();
  circuit(made, "Office").neutralShared = Answer::unknown;
  const std::vector<Finding> list = findings(made);
  const std::string text = render(findingOf(list, "neutral.not_looked_for")->trade, plainEnglish());
  EXPECT_NE(text.find("no current proves nothing"), std::string::npos);
}

TEST(ReviewRules, AReadingWithItsPartnerLoadedAsksNothingMore) {
  Plan made = countersMoved();
  neutralReading(made);
  const std::vector<Finding> list = findings(made);
  EXPECT_EQ(findingOf(list, "reading.proves_nothing"), nullptr);
  EXPECT_EQ(findingOf(list, "reading.shared"), nullptr);
}

TEST(ReviewRules, AGeneratorWithAllKnownIsNoTrouble) {
  Plan made = countersMoved();
  generator(made);
  for (const Finding& finding : findings(made)) {
    EXPECT_NE(finding.key.substr(0, 10), "generator.") << finding.key;
    EXPECT_NE(finding.key.substr(0, 5), "bond.") << finding.key;
  }
}

TEST(ReviewRules, MedicalLoadsGetNoPromise) {
  Plan made = sound::plan();
  load(made, "Freezer").medical = true;  // on a circuit that is not backed up, too
  const std::vector<Finding> list = findings(made);
  ASSERT_NE(findingOf(list, "load.medical"), nullptr);
  EXPECT_NE(render(findingOf(list, "load.medical")->plain, plainEnglish()).find("nothing here promises"),
            std::string::npos);
}

TEST(ReviewRules, ACanadianSiteCitesNothingAndHasNoFiguresOfTheCode) {
  Plan made = countersMoved();
  made.site.edit().country = Country::canada;
  planned(made, "Counter A").tie = Tie::none;
  planned(made, "Office").rating = RatingAmperes(20);  // 14 AWG: a figure of NFPA 70
  made.transfer.edit().calculatedLoad.reset();
  const std::vector<Finding> list = findings(made);
  for (const Finding& finding : list) {
    EXPECT_TRUE(finding.rule.key.empty()) << finding.key;
    EXPECT_NE(finding.basis, Basis::code) << finding.key;
    EXPECT_NE(finding.key.substr(0, 7), "feeder.") << finding.key;
  }
  EXPECT_EQ(findingOf(list, "branch.conductor"), nullptr);
  EXPECT_EQ(findingOf(list, "load.calculation"), nullptr);
  EXPECT_NE(findingOf(list, "multiwire.disconnect"), nullptr);  // physics stays
}

TEST(ReviewRules, AnEmptyPlanIsToldWhatItLacksAndNothingElse) {
  const Plan empty;
  std::vector<std::string> wrong;
  for (const Finding& finding : findings(empty)) {
    if (finding.severity <= Severity::mustFix) wrong.emplace_back(finding.key);
  }
  std::sort(wrong.begin(), wrong.end());
  EXPECT_EQ(wrong, (std::vector<std::string>{"site.no_backup", "site.no_main"}));
}

}  // namespace
}  // namespace stayalight
