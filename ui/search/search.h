#pragma once

// Searching a plan: circuits, loads, breakers, spaces and findings that hold all the words that were typed.
// Pure functions, no widget.

#include <vector>

#include "ui/board/layout.h"

namespace stayalight {

enum class FoundKind : std::uint8_t { space, circuit, load, breaker, finding };

struct Found {
  FoundKind kind = FoundKind::circuit;
  EntityRef what;     ///< the record; of a free space its panel, of a finding its first place
  BreakerId breaker;  ///< where it stands on the boards, as planned; none where it stands nowhere
  std::optional<CellAddress> space;  ///< of a free space
  std::size_t finding = 0;           ///< index into the findings
  QString name;                      ///< "Freezer", "Main panel, space 14"
  QString place;                     ///< "main 27, L1"
  QString matched;  ///< what holds the words where the name does not: "Notes: old compressor"
};

struct SearchResult {
  std::vector<Found> found;  ///< spaces, then names that begin so, names, other texts, findings; each in the
                             ///< order of the boards
  BoardFilter matching;
};

/// All words must stand in one record, in any order; capitals and accents do not matter. A number counts as a
/// whole word and also names a space ("12", "37A"); with a panel's word ("main 12") it names that space
/// alone. An empty text finds nothing.
[[nodiscard]] SearchResult search(const Plan& plan, const std::vector<Finding>& findings, const QString& text,
                                  const Language& language);

}  // namespace stayalight
