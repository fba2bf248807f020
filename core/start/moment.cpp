#include "core/start/moment.h"

#include <algorithm>

#include "core/use/coincidence.h"

namespace stayalight {
namespace {

template <class Q>
struct Sums {
  Q averageBase, likelyBase, highBase, likelyStart, highStart;
  std::optional<Q> likelyLimit, highLimit;
};

template <class Q>
StartFigure<Q> figureOf(const Sums<Q>& sums, Seconds likelyTime, Seconds highTime, bool known) {
  StartFigure<Q> out;
  out.averageBase = sums.averageBase;
  out.likelyBase = sums.likelyBase;
  out.highBase = sums.highBase;
  out.likelySum = sums.likelyBase + sums.likelyStart;
  out.highSum = sums.highBase + sums.highStart;
  out.likelyLimit = sums.likelyLimit;
  out.highLimit = sums.highLimit;
  if (out.highLimit) out.margin = *out.highLimit - out.highSum;
  out.likelyTime = likelyTime;
  out.highTime = highTime;
  out.verdict = compare(out.likelySum, out.likelySum, out.likelyLimit);
  if (out.verdict == Verdict::within &&
      (!known || compare(out.highSum, out.highSum, out.highLimit) != Verdict::within)) {
    out.verdict = Verdict::notKnown;
  }
  return out;
}

int rank(Verdict verdict) { return verdict == Verdict::over ? 2 : verdict == Verdict::notKnown ? 1 : 0; }

template <class Q>
bool worseThan(const StartFigure<Q>& a, const StartFigure<Q>& b) {
  if (rank(a.verdict) != rank(b.verdict)) return rank(a.verdict) > rank(b.verdict);
  if (a.margin && b.margin) return *a.margin < *b.margin;
  return a.highSum > b.highSum;
}

template <class Q>
std::optional<double> relativeMargin(const StartFigure<Q>& figure) {
  if (!figure.margin || !(figure.highLimit->count() > 0.0)) return std::nullopt;
  return *figure.margin / *figure.highLimit;
}

/// A start nobody knows anything of cannot be said to be within.
bool boundKnown(const MotorStart& motor) {
  if (motor.source == StartSource::notKnown) return false;
  return motor.source != StartSource::running || motor.known;
}

}  // namespace

std::optional<Fraction> startEfficiency(const Inverter& inverter) {
  if (inverter.efficiency.empty()) return inverter.marginalEfficiency;
  if (inverter.marginalEfficiency) return inverter.marginalEfficiency;
  std::vector<EfficiencyPoint> curve = inverter.efficiency;
  std::stable_sort(curve.begin(), curve.end(), [](const auto& a, const auto& b) { return a.load < b.load; });
  constexpr double kFull = 1.0;
  const auto above =
      std::find_if(curve.begin(), curve.end(), [](const auto& p) { return p.load.count() >= kFull; });
  if (above == curve.end()) return curve.back().efficiency;
  if (above == curve.begin() || above->load.count() == kFull) return above->efficiency;
  const auto below = std::prev(above);
  const double part = (kFull - below->load.count()) / (above->load - below->load).count();
  return below->efficiency + (above->efficiency - below->efficiency) * part;
}

BatteryWatts startIdle(const Inverter& inverter) {
  if (!inverter.marginalEfficiency) return BatteryWatts(0.0);
  return inverter.idle.value_or(BatteryWatts(0.0)) * std::max(1, inverter.units);
}

std::optional<DcAmperes> batteryLimit(const Battery& battery, Seconds duration) {
  const double packs = std::max(1, battery.packs);
  if (battery.peakCurrent && battery.peakTime && duration <= *battery.peakTime)
    return *battery.peakCurrent * packs;
  if (battery.continuousCurrent) return *battery.continuousCurrent * packs;
  return std::nullopt;
}

Addition additionOf(const RecordedStart& start, const Draw& draw, bool high, bool locked,
                    const SystemVoltages& system) {
  const MotorStart& motor = start.motor;
  Addition out;
  out.locked = locked;
  if (locked) {
    const AcAmperes current = high ? motor.current.high : motor.current.likely;
    for (std::size_t leg = 0; leg < 2; ++leg) out.leg[leg] = motor.onLeg[leg] ? current : AcAmperes(0.0);
    out.apparent = high ? motor.apparent.high : motor.apparent.likely;
    out.watts = Watts(out.apparent.count() * (high ? motor.powerFactor.high : motor.powerFactor.likely));
  } else {
    const LegPower& power = high ? draw.high : draw.likely;
    for (std::size_t leg = 0; leg < 2; ++leg) out.leg[leg] = power.leg[leg].apparent() / system.legToNeutral;
    out.apparent = high ? draw.apparent.high : draw.apparent.likely;
    out.watts = high ? draw.watts.high : draw.watts.likely;
  }
  return out;
}

std::vector<Addition> additionsAt(const std::vector<const RecordedStart*>& set, std::size_t moment, bool high,
                                  const std::vector<Draw>& draws, const SystemVoltages& system) {
  const auto timeOf = [high](const RecordedStart& start) {
    return high ? start.motor.time.high : start.motor.time.likely;
  };
  const Seconds now = timeOf(*set[moment]);
  std::vector<Addition> out;
  out.reserve(set.size());
  for (const RecordedStart* start : set) {
    out.push_back(additionOf(*start, draws[start->draw], high, timeOf(*start) >= now, system));
  }
  return out;
}

CheckedSet checkSet(const std::vector<const RecordedStart*>& set, const Base& base,
                    const std::vector<Draw>& draws, const SystemVoltages& system, const StartLimits& limits) {
  CheckedSet out;
  StartCheck& check = out.check;
  std::array<bool, 2> touched{};
  bool bounded = true;
  for (const RecordedStart* start : set) {
    check.loads.push_back(start->motor.load);
    check.known = check.known && start->motor.known;
    bounded = bounded && boundKnown(start->motor);
    for (std::size_t leg = 0; leg < 2; ++leg) touched[leg] = touched[leg] || start->motor.onLeg[leg];
  }
  const std::optional<Fraction> efficiency = startEfficiency(limits.unit);
  const std::optional<DcVolts> lowest = limits.unit.lowestInputVoltage;
  const bool batterySide = efficiency && efficiency->count() > 0.0 && lowest && lowest->count() > 0.0;
  const auto direct = [&](Watts watts) {
    return BatteryWatts(watts.count() / efficiency->count()) / *lowest;
  };

  for (std::size_t moment = 0; moment < set.size(); ++moment) {
    const Seconds likelyTime = set[moment]->motor.time.likely;
    const Seconds highTime = set[moment]->motor.time.high;
    const LimitAt likelyLimit = limitAt(limits.inverter, likelyTime);
    const LimitAt highLimit = limitAt(limits.inverter, highTime);
    Addition likely, high;
    likely.leg = high.leg = {AcAmperes(0.0), AcAmperes(0.0)};
    for (const bool end : {false, true}) {
      Addition& sum = end ? high : likely;
      const Seconds now = end ? highTime : likelyTime;
      for (const RecordedStart* start : set) {
        const Seconds time = end ? start->motor.time.high : start->motor.time.likely;
        const Addition one = additionOf(*start, draws[start->draw], end, time >= now, system);
        for (std::size_t leg = 0; leg < 2; ++leg) sum.leg[leg] += one.leg[leg];
        sum.apparent += one.apparent;
        sum.watts += one.watts;
      }
    }
    for (std::size_t leg = 0; leg < 2; ++leg) {
      if (!touched[leg]) continue;
      const auto figure =
          figureOf<AcAmperes>({base.average[leg], base.likely[leg], base.high[leg], likely.leg[leg],
                               high.leg[leg], likelyLimit.leg, highLimit.leg},
                              likelyTime, highTime, bounded && base.known[leg]);
      if (!check.leg[leg] || worseThan(figure, *check.leg[leg])) {
        check.leg[leg] = figure;
        out.moment[leg] = moment;
      }
    }
    const bool allKnown = bounded && base.known[0] && base.known[1];
    const auto total =
        figureOf<VoltAmperes>({base.averageApparent, base.likelyApparent, base.highApparent, likely.apparent,
                               high.apparent, likelyLimit.apparent, highLimit.apparent},
                              likelyTime, highTime, allKnown);
    if (moment == 0 || worseThan(total, check.total)) check.total = total;
    const auto real = figureOf<Watts>({base.averageTotal, base.likelyTotal, base.highTotal, likely.watts,
                                       high.watts, likelyLimit.total, highLimit.total},
                                      likelyTime, highTime, allKnown);
    if (moment == 0 || worseThan(real, check.real)) check.real = real;
    const auto likelyPacks = batteryLimit(limits.battery, likelyTime);
    const auto highPacks = batteryLimit(limits.battery, highTime);
    if (batterySide && (likelyPacks || highPacks)) {
      const DcAmperes idle = startIdle(limits.unit) / *lowest;
      const auto figure = figureOf<DcAmperes>(
          {direct(base.averageTotal) + idle, direct(base.likelyTotal) + idle, direct(base.highTotal) + idle,
           direct(likely.watts), direct(high.watts), likelyPacks, highPacks},
          likelyTime, highTime, allKnown);
      if (!check.battery || worseThan(figure, *check.battery)) check.battery = figure;
    }
  }

  check.verdict = worse(check.total.verdict, check.real.verdict);
  // A battery whose figures are not entered is a limit that is not known.
  check.verdict = worse(check.verdict, check.battery ? check.battery->verdict : Verdict::notKnown);
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    if (const auto& figure = check.leg[index(leg)]) check.verdict = worse(check.verdict, figure->verdict);
  }
  const auto& first = check.leg[0];
  const auto& second = check.leg[1];
  if (!first || (second && second->margin && (!first->margin || *second->margin < *first->margin)))
    check.worstLeg = Leg::l2;
  return out;
}

std::vector<double> sortedMargins(const StartCheck& check) {
  std::vector<double> margins;
  const auto take = [&margins](std::optional<double> margin) {
    if (margin) margins.push_back(*margin);
  };
  take(relativeMargin(check.total));
  take(relativeMargin(check.real));
  for (const auto& figure : check.leg) {
    if (figure) take(relativeMargin(*figure));
  }
  if (check.battery) take(relativeMargin(*check.battery));
  std::sort(margins.begin(), margins.end());
  return margins;
}

}  // namespace stayalight
