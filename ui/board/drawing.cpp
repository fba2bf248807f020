#include "ui/board/drawing.h"

#include <algorithm>
#include <cmath>

#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kAmpsNote{"board.amps_note"};
constexpr MessageId kPeakNote{"board.peak_note"};
constexpr MessageId kLegPeak{"board.leg_peak"};
constexpr MessageId kFreeCount{"board.free_count"};
constexpr MessageId kTieNote{"board.tie_note"};

constexpr double kCompactBelow = 20.0;
constexpr double kFootPixels = 11.0;
constexpr double kPlateTitle = 13.0, kLeastPlateTitle = 10.0;

}  // namespace

BoardMeasures::BoardMeasures(const BoardOptions& options, std::int32_t)
    : compact(options.rowHeight < kCompactBelow), width(options.width), rowHeight(options.rowHeight) {
  margin = compact ? 14.0 : 16.0;
  spine = compact ? 34.0 : 38.0;
  body = compact ? 38.0 : 44.0;
  bar = compact ? 24.0 : 28.0;
  namePixels = compact ? 11.0 : 12.0;
  numberPixels = compact ? 10.0 : 11.0;
}

double BoardMeasures::rowTop(std::int32_t row) const {
  return kBoardHead + std::round((row - 1) * rowHeight);
}

QRectF BoardMeasures::rowRect(Column column, std::int32_t row, std::int32_t rows) const {
  const double top = rowTop(row), bottom = rowTop(row + rows) - 1.0;
  const double inner = (width - spine) / 2.0 - 0.5;
  const double left = column == Column::left ? margin : width - inner;
  return QRectF(left, top, inner - margin, bottom - top);
}

BoardDrawing::BoardDrawing(BoardLayout& out, const BoardContents& contents, const BoardMeasures& measures,
                           const BoardState& state, const BoardOptions& options, const Language& language)
    : out_(out), contents_(contents), m_(measures), state_(state), options_(options), language_(language) {}

void BoardDrawing::draw() {
  double widest = 0.0;
  for (const CellContent& content : contents_.cells) {
    for (const QString& number : content.numbers)
      widest = std::max(widest, textWidth(number, Face::condensed, m_.numberPixels));
  }
  nameInset_ = std::max(m_.compact ? 21.0 : 24.5, 5.5 + widest + 6.0);

  drawFrame();
  drawLegs();
  for (const CellContent& content : contents_.cells) {
    out_.cells.push_back(content.cell);
    drawCell(content, static_cast<int>(out_.cells.size()) - 1);
  }
  drawTies();
  drawTarget();
  cell_ = -1;
  for (std::size_t i = 0; i < contents_.cells.size(); ++i) {
    cell_ = static_cast<int>(i);
    rect_ = out_.cells[i].rect;
    drawFrames(contents_.cells[i]);
  }
  cell_ = -1;
  drawFoot();
  out_.marks.insert(out_.marks.end(), above_.begin(), above_.end());
}

QRectF BoardDrawing::across(const QRectF& cell, Column column, double from, double to) const {
  return mirrored(column) ? QRectF(cell.right() - to, cell.top(), to - from, cell.height())
                          : QRectF(cell.left() + from, cell.top(), to - from, cell.height());
}

BoardMark& BoardDrawing::mark(MarkRole role, const QRectF& rect, std::optional<ColorRole> fill,
                              std::optional<ColorRole> stroke, double radius, double width) {
  BoardMark out;
  out.role = role;
  out.rect = rect;
  out.fill = fill;
  out.stroke = stroke;
  out.radius = radius;
  out.width = width;
  out.cell = cell_;
  auto& list = toAbove_ ? above_ : out_.marks;
  list.push_back(out);
  return list.back();
}

BoardMark& BoardDrawing::line(MarkRole role, QPointF from, QPointF to, ColorRole color, double width) {
  BoardMark& out = mark(role, QRectF(from, to).normalized(), std::nullopt, color, 0.0, width);
  out.shape = MarkShape::line;
  out.points = {from, to};
  return out;
}

void BoardDrawing::text(TextRole role, const QString& whole, double x, Qt::Alignment align, double base,
                        double room, double pixels, ColorRole color, Weight weight, bool italic, Face face) {
  if (whole.isEmpty() || room <= 0.0) return;
  BoardText out;
  out.role = role;
  out.whole = whole;
  out.text = elided(whole, room, face, pixels, weight, italic);
  out.face = face;
  out.pixels = pixels;
  out.weight = weight;
  out.italic = italic;
  out.color = color;
  out.cell = cell_;
  const double width = textWidth(out.text, face, pixels, weight, italic);
  const double left = align.testFlag(Qt::AlignRight)     ? x - width
                      : align.testFlag(Qt::AlignHCenter) ? x - width / 2.0
                                                         : x;
  out.baseline = base;
  out.rect = QRectF(left, base - ascent(face, pixels), width, ascent(face, pixels) + descent(face, pixels));
  out_.texts.push_back(out);
}

