// What each segment has to carry.

#include <algorithm>

#include "core/wiring/drop.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;
using Phasor = std::complex<double>;

constexpr MessageId kNoCalculatedLoad{"wiring.missing.calculated_load"};
constexpr MessageId kNoRatedOutput{"wiring.missing.rated_output"};
constexpr MessageId kNoChargeLimit{"wiring.missing.charge_limit"};
constexpr MessageId kAddsUnknown{"wiring.missing.adds"};
constexpr MessageId kNoGeneratorOutput{"wiring.missing.generator_output"};

// A part of a load with the step that it came from.
struct Part {
  AcAmperes current;
  StepIndex step = kNoStep;
};

Part sum(const Part& a, const Part& b, Working* working) {
  Part total{a.current + b.current, kNoStep};
  if (working != nullptr) {
    total.step = record(
        *working, FormulaId{"wiring.load_sum"}, RuleId{}, total.current.count(), "A",
        {fromStep("I", a.current.count(), "A", a.step), fromStep("I", b.current.count(), "A", b.step)});
  }
  return total;
}

AcVolts loadVolts(const SystemVoltages& system) {
  return system.single ? system.legToNeutral : system.legToLeg;
}

struct Loads {
  const Plan& plan;
  const HourFigures& hour;
  const InverterLimits& limits;
  const FeederLoad& feeder;
  Working* working;

  [[nodiscard]] Part ofPower(double power, std::string_view unit, const SystemVoltages& system,
                             const std::string& from) const {
    const AcVolts volts = loadVolts(system);
    Part part{AcAmperes(power / volts.count()), kNoStep};
    if (working != nullptr) {
      part.step =
          record(*working, FormulaId{"wiring.load_current"}, RuleId{}, part.current.count(), "A",
                 {fromPlace("S", power, unit, from), fromPlace("V", volts.count(), "V", "nominal volts")});
    }
    return part;
  }

  struct Calculated {
    Part continuous;
    Part other;
  };
  // The load of the backup feeder: typed, and then a part that nobody called continuous is not; or worked
  // out, and then the leg that asks for the larger device, against its own volts.
  [[nodiscard]] std::optional<Calculated> calculated(const SystemVoltages& system) const {
    if (!feeder.load) return std::nullopt;
    if (feeder.heavier) {
      const DemandLeg& leg = *feeder.heavier;
      const double volts = system.legToNeutral.count();
      Calculated found{{leg.continuous / system.legToNeutral},
                       {(leg.load - leg.continuous) / system.legToNeutral}};
      if (working != nullptr) {
        const auto input = [](std::string_view symbol, VoltAmperes value, StepIndex step) {
          return fromStepOr(symbol, value.count(), "VA", step, "calculated load of the heavier leg");
        };
        const StepInput nominal = fromPlace("V", volts, "V", "nominal volts of one leg");
        found.continuous.step =
            record(*working, FormulaId{"wiring.load_current"}, RuleId{}, found.continuous.current.count(),
                   "A", {input("S", leg.continuous, leg.continuousStep), nominal});
        found.other.step = record(
            *working, FormulaId{"wiring.load_rest"}, RuleId{}, found.other.current.count(), "A",
            {input("S", leg.load, leg.loadStep), input("C", leg.continuous, leg.continuousStep), nominal});
      }
      return found;
    }
    const double all = feeder.load->count();
    const double continuous = std::min(all, feeder.continuous.value_or(VoltAmperes()).count());
    return Calculated{ofPower(continuous, "VA", system, "continuous part of the calculated load"),
                      ofPower(all - continuous, "VA", system, "rest of the calculated load")};
  }

  [[nodiscard]] std::optional<Part> charging(const SystemVoltages& system) const {
    if (!plan.inverter->chargeLimit) return std::nullopt;
    const double units = std::max(1, plan.inverter->units);
    return ofPower(plan.inverter->chargeLimit->count() * units, "W", system, "charge limit of the inverter");
  }

