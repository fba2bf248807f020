#pragma once

// The room beside the breakers of a panel in which circuits are spliced.

#include "core/code/raceways.h"
#include "core/wiring/wiring.h"

namespace stayalight {

/// Conductors of one size that belong together.
struct WiringSpaceContent {
  enum class Part : std::uint8_t {
    spliced,  ///< of a circuit that is joined here, both ends
    staying,  ///< of a circuit, a source or a feeder that ends here
    supply    ///< of the panel itself
  };
  Message what;  ///< whose they are
  Part part = Part::spliced;
  int count = 0;
  ConductorSize size{};
  WireType wire = WireType::thwn2;
  bool byRating = false;  ///< size not entered: the largest that the rating ahead asks for stands in
  SquareInches area;      ///< of all of them
};

/// 312.8(A): all conductors at any cross-section take at most wiringSpaceConductors() of it, with splices and
/// taps wiringSpaceSplices(); the splices themselves are seen on site. Which conductors run through one
/// cross-section is not entered, so two sums bound it: over where the spliced ones alone take more, within
/// where all of the panel together take no more, else not known.
struct WiringSpaceFigures {
  PanelId panel;
  std::vector<WiringSpaceContent> contents;
  int spliced = 0;  ///< conductors, grounds among them
  SquareInches splicedArea;
  int conductors = 0;  ///< all of the panel
  SquareInches area;
  std::optional<SquareInches> space;
  std::optional<SquareInches> allowed;      ///< for the conductors
  std::optional<SquareInches> withSplices;  ///< for conductors, splices and taps
  std::vector<Message> notKnown;            ///< sizes, the space, how they run
  bool byItsRun = false;                    ///< within or over by how many run through one cross-section
  Verdict verdict = Verdict::notKnown;
};
[[nodiscard]] WorkingSubject wiringSpaceSubject(const Panel& panel);
/// Of each panel in which something is spliced, the work done. A conductor whose size nobody entered counts
/// as the aluminium that its breaker's rating asks for in the 60 C column, insulated as XHHW-2 (the larger;
/// common practice, no source); of a spliced one the size is asked for. Grounds count with insulation.
/// Segments give the conductors of the feeder. None for a Canadian site.
[[nodiscard]] std::vector<WiringSpaceFigures> wiringSpaceFigures(const Plan& plan,
                                                                 const std::vector<SegmentFigures>& segments,
                                                                 Working* working = nullptr,
                                                                 const Tables& tables = publishedTables());

}  // namespace stayalight
