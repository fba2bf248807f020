// Neutrals of moved circuits: they land where their breaker is, and somebody has looked for a shared one.

#include <algorithm>

#include "core/review/rules.h"
#include "core/wiring/neutral_terminals.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kWithCircuit{"neutral.with_circuit"};
constexpr RuleId kSamePanel{"multiwire.same_panel"};
constexpr RuleId kRangeDryer{"bond.range_dryer"};
constexpr RuleId kOnePerTerminal{"neutral.one_per_terminal"};

constexpr MessageId kLeftPlain{"review.neutral.left.plain"};
constexpr MessageId kLeftTrade{"review.neutral.left.trade"};
constexpr MessageId kLeftFix{"review.neutral.left.fix"};
constexpr MessageId kLeftUnknownPlain{"review.neutral.unknown.plain"};
constexpr MessageId kLeftUnknownTrade{"review.neutral.unknown.trade"};
constexpr MessageId kNotLookedPlain{"review.neutral.not_looked_for.plain"};
constexpr MessageId kNotLookedTrade{"review.neutral.not_looked_for.trade"};
constexpr MessageId kUnnamedPlain{"review.neutral.unnamed_partner.plain"};
constexpr MessageId kUnnamedTrade{"review.neutral.unnamed_partner.trade"};
constexpr MessageId kBarePlain{"review.neutral.bare.plain"};
constexpr MessageId kBareTrade{"review.neutral.bare.trade"};
constexpr MessageId kBareUnknownPlain{"review.neutral.bare_unknown.plain"};
constexpr MessageId kBareUnknownTrade{"review.neutral.bare_unknown.trade"};
constexpr MessageId kServicePlain{"review.neutral.bare_service.plain"};
constexpr MessageId kServiceTrade{"review.neutral.bare_service.trade"};
constexpr MessageId kServiceAskPlain{"review.neutral.bare_service_ask.plain"};
constexpr MessageId kServiceAskTrade{"review.neutral.bare_service_ask.trade"};
constexpr MessageId kTerminalsPlain{"review.neutral.terminals.plain"};
constexpr MessageId kTerminalsTrade{"review.neutral.terminals.trade"};

void left(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    if (!moved(in.plan, *circuit) || !usesNeutral(*circuit) || !circuit->neutralMoved.is(Answer::no))
      continue;
    // Then the neutral current has another way back, or none: a breaker that measures it trips, a switched
    // neutral opens it.
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const bool worse = (breaker != nullptr && !breaker->protection.is(Protection::none)) ||
                       in.plan.transfer->switchesNeutral.is(Answer::yes);
    Finding& finding =
        out.add("neutral.left", worse ? Severity::danger : Severity::mustFix, kWithCircuit,
                say(kLeftPlain, nameOf(*circuit)), say(kLeftTrade, nameOf(*circuit)), {at(*circuit)});
    out.offer(finding, fix::SetField{at(*circuit), "neutral_moved", std::string("yes")}, say(kLeftFix));
  }
  for (const Circuit* circuit : openCircuits(in, "circuit.neutral_moved")) {
    out.add("neutral.unknown", Severity::checkOnSite, kWithCircuit, say(kLeftUnknownPlain, nameOf(*circuit)),
            say(kLeftUnknownTrade, nameOf(*circuit)), {at(*circuit)});
  }
}

void lookedFor(const ReviewInput& in, Findings& out) {
  for (const Circuit* circuit : openCircuits(in, "circuit.multiwire")) {
    out.add("neutral.unnamed_partner", Severity::mustFix, kSamePanel, say(kUnnamedPlain, nameOf(*circuit)),
            say(kUnnamedTrade, nameOf(*circuit)), {at(*circuit)});
  }
  for (const Circuit* circuit : openCircuits(in, "circuit.neutral_shared")) {
    out.add("neutral.not_looked_for", Severity::checkOnSite, kSamePanel,
            say(kNotLookedPlain, nameOf(*circuit)), say(kNotLookedTrade, nameOf(*circuit)), {at(*circuit)});
  }
}

void bareNeutral(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    if (!moved(in.plan, *circuit) || !circuit->voltage.is(VoltageClass::v120_240) ||
        !circuit->insulatedNeutral.is(Answer::no))
      continue;
    out.add("neutral.bare", Severity::mustFix, kRangeDryer, say(kBarePlain, nameOf(*circuit)),
            say(kBareTrade, nameOf(*circuit)), {at(*circuit)});
  }
  for (const Circuit* circuit : openCircuits(in, "circuit.insulated_neutral")) {
    out.add("neutral.bare_unknown", Severity::checkOnSite, kRangeDryer,
            say(kBareUnknownPlain, nameOf(*circuit)), say(kBareUnknownTrade, nameOf(*circuit)),
            {at(*circuit)});
  }
}

// A main panel that becomes a subpanel keeps no three-wire range or dryer circuit.
void bareNeutralBehindMovedService(const ReviewInput& in, Findings& out) {
  const Panel* main = mainPanel(in.plan);
  if (!in.plan.transfer->serviceDisconnectMoved.is(Answer::yes) || main == nullptr) return;
  std::vector<std::string> asked;
  std::vector<EntityRef> askedPlaces;
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    if (breaker == nullptr || breaker->panel != main->id || !circuit->voltage.is(VoltageClass::v120_240))
      continue;
    if (circuit->insulatedNeutral.is(Answer::no) || circuit->ground.is(BranchGround::none)) {
      out.add("neutral.bare_service", Severity::mustFix, kRangeDryer, say(kServicePlain, nameOf(*circuit)),
              say(kServiceTrade, nameOf(*circuit), nameOf(*main)), {at(*circuit), at(*main)});
    } else if (!circuit->insulatedNeutral.is(Answer::yes)) {
      asked.push_back(nameOf(*circuit));
      askedPlaces.push_back(at(*circuit));
    }
  }
  if (asked.empty()) return;
  out.add("neutral.bare_service_ask", Severity::checkOnSite, kRangeDryer,
          say(kServiceAskPlain, listed(asked)), say(kServiceAskTrade, listed(asked), nameOf(*main)),
          askedPlaces);
}

void terminals(const ReviewInput& in, Findings& out) {
  for (const NeutralTerminals& figures : neutralTerminals(in.plan)) {
    if (figures.left().value_or(0) >= 0) continue;
    const Panel& panel = *find(in.plan, figures.panel);
    const bool fresh = std::any_of(in.plan.breakers.begin(), in.plan.breakers.end(), [&](const auto& b) {
      return b->panel == panel.id && b->stage.is(Stage::fresh) && stands(*b, Reading::planned);
    });
    out.add("neutral.terminals", fresh ? Severity::mustFix : Severity::checkOnSite, kOnePerTerminal,
            say(kTerminalsPlain, nameOf(panel)),
            say(kTerminalsTrade, nameOf(panel), std::int64_t{figures.landed()},
                std::int64_t{*figures.terminals}, std::int64_t{figures.circuits},
                std::int64_t{figures.feeders}, std::int64_t{figures.surgeDevices}),
            {at(panel)});
  }
}

constexpr Rule kRules[] = {left, lookedFor, bareNeutral, bareNeutralBehindMovedService, terminals};

}  // namespace

std::span<const Rule> neutralRules() { return kRules; }

}  // namespace stayalight::reviewing
