// Legs, starts, the battery, and what hangs on the circuits that stay on.

#include <algorithm>
#include <cctype>

#include "core/code/numbers.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kLegLoad{"practice.leg_load"};
constexpr RuleId kMargin{"practice.loading_margin"};
constexpr RuleId kStartOnBase{"practice.start_on_base"};
constexpr RuleId kStartPair{"practice.start_pair"};
constexpr RuleId kBatteryCurrent{"practice.battery_current"};
constexpr RuleId kRuntime{"practice.runtime"};
constexpr RuleId kHeater{"practice.heater_load"};
constexpr RuleId kMedical{"medical.optional_standby"};

constexpr MessageId kLegOverPlain{"review.leg.over.plain"};
constexpr MessageId kLegOverTrade{"review.leg.over.trade"};
constexpr MessageId kLegOverWattsTrade{"review.leg.over_watts.trade"};
constexpr MessageId kLegUnknownPlain{"review.leg.unknown.plain"};
constexpr MessageId kLegUnknownTrade{"review.leg.unknown.trade"};
constexpr MessageId kTotalOverPlain{"review.total.over.plain"};
constexpr MessageId kTotalOverTrade{"review.total.over.trade"};
constexpr MessageId kTotalOverApparentTrade{"review.total.over_apparent.trade"};
constexpr MessageId kTotalUnknownPlain{"review.total.unknown.plain"};
constexpr MessageId kTotalUnknownTrade{"review.total.unknown.trade"};
constexpr MessageId kMarginPlain{"review.leg.margin.plain"};
constexpr MessageId kMarginTrade{"review.leg.margin.trade"};
constexpr MessageId kOddsPlain{"review.load.odds.plain"};
constexpr MessageId kOddsTrade{"review.load.odds.trade"};
constexpr MessageId kStartOverPlain{"review.start.over.plain"};
constexpr MessageId kStartOverTrade{"review.start.over.trade"};
constexpr MessageId kOnLeg{"review.start.on_leg"};
constexpr MessageId kOnBoth{"review.start.on_both"};
constexpr MessageId kOnBattery{"review.start.on_battery"};
constexpr MessageId kStartUnknownPlain{"review.start.unknown.plain"};
constexpr MessageId kStartUnknownTrade{"review.start.unknown.trade"};
constexpr MessageId kStartUnknownNoLimitTrade{"review.start.unknown_no_limit.trade"};
constexpr MessageId kKindPlain{"review.start.kind.plain"};
constexpr MessageId kKindTrade{"review.start.kind.trade"};
constexpr MessageId kLowPlain{"review.start.locked_rotor_low.plain"};
constexpr MessageId kLowTrade{"review.start.locked_rotor_low.trade"};
constexpr MessageId kBelowPlain{"review.inverter.curve_below.plain"};
constexpr MessageId kBelowTrade{"review.inverter.curve_below.trade"};
constexpr MessageId kPairPlain{"review.start.pair.plain"};
constexpr MessageId kPairTrade{"review.start.pair.trade"};
constexpr MessageId kAllPlain{"review.start.all_at_once.plain"};
constexpr MessageId kAllTrade{"review.start.all_at_once.trade"};
constexpr MessageId kRatingsPlain{"review.inverter.ratings.plain"};
constexpr MessageId kRatingsTrade{"review.inverter.ratings.trade"};
constexpr MessageId kCurvePlain{"review.inverter.curve.plain"};
constexpr MessageId kCurveTrade{"review.inverter.curve.trade"};
constexpr MessageId kBatteryOverPlain{"review.battery.over.plain"};
constexpr MessageId kBatteryOverTrade{"review.battery.over.trade"};
constexpr MessageId kBatteryMissingPlain{"review.battery.missing.plain"};
constexpr MessageId kBatteryMissingTrade{"review.battery.missing.trade"};
constexpr MessageId kTooColdPlain{"review.battery.too_cold.plain"};
constexpr MessageId kTooColdTrade{"review.battery.too_cold.trade"};
constexpr MessageId kPeakLowPlain{"review.battery.peak_low.plain"};
constexpr MessageId kPeakLowTrade{"review.battery.peak_low.trade"};
constexpr MessageId kRestartPlain{"review.battery.restart.plain"};
constexpr MessageId kRestartTrade{"review.battery.restart.trade"};
constexpr MessageId kReservePlain{"review.battery.reserve.plain"};
constexpr MessageId kReserveTrade{"review.battery.reserve.trade"};
constexpr MessageId kEndsPlain{"review.outage.overload.plain"};
constexpr MessageId kEndsTrade{"review.outage.overload.trade"};
constexpr MessageId kHeaterPlain{"review.load.heater.plain"};
constexpr MessageId kHeaterTrade{"review.load.heater.trade"};
constexpr MessageId kVehiclePlain{"review.load.vehicle.plain"};
constexpr MessageId kVehicleTrade{"review.load.vehicle.trade"};
constexpr MessageId kMedicalPlain{"review.load.medical.plain"};
constexpr MessageId kMedicalTrade{"review.load.medical.trade"};
constexpr MessageId kWattsPlain{"review.load.watts.plain"};
constexpr MessageId kWattsTrade{"review.load.watts.trade"};
constexpr MessageId kNoLoadsPlain{"review.load.none.plain"};
constexpr MessageId kNoLoadsTrade{"review.load.none.trade"};

