// Overcurrent device, conductors and drop of each piece of the feeder.

#include <algorithm>

#include "core/code/conductors.h"
#include "core/code/numbers.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kFeederDevice{"feeder.device"};
constexpr RuleId kPanelProtection{"panel.protection"};
constexpr RuleId kFeederConductor{"feeder.conductor"};
constexpr RuleId kProtected{"conductor.protected"};
constexpr RuleId kSmallConductor{"conductor.small"};
constexpr RuleId kNmColumn{"conductor.nm_column"};
constexpr RuleId kDrop{"drop.advice"};
constexpr RuleId kAmbient{"conductor.ambient"};

constexpr MessageId kBusOverPlain{"review.feeder.bus_over.plain"};
constexpr MessageId kBusOverTrade{"review.feeder.bus_over.trade"};
constexpr MessageId kTooHotPlain{"review.feeder.too_hot.plain"};
constexpr MessageId kTooHotTrade{"review.feeder.too_hot.trade"};
constexpr MessageId kNoRatingTrade{"review.feeder.minimum_above_maximum.no_rating"};
constexpr MessageId kDeviceLowPlain{"review.feeder.device_low.plain"};
constexpr MessageId kDeviceLowTrade{"review.feeder.device_low.trade"};
constexpr MessageId kNoLengthPlain{"review.feeder.no_length.plain"};
constexpr MessageId kNoLengthTrade{"review.feeder.no_length.trade"};
constexpr MessageId kMinimumPlain{"review.feeder.minimum_above_maximum.plain"};
constexpr MessageId kMinimumTrade{"review.feeder.minimum_above_maximum.trade"};
constexpr MessageId kDeviceOverPlain{"review.feeder.device_over.plain"};
constexpr MessageId kDeviceOverTrade{"review.feeder.device_over.trade"};
constexpr MessageId kDeviceSmallPlain{"review.feeder.device_small.plain"};
constexpr MessageId kDeviceSmallTrade{"review.feeder.device_small.trade"};
constexpr MessageId kPanelMainPlain{"review.feeder.panel_main.plain"};
constexpr MessageId kPanelMainTrade{"review.feeder.panel_main.trade"};
constexpr MessageId kProtectedPlain{"review.feeder.not_protected.plain"};
constexpr MessageId kProtectedTrade{"review.feeder.not_protected.trade"};
constexpr MessageId kSmallPlain{"review.feeder.conductor_small.plain"};
constexpr MessageId kSmallTrade{"review.feeder.conductor_small.trade"};
constexpr MessageId kSmallTradeNone{"review.feeder.conductor_small.trade_none"};
constexpr MessageId kNmPlain{"review.feeder.nm_column.plain"};
constexpr MessageId kNmTrade{"review.feeder.nm_column.trade"};
constexpr MessageId kNeutralPlain{"review.feeder.neutral_small.plain"};
constexpr MessageId kNeutralTrade{"review.feeder.neutral_small.trade"};
constexpr MessageId kGroundPlain{"review.feeder.ground_small.plain"};
constexpr MessageId kGroundTrade{"review.feeder.ground_small.trade"};
constexpr MessageId kDropPlain{"review.feeder.drop.plain"};
constexpr MessageId kDropTrade{"review.feeder.drop.trade"};
constexpr MessageId kDropAllPlain{"review.feeder.drop_together.plain"};
constexpr MessageId kDropUtilityTrade{"review.feeder.drop_together.utility"};
constexpr MessageId kDropInverterTrade{"review.feeder.drop_together.inverter"};
constexpr MessageId kRunPlain{"review.feeder.run_not_counted.plain"};
constexpr MessageId kRunTwiceTrade{"review.feeder.run_not_counted.twice"};
constexpr MessageId kRunStrayTrade{"review.feeder.run_not_counted.stray"};
constexpr MessageId kNothingFitsPlain{"review.feeder.nothing_fits.plain"};
constexpr MessageId kNothingFitsTrade{"review.feeder.nothing_fits.trade"};
constexpr MessageId kUnknownPlain{"review.feeder.unknown.plain"};
constexpr MessageId kUnknownTrade{"review.feeder.unknown.trade"};
Figure rating(const std::optional<RatingAmperes>& amperesRating) {
  return {amperesRating ? static_cast<double>(amperesRating->count()) : 0.0, "A", 0};
}

