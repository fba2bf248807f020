#include <algorithm>
#include <array>

#include "core/use/use.h"

namespace stayalight {
namespace {

struct Factors {
  double low, high;
};

// What a grade says about a value, as factors on it: 10th and 90th percentile. Common practice, no source.
// Columns: unknown, typical, nameplate, traced, measured. The watts of a nameplate are the most a device
// takes; what is entered counts as likely, so that the likely figure never falls below what stands on the
// plate.
constexpr std::array<std::array<Factors, 5>, 9> kFactors = {{
    {{{0.50, 2.00}, {0.70, 1.40}, {0.60, 1.00}, {0.90, 1.10}, {0.95, 1.05}}},  // watts
    {{{0.50, 2.00}, {0.70, 1.40}, {0.60, 1.00}, {0.90, 1.10}, {0.95, 1.05}}},  // amperes
    {{{0.70, 1.15}, {0.85, 1.10}, {0.95, 1.05}, {0.95, 1.05}, {0.97, 1.03}}},  // power factor
    {{{0.50, 2.00}, {0.70, 1.40}, {0.70, 1.40}, {0.90, 1.10}, {0.95, 1.05}}},  // duty
    {{{0.50, 2.00}, {0.70, 1.40}, {0.70, 1.40}, {0.90, 1.10}, {0.95, 1.05}}},  // starts an hour
    {{{0.50, 2.00}, {0.70, 1.25}, {0.90, 1.10}, {0.90, 1.10}, {0.95, 1.05}}},  // start current
    {{{0.50, 2.00}, {0.50, 2.00}, {0.80, 1.25}, {0.80, 1.25}, {0.90, 1.10}}},  // start time
    {{{0.80, 1.60}, {0.80, 1.60}, {0.90, 1.10}, {0.90, 1.10}, {0.95, 1.05}}},  // power factor at start
    {{{0.85, 1.10}, {0.94, 1.05}, {0.90, 1.00}, {0.95, 1.05}, {0.97, 1.03}}},  // health of a battery
}};

Factors bounds(FactKind kind) {
  switch (kind) {
    case FactKind::powerFactor:
    case FactKind::startPowerFactor:
      return {0.1, 1.0};
    case FactKind::duty:
      return {0.0, 1.0};
    case FactKind::health:
      return {0.0, 1.0};
    default:
      return {0.0, 1e300};
  }
}

}  // namespace

Range<double> spread(FactKind kind, Grade grade, std::optional<double> value, std::optional<double> low,
                     std::optional<double> high) {
  const Factors factors = kFactors[static_cast<std::size_t>(kind)][static_cast<std::size_t>(grade)];
  const Factors range = bounds(kind);
  // Without a value the middle of its two ends; without any of them nothing is there to spread.
  const double likely = value ? *value : low && high ? (*low + *high) / 2.0 : low ? *low : high.value_or(0.0);
  const auto held = [&range](double x) { return std::clamp(x, range.low, range.high); };
  Range<double> out{held(low.value_or(likely * factors.low)), held(likely),
                    held(high.value_or(likely * factors.high))};
  out.low = std::min(out.low, out.likely);
  out.high = std::max(out.high, out.likely);
  return out;
}

}  // namespace stayalight