// Above this a heating element is worth a question; and a start that is over once in a day of outage. Both
// common practice, no source.
constexpr double kHeaterWatts = 2000;
constexpr double kOnceADay = 1.0 / 24.0;

const Panel& backupOf(const ReviewInput& in) { return *backupPanel(in.plan); }
bool hasBackup(const ReviewInput& in) { return in.hour != nullptr && backupPanel(in.plan) != nullptr; }
bool isOver(AcAmperes value, const std::optional<AcAmperes>& limit) {
  return limit && compare(value, value, limit) == Verdict::over;
}

std::int64_t hourShown(const ReviewInput& in) { return in.hour->hour; }

void legs(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  for (const Leg which : {Leg::l1, Leg::l2}) {
    const HourLoad& leg = in.hour->leg[index(which)];
    const std::string name(legName(which));
    const std::vector<EntityRef> places{at(backupOf(in))};
    if (leg.verdict == Verdict::over) {
      const bool byCurrent = isOver(leg.likelyPeakCurrent.likely, leg.limit) || !leg.limitWatts;
      out.add(which == Leg::l1 ? "leg.over_l1" : "leg.over_l2", Severity::mustFix, kLegLoad,
              say(kLegOverPlain, name),
              byCurrent ? say(kLegOverTrade, name, amperes(leg.likelyPeakCurrent.likely.count()),
                              hourShown(in), amperes(leg.limit.value_or(AcAmperes(0)).count()),
                              amperes(leg.averageCurrent.likely.count()))
                        : say(kLegOverWattsTrade, name, watts(leg.likelyPeak.likely.count()), hourShown(in),
                              watts(leg.limitWatts->count()), watts(leg.average.likely.count())),
              places);
    } else if (leg.verdict == Verdict::notKnown && leg.limit) {
      out.add(which == Leg::l1 ? "leg.unknown_l1" : "leg.unknown_l2", Severity::checkOnSite, kLegLoad,
              say(kLegUnknownPlain, name),
              say(kLegUnknownTrade, name, amperes(leg.likelyPeakCurrent.likely.count()),
                  amperes(leg.likelyPeakCurrent.high.count()), amperes(leg.limit->count())),
              places);
    } else if (leg.verdict == Verdict::within && leg.limit &&
               leg.likelyPeakCurrent.likely > *leg.limit * loadingMargin(in.tables).count()) {
      out.add(which == Leg::l1 ? "leg.margin_l1" : "leg.margin_l2", Severity::advice, kMargin,
              say(kMarginPlain, name),
              say(kMarginTrade, name, amperes(leg.likelyPeakCurrent.likely.count()),
                  percent(loadingMargin(in.tables).count()), amperes(leg.limit->count())),
              places);
    }
    if (leg.verdict == Verdict::within && leg.timesOver && *leg.timesOver >= kOnceADay) {
      out.add(which == Leg::l1 ? "load.odds_l1" : "load.odds_l2", Severity::advice, kLegLoad,
              say(kOddsPlain, name),
              say(kOddsTrade, name, Figure{*leg.timesOver, "", 2}, percent(leg.oddsOver.value_or(0), 2)),
              places);
    }
  }
}

