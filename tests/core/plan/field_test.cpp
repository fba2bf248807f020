#include <gtest/gtest.h>

#include <limits>
#include <set>

#include "core/plan/field.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

constexpr int kKinds = static_cast<int>(RecordKind::scenario) + 1;

std::string wrong(RecordKind kind, std::string_view key, const FieldValue& value) {
  const Field* field = fieldOf(kind, key);
  if (field == nullptr) return "no such field";
  const std::optional<Message> message = check(*field, value);
  return message ? std::string(message->id.key) : "";
}

TEST(FieldTable, everyRowIsWhole) {
  std::set<std::string_view> names;
  for (int k = 0; k < kKinds; ++k) {
    const RecordType& type = recordType(static_cast<RecordKind>(k));
    EXPECT_EQ(type.kind, static_cast<RecordKind>(k));
    EXPECT_TRUE(names.insert(type.name).second) << type.name;
    std::set<std::string_view> keys;
    for (const Field& field : type.fields) {
      EXPECT_TRUE(keys.insert(field.key).second) << type.name << "." << field.key;
      EXPECT_EQ(fieldOf(type.kind, field.key), &field);
      EXPECT_NE(field.get, nullptr);
      EXPECT_NE(field.set, nullptr);
      EXPECT_EQ(field.since, 1) << "the first level of the format";
      const bool ranged = field.kind == FieldKind::whole || field.kind == FieldKind::number ||
                          field.kind == FieldKind::fact || field.kind == FieldKind::identity ||
                          field.kind == FieldKind::reference;
      EXPECT_TRUE(!ranged || field.minimum < field.maximum) << type.name << "." << field.key;
      EXPECT_EQ(field.choices.empty(), field.kind != FieldKind::choice) << type.name << "." << field.key;
      EXPECT_EQ(field.help.empty(), field.kind == FieldKind::identity) << type.name << "." << field.key;
      std::set<std::string_view> words;
      for (const std::string_view word : field.choices) EXPECT_TRUE(words.insert(word).second) << word;
    }
    for (const Children& children : type.children)
      EXPECT_TRUE(keys.insert(children.key).second) << children.key;
  }
  EXPECT_EQ(fieldOf(RecordKind::site, "nobody_wrote_this"), nullptr);
}

TEST(FieldTable, aNewRecordHoldsOnlyValuesThatPass) {
  const Plan plan = example::exampleHouseMoved();
  const auto checkAll = [](const auto& self, const RecordType& type, const void* record) -> void {
    for (const Field& field : type.fields) {
      EXPECT_FALSE(check(field, field.get(record))) << type.name << "." << field.key;
    }
    for (const Children& children : type.children) {
      for (std::size_t i = 0; i < children.count(record); ++i)
        self(self, recordType(children.kind), children.at(record, i));
    }
  };
  checkAll(checkAll, recordType(RecordKind::plan), &plan);
}

TEST(FieldTable, childrenAreReachedAddedAndErased) {
  Plan plan = example::exampleHouse();
  for (const Children& children : recordType(RecordKind::plan).children) {
    if (children.single) {
      EXPECT_EQ(children.count(&plan), 1u);
      continue;
    }
    const std::size_t count = children.count(&plan);
    EXPECT_NE(children.append(&plan), nullptr);
    EXPECT_EQ(children.count(&plan), count + 1) << children.key;
    children.erase(&plan, count);
    EXPECT_EQ(children.count(&plan), count);
  }
  EXPECT_TRUE(plan == example::exampleHouse());
}

