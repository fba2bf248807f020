#include "ui/survey/paste.h"

#include <algorithm>

namespace stayalight {
namespace {

class Entering {
 public:
  Entering(const Plan& plan, const CellStyle& style) : style_(style) { out.plan = plan; }

  void enter(const GridRow& row, GridColumn column, const std::string& text) {
    const GridRow now = rowNow(out.plan, row);
    const bool said =
        column == GridColumn::space || column == GridColumn::goesTo || column == GridColumn::finding;
    if (said || text == cellText(out.plan, now, column, style_).text) return;
    if (text.empty()) {
      out.plan = clearCell(out.plan, now, column);
      return;
    }
    Result<Plan> next = enterCell(out.plan, now, column, text, style_);
    if (next) {
      out.plan = std::move(next).value();
      ++out.done;
      out.read.push_back({row, column});
    } else {
      out.notRead.push_back({{row, column}, text, next.refusal()});
    }
  }

  Pasted out;

 private:
  const CellStyle& style_;
};

std::vector<GridRow> rowsOf(const Plan& plan, PanelId panel, SpaceOrder order) {
  return panel.valid() ? gridRows(plan, panel, order) : circuitRows(plan, order);
}

/// True where both plans have the same rows: every breaker stands where it stood, and as many circuits and
/// loads hang on them.
bool sameRows(const Plan& a, const Plan& b) {
  const auto sameBreaker = [](const Shared<Breaker>& one, const Shared<Breaker>& other) {
    return &*one == &*other ||
           (one->id == other->id && one->panel == other->panel && one->position() == other->position() &&
            one->half == other->half && one->poles == other->poles && one->stage == other->stage);
  };
  const auto sameCircuit = [](const Shared<Circuit>& one, const Shared<Circuit>& other) {
    return &*one == &*other || (one->id == other->id && one->breaker == other->breaker &&
                                one->planned == other->planned && one->loads.size() == other->loads.size());
  };
  return std::equal(a.breakers.begin(), a.breakers.end(), b.breakers.begin(), b.breakers.end(),
                    sameBreaker) &&
         std::equal(a.circuits.begin(), a.circuits.end(), b.circuits.begin(), b.circuits.end(), sameCircuit);
}

}  // namespace

Pasted pasteText(const Plan& plan, std::span<const GridCell> cells, const std::string& text,
                 const CellStyle& style, const Watch& watch) {
  Entering entering(plan, style);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!goesOn(watch, static_cast<double>(i) / static_cast<double>(cells.size()))) break;
    entering.enter(cells[i].row, cells[i].column, text);
  }
  return std::move(entering.out);
}

Pasted pasteTable(const Plan& plan, PanelId panel, SpaceOrder order, const GridRow& first,
                  std::span<const GridColumn> columns, const std::vector<std::vector<std::string>>& table,
                  const CellStyle& style, const Watch& watch) {
  Entering entering(plan, style);
  std::vector<GridRow> rows = rowsOf(plan, panel, order);
  Plan ofRows = plan;
  GridRow at = first;
  for (std::size_t line = 0; line < table.size(); ++line) {
    if (!goesOn(watch, static_cast<double>(line) / static_cast<double>(table.size()))) break;
    for (std::size_t i = 0; i < table[line].size(); ++i) {
      if (i < columns.size())
        entering.enter(at, columns[i], table[line][i]);
      else if (!table[line][i].empty())
        ++entering.out.lost;
    }
    // The next row as the panel stands by now: a two-pole has taken one.
    if (!sameRows(entering.out.plan, ofRows)) {
      ofRows = entering.out.plan;
      rows = rowsOf(ofRows, panel, order);
    }
    const auto here =
        std::find_if(rows.begin(), rows.end(), [&](const GridRow& row) { return samePlace(row, at); });
    if (here == rows.end() || here + 1 == rows.end()) {
      for (std::size_t rest = line + 1; rest < table.size(); ++rest)
        entering.out.lost += static_cast<std::int64_t>(table[rest].size());
      break;
    }
    at = *(here + 1);
  }
  return std::move(entering.out);
}

}  // namespace stayalight
