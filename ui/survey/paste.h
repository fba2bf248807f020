#pragma once

// A table of texts put into the survey. Free of Qt; may be called on any thread.

#include "core/message/watch.h"
#include "ui/survey/cells.h"

namespace stayalight {

struct GridCell {
  GridRow row;
  GridColumn column = GridColumn::name;
};

struct Pasted {
  struct NotRead {
    GridCell cell;
    std::string text;
    Message why;
  };
  Plan plan;
  std::int64_t done = 0;  ///< cells that hold something else now
  std::int64_t lost = 0;  ///< texts that stood beyond the last row or column
  std::vector<GridCell> read;
  std::vector<NotRead> notRead;  ///< the plan keeps what it had there
};

/// One text into each of the cells.
[[nodiscard]] Pasted pasteText(const Plan& plan, std::span<const GridCell> cells, const std::string& text,
                               const CellStyle& style, const Watch& watch = {});
/// Lines of texts from a row on, each over the same columns. The rows are those of one panel, or of all
/// circuits; an empty text says nothing about what cannot be empty.
[[nodiscard]] Pasted pasteTable(const Plan& plan, PanelId panel, SpaceOrder order, const GridRow& first,
                                std::span<const GridColumn> columns,
                                const std::vector<std::vector<std::string>>& table, const CellStyle& style,
                                const Watch& watch = {});

}  // namespace stayalight
