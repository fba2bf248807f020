// What holds for every field of every record and any value it may hold.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <memory>

#include "core/plan/field.h"
#include "tests/core/random_plan.h"

namespace stayalight {
namespace {

std::int64_t draw(std::int64_t low, std::int64_t high) {
  return *rc::gen::inRange<std::int64_t>(low, high + 1);
}

using AnyRecord = std::shared_ptr<void>;

/// A record of that kind with every field at its default.
AnyRecord emptyRecord(RecordKind kind) {
  switch (kind) {
    case RecordKind::plan:
      return std::make_shared<Plan>();
    case RecordKind::site:
      return std::make_shared<Site>();
    case RecordKind::panel:
      return std::make_shared<Panel>();
    case RecordKind::space:
      return std::make_shared<Space>();
    case RecordKind::breaker:
      return std::make_shared<Breaker>();
    case RecordKind::circuit:
      return std::make_shared<Circuit>();
    case RecordKind::load:
      return std::make_shared<Load>();
    case RecordKind::useWindow:
      return std::make_shared<UseWindow>();
    case RecordKind::inverter:
      return std::make_shared<Inverter>();
    case RecordKind::authorityAnswer:
      return std::make_shared<AuthorityAnswer>();
    case RecordKind::clampReading:
      return std::make_shared<ClampReading>();
    case RecordKind::overloadPoint:
      return std::make_shared<OverloadPoint>();
    case RecordKind::efficiencyPoint:
      return std::make_shared<EfficiencyPoint>();
    case RecordKind::battery:
      return std::make_shared<Battery>();
    case RecordKind::solar:
      return std::make_shared<Solar>();
    case RecordKind::generator:
      return std::make_shared<Generator>();
    case RecordKind::managedLoad:
      return std::make_shared<ManagedLoad>();
    case RecordKind::transfer:
      return std::make_shared<Transfer>();
    case RecordKind::dcCable:
      return std::make_shared<DcCable>();
    case RecordKind::feederRun:
      return std::make_shared<FeederRun>();
    case RecordKind::raceway:
      return std::make_shared<Raceway>();
    case RecordKind::spliceBox:
      return std::make_shared<SpliceBox>();
    case RecordKind::ownLists:
      return std::make_shared<OwnLists>();
    case RecordKind::ownLoad:
      return std::make_shared<Load>();
    case RecordKind::ownInverter:
      return std::make_shared<Inverter>();
    case RecordKind::ownBattery:
      return std::make_shared<Battery>();
    case RecordKind::ownPanel:
      return std::make_shared<Panel>();
    case RecordKind::scenario:
      return std::make_shared<Scenario>();
  }
  return nullptr;
}

constexpr int kKinds = static_cast<int>(RecordKind::scenario) + 1;

RC_GTEST_PROP(FieldProperties, whatIsSetIsWhatIsRead, ()) {
  for (int k = 0; k < kKinds; ++k) {
    const auto kind = static_cast<RecordKind>(k);
    for (const Field& field : recordType(kind).fields) {
      const AnyRecord record = emptyRecord(kind);
      const FieldValue value = example::randomValue(field, draw);
      RC_ASSERT(!check(field, value));
      field.set(record.get(), value);
      RC_ASSERT(field.get(record.get()) == value);
    }
  }
}

RC_GTEST_PROP(FieldProperties, settingOneFieldLeavesTheOthers, ()) {
  for (int k = 0; k < kKinds; ++k) {
    const auto kind = static_cast<RecordKind>(k);
    const auto fields = recordType(kind).fields;
    if (fields.empty()) continue;
    const AnyRecord record = emptyRecord(kind);
    std::vector<FieldValue> held;
    for (const Field& field : fields) held.push_back(field.get(record.get()));
    const auto chosen = static_cast<std::size_t>(draw(0, static_cast<std::int64_t>(fields.size()) - 1));
    fields[chosen].set(record.get(), example::randomValue(fields[chosen], draw));
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (i != chosen) RC_ASSERT(fields[i].get(record.get()) == held[i]);
    }
  }
}

RC_GTEST_PROP(FieldProperties, aPlanRebuiltFromItsFieldsIsTheSame, ()) {
  const Plan plan = example::randomPlan(draw);
  Plan rebuilt;
  const auto rebuild = [](const auto& self, const RecordType& type, const void* from, void* to) -> void {
    for (const Field& field : type.fields) field.set(to, field.get(from));
    for (const Children& children : type.children) {
      for (std::size_t i = 0; i < children.count(from); ++i) {
        void* child = children.single ? children.edit(to, 0) : children.append(to);
        self(self, recordType(children.kind), children.at(from, i), child);
      }
    }
  };
  rebuild(rebuild, recordType(RecordKind::plan), &plan, &rebuilt);
  RC_ASSERT(rebuilt == plan);
}

}  // namespace
}  // namespace stayalight
