#include "core/start/motor.h"

#include "core/code/motors.h"
#include "core/use/coincidence.h"

namespace stayalight {
namespace {

constexpr FormulaId kFromCode{"start.from_code_letter"};
constexpr FormulaId kFromClass{"start.from_class"};
constexpr FormulaId kSoft{"start.soft"};
constexpr FormulaId kScaled{"start.scaled"};
constexpr FormulaId kRunning{"start.running"};
constexpr RuleId kCodeRule{"motor.locked_rotor_code"};
constexpr RuleId kTableRule{"motor.locked_rotor_table"};
constexpr RuleId kNoRule{};
constexpr MessageId kSaysNameplate{"start.from_nameplate"};
constexpr MessageId kSaysCode{"start.from_code"};
constexpr MessageId kSaysTable{"start.from_table"};
constexpr MessageId kSaysClass{"start.from_class_range"};
constexpr MessageId kSaysRunning{"start.from_running"};
constexpr MessageId kSaysNothing{"start.from_nothing"};

/// Start current over running current, and seconds above twice the running current.
struct ClassRow {
  Range<double> ratio;
  Range<double> seconds;
};
// By class, in the order of StartClass. Common practice, no source; wide on purpose.
constexpr ClassRow kClasses[] = {
    {{3.0, 6.0, 10.0}, {0.2, 0.5, 3.0}},  // unknown
    {{5.0, 6.0, 8.0}, {0.2, 0.4, 0.6}},   // compressor of a refrigerator or freezer
    {{4.0, 5.5, 7.0}, {0.1, 0.3, 1.0}},   // air conditioner or heat pump, single speed
    {{3.0, 5.0, 7.0}, {0.1, 0.4, 0.8}},   // submersible well pump
    {{4.0, 5.5, 7.0}, {0.2, 0.5, 1.0}},   // sump, jet or ejector pump
    {{2.0, 3.0, 4.0}, {1.0, 2.5, 5.0}},   // furnace blower
    {{3.0, 4.5, 6.0}, {0.2, 0.5, 1.0}},   // washer, garage door
    {{3.0, 5.0, 8.0}, {0.2, 0.5, 1.5}},   // hand tool
};
// A soft starter leaves 30 to 50 % of the start current, over a ramp. Common practice, no source.
constexpr Range<double> kSoftShare{0.3, 0.4, 0.5};
constexpr Range<double> kSoftSeconds{0.5, 1.0, 2.0};
// A drive ramps up and draws no more than it will run with. Common practice, no source.
constexpr Range<double> kDriveShare{1.0, 1.0, 1.1};
constexpr Range<double> kDriveSeconds{5.0, 20.0, 60.0};
// Fractional single-phase motors have much resistance in their windings. Common practice, no source.
constexpr Range<double> kStartPowerFactor{0.4, 0.5, 0.8};

Range<double> plain(const Range<AcAmperes>& r) { return {r.low.count(), r.likely.count(), r.high.count()}; }
Range<double> operator*(const Range<double>& a, const Range<double>& b) {
  return {a.low * b.low, a.likely * b.likely, a.high * b.high};
}
Range<double> operator*(const Range<double>& a, double f) { return {a.low * f, a.likely * f, a.high * f}; }
template <class Q>
Range<Q> typed(const Range<double>& r) {
  return {Q(r.low), Q(r.likely), Q(r.high)};
}

const ClassRow& classOf(const Load& load) {
  return kClasses[static_cast<std::size_t>(load.startClass.valueOr(StartClass::unknown))];
}

/// Column of the locked-rotor table for a motor's rated voltage.
std::optional<MotorVolts> tableColumn(std::int32_t ratedVoltage) {
  if (ratedVoltage >= 100 && ratedVoltage <= 127) return MotorVolts::v115;
  if (ratedVoltage >= 200 && ratedVoltage <= 219) return MotorVolts::v208;
  if (ratedVoltage >= 220 && ratedVoltage <= 277) return MotorVolts::v230;
  return std::nullopt;
}

StepInput input(std::string_view symbol, double value, std::string_view unit, std::string from,
                std::optional<Grade> grade = std::nullopt, StepIndex step = kNoStep) {
  return {symbol, value, unit, grade, step, std::move(from)};
}

/// Start current at the motor's rated voltage, as far as the load's record tells it.
struct Locked {
  Range<double> amperes;
  StartSource source = StartSource::notKnown;
  bool known = true;
  StepInput likely;  ///< the likely value, as an input of the next step
  RuleId rule = kNoRule;
  MessageId says = kSaysNothing;
};

class Derivation {
 public:
  Derivation(const Load& load, const Draw& draw, Working* working, const Tables& tables)
      : load_(load), draw_(draw), working_(working), tables_(tables) {}

