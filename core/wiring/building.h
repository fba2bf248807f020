#pragma once

// What a building apart is asked for where a feeder supplies it: its electrodes, a disconnect there, a ground
// of the feeder's own (250.32, 225.30 to 225.39).

#include <optional>
#include <vector>

#include "core/wiring/wiring.h"

namespace stayalight {

struct BuildingFigures {
  PanelId panel;
  Answer electrode = Answer::unknown;  ///< its grounding electrodes are joined there
  Answer disconnect =
      Answer::unknown;        ///< its supply is disconnected there; a main breaker of the panel does
  std::int32_t circuits = 0;  ///< branch circuits of the panel as planned
  std::int32_t breakers = 0;  ///< standing in it as planned
  RatingAmperes
      leastDisconnect;  ///< 225.39: by one circuit, two of two wires, or more; a dwelling takes more
  std::optional<RatingAmperes> mainBreaker;
  bool mainBelowLeast = false;
  /// Does the feeder bring its own equipment ground? Yes where this plan chooses it, where it is entered, and
  /// in cable or metal raceway; not known for conductors in the wall without one, and for a panel whose
  /// feeder the plan does not hold.
  Answer ownGround = Answer::unknown;
  bool feederInPlan = false;            ///< it is the backup subpanel
  std::optional<ConductorSize> supply;  ///< largest ungrounded conductor of the pieces that lead there
  Metal metal = Metal::copper;
  std::optional<ConductorSize> electrodeConductor;  ///< copper, Table 250.66
  std::optional<double> drop;   ///< of the whole way there, heavier leg, worse source; none where a piece is
                                ///< not known
  std::vector<Segment> pieces;  ///< of the way there
};

/// What the pieces of the way of one mode lose together on their heavier leg, a share of the nominal volts;
/// none where one of them is not known.
[[nodiscard]] std::optional<double> dropOfWay(const Plan& plan, const std::vector<SegmentFigures>& segments,
                                              Mode mode, Working* working = nullptr);
/// Panels that stand in a building apart and are the first there: a panel that one of them feeds is taken to
/// stand in the same building. Only panels with something in them as planned.
[[nodiscard]] std::vector<const Panel*> panelsApart(const Plan& plan);
[[nodiscard]] WorkingSubject buildingSubject(const Panel& panel);
/// One for each of them; none for a Canadian site.
[[nodiscard]] std::vector<BuildingFigures> buildingFigures(const Plan& plan,
                                                           const std::vector<SegmentFigures>& segments,
                                                           Working* working = nullptr,
                                                           const Tables& tables = publishedTables());

/// A circuit whose panel today and whose panel after the work stand in different buildings, so that it runs
/// between them.
[[nodiscard]] bool crossesBuildings(const Plan& plan, const Circuit& circuit);

}  // namespace stayalight
