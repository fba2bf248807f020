#pragma once

// The bus of a panel that a second source can feed while the first does: is it large enough, by which rule?

#include "core/code/edition.h"
#include "core/code/tables.h"
#include "core/transfer/transfer.h"
#include "core/use/use.h"
#include "core/wiring/wiring.h"

namespace stayalight {

struct BusOptionFigure {
  BusOption option = BusOption::notChosen;
  bool applies = true;  ///< false: the sources are not at opposite ends
  std::optional<AcAmperes> sum;
  std::optional<AcAmperes> most;
  Verdict verdict = Verdict::notKnown;
};
struct BusFigures {
  PanelId panel;
  std::vector<BreakerId>
      sources;              ///< breakers of sources that feed it beside the ordinary supply, here or behind
  AcAmperes sourceCurrent;  ///< sourceCurrentFactor() times their continuous output
  bool bounded = false;     ///< an output is not entered: its breaker, which carries 125 % of it, bounds it
  std::array<BusOptionFigure, 3> options;  ///< in the order of BusOption
  BusOption chosen = BusOption::notChosen;
  Verdict verdict = Verdict::notKnown;  ///< of the chosen option; without one "over" where none holds
};
[[nodiscard]] WorkingSubject busSubject(const Panel& panel);
/// 705.12(B): sources within the bus with the device ahead of it, anywhere; up to 120 % of the bus where the
/// two stand at its opposite ends; or the sum of all breakers but that device within the bus (a two-pole
/// breaker counts once). Solar and inverter outputs that feed back count, those of the panels behind a
/// breaker too, which come in through it; what is interlocked does not. The device ahead is the panel's main
/// breaker, else the breaker that feeds it, else that of the segment that ends at the backup subpanel. None
/// for a Canadian site.
[[nodiscard]] std::vector<BusFigures> busFigures(const Plan& plan, const InverterLimits& limits,
                                                 const std::vector<SegmentFigures>& segments,
                                                 Working* working = nullptr,
                                                 const Tables& tables = publishedTables());

}  // namespace stayalight
