#include "ui/shell/reading_order.h"

#include <QtWidgets/QWidget>
#include <algorithm>

namespace stayalight {
namespace {

constexpr int kTouch = 2;  // neighbours may lie over each other by their frames

struct Block {
  QRect place;
  std::vector<QWidget*> controls;
};
using Blocks = std::vector<Block>;

bool stops(const QWidget& widget) {
  return (widget.focusPolicy() & Qt::TabFocus) != 0 && widget.focusProxy() == nullptr && widget.isEnabled();
}

// The blocks parted by straight lines that cross none of them, along one axis; one group where there is no
// such line.
std::vector<Blocks> parted(Blocks blocks, int (QRect::*from)() const, int (QRect::*to)() const) {
  std::stable_sort(blocks.begin(), blocks.end(),
                   [&](const Block& a, const Block& b) { return (a.place.*from)() < (b.place.*from)(); });
  std::vector<Blocks> groups;
  int reached = 0;
  for (Block& block : blocks) {
    const int begin = (block.place.*from)(), end = (block.place.*to)();
    if (groups.empty() || begin >= reached - kTouch) groups.emplace_back();
    reached = groups.back().empty() ? end : std::max(reached, end);
    groups.back().push_back(std::move(block));
  }
  return groups;
}

void read(Blocks blocks, std::vector<QWidget*>& out) {
  if (blocks.size() > 1) {
    for (const bool rows : {true, false}) {
      std::vector<Blocks> groups =
          rows ? parted(blocks, &QRect::top, &QRect::bottom) : parted(blocks, &QRect::left, &QRect::right);
      if (groups.size() < 2) continue;
      for (Blocks& group : groups) read(std::move(group), out);
      return;
    }
    std::stable_sort(blocks.begin(), blocks.end(), [](const Block& a, const Block& b) {
      return std::pair(a.place.top(), a.place.left()) < std::pair(b.place.top(), b.place.left());
    });
  }
  for (const Block& block : blocks) out.insert(out.end(), block.controls.begin(), block.controls.end());
}

}  // namespace

std::vector<QWidget*> controlsInReadingOrder(const QWidget& area) {
  Blocks blocks;
  for (QObject* child : area.children()) {
    auto* widget = qobject_cast<QWidget*>(child);
    if (widget == nullptr || widget->isWindow() || widget->isHidden()) continue;
    Block block;
    block.place = widget->geometry();
    if (stops(*widget)) block.controls.push_back(widget);
    const std::vector<QWidget*> within = controlsInReadingOrder(*widget);
    block.controls.insert(block.controls.end(), within.begin(), within.end());
    if (!block.controls.empty()) blocks.push_back(std::move(block));
  }
  std::vector<QWidget*> out;
  read(std::move(blocks), out);
  return out;
}

bool focusNeighbour(QWidget& window, bool next) {
  const std::vector<QWidget*> controls = controlsInReadingOrder(window);
  const auto now = std::find(controls.begin(), controls.end(), window.focusWidget());
  if (now == controls.end()) return false;
  const auto at = static_cast<std::size_t>(now - controls.begin());
  QWidget* neighbour = controls[(at + (next ? 1 : controls.size() - 1)) % controls.size()];
  window.setAttribute(Qt::WA_KeyboardFocusChange);
  neighbour->setFocus(next ? Qt::TabFocusReason : Qt::BacktabFocusReason);
  return true;
}

}  // namespace stayalight
