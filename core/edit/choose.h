#pragma once

// Where moved breakers go: the lighter leg, a group's hots on opposite legs side by side, then the topmost.

#include "core/edit/parts.h"

namespace stayalight::editing {

/// One breaker that moves, with what hangs on it.
struct Mover {
  BreakerId breaker;                ///< that feeds the circuits as planned
  std::vector<CircuitId> circuits;  ///< on it
  std::int32_t poles = 1;
  bool takenAlong = false;  ///< it is new already and changes its place; else a new one is bought
  double watts = 0.0;       ///< connected load, for the choice of a leg only
};

/// Breakers of one multiwire group, or one breaker alone.
struct MovingGroup {
  std::vector<Mover> movers;
  std::vector<CircuitId> staying;  ///< members that stand in the panel already and do not move
};

/// The circuits with all that must go with them: their multiwire groups, and what shares a breaker with them.
[[nodiscard]] Result<std::vector<CircuitId>> withCompanions(const Plan& plan,
                                                            std::span<const CircuitId> circuits);

/// Running watts of all loads on a circuit, as entered; 0 where nothing is known yet.
[[nodiscard]] double connectedWatts(const Circuit& circuit);

/// A place for each mover, in their order, or why there is none. `landing` is the place of the first.
[[nodiscard]] Result<std::vector<Placement>> choosePlaces(const Plan& plan, PanelId panel,
                                                          const MovingGroup& group,
                                                          const std::vector<BreakerId>& ignoring,
                                                          std::optional<SpacePosition> landing);

}  // namespace stayalight::editing
