#include "core/onsite/facts.h"

#include <algorithm>

#include "core/onsite/neutral_reading.h"
#include "core/outage/outage.h"
#include "core/start/start.h"
#include "core/wiring/branch.h"
#include "core/wiring/building.h"
#include "core/wiring/dc_cable.h"
#include "core/wiring/extension.h"

namespace stayalight::on_site {
namespace {

constexpr Doer kHousehold = Doer::household;
constexpr Doer kQualified = Doer::qualifiedPerson;

/// Neither yes nor no.
bool open(const Choice<Answer>& answer) { return !answer.is(Answer::yes) && !answer.is(Answer::no); }
/// Nothing is entered, or a typical value at best.
template <class Q>
bool assumed(const Graded<Q>& fact) {
  return !fact.value || fact.grade <= Grade::typical;
}
bool unmeasured(const Length& length) { return length.inMicrometres() <= 0; }

bool keepsBreaker(const House& house, const Circuit& circuit) {
  return find(house.plan, circuit.planned) != nullptr;
}
bool moves(const House& house, const Circuit& circuit) { return moved(house.plan, circuit); }
bool backed(const House& house, const Circuit& circuit) { return backedUp(house.plan, circuit); }

template <class Test>
bool anyBreaker(const House& house, const Panel& panel, Test test) {
  return std::any_of(house.plan.breakers.begin(), house.plan.breakers.end(), [&](const auto& breaker) {
    return breaker->panel == panel.id && stands(*breaker, Reading::planned) && test(*breaker);
  });
}
bool fresh(const Breaker& breaker) { return breaker.stage.is(Stage::fresh); }
bool isTandem(const Breaker& breaker) { return !breaker.half.is(Half::whole); }

// A panel matters as soon as something stands in it; the house's own panels in any case.
bool matters(const House& house, const Panel& panel) {
  return !panel.role.is(PanelRole::backup) || house.backupOccupied;
}
bool apart(const House& house, const Panel& panel) {
  return house.unitedStates && std::find(house.apart.begin(), house.apart.end(), &panel) != house.apart.end();
}
bool tandemsInDoubt(const House& house, const Panel& panel) {
  return anyBreaker(house, panel, [&](const Breaker& breaker) {
    const std::vector<SpacePosition> spaces = poleSpaces(placementOf(breaker));
    return isTandem(breaker) && std::any_of(spaces.begin(), spaces.end(), [&](SpacePosition space) {
             return hasSpace(panel, space) && takesTandem(panel, space) == Answer::unknown;
           });
  });
}

bool useToldByLoads(const Circuit& circuit) {
  return !circuit.loads.empty() &&
         std::all_of(circuit.loads.begin(), circuit.loads.end(), [](const Load& load) {
           return load.calculationClass.known() && !load.calculationClass.is(LoadClass::unknown) &&
                  !load.calculationClass.is(LoadClass::general);
         });
}
bool onePoleAlone(const House& house, const Circuit& circuit) {
  const Breaker* breaker = find(house.plan, circuit.planned);
  return moves(house, circuit) && circuit.multiwire == 0 && breaker != nullptr && breaker->poles == 1;
}
bool neutralInDoubt(const House& house, const Circuit& circuit) {
  return onePoleAlone(house, circuit) && neutralShared(circuit) == Answer::unknown;
}
BranchProtection protectionOf(const House& house, const Circuit& circuit) {
  if (!house.unitedStates) return BranchProtection::holds;
  const std::optional<PlannedBranch> branch = plannedBranch(house.plan, circuit, house.edition, house.tables);
  return branch ? branch->answer.protection : BranchProtection::holds;
}

bool sharesBus(const House& house, const Breaker& breaker) {
  return std::any_of(house.buses.begin(), house.buses.end(), [&](const BusSources& bus) {
    return bus.keptApart == Answer::unknown &&
           std::find(bus.breakers.begin(), bus.breakers.end(), breaker.id) != bus.breakers.end();
  });
}

bool byTransfer(const House& house, const Transfer& transfer) {
  return house.anyBackedUp && !transfer.arrangement.is(Arrangement::none);
}
bool throughInverter(const House& house) {
  return house.plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
}
bool inUse(const House& house, const FeederRun& run) {
  return house.anyBackedUp && std::any_of(house.pieces.begin(), house.pieces.end(), [&](Segment segment) {
           return runOf(house.plan, segment) == &run;
         });
}
bool inUse(const House& house, const Raceway& raceway) {
  return std::any_of(house.plan.circuits.begin(), house.plan.circuits.end(),
                     [&](const auto& c) { return c->raceway == raceway.id && keepsBreaker(house, *c); }) ||
         std::any_of(house.plan.runs.begin(), house.plan.runs.end(),
                     [&](const auto& run) { return run->inRaceway == raceway.id && inUse(house, *run); });
}
bool inUse(const House& house, const SpliceBox& box) {
  return std::any_of(house.plan.circuits.begin(), house.plan.circuits.end(), [&](const auto& c) {
    return c->spliceBox == box.id && c->splice.is(Splice::inBox) && joined(house.plan, *c);
  });
}
bool cableInUse(const House& house) {
  const Inverter& inverter = *house.plan.inverter;
  return house.unitedStates && house.anyBackedUp && (inverter.continuous || inverter.lowestInputVoltage);
}
/// No ampacity of free air is known here, so its terminals do not matter.
bool cableByTable(const House& house, const DcCable& cable) {
  return cableInUse(house) && !cable.freeAir.is(Answer::yes);
}

// -- the tables
// -----------------------------------------------------------------------------------------------

bool thereIs(const Solar& solar) { return !solar.coupling.is(SolarCoupling::none); }
bool thereIs(const Generator& generator) { return !generator.comesIn.is(GeneratorPoint::none); }

constexpr Fact<Site> kSite[] = {
    {"site.service_A", kHousehold, MessageId{"onsite.site.service_A"},
     [](const House& house, const Site& site) {
       const Panel* main = mainPanel(house.plan);
       return !site.serviceRating && main != nullptr && !main->mainBreaker;
     }},
    {"site.fault_current_A", kHousehold, MessageId{"onsite.site.fault_current_A"},
     [](const House& house, const Site& site) {
       return house.backupOccupied && !site.availableFaultCurrent;
     }},
    {"site.floor_area_ft2", kHousehold, MessageId{"onsite.site.floor_area_ft2"},
     [](const House& house, const Site& site) {
       return house.unitedStates && !house.plan.circuits.empty() && !site.floorArea;
     }},
    {"site.wye_order", kQualified, MessageId{"onsite.site.wye_order"},
     [](const House&, const Site& site) {
       return site.service.is(ServiceSystem::wye120_208) && !site.wyeOrder.is(WyeOrder::l2Lags) &&
              !site.wyeOrder.is(WyeOrder::l2Leads);
     }},
};

constexpr Fact<Panel> kPanel[] = {
    {"panel.legs_measured", kQualified, MessageId{"onsite.panel.legs_measured"},
     [](const House& house, const Panel& panel) {
       return matters(house, panel) && !panel.legsMeasured.is(Answer::yes);
     }},
    {"panel.bus_A", kQualified, MessageId{"onsite.panel.bus_A"},
     [](const House& house, const Panel& panel) { return matters(house, panel) && !panel.busRating; }},
    {"panel.terminals_75C", kQualified, MessageId{"onsite.panel.terminals_75C"},
     [](const House& house, const Panel& panel) {
       return house.unitedStates && matters(house, panel) && open(panel.terminals75);
     }},
    {"panel.neutral_bonded", kQualified, MessageId{"onsite.panel.neutral_bonded"},
     [](const House& house, const Panel& panel) {
       return matters(house, panel) && open(panel.neutralBonded);
     }},
    {"panel.hold_down", kQualified, MessageId{"onsite.panel.hold_down"},
     [](const House&, const Panel& panel) { return panel.mainBackFed && open(panel.holdDown); }},
    {"panel.tandems", kQualified, MessageId{"onsite.panel.tandems"},
     [](const House& house, const Panel& panel) { return tandemsInDoubt(house, panel); }},
    {"panel.pole_maximum", kQualified, MessageId{"onsite.panel.pole_maximum"},
     [](const House& house, const Panel& panel) {
       return !panel.poleMaximum && anyBreaker(house, panel, isTandem);
     }},
    {"panel.listing_line", kQualified, MessageId{"onsite.panel.listing_line"},
     [](const House& house, const Panel& panel) {
       return panel.listingLine.empty() && anyBreaker(house, panel, fresh);
     }},
    {"panel.interrupting_A", kQualified, MessageId{"onsite.panel.interrupting_A"},
     [](const House& house, const Panel& panel) {
       return !panel.interruptingRating && house.backupOccupied &&
              anyBreaker(house, panel, [](const Breaker& breaker) {
                return fresh(breaker) && !breaker.interruptingRating;
              });
     }},
    {"panel.neutral_terminals", kQualified, MessageId{"onsite.panel.neutral_terminals"},
     [](const House& house, const Panel& panel) {
       return panel.role.is(PanelRole::backup) && house.anyBackedUp && !panel.neutralTerminals;
     }},
    {"panel.grounding_electrode", kQualified, MessageId{"onsite.panel.grounding_electrode"},
     [](const House& house, const Panel& panel) {
       return apart(house, panel) && open(panel.groundingElectrode);
     }},
    {"panel.building_disconnect", kQualified, MessageId{"onsite.panel.building_disconnect"},
     [](const House& house, const Panel& panel) {
       return apart(house, panel) && !panel.mainBreaker && open(panel.buildingDisconnect);
     }},
    {"panel.wiring_space_in2", kQualified, MessageId{"onsite.panel.wiring_space_in2"},
     [](const House& house, const Panel& panel) {
       return house.unitedStates && !panel.wiringSpace &&
              std::any_of(house.plan.circuits.begin(), house.plan.circuits.end(), [&](const auto& circuit) {
                return circuit->splice.is(Splice::inPanel) && joined(house.plan, *circuit) &&
                       panelOf(house.plan, *circuit, Reading::before) == panel.id;
              });
     }},
};

constexpr Fact<Breaker> kBreaker[] = {
    {"breaker.rating_read", kHousehold, MessageId{"onsite.breaker.rating_read"},
     [](const House& house, const Breaker& breaker) {
       const bool used = !breaker.feeds.is(Feeds::nothing) ||
                         circuitOn(house.plan, breaker.id, Reading::planned) != nullptr;
       return used && !breaker.ratingRead.is(Answer::yes);
     }},
    {"breaker.hold_down", kQualified, MessageId{"onsite.breaker.hold_down"},
     [](const House&, const Breaker& breaker) {
       // A listed interactive inverter's solar breaker is let off by the article on interconnected sources.
       return fedBackwards(breaker) && !breaker.feeds.is(Feeds::solar) && open(breaker.holdDown);
     }},
    {"breaker.interlocked", kQualified, MessageId{"onsite.breaker.interlocked"},
     [](const House& house, const Breaker& breaker) {
       return !breaker.feeds.is(Feeds::solar) && open(breaker.interlocked) && sharesBus(house, breaker);
     }},
    {"breaker.source_A", kHousehold, MessageId{"onsite.breaker.source_A"},
     [](const House& house, const Breaker& breaker) {
       return house.unitedStates && breaker.feeds.is(Feeds::solar) && !breaker.sourceCurrent;
     }},
};

constexpr Fact<Circuit> kCircuit[] = {
    {"circuit.traced", kHousehold, MessageId{"onsite.circuit.traced"},
     [](const House& house, const Circuit& circuit) {
       return keepsBreaker(house, circuit) && !circuit.traced.is(Answer::yes);
     }},
    {"circuit.loads", kHousehold, MessageId{"onsite.circuit.loads"},
     [](const House& house, const Circuit& circuit) {
       return backed(house, circuit) && circuit.loads.empty();
     }},
    {"circuit.smoke_alarms", kHousehold, MessageId{"onsite.circuit.smoke_alarms"},
     [](const House& house, const Circuit& circuit) {
       return backed(house, circuit) && open(circuit.smokeAlarms);
     }},
    {"circuit.arc_fault_area", kHousehold, MessageId{"onsite.circuit.arc_fault_area"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates
                  ? arcFaultNeed(house.plan, circuit, house.edition, house.tables) ==
                        ArcFaultNeed::areaUnknown
                  : plannedWithoutArcFault(house.plan, circuit, house.tables) && open(circuit.arcFaultArea);
     }},
    {"circuit.calculation_use", kHousehold, MessageId{"onsite.circuit.calculation_use"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates && keepsBreaker(house, circuit) &&
              circuit.calculationUse.valueOr(CircuitUse::unknown) == CircuitUse::unknown &&
              !useToldByLoads(circuit);
     }},
    {"circuit.area_served_ft2", kHousehold, MessageId{"onsite.circuit.area_served_ft2"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates && backed(house, circuit) &&
              circuit.calculationUse.is(CircuitUse::general) && !circuit.areaServed;
     }},
    {"circuit.several_receptacles", kHousehold, MessageId{"onsite.circuit.several_receptacles"},
     [](const House& house, const Circuit& circuit) {
       return protectionOf(house, circuit) == BranchProtection::receptaclesUnknown;
     }},
    // One question; a reading that proves nothing keeps it open, and says why.
    {"circuit.neutral_shared", kQualified, MessageId{"onsite.circuit.neutral_shared"},
     [](const House& house, const Circuit& circuit) {
       return neutralInDoubt(house, circuit) && neutralProof(circuit) == NeutralProof::none;
     }},
    {"circuit.neutral_shared", kQualified, MessageId{"onsite.circuit.neutral_own_breaker"},
     [](const House& house, const Circuit& circuit) {
       return neutralInDoubt(house, circuit) && neutralProof(circuit) == NeutralProof::ownBreakerOn;
     }},
    {"circuit.neutral_shared", kQualified, MessageId{"onsite.circuit.neutral_partner"},
     [](const House& house, const Circuit& circuit) {
       return neutralInDoubt(house, circuit) && neutralProof(circuit) == NeutralProof::partnerNotLoaded;
     }},
    {"circuit.multiwire", kQualified, MessageId{"onsite.circuit.multiwire"},
     [](const House& house, const Circuit& circuit) {
       return onePoleAlone(house, circuit) && neutralShared(circuit) == Answer::yes;
     }},
    {"circuit.ground", kQualified, MessageId{"onsite.circuit.ground"},
     [](const House& house, const Circuit& circuit) {
       return moves(house, circuit) && !circuit.splice.is(Splice::none) &&
              circuit.ground.valueOr(BranchGround::unknown) == BranchGround::unknown;
     }},
    {"circuit.insulated_neutral", kQualified, MessageId{"onsite.circuit.insulated_neutral"},
     [](const House& house, const Circuit& circuit) {
       return moves(house, circuit) && circuit.voltage.is(VoltageClass::v120_240) &&
              open(circuit.insulatedNeutral);
     }},
    {"circuit.neutral_moved", kQualified, MessageId{"onsite.circuit.neutral_moved"},
     [](const House& house, const Circuit& circuit) {
       return moves(house, circuit) && usesNeutral(circuit) && open(circuit.neutralMoved);
     }},
    {"circuit.conductor_AWG", kQualified, MessageId{"onsite.circuit.conductor_AWG"},
     [](const House& house, const Circuit& circuit) { return moves(house, circuit) && !circuit.conductor; }},
    {"circuit.wiring", kQualified, MessageId{"onsite.circuit.wiring"},
     [](const House& house, const Circuit& circuit) {
       return moves(house, circuit) && circuit.wiring.is(WiringMethod::unknown);
     }},
    {"circuit.splice", kQualified, MessageId{"onsite.circuit.splice"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates && moves(house, circuit) && circuit.splice.is(Splice::unknown);
     }},
    {"circuit.splice_box", kQualified, MessageId{"onsite.circuit.splice_box"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates && moves(house, circuit) && circuit.splice.is(Splice::inBox) &&
              find(house.plan, circuit.spliceBox) == nullptr;
     }},
    {"circuit.extension_um", kQualified, MessageId{"onsite.circuit.extension_um"},
     [](const House& house, const Circuit& circuit) {
       const ArcFaultNeed need = arcFaultNeed(house.plan, circuit, house.edition, house.tables);
       return house.unitedStates && !extensionLengthOf(circuit) && !isNew(house.plan, circuit) &&
              (need == ArcFaultNeed::areaUnknown || need == ArcFaultNeed::lengthUnknown);
     }},
    {"circuit.cable_width_um", kQualified, MessageId{"onsite.circuit.cable_width_um"},
     [](const House& house, const Circuit& circuit) {
       return house.unitedStates && keepsBreaker(house, circuit) && cableRunsOn(circuit) &&
              find(house.plan, circuit.raceway) != nullptr && !circuit.cableWidth;
     }},
};

constexpr Fact<OnCircuit> kLoad[] = {
    {"load.running_W", kHousehold, MessageId{"onsite.load.running_W"},
     [](const House& house, const OnCircuit& on) {
       const Load& load = on.load;
       return backed(house, on.circuit) &&
              (load.running.value ? assumed(load.running) : assumed(load.runningCurrent));
     }},
    {"load.duty", kHousehold, MessageId{"onsite.load.duty"},
     [](const House& house, const OnCircuit& on) {
       return backed(house, on.circuit) && assumed(on.load.duty);
     }},
    {"load.locked_rotor_A", kHousehold, MessageId{"onsite.load.locked_rotor_A"},
     [](const House& house, const OnCircuit& on) {
       const Load& load = on.load;
       const bool typical = load.lockedRotor.value && load.lockedRotor.grade <= Grade::typical &&
                            !load.start.is(StartKind::none);
       return backed(house, on.circuit) && (typical || startOnlyByClass(load, house.tables));
     }},
    {"load.maximum_breaker_A", kHousehold, MessageId{"onsite.load.maximum_breaker_A"},
     [](const House& house, const OnCircuit& on) {
       return !on.load.maximumBreaker && protectionOf(house, on.circuit) == BranchProtection::readLabel;
     }},
};

constexpr Fact<Transfer> kTransfer[] = {
    {"transfer.listing", kQualified, MessageId{"onsite.transfer.listing"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) &&
              (!transfer.listing.known() || transfer.listing.is(TransferListing::unknown));
     }},
    {"transfer.rating_A", kQualified, MessageId{"onsite.transfer.rating_A"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) && !throughInverter(house) && !transfer.rating;
     }},
    {"transfer.switches_neutral", kQualified, MessageId{"onsite.transfer.switches_neutral"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) && open(transfer.switchesNeutral);
     }},
    {"transfer.service_bond_upstream", kQualified, MessageId{"onsite.transfer.service_bond_upstream"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) && open(transfer.serviceBondUpstream);
     }},
    {"transfer.bypass_breaks_first", kQualified, MessageId{"onsite.transfer.bypass_breaks_first"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) && transfer.bypass.is(Answer::yes) &&
              open(transfer.bypassBreaksFirst);
     }},
    {"transfer.bypass_switches_neutral", kQualified, MessageId{"onsite.transfer.bypass_switches_neutral"},
     [](const House& house, const Transfer& transfer) {
       return byTransfer(house, transfer) && transfer.bypass.is(Answer::yes) &&
              open(transfer.bypassSwitchesNeutral);
     }},
};

