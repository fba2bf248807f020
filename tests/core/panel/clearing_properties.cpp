// The order of work against a search through all of them, on small panels.

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "core/panel/clearing.h"
#include "tests/core/example_plans.h"

using namespace stayalight;
using namespace stayalight::example;

namespace {

/// A main panel of six or eight spaces with breakers of one and two poles and tandems; some of their circuits
/// move.
Plan anyHouse() {
  Plan plan = emptyHouse();
  editPanel(plan, kMain).spaces = *rc::gen::element(6, 8);
  // Tandems bring up to four into the way of one place.
  const bool manyTandems = *rc::gen::arbitrary<bool>();
  editPanel(plan, kMain).tandems = Answer::yes;
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  editPanel(plan, kBackup).spaces = 40;
  int moved = 0;
  for (const SpacePosition position : allSpaces(*find(plan, kMain))) {
    const int what = *rc::gen::inRange(0, 10);
    std::vector<std::pair<int, Half>> shapes;
    if (what < 5) shapes = {{1, Half::whole}};
    if (what == 5 || what == 6) shapes = {{2, Half::whole}};
    if (what == 7 || (manyTandems && what < 6)) shapes = {{1, Half::a}, {1, Half::b}};
    for (const auto& [poles, half] : shapes) {
      const Placement place{kMain, position, half, poles};
      if (refusal(plan, place, {})) continue;
      const CircuitId circuit = addCircuit(plan, kMain, position, poles, 20, "C", half);
      if (*rc::gen::inRange(0, 5) < 2 && moved < 10) {
        const BreakerId old = find(plan, circuit)->breaker;
        const int row = 1 + 2 * (moved / 2);
        moveByHand(plan, circuit, kBackup, {moved % 2 == 0 ? Column::left : Column::right, row});
        editBreaker(plan, old).stage = *rc::gen::inRange(0, 4) == 0 ? Stage::leftInPlace : Stage::removed;
        ++moved;
      }
    }
  }
  return plan;
}

std::set<HalfSpace> halvesOf(const Placement& place) {
  const std::vector<HalfSpace> all = coveredHalves(place);
  return {all.begin(), all.end()};
}
bool meet(const Placement& one, const Placement& other) {
  const std::set<HalfSpace> mine = halvesOf(one);
  const std::vector<HalfSpace> theirs = coveredHalves(other);
  return std::any_of(theirs.begin(), theirs.end(),
                     [&](const HalfSpace& half) { return mine.count(half) > 0; });
}

RC_GTEST_PROP(Clearing, StepsNeverPutTwoInOnePlaceAndLeaveTheFeedersFree, ()) {
  const Plan plan = anyHouse();
  for (const ClearedPlace& place : clearedPlaces(plan, kMain)) {
    if (!place.place) {
      RC_ASSERT(place.refusal.has_value());
      continue;
    }
    std::vector<Occupant> now = occupants(plan, kMain, Reading::before);
    for (const ClearingStep& step : place.steps) {
      const auto at = std::find_if(
          now.begin(), now.end(), [&](const Occupant& occupant) { return occupant.breaker == step.breaker; });
      if (step.what == Clearing::relocated) {
        if (at != now.end()) now.erase(at);
        for (const Occupant& other : now) RC_ASSERT(!meet(*step.to, other.placement));
        now.push_back({step.breaker, *step.to});
      } else {
        RC_ASSERT(at != now.end());
        now.erase(at);
      }
      // What the plan leaves in place is only proposed to go.
      RC_ASSERT(step.proposed == stands(*find(plan, step.breaker), Reading::planned));
      // Dark are circuits that leave the panel.
      for (const CircuitId circuit : step.dark)
        RC_ASSERT(panelOf(plan, *find(plan, circuit), Reading::planned) == kBackup);
    }
    for (const Occupant& other : now) RC_ASSERT(!meet(*place.place, other.placement));
    RC_ASSERT(!place.refusal.has_value());
  }
}

// Every pair of spaces, and every way to set what keeps its circuits in free places elsewhere.
struct Brute {
  const Plan& plan;
  std::optional<std::array<std::size_t, 3>> best;  // relocated, taken out that the plan leaves, dark

