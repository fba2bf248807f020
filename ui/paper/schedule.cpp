#include "ui/paper/schedule.h"

#include <algorithm>
#include <numeric>
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

constexpr double kEasyRow = 22.0;   // where the page has room
constexpr double kEasyAir = 3.4;    // and for a row whose texts are taller
constexpr double kLeastRow = 14.0;  // one line
constexpr double kLeastHalf = 12.0;
constexpr double kAir = 3.0;  // between the texts of two rows
constexpr double kHead = 17.0;
constexpr double kLegWidth = 28.0;
constexpr int kRowsTogether = 4;  // at least so many on the last page of a table

// Columns of one side from the outer edge to the bus.
struct Side {
  double done, serves, was, wire, va, rating, number,
      bus;  // left edges going inwards, as distances from the outer edge
  bool left;
  double outer;  // x of the outer edge
  [[nodiscard]] double x(double distance) const { return left ? outer + distance : outer - distance; }
  [[nodiscard]] double servesLeft() const { return std::min(x(serves), x(was)) + 3.0; }
  [[nodiscard]] double servesWidth() const { return was - serves - 6.0; }
  [[nodiscard]] double movedWidth() const { return number - was - 4.0; }
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
  side.number = half - 21.0;
  side.rating = side.number - 23.0;
  side.va = side.rating - 31.0;
  side.wire = side.va - (units == UnitSystem::metric ? 34.0 : 23.0);  // with the cross-section
  side.was = side.wire - (hasWas ? 32.0 : 0.0);
  side.serves = 20.0;
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

SheetText piece(const QString& text, double size, Weight weight = Weight::regular) {
  return {{}, text, Face::condensed, size, weight};
}

FieldText wireText(const Side& side, const ScheduleLine& line) {
  std::vector<SheetText> pieces{piece(line.wire, line.half.isEmpty() ? 8.0 : 7.4)};
  if (!line.area.isEmpty()) pieces.push_back(piece(line.area, 7.0));
  return stackedText(pieces, side.va - side.wire - 1.0);
}
FieldText wasText(const Side& side, const ScheduleLine& line) {
  return stackedText({piece(line.was, 7.8)}, side.wire - side.was - 1.0);
}
FieldText movedText(const Side& side, const ScheduleLine& line) {
  return stackedText({piece(line.movedTo, line.half.isEmpty() ? 8.0 : 7.2, Weight::bold),
                      piece(line.serves, line.half.isEmpty() ? 7.2 : 7.0)},
                     side.movedWidth());
}

// Height one line's texts need.
double lineHeight(const Side& side, const ScheduleLine& line, PurposePlace place) {
  double height = fieldText(line, side.servesWidth(), place).height;
  if (line.moved) {
    height = std::max(height, movedText(side, line).height);
  } else {
    height = std::max({height, wireText(side, line).height, wasText(side, line).height});
  }
  return std::max(height + kAir, line.half.isEmpty() ? kLeastRow : kLeastHalf);
}

// Height a cell needs: halves share a space evenly, alone as well.
double cellHeight(const Side& side, const ScheduleCell& cell, PurposePlace place) {
  double highest = 0.0;
  for (const ScheduleLine& line : cell.lines) highest = std::max(highest, lineHeight(side, line, place));
  return hasHalves(cell) ? highest * 2.0 : highest;
}

void drawField(SheetFlow& flow, double x, double middle, const FieldText& field) {
  for (SheetText text : field.texts) {
    text.at += QPointF(x, middle - field.height / 2.0);
    flow.place(text);
  }
}

void drawLine(SheetFlow& flow, const Side& side, const ScheduleLine& line, const QRectF& area,
              const std::vector<QRectF>& poles, bool halves, PurposePlace place) {
  const double middle = area.center().y();
  if (line.tick) {
    const double size = halves ? 6.5 : 8.5;
    const QRectF box = side.band(side.done, side.serves, middle - size / 2.0, size);
    flow.mark({SheetMarkKind::tick, QRectF(box.center().x() - size / 2.0, box.top(), size, size)});
  }
  drawField(flow, side.servesLeft(), middle, fieldText(line, side.servesWidth(), place));
  if (line.moved) {
    drawField(flow, (side.x(side.was) + side.x(side.number)) / 2.0, middle, movedText(side, line));
    return;
  }
  const auto centre = [&](double from, double to, const QString& value, double size, Weight how) {
    flow.text((side.x(from) + side.x(to)) / 2.0, middle + size * 0.36, value, size, how, Align::centre,
              std::abs(to - from) - 1.0);
  };
  drawField(flow, (side.x(side.was) + side.x(side.wire)) / 2.0, middle, wasText(side, line));
  drawField(flow, (side.x(side.wire) + side.x(side.va)) / 2.0, middle, wireText(side, line));
  centre(side.rating, side.number, line.rating, halves ? 8.2 : 9.6, Weight::bold);
  // Volt-amperes pole by pole, right-aligned. A quad's two-pole has its second pole in the next row.
  const double right = side.band(side.va, side.rating, area.top(), 1.0).right() - 3.5;
  for (std::size_t pole = 0; pole < line.va.size() && pole < poles.size(); ++pole) {
    flow.text(right, poles[pole].center().y() + 3.0, line.va[pole], halves ? 7.4 : 8.0, Weight::regular,
              Align::right);
  }
}

void drawCell(SheetFlow& flow, const Side& side, const ScheduleCell& cell, const RowPlaces& rows,
              PurposePlace place) {
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
    drawLine(flow, side, line, area, poles, halves, place);
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
            Align::centre, 20.0);
  flow.text((right.x(right.number) + right.x(right.bus)) / 2.0, baseline, rows.rightNumbers[at], 9.4,
            Weight::bold, Align::centre, 20.0);
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

}  // namespace

