#pragma once

// The one door: from a plan to everything the program says about it. Pure; no incremental computing.

#include "core/demand/demand.h"
#include "core/onsite/onsite.h"
#include "core/outage/outage.h"
#include "core/panel/clearing.h"
#include "core/review/review.h"
#include "core/start/start.h"
#include "core/wiring/building.h"
#include "core/wiring/bus.h"
#include "core/wiring/dc_cable.h"
#include "core/wiring/raceway.h"
#include "core/wiring/splice.h"
#include "core/wiring/wiring.h"
#include "core/wiring/wiring_space.h"

namespace stayalight {

/// What one breaker shows on a board.
struct BreakerFigures {
  BreakerId breaker;
  std::array<AcAmperes, 2> running;      ///< by pole: likely current while everything on it runs
  std::array<VoltAmperes, 2> connected;  ///< by pole
  std::optional<Grade> grade;            ///< worst grade of its loads; none without loads
  bool known = true;
};
/// Totals of one panel for its schedule.
struct PanelFigures {
  PanelId panel;
  std::array<ComplexPower, 2> connected;  ///< of its own circuits, by leg, as planned
  std::array<ComplexPower, 2> connectedBefore;
  /// Of the panels it feeds on an ordinary day, as planned: the moved load comes back through the feeder.
  std::array<ComplexPower, 2> fed;
  std::int32_t freeSpaces = 0;
};

struct Assessment {
  bool hasBackup = false;
  SystemVoltages system;  ///< of the backup subpanel in an outage
  InverterLimits limits;
  HourFigures hour;    ///< the hour the outage begins in
  DayProfile profile;  ///< average by hour of the day in the month shown
  DayPeaks peaks{};    ///< likely peak of each leg by hour
  StartFigures starts;
  DemandFigures demand;  ///< load calculations, capacity of the source
  std::vector<SegmentFigures> segments;
  std::optional<DcCableFigures> dcCable;
  std::vector<BuildingFigures> buildings;  ///< buildings apart that hold a panel
  std::vector<BusFigures> buses;  ///< panels that a second source can feed beside the ordinary supply
  std::vector<RacewayFigures> raceways;
  std::vector<SpliceBoxFigures> boxes;
  std::vector<WiringSpaceFigures> wiringSpaces;
  std::vector<ClearedPlace> supplyPlaces;  ///< spaces of the supply's breakers ahead of the backup subpanel
  OutageFigures outage;
  std::vector<BreakerFigures> breakers;        ///< as planned, in the order of breaker ids
  std::vector<BreakerFigures> breakersBefore;  ///< before the work
  std::vector<PanelFigures> panels;
  std::vector<OnSiteItem> onSite;  ///< what still has to be looked at or measured
  std::vector<Finding> findings;
  Working working;  ///< empty unless asked for
};

/// What the working notes beside the running current of one pole: by it the step is found.
[[nodiscard]] Message breakerRunning(const Panel& panel, const Breaker& breaker, Leg leg);

struct Circumstances {
  bool record = false;  ///< write down how each number came about
  /// The figures of the code that everything is worked out with. Must outlive the call.
  const Tables* tables = &publishedTables();
};
[[nodiscard]] Assessment assess(const Plan& plan, const Scenario& scenario,
                                const Circumstances& circumstances = {});
[[nodiscard]] inline Assessment assess(const Plan& plan, const Circumstances& circumstances = {}) {
  return assess(plan, *plan.scenario, circumstances);
}

}  // namespace stayalight
