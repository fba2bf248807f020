// What holds for the on-site list of any plan.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>
#include <set>

#include "core/edit/edit.h"
#include "core/onsite/onsite.h"
#include "tests/core/random_plan.h"

namespace stayalight {
namespace {

std::int64_t draw(std::int64_t low, std::int64_t high) {
  return *rc::gen::inRange<std::int64_t>(low, high + 1);
}

/// A plan in which some circuits stand on the backup subpanel.
Plan somePlan() {
  Plan plan = example::randomPlan(draw);
  for (std::int64_t moves = draw(0, 4); moves > 0 && !plan.circuits.empty(); --moves) {
    const auto at = static_cast<std::size_t>(draw(0, static_cast<std::int64_t>(plan.circuits.size()) - 1));
    const std::array<CircuitId, 1> circuit{plan.circuits[at]->id};
    const Result<Plan> moved = moveCircuits(plan, circuit, example::kBackup);
    if (moved.ok()) plan = moved.value();
  }
  return plan;
}

using Name = std::tuple<std::string, EntityRef>;
std::set<Name> namesOf(const std::vector<OnSiteItem>& list) {
  std::set<Name> names;
  for (const OnSiteItem& item : list) names.emplace(item.key, item.place);
  return names;
}

/// What an answer may bring up: the questions that follow from it.
const std::map<std::string_view, std::set<std::string_view>>& opens() {
  static const std::set<std::string_view> kBranch = {"circuit.several_receptacles", "load.maximum_breaker_A"};
  static const std::set<std::string_view> kCable = {"dc_cable.length_um", "dc_cable.terminals_75C",
                                                    "dc_cable.fine_stranded", "dc_cable.lugs_listed"};
  static const std::map<std::string_view, std::set<std::string_view>> all = {
      {"circuit.neutral_shared", {"circuit.multiwire"}},
      {"circuit.calculation_use", {"circuit.area_served_ft2"}},
      {"circuit.splice",
       {"circuit.splice_box", "panel.wiring_space_in2", "splice_box.volume_in3", "splice_box.clamps_inside",
        "circuit.cable_width_um"}},
      {"circuit.splice_box", {"splice_box.volume_in3", "splice_box.clamps_inside"}},
      {"circuit.wiring", kBranch},
      {"circuit.conductor_AWG", kBranch},
      {"panel.terminals_75C", kBranch},
      {"load.maximum_breaker_A", kBranch},
      {"inverter.continuous_W", kCable},
      {"inverter.lowest_input_V", kCable},
      {"dc_cable.fine_stranded", {"dc_cable.lugs_listed"}},
      {"authority_answer.answer", {"authority_answer.who", "authority_answer.in_writing"}},
      {"feeder_run.fixed_conductor", {"feeder_run.fixed_neutral", "feeder_run.fixed_ground"}},
      {"feeder_run.fixed_neutral", {"feeder_run.fixed_conductor", "feeder_run.fixed_ground"}},
      {"transfer.service_bond_upstream", {"panel.grounding_electrode", "panel.building_disconnect"}},
      {"feeder_run.fixed_ground", {"feeder_run.fixed_conductor", "feeder_run.fixed_neutral"}},
  };
  return all;
}

/// Every answer a field takes: each word but "unknown", a number, a figure somebody read.
std::vector<FieldValue> answersOf(const Plan& plan, const Field& field) {
  std::vector<FieldValue> all;
  switch (field.kind) {
    case FieldKind::flag:
      return {true, false};
    case FieldKind::whole:
      return {static_cast<std::int64_t>(field.maximum)};
    case FieldKind::number:
      return {field.maximum};
    case FieldKind::text:
      return {std::string("a")};
    case FieldKind::choice:
      for (const std::string_view word : field.choices) {
        if (word != "unknown") all.emplace_back(std::string(word));
      }
      return all;
    case FieldKind::reference:
      if (field.target == RecordKind::spliceBox) {
        for (const auto& box : plan.spliceBoxes) all.emplace_back(box->id.number);
      }
      if (field.target == RecordKind::load) {
        for (const auto& circuit : plan.circuits) {
          for (const Load& load : circuit->loads) all.emplace_back(load.id.number);
        }
      }
      return all;
    case FieldKind::fact: {
      FactValue fact;
      fact.value = field.maximum;
      fact.grade = Grade::measured;
      return {fact};
    }
    case FieldKind::identity:
      break;
  }
  return all;
}

RC_GTEST_PROP(OnSiteProperties, NothingIsListedTwiceAndEverythingCanBeReached, ()) {
  const Plan plan = somePlan();
  const std::vector<OnSiteItem> list = onSiteList(plan);
  RC_ASSERT(namesOf(list).size() == list.size());
  for (const OnSiteItem& item : list) {
    const bool there = findRecord(plan, item.place) != nullptr;
    const bool known = item.field.empty() || fieldOf(item.place.kind, item.field) != nullptr;
    RC_ASSERT(there);
    RC_ASSERT(known);
    for (const Message& text : {item.what, item.where})
      RC_ASSERT(render(text, plainEnglish()).find("<onsite") == std::string::npos);
  }
}

RC_GTEST_PROP(OnSiteProperties, EnteringAFactTakesItOffAndAddsOnlyWhatFollowsFromIt, ()) {
  const Plan plan = somePlan();
  const std::vector<OnSiteItem> list = onSiteList(plan);
  const std::set<Name> before = namesOf(list);
  for (const OnSiteItem& item : list) {
    if (item.field.empty()) continue;
    const Field& field = *fieldOf(item.place.kind, item.field);
    bool taken = false, any = false;
    for (const FieldValue& answer : answersOf(plan, field)) {
      const Result<Plan> entered = setField(plan, item.place, item.field, answer);
      if (!entered.ok()) continue;
      any = true;
      const std::set<Name> after = namesOf(onSiteList(entered.value()));
      taken = taken || after.count({std::string(item.key), item.place}) == 0;
      const auto follows = opens().find(item.key);
      for (const Name& name : after) {
        if (before.count(name) > 0) continue;
        const bool allowed = follows != opens().end() && follows->second.count(std::get<0>(name)) > 0;
        RC_LOG() << item.key << " brought up " << std::get<0>(name) << "\n";
        RC_ASSERT(allowed);
      }
    }
    // A circuit has nothing to choose where no box is there, a row of managed loads where no load is.
    const bool nothingToChoose = field.kind == FieldKind::reference && answersOf(plan, field).empty();
    RC_LOG() << item.key << "\n";
    RC_ASSERT(nothingToChoose || (any && taken));
  }
}

}  // namespace
}  // namespace stayalight
