#include <algorithm>

#include "core/use/hour_loads.h"
#include "core/use/hour_working.h"

namespace stayalight {
namespace {

constexpr std::array<End, 3> kEnds = {End::low, End::likely, End::high};

template <class Q>
void setAt(Range<Q>& range, End end, Q value) {
  (end == End::low ? range.low : end == End::likely ? range.likely : range.high) = value;
}

/// One sum of one hour: a leg's or that of both.
struct SumOf {
  Measure apparent, watts;
  AcVolts volts;  ///< VA over these are amperes
  std::optional<std::size_t> leg;
};

bool partOf(const Draw& draw, const SumOf& sum) { return !sum.leg || draw.onLeg[*sum.leg]; }

class HourSums {
 public:
  explicit HourSums(const HourLoads& hour)
      : hour_(hour), draws_(hour.draws()), uses_(hour.uses()), system_(hour.system()) {}

  void peaks(const SumOf& sum, HourLoad& load) const {
    for (const End end : kEnds) {
      const double peak = hour_.peak(sum.apparent, end);
      setAt(load.likelyPeakApparent, end, VoltAmperes(peak));
      setAt(load.likelyPeakCurrent, end, VoltAmperes(peak) / sum.volts);
      setAt(load.likelyPeak, end, Watts(hour_.peak(sum.watts, end)));
    }
    const bool known =
        std::all_of(draws_.begin(), draws_.end(), [&](const Draw& d) { return d.known || !partOf(d, sum); });
    odds(sum, load, known);
    judge(load, known);
  }

 private:
  void odds(const SumOf& sum, HourLoad& load, bool known) const {
    std::optional<double> vaLimit;
    if (load.limit) vaLimit = load.limit->count() * sum.volts.count();
    if (load.limitApparent) vaLimit = load.limitApparent->count();
    std::optional<double> wattLimit;
    if (load.limitWatts) wattLimit = load.limitWatts->count();
    if (!vaLimit && !wattLimit) return;
    const auto over = [&](End end) {
      double odds = 0.0;
      if (vaLimit) odds = hour_.sum(sum.apparent, end).probabilityOver(*vaLimit);
      if (wattLimit) odds = std::max(odds, hour_.sum(sum.watts, end).probabilityOver(*wattLimit));
      return odds;
    };
    load.oddsOverHigh = over(End::high);
    if (!known) return;
    load.oddsOver = over(End::likely);
    double times = 0.0;
    if (vaLimit) {
      if (const auto n = timesOver(sum, sum.apparent, *vaLimit))
        times = *n;
      else
        return;
    }
    if (wattLimit) {
      if (const auto n = timesOver(sum, sum.watts, *wattLimit))
        times = std::max(times, *n);
      else
        return;
    }
    load.timesOver = times;
  }

  // Starts an hour of each load, times the chance that the others lie where this load carries them over.
  std::optional<double> timesOver(const SumOf& sum, Measure measure, double limit) const {
    const Cumulative& all = hour_.sum(measure, End::likely);
    double times = 0.0;
    for (std::size_t i = 0; i < draws_.size(); ++i) {
      if (!partOf(draws_[i], sum)) continue;
      const double share = shareOf(draws_[i], measure, End::likely, system_);
      if (share <= 0.0) continue;
      if (!uses_[i].starts) return std::nullopt;
      if (uses_[i].starts->likely <= 0.0) continue;
      times += uses_[i].starts->likely * all.probabilityCarriedOver(limit, share, uses_[i].on.likely);
    }
    return times;
  }

  static void judge(HourLoad& load, bool known) {
    load.verdict = Verdict::notKnown;
    if (!load.limit && !load.limitWatts && !load.limitApparent) return;
    load.verdict = known ? Verdict::within : Verdict::notKnown;
    const auto hold = [&load](const auto& peak, const auto& limit) {
      if (limit) load.verdict = worse(load.verdict, compare(peak.likely, peak.high, limit));
    };
    hold(load.likelyPeakCurrent, load.limit);
    hold(load.likelyPeak, load.limitWatts);
    hold(load.likelyPeakApparent, load.limitApparent);
  }

  const HourLoads& hour_;
  const std::vector<Draw>& draws_;
  const std::vector<HourUse>& uses_;
  const SystemVoltages& system_;
};

}  // namespace

HourFigures hourFigures(const HourLoads& hour, const InverterLimits& limits, Working* working) {
  const std::vector<Draw>& draws = hour.draws();
  const std::vector<HourUse>& uses = hour.uses();
  const SystemVoltages& system = hour.system();
  const AcVolts lineVolts = system.single ? system.legToNeutral : system.legToLeg;
  HourFigures out;
  out.hour = hour.hour();
  out.allKnown = std::all_of(draws.begin(), draws.end(), [](const Draw& draw) { return draw.known; });

  LegPower connected;
  std::array<LegPower, 3> average;
  for (std::size_t i = 0; i < draws.size(); ++i) {
    connected += draws[i].likely;
    for (std::size_t e = 0; e < kEnds.size(); ++e) {
      average[e] += powerAt(draws[i], kEnds[e]) * at(uses[i].on, kEnds[e]);
      for (std::size_t leg = 0; leg < 2; ++leg) {
        const double watts =
            shareOf(draws[i], leg == 0 ? Measure::wattsL1 : Measure::wattsL2, kEnds[e], system);
        setAt(out.leg[leg].average, kEnds[e],
              at(out.leg[leg].average, kEnds[e]) + Watts(watts * at(uses[i].on, kEnds[e])));
      }
    }
  }
  for (std::size_t e = 0; e < kEnds.size(); ++e) {
    for (const Leg leg : {Leg::l1, Leg::l2})
      setAt(out.leg[index(leg)].averageCurrent, kEnds[e], legCurrent(average[e], system, leg));
    setAt(out.total.average, kEnds[e], average[e].total().real);
    setAt(out.total.averageCurrent, kEnds[e], average[e].total().apparent() / lineVolts);
    if (kEnds[e] == End::likely) out.neutralAverage = currents(average[e], system).neutralMagnitude();
  }
  out.total.connected = connected.total();
  out.total.connectedCurrent = connected.total().apparent() / lineVolts;
  out.total.limitWatts = limits.total;
  out.total.limitApparent = limits.totalApparent;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    HourLoad& load = out.leg[index(leg)];
    load.connected = legPower(connected, system, leg);
    load.connectedCurrent = legCurrent(connected, system, leg);
    load.limit = limits.leg;
    load.limitWatts = limits.legWatts;
  }

  const HourSums sums(hour);
  sums.peaks({Measure::apparentL1, Measure::wattsL1, system.legToNeutral, 0}, out.leg[0]);
  sums.peaks({Measure::apparentL2, Measure::wattsL2, system.legToNeutral, 1}, out.leg[1]);
  sums.peaks({Measure::apparent, Measure::watts, lineVolts, std::nullopt}, out.total);

  double neutral = 0.0;
  for (const Measure measure : {Measure::neutralL1, Measure::neutralL2}) {
    const double peak =
        distributionOf(draws, uses, measure, End::likely, system).quantile(kLikelyPeakQuantile);
    // Legs in phase add up in the neutral.
    neutral = system.single ? neutral + peak : std::max(neutral, peak);
  }
  out.neutralWorst = VoltAmperes(neutral) / system.legToNeutral;
  if (working != nullptr) recordHour(hour, out, *working);
  return out;
}

}  // namespace stayalight