constexpr Fact<ManagedLoad> kManaged[] = {
    {"managed_load.load", kHousehold, MessageId{"onsite.managed.load"},
     [](const House& house, const ManagedLoad& row) { return circuitOf(house.plan, row.load) == nullptr; }},
    {"managed_load.shed_by", kHousehold, MessageId{"onsite.managed.shed_by"},
     [](const House&, const ManagedLoad& row) {
       return row.shedBy.valueOr(ShedBy::unknown) == ShedBy::unknown;
     }},
    {"managed_load.listed", kHousehold, MessageId{"onsite.managed.listed"},
     [](const House&, const ManagedLoad& row) { return !row.shedBy.is(ShedBy::byHand) && open(row.listed); }},
    {"managed_load.off_in_outage", kHousehold, MessageId{"onsite.managed.off_in_outage"},
     [](const House&, const ManagedLoad& row) { return open(row.offInOutage); }},
};

bool asked(const AuthorityAnswer& row) { return !row.question.empty(); }
constexpr Fact<AuthorityAnswer> kAuthority[] = {
    {"authority_answer.answer", kHousehold, MessageId{"onsite.authority.answer"},
     [](const House&, const AuthorityAnswer& row) { return asked(row) && row.answer.empty(); }},
    {"authority_answer.who", kHousehold, MessageId{"onsite.authority.who"},
     [](const House&, const AuthorityAnswer& row) {
       return asked(row) && !row.answer.empty() && row.who.empty();
     }},
    {"authority_answer.in_writing", kHousehold, MessageId{"onsite.authority.in_writing"},
     [](const House&, const AuthorityAnswer& row) {
       return asked(row) && !row.answer.empty() && !row.inWriting.is(Answer::yes);
     }},
};

