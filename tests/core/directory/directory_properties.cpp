// No line of a directory is lost, whatever is typed; every table of texts and every table of circuits comes
// back as it was written.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/directory/circuits.h"
#include "core/directory/csv.h"
#include "core/directory/directory.h"
#include "tests/core/example_plans.h"

namespace stayalight {
namespace {

rc::Gen<std::string> textOf(const std::vector<std::string>& pieces, int most) {
  return rc::gen::map(
      rc::gen::resize(most, rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces))),
      [](const std::vector<std::string>& parts) {
        std::string text;
        for (const std::string& part : parts) text += part;
        return text;
      });
}

/// What directories are made of, and some of what they are not.
rc::Gen<std::string> anyLine() {
  const auto joined = [](const std::pair<std::string, std::string>& parts) {
    return parts.first + parts.second;
  };
  const auto front = rc::gen::element<std::string>("", "1 ", "7/9 ", "4A\t", "12) ", "40");
  const auto rest = textOf({"1",        "3",
                            "20",       "30",
                            "A",        "B",
                            "2P",       "/",
                            ",",        "-",
                            " ",        "\t",
                            "(",        ")",
                            ".",        "&",
                            "and",      "Kitchen",
                            "spare",    "open",
                            "amp",      "#",
                            "\xC2\xA0", "\xE2\x80\x93",
                            "\xFF",     std::string(1, '\0'),
                            "999"},
                           8);
  return rc::gen::map(rc::gen::pair(front, rest), joined);
}

RC_GTEST_PROP(Directory, EveryLineIsReadOrNamed, ()) {
  const auto typed = *rc::gen::container<std::vector<std::string>>(anyLine());
  std::string text;
  for (const std::string& line : typed) text += line + "\n";
  const std::vector<DirectoryLine> lines = readDirectory(text);
  RC_ASSERT(lines.size() == typed.size());
  std::size_t wanted = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    RC_ASSERT(lines[i].text == typed[i]);
    const bool said = lines[i].notRead.has_value() || !lines[i].entries.empty();
    // Only what looks empty says nothing.
    const bool blank = typed[i].find_first_not_of(" \t") == std::string::npos ||
                       typed[i].find_first_not_of(" \t\xC2\xA0") == std::string::npos;
    RC_ASSERT(said != blank);
    wanted += lines[i].notRead ? 1 : lines[i].entries.size();
    for (const DirectoryEntry& entry : lines[i].entries) {
      RC_ASSERT(!entry.spaces.empty());
      // Each letter of the words is in the line.
      for (const char c : entry.name + entry.serves)
        RC_ASSERT(typed[i].find(c) != std::string::npos || c == ' ' || c == '-' || c == ',');
    }
  }
  const Plan plan = newPlan();
  const EnteredDirectory entered = enterDirectory(plan, mainPanel(plan)->id, lines);
  RC_ASSERT(entered.outcomes.size() == wanted);
  const auto added = std::count_if(entered.outcomes.begin(), entered.outcomes.end(),
                                   [](const auto& outcome) { return outcome.done == DirectoryDone::added; });
  RC_ASSERT(added == entered.added);
  // A circuit may come onto a spare breaker of an earlier line.
  RC_ASSERT(static_cast<std::size_t>(added) >= entered.plan.breakers.size());
  RC_ASSERT(entered.plan.breakers.size() >= entered.plan.circuits.size());
}

rc::Gen<std::string> anyCell() {
  return textOf({"a", "=", "+", "-", "@", "'", "\"", ",", ";", "\t", "\r", "\n", " ", "1", "\xC2\xB5"}, 6);
}

RC_GTEST_PROP(Csv, WriteAndReadIsTheIdentity, ()) {
  const auto records = *rc::gen::container<std::vector<std::vector<std::string>>>(
      rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(anyCell())));
  const std::string text = writeCsv(records);
  const Result<CsvText> read = readCsv(text, "t", ',');
  if (!read) RC_FAIL(render(read.refusal(), plainEnglish()));
  RC_ASSERT(read.value().records.size() == records.size());
  for (std::size_t i = 0; i < records.size(); ++i) RC_ASSERT(read.value().records[i].cells == records[i]);
}