ScheduleTable::ScheduleTable(const SheetFlow& flow, const ScheduleRows& rows, PurposePlace place,
                             const Language& language)
    : rows_(rows), language_(language), place_(place), least_(static_cast<std::size_t>(rows.rows), 0.0) {
  for (const bool left : {true, false}) {
    const Side side = sideOf(flow, left, rows.hasWas, unitsOf(language));
    for (const ScheduleCell& cell : left ? rows.left : rows.right) {
      const double height = cellHeight(side, cell, place);
      for (int row = cell.position.row; row < cell.position.row + cell.span; ++row) {
        double& least = least_[static_cast<std::size_t>(row - 1)];
        least = std::max(least, cell.span == 1 ? height : kLeastRow);
      }
    }
  }
  // What two rows lack for the texts of a two-pole each gives half of.
  for (const bool left : {true, false}) {
    const Side side = sideOf(flow, left, rows.hasWas, unitsOf(language));
    for (const ScheduleCell& cell : left ? rows.left : rows.right) {
      if (cell.span == 1) continue;
      const auto at = static_cast<std::size_t>(cell.position.row - 1);
      const double lacks = cellHeight(side, cell, place) - least_[at] - least_[at + 1];
      if (lacks <= 0.0) continue;
      least_[at] += lacks / 2.0;
      least_[at + 1] += lacks / 2.0;
    }
  }
}

double ScheduleTable::easyRow(int row) const {
  const double least = least_[static_cast<std::size_t>(row - 1)];
  return least > kLeastRow ? std::max(kEasyRow, least + kEasyAir) : kEasyRow;
}

double ScheduleTable::leastHeight(int first) const {
  return std::accumulate(least_.begin() + (first - 1), least_.end(), kHead);
}

int ScheduleTable::lastWithin(int first, double height) const {
  double used = kHead;
  int last = first - 1;
  for (int row = first; row <= rows_.rows;) {
    int end = row;
    while (end < rows_.rows && rows_.joined(end)) ++end;
    for (int each = row; each <= end; ++each) used += easyRow(each);
    const bool tooFew = rows_.rows - end < kRowsTogether;
    if (last >= first && (used > height || tooFew)) break;
    last = end;
    row = end + 1;
  }
  return last;
}

void ScheduleTable::draw(SheetFlow& flow, int first, int last, double height) const {
  // The rows share what the page has left over, until all have it easy.
  double least = kHead, easy = kHead;
  for (int row = first; row <= last; ++row) {
    least += least_[static_cast<std::size_t>(row - 1)];
    easy += easyRow(row);
  }
  const double ease = easy > least ? std::clamp((height - least) / (easy - least), 0.0, 1.0) : 0.0;

  const Side left = sideOf(flow, true, rows_.hasWas, unitsOf(language_));
  const Side right = sideOf(flow, false, rows_.hasWas, unitsOf(language_));
  const double headTop = flow.y();
  drawHead(flow, left, right, rows_.hasWas, language_);
  RowPlaces places{first, {flow.y()}};
  for (int row = first; row <= last; ++row) {
    const double own = least_[static_cast<std::size_t>(row - 1)];
    places.tops.push_back(places.tops.back() + own + ease * (easyRow(row) - own));
  }
  for (const auto& [side, column] : {std::pair{&left, &rows_.left}, std::pair{&right, &rows_.right}}) {
    for (const ScheduleCell& cell : *column) {
      if (cell.position.row >= first && cell.position.row <= last)
        drawCell(flow, *side, cell, places, place_);
    }
  }
  for (int each = first; each <= last; ++each) drawBus(flow, left, right, rows_, each, places);
  const double bottom = places.tops.back();
  for (const Side& side : {left, right}) {
    flow.rule({side.x(side.number), headTop}, {side.x(side.number), bottom});
    flow.rule({side.x(side.bus), headTop}, {side.x(side.bus), bottom}, 0.9);
    for (const double at : {side.serves, side.was, side.wire, side.va, side.rating}) {
      flow.rule({side.x(at), headTop}, {side.x(at), headTop + kHead});
    }
  }
  flow.box(QRectF(flow.left(), headTop, flow.width(), bottom - headTop), 1.2);
  drawTies(flow, rows_, places, last);
  flow.advance(bottom - flow.y());
}

}  // namespace stayalight
