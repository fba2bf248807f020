#pragma once

// The plan that benchmarks work on: panels of 42 and 24 spaces, 30 circuits with 60 loads, 12 of them motors.
// Half of the circuits, with half of the motors, are planned to the backup subpanel. The house is made up.

#include <cstdlib>
#include <string>
#include <vector>

#include "core/edit/edit.h"
#include "tests/core/example_plans.h"

namespace stayalight::bench {

inline constexpr int kCircuits = 30;
inline constexpr int kTwoPoleCircuits = 4;

/// Every other load is used in hours of its own, so that no two hours of a day are alike.
inline void addWindows(Load& load, int number) {
  for (int part = 0; part < 2; ++part) {
    UseWindow window;
    window.from = TimeOfDay(60 * ((5 + 3 * number + 11 * part) % 24));
    window.to = TimeOfDay(60 * ((9 + 4 * number + 12 * part) % 24));
    window.share = Fraction(0.2 + 0.02 * number);
    load.windows.push_back(window);
  }
}

inline Plan largeHouse() {
  Plan plan = example::exampleHouse();
  plan.breakers.clear();
  plan.circuits.clear();
  example::editPanel(plan, example::kMain).spaces = 42;
  example::editPanel(plan, example::kBackup).spaces = 24;
  int row = 1;
  for (int i = 0; i < kCircuits; ++i) {
    const bool twoPole = i >= kCircuits - kTwoPoleCircuits;
    const Column column = i % 2 == 0 ? Column::left : Column::right;
    const std::string name = "Circuit " + std::to_string(i + 1);
    const double watts = 40.0 + 35.0 * i;
    const auto make = twoPole ? example::lineToLineLoad : example::plainLoad;
    Load first = make(name + " first", watts, 0.95, 0.4);
    Load second = make(name + " second", watts / 2, 0.8, 0.2);
    // Two of five neighbours, one in each column.
    if (i % 5 < 2) second = example::withStart(second, 8.0 + i, 0.4 + 0.1 * (i % 5), 2);
    if (i % 4 < 2) {
      addWindows(first, i);
      addWindows(second, i + 7);
    }
    const CircuitId circuit =
        example::addCircuitWithLoad(plan, example::kMain, {column, row}, twoPole ? 2 : 1, 20, name, first);
    example::addLoad(plan, circuit, second);
    if (column == Column::right) row += twoPole ? 2 : 1;
  }
  const BreakerId feeder =
      example::addBreaker(plan, example::kMain, {Column::left, 20}, 2, 60, Feeds::feeder, Stage::fresh);
  example::editBreaker(plan, feeder).feedsPanel = example::kBackup;
  std::vector<CircuitId> moving;
  for (std::size_t i = 0; i < plan.circuits.size(); i += 2) moving.push_back(plan.circuits[i]->id);
  Result<Plan> moved = moveCircuits(plan, moving, example::kBackup);
  if (!moved.ok()) std::abort();
  return std::move(moved).value();
}

/// As many of its circuits as the backup subpanel holds: the most that its 24 spaces can ask of `assess`.
inline Plan fullBackup() {
  Plan plan = largeHouse();
  for (std::size_t i = 1; i < plan.circuits.size(); i += 2) {
    Result<Plan> moved = moveCircuits(plan, std::vector<CircuitId>{plan.circuits[i]->id}, example::kBackup);
    if (moved.ok()) plan = std::move(moved).value();
  }
  return plan;
}

/// What a plan holds, to be shown beside the figures of a benchmark.
struct Counts {
  int circuits = 0, loads = 0, motors = 0, loadsOnBackup = 0, motorsOnBackup = 0;
};
inline Counts countsOf(const Plan& plan) {
  Counts out;
  const Panel* backup = backupPanel(plan);
  for (const auto& circuit : plan.circuits) {
    const Breaker* breaker = find(plan, circuit->planned);
    const bool kept = backup != nullptr && breaker != nullptr && breaker->panel == backup->id;
    ++out.circuits;
    for (const Load& load : circuit->loads) {
      const bool motor = !load.start.is(StartKind::none);
      ++out.loads;
      out.motors += motor ? 1 : 0;
      out.loadsOnBackup += kept ? 1 : 0;
      out.motorsOnBackup += kept && motor ? 1 : 0;
    }
  }
  return out;
}

}  // namespace stayalight::bench
