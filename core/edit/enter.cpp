// What a survey enters at the panel: poles, halves, shared neutrals, a circuit on a breaker that stands
// there.

#include "core/edit/parts.h"

namespace stayalight {
namespace editing {
namespace {

constexpr MessageId kNoBreaker{"edit.no_such_breaker"};
constexpr MessageId kNoCircuit{"edit.no_such_circuit"};
constexpr MessageId kFeedsOther{"edit.breaker_feeds_other"};
constexpr MessageId kRemoved{"edit.breaker_removed"};
constexpr MessageId kStillFeeds{"edit.still_feeds"};
constexpr MessageId kTwoForNeutral{"edit.neutral_needs_two"};
constexpr MessageId kNoNeutralGroup{"edit.no_neutral_group"};

constexpr std::int32_t kOneHotVolts = 120;
constexpr std::int32_t kTwoHotVolts = 240;
// Rated voltages that belong to one hot and neutral, and to two hots. Common practice, no source.
bool ratedForOneHot(const Load& load) { return load.ratedVoltage <= 130; }
bool ratedForTwoHots(const Load& load) { return load.ratedVoltage >= 200; }

void followPoles(Circuit& circuit, std::int32_t poles) {
  const bool two = poles == 2;
  if (two && circuit.voltage.is(VoltageClass::v120)) circuit.voltage = VoltageClass::v240;
  if (!two && !circuit.voltage.is(VoltageClass::v120)) circuit.voltage = VoltageClass::v120;
  for (Load& load : circuit.loads) {
    if (two && load.connection.is(Connection::lineToNeutral) && ratedForOneHot(load)) {
      load.connection = Connection::lineToLine;
      load.ratedVoltage = kTwoHotVolts;
    } else if (!two && load.connection.is(Connection::lineToLine) && ratedForTwoHots(load)) {
      load.connection = Connection::lineToNeutral;
      load.ratedVoltage = kOneHotVolts;
    }
    if (!two) load.pole = 1;
  }
}

std::int32_t nextGroup(const Plan& plan) {
  std::int32_t last = 0;
  for (const auto& circuit : plan.circuits) last = std::max(last, circuit->multiwire);
  return last + 1;
}

}  // namespace
}  // namespace editing

using namespace editing;

Result<Plan> addCircuitOn(const Plan& plan, BreakerId breaker, std::string name) {
  const Breaker* record = find(plan, breaker);
  if (record == nullptr) return say(kNoBreaker);
  const Panel* panel = find(plan, record->panel);
  const std::string spaces = panel != nullptr ? spaceNames(*panel, placementOf(*record)) : std::string();
  if (!stands(*record, Reading::planned)) return say(kRemoved, spaces);
  if (!record->feeds.is(Feeds::circuit) && !record->feeds.is(Feeds::nothing)) return say(kFeedsOther, spaces);
  if (const Circuit* circuit = circuitOn(plan, breaker, Reading::planned))
    return say(kStillFeeds, circuit->name);
  if (auto reason = check(*fieldOf(RecordKind::circuit, "name"), name)) return *reason;
  Plan added = plan;
  Circuit circuit;
  circuit.id = nextCircuitId(plan);
  circuit.name = std::move(name);
  circuit.planned = breaker;
  // What fed another circuit before the work feeds this one only after it.
  const bool fedOther = circuitOn(plan, breaker, Reading::before) != nullptr;
  if (stands(*record, Reading::before) && !fedOther) circuit.breaker = breaker;
  circuit.voltage = record->poles == 2 ? VoltageClass::v240 : VoltageClass::v120;
  added.circuits.emplace_back(std::move(circuit));
  Breaker& used = edit(added, breaker);
  used.feeds = Feeds::circuit;
  if (used.stage.is(Stage::leftInPlace)) used.stage = Stage::existing;
  return added;
}

Result<Plan> setPoles(const Plan& plan, BreakerId breaker, std::int32_t poles) {
  if (find(plan, breaker) == nullptr) return say(kNoBreaker);
  std::vector<CircuitId> circuits;
  std::vector<BreakerId> breakers = {breaker};
  for (const auto& circuit : plan.circuits) {
    if (circuit->breaker != breaker && circuit->planned != breaker) continue;
    circuits.push_back(circuit->id);
    for (const BreakerId other : {circuit->breaker, circuit->planned}) {
      if (other.valid() && !contains(breakers, other)) breakers.push_back(other);
    }
  }
  Plan changed = plan;
  for (const BreakerId each : breakers) {
    Result<Plan> next = setField(changed, {RecordKind::breaker, each.number}, "poles", std::int64_t{poles});
    if (!next) return next;
    changed = std::move(next).value();
  }
  if (find(plan, breaker)->poles == poles) return changed;
  for (const CircuitId id : circuits) followPoles(edit(changed, id), poles);
  return changed;
}

Result<Plan> shareNeutral(const Plan& plan, std::span<const CircuitId> circuits) {
  std::vector<CircuitId> members;
  for (const CircuitId id : circuits) {
    const Circuit* circuit = find(plan, id);
    if (circuit == nullptr) return say(kNoCircuit);
    // A group that one of them has already stays whole.
    for (const CircuitId member : multiwireGroup(plan, *circuit)) {
      if (!contains(members, member)) members.push_back(member);
    }
  }
  if (members.size() < 2) return say(kTwoForNeutral);
  std::int32_t group = 0;
  for (const CircuitId id : members) {
    const std::int32_t has = find(plan, id)->multiwire;
    if (has > 0 && (group == 0 || has < group)) group = has;
  }
  if (group == 0) group = nextGroup(plan);
  Plan shared = plan;
  for (const CircuitId id : members) {
    Circuit& circuit = edit(shared, id);
    circuit.multiwire = group;
    circuit.neutralShared = Answer::yes;
  }
  return shared;
}

Result<Plan> partNeutral(const Plan& plan, CircuitId circuit) {
  const Circuit* record = find(plan, circuit);
  if (record == nullptr) return say(kNoCircuit);
  if (record->multiwire <= 0) return say(kNoNeutralGroup, record->name);
  std::vector<CircuitId> leaving = {circuit};
  const std::vector<CircuitId> group = multiwireGroup(plan, *record);
  if (group.size() == 2) leaving = group;  // one alone shares no neutral
  Plan parted = plan;
  for (const CircuitId id : leaving) {
    Circuit& each = edit(parted, id);
    each.multiwire = 0;
    each.neutralShared = Answer::unknown;
  }
  return parted;
}

}  // namespace stayalight
