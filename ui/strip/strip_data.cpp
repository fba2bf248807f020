#include "ui/strip/strip_data.h"

#include <algorithm>
#include <cmath>

#include "core/sun/daylight.h"

namespace stayalight {
namespace {

constexpr double kBefore = 6.0;     // hours shown before the power goes out
constexpr double kAfter = 3.0;      // and after the last end
constexpr double kShortest = 24.0;  // length of the axis at least
constexpr double kPercent = 100.0;

std::vector<QPointF> charge(const OutageRun& run, double start) {
  std::vector<QPointF> points;
  points.reserve(run.points.size());
  for (const OutagePoint& point : run.points)
    points.emplace_back(start + point.at.count(), point.charge * kPercent);
  return points;
}

// Each point holds until the next one.
std::vector<QPointF> steps(const OutageRun& run, double start, Leg leg,
                           std::array<AcAmperes, 2> OutagePoint::*member) {
  std::vector<QPointF> points;
  for (std::size_t i = 0; i < run.points.size(); ++i) {
    const double value = (run.points[i].*member)[index(leg)].count();
    const double from = start + run.points[i].at.count();
    if (i + 1 == run.points.size()) break;
    points.emplace_back(from, value);
    points.emplace_back(start + run.points[i + 1].at.count(), value);
  }
  return points;
}

double valueAt(const std::vector<QPointF>& points, double x, double after) {
  if (points.empty()) return after;
  if (x <= points.front().x()) return points.front().y();
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (x > points[i].x()) continue;
    const double width = points[i].x() - points[i - 1].x();
    if (width <= 0) return points[i].y();
    const double t = (x - points[i - 1].x()) / width;
    return points[i - 1].y() + t * (points[i].y() - points[i - 1].y());
  }
  return after;
}

}  // namespace

StripData stripData(const Scenario& scenario, const Assessment& a, std::optional<double> first) {
  StripData data;
  data.start = scenario.start.minutes() / 60.0;
  data.first = first.value_or(std::floor((data.start - kBefore) / 3.0) * 3.0);
  while (data.start < data.first) data.start += 24.0;
  const OutageFigures& o = a.outage;
  data.limit = a.limits.leg ? std::optional(a.limits.leg->count()) : std::nullopt;
  double last = data.start + kShortest;
  if (o.known) {
    data.known = true;
    data.floor = o.energy.floor * kPercent;
    data.reserve = o.energy.reserve * kPercent;
    data.low = charge(o.low, data.start);
    data.likely = charge(o.likely, data.start);
    data.high = charge(o.high, data.start);
    data.endLow = data.start + o.runtime.low.count();
    data.endLikely = data.start + o.runtime.likely.count();
    data.endHigh = data.start + o.runtime.high.count();
    data.ends = o.likely.reason != OutageEnd::beyondHorizon && o.likely.reason != OutageEnd::notKnown;
    last = std::max(last, data.endHigh + kAfter);
    for (const Leg leg : {Leg::l1, Leg::l2}) {
      data.average[index(leg)] = steps(o.likely, data.start, leg, &OutagePoint::legAverage);
      data.peak[index(leg)] = steps(o.likely, data.start, leg, &OutagePoint::legLikelyPeak);
    }
  }
  data.last = data.first + std::ceil((last - data.first) / 6.0) * 6.0;
  double most = data.limit.value_or(1.0);
  for (const auto& leg : data.peak) {
    for (const QPointF& point : leg) most = std::max(most, point.y());
  }
  data.amperes = most * 1.15;
  return data;
}

std::vector<QPointF> nights(const Plan& plan, double first, double last) {
  const std::optional<SunTimes> times = sunTimes(*plan.site, plan.scenario->month);
  if (!times || times->kind == Daylight::upAllDay) return {};
  if (times->kind == Daylight::downAllDay) return {{first, last}};
  constexpr double kDay = 24.0;
  std::vector<QPointF> all;
  for (double day = kDay * (std::floor(first / kDay) - 1.0); day < last + kDay; day += kDay) {
    const double from = std::max(first, day + times->set.count());
    const double to = std::min(last, day + kDay + times->rise.count());
    if (from < to) all.emplace_back(from, to);
  }
  return all;
}

std::optional<StripReading> readingAt(const StripData& data, double hour) {
  if (!data.known || hour < data.start) return std::nullopt;
  StripReading reading;
  reading.hour = hour;
  reading.low = valueAt(data.low, hour, data.floor);
  reading.likely = valueAt(data.likely, hour, data.floor);
  reading.high = valueAt(data.high, hour, data.floor);
  reading.dark = data.ends && hour > data.endLikely;
  for (std::size_t leg = 0; leg < 2; ++leg) {
    reading.average[leg] = reading.dark ? 0.0 : valueAt(data.average[leg], hour, 0.0);
    reading.peak[leg] = reading.dark ? 0.0 : valueAt(data.peak[leg], hour, 0.0);
  }
  return reading;
}

QString clockText(double hour, const Language& language) {
  const int minutes = static_cast<int>(std::lround(hour * 60.0)) % 1440;
  return QString::fromStdString(language.clock(ClockTime{(minutes + 1440) % 1440}));
}

QString aboutClockText(double hour, const Language& language) {
  return clockText(std::round(hour * 12.0) / 12.0, language);
}

}  // namespace stayalight
