#include "core/outage/record.h"

#include <algorithm>
#include <utility>

namespace stayalight {
namespace {

constexpr FormulaId kCapacityNow{"outage.capacity_now"};
constexpr FormulaId kUsable{"outage.usable"};
constexpr FormulaId kPowerMarginal{"outage.power_marginal"};
constexpr FormulaId kPowerCurve{"outage.power_curve"};
constexpr FormulaId kPowerLight{"outage.power_light"};
constexpr FormulaId kCrossingFirst{"outage.crossing_first"};
constexpr FormulaId kCrossing{"outage.crossing"};
constexpr FormulaId kRuntime{"outage.runtime"};
constexpr RuleId kEstimate{"practice.runtime"};

StepInput entered(std::string_view symbol, double value, std::string_view unit, std::string from) {
  StepInput input;
  input.symbol = symbol;
  input.value = value;
  input.unit = unit;
  input.from = std::move(from);
  return input;
}

StepInput earlier(std::string_view symbol, double value, std::string_view unit, StepIndex step) {
  StepInput input;
  input.symbol = symbol;
  input.value = value;
  input.unit = unit;
  input.step = step;
  return input;
}

/// Battery power of one piece, by the same figures `batteryPower` uses.
Step powerStep(const Inverter& inverter, Watts load, BatteryWatts power) {
  Step step;
  step.result = power.count();
  step.unit = "W";
  step.inputs.push_back(entered("P", load.count(), "W", "average load of the hour"));
  if (inverter.efficiency.empty()) {
    step.formula = kPowerMarginal;
    step.inputs.push_back(
        entered("e", inverter.marginalEfficiency->count(), "", "inverter, marginal efficiency"));
    step.inputs.push_back(entered("n", std::max(1, inverter.units), "", "inverter, units"));
    step.inputs.push_back(entered("i", inverter.idle->count(), "W", "inverter, idle draw of one unit"));
    return step;
  }
  const double rated = inverter.continuous->count() * std::max(1, inverter.units);
  double firstLoad = 0;  // the smallest load the label's curve says something about
  for (const EfficiencyPoint& point : inverter.efficiency) {
    const bool says = point.load.count() > 0 && point.efficiency.count() > 0;
    if (says && (firstLoad <= 0 || point.load.count() < firstLoad)) firstLoad = point.load.count();
  }
  if (load.count() < firstLoad * rated) {
    step.formula = kPowerLight;
    step.inputs.push_back(
        entered("L", power.count() - load.count(), "W", "loss at the first point of the label's curve"));
  } else {
    step.formula = kPowerCurve;
    step.inputs.push_back(entered("e", load.count() > 0 ? load.count() / power.count() : 1.0, "",
                                  "label's efficiency curve at this load"));
  }
  return step;
}

}  // namespace

void recordOutage(const Plan& plan, const OutageFigures& figures, Working& working) {
  const Inverter& inverter = *plan.inverter;
  const Battery& battery = *plan.battery;
  const UsableEnergy& energy = figures.energy;
  const OutageRun& run = figures.likely;
  if (!figures.known || !energy.capacityNow || !energy.usable) return;

  Step capacity;
  capacity.formula = kCapacityNow;
  capacity.result = energy.capacityNow->likely.count();
  capacity.unit = "Wh";
  capacity.inputs = {
      entered("E", *battery.nominalKilowattHours, "kWh", "battery, nominal energy of one pack"),
      entered("n", std::max(1, battery.packs), "", "battery, packs"),
      entered("h", energy.health.likely, "", "battery, health"),
      entered("k", energy.temperatureFactor, "", "capacity at the cells' temperature")};
  capacity.inputs[2].grade = battery.health.grade;
  const StepIndex capacityIndex = working.add(std::move(capacity));

  Step usable;
  usable.formula = kUsable;
  usable.result = energy.usable->likely.count();
  usable.unit = "Wh";
  usable.inputs = {earlier("C", energy.capacityNow->likely.count(), "Wh", capacityIndex),
                   entered("s", energy.startCharge, "", "charge at the start"),
                   entered("f", energy.floor, "", "battery, floor")};
  const StepIndex usableIndex = working.add(std::move(usable));

  // Pieces of the likely run: the power of each hour of the day once, its time where it stands.
  std::vector<StepInput> powers, times;
  std::vector<std::pair<double, StepIndex>> known;  // load, step
  for (std::size_t i = 0; i + 1 < run.points.size(); ++i) {
    const Watts load = run.points[i].load;
    const BatteryWatts power = batteryPower(inverter, load).value_or(BatteryWatts(0));
    const auto found =
        std::find_if(known.begin(), known.end(), [&](const auto& k) { return k.first == load.count(); });
    const StepIndex step =
        found != known.end() ? found->second : working.add(powerStep(inverter, load, power));
    if (found == known.end()) known.emplace_back(load.count(), step);
    powers.push_back(earlier("p", power.count(), "W", step));
    times.push_back(
        entered("t", (run.points[i + 1].at - run.points[i].at).count(), "h", "piece of constant load"));
  }
  if (times.empty()) return;

  if (run.reason == OutageEnd::floorReached) {
    Step crossing;
    crossing.formula = times.size() == 1 ? kCrossingFirst : kCrossing;
    crossing.result = times.back().value;
    crossing.unit = "h";
    crossing.inputs = {earlier("U", energy.usable->likely.count(), "Wh", usableIndex),
                       earlier("q", powers.back().value, "W", powers.back().step)};
    for (std::size_t i = 0; i + 1 < times.size(); ++i) {
      crossing.inputs.push_back(powers[i]);
      crossing.inputs.push_back(times[i]);
    }
    times.back().step = working.add(std::move(crossing));
    times.back().from.clear();
  }
  Step runtime;
  runtime.formula = kRuntime;
  runtime.rule = kEstimate;
  runtime.result = run.end.count();
  runtime.unit = "h";
  runtime.inputs = std::move(times);
  working.add(std::move(runtime));
}

}  // namespace stayalight
