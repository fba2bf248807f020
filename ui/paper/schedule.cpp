#include "ui/paper/schedule.h"

#include <algorithm>
#include <utility>

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
constexpr double kServesLine = 8.2;  // each further line of a purpose makes its row so much taller
constexpr qsizetype kMostLines = 4;
constexpr double kHalvesRow = 36.0;  // where a space holds two breakers
constexpr double kServesSize = 7.2;
constexpr double kHead = 17.0;
constexpr double kLegWidth = 30.0;

// Columns of one side from the outer edge to the bus.
struct Side {
  double done, serves, was, wire, va, rating, number,
      bus;  // left edges going inwards, as distances from the outer edge
  bool left;
  double outer;  // x of the outer edge
  [[nodiscard]] double x(double distance) const { return left ? outer + distance : outer - distance; }
  [[nodiscard]] double servesLeft() const { return std::min(x(serves), x(was)) + 4.0; }
  [[nodiscard]] double servesWidth() const { return was - serves - 8.0; }
  // Left edge and width of the band between two distances.
  [[nodiscard]] QRectF band(double from, double to, double top, double height) const {
    const double a = x(from), b = x(to);
    return {std::min(a, b), top, std::abs(b - a), height};
  }
};

Side sideOf(const SheetFlow& flow, bool left, bool hasWas, UnitSystem units) {
  const double half = (flow.width() - kLegWidth) / 2.0;
  Side side{};
  side.left = left;
  side.outer = left ? flow.left() : flow.right();
  side.bus = half;
  side.number = half - 24.0;
  side.rating = side.number - 26.0;
  side.va = side.rating - 34.0;
  side.wire = side.va - (units == UnitSystem::metric ? 34.0 : 25.0);  // with the cross-section
  side.was = side.wire - (hasWas ? 33.0 : 0.0);
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
    flow.text(side.servesLeft(), baseline, words(language, kServes), 7.6, Weight::bold);
    if (hasWas) centre(side.was, side.wire, words(language, kWas));
    centre(side.wire, side.va, words(language, kWire));
    centre(side.va, side.rating, QStringLiteral("VA"));
    centre(side.rating, side.number, QStringLiteral("A"));
    centre(side.number, side.bus, words(language, kNumber));
  }
  flow.text((left.x(left.bus) + right.x(right.bus)) / 2.0, baseline, words(language, kLeg), 7.6, Weight::bold,
            Align::centre);
  flow.advance(kHead);
}

// Top and height of each row of a part of the table.
struct RowPlaces {
  int first = 1;
  std::vector<double> tops;  ///< one more than rows
  [[nodiscard]] double top(int row) const { return tops[static_cast<std::size_t>(row - first)]; }
  [[nodiscard]] double bottom(int row) const { return tops[static_cast<std::size_t>(row - first) + 1]; }
};

bool hasHalves(const ScheduleCell& cell) {
  return cell.lines.size() > 1 || !cell.lines.front().half.isEmpty();
}

// Height a row wants: more where a purpose takes two lines or two breakers share the space.
double rowHeight(const Side& side, const std::vector<ScheduleCell>& column, int row) {
  for (const ScheduleCell& cell : column) {
    if (row < cell.position.row || row >= cell.position.row + cell.span) continue;
    if (hasHalves(cell)) return kHalvesRow;
    const ScheduleLine& line = cell.lines.front();
    if (cell.span > 1 || line.moved || line.serves.isEmpty()) return kRow;
    const qsizetype lines = brokenLines(line.serves, side.servesWidth(), kServesSize, Weight::regular).size();
    return kRow + kServesLine * static_cast<double>(std::min(lines, kMostLines) - 1);
  }
  return kRow;
}

void drawMoved(SheetFlow& flow, const Side& side, const ScheduleLine& line, const QString& half,
               double middle, bool halves) {
  flow.text(side.servesLeft(), middle + 3.0, half + line.name, 8.4, Weight::regular, Align::left,
            side.servesWidth(), true);
  const double centre = (side.x(side.was) + side.x(side.number)) / 2.0;
  const double width = side.number - side.was - 4.0;
  const double up = halves ? 0.4 : 0.0;
  flow.text(centre, middle - 0.8 + up, line.movedTo, halves ? 7.2 : 8.0, Weight::bold, Align::centre, width);
  flow.text(centre, middle + 8.0 - up, line.serves, 7.2, Weight::regular, Align::centre, width);
}

void drawNames(SheetFlow& flow, const Side& side, const ScheduleLine& line, const QString& half,
               double middle) {
  const Weight weight = line.plain ? Weight::regular : Weight::bold;
  if (line.serves.isEmpty()) {
    flow.text(side.servesLeft(), middle + 3.0, half + line.name, 8.8, weight, Align::left,
              side.servesWidth());
    return;
  }
  const bool halves = !half.isEmpty();
  QStringList lines = brokenLines(line.serves, side.servesWidth(), kServesSize, Weight::regular);
  if (halves || lines.size() == 1) lines = {line.serves};
  if (lines.size() > kMostLines) lines = lines.mid(0, kMostLines - 1) << lines.mid(kMostLines - 1).join(u' ');
  const double top = middle - 0.6 - 4.1 * static_cast<double>(lines.size() - 1);
  flow.text(side.servesLeft(), top, half + line.name, halves ? 8.0 : 8.8, weight, Align::left,
            side.servesWidth());
  double baseline = top + (halves ? 7.6 : 8.6);
  for (const QString& each : lines) {
    flow.text(side.servesLeft(), baseline, each, halves ? 7.0 : kServesSize, Weight::regular, Align::left,
              side.servesWidth());
    baseline += kServesLine;
  }
}

