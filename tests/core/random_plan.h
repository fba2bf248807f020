#pragma once

// Plans at random, driven by the field table: a new field is drawn without a line here. `draw(low, high)`
// gives a whole number from low to high, both included; property tests hand in rapidcheck's, so that plans
// shrink.

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "core/panel/spaces.h"
#include "core/plan/field.h"
#include "tests/core/example_plans.h"

namespace stayalight::example {

template <class Draw>
std::string randomText(Draw&& draw) {
  static const std::array<std::string, 10> pieces = {
      "a", "Well", " ", "\"", "\\", "\n", "\xC2\xB0", "=1+1", "\xF0\x9F\x94\x8B", "0"};
  std::string text;
  for (std::int64_t i = draw(0, 4); i > 0; --i) text += pieces[static_cast<std::size_t>(draw(0, 9))];
  return text;
}

/// A number of the field's range, both ends among them.
template <class Draw>
double randomNumber(const Field& field, Draw&& draw) {
  constexpr std::int64_t kSteps = 1000;
  const std::int64_t step = draw(0, kSteps);
  if (step == kSteps) return field.maximum;
  return field.minimum +
         (field.maximum - field.minimum) * static_cast<double>(step) / static_cast<double>(kSteps);
}

/// A value that passes `check`; a reference names an entity from 0 to 12, there or not.
template <class Draw>
FieldValue randomValue(const Field& field, Draw&& draw) {
  if (field.optional && draw(0, 1) == 0) return NoValue{};
  switch (field.kind) {
    case FieldKind::flag:
      return draw(0, 1) == 1;
    case FieldKind::whole:
      return static_cast<std::int64_t>(randomNumber(field, draw));
    case FieldKind::number:
      return randomNumber(field, draw);
    case FieldKind::text:
      return randomText(draw);
    case FieldKind::choice: {
      // A word of a later program is kept, but a conductor size is data of a table.
      const bool size = field.choices.data() == kConductorSizeNames.data();
      const auto last = static_cast<std::int64_t>(field.choices.size()) - (size ? 1 : 0);
      const auto at = static_cast<std::size_t>(draw(0, last));
      return at < field.choices.size() ? std::string(field.choices[at])
                                       : std::string("word_of_a_later_program");
    }
    case FieldKind::fact: {
      std::array<double, 3> parts = {randomNumber(field, draw), randomNumber(field, draw),
                                     randomNumber(field, draw)};
      std::sort(parts.begin(), parts.end());
      FactValue fact;
      if (draw(0, 2) > 0) fact.value = parts[1];
      if (draw(0, 2) == 0) fact.low = parts[0];
      if (draw(0, 2) == 0) fact.high = parts[2];
      fact.grade = static_cast<Grade>(draw(0, 4));
      fact.who = randomText(draw);
      return fact;
    }
    case FieldKind::identity:
      return draw(1, 12);
    case FieldKind::reference:
      return draw(0, 12);
  }
  return NoValue{};
}

/// Fills every field of a record but ids, references and what says where a breaker stands.
template <class Draw>
void fillRecord(const RecordType& type, void* record, Draw&& draw) {
  static const std::vector<std::string_view> kept = {"column", "row",          "half",   "poles",
                                                     "spaces", "feeds",        "stage",  "multiwire",
                                                     "role",   "pole_maximum", "tandems"};
  for (const Field& field : type.fields) {
    if (field.kind == FieldKind::identity || field.kind == FieldKind::reference) continue;
    if (std::find(kept.begin(), kept.end(), field.key) != kept.end()) continue;
    field.set(record, randomValue(field, draw));
  }
}

/// A consistent plan before anything moves: two or three panels, breakers that do not overlap, circuits with
/// loads, some multiwire pairs on opposite legs. All else at random.
template <class Draw>
Plan randomPlan(Draw&& draw) {
  Plan plan;
  addPanel(plan, PanelRole::main, "Main", static_cast<std::int32_t>(draw(8, 42)));
  addPanel(plan, PanelRole::backup, "Backup", static_cast<std::int32_t>(draw(4, 24)));
  if (draw(0, 2) == 0) addPanel(plan, PanelRole::subpanel, "Sub", static_cast<std::int32_t>(draw(4, 12)));
  for (auto& shared : plan.panels) {
    Panel& panel = shared.edit();
    fillRecord(recordType(RecordKind::panel), &panel, draw);
    if (draw(0, 2) == 0) {
      Space space;
      fillRecord(recordType(RecordKind::space), &space, draw);
      space.row = static_cast<std::int32_t>(draw(1, panel.spaces / 2));
      panel.exceptions.push_back(space);
    }
  }
  for (const auto& panel : {plan.panels.front()->id, plan.panels.back()->id}) {
    if (panel == kBackup) continue;
    for (std::int64_t tries = draw(0, 16); tries > 0; --tries) {
      const auto half = static_cast<Half>(std::max<std::int64_t>(0, draw(-4, 4)));
      const bool pair = half == Half::outer || half == Half::inner;
      const std::int32_t poles = pair || (half == Half::whole && draw(0, 3) == 0) ? 2 : 1;
      const SpacePosition position{static_cast<Column>(draw(0, 1)),
                                   static_cast<std::int32_t>(draw(1, rowCount(*find(plan, panel))))};
      if (refusal(plan, {panel, position, half, poles}, {})) continue;
      if (draw(0, 5) == 0) {
        addBreaker(plan, panel, position, poles, 20, draw(0, 1) == 0 ? Feeds::nothing : Feeds::solar,
                   Stage::existing, half);
        continue;
      }
      const CircuitId circuit = addCircuit(plan, panel, position, poles, 20, "Circuit", half);
      fillRecord(recordType(RecordKind::circuit), &editCircuit(plan, circuit), draw);
      fillRecord(recordType(RecordKind::breaker), &editBreaker(plan, find(plan, circuit)->breaker), draw);
      for (std::int64_t loads = draw(0, 2); loads > 0; --loads) {
        Load load;
        fillRecord(recordType(RecordKind::load), &load, draw);
        if (draw(0, 3) == 0) {
          fillRecord(recordType(RecordKind::useWindow), &load.windows.emplace_back(), draw);
        }
        addLoad(plan, circuit, load);
      }
    }
  }
  // Pairs of single-pole circuits of one panel on opposite legs share a neutral now and then.
  std::int32_t group = 0;
  for (const auto& one : plan.circuits) {
    for (const auto& other : plan.circuits) {
      const Breaker& a = *find(plan, one->breaker);
      const Breaker& b = *find(plan, other->breaker);
      if (one->id >= other->id || one->multiwire > 0 || other->multiwire > 0) continue;
      if (a.panel != b.panel || a.poles != 1 || b.poles != 1) continue;
      const Panel& panel = *find(plan, a.panel);
      if (legOf(panel, a.position()) == legOf(panel, b.position()) || draw(0, 4) > 0) continue;
      ++group;
      for (const CircuitId member : {one->id, other->id}) editCircuit(plan, member).multiwire = group;
      break;
    }
  }
  for (const RecordKind kind :
       {RecordKind::site, RecordKind::inverter, RecordKind::battery, RecordKind::solar, RecordKind::generator,
        RecordKind::transfer, RecordKind::dcCable, RecordKind::scenario}) {
    fillRecord(recordType(kind), editRecord(plan, {kind}), draw);
  }
  if (draw(0, 1) == 0)
    fillRecord(recordType(RecordKind::authorityAnswer), &plan.site.edit().answers.emplace_back(), draw);
  for (std::int64_t rows = draw(0, 2); rows > 0; --rows) {
    ManagedLoad& managed = plan.transfer.edit().managed.emplace_back();
    fillRecord(recordType(RecordKind::managedLoad), &managed, draw);
    for (const auto& circuit : plan.circuits) {
      if (!circuit->loads.empty() && draw(0, 1) == 0) managed.load = circuit->loads.front().id;
    }
  }
  for (auto& circuit : plan.circuits) {
    if (draw(0, 5) > 0) continue;
    ClampReading& reading = circuit.edit().readings.emplace_back();
    fillRecord(recordType(RecordKind::clampReading), &reading, draw);
    if (draw(0, 1) == 0) reading.partner = plan.circuits.front()->id;
  }
  if (draw(0, 1) == 0) plan.solar.edit().panel = plan.panels.front()->id;
  for (std::int64_t points = draw(0, 2); points > 0; --points) {
    Inverter& inverter = plan.inverter.edit();
    OverloadPoint point;
    point.time = Seconds(static_cast<double>(inverter.overload.size()) + 1.0);
    inverter.overload.push_back(point);
  }
  if (draw(0, 1) == 0) {
    FeederRun run;
    fillRecord(recordType(RecordKind::feederRun), &run, draw);
    run.id = nextFeederRunId(plan);
    plan.runs.emplace_back(run);
  }
  for (std::int64_t more = draw(0, 2); more > 0; --more) {
    Raceway raceway;
    fillRecord(recordType(RecordKind::raceway), &raceway, draw);
    raceway.id = nextRacewayId(plan);
    plan.raceways.emplace_back(raceway);
    SpliceBox box;
    fillRecord(recordType(RecordKind::spliceBox), &box, draw);
    box.id = nextSpliceBoxId(plan);
    plan.spliceBoxes.emplace_back(box);
  }
  for (auto& circuit : plan.circuits) {
    if (!plan.raceways.empty() && draw(0, 1) == 0) circuit.edit().raceway = plan.raceways.back()->id;
    if (!plan.spliceBoxes.empty() && draw(0, 1) == 0) circuit.edit().spliceBox = plan.spliceBoxes.back()->id;
  }
  for (const Children& list : recordType(RecordKind::ownLists).children) {
    if (draw(0, 2) == 0) fillRecord(recordType(list.kind), list.append(&plan.own.edit()), draw);
  }
  for (auto& run : plan.runs) {
    if (!plan.raceways.empty() && draw(0, 1) == 0) run.edit().inRaceway = plan.raceways.front()->id;
  }
  return plan;
}

}  // namespace stayalight::example
