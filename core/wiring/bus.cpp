#include "core/wiring/bus.h"

#include <algorithm>

#include "core/panel/clearing.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kAbout{"wiring.bus.about"};

constexpr double kSlack = 1.0 + 1e-9;

/// A source that works beside the ordinary supply: what a transfer or an interlock keeps apart does not.
bool feedsBeside(const Plan& plan, const Panel& panel, const Breaker& breaker) {
  if (!stands(breaker, Reading::planned) || breaker.interlocked.is(Answer::yes)) return false;
  if (breaker.feeds.is(Feeds::solar)) return true;
  if (breaker.feeds.is(Feeds::inverterOutput))
    return breaker.backFed.is(Answer::yes) && panel.role.is(PanelRole::main);
  // Its input lets out what it adds to the house.
  return breaker.feeds.is(Feeds::inverterInput) &&
         (breaker.backFed.is(Answer::yes) || plan.inverter->addsToPassThrough.is(Answer::yes));
}

std::optional<AcAmperes> outputOf(const Breaker& breaker, const InverterLimits& limits) {
  if (breaker.sourceCurrent) return breaker.sourceCurrent;
  return breaker.feeds.is(Feeds::solar) ? std::nullopt : limits.leg;
}

/// The panel that a breaker leads to on ordinary days: through a switch, or through the inverter's relay.
const Panel* panelBehind(const Plan& plan, const Breaker& breaker) {
  if (breaker.feeds.is(Feeds::feeder)) return find(plan, breaker.feedsPanel);
  const bool relay = breaker.feeds.is(Feeds::inverterInput) &&
                     plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  return relay ? backupPanel(plan) : nullptr;
}

/// A source and the breaker of the panel through which it comes in.
struct Source {
  const Breaker* source;
  const Breaker* through;
};
/// The sources of a panel, and those of the panels behind it, which let back what they do not use.
void collectSources(const Plan& plan, const Panel& panel, const Breaker* through, std::vector<PanelId>& seen,
                    std::vector<Source>& found) {
  if (std::find(seen.begin(), seen.end(), panel.id) != seen.end()) return;
  seen.push_back(panel.id);
  for (const auto& breaker : plan.breakers) {
    if (breaker->panel != panel.id || !stands(*breaker, Reading::planned)) continue;
    const Breaker* const in = through != nullptr ? through : &*breaker;
    if (feedsBeside(plan, panel, *breaker)) found.push_back({&*breaker, in});
    if (const Panel* behind = panelBehind(plan, *breaker)) collectSources(plan, *behind, in, seen, found);
  }
}

std::optional<RatingAmperes> larger(std::optional<RatingAmperes> a, std::optional<RatingAmperes> b) {
  if (!a || !b) return a ? a : b;
  return std::max(*a, *b);
}

/// What stands ahead at the end of the feeder: an output device that is known to stand there, else the
/// largest on the way.
std::optional<RatingAmperes> deviceOfSegment(const std::vector<SegmentFigures>& segments) {
  std::optional<RatingAmperes> ahead;
  for (const SegmentFigures& figures : segments) {
    if (figures.segment != Segment::switchToBackup && figures.segment != Segment::inverterToBackup) continue;
    const DeviceChoice& device = figures.device;
    const auto standing = device.fixed ? larger(device.rating, device.inPlan) : device.inPlan;
    ahead = larger(ahead, standing ? standing : figures.conductor.device);
  }
  return ahead;
}

/// The device ahead of the bus: its own main, else the breaker that feeds it, else that of the segment.
std::optional<RatingAmperes> deviceAhead(const Plan& plan, const Panel& panel,
                                         const std::vector<SegmentFigures>& segments) {
  if (panel.mainBreaker) return panel.mainBreaker;
  std::optional<RatingAmperes> feeder, bypass;
  for (const auto& breaker : plan.breakers) {
    if (breaker->feedsPanel != panel.id || !breaker->feeds.is(Feeds::feeder) ||
        !stands(*breaker, Reading::planned))
      continue;
    std::optional<RatingAmperes>& of = feedsBypass(plan, *breaker) ? bypass : feeder;
    of = larger(of, breaker->rating);
  }
  if (!feeder && panel.role.is(PanelRole::backup)) feeder = deviceOfSegment(segments);
  return larger(feeder, bypass);
}

bool atFarEnd(const Panel& panel, const Breaker& breaker) {
  const std::int32_t last = breaker.row + breaker.poles - 1;
  const SpacePosition below{breaker.position().column, last + 1};
  if (panel.feedEnd.is(FeedEnd::top)) return !hasSpace(panel, below);
  if (panel.feedEnd.is(FeedEnd::bottom)) return breaker.row == 1;
  return breaker.row == 1 || !hasSpace(panel, below);  // fed in the centre: one end, which is for the owner
}