  // The most a leg of the output carries all day: the label's amperes, else its apparent power over the legs.
  [[nodiscard]] std::optional<Part> ratedOutput(const SystemVoltages& system) const {
    std::optional<Part> rated;
    if (limits.totalApparent && !plan.inverter->legCurrent) {
      rated = ofPower(limits.totalApparent->count(), "VA", system, "rated output of the inverter");
    }
    if (limits.leg && (!rated || *limits.leg > rated->current)) {
      rated = Part{*limits.leg, kNoStep};
      if (working != nullptr) {
        rated->step = record(
            *working, FormulaId{"wiring.output_current"}, RuleId{"source.device"}, limits.leg->count(), "A",
            {fromPlace("I", limits.leg->count(), "A", "rated output of one leg of the inverter")});
      }
    }
    return rated;
  }

  // Of one leg of the generator: its nameplate, else the watts at unity power factor.
  [[nodiscard]] std::optional<Part> generatorCurrent(const SystemVoltages& system) const {
    const Generator& generator = *plan.generator;
    if (!generator.ratedCurrent) {
      if (!generator.continuous) return std::nullopt;
      return ofPower(generator.continuous->count(), "W", system, "running watts of the generator");
    }
    Part rated{*generator.ratedCurrent, kNoStep};
    if (working != nullptr) {
      rated.step = record(*working, FormulaId{"wiring.output_current"}, RuleId{"generator.conductor"},
                          rated.current.count(), "A",
                          {fromPlace("I", rated.current.count(), "A", "rated current of the generator")});
    }
    return rated;
  }
  // Its own breaker lets no more through than its rating; without one, 445.13(A) adds to the nameplate
  // current.
  [[nodiscard]] std::optional<Part> generatorLoad(const SystemVoltages& system, double factor) const {
    std::optional<Part> rated = generatorCurrent(system);
    if (!rated) return rated;
    if (const auto& device = plan.generator->device) {
      if (device->amperes() >= rated->current) return rated;
      Part limited{device->amperes(), kNoStep};
      if (working != nullptr) {
        limited.step = record(*working, FormulaId{"wiring.output_current"}, RuleId{"generator.conductor"},
                              limited.current.count(), "A",
                              {fromPlace("I", limited.current.count(), "A", "breaker of the generator")});
      }
      return limited;
    }
    Part raised{rated->current * factor, kNoStep};
    if (working != nullptr) {
      raised.step = record(*working, FormulaId{"wiring.generator_conductor"}, RuleId{"generator.conductor"},
                           raised.current.count(), "A",
                           {fromPlace("k", factor, "", "factor on the generator's current"),
                            fromStep("I", rated->current.count(), "A", rated->step)});
    }
    return raised;
  }

  [[nodiscard]] std::optional<RatingAmperes> labelMaximum() const {
    const auto& entered = plan.inverter->maximumOutputDevice;
    if (!entered) return std::nullopt;
    return RatingAmperes(entered->count() * std::max(1, plan.inverter->units));
  }

  // Largest net load between neutral and one leg.
  [[nodiscard]] std::optional<AcAmperes> neutralLoad(const SystemVoltages& system) const {
    if (feeder.neutral) return *feeder.neutral / system.legToNeutral;
    // A typed load stands for circuits that are not entered; what they send back is not known.
    if (feeder.typed) return std::nullopt;
    if (hour.neutralWorst > AcAmperes(0.0)) return hour.neutralWorst;
    return std::nullopt;
  }
};

void set(SegmentLoad& load, const std::optional<Part>& continuous, const std::optional<Part>& other) {
  if (continuous) {
    load.continuous = continuous->current;
    load.continuousStep = continuous->step;
  }
  if (other) {
    load.other = other->current;
    load.otherStep = other->step;
  }
  if (continuous || other)
    load.operating = load.continuous.value_or(AcAmperes()) + load.other.value_or(AcAmperes());
}

