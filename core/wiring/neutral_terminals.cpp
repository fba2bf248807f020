#include "core/wiring/neutral_terminals.h"

#include <set>

#include "core/panel/spaces.h"
#include "core/wiring/extension.h"

namespace stayalight {
namespace {

/// The panel in which the neutral of a circuit lands.
PanelId landsIn(const Plan& plan, const Circuit& circuit) {
  const Breaker* planned = find(plan, circuit.planned);
  if (planned == nullptr) return {};
  const Breaker* before = find(plan, circuit.breaker);
  const bool left = circuit.neutralMoved.is(Answer::no) && before != nullptr;
  return left ? before->panel : planned->panel;
}

/// The way to another panel, or from a source, with its neutral. Beside a switch the input of the inverter
/// only charges its battery, between the legs.
bool bringsNeutral(const Plan& plan, const Breaker& breaker) {
  return breaker.feeds.is(Feeds::feeder) || breaker.feeds.is(Feeds::inverterOutput) ||
         breaker.feeds.is(Feeds::solar) || breaker.feeds.is(Feeds::generator) ||
         breaker.feeds.is(Feeds::utility) ||
         (breaker.feeds.is(Feeds::inverterInput) &&
          plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
}
/// Through it the panel itself is supplied: its neutral lands in the lug.
bool suppliesPanel(const Plan& plan, const Panel& panel, const Breaker& breaker) {
  return breaker.feeds.is(Feeds::utility) ||
         (breaker.feeds.is(Feeds::inverterOutput) && panel.role.is(PanelRole::backup) &&
          plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
}

}  // namespace

std::vector<NeutralTerminals> neutralTerminals(const Plan& plan) {
  std::vector<NeutralTerminals> all;
  for (const auto& panel : plan.panels) {
    NeutralTerminals figures;
    figures.panel = panel->id;
    figures.terminals = panel->neutralTerminals;
    std::set<std::int32_t> groups;
    for (const auto& circuit : plan.circuits) {
      if (!usesNeutral(*circuit) || landsIn(plan, *circuit) != panel->id) continue;
      if (circuit->multiwire > 0 && !groups.insert(circuit->multiwire).second) continue;
      ++figures.circuits;
    }
    for (const auto& breaker : plan.breakers) {
      if (breaker->panel != panel->id || !stands(*breaker, Reading::planned)) continue;
      if (breaker->feeds.is(Feeds::surgeDevice)) {
        ++figures.surgeDevices;
      } else if (bringsNeutral(plan, *breaker) && !suppliesPanel(plan, *panel, *breaker)) {
        ++figures.feeders;
      }
    }
    all.push_back(figures);
  }
  return all;
}

}  // namespace stayalight
