#pragma once

// The one place that knows spaces: rows and columns, printed numbers, legs, halves, what a breaker covers and
// what fits where.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/message/result.h"
#include "core/plan/plan.h"

namespace stayalight {

/// Rows of a panel: half its spaces, rounded up (an odd last space stands left).
[[nodiscard]] std::int32_t rowCount(const Panel& panel);
/// True where the enclosure has such a space.
[[nodiscard]] bool hasSpace(const Panel& panel, SpacePosition position);
/// What is printed beside the space: by the panel's numbering, unless an exception names it.
[[nodiscard]] std::string printedNumber(const Panel& panel, SpacePosition position);
/// The space with this printed number, whole match.
[[nodiscard]] std::optional<SpacePosition> spaceNumbered(const Panel& panel, std::string_view printed);
/// Leg of a space: row 1 on L1, row 2 on L2 and so on (common practice, no source), or as measured there.
/// Both halves of a tandem share the leg of their space.
[[nodiscard]] Leg legOf(const Panel& panel, SpacePosition position);
/// Does the space take a tandem: yes, no, or nobody has looked.
[[nodiscard]] Answer takesTandem(const Panel& panel, SpacePosition position);
/// All positions in the order of rows: 1 left, 1 right, 2 left, ...
[[nodiscard]] std::vector<SpacePosition> allSpaces(const Panel& panel);

/// Upper and lower half of a space.
enum class SpaceHalf : std::uint8_t { upper, lower };
struct HalfSpace {
  SpacePosition position;
  SpaceHalf half = SpaceHalf::upper;
  friend constexpr auto operator<=>(const HalfSpace&, const HalfSpace&) = default;
};

/// The place a breaker has or would have.
struct Placement {
  PanelId panel;
  SpacePosition position;  ///< of its first pole
  Half half = Half::whole;
  std::int32_t poles = 1;
  friend constexpr bool operator==(const Placement&, const Placement&) = default;
};
[[nodiscard]] Placement placementOf(const Breaker& breaker);
/// Half spaces it covers: two for a whole single pole, four for a whole two-pole, one for a tandem half, and
/// so on.
[[nodiscard]] std::vector<HalfSpace> coveredHalves(const Placement& placement);
/// Space of each pole; a two-pole takes this row and the next of the same column, whatever the printed
/// numbers.
[[nodiscard]] std::vector<SpacePosition> poleSpaces(const Placement& placement);
/// Leg of each pole.
[[nodiscard]] std::vector<Leg> poleLegs(const Panel& panel, const Placement& placement);
/// "12", "1, 3", "37A" in printed numbers; A is the upper half of a space, B the lower.
[[nodiscard]] std::string spaceNames(const Panel& panel, const Placement& placement);

/// What stands in a panel in one reading.
struct Occupant {
  BreakerId breaker;
  Placement placement;
};
[[nodiscard]] std::vector<Occupant> occupants(const Plan& plan, PanelId panel, Reading reading);
/// The breakers on a space (none, one, or the halves of a tandem or quad), upper half first.
[[nodiscard]] std::vector<BreakerId> breakersAt(const Plan& plan, PanelId panel, SpacePosition position,
                                                Reading reading);

/// Why a breaker cannot stand there as planned (no such space, below the last row, taken and by whom, both
/// poles on one leg, tandem not accepted, more poles than the label allows), or nothing. Breakers in
/// `ignoring` do not count as there. Whether a space takes tandems is not known for many panels: that refuses
/// nothing.
[[nodiscard]] std::optional<Message> refusal(const Plan& plan, const Placement& placement,
                                             const std::vector<BreakerId>& ignoring);
/// The breaker that already covers part of the placement in a reading, or none.
[[nodiscard]] BreakerId occupantOf(const Plan& plan, const Placement& placement, Reading reading,
                                   const std::vector<BreakerId>& ignoring);
/// Why the panel has no such place at all (missing panel or space, below the last row, a shape that does not
/// exist).
[[nodiscard]] std::optional<Message> noSuchPlace(const Plan& plan, const Placement& placement);

/// Places in a panel where a whole breaker of so many poles fits as planned, in the order of `allSpaces`.
[[nodiscard]] std::vector<Placement> landings(const Plan& plan, PanelId panel, std::int32_t poles,
                                              const std::vector<BreakerId>& ignoring);

/// Spaces nothing stands in, as planned.
[[nodiscard]] std::int32_t freeSpaces(const Plan& plan, PanelId panel);

/// Members of a circuit's multiwire group in the order of their ids (the circuit alone where it has none).
[[nodiscard]] std::vector<CircuitId> multiwireGroup(const Plan& plan, const Circuit& circuit);

}  // namespace stayalight
