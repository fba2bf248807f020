#include "ui/paper/schedule.h"

#include <algorithm>
#include <array>

#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kDone{"paper.column_done"};
constexpr MessageId kServes{"paper.column_serves"};
constexpr MessageId kWas{"paper.column_was"};
constexpr MessageId kWire{"paper.column_wire"};
constexpr MessageId kNumber{"paper.column_number"};
constexpr MessageId kLeg{"paper.column_leg"};

constexpr double kRow = 22.0;
constexpr double kHead = 17.0;
constexpr double kLegWidth = 30.0;

// Columns of one side from the outer edge to the bus.
struct Side {
  double done, serves, was, wire, va, rating, number, bus;  // left edges going inwards, as distances from the outer edge
  bool left;
  double outer;  // x of the outer edge
  [[nodiscard]] double x(double distance) const { return left ? outer + distance : outer - distance; }
  // Left edge and width of the band between two distances.
  [[nodiscard]] QRectF band(double from, double to, double top, double height) const {
    const double a = x(from), b = x(to);
    return {std::min(a, b), top, std::abs(b - a), height};
  }
};

Side sideOf(const SheetFlow& flow, bool left, bool hasWas) {
  const double half = (flow.width() - kLegWidth) / 2.0;
  Side side{};
  side.left = left;
  side.outer = left ? flow.left() : flow.right();
  side.bus = half;
  side.number = half - 24.0;
  side.rating = side.number - 26.0;
  side.va = side.rating - 36.0;
  side.wire = side.va - 27.0;
  side.was = side.wire - (hasWas ? 36.0 : 0.0);
  side.serves = 21.0;
  side.done = 0.0;
  return side;
}

void drawHead(SheetFlow& flow, const Side& left, const Side& right, bool hasWas, const Language& language) {
  const double top = flow.y();
  flow.box(QRectF(flow.left(), top, flow.width(), kHead), 0.0, true);
  flow.rule({flow.left(), top}, {flow.right(), top}, 1.2);
  flow.rule({flow.left(), top + kHead}, {flow.right(), top + kHead}, 0.9);
  const double baseline = top + 11.5;
  for (const Side& side : {left, right}) {
    const auto centre = [&](double from, double to, const QString& word) {
      flow.text((side.x(from) + side.x(to)) / 2.0, baseline, word, 7.6, Weight::bold, Align::centre);
    };
    centre(side.done, side.serves, words(language, kDone));
    const double inner = side.x(side.serves) + (side.left ? 4.0 : -4.0);
    flow.text(inner, baseline, words(language, kServes), 7.6, Weight::bold, side.left ? Align::left : Align::right);
    if (hasWas) centre(side.was, side.wire, words(language, kWas));
    centre(side.wire, side.va, words(language, kWire));
    centre(side.va, side.rating, QStringLiteral("VA"));
    centre(side.rating, side.number, QStringLiteral("A"));
    centre(side.number, side.bus, words(language, kNumber));
  }
  flow.text((left.x(left.bus) + right.x(right.bus)) / 2.0, baseline, words(language, kLeg), 7.6, Weight::bold, Align::centre);
  flow.advance(kHead);
}

