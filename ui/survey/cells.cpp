#include "ui/survey/cells.h"

#include <cctype>

#include "core/onsite/neutral_reading.h"
#include "ui/inspector/entity_text.h"
#include "ui/survey/cell_parts.h"
#include "ui/survey/hours_text.h"

namespace stayalight {
namespace survey_cells {

std::string said(const Language& language, MessageId id) { return render(Message{id, {}}, language); }

std::string small(std::string_view text) {
  std::string out;
  for (const char c : text) out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

const Load* loadOf(const Plan& plan, const GridRow& row) {
  const Circuit* circuit = find(plan, row.circuit);
  if (circuit == nullptr) return nullptr;
  for (const Load& load : circuit->loads) {
    if (load.id == row.load) return &load;
  }
  return nullptr;
}
bool severalLoads(const Plan& plan, const GridRow& row) {
  const Circuit* circuit = find(plan, row.circuit);
  return circuit != nullptr && !row.ofLoad && circuit->loads.size() > 1;
}
bool ofLoad(GridColumn column) { return columnRow(column).record == RecordKind::load; }

std::string& originOf(FactValue& fact, GridColumn column) {
  return column == GridColumn::who ? fact.who : column == GridColumn::when ? fact.when : fact.how;
}

std::vector<const Field*> factsOf(const Load& load) {
  std::vector<const Field*> facts;
  for (const Field& field : recordType(RecordKind::load).fields) {
    if (field.kind == FieldKind::fact && std::get<FactValue>(field.get(&load)).value) facts.push_back(&field);
  }
  return facts;
}

}  // namespace survey_cells

namespace {

using namespace survey_cells;

constexpr MessageId kSpare{"survey.spare"};
constexpr MessageId kLeftInPlace{"survey.left_in_place"};
constexpr MessageId kFeederTo{"survey.feeder_to"};
constexpr MessageId kLoads{"survey.loads"};
constexpr MessageId kSeveral{"survey.several"};
constexpr MessageId kStays{"survey.stays"};
constexpr MessageId kInAmperes{"survey.in_amperes"};

EntityRef ref(const GridRow& row, RecordKind record) {
  return {record, record == RecordKind::breaker   ? row.breaker.number
                  : record == RecordKind::circuit ? row.circuit.number
                                                  : row.load.number};
}

/// Words for a breaker that feeds no circuit.
std::string breakerWords(const Plan& plan, const Breaker& breaker, const Language& language) {
  if (breaker.stage.is(Stage::leftInPlace)) return said(language, kLeftInPlace);
  if (breaker.feeds.is(Feeds::nothing) || breaker.feeds.is(Feeds::circuit)) return said(language, kSpare);
  const Panel* fed = find(plan, breaker.feedsPanel);
  if (breaker.feeds.is(Feeds::feeder) && fed != nullptr) return render(say(kFeederTo, fed->name), language);
  return choiceText(*fieldOf(RecordKind::breaker, "feeds"), breaker.feeds.word(), language);
}

CellText nameText(const Plan& plan, const GridRow& row, const Language& language) {
  if (row.ofLoad) {
    const Load* load = loadOf(plan, row);
    return {load != nullptr ? load->name : std::string(), {}, false, false};
  }
  if (const Circuit* circuit = find(plan, row.circuit)) return {circuit->name, {}, false, false};
  const Breaker* breaker = find(plan, row.breaker);
  if (breaker == nullptr) return {};
  return {breakerWords(plan, *breaker, language), {}, false, true};
}

CellText factText(const Field& field, const FactValue& fact, const CellStyle& style) {
  if (!fact.value) return {"?", Grade::unknown, true, false};
  return {writeQuantity(*fact.value, field.unit, *style.language, style.units), fact.grade, false, false};
}

CellText runningText(const Load& load, const CellStyle& style) {
  const Field& watts = *fieldOf(RecordKind::load, "running_W");
  const Field& amperes = *fieldOf(RecordKind::load, "running_A");
  if (!load.running.value && load.runningCurrent.value) {
    CellText text = factText(amperes, std::get<FactValue>(amperes.get(&load)), style);
    text.text = render(say(kInAmperes, text.text), *style.language);
    return text;
  }
  return factText(watts, std::get<FactValue>(watts.get(&load)), style);
}

CellText motorText(const Load& load, const Language& language) {
  if (load.start.is(StartKind::none)) return {said(language, kNoMotor), {}, false, false};
  if (load.start.is(StartKind::softStart)) return {said(language, kSoftStart), {}, false, false};
  if (load.start.is(StartKind::variableSpeed)) return {said(language, kVariableSpeed), {}, false, false};
  if (load.startClass.is(StartClass::unknown)) return {"?", {}, true, false};
  return {choiceText(*fieldOf(GridColumn::motor), load.startClass.word(), language), {}, false, false};
}

CellText originText(const Load& load, GridColumn column, const Language& language) {
  std::optional<std::string> common;
  for (const Field* field : factsOf(load)) {
    FactValue fact = std::get<FactValue>(field->get(&load));
    const std::string& text = originOf(fact, column);
    if (common && *common != text) return {said(language, kSeveral), {}, false, false};
    common = text;
  }
  return {common.value_or(std::string()), {}, false, false};
}

CellText loadText(const Plan& plan, const GridRow& row, GridColumn column, const CellStyle& style) {
  if (severalLoads(plan, row)) {
    if (column != GridColumn::running) return {{}, {}, false, true};
    const auto loads = static_cast<std::int64_t>(find(plan, row.circuit)->loads.size());
    return {render(say(kLoads, loads), *style.language), {}, false, true};
  }
  const Load* load = loadOf(plan, row);
  if (load == nullptr) {
    // A circuit whose loads nobody has written down.
    const bool asked = find(plan, row.circuit) != nullptr && column == GridColumn::running;
    return {asked ? "?" : "", {}, asked, false};
  }
  switch (column) {
    case GridColumn::running:
      return runningText(*load, style);
    case GridColumn::motor:
      return motorText(*load, *style.language);
    case GridColumn::hours:
      return {hoursText(load->windows, *style.language), {}, false, false};
    case GridColumn::who:
    case GridColumn::when:
    case GridColumn::how:
      return originText(*load, column, *style.language);
    case GridColumn::startCurrent:
    case GridColumn::startTime:
      // Without a motor there is nothing to know.
      if (load->start.is(StartKind::none)) return {};
      break;
    default:
      break;
  }
  const Field& field = *fieldOf(column);
  return factText(field, std::get<FactValue>(field.get(load)), style);
}

CellText goesToText(const Plan& plan, const GridRow& row, const Language& language) {
  const Circuit* circuit = find(plan, row.circuit);
  if (circuit == nullptr || row.ofLoad) return {{}, {}, false, true};
  if (circuit->planned == row.breaker) return {said(language, kStays), {}, false, true};
  return {breakerPlace(plan, circuit->planned, language), {}, false, true};
}

CellText fieldText(const Plan& plan, const GridRow& row, GridColumn column, const CellStyle& style) {
  const Field& field = *fieldOf(column);
  const void* record = findRecord(plan, ref(row, columnRow(column).record));
  if (record == nullptr) return {};
  const FieldValue value = field.get(record);
  const Circuit* circuit = find(plan, row.circuit);
  switch (column) {
    case GridColumn::rating: {
      const Breaker& breaker = *find(plan, row.breaker);
      const std::string rating = std::to_string(breaker.rating.count());
      if (!breaker.ratingRead.is(Answer::yes)) return {rating + "?", {}, true, false};
      break;
    }
    case GridColumn::multiwire:
      if (circuit->multiwire == 0)
        return {neutralShared(*circuit) == Answer::unknown ? "?" : "",
                {},
                neutralShared(*circuit) == Answer::unknown,
                false};
      break;
    case GridColumn::half:
      if (std::get<std::string>(value) == "whole") return {};
      break;
    case GridColumn::tie:
    case GridColumn::protection:
      if (std::get<std::string>(value) == "none") return {};
      break;
    case GridColumn::metal:
      // A wire whose size nobody has looked at has no known metal either.
      if (!circuit->conductor) return {"?", {}, true, false};
      break;
    default:
      break;
  }
  if (std::holds_alternative<NoValue>(value)) return {"?", {}, true, false};
  if (const auto* whole = std::get_if<std::int64_t>(&value))
    return {writeQuantity(static_cast<double>(*whole), field.unit, *style.language, style.units),
            {},
            false,
            false};
  const std::string& word = std::get<std::string>(value);
  if (field.kind == FieldKind::text) return {word, {}, false, false};
  if (word == "unknown") return {"?", {}, true, false};
  if (column == GridColumn::conductor) {
    // The unit stands in the head of the column; what is beside it does not.
    const auto size = conductorSizeNamed(word);
    const std::string sized = size ? word + " " + std::string(unit(*size)) : word;
    return {word + style.language->inUnits(sized).substr(sized.size()), {}, false, false};
  }
  return {choiceText(field, word, *style.language), {}, false, false};
}

}  // namespace

CellText cellText(const Plan& plan, const GridRow& row, GridColumn column, const CellStyle& style) {
  const Language& language = *style.language;
  switch (column) {
    case GridColumn::space: {
      const Panel* panel = find(plan, row.panel);
      if (panel == nullptr || row.ofLoad) return {{}, {}, false, true};
      return {spaceNames(*panel, {row.panel, row.position, row.half, row.poles}), {}, false, true};
    }
    case GridColumn::goesTo:
      return goesToText(plan, row, language);
    case GridColumn::finding:
      return {{}, {}, false, true};
    case GridColumn::name:
      return nameText(plan, row, language);
    default:
      break;
  }
  if (ofLoad(column)) return loadText(plan, row, column, style);
  if (row.ofLoad) return {{}, {}, false, true};
  CellText text = fieldText(plan, row, column, style);
  const Circuit* circuit = find(plan, row.circuit);
  if (column == GridColumn::serves && circuit != nullptr && circuit->traced.is(Answer::yes))
    text.grade = Grade::traced;
  return text;
}

std::string typedText(const Plan& plan, const GridRow& row, GridColumn column, const CellStyle& style) {
  const CellText cell = cellText(plan, row, column, style);
  if (cell.unknown || cell.fixed) return {};
  return column == GridColumn::conductor ? cell.text.substr(0, cell.text.find(' ')) : cell.text;
}

std::vector<std::string> choicesOf(GridColumn column, const Language& language) {
  std::vector<std::string> all;
  const Field* field = fieldOf(column);
  if (field == nullptr || field->kind != FieldKind::choice || column == GridColumn::conductor) return all;
  if (column == GridColumn::motor) {
    for (const MessageId id : {kNoMotor, kSoftStart, kVariableSpeed}) all.push_back(said(language, id));
  }
  for (const std::string_view word : field->choices) all.push_back(choiceText(*field, word, language));
  return all;
}

}  // namespace stayalight
