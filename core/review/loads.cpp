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
constexpr MessageId kStartOverLegTrade{"review.start.over_leg.trade"};
constexpr MessageId kStartOverTotalTrade{"review.start.over_total.trade"};
constexpr MessageId kStartOverBatteryTrade{"review.start.over_battery.trade"};
constexpr MessageId kStartUnknownPlain{"review.start.unknown.plain"};
constexpr MessageId kStartUnknownTrade{"review.start.unknown.trade"};
constexpr MessageId kStartUnknownNoLimitTrade{"review.start.unknown_no_limit.trade"};
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

/// The figure of a start that is over, said for a tradesperson: a leg, both together, or the battery.
Message startOver(const StartCheck& check, const std::string& name) {
  for (const Leg which : {check.worstLeg, otherLeg(check.worstLeg)}) {
    const auto& leg = check.leg[index(which)];
    if (!leg || leg->verdict != Verdict::over || !leg->likelyLimit) continue;
    return say(kStartOverLegTrade, name, std::string(legName(which)), amperes(leg->likelySum.count()),
               amperes(leg->likelyBase.count()), amperes(leg->averageBase.count()),
               amperes(leg->likelyLimit->count()), seconds(leg->likelyTime));
  }
  if (check.total.verdict == Verdict::over && check.total.likelyLimit) {
    return say(kStartOverTotalTrade, name, Figure{check.total.likelySum.count(), "VA", 0},
               Figure{check.total.likelyBase.count(), "VA", 0},
               Figure{check.total.likelyLimit->count(), "VA", 0}, seconds(check.total.likelyTime));
  }
  if (check.battery && check.battery->likelyLimit) {
    return say(kStartOverBatteryTrade, name, amperes(check.battery->likelySum.count()),
               amperes(check.battery->likelyLimit->count()), seconds(check.battery->likelyTime));
  }
  return say(kStartOverTotalTrade, name, Figure{check.total.likelySum.count(), "VA", 0},
             Figure{check.total.likelyBase.count(), "VA", 0}, Figure{0, "VA", 0},
             seconds(check.total.likelyTime));
}

void starts(const ReviewInput& in, Findings& out) {
  if (!hasBackup(in) || in.starts == nullptr) return;
  for (const StartCheck& check : in.starts->checks) {
    if (check.loads.empty()) continue;
    const std::string name = motorName(in.plan, check.loads.front());
    const std::vector<EntityRef> places{motorPlace(check.loads.front())};
    if (check.verdict == Verdict::over) {
      out.add("start.over", Severity::mustFix, kStartOnBase, say(kStartOverPlain, name),
              startOver(check, name), places);
    } else if (check.verdict == Verdict::notKnown) {
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
    const auto& leg = pair.leg[index(pair.worstLeg)];
    const std::vector<Message> names = listed({a, b});
    out.add(
        "start.pair", Severity::advice, kStartPair, say(kPairPlain, a, b),
        leg && leg->likelyLimit
            ? say(kPairTrade, names, std::string(legName(pair.worstLeg)), amperes(leg->likelySum.count()),
                  amperes(leg->likelyLimit->count()))
            : say(kPairTrade, names, std::string("L1 + L2"), Figure{pair.total.likelySum.count(), "VA", 0},
                  Figure{pair.total.likelyLimit.value_or(VoltAmperes(0)).count(), "VA", 0}),
        {motorPlace(pair.loads[0]), motorPlace(pair.loads[1])});
  }
  if (in.starts->allAtOnce && in.starts->allAtOnce->verdict == Verdict::over) {
    const StartCheck& all = *in.starts->allAtOnce;
    const auto& leg = all.leg[index(all.worstLeg)];
    const double sum = leg ? leg->likelySum.count() : 0.0;
    const double limit = leg && leg->likelyLimit ? leg->likelyLimit->count() : 0.0;
    out.add("start.all_at_once", Severity::advice, kStartPair, say(kAllPlain),
            say(kAllTrade, std::string(legName(all.worstLeg)), amperes(sum), amperes(limit)),
            {at(backupOf(in))});
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

constexpr Rule kRules[] = {legs, total, starts, ratings, battery, endsByOverload, whatIsOnTheCircuits};

}  // namespace

std::span<const Rule> loadRules() { return kRules; }

}  // namespace stayalight::reviewing
