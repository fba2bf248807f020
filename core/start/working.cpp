#include "core/start/working.h"

namespace stayalight {
namespace {

constexpr FormulaId kOnBase{"start.on_base"};
constexpr FormulaId kMargin{"start.margin"};
constexpr FormulaId kApparent{"start.apparent"};
constexpr FormulaId kTotalOnBase{"start.total_on_base"};
constexpr FormulaId kTotalMargin{"start.total_margin"};
constexpr FormulaId kBattery{"start.battery"};
constexpr RuleId kStartOnBase{"practice.start_on_base"};
constexpr RuleId kStartPair{"practice.start_pair"};
constexpr RuleId kBatteryCurrent{"practice.battery_current"};
constexpr MessageId kOnLeg{"start.on_leg"};
constexpr MessageId kOnLegUnfavourable{"start.on_leg_unfavourable"};
constexpr MessageId kLeftOnLeg{"start.left_on_leg"};
constexpr MessageId kOnBoth{"start.on_both"};
constexpr MessageId kOnBothUnfavourable{"start.on_both_unfavourable"};
constexpr MessageId kLeftOnBoth{"start.left_on_both"};
constexpr MessageId kFromBattery{"start.from_battery"};

StepInput input(std::string_view symbol, double value, std::string_view unit, std::string from,
                StepIndex step = kNoStep) {
  return {symbol, value, unit, std::nullopt, step, std::move(from)};
}

StepIndex add(Working& working, FormulaId formula, RuleId rule, double result, std::string_view unit,
              std::vector<StepInput> inputs, Message note) {
  Step step;
  step.formula = formula;
  step.rule = rule;
  step.result = result;
  step.unit = unit;
  step.inputs = std::move(inputs);
  step.note = std::move(note);
  return working.add(std::move(step));
}

}  // namespace

void recordCheck(const std::vector<const RecordedStart*>& set, const CheckedSet& checked, const Base& base,
                 const std::vector<Draw>& draws, const SystemVoltages& system, const StartLimits& limits,
                 Working& working) {
  const RuleId rule = set.size() == 1 ? kStartOnBase : kStartPair;
  const std::string baseFrom = "likely peak of all other loads";
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const std::size_t k = index(leg);
    const auto& figure = checked.check.leg[k];
    if (!figure) continue;
    const std::string name(legName(leg));
    for (const bool high : {false, true}) {
      std::vector<StepInput> inputs{
          input("B", (high ? figure->highBase : figure->likelyBase).count(), "A", baseFrom)};
      const std::vector<Addition> additions = additionsAt(set, checked.moment[k], high, draws, system);
      for (std::size_t i = 0; i < set.size(); ++i) {
        const bool direct = !high && additions[i].locked && set[i]->motor.onLeg[k];
        inputs.push_back(input("I", additions[i].leg[k].count(), "A",
                               additions[i].locked ? "at start" : "running",
                               direct ? set[i]->step : kNoStep));
      }
      const AcAmperes sum = high ? figure->highSum : figure->likelySum;
      const StepIndex step = add(working, kOnBase, rule, sum.count(), "A", std::move(inputs),
                                 say(high ? kOnLegUnfavourable : kOnLeg, name));
      if (high && figure->highLimit) {
        add(working, kMargin, rule, figure->margin->count(), "A",
            {input("L", figure->highLimit->count(), "A", "overload curve at the start's longer time"),
             input("I", sum.count(), "A", "", step)},
            say(kLeftOnLeg, name));
      }
    }
  }

  // A single start in total and at the battery; of several the legs tell enough.
  if (set.size() > 1) return;
  const MotorStart& motor = set.front()->motor;
  const AcVolts volts = motor.connection == Connection::lineToLine ? system.legToLeg : system.legToNeutral;
  const StartFigure<VoltAmperes>& total = checked.check.total;
  const StepIndex likely = add(working, kApparent, rule, motor.apparent.likely.count(), "VA",
                               {input("I", motor.current.likely.count(), "A", "at start", set.front()->step),
                                input("V", volts.count(), "V", "nominal")},
                               say(kOnBoth));
  const StepIndex high = add(working, kApparent, rule, motor.apparent.high.count(), "VA",
                             {input("I", motor.current.high.count(), "A", "at start, unfavourable end"),
                              input("V", volts.count(), "V", "nominal")},
                             say(kOnBothUnfavourable));
  add(working, kTotalOnBase, rule, total.likelySum.count(), "VA",
      {input("B", total.likelyBase.count(), "VA", baseFrom),
       input("S", motor.apparent.likely.count(), "VA", "", likely)},
      say(kOnBoth));
  const StepIndex highSum = add(working, kTotalOnBase, rule, total.highSum.count(), "VA",
                                {input("B", total.highBase.count(), "VA", baseFrom),
                                 input("S", motor.apparent.high.count(), "VA", "", high)},
                                say(kOnBothUnfavourable));
  if (total.highLimit) {
    add(working, kTotalMargin, rule, total.margin->count(), "VA",
        {input("L", total.highLimit->count(), "VA", "overload curve at the start's longer time"),
         input("S", total.highSum.count(), "VA", "", highSum)},
        say(kLeftOnBoth));
  }
  if (const auto& battery = checked.check.battery) {
    add(working, kBattery, kBatteryCurrent, battery->likelySum.count(), "A",
        {input("P", base.likelyTotal.count(), "W", baseFrom),
         input("S", motor.apparent.likely.count(), "VA", "", likely),
         input("f", motor.powerFactor.likely, "", "power factor at start"),
         input("e", startEfficiency(limits.unit)->count(), "", "efficiency of the inverter"),
         input("i", startIdle(limits.unit).count(), "W", "idle draw of all units"),
         input("V", limits.unit.lowestInputVoltage->count(), "V", "lowest input voltage")},
        say(kFromBattery));
  }
}

}  // namespace stayalight