constexpr Fact<Solar> kSolar[] = {
    {"solar.modules_W", kHousehold, MessageId{"onsite.solar.modules_W"},
     [](const House&, const Solar& solar) { return thereIs(solar) && !solar.modules; }},
    {"solar.output_W", kHousehold, MessageId{"onsite.solar.output_W"},
     [](const House&, const Solar& solar) {
       return solar.coupling.is(SolarCoupling::alternatingCurrent) && !solar.output;
     }},
    {"solar.held_back", kHousehold, MessageId{"onsite.solar.held_back"},
     [](const House&, const Solar& solar) {
       return solar.coupling.is(SolarCoupling::alternatingCurrent) && open(solar.heldBack);
     }},
};

constexpr Fact<Generator> kGenerator[] = {
    {"generator.continuous_W", kHousehold, MessageId{"onsite.generator.continuous_W"},
     [](const House&, const Generator& generator) { return thereIs(generator) && !generator.continuous; }},
    {"generator.neutral", kQualified, MessageId{"onsite.generator.neutral"},
     [](const House&, const Generator& generator) {
       return thereIs(generator) && !generator.neutral.is(GeneratorNeutral::bonded) &&
              !generator.neutral.is(GeneratorNeutral::floating);
     }},
    {"generator.fuel", kHousehold, MessageId{"onsite.generator.fuel"},
     [](const House&, const Generator& generator) {
       return thereIs(generator) && (!generator.fuel.known() || generator.fuel.is(Fuel::unknown));
     }},
    {"generator.alarms_fitted", kHousehold, MessageId{"onsite.generator.alarms_fitted"},
     [](const House&, const Generator& generator) {
       return thereIs(generator) && open(generator.alarmsFitted);
     }},
    {"generator.switches_neutral", kQualified, MessageId{"onsite.generator.switches_neutral"},
     [](const House&, const Generator& generator) {
       return thereIs(generator) && open(generator.switchesNeutral);
     }},
};

