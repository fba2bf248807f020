#pragma once

// Where moved circuits are joined to their extensions: the volume of a box, the connectors. The room in a
// panel is in core/wiring/wiring_space.h.

#include "core/code/raceways.h"
#include "core/wiring/wiring.h"

namespace stayalight {

/// One line of the sum of a box.
struct BoxLine {
  Message what;
  double count = 0.0;  ///< conductor volumes
  CubicInches each;
  [[nodiscard]] CubicInches volume() const { return each * count; }
};
struct SpliceBoxFigures {
  SpliceBoxId box;
  std::vector<CircuitId> circuits;
  std::vector<BoxLine> lines;
  CubicInches needed;
  std::optional<CubicInches> volume;  ///< of the box; none where its mark is not entered
  bool large = false;                 ///< 4 AWG or larger in it: 314.28 counts, not this sum
  std::vector<Message> notKnown;
  Verdict verdict = Verdict::notKnown;
};
[[nodiscard]] WorkingSubject workingSubject(const SpliceBox& box);
/// 314.16(B): each conductor that ends or is spliced in the box at its own size, the grounds together, clamps
/// inside once and each yoke twice the largest conductor. Clamps nobody has looked for count. None for a
/// Canadian site.
[[nodiscard]] std::vector<SpliceBoxFigures> spliceBoxFigures(const Plan& plan, Edition edition,
                                                             Working* working = nullptr,
                                                             const Tables& tables = publishedTables());

/// Joints of one pair of sizes, for the list of connectors; grounds are joined together and are not in it.
struct Joint {
  ConductorSize from{};
  Metal fromMetal = Metal::copper;
  ConductorSize to{};
  int count = 0;
  friend bool operator==(const Joint&, const Joint&) = default;
};
/// Of all moved circuits that are spliced, smallest size first.
[[nodiscard]] std::vector<Joint> joints(const Plan& plan);

}  // namespace stayalight
