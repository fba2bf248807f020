#pragma once

// Puts cells into a BoardLayout: geometry of one board, and the marks and texts of each state of a cell.

#include "ui/board/contents.h"

namespace stayalight {

/// Lengths that a board uses throughout. A compact board has rows below 20 and smaller type.
struct BoardMeasures {
  BoardMeasures(const BoardOptions& options, std::int32_t rows);
  bool compact = false;
  double width, rowHeight;
  double margin, spine, body, bar;
  double namePixels, numberPixels;
  [[nodiscard]] double rowTop(
      std::int32_t row) const;  ///< row from 1; whole numbers, so that edges stay sharp
  [[nodiscard]] QRectF rowRect(Column column, std::int32_t row, std::int32_t rows) const;
};

class BoardDrawing {
 public:
  BoardDrawing(BoardLayout& out, const BoardContents& contents, const BoardMeasures& measures,
               const BoardState& state, const BoardOptions& options, const Language& language);
  void draw();

 private:
  // A length from the outer edge of a cell inwards, as a rectangle of the board: the right column is the
  // mirror image.
  [[nodiscard]] QRectF across(const QRectF& cell, Column column, double from, double to) const;
  [[nodiscard]] static bool mirrored(Column column) { return column == Column::right; }

  BoardMark& mark(MarkRole role, const QRectF& rect, std::optional<ColorRole> fill,
                  std::optional<ColorRole> stroke = std::nullopt, double radius = 0.0, double width = 1.0);
  BoardMark& line(MarkRole role, QPointF from, QPointF to, ColorRole color, double width);
  // A text on a baseline; `x` is its left, middle or right by `align`; it is elided to `room`.
  void text(TextRole role, const QString& whole, double x, Qt::Alignment align, double baseline, double room,
            double pixels, ColorRole color, Weight weight = Weight::regular, bool italic = false,
            Face face = Face::condensed);
  [[nodiscard]] double baseline(double centre, double pixels) const { return centre + 0.355 * pixels; }

  void drawFrame();
  void drawLegs();
  void drawCell(const CellContent& content, int index);
  void drawNumbers(const CellContent& content);
  void clearHatch(ColorRole ground, const QRectF& whole, std::size_t firstText);
  void drawBreaker(const CellContent& content);
  void drawHalf(const CellContent& content);
  void drawHome(const CellContent& content);
  void drawMovedAway(const CellContent& content);
  void drawFree(const CellContent& content);
  void drawQuiet(const CellContent& content);
  void drawLanding(const CellContent& content, const LandingNote& note);
  void drawName(const CellContent& content, double from, double to, bool italic);
  void drawAmps(const CellContent& content);
  void drawBody(const CellContent& content, const QRectF& body, bool open, bool rating);
  void drawTarget();
  // The first content that starts on the same space.
  [[nodiscard]] const CellContent* firstInRow(const CellContent& content) const;
  void drawFrames(const CellContent& content);
  void drawTies();
  void drawFoot();

  BoardLayout& out_;
  const BoardContents& contents_;
  const BoardMeasures& m_;
  const BoardState& state_;
  const BoardOptions& options_;
  const Language& language_;
  std::vector<BoardMark> above_;  // frames that lie over neighbours
  bool toAbove_ = false;
  int cell_ = -1;
  QRectF rect_;  // of the cell being drawn
  Column column_ = Column::left;
  double nameInset_ = 0.0;
};

}  // namespace stayalight