constexpr Fact<FeederRun> kRun[] = {
    {"feeder_run.length_um", kQualified, MessageId{"onsite.run.length_um"},
     [](const House& house, const FeederRun& run) { return inUse(house, run) && unmeasured(run.length); }},
    {"feeder_run.terminals_from_75C", kQualified, MessageId{"onsite.run.terminals_from_75C"},
     [](const House& house, const FeederRun& run) {
       return house.unitedStates && inUse(house, run) && open(run.terminalsFrom75);
     }},
    {"feeder_run.terminals_to_75C", kQualified, MessageId{"onsite.run.terminals_to_75C"},
     [](const House& house, const FeederRun& run) {
       return house.unitedStates && inUse(house, run) && open(run.terminalsTo75);
     }},
    // Where something of it is in place already the rest of it is too.
    {"feeder_run.fixed_conductor", kQualified, MessageId{"onsite.run.fixed_conductor"},
     [](const House& house, const FeederRun& run) {
       return inUse(house, run) && !run.fixedConductor && (run.fixedNeutral || run.fixedGround);
     }},
    {"feeder_run.fixed_neutral", kQualified, MessageId{"onsite.run.fixed_neutral"},
     [](const House& house, const FeederRun& run) {
       return inUse(house, run) && !run.fixedNeutral && (run.fixedConductor || run.fixedGround);
     }},
    {"feeder_run.fixed_ground", kQualified, MessageId{"onsite.run.fixed_ground"},
     [](const House& house, const FeederRun& run) {
       return inUse(house, run) && !run.fixedGround && (run.fixedConductor || run.fixedNeutral);
     }},
};

