#pragma once

// Inverter and battery, as their labels and data sheets say.

#include "core/plan/circuit.h"

namespace stayalight {

/// One point of the overload curve: for up to `time` it carries this much. Watts of the whole unit, amperes
/// on a leg; either may be missing and then follows from the other at the nominal voltage.
struct OverloadPoint : Record {
  Seconds time;
  std::optional<Watts> watts;
  std::optional<AcAmperes> legCurrent;
  friend bool operator==(const OverloadPoint&, const OverloadPoint&) = default;
};

/// One point of a label's efficiency curve (idle draw included): output over rated output, efficiency.
struct EfficiencyPoint : Record {
  Fraction load;
  Fraction efficiency;
  friend bool operator==(const EfficiencyPoint&, const EfficiencyPoint&) = default;
};

enum class InverterOutput : std::uint8_t { splitPhase120_240, wye120_208, single120 };
template <>
struct ChoiceWords<InverterOutput> {
  static constexpr std::array<std::string_view, 3> words = {"120/240", "120/208", "120"};
};

/// What the unit does with neutral and ground while it runs from the battery.
enum class BondBehaviour : std::uint8_t { unknown, neverBonds, bondsInIsland, alwaysBonded };
template <>
struct ChoiceWords<BondBehaviour> {
  static constexpr std::array<std::string_view, 4> words = {"unknown", "never", "in_island", "always"};
};

struct Inverter : Record {
  std::string name;
  std::int32_t units = 1;  ///< set to run in parallel; ratings add
  Choice<InverterOutput> output = InverterOutput::splitPhase120_240;
  std::optional<Watts> continuous;  ///< of one unit, all day
  std::optional<VoltAmperes> continuousApparent;
  std::optional<Watts> legContinuous;          ///< most on one leg; none: half of the total
  std::optional<AcAmperes> legCurrent;         ///< most amperes on one leg; none: from the watts
  std::vector<OverloadPoint> overload;         ///< times ascending
  std::optional<Fraction> marginalEfficiency;  ///< with `idle`; idle kept apart
  std::optional<BatteryWatts> idle;            ///< drawn from the battery with nothing on
  std::vector<EfficiencyPoint> efficiency;     ///< label curve, idle inside; then the two above are not used
  std::optional<DcVolts> lowestInputVoltage;   ///< at rated output
  std::optional<RatingAmperes> acInput;        ///< input rating
  std::optional<RatingAmperes> passThrough;    ///< relay rating
  Choice<Answer> addsToPassThrough = Answer::unknown;  ///< can add its own output to what passes through
  std::optional<Watts> chargeLimit;                    ///< most it takes from the utility to charge
  std::optional<RatingAmperes> maximumOutputDevice;    ///< of its label
  Choice<BondBehaviour> bond = BondBehaviour::unknown;
  std::optional<Seconds> transferGap;
  Choice<Answer> powerControlListed = Answer::unknown;  ///< as a power control system for overload control
  Choice<Answer> multimode = Answer::unknown;           ///< works with the utility and alone
  std::optional<VoltAmperes> controlSetting;            ///< of the power control
  Choice<Answer> reconnectsByHand = Answer::unknown;    ///< after it shut down on overload
  std::string notes;
  friend bool operator==(const Inverter&, const Inverter&) = default;
};

enum class BatteryPlace : std::uint8_t { conditioned, basement, garage, outdoors };
template <>
struct ChoiceWords<BatteryPlace> {
  static constexpr std::array<std::string_view, 4> words = {"conditioned", "basement", "garage", "outdoors"};
};

struct Battery : Record {
  std::string name;
  std::int32_t packs = 1;
  std::optional<double> nominalKilowattHours;  ///< of one pack, new, at 25 C
  Graded<Fraction> health;                     ///< capacity left, 1 when new
  Fraction reserve{0.2};                       ///< kept while the utility is there, of capacity now
  Fraction floor{0.1};                         ///< lowest charge in an outage, of capacity now
  Fraction restart{0.15};                      ///< charge at which it starts again by itself
  std::optional<DcAmperes> continuousCurrent;  ///< of one pack
  std::optional<DcAmperes> peakCurrent;
  std::optional<Seconds> peakTime;
  Choice<BatteryPlace> place = BatteryPlace::conditioned;
  std::optional<Temperature> cellTemperature;  ///< mean of the cells in the month shown; none: 25 C indoors
  Fraction chargeEfficiency{0.95};
  std::optional<Temperature> chargeCutOff;
  std::string notes;
  friend bool operator==(const Battery&, const Battery&) = default;
};

enum class SolarCoupling : std::uint8_t { none, battery, alternatingCurrent };
template <>
struct ChoiceWords<SolarCoupling> {
  static constexpr std::array<std::string_view, 3> words = {"none", "battery_side", "ac_side"};
};

/// Solar modules, on the battery's side of the inverter or through an inverter of their own.
struct Solar : Record {
  std::string name;
  Choice<SolarCoupling> coupling = SolarCoupling::none;  ///< none: there is no solar
  std::optional<Watts> modules;                          ///< rated, direct current
  std::optional<Watts> output;                           ///< greatest output of its own inverter
  PanelId panel;                                         ///< where that inverter lands
  Choice<Answer> heldBack =
      Answer::unknown;             ///< the battery's inverter can hold its output back in an outage
  std::optional<Degrees> tilt;     ///< from level
  std::optional<Degrees> azimuth;  ///< clockwise from north
  std::optional<Fraction> losses;  ///< of soiling, wiring and its inverter together
  std::string notes;
  friend bool operator==(const Solar&, const Solar&) = default;
};

/// Where a generator comes in; none: there is no generator.
enum class GeneratorPoint : std::uint8_t { none, transfer, inverterInput, mainPanel };
template <>
struct ChoiceWords<GeneratorPoint> {
  static constexpr std::array<std::string_view, 4> words = {"none", "transfer", "inverter_input",
                                                            "main_panel"};
};

enum class GeneratorNeutral : std::uint8_t { unknown, bonded, floating };
template <>
struct ChoiceWords<GeneratorNeutral> {
  static constexpr std::array<std::string_view, 3> words = {"unknown", "bonded", "floating"};
};

enum class Fuel : std::uint8_t { unknown, gasoline, propane, naturalGas, diesel };
template <>
struct ChoiceWords<Fuel> {
  static constexpr std::array<std::string_view, 5> words = {"unknown", "gasoline", "propane", "natural_gas",
                                                            "diesel"};
};

struct Generator : Record {
  std::string name;
  Choice<GeneratorPoint> comesIn = GeneratorPoint::none;
  std::optional<Watts> continuous;        ///< rated running watts, on the fuel it is run with
  std::optional<AcAmperes> ratedCurrent;  ///< of one leg; none: from the watts
  Choice<InverterOutput> output = InverterOutput::splitPhase120_240;
  Choice<GeneratorNeutral> neutral = GeneratorNeutral::unknown;
  std::optional<RatingAmperes> device;  ///< its own breaker; none: it has none
  std::optional<RatingAmperes> inlet;   ///< rating of the inlet it is plugged into; none: wired in
  Choice<Answer> switchesNeutral = Answer::unknown;  ///< the transfer between it and the utility does
  Choice<Fuel> fuel = Fuel::unknown;
  std::optional<Hours> fuelHours;                 ///< at half load, with the fuel that is kept
  Choice<Answer> alarmsFitted = Answer::unknown;  ///< carbon monoxide alarms where people sleep
  std::string notes;
  friend bool operator==(const Generator&, const Generator&) = default;
};

}  // namespace stayalight
