#pragma once

// Does the breaker of a branch circuit protect a conductor of it?

#include "core/code/edition.h"
#include "core/code/tables.h"
#include "core/plan/plan.h"

namespace stayalight {

/// Which article a branch circuit goes by: 430 and 440 let the device be larger than the conductor (240.4(G))
/// and ask more of the conductor; a dryer, a range, a water heater or whatever else has a heating element
/// beside its motor is none of theirs.
enum class BranchKind : std::uint8_t { ordinary, motor, airConditioning };
[[nodiscard]] BranchKind branchKind(const Circuit& circuit);

enum class BranchProtection : std::uint8_t {
  holds,
  labelAllows,         ///< a motor or an air conditioner, whose label names a breaker at least as large
  readLabel,           ///< perhaps so: the label is not entered
  receptacles,         ///< next standard size above the ampacity, and several receptacles on it bar that
  receptaclesUnknown,  ///< next standard size above the ampacity, fine unless it has several receptacles
  loadAboveAmpacity,   ///< the breaker may be as large as it is, but the conductor does not carry the loads
  over
};

struct BranchQuestion {
  const Circuit& circuit;
  RatingAmperes device;
  ConductorSize size{};
  Metal metal = Metal::copper;
  std::optional<AcAmperes>
      ampacity;  ///< under its conditions; none: only the small conductor's limit is held
  std::optional<AcAmperes> terminal;  ///< of the terminals' column, not derated; none: as `ampacity`
};
struct BranchAnswer {
  BranchProtection protection = BranchProtection::holds;
  bool small = false;  ///< 240.4(D) is the limit that is exceeded
  BranchKind kind = BranchKind::ordinary;
  RuleId rule{"conductor.protected"};  ///< by which it is so
  std::optional<RatingAmperes> most;   ///< where it is over: the largest standard rating that would hold
  std::optional<AcAmperes> asked;      ///< by the loads, where they ask for more than the ampacity
};
/// What the loads of a circuit ask of its conductor: their nameplates at the nominal volts. A motor circuit
/// asks for a quarter more of the largest motor (430.22, 430.24, 440.32) everywhere, another one for 125 % of
/// the continuous part, at the terminals only (210.19(A)(1)). Loads without a nameplate are left out.
struct AskedByLoads {
  AcAmperes conductor;
  AcAmperes terminal;
};
[[nodiscard]] AskedByLoads askedByLoads(const Circuit& circuit, Edition edition,
                                        const Tables& tables = publishedTables());
/// 240.4: at most the ampacity or, without several receptacles, the next standard rating above it; within
/// 240.4(D) for small conductors; 240.4(G) puts the label of a motor or an air conditioner above both, on a
/// circuit of its own (branchKind()). Whatever device is allowed, the conductor carries its loads.
[[nodiscard]] BranchAnswer branchProtection(const BranchQuestion& question, Edition edition,
                                            const Tables& tables = publishedTables());
/// The same for a circuit and its breaker as planned, at the ampacity of its terminals' column; nothing where
/// it has no breaker or its conductor is not known.
struct PlannedBranch {
  const Breaker& breaker;
  ConductorSize size{};
  Metal metal = Metal::copper;
  std::optional<AcAmperes> ampacity;
  BranchAnswer answer;
};
[[nodiscard]] std::optional<PlannedBranch> plannedBranch(const Plan& plan, const Circuit& circuit,
                                                         Edition edition,
                                                         const Tables& tables = publishedTables());

}  // namespace stayalight
