#pragma once

// Rows and columns of the survey: a panel as a paper schedule has it, a row for each breaker and for each
// free space, and below a circuit a row for each of its loads where it has several. Free of Qt.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/panel/spaces.h"
#include "core/plan/field.h"

namespace stayalight {

/// In the order one reads them off a panel and then off its machines.
enum class GridColumn : std::uint8_t {
  space,
  poles,
  rating,
  name,
  serves,
  room,
  conductor,
  metal,
  wiring,
  voltage,
  multiwire,
  half,
  tie,
  protection,
  running,
  startCurrent,
  motor,
  startTime,
  duty,
  startsPerHour,
  hours,
  who,
  when,
  how,
  goesTo,
  finding
};
inline constexpr int kGridColumns = static_cast<int>(GridColumn::finding) + 1;

/// Which columns stand beside each other: what one reads standing at the panel, of the wires, of the
/// machines.
enum class ColumnSet : std::uint8_t { panel, wires, machines, all };

struct GridColumnRow {
  GridColumn column;
  const char* name;  ///< key of its head: "survey.column.<name>"
  RecordKind record = RecordKind::plan;
  std::string_view key;  ///< of the field behind it; empty where there is none or several
  int width = 60;
  bool figure = false;  ///< stands at the right edge
  std::uint8_t sets = 0;
};
[[nodiscard]] std::span<const GridColumnRow> gridColumns();
[[nodiscard]] const GridColumnRow& columnRow(GridColumn column);
[[nodiscard]] bool stands(GridColumn column, ColumnSet set);
/// The field of a column, or nullptr.
[[nodiscard]] const Field* fieldOf(GridColumn column);
/// True where cells of the column hold a graded fact of the row's load.
[[nodiscard]] bool holdsFact(GridColumn column);

/// Down the left column of the panel and then down the right; or as they hang, row by row.
enum class SpaceOrder : std::uint8_t { downColumns, acrossRows };

struct GridRow {
  PanelId panel;
  SpacePosition position;
  Half half = Half::whole;
  std::int32_t poles = 1;
  BreakerId breaker;    ///< none: a free space, or a free half of one
  CircuitId circuit;    ///< none: nothing hangs on it
  LoadId load;          ///< the only one of the circuit; in a row of a load, that one
  bool ofLoad = false;  ///< one of several loads, below its circuit
  friend bool operator==(const GridRow&, const GridRow&) = default;
};
/// True where both stand for the same place and load, whatever hangs there by now.
[[nodiscard]] bool samePlace(const GridRow& a, const GridRow& b);

/// Rows of one panel: the breakers that stand there today, those that are planned where nothing stands today,
/// and the free spaces.
[[nodiscard]] std::vector<GridRow> gridRows(const Plan& plan, PanelId panel, SpaceOrder order);
/// Rows of all circuits, by panel; without free spaces.
[[nodiscard]] std::vector<GridRow> circuitRows(const Plan& plan, SpaceOrder order);
/// The row that stands at the same place now; the row itself, without breaker, where nothing stands there.
[[nodiscard]] GridRow rowNow(const Plan& plan, const GridRow& row);

/// How many facts of the circuits are known how well, by grade; what a load or motor needs and nobody entered
/// counts as unknown.
[[nodiscard]] std::array<std::int32_t, 5> knownFacts(const Plan& plan, std::span<const GridRow> rows);
/// True where something that counts above is unknown in the row.
[[nodiscard]] bool hasUnknown(const Plan& plan, const GridRow& row);

}  // namespace stayalight
