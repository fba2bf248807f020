#pragma once

// A board as a value: the cells, texts and marks of one panel with their rectangles and roles. Painting, hit
// test, accessible children, tooltips, overlap tests, SVG and paper all read this one list. Lengths are in
// layout units, one pixel at the usual scale; a painter scales them.

#include <QtCore/QPointF>
#include <QtCore/QRectF>
#include <QtCore/QSizeF>
#include <QtCore/QString>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <variant>
#include <vector>

#include "core/assess/assess.h"
#include "core/panel/spaces.h"
#include "ui/style/fonts.h"
#include "ui/style/palette.h"

namespace stayalight {

inline constexpr double kRowHeight = 23.0;    ///< at rest
inline constexpr double kSmallestRow = 16.8;  ///< below it the board scrolls
inline constexpr double kBoardHead = 36.0;    ///< from the box's top edge to the first row
inline constexpr double kBoardFoot = 27.0;    ///< from the last row to the box's lower edge

/// What a drag or a choice by key says about one landing space.
struct LandingNote {
  bool legal = true;
  QString text;  ///< "L2 peak 12.0 A", or the reason why not; empty while it is being worked out
};

/// A space of a panel, or a half of it.
struct CellAddress {
  PanelId panel;
  SpacePosition position;
  Half half = Half::whole;
  friend constexpr auto operator<=>(const CellAddress&, const CellAddress&) = default;
};

/// What is searched for: cells beside it are drawn quiet.
struct BoardFilter {
  std::set<BreakerId> breakers;
  std::set<CellAddress> spaces;  ///< free ones
  friend bool operator==(const BoardFilter&, const BoardFilter&) = default;
};

/// What the person does with the board at the moment; never part of the plan.
struct BoardState {
  std::optional<CellAddress> hovered;
  std::optional<CellAddress> focused;  ///< only while the board has the keyboard
  std::set<BreakerId> selected;
  std::set<BreakerId> carried;        ///< dragged, or about to be put somewhere by key
  std::optional<CellAddress> target;  ///< first space where it would land
  std::int32_t carriedPoles = 1;
  RatingAmperes carriedRating;
  std::map<CellAddress, LandingNote> landings;
  std::optional<BoardFilter> filter;  ///< none: nothing is searched for
};

struct BoardOptions {
  double width = 487.0;
  double rowHeight = kRowHeight;
  Reading reading = Reading::planned;
  bool onPaper = false;  ///< no hover, no free-space outlines
};

/// What a cell is.
enum class CellKind : std::uint8_t {
  breaker,    ///< feeds something
  spare,      ///< a breaker that feeds nothing
  movedAway,  ///< an old breaker whose circuit is fed elsewhere now
  free,
  freeHalf  ///< the empty half beside a tandem half
};

struct BoardCell {
  CellKind kind = CellKind::free;
  CellAddress address;
  std::int32_t poles = 1;
  BreakerId breaker;
  CircuitId circuit;  ///< on the breaker as planned; of a moved-away one: the circuit that left
  QRectF rect;
  QRectF body;
  QString name;    ///< whole, as shown when there is room
  QString spaces;  ///< "3", "1, 3", "37A"
  QString accessibleName;
  QString tooltip;
  std::vector<Leg> legs;
  std::optional<Severity> severity;  ///< of its worst finding
  bool lit = false;
  bool quiet = false;  ///< beside what is searched for
  // place in the accessible table
  int row = 0, column = 0, rowSpan = 1, columnSpan = 1;
};

/// What a text is, for tests and for the order in which texts give way.
enum class TextRole : std::uint8_t {
  plateTitle,
  plateFacts,
  spaceNumber,
  name,
  secondLine,
  amps,
  rating,
  pill,
  leg,
  halfLetter,
  landing,
  foot,
  raceway
};
struct BoardText {
  TextRole role = TextRole::name;
  QRectF rect;  ///< the text's own extent: its width as measured, its height from ascent to descent, of
                ///< digits alone their own
  double baseline = 0.0;
  QString text;  ///< as drawn, elided where it did not fit
  QString whole;
  Face face = Face::condensed;
  double pixels = 12.0;
  Weight weight = Weight::regular;
  bool italic = false;
  ColorRole color = ColorRole::ink;
  int cell = -1;  ///< index of its cell
};

/// A shape. `points` are the corners of a path, open or closed; other shapes use `rect`.
enum class MarkShape : std::uint8_t { rectangle, ellipse, line, legLine, hatch, severity, gradeRule, screw };
enum class MarkRole : std::uint8_t {
  box,
  plate,
  screw,
  rows,
  spine,
  ground,
  litEdge,
  hatch,
  hatchGap,  ///< where the hatch would run through a text
  body,
  knob,
  knobLine,
  barTrack,
  bar,
  barTick,
  gradeRule,
  leg,
  freeBody,
  pill,
  homeFrame,
  landing,
  plus,
  stroke,
  hover,
  selection,
  focusRing,
  target,
  tie,
  finding,
  raceway,
  cellRule
};
struct BoardMark {
  MarkRole role = MarkRole::ground;
  MarkShape shape = MarkShape::rectangle;
  QRectF rect;  ///< of a line: from its top left to its bottom right, unless `points` are given
  std::vector<QPointF> points;
  double radius = 0.0;
  std::optional<ColorRole> fill;
  std::optional<ColorRole> stroke;
  double width = 1.0;
  std::vector<double> dashes;  ///< in units of the line's width
  double opacity = 1.0;
  Leg leg = Leg::l1;
  Severity severity = Severity::danger;
  Grade grade = Grade::unknown;
  int cell = -1;
};

struct BoardLayout {
  PanelId panel;
  QString name;
  QSizeF size;
  int rows = 0;                  ///< of the accessible table
  int columns = 2;               ///< four where a space holds halves
  std::vector<BoardCell> cells;  ///< row by row, left before right
  std::vector<BoardMark> marks;  ///< in the order of painting
  std::vector<BoardText> texts;

  /// Index of the cell at a point, or -1.
  [[nodiscard]] int cellAt(QPointF point) const;
  /// The cell that a press means: the one under it, else the nearest whose height, made up to 24, reaches
  /// there.
  [[nodiscard]] int cellPressed(QPointF point) const;
  [[nodiscard]] int cellOf(const CellAddress& address) const;
  [[nodiscard]] int cellOf(BreakerId breaker) const;
  /// The space under the point; within a two-pole cell that of the row.
  [[nodiscard]] std::optional<SpacePosition> spaceAt(QPointF point) const;
  QRectF spaceArea;  ///< all rows and both columns
  double rowHeight = kRowHeight;
  std::int32_t rowsShown = 0;
};

/// Height of a board with this row height.
[[nodiscard]] double boardHeight(const Panel& panel, double rowHeight);
/// The row height, shared by these boards, with which the largest fits into `height`: from 16.8 to 23.
[[nodiscard]] double fittedRowHeight(const Plan& plan, std::span<const PanelId> panels, double height);

/// The board of one panel. `language` renders names and figures.
[[nodiscard]] BoardLayout layout(const Plan& plan, const Assessment& assessment, PanelId panel,
                                 const Language& language, const BoardOptions& options = {},
                                 const BoardState& state = {});

/// The raceway between two boards, drawn into the gap: a pipe and what is in it.
[[nodiscard]] BoardLayout racewayLayout(const Plan& plan, const Language& language, QRectF gap);

}  // namespace stayalight
