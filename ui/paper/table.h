#pragma once

// A plain table on a sheet: a grey head that comes again on each page, rows as high as their longest cell.

#include <QtCore/QStringList>
#include <vector>

#include "ui/paper/flow.h"

namespace stayalight {

struct TableColumn {
  QString title;
  double share = 0.1;  ///< of the width; all together 1
  Align align = Align::left;
  bool strong = false;
  bool blank = false;      ///< a box to tick in the middle
  QStringList ticks = {};  ///< boxes to tick, each with its word, where the cell has no text of its own
};
/// A table to write in by hand has a grid and rows that leave room for it.
struct TableStyle {
  double leastRow = 0.0;  ///< height, points
  bool grid = false;
};
/// 7 mm and a little: common practice, no source.
inline constexpr TableStyle kToWriteIn{20.5, true};

class SheetTable {
 public:
  SheetTable(SheetFlow& flow, std::vector<TableColumn> columns, TableStyle style = {})
      : flow_(flow), columns_(std::move(columns)), style_(style) {}
  void head();
  /// Cells that do not fit their column break into lines. A cell too few is left empty.
  void row(const QStringList& cells, bool strong = false);
  /// Ends the table.
  void end();

 private:
  void drawTicks(const QStringList& ticks, std::size_t column, double height);
  void drawGrid(double top, double bottom);
  [[nodiscard]] double left(std::size_t column) const;
  [[nodiscard]] double width(std::size_t column) const { return columns_[column].share * flow_.width(); }

  SheetFlow& flow_;
  std::vector<TableColumn> columns_;
  TableStyle style_;
};

/// A heading inside a sheet, kept with what follows.
void drawHeading(SheetFlow& flow, const QString& heading, double keepWith = 40.0);
/// A list of short paragraphs with numbers.
void drawNumbered(SheetFlow& flow, const QStringList& notes);

}  // namespace stayalight
