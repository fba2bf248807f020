#include "core/assess/edition_change.h"

#include <algorithm>
#include <map>

#include "core/code/citations.h"
#include "core/code/conductors.h"

namespace stayalight {
namespace {

constexpr MessageId kText{"edition.text"};
constexpr MessageId kNone{"edition.none"};
constexpr MessageId kLoad{"edition.load"};
constexpr MessageId kFigure{"edition.figure"};
constexpr MessageId kRefused{"edition.refused"};
constexpr MessageId kMethod{"edition.method"};
constexpr MessageId kDevice{"edition.device"};
constexpr MessageId kConductor{"edition.conductor"};
constexpr MessageId kNeutral{"edition.neutral"};
constexpr MessageId kGround{"edition.ground"};
constexpr MessageId kPath{"edition.path"};
constexpr MessageId kOpen{"edition.path_open"};
constexpr MessageId kFinding{"edition.finding"};
constexpr MessageId kFound{"edition.found"};
constexpr MessageId kNotFound{"edition.not_found"};
constexpr MessageId kCitation{"edition.citation"};
constexpr MessageId kChosen{"edition.chosen"};
constexpr MessageId kService{"edition.service"};
constexpr MessageId kCharge{"edition.charge"};
constexpr MessageId kDcDevice{"edition.dc_device"};
constexpr MessageId kDcCable{"edition.dc_cable"};
constexpr MessageId kBox{"edition.box"};
constexpr MessageId kRaceway{"edition.raceway"};
constexpr MessageId kProtected{"edition.protected"};
constexpr MessageId kBus{"edition.bus"};
constexpr MessageId kNotInThisEdition{"edition.not_in_edition"};
constexpr MessageId kNotConfirmed{"edition.not_confirmed"};

Message plain(std::string text) { return say(kText, std::move(text)); }
Message figure(const std::optional<VoltAmperes>& load) {
  return load ? say(kFigure, Figure{load->count(), "VA", 0}) : say(kNone);
}
Message rating(const std::optional<RatingAmperes>& value) {
  return value ? say(kFigure, Figure{static_cast<double>(value->count()), "A", 0}) : say(kNone);
}
Message size(const std::optional<ConductorSize>& value, Metal metal) {
  return value ? plain(conductorName(*value, metal)) : say(kNone);
}
std::string shown(const Message& message) { return render(message, plainEnglish()); }

class Comparison {
 public:
  Comparison(const Plan& plan, Edition from, Edition to, const Tables& tables)
      : plan_(plan), from_(from), to_(to), tables_(tables) {
    Plan other = plan;
    other.site.edit().edition = to;
    before_ = assess(plan, {.record = true, .tables = &tables});
    after_ = assess(other, {.record = true, .tables = &tables});
  }

  std::vector<EditionChange> make() {
    demand();
    service();
    segments();
    cable();
    rooms();
    paths();
    findings();
    sections();
    return std::move(changes_);
  }

 private:
  void differ(Message what, Message before, Message after) {
    if (shown(before) == shown(after)) return;
    changes_.push_back({std::move(what), std::move(before), std::move(after)});
  }