  void pair(const Placement& place) {
    std::vector<BreakerId> keep, spare;
    for (const Occupant& occupant : occupants(plan, kMain, Reading::planned)) {
      if (!meet(place, occupant.placement)) continue;
      (circuitsOn(plan, occupant.breaker, Reading::planned).empty() ? spare : keep)
          .push_back(occupant.breaker);
    }
    std::vector<BreakerId> away = keep;
    away.insert(away.end(), spare.begin(), spare.end());
    if (refusal(plan, place, away)) return;
    std::vector<Placement> to;
    choose(place, keep, away, to, spare.size());
  }
  void choose(const Placement& place, const std::vector<BreakerId>& keep, const std::vector<BreakerId>& away,
              std::vector<Placement>& to, std::size_t spares) {
    if (to.size() == keep.size()) {
      // Dark: all that leaves from under the feeder's place and from under the new places.
      std::size_t dark = 0;
      for (const Occupant& occupant : occupants(plan, kMain, Reading::before)) {
        const bool under = meet(place, occupant.placement) ||
                           std::any_of(to.begin(), to.end(),
                                       [&](const Placement& p) { return meet(p, occupant.placement); });
        if (!under || std::count(keep.begin(), keep.end(), occupant.breaker) > 0) continue;
        dark += circuitsOn(plan, occupant.breaker, Reading::before).size();
      }
      const std::array<std::size_t, 3> cost{keep.size(), spares, dark};
      if (!best || cost < *best) best = cost;
      return;
    }
    const Placement now = placementOf(*find(plan, keep[to.size()]));
    for (const SpacePosition position : allSpaces(*find(plan, kMain))) {
      for (const Half half : {Half::whole, Half::a, Half::b}) {
        if ((half == Half::whole) != (now.half == Half::whole)) continue;
        const Placement there{kMain, position, half, now.poles};
        // A spare that stands there comes out as well.
        std::vector<BreakerId> also = away;
        for (const Occupant& occupant : occupants(plan, kMain, Reading::planned)) {
          if (meet(there, occupant.placement) &&
              circuitsOn(plan, occupant.breaker, Reading::planned).empty() &&
              std::count(also.begin(), also.end(), occupant.breaker) == 0)
            also.push_back(occupant.breaker);
        }
        if (meet(there, place) || refusal(plan, there, also)) continue;
        if (std::any_of(to.begin(), to.end(), [&](const Placement& other) { return meet(there, other); }))
          continue;
        to.push_back(there);
        choose(place, keep, also, to, spares + also.size() - away.size());
        to.pop_back();
      }
    }
  }
};

RC_GTEST_PROP(Clearing, IsTheBestThatASearchThroughAllFinds, ()) {
  const Plan plan = anyHouse();
  const std::vector<ClearedPlace> all = clearedPlaces(plan, kMain);
  if (all.empty()) {
    RC_SUCCEED("nothing is backed up");
  }
  Brute brute{plan, {}};
  for (const SpacePosition position : allSpaces(*find(plan, kMain)))
    brute.pair({kMain, position, Half::whole, 2});
  const ClearedPlace& found = all.front();
  RC_ASSERT(found.place.has_value() == brute.best.has_value());
  if (!found.place) {
    RC_SUCCEED("no room by either");
  }
  std::array<std::size_t, 3> cost{};
  for (const ClearingStep& step : found.steps) {
    if (step.proposed) ++cost[step.what == Clearing::relocated ? 0 : 1];
    cost[2] += step.dark.size();
  }
  RC_ASSERT(cost[0] == (*brute.best)[0]);
  RC_ASSERT(cost[1] == (*brute.best)[1]);
  RC_ASSERT(cost[2] == (*brute.best)[2]);
}

}  // namespace
