// What typing into a cell makes of the plan.

#include <algorithm>
#include <array>
#include <cmath>

#include "core/directory/directory.h"
#include "ui/inspector/entity_text.h"
#include "ui/survey/cell_parts.h"
#include "ui/survey/cells.h"
#include "ui/survey/hours_text.h"

namespace stayalight {
namespace {

using namespace survey_cells;

constexpr MessageId kNotHere{"survey.not_here"};
constexpr MessageId kNothingUnknown{"survey.nothing_unknown"};
constexpr MessageId kTypeInRows{"survey.type_in_rows"};
constexpr MessageId kNotOneOf{"survey.not_one_of"};
constexpr MessageId kTwoFit{"survey.two_fit"};
constexpr MessageId kOneOrTwo{"survey.one_or_two"};
constexpr MessageId kOutOfRange{"inspector.out_of_range"};
constexpr MessageId kNotWhole{"inspector.not_whole"};
constexpr MessageId kMustHaveValue{"inspector.must_have_value"};
constexpr MessageId kTooLong{"inspector.too_long"};
constexpr MessageId kNoFigure{"survey.no_figure"};
constexpr MessageId kSeveralWindows{"survey.several_windows"};
constexpr MessageId kNothingAbove{"survey.nothing_above"};
constexpr MessageId kNoCircuit{"survey.no_circuit"};

std::string trimmed(std::string text) {
  while (!text.empty() && text.front() == ' ') text.erase(0, 1);
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

EntityRef ref(const GridRow& row, RecordKind record) {
  return {record, record == RecordKind::breaker   ? row.breaker.number
                  : record == RecordKind::circuit ? row.circuit.number
                                                  : row.load.number};
}
bool originColumn(GridColumn column) {
  return column == GridColumn::who || column == GridColumn::when || column == GridColumn::how;
}

/// A plan on the way, and the row in it.
struct Entry {
  Plan plan;
  GridRow row;
};

Result<Entry> withBreaker(const Plan& plan, const GridRow& row, std::int32_t poles = 1) {
  if (row.breaker.valid() || row.circuit.valid()) return Entry{plan, row};
  const Placement place{row.panel, row.position, row.half, poles};
  Result<Plan> added = addCircuit(plan, row.panel, place, poles, kRatingNotRead, {});
  if (!added) return added.refusal();
  GridRow now = row;
  now.poles = poles;
  now.breaker = added.value().breakers.back()->id;
  now.circuit = added.value().circuits.back()->id;
  // Nobody has typed its rating yet.
  Result<Plan> assumed = setField(added.value(), {RecordKind::breaker, now.breaker.number}, "rating_read",
                                  std::string("unknown"));
  if (!assumed) return assumed.refusal();
  return Entry{std::move(assumed).value(), now};
}

Result<Entry> withCircuit(const Plan& plan, const GridRow& row) {
  Result<Entry> step = withBreaker(plan, row);
  if (!step || step.value().row.circuit.valid()) return step;
  Result<Plan> added = addCircuitOn(step.value().plan, row.breaker, {});
  if (!added) return added.refusal();
  GridRow now = step.value().row;
  now.circuit = added.value().circuits.back()->id;
  return Entry{std::move(added).value(), now};
}

Result<Entry> withLoad(const Plan& plan, const GridRow& row) {
  if (severalLoads(plan, row))
    return say(kTypeInRows, static_cast<std::int64_t>(find(plan, row.circuit)->loads.size()));
  Result<Entry> step = withCircuit(plan, row);
  if (!step || step.value().row.load.valid()) return step;
  const Circuit& circuit = *find(step.value().plan, step.value().row.circuit);
  Load load;
  load.name = circuit.name;
  if (!circuit.voltage.is(VoltageClass::v120)) {
    load.connection = Connection::lineToLine;
    load.ratedVoltage = 240;
  }
  const CircuitId id = circuit.id;
  Result<Plan> added = addLoad(step.value().plan, id, load);
  if (!added) return added.refusal();
  GridRow now = step.value().row;
  now.load = find(added.value(), id)->loads.back().id;
  return Entry{std::move(added).value(), now};
}

Result<Entry> withRecord(const Plan& plan, const GridRow& row, GridColumn column) {
  switch (columnRow(column).record) {
    case RecordKind::breaker:
      if (row.ofLoad) return say(kNotHere);
      return withBreaker(plan, row);
    case RecordKind::circuit:
      if (row.ofLoad) return say(kNotHere);
      return withCircuit(plan, row);
    case RecordKind::load:
      return withLoad(plan, row);
    default:
      return say(kNotHere);
  }
}

Result<double> numberOf(const Field& field, const std::string& text, const CellStyle& style) {
  Result<double> read = readQuantity(text, field.unit, decimalMarkOf(*style.language), style.units);
  if (!read) return read;
  if (field.kind == FieldKind::whole && read.value() != std::round(read.value())) return say(kNotWhole);
  if (!std::isfinite(read.value()) || read.value() < field.minimum || read.value() > field.maximum) {
    const std::string unit(shownUnit(field.unit, style.units));
    const auto shown = [&](double limit) {
      return writeQuantity(limit, field.unit, *style.language, style.units) +
             (unit.empty() ? "" : " " + unit);
    };
    return say(kOutOfRange, shown(field.minimum), shown(field.maximum));
  }
  return read;
}

/// Other words people type for a choice. Common practice, no source.
struct Alias {
  GridColumn column;
  std::string_view typed;
  std::string_view word;
};
constexpr Alias kAliases[] = {
    {GridColumn::metal, "cu", "copper"},
    {GridColumn::metal, "al", "aluminium"},
    {GridColumn::metal, "aluminum", "aluminium"},
    {GridColumn::wiring, "nm", "nm_cable"},
    {GridColumn::wiring, "mc", "metal_clad_cable"},
    {GridColumn::wiring, "conduit", "singles_in_raceway"},
    {GridColumn::wiring, "emt", "singles_in_raceway"},
    {GridColumn::wiring, "pipe", "singles_in_raceway"},
    {GridColumn::wiring, "raceway", "singles_in_raceway"},
    {GridColumn::wiring, "se", "service_entrance_cable"},
    {GridColumn::wiring, "ser", "service_entrance_cable"},
    {GridColumn::wiring, "seu", "service_entrance_cable"},
    {GridColumn::protection, "gfi", "gfci"},
    {GridColumn::protection, "afi", "afci"},
    {GridColumn::protection, "af", "afci"},
    {GridColumn::protection, "gf", "gfci"},
    {GridColumn::protection, "both", "dual"},
    {GridColumn::protection, "af/gf", "dual"},
    {GridColumn::protection, "no", "none"},
    {GridColumn::tie, "handle", "handle_tie"},
    {GridColumn::tie, "tie", "handle_tie"},
    {GridColumn::tie, "yes", "handle_tie"},
    {GridColumn::tie, "no", "none"},
    {GridColumn::half, "upper", "a"},
    {GridColumn::half, "lower", "b"},
    {GridColumn::motor, "fridge", "refrigeration_compressor"},
    {GridColumn::motor, "freezer", "refrigeration_compressor"},
    {GridColumn::motor, "compressor", "refrigeration_compressor"},
    {GridColumn::motor, "ac", "air_conditioner"},
    {GridColumn::motor, "heat pump", "air_conditioner"},
    {GridColumn::motor, "fan", "blower"},
    {GridColumn::motor, "furnace", "blower"},
    {GridColumn::motor, "washer", "washer_or_door"},
    {GridColumn::motor, "door", "washer_or_door"},
};

/// The word of a choice: typed whole, by its shown text, by an alias, or by the beginning of just one of
/// them.
Result<std::string> wordOf(GridColumn column, const Field& field, const std::string& text,
                           const Language& language) {
  const std::string typed = small(trimmed(text));
  std::string list;
  std::vector<std::string> beginnings;
  for (const std::string_view word : field.choices) {
    const std::string shown = small(choiceText(field, word, language));
    std::string plain = small(word);
    std::replace(plain.begin(), plain.end(), '_', ' ');
    if (typed == shown || typed == plain || typed == word) return std::string(word);
    if (shown.rfind(typed, 0) == 0 || plain.rfind(typed, 0) == 0) beginnings.emplace_back(word);
    list += (list.empty() ? "" : ", ") + choiceText(field, word, language);
  }
  for (const Alias& alias : kAliases) {
    if (alias.column == column && typed == alias.typed) return std::string(alias.word);
  }
  if (beginnings.size() == 1) return beginnings.front();
  if (beginnings.size() > 1) {
    std::string both;
    for (const std::string& word : beginnings)
      both += (both.empty() ? "" : ", ") + choiceText(field, word, language);
    return say(kTwoFit, text, both);
  }
  return say(kNotOneOf, text, list);
}

Result<Plan> setIn(const Entry& step, GridColumn column, const FieldValue& value) {
  return setField(step.plan, ref(step.row, columnRow(column).record), columnRow(column).key, value);
}

// -- columns with ways of their own

Result<Plan> enterPoles(const Plan& plan, const GridRow& row, const std::string& text) {
  const auto words = readRating(text);
  std::string typed = small(trimmed(text));
  while (!typed.empty() && (typed.back() == 'p' || typed.back() == ' ')) typed.pop_back();
  const std::int32_t poles = typed == "1" ? 1 : typed == "2" ? 2 : words && words->poles ? *words->poles : 0;
  if (poles == 0) return say(kOneOrTwo);
  if (row.ofLoad) return say(kNotHere);
  if (!row.breaker.valid()) {
    Result<Entry> made = withBreaker(plan, row, poles);
    if (!made) return made.refusal();
    return made.value().plan;
  }
  return setPoles(plan, row.breaker, poles);
}

/// "20", "50 2P" with its poles, "20?" for a guess.
Result<Plan> enterRating(const Plan& plan, const GridRow& row, const std::string& typed,
                         const CellStyle& style) {
  if (row.ofLoad) return say(kNotHere);
  const Field& field = *fieldOf(GridColumn::rating);
  const bool guessed = typed.back() == '?';
  const std::string text = guessed ? trimmed(typed.substr(0, typed.size() - 1)) : typed;
  double rating = 0.0;
  std::optional<std::int32_t> poles;
  const auto words = readRating(text);
  if (words && words->poles && words->rating && small(text).find('p') != std::string::npos) {
    rating = *words->rating;
    poles = words->poles;
  } else {
    const Result<double> read = numberOf(field, text, style);
    if (!read) return read.refusal();
    rating = read.value();
  }
  Result<Entry> step = withBreaker(plan, row, poles.value_or(1));
  if (!step) return step.refusal();
  const EntityRef breaker = ref(step.value().row, RecordKind::breaker);
  Result<Plan> changed = step.value().plan;
  if (poles) changed = setPoles(changed.value(), step.value().row.breaker, *poles);
  if (changed) changed = setField(changed.value(), breaker, "rating_A", static_cast<std::int64_t>(rating));
  if (changed && guessed) changed = setField(changed.value(), breaker, "rating_read", std::string("unknown"));
  return changed;
}

Result<Plan> enterName(const Plan& plan, const GridRow& row, const std::string& text) {
  if (row.ofLoad) return setField(plan, ref(row, RecordKind::load), "name", text);
  Result<Entry> step = withCircuit(plan, row);
  if (!step) return step.refusal();
  const Circuit before = *find(step.value().plan, step.value().row.circuit);
  Result<Plan> named = setField(step.value().plan, {RecordKind::circuit, before.id.number}, "name", text);
  if (!named) return named;
  // The only load of a circuit that bears its name goes on bearing it.
  if (before.loads.size() == 1 && before.loads.front().name == before.name) {
    return setField(named.value(), {RecordKind::load, before.loads.front().id.number}, "name", text);
  }
  return named;
}

/// "12", "12 AWG", "#12", "12/2" of a cable, "8 al" with its metal.
Result<Plan> enterConductor(const Plan& plan, const GridRow& row, const std::string& text) {
  std::string typed = small(trimmed(text));
  // As the cell shows it where the units are metric.
  if (const std::size_t open = typed.find('('); open != std::string::npos)
    typed = trimmed(typed.substr(0, open));
  std::optional<std::string> metal;
  const auto cut = [&](std::string_view ending) {
    if (typed.size() <= ending.size() || !typed.ends_with(ending)) return false;
    typed.resize(typed.size() - ending.size());
    typed = trimmed(typed);
    return true;
  };
  if (cut("cu") || cut("copper")) metal = "copper";
  if (cut("al") || cut("aluminum") || cut("aluminium")) metal = "aluminium";
  if (!cut("awg")) (void)cut("kcmil");
  if (!typed.empty() && typed.front() == '#') typed.erase(0, 1);
  if (!conductorSizeNamed(typed)) {
    const std::size_t stroke = typed.find('/');
    if (stroke != std::string::npos && stroke > 0) typed.resize(stroke);
  }
  if (!conductorSizeNamed(typed)) {
    std::string list;
    for (const std::string_view name : kConductorSizeNames)
      list += (list.empty() ? "" : ", ") + std::string(name);
    return say(kNotOneOf, text, list);
  }
  Result<Entry> step = withRecord(plan, row, GridColumn::conductor);
  if (!step) return step.refusal();
  Result<Plan> changed = setIn(step.value(), GridColumn::conductor, typed);
  if (!changed || !metal) return changed;
  return setField(changed.value(), ref(step.value().row, RecordKind::circuit), "metal", *metal);
}

Result<Plan> enterMultiwire(const Plan& plan, const GridRow& row, const std::string& text,
                            const CellStyle& style) {
  const std::string typed = small(trimmed(text));
  double group = 0.0;
  if (typed != "no" && typed != "none" && !typed.empty()) {
    const Result<double> read = numberOf(*fieldOf(GridColumn::multiwire), text, style);
    if (!read) return read.refusal();
    group = read.value();
  }
  Result<Entry> step = withRecord(plan, row, GridColumn::multiwire);
  if (!step) return step.refusal();
  const EntityRef circuit = ref(step.value().row, RecordKind::circuit);
  Result<Plan> changed = setField(step.value().plan, circuit, "multiwire", static_cast<std::int64_t>(group));
  if (!changed) return changed;
  return setField(changed.value(), circuit, "neutral_shared", std::string(group > 0 ? "yes" : "no"));
}

/// A figure that was typed: the grade is that of typing; who found the one before stays with that one.
FactValue typedFact(const FactValue& before, double value, Grade grade) {
  if (before.value == value) return before;
  FactValue fact;
  fact.value = value;
  fact.grade = grade;
  fact.unknown = before.unknown;
  if (!before.value || before.grade == grade) {
    fact.who = before.who;
    fact.when = before.when;
    fact.how = before.how;
  }
  return fact;
}

Result<Plan> setFact(const Entry& step, std::string_view key, double value, Grade grade) {
  const EntityRef load = ref(step.row, RecordKind::load);
  const Field& field = *fieldOf(RecordKind::load, key);
  const FactValue before = std::get<FactValue>(field.get(findRecord(step.plan, load)));
  return setField(step.plan, load, key, typedFact(before, value, grade));
}
Result<Plan> dropFact(const Plan& plan, const GridRow& row, std::string_view key) {
  const EntityRef load = ref(row, RecordKind::load);
  FactValue none;
  none.unknown = std::get<FactValue>(fieldOf(RecordKind::load, key)->get(findRecord(plan, load))).unknown;
  return setField(plan, load, key, none);
}

/// Watts, or amperes where the text says so; the cell holds one figure.
Result<Plan> enterRunning(const Plan& plan, const GridRow& row, const std::string& text,
                          const CellStyle& style) {
  const Field& watts = *fieldOf(RecordKind::load, "running_W");
  const Field& amperes = *fieldOf(RecordKind::load, "running_A");
  Result<double> read = numberOf(watts, text, style);
  bool inWatts = true;
  if (!read) {
    const bool letters = std::any_of(text.begin(), text.end(), [](char c) { return c == 'A' || c == 'a'; });
    Result<double> current = letters ? numberOf(amperes, text, style) : read;
    if (!current) return read.refusal();
    read = current;
    inWatts = false;
  }
  Result<Entry> step = withLoad(plan, row);
  if (!step) return step.refusal();
  Result<Plan> changed =
      setFact(step.value(), inWatts ? "running_W" : "running_A", read.value(), style.grade);
  if (!changed) return changed;
  return dropFact(changed.value(), step.value().row, inWatts ? "running_A" : "running_W");
}

/// A start current or a start time says that there is a motor.
Result<Plan> withMotor(Result<Plan> plan, const GridRow& row) {
  if (!plan) return plan;
  const EntityRef load = ref(row, RecordKind::load);
  const auto* record = static_cast<const Load*>(findRecord(plan.value(), load));
  if (!record->start.is(StartKind::none)) return plan;
  return setField(plan.value(), load, "start", std::string("across_the_line"));
}

Result<Plan> enterFact(const Plan& plan, const GridRow& row, GridColumn column, const std::string& text,
                       const CellStyle& style) {
  const Result<double> read = numberOf(*fieldOf(column), text, style);
  if (!read) return read.refusal();
  Result<Entry> step = withLoad(plan, row);
  if (!step) return step.refusal();
  Result<Plan> changed = setFact(step.value(), columnRow(column).key, read.value(), style.grade);
  if (column == GridColumn::startCurrent || column == GridColumn::startTime)
    return withMotor(std::move(changed), step.value().row);
  return changed;
}

Result<Plan> enterMotor(const Plan& plan, const GridRow& row, const std::string& text,
                        const CellStyle& style) {
  const std::string typed = small(trimmed(text));
  const Language& language = *style.language;
  std::string start = "across_the_line";
  std::optional<std::string> motor;
  if (typed == "no" || typed == "none" || typed == small(said(language, kNoMotor))) {
    start = "none";
  } else if (typed.size() > 2 && small(said(language, kSoftStart)).rfind(typed, 0) == 0) {
    start = "soft_start";
  } else if (typed.size() > 2 && small(said(language, kVariableSpeed)).rfind(typed, 0) == 0) {
    start = "variable_speed";
  } else {
    Result<std::string> word = wordOf(GridColumn::motor, *fieldOf(GridColumn::motor), text, language);
    if (!word) return word.refusal();
    motor = word.value();
  }
  Result<Entry> step = withLoad(plan, row);
  if (!step) return step.refusal();
  const EntityRef load = ref(step.value().row, RecordKind::load);
  Result<Plan> changed = setField(step.value().plan, load, "start", start);
  if (!changed || !motor) return changed;
  return setField(changed.value(), load, "start_class", *motor);
}

Result<Plan> enterHours(const Plan& plan, const GridRow& row, const std::string& text,
                        const CellStyle& style) {
  Result<std::vector<UseWindow>> windows = readHours(text, decimalMarkOf(*style.language));
  if (!windows) return windows.refusal();
  Result<Entry> step = withLoad(plan, row);
  if (!step) return step.refusal();
  Plan changed = step.value().plan;
  auto& load = *static_cast<Load*>(editRecord(changed, ref(step.value().row, RecordKind::load)));
  if (!plainHours(load.windows)) return say(kSeveralWindows, static_cast<std::int64_t>(load.windows.size()));
  load.windows = std::move(windows).value();
  return changed;
}

Result<Plan> enterOrigin(const Plan& plan, const GridRow& row, GridColumn column, const std::string& text) {
  if (severalLoads(plan, row))
    return say(kTypeInRows, static_cast<std::int64_t>(find(plan, row.circuit)->loads.size()));
  const Load* load = loadOf(plan, row);
  if (load == nullptr || factsOf(*load).empty()) return say(kNoFigure);
  Plan changed = plan;
  for (const Field* field : factsOf(*load)) {
    FactValue fact = std::get<FactValue>(field->get(load));
    originOf(fact, column) = text;
    Result<Plan> next = setField(changed, ref(row, RecordKind::load), field->key, fact);
    if (!next) return next;
    changed = std::move(next).value();
  }
  return changed;
}

Result<Plan> enterUnknown(const Plan& plan, const GridRow& row, GridColumn column) {
  if (row.ofLoad && !ofLoad(column)) return say(kNotHere);
  if (severalLoads(plan, row) && ofLoad(column))
    return say(kTypeInRows, static_cast<std::int64_t>(find(plan, row.circuit)->loads.size()));
  if (column == GridColumn::motor) {
    Result<Entry> step = withLoad(plan, row);
    if (!step) return step.refusal();
    const EntityRef load = ref(step.value().row, RecordKind::load);
    Result<Plan> changed = setField(step.value().plan, load, "start", std::string("across_the_line"));
    if (!changed) return changed;
    return setField(changed.value(), load, "start_class", std::string("unknown"));
  }
  if (column == GridColumn::rating) {
    Result<Entry> step = withBreaker(plan, row);
    if (!step) return step.refusal();
    return setField(step.value().plan, ref(step.value().row, RecordKind::breaker), "rating_read",
                    std::string("unknown"));
  }
  const Field* field = fieldOf(column);
  if (field == nullptr) return say(kNothingUnknown);
  if (column == GridColumn::multiwire || column == GridColumn::metal || field->optional ||
      field->kind == FieldKind::fact || field->kind == FieldKind::text) {
    return clearCell(plan, row, column);
  }
  const bool can = std::find(field->choices.begin(), field->choices.end(), "unknown") != field->choices.end();
  if (!can) return say(kNothingUnknown);
  Result<Entry> step = withRecord(plan, row, column);
  if (!step) return step.refusal();
  return setIn(step.value(), column, std::string("unknown"));
}

}  // namespace

Result<Plan> enterCell(const Plan& plan, const GridRow& row, GridColumn column, const std::string& text,
                       const CellStyle& style) {
  if (column == GridColumn::space || column == GridColumn::goesTo || column == GridColumn::finding)
    return say(kNotHere);
  if (row.ofLoad && !ofLoad(column) && column != GridColumn::name) return say(kNotHere);
  const std::string typed = trimmed(text);
  if (typed == typedText(plan, row, column, style)) return plan;
  if (typed == "?") return enterUnknown(plan, row, column);
  if (text.size() > kLongestText) return say(kTooLong);
  if (typed.empty()) {
    const Plan cleared = clearCell(plan, row, column);
    if (cleared == plan && !cellText(plan, row, column, style).unknown) return say(kMustHaveValue);
    return cleared;
  }
  switch (column) {
    case GridColumn::poles:
      return enterPoles(plan, row, typed);
    case GridColumn::rating:
      return enterRating(plan, row, typed, style);
    case GridColumn::name:
      return enterName(plan, row, typed);
    case GridColumn::conductor:
      return enterConductor(plan, row, typed);
    case GridColumn::multiwire:
      return enterMultiwire(plan, row, typed, style);
    case GridColumn::running:
      return enterRunning(plan, row, typed, style);
    case GridColumn::motor:
      return enterMotor(plan, row, typed, style);
    case GridColumn::hours:
      return enterHours(plan, row, typed, style);
    case GridColumn::who:
    case GridColumn::when:
    case GridColumn::how:
      return enterOrigin(plan, row, column, typed);
    default:
      break;
  }
  if (holdsFact(column)) return enterFact(plan, row, column, typed, style);
  const Field& field = *fieldOf(column);
  FieldValue value = typed;
  if (field.kind == FieldKind::choice) {
    Result<std::string> word = wordOf(column, field, typed, *style.language);
    if (!word) return word.refusal();
    value = word.value();
  }
  Result<Entry> step = withRecord(plan, row, column);
  if (!step) return step.refusal();
  return setIn(step.value(), column, value);
}

Plan clearCell(const Plan& plan, const GridRow& row, GridColumn column) {
  const auto orSame = [&](Result<Plan> changed) { return changed ? std::move(changed).value() : plan; };
  if (row.ofLoad && !ofLoad(column) && column != GridColumn::name) return plan;
  const EntityRef record = ref(row, row.ofLoad ? RecordKind::load : columnRow(column).record);
  if (record.id == 0 || findRecord(plan, record) == nullptr) return plan;
  if (column == GridColumn::hours) return orSame(enterHours(plan, row, "all day", {}));
  if (originColumn(column)) return orSame(enterOrigin(plan, row, column, {}));
  if (column == GridColumn::name) return orSame(enterName(plan, row, {}));
  const Field* field = fieldOf(column);
  if (field == nullptr) return plan;
  if (column == GridColumn::running) {
    const Plan without = orSame(dropFact(plan, row, "running_A"));
    return orSame(dropFact(without, row, "running_W"));
  }
  if (column == GridColumn::multiwire) {
    const Plan apart = orSame(setField(plan, record, "multiwire", std::int64_t{0}));
    return orSame(setField(apart, record, "neutral_shared", std::string("unknown")));
  }
  if (column == GridColumn::metal) return orSame(setField(plan, record, "conductor_AWG", NoValue{}));
  if (column == GridColumn::motor) return orSame(setField(plan, record, "start", std::string("none")));
  if (field->kind == FieldKind::fact) return orSame(dropFact(plan, row, field->key));
  if (field->optional) return orSame(setField(plan, record, field->key, NoValue{}));
  if (field->kind == FieldKind::text) return orSame(setField(plan, record, field->key, std::string()));
  if (field->kind != FieldKind::choice) return plan;
  for (const std::string_view empty : {"unknown", "none"}) {
    if (std::find(field->choices.begin(), field->choices.end(), empty) != field->choices.end())
      return orSame(setField(plan, record, field->key, std::string(empty)));
  }
  return plan;
}

Plan gradeCell(const Plan& plan, const GridRow& row, GridColumn column, Grade grade) {
  const auto orSame = [&](Result<Plan> changed) { return changed ? std::move(changed).value() : plan; };
  const bool words = column == GridColumn::name || column == GridColumn::serves || column == GridColumn::room;
  if (words && row.circuit.valid() && !row.ofLoad) {
    if (grade != Grade::traced && grade != Grade::unknown) return plan;
    return orSame(setField(plan, ref(row, RecordKind::circuit), "traced",
                           std::string(grade == Grade::traced ? "yes" : "unknown")));
  }
  const Load* load = loadOf(plan, row);
  if (load == nullptr || !holdsFact(column)) return plan;
  const Field* field = fieldOf(column);
  if (column == GridColumn::running && !load->running.value) field = fieldOf(RecordKind::load, "running_A");
  FactValue fact = std::get<FactValue>(field->get(load));
  if (!fact.value) return plan;
  fact.grade = grade;
  return orSame(setField(plan, ref(row, RecordKind::load), field->key, fact));
}

Result<Plan> fillCell(const Plan& plan, const GridRow& from, const GridRow& to, GridColumn column,
                      const CellStyle& style) {
  const CellText text = cellText(plan, from, column, style);
  if (text.fixed && column == GridColumn::name) return say(kNotHere);
  Result<Plan> filled = enterCell(plan, to, column, text.unknown ? std::string("?") : text.text, style);
  const Load* source = loadOf(plan, from);
  if (!filled || source == nullptr || !holdsFact(column) || text.unknown) return filled;
  // The fact as it is, with who found it.
  const GridRow now = rowNow(filled.value(), to);
  const Field* field = fieldOf(column);
  if (column == GridColumn::running && !source->running.value) field = fieldOf(RecordKind::load, "running_A");
  if (!now.load.valid()) return filled;
  return setField(filled.value(), ref(now, RecordKind::load), field->key, field->get(source));
}

Result<Plan> toggleTwoPole(const Plan& plan, const GridRow& row) {
  if (row.ofLoad) return say(kNotHere);
  if (!row.breaker.valid()) {
    Result<Entry> made = withBreaker(plan, row, 2);
    if (!made) return made.refusal();
    return made.value().plan;
  }
  return setPoles(plan, row.breaker, row.poles == 2 ? 1 : 2);
}

Result<Plan> toggleTandem(const Plan& plan, const GridRow& row) {
  if (row.ofLoad) return say(kNotHere);
  if (!row.breaker.valid()) {
    GridRow upper = row;
    if (upper.half == Half::whole) upper.half = Half::a;
    Result<Entry> made = withBreaker(plan, upper);
    if (!made) return made.refusal();
    return made.value().plan;
  }
  const std::string_view word = row.half == Half::whole ? "a" : "whole";
  return setField(plan, {RecordKind::breaker, row.breaker.number}, "half", std::string(word));
}

Result<Plan> toggleSharedNeutral(const Plan& plan, std::span<const GridRow> rows) {
  std::vector<CircuitId> circuits;
  for (const GridRow& row : rows) {
    if (row.circuit.valid() && !row.ofLoad) circuits.push_back(row.circuit);
  }
  if (circuits.empty()) return say(kNoCircuit);
  const Circuit& first = *find(plan, circuits.front());
  if (circuits.size() == 1 && first.multiwire > 0) return partNeutral(plan, first.id);
  if (circuits.size() > 1 && first.multiwire > 0 &&
      std::all_of(circuits.begin(), circuits.end(),
                  [&](CircuitId id) { return find(plan, id)->multiwire == first.multiwire; })) {
    Plan parted = plan;
    for (const CircuitId id : circuits) {
      if (find(parted, id)->multiwire <= 0) continue;
      Result<Plan> next = partNeutral(parted, id);
      if (!next) return next;
      parted = std::move(next).value();
    }
    return parted;
  }
  if (circuits.size() == 1) {
    const GridRow& row = rows.front();
    if (row.position.row < 2) return say(kNothingAbove, first.name);
    std::vector<BreakerId> above;
    const SpacePosition space{row.position.column, row.position.row - 1};
    for (const Reading reading : {Reading::before, Reading::planned}) {
      if (above.empty()) above = breakersAt(plan, row.panel, space, reading);
    }
    const Circuit* partner = above.empty() ? nullptr : circuitOn(plan, above.back(), Reading::before);
    if (partner == nullptr && !above.empty()) partner = circuitOn(plan, above.back(), Reading::planned);
    if (partner == nullptr) return say(kNothingAbove, first.name);
    circuits.push_back(partner->id);
  }
  return shareNeutral(plan, circuits);
}

}  // namespace stayalight
