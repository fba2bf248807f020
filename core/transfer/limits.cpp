#include <algorithm>

#include "core/code/numbers.h"
#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

SystemVoltages splitPhase(const Tables& tables) {
  return {nominalLegVolts(tables), nominalLineVoltsSplitPhase(tables), false, WyeOrder::unknown, false};
}

SystemVoltages wye(WyeOrder order, const Tables& tables) {
  return {nominalLegVolts(tables), nominalLineVoltsWye(tables), true, order, false};
}

SystemVoltages serviceVoltages(const Site& site, const Tables& tables) {
  // Two legs of a three-phase service stand to each other as two legs of a wye.
  if (site.service.is(ServiceSystem::wye120_208))
    return wye(site.wyeOrder.valueOr(WyeOrder::unknown), tables);
  if (site.service.is(ServiceSystem::threePhase)) return wye(WyeOrder::unknown, tables);
  return splitPhase(tables);
}

template <class Q>
std::optional<Q> times(const std::optional<Q>& value, double factor) {
  return value ? std::optional<Q>(*value * factor) : std::nullopt;
}

}  // namespace

SystemVoltages voltages(const Plan& plan, Mode mode, const Tables& tables) {
  const SystemVoltages service = serviceVoltages(*plan.site, tables);
  if (mode != Mode::outage && mode != Mode::generator) return service;
  const Choice<InverterOutput>& output =
      mode == Mode::outage ? plan.inverter->output : plan.generator->output;
  switch (output.valueOr(InverterOutput::splitPhase120_240)) {
    case InverterOutput::splitPhase120_240:
      return splitPhase(tables);
    case InverterOutput::wye120_208:
      return wye(service.wye ? service.order : WyeOrder::unknown, tables);
    case InverterOutput::single120:
      break;
  }
  return {nominalLegVolts(tables), AcVolts(0.0), false, WyeOrder::unknown, true};
}

InverterLimits inverterLimits(const Inverter& inverter, const Tables& tables) {
  const double units = std::max(1, inverter.units);
  const AcVolts legVolts = nominalLegVolts(tables);
  const double legs = inverter.output.is(InverterOutput::single120) ? 1.0 : 2.0;

  InverterLimits limits;
  limits.total = times(inverter.continuous, units);
  limits.totalApparent = times(inverter.continuousApparent, units);
  limits.legWatts = times(inverter.legContinuous, units);
  if (!limits.totalApparent && limits.total) limits.totalApparent = VoltAmperes(limits.total->count());

  if (inverter.legCurrent) {
    limits.leg = *inverter.legCurrent * units;
  } else if (inverter.legContinuous) {
    limits.leg = VoltAmperes(inverter.legContinuous->count() * units) / legVolts;
  } else if (limits.total) {
    limits.leg = VoltAmperes(limits.total->count() / legs) / legVolts;
  } else if (limits.totalApparent) {
    limits.leg = *limits.totalApparent / legs / legVolts;
  }
  // The one leg of a 120 V source is the whole of it.
  if (legs == 1.0 && !limits.totalApparent && limits.leg) limits.totalApparent = legVolts * *limits.leg;

  const double legPerWatt = limits.leg && limits.total && limits.total->count() > 0.0
                                ? limits.leg->count() / limits.total->count()
                                : 1.0 / (legs * legVolts.count());
  // And one without watts no more than its amperes carry.
  const double mostPerWatt = std::max(legPerWatt, 1.0 / (legs * legVolts.count()));
  const double apparentPerWatt = limits.total && limits.total->count() > 0.0
                                     ? limits.totalApparent->count() / limits.total->count()
                                     : 1.0;
  for (const OverloadPoint& entered : inverter.overload) {
    if (!entered.watts && !entered.legCurrent) continue;
    InverterLimits::Point point;
    point.time = entered.time;
    point.total =
        entered.watts ? *entered.watts * units : Watts(entered.legCurrent->count() * units / mostPerWatt);
    // Without amperes of its own a point has no more than follows from its watts at the nominal volts.
    const double perWatt = std::min(legPerWatt, 1.0 / (legs * legVolts.count()));
    point.leg = entered.legCurrent ? *entered.legCurrent * units : AcAmperes(point.total.count() * perWatt);
    point.apparent = VoltAmperes(point.total.count() * apparentPerWatt);
    limits.curve.push_back(point);
  }
  std::stable_sort(
      limits.curve.begin(), limits.curve.end(),
      [](const InverterLimits::Point& a, const InverterLimits::Point& b) { return a.time < b.time; });
  return limits;
}

LimitAt limitAt(const InverterLimits& limits, Seconds duration) {
  for (const InverterLimits::Point& point : limits.curve) {
    if (point.time >= duration) return {point.leg, point.total, point.apparent, point.time};
  }
  return {limits.leg, limits.total, limits.totalApparent, Seconds(0.0)};
}

}  // namespace stayalight
