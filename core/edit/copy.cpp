// Copies: the same facts on a place of their own.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoCircuit{"edit.no_such_circuit"};
constexpr MessageId kNoLoad{"edit.no_such_load"};
constexpr MessageId kNoPanel{"panel.no_such_panel"};
constexpr MessageId kNoBreaker{"edit.no_such_breaker"};
constexpr MessageId kWithoutBreaker{"edit.circuit_without_breaker"};
constexpr MessageId kNoSpaceFree{"edit.no_space_free"};

// The free half beside a tandem half, else the first free place of a whole breaker.
std::optional<Placement> placeForCopy(const Plan& plan, const Breaker& breaker) {
  const Placement placement = placementOf(breaker);
  if (placement.half == Half::a || placement.half == Half::b) {
    Placement beside = placement;
    beside.half = placement.half == Half::a ? Half::b : Half::a;
    if (!refusal(plan, beside, {})) return beside;
  }
  const std::vector<Placement> free = landings(plan, placement.panel, placement.poles, {});
  return free.empty() ? std::nullopt : std::optional<Placement>(free.front());
}

// Adds a copy of the breaker that stands alone: without tie, partner or panel behind it.
Result<BreakerId> addCopy(Plan& plan, const Breaker& original) {
  const Panel* panel = find(plan, original.panel);
  if (panel == nullptr) return say(kNoPanel);
  const std::optional<Placement> place = placeForCopy(plan, original);
  if (!place) return say(kNoSpaceFree, panel->name);
  Breaker copy = original;
  copy.id = nextBreakerId(plan);
  setPlace(copy, *place);
  copy.stage = original.stage.is(Stage::fresh) ? Stage::fresh : stageAt(plan, *place);
  copy.tie = Tie::none;
  copy.feedsPanel = {};
  plan.breakers.emplace_back(copy);
  return copy.id;
}

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> copyCircuit(const Plan& plan, CircuitId circuit) {
  const Circuit* original = find(plan, circuit);
  if (original == nullptr) return say(kNoCircuit);
  const Breaker* breaker = find(plan, original->planned);
  if (breaker == nullptr) return say(kWithoutBreaker, original->name);
  Plan copied = plan;
  const Result<BreakerId> place = addCopy(copied, *breaker);
  if (!place) return place.refusal();
  Circuit copy = *original;
  copy.id = nextCircuitId(plan);
  copy.planned = place.value();
  copy.breaker = stands(*find(copied, place.value()), Reading::before) ? place.value() : BreakerId{};
  // Found out on the original's wires, not on these.
  copy.multiwire = 0;
  copy.neutralShared = Answer::unknown;
  copy.traced = Answer::unknown;
  std::int64_t next = nextLoadId(plan).number;
  for (Load& load : copy.loads) load.id.number = next++;
  copied.circuits.emplace_back(std::move(copy));
  return copied;
}

Result<Plan> copyLoad(const Plan& plan, LoadId load) {
  const Circuit* circuit = circuitOf(plan, load);
  if (circuit == nullptr) return say(kNoLoad);
  const auto original = std::find_if(circuit->loads.begin(), circuit->loads.end(),
                                     [&](const Load& other) { return other.id == load; });
  return addLoad(plan, circuit->id, *original);
}

Result<Plan> copyPanel(const Plan& plan, PanelId panel) {
  const Panel* original = find(plan, panel);
  if (original == nullptr) return say(kNoPanel);
  Panel copy = *original;
  copy.id = nextPanelId(plan);
  if (copy.role.is(PanelRole::main)) {
    // A house has one main panel: the copy hangs behind it, and its neutral is another question.
    copy.role = PanelRole::subpanel;
    copy.fedFrom = original->id;
    copy.neutralBonded = Answer::unknown;
  }
  Plan copied = plan;
  copied.panels.emplace_back(std::move(copy));
  return copied;
}

Result<Plan> copyBreaker(const Plan& plan, BreakerId breaker) {
  const Breaker* original = find(plan, breaker);
  if (original == nullptr) return say(kNoBreaker);
  Plan copied = plan;
  const Result<BreakerId> copy = addCopy(copied, *original);
  if (!copy) return copy.refusal();
  Breaker& record = edit(copied, copy.value());
  if (record.feeds.is(Feeds::circuit)) record.feeds = Feeds::nothing;
  return copied;
}

}  // namespace stayalight