  Locked locked() const {
    if (const auto entered = spread(FactKind::startCurrent, load_.lockedRotor))
      return fromNameplate(*entered);
    Locked found;
    if (const auto code = fromCodeLetter())
      found = *code;
    else if (const auto table = fromTable())
      found = *table;
    else
      found = fromClass();
    if (load_.start.is(StartKind::softStart)) soften(found);
    return found;
  }

 private:
  Locked fromNameplate(const Range<AcAmperes>& entered) const {
    Locked out;
    out.amperes = plain(entered);
    out.source = StartSource::nameplate;
    out.says = kSaysNameplate;
    out.likely = input("I", out.amperes.likely, "A", load_.name, load_.lockedRotor.grade);
    return out;
  }

  std::optional<Locked> fromCodeLetter() const {
    if (load_.codeLetter.size() != 1 || !load_.horsepower) return std::nullopt;
    const auto band = codeLetterBand(load_.codeLetter[0], tables_);
    if (!band) return std::nullopt;
    // The safe side of a band is its upper end. The last letter has none: then half again as much, and it is
    // not known.
    constexpr double kOpenEnd = 1.5;
    const double factor = load_.horsepower->count() * 1000.0 / load_.ratedVoltage;
    const double least = band->least.count();
    const double most = band->most ? band->most->count() : least;
    Locked out;
    out.amperes = Range<double>{least, most, band->most ? most : least * kOpenEnd} * factor;
    out.known = band->most.has_value();
    out.source = StartSource::codeLetter;
    out.rule = kCodeRule;
    out.says = kSaysCode;
    out.likely = input("I", out.amperes.likely, "A", codeLetterCell(load_.codeLetter[0]));
    if (working_ != nullptr) {
      out.likely.step = add(kFromCode, kCodeRule, out.amperes.likely,
                            {input("k", most, "kVA/hp", codeLetterCell(load_.codeLetter[0])),
                             input("h", load_.horsepower->count(), "hp", load_.name), ratedVolts()});
    }
    return out;
  }

  std::optional<Locked> fromTable() const {
    const auto column = tableColumn(load_.ratedVoltage);
    if (!column || !load_.horsepower) return std::nullopt;
    const auto cell = lockedRotorCurrent(*load_.horsepower, *column, tables_);
    if (!cell) return std::nullopt;
    // A middle figure for a motor of that size: its spread is that of a typical value.
    Locked out;
    out.amperes = spread(FactKind::startCurrent, Grade::typical, cell->current.count(), {}, {});
    out.source = StartSource::horsepowerTable;
    out.rule = kTableRule;
    out.says = kSaysTable;
    out.likely = input("I", out.amperes.likely, "A", lockedRotorCell(*load_.horsepower, *column, tables_));
    return out;
  }

  Locked fromClass() const {
    const ClassRow& row = classOf(load_);
    const double volts = load_.ratedVoltage;
    const Range<double> running{draw_.apparent.low.count() / volts, draw_.apparent.likely.count() / volts,
                                draw_.apparent.high.count() / volts};
    const bool hasClass = load_.startClass.known() && !load_.startClass.is(StartClass::unknown);
    Locked out;
    out.amperes = row.ratio * running;
    out.source = hasClass && draw_.known ? StartSource::startClass : StartSource::notKnown;
    out.known = false;
    out.says = out.source == StartSource::startClass ? kSaysClass : kSaysNothing;
    out.likely = input("I", out.amperes.likely, "A", load_.name);
    if (working_ != nullptr) {
      out.likely.step =
          add(kFromClass, kNoRule, out.amperes.likely,
              {input("r", row.ratio.likely, "", "start over running current of its class"),
               input("S", draw_.apparent.likely.count(), "VA", load_.name, draw_.grade), ratedVolts()});
    }
    return out;
  }

  void soften(Locked& start) const {
    const double before = start.amperes.likely;
    start.amperes = start.amperes * kSoftShare;
    if (working_ != nullptr) {
      StepInput full = start.likely;
      full.value = before;
      start.likely.step = add(kSoft, start.rule, start.amperes.likely,
                              {input("r", kSoftShare.likely, "", "share a soft starter leaves"), full});
    }
    start.likely.value = start.amperes.likely;
  }

  StepInput ratedVolts() const { return input("V_r", load_.ratedVoltage, "V", load_.name); }

  StepIndex add(FormulaId formula, RuleId rule, double result, std::vector<StepInput> inputs) const {
    Step step;
    step.formula = formula;
    step.rule = rule;
    step.result = result;
    step.unit = AcAmperes::unit();
    step.inputs = std::move(inputs);
    return working_->add(std::move(step));
  }

