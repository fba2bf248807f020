#pragma once

// The rows of a panel schedule as values, before they are laid out.

#include <QtCore/QString>
#include <vector>

#include "core/assess/assess.h"
#include "ui/paper/sheets.h"

namespace stayalight {

/// One breaker of a space, or the fact that none is there.
struct ScheduleLine {
  QString half;  ///< "A" or "B" of a tandem, else empty
  QString name;
  QString serves;
  QString was;              ///< space it came from, on the schedule after the work
  QString wire;             ///< "12", "10 Al"
  QString area;             ///< its cross-section where the units are metric: "3.31 mm²"
  std::vector<QString> va;  ///< by pole
  QString rating;
  bool plain = false;  ///< spare or blank: no box to tick, light type
  bool moved =
      false;  ///< `name` moved away; then `movedTo` says where and `serves` what the final directory reads
  QString movedTo;
  bool tick = true;
};
/// What stands in one space of a column, or in two where a two-pole takes them.
struct ScheduleCell {
  SpacePosition position;
  int span = 1;
  std::vector<ScheduleLine> lines;  ///< one; two for halves
};
struct ScheduleTie {
  int fromRow = 0, toRow = 0;
  Column column = Column::left;
  bool broken = false;
};
struct ScheduleRows {
  int rows = 0;
  bool hasWas = false;
  std::vector<ScheduleCell> left, right;
  std::vector<ScheduleTie> ties;
  std::vector<Leg> legs;  ///< by row, left column
  std::vector<QString> leftNumbers, rightNumbers;
  std::vector<bool> hasRight;
  /// True where a two-pole or a quad spans this row and the next: no page break between.
  [[nodiscard]] bool joined(int row) const;
};
[[nodiscard]] ScheduleRows scheduleRows(const Plan& plan, const Assessment& assessment, const Panel& panel,
                                        Reading reading, const Language& language);

}  // namespace stayalight
