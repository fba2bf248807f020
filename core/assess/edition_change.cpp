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
  Comparison(const Plan& plan, Edition from, Edition to) : from_(from), to_(to) {
    Plan other = plan;
    other.site.edit().edition = to;
    before_ = assess(plan);
    after_ = assess(other);
  }

  std::vector<EditionChange> make() {
    demand();
    segments();
    paths();
    findings();
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
  static Message section(RuleId rule, Edition edition) {
    const std::optional<std::string_view> found = citation(rule, edition);
    return found && !found->empty() ? plain(std::string(*found)) : say(kNotConfirmed);
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
    // A section once, however often it is cited.
    std::map<std::string_view, RuleId> cited;
    for (const auto* list : {&before_.findings, &after_.findings}) {
      for (const Finding& finding : *list) {
        if (finding.basis == Basis::code) cited.emplace(finding.rule.key, finding.rule);
      }
    }
    for (const auto& [key, rule] : cited) {
      const CitationRow* row = ruleOf(rule);
      if (row == nullptr) continue;
      differ(say(kCitation, std::string(row->about)), section(rule, from_), section(rule, to_));
    }
  }

  Edition from_, to_;
  Assessment before_, after_;
  std::vector<EditionChange> changes_;
};

}  // namespace

std::vector<EditionChange> editionChanges(const Plan& plan, Edition to) {
  const Edition from = plan.site->edition.valueOr(Edition::y2023);
  if (from == to || !plan.site->country.is(Country::unitedStates)) return {};
  return Comparison(plan, from, to).make();
}

}  // namespace stayalight