void total(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  const HourLoad& both = in.hour->total;
  const std::vector<EntityRef> places{at(backupOf(in))};
  const InverterLimits limits = inverterLimits(*in.plan.inverter, in.tables);
  if (both.verdict == Verdict::over) {
    const Watts likely = both.likelyPeak.likely;
    const bool byWatts = both.limitWatts && compare(likely, likely, both.limitWatts) == Verdict::over;
    out.add("total.over", Severity::mustFix, kLegLoad, say(kTotalOverPlain),
            byWatts || !limits.totalApparent
                ? say(kTotalOverTrade, watts(likely.count()), hourShown(in),
                      watts(both.limitWatts.value_or(Watts(0)).count()), watts(both.average.likely.count()))
                : say(kTotalOverApparentTrade, Figure{both.likelyPeakApparent.likely.count(), "VA", 0},
                      hourShown(in), Figure{limits.totalApparent->count(), "VA", 0}),
            places);
  } else if (both.verdict == Verdict::notKnown && both.limitWatts) {
    out.add("total.unknown", Severity::checkOnSite, kLegLoad, say(kTotalUnknownPlain),
            say(kTotalUnknownTrade, watts(both.likelyPeak.likely.count()),
                watts(both.likelyPeak.high.count()), watts(both.limitWatts->count())),
            places);
  }
}

std::string motorName(const Plan& plan, LoadId id) {
  const Circuit* circuit = circuitOf(plan, id);
  if (circuit == nullptr) return {};
  for (const Load& load : circuit->loads) {
    if (load.id == id) return nameOf(load, *circuit);
  }
  return {};
}
EntityRef motorPlace(LoadId id) { return {RecordKind::load, id.number}; }
Figure seconds(Seconds time) { return {time.count(), "s", 1}; }

/// The figure of a start that is over: a leg's, that of both together, or the battery's.
struct StartOver {
  Message where;
  Figure sum, base, average, limit;
  Seconds time;
};
template <class Q>
bool isOver(const StartFigure<Q>& figure) {
  return figure.verdict == Verdict::over && figure.likelyLimit;
}
template <class Q>
StartOver overOf(Message where, const StartFigure<Q>& figure, const char* unit, int decimals) {
  const auto shown = [&](const Q& value) { return Figure{value.count(), unit, decimals}; };
  return {std::move(where),          shown(figure.likelySum),    shown(figure.likelyBase),
          shown(figure.averageBase), shown(*figure.likelyLimit), figure.likelyTime};
}
std::optional<StartOver> startOver(const StartCheck& check) {
  for (const Leg which : {check.worstLeg, otherLeg(check.worstLeg)}) {
    const auto& leg = check.leg[index(which)];
    if (leg && isOver(*leg)) return overOf(say(kOnLeg, std::string(legName(which))), *leg, "A", 1);
  }
  if (isOver(check.total)) return overOf(say(kOnBoth), check.total, "VA", 0);
  if (isOver(check.real)) return overOf(say(kOnBoth), check.real, "W", 0);
  if (check.battery && isOver(*check.battery)) return overOf(say(kOnBattery), *check.battery, "A", 1);
  return std::nullopt;
}

/// Only the battery's side is not known; one finding asks for its figures, not one a motor.
bool batteryAlone(const StartCheck& check) {
  const auto within = [](const auto& figure) { return figure.verdict == Verdict::within; };
  return !check.battery && within(check.total) && within(check.real) &&
         std::all_of(check.leg.begin(), check.leg.end(),
                     [&](const auto& leg) { return !leg || within(*leg); });
}

