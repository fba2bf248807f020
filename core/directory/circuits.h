#pragma once

// The circuits of a house as a table for spreadsheets: a row for each load (one for a circuit without loads),
// columns from the field table with their units in the names. Hours of use and keys of later programs are not
// in it; reading a table into a plan leaves them as they are.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/edit/edit.h"
#include "core/message/watch.h"

namespace stayalight {

/// Comma-separated values; the first row names the columns. Numbers with a point, choices with the words of
/// the plan file, facts in columns for value, low, high, grade, who, when and how. A circuit stands at the
/// space of its breaker today, or planned where it is new.
[[nodiscard]] std::string circuitsCsv(const Plan& plan);

struct ReadCircuits {
  Plan plan;
  std::int32_t added = 0;      ///< circuits that are new
  std::int32_t changed = 0;    ///< circuits that stood there already
  std::vector<Message> notes;  ///< columns that were not read
};
/// The plan with the rows of the table: a row finds its circuit by panel and space, and makes it where none
/// stands there. Columns that are not there, and empty cells where the field cannot be empty, change nothing.
/// Refused as a whole, also where the one who watches stops it; the messages, at most `kMostProblems`, name
/// row, column, value and what was expected.
struct CircuitsRefused {
  std::vector<Message> problems;
};
[[nodiscard]] std::variant<ReadCircuits, CircuitsRefused> readCircuits(const Plan& plan,
                                                                       std::string_view text,
                                                                       const std::string& name,
                                                                       const Watch& watch = {});

inline constexpr std::size_t kMostProblems = 20;
inline constexpr std::size_t kMostCircuitRows = 5000;

}  // namespace stayalight
