#include <algorithm>
#include <cmath>

#include "ui/board/drawing.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kLandsHere{"board.lands_here"};

constexpr double kBodyInset = 2.0;  // between body and cell, on three sides
constexpr double kTickShare =
    0.8;  // where the bar has its tick: the share of a rating that a load of long duration may take
constexpr double kFindingSide = 10.0;
constexpr double kAmpsPixels = 10.0;
constexpr double kSecondPixels = 10.0;
constexpr double kRatingPixels = 11.0;

}  // namespace

void BoardDrawing::drawCell(const CellContent& content, int index) {
  cell_ = index;
  const BoardCell& cell = content.cell;
  column_ = cell.address.position.column;
  const bool half = cell.address.half != Half::whole;
  rect_ = m_.rowRect(column_, cell.address.position.row, cell.poles);
  const QRectF whole = rect_;
  QRectF body =
      across(rect_, column_, rect_.width() - kBodyInset - 0.5 - m_.body, rect_.width() - kBodyInset - 0.5)
          .adjusted(0.0, kBodyInset, 0.0, -kBodyInset);
  if (half) {
    const double upper = rect_.top(), rows = cell.poles * 2.0;
    const auto [from, to] = std::pair(content.bodyHalves.front().first, content.bodyHalves.back().second);
    const double step = (rect_.height() + 1.0) / rows;
    body.setTop(upper + from * step + (from % 2 == 0 ? kBodyInset : 0.5));
    body.setBottom(upper + to * step - (to % 2 == 0 ? kBodyInset + 1.0 : 0.5));
  }
  out_.cells[static_cast<std::size_t>(index)].body = body;

  const bool lit = cell.lit && !cell.quiet && !state_.carried.contains(cell.breaker);
  const bool home = cell.breaker.valid() && state_.carried.contains(cell.breaker);
  const ColorRole ground = lit                                        ? ColorRole::lit
                           : cell.quiet                               ? ColorRole::freeSpace
                           : home || cell.kind == CellKind::movedAway ? ColorRole::movedAway
                           : cell.kind == CellKind::free || cell.kind == CellKind::freeHalf
                               ? ColorRole::freeSpace
                               : ColorRole::cell;
  if (half) {
    // The two halves share a row: each has its part of the name's field, the first one outside.
    const double inner = rect_.width() - m_.body - 2.0 * kBodyInset - 2.0;
    const double middle = nameInset_ + (inner - nameInset_) / 2.0;
    const bool first = (cell.column == 0 || cell.column == 3);
    // The first in the row lays the ground of the bodies as well; the other one must not paint over them.
    rect_ = across(whole, column_, first ? 0.0 : middle, first ? middle : inner + 1.0);
    if (&content == firstInRow(content)) {
      mark(MarkRole::ground, across(whole, column_, inner, whole.width()), ground);
    }
    out_.cells[static_cast<std::size_t>(index)].rect =
        across(whole, column_, first ? 0.0 : middle, first ? middle : inner);
  } else {
    out_.cells[static_cast<std::size_t>(index)].rect = rect_;
  }
  mark(MarkRole::ground, rect_, ground);
  if (lit)
    mark(MarkRole::litEdge, QRectF(rect_.left(), rect_.bottom() - 1.0, rect_.width(), 1.0),
         ColorRole::litEdge);
  const bool hatched = cell.kind == CellKind::movedAway && !home && !cell.quiet;
  if (hatched) {
    BoardMark& hatch = mark(MarkRole::hatch, rect_, std::nullopt, ColorRole::hatch, 0.0, 0.7);
    hatch.shape = MarkShape::hatch;
  }
  line(MarkRole::cellRule, QPointF(whole.left(), whole.bottom() + 0.5),
       QPointF(whole.right(), whole.bottom() + 0.5), ColorRole::cellRule, 1.0);
  const QRectF shown = rect_;
  rect_ = whole;
  const std::size_t firstText = out_.texts.size();
  drawNumbers(content);

  const auto note = state_.landings.find(cell.address);
  const bool targeted = state_.target && *state_.target == cell.address;
  if (home) {
    half ? drawHalf(content) : drawHome(content);
  } else if (note != state_.landings.end() && (cell.kind == CellKind::free || targeted)) {
    drawLanding(content, note->second);
  } else if (half) {
    drawHalf(content);
  } else if (cell.quiet) {
    drawQuiet(content);
  } else if (cell.kind == CellKind::movedAway) {
    drawMovedAway(content);
  } else if (cell.kind == CellKind::free) {
    drawFree(content);
  } else {
    drawBreaker(content);
  }
  rect_ = shown;
  if (hatched) clearHatch(ground, whole, firstText);
}

