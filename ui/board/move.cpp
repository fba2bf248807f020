#include "ui/board/move.h"

#include <algorithm>

#include "ui/board/refusal_words.h"

namespace stayalight {
namespace {

constexpr MessageId kLegPeakAfter{"board.leg_peak_after"};
constexpr MessageId kBothPeaksAfter{"board.both_peaks_after"};
constexpr MessageId kLeavesBackup{"board.leaves_backup"};
constexpr MessageId kFits{"board.fits"};
constexpr MessageId kNothingMoves{"board.nothing_moves"};

Figure figure(AcAmperes current) { return {current.count(), "A", current.count() < 99.95 ? 1 : 0}; }

// The breaker that the move is about, as the plan has it afterwards.
const Breaker* moved(const Plan& after, const BoardMove& move) {
  if (move.kind == MoveKind::relocate || move.kind == MoveKind::swap) {
    if (const Breaker* same = find(after, move.breaker); same != nullptr && stands(*same, Reading::planned))
      return same;
    return nullptr;
  }
  if (move.circuits.empty()) return nullptr;
  const Circuit* circuit = find(after, move.circuits.front());
  return circuit == nullptr ? nullptr : find(after, breakerOf(*circuit, Reading::planned));
}

}  // namespace

Result<Plan> applied(const Plan& plan, const BoardMove& move) {
  switch (move.kind) {
    case MoveKind::move:
      return moveCircuits(plan, move.circuits, move.panel, move.position);
    case MoveKind::sendBack:
      return sendBack(plan, move.circuits);
    case MoveKind::relocate:
      if (!move.position) return say(kNothingMoves);
      return relocate(plan, move.breaker, *move.position);
    case MoveKind::swap:
      return swapBreakers(plan, move.breaker, move.other);
  }
  return say(kNothingMoves);
}

Preview previewOf(const Plan& plan, const BoardMove& move) {
  Preview out;
  const Result<Plan> after = applied(plan, move);
  if (!after) {
    out.refusal = after.refusal();
    return out;
  }
  out.legal = true;
  if (const Breaker* breaker = moved(after.value(), move)) {
    const Placement placement = placementOf(*breaker);
    out.spaces = poleSpaces(placement);
    if (const Panel* panel = find(after.value(), breaker->panel)) out.legs = poleLegs(*panel, placement);
  }
  // A breaker that stays within a panel other than the backup subpanel changes nothing that is shown.
  if (const Panel* panel = find(plan, move.panel);
      move.kind == MoveKind::relocate && panel != nullptr && !panel->role.is(PanelRole::backup)) {
    return out;
  }
  const Assessment assessment = assess(after.value());
  if (!assessment.hasBackup) return out;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    out.legPeak[index(leg)] = assessment.hour.leg[index(leg)].likelyPeakCurrent.likely;
    for (const StartCheck& check : assessment.starts.checks) {
      if (const auto& started = check.leg[index(leg)]; started && started->margin) {
        auto& smallest = out.startMargin[index(leg)];
        smallest = smallest ? std::min(*smallest, *started->margin) : *started->margin;
      }
    }
  }
  if (assessment.outage.known) out.hours = assessment.outage.runtime.likely;
  return out;
}

Message resultWords(const Preview& preview, bool onBackup) {
  if (!preview.legal) return shortForm(preview.refusal);
  if (!preview.legPeak[0] || !preview.legPeak[1]) return say(kFits);
  if (!onBackup) return say(kLeavesBackup, figure(*preview.legPeak[0]), figure(*preview.legPeak[1]));
  if (preview.legs.size() == 1) {
    const Leg leg = preview.legs.front();
    return say(kLegPeakAfter, std::string(legName(leg)), figure(*preview.legPeak[index(leg)]));
  }
  return say(kBothPeaksAfter, figure(*preview.legPeak[0]), figure(*preview.legPeak[1]));
}

std::optional<BoardMove> moveFor(const Plan& plan, const std::vector<BreakerId>& carried, PanelId panel,
                                 std::optional<SpacePosition> position) {
  if (carried.empty()) return std::nullopt;
  const Breaker* first = find(plan, carried.front());
  if (first == nullptr) return std::nullopt;
  BoardMove out;
  out.panel = panel;
  out.position = position;
  out.breaker = first->id;

  std::vector<BreakerId> there;
  if (position) there = breakersAt(plan, panel, *position, Reading::planned);
  const bool own = std::find(there.begin(), there.end(), first->id) != there.end();
  if (first->panel == panel) {
    if (!position || own) {
      if (!position || *position == first->position() || first->poles == 1) return std::nullopt;
      // One row down onto its own second pole.
      out.kind = MoveKind::relocate;
      return out;
    }
    if (there.empty()) {
      out.kind = MoveKind::relocate;
    } else {
      out.kind = MoveKind::swap;
      out.other = there.front();
    }
    return out;
  }

  bool allCameFromThere = true;
  for (const BreakerId id : carried) {
    const Circuit* circuit = circuitOn(plan, id, Reading::planned);
    if (circuit == nullptr) continue;
    out.circuits.push_back(circuit->id);
    const Breaker* old = find(plan, circuit->breaker);
    allCameFromThere = allCameFromThere && old != nullptr && old->panel == panel && old->id != id;
  }
  if (out.circuits.empty()) return std::nullopt;
  if (allCameFromThere) {
    out.kind = MoveKind::sendBack;
    out.position.reset();
  } else if (carried.size() == 1 && there.size() == 1 &&
             circuitOn(plan, there.front(), Reading::planned) != nullptr) {
    out.kind = MoveKind::swap;
    out.other = there.front();
  } else {
    out.kind = MoveKind::move;
  }
  return out;
}

}  // namespace stayalight
