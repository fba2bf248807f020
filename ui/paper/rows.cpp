#include "ui/paper/rows.h"

#include <algorithm>
#include <cmath>

#include "core/panel/names.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kBlank{"paper.blank"};
constexpr MessageId kMovedTo{"paper.moved_to"};
constexpr MessageId kMovedToBackup{"paper.moved_to_backup"};
constexpr MessageId kFinalSpare{"paper.final_spare"};
constexpr MessageId kFinalBlank{"paper.final_blank"};
constexpr MessageId kFrom{"paper.was_from"};
constexpr MessageId kUnnamed{"paper.unnamed"};
constexpr MessageId kFeederTo{"paper.feeder_to"};

QString text(const std::string& value) { return QString::fromStdString(value); }

class RowMaker {
 public:
  RowMaker(const Plan& plan, const Assessment& assessment, const Panel& panel, Reading reading,
           const Language& language)
      : plan_(plan), assessment_(assessment), panel_(panel), reading_(reading), language_(language) {}

  ScheduleRows make() {
    ScheduleRows rows;
    rows.rows = rowCount(panel_);
    rows.hasWas = reading_ == Reading::planned && panel_.role.is(PanelRole::backup);
    for (int row = 1; row <= rows.rows; ++row) {
      const SpacePosition left{Column::left, row}, right{Column::right, row};
      rows.legs.push_back(legOf(panel_, left));
      rows.leftNumbers.push_back(text(printedNumber(panel_, left)));
      const bool has = hasSpace(panel_, right);
      rows.hasRight.push_back(has);
      rows.rightNumbers.push_back(has ? text(printedNumber(panel_, right)) : QString());
    }
    rows.left = column(Column::left, rows.rows);
    rows.right = column(Column::right, rows.rows);
    addTies(rows);
    return rows;
  }

 private:
  std::vector<ScheduleCell> column(Column which, int rowsInPanel) const {
    std::vector<ScheduleCell> cells;
    for (int row = 1; row <= rowsInPanel; ++row) {
      const SpacePosition position{which, row};
      if (!hasSpace(panel_, position)) continue;
      const std::vector<BreakerId> here = breakersAt(plan_, panel_.id, position, reading_);
      ScheduleCell cell{position, 1, {}};
      if (here.empty()) {
        cell.lines.push_back(emptyLine(position));
      } else {
        for (const BreakerId id : here) {
          const Breaker& breaker = *find(plan_, id);
          if (breaker.half.is(Half::whole) && breaker.poles == 2) cell.span = 2;
          cell.lines.push_back(line(breaker, position));
        }
      }
      row += cell.span - 1;
      cells.push_back(std::move(cell));
    }
    return cells;
  }

  // A space where nothing stands: blank, or the place of an old breaker that was taken out.
  ScheduleLine emptyLine(SpacePosition position) const {
    ScheduleLine empty;
    empty.plain = true;
    empty.tick = false;
    empty.name = words(language_, kBlank);
    if (reading_ == Reading::before) return empty;
    for (const BreakerId id : breakersAt(plan_, panel_.id, position, Reading::before)) {
      if (const Circuit* circuit = circuitOn(plan_, id, Reading::before);
          circuit != nullptr && circuit->planned != id) {
        return movedLine(*circuit, false);
      }
    }
    return empty;
  }

  ScheduleLine movedLine(const Circuit& circuit, bool breakerStays) const {
    ScheduleLine moved;
    moved.moved = true;
    moved.name = nameOf(circuit);
    const Breaker* now = find(plan_, circuit.planned);
    const Panel* where = now != nullptr ? find(plan_, now->panel) : nullptr;
    const Message final = say(breakerStays ? kFinalSpare : kFinalBlank);
    if (where != nullptr) {
      const std::string spaces = spaceNames(*where, placementOf(*now));
      moved.movedTo = where->role.is(PanelRole::backup) ? words(language_, kMovedToBackup, spaces)
                                                        : words(language_, kMovedTo, where->name, spaces);
    }
    moved.serves = words(final, language_);
    return moved;
  }

  QString nameOf(const Circuit& circuit) const {
    return circuit.name.empty() ? words(language_, kUnnamed) : text(circuit.name);
  }

