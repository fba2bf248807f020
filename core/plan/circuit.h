#pragma once

#include "core/plan/breaker.h"
#include "core/plan/raceway.h"
#include "core/quantity/conductor.h"

namespace stayalight {

template <>
struct ChoiceWords<ConductorSize> {
  static constexpr std::array<std::string_view, 18> words = kConductorSizeNames;
};
template <>
struct ChoiceWords<Metal> {
  static constexpr std::array<std::string_view, 2> words = {"copper", "aluminium"};
};

/// Season a fact holds in. Winter is December to February and so on, northern hemisphere; south of the
/// equator six months later.
enum class Season : std::uint8_t { all, winter, spring, summer, autumn };
template <>
struct ChoiceWords<Season> {
  static constexpr std::array<std::string_view, 5> words = {"all", "winter", "spring", "summer", "autumn"};
};

/// Hours in which a load is used. A load without windows is in use at all hours of all seasons; with windows
/// only in those that hold for the season. Where two overlap the one with the larger share counts.
struct UseWindow : Record {
  Choice<Season> season = Season::all;
  TimeOfDay from;                ///< whole hours
  TimeOfDay to;                  ///< whole hours; equal to `from`: all day; before `from`: over midnight
  Fraction share{1.0};           ///< chance that it is used at all in that hour, 0 to 1
  std::optional<Fraction> duty;  ///< replaces the load's duty in this window
  std::optional<PerHour> startsPerHour;
  friend bool operator==(const UseWindow&, const UseWindow&) = default;
};

/// Between which conductors a load lies.
enum class Connection : std::uint8_t { lineToNeutral, lineToLine };
template <>
struct ChoiceWords<Connection> {
  static constexpr std::array<std::string_view, 2> words = {"line_to_neutral", "line_to_line"};
};

/// Constant power, or a resistance (a heating element: three quarters of its power at 208 V when rated 240
/// V).
enum class LoadKind : std::uint8_t { constantPower, resistance };
template <>
struct ChoiceWords<LoadKind> {
  static constexpr std::array<std::string_view, 2> words = {"constant_power", "resistance"};
};

enum class StartKind : std::uint8_t { none, acrossTheLine, softStart, variableSpeed };
template <>
struct ChoiceWords<StartKind> {
  static constexpr std::array<std::string_view, 4> words = {"none", "across_the_line", "soft_start",
                                                            "variable_speed"};
};

/// Class of a motor whose nameplate nobody has read yet: gives a wide range of start current and time.
enum class StartClass : std::uint8_t {
  unknown,
  refrigerationCompressor,
  airConditioner,
  wellPump,
  sumpPump,
  blower,
  washerOrDoor,
  tool
};
template <>
struct ChoiceWords<StartClass> {
  static constexpr std::array<std::string_view, 8> words = {"unknown",         "refrigeration_compressor",
                                                            "air_conditioner", "well_pump",
                                                            "sump_pump",       "blower",
                                                            "washer_or_door",  "tool"};
};

/// How the load calculation counts a load.
enum class LoadClass : std::uint8_t {
  unknown,
  general,           ///< part of general lighting and receptacles
  appliance,         ///< fastened in place
  dryer,             ///< electric clothes dryer
  cooking,           ///< range, oven, cooktop
  spaceHeating,      ///< fixed electric space heating
  supplementalHeat,  ///< heating elements of a heat pump
  heatPump,          ///< its compressor
  airConditioning,
  motor,
  vehicleCharger,
  other
};
template <>
struct ChoiceWords<LoadClass> {
  static constexpr std::array<std::string_view, 12> words = {
      "unknown",           "general",   "appliance",        "dryer", "cooking",         "space_heating",
      "supplemental_heat", "heat_pump", "air_conditioning", "motor", "vehicle_charger", "other"};
};

struct Load : Record {
  LoadId id;
  std::string name;
  Choice<Connection> connection = Connection::lineToNeutral;
  std::int32_t pole = 1;             ///< for a line-to-neutral load on a two-pole breaker: which pole, 1 or 2
  Graded<Watts> running;             ///< while it runs, at its rated voltage
  Graded<AcAmperes> runningCurrent;  ///< used with the power factor where `running` is not known
  Graded<Fraction>
      powerFactor;  ///< lagging, 0.1 to 1; not known: 1 for a resistance, else see core/use/use.h
  std::int32_t ratedVoltage = 120;  ///< 110 to 277
  Choice<LoadKind> kind = LoadKind::constantPower;
  Choice<StartKind> start = StartKind::none;
  Choice<StartClass> startClass = StartClass::unknown;
  Graded<AcAmperes>
      lockedRotor;         ///< nameplate, at the rated voltage; with a soft starter: its limited current
  std::string codeLetter;  ///< locked-rotor code letter, "A" to "V", empty where not read
  std::optional<Horsepower> horsepower;
  Graded<Seconds> startTime;
  Graded<Fraction> startPowerFactor;
  Graded<Fraction> duty;          ///< share of the time in use that it runs, 0 to 1
  Graded<PerHour> startsPerHour;  ///< while in use
  std::vector<UseWindow> windows;
  bool automatic = true;    ///< starts by itself (thermostat, float), not by a hand
  bool continuous = false;  ///< may run three hours or more
  bool canWait = false;
  bool medical = false;
  std::optional<Seconds> restartDelay;
  std::optional<RatingAmperes> maximumBreaker;  ///< of its label
  Choice<LoadClass> calculationClass = LoadClass::unknown;
  std::optional<VoltAmperes>
      nameplate;  ///< for the load calculation; none: from the running watts or amperes
  std::optional<std::int32_t> separateControls;  ///< heaters with a control of their own that it stands for
  Choice<Answer> meantToRun = Answer::unknown;   ///< with the others at one time in an outage
  std::string catalogueId;
  std::string notes;
  friend bool operator==(const Load&, const Load&) = default;
};

enum class VoltageClass : std::uint8_t { v120, v240, v120_240 };
template <>
struct ChoiceWords<VoltageClass> {
  static constexpr std::array<std::string_view, 3> words = {"120", "240", "120/240"};
};

enum class WiringMethod : std::uint8_t {
  nmCable,
  metalCladCable,
  singlesInRaceway,
  serviceEntranceCable,
  unknown
};
template <>
struct ChoiceWords<WiringMethod> {
  static constexpr std::array<std::string_view, 5> words = {
      "nm_cable", "metal_clad_cable", "singles_in_raceway", "service_entrance_cable", "unknown"};
};

/// What grounds the equipment on a circuit: a wire of its own, the metal of raceway or cable, or nothing as
/// in old two-wire cable.
enum class BranchGround : std::uint8_t { unknown, wire, metal, none };
template <>
struct ChoiceWords<BranchGround> {
  static constexpr std::array<std::string_view, 4> words = {"unknown", "wire", "metal", "none"};
};

/// What a circuit is in the load calculation.
enum class CircuitUse : std::uint8_t { unknown, general, smallAppliance, laundry, individual };
template <>
struct ChoiceWords<CircuitUse> {
  static constexpr std::array<std::string_view, 5> words = {"unknown", "general", "small_appliance",
                                                            "laundry", "individual"};
};

enum class ReadConductor : std::uint8_t { line, neutral };
template <>
struct ChoiceWords<ReadConductor> {
  static constexpr std::array<std::string_view, 2> words = {"line", "neutral"};
};

/// What fed the house when a reading was taken.
enum class ReadMode : std::uint8_t { ordinary, outage };
template <>
struct ChoiceWords<ReadMode> {
  static constexpr std::array<std::string_view, 2> words = {"ordinary", "outage"};
};

/// What a clamp around one conductor of the circuit showed. On the neutral, with the circuit's own breaker
/// off, any current comes from a circuit that shares or borrows it; none proves something only about a
/// partner that carried load at that moment.
struct ClampReading : Record {
  Choice<ReadConductor> conductor = ReadConductor::line;
  AcAmperes current;
  Choice<Answer> ownBreakerOff = Answer::unknown;  ///< the circuit's own breaker, while it was read
  CircuitId partner;                               ///< suspected of sharing the neutral
  Choice<Answer> partnerLoaded = Answer::unknown;  ///< it carried load at that moment
  Choice<ReadMode> mode = ReadMode::ordinary;
  std::string how;  ///< instrument and method
  std::string who;
  std::string when;  ///< ISO date
  friend bool operator==(const ClampReading&, const ClampReading&) = default;
};

struct Circuit : Record {
  CircuitId id;
  std::string name;
  std::string serves;  ///< purpose and place, as the directory prints it
  BreakerId breaker;   ///< that feeds it today; none for a circuit that is new
  BreakerId planned;   ///< that feeds it after the work; none for one that goes away
  Choice<VoltageClass> voltage = VoltageClass::v120;
  std::int32_t multiwire = 0;  ///< circuits with the same number above 0 share one neutral
  Choice<Answer> neutralShared = Answer::unknown;  ///< has somebody looked for a shared or borrowed neutral
  Choice<Answer> neutralMoved = Answer::yes;       ///< its neutral lands in the panel that holds its breaker
  std::optional<ConductorSize> conductor;
  Choice<Metal> metal = Metal::copper;
  Choice<WiringMethod> wiring = WiringMethod::unknown;
  Choice<BranchGround> ground = BranchGround::unknown;
  Choice<CircuitUse> calculationUse = CircuitUse::unknown;
  std::optional<SquareFeet> areaServed;  ///< floor area whose lights and receptacles it feeds
  Choice<Answer> severalReceptacles = Answer::unknown;
  Choice<Answer> smokeAlarms = Answer::unknown;
  Choice<Answer> insulatedNeutral = Answer::unknown;
  Choice<Answer> traced = Answer::unknown;  ///< every outlet was proven to hang on this breaker
  std::string room;
  Choice<Answer> arcFaultArea = Answer::unknown;  ///< serves a room that the arc-fault rule lists
  // How it reaches its new breaker where it moves.
  Choice<Splice> splice = Splice::unknown;
  SpliceBoxId spliceBox;
  RacewayId raceway;                       ///< its extension runs through; none: not in a raceway
  std::optional<ConductorSize> extension;  ///< of the extension; none: as the circuit's own
  Choice<WireType> extensionWire = WireType::thwn2;
  std::optional<Length> extensionLength;  ///< outside cabinets and boxes
  std::optional<Length> cableWidth;  ///< larger outside diameter of its cable, where the cable itself runs on
  std::string notes;
  std::vector<ClampReading> readings;
  std::vector<Load> loads;
  friend bool operator==(const Circuit&, const Circuit&) = default;
};

}  // namespace stayalight
