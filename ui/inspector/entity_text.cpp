#include "ui/inspector/entity_text.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr MessageId kNamed{"inspector.named"};
constexpr MessageId kBreakerAt{"inspector.breaker_at"};
constexpr MessageId kNumbered{"inspector.numbered"};
constexpr MessageId kPanelMain{"inspector.panel.main"};
constexpr MessageId kPanelBackup{"inspector.panel.backup"};
constexpr MessageId kPlace{"inspector.place"};
constexpr MessageId kPlaceLeg{"inspector.place_leg"};

std::string said(const Language& language, std::string_view key) {
  return render(Message{MessageId{key}, {}}, language);
}

bool hasText(std::string_view key) {
  const auto& rows = texts();
  const auto row = std::lower_bound(rows.begin(), rows.end(), key,
                                    [](const TextRow& r, std::string_view k) { return r.key < k; });
  return row != rows.end() && row->key == key;
}

template <class Record>
std::string named(const Record& record, RecordKind kind, std::int64_t number, const Language& language) {
  if (!record.name.empty()) return record.name;
  if (number == 0) return kindName(kind, language);
  return render(say(kNumbered, kindName(kind, language), number), language);
}

}  // namespace

std::string kindName(RecordKind kind, const Language& language) {
  return said(language, "inspector.record." + std::string(recordType(kind).name));
}

std::string panelWord(const Panel& panel, const Language& language) {
  if (panel.role.is(PanelRole::main)) return said(language, kPanelMain.key);
  if (panel.role.is(PanelRole::backup)) return said(language, kPanelBackup.key);
  return named(panel, RecordKind::panel, panel.id.number, language);
}

std::string breakerPlace(const Plan& plan, BreakerId id, const Language& language) {
  const Breaker* breaker = find(plan, id);
  const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
  if (panel == nullptr) return {};
  return render(say(kPlace, panelWord(*panel, language), spaceNames(*panel, placementOf(*breaker))),
                language);
}

std::string entityName(const Plan& plan, const EntityRef& ref, const Language& language) {
  switch (ref.kind) {
    case RecordKind::panel:
      if (const Panel* panel = find(plan, PanelId{ref.id})) return named(*panel, ref.kind, ref.id, language);
      break;
    case RecordKind::circuit:
      if (const Circuit* circuit = find(plan, CircuitId{ref.id}))
        return named(*circuit, ref.kind, ref.id, language);
      break;
    case RecordKind::breaker:
      if (const Circuit* circuit = circuitOn(plan, BreakerId{ref.id}, Reading::planned)) {
        return named(*circuit, RecordKind::circuit, circuit->id.number, language);
      }
      if (const std::string place = breakerPlace(plan, BreakerId{ref.id}, language); !place.empty()) {
        return render(say(kBreakerAt, place), language);
      }
      break;
    case RecordKind::load:
      if (const auto* load = static_cast<const Load*>(findRecord(plan, ref)))
        return named(*load, ref.kind, ref.id, language);
      break;
    case RecordKind::inverter:
      return named(*plan.inverter, ref.kind, 0, language);
    case RecordKind::battery:
      return named(*plan.battery, ref.kind, 0, language);
    case RecordKind::solar:
      return named(*plan.solar, ref.kind, 0, language);
    case RecordKind::generator:
      return named(*plan.generator, ref.kind, 0, language);
    case RecordKind::feederRun:
      if (const FeederRun* run = find(plan, FeederRunId{ref.id})) {
        const Field* field = fieldOf(RecordKind::feederRun, "segment");
        return render(
            say(kNamed, kindName(ref.kind, language), choiceText(*field, run->segment.word(), language)),
            language);
      }
      break;
    case RecordKind::raceway:
      if (const Raceway* raceway = find(plan, RacewayId{ref.id}))
        return named(*raceway, ref.kind, ref.id, language);
      break;
    case RecordKind::spliceBox:
      if (const SpliceBox* box = find(plan, SpliceBoxId{ref.id}))
        return named(*box, ref.kind, ref.id, language);
      break;
    case RecordKind::space:
    case RecordKind::useWindow:
    case RecordKind::authorityAnswer:
    case RecordKind::clampReading:
    case RecordKind::managedLoad:
    case RecordKind::overloadPoint:
    case RecordKind::efficiencyPoint:
      return render(say(kNumbered, kindName(ref.kind, language), std::int64_t{ref.item + 1}), language);
    default:
      break;
  }
  return kindName(ref.kind, language);
}

std::string placeName(const Plan& plan, const EntityRef& ref, const Language& language) {
  BreakerId breaker;
  if (ref.kind == RecordKind::breaker) breaker = BreakerId{ref.id};
  if (ref.kind == RecordKind::circuit) {
    if (const Circuit* circuit = find(plan, CircuitId{ref.id}))
      breaker = circuit->planned.valid() ? circuit->planned : circuit->breaker;
  }
  if (ref.kind == RecordKind::load || ref.kind == RecordKind::useWindow) {
    if (const Circuit* circuit = circuitOf(plan, LoadId{ref.id}))
      return placeName(plan, {RecordKind::circuit, circuit->id.number}, language);
  }
  const Breaker* record = find(plan, breaker);
  const Panel* panel = record != nullptr ? find(plan, record->panel) : nullptr;
  if (panel == nullptr) return {};
  const std::string place = breakerPlace(plan, breaker, language);
  if (record->poles != 1) return place;
  return render(say(kPlaceLeg, place, std::string(legName(legOf(*panel, record->position())))), language);
}

std::string fieldLabel(const Field& field, const Language& language) { return said(language, field.help); }

std::string fieldHelp(const Field& field, const Language& language) {
  return said(language, std::string(field.help) + ".help");
}

std::string choiceText(const Field& field, std::string_view word, const Language& language) {
  if (field.choices.data() == kConductorSizeNames.data()) {
    const auto size = conductorSizeNamed(word);
    return size ? language.inUnits(std::string(word) + " " + std::string(unit(*size))) : std::string(word);
  }
  for (const std::string& key :
       {std::string(field.help) + "." + std::string(word), "field.choice." + std::string(word)}) {
    if (hasText(key)) return said(language, key);
  }
  return std::string(word);
}

std::string monthText(int month, const Language& language) {
  return said(language, "inspector.month." + std::to_string(month));
}

std::vector<EntityRef> entities(const Plan& plan) {
  std::vector<EntityRef> all{{RecordKind::site}};
  for (const auto& panel : plan.panels) all.push_back({RecordKind::panel, panel->id.number});
  all.push_back({RecordKind::inverter});
  all.push_back({RecordKind::battery});
  all.push_back({RecordKind::dcCable});
  all.push_back({RecordKind::solar});
  all.push_back({RecordKind::generator});
  all.push_back({RecordKind::transfer});
  for (const auto& run : plan.runs) all.push_back({RecordKind::feederRun, run->id.number});
  for (const auto& raceway : plan.raceways) all.push_back({RecordKind::raceway, raceway->id.number});
  for (const auto& box : plan.spliceBoxes) all.push_back({RecordKind::spliceBox, box->id.number});
  all.push_back({RecordKind::scenario});
  for (const auto& circuit : plan.circuits) all.push_back({RecordKind::circuit, circuit->id.number});
  for (const auto& breaker : plan.breakers) {
    const bool bare = circuitOn(plan, breaker->id, Reading::planned) == nullptr;
    if (bare && stands(*breaker, Reading::planned)) all.push_back({RecordKind::breaker, breaker->id.number});
  }
  return all;
}

}  // namespace stayalight
