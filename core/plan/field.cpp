#include "core/plan/field.h"

#include <cmath>

namespace stayalight {
namespace {

constexpr MessageId kNotNumber{"field.not_a_number"};
constexpr MessageId kNotWhole{"field.not_whole"};
constexpr MessageId kOutOfRange{"field.out_of_range"};
constexpr MessageId kNotFlag{"field.not_yes_or_no"};
constexpr MessageId kNotText{"field.not_text"};
constexpr MessageId kTooLong{"field.text_too_long"};
constexpr MessageId kMissing{"field.value_missing"};
constexpr MessageId kLowAboveHigh{"field.low_above_high"};
constexpr MessageId kUnknownSize{"field.unknown_size"};

Figure shown(double value) {
  const int decimals = value == std::floor(value) ? 0 : std::abs(value) < 1 ? 3 : 2;
  return Figure{value, "", decimals};
}

std::optional<Message> checkRange(const Field& field, double value) {
  if (!std::isfinite(value)) return say(kNotNumber, std::string(field.key));
  if (value < field.minimum || value > field.maximum) {
    return say(kOutOfRange, std::string(field.key), shown(value), shown(field.minimum), shown(field.maximum));
  }
  return std::nullopt;
}

std::optional<Message> checkText(const Field& field, const std::string& text) {
  if (text.size() > kLongestText) {
    return say(kTooLong, std::string(field.key), static_cast<std::int64_t>(text.size()),
               static_cast<std::int64_t>(kLongestText));
  }
  return std::nullopt;
}

std::optional<Message> checkFact(const Field& field, const FactValue& fact) {
  for (const auto& part : {fact.value, fact.low, fact.high}) {
    if (!part) continue;
    if (auto wrong = checkRange(field, *part)) return wrong;
  }
  const double low = fact.low.value_or(fact.value.value_or(field.minimum));
  const double high = fact.high.value_or(fact.value.value_or(field.maximum));
  const double value = fact.value.value_or(low);
  if (low > value || value > high || low > high)
    return say(kLowAboveHigh, std::string(field.key), shown(low), shown(value), shown(high));
  for (const std::string* text : {&fact.who, &fact.when, &fact.how}) {
    if (auto wrong = checkText(field, *text)) return wrong;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Message> check(const Field& field, const FieldValue& value) {
  if (std::holds_alternative<NoValue>(value)) {
    if (field.optional) return std::nullopt;
    return say(kMissing, std::string(field.key));
  }
  switch (field.kind) {
    case FieldKind::flag:
      if (!std::holds_alternative<bool>(value)) return say(kNotFlag, std::string(field.key));
      return std::nullopt;
    case FieldKind::whole:
    case FieldKind::identity:
    case FieldKind::reference: {
      const auto* whole = std::get_if<std::int64_t>(&value);
      if (whole == nullptr) return say(kNotWhole, std::string(field.key));
      return checkRange(field, static_cast<double>(*whole));
    }
    case FieldKind::number: {
      const auto* number = std::get_if<double>(&value);
      if (number == nullptr) return say(kNotNumber, std::string(field.key));
      return checkRange(field, *number);
    }
    case FieldKind::text:
    case FieldKind::choice: {
      const auto* text = std::get_if<std::string>(&value);
      if (text == nullptr) return say(kNotText, std::string(field.key));
      // A conductor size is data of a table, so an unknown one cannot be kept as a word.
      if (field.choices.data() == kConductorSizeNames.data() && !conductorSizeNamed(*text)) {
        return say(kUnknownSize, std::string(field.key), *text);
      }
      return checkText(field, *text);
    }
    case FieldKind::fact: {
      const auto* fact = std::get_if<FactValue>(&value);
      if (fact == nullptr) return say(kNotNumber, std::string(field.key));
      return checkFact(field, *fact);
    }
  }
  return std::nullopt;
}

namespace {

template <class Entity>
std::ptrdiff_t indexOf(const std::vector<Shared<Entity>>& list, std::int64_t id) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i]->id.number == id) return static_cast<std::ptrdiff_t>(i);
  }
  return -1;
}

// Where a record stands: index in its list and, for a load, its circuit's index. -1 where there is none.
std::pair<std::ptrdiff_t, std::ptrdiff_t> loadIndex(const Plan& plan, std::int64_t id) {
  for (std::size_t c = 0; c < plan.circuits.size(); ++c) {
    const auto& loads = plan.circuits[c]->loads;
    for (std::size_t l = 0; l < loads.size(); ++l) {
      if (loads[l].id.number == id) return {static_cast<std::ptrdiff_t>(c), static_cast<std::ptrdiff_t>(l)};
    }
  }
  return {-1, -1};
}

template <class List>
auto item(List& list, std::int32_t index) -> decltype(&list[0]) {
  if (index < 0 || static_cast<std::size_t>(index) >= list.size()) return nullptr;
  return &list[static_cast<std::size_t>(index)];
}

}  // namespace