RC_GTEST_PROP(Csv, NoCellBeginsWithAFormula, ()) {
  const std::string cell = *anyCell();
  const std::string safe = withoutFormula(cell);
  RC_ASSERT(safe.empty() || std::string("=+-@\t\r\n").find(safe.front()) == std::string::npos);
  RC_ASSERT(std::string(asTyped(safe)) == cell);
}

double numberIn(const Field& field) {
  const int step = *rc::gen::inRange(0, 1001);
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
    case FieldKind::choice:
      return std::string(field.choices[*rc::gen::inRange<std::size_t>(0, field.choices.size())]);
    case FieldKind::fact: {
      FactValue fact;
      std::vector<double> parts = {numberIn(field), numberIn(field), numberIn(field)};
      std::sort(parts.begin(), parts.end());
      if (*rc::gen::arbitrary<bool>()) fact.value = parts[1];
      if (*rc::gen::arbitrary<bool>()) fact.low = parts[0];
      if (*rc::gen::arbitrary<bool>()) fact.high = parts[2];
      fact.grade = static_cast<Grade>(*rc::gen::inRange(0, 5));
      fact.who = *anyCell();
      fact.when = *anyCell();
      fact.how = *anyCell();
      return fact;
    }
    default:
      return *anyCell();
  }
}

void fill(RecordKind kind, void* record) {
  for (const Field& field : recordType(kind).fields) {
    if (field.kind == FieldKind::identity || field.kind == FieldKind::reference) continue;
    const bool place = field.key == "row" || field.key == "column" || field.key == "poles" ||
                       field.key == "half" || field.key == "stage" || field.key == "feeds";
    if (kind == RecordKind::breaker && place) continue;
    const FieldValue value = valueFor(field);
    RC_ASSERT(!check(field, value));
    field.set(record, value);
  }
}

/// A house with anything in its circuits, and the same house without any.
Plan anyHouse() {
  Plan plan = newPlan();
  const auto lines = readDirectory("1 a\n3/5 b\n2 c\n4A d\n4B e\n6,8 f\n");
  plan = enterDirectory(plan, mainPanel(plan)->id, lines).plan;
  std::int64_t next = 1;
  for (auto& circuit : plan.circuits) {
    Circuit& each = circuit.edit();
    each.loads.resize(*rc::gen::inRange<std::size_t>(0, 4));
    for (Load& load : each.loads) {
      load.id = LoadId{next++};
      fill(RecordKind::load, &load);
    }
    fill(RecordKind::circuit, &each);
  }
  for (auto& breaker : plan.breakers) fill(RecordKind::breaker, &breaker.edit());
  return plan;
}

RC_GTEST_PROP(CircuitsCsv, WriteAndReadIsLosslessForItsColumns, ()) {
  const Plan plan = anyHouse();
  const std::string text = circuitsCsv(plan);
  for (const Plan& into : {newPlan(), plan}) {
    const auto read = readCircuits(into, text, "t");
    if (const auto* refused = std::get_if<CircuitsRefused>(&read))
      RC_FAIL(render(refused->problems.front(), plainEnglish()));
    RC_ASSERT(std::get<ReadCircuits>(read).notes.empty());
    RC_ASSERT(circuitsCsv(std::get<ReadCircuits>(read).plan) == text);
  }
}

/// Any text is read or refused with words, and never ends the program.
RC_GTEST_PROP(CircuitsCsv, AChangedByteIsReadOrRefused, ()) {
  static const std::string whole = circuitsCsv(
      enterDirectory(newPlan(), mainPanel(newPlan())->id, readDirectory("1 Kitchen 20A\n3/5 Range\n")).plan);
  std::string text = whole;
  text[*rc::gen::inRange<std::size_t>(0, text.size())] = *rc::gen::arbitrary<char>();
  const auto read = readCircuits(newPlan(), text, "t");
  if (const auto* refused = std::get_if<CircuitsRefused>(&read)) {
    RC_ASSERT(!refused->problems.empty());
    RC_ASSERT(!render(refused->problems.front(), plainEnglish()).empty());
  }
}

}  // namespace
}  // namespace stayalight