void starts(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in) || in.starts == nullptr) return;
  for (const StartCheck& check : in.starts->checks) {
    if (check.loads.empty()) continue;
    const std::string name = motorName(in.plan, check.loads.front());
    const std::vector<EntityRef> places{motorPlace(check.loads.front())};
    if (const auto over = startOver(check); over && check.verdict == Verdict::over) {
      out.add("start.over", Severity::mustFix, kStartOnBase, say(kStartOverPlain, name),
              say(kStartOverTrade, name, std::vector{over->where}, over->sum, over->base, over->average,
                  over->limit, seconds(over->time)),
              places);
    } else if (check.verdict == Verdict::notKnown && !batteryAlone(check)) {
      const auto& leg = check.leg[index(check.worstLeg)];
      out.add("start.unknown", Severity::checkOnSite, kStartOnBase, say(kStartUnknownPlain, name),
              leg && leg->highLimit ? say(kStartUnknownTrade, name, std::string(legName(check.worstLeg)),
                                          amperes(leg->likelySum.count()), amperes(leg->highSum.count()),
                                          amperes(leg->highLimit->count()))
                                    : say(kStartUnknownNoLimitTrade, name),
              places);
    }
  }
  if (in.starts->worstPair && in.starts->worstPair->verdict == Verdict::over &&
      in.starts->worstPair->loads.size() == 2) {
    const StartCheck& pair = *in.starts->worstPair;
    const std::string a = motorName(in.plan, pair.loads[0]), b = motorName(in.plan, pair.loads[1]);
    if (const auto over = startOver(pair)) {
      out.add("start.pair", Severity::advice, kStartPair, say(kPairPlain, a, b),
              say(kPairTrade, listed({a, b}), std::vector{over->where}, over->sum, over->limit),
              {motorPlace(pair.loads[0]), motorPlace(pair.loads[1])});
    }
  }
  if (in.starts->allAtOnce && in.starts->allAtOnce->verdict == Verdict::over) {
    if (const auto over = startOver(*in.starts->allAtOnce)) {
      out.add("start.all_at_once", Severity::advice, kStartPair, say(kAllPlain),
              say(kAllTrade, std::vector{over->where}, over->sum, over->limit), {at(backupOf(in))});
    }
  }
}

// A motor of which nobody said how it starts has no start in the figures.
void startKind(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  for (const auto& circuit : in.plan.circuits) {
    if (!backedUp(in.plan, *circuit)) continue;
    for (const Load& load : circuit->loads) {
      if (!load.start.is(StartKind::none)) continue;
      const bool motor = load.horsepower || load.lockedRotor.value || !load.codeLetter.empty() ||
                         !load.startClass.is(StartClass::unknown) ||
                         load.calculationClass.is(LoadClass::motor) ||
                         load.calculationClass.is(LoadClass::airConditioning) ||
                         load.calculationClass.is(LoadClass::heatPump);
      if (!motor) continue;
      out.add("start.kind", Severity::mustFix, kStartOnBase, say(kKindPlain, nameOf(load, *circuit)),
              say(kKindTrade, nameOf(load, *circuit)), {at(load)});
    }
  }
}

// No motor starts across the line on less than it runs on; the running amperes are easily read in their
// place.
void lockedRotor(const ReviewInput& in, Findings& out) {
  constexpr double kLeastTimes = 2.0;  // common practice, no source
  for (const auto& circuit : in.plan.circuits) {
    for (const Load& load : circuit->loads) {
      if (!load.start.is(StartKind::acrossTheLine) || !load.lockedRotor.value) continue;
      std::optional<double> running;
      if (load.runningCurrent.value) running = load.runningCurrent.value->count();
      if (load.running.value && load.ratedVoltage > 0) {
        const double factor = load.powerFactor.value ? std::max(0.1, load.powerFactor.value->count()) : 1.0;
        running = load.running.value->count() / factor / load.ratedVoltage;
      }
      if (!running || load.lockedRotor.value->count() >= *running * kLeastTimes) continue;
      out.add(
          "start.locked_rotor_low", Severity::mustFix, kStartOnBase, say(kLowPlain, nameOf(load, *circuit)),
          say(kLowTrade, nameOf(load, *circuit), amperes(load.lockedRotor.value->count()), amperes(*running)),
          {at(load)});
    }
  }
}