// No line runs through what is to be read: the hatch stays between the name and what stands beside it.
void BoardDrawing::clearHatch(ColorRole ground, const QRectF& whole, std::size_t firstText) {
  constexpr double kBeside = 4.0;
  for (std::size_t i = firstText; i < out_.texts.size(); ++i) {
    const BoardText& text = out_.texts[i];
    QRectF part;
    if (text.role == TextRole::spaceNumber) part = across(whole, column_, 0.0, nameInset_ - kBeside);
    if (text.role == TextRole::name)
      part =
          QRectF(text.rect.left() - kBeside, whole.top(), text.rect.width() + 2.0 * kBeside, whole.height());
    part &= rect_;
    if (!part.isEmpty()) mark(MarkRole::hatchGap, part, ground);
  }
}

const CellContent* BoardDrawing::firstInRow(const CellContent& content) const {
  for (const CellContent& other : contents_.cells) {
    if (other.cell.address.position == content.cell.address.position) return &other;
  }
  return &content;
}

void BoardDrawing::drawNumbers(const CellContent& content) {
  // Halves share the number of their space: the first of them writes it.
  const BoardCell& cell = content.cell;
  if (cell.address.half != Half::whole && (cell.column == 1 || cell.column == 2)) return;
  const bool upright = mirrored(column_);
  for (std::size_t i = 0; i < content.numbers.size(); ++i) {
    const std::int32_t row = cell.address.position.row + static_cast<std::int32_t>(i);
    const double centre = (m_.rowTop(row) + m_.rowTop(row + 1) - 1.0) / 2.0;
    text(TextRole::spaceNumber, content.numbers[i], upright ? rect_.right() - 5.5 : rect_.left() + 5.5,
         upright ? Qt::AlignRight : Qt::AlignLeft, baseline(centre, m_.numberPixels), nameInset_ - 7.0,
         m_.numberPixels, ColorRole::ink2);
  }
}

void BoardDrawing::drawName(const CellContent& content, double from, double to, bool italic) {
  const BoardCell& cell = content.cell;
  const QRectF field = across(rect_, column_, from, to);
  const double centre = rect_.center().y();
  const bool lit = cell.lit && !italic && !cell.quiet;
  const bool gone = cell.kind == CellKind::movedAway || italic || content.blank || cell.quiet;
  const ColorRole color = gone                           ? ColorRole::ink3
                          : cell.kind == CellKind::spare ? ColorRole::ink2
                                                         : ColorRole::ink;
  const Weight weight = lit && !italic ? Weight::medium : Weight::regular;
  const bool second = !content.secondLine.isEmpty() && cell.poles == 2 && !m_.compact && !italic;
  double room = field.width();
  double left = field.left();
  const bool marked = cell.severity && *cell.severity <= Severity::mustFix && !italic;
  if (marked) {
    room -= kFindingSide + 4.0;
    const double width = std::min(room, textWidth(cell.name, Face::condensed, m_.namePixels, weight));
    const double y = centre + (second ? -6.5 : 0.0);
    BoardMark& finding = mark(MarkRole::finding,
                              QRectF(left + width + 4.0, y - kFindingSide / 2.0, kFindingSide, kFindingSide),
                              severityColor(*cell.severity),
                              cell.quiet ? ColorRole::freeSpace
                              : cell.lit ? ColorRole::lit
                                         : ColorRole::cell);
    finding.shape = MarkShape::severity;
    finding.severity = *cell.severity;
  }
  const double base = second ? centre - 2.5 : baseline(centre, m_.namePixels);
  text(TextRole::name, cell.name, left, Qt::AlignLeft, base, room, m_.namePixels, color, weight, italic);
  if (second)
    text(TextRole::secondLine, content.secondLine, left, Qt::AlignLeft, centre + 10.0, field.width(),
         kSecondPixels, ColorRole::ink3);
}