void drawLine(SheetFlow& flow, const Side& side, const ScheduleCell& cell, const ScheduleLine& line, const QRectF& area, bool halves) {
  const double middle = area.center().y();
  const Align inward = side.left ? Align::left : Align::right;
  const double textX = side.x(side.serves) + (side.left ? 4.0 : -4.0);
  const QString half = line.half.isEmpty() ? QString() : line.half + QStringLiteral("  ");
  if (line.tick) {
    const double size = halves ? 6.5 : 8.5;
    const QRectF box = side.band(side.done, side.serves, middle - size / 2.0, size);
    flow.mark({SheetMarkKind::tick, QRectF(box.center().x() - size / 2.0, box.top(), size, size)});
  }
  if (line.moved) {
    const double nameWidth = side.was - side.serves - 8.0;
    flow.text(textX, middle + 3.0, half + line.name, 8.4, Weight::regular, inward, nameWidth, true);
    const double centre = (side.x(side.was) + side.x(side.number)) / 2.0;
    const double width = side.number - side.was - 4.0;
    if (halves) {
      flow.text(centre, middle + 2.6, line.movedTo, 7.2, Weight::bold, Align::centre, width);
    } else {
      flow.text(centre, middle - 0.8, line.movedTo, 8.0, Weight::bold, Align::centre, width);
      flow.text(centre, middle + 8.0, line.serves, 7.2, Weight::regular, Align::centre, width);
    }
    return;
  }
  const double nameWidth = side.was - side.serves - 8.0;
  const Weight weight = line.plain ? Weight::regular : Weight::bold;
  if (halves || line.serves.isEmpty()) {
    const QString name = half + line.name;
    const QString both = halves && !line.serves.isEmpty() ? name + QStringLiteral(", ") + line.serves : name;
    flow.text(textX, middle + 3.0, both, halves ? 7.6 : 8.8, weight, inward, nameWidth);
  } else {
    flow.text(textX, middle - 0.6, line.name, 8.8, weight, inward, nameWidth);
    flow.text(textX, middle + 8.0, line.serves, 7.2, Weight::regular, inward, nameWidth);
  }
  const auto centre = [&](double from, double to, const QString& value, double size, Weight how) {
    flow.text((side.x(from) + side.x(to)) / 2.0, middle + size * 0.36, value, size, how, Align::centre, std::abs(to - from) - 1.0);
  };
  if (!line.was.isEmpty()) centre(side.was, side.wire, line.was, 7.8, Weight::regular);
  centre(side.wire, side.va, line.wire, 8.0, Weight::regular);
  centre(side.rating, side.number, line.rating, halves ? 8.2 : 9.6, Weight::bold);
  // Volt-amperes pole by pole, right-aligned.
  const QRectF va = side.band(side.va, side.rating, area.top(), area.height());
  const double each = cell.span == 2 ? kRow : area.height();
  for (qsizetype pole = 0; pole < static_cast<qsizetype>(line.va.size()); ++pole) {
    if (halves && pole > 0) break;  // a quad's two-pole: its second pole stands in the next row
    const double baseline = area.top() + each * (static_cast<double>(pole) + 0.5) + 3.0;
    flow.text(va.right() - 4.0, baseline, line.va[static_cast<std::size_t>(pole)], halves ? 7.4 : 8.0, Weight::regular, Align::right);
  }
}

void drawCell(SheetFlow& flow, const Side& side, const ScheduleCell& cell, double top) {
  const double height = kRow * cell.span;
  const double half = height / static_cast<double>(cell.lines.size());
  const bool halves = cell.lines.size() > 1 || !cell.lines.front().half.isEmpty();
  for (std::size_t i = 0; i < cell.lines.size(); ++i) {
    // A single half keeps to its part of the space.
    double lineTop = top + half * static_cast<double>(i);
    double lineHeight = half;
    if (cell.lines.size() == 1 && halves) {
      lineHeight = height / 2.0;
      lineTop = cell.lines[0].half == QStringLiteral("B") ? top + lineHeight : top;
    }
    drawLine(flow, side, cell, cell.lines[i], side.band(side.done, side.bus, lineTop, lineHeight), halves);
  }
  // Rules between columns; a moved-away line has one field from "was" to the number.
  const bool moved = cell.lines.front().moved;
  for (const double at : {side.serves, side.was, side.wire, side.va, side.rating}) {
    if (moved && (at == side.wire || at == side.va || at == side.rating)) continue;
    if (at == side.was && side.was == side.wire && moved) {
      flow.rule({side.x(at), top}, {side.x(at), top + height});
      continue;
    }
    flow.rule({side.x(at), top}, {side.x(at), top + height});
  }
  if (cell.span == 2 && !moved) {
    const QRectF band = side.band(side.rating, side.number, top + 2.5, height - 5.0);
    const double edge = side.left ? band.right() - 5.0 : band.left() + 1.0;
    flow.mark({side.left ? SheetMarkKind::bracketRight : SheetMarkKind::bracketLeft, QRectF(edge, band.top(), 4.0, band.height())});
    const double middle = top + kRow;
    flow.rule({side.x(side.va), middle}, {side.x(side.rating), middle});
  }
  flow.rule({side.x(side.done), top + height}, {side.x(side.number), top + height});
}

}  // namespace

