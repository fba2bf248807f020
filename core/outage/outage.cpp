#include "core/outage/outage.h"

#include <algorithm>
#include <cmath>

#include "core/outage/record.h"

namespace stayalight {
namespace {

constexpr MessageId kNoBackup{"outage.missing.backup"};
constexpr MessageId kNoLoads{"outage.missing.loads"};
constexpr MessageId kNoNominal{"outage.missing.nominal"};
constexpr MessageId kNoHealth{"outage.missing.health"};
constexpr MessageId kNoTemperature{"outage.missing.temperature"};
constexpr MessageId kTooCold{"outage.missing.too_cold"};
constexpr MessageId kNoEfficiency{"outage.missing.efficiency"};
constexpr MessageId kNoIdle{"outage.missing.idle"};
constexpr MessageId kNoRatedOutput{"outage.missing.rated_output"};
constexpr MessageId kNoWatts{"outage.missing.watts"};

constexpr int kMinutesInHour = 60;
constexpr double kMinutes = 60.0;

/// Which end of every fact a run takes.
enum class Side : std::uint8_t { shortRun, likelyRun, longRun };

/// What a run needs, apart from the profile.
struct RunInput {
  const Plan& plan;
  const Scenario& scenario;
  const DayProfile& profile;
  const DayPeaks& peaks;
  const InverterLimits& limits;
  const UsableEnergy& energy;
  BatteryWattHours capacity;
  const Tables& tables;
  double powerShare = 0.0;  ///< how far the power of each hour is moved towards its end, 0 to 1
  Side side = Side::likelyRun;
};

/// Load of one hour of the day in a run.
struct HourOfRun {
  Watts load;
  BatteryWatts battery;
  std::array<AcAmperes, 2> average, likelyPeak;
  std::optional<OutageEnd> overload;
};

template <class Q>
Q at(const Range<Q>& range, Side side) {
  return side == Side::shortRun ? range.high : side == Side::longRun ? range.low : range.likely;
}

bool over(double figure, double limit) {
  using Number = Quantity<kind::Fraction>;
  return compare(Number(figure), Number(figure), std::optional<Number>(limit)) == Verdict::over;
}

/// Of both legs together; the reactive powers of the legs count with one sign, which is exact where both lag
/// and on the safe side elsewhere.
VoltAmperes apparentPower(const RunInput& input, std::size_t hour) {
  const double volts = voltages(input.plan, Mode::outage, input.tables).legToNeutral.count();
  ComplexPower sum;
  for (std::size_t leg = 0; leg < 2; ++leg) {
    const double real = input.profile.leg[hour][leg].count();
    const double apparent = input.profile.current[hour][leg].count() * volts;
    sum += {Watts(real), Vars(std::sqrt(std::max(0.0, apparent * apparent - real * real)))};
  }
  return sum.apparent();
}

HourOfRun hourOfRun(const RunInput& input, std::size_t hour) {
  const Range<Watts>& total = input.profile.total[hour];
  HourOfRun out;
  out.load = total.likely + (at(total, input.side) - total.likely) * input.powerShare;
  if (out.load < Watts(0)) out.load = Watts(0);
  out.battery = batteryPower(*input.plan.inverter, out.load).value_or(BatteryWatts(0));
  // The currents follow the power; its power factor stays.
  const double scale = total.likely > Watts(0) ? out.load / total.likely : 1.0;
  for (std::size_t leg = 0; leg < 2; ++leg) {
    out.average[leg] = input.profile.current[hour][leg] * scale;
    out.likelyPeak[leg] = input.peaks[hour][leg];
  }

  const InverterLimits& limits = input.limits;
  const Battery& battery = *input.plan.battery;
  const std::optional<DcVolts> lowest = input.plan.inverter->lowestInputVoltage;
  const VoltAmperes apparent = apparentPower(input, hour) * scale;
  const double heavierLeg = std::max(out.average[0], out.average[1]).count();
  if (limits.leg && over(heavierLeg, limits.leg->count())) {
    out.overload = OutageEnd::legOverload;
  } else if ((limits.total && over(out.load.count(), limits.total->count())) ||
             (limits.totalApparent && over(apparent.count(), limits.totalApparent->count()))) {
    out.overload = OutageEnd::totalOverload;
  } else if (battery.continuousCurrent && lowest && lowest->count() > 0) {
    const double amperes = (out.battery / *lowest).count();
    if (over(amperes, battery.continuousCurrent->count() * std::max(1, battery.packs)))
      out.overload = OutageEnd::batteryCurrent;
  }
  return out;
}

void account(OutageRun& run, const Inverter& inverter, const HourOfRun& hour, Hours time) {
  const LoadWattHours delivered = hour.load * time;
  const BatteryWattHours drawn = hour.battery * time;
  const bool curve = !inverter.efficiency.empty();
  const BatteryWattHours idle =
      curve || !inverter.idle ? BatteryWattHours(0) : *inverter.idle * std::max(1, inverter.units) * time;
  run.drawn += drawn;
  run.delivered += delivered;
  run.idle += idle;
  run.losses += drawn - idle - BatteryWattHours(delivered.count());
}

/// One run: pieces of constant load from one whole hour to the next, the crossing of the floor solved for in
/// its piece.
OutageRun runOutage(const RunInput& input) {
  OutageRun run;
  std::array<HourOfRun, 24> day;
  for (std::size_t hour = 0; hour < day.size(); ++hour) day[hour] = hourOfRun(input, hour);

  const double capacity = input.capacity.count();
  const double floor = input.energy.floor, reserve = input.energy.reserve;
  const int startMinutes = input.scenario.start.minutes();
  double charge = input.energy.startCharge;
  if (charge <= reserve && reserve >= floor) run.toReserve = Hours(0);

  const auto mark = [&](const HourOfRun& hour, bool dark) {
    OutagePoint point{run.end, charge, {}, {}, Watts(0)};
    if (!dark) {
      point.legAverage = hour.average;
      point.legLikelyPeak = hour.likelyPeak;
      point.load = hour.load;
    }
    run.points.push_back(point);
  };
  if (charge <= floor || capacity <= 0) {
    run.reason = OutageEnd::floorReached;
    mark({}, true);
    return run;
  }

  int minutes = 0;  // since the power failed; the pieces end at whole clock hours
  while (true) {
    const HourOfRun& hour = day[static_cast<std::size_t>(((startMinutes + minutes) / kMinutesInHour) % 24)];
    mark(hour, false);
    if (hour.overload) {
      run.reason = *hour.overload;
      return run;
    }
    if (minutes >= static_cast<int>(kOutageHorizon.count()) * kMinutesInHour) {
      run.reason = OutageEnd::beyondHorizon;
      return run;
    }
    const int toWholeHour = kMinutesInHour - (startMinutes + minutes) % kMinutesInHour;
    const int next =
        std::min(minutes + toWholeHour, static_cast<int>(kOutageHorizon.count()) * kMinutesInHour);
    const Hours begin = run.end;
    const Hours whole = Hours(next / kMinutes) - begin;
    const double power = hour.battery.count();
    const double chargeAtBegin = charge;
    const auto timeTo = [&](double level) { return Hours((chargeAtBegin - level) * capacity / power); };

    const bool reachesFloor = power > 0 && timeTo(floor) <= whole;
    const Hours time = reachesFloor ? timeTo(floor) : whole;
    if (!run.toReserve && power > 0 && reserve >= floor && timeTo(reserve) <= time) {
      run.toReserve = begin + timeTo(reserve);
      if (timeTo(reserve) > Hours(0) && timeTo(reserve) < time) {
        run.end = *run.toReserve;
        charge = reserve;
        mark(hour, false);
      }
    }
    account(run, *input.plan.inverter, hour, time);
    run.end = begin + time;
    if (reachesFloor) {
      charge = floor;
      run.reason = OutageEnd::floorReached;
      mark(hour, true);
      return run;
    }
    charge = chargeAtBegin - power * time.count() / capacity;
    run.end = Hours(next / kMinutes);
    minutes = next;
  }
}

TimeOfDay clockAfter(TimeOfDay start, Hours time) {
  return TimeOfDay(start.minutes() + static_cast<int>(std::lround(time.count() * kMinutes)));
}

bool hasLoads(const Plan& plan) {
  return std::any_of(plan.circuits.begin(), plan.circuits.end(), [&](const Shared<Circuit>& circuit) {
    return backedUp(plan, *circuit) && !circuit->loads.empty();
  });
}

std::string nameOf(const Load& load, const Circuit& circuit) {
  return !load.name.empty() ? load.name : !circuit.name.empty() ? circuit.name : circuit.serves;
}

/// What stops the estimate; the loads without watts are named last and do not stop it, since their breaker
/// bounds them.
bool collectMissing(const Plan& plan, const UsableEnergy& energy, std::vector<Message>& missing) {
  const Inverter& inverter = *plan.inverter;
  const Battery& battery = *plan.battery;
  if (backupPanel(plan) == nullptr) {
    missing.push_back(say(kNoBackup));
  } else if (!hasLoads(plan)) {
    missing.push_back(say(kNoLoads));
  }
  if (!energy.nominal) missing.push_back(say(kNoNominal));
  if (!spread(FactKind::health, battery.health)) missing.push_back(say(kNoHealth));
  const std::optional<Temperature> cells = cellTemperature(battery);
  if (!cells) {
    missing.push_back(say(kNoTemperature));
  } else if (!capacityAtTemperature(*cells)) {
    missing.push_back(say(kTooCold, Figure{cells->inCelsius(), "°C", 0}));
  }
  if (!inverter.efficiency.empty()) {
    if (!inverter.continuous) {
      missing.push_back(say(kNoRatedOutput));
    } else if (!batteryPower(inverter, Watts(0))) {
      missing.push_back(say(kNoEfficiency));
    }
  } else {
    if (!inverter.marginalEfficiency) missing.push_back(say(kNoEfficiency));
    if (!inverter.idle) missing.push_back(say(kNoIdle));
  }
  const bool stops = !missing.empty();
  for (const auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    for (const Load& load : circuit->loads) {
      if (!load.running.value && !load.running.low && !load.runningCurrent.value &&
          !load.runningCurrent.low) {
        missing.push_back(say(kNoWatts, nameOf(load, *circuit)));
      }
    }
  }
  return stops;
}

/// Deviation of the day's mean power towards its end, over the likely mean.
double powerDeviation(const DayProfile& profile, Side side) {
  double likely = 0, end = 0;
  for (const Range<Watts>& hour : profile.total) {
    likely += hour.likely.count();
    end += at(hour, side).count();
  }
  return likely > 0 ? std::abs(end - likely) / likely : 0.0;
}

}  // namespace

OutageFigures outageFigures(const Plan& plan, const Scenario& scenario, const DayProfile& profile,
                            const DayPeaks& peaks, const InverterLimits& limits, Working* working,
                            const Tables& tables) {
  OutageFigures figures;
  figures.energy = usableEnergy(*plan.battery, scenario.startCharge);
  figures.endLow = figures.endLikely = figures.endHigh = scenario.start;
  figures.known = !collectMissing(plan, figures.energy, figures.missing);
  if (!figures.known) return figures;

  const Range<BatteryWattHours>& capacity = *figures.energy.capacityNow;
  const auto run = [&](Side side) {
    RunInput input{plan,           scenario,        profile, peaks, limits,
                   figures.energy, capacity.likely, tables,  0.0,   side};
    if (side != Side::likelyRun) {
      const BatteryWattHours end = side == Side::shortRun ? capacity.low : capacity.high;
      const double power = powerDeviation(profile, side);
      const double health =
          capacity.likely.count() > 0 ? std::abs((end - capacity.likely) / capacity.likely) : 0.0;
      const double combined = std::hypot(power, health);
      if (combined > 0) {
        input.powerShare = power / combined;
        input.capacity = capacity.likely + (end - capacity.likely) * (health / combined);
      }
    }
    return runOutage(input);
  };
  figures.low = run(Side::shortRun);
  figures.likely = run(Side::likelyRun);
  figures.high = run(Side::longRun);
  figures.runtime = {figures.low.end, figures.likely.end, figures.high.end};
  figures.endLow = clockAfter(scenario.start, figures.low.end);
  figures.endLikely = clockAfter(scenario.start, figures.likely.end);
  figures.endHigh = clockAfter(scenario.start, figures.high.end);
  if (working != nullptr) recordOutage(plan, figures, *working);
  return figures;
}

}  // namespace stayalight