void BoardDrawing::drawAmps(const CellContent& content) {
  const double end = rect_.width() - kBodyInset - 0.5 - m_.body - 5.0;
  const QRectF field = across(rect_, column_, end - m_.bar, end);
  const double centre = rect_.center().y();
  if (!content.share) {
    text(TextRole::amps, content.amps, field.right(), Qt::AlignRight, baseline(centre, kAmpsPixels),
         field.width(), kAmpsPixels, ColorRole::ink2);
    return;
  }
  text(TextRole::amps, content.amps, field.right(), Qt::AlignRight, centre + 0.4, field.width() + 6.0,
       kAmpsPixels, ColorRole::ink2);
  const double width = textWidth(content.amps, Face::condensed, kAmpsPixels);
  if (content.grade != Grade::measured && content.grade != Grade::unknown) {
    BoardMark& rule = mark(MarkRole::gradeRule, QRectF(field.right() - width, centre + 2.2, width, 0.0),
                           std::nullopt, ColorRole::ink2);
    rule.shape = MarkShape::gradeRule;
    rule.grade = content.grade;
  }
  const double top = centre + 4.6;
  mark(MarkRole::barTrack, QRectF(field.left(), top, field.width(), 3.0), ColorRole::track);
  mark(MarkRole::bar, QRectF(field.left(), top, field.width() * *content.share, 3.0), ColorRole::ink2);
  const double tick = field.left() + field.width() * kTickShare;
  line(MarkRole::barTick, QPointF(tick, top - 0.4), QPointF(tick, top + 3.4), ColorRole::ink3, 1.0);
}

void BoardDrawing::drawBody(const CellContent& content, const QRectF& body, bool open, bool rating) {
  const bool flat = body.height() < 10.0;
  const double radius = flat ? 1.5 : 2.5;
  if (open) {
    mark(MarkRole::body, body.adjusted(0.75, 0.75, -0.75, -0.75), ColorRole::sheet, ColorRole::ink, radius,
         1.5);
  } else {
    mark(MarkRole::body, body.adjusted(0.5, 0.5, -0.5, -0.5), ColorRole::body, ColorRole::bodyEdge, radius,
         1.0);
  }
  // On: the knob points to the bus.
  const double knobWidth = m_.compact ? 13.0 : 15.0;
  const double inset = flat ? 1.5 : body.height() < 14.0 ? 2.0 : 3.0;
  const QRectF knob = across(body, column_, body.width() - 3.0 - knobWidth, body.width() - 3.0)
                          .adjusted(0.0, inset, 0.0, -inset);
  mark(MarkRole::knob, knob, ColorRole::knob, open ? std::optional(ColorRole::ink) : std::nullopt, 1.5, 1.0);
  if (knob.height() > 7.0 && !open) {
    BoardMark& ridge = line(MarkRole::knobLine, QPointF(knob.center().x(), knob.top() + 2.5),
                            QPointF(knob.center().x(), knob.bottom() - 2.5), ColorRole::body, 1.0);
    ridge.opacity = 0.45;
  }
  if (rating) {
    const QRectF field = across(body, column_, 0.0, body.width() - 3.0 - knobWidth);
    text(TextRole::rating, QString::number(content.rating), field.center().x(), Qt::AlignHCenter,
         baseline(body.center().y(), kRatingPixels), field.width(), kRatingPixels,
         open ? ColorRole::ink : ColorRole::bodyInk, Weight::medium);
  }
}

void BoardDrawing::drawBreaker(const CellContent& content) {
  double end = rect_.width() - kBodyInset - 0.5 - m_.body - 6.0;
  // Names are cut last: where one does not fit beside the amps but does without, the amps give way (the
  // tooltip holds them).
  const BoardCell& cell = content.cell;
  const bool marked = cell.severity && *cell.severity <= Severity::mustFix;
  const double name =
      textWidth(cell.name, Face::condensed, m_.namePixels, cell.lit ? Weight::medium : Weight::regular) +
      (marked ? kFindingSide + 4.0 : 0.0);
  const double wide = std::max(m_.bar, textWidth(content.amps, Face::condensed, kAmpsPixels)) + 5.0;
  const double room = end - nameInset_;
  if (!content.amps.isEmpty() && (name <= room - wide || name > room)) {
    drawAmps(content);
    end -= wide;
  }
  drawName(content, nameInset_, end, false);
  drawBody(content, out_.cells[static_cast<std::size_t>(cell_)].body, content.openBody, true);
}

