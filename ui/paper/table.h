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
  bool blank = false;  ///< to be filled in by hand: a line, or a box where the title is "done"
};

class SheetTable {
 public:
  SheetTable(SheetFlow& flow, std::vector<TableColumn> columns) : flow_(flow), columns_(std::move(columns)) {}
  void head();
  /// Cells that do not fit their column break into lines. A cell too few is left empty.
  void row(const QStringList& cells, bool strong = false);
  /// Ends the table.
  void end();

 private:
  [[nodiscard]] double left(std::size_t column) const;
  [[nodiscard]] double width(std::size_t column) const { return columns_[column].share * flow_.width(); }

  SheetFlow& flow_;
  std::vector<TableColumn> columns_;
};

/// A heading inside a sheet, kept with what follows.
void drawHeading(SheetFlow& flow, const QString& heading, double keepWith = 40.0);
/// A list of short paragraphs with numbers.
void drawNumbered(SheetFlow& flow, const QStringList& notes);

}  // namespace stayalight
