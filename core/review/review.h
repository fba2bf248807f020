#pragma once

// Findings: what the review says of a plan. A rule is a function in a table; a fix is data that edit applies.

#include <optional>
#include <string_view>
#include <vector>

#include "core/demand/demand.h"
#include "core/edit/edit.h"
#include "core/onsite/onsite.h"
#include "core/outage/outage.h"
#include "core/panel/clearing.h"
#include "core/start/start.h"
#include "core/wiring/building.h"
#include "core/wiring/bus.h"
#include "core/wiring/dc_cable.h"
#include "core/wiring/raceway.h"
#include "core/wiring/splice.h"
#include "core/wiring/wiring.h"
#include "core/wiring/wiring_space.h"

namespace stayalight {

enum class Severity : std::uint8_t { danger, mustFix, checkOnSite, advice };
/// What a finding rests on.
enum class Basis : std::uint8_t { code, listedInstruction, practice, local };

struct Finding {
  std::string_view key;  ///< of its rule, stable: "multiwire.split"
  Severity severity = Severity::advice;
  Basis basis = Basis::practice;
  RuleId rule;                    ///< for the citation; empty for practice
  Message plain;                  ///< one sentence for the homeowner
  Message trade;                  ///< one sentence with figures
  std::vector<EntityRef> places;  ///< first one is where to jump
  std::optional<Fix> fix;         ///< one undoable edit; offered only where it can be made as the plan stands
  Message fixName;                ///< "Move both"
  std::optional<Fix> otherFix;    ///< the other way out, where there are two
  Message otherFixName;           ///< "Keep both"
};

/// All that the rules look at.
struct ReviewInput {
  const Plan& plan;
  const std::vector<OnSiteItem>* onSite =
      nullptr;  ///< the list of this plan: what is asked on site is asked by it; null asks nothing
  const HourFigures* hour = nullptr;  ///< backup subpanel in the hour shown; null without a backup subpanel
  const StartFigures* starts = nullptr;
  const std::vector<SegmentFigures>* segments = nullptr;
  const OutageFigures* outage = nullptr;
  const DcCableFigures* dcCable = nullptr;
  const std::vector<BuildingFigures>* buildings = nullptr;
  const std::vector<BusFigures>* buses = nullptr;
  const std::vector<RacewayFigures>* raceways = nullptr;
  const std::vector<SpliceBoxFigures>* boxes = nullptr;
  const std::vector<WiringSpaceFigures>* wiringSpaces = nullptr;
  const std::vector<ClearedPlace>* supplyPlaces = nullptr;
  const DemandFigures* demand = nullptr;  ///< load calculations and capacity; null where nobody computed them
  Edition edition = Edition::y2023;
  const Tables& tables = publishedTables();
};
/// Findings, worst first, among equals those on two sources that can meet, then in the order of their places.
/// For a Canadian site no finding cites NFPA 70, and what only its figures say is not said.
[[nodiscard]] std::vector<Finding> review(const ReviewInput& input);

/// Directory words that say too little or name what changes with who lives there; nothing where the text will
/// do.
[[nodiscard]] std::optional<Message> directoryFault(std::string_view text);

}  // namespace stayalight