void lacks(SegmentLoad& load, MessageId what) {
  load.complete = false;
  load.missing.push_back(say(what));
}

std::optional<AcAmperes> larger(const std::optional<AcAmperes>& a, const std::optional<AcAmperes>& b) {
  if (!a || !b) return a ? a : b;
  return std::max(*a, *b);
}

double minimumOf(const SegmentLoad& load, double factor) {
  return load.continuous.value_or(AcAmperes()).count() * factor + load.other.value_or(AcAmperes()).count();
}

// The calculated load's legs (those that operate, where nothing is calculated) scaled until the heavier one
// carries `load`, at the angles of what operates; legs in balance where nothing is known of them.
std::array<Phasor, 2> phasors(const std::optional<AcAmperes>& load, const FeederLoad& calculated,
                              const LegPower& operating, const SystemVoltages& system) {
  if (!load) return {};
  const Currents now = currents(operating, system);
  std::array<double, 2> sizes = {std::abs(now.leg[0]), std::abs(now.leg[1])};
  if (calculated.legs && !system.single)
    sizes = {(*calculated.legs)[0].count(), (*calculated.legs)[1].count()};
  const double heavier = std::max(sizes[0], sizes[1]);
  if (heavier <= 0.0) {
    if (system.single) return {Phasor(load->count(), 0.0), Phasor()};
    sizes = {1.0, 1.0};
  }
  std::array<Phasor, 2> out;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const std::size_t i = index(leg);
    const Phasor along = std::abs(now.leg[i]) > 0.0 ? now.leg[i] : legVolts(leg, system, now.leg[1]);
    out[i] = along / std::abs(along) * (sizes[i] / std::max(sizes[0], sizes[1]) * load->count());
  }
  return out;
}

// A current between the legs, in phase with their volts, in the order of phases that the operating load
// stands in.
std::array<Phasor, 2> lineToLine(AcAmperes current, const LegPower& operating, const SystemVoltages& system) {
  const Phasor currentOfL2 = currents(operating, system).leg[1];
  const Phasor between = legVolts(Leg::l1, system, currentOfL2) - legVolts(Leg::l2, system, currentOfL2);
  const Phasor phasor =
      std::abs(between) > 0.0 ? between / std::abs(between) * current.count() : Phasor(current.count());
  return {phasor, -phasor};
}

}  // namespace

