#include "ui/board/contents.h"

#include <algorithm>

#include "core/panel/names.h"
#include "core/transfer/transfer.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kFacts{"board.facts"};
constexpr MessageId kRating{"board.rating"};
constexpr MessageId kBus{"board.bus"};
constexpr MessageId kRatingUnknown{"board.rating_unknown"};
constexpr MessageId kSpaces{"board.spaces"};
constexpr MessageId kBonded{"board.bonded"};
constexpr MessageId kIsolated{"board.isolated"};
constexpr MessageId kBondUnknown{"board.bond_unknown"};
constexpr MessageId kUnnamed{"board.unnamed"};
constexpr MessageId kFeeder{"board.feeder"};
constexpr MessageId kVoltsBoth{"board.volts_both"};
constexpr MessageId kVoltsThreeWire{"board.volts_three_wire"};
constexpr MessageId kNewHere{"board.new_here"};
constexpr MessageId kBackFed{"board.back_fed"};
constexpr MessageId kTo{"board.to"};
constexpr MessageId kBlank{"board.blank"};
constexpr MessageId kCell{"board.cell"};
constexpr MessageId kCellSpace{"board.cell_space"};
constexpr MessageId kCellSpaces{"board.cell_spaces"};
constexpr MessageId kCellNamed{"board.cell_named"};
constexpr MessageId kCellRating{"board.cell_rating"};
constexpr MessageId kCellPoles{"board.cell_poles"};
constexpr MessageId kCellLeg{"board.cell_leg"};
constexpr MessageId kCellBothLegs{"board.cell_both_legs"};
constexpr MessageId kCellCurrent{"board.cell_current"};
constexpr MessageId kCellCurrentUnknown{"board.cell_current_unknown"};
constexpr MessageId kCellBackedUp{"board.cell_backed_up"};
constexpr MessageId kCellMoved{"board.cell_moved"};
constexpr MessageId kCellFree{"board.cell_free"};
constexpr MessageId kCellFreeHalf{"board.cell_free_half"};
constexpr MessageId kCellNew{"board.cell_new"};
constexpr MessageId kCellShared{"board.cell_shared"};
constexpr MessageId kCellSplit{"board.cell_split"};
constexpr MessageId kCellFinding{"board.cell_finding"};
constexpr MessageId kCellSelected{"board.cell_selected"};
constexpr MessageId kCellCarried{"board.cell_carried"};
constexpr MessageId kCellMatches{"board.cell_matches"};

std::string nameOf(const Circuit& circuit, const Language& language) {
  if (!circuit.name.empty()) return circuit.name;
  if (!circuit.serves.empty()) return circuit.serves;
  return render(say(kUnnamed), language);
}

Message nameOf(const Plan& plan, const Breaker& breaker) {
  const Panel* fed = breaker.feeds.is(Feeds::feeder) ? find(plan, breaker.feedsPanel) : nullptr;
  return fed != nullptr && !fed->name.empty() ? say(kFeeder, fed->name) : feedsName(breaker);
}

std::string voltsOf(const Plan& plan, VoltageClass voltage) {
  const bool wye = plan.site->service.is(ServiceSystem::wye120_208);
  if (voltage == VoltageClass::v120_240) return wye ? "120/208" : "120/240";
  return wye ? "208" : "240";
}

// The circuit that left this breaker for another one, as planned.
const Circuit* movedCircuit(const Plan& plan, BreakerId breaker) {
  for (const Shared<Circuit>& circuit : plan.circuits) {
    if (circuit->breaker == breaker && circuit->planned.valid() && circuit->planned != breaker)
      return &*circuit;
  }
  return nullptr;
}

bool names(const Plan& plan, const EntityRef& place, BreakerId breaker, const Circuit* circuit) {
  switch (place.kind) {
    case RecordKind::breaker:
      return place.id == breaker.number;
    case RecordKind::circuit:
      return circuit != nullptr && place.id == circuit->id.number;
    case RecordKind::load: {
      if (circuit == nullptr) return false;
      const Circuit* owner = circuitOf(plan, LoadId{place.id});
      return owner != nullptr && owner->id == circuit->id;
    }
    default:
      return false;
  }
}

// Half spaces counted from the upper half of the breaker's own row.
std::vector<std::pair<int, int>> bodyRuns(Half half, std::int32_t poles) {
  switch (half) {
    case Half::whole:
      return {{0, 2 * poles}};
    case Half::a:
      return {{0, 1}};
    case Half::b:
      return {{1, 2}};
    case Half::outer:
      return {{0, 1}, {3, 4}};
    case Half::inner:
      return {{1, 3}};
  }
  return {};
}

class Reader {
 public:
  Reader(const Plan& plan, const Assessment& assessment, const Panel& panel, const Language& language,
         const BoardOptions& options, const BoardState& state)
      : plan_(plan),
        assessment_(assessment),
        panel_(panel),
        language_(language),
        options_(options),
        state_(state) {}