void BoardDrawing::drawHalf(const CellContent& content) {
  const BoardCell& cell = out_.cells[static_cast<std::size_t>(cell_)];
  const bool free = cell.kind == CellKind::freeHalf;
  const bool home = cell.breaker.valid() && state_.carried.contains(cell.breaker);
  const double step = (rect_.height() + 1.0) / (cell.poles * 2.0);
  const double bodyFrom = rect_.width() - kBodyInset - 0.5 - m_.body, bodyTo = bodyFrom + m_.body;
  const bool roomy = step >= 10.0;
  for (const auto& [from, to] : content.bodyHalves) {
    QRectF body = across(rect_, column_, bodyFrom, bodyTo);
    body.setTop(rect_.top() + from * step + (from % 2 == 0 ? kBodyInset : 0.5));
    body.setBottom(rect_.top() + to * step - (to % 2 == 0 ? kBodyInset + 0.5 : 0.5));
    if (free || home || cell.quiet) {
      if (free && cell.quiet) continue;
      BoardMark& open =
          mark(MarkRole::freeBody, body.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::edge, 1.5);
      if (home) open.dashes = {2.0, 2.0};
      continue;
    }
    drawBody(content, body, content.openBody, false);
    if (roomy && from == content.bodyHalves.front().first) {
      const double knob = m_.compact ? 16.0 : 18.0;
      const QRectF field = across(body, column_, 0.0, body.width() - knob);
      // The digits fill the half body; their extent is that of the digits, which have no descent.
      const double height = 0.711 * 10.0;
      const qsizetype before = static_cast<qsizetype>(out_.texts.size());
      text(TextRole::rating, QString::number(content.rating), field.center().x(), Qt::AlignHCenter,
           body.center().y() + height / 2.0, field.width(), 10.0, ColorRole::bodyInk, Weight::medium);
      if (static_cast<qsizetype>(out_.texts.size()) > before) {
        QRectF& rect = out_.texts.back().rect;
        rect.setTop(body.center().y() - height / 2.0);
        rect.setBottom(body.center().y() + height / 2.0);
      }
    }
  }
  if (free) return;
  const bool first = cell.column == 0 || cell.column == 3;
  const double inner = rect_.width() - m_.body - 2.0 * kBodyInset - 4.0;
  const double middle = nameInset_ + (inner - nameInset_) / 2.0;
  const QRectF field =
      across(rect_, column_, first ? nameInset_ : middle + 2.0, first ? middle - 3.0 : inner);
  double x = field.left();
  const double centre = rect_.center().y();
  QString letter = first ? QStringLiteral("A") : QStringLiteral("B");
  if (!roomy) letter += QString::number(content.rating);
  text(TextRole::halfLetter, letter, x, Qt::AlignLeft, baseline(centre, m_.numberPixels), field.width(),
       m_.numberPixels, ColorRole::ink2, Weight::bold);
  x += textWidth(letter, Face::condensed, m_.numberPixels, Weight::bold) + 4.0;
  const bool gone = cell.kind == CellKind::movedAway || home || cell.quiet;
  const QString name =
      content.pill.isEmpty() ? cell.name : QString(content.pill + QStringLiteral(" · ") + cell.name);
  text(TextRole::name, name, x, Qt::AlignLeft, baseline(centre, m_.namePixels), field.right() - x,
       m_.namePixels, gone ? ColorRole::ink3 : ColorRole::ink,
       cell.lit && !home && !cell.quiet ? Weight::medium : Weight::regular, home);
}

void BoardDrawing::drawHome(const CellContent& content) {
  const QRectF body = out_.cells[static_cast<std::size_t>(cell_)].body;
  mark(MarkRole::homeFrame, rect_.adjusted(1.5, 1.5, -1.5, -1.5), std::nullopt, ColorRole::ink3, 2.0)
      .dashes = {3.0, 3.0};
  drawName(content, nameInset_, rect_.width() - m_.body - 12.0, true);
  mark(MarkRole::freeBody, body.adjusted(1.0, 1.0, -1.0, -1.0), std::nullopt, ColorRole::ink3, 2.0).dashes = {
      2.0, 2.0};
  text(TextRole::rating, QString::number(content.rating), body.center().x(), Qt::AlignHCenter,
       baseline(body.center().y(), 10.0), body.width(), 10.0, ColorRole::ink3);
}