BusOptionFigure optionOf(BusOption option, std::optional<AcAmperes> sum, std::optional<AcAmperes> most,
                         bool bounded, bool applies) {
  BusOptionFigure figure{option, applies, sum, most, Verdict::notKnown};
  if (!applies) {
    figure.verdict = Verdict::over;
  } else if (sum && most) {
    const bool within = sum->count() <= most->count() * kSlack;
    figure.verdict = within ? Verdict::within : bounded ? Verdict::notKnown : Verdict::over;
  }
  return figure;
}

}  // namespace

WorkingSubject busSubject(const Panel& panel) { return {say(kAbout, panel.name), panel.id.number}; }

std::vector<BusFigures> busFigures(const Plan& plan, const InverterLimits& limits,
                                   const std::vector<SegmentFigures>& segments, Working* working,
                                   const Tables& tables) {
  std::vector<BusFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  for (const auto& panel : plan.panels) {
    BusFigures figures;
    figures.panel = panel->id;
    const double factor = codeNumber(CodeNumber::sourceCurrentFactor, tables);
    bool ends = true;
    double breakers = 0.0;
    std::vector<StepInput> ratings;
    for (const auto& breaker : plan.breakers) {
      if (breaker->panel != panel->id || !stands(*breaker, Reading::planned)) continue;
      breakers += breaker->rating.count();
      if (working != nullptr) {
        ratings.push_back(
            fromPlace("R", static_cast<double>(breaker->rating.count()), "A", "breaker on the bus"));
      }
    }
    std::vector<PanelId> seen;
    std::vector<Source> sources;
    collectSources(plan, *panel, nullptr, seen, sources);
    for (const Source& each : sources) {
      figures.sources.push_back(each.source->id);
      ends = ends && atFarEnd(*panel, *each.through);
      const std::optional<AcAmperes> output = outputOf(*each.source, limits);
      figures.bounded = figures.bounded || !output;
      figures.sourceCurrent += output ? *output * factor : each.source->rating.amperes();
    }
    if (figures.sources.empty()) continue;
    const std::optional<RatingAmperes> ahead = deviceAhead(plan, *panel, segments);
    const std::optional<AcAmperes> bus =
        panel->busRating ? std::optional(panel->busRating->amperes()) : std::nullopt;
    const std::optional<AcAmperes> both =
        ahead ? std::optional(ahead->amperes() + figures.sourceCurrent) : std::nullopt;
    const double opposite = codeNumber(CodeNumber::busOppositeEndsFactor, tables);
    figures.options = {optionOf(BusOption::anywhere, both, bus, figures.bounded, true),
                       optionOf(BusOption::oppositeEnds, both,
                                bus ? std::optional(*bus * opposite) : std::nullopt, figures.bounded, ends),
                       optionOf(BusOption::sumOfBreakers, AcAmperes(breakers), bus, false, true)};
    figures.chosen = panel->busOption.valueOr(BusOption::notChosen);
    if (figures.chosen != BusOption::notChosen) {
      figures.verdict = figures.options[static_cast<std::size_t>(figures.chosen) - 1].verdict;
    } else if (std::all_of(figures.options.begin(), figures.options.end(),
                           [](const BusOptionFigure& f) { return f.verdict == Verdict::over; })) {
      figures.verdict = Verdict::over;
    }
    const WorkingOf about(working, busSubject(*panel));
    if (working != nullptr) {
      record(*working, FormulaId{"wiring.bus_breakers"}, RuleId{"bus.sum"}, breakers, "A",
             std::move(ratings));
    }
    if (working != nullptr && both && bus) {
      const StepIndex source =
          record(*working, FormulaId{"wiring.bus_source"}, ruleOf(CodeNumber::sourceCurrentFactor),
                 figures.sourceCurrent.count(), "A",
                 {fromPlace("I", figures.sourceCurrent.count() / factor, "A", "output of the sources"),
                  fromPlace("k", factor, "", "continuous output of a source")});
      record(*working, FormulaId{"wiring.bus_sum"}, RuleId{"bus.anywhere"}, both->count(), "A",
             {fromPlace("M", ahead->count(), "A", "device ahead of the bus"),
              fromStep("S", figures.sourceCurrent.count(), "A", source)});
      record(*working, FormulaId{"wiring.bus_most"}, RuleId{"bus.opposite_ends"}, bus->count() * opposite,
             "A",
             {fromPlace("k", opposite, "", "share of the bus, sources at opposite ends"),
              fromPlace("B", bus->count(), "A", "rating of the bus")});
    }
    all.push_back(std::move(figures));
  }
  return all;
}

}  // namespace stayalight