/// The largest that stands or is chosen for it.
std::optional<RatingAmperes> standing(const DeviceChoice& device) {
  if (!device.inPlan) return device.rating;
  return device.rating ? std::max(*device.rating, *device.inPlan) : device.inPlan;
}
std::optional<RatingAmperes> smallestStanding(const DeviceChoice& device) {
  if (!device.inPlan) return device.rating;
  return device.rating && device.fixed ? std::min(*device.rating, *device.inPlan) : device.inPlan;
}

void device(const Plan& plan, const SegmentFigures& segment, const std::vector<EntityRef>& places,
            Findings& out) {
  const DeviceChoice& device = segment.device;
  const std::vector<Message> name{segmentName(segment.segment)};
  const Figure minimum = amperes(device.minimum.value_or(AcAmperes(0)).count());
  if (device.minimumAboveMaximum) {
    const std::vector<Message> from{device.maximumFrom};
    out.add("feeder.minimum_above_maximum", Severity::mustFix, device.maximumRule, say(kMinimumPlain, name),
            say(device.rating ? kMinimumTrade : kNoRatingTrade, name, minimum, rating(device.maximum), from),
            places);
  }
  if (device.aboveMaximum) {
    out.add("feeder.device_over", Severity::mustFix, device.maximumRule, say(kDeviceOverPlain, name),
            say(kDeviceOverTrade, name, rating(standing(device)), rating(device.maximum),
                std::vector<Message>{device.maximumFrom}),
            places);
  }
  const Panel* const backup = backupPanel(plan);
  if (device.aheadOfBus && backup != nullptr) {
    out.add("feeder.bus_over", Severity::mustFix, kPanelProtection, say(kBusOverPlain, nameOf(*backup)),
            say(kBusOverTrade, nameOf(*backup), rating(backup->busRating), rating(device.aheadOfBus)),
            places);
  }
  if (device.belowMinimum) {
    const std::optional<RatingAmperes> smallest = smallestStanding(device);
    const bool trips = segment.load.operating && smallest && *segment.load.operating > smallest->amperes();
    out.add("feeder.device_small", Severity::mustFix, kFeederDevice,
            say(trips ? kDeviceSmallPlain : kDeviceLowPlain, name),
            say(trips ? kDeviceSmallTrade : kDeviceLowTrade, name, rating(smallest), minimum), places);
  }
  if (device.panelMainTooSmall) {
    out.add("feeder.panel_main", Severity::mustFix, kFeederDevice, say(kPanelMainPlain),
            say(kPanelMainTrade, name, minimum), places);
  }
}

void conductor(const SegmentFigures& segment, const FeederRun* run, const std::vector<EntityRef>& places,
               const Tables& tables, Findings& out) {
  const ConductorChoice& wire = segment.conductor;
  const std::vector<Message> name{segmentName(segment.segment)};
  const std::string size = wire.size ? conductorName(*wire.size, wire.metal) : std::string("-");
  const Figure ampacity = amperes(wire.ampacity.value_or(AcAmperes(0)).count());
  // Beyond the table of ambients no size carries anything, and none is protected.
  const bool tooHot = wire.rule == kAmbient && !wire.ampacity;
  if (tooHot) {
    const Figure ambient{run != nullptr ? run->ambient.inCelsius() : 0.0, "°C", 1};
    out.add("feeder.too_hot", Severity::mustFix, kAmbient, say(kTooHotPlain, name, ambient),
            say(kTooHotTrade, name, ambient), places);
  }
  if (wire.notProtected && !tooHot) {
    out.add("feeder.not_protected", Severity::mustFix,
            wire.rule == kSmallConductor ? kSmallConductor : kProtected, say(kProtectedPlain, name),
            say(kProtectedTrade, name, rating(wire.device ? wire.device : standing(segment.device)), size,
                ampacity),
            places);
  }
  if (wire.tooSmall && !tooHot) {
    out.add("feeder.conductor_small", Severity::mustFix, kFeederConductor, say(kSmallPlain, name),
            wire.required ? say(kSmallTrade, name, size, ampacity, conductorName(*wire.required, wire.metal))
                          : say(kSmallTradeNone, name, size, ampacity),
            places);
  }
  if (wire.nmColumn) {
    const bool stops = wire.notProtected || wire.tooSmall;
    out.add("feeder.nm_column", stops ? Severity::mustFix : Severity::advice, kNmColumn, say(kNmPlain, name),
            say(kNmTrade, name, size, ampacity, std::to_string(degrees(nmColumn(tables))) + " °C"), places);
  }
  if (segment.neutralTooSmall) {
    out.add("feeder.neutral_small", Severity::mustFix, segment.neutralRule, say(kNeutralPlain, name),
            say(kNeutralTrade, name, std::vector<Message>{segment.neutralGoverns}), places);
  }
  if (segment.groundTooSmall) {
    out.add("feeder.ground_small", Severity::mustFix, segment.groundRule, say(kGroundPlain, name),
            say(kGroundTrade, name, std::vector<Message>{segment.groundGoverns}), places);
  }
}

