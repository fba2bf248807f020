#include "ui/survey/grid.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr std::uint8_t kPanel = 1, kWires = 2, kMachines = 4;
constexpr std::uint8_t kEach = kPanel | kWires | kMachines;

constexpr GridColumnRow kColumns[] = {
    {GridColumn::space, "space", RecordKind::plan, "", 80, false, kEach},
    {GridColumn::poles, "poles", RecordKind::breaker, "poles", 40, true, kPanel},
    {GridColumn::rating, "rating", RecordKind::breaker, "rating_A", 40, true, kPanel},
    {GridColumn::name, "name", RecordKind::circuit, "name", 140, false, kEach},
    {GridColumn::serves, "serves", RecordKind::circuit, "serves", 200, false, kPanel},
    {GridColumn::room, "room", RecordKind::circuit, "room", 76, false, kPanel},
    {GridColumn::conductor, "conductor", RecordKind::circuit, "conductor_AWG", 96, true, kWires},
    {GridColumn::metal, "metal", RecordKind::circuit, "metal", 82, false, kWires},
    {GridColumn::wiring, "wiring", RecordKind::circuit, "wiring", 140, false, kWires},
    {GridColumn::voltage, "voltage", RecordKind::circuit, "voltage_V", 72, false, kWires},
    {GridColumn::multiwire, "multiwire", RecordKind::circuit, "multiwire", 60, true, kWires},
    {GridColumn::half, "half", RecordKind::breaker, "half", 64, false, kPanel},
    {GridColumn::tie, "tie", RecordKind::breaker, "tie", 92, false, kWires},
    {GridColumn::protection, "protection", RecordKind::breaker, "protection", 76, false, kPanel},
    {GridColumn::running, "running", RecordKind::load, "running_W", 66, true, kMachines},
    {GridColumn::startCurrent, "start_current", RecordKind::load, "locked_rotor_A", 56, true, kMachines},
    {GridColumn::motor, "motor", RecordKind::load, "start_class", 116, false, kMachines},
    {GridColumn::startTime, "start_time", RecordKind::load, "start_s", 48, true, kMachines},
    {GridColumn::duty, "duty", RecordKind::load, "duty", 52, true, kMachines},
    {GridColumn::startsPerHour, "starts", RecordKind::load, "starts_per_hour", 56, true, kMachines},
    {GridColumn::hours, "hours", RecordKind::load, "", 112, false, kMachines},
    {GridColumn::who, "who", RecordKind::load, "", 66, false, kMachines},
    {GridColumn::when, "when", RecordKind::load, "", 76, false, kMachines},
    {GridColumn::how, "how", RecordKind::load, "", 84, false, kMachines},
    {GridColumn::goesTo, "goes_to", RecordKind::plan, "", 76, false, kPanel},
    {GridColumn::finding, "finding", RecordKind::plan, "", 170, false, kEach},
};

// The circuit shown beside a breaker: the one it feeds today, else the one planned on it.
const Circuit* circuitAt(const Plan& plan, BreakerId breaker) {
  const Circuit* today = circuitOn(plan, breaker, Reading::before);
  return today != nullptr ? today : circuitOn(plan, breaker, Reading::planned);
}

GridRow rowOf(const Plan& plan, const Breaker& breaker) {
  GridRow row{
      breaker.panel, breaker.position(), breaker.half.valueOr(Half::whole), breaker.poles, breaker.id, {}, {},
      false};
  if (const Circuit* circuit = circuitAt(plan, breaker.id)) {
    row.circuit = circuit->id;
    if (circuit->loads.size() == 1) row.load = circuit->loads.front().id;
  }
  return row;
}

bool covers(const Placement& place, const HalfSpace& half) {
  const std::vector<HalfSpace> all = coveredHalves(place);
  return std::find(all.begin(), all.end(), half) != all.end();
}

class PanelRows {
 public:
  PanelRows(const Plan& plan, PanelId panel) : plan_(plan), panel_(panel) {
    for (const Reading reading : {Reading::before, Reading::planned}) {
      for (const Occupant& occupant : occupants(plan, panel, reading)) {
        if (std::none_of(all_.begin(), all_.end(),
                         [&](const Occupant& other) { return other.breaker == occupant.breaker; })) {
          all_.push_back(occupant);
        }
      }
    }
  }

  void add(SpacePosition position, std::vector<GridRow>& rows) const {
    bool upper = false, lower = false;
    std::vector<GridRow> here;
    for (const Occupant& occupant : all_) {
      upper = upper || covers(occupant.placement, {position, SpaceHalf::upper});
      lower = lower || covers(occupant.placement, {position, SpaceHalf::lower});
      if (occupant.placement.position == position)
        here.push_back(rowOf(plan_, *find(plan_, occupant.breaker)));
    }
    std::stable_sort(here.begin(), here.end(),
                     [](const GridRow& a, const GridRow& b) { return a.half < b.half; });
    // A free half beside a tandem stands in the order of halves.
    const GridRow free{panel_, position, Half::whole, 1, {}, {}, {}, false};
    if (!upper && !lower) {
      here.push_back(free);
    } else if (!upper || !lower) {
      GridRow half = free;
      half.half = upper ? Half::b : Half::a;
      here.insert(upper ? here.end() : here.begin(), half);
    }
    for (const GridRow& row : here) addWithLoads(row, rows);
  }

