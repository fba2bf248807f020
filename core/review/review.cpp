#include "core/review/review.h"

#include <algorithm>
#include <array>

#include "core/code/citations.h"
#include "core/review/rules.h"

namespace stayalight {
namespace reviewing {
namespace {

constexpr MessageId kName{"review.name"};

/// Keys of findings that stand before all others of their severity.
constexpr std::array<std::string_view, 3> kFirst = {"sources.not_kept_apart", "sources.unnamed",
                                                    "transfer.not_listed"};

bool isFirst(const Finding& finding) {
  return std::find(kFirst.begin(), kFirst.end(), finding.key) != kFirst.end();
}

/// NFPA 70 is not the code there: what it binds is then a matter of the local code.
void uncite(std::vector<Finding>& findings) {
  for (Finding& finding : findings) {
    finding.rule = {};
    if (finding.basis == Basis::code) finding.basis = Basis::local;
  }
}

}  // namespace

Finding& Findings::add(std::string_view key, Severity severity, RuleId rule, Message plain, Message trade,
                       std::vector<EntityRef> places) {
  Finding finding;
  finding.key = key;
  finding.severity = severity;
  finding.rule = rule;
  const std::optional<RuleBasis> basis = stayalight::basis(rule, tables_);
  finding.basis = basis == RuleBasis::code                ? Basis::code
                  : basis == RuleBasis::listedInstruction ? Basis::listedInstruction
                                                          : Basis::practice;
  finding.plain = std::move(plain);
  finding.trade = std::move(trade);
  finding.places = std::move(places);
  list_.push_back(std::move(finding));
  return list_.back();
}

void Findings::offer(Finding& finding, Fix fix, Message name) {
  if (!applyFix(plan_, fix).ok()) return;
  if (!finding.fix) {
    finding.fix = std::move(fix);
    finding.fixName = std::move(name);
  } else if (!finding.otherFix) {
    finding.otherFix = std::move(fix);
    finding.otherFixName = std::move(name);
  }
}

EntityRef at(const Panel& panel) { return {RecordKind::panel, panel.id.number}; }
EntityRef at(const Breaker& breaker) { return {RecordKind::breaker, breaker.id.number}; }
EntityRef at(const Circuit& circuit) { return {RecordKind::circuit, circuit.id.number}; }
EntityRef at(const Load& load) { return {RecordKind::load, load.id.number}; }
EntityRef at(RecordKind single) { return {single, 0}; }

std::string nameOf(const Circuit& circuit) { return circuitName(circuit); }
std::string nameOf(const Load& load, const Circuit& circuit) {
  return load.name.empty() ? nameOf(circuit) : load.name;
}
std::string nameOf(const Panel& panel) { return panel.name; }
std::string spacesOf(const Plan& plan, const Breaker& breaker) {
  const Panel* panel = find(plan, breaker.panel);
  return panel != nullptr ? spaceNames(*panel, placementOf(breaker)) : std::string();
}
std::vector<const OnSiteItem*> open(const ReviewInput& in, std::string_view key) {
  return in.onSite != nullptr ? itemsOf(*in.onSite, key) : std::vector<const OnSiteItem*>();
}
bool isOpen(const ReviewInput& in, std::string_view key, EntityRef place) {
  return in.onSite != nullptr &&
         std::any_of(in.onSite->begin(), in.onSite->end(),
                     [&](const OnSiteItem& item) { return item.key == key && item.place == place; });
}
std::vector<const Circuit*> openCircuits(const ReviewInput& in, std::string_view key) {
  std::vector<const Circuit*> circuits;
  for (const OnSiteItem* item : open(in, key)) circuits.push_back(find(in.plan, CircuitId{item->place.id}));
  return circuits;
}
std::vector<Message> listed(const std::vector<std::string>& names) {
  std::vector<Message> messages;
  for (const std::string& name : names) messages.push_back(say(kName, name));
  return messages;
}

Figure amperes(double value) { return {value, "A", 1}; }
Figure watts(double value) { return {value, "W", 0}; }
Figure percent(double fraction, int decimals) { return {fraction * 100.0, "%", decimals}; }

const Breaker* plannedBreaker(const Plan& plan, const Circuit& circuit) {
  return find(plan, circuit.planned);
}
bool canadian(const Plan& plan) { return plan.site->country.is(Country::canada); }

}  // namespace reviewing

std::vector<Finding> review(const ReviewInput& input) {
  reviewing::Findings findings(input.plan, input.tables);
  for (const auto& rules : {reviewing::sourceRules(), reviewing::multiwireRules(), reviewing::neutralRules(),
                            reviewing::loadRules(), reviewing::feederRules(), reviewing::supplyRules(),
                            reviewing::capacityRules(), reviewing::panelRules(), reviewing::circuitRules(),
                            reviewing::buildingRules(), reviewing::busRules(), reviewing::racewayRules(),
                            reviewing::protectionRules(), reviewing::generatorRules(),
                            reviewing::readingRules(), reviewing::siteRules()}) {
    for (const reviewing::Rule rule : rules) rule(input, findings);
  }
  std::vector<Finding> list = std::move(findings.list());
  if (reviewing::canadian(input.plan)) reviewing::uncite(list);
  std::stable_sort(list.begin(), list.end(), [](const Finding& a, const Finding& b) {
    if (a.severity != b.severity) return a.severity < b.severity;
    const bool firstA = reviewing::isFirst(a), firstB = reviewing::isFirst(b);
    if (firstA != firstB) return firstA;
    return a.places < b.places;
  });
  return list;
}

}  // namespace stayalight
