#pragma once

// Ids that survive edits. Each kind of entity counts on its own, from 1; 0 means "none".

#include <compare>
#include <cstdint>

namespace stayalight {

template <class Entity>
struct Id {
  std::int64_t number = 0;
  [[nodiscard]] constexpr bool valid() const { return number > 0; }
  friend constexpr auto operator<=>(Id, Id) = default;
};

struct Panel;
struct Breaker;
struct Circuit;
struct Load;
struct FeederRun;
struct Raceway;
struct SpliceBox;
using PanelId = Id<Panel>;
using BreakerId = Id<Breaker>;
using CircuitId = Id<Circuit>;
using LoadId = Id<Load>;
using FeederRunId = Id<FeederRun>;
using RacewayId = Id<Raceway>;
using SpliceBoxId = Id<SpliceBox>;

/// Kinds of record a plan is made of; with an id it names one entity of a plan.
enum class RecordKind : std::uint8_t {
  plan,
  site,
  panel,
  space,
  breaker,
  circuit,
  load,
  useWindow,
  authorityAnswer,
  clampReading,
  inverter,
  overloadPoint,
  efficiencyPoint,
  battery,
  solar,
  generator,
  transfer,
  managedLoad,
  dcCable,
  feederRun,
  raceway,
  spliceBox,
  ownLists,
  ownLoad,
  ownInverter,
  ownBattery,
  ownPanel,
  scenario
};

/// Rows of a list inside another record, which have no id of their own.
[[nodiscard]] constexpr bool isRow(RecordKind kind) {
  return kind == RecordKind::space || kind == RecordKind::useWindow || kind == RecordKind::authorityAnswer ||
         kind == RecordKind::clampReading || kind == RecordKind::overloadPoint ||
         kind == RecordKind::efficiencyPoint || kind == RecordKind::managedLoad;
}
/// Entries of the plan's own lists, which have no id either.
[[nodiscard]] constexpr bool isOwn(RecordKind kind) {
  return kind == RecordKind::ownLoad || kind == RecordKind::ownInverter || kind == RecordKind::ownBattery ||
         kind == RecordKind::ownPanel;
}

/// One record of a plan. `id` is 0 for the records that exist once (site, inverter, battery, solar,
/// generator, transfer, own lists, scenario); rows are named by their owner's id and `item`, entries of the
/// own lists by `item`.
struct EntityRef {
  RecordKind kind = RecordKind::plan;
  std::int64_t id = 0;
  std::int32_t item = -1;
  friend constexpr auto operator<=>(const EntityRef&, const EntityRef&) = default;
};

}  // namespace stayalight