  BoardContents read() {
    BoardContents out;
    out.backup = panel_.role.is(PanelRole::backup);
    if (out.backup && assessment_.hasBackup) {
      for (const Leg leg : {Leg::l1, Leg::l2})
        out.legPeak[index(leg)] = assessment_.hour.leg[index(leg)].likelyPeakCurrent.likely;
    }
    out.spaces = panel_.spaces;
    out.free = freeSpaces(plan_, panel_.id);
    out.title = QString::fromStdString(panel_.name);
    out.facts = words(facts(), language_);
    const std::vector<Occupant> all = occupants(plan_, panel_.id, options_.reading);
    for (const Occupant& occupant : all) out.halves = out.halves || occupant.placement.half != Half::whole;
    out.ties = ties();
    ties_ = &out.ties;
    halves_ = out.halves;

    std::map<HalfSpace, BreakerId> taken;
    for (const Occupant& occupant : all) {
      for (const HalfSpace& half : coveredHalves(occupant.placement)) taken.emplace(half, occupant.breaker);
    }
    for (const SpacePosition position : allSpaces(panel_)) {
      std::vector<CellContent> here;
      for (const Occupant& occupant : all) {
        if (occupant.placement.position == position) {
          if (const Breaker* breaker = find(plan_, occupant.breaker))
            here.push_back(breakerCell(*breaker, occupant.placement));
        }
      }
      const bool upper = taken.contains({position, SpaceHalf::upper}),
                 lower = taken.contains({position, SpaceHalf::lower});
      if (!upper && !lower) {
        here.push_back(freeCell(position, Half::whole));
      } else if (!upper || !lower) {
        here.push_back(freeCell(position, upper ? Half::b : Half::a));
      }
      std::stable_sort(here.begin(), here.end(), [](const CellContent& a, const CellContent& b) {
        return a.bodyHalves.front().first < b.bodyHalves.front().first;
      });
      for (CellContent& content : here) out.cells.push_back(std::move(content));
    }
    return out;
  }

 private:
  Message facts() const {
    Message rating = say(kRatingUnknown);
    if (panel_.mainBreaker) {
      rating = say(kRating, std::int64_t{panel_.mainBreaker->count()});
    } else if (panel_.busRating) {
      rating = say(kBus, std::int64_t{panel_.busRating->count()});
    }
    const Message bond = panel_.neutralBonded.is(Answer::yes)  ? say(kBonded)
                         : panel_.neutralBonded.is(Answer::no) ? say(kIsolated)
                                                               : say(kBondUnknown);
    return say(kFacts, std::vector<Message>{rating},
               std::vector<Message>{say(kSpaces, std::int64_t{panel_.spaces})}, std::vector<Message>{bond});
  }

  std::vector<BoardTie> ties() const {
    std::map<std::int32_t, BoardTie> found;
    std::map<std::int32_t, bool> stays;
    for (const Shared<Circuit>& circuit : plan_.circuits) {
      if (circuit->multiwire <= 0) continue;
      const BreakerId now = breakerOf(*circuit, options_.reading);
      const Breaker* feeding = find(plan_, now);
      const Breaker* old = find(plan_, circuit->breaker);
      const bool here =
          feeding != nullptr && feeding->panel == panel_.id && stands(*feeding, options_.reading);
      const bool wasHere = old != nullptr && old->panel == panel_.id && stands(*old, options_.reading);
      BoardTie& tie = found[circuit->multiwire];
      if (here) {
        tie.spaces.push_back(feeding->position());
        stays[circuit->multiwire] = true;
      } else {
        if (feeding != nullptr) tie.split = true;
        if (wasHere) tie.spaces.push_back(old->position());
      }
    }
    std::vector<BoardTie> out;
    for (auto& [group, tie] : found) {
      // A group that moved as a whole is tied where it stands now, not where it was.
      if (!stays[group] || (tie.spaces.size() < 2 && !tie.split)) continue;
      std::sort(tie.spaces.begin(), tie.spaces.end());
      out.push_back(std::move(tie));
    }
    return out;
  }

  const BoardTie* tieAt(SpacePosition position) const {
    for (const BoardTie& tie : *ties_) {
      if (std::find(tie.spaces.begin(), tie.spaces.end(), position) != tie.spaces.end()) return &tie;
    }
    return nullptr;
  }

  void place(CellContent& content) const {
    BoardCell& cell = content.cell;
    const Half half = cell.address.half;
    const bool innerThere = half == Half::b && besideInner(cell.address.position);
    const bool second = (half == Half::b && !innerThere) || half == Half::inner;
    cell.row = cell.address.position.row - 1;
    cell.rowSpan = cell.poles;
    const int side = cell.address.position.column == Column::left ? 0 : 1;
    cell.columnSpan = halves_ && half == Half::whole ? 2 : 1;
    // In the right column the halves stand mirrored: the first one outside.
    cell.column = halves_ ? side * 2 + (half == Half::whole ? 0 : (side == 0) == second ? 1 : 0) : side;
  }

