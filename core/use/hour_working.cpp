#include "core/use/hour_working.h"

namespace stayalight {
namespace {

constexpr FormulaId kAverage{"power.average"};
constexpr FormulaId kAverageReactive{"power.average_reactive"};
constexpr FormulaId kConnected{"power.connected"};
constexpr FormulaId kConnectedReactive{"power.connected_reactive"};
constexpr FormulaId kFromPower{"current.from_power"};
constexpr FormulaId kFromApparent{"current.from_apparent"};
constexpr FormulaId kNeutralSplitPhase{"current.neutral_split_phase"};
constexpr FormulaId kNeutralWye{"current.neutral_wye"};
constexpr FormulaId kNeutralSingle{"current.neutral_single"};
constexpr RuleId kLegLoad{"practice.leg_load"};
constexpr MessageId kConnectedOfLeg{"use.connected_of_leg"};
constexpr MessageId kAverageOfLeg{"use.average_of_leg"};
constexpr MessageId kPeakOfLeg{"use.peak_of_leg"};
constexpr MessageId kPeakOfBoth{"use.peak_of_both"};
constexpr MessageId kNeutralCarries{"use.neutral_carries"};

/// One load's part of a sum.
struct Part {
  double real = 0.0, reactive = 0.0, use = 1.0;
  Grade grade = Grade::unknown;
  const Load* load = nullptr;
};

StepInput volts(AcVolts value) {
  return {"V", value.count(), "V", std::nullopt, kNoStep, "nominal, leg to neutral"};
}

/// Sum of P or Q over the parts; none without parts.
StepIndex sum(Working& working, const std::vector<Part>& parts, bool reactive, bool average) {
  if (parts.empty()) return kNoStep;
  Step step;
  step.formula =
      average ? (reactive ? kAverageReactive : kAverage) : (reactive ? kConnectedReactive : kConnected);
  step.unit = reactive ? Vars::unit() : Watts::unit();
  for (const Part& part : parts) {
    const double power = reactive ? part.reactive : part.real;
    step.inputs.push_back({reactive ? "Q" : "P", power, step.unit, part.grade, kNoStep,
                           part.load != nullptr ? part.load->name : ""});
    step.result += average ? power * part.use : power;
    if (average)
      step.inputs.push_back(
          {"u", part.use, "", std::nullopt, kNoStep, part.load != nullptr ? part.load->name : ""});
  }
  return working.add(std::move(step));
}

StepInput resultOf(const Working& working, StepIndex step, std::string_view symbol, std::string_view unit) {
  const double value = step == kNoStep ? 0.0 : working.steps()[static_cast<std::size_t>(step)].result;
  return {symbol, value, unit, std::nullopt, step, step == kNoStep ? "no load" : ""};
}

void current(Working& working, const std::vector<Part>& parts, bool average, const SystemVoltages& system,
             Message note) {
  const StepIndex real = sum(working, parts, false, average);
  const StepIndex reactive = sum(working, parts, true, average);
  Step step;
  step.formula = kFromPower;
  step.inputs = {resultOf(working, real, "P", Watts::unit()), resultOf(working, reactive, "Q", Vars::unit()),
                 volts(system.legToNeutral)};
  step.result = std::hypot(step.inputs[0].value, step.inputs[1].value) / system.legToNeutral.count();
  step.unit = AcAmperes::unit();
  step.note = std::move(note);
  working.add(std::move(step));
}

void peak(Working& working, VoltAmperes apparent, AcVolts over, AcAmperes result, Message note) {
  Step step;
  step.formula = kFromApparent;
  step.rule = kLegLoad;
  step.inputs = {
      {"S", apparent.count(), VoltAmperes::unit(), std::nullopt, kNoStep, "99th percentile of the hour"},
      {"V", over.count(), "V", std::nullopt, kNoStep, "nominal"}};
  step.result = result.count();
  step.unit = AcAmperes::unit();
  step.note = std::move(note);
  working.add(std::move(step));
}

}  // namespace

void recordHour(const HourLoads& hour, const HourFigures& figures, Working& working) {
  const std::vector<Draw>& draws = hour.draws();
  const std::vector<HourUse>& uses = hour.uses();
  const SystemVoltages& system = hour.system();
  LegPower connected, average;
  for (std::size_t i = 0; i < draws.size(); ++i) {
    connected += draws[i].likely;
    average += draws[i].likely * uses[i].on.likely;
  }
  const WyeOrder order = orderTaken(average, system);
  const auto parts = [&](WyeOrder laidOut, std::size_t leg, bool neutralOnly) {
    std::vector<Part> out;
    for (std::size_t i = 0; i < draws.size(); ++i) {
      if (!draws[i].onLeg[leg]) continue;
      if (neutralOnly && draws[i].connection == Connection::lineToLine) continue;
      const LegPower power = inOrder(draws[i].likely, system, laidOut);
      const ComplexPower& on = neutralOnly ? power.lineToNeutral[leg] : power.leg[leg];
      out.push_back(
          {on.real.count(), on.reactive.count(), uses[i].on.likely, draws[i].grade, hour.loads()[i]});
    }
    return out;
  };

  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const std::string name(legName(leg));
    const HourLoad& load = figures.leg[index(leg)];
    current(working, parts(orderOfLeg(connected, system, leg), index(leg), false), false, system,
            say(kConnectedOfLeg, name));
    current(working, parts(orderOfLeg(average, system, leg), index(leg), false), true, system,
            say(kAverageOfLeg, name));
    peak(working, load.likelyPeakApparent.likely, system.legToNeutral, load.likelyPeakCurrent.likely,
         say(kPeakOfLeg, name));
  }
  peak(working, figures.total.likelyPeakApparent.likely,
       system.single ? system.legToNeutral : system.legToLeg, figures.total.likelyPeakCurrent.likely,
       say(kPeakOfBoth));

  Step neutral;
  const std::array<std::string_view, 2> realNames = {"P_1", "P_2"};
  const std::array<std::string_view, 2> reactiveNames = {"Q_1", "Q_2"};
  for (std::size_t leg = 0; leg < 2; ++leg) {
    const std::vector<Part> back = parts(order, leg, true);
    const StepIndex real = sum(working, back, false, true);
    const StepIndex reactive = sum(working, back, true, true);
    neutral.inputs.push_back(resultOf(working, real, realNames[leg], Watts::unit()));
    neutral.inputs.push_back(resultOf(working, reactive, reactiveNames[leg], Vars::unit()));
  }
  neutral.formula = system.single ? kNeutralSingle : system.wye ? kNeutralWye : kNeutralSplitPhase;
  if (system.wye)
    neutral.inputs.push_back(
        {"k", order == WyeOrder::l2Leads ? -1.0 : 1.0, "", std::nullopt, kNoStep, "order of the phases"});
  neutral.inputs.push_back(volts(system.legToNeutral));
  neutral.result = figures.neutralAverage.count();
  neutral.unit = AcAmperes::unit();
  neutral.note = say(kNeutralCarries);
  working.add(std::move(neutral));
}

}  // namespace stayalight
