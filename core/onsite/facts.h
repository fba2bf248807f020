#pragma once

// The table of facts: for each its key, what to do, who may do it, and when it is open.

#include <span>

#include "core/code/edition.h"
#include "core/onsite/onsite.h"
#include "core/transfer/transfer.h"
#include "core/wiring/wiring.h"

namespace stayalight::on_site {

/// What the tests of all facts look at, worked out once.
struct House {
  House(const Plan& plan, const Tables& tables);
  const Plan& plan;
  const Tables& tables;
  Edition edition;
  bool unitedStates = true;
  bool anyBackedUp = false;  ///< a circuit stands on the backup subpanel as planned
  bool motorsBackedUp = false;
  bool backupOccupied = false;
  std::vector<Segment> pieces;  ///< of the way to the backup subpanel
  std::vector<BusSources> buses;
  std::vector<const Panel*> apart;  ///< panels in another building
  [[nodiscard]] bool has(Segment segment) const;
};
struct OnCircuit {
  const Circuit& circuit;
  const Load& load;
};

template <class Record>
struct Fact {
  std::string_view key;  ///< its part after the dot is the field's key, where it is one
  Doer doer;
  MessageId what;
  bool (*open)(const House& house, const Record& record);
};
[[nodiscard]] std::span<const Fact<Site>> siteFacts();
[[nodiscard]] std::span<const Fact<Panel>> panelFacts();
[[nodiscard]] std::span<const Fact<Breaker>> breakerFacts();
[[nodiscard]] std::span<const Fact<Circuit>> circuitFacts();
[[nodiscard]] std::span<const Fact<OnCircuit>> loadFacts();
[[nodiscard]] std::span<const Fact<Transfer>> transferFacts();
[[nodiscard]] std::span<const Fact<ManagedLoad>> managedFacts();
[[nodiscard]] std::span<const Fact<AuthorityAnswer>> authorityFacts();
[[nodiscard]] std::span<const Fact<FeederRun>> runFacts();
[[nodiscard]] std::span<const Fact<Raceway>> racewayFacts();
[[nodiscard]] std::span<const Fact<SpliceBox>> boxFacts();
[[nodiscard]] std::span<const Fact<Inverter>> inverterFacts();
[[nodiscard]] std::span<const Fact<Battery>> batteryFacts();
[[nodiscard]] std::span<const Fact<Solar>> solarFacts();
[[nodiscard]] std::span<const Fact<Generator>> generatorFacts();
[[nodiscard]] std::span<const Fact<DcCable>> cableFacts();

/// Key of the item for a piece of the feeder that nobody has entered: "transfer.main_to_switch".
[[nodiscard]] std::string_view missingRunKey(Segment segment);

}  // namespace stayalight::on_site
