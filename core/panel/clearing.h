#pragma once

// Which spaces the breakers of the backup's supply take in the panel ahead of it, what stands there today,
// and in what order that has to go before they can be set.

#include <optional>
#include <vector>

#include "core/panel/spaces.h"

namespace stayalight {

enum class Clearing : std::uint8_t {
  takenOut,   ///< its circuits go to another panel or end, or it feeds none
  lifted,     ///< out for a while: its new place waits for others, and they wait for its old one
  relocated,  ///< set in another place of the panel; its circuits work again at once
};
struct ClearingStep {
  BreakerId breaker;
  Clearing what = Clearing::takenOut;
  std::optional<Placement> to;  ///< of a relocated one
  bool proposed = false;        ///< the plan leaves it where it is: this way the room would be there
  /// Circuits without supply from this step on: until the backup's supply works, or until a lifted one is set
  /// again.
  std::vector<CircuitId> dark;
};

/// One breaker of the supply, and what comes before it.
struct ClearedPlace {
  BreakerId breaker;               ///< none where the plan has none yet: then `place` is the best there is
  std::optional<Placement> place;  ///< none where it cannot be had
  std::vector<ClearingStep> steps;
  bool supplies = false;           ///< with it the backup subpanel can be fed
  bool bypass = false;             ///< it feeds the backup subpanel past the inverter
  std::optional<Message> refusal;  ///< why the room cannot be had
};

/// Of one panel, in the order in which they are set: what feeds the backup subpanel first. A place of the
/// plan is kept; without one, the two adjacent spaces of a column that ask for the least: nothing the plan
/// leaves in place, then the fewest circuits without supply, then the fewest steps. Where none is free as
/// planned, breakers that feed nothing are proposed to come out, and then others to be set in free spaces or
/// in those of such breakers.
/// Works on tandems and quads by their halves. Empty where nothing is to be set in the panel.
[[nodiscard]] std::vector<ClearedPlace> clearedPlaces(const Plan& plan, PanelId panel);

/// A breaker to the backup subpanel that stands beside the one of the inverter's input feeds it past a
/// pass-through inverter: it is the bypass's. Where none feeds the input, the first is taken for that.
[[nodiscard]] bool feedsBypass(const Plan& plan, const Breaker& breaker);

/// What is set there, as a part of a sentence: "the feeder to the backup subpanel".
[[nodiscard]] Message nameOf(const Plan& plan, const ClearedPlace& place);
/// A step as an instruction: "Take out Freezer at 12: no supply until the backup is fed".
[[nodiscard]] Message instruction(const Plan& plan, const ClearingStep& step);
/// The panel that the backup subpanel is fed from, or the main panel; null where there is none.
[[nodiscard]] const Panel* panelAhead(const Plan& plan);

}  // namespace stayalight
