#include "core/wiring/dc_cable.h"

#include "core/code/devices.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kNoOutput{"wiring.dc.no_output"};
constexpr MessageId kNoVoltage{"wiring.dc.no_voltage"};
constexpr MessageId kNoEfficiency{"wiring.dc.no_efficiency"};
constexpr MessageId kFreeAir{"wiring.dc.free_air"};
constexpr MessageId kDevice{"wiring.dc.device_small"};
constexpr MessageId kConductor{"wiring.dc.conductor_small"};
constexpr MessageId kNotProtected{"wiring.over.not_protected"};
constexpr MessageId kInstructions{"wiring.dc.below_instructions"};
constexpr MessageId kNothing{"wiring.over.no_conductor"};
constexpr MessageId kLugs{"wiring.dc.lugs"};
constexpr MessageId kLugsUnknown{"wiring.dc.lugs_unknown"};
constexpr MessageId kNoLength{"wiring.dc.no_length"};
constexpr MessageId kDeviceInPlace{"wiring.dc.device_in_place"};
constexpr MessageId kByInstructions{"wiring.dc.by_instructions"};
constexpr MessageId kNextStandard{"wiring.dc.next_standard"};
constexpr MessageId kDeviceInstructions{"wiring.dc.device_above_instructions"};
constexpr MessageId kAbout{"wiring.dc.about"};
constexpr MessageId kFromLabel{"wiring.dc.lowest_voltage"};

constexpr double kSlack = 1.0 + 1e-9;

void findCurrent(const Plan& plan, DcCableFigures& figures, Working* working, const Tables& tables) {
  Inverter one = *plan.inverter;
  one.units = 1;
  if (!one.continuous) figures.notKnown.push_back(say(kNoOutput));
  if (!one.lowestInputVoltage) figures.notKnown.push_back(say(kNoVoltage));
  const std::optional<BatteryWatts> power =
      one.continuous ? batteryPower(one, *one.continuous) : std::nullopt;
  if (one.continuous && !power) figures.notKnown.push_back(say(kNoEfficiency));
  if (!power || !one.lowestInputVoltage) return;
  figures.current = DcAmperes(power->count() / one.lowestInputVoltage->count());
  const double factor = continuousFactor(tables).count();
  figures.required = AcAmperes(figures.current->count() * factor);
  if (working == nullptr) return;
  const StepIndex current =
      record(*working, FormulaId{"wiring.dc_current"}, RuleId{"ess.conductor"}, figures.current->count(), "A",
             {fromPlace("P", power->count(), "W", "battery's power at rated output"),
              fromPlace("V", one.lowestInputVoltage->count(), "V", render(say(kFromLabel), plainEnglish()))});
  record(
      *working, FormulaId{"wiring.dc_required"}, RuleId{"continuous.factor"}, figures.required->count(), "A",
      {fromStep("I", figures.current->count(), "A", current), fromPlace("k", factor, "", "continuous load")});
}

void chooseDevice(const DcCable& cable, DcCableFigures& figures, Edition edition, Working* working,
                  const Tables& tables) {
  const std::optional<RatingAmperes> standard =
      figures.required ? nextStandardRating(*figures.required, edition, tables) : std::nullopt;
  figures.deviceRule = RuleId{"source.label_device"};
  if (cable.fixedDevice) {
    figures.device = cable.fixedDevice;
    figures.deviceGoverns = say(kDeviceInPlace);
  } else if (cable.instructionsDevice) {
    figures.device = cable.instructionsDevice;
    figures.deviceGoverns = say(kByInstructions);
  } else if (standard) {
    figures.device = standard;
    figures.deviceGoverns = say(kNextStandard, amperes(*figures.required));
    figures.deviceRule = RuleId{"rating.standard"};
  }
  if (working != nullptr && standard) {
    record(*working, FormulaId{"wiring.standard_rating"}, RuleId{"rating.standard"},
           static_cast<double>(standard->count()), "A",
           {fromPlace("R", static_cast<double>(standard->count()), "A",
                      standardRatingCell(*standard, edition, tables)),
            fromPlace("Imin", figures.required->count(), "A", "125 % of the cable's current")});
  }
  if (working != nullptr && cable.instructionsDevice) {
    const auto asked = static_cast<double>(cable.instructionsDevice->count());
    record(*working, FormulaId{"wiring.dc_instructions"}, RuleId{"source.label_device"}, asked, "A",
           {fromPlace("I", asked, "A", "fuse or breaker of the listed instructions, entered")});
  }
  if (figures.device && figures.required &&
      figures.device->amperes().count() * kSlack < figures.required->count()) {
    figures.deviceTooSmall = true;
    figures.over.push_back(say(kDevice, amperes(*figures.device), amperes(*figures.required)));
  }
  if (cable.fixedDevice && cable.instructionsDevice && *cable.fixedDevice > *cable.instructionsDevice) {
    figures.aboveInstructions = true;
    figures.over.push_back(
        say(kDeviceInstructions, amperes(*cable.fixedDevice), amperes(*cable.instructionsDevice)));
  }
}

