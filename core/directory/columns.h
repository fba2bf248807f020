#pragma once

// The columns of the table of circuits, made from the field table. Inside core/directory only.

#include <string>
#include <vector>

#include "core/panel/spaces.h"
#include "core/plan/field.h"

namespace stayalight::circuit_table {

/// Part of a fact that a column holds.
enum class Part : std::uint8_t { value, low, high, grade, who, when, how };

struct TableColumn {
  std::string name;  ///< "breaker_rating_A", "load_running_W_grade"
  RecordKind record = RecordKind::circuit;
  const Field* field = nullptr;  ///< null for the columns that say which circuit and where
  Part part = Part::value;
};

inline constexpr std::string_view kCircuit = "circuit";
inline constexpr std::string_view kPanel = "panel";
inline constexpr std::string_view kSpace = "space";

/// In their order: circuit, panel, space, then breaker, circuit and load.
[[nodiscard]] const std::vector<TableColumn>& columns();

/// What a cell of the value column holds.
[[nodiscard]] std::string cellOf(const FieldValue& value, Part part);
/// Name of a panel that no other has, else "panel 3"; of a space that no other has, else "left 3".
[[nodiscard]] std::string panelLabel(const Plan& plan, const Panel& panel);
[[nodiscard]] std::string spaceLabel(const Panel& panel, SpacePosition position);

}  // namespace stayalight::circuit_table