TEST(Check, kindRangeAndLength) {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  constexpr double infinite = std::numeric_limits<double>::infinity();
  FactValue fact;
  const auto factOf = [](std::optional<double> low, std::optional<double> value, std::optional<double> high) {
    FactValue made;
    made.low = low;
    made.value = value;
    made.high = high;
    return made;
  };
  FactValue longName;
  longName.who = std::string(kLongestText + 1, 'x');
  struct Case {
    RecordKind kind;
    const char* key;
    FieldValue value;
    const char* expected;
  };
  const Case cases[] = {
      {RecordKind::panel, "spaces", std::int64_t{4}, ""},
      {RecordKind::panel, "spaces", std::int64_t{84}, ""},
      {RecordKind::panel, "spaces", std::int64_t{3}, "field.out_of_range"},
      {RecordKind::panel, "spaces", std::int64_t{85}, "field.out_of_range"},
      {RecordKind::panel, "spaces", 20.0, "field.not_whole"},
      {RecordKind::panel, "spaces", std::string("20"), "field.not_whole"},
      {RecordKind::panel, "spaces", NoValue{}, "field.value_missing"},
      {RecordKind::panel, "bus_A", NoValue{}, ""},
      {RecordKind::panel, "separate_building", std::int64_t{1}, "field.not_yes_or_no"},
      {RecordKind::panel, "separate_building", true, ""},
      {RecordKind::panel, "name", std::string(kLongestText, 'x'), ""},
      {RecordKind::panel, "name", std::string(kLongestText + 1, 'x'), "field.text_too_long"},
      {RecordKind::panel, "name", true, "field.not_text"},
      {RecordKind::panel, "id", std::int64_t{0}, "field.out_of_range"},
      {RecordKind::panel, "role", std::string("backup"), ""},
      {RecordKind::panel, "role", std::string("word_of_a_later_program"), ""},
      {RecordKind::breaker, "feeds_panel", std::int64_t{0}, ""},
      {RecordKind::breaker, "feeds_panel", std::int64_t{-1}, "field.out_of_range"},
      {RecordKind::circuit, "conductor_AWG", std::string("1/0"), ""},
      {RecordKind::circuit, "conductor_AWG", std::string("5"), "field.unknown_size"},
      {RecordKind::site, "latitude_deg", 90.0, ""},
      {RecordKind::site, "latitude_deg", 90.001, "field.out_of_range"},
      {RecordKind::site, "latitude_deg", -91.0, "field.out_of_range"},
      {RecordKind::site, "latitude_deg", nan, "field.not_a_number"},
      {RecordKind::site, "latitude_deg", infinite, "field.not_a_number"},
      {RecordKind::site, "latitude_deg", std::int64_t{44}, "field.not_a_number"},
      {RecordKind::load, "duty", fact, ""},
      {RecordKind::load, "duty", factOf(0.1, 0.2, 0.3), ""},
      {RecordKind::load, "duty", factOf({}, 1.0, {}), ""},
      {RecordKind::load, "duty", factOf({}, 1.1, {}), "field.out_of_range"},
      {RecordKind::load, "duty", factOf({}, nan, {}), "field.not_a_number"},
      {RecordKind::load, "duty", factOf(-0.1, 0.2, {}), "field.out_of_range"},
      {RecordKind::load, "duty", factOf(0.3, 0.2, {}), "field.low_above_high"},
      {RecordKind::load, "duty", factOf({}, 0.2, 0.1), "field.low_above_high"},
      {RecordKind::load, "duty", factOf(0.5, {}, 0.4), "field.low_above_high"},
      {RecordKind::load, "duty", 0.4, "field.not_a_number"},
      {RecordKind::load, "duty", longName, "field.text_too_long"},
      {RecordKind::load, "running_W", factOf({}, 0.0, {}), ""},
      {RecordKind::scenario, "month", std::int64_t{12}, ""},
      {RecordKind::scenario, "month", std::int64_t{13}, "field.out_of_range"},
      {RecordKind::scenario, "start_min", std::int64_t{1440}, "field.out_of_range"},
  };
  for (const Case& c : cases) EXPECT_EQ(wrong(c.kind, c.key, c.value), c.expected) << c.key;
}

TEST(Check, theEndsOfEveryRangePassAndWhatLiesBeyondDoesNot) {
  for (int k = 0; k < kKinds; ++k) {
    const RecordType& type = recordType(static_cast<RecordKind>(k));
    for (const Field& field : type.fields) {
      const auto valueOf = [&](double number) -> FieldValue {
        if (field.kind == FieldKind::number) return number;
        if (field.kind == FieldKind::fact) {
          FactValue fact;
          fact.value = number;
          return fact;
        }
        return static_cast<std::int64_t>(number);
      };
      if (field.kind == FieldKind::text || field.kind == FieldKind::choice || field.kind == FieldKind::flag)
        continue;
      EXPECT_FALSE(check(field, valueOf(field.minimum))) << type.name << "." << field.key;
      EXPECT_FALSE(check(field, valueOf(field.maximum))) << type.name << "." << field.key;
      EXPECT_TRUE(check(field, valueOf(field.minimum - 1))) << type.name << "." << field.key;
      EXPECT_TRUE(check(field, valueOf(field.maximum + 1))) << type.name << "." << field.key;
    }
  }
}

TEST(Check, theMessageNamesKeyValueAndRange) {
  const std::optional<Message> message = check(*fieldOf(RecordKind::panel, "spaces"), std::int64_t{99});
  ASSERT_TRUE(message);
  EXPECT_EQ(render(*message, plainEnglish()), "spaces is 99, but it must lie between 4 and 84");
}

