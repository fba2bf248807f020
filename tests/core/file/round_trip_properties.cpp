// Save and load is the identity for any plan, unknown keys and words too.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/file/file.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

/// Any text that is good UTF-8: letters, quotes, control characters, signs outside ASCII.
rc::Gen<std::string> anyText() {
  const auto piece =
      rc::gen::element<std::string>("a", "Z", "0", " ", "\"", "\\", "\n", "\t", std::string(1, '\x01'), "/",
                                    "{", "µ", "°", "家", "\xF0\x9F\x94\x8B", std::string(1, '\0'));
  return rc::gen::map(rc::gen::resize(12, rc::gen::container<std::vector<std::string>>(piece)),
                      [](const std::vector<std::string>& pieces) {
                        std::string text;
                        for (const std::string& part : pieces) text += part;
                        return text;
                      });
}

/// A number of the field's range, its ends among them.
double numberIn(const Field& field) {
  const int step = *rc::gen::inRange(0, 1001);
  if (step == 0) return field.minimum;
  if (step == 1000) return field.maximum;
  return field.minimum + (field.maximum - field.minimum) * (static_cast<double>(step) / 1000.0);
}

FieldValue valueFor(const Field& field) {
  if (field.optional && *rc::gen::arbitrary<bool>()) return NoValue{};
  switch (field.kind) {
    case FieldKind::flag:
      return *rc::gen::arbitrary<bool>();
    case FieldKind::whole:
      return static_cast<std::int64_t>(std::floor(numberIn(field)));
    case FieldKind::number:
      return numberIn(field);
    case FieldKind::text:
      return *anyText();
    case FieldKind::choice: {
      const bool conductor = field.choices.data() == kConductorSizeNames.data();
      const auto chosen = *rc::gen::inRange<std::size_t>(0, field.choices.size() + (conductor ? 0 : 1));
      return chosen < field.choices.size() ? std::string(field.choices[chosen]) : std::string("later_word");
    }
    case FieldKind::fact: {
      FactValue fact;
      std::vector<double> parts = {numberIn(field), numberIn(field), numberIn(field)};
      std::sort(parts.begin(), parts.end());
      if (*rc::gen::arbitrary<bool>()) fact.value = parts[1];
      if (*rc::gen::arbitrary<bool>()) fact.low = parts[0];
      if (*rc::gen::arbitrary<bool>()) fact.high = parts[2];
      fact.grade = static_cast<Grade>(*rc::gen::inRange(0, 5));
      fact.who = *anyText();
      return fact;
    }
    case FieldKind::identity:
    case FieldKind::reference:
      return std::int64_t{0};
  }
  return NoValue{};
}

/// Sets every plain field of a record and of those in it to something; ids, references and places stay. Each
/// record may get an unknown key.
void fill(const RecordType& type, void* record) {
  for (const Field& field : type.fields) {
    if (field.kind == FieldKind::identity || field.kind == FieldKind::reference) continue;
    const bool place = field.key == "row" || field.key == "column" || field.key == "poles" ||
                       field.key == "half" || field.key == "spaces" || field.key == "stage";
    if (place) continue;
    const FieldValue value = valueFor(field);
    RC_ASSERT(!check(field, value));
    field.set(record, value);
  }
  for (const Children& children : type.children) {
    const std::size_t count = children.count(record);
    for (std::size_t i = 0; i < count; ++i) fill(recordType(children.kind), children.edit(record, i));
  }
  if (*rc::gen::arbitrary<bool>()) {
    type.editUnknown(record).push_back({"x_first", "{\"a\": [1, 2.5, null]}", ""});
    type.editUnknown(record).push_back({"x_second", "\"kept\"", "x_first"});
    if (!type.fields.empty())
      type.editUnknown(record).push_back({"x_third", "0.0", std::string(type.fields.back().key)});
  }
}

RC_GTEST_PROP(RoundTrip, SaveAndLoadIsTheIdentity, ()) {
  Plan plan = *rc::gen::arbitrary<bool>() ? example::exampleHouseMoved() : example::exampleHouse();
  const auto windows = *rc::gen::inRange<std::size_t>(0, 4);
  plan.circuits[0].edit().loads[0].windows.resize(windows);
  plan.inverter.edit().efficiency.resize(windows);
  fill(recordType(RecordKind::plan), &plan);
  const std::string text = writePlan(plan);
  const auto read = readPlan(text, "a");
  if (!read) RC_FAIL(render(read.refusal(), plainEnglish()));
  RC_ASSERT(read.value().plan == plan);
  RC_ASSERT(writePlan(read.value().plan) == text);
}

/// One byte of a good plan changed at random: read or refused, and what is read can be written and read
/// again.
RC_GTEST_PROP(RoundTrip, AChangedByteIsReadOrRefused, ()) {
  static const std::string whole = writePlan(example::exampleHouse());
  std::string text = whole;
  const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
  text[at] = *rc::gen::arbitrary<char>();
  const auto read = readPlan(text, "a");
  if (!read) {
    RC_ASSERT(!render(read.refusal(), plainEnglish()).empty());
    return;
  }
  const auto again = readPlan(writePlan(read.value().plan), "a");
  RC_ASSERT(again.ok());
  RC_ASSERT(again.value().plan == read.value().plan);
}

}  // namespace
}  // namespace stayalight