  ScheduleLine line(const Breaker& breaker, SpacePosition position) const {
    const Circuit* circuit = circuitOn(plan_, breaker.id, reading_);
    const Circuit* before = circuitOn(plan_, breaker.id, Reading::before);
    ScheduleLine row;
    if (breaker.half.known() && !breaker.half.is(Half::whole)) {
      const std::vector<HalfSpace> halves = coveredHalves(placementOf(breaker));
      const auto mine = std::find_if(halves.begin(), halves.end(),
                                     [&](const HalfSpace& h) { return h.position == position; });
      row.half =
          mine != halves.end() && mine->half == SpaceHalf::lower ? QStringLiteral("B") : QStringLiteral("A");
    }
    if (circuit == nullptr && before != nullptr && reading_ == Reading::planned) {
      ScheduleLine moved = movedLine(*before, true);
      moved.half = row.half;
      return moved;
    }
    row.rating = QString::number(breaker.rating.count());
    if (circuit == nullptr) {
      const Feeds feeds = breaker.feeds.valueOr(Feeds::nothing);
      row.name = words(feedsName(breaker), language_);
      row.plain = feeds == Feeds::circuit || feeds == Feeds::nothing;
      if (const Panel* to = find(plan_, breaker.feedsPanel))
        row.serves = words(language_, kFeederTo, to->name);
      addVoltAmperes(row, breaker);
      return row;
    }
    QStringList names, purposes;
    for (const CircuitId id : circuitsOn(plan_, breaker.id, reading_)) {
      const Circuit& on = *find(plan_, id);
      names.push_back(nameOf(on));
      if (!on.serves.empty()) purposes.push_back(text(on.serves));
    }
    row.name = names.join(QStringLiteral(", "));
    row.serves = purposes.join(QStringLiteral("; "));
    if (circuit->conductor) {
      row.wire = QString::fromLatin1(name(*circuit->conductor).data(),
                                     static_cast<int>(name(*circuit->conductor).size()));
      if (circuit->metal.is(Metal::aluminium)) row.wire += QStringLiteral(" Al");
      if (unitsOf(language_) == UnitSystem::metric)
        row.area = crossSectionText(*circuit->conductor, language_);
    }
    if (reading_ == Reading::planned && circuit->breaker.valid() && circuit->breaker != breaker.id) {
      const Breaker* old = find(plan_, circuit->breaker);
      const Panel* from = old != nullptr ? find(plan_, old->panel) : nullptr;
      if (from != nullptr) {
        const std::string spaces = spaceNames(*from, placementOf(*old));
        row.was = from->role.is(PanelRole::main) ? text(spaces) : words(language_, kFrom, from->name, spaces);
      }
    }
    addVoltAmperes(row, breaker);
    return row;
  }

  void addVoltAmperes(ScheduleLine& row, const Breaker& breaker) const {
    const auto& all = reading_ == Reading::planned ? assessment_.breakers : assessment_.breakersBefore;
    const auto at = std::lower_bound(all.begin(), all.end(), breaker.id,
                                     [](const BreakerFigures& f, BreakerId id) { return f.breaker < id; });
    if (at == all.end() || at->breaker != breaker.id) return;
    for (int pole = 0; pole < breaker.poles; ++pole) {
      const double va = at->connected[static_cast<std::size_t>(pole)].count();
      row.va.push_back(at->known ? QString::fromStdString(language_.number(std::round(va), 0))
                                 : QStringLiteral("?"));
    }
  }

  // Members of one multiwire group in this panel, and whether one of them is elsewhere.
  void addTies(ScheduleRows& rows) const {
    std::vector<std::int32_t> done;
    for (const auto& circuit : plan_.circuits) {
      if (circuit->multiwire == 0 || std::find(done.begin(), done.end(), circuit->multiwire) != done.end())
        continue;
      done.push_back(circuit->multiwire);
      bool elsewhere = false;
      std::vector<SpacePosition> here;
      for (const CircuitId id : multiwireGroup(plan_, *circuit)) {
        const Breaker* breaker = find(plan_, breakerOf(*find(plan_, id), reading_));
        if (breaker == nullptr || breaker->panel != panel_.id) {
          elsewhere = true;
        } else {
          here.push_back(breaker->position());
        }
      }
      if (here.empty() || (here.size() < 2 && !elsewhere)) continue;
      for (const Column column : {Column::left, Column::right}) {
        int first = 0, last = 0;
        for (const SpacePosition& position : here) {
          if (position.column != column) continue;
          first = first == 0 ? position.row : std::min(first, position.row);
          last = std::max(last, position.row);
        }
        if (first == 0) continue;
        rows.ties.push_back({first, last, column, elsewhere});
      }
    }
  }

  const Plan& plan_;
  const Assessment& assessment_;
  const Panel& panel_;
  Reading reading_;
  const Language& language_;
};

}  // namespace

bool ScheduleRows::joined(int row) const {
  for (const auto* column : {&left, &right}) {
    for (const ScheduleCell& cell : *column) {
      if (cell.span == 2 && cell.position.row == row) return true;
    }
  }
  return false;
}

ScheduleRows scheduleRows(const Plan& plan, const Assessment& assessment, const Panel& panel, Reading reading,
                          const Language& language) {
  return RowMaker(plan, assessment, panel, reading, language).make();
}

}  // namespace stayalight
