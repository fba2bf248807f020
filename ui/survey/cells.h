#pragma once

// What a cell of the survey shows, and what typing into it makes of the plan. Free of Qt; every change is one
// of core's edits or several of them as one step.

#include <optional>
#include <span>
#include <string>

#include "core/edit/edit.h"
#include "ui/inspector/quantity_text.h"
#include "ui/survey/grid.h"

namespace stayalight {

struct CellText {
  std::string text;
  std::optional<Grade> grade;  ///< of a fact that is there; traced for a circuit that was traced
  bool unknown = false;        ///< nobody has looked; the text is "?"
  bool fixed = false;          ///< says what follows from the rest, and is not typed into
};

/// How texts are read and written.
struct CellStyle {
  const Language* language = &plainEnglish();
  ShownUnits units;
  Grade grade = Grade::unknown;  ///< of figures that are typed
};

/// The finding column is empty here: it shows what the assessment says.
[[nodiscard]] CellText cellText(const Plan& plan, const GridRow& row, GridColumn column,
                                const CellStyle& style);
/// The text that typing brings back: with its unit where the cell leaves it out.
[[nodiscard]] std::string typedText(const Plan& plan, const GridRow& row, GridColumn column,
                                    const CellStyle& style);

/// Typing `text` into a cell. "?" says that nobody knows. Into a free space it makes breaker and circuit,
/// into a circuit without loads a load. A text that says what stands there already changes nothing. Refused
/// with a reason in plain words.
[[nodiscard]] Result<Plan> enterCell(const Plan& plan, const GridRow& row, GridColumn column,
                                     const std::string& text, const CellStyle& style);
/// Nothing in the cell any more, where it can be empty; else as it was.
[[nodiscard]] Plan clearCell(const Plan& plan, const GridRow& row, GridColumn column);
/// How well the fact in a cell is known; in the columns of a circuit's words: whether it was traced. As it
/// was where there is nothing to grade.
[[nodiscard]] Plan gradeCell(const Plan& plan, const GridRow& row, GridColumn column, Grade grade);
/// The cell of one row as it is in another, with grade and who found it.
[[nodiscard]] Result<Plan> fillCell(const Plan& plan, const GridRow& from, const GridRow& to,
                                    GridColumn column, const CellStyle& style);

/// One-pole to two-pole and back; a free space gets a two-pole breaker with a circuit without a name.
[[nodiscard]] Result<Plan> toggleTwoPole(const Plan& plan, const GridRow& row);
/// Whole space to upper half of a tandem and back; a free space gets the upper half.
[[nodiscard]] Result<Plan> toggleTandem(const Plan& plan, const GridRow& row);
/// The circuits of the rows share one neutral, or part where they do already. One row alone shares with the
/// circuit of the space above it.
[[nodiscard]] Result<Plan> toggleSharedNeutral(const Plan& plan, std::span<const GridRow> rows);

/// The words a choice can be typed with, as shown, for completion while typing; empty for other cells.
[[nodiscard]] std::vector<std::string> choicesOf(GridColumn column, const Language& language);

}  // namespace stayalight