  // True where the lower half below an inner two-pole is meant: the second half of a triplex stands under the
  // first.
  bool besideInner(SpacePosition position) const {
    for (const Occupant& occupant : occupants(plan_, panel_.id, options_.reading)) {
      if (occupant.placement.half != Half::inner && occupant.placement.half != Half::outer) continue;
      for (const SpacePosition pole : poleSpaces(occupant.placement)) {
        if (pole == position) return true;
      }
    }
    return false;
  }

  CellContent freeCell(SpacePosition position, Half half) const {
    CellContent out;
    BoardCell& cell = out.cell;
    cell.kind = half == Half::whole ? CellKind::free : CellKind::freeHalf;
    cell.address = {panel_.id, position, half};
    cell.legs = {legOf(panel_, position)};
    out.bodyHalves = bodyRuns(half, 1);
    out.numbers.push_back(QString::fromStdString(printedNumber(panel_, position)));
    cell.spaces = out.numbers.front();
    if (half == Half::whole) {
      for (const Shared<Breaker>& breaker : plan_.breakers) {
        if (breaker->panel == panel_.id && breaker->stage.is(Stage::removed) &&
            breaker->position() == position && options_.reading == Reading::planned) {
          out.blank = true;
        }
      }
    }
    if (out.blank) cell.name = words(language_, kBlank);
    place(out);
    std::vector<Message> parts{say(kCellSpace, cell.spaces.toStdString()),
                               say(half == Half::whole ? kCellFree : kCellFreeHalf),
                               say(kCellLeg, std::string(legName(cell.legs.front())))};
    const bool matches = state_.filter && state_.filter->spaces.contains(cell.address);
    cell.quiet = state_.filter && !matches;
    if (matches) parts.push_back(say(kCellMatches));
    cell.accessibleName = words(say(kCell, parts), language_);
    return out;
  }

  CellContent breakerCell(const Breaker& breaker, const Placement& placement) const {
    CellContent out;
    BoardCell& cell = out.cell;
    cell.kind = CellKind::breaker;
    cell.address = {panel_.id, placement.position, placement.half};
    cell.poles = placement.poles;
    cell.breaker = breaker.id;
    cell.legs = poleLegs(panel_, placement);
    cell.spaces = QString::fromStdString(spaceNames(panel_, placement));
    for (const SpacePosition space : poleSpaces(placement)) {
      out.numbers.push_back(QString::fromStdString(printedNumber(panel_, space)));
    }
    out.bodyHalves = bodyRuns(placement.half, placement.poles);
    out.rating = breaker.rating.count();
    place(out);

    const Circuit* circuit = circuitOn(plan_, breaker.id, options_.reading);
    const Circuit* left = options_.reading == Reading::planned && circuit == nullptr
                              ? movedCircuit(plan_, breaker.id)
                              : nullptr;
    Message moved;
    if (circuit != nullptr) {
      cell.circuit = circuit->id;
      cell.name = namesOn(breaker.id);
      cell.lit = panel_.role.is(PanelRole::backup);
      out.openBody = breaker.stage.is(Stage::fresh) && !circuit->breaker.valid();
      if (placement.poles == 2) {
        const VoltageClass voltage = circuit->voltage.valueOr(VoltageClass::v240);
        out.secondLine = words(
            say(voltage == VoltageClass::v120_240 ? kVoltsThreeWire : kVoltsBoth, voltsOf(plan_, voltage)),
            language_);
      }
    } else if (left != nullptr) {
      cell.kind = CellKind::movedAway;
      cell.circuit = left->id;
      cell.name = QString::fromStdString(nameOf(*left, language_));
      if (const Breaker* now = find(plan_, left->planned)) {
        if (const Panel* there = find(plan_, now->panel)) {
          const std::string first = printedNumber(*there, now->position());
          out.pill = words(language_, kTo, first);
          moved = say(kCellMoved, there->name, spaceNames(*there, placementOf(*now)));
        }
      }
    } else {
      cell.kind = breaker.feeds.is(Feeds::nothing) || breaker.feeds.is(Feeds::circuit) ? CellKind::spare
                                                                                       : CellKind::breaker;
      cell.name = words(nameOf(plan_, breaker), language_);
      out.openBody = breaker.stage.is(Stage::fresh);
      if (fedBackwards(breaker)) {
        out.secondLine = words(language_, kBackFed);
      } else if (out.openBody) {
        out.secondLine = words(language_, kNewHere);
      }
    }
    if (circuit != nullptr) readCurrent(out, breaker);
    describe(out, breaker, circuit != nullptr ? circuit : left, moved);
    return out;
  }