// Single cables in free air: what the listed instructions give holds, the tables here do not.
void takeInstructions(const DcCable& cable, DcCableFigures& figures) {
  figures.conductor.size = cable.fixedConductor ? cable.fixedConductor : cable.instructionsConductor;
  figures.conductor.metal = cable.metal.valueOr(Metal::copper);
  figures.conductor.fixed = cable.fixedConductor.has_value();
  figures.byInstructions = cable.instructionsConductor.has_value();
  if (!cable.instructionsConductor || !cable.instructionsDevice) {
    figures.notKnown.push_back(say(kFreeAir));
    return;
  }
  figures.conductor.governs = say(kByInstructions);
  figures.conductor.rule = RuleId{"source.label_device"};
  // The fuse of the instructions is the one their cable was chosen for.
  if (figures.device && *figures.device > *cable.instructionsDevice) figures.conductor.notProtected = true;
}

void chooseConductorOf(const DcCable& cable, DcCableFigures& figures, Edition edition, Working* working,
                       const Tables& tables) {
  ConductorQuestion question;
  question.terminalLoad = figures.required;
  question.load = figures.required;
  question.device = figures.device;
  question.fixed = cable.fixedConductor;
  question.conditions.metal = cable.metal.valueOr(Metal::copper);
  question.conditions.insulation = static_cast<TemperatureColumn>(cable.insulation.valueOr(Insulation::c60));
  question.conditions.length = cable.length;
  question.conditions.ambient = cable.ambient;
  question.conditions.terminals75 = cable.terminals75.is(Answer::yes);
  // Chosen freely, it is never smaller than the listed instructions ask for.
  if (!question.fixed && cable.instructionsConductor) {
    const ConductorChoice byTable = chooseConductor(question, edition, nullptr, tables);
    figures.byInstructions = byTable.size && *byTable.size < *cable.instructionsConductor;
    if (figures.byInstructions) question.fixed = cable.instructionsConductor;
  }
  figures.conductor = chooseConductor(question, edition, working, tables);
  if (figures.byInstructions) {
    figures.conductor.fixed = false;
    figures.conductor.governs = say(kByInstructions);
    figures.conductor.rule = RuleId{"source.label_device"};
  }
  if (figures.required && !figures.conductor.size)
    figures.over.push_back(say(kNothing, std::vector{figures.conductor.governs}));
  if (figures.conductor.tooSmall)
    figures.over.push_back(say(kConductor, std::vector{figures.conductor.governs}));
}

void chooseParts(const DcCable& cable, DcCableFigures& figures, Edition edition, Working* working,
                 const Tables& tables) {
  chooseDevice(cable, figures, edition, working, tables);
  if (cable.freeAir.is(Answer::yes)) {
    takeInstructions(cable, figures);
  } else {
    chooseConductorOf(cable, figures, edition, working, tables);
  }
  const ConductorChoice& conductor = figures.conductor;
  if (conductor.notProtected && conductor.size && figures.device) {
    figures.over.push_back(
        say(kNotProtected, conductorName(*conductor.size, conductor.metal), amperes(*figures.device)));
  }
  if (cable.fixedConductor && cable.instructionsConductor &&
      *cable.fixedConductor < *cable.instructionsConductor) {
    figures.belowInstructions = true;
    figures.over.push_back(say(kInstructions, conductorName(*cable.instructionsConductor, conductor.metal)));
  }
  if (cable.length.inMicrometres() == 0) figures.notKnown.push_back(say(kNoLength));
  if (cable.fineStranded.is(Answer::yes)) {
    if (cable.lugsListed.is(Answer::no)) figures.over.push_back(say(kLugs));
    if (cable.lugsListed.is(Answer::unknown)) figures.notKnown.push_back(say(kLugsUnknown));
  }
}

void findDrop(const DcCable& cable, const Inverter& inverter, DcCableFigures& figures, Working* working,
              const Tables& tables) {
  if (!figures.current || !figures.conductor.size || cable.length.inMicrometres() == 0) return;
  const OhmsPerKilofoot ohms =
      directCurrentResistance(*figures.conductor.size, figures.conductor.metal, tables);
  const double kilofeet = cable.length.inFeet() / 1000.0;
  figures.drop = DcVolts(2.0 * kilofeet * ohms.count() * figures.current->count());
  figures.dropFraction = figures.drop->count() / inverter.lowestInputVoltage->count();
  if (working == nullptr) return;
  record(*working, FormulaId{"wiring.dc_drop"}, RuleId{}, figures.drop->count(), "V",
         {fromPlace("d", kilofeet, "kft", "length of the cable, one way"),
          fromPlace("R", ohms.count(), "ohm/kft",
                    directCurrentResistanceCell(*figures.conductor.size, figures.conductor.metal)),
          fromPlace("I", figures.current->count(), "A", "current at the lowest input voltage")});
}

}  // namespace

WorkingSubject dcCableSubject() { return {say(kAbout), 0}; }

std::optional<DcCableFigures> dcCableFigures(const Plan& plan, Edition edition, Working* working,
                                             const Tables& tables) {
  const Inverter& inverter = *plan.inverter;
  const bool entered = inverter.continuous || inverter.lowestInputVoltage;
  if (!plan.site->country.is(Country::unitedStates) || !entered) return std::nullopt;
  DcCableFigures figures;
  const WorkingOf about(working, dcCableSubject());
  findCurrent(plan, figures, working, tables);
  chooseParts(*plan.dcCable, figures, edition, working, tables);
  findDrop(*plan.dcCable, inverter, figures, working, tables);
  figures.verdict = !figures.over.empty()       ? Verdict::over
                    : !figures.notKnown.empty() ? Verdict::notKnown
                                                : Verdict::within;
  return figures;
}

}  // namespace stayalight
