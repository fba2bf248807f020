#pragma once

// What showing a cell and typing into it share. Inside ui/survey only; free of Qt.

#include <string>
#include <vector>

#include "ui/survey/grid.h"

namespace stayalight::survey_cells {

inline constexpr MessageId kSoftStart{"survey.motor.soft_start"};
inline constexpr MessageId kVariableSpeed{"survey.motor.variable_speed"};
inline constexpr MessageId kNoMotor{"survey.motor.none"};

[[nodiscard]] std::string said(const Language& language, MessageId id);
/// In small letters (ASCII).
[[nodiscard]] std::string small(std::string_view text);

/// The load that the row is about, or nullptr.
[[nodiscard]] const Load* loadOf(const Plan& plan, const GridRow& row);
[[nodiscard]] bool severalLoads(const Plan& plan, const GridRow& row);
[[nodiscard]] bool ofLoad(GridColumn column);

/// Who, when or how of a fact.
[[nodiscard]] std::string& originOf(FactValue& fact, GridColumn column);
/// The facts of a load that have a value.
[[nodiscard]] std::vector<const Field*> factsOf(const Load& load);

}  // namespace stayalight::survey_cells