  const Load& load_;
  const Draw& draw_;
  Working* working_;
  const Tables& tables_;
};

/// A drive without an entered figure: its running current, and its running power factor.
void startsWithDrive(RecordedStart& out, const Load& load, const Draw& draw, AcVolts volts,
                     Working* working) {
  MotorStart& motor = out.motor;
  motor.source = StartSource::running;
  motor.known = draw.known;
  const double v = volts.count();
  const auto over = [v](VoltAmperes s) { return v > 0.0 ? s.count() / v : 0.0; };
  motor.current = typed<AcAmperes>(
      Range<double>{over(draw.apparent.low), over(draw.apparent.likely), over(draw.apparent.high)} *
      kDriveShare);
  if (working == nullptr || v <= 0.0) return;
  Step step;
  step.formula = kRunning;
  step.result = motor.current.likely.count();
  step.unit = AcAmperes::unit();
  step.inputs = {input("r", kDriveShare.likely, "", "start over running current of a drive"),
                 input("S", draw.apparent.likely.count(), "VA", load.name, draw.grade),
                 input("V", v, "V", "nominal")};
  step.note = say(kSaysRunning, load.name);
  out.step = working->add(std::move(step));
}

void startsLockedRotor(RecordedStart& out, const Load& load, const Draw& draw, AcVolts volts,
                       Working* working, const Tables& tables) {
  const Locked locked = Derivation(load, draw, working, tables).locked();
  MotorStart& motor = out.motor;
  motor.source = locked.source;
  motor.known = locked.known;
  const double scale = load.ratedVoltage > 0 ? volts.count() / load.ratedVoltage : 0.0;
  motor.current = typed<AcAmperes>(locked.amperes * scale);
  if (working == nullptr) return;
  Step step;
  step.formula = kScaled;
  step.rule = locked.rule;
  step.result = motor.current.likely.count();
  step.unit = AcAmperes::unit();
  step.inputs = {locked.likely, input("V", volts.count(), "V", "nominal"),
                 input("V_r", load.ratedVoltage, "V", load.name)};
  step.note = say(locked.says, load.name);
  out.step = working->add(std::move(step));
}

}  // namespace

bool startOnlyByClass(const Load& load, const Tables& tables) {
  if (load.start.is(StartKind::none) || load.start.is(StartKind::variableSpeed)) return false;
  const Draw draw;
  const StartSource source = Derivation(load, draw, nullptr, tables).locked().source;
  return source == StartSource::startClass || source == StartSource::notKnown;
}

std::vector<RecordedStart> recordedStarts(const Plan& plan, const std::vector<Draw>& draws,
                                          const SystemVoltages& system, Working* working,
                                          const Tables& tables) {
  std::vector<RecordedStart> out;
  const std::vector<const Load*> loads = loadsOf(plan, draws);
  for (std::size_t i = 0; i < draws.size(); ++i) {
    if (loads[i] == nullptr || loads[i]->start.is(StartKind::none)) continue;
    const Load& load = *loads[i];
    const Draw& draw = draws[i];
    const AcVolts volts = draw.connection == Connection::lineToLine ? system.legToLeg : system.legToNeutral;
    RecordedStart found;
    found.draw = i;
    MotorStart& motor = found.motor;
    motor.load = draw.load;
    motor.circuit = draw.circuit;
    motor.kind = load.start.valueOr(StartKind::acrossTheLine);
    motor.connection = draw.connection;
    motor.onLeg = draw.onLeg;
    motor.automatic = load.automatic;
    const bool drive = motor.kind == StartKind::variableSpeed && !load.lockedRotor.value;
    if (drive)
      startsWithDrive(found, load, draw, volts, working);
    else
      startsLockedRotor(found, load, draw, volts, working, tables);
    motor.apparent = {volts * motor.current.low, volts * motor.current.likely, volts * motor.current.high};

    if (const auto time = spread(FactKind::startTime, load.startTime))
      motor.time = *time;
    else
      motor.time = typed<Seconds>(drive                                ? kDriveSeconds
                                  : motor.kind == StartKind::softStart ? kSoftSeconds
                                                                       : classOf(load).seconds);
    if (const auto factor = spread(FactKind::startPowerFactor, load.startPowerFactor)) {
      motor.powerFactor = {factor->low.count(), factor->likely.count(), factor->high.count()};
    } else if (drive && draw.apparent.likely.count() > 0.0) {
      const double running = draw.watts.likely.count() / draw.apparent.likely.count();
      motor.powerFactor = {running, running, 1.0};
    } else {
      motor.powerFactor = kStartPowerFactor;
    }
    out.push_back(std::move(found));
  }
  return out;
}

std::vector<MotorStart> motorStarts(const Plan& plan, const std::vector<Draw>& draws,
                                    const SystemVoltages& system, Working* working, const Tables& tables) {
  std::vector<MotorStart> out;
  for (RecordedStart& start : recordedStarts(plan, draws, system, working, tables))
    out.push_back(std::move(start.motor));
  return out;
}

}  // namespace stayalight
