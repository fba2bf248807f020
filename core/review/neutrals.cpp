// Neutrals of moved circuits: they land where their breaker is, and somebody has looked for a shared one.

#include <algorithm>

#include "core/review/rules.h"

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

void terminals(const ReviewInput& in, Findings& out) {
  for (const auto& panel : in.plan.panels) {
    if (!panel->neutralTerminals) continue;
    std::int32_t neutrals = 0;
    std::vector<std::int32_t> groups;
    bool fresh = false;
    for (const auto& circuit : in.plan.circuits) {
      const Breaker* breaker = plannedBreaker(in.plan, *circuit);
      if (breaker == nullptr || breaker->panel != panel->id || !usesNeutral(*circuit)) continue;
      fresh = fresh || breaker->stage.is(Stage::fresh);
      if (circuit->multiwire > 0) {
        if (std::find(groups.begin(), groups.end(), circuit->multiwire) != groups.end()) continue;
        groups.push_back(circuit->multiwire);  // one neutral for the group
      }
      ++neutrals;
    }
    if (neutrals <= *panel->neutralTerminals) continue;
    out.add("neutral.terminals", fresh ? Severity::mustFix : Severity::checkOnSite, kOnePerTerminal,
            say(kTerminalsPlain, nameOf(*panel)),
            say(kTerminalsTrade, nameOf(*panel), static_cast<std::int64_t>(neutrals),
                static_cast<std::int64_t>(*panel->neutralTerminals)),
            {at(*panel)});
  }
}

constexpr Rule kRules[] = {left, lookedFor, bareNeutral, terminals};

}  // namespace

std::span<const Rule> neutralRules() { return kRules; }

}  // namespace stayalight::reviewing