void BoardDrawing::drawMovedAway(const CellContent& content) {
  const QRectF body = out_.cells[static_cast<std::size_t>(cell_)].body;
  drawName(content, nameInset_, rect_.width() - m_.body - 9.0, false);
  const double height = std::min(16.0, m_.compact ? 13.0 : 16.0);
  const QRectF pill(body.left() + 0.5, rect_.center().y() - height / 2.0, body.width() - 1.0, height);
  mark(MarkRole::pill, pill, ColorRole::movedAway, ColorRole::lamp, height / 2.0);
  const double pixels = m_.compact ? 10.0 : 11.0;
  text(TextRole::pill, content.pill, pill.center().x(), Qt::AlignHCenter, baseline(pill.center().y(), pixels),
       pill.width() - 4.0, pixels, ColorRole::lampInk, Weight::medium);
}

// Beside what is searched for: the words in grey, the body an outline with a thin stroke instead of a knob.
void BoardDrawing::drawQuiet(const CellContent& content) {
  const BoardCell& cell = out_.cells[static_cast<std::size_t>(cell_)];
  drawName(content, nameInset_, rect_.width() - m_.body - 9.0, false);
  if (cell.kind == CellKind::free) return;
  const QRectF body = cell.body;
  mark(MarkRole::freeBody, body.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::edge, 2.5);
  const double knob = m_.compact ? 13.0 : 15.0;
  const QRectF field = across(body, column_, 0.0, body.width() - 3.0 - knob);
  const QString said = content.pill.isEmpty() ? QString::number(content.rating) : content.pill;
  text(TextRole::rating, said, field.center().x(), Qt::AlignHCenter,
       baseline(body.center().y(), kRatingPixels), field.width(), kRatingPixels, ColorRole::ink3);
  const QRectF end = across(body, column_, body.width() - 1.0 - knob, body.width() - 5.0);
  line(MarkRole::stroke, QPointF(end.left(), end.center().y()), QPointF(end.right(), end.center().y()),
       ColorRole::ink3, 1.0);
}

void BoardDrawing::drawFree(const CellContent& content) {
  const QRectF body = out_.cells[static_cast<std::size_t>(cell_)].body;
  if (content.blank) {
    // A filler plate: closed by a stroke, and the word.
    drawName(content, nameInset_, rect_.width() - m_.body - 9.0, true);
    line(MarkRole::stroke, QPointF(body.left() + 8.0, body.center().y()),
         QPointF(body.right() - 8.0, body.center().y()), ColorRole::edge, 1.0);
  }
  if (!options_.onPaper)
    mark(MarkRole::freeBody, body.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::edge, 2.5);
}

void BoardDrawing::drawLanding(const CellContent& content, const LandingNote& note) {
  const QRectF body = out_.cells[static_cast<std::size_t>(cell_)].body;
  const QRectF field = across(rect_, column_, nameInset_, rect_.width() - m_.body - 9.0);
  const bool targeted = state_.target && *state_.target == content.cell.address;
  if (note.legal && targeted) return;  // drawTarget shows it, over all the rows it takes
  const bool right = mirrored(column_);
  const double pixels = m_.compact ? 10.0 : 11.0;
  text(TextRole::landing, note.text, right ? field.right() : field.left(),
       right ? Qt::AlignRight : Qt::AlignLeft, baseline(rect_.center().y(), pixels), field.width(), pixels,
       note.legal ? ColorRole::ink2 : ColorRole::ink3, Weight::regular, !note.legal);
  if (note.legal) {
    mark(MarkRole::landing, body.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::lamp, 2.5, 1.3);
    const QPointF c = body.center();
    line(MarkRole::plus, c - QPointF(4.0, 0.0), c + QPointF(4.0, 0.0), ColorRole::lamp, 1.5);
    line(MarkRole::plus, c - QPointF(0.0, 4.0), c + QPointF(0.0, 4.0), ColorRole::lamp, 1.5);
  } else {
    BoardMark& hatch = mark(MarkRole::landing, body.adjusted(1.0, 1.0, -1.0, -1.0), std::nullopt,
                            ColorRole::hatch, 0.0, 0.7);
    hatch.shape = MarkShape::hatch;
    mark(MarkRole::landing, body.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::edge, 2.5);
    const double rise = std::min(6.0, body.height() / 2.0 - 3.0);
    line(MarkRole::stroke, QPointF(body.left() + 6.0, body.center().y() + rise),
         QPointF(body.right() - 6.0, body.center().y() - rise), ColorRole::ink3, 1.5);
  }
}

