#include <algorithm>

#include "core/use/coincidence.h"
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
  HourSums(const std::vector<Draw>& draws, const std::vector<HourUse>& uses, const SystemVoltages& system)
      : draws_(draws), uses_(uses), system_(system) {
    for (std::size_t e = 0; e < kEnds.size(); ++e) {
      // Where nothing is reactive, watts and volt-amperes are one distribution.
      reactive_[e] = system.wye || std::any_of(draws.begin(), draws.end(), [&](const Draw& draw) {
                       return powerAt(draw, kEnds[e]).total().reactive.count() != 0.0;
                     });
    }
  }

  void peaks(const SumOf& sum, HourLoad& load) {
    std::array<std::optional<Cumulative>, 2> apparent, watts;  // likely, high
    for (std::size_t e = 0; e < kEnds.size(); ++e) {
      const Distribution va = distributionOf(draws_, uses_, sum.apparent, kEnds[e], system_);
      const double vaPeak = va.quantile(kLikelyPeakQuantile);
      setAt(load.likelyPeakApparent, kEnds[e], VoltAmperes(vaPeak));
      setAt(load.likelyPeakCurrent, kEnds[e], VoltAmperes(vaPeak) / sum.volts);
      const bool wanted = e > 0 && (load.limit || load.limitWatts || load.limitApparent);
      if (wanted) apparent[e - 1].emplace(va);
      if (!reactive_[e]) {
        setAt(load.likelyPeak, kEnds[e], Watts(vaPeak));
        if (wanted) watts[e - 1] = apparent[e - 1];
        continue;
      }
      const Distribution w = distributionOf(draws_, uses_, sum.watts, kEnds[e], system_);
      setAt(load.likelyPeak, kEnds[e], Watts(w.quantile(kLikelyPeakQuantile)));
      if (wanted && load.limitWatts) watts[e - 1].emplace(w);
    }
    const bool known =
        std::all_of(draws_.begin(), draws_.end(), [&](const Draw& d) { return d.known || !partOf(d, sum); });
    odds(sum, load, apparent, watts, known);
    judge(load, known);
  }

 private:
  void odds(const SumOf& sum, HourLoad& load, const std::array<std::optional<Cumulative>, 2>& apparent,
            const std::array<std::optional<Cumulative>, 2>& watts, bool known) const {
    std::optional<double> vaLimit;
    if (load.limit) vaLimit = load.limit->count() * sum.volts.count();
    if (load.limitApparent) vaLimit = load.limitApparent->count();
    std::optional<double> wattLimit;
    if (load.limitWatts) wattLimit = load.limitWatts->count();
    if (!vaLimit && !wattLimit) return;
    std::array<double, 2> over{};
    for (std::size_t k = 0; k < 2; ++k) {
      if (vaLimit) over[k] = apparent[k]->probabilityOver(*vaLimit);
      if (wattLimit) over[k] = std::max(over[k], watts[k]->probabilityOver(*wattLimit));
    }
    load.oddsOverHigh = over[1];
    if (!known) return;
    load.oddsOver = over[0];
    double times = 0.0;
    if (vaLimit) {
      if (const auto n = timesOver(sum, sum.apparent, *apparent[0], *vaLimit))
        times = *n;
      else
        return;
    }
    if (wattLimit) {
      if (const auto n = timesOver(sum, sum.watts, *watts[0], *wattLimit))
        times = std::max(times, *n);
      else
        return;
    }
    load.timesOver = times;
  }

  // Starts an hour of each load, times the chance that the others lie where this load carries them over.
  std::optional<double> timesOver(const SumOf& sum, Measure measure, const Cumulative& all,
                                  double limit) const {
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

  const std::vector<Draw>& draws_;
  const std::vector<HourUse>& uses_;
  const SystemVoltages& system_;
  std::array<bool, 3> reactive_{};
};

}  // namespace

HourFigures hourFigures(const Plan& plan, const std::vector<Draw>& draws, const SystemVoltages& system,
                        const InverterLimits& limits, int month, int hour, Working* working) {
  const std::vector<const Load*> loads = loadsOf(plan, draws);
  const std::vector<HourUse> uses = usesOf(plan, loads, month, hour);
  const AcVolts lineVolts = system.single ? system.legToNeutral : system.legToLeg;
  HourFigures out;
  out.hour = hour;
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
  const Currents flowing = currents(connected, system);
  for (std::size_t e = 0; e < kEnds.size(); ++e) {
    const Currents mean = currents(average[e], system);
    for (const Leg leg : {Leg::l1, Leg::l2})
      setAt(out.leg[index(leg)].averageCurrent, kEnds[e], mean.legMagnitude(leg));
    setAt(out.total.average, kEnds[e], average[e].total().real);
    setAt(out.total.averageCurrent, kEnds[e], average[e].total().apparent() / lineVolts);
    if (kEnds[e] == End::likely) out.neutralAverage = mean.neutralMagnitude();
  }
  out.total.connected = connected.total();
  out.total.connectedCurrent = connected.total().apparent() / lineVolts;
  out.total.limitWatts = limits.total;
  out.total.limitApparent = limits.totalApparent;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    HourLoad& load = out.leg[index(leg)];
    load.connected = connected.leg[index(leg)];
    load.connectedCurrent = flowing.legMagnitude(leg);
    load.limit = limits.leg;
    load.limitWatts = limits.legWatts;
  }

  HourSums sums(draws, uses, system);
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
  if (working != nullptr) recordHour(draws, loads, uses, system, out, *working);
  return out;
}

}  // namespace stayalight
