#include "core/panel/spaces.h"

namespace stayalight {
namespace {

const Space* exceptionAt(const Panel& panel, SpacePosition position) {
  for (const Space& space : panel.exceptions) {
    if (space.row == position.row && space.column.is(position.column)) return &space;
  }
  return nullptr;
}

}  // namespace

std::int32_t rowCount(const Panel& panel) { return (panel.spaces + 1) / 2; }

bool hasSpace(const Panel& panel, SpacePosition position) {
  const std::int32_t last = position.column == Column::left ? rowCount(panel) : panel.spaces / 2;
  return position.row >= 1 && position.row <= last;
}

std::string printedNumber(const Panel& panel, SpacePosition position) {
  const Space* exception = exceptionAt(panel, position);
  if (exception != nullptr && !exception->printedNumber.empty()) return exception->printedNumber;
  const bool left = position.column == Column::left;
  if (panel.numbering.valueOr(Numbering::oddEven) == Numbering::downColumns) {
    return std::to_string(left ? position.row : rowCount(panel) + position.row);
  }
  return std::to_string(left ? 2 * position.row - 1 : 2 * position.row);
}

std::optional<SpacePosition> spaceNumbered(const Panel& panel, std::string_view printed) {
  for (const SpacePosition position : allSpaces(panel)) {
    if (printedNumber(panel, position) == printed) return position;
  }
  return std::nullopt;
}

Leg legOf(const Panel& panel, SpacePosition position) {
  const Space* exception = exceptionAt(panel, position);
  const LegOverride measured =
      exception != nullptr ? exception->leg.valueOr(LegOverride::byRow) : LegOverride::byRow;
  if (measured == LegOverride::l1) return Leg::l1;
  if (measured == LegOverride::l2) return Leg::l2;
  return position.row % 2 != 0 ? Leg::l1 : Leg::l2;
}

Answer takesTandem(const Panel& panel, SpacePosition position) {
  const Space* exception = exceptionAt(panel, position);
  if (exception != nullptr && exception->tandem.is(TandemRule::accepted)) return Answer::yes;
  if (exception != nullptr && exception->tandem.is(TandemRule::notAccepted)) return Answer::no;
  return panel.tandems.valueOr(Answer::unknown);
}

std::vector<SpacePosition> allSpaces(const Panel& panel) {
  std::vector<SpacePosition> all;
  for (std::int32_t row = 1; row <= rowCount(panel); ++row) {
    for (const Column column : {Column::left, Column::right}) {
      if (hasSpace(panel, {column, row})) all.push_back({column, row});
    }
  }
  return all;
}

Placement placementOf(const Breaker& breaker) {
  return {breaker.panel, breaker.position(), breaker.half.valueOr(Half::whole), breaker.poles};
}

std::vector<HalfSpace> coveredHalves(const Placement& placement) {
  const SpacePosition first = placement.position;
  const SpacePosition second{first.column, first.row + 1};
  switch (placement.half) {
    case Half::a:
      return {{first, SpaceHalf::upper}};
    case Half::b:
      return {{first, SpaceHalf::lower}};
    case Half::outer:
      return {{first, SpaceHalf::upper}, {second, SpaceHalf::lower}};
    case Half::inner:
      return {{first, SpaceHalf::lower}, {second, SpaceHalf::upper}};
    case Half::whole:
      break;
  }
  std::vector<HalfSpace> halves = {{first, SpaceHalf::upper}, {first, SpaceHalf::lower}};
  if (placement.poles == 2) {
    halves.push_back({second, SpaceHalf::upper});
    halves.push_back({second, SpaceHalf::lower});
  }
  return halves;
}

std::vector<SpacePosition> poleSpaces(const Placement& placement) {
  std::vector<SpacePosition> spaces = {placement.position};
  if (placement.poles == 2) spaces.push_back({placement.position.column, placement.position.row + 1});
  return spaces;
}

std::vector<Leg> poleLegs(const Panel& panel, const Placement& placement) {
  std::vector<Leg> legs;
  for (const SpacePosition space : poleSpaces(placement)) legs.push_back(legOf(panel, space));
  return legs;
}

std::string spaceNames(const Panel& panel, const Placement& placement) {
  std::string names;
  for (const SpacePosition space : poleSpaces(placement)) {
    if (!names.empty()) names += ", ";
    names += printedNumber(panel, space);
    if (placement.half == Half::whole) continue;
    for (const HalfSpace& covered : coveredHalves(placement)) {
      if (covered.position == space) names += covered.half == SpaceHalf::upper ? "A" : "B";
    }
  }
  return names;
}

std::vector<CircuitId> multiwireGroup(const Plan& plan, const Circuit& circuit) {
  if (circuit.multiwire <= 0) return {circuit.id};
  std::vector<CircuitId> group;
  for (const auto& other : plan.circuits) {
    if (other->multiwire == circuit.multiwire) group.push_back(other->id);
  }
  return group;
}

}  // namespace stayalight