void BoardDrawing::drawFrame() {
  const double foot = m_.rowTop(out_.rowsShown + 1);
  mark(MarkRole::box, QRectF(0.5, 0.5, m_.width - 1.0, out_.size.height() - 1.0), ColorRole::box,
       ColorRole::boxEdge, 6.0);
  const QRectF plate(m_.margin - 0.5, 7.0, m_.width - 2.0 * m_.margin + 1.0, 24.0);
  mark(MarkRole::plate, plate, ColorRole::plate, std::nullopt, 3.0);
  for (const double x : {plate.left() + 8.0, plate.right() - 8.0}) {
    mark(MarkRole::screw, QRectF(x - 2.4, plate.center().y() - 2.4, 4.8, 4.8), std::nullopt,
         ColorRole::plateFact, 0.0, 0.9)
        .shape = MarkShape::screw;
  }
  const double base = plate.center().y() + 4.5;
  const double facts = textWidth(contents_.facts, Face::condensed, 11.0);
  const double inner = plate.width() - 40.0;
  text(TextRole::plateFacts, contents_.facts, plate.right() - 20.0, Qt::AlignRight, base - 0.5, inner * 0.62,
       11.0, ColorRole::plateFact);
  // On a narrow plate the name is engraved smaller before it is cut.
  const QString title = contents_.title.toUpper();
  const double room = inner - std::min(facts, inner * 0.62) - 12.0;
  const double wanted = textWidth(title, Face::engraved, kPlateTitle);
  const double size = std::clamp(kPlateTitle * room / std::max(1.0, wanted), kLeastPlateTitle, kPlateTitle);
  text(TextRole::plateTitle, title, plate.left() + 20.0, Qt::AlignLeft, base, room, size, ColorRole::plateInk,
       Weight::regular, false, Face::engraved);

  out_.spaceArea =
      QRectF(m_.margin - 0.5, kBoardHead - 0.5, m_.width - 2.0 * m_.margin + 1.0, foot - kBoardHead);
  mark(MarkRole::rows, out_.spaceArea, ColorRole::gap);
  mark(MarkRole::spine,
       QRectF((m_.width - m_.spine) / 2.0, out_.spaceArea.top(), m_.spine, out_.spaceArea.height()),
       ColorRole::spine);
}

void BoardDrawing::drawLegs() {
  // The leg of each space in a row; both sides agree unless one was measured otherwise.
  std::map<std::int32_t, std::array<std::optional<Leg>, 2>> rows;
  for (const CellContent& content : contents_.cells) {
    const BoardCell& cell = content.cell;
    const std::size_t side = cell.address.position.column == Column::left ? 0 : 1;
    for (std::size_t pole = 0; pole < cell.legs.size(); ++pole) {
      rows[cell.address.position.row + static_cast<std::int32_t>(pole)][side] = cell.legs[pole];
    }
  }
  const double centre = m_.width / 2.0;
  const QRectF spine((m_.width - m_.spine) / 2.0, 0.0, m_.spine, 0.0);
  for (const auto& [row, legs] : rows) {
    if (row < 1 || row > out_.rowsShown) continue;
    const double y = (m_.rowTop(row) + m_.rowTop(row + 1) - 1.0) / 2.0;
    const bool differ = legs[0] && legs[1] && legs[0] != legs[1];
    const double length = differ ? 3.5 : m_.compact ? 7.0 : 8.0;
    for (std::size_t side = 0; side < 2; ++side) {
      if (!legs[side]) continue;
      const double from = side == 0 ? spine.left() + 1.5 : spine.right() - 1.5;
      const double to = side == 0 ? from + length : from - length;
      BoardMark& leg = line(MarkRole::leg, QPointF(std::min(from, to), y), QPointF(std::max(from, to), y),
                            legColor(*legs[side]), 2.2);
      leg.shape = MarkShape::legLine;
      leg.leg = *legs[side];
      if (differ) {
        text(TextRole::leg, QString::fromLatin1(legName(*legs[side]).data(), 2),
             centre + (side == 0 ? -6.2 : 6.2), Qt::AlignHCenter, baseline(y, 10.0), 20.0, 10.0,
             legColor(*legs[side]), Weight::bold);
      }
    }
    if (differ) continue;
    const Leg leg = legs[0] ? *legs[0] : *legs[1];
    text(TextRole::leg, QString::fromLatin1(legName(leg).data(), 2), centre, Qt::AlignHCenter,
         baseline(y, 10.0), 20.0, 10.0, legColor(leg), Weight::bold);
  }
}