const void* findRecord(const Plan& plan, const EntityRef& ref) {
  switch (ref.kind) {
    case RecordKind::plan:
      return &plan;
    case RecordKind::site:
      return &*plan.site;
    case RecordKind::inverter:
      return &*plan.inverter;
    case RecordKind::battery:
      return &*plan.battery;
    case RecordKind::solar:
      return &*plan.solar;
    case RecordKind::generator:
      return &*plan.generator;
    case RecordKind::transfer:
      return &*plan.transfer;
    case RecordKind::managedLoad:
      return item(plan.transfer->managed, ref.item);
    case RecordKind::authorityAnswer:
      return item(plan.site->answers, ref.item);
    case RecordKind::clampReading: {
      const Circuit* circuit = find(plan, CircuitId{ref.id});
      return circuit != nullptr ? item(circuit->readings, ref.item) : nullptr;
    }
    case RecordKind::dcCable:
      return &*plan.dcCable;
    case RecordKind::ownLists:
      return &*plan.own;
    case RecordKind::ownLoad:
      return item(plan.own->loads, ref.item);
    case RecordKind::ownInverter:
      return item(plan.own->inverters, ref.item);
    case RecordKind::ownBattery:
      return item(plan.own->batteries, ref.item);
    case RecordKind::ownPanel:
      return item(plan.own->panels, ref.item);
    case RecordKind::scenario:
      return &*plan.scenario;
    case RecordKind::panel:
      return find(plan, PanelId{ref.id});
    case RecordKind::breaker:
      return find(plan, BreakerId{ref.id});
    case RecordKind::circuit:
      return find(plan, CircuitId{ref.id});
    case RecordKind::feederRun:
      return find(plan, FeederRunId{ref.id});
    case RecordKind::raceway:
      return find(plan, RacewayId{ref.id});
    case RecordKind::spliceBox:
      return find(plan, SpliceBoxId{ref.id});
    case RecordKind::overloadPoint:
      return item(plan.inverter->overload, ref.item);
    case RecordKind::efficiencyPoint:
      return item(plan.inverter->efficiency, ref.item);
    case RecordKind::space: {
      const Panel* panel = find(plan, PanelId{ref.id});
      return panel != nullptr ? item(panel->exceptions, ref.item) : nullptr;
    }
    case RecordKind::load:
    case RecordKind::useWindow: {
      const auto [c, l] = loadIndex(plan, ref.id);
      if (c < 0) return nullptr;
      const Load& load = plan.circuits[static_cast<std::size_t>(c)]->loads[static_cast<std::size_t>(l)];
      if (ref.kind == RecordKind::load) return &load;
      return item(load.windows, ref.item);
    }
  }
  return nullptr;
}

