#pragma once

// A move on the boards, and what it would change. The boards know no electrical rule: they ask.

#include <array>
#include <functional>
#include <optional>
#include <vector>

#include "core/assess/assess.h"
#include "core/edit/edit.h"

namespace stayalight {

enum class MoveKind : std::uint8_t {
  move,      ///< circuits to another panel
  sendBack,  ///< circuits to the breakers they came from
  relocate,  ///< a breaker within its panel
  swap       ///< two breakers change places
};
struct BoardMove {
  MoveKind kind = MoveKind::move;
  std::vector<CircuitId> circuits;        ///< move, sendBack
  PanelId panel;                          ///< where to
  std::optional<SpacePosition> position;  ///< none: the best free one
  BreakerId breaker, other;               ///< relocate, swap
  friend bool operator==(const BoardMove&, const BoardMove&) = default;
};

/// What the move would do.
struct Preview {
  bool legal = false;
  Message refusal;  ///< where it is not legal
  std::array<std::optional<AcAmperes>, 2>
      legPeak;  ///< likely peak of each leg of the backup subpanel after it
  std::array<std::optional<AcAmperes>, 2> startMargin;  ///< smallest margin of a start on each leg
  std::optional<Hours> hours;                           ///< likely, after it
  std::vector<SpacePosition> spaces;                    ///< of the first circuit's poles, after it
  std::vector<Leg> legs;                                ///< and their legs
};
using PreviewOf = std::function<Preview(const BoardMove&)>;

/// The move as an edit.
[[nodiscard]] Result<Plan> applied(const Plan& plan, const BoardMove& move);
/// assess(edit(plan)), in the numbers a landing space shows.
[[nodiscard]] Preview previewOf(const Plan& plan, const BoardMove& move);
/// The result in words: "L2 peak 12.0 A", "peaks 12.0 A, 9.1 A", or the refusal in short.
[[nodiscard]] Message resultWords(const Preview& preview, bool onBackup);

/// What dropping a breaker on a space means: move, send back, relocate or swap. Nothing where it would change
/// nothing or the breaker carries no circuit that could go to another panel.
[[nodiscard]] std::optional<BoardMove> moveFor(const Plan& plan, const std::vector<BreakerId>& carried,
                                               PanelId panel, std::optional<SpacePosition> position);

}  // namespace stayalight
