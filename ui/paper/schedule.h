#pragma once

// The table of a panel schedule: rows as high as their texts need, and easier where the page has room.

#include "ui/paper/flow.h"
#include "ui/paper/schedule_text.h"

namespace stayalight {

/// Rows are counted from 1. Keeps to `rows` and `language`, which must outlive it.
class ScheduleTable {
 public:
  /// `flow` gives the width.
  ScheduleTable(const SheetFlow& flow, const ScheduleRows& rows, PurposePlace place,
                const Language& language);
  /// Height of the table with its head from row `first` to the end, as low as can be read.
  [[nodiscard]] double leastHeight(int first) const;
  /// Where to break a table that does not end on this page: the last row of those from `first` that fits into
  /// `height` with ease, at least one; never in the middle of a two-pole, nor so that the next page gets but
  /// a row or two.
  [[nodiscard]] int lastWithin(int first, double height) const;
  /// The head and the rows `first` to `last`; they take up to `height`, and not more than is easy to read.
  void draw(SheetFlow& flow, int first, int last, double height) const;

 private:
  [[nodiscard]] double easyRow(int row) const;

  const ScheduleRows& rows_;
  const Language& language_;
  PurposePlace place_;
  std::vector<double> least_;  ///< by row
};

}  // namespace stayalight