void segments(const ReviewInput& in, Findings& out) {
  // None of these figures holds where another code does.
  if (in.segments == nullptr || canadian(in.plan)) return;
  for (const SegmentFigures& segment : *in.segments) {
    const FeederRun* run = runOf(in.plan, segment.segment);
    const std::vector<EntityRef> places{run != nullptr ? EntityRef{RecordKind::feederRun, run->id.number}
                                                       : at(RecordKind::transfer)};
    const std::size_t before = out.list().size();
    device(in.plan, segment, places, out);
    conductor(segment, run, places, in.tables, out);
    const std::vector<Message> name{segmentName(segment.segment)};
    if (segment.verdict == Verdict::over && out.list().size() == before) {
      out.add("feeder.nothing_fits", Severity::mustFix, kFeederDevice, say(kNothingFitsPlain, name),
              say(kNothingFitsTrade, name, segment.over), places);
    }
    if (run != nullptr && run->length.inMicrometres() <= 0) {
      out.add("feeder.no_length", Severity::checkOnSite, kDrop, say(kNoLengthPlain, name),
              say(kNoLengthTrade, name), places);
    }
    if (segment.drop && segment.entered) {
      const double worst = std::max(segment.drop->fraction[0], segment.drop->fraction[1]);
      if (worst > dropAdviceOneRun(in.tables).count()) {
        out.add("feeder.drop", Severity::advice, kDrop, say(kDropPlain, name),
                say(kDropTrade, name, percent(worst, 1), percent(dropAdviceOneRun(in.tables).count(), 0)),
                places);
      }
    }
    if (segment.verdict == Verdict::notKnown) {
      out.add("feeder.unknown", Severity::checkOnSite, kFeederDevice, say(kUnknownPlain, name),
              say(kUnknownTrade, name, segment.notKnown), places);
    }
  }
}

// Pieces that are each short enough may be too long together. A building apart has a figure of its own.
void wholeWay(const ReviewInput& in, Findings& out) {
  const Panel* const backup = backupPanel(in.plan);
  if (in.segments == nullptr || canadian(in.plan) || backup == nullptr || backup->separateBuilding) return;
  const double most = dropAdviceOneRun(in.tables).count();
  const bool oneIsOver =
      std::any_of(in.segments->begin(), in.segments->end(), [&](const SegmentFigures& segment) {
        return segment.drop && std::max(segment.drop->fraction[0], segment.drop->fraction[1]) > most;
      });
  if (oneIsOver) return;
  for (const Mode mode : {Mode::ordinary, Mode::outage}) {
    const std::optional<double> drop = dropOfWay(in.plan, *in.segments, mode);
    if (!drop || *drop <= most) continue;
    out.add("feeder.drop_together", Severity::advice, kDrop, say(kDropAllPlain),
            say(mode == Mode::ordinary ? kDropUtilityTrade : kDropInverterTrade, percent(*drop, 1),
                percent(most, 0)),
            {at(RecordKind::transfer)});
    return;
  }
}

// A second run of a piece, or one of a piece that the arrangement does not have, counts nowhere.
void runsThatDoNotCount(const ReviewInput& in, Findings& out) {
  if (canadian(in.plan) || in.plan.transfer->arrangement.is(Arrangement::none)) return;
  const std::vector<Segment> pieces = stayalight::segments(in.plan);
  for (const auto& run : in.plan.runs) {
    const Segment segment = run->segment.valueOr(Segment::mainToSwitch);
    const bool there = std::find(pieces.begin(), pieces.end(), segment) != pieces.end();
    if (there && runOf(in.plan, segment) == &*run) continue;
    out.add("feeder.run_not_counted", there ? Severity::mustFix : Severity::checkOnSite, kDrop,
            say(kRunPlain, std::vector<Message>{segmentName(segment)}),
            say(there ? kRunTwiceTrade : kRunStrayTrade, std::vector<Message>{segmentName(segment)}),
            {{RecordKind::feederRun, run->id.number}});
  }
}

constexpr Rule kRules[] = {segments, wholeWay, runsThatDoNotCount};

}  // namespace

std::span<const Rule> feederRules() { return kRules; }

}  // namespace stayalight::reviewing