std::vector<SegmentLoad> segmentLoads(const Plan& plan, const HourFigures& hour, const LegPower& operating,
                                      const InverterLimits& limits, const FeederLoad& feeder,
                                      Working* working, const Tables& tables) {
  const SystemVoltages service = voltages(plan, Mode::ordinary, tables);
  const SystemVoltages output = voltages(plan, Mode::outage, tables);
  const SystemVoltages ofGenerator = voltages(plan, Mode::generator, tables);
  const bool passThrough = plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  const double factor = continuousFactor(tables).count();
  const Loads from{plan, hour, limits, feeder, working};

  std::vector<SegmentLoad> loads;
  for (const Segment segment : segments(plan)) {
    SegmentLoad load;
    load.segment = segment;
    const WorkingOf about(working, workingSubject(segment));
    const bool inverterSide = segment == Segment::inverterToSwitch || segment == Segment::inverterToBackup;
    const SystemVoltages& system = inverterSide                         ? output
                                   : segment == Segment::generatorInlet ? ofGenerator
                                                                        : service;
    load.neutral = from.neutralLoad(system);
    load.neutralOperating = currents(operating, system).neutralMagnitude();
    std::array<Phasor, 2> charge{};

    switch (segment) {
      case Segment::mainToSwitch:
      case Segment::bypass:
        if (const auto calculated = from.calculated(system)) {
          set(load, calculated->continuous, calculated->other);
        } else {
          lacks(load, kNoCalculatedLoad);
        }
        break;
      case Segment::inverterToSwitch: {
        load.labelMaximum = from.labelMaximum();
        const auto rated = from.ratedOutput(system);
        set(load, rated, std::nullopt);
        if (!rated) lacks(load, kNoRatedOutput);
        break;
      }
      case Segment::mainToInverter: {
        const auto charging = from.charging(system);
        if (charging) charge = lineToLine(charging->current, operating, system);
        if (!charging) lacks(load, kNoChargeLimit);
        if (!passThrough) {
          // Beside a switch the input only charges the battery.
          set(load, charging, std::nullopt);
          load.neutral = AcAmperes();
          load.neutralOperating = AcAmperes();
          break;
        }
        const auto calculated = from.calculated(system);
        if (!calculated) lacks(load, kNoCalculatedLoad);
        if (calculated && charging) {
          set(load, sum(calculated->continuous, *charging, working), calculated->other);
        } else if (calculated) {
          set(load, calculated->continuous, calculated->other);
        } else {
          set(load, charging, std::nullopt);
        }
        break;
      }
      case Segment::inverterToBackup: {
        load.labelMaximum = from.labelMaximum();
        const auto rated = from.ratedOutput(system);
        const auto calculated = from.calculated(service);
        if (!rated) lacks(load, kNoRatedOutput);
        if (!calculated) lacks(load, kNoCalculatedLoad);
        if (plan.inverter->addsToPassThrough.is(Answer::unknown)) lacks(load, kAddsUnknown);
        SegmentLoad outage = load;
        set(outage, rated, std::nullopt);
        SegmentLoad ordinary = load;
        if (calculated) set(ordinary, calculated->continuous, calculated->other);
        if (plan.inverter->addsToPassThrough.is(Answer::yes) && rated && calculated) {
          set(load, sum(calculated->continuous, *rated, working), calculated->other);
        } else {
          // Each state alone: the device for the larger minimum, the conductor for the larger load as well.
          load = minimumOf(outage, factor) >= minimumOf(ordinary, factor) ? outage : ordinary;
          load.operating = larger(outage.operating, ordinary.operating);
        }
        break;
      }
      case Segment::generatorInlet: {
        const auto current =
            from.generatorLoad(system, codeNumber(CodeNumber::generatorConductorFactor, tables));
        set(load, std::nullopt, current);
        if (!current) lacks(load, kNoGeneratorOutput);
        load.neutral = load.operating;  // 120 V may be drawn to the full on one leg
        break;
      }
      case Segment::switchToBackup: {
        // The segments ahead of the switch stand before it in the list.
        const SegmentLoad* heavier = nullptr;
        for (const SegmentLoad& ahead : loads) {
          if (ahead.segment == Segment::mainToInverter) continue;
          // What comes in at the inverter's input reaches the switch as the inverter's output.
          if (ahead.segment == Segment::generatorInlet &&
              plan.generator->comesIn.is(GeneratorPoint::inverterInput))
            continue;
          if (heavier == nullptr || minimumOf(ahead, factor) > minimumOf(*heavier, factor)) heavier = &ahead;
          load.operating = larger(load.operating, ahead.operating);
          load.complete = load.complete && ahead.complete;
          load.missing.insert(load.missing.end(), ahead.missing.begin(), ahead.missing.end());
        }
        if (heavier != nullptr) {
          load.continuous = heavier->continuous;
          load.other = heavier->other;
          load.continuousStep = heavier->continuousStep;
          load.otherStep = heavier->otherStep;
        }
        break;
      }
    }

    const bool chargingOnly = segment == Segment::mainToInverter && !passThrough;
    std::optional<AcAmperes> loadOnLegs = load.operating;
    if (segment == Segment::mainToInverter && loadOnLegs) *loadOnLegs -= AcAmperes(std::abs(charge[0]));
    if (!chargingOnly) load.legCurrent = phasors(loadOnLegs, feeder, operating, system);
    for (std::size_t leg = 0; leg < 2; ++leg) load.legCurrent[leg] += charge[leg];
    loads.push_back(std::move(load));
  }
  return loads;
}

}  // namespace stayalight