  void addWithLoads(const GridRow& row, std::vector<GridRow>& rows) const {
    rows.push_back(row);
    const Circuit* circuit = find(plan_, row.circuit);
    if (circuit == nullptr || circuit->loads.size() < 2) return;
    for (const Load& load : circuit->loads) {
      GridRow below = row;
      below.load = load.id;
      below.ofLoad = true;
      rows.push_back(below);
    }
  }

 private:
  const Plan& plan_;
  PanelId panel_;
  std::vector<Occupant> all_;
};

void count(const Load& load, std::array<std::int32_t, 5>& known) {
  const auto add = [&](bool there, Grade grade) {
    ++known[static_cast<std::size_t>(there ? grade : Grade::unknown)];
  };
  if (load.running.value)
    add(true, load.running.grade);
  else
    add(load.runningCurrent.value.has_value(), load.runningCurrent.grade);
  add(load.duty.value.has_value(), load.duty.grade);
  if (load.start.is(StartKind::none)) return;
  add(load.lockedRotor.value.has_value(), load.lockedRotor.grade);
  add(load.startTime.value.has_value(), load.startTime.grade);
}

std::array<std::int32_t, 5> knownInRow(const Plan& plan, const GridRow& row) {
  std::array<std::int32_t, 5> known{};
  const Circuit* circuit = find(plan, row.circuit);
  if (circuit == nullptr || row.ofLoad) return known;
  const Breaker* breaker = find(plan, row.breaker);
  if (breaker != nullptr && !breaker->ratingRead.is(Answer::yes)) ++known[0];
  if (circuit->loads.empty()) ++known[0];
  for (const Load& load : circuit->loads) count(load, known);
  return known;
}

}  // namespace

std::span<const GridColumnRow> gridColumns() { return kColumns; }
const GridColumnRow& columnRow(GridColumn column) { return kColumns[static_cast<std::size_t>(column)]; }

bool stands(GridColumn column, ColumnSet set) {
  if (set == ColumnSet::all) return true;
  return (columnRow(column).sets & (1u << static_cast<unsigned>(set))) != 0;
}

const Field* fieldOf(GridColumn column) {
  const GridColumnRow& row = columnRow(column);
  return row.key.empty() ? nullptr : fieldOf(row.record, row.key);
}

bool holdsFact(GridColumn column) {
  const Field* field = fieldOf(column);
  return field != nullptr && field->kind == FieldKind::fact;
}

bool samePlace(const GridRow& a, const GridRow& b) {
  const auto slot = [](const GridRow& row) { return row.half == Half::b || row.half == Half::inner; };
  return a.panel == b.panel && a.position == b.position && slot(a) == slot(b) && a.ofLoad == b.ofLoad &&
         (!a.ofLoad || a.load == b.load);
}

std::vector<GridRow> gridRows(const Plan& plan, PanelId panel, SpaceOrder order) {
  std::vector<GridRow> rows;
  const Panel* record = find(plan, panel);
  if (record == nullptr) return rows;
  const PanelRows source(plan, panel);
  const std::vector<SpacePosition> spaces = allSpaces(*record);
  if (order == SpaceOrder::acrossRows) {
    for (const SpacePosition space : spaces) source.add(space, rows);
    return rows;
  }
  for (const Column column : {Column::left, Column::right}) {
    for (const SpacePosition space : spaces) {
      if (space.column == column) source.add(space, rows);
    }
  }
  return rows;
}

std::vector<GridRow> circuitRows(const Plan& plan, SpaceOrder order) {
  std::vector<GridRow> rows;
  std::vector<CircuitId> shown;
  // A moved circuit stands where it hangs today.
  for (const auto& panel : plan.panels) {
    for (const GridRow& row : gridRows(plan, panel->id, order)) {
      const Circuit* circuit = find(plan, row.circuit);
      if (circuit == nullptr) continue;
      const bool elsewhere = circuit->breaker.valid() && circuit->breaker != row.breaker;
      if (!elsewhere) rows.push_back(row);
      shown.push_back(row.circuit);
    }
  }
  // Those that hang on no breaker at all.
  for (const auto& circuit : plan.circuits) {
    if (std::find(shown.begin(), shown.end(), circuit->id) != shown.end()) continue;
    GridRow row;
    row.circuit = circuit->id;
    if (circuit->loads.size() == 1) row.load = circuit->loads.front().id;
    PanelRows(plan, {}).addWithLoads(row, rows);
  }
  return rows;
}

GridRow rowNow(const Plan& plan, const GridRow& row) {
  if (!row.panel.valid()) return row;
  // Mostly nothing happened to it.
  if (const Breaker* breaker = find(plan, row.breaker); breaker != nullptr && !row.ofLoad) {
    if (rowOf(plan, *breaker) == row) return row;
  }
  std::vector<GridRow> here;
  PanelRows(plan, row.panel).add(row.position, here);
  for (const GridRow& each : here) {
    if (samePlace(each, row) && (!row.breaker.valid() || each.breaker == row.breaker)) return each;
  }
  for (const GridRow& each : here) {
    if (samePlace(each, row)) return each;
  }
  GridRow gone = row;
  gone.breaker = {};
  gone.circuit = {};
  gone.load = {};
  return gone;
}

std::array<std::int32_t, 5> knownFacts(const Plan& plan, std::span<const GridRow> rows) {
  std::array<std::int32_t, 5> known{};
  for (const GridRow& row : rows) {
    const std::array<std::int32_t, 5> in = knownInRow(plan, row);
    for (std::size_t i = 0; i < known.size(); ++i) known[i] += in[i];
  }
  return known;
}

bool hasUnknown(const Plan& plan, const GridRow& row) { return knownInRow(plan, row)[0] > 0; }

}  // namespace stayalight