void drawLine(SheetFlow& flow, const Side& side, const ScheduleLine& line, const QRectF& area,
              const std::vector<QRectF>& poles, bool halves) {
  const double middle = area.center().y();
  const QString half = line.half.isEmpty() ? QString() : line.half + QStringLiteral("  ");
  if (line.tick) {
    const double size = halves ? 6.5 : 8.5;
    const QRectF box = side.band(side.done, side.serves, middle - size / 2.0, size);
    flow.mark({SheetMarkKind::tick, QRectF(box.center().x() - size / 2.0, box.top(), size, size)});
  }
  if (line.moved) {
    drawMoved(flow, side, line, half, middle, halves);
    return;
  }
  drawNames(flow, side, line, half, middle);
  const auto centre = [&](double from, double to, const QString& value, double size, Weight how) {
    flow.text((side.x(from) + side.x(to)) / 2.0, middle + size * 0.36, value, size, how, Align::centre,
              std::abs(to - from) - 1.0);
  };
  if (!line.was.isEmpty()) centre(side.was, side.wire, line.was, 7.8, Weight::regular);
  if (line.area.isEmpty()) {
    centre(side.wire, side.va, line.wire, 8.0, Weight::regular);
  } else {
    const double x = (side.x(side.wire) + side.x(side.va)) / 2.0;
    const double width = side.va - side.wire - 1.0;
    flow.text(x, middle - (halves ? 0.6 : 0.9), line.wire, halves ? 7.4 : 8.0, Weight::regular, Align::centre,
              width);
    flow.text(x, middle + (halves ? 7.0 : 8.0), line.area, halves ? 6.4 : 6.8, Weight::regular, Align::centre,
              width);
  }
  centre(side.rating, side.number, line.rating, halves ? 8.2 : 9.6, Weight::bold);
  // Volt-amperes pole by pole, right-aligned. A quad's two-pole has its second pole in the next row.
  const double right = side.band(side.va, side.rating, area.top(), 1.0).right() - 4.0;
  for (std::size_t pole = 0; pole < line.va.size() && pole < poles.size(); ++pole) {
    flow.text(right, poles[pole].center().y() + 3.0, line.va[pole], halves ? 7.4 : 8.0, Weight::regular,
              Align::right);
  }
}

void drawCell(SheetFlow& flow, const Side& side, const ScheduleCell& cell, const RowPlaces& rows) {
  const double top = rows.top(cell.position.row);
  const double bottom = rows.bottom(cell.position.row + cell.span - 1);
  const double height = bottom - top;
  const bool halves = hasHalves(cell);
  for (std::size_t i = 0; i < cell.lines.size(); ++i) {
    const ScheduleLine& line = cell.lines[i];
    // Halves keep to their part of the space, alone as well.
    const double share = halves ? height / 2.0 : height;
    const bool lower = halves && (i == 1 || line.half == QStringLiteral("B"));
    const QRectF area = side.band(side.done, side.bus, lower ? top + share : top, share);
    std::vector<QRectF> poles{area};
    if (cell.span == 2) {
      poles = {side.band(side.done, side.bus, top, rows.bottom(cell.position.row) - top),
               side.band(side.done, side.bus, rows.top(cell.position.row + 1),
                         bottom - rows.top(cell.position.row + 1))};
    }
    drawLine(flow, side, line, area, poles, halves);
  }
  // Rules between columns; a moved-away line has one field from "was" to the number.
  const bool moved = cell.lines.front().moved && cell.lines.size() == 1;
  for (const double at : {side.serves, side.was, side.wire, side.va, side.rating}) {
    if (moved && at > side.was) continue;
    flow.rule({side.x(at), top}, {side.x(at), bottom});
  }
  if (cell.span == 2 && !moved) {
    const QRectF band = side.band(side.rating, side.number, top + 2.5, height - 5.0);
    const double edge = side.left ? band.right() - 5.0 : band.left() + 1.0;
    flow.mark({side.left ? SheetMarkKind::bracketRight : SheetMarkKind::bracketLeft,
               QRectF(edge, band.top(), 4.0, band.height())});
    const double middle = rows.bottom(cell.position.row);
    flow.rule({side.x(side.va), middle}, {side.x(side.rating), middle});
  }
  flow.rule({side.x(side.done), bottom}, {side.x(side.number), bottom});
}