// A point of the overload curve carries at least what the unit carries all day; amperes that the label does
// not give follow from its watts.
void curve(const ReviewInput& in, Findings& out) {
  const Inverter& inverter = *in.plan.inverter;
  const InverterLimits limits = inverterLimits(inverter, in.tables);
  const double units = std::max(1, inverter.units);
  constexpr double kRounded = 1.0 - 1e-9;
  for (std::size_t i = 0; i < inverter.overload.size(); ++i) {
    const OverloadPoint& point = inverter.overload[i];
    const bool watts =
        point.watts && limits.total && point.watts->count() * units < limits.total->count() * kRounded;
    const bool current =
        point.legCurrent && limits.leg && point.legCurrent->count() * units < limits.leg->count() * kRounded;
    if (!watts && !current) continue;
    out.add("inverter.curve_below", Severity::mustFix, {}, say(kBelowPlain),
            say(kBelowTrade, seconds(point.time),
                watts ? Figure{point.watts->count(), "W", 0} : amperes(point.legCurrent->count()),
                watts ? Figure{limits.total->count() / units, "W", 0} : amperes(limits.leg->count() / units)),
            {{RecordKind::overloadPoint, 0, static_cast<std::int32_t>(i)}});
  }
}

void ratings(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  const InverterLimits limits = inverterLimits(*in.plan.inverter, in.tables);
  if (!limits.leg || (!limits.total && !limits.totalApparent)) {
    out.add("inverter.ratings", Severity::checkOnSite, kLegLoad, say(kRatingsPlain), say(kRatingsTrade),
            {at(RecordKind::inverter)});
  }
  const bool motors = in.starts != nullptr && !in.starts->motors.empty();
  if (motors && limits.curve.empty()) {
    out.add("inverter.curve", Severity::checkOnSite, kStartOnBase, say(kCurvePlain), say(kCurveTrade),
            {at(RecordKind::inverter)});
  }
}

// Cells colder than their listing charges them, and two currents that cannot both be.
void cells(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  const Battery& battery = *in.plan.battery;
  const std::vector<EntityRef> places{at(RecordKind::battery)};
  if (battery.cellTemperature && battery.chargeCutOff && *battery.cellTemperature < *battery.chargeCutOff) {
    out.add("battery.too_cold", Severity::checkOnSite, kRuntime, say(kTooColdPlain),
            say(kTooColdTrade, Figure{battery.cellTemperature->inCelsius(), "°C", 1},
                Figure{battery.chargeCutOff->inCelsius(), "°C", 1}),
            places);
  }
  if (battery.peakCurrent && battery.continuousCurrent && *battery.peakCurrent < *battery.continuousCurrent) {
    out.add("battery.peak_low", Severity::checkOnSite, kBatteryCurrent, say(kPeakLowPlain),
            say(kPeakLowTrade, amperes(battery.peakCurrent->count()),
                amperes(battery.continuousCurrent->count())),
            places);
  }
}

void battery(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in)) return;
  const Battery& battery = *in.plan.battery;
  const Inverter& inverter = *in.plan.inverter;
  const std::vector<EntityRef> places{at(RecordKind::battery)};
  const bool motors = in.starts != nullptr && !in.starts->motors.empty();
  const Watts load = in.hour->total.likelyPeak.likely;
  const std::optional<BatteryWatts> power = batteryPower(inverter, load);
  if (!battery.continuousCurrent || !inverter.lowestInputVoltage || (motors && !battery.peakCurrent)) {
    out.add("battery.missing", Severity::checkOnSite, kBatteryCurrent, say(kBatteryMissingPlain),
            say(kBatteryMissingTrade), places);
  }
  if (battery.continuousCurrent && inverter.lowestInputVoltage && power) {
    const DcAmperes current = *power / *inverter.lowestInputVoltage;
    const DcAmperes limit = *battery.continuousCurrent * std::max(1, battery.packs);
    if (compare(current, current, std::optional(limit)) == Verdict::over) {
      out.add(
          "battery.over", Severity::mustFix, kBatteryCurrent, say(kBatteryOverPlain),
          say(kBatteryOverTrade, watts(load.count()), Figure{inverter.lowestInputVoltage->count(), "V", 1},
              amperes(current.count()), amperes(limit.count())),
          places);
    }
  }
  if (battery.restart <= battery.floor) {
    out.add("battery.restart", Severity::advice, kRuntime, say(kRestartPlain),
            say(kRestartTrade, percent(battery.restart.count()), percent(battery.floor.count())), places);
  }
  if (battery.reserve < battery.floor) {
    out.add("battery.reserve", Severity::advice, kRuntime, say(kReservePlain),
            say(kReserveTrade, percent(battery.reserve.count()), percent(battery.floor.count())), places);
  }
}

