#pragma once

// How the backup subpanel gets its supply: the transfer arrangement and the feeder's runs.

#include "core/plan/equipment.h"

namespace stayalight {

enum class Arrangement : std::uint8_t { none, manualSwitch, automaticSwitch, inverterPassThrough };
template <>
struct ChoiceWords<Arrangement> {
  static constexpr std::array<std::string_view, 4> words = {"none", "manual_switch", "automatic_switch",
                                                            "inverter_pass_through"};
};

/// What keeps two sources apart.
enum class TransferListing : std::uint8_t { unknown, listedTransferEquipment, listedInterlock, none };
template <>
struct ChoiceWords<TransferListing> {
  static constexpr std::array<std::string_view, 4> words = {"unknown", "listed_transfer_equipment",
                                                            "listed_interlock", "none"};
};

/// By which rule the source of the backup subpanel is large enough.
enum class CapacityPath : std::uint8_t { notChosen, manual, automaticFull, managed, island, powerControl };
template <>
struct ChoiceWords<CapacityPath> {
  static constexpr std::array<std::string_view, 6> words = {
      "not_chosen", "manual_transfer", "automatic_full", "managed_load", "island_rule", "power_control"};
};

/// What disconnects a managed load.
enum class ShedBy : std::uint8_t { unknown, inverter, energyManagement, transferEquipment, byHand };
template <>
struct ChoiceWords<ShedBy> {
  static constexpr std::array<std::string_view, 5> words = {"unknown", "inverter", "energy_management",
                                                            "transfer_equipment", "by_hand"};
};

/// A load that is switched off so that others may run.
struct ManagedLoad : Record {
  LoadId load;
  Choice<ShedBy> shedBy = ShedBy::unknown;
  Choice<Answer> listed = Answer::unknown;       ///< what sheds it is listed for energy management
  Choice<Answer> offInOutage = Answer::unknown;  ///< it stays off as long as the outage lasts
  std::string returns;                           ///< how it comes back: by itself, after a delay, by hand
  friend bool operator==(const ManagedLoad&, const ManagedLoad&) = default;
};

struct Transfer : Record {
  Choice<Arrangement> arrangement = Arrangement::none;
  Choice<TransferListing> listing = TransferListing::unknown;
  Choice<Answer> switchesNeutral = Answer::unknown;
  std::optional<RatingAmperes> rating;  ///< of the switch or the relay
  std::optional<VoltAmperes>
      calculatedLoad;  ///< of the backup feeder, typed in: stands before the computed one
  std::optional<VoltAmperes> continuousPart;  ///< the part of it that is continuous
  std::optional<VoltAmperes> neutralLoad;     ///< largest net load between neutral and one leg
  Choice<CapacityPath> capacityPath = CapacityPath::notChosen;
  std::string capacityAgreedBy;  ///< who of the authority agreed to it
  std::string capacityAgreedOn;  ///< ISO date
  Choice<Answer> capacityAgreedInWriting = Answer::unknown;
  std::optional<VoltAmperes> managedLimit;         ///< most that the load management connects at one time
  Choice<Answer> managedListed = Answer::unknown;  ///< as energy management
  Choice<Answer> serviceBondUpstream =
      Answer::unknown;  ///< the service disconnect, and its bond, stand ahead of the main panel
  Choice<Answer> serviceDisconnectMoved =
      Answer::unknown;                      ///< by this work, out of the main panel to a place ahead of it
  Choice<Answer> bypass = Answer::unknown;  ///< a switch that feeds the backup subpanel around the inverter
  Choice<Answer> bypassBreaksFirst = Answer::unknown;  ///< it opens one side before it closes the other
  Choice<Answer> bypassSwitchesNeutral = Answer::unknown;
  std::vector<ManagedLoad> managed;
  std::string notes;
  friend bool operator==(const Transfer&, const Transfer&) = default;
};

/// Which piece of the way a run is.
enum class Segment : std::uint8_t {
  mainToSwitch,
  inverterToSwitch,
  switchToBackup,
  mainToInverter,
  inverterToBackup,
  bypass,         ///< main to backup around the inverter
  generatorInlet  ///< generator to where it comes in
};
template <>
struct ChoiceWords<Segment> {
  static constexpr std::array<std::string_view, 7> words = {
      "main_to_switch", "inverter_to_switch", "switch_to_backup", "main_to_inverter", "inverter_to_backup",
      "bypass",         "generator_inlet"};
};

enum class RacewayKind : std::uint8_t { pvc, steel, aluminium, none };
template <>
struct ChoiceWords<RacewayKind> {
  static constexpr std::array<std::string_view, 4> words = {"pvc", "steel", "aluminium", "none"};
};

enum class FeederWiring : std::uint8_t { singles, nmCable, serviceEntranceCable };
template <>
struct ChoiceWords<FeederWiring> {
  static constexpr std::array<std::string_view, 3> words = {"singles", "nm_cable", "service_entrance_cable"};
};

/// Temperature rating of the insulation.
enum class Insulation : std::uint8_t { c60, c75, c90 };
template <>
struct ChoiceWords<Insulation> {
  static constexpr std::array<std::string_view, 3> words = {"60", "75", "90"};
};

struct FeederRun : Record {
  FeederRunId id;
  Choice<Segment> segment = Segment::mainToSwitch;
  Length length;
  Choice<FeederWiring> wiring = FeederWiring::singles;
  Choice<RacewayKind> raceway = RacewayKind::pvc;
  Choice<Metal> metal = Metal::copper;
  Choice<Insulation> insulation = Insulation::c90;
  Temperature ambient = Temperature::milliCelsius(30000);
  std::int32_t currentCarrying = 2;  ///< conductors that count in the same raceway, these two included
  RacewayId inRaceway;               ///< entered as a raceway of its own: then what is in it is counted
  Choice<Answer> terminalsFrom75 = Answer::unknown;  ///< marked 75 C at the supply end
  Choice<Answer> terminalsTo75 = Answer::unknown;    ///< and at the load end
  std::optional<ConductorSize> fixedConductor;       ///< in the wall already: checked, not chosen
  std::optional<ConductorSize> fixedNeutral;
  std::optional<ConductorSize> fixedGround;
  std::optional<RatingAmperes> fixedDevice;
  std::string notes;
  friend bool operator==(const FeederRun&, const FeederRun&) = default;
};

/// The cable between battery and inverter, of one unit.
struct DcCable : Record {
  Length length;  ///< one way
  Choice<Metal> metal = Metal::copper;
  Choice<Insulation> insulation = Insulation::c75;
  Temperature ambient = Temperature::milliCelsius(30000);
  Choice<Answer> terminals75 = Answer::unknown;  ///< marked for 75 C at both ends
  Choice<Answer> freeAir = Answer::no;           ///< single cables in free air: another table than 310.16
  std::optional<ConductorSize> instructionsConductor;  ///< that the listed instructions ask for
  std::optional<RatingAmperes> instructionsDevice;     ///< fuse or breaker of the listed instructions
  std::optional<ConductorSize> fixedConductor;         ///< in place already: checked, not chosen
  std::optional<RatingAmperes> fixedDevice;
  Choice<Answer> fineStranded = Answer::unknown;
  Choice<Answer> lugsListed = Answer::unknown;  ///< lugs or ferrules listed for fine strands
  std::string notes;
  friend bool operator==(const DcCable&, const DcCable&) = default;
};

/// What a person keeps in this plan to take again in it. Its entries belong to no circuit and no place: loads
/// and panels have no id here, and nothing feeds the panels.
struct OwnLists : Record {
  std::vector<Load> loads;
  std::vector<Inverter> inverters;
  std::vector<Battery> batteries;
  std::vector<Panel> panels;
  friend bool operator==(const OwnLists&, const OwnLists&) = default;
};

/// The outage that is looked at.
struct Scenario : Record {
  std::int32_t month = 1;     ///< 1 to 12
  TimeOfDay start{18 * 60};   ///< when the power fails
  Fraction startCharge{1.0};  ///< of capacity now
  friend bool operator==(const Scenario&, const Scenario&) = default;
};

}  // namespace stayalight
