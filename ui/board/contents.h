#pragma once

// What stands in the spaces of a panel, in words: the cells of a board before they have a place.

#include "ui/board/layout.h"

namespace stayalight {

/// A cell with what only drawing needs.
struct CellContent {
  BoardCell cell;
  QString secondLine;
  QString amps;                 ///< "7.0" or "?"; empty where nothing runs on it
  std::optional<double> share;  ///< of the rating, for the bar
  Grade grade = Grade::unknown;
  std::int32_t rating = 0;
  QString pill;                  ///< "to 6"
  bool openBody = false;         ///< new in the house
  bool blank = false;            ///< a filler plate after a removed breaker
  std::vector<QString> numbers;  ///< printed beside each row
  int halfRow = 0;               ///< first half space it covers, counted from its own row's upper half
  std::vector<std::pair<int, int>> bodyHalves;  ///< runs of half spaces its body covers, from and to
};

struct BoardTie {
  std::vector<SpacePosition> spaces;  ///< members in this panel, in rows
  bool split = false;                 ///< a member is fed from another panel
};

struct BoardContents {
  std::vector<CellContent> cells;  ///< row by row, left before right, upper half before lower
  std::vector<BoardTie> ties;
  QString title, facts;
  std::int32_t spaces = 0, free = 0;
  bool backup = false;
  std::array<std::optional<AcAmperes>, 2> legPeak;  ///< of a backup subpanel: likely peak of the hour shown
  bool halves = false;  ///< a space holds half breakers: the table has four columns
};

[[nodiscard]] BoardContents contents(const Plan& plan, const Assessment& assessment, const Panel& panel,
                                     const Language& language, const BoardOptions& options,
                                     const BoardState& state);

}  // namespace stayalight
