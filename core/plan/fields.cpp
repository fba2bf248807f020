#include <algorithm>

#include "core/plan/field_maker.h"

namespace stayalight {
namespace {

using namespace field_maker;

constexpr double kAmpereMaximum = 100000;
constexpr double kWattMaximum = 1e7;

constexpr Field kSite[] = {
    field<&Site::name>("name", "field.site.name"),
    field<&Site::country>("country", "field.site.country"),
    field<&Site::latitude>("latitude_deg", "field.site.latitude_deg", Unit::degree, -90, 90),
    field<&Site::longitude>("longitude_deg", "field.site.longitude_deg", Unit::degree, -180, 180),
    field<&Site::utcOffset>("utc_offset_h", "field.site.utc_offset_h", Unit::hour, -12, 14),
    field<&Site::daylightSaving>("daylight_saving", "field.site.daylight_saving"),
    field<&Site::service>("service_V", "field.site.service_V"),
    field<&Site::wyeOrder>("wye_order", "field.site.wye_order"),
    field<&Site::serviceRating>("service_A", "field.site.service_A", Unit::ampere, 15, 1200),
    field<&Site::availableFaultCurrent>("fault_current_A", "field.site.fault_current_A", Unit::ampere, 1,
                                        200000),
    field<&Site::floorArea>("floor_area_ft2", "field.site.floor_area_ft2", Unit::squareFoot, 1, 100000),
    field<&Site::dwelling>("dwelling", "field.site.dwelling"),
    field<&Site::smallApplianceCircuits>("small_appliance_circuits", "field.site.small_appliance_circuits",
                                         Unit::none, 0, 50),
    field<&Site::laundryCircuits>("laundry_circuits", "field.site.laundry_circuits", Unit::none, 0, 20),
    field<&Site::maximumDemand>("maximum_demand_VA", "field.site.maximum_demand_VA", Unit::voltAmpere, 0,
                                kWattMaximum),
    field<&Site::demandPeriod>("demand_period", "field.site.demand_period"),
    field<&Site::demandGross>("demand_gross", "field.site.demand_gross"),
    field<&Site::demandSeason>("demand_season", "field.site.demand_season"),
    field<&Site::edition>("code_edition", "field.site.code_edition"),
    field<&Site::amendments>("amendments", "field.site.amendments"),
    field<&Site::permitDate>("permit_date", "field.site.permit_date"),
    field<&Site::permitNumber>("permit_number", "field.site.permit_number"),
    field<&Site::customer>("customer", "field.site.customer"),
    field<&Site::firm>("firm", "field.site.firm"),
    field<&Site::licence>("licence", "field.site.licence"),
    field<&Site::drawnBy>("drawn_by", "field.site.drawn_by"),
    field<&Site::sheetDate>("sheet_date", "field.site.sheet_date"),
    field<&Site::revision>("revision", "field.site.revision"),
    field<&Site::paper>("paper", "field.site.paper"),
    field<&Site::notes>("notes", "field.notes"),
};

constexpr Field kAuthorityAnswer[] = {
    field<&AuthorityAnswer::question>("question", "field.authority.question"),
    field<&AuthorityAnswer::answer>("answer", "field.authority.answer"),
    field<&AuthorityAnswer::who>("who", "field.authority.who"),
    field<&AuthorityAnswer::when>("when", "field.authority.when"),
    field<&AuthorityAnswer::inWriting>("in_writing", "field.authority.in_writing"),
};
constexpr Children kSiteChildren[] = {list<&Site::answers>("authority_answers", RecordKind::authorityAnswer)};

constexpr Field kSpace[] = {
    field<&Space::column>("column", "field.space.column"),
    field<&Space::row>("row", "field.space.row", Unit::none, 1, 42),
    field<&Space::printedNumber>("printed_number", "field.space.printed_number"),
    field<&Space::leg>("leg", "field.space.leg"),
    field<&Space::tandem>("tandem", "field.space.tandem"),
};

constexpr Field kPanel[] = {
    identity<&Panel::id>(),
    field<&Panel::name>("name", "field.panel.name"),
    field<&Panel::role>("role", "field.panel.role"),
    field<&Panel::spaces>("spaces", "field.panel.spaces", Unit::none, 4, 84),
    field<&Panel::numbering>("numbering", "field.panel.numbering"),
    field<&Panel::legsMeasured>("legs_measured", "field.panel.legs_measured"),
    field<&Panel::tandems>("tandems", "field.panel.tandems"),
    field<&Panel::poleMaximum>("pole_maximum", "field.panel.pole_maximum", Unit::none, 1, 168),
    field<&Panel::busRating>("bus_A", "field.panel.bus_A", Unit::ampere, 15, 1200),
    field<&Panel::feedEnd>("feed_end", "field.panel.feed_end"),
    field<&Panel::busOption>("bus_option", "field.panel.bus_option"),
    field<&Panel::mainBreaker>("main_breaker_A", "field.panel.main_breaker_A", Unit::ampere, 15, 1200),
    field<&Panel::mainBackFed>("main_back_fed", "field.panel.main_back_fed"),
    field<&Panel::holdDown>("hold_down", "field.panel.hold_down"),
    field<&Panel::neutralBonded>("neutral_bonded", "field.panel.neutral_bonded"),
    reference<&Panel::fedFrom>("fed_from", RecordKind::panel, "field.panel.fed_from"),
    field<&Panel::listingLine>("listing_line", "field.panel.listing_line"),
    field<&Panel::neutralTerminals>("neutral_terminals", "field.panel.neutral_terminals", Unit::none, 0, 200),
    field<&Panel::wiringSpace>("wiring_space_in2", "field.panel.wiring_space_in2", Unit::squareInch, 1, 1000),
    field<&Panel::terminals75>("terminals_75C", "field.panel.terminals_75C"),
    field<&Panel::interruptingRating>("interrupting_A", "field.panel.interrupting_A", Unit::ampere, 1,
                                      200000),
    field<&Panel::separateBuilding>("separate_building", "field.panel.separate_building"),
    field<&Panel::groundingElectrode>("grounding_electrode", "field.panel.grounding_electrode"),
    field<&Panel::buildingDisconnect>("building_disconnect", "field.panel.building_disconnect"),
    field<&Panel::place>("place", "field.panel.place"),
    field<&Panel::notes>("notes", "field.notes"),
};
constexpr Children kPanelChildren[] = {list<&Panel::exceptions>("space_exceptions", RecordKind::space)};

constexpr Field kBreaker[] = {
    identity<&Breaker::id>(),
    reference<&Breaker::panel>("panel", RecordKind::panel, "field.breaker.panel"),
    field<&Breaker::column>("column", "field.breaker.column"),
    field<&Breaker::row>("row", "field.breaker.row", Unit::none, 1, 42),
    field<&Breaker::half>("half", "field.breaker.half"),
    field<&Breaker::poles>("poles", "field.breaker.poles", Unit::none, 1, 2),
    field<&Breaker::rating>("rating_A", "field.breaker.rating_A", Unit::ampere, 5, 400),
    field<&Breaker::ratingRead>("rating_read", "field.breaker.rating_read"),
    field<&Breaker::feeds>("feeds", "field.breaker.feeds"),
    reference<&Breaker::feedsPanel>("feeds_panel", RecordKind::panel, "field.breaker.feeds_panel"),
    field<&Breaker::stage>("stage", "field.breaker.stage"),
    field<&Breaker::tie>("tie", "field.breaker.tie"),
    field<&Breaker::protection>("protection", "field.breaker.protection"),
    field<&Breaker::listingLine>("listing_line", "field.breaker.listing_line"),
    field<&Breaker::backFed>("back_fed", "field.breaker.back_fed"),
    field<&Breaker::sourceCurrent>("source_A", "field.breaker.source_A", Unit::ampere, 0.1, 1200),
    field<&Breaker::holdDown>("hold_down", "field.breaker.hold_down"),
    field<&Breaker::interlocked>("interlocked", "field.breaker.interlocked"),
    field<&Breaker::interruptingRating>("interrupting_A", "field.breaker.interrupting_A", Unit::ampere, 1,
                                        200000),
    field<&Breaker::notes>("notes", "field.notes"),
};

constexpr Field kWindow[] = {
    field<&UseWindow::season>("season", "field.window.season"),
    field<&UseWindow::from>("from_min", "field.window.from_min", Unit::minuteOfDay, 0, 1439),
    field<&UseWindow::to>("to_min", "field.window.to_min", Unit::minuteOfDay, 0, 1439),
    field<&UseWindow::share>("share", "field.window.share", Unit::fraction, 0, 1),
    field<&UseWindow::duty>("duty", "field.window.duty", Unit::fraction, 0, 1),
    field<&UseWindow::startsPerHour>("starts_per_hour", "field.window.starts_per_hour", Unit::perHour, 0,
                                     3600),
};

constexpr Field kLoad[] = {
    identity<&Load::id>(),
    field<&Load::name>("name", "field.load.name"),
    field<&Load::connection>("connection", "field.load.connection"),
    field<&Load::pole>("pole", "field.load.pole", Unit::none, 1, 2),
    field<&Load::running>("running_W", "field.load.running_W", Unit::watt, 0, kWattMaximum),
    field<&Load::runningCurrent>("running_A", "field.load.running_A", Unit::ampere, 0, kAmpereMaximum),
    field<&Load::powerFactor>("power_factor", "field.load.power_factor", Unit::none, 0.1, 1),
    field<&Load::ratedVoltage>("rated_V", "field.load.rated_V", Unit::volt, 100, 277),
    field<&Load::kind>("kind", "field.load.kind"),
    field<&Load::start>("start", "field.load.start"),
    field<&Load::startClass>("start_class", "field.load.start_class"),
    field<&Load::lockedRotor>("locked_rotor_A", "field.load.locked_rotor_A", Unit::ampere, 0, kAmpereMaximum),
    field<&Load::codeLetter>("code_letter", "field.load.code_letter"),
    field<&Load::horsepower>("horsepower_hp", "field.load.horsepower_hp", Unit::horsepower, 0.01, 20),
    field<&Load::startTime>("start_s", "field.load.start_s", Unit::second, 0, 120),
    field<&Load::startPowerFactor>("start_power_factor", "field.load.start_power_factor", Unit::none, 0.1, 1),
    field<&Load::duty>("duty", "field.load.duty", Unit::fraction, 0, 1),
    field<&Load::startsPerHour>("starts_per_hour", "field.load.starts_per_hour", Unit::perHour, 0, 3600),
    field<&Load::automatic>("automatic", "field.load.automatic"),
    field<&Load::continuous>("continuous", "field.load.continuous"),
    field<&Load::canWait>("can_wait", "field.load.can_wait"),
    field<&Load::medical>("medical", "field.load.medical"),
    field<&Load::restartDelay>("restart_delay_s", "field.load.restart_delay_s", Unit::second, 0, 86400),
    field<&Load::maximumBreaker>("maximum_breaker_A", "field.load.maximum_breaker_A", Unit::ampere, 5, 400),
    field<&Load::calculationClass>("calculation_class", "field.load.calculation_class"),
    field<&Load::nameplate>("nameplate_VA", "field.load.nameplate_VA", Unit::voltAmpere, 0, kWattMaximum),
    field<&Load::separateControls>("separate_controls", "field.load.separate_controls", Unit::none, 1, 50),
    field<&Load::meantToRun>("meant_to_run", "field.load.meant_to_run"),
    field<&Load::catalogueId>("catalogue_id", "field.load.catalogue_id"),
    field<&Load::notes>("notes", "field.notes"),
};
constexpr Children kLoadChildren[] = {list<&Load::windows>("windows", RecordKind::useWindow)};

constexpr Field kCircuit[] = {
    identity<&Circuit::id>(),
    field<&Circuit::name>("name", "field.circuit.name"),
    field<&Circuit::serves>("serves", "field.circuit.serves"),
    reference<&Circuit::breaker>("breaker", RecordKind::breaker, "field.circuit.breaker"),
    reference<&Circuit::planned>("planned", RecordKind::breaker, "field.circuit.planned"),
    field<&Circuit::voltage>("voltage_V", "field.circuit.voltage_V"),
    field<&Circuit::multiwire>("multiwire", "field.circuit.multiwire", Unit::none, 0, 1000),
    field<&Circuit::neutralShared>("neutral_shared", "field.circuit.neutral_shared"),
    field<&Circuit::neutralMoved>("neutral_moved", "field.circuit.neutral_moved"),
    field<&Circuit::conductor>("conductor_AWG", "field.circuit.conductor_AWG"),
    field<&Circuit::metal>("metal", "field.circuit.metal"),
    field<&Circuit::wiring>("wiring", "field.circuit.wiring"),
    field<&Circuit::ground>("ground", "field.circuit.ground"),
    field<&Circuit::calculationUse>("calculation_use", "field.circuit.calculation_use"),
    field<&Circuit::areaServed>("area_served_ft2", "field.circuit.area_served_ft2", Unit::squareFoot, 0,
                                100000),
    field<&Circuit::severalReceptacles>("several_receptacles", "field.circuit.several_receptacles"),
    field<&Circuit::smokeAlarms>("smoke_alarms", "field.circuit.smoke_alarms"),
    field<&Circuit::insulatedNeutral>("insulated_neutral", "field.circuit.insulated_neutral"),
    field<&Circuit::traced>("traced", "field.circuit.traced"),
    field<&Circuit::room>("room", "field.circuit.room"),
    field<&Circuit::arcFaultArea>("arc_fault_area", "field.circuit.arc_fault_area"),
    field<&Circuit::splice>("splice", "field.circuit.splice"),
    reference<&Circuit::spliceBox>("splice_box", RecordKind::spliceBox, "field.circuit.splice_box"),
    reference<&Circuit::raceway>("raceway", RecordKind::raceway, "field.circuit.raceway"),
    field<&Circuit::extension>("extension_AWG", "field.circuit.extension_AWG"),
    field<&Circuit::extensionWire>("extension_wire", "field.circuit.extension_wire"),
    field<&Circuit::extensionLength>("extension_um", "field.circuit.extension_um", Unit::micrometre, 0, 1e9),
    field<&Circuit::cableWidth>("cable_width_um", "field.circuit.cable_width_um", Unit::micrometreShort, 1000,
                                100000),
    field<&Circuit::notes>("notes", "field.notes"),
};
constexpr Field kClampReading[] = {
    field<&ClampReading::conductor>("conductor", "field.reading.conductor"),
    field<&ClampReading::current>("current_A", "field.reading.current_A", Unit::ampere, 0, kAmpereMaximum),
    field<&ClampReading::ownBreakerOff>("own_breaker_off", "field.reading.own_breaker_off"),
    reference<&ClampReading::partner>("partner", RecordKind::circuit, "field.reading.partner"),
    field<&ClampReading::partnerLoaded>("partner_loaded", "field.reading.partner_loaded"),
    field<&ClampReading::mode>("mode", "field.reading.mode"),
    field<&ClampReading::how>("how", "field.reading.how"),
    field<&ClampReading::who>("who", "field.reading.who"),
    field<&ClampReading::when>("when", "field.reading.when"),
};
constexpr Children kCircuitChildren[] = {list<&Circuit::readings>("clamp_readings", RecordKind::clampReading),
                                         list<&Circuit::loads>("loads", RecordKind::load)};

constexpr Field kOverload[] = {
    field<&OverloadPoint::time>("time_s", "field.overload.time_s", Unit::second, 0, 86400),
    field<&OverloadPoint::watts>("total_W", "field.overload.total_W", Unit::watt, 0, kWattMaximum),
    field<&OverloadPoint::legCurrent>("leg_A", "field.overload.leg_A", Unit::ampere, 0, kAmpereMaximum),
};
constexpr Field kEfficiency[] = {
    field<&EfficiencyPoint::load>("load", "field.efficiency.load", Unit::fraction, 0, 2),
    field<&EfficiencyPoint::efficiency>("efficiency", "field.efficiency.efficiency", Unit::fraction, 0.01, 1),
};

constexpr Field kInverter[] = {
    field<&Inverter::name>("name", "field.inverter.name"),
    field<&Inverter::units>("units", "field.inverter.units", Unit::none, 1, 12),
    field<&Inverter::output>("output_V", "field.inverter.output_V"),
    field<&Inverter::continuous>("continuous_W", "field.inverter.continuous_W", Unit::watt, 1, kWattMaximum),
    field<&Inverter::continuousApparent>("continuous_VA", "field.inverter.continuous_VA", Unit::voltAmpere, 1,
                                         kWattMaximum),
    field<&Inverter::legContinuous>("leg_W", "field.inverter.leg_W", Unit::watt, 1, kWattMaximum),
    field<&Inverter::legCurrent>("leg_A", "field.inverter.leg_A", Unit::ampere, 1, kAmpereMaximum),
    field<&Inverter::marginalEfficiency>("marginal_efficiency", "field.inverter.marginal_efficiency",
                                         Unit::fraction, 0.1, 1),
    field<&Inverter::idle>("idle_W", "field.inverter.idle_W", Unit::watt, 0, 5000),
    field<&Inverter::lowestInputVoltage>("lowest_input_V", "field.inverter.lowest_input_V", Unit::volt, 5,
                                         1000),
    field<&Inverter::acInput>("ac_input_A", "field.inverter.ac_input_A", Unit::ampere, 1, 1200),
    field<&Inverter::passThrough>("pass_through_A", "field.inverter.pass_through_A", Unit::ampere, 1, 1200),
    field<&Inverter::addsToPassThrough>("adds_to_pass_through", "field.inverter.adds_to_pass_through"),
    field<&Inverter::chargeLimit>("charge_limit_W", "field.inverter.charge_limit_W", Unit::watt, 0,
                                  kWattMaximum),
    field<&Inverter::maximumOutputDevice>("maximum_output_device_A", "field.inverter.maximum_output_device_A",
                                          Unit::ampere, 5, 1200),
    field<&Inverter::bond>("bond", "field.inverter.bond"),
    field<&Inverter::transferGap>("transfer_gap_s", "field.inverter.transfer_gap_s", Unit::second, 0, 3600),
    field<&Inverter::powerControlListed>("power_control_listed", "field.inverter.power_control_listed"),
    field<&Inverter::multimode>("multimode", "field.inverter.multimode"),
    field<&Inverter::controlSetting>("control_setting_VA", "field.inverter.control_setting_VA",
                                     Unit::voltAmpere, 1, kWattMaximum),
    field<&Inverter::reconnectsByHand>("reconnects_by_hand", "field.inverter.reconnects_by_hand"),
    field<&Inverter::notes>("notes", "field.notes"),
};
constexpr Children kInverterChildren[] = {
    list<&Inverter::overload>("overload", RecordKind::overloadPoint),
    list<&Inverter::efficiency>("efficiency", RecordKind::efficiencyPoint),
};

constexpr Field kBattery[] = {
    field<&Battery::name>("name", "field.battery.name"),
    field<&Battery::packs>("packs", "field.battery.packs", Unit::none, 1, 64),
    field<&Battery::nominalKilowattHours>("nominal_kWh", "field.battery.nominal_kWh", Unit::kilowattHour,
                                          0.01, 1000),
    field<&Battery::health>("health", "field.battery.health", Unit::fraction, 0.01, 1.1),
    field<&Battery::reserve>("reserve", "field.battery.reserve", Unit::fraction, 0, 1),
    field<&Battery::floor>("floor", "field.battery.floor", Unit::fraction, 0, 1),
    field<&Battery::restart>("restart", "field.battery.restart", Unit::fraction, 0, 1),
    field<&Battery::continuousCurrent>("continuous_A", "field.battery.continuous_A", Unit::ampere, 0.1,
                                       10000),
    field<&Battery::peakCurrent>("peak_A", "field.battery.peak_A", Unit::ampere, 0.1, 10000),
    field<&Battery::peakTime>("peak_s", "field.battery.peak_s", Unit::second, 0, 3600),
    field<&Battery::place>("place", "field.battery.place"),
    field<&Battery::cellTemperature>("cell_temperature_mC", "field.battery.cell_temperature_mC",
                                     Unit::milliCelsius, -40000, 70000),
    field<&Battery::chargeEfficiency>("charge_efficiency", "field.battery.charge_efficiency", Unit::fraction,
                                      0.1, 1),
    field<&Battery::chargeCutOff>("charge_cut_off_mC", "field.battery.charge_cut_off_mC", Unit::milliCelsius,
                                  -40000, 30000),
    field<&Battery::notes>("notes", "field.notes"),
};

constexpr Field kSolar[] = {
    field<&Solar::name>("name", "field.solar.name"),
    field<&Solar::coupling>("coupling", "field.solar.coupling"),
    field<&Solar::modules>("modules_W", "field.solar.modules_W", Unit::watt, 1, kWattMaximum),
    field<&Solar::output>("output_W", "field.solar.output_W", Unit::watt, 1, kWattMaximum),
    reference<&Solar::panel>("panel", RecordKind::panel, "field.solar.panel"),
    field<&Solar::heldBack>("held_back", "field.solar.held_back"),
    field<&Solar::tilt>("tilt_deg", "field.solar.tilt_deg", Unit::degree, 0, 90),
    field<&Solar::azimuth>("azimuth_deg", "field.solar.azimuth_deg", Unit::degree, 0, 360),
    field<&Solar::losses>("losses", "field.solar.losses", Unit::fraction, 0, 0.9),
    field<&Solar::notes>("notes", "field.notes"),
};

constexpr Field kGenerator[] = {
    field<&Generator::name>("name", "field.generator.name"),
    field<&Generator::comesIn>("comes_in", "field.generator.comes_in"),
    field<&Generator::continuous>("continuous_W", "field.generator.continuous_W", Unit::watt, 1,
                                  kWattMaximum),
    field<&Generator::ratedCurrent>("rated_A", "field.generator.rated_A", Unit::ampere, 0.1, 1200),
    field<&Generator::output>("output_V", "field.generator.output_V"),
    field<&Generator::neutral>("neutral", "field.generator.neutral"),
    field<&Generator::device>("device_A", "field.generator.device_A", Unit::ampere, 5, 1200),
    field<&Generator::inlet>("inlet_A", "field.generator.inlet_A", Unit::ampere, 5, 1200),
    field<&Generator::switchesNeutral>("switches_neutral", "field.generator.switches_neutral"),
    field<&Generator::fuel>("fuel", "field.generator.fuel"),
    field<&Generator::fuelHours>("fuel_h", "field.generator.fuel_h", Unit::hour, 0, 10000),
    field<&Generator::alarmsFitted>("alarms_fitted", "field.generator.alarms_fitted"),
    field<&Generator::notes>("notes", "field.notes"),
};

constexpr Field kManagedLoad[] = {
    reference<&ManagedLoad::load>("load", RecordKind::load, "field.managed.load"),
    field<&ManagedLoad::shedBy>("shed_by", "field.managed.shed_by"),
    field<&ManagedLoad::listed>("listed", "field.managed.listed"),
    field<&ManagedLoad::offInOutage>("off_in_outage", "field.managed.off_in_outage"),
    field<&ManagedLoad::returns>("returns", "field.managed.returns"),
};
constexpr Children kTransferChildren[] = {list<&Transfer::managed>("managed_loads", RecordKind::managedLoad)};

constexpr Field kTransfer[] = {
    field<&Transfer::arrangement>("arrangement", "field.transfer.arrangement"),
    field<&Transfer::listing>("listing", "field.transfer.listing"),
    field<&Transfer::switchesNeutral>("switches_neutral", "field.transfer.switches_neutral"),
    field<&Transfer::rating>("rating_A", "field.transfer.rating_A", Unit::ampere, 15, 1200),
    field<&Transfer::calculatedLoad>("calculated_load_VA", "field.transfer.calculated_load_VA",
                                     Unit::voltAmpere, 0, kWattMaximum),
    field<&Transfer::continuousPart>("continuous_part_VA", "field.transfer.continuous_part_VA",
                                     Unit::voltAmpere, 0, kWattMaximum),
    field<&Transfer::neutralLoad>("neutral_load_VA", "field.transfer.neutral_load_VA", Unit::voltAmpere, 0,
                                  kWattMaximum),
    field<&Transfer::capacityPath>("capacity_path", "field.transfer.capacity_path"),
    field<&Transfer::capacityAgreedBy>("capacity_agreed_by", "field.transfer.capacity_agreed_by"),
    field<&Transfer::capacityAgreedOn>("capacity_agreed_on", "field.transfer.capacity_agreed_on"),
    field<&Transfer::capacityAgreedInWriting>("capacity_agreed_in_writing",
                                              "field.transfer.capacity_agreed_in_writing"),
    field<&Transfer::managedLimit>("managed_limit_VA", "field.transfer.managed_limit_VA", Unit::voltAmpere, 1,
                                   kWattMaximum),
    field<&Transfer::managedListed>("managed_listed", "field.transfer.managed_listed"),
    field<&Transfer::serviceBondUpstream>("service_bond_upstream", "field.transfer.service_bond_upstream"),
    field<&Transfer::serviceDisconnectMoved>("service_disconnect_moved",
                                             "field.transfer.service_disconnect_moved"),
    field<&Transfer::bypass>("bypass", "field.transfer.bypass"),
    field<&Transfer::bypassBreaksFirst>("bypass_breaks_first", "field.transfer.bypass_breaks_first"),
    field<&Transfer::bypassSwitchesNeutral>("bypass_switches_neutral",
                                            "field.transfer.bypass_switches_neutral"),
    field<&Transfer::notes>("notes", "field.notes"),
};

constexpr Field kDcCable[] = {
    field<&DcCable::length>("length_um", "field.dc_cable.length_um", Unit::micrometre, 0, 1e9),
    field<&DcCable::metal>("metal", "field.dc_cable.metal"),
    field<&DcCable::insulation>("insulation_C", "field.dc_cable.insulation_C"),
    field<&DcCable::ambient>("ambient_mC", "field.dc_cable.ambient_mC", Unit::milliCelsius, -40000, 90000),
    field<&DcCable::terminals75>("terminals_75C", "field.dc_cable.terminals_75C"),
    field<&DcCable::freeAir>("free_air", "field.dc_cable.free_air"),
    field<&DcCable::instructionsConductor>("instructions_conductor", "field.dc_cable.instructions_conductor"),
    field<&DcCable::instructionsDevice>("instructions_device_A", "field.dc_cable.instructions_device_A",
                                        Unit::ampere, 5, 1200),
    field<&DcCable::fixedConductor>("fixed_conductor", "field.dc_cable.fixed_conductor"),
    field<&DcCable::fixedDevice>("fixed_device_A", "field.dc_cable.fixed_device_A", Unit::ampere, 5, 1200),
    field<&DcCable::fineStranded>("fine_stranded", "field.dc_cable.fine_stranded"),
    field<&DcCable::lugsListed>("lugs_listed", "field.dc_cable.lugs_listed"),
    field<&DcCable::notes>("notes", "field.notes"),
};

constexpr Field kRun[] = {
    identity<&FeederRun::id>(),
    field<&FeederRun::segment>("segment", "field.run.segment"),
    field<&FeederRun::length>("length_um", "field.run.length_um", Unit::micrometre, 0, 1e9),
    field<&FeederRun::wiring>("wiring", "field.run.wiring"),
    field<&FeederRun::raceway>("raceway", "field.run.raceway"),
    field<&FeederRun::metal>("metal", "field.run.metal"),
    field<&FeederRun::insulation>("insulation_C", "field.run.insulation_C"),
    field<&FeederRun::ambient>("ambient_mC", "field.run.ambient_mC", Unit::milliCelsius, -40000, 90000),
    field<&FeederRun::currentCarrying>("current_carrying", "field.run.current_carrying", Unit::none, 1, 200),
    reference<&FeederRun::inRaceway>("in_raceway", RecordKind::raceway, "field.run.in_raceway"),
    field<&FeederRun::terminalsFrom75>("terminals_from_75C", "field.run.terminals_from_75C"),
    field<&FeederRun::terminalsTo75>("terminals_to_75C", "field.run.terminals_to_75C"),
    field<&FeederRun::fixedConductor>("fixed_conductor", "field.run.fixed_conductor"),
    field<&FeederRun::fixedNeutral>("fixed_neutral", "field.run.fixed_neutral"),
    field<&FeederRun::fixedGround>("fixed_ground", "field.run.fixed_ground"),
    field<&FeederRun::fixedDevice>("fixed_device_A", "field.run.fixed_device_A", Unit::ampere, 5, 1200),
    field<&FeederRun::notes>("notes", "field.notes"),
};

constexpr Field kRaceway[] = {
    identity<&Raceway::id>(),
    field<&Raceway::name>("name", "field.raceway.name"),
    field<&Raceway::type>("type", "field.raceway.type"),
    field<&Raceway::size>("trade_size", "field.raceway.trade_size"),
    field<&Raceway::length>("length_um", "field.raceway.length_um", Unit::micrometre, 0, 1e9),
    field<&Raceway::ambient>("ambient_mC", "field.raceway.ambient_mC", Unit::milliCelsius, -40000, 90000),
    field<&Raceway::ground>("ground", "field.raceway.ground"),
    field<&Raceway::otherCarrying>("other_current_carrying", "field.raceway.other_current_carrying",
                                   Unit::none, 0, 200),
    field<&Raceway::otherArea>("other_area_in2", "field.raceway.other_area_in2", Unit::squareInch, 0, 100),
    field<&Raceway::notes>("notes", "field.notes"),
};

constexpr Field kSpliceBox[] = {
    identity<&SpliceBox::id>(),
    field<&SpliceBox::name>("name", "field.splice_box.name"),
    field<&SpliceBox::place>("place", "field.splice_box.place"),
    field<&SpliceBox::kind>("kind", "field.splice_box.kind"),
    field<&SpliceBox::volume>("volume_in3", "field.splice_box.volume_in3", Unit::cubicInch, 1, 10000),
    field<&SpliceBox::clampsInside>("clamps_inside", "field.splice_box.clamps_inside"),
    field<&SpliceBox::devices>("devices", "field.splice_box.devices", Unit::none, 0, 20),
    field<&SpliceBox::notes>("notes", "field.notes"),
};

constexpr Field kScenario[] = {
    field<&Scenario::month>("month", "field.scenario.month", Unit::month, 1, 12),
    field<&Scenario::start>("start_min", "field.scenario.start_min", Unit::minuteOfDay, 0, 1439),
    field<&Scenario::startCharge>("start_charge", "field.scenario.start_charge", Unit::fraction, 0, 1),
};

// Entries of the own lists have the fields of what they stand for, without an id and without what feeds them.
constexpr std::span<const Field> kOwnLoad = std::span(kLoad).subspan(1);
constexpr auto kOwnPanel = [] {
  std::array<Field, std::size(kPanel) - 2> fields;
  std::copy_if(std::begin(kPanel), std::end(kPanel), fields.begin(), [](const Field& field) {
    return field.kind != FieldKind::identity && field.kind != FieldKind::reference;
  });
  return fields;
}();
constexpr Children kOwnListsChildren[] = {
    list<&OwnLists::loads>("loads", RecordKind::ownLoad),
    list<&OwnLists::inverters>("inverters", RecordKind::ownInverter),
    list<&OwnLists::batteries>("batteries", RecordKind::ownBattery),
    list<&OwnLists::panels>("panels", RecordKind::ownPanel),
};

constexpr Children kPlanChildren[] = {
    shared<&Plan::site>("site", RecordKind::site),
    sharedList<&Plan::panels>("panels", RecordKind::panel),
    sharedList<&Plan::breakers>("breakers", RecordKind::breaker),
    sharedList<&Plan::circuits>("circuits", RecordKind::circuit),
    shared<&Plan::inverter>("inverter", RecordKind::inverter),
    shared<&Plan::battery>("battery", RecordKind::battery),
    shared<&Plan::solar>("solar", RecordKind::solar),
    shared<&Plan::generator>("generator", RecordKind::generator),
    shared<&Plan::transfer>("transfer", RecordKind::transfer),
    shared<&Plan::dcCable>("dc_cable", RecordKind::dcCable),
    sharedList<&Plan::runs>("feeder_runs", RecordKind::feederRun),
    sharedList<&Plan::raceways>("raceways", RecordKind::raceway),
    sharedList<&Plan::spliceBoxes>("splice_boxes", RecordKind::spliceBox),
    shared<&Plan::own>("own_lists", RecordKind::ownLists),
    shared<&Plan::scenario>("scenario", RecordKind::scenario),
};

constexpr RecordType kTypes[] = {
    record<Plan>(RecordKind::plan, "plan", {}, kPlanChildren),
    record<Site>(RecordKind::site, "site", kSite, kSiteChildren),
    record<Panel>(RecordKind::panel, "panel", kPanel, kPanelChildren),
    record<Space>(RecordKind::space, "space", kSpace, {}),
    record<Breaker>(RecordKind::breaker, "breaker", kBreaker, {}),
    record<Circuit>(RecordKind::circuit, "circuit", kCircuit, kCircuitChildren),
    record<Load>(RecordKind::load, "load", kLoad, kLoadChildren),
    record<UseWindow>(RecordKind::useWindow, "window", kWindow, {}),
    record<AuthorityAnswer>(RecordKind::authorityAnswer, "authority_answer", kAuthorityAnswer, {}),
    record<ClampReading>(RecordKind::clampReading, "clamp_reading", kClampReading, {}),
    record<Inverter>(RecordKind::inverter, "inverter", kInverter, kInverterChildren),
    record<OverloadPoint>(RecordKind::overloadPoint, "overload_point", kOverload, {}),
    record<EfficiencyPoint>(RecordKind::efficiencyPoint, "efficiency_point", kEfficiency, {}),
    record<Battery>(RecordKind::battery, "battery", kBattery, {}),
    record<Solar>(RecordKind::solar, "solar", kSolar, {}),
    record<Generator>(RecordKind::generator, "generator", kGenerator, {}),
    record<Transfer>(RecordKind::transfer, "transfer", kTransfer, kTransferChildren),
    record<ManagedLoad>(RecordKind::managedLoad, "managed_load", kManagedLoad, {}),
    record<DcCable>(RecordKind::dcCable, "dc_cable", kDcCable, {}),
    record<FeederRun>(RecordKind::feederRun, "feeder_run", kRun, {}),
    record<Raceway>(RecordKind::raceway, "raceway", kRaceway, {}),
    record<SpliceBox>(RecordKind::spliceBox, "splice_box", kSpliceBox, {}),
    record<OwnLists>(RecordKind::ownLists, "own_lists", {}, kOwnListsChildren),
    record<Load>(RecordKind::ownLoad, "own_load", kOwnLoad, kLoadChildren),
    record<Inverter>(RecordKind::ownInverter, "own_inverter", kInverter, kInverterChildren),
    record<Battery>(RecordKind::ownBattery, "own_battery", kBattery, {}),
    record<Panel>(RecordKind::ownPanel, "own_panel", kOwnPanel, kPanelChildren),
    record<Scenario>(RecordKind::scenario, "scenario", kScenario, {}),
};

}  // namespace

const RecordType& recordType(RecordKind kind) { return kTypes[static_cast<std::size_t>(kind)]; }

const Field* fieldOf(RecordKind kind, std::string_view key) {
  for (const Field& row : recordType(kind).fields) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

}  // namespace stayalight
