#include "core/panel/consistency.h"

#include <map>

namespace stayalight {
namespace {

constexpr MessageId kNoPanel{"consistency.no_panel"};
constexpr MessageId kNoSpace{"consistency.no_space"};
constexpr MessageId kOverlap{"consistency.overlap_before"};
constexpr MessageId kOverlapPlanned{"consistency.overlap_planned"};
constexpr MessageId kRing{"consistency.fed_in_ring"};

std::string nameOf(const Panel& panel) {
  return panel.name.empty() ? std::string(panel.role.word()) : panel.name;
}

std::optional<Message> offPanel(const Plan& plan) {
  for (const auto& breaker : plan.breakers) {
    const Panel* panel = find(plan, breaker->panel);
    if (panel == nullptr) return say(kNoPanel, breaker->id.number);
    for (const SpacePosition space : poleSpaces(placementOf(*breaker))) {
      if (hasSpace(*panel, space)) continue;
      return say(kNoSpace, breaker->id.number, std::string(breaker->column.word()), std::int64_t{space.row},
                 nameOf(*panel), std::int64_t{panel->spaces});
    }
  }
  return std::nullopt;
}

std::optional<Message> overlap(const Plan& plan, Reading reading) {
  std::map<std::pair<PanelId, HalfSpace>, const Breaker*> taken;
  for (const auto& breaker : plan.breakers) {
    if (!stands(*breaker, reading)) continue;
    const Placement placement = placementOf(*breaker);
    for (const HalfSpace& half : coveredHalves(placement)) {
      const auto [first, fresh] = taken.emplace(std::pair(breaker->panel, half), &*breaker);
      if (fresh) continue;
      const Panel& panel = *find(plan, breaker->panel);
      return say(reading == Reading::before ? kOverlap : kOverlapPlanned, first->second->id.number,
                 spaceNames(panel, placementOf(*first->second)), breaker->id.number,
                 spaceNames(panel, placement), nameOf(panel));
    }
  }
  return std::nullopt;
}

std::optional<Message> ring(const Plan& plan) {
  for (const auto& start : plan.panels) {
    const Panel* panel = &*start;
    for (std::size_t steps = 0; panel != nullptr; ++steps) {
      if (steps > plan.panels.size()) return say(kRing, nameOf(*start));
      panel = find(plan, panel->fedFrom);
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Message> inconsistency(const Plan& plan) {
  if (auto wrong = offPanel(plan)) return wrong;
  if (auto wrong = overlap(plan, Reading::before)) return wrong;
  if (auto wrong = overlap(plan, Reading::planned)) return wrong;
  return ring(plan);
}

}  // namespace stayalight