void BoardDrawing::drawTarget() {
  if (!state_.target || state_.target->panel != out_.panel) return;
  const auto note = state_.landings.find(*state_.target);
  if (note == state_.landings.end() || !note->second.legal) return;
  const SpacePosition at = state_.target->position;
  const std::int32_t rows = std::min(state_.carriedPoles, out_.rowsShown - at.row + 1);
  column_ = at.column;
  rect_ = m_.rowRect(column_, at.row, std::max(1, rows));
  // What stands in the rows that it covers gives way.
  std::erase_if(out_.texts, [&](const BoardText& t) {
    return rect_.intersects(t.rect) && t.role != TextRole::spaceNumber && t.role != TextRole::leg;
  });
  std::erase_if(out_.marks, [&](const BoardMark& m) {
    return rect_.contains(m.rect.center()) &&
           (m.role == MarkRole::landing || m.role == MarkRole::plus || m.role == MarkRole::freeBody);
  });
  cell_ = out_.cellOf(*state_.target);
  mark(MarkRole::target, rect_.adjusted(0.5, 0.5, -0.5, -0.5), ColorRole::lit, ColorRole::ink, 2.0, 2.0);
  std::string legs;
  const CellContent* first = nullptr;
  for (const CellContent& content : contents_.cells) {
    if (content.cell.address == *state_.target) first = &content;
  }
  if (first != nullptr && !first->cell.legs.empty()) {
    legs = rows > 1 ? std::string("L1 L2") : std::string(legName(first->cell.legs.front()));
  }
  const QRectF body =
      across(rect_, column_, rect_.width() - kBodyInset - 0.5 - m_.body, rect_.width() - kBodyInset - 0.5)
          .adjusted(0.0, kBodyInset, 0.0, -kBodyInset);
  const QRectF field = across(rect_, column_, nameInset_, rect_.width() - m_.body - 9.0);
  const bool right = mirrored(column_);
  text(TextRole::landing, words(language_, kLandsHere, legs), right ? field.right() : field.left(),
       right ? Qt::AlignRight : Qt::AlignLeft, baseline(rect_.center().y(), m_.namePixels), field.width(),
       m_.namePixels, ColorRole::ink, Weight::bold);
  mark(MarkRole::freeBody, body.adjusted(1.0, 1.0, -1.0, -1.0), std::nullopt, ColorRole::ink, 2.0, 1.3)
      .dashes = {2.0, 1.5};
  text(TextRole::rating, QString::number(state_.carriedRating.count()), body.center().x(), Qt::AlignHCenter,
       baseline(body.center().y(), kRatingPixels), body.width(), kRatingPixels, ColorRole::ink, Weight::bold);
}

void BoardDrawing::drawFrames(const CellContent& content) {
  const BoardCell& cell = content.cell;
  toAbove_ = true;
  const bool carried = cell.breaker.valid() && state_.carried.contains(cell.breaker);
  const bool selected = cell.breaker.valid() && state_.selected.contains(cell.breaker) && !carried;
  const bool focused = state_.focused && *state_.focused == cell.address;
  const bool targeted = state_.target && *state_.target == cell.address;
  if (state_.hovered && *state_.hovered == cell.address && !selected && !focused && !targeted) {
    mark(MarkRole::hover, rect_.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::ink, 2.0, 1.0);
  }
  if (selected || focused) {
    mark(MarkRole::selection, rect_.adjusted(0.5, 0.5, -0.5, -0.5), std::nullopt, ColorRole::ink, 2.0,
         selected ? 2.0 : 1.0);
  }
  if (focused)
    mark(MarkRole::focusRing, rect_.adjusted(-2.0, -2.0, 2.0, 2.0), std::nullopt, ColorRole::lamp, 4.0, 2.0);
  toAbove_ = false;
}

}  // namespace stayalight