void endsByOverload(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in) || in.outage == nullptr || !in.outage->known) return;
  const OutageEnd reason = in.outage->likely.reason;
  if (reason != OutageEnd::legOverload && reason != OutageEnd::totalOverload &&
      reason != OutageEnd::batteryCurrent)
    return;
  const Figure hours{in.outage->likely.end.count(), "h", 1};
  out.add("outage.overload", Severity::mustFix, kLegLoad,
          say(kEndsPlain, ClockTime{in.outage->endLikely.minutes()}),
          say(kEndsTrade, hours,
              watts(in.outage->likely.points.empty() ? 0.0 : in.outage->likely.points.back().load.count())),
          {at(backupOf(in))});
}

/// Likely running watts of a load, entered as watts or as amperes.
std::optional<double> runningWatts(const Load& load) {
  if (load.running.value) return load.running.value->count();
  if (load.runningCurrent.value) {
    return load.runningCurrent.value->count() * load.ratedVoltage *
           load.powerFactor.value.value_or(Fraction(1)).count();
  }
  return std::nullopt;
}

bool isVehicle(const Load& load, const Circuit& circuit) {
  for (const std::string* text : {&load.name, &load.catalogueId, &circuit.name, &circuit.serves}) {
    std::string word;
    for (std::size_t i = 0; i <= text->size(); ++i) {
      const char c = i < text->size() ? (*text)[i] : ' ';
      if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
        word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        continue;
      }
      if (word == "ev" || word == "evse" || word == "vehicle") return true;
      word.clear();
    }
  }
  return false;
}

void whatIsOnTheCircuits(const ReviewInput& in, Findings& out) {
  for (const Circuit* circuit : openCircuits(in, "circuit.loads")) {
    out.add("load.none", Severity::checkOnSite, kRuntime, say(kNoLoadsPlain, nameOf(*circuit)),
            say(kNoLoadsTrade, nameOf(*circuit)), {at(*circuit)});
  }
  for (const auto& circuit : in.plan.circuits) {
    const bool backed = backedUp(in.plan, *circuit);
    for (const Load& load : circuit->loads) {
      const std::string name = nameOf(load, *circuit);
      if (load.medical) {
        out.add("load.medical", Severity::checkOnSite, kMedical, say(kMedicalPlain, name),
                say(kMedicalTrade, name), {at(load)});
      }
      if (!backed) continue;
      const std::optional<double> running = runningWatts(load);
      if (!running && !load.running.low && !load.runningCurrent.low) {
        out.add("load.watts", Severity::checkOnSite, kRuntime, say(kWattsPlain, name), say(kWattsTrade, name),
                {at(load)});
      }
      if (isVehicle(load, *circuit)) {
        out.add("load.vehicle", Severity::advice, kHeater, say(kVehiclePlain, name),
                say(kVehicleTrade, name, watts(running.value_or(0))), {at(load)});
      } else if (load.kind.is(LoadKind::resistance) && running && *running > kHeaterWatts) {
        out.add("load.heater", Severity::advice, kHeater, say(kHeaterPlain, name),
                say(kHeaterTrade, name, watts(*running)), {at(load)});
      }
    }
  }
}

constexpr Rule kRules[] = {legs,    total, starts,  startKind,      lockedRotor,        curve,
                           ratings, cells, battery, endsByOverload, whatIsOnTheCircuits};

}  // namespace

std::span<const Rule> loadRules() { return kRules; }

}  // namespace stayalight::reviewing
