#pragma once

// The plan: what people enter. A value; copying it copies pointers to shared parts that are never changed.
// Lists stand in the order of their ids.

#include <algorithm>

#include "core/plan/site.h"
#include "core/plan/supply.h"

namespace stayalight {

/// What a file says about itself, kept so that the plan of a later program goes back as it came.
struct FileHeader : Record {
  std::int32_t level = 1;  ///< of its fields
  friend bool operator==(const FileHeader&, const FileHeader&) = default;
};

struct Plan : Record {
  FileHeader header;
  Shared<Site> site;
  std::vector<Shared<Panel>> panels;
  std::vector<Shared<Breaker>> breakers;
  std::vector<Shared<Circuit>> circuits;
  Shared<Inverter> inverter;
  Shared<Battery> battery;
  Shared<Solar> solar;
  Shared<Generator> generator;
  Shared<Transfer> transfer;
  Shared<DcCable> dcCable;
  std::vector<Shared<FeederRun>> runs;
  std::vector<Shared<Raceway>> raceways;
  std::vector<Shared<SpliceBox>> spliceBoxes;
  Shared<OwnLists> own;
  Shared<Scenario> scenario;
  friend bool operator==(const Plan&, const Plan&) = default;
};

/// The entity with this id, or nullptr.
[[nodiscard]] const Panel* find(const Plan& plan, PanelId id);
[[nodiscard]] const Breaker* find(const Plan& plan, BreakerId id);
[[nodiscard]] const Circuit* find(const Plan& plan, CircuitId id);
[[nodiscard]] const FeederRun* find(const Plan& plan, FeederRunId id);
[[nodiscard]] const Raceway* find(const Plan& plan, RacewayId id);
[[nodiscard]] const SpliceBox* find(const Plan& plan, SpliceBoxId id);
/// The circuit a load hangs on, or nullptr.
[[nodiscard]] const Circuit* circuitOf(const Plan& plan, LoadId id);
/// The first panel in this role, or nullptr.
[[nodiscard]] const Panel* panelInRole(const Plan& plan, PanelRole role);
[[nodiscard]] inline const Panel* mainPanel(const Plan& plan) { return panelInRole(plan, PanelRole::main); }
[[nodiscard]] inline const Panel* backupPanel(const Plan& plan) {
  return panelInRole(plan, PanelRole::backup);
}

/// Which state of the house is read: before the work, or as planned (which is also as built once done).
enum class Reading : std::uint8_t { before, planned };
/// True where the breaker stands in its panel in that reading.
[[nodiscard]] bool stands(const Breaker& breaker, Reading reading);
/// The breaker that feeds the circuit in that reading; none where it has none.
[[nodiscard]] BreakerId breakerOf(const Circuit& circuit, Reading reading);
/// All circuits on a breaker in that reading: the two hots of a multiwire circuit on a two-pole breaker, or
/// two wires under one terminal.
[[nodiscard]] std::vector<CircuitId> circuitsOn(const Plan& plan, BreakerId breaker, Reading reading);
/// The first circuit on a breaker in that reading, or nullptr.
[[nodiscard]] const Circuit* circuitOn(const Plan& plan, BreakerId breaker, Reading reading);
/// Panel of the circuit's breaker in that reading; none where it has none.
[[nodiscard]] PanelId panelOf(const Plan& plan, const Circuit& circuit, Reading reading);
/// True where the circuit hangs on the backup subpanel as planned.
[[nodiscard]] bool backedUp(const Plan& plan, const Circuit& circuit);

/// True where a managed load stays switched off as long as an outage lasts.
[[nodiscard]] bool offInOutage(const Plan& plan, LoadId load);

/// The smallest id above all in use.
[[nodiscard]] PanelId nextPanelId(const Plan& plan);
[[nodiscard]] BreakerId nextBreakerId(const Plan& plan);
[[nodiscard]] CircuitId nextCircuitId(const Plan& plan);
[[nodiscard]] LoadId nextLoadId(const Plan& plan);
[[nodiscard]] FeederRunId nextFeederRunId(const Plan& plan);
[[nodiscard]] RacewayId nextRacewayId(const Plan& plan);
[[nodiscard]] SpliceBoxId nextSpliceBoxId(const Plan& plan);

}  // namespace stayalight
