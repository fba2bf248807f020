#include "ui/board/layout.h"

#include <algorithm>
#include <cmath>

#include "core/code/numbers.h"
#include "ui/board/drawing.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kRaceway{"board.raceway"};
constexpr MessageId kNipple{"board.nipple"};
constexpr MessageId kCable{"board.cable"};
constexpr MessageId kTableName{"board.table_name"};
// What is pressed is at least so high (WCAG 2.2, 2.5.8), and a press beside it by the hand's tremor still
// means it.
constexpr double kLeastHeight = 24.0, kLeastReach = 4.0;

}  // namespace

int BoardLayout::cellAt(QPointF point) const {
  int found = -1;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const BoardCell& cell = cells[i];
    if (cell.address.half == Half::whole) {
      if (cell.rect.contains(point)) found = static_cast<int>(i);
    } else if (cell.rect.contains(point) || cell.body.contains(point)) {
      found = static_cast<int>(i);
      // An inner breaker's body lies within the outline of the outer one's.
      if (cell.address.half != Half::outer || cell.rect.contains(point)) return found;
    }
  }
  return found;
}

int BoardLayout::cellPressed(QPointF point) const {
  if (const int under = cellAt(point); under >= 0) return under;
  int nearest = -1;
  double least = 0.0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const QRectF& rect = cells[i].rect;
    const double reach = std::max(kLeastReach, (kLeastHeight - rect.height()) / 2.0);
    const double aside = std::max({rect.left() - point.x(), point.x() - rect.right(), 0.0});
    const double off = std::max({rect.top() - point.y(), point.y() - rect.bottom(), 0.0});
    const double distance = std::max(aside, off);
    if (distance > reach || (nearest >= 0 && distance >= least)) continue;
    nearest = static_cast<int>(i);
    least = distance;
  }
  return nearest;
}

int BoardLayout::cellOf(const CellAddress& address) const {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (cells[i].address == address) return static_cast<int>(i);
  }
  return -1;
}

int BoardLayout::cellOf(BreakerId breaker) const {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (breaker.valid() && cells[i].breaker == breaker) return static_cast<int>(i);
  }
  return -1;
}

std::optional<SpacePosition> BoardLayout::spaceAt(QPointF point) const {
  const int index = cellAt(point);
  if (index < 0) return std::nullopt;
  const BoardCell& cell = cells[static_cast<std::size_t>(index)];
  const double share = (point.y() - cell.rect.top()) / std::max(1.0, cell.rect.height());
  const auto down = static_cast<std::int32_t>(std::floor(share * cell.poles));
  return SpacePosition{cell.address.position.column,
                       cell.address.position.row + std::clamp(down, 0, cell.poles - 1)};
}

double boardHeight(const Panel& panel, double rowHeight) {
  return kBoardHead + std::round(rowCount(panel) * rowHeight) + kBoardFoot;
}

double fittedRowHeight(const Plan& plan, std::span<const PanelId> panels, double height) {
  double fitted = kRowHeight;
  for (const PanelId id : panels) {
    const Panel* panel = find(plan, id);
    if (panel == nullptr) continue;
    const double rows = std::max(1, rowCount(*panel));
    fitted = std::min(fitted, (height - kBoardHead - kBoardFoot) / rows);
  }
  return std::clamp(fitted, kSmallestRow, kRowHeight);
}

BoardLayout layout(const Plan& plan, const Assessment& assessment, PanelId panel, const Language& language,
                   const BoardOptions& options, const BoardState& state) {
  BoardLayout out;
  out.panel = panel;
  const Panel* shown = find(plan, panel);
  if (shown == nullptr) return out;
  const BoardMeasures measures(options, rowCount(*shown));
  const BoardContents read = contents(plan, assessment, *shown, language, options, state);
  out.rowsShown = rowCount(*shown);
  out.rowHeight = measures.rowHeight;
  out.size = QSizeF(options.width, measures.rowTop(out.rowsShown + 1) + kBoardFoot);
  out.name = words(language, kTableName, shown->name, read.facts.toStdString(), std::int64_t{read.free},
                   std::int64_t{read.spaces});
  out.rows = out.rowsShown;
  out.columns = read.halves ? 4 : 2;
  BoardDrawing drawing(out, read, measures, state, options, language);
  drawing.draw();
  return out;
}

BoardLayout racewayLayout(const Plan& plan, const Language& language, QRectF gap) {
  BoardLayout out;
  out.size = gap.size();
  // The run that leaves the main panel: it crosses the gap.
  const FeederRun* run = nullptr;
  for (const Segment segment :
       {Segment::switchToBackup, Segment::inverterToBackup, Segment::mainToSwitch, Segment::mainToInverter}) {
    if (run == nullptr) run = runOf(plan, segment);
  }
  if (run == nullptr) return out;
  const double y = gap.top() + 71.0;
  const auto add = [&](const QRectF& rect, ColorRole fill, double radius) {
    BoardMark mark;
    mark.role = MarkRole::raceway;
    mark.rect = rect;
    mark.fill = fill;
    mark.stroke = ColorRole::boxEdge;
    mark.radius = radius;
    out.marks.push_back(mark);
  };
  add(QRectF(gap.left() + 0.5, y - 7.0, gap.width() - 1.0, 14.0), ColorRole::box, 0.0);
  add(QRectF(gap.left() - 0.5, y - 10.0, 6.0, 20.0), ColorRole::box, 1.5);
  add(QRectF(gap.right() - 5.5, y - 10.0, 6.0, 20.0), ColorRole::box, 1.5);

  const bool cable = run->raceway.is(RacewayKind::none) || !run->wiring.is(FeederWiring::singles);
  const double inches = run->length.inInches();
  const bool entered = run->length.inMicrometres() > 0;
  const bool nipple = entered && inches <= codeNumber(CodeNumber::nippleLength);
  std::vector<std::pair<QString, Weight>> lines;
  lines.emplace_back(words(language, cable ? kCable : nipple ? kNipple : kRaceway), Weight::medium);
  if (entered) {
    lines.emplace_back(
        figureText(nipple ? Figure{inches, "in", 0} : Figure{run->length.inFeet(), "ft", 0}, language),
        Weight::regular);
  }
  double baseline = y + 24.0;
  for (const auto& [line, weight] : lines) {
    BoardText text;
    text.role = TextRole::raceway;
    text.whole = line;
    text.pixels = 11.0;
    text.weight = weight;
    text.color = weight == Weight::medium ? ColorRole::ink : ColorRole::ink2;
    // A word cut short says nothing here.
    if (textWidth(line, text.face, text.pixels, weight) > gap.width()) continue;
    text.text = line;
    const double width = textWidth(text.text, text.face, text.pixels, weight);
    text.baseline = baseline;
    text.rect = QRectF(gap.center().x() - width / 2.0, baseline - ascent(text.face, text.pixels), width,
                       ascent(text.face, text.pixels) + descent(text.face, text.pixels));
    out.texts.push_back(text);
    baseline += 14.0;
  }
  return out;
}

}  // namespace stayalight