constexpr Fact<Raceway> kRaceway[] = {
    {"raceway.length_um", kQualified, MessageId{"onsite.raceway.length_um"},
     [](const House& house, const Raceway& raceway) {
       return inUse(house, raceway) && unmeasured(raceway.length);
     }},
    {"raceway.other_area_in2", kQualified, MessageId{"onsite.raceway.other_area_in2"},
     [](const House& house, const Raceway& raceway) {
       return inUse(house, raceway) && raceway.otherCarrying > 0 && !raceway.otherArea;
     }},
};

constexpr Fact<SpliceBox> kBox[] = {
    {"splice_box.volume_in3", kQualified, MessageId{"onsite.box.volume_in3"},
     [](const House& house, const SpliceBox& box) {
       return inUse(house, box) && (box.kind.is(BoxKind::marked) || !box.kind.known()) && !box.volume;
     }},
    {"splice_box.clamps_inside", kQualified, MessageId{"onsite.box.clamps_inside"},
     [](const House& house, const SpliceBox& box) { return inUse(house, box) && open(box.clampsInside); }},
};

constexpr Fact<Inverter> kInverter[] = {
    {"inverter.continuous_W", kHousehold, MessageId{"onsite.inverter.continuous_W"},
     [](const House& house, const Inverter& inverter) { return house.anyBackedUp && !inverter.continuous; }},
    {"inverter.leg_A", kHousehold, MessageId{"onsite.inverter.leg_A"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && !inverter.legCurrent && !inverter.legContinuous &&
              !inverter.output.is(InverterOutput::single120);
     }},
    {"inverter.overload", kHousehold, MessageId{"onsite.inverter.overload"},
     [](const House& house, const Inverter& inverter) {
       return house.motorsBackedUp && inverterLimits(inverter, house.tables).curve.empty();
     }},
    {"inverter.lowest_input_V", kHousehold, MessageId{"onsite.inverter.lowest_input_V"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && !inverter.lowestInputVoltage;
     }},
    {"inverter.marginal_efficiency", kHousehold, MessageId{"onsite.inverter.marginal_efficiency"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && inverter.efficiency.empty() && !inverter.marginalEfficiency;
     }},
    {"inverter.idle_W", kHousehold, MessageId{"onsite.inverter.idle_W"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && inverter.efficiency.empty() && !inverter.idle;
     }},
    {"inverter.maximum_output_device_A", kHousehold, MessageId{"onsite.inverter.maximum_output_device_A"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && !inverter.maximumOutputDevice &&
              (house.has(Segment::inverterToSwitch) || house.has(Segment::inverterToBackup));
     }},
    {"inverter.ac_input_A", kHousehold, MessageId{"onsite.inverter.ac_input_A"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && house.has(Segment::mainToInverter) && !inverter.acInput;
     }},
    {"inverter.pass_through_A", kHousehold, MessageId{"onsite.inverter.pass_through_A"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && throughInverter(house) && !inverter.passThrough;
     }},
    {"inverter.adds_to_pass_through", kHousehold, MessageId{"onsite.inverter.adds_to_pass_through"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && house.has(Segment::mainToInverter) && open(inverter.addsToPassThrough);
     }},
    {"inverter.charge_limit_W", kHousehold, MessageId{"onsite.inverter.charge_limit_W"},
     [](const House& house, const Inverter& inverter) {
       return house.anyBackedUp && house.has(Segment::mainToInverter) && !inverter.chargeLimit;
     }},
    {"inverter.bond", kHousehold, MessageId{"onsite.inverter.bond"},
     [](const House& house, const Inverter& inverter) {
       return byTransfer(house, *house.plan.transfer) &&
              (!inverter.bond.known() || inverter.bond.is(BondBehaviour::unknown));
     }},
};

