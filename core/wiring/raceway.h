#pragma once

// What shares a raceway between the panels: how full it is, how many conductors in it carry current at one
// time, and what that leaves of each moved circuit's ampacity.

#include "core/code/raceways.h"
#include "core/wiring/branch.h"
#include "core/wiring/conductor.h"

namespace stayalight {

/// Conductors of one kind in a raceway. They belong to a circuit, to a segment of the feeder, or to neither.
struct RacewayContent {
  enum class Role : std::uint8_t { hot, neutral, ground, cable, other };
  Message what;  ///< whose they are
  Role role = Role::hot;
  int count = 0;
  std::optional<ConductorSize> size;  ///< none where it is not known, for cables and others
  Metal metal = Metal::copper;
  WireType wire = WireType::thwn2;
  std::optional<SquareInches> area;  ///< of all of them; none where it is not known
};

/// Conductors of a raceway that carry current in each mode, and the larger of both: what is never live
/// together is never counted together. Grounds never count. The neutral of a two-wire circuit counts; that
/// of a multiwire circuit on both legs of a split-phase supply carries the difference only and does not
/// (310.15(E)); on two legs of a wye it does.
struct CarryingCount {
  int ordinary = 0;
  int outage = 0;
  int generator = 0;  ///< while it runs, and on a bypass: 0 without one
  int bypass = 0;
  [[nodiscard]] int most() const { return std::max({ordinary, outage, generator, bypass}); }
};
[[nodiscard]] CarryingCount carryingCount(const Plan& plan, RacewayId raceway,
                                          const Tables& tables = publishedTables());

/// One moved circuit's extension in a raceway.
struct RacewayBranch {
  CircuitId circuit;
  ConductorSize size{};
  RatingAmperes device;
  Ampacities ampacity;
  BranchProtection protection = BranchProtection::holds;
  BranchKind kind = BranchKind::ordinary;
  RuleId rule;                        ///< by which it is so
  std::optional<RatingAmperes> most;  ///< where it is over: the largest standard rating that holds here
  std::optional<AcAmperes> asked;     ///< by its loads, where they ask for more than it carries here
  bool small = false;                 ///< 240.4(D) is the limit that is exceeded, whatever shares the raceway
};

struct RacewayFigures {
  RacewayId raceway;
  std::vector<RacewayContent> contents;
  CarryingCount carrying;
  bool nipple = false;  ///< 24 in or less: 60 % fill, no adjustment
  Fraction adjustment{1.0};
  int conductors = 0;    ///< for the fill; a cable is one
  SquareInches area;     ///< of all that is known
  SquareInches inside;   ///< of the raceway
  SquareInches allowed;  ///< share of it that may be filled
  Verdict fill = Verdict::notKnown;
  std::optional<TradeSize> smallest;  ///< of its type that takes the contents; none above the largest
  std::vector<RacewayBranch> branches;
  std::vector<Message> notKnown;
  bool plasticGround = false;           ///< the raceway is to be the ground, and is plastic
  Verdict verdict = Verdict::notKnown;  ///< of fill and branches
};
[[nodiscard]] WorkingSubject workingSubject(const Raceway& raceway);
/// One for each raceway of the plan. Segments give the conductors of the feeder. None for a Canadian site.
[[nodiscard]] std::vector<RacewayFigures> racewayFigures(const Plan& plan,
                                                         const std::vector<SegmentFigures>& segments,
                                                         Edition edition, Working* working = nullptr,
                                                         const Tables& tables = publishedTables());

}  // namespace stayalight