  static Message total(const DemandCalculation& calculation) {
    if (calculation.refused) return say(kRefused, std::vector{*calculation.refused});
    return calculation.lines.empty() ? say(kNone) : figure(calculation.total);
  }
  void demand() {
    differ(say(kLoad), total(before_.demand.feeder), total(after_.demand.feeder));
    const auto& was = before_.demand.service.methods;
    const auto& is = after_.demand.service.methods;
    for (std::size_t i = 0; i < std::min(was.size(), is.size()); ++i) {
      const auto result = [](const MethodFigures& method) {
        return method.notApplicable ? *method.notApplicable : total(method.after);
      };
      differ(say(kMethod, std::vector{methodName(is[i].method)}), result(was[i]), result(is[i]));
    }
  }
  void service() {
    const MethodFigures* was = chosenMethod(before_.demand.service);
    const MethodFigures* is = chosenMethod(after_.demand.service);
    const auto method = [](const MethodFigures* one) {
      return one != nullptr ? methodName(one->method) : say(kNone);
    };
    const auto least = [](const MethodFigures* one) {
      return one != nullptr ? say(kFigure, Figure{one->after.least().count(), "A", 1}) : say(kNone);
    };
    differ(say(kChosen), method(was), method(is));
    differ(say(kService), least(was), least(is));
    const auto fits = [](const ChargeSetting& charge) {
      return charge.fits ? say(kFigure, Figure{charge.fits->count(), "W", 0}) : say(kNone);
    };
    differ(say(kCharge), fits(before_.demand.service.charge), fits(after_.demand.service.charge));
  }
  void cable() {
    if (!before_.dcCable || !after_.dcCable) return;
    differ(say(kDcDevice), rating(before_.dcCable->device), rating(after_.dcCable->device));
    const auto wire = [](const ConductorChoice& choice) { return size(choice.size, choice.metal); };
    differ(say(kDcCable), wire(before_.dcCable->conductor), wire(after_.dcCable->conductor));
  }
  // Raceways, boxes and buses, which both have in the same order.
  void rooms() {
    for (std::size_t i = 0; i < std::min(before_.boxes.size(), after_.boxes.size()); ++i) {
      const auto needed = [](const SpliceBoxFigures& box) {
        return say(kFigure, Figure{box.needed.count(), "in³", 2});
      };
      differ(say(kBox, find(plan_, before_.boxes[i].box)->name), needed(before_.boxes[i]),
             needed(after_.boxes[i]));
    }
    for (std::size_t i = 0; i < std::min(before_.raceways.size(), after_.raceways.size()); ++i) {
      const auto held = [](const RacewayFigures& raceway) {
        std::int64_t holds = 0;
        for (const RacewayBranch& branch : raceway.branches) {
          const bool kept = branch.protection == BranchProtection::holds ||
                            branch.protection == BranchProtection::labelAllows;
          holds += kept ? 1 : 0;
        }
        return say(kProtected, holds, static_cast<std::int64_t>(raceway.branches.size()) - holds);
      };
      differ(say(kRaceway, find(plan_, before_.raceways[i].raceway)->name), held(before_.raceways[i]),
             held(after_.raceways[i]));
    }
    for (std::size_t i = 0; i < std::min(before_.buses.size(), after_.buses.size()); ++i) {
      const auto current = [](const BusFigures& bus) {
        return say(kFigure, Figure{bus.sourceCurrent.count(), "A", 1});
      };
      differ(say(kBus, find(plan_, before_.buses[i].panel)->name), current(before_.buses[i]),
             current(after_.buses[i]));
    }
  }
  void segments() {
    for (const SegmentFigures& was : before_.segments) {
      const auto is = std::find_if(after_.segments.begin(), after_.segments.end(),
                                   [&](const SegmentFigures& s) { return s.segment == was.segment; });
      if (is == after_.segments.end()) continue;
      const std::vector<Message> name{segmentName(was.segment)};
      differ(say(kDevice, name), rating(was.device.rating), rating(is->device.rating));
      differ(say(kConductor, name), size(was.conductor.size, was.conductor.metal),
             size(is->conductor.size, is->conductor.metal));
      differ(say(kNeutral, name), size(was.neutral, was.conductor.metal),
             size(is->neutral, is->conductor.metal));
      differ(say(kGround, name), size(was.ground, was.conductor.metal),
             size(is->ground, is->conductor.metal));
    }
  }
  void paths() {
    for (const PathFigures& was : before_.demand.paths) {
      for (const PathFigures& is : after_.demand.paths) {
        if (is.path != was.path) continue;
        const auto state = [](const PathFigures& path) { return path.closed ? *path.closed : say(kOpen); };
        differ(say(kPath, std::vector{pathName(is.path)}), state(was), state(is));
      }
    }
  }

  // Findings of one rule at one place are the same finding.
  using Place = std::pair<std::string_view, std::vector<EntityRef>>;
  static std::map<Place, const Finding*> byPlace(const std::vector<Finding>& findings) {
    std::map<Place, const Finding*> all;
    for (const Finding& finding : findings) all.emplace(Place{finding.key, finding.places}, &finding);
    return all;
  }
  Message section(RuleId rule, Edition edition) const {
    const std::optional<std::string_view> found = sectionOf(rule, edition, tables_);
    if (found) return plain(std::string(*found));
    return notInEdition(rule, edition, tables_) ? say(kNotInThisEdition) : say(kNotConfirmed);
  }
  void findings() {
    const auto was = byPlace(before_.findings), is = byPlace(after_.findings);
    for (const auto& [place, finding] : was) {
      if (is.count(place) == 0)
        changes_.push_back({say(kFinding, std::vector{finding->plain}), say(kFound), say(kNotFound)});
    }
    for (const auto& [place, finding] : is) {
      if (was.count(place) == 0)
        changes_.push_back({say(kFinding, std::vector{finding->plain}), say(kNotFound), say(kFound)});
    }
  }
  // Each section once, wherever a finding, a line, a path or a step cites it.
  void sections() {
    std::map<std::string_view, RuleId> cited;
    const auto cite = [&](RuleId rule) {
      if (basis(rule, tables_) == RuleBasis::code) cited.emplace(rule.key, rule);
    };
    for (const Assessment* one : {&before_, &after_}) {
      for (const Finding& finding : one->findings) cite(finding.rule);
      for (const Step& step : one->working.steps()) cite(step.rule);
      for (const PathFigures& path : one->demand.paths) cite(path.rule);
      for (const MethodFigures& method : one->demand.service.methods) cite(method.rule);
      for (const DemandLine& line : one->demand.feeder.lines) cite(line.rule);
    }
    for (const auto& [key, rule] : cited) {
      const CitationRow* row = citationRow(rule, tables_);
      if (row == nullptr) continue;
      differ(say(kCitation, std::string(row->about)), section(rule, from_), section(rule, to_));
    }
  }

  const Plan& plan_;
  Edition from_, to_;
  const Tables& tables_;
  Assessment before_, after_;
  std::vector<EditionChange> changes_;
};

}  // namespace

std::vector<EditionChange> editionChanges(const Plan& plan, Edition to, const Tables& tables) {
  const Edition from = plan.site->edition.valueOr(Edition::y2023);
  if (from == to || !plan.site->country.is(Country::unitedStates)) return {};
  return Comparison(plan, from, to, tables).make();
}

}  // namespace stayalight