constexpr Fact<Battery> kBattery[] = {
    {"battery.nominal_kWh", kHousehold, MessageId{"onsite.battery.nominal_kWh"},
     [](const House& house, const Battery& battery) {
       return house.anyBackedUp && !battery.nominalKilowattHours;
     }},
    {"battery.health", kHousehold, MessageId{"onsite.battery.health"},
     [](const House& house, const Battery& battery) { return house.anyBackedUp && !battery.health.value; }},
    {"battery.continuous_A", kHousehold, MessageId{"onsite.battery.continuous_A"},
     [](const House& house, const Battery& battery) {
       return house.anyBackedUp && !battery.continuousCurrent;
     }},
    {"battery.peak_A", kHousehold, MessageId{"onsite.battery.peak_A"},
     [](const House& house, const Battery& battery) { return house.motorsBackedUp && !battery.peakCurrent; }},
    {"battery.cell_temperature_mC", kHousehold, MessageId{"onsite.battery.cell_temperature_mC"},
     [](const House& house, const Battery& battery) {
       return house.anyBackedUp && !cellTemperature(battery);
     }},
};

constexpr Fact<DcCable> kCable[] = {
    {"dc_cable.length_um", kQualified, MessageId{"onsite.cable.length_um"},
     [](const House& house, const DcCable& cable) { return cableInUse(house) && unmeasured(cable.length); }},
    {"dc_cable.terminals_75C", kQualified, MessageId{"onsite.cable.terminals_75C"},
     [](const House& house, const DcCable& cable) {
       return cableByTable(house, cable) && open(cable.terminals75);
     }},
    {"dc_cable.fine_stranded", kQualified, MessageId{"onsite.cable.fine_stranded"},
     [](const House& house, const DcCable& cable) { return cableInUse(house) && open(cable.fineStranded); }},
    {"dc_cable.lugs_listed", kQualified, MessageId{"onsite.cable.lugs_listed"},
     [](const House& house, const DcCable& cable) {
       return cableInUse(house) && cable.fineStranded.is(Answer::yes) && open(cable.lugsListed);
     }},
};

}  // namespace