TEST(FindRecord, everyKindIsFoundAndChangedThroughThePlan) {
  Plan plan = example::exampleHouse();
  const LoadId toaster = example::loadNamed(plan, "Toaster");
  example::editCircuit(plan, circuitOf(plan, toaster)->id).loads[0].windows.emplace_back();
  example::editPanel(plan, example::kMain).exceptions.emplace_back();
  plan.inverter.edit().efficiency.emplace_back();
  FeederRun run;
  run.id = {1};
  plan.runs.emplace_back(run);
  Raceway raceway;
  raceway.id = {1};
  plan.raceways.emplace_back(raceway);
  SpliceBox box;
  box.id = {1};
  plan.spliceBoxes.emplace_back(box);
  plan.site.edit().answers.emplace_back();
  plan.transfer.edit().managed.emplace_back();
  example::editCircuit(plan, {2}).readings.emplace_back();
  for (const Children& list : recordType(RecordKind::ownLists).children) list.append(&plan.own.edit());
  const Plan before = plan;
  const EntityRef all[] = {{RecordKind::plan},
                           {RecordKind::site},
                           {RecordKind::inverter},
                           {RecordKind::battery},
                           {RecordKind::transfer},
                           {RecordKind::dcCable},
                           {RecordKind::solar},
                           {RecordKind::generator},
                           {RecordKind::authorityAnswer, 0, 0},
                           {RecordKind::managedLoad, 0, 0},
                           {RecordKind::clampReading, 2, 0},
                           {RecordKind::ownLists},
                           {RecordKind::ownLoad, 0, 0},
                           {RecordKind::ownInverter, 0, 0},
                           {RecordKind::ownBattery, 0, 0},
                           {RecordKind::ownPanel, 0, 0},
                           {RecordKind::scenario},
                           {RecordKind::panel, 1},
                           {RecordKind::breaker, 3},
                           {RecordKind::circuit, 2},
                           {RecordKind::feederRun, 1},
                           {RecordKind::raceway, 1},
                           {RecordKind::spliceBox, 1},
                           {RecordKind::load, toaster.number},
                           {RecordKind::useWindow, toaster.number, 0},
                           {RecordKind::space, 1, 0},
                           {RecordKind::overloadPoint, 0, 1},
                           {RecordKind::efficiencyPoint, 0, 0}};
  ASSERT_EQ(static_cast<int>(std::size(all)), kKinds);
  for (const EntityRef& ref : all) {
    Plan changed = plan;
    ASSERT_NE(findRecord(changed, ref), nullptr) << recordType(ref.kind).name;
    void* record = editRecord(changed, ref);
    ASSERT_NE(record, nullptr);
    EXPECT_EQ(findRecord(changed, ref), record) << recordType(ref.kind).name;
    recordType(ref.kind).editUnknown(record).push_back({"key", "1", ""});
    EXPECT_FALSE(changed == before) << "the change is in the plan";
    EXPECT_TRUE(plan == before) << "and in no other plan";
    EXPECT_EQ(recordType(ref.kind).unknown(findRecord(changed, ref)).size(), 1u);
  }
}

TEST(FindRecord, whatIsNotThereIsNull) {
  Plan plan = example::exampleHouse();
  for (const EntityRef& ref :
       {EntityRef{RecordKind::panel, 9}, EntityRef{RecordKind::breaker, 0},
        EntityRef{RecordKind::circuit, -1}, EntityRef{RecordKind::load, 99},
        EntityRef{RecordKind::useWindow, 1, 0}, EntityRef{RecordKind::space, 1, 0},
        EntityRef{RecordKind::space, 9, 0}, EntityRef{RecordKind::overloadPoint, 0, 2},
        EntityRef{RecordKind::overloadPoint, 0, -1}, EntityRef{RecordKind::feederRun, 1}}) {
    EXPECT_EQ(findRecord(plan, ref), nullptr) << recordType(ref.kind).name;
    EXPECT_EQ(editRecord(plan, ref), nullptr);
  }
}

TEST(FindRecord, ownersOfRecordsInsideOthers) {
  const Plan plan = example::exampleHouse();
  const CircuitId counter = example::circuitNamed(plan, "Counter A");
  const LoadId toaster = example::loadNamed(plan, "Toaster");
  EXPECT_TRUE(ownerOf(plan, {RecordKind::load, toaster.number}) ==
              (EntityRef{RecordKind::circuit, counter.number}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::useWindow, toaster.number, 2}) ==
              (EntityRef{RecordKind::load, toaster.number}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::space, 2, 0}) == (EntityRef{RecordKind::panel, 2}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::overloadPoint, 0, 0}) == (EntityRef{RecordKind::inverter}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::authorityAnswer, 0, 0}) == (EntityRef{RecordKind::site}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::clampReading, 2, 0}) == (EntityRef{RecordKind::circuit, 2}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::managedLoad, 0, 1}) == (EntityRef{RecordKind::transfer}));
  EXPECT_TRUE(ownerOf(plan, {RecordKind::panel, 2}) == (EntityRef{RecordKind::panel, 2}));
}

}  // namespace
}  // namespace stayalight