void drawSchedule(SheetFlow& flow, const ScheduleRows& rows, const Language& language) {
  const Side left = sideOf(flow, true, rows.hasWas);
  const Side right = sideOf(flow, false, rows.hasWas);
  const auto cellAt = [](const std::vector<ScheduleCell>& column, int row) {
    const auto at = std::find_if(column.begin(), column.end(), [&](const ScheduleCell& c) { return c.position.row == row; });
    return at == column.end() ? nullptr : &*at;
  };

  int row = 1;
  while (row <= rows.rows) {
    flow.need(kHead + kRow * 2);
    const double headTop = flow.y();
    drawHead(flow, left, right, rows.hasWas, language);
    const double tableTop = flow.y();
    const int firstRow = row;
    while (row <= rows.rows) {
      int last = row;
      while (last < rows.rows && rows.joined(last)) ++last;
      if (flow.y() + kRow * (last - row + 1) > flow.bottom()) break;
      for (; row <= last; ++row) {
        const double top = flow.y();
        if (const ScheduleCell* cell = cellAt(rows.left, row)) drawCell(flow, left, *cell, top);
        if (const ScheduleCell* cell = cellAt(rows.right, row)) drawCell(flow, right, *cell, top);
        const auto index = static_cast<std::size_t>(row - 1);
        const double baseline = top + kRow / 2.0 + 3.4;
        flow.text((left.x(left.number) + left.x(left.bus)) / 2.0, baseline, rows.leftNumbers[index], 9.4, Weight::bold, Align::centre, 22.0);
        flow.text((right.x(right.number) + right.x(right.bus)) / 2.0, baseline, rows.rightNumbers[index], 9.4, Weight::bold, Align::centre, 22.0);
        const double busLeft = left.x(left.bus), busRight = right.x(right.bus), middle = (busLeft + busRight) / 2.0;
        const Leg leg = rows.legs[index];
        const std::string_view legWord = legName(leg);
        flow.text(middle, baseline - 0.4, QString::fromLatin1(legWord.data(), static_cast<int>(legWord.size())), 8.4, Weight::bold, Align::centre);
        flow.mark({SheetMarkKind::legLine, QRectF(busLeft + 2.0, top, 5.5, kRow), Severity::danger, leg});
        flow.mark({SheetMarkKind::legLine, QRectF(busRight - 7.5, top, 5.5, kRow), Severity::danger, leg});
        flow.rule({left.x(left.number), top + kRow}, {right.x(right.number), top + kRow});
        flow.advance(kRow);
      }
    }
    // Rules that run the whole table down, the frame, and the ties in the outer margin.
    const double tableBottom = flow.y();
    for (const Side& side : {left, right}) {
      flow.rule({side.x(side.number), headTop}, {side.x(side.number), tableBottom});
      flow.rule({side.x(side.bus), headTop}, {side.x(side.bus), tableBottom}, 0.9);
      for (const double at : {side.serves, side.was, side.wire, side.va, side.rating}) {
        flow.rule({side.x(at), headTop}, {side.x(at), headTop + kHead});
      }
    }
    flow.box(QRectF(flow.left(), headTop, flow.width(), tableBottom - headTop), 1.2);
    for (const ScheduleTie& tie : rows.ties) {
      const int from = std::max(tie.fromRow, firstRow), to = std::min(tie.toRow, row - 1);
      if (from > to) continue;
      const double top = tableTop + kRow * (from - firstRow) + kRow / 2.0;
      const double bottom = tableTop + kRow * (to - firstRow) + kRow / 2.0;
      const bool onLeft = tie.column == Column::left;
      const double edge = onLeft ? flow.left() : flow.right();
      const double spine = onLeft ? edge - 8.0 : edge + 8.0;
      // One hot alone still shows its bracket, so that the broken tie has a place.
      const double grow = bottom - top < 6.0 ? 7.0 : 0.0;
      flow.rule({edge, top - grow}, {spine, top - grow}, 0.9);
      flow.rule({edge, bottom + grow}, {spine, bottom + grow}, 0.9);
      flow.rule({spine, top - grow}, {spine, bottom + grow}, 0.9);
      const QRectF sign(spine - 5.5, (top + bottom) / 2.0 - 5.5, 11.0, 11.0);
      flow.mark({tie.broken ? SheetMarkKind::tieBroken : SheetMarkKind::tie, sign});
    }
  }
  flow.advance(8.0);
}

}  // namespace stayalight