  // Of all circuits on it: a two-pole breaker may hold both hots of a multiwire circuit.
  QString namesOn(BreakerId breaker) const {
    QStringList names;
    for (const CircuitId id : circuitsOn(plan_, breaker, options_.reading)) {
      names.push_back(QString::fromStdString(nameOf(*find(plan_, id), language_)));
    }
    return names.join(QStringLiteral(", "));
  }

  void readCurrent(CellContent& out, const Breaker& breaker) const {
    out.amps = QStringLiteral("?");
    for (const BreakerFigures& figures : assessment_.breakers) {
      if (figures.breaker != breaker.id || !figures.known || !figures.grade) continue;
      double most = figures.running[0].count();
      if (breaker.poles == 2) most = std::max(most, figures.running[1].count());
      out.amps = QString::fromStdString(language_.number(most, most < 99.95 ? 1 : 0));
      out.share = out.rating > 0 ? std::clamp(most / out.rating, 0.0, 1.0) : 0.0;
      out.grade = *figures.grade;
    }
  }

  void describe(CellContent& out, const Breaker& breaker, const Circuit* circuit,
                const Message& moved) const {
    BoardCell& cell = out.cell;
    std::vector<Message> parts;
    parts.push_back(say(cell.poles > 1 ? kCellSpaces : kCellSpace, cell.spaces.toStdString()));
    parts.push_back(say(kCellNamed, cell.name.toStdString()));
    parts.push_back(say(kCellRating, std::int64_t{out.rating}));
    parts.push_back(say(kCellPoles, std::int64_t{cell.poles}));
    const bool both = cell.legs.size() == 2 && cell.legs[0] != cell.legs[1];
    parts.push_back(
        both ? say(kCellBothLegs)
             : say(kCellLeg, std::string(legName(cell.legs.empty() ? Leg::l1 : cell.legs.front()))));
    if (cell.kind == CellKind::breaker && circuit != nullptr) {
      if (out.share) {
        parts.push_back(say(kCellCurrent, out.amps.toStdString() + " A"));
      } else {
        parts.push_back(say(kCellCurrentUnknown));
      }
    }
    if (cell.lit) parts.push_back(say(kCellBackedUp));
    if (!moved.id.key.empty()) parts.push_back(moved);
    if (out.openBody) parts.push_back(say(kCellNew));
    if (const BoardTie* tie =
            circuit != nullptr && circuit->multiwire > 0 ? tieAt(cell.address.position) : nullptr) {
      parts.push_back(say(tie->split ? kCellSplit : kCellShared));
    }
    std::vector<QString> told;
    for (const Finding& finding : assessment_.findings) {
      const bool here =
          std::any_of(finding.places.begin(), finding.places.end(),
                      [&](const EntityRef& place) { return names(plan_, place, breaker.id, circuit); });
      // What is wrong with a circuit that left is told where it stands now.
      if (!here || cell.kind == CellKind::movedAway) continue;
      if (!cell.severity || finding.severity < *cell.severity) cell.severity = finding.severity;
      parts.push_back(say(kCellFinding, std::vector<Message>{finding.plain}));
      told.push_back(words(finding.plain, language_));
    }
    const bool matches = state_.filter && state_.filter->breakers.contains(breaker.id);
    cell.quiet = state_.filter && !matches;
    if (matches) parts.push_back(say(kCellMatches));
    if (state_.selected.contains(breaker.id)) parts.push_back(say(kCellSelected));
    if (state_.carried.contains(breaker.id)) parts.push_back(say(kCellCarried));
    cell.accessibleName = words(say(kCell, parts), language_);

    // The tooltip has what the cell may have cut: the whole name, and each finding on a line.
    cell.tooltip = QStringLiteral("<b>") + cell.name.toHtmlEscaped() + QStringLiteral("</b>");
    if (circuit != nullptr && !circuit->serves.empty() && circuit->serves != circuit->name) {
      cell.tooltip += QStringLiteral("<br>") + QString::fromStdString(circuit->serves).toHtmlEscaped();
    }
    for (const QString& line : told) cell.tooltip += QStringLiteral("<br>") + line.toHtmlEscaped();
  }

  const Plan& plan_;
  const Assessment& assessment_;
  const Panel& panel_;
  const Language& language_;
  const BoardOptions& options_;
  const BoardState& state_;
  const std::vector<BoardTie>* ties_ = nullptr;
  bool halves_ = false;
};

}  // namespace

BoardContents contents(const Plan& plan, const Assessment& assessment, const Panel& panel,
                       const Language& language, const BoardOptions& options, const BoardState& state) {
  return Reader(plan, assessment, panel, language, options, state).read();
}

}  // namespace stayalight