void* editRecord(Plan& plan, const EntityRef& ref) {
  if (findRecord(plan, ref) == nullptr) return nullptr;
  switch (ref.kind) {
    case RecordKind::plan:
      return &plan;
    case RecordKind::site:
      return &plan.site.edit();
    case RecordKind::inverter:
      return &plan.inverter.edit();
    case RecordKind::battery:
      return &plan.battery.edit();
    case RecordKind::solar:
      return &plan.solar.edit();
    case RecordKind::generator:
      return &plan.generator.edit();
    case RecordKind::transfer:
      return &plan.transfer.edit();
    case RecordKind::managedLoad:
      return item(plan.transfer.edit().managed, ref.item);
    case RecordKind::authorityAnswer:
      return item(plan.site.edit().answers, ref.item);
    case RecordKind::clampReading:
      return item(plan.circuits[static_cast<std::size_t>(indexOf(plan.circuits, ref.id))].edit().readings,
                  ref.item);
    case RecordKind::dcCable:
      return &plan.dcCable.edit();
    case RecordKind::ownLists:
      return &plan.own.edit();
    case RecordKind::ownLoad:
      return item(plan.own.edit().loads, ref.item);
    case RecordKind::ownInverter:
      return item(plan.own.edit().inverters, ref.item);
    case RecordKind::ownBattery:
      return item(plan.own.edit().batteries, ref.item);
    case RecordKind::ownPanel:
      return item(plan.own.edit().panels, ref.item);
    case RecordKind::scenario:
      return &plan.scenario.edit();
    case RecordKind::panel:
      return &plan.panels[static_cast<std::size_t>(indexOf(plan.panels, ref.id))].edit();
    case RecordKind::breaker:
      return &plan.breakers[static_cast<std::size_t>(indexOf(plan.breakers, ref.id))].edit();
    case RecordKind::circuit:
      return &plan.circuits[static_cast<std::size_t>(indexOf(plan.circuits, ref.id))].edit();
    case RecordKind::feederRun:
      return &plan.runs[static_cast<std::size_t>(indexOf(plan.runs, ref.id))].edit();
    case RecordKind::raceway:
      return &plan.raceways[static_cast<std::size_t>(indexOf(plan.raceways, ref.id))].edit();
    case RecordKind::spliceBox:
      return &plan.spliceBoxes[static_cast<std::size_t>(indexOf(plan.spliceBoxes, ref.id))].edit();
    case RecordKind::overloadPoint:
      return item(plan.inverter.edit().overload, ref.item);
    case RecordKind::efficiencyPoint:
      return item(plan.inverter.edit().efficiency, ref.item);
    case RecordKind::space:
      return item(plan.panels[static_cast<std::size_t>(indexOf(plan.panels, ref.id))].edit().exceptions,
                  ref.item);
    case RecordKind::load:
    case RecordKind::useWindow: {
      const auto [c, l] = loadIndex(plan, ref.id);
      Load& load = plan.circuits[static_cast<std::size_t>(c)].edit().loads[static_cast<std::size_t>(l)];
      if (ref.kind == RecordKind::load) return &load;
      return item(load.windows, ref.item);
    }
  }
  return nullptr;
}

EntityRef ownerOf(const Plan& plan, const EntityRef& ref) {
  switch (ref.kind) {
    case RecordKind::space:
      return {RecordKind::panel, ref.id};
    case RecordKind::overloadPoint:
    case RecordKind::efficiencyPoint:
      return {RecordKind::inverter};
    case RecordKind::useWindow:
      return {RecordKind::load, ref.id};
    case RecordKind::authorityAnswer:
      return {RecordKind::site};
    case RecordKind::clampReading:
      return {RecordKind::circuit, ref.id};
    case RecordKind::managedLoad:
      return {RecordKind::transfer};
    case RecordKind::ownLoad:
    case RecordKind::ownInverter:
    case RecordKind::ownBattery:
    case RecordKind::ownPanel:
      return {RecordKind::ownLists};
    case RecordKind::load: {
      const Circuit* circuit = circuitOf(plan, LoadId{ref.id});
      return circuit != nullptr ? EntityRef{RecordKind::circuit, circuit->id.number} : ref;
    }
    default:
      return ref;
  }
}

}  // namespace stayalight