void drawBus(SheetFlow& flow, const Side& left, const Side& right, const ScheduleRows& rows, int row,
             const RowPlaces& places) {
  const auto at = static_cast<std::size_t>(row - 1);
  const double top = places.top(row), bottom = places.bottom(row);
  const double baseline = (top + bottom) / 2.0 + 3.4;
  flow.text((left.x(left.number) + left.x(left.bus)) / 2.0, baseline, rows.leftNumbers[at], 9.4, Weight::bold,
            Align::centre, 22.0);
  flow.text((right.x(right.number) + right.x(right.bus)) / 2.0, baseline, rows.rightNumbers[at], 9.4,
            Weight::bold, Align::centre, 22.0);
  const double busLeft = left.x(left.bus), busRight = right.x(right.bus);
  const std::string_view leg = legName(rows.legs[at]);
  flow.text((busLeft + busRight) / 2.0, baseline - 0.4,
            QString::fromLatin1(leg.data(), static_cast<int>(leg.size())), 8.4, Weight::bold, Align::centre);
  flow.mark({SheetMarkKind::legLine, QRectF(busLeft + 2.0, top, 5.5, bottom - top), Severity::danger,
             rows.legs[at]});
  flow.mark({SheetMarkKind::legLine, QRectF(busRight - 7.5, top, 5.5, bottom - top), Severity::danger,
             rows.legs[at]});
  flow.rule({left.x(left.number), bottom}, {right.x(right.number), bottom});
}

// Circuits that share a neutral: a bracket in the outer margin, with an N, or the danger sign where one is
// elsewhere.
void drawTies(SheetFlow& flow, const ScheduleRows& rows, const RowPlaces& places, int last) {
  for (const ScheduleTie& tie : rows.ties) {
    const int from = std::max(tie.fromRow, places.first), to = std::min(tie.toRow, last);
    if (from > to) continue;
    double top = (places.top(from) + places.bottom(from)) / 2.0,
           bottom = (places.top(to) + places.bottom(to)) / 2.0;
    if (from == to) {
      top -= 7.0;
      bottom += 7.0;
    }
    const bool onLeft = tie.column == Column::left;
    const double edge = onLeft ? flow.left() : flow.right();
    const double spine = onLeft ? edge - 8.0 : edge + 8.0;
    flow.rule({edge, top}, {spine, top}, 0.9);
    flow.rule({edge, bottom}, {spine, bottom}, 0.9);
    flow.rule({spine, top}, {spine, bottom}, 0.9);
    flow.mark({tie.broken ? SheetMarkKind::tieBroken : SheetMarkKind::tie,
               QRectF(spine - 5.5, (top + bottom) / 2.0 - 5.5, 11.0, 11.0)});
  }
}

// The rows that fit on this page from `first` on, and where they stand.
RowPlaces placesFrom(const SheetFlow& flow, const Side& left, const Side& right, const ScheduleRows& rows,
                     int first) {
  RowPlaces places{first, {flow.y()}};
  int row = first;
  while (row <= rows.rows) {
    std::vector<double> tops = places.tops;
    int last = row;
    while (last < rows.rows && rows.joined(last)) ++last;
    for (int each = row; each <= last; ++each) {
      tops.push_back(tops.back() +
                     std::max(rowHeight(left, rows.left, each), rowHeight(right, rows.right, each)));
    }
    if (tops.back() > flow.bottom() && row > first) break;
    places.tops = std::move(tops);
    row = last + 1;
  }
  return places;
}

}  // namespace

void drawSchedule(SheetFlow& flow, const ScheduleRows& rows, const Language& language) {
  const Side left = sideOf(flow, true, rows.hasWas, unitsOf(language));
  const Side right = sideOf(flow, false, rows.hasWas, unitsOf(language));
  int row = 1;
  while (row <= rows.rows) {
    flow.need(kHead + kHalvesRow * 2);
    const double headTop = flow.y();
    drawHead(flow, left, right, rows.hasWas, language);
    const RowPlaces places = placesFrom(flow, left, right, rows, row);
    const int last = row + static_cast<int>(places.tops.size()) - 2;
    for (const auto& [side, column] : {std::pair{&left, &rows.left}, std::pair{&right, &rows.right}}) {
      for (const ScheduleCell& cell : *column) {
        if (cell.position.row >= row && cell.position.row <= last) drawCell(flow, *side, cell, places);
      }
    }
    for (int each = row; each <= last; ++each) drawBus(flow, left, right, rows, each, places);
    const double bottom = places.tops.back();
    for (const Side& side : {left, right}) {
      flow.rule({side.x(side.number), headTop}, {side.x(side.number), bottom});
      flow.rule({side.x(side.bus), headTop}, {side.x(side.bus), bottom}, 0.9);
      for (const double at : {side.serves, side.was, side.wire, side.va, side.rating}) {
        flow.rule({side.x(at), headTop}, {side.x(at), headTop + kHead});
      }
    }
    flow.box(QRectF(flow.left(), headTop, flow.width(), bottom - headTop), 1.2);
    drawTies(flow, rows, places, last);
    flow.advance(bottom - flow.y());
    row = last + 1;
  }
  flow.advance(8.0);
}

}  // namespace stayalight
