#include <algorithm>

#include "core/use/use.h"

namespace stayalight {
namespace {

bool holds(const UseWindow& window, Season season, int hour) {
  if (!window.season.known()) return false;
  if (!window.season.is(Season::all) && !window.season.is(season)) return false;
  if (window.from.minutes() == window.to.minutes()) return true;
  // A window that is no whole hours counts in each hour it touches.
  constexpr int kHour = 60, kDay = 24;
  const int from = window.from.hour();
  const int to = (window.to.minutes() + kHour - 1) / kHour % kDay;
  if (from == to) return true;
  return from < to ? hour >= from && hour < to : hour >= from || hour < to;
}

Range<double> plain(const Range<Fraction>& range) {
  return {range.low.count(), range.likely.count(), range.high.count()};
}
Range<double> plain(const Range<PerHour>& range) {
  return {range.low.count(), range.likely.count(), range.high.count()};
}
Range<double> times(const Range<double>& range, double factor) {
  return {range.low * factor, range.likely * factor, range.high * factor};
}
/// A window's own figure is as well known as the load's, or typical where the load has none.
Grade gradeOf(bool entered, Grade grade) { return entered ? grade : Grade::typical; }

}  // namespace

Season seasonOf(int month, bool southern) {
  const int quarter = (month % 12) / 3;  // December, January, February: 0
  constexpr Season seasons[4] = {Season::winter, Season::spring, Season::summer, Season::autumn};
  return seasons[(quarter + (southern ? 2 : 0)) % 4];
}

HourUse hourUse(const Load& load, int month, int hour, bool southern) {
  const UseWindow* window = nullptr;
  if (!load.windows.empty()) {
    const Season season = seasonOf(month, southern);
    for (const UseWindow& candidate : load.windows) {
      if (holds(candidate, season, hour) && (window == nullptr || candidate.share > window->share))
        window = &candidate;
    }
    if (window == nullptr) return {exactly(0.0), exactly(0.0)};
  }
  const double share = window != nullptr ? std::clamp(window->share.count(), 0.0, 1.0) : 1.0;

  HourUse use;
  if (window != nullptr && window->duty) {
    use.on = spread(FactKind::duty, gradeOf(load.duty.value.has_value(), load.duty.grade),
                    window->duty->count(), {}, {});
  } else if (const auto duty = spread(FactKind::duty, load.duty)) {
    use.on = plain(*duty);
  } else {
    use.on = exactly(1.0);
  }
  use.on = times(use.on, share);

  if (window != nullptr && window->startsPerHour) {
    use.starts = times(spread(FactKind::startsPerHour,
                              gradeOf(load.startsPerHour.value.has_value(), load.startsPerHour.grade),
                              window->startsPerHour->count(), {}, {}),
                       share);
  } else if (const auto starts = spread(FactKind::startsPerHour, load.startsPerHour)) {
    use.starts = times(plain(*starts), share);
  } else if (use.on.low >= 1.0 || use.on.high <= 0.0) {
    use.starts = exactly(0.0);  // on, or off, for the whole hour: it does not start
  }
  return use;
}

}  // namespace stayalight