House::House(const Plan& of, const Tables& with)
    : plan(of),
      tables(with),
      edition(of.site->edition.valueOr(Edition::y2023)),
      unitedStates(of.site->country.is(Country::unitedStates)),
      pieces(segments(of)),
      buses(busSources(of)),
      apart(panelsApart(of)) {
  for (const auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    anyBackedUp = true;
    motorsBackedUp =
        motorsBackedUp || std::any_of(circuit->loads.begin(), circuit->loads.end(),
                                      [](const Load& load) { return !load.start.is(StartKind::none); });
  }
  const Panel* backup = backupPanel(plan);
  backupOccupied = backup != nullptr && !occupants(plan, backup->id, Reading::planned).empty();
}

bool House::has(Segment segment) const {
  return std::find(pieces.begin(), pieces.end(), segment) != pieces.end();
}

std::span<const Fact<Site>> siteFacts() { return kSite; }
std::span<const Fact<Panel>> panelFacts() { return kPanel; }
std::span<const Fact<Breaker>> breakerFacts() { return kBreaker; }
std::span<const Fact<Circuit>> circuitFacts() { return kCircuit; }
std::span<const Fact<OnCircuit>> loadFacts() { return kLoad; }
std::span<const Fact<Transfer>> transferFacts() { return kTransfer; }
std::span<const Fact<ManagedLoad>> managedFacts() { return kManaged; }
std::span<const Fact<AuthorityAnswer>> authorityFacts() { return kAuthority; }
std::span<const Fact<FeederRun>> runFacts() { return kRun; }
std::span<const Fact<Raceway>> racewayFacts() { return kRaceway; }
std::span<const Fact<SpliceBox>> boxFacts() { return kBox; }
std::span<const Fact<Inverter>> inverterFacts() { return kInverter; }
std::span<const Fact<Battery>> batteryFacts() { return kBattery; }
std::span<const Fact<Solar>> solarFacts() { return kSolar; }
std::span<const Fact<Generator>> generatorFacts() { return kGenerator; }
std::span<const Fact<DcCable>> cableFacts() { return kCable; }

std::string_view missingRunKey(Segment segment) {
  switch (segment) {
    case Segment::mainToSwitch:
      break;
    case Segment::inverterToSwitch:
      return "transfer.inverter_to_switch";
    case Segment::switchToBackup:
      return "transfer.switch_to_backup";
    case Segment::mainToInverter:
      return "transfer.main_to_inverter";
    case Segment::inverterToBackup:
      return "transfer.inverter_to_backup";
    case Segment::bypass:
      return "transfer.bypass";
    case Segment::generatorInlet:
      return "transfer.generator_inlet";
  }
  return "transfer.main_to_switch";
}

}  // namespace stayalight::on_site