void BoardDrawing::drawTies() {
  for (const BoardTie& tie : contents_.ties) {
    for (const Column column : {Column::left, Column::right}) {
      std::vector<double> centres;
      for (const SpacePosition space : tie.spaces) {
        if (space.column != column || space.row > out_.rowsShown) continue;
        centres.push_back((m_.rowTop(space.row) + m_.rowTop(space.row + 1) - 1.0) / 2.0);
      }
      if (centres.empty()) continue;
      const bool alone = centres.size() == 1;
      const double top = centres.front() - (alone ? 5.0 : 0.0), foot = centres.back() + (alone ? 5.0 : 0.0);
      // Groups whose rows overlap stand side by side.
      double lane = 0.0;
      for (const BoardMark& other : out_.marks) {
        const bool sameSide = (other.rect.center().x() < m_.width / 2.0) == (column == Column::left);
        if (other.role == MarkRole::tie && other.shape == MarkShape::line && sameSide &&
            other.points.size() == 4 && other.rect.top() < foot && other.rect.bottom() > top) {
          lane += 3.0;
        }
      }
      const double inner = m_.margin - 3.0, outer = std::max(2.0, m_.margin - 9.0 - lane);
      const auto x = [&](double fromEdge) { return column == Column::left ? fromEdge : m_.width - fromEdge; };
      const ColorRole color = tie.split ? ColorRole::danger : ColorRole::ink2;
      BoardMark& bracket = line(MarkRole::tie, QPointF(x(inner), top), QPointF(x(outer), foot), color, 1.5);
      bracket.points = {QPointF(x(inner), top), QPointF(x(outer), top), QPointF(x(outer), foot),
                        QPointF(x(inner), foot)};
      if (tie.split) {
        const double y = (top + foot) / 2.0;
        BoardMark& gap = mark(MarkRole::tie, QRectF(x(outer) - 2.0, y - 8.0, 4.0, 16.0), ColorRole::box);
        gap.shape = MarkShape::rectangle;
        BoardMark& danger = mark(MarkRole::finding, QRectF(x(outer) - 5.5, y - 5.5, 11.0, 11.0),
                                 ColorRole::danger, ColorRole::box);
        danger.shape = MarkShape::severity;
        danger.severity = Severity::danger;
      }
    }
  }
}

void BoardDrawing::drawFoot() {
  const double base = out_.size.height() - kBoardFoot / 2.0 + 3.5;
  const double left = m_.margin - 2.0, right = m_.width - m_.margin + 2.0;
  const QString count =
      words(language_, kFreeCount, std::int64_t{contents_.free}, std::int64_t{contents_.spaces});
  text(TextRole::foot, count, right, Qt::AlignRight, base, 120.0, kFootPixels, ColorRole::ink2);
  double x = left;
  const auto write = [&](const QString& words, Weight weight, ColorRole color) {
    text(TextRole::foot, words, x, Qt::AlignLeft, base, right - x - 130.0, kFootPixels, color, weight);
    x += textWidth(words, Face::condensed, kFootPixels, weight);
  };
  if (contents_.legPeak[0] && contents_.legPeak[1]) {
    write(words(language_, kPeakNote), Weight::regular, ColorRole::ink2);
    for (const Leg leg : {Leg::l1, Leg::l2}) {
      x += 14.0;
      BoardMark& sample =
          line(MarkRole::leg, QPointF(x, base - 4.0), QPointF(x + 16.0, base - 4.0), legColor(leg), 2.2);
      sample.shape = MarkShape::legLine;
      sample.leg = leg;
      x += 21.0;
      write(words(language_, kLegPeak, std::string(legName(leg)),
                  amperes(*contents_.legPeak[index(leg)], language_).toStdString()),
            Weight::medium, ColorRole::ink);
    }
  } else {
    write(words(language_, kAmpsNote), Weight::regular, ColorRole::ink2);
    if (!contents_.ties.empty()) {
      x += 22.0;
      BoardMark& sign =
          line(MarkRole::tie, QPointF(x, base - 9.0), QPointF(x + 6.0, base), ColorRole::ink2, 1.5);
      sign.points = {QPointF(x + 5.0, base - 9.0), QPointF(x, base - 9.0), QPointF(x, base + 1.0),
                     QPointF(x + 5.0, base + 1.0)};
      x += 10.0;
      write(words(language_, kTieNote), Weight::regular, ColorRole::ink2);
    }
  }
}

}  // namespace stayalight
