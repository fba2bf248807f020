#include <algorithm>
#include <array>

#include "core/directory/cell.h"
#include "core/directory/circuits.h"
#include "core/directory/columns.h"

namespace stayalight {
namespace circuit_table {
namespace {

// Of a breaker what its place does not say already.
constexpr std::array<std::string_view, 8> kOfBreaker = {"half", "poles",      "rating_A",     "rating_read",
                                                        "tie",  "protection", "listing_line", "notes"};

void addField(std::vector<TableColumn>& all, RecordKind record, const Field& field) {
  const std::string name = std::string(recordType(record).name) + "_" + std::string(field.key);
  all.push_back({name, record, &field, Part::value});
  if (field.kind != FieldKind::fact) return;
  constexpr std::array<std::pair<Part, std::string_view>, 6> kParts = {{{Part::low, "_low"},
                                                                        {Part::high, "_high"},
                                                                        {Part::grade, "_grade"},
                                                                        {Part::who, "_who"},
                                                                        {Part::when, "_when"},
                                                                        {Part::how, "_how"}}};
  for (const auto& [part, ending] : kParts) all.push_back({name + std::string(ending), record, &field, part});
}

struct CellOf : PlainCell {
  explicit CellOf(Part which) : part(which) {}
  using PlainCell::operator();
  Part part;
  std::string operator()(const FactValue& fact) const {
    const auto number = [](const std::optional<double>& value) {
      return value ? numberCell(*value) : std::string();
    };
    switch (part) {
      case Part::value:
        return number(fact.value);
      case Part::low:
        return number(fact.low);
      case Part::high:
        return number(fact.high);
      case Part::grade:
        return std::string(kGradeWords[static_cast<std::size_t>(fact.grade)]);
      case Part::who:
        return fact.who;
      case Part::when:
        return fact.when;
      case Part::how:
        return fact.how;
    }
    return {};
  }
};

}  // namespace

const std::vector<TableColumn>& columns() {
  static const std::vector<TableColumn> all = [] {
    std::vector<TableColumn> made;
    for (const std::string_view name : {kCircuit, kPanel, kSpace})
      made.push_back({std::string(name), RecordKind::circuit, nullptr, Part::value});
    for (const std::string_view key : kOfBreaker)
      addField(made, RecordKind::breaker, *fieldOf(RecordKind::breaker, key));
    for (const RecordKind record : {RecordKind::circuit, RecordKind::load}) {
      for (const Field& field : recordType(record).fields) {
        if (field.kind != FieldKind::identity && field.kind != FieldKind::reference)
          addField(made, record, field);
      }
    }
    return made;
  }();
  return all;
}

std::string cellOf(const FieldValue& value, Part part) { return std::visit(CellOf(part), value); }

std::string panelLabel(const Plan& plan, const Panel& panel) {
  const auto same = std::count_if(plan.panels.begin(), plan.panels.end(),
                                  [&](const auto& other) { return other->name == panel.name; });
  const bool clear = !panel.name.empty() && same == 1 && panel.name.substr(0, 6) != "panel ";
  return clear ? panel.name : "panel " + std::to_string(panel.id.number);
}

std::string spaceLabel(const Panel& panel, SpacePosition position) {
  std::string printed = printedNumber(panel, position);
  const bool plain = printed.substr(0, 5) != "left " && printed.substr(0, 6) != "right ";
  if (plain && spaceNumbered(panel, printed) == position) return printed;
  return (position.column == Column::left ? "left " : "right ") + std::to_string(position.row);
}

}  // namespace circuit_table

using namespace circuit_table;

std::string circuitsCsv(const Plan& plan) {
  std::vector<std::vector<std::string>> rows(1);
  for (const TableColumn& column : columns()) rows[0].push_back(column.name);
  for (const auto& circuit : plan.circuits) {
    const BreakerId today = find(plan, circuit->breaker) != nullptr ? circuit->breaker : circuit->planned;
    const Breaker* breaker = find(plan, today);
    const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    const std::size_t lines = std::max<std::size_t>(circuit->loads.size(), 1);
    for (std::size_t line = 0; line < lines; ++line) {
      std::vector<std::string> row;
      for (const TableColumn& column : columns()) {
        if (column.field == nullptr) {
          row.push_back(column.name == kCircuit ? std::to_string(circuit->id.number)
                        : panel == nullptr      ? std::string()
                        : column.name == kPanel ? panelLabel(plan, *panel)
                                                : spaceLabel(*panel, breaker->position()));
          continue;
        }
        const void* record = column.record == RecordKind::breaker   ? static_cast<const void*>(breaker)
                             : column.record == RecordKind::circuit ? static_cast<const void*>(&*circuit)
                             : circuit->loads.empty()               ? nullptr
                                                      : static_cast<const void*>(&circuit->loads[line]);
        row.push_back(record != nullptr ? cellOf(column.field->get(record), column.part) : std::string());
      }
      rows.push_back(std::move(row));
    }
  }
  return writeCsv(rows);
}

}  // namespace stayalight
