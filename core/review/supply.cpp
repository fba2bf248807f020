// The supply as it is entered: breakers of the feeder, several inverters, the battery behind them.

#include <algorithm>

#include "core/review/rules.h"
#include "core/transfer/battery_output.h"
#include "core/transfer/breaker_in_plan.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kProtected{"conductor.protected"};
constexpr RuleId kListing{"source.label_device"};
constexpr RuleId kCapacity{"capacity.manual"};
constexpr RuleId kPoles{"panel.protection"};

constexpr MessageId kOnePolePlain{"review.feeder.one_pole.plain"};
constexpr MessageId kOnePoleTrade{"review.feeder.one_pole.trade"};
constexpr MessageId kTwoBreakersPlain{"review.feeder.two_breakers.plain"};
constexpr MessageId kTwoBreakersTrade{"review.feeder.two_breakers.trade"};
constexpr MessageId kUnitsPlain{"review.inverter.units_each.plain"};
constexpr MessageId kUnitsTrade{"review.inverter.units_each.trade"};
constexpr MessageId kUnitsTradeUnknown{"review.inverter.units_each.trade_unknown"};
constexpr MessageId kBatteryPlain{"review.source.battery_below.plain"};
constexpr MessageId kBatteryTrade{"review.source.battery_below.trade"};

/// One pole feeds one leg; two breakers side by side protect no conductor together.
void supplyBreakers(const ReviewInput& in, Findings& out) {
  const bool single = voltages(in.plan, Mode::outage, in.tables).single;
  for (const Segment segment : segments(in.plan)) {
    const bool ofInverter = segment == Segment::mainToInverter || segment == Segment::inverterToSwitch ||
                            segment == Segment::inverterToBackup;
    std::vector<EntityRef> places;
    std::vector<std::string> spaces;
    for (const auto& breaker : in.plan.breakers) {
      if (!standsFor(in.plan, *breaker, segment)) continue;
      places.push_back(at(*breaker));
      spaces.push_back(spacesOf(in.plan, *breaker));
      if (breaker->poles != 1 || (single && ofInverter)) continue;
      out.add("feeder.one_pole", Severity::mustFix, kPoles,
              say(kOnePolePlain, std::vector{segmentName(segment)}),
              say(kOnePoleTrade, std::vector{segmentName(segment)}, spaces.back()), {at(*breaker)});
    }
    // Several inverters have a breaker each.
    if (places.size() < 2 || (ofInverter && in.plan.inverter->units > 1)) continue;
    out.add("feeder.two_breakers", Severity::checkOnSite, kProtected,
            say(kTwoBreakersPlain, std::vector{segmentName(segment)}),
            say(kTwoBreakersTrade, std::vector{segmentName(segment)}, listed(spaces)), places);
  }
}

/// The figures are of all units together; labels bind each of them.
void unitsEach(const ReviewInput& in, Findings& out) {
  const Inverter& inverter = *in.plan.inverter;
  if (inverter.units < 2 || in.segments == nullptr || in.segments->empty()) return;
  const auto units = static_cast<std::int64_t>(inverter.units);
  const std::vector<EntityRef> places{at(RecordKind::inverter)};
  if (inverter.maximumOutputDevice) {
    out.add(
        "inverter.units_each", Severity::checkOnSite, kListing, say(kUnitsPlain, units),
        say(kUnitsTrade, units, Figure{static_cast<double>(inverter.maximumOutputDevice->count()), "A", 0}),
        places);
  } else {
    out.add("inverter.units_each", Severity::checkOnSite, kListing, say(kUnitsPlain, units),
            say(kUnitsTradeUnknown, units), places);
  }
}

/// The packs carry less than the inverter could give: what it carries all day is theirs.
void batteryBelowInverter(const ReviewInput& in, Findings& out) {
  const Inverter& inverter = *in.plan.inverter;
  const std::optional<Watts> gives = batteryOutput(inverter, *in.plan.battery);
  if (!gives || in.hour == nullptr) return;
  const double rated = inverter.continuous->count() * std::max(1, inverter.units);
  if (gives->count() >= rated * (1.0 - 1e-9)) return;
  const int packs = std::max(1, in.plan.battery->packs);
  out.add("source.battery_below", Severity::checkOnSite, kCapacity,
          say(kBatteryPlain, watts(gives->count()), watts(rated)),
          say(kBatteryTrade, static_cast<std::int64_t>(packs),
              amperes(in.plan.battery->continuousCurrent->count()),
              Figure{inverter.lowestInputVoltage->count(), "V", 1}, watts(gives->count()), watts(rated)),
          {at(RecordKind::battery), at(RecordKind::inverter)});
}

constexpr Rule kRules[] = {supplyBreakers, unitsEach, batteryBelowInverter};

}  // namespace

std::span<const Rule> supplyRules() { return kRules; }

}  // namespace stayalight::reviewing
