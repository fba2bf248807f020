// Which panel of the plan stands on which board.

#include <QtCore/QSignalBlocker>
#include <algorithm>

#include "ui/boards/boards_view_parts.h"

namespace stayalight {
namespace {

constexpr std::array<MessageId, 2> kLabels = {MessageId{"board.left_label"}, MessageId{"board.right_label"}};
constexpr MessageId kLeftShows{"board.left_shows"};
constexpr MessageId kRightShows{"board.right_shows"};
constexpr MessageId kUnnamed{"board.unnamed_panel"};

}  // namespace

// What was chosen stays as long as it is in the plan; else the main panel stands left and what it backs up
// right.
void BoardsView::Parts::chooseShown() {
  const auto stands = [&](PanelId panel) { return stayalight::find(plan, panel) != nullptr; };
  for (PanelId& panel : chosen) {
    if (!stands(panel)) panel = {};
  }
  const auto usual = [&](PanelRole role, PanelId besides) {
    PanelId out;
    for (const Shared<Panel>& panel : plan.panels) {
      if (panel->id == besides) continue;
      if (panel->role.is(role)) return panel->id;
      if (!out.valid()) out = panel->id;
    }
    return out;
  };
  shownPanels = chosen;
  if (!shownPanels[0].valid()) {
    const Panel* backup = backupPanel(plan);
    shownPanels[0] =
        usual(PanelRole::main, shownPanels[1].valid() || backup == nullptr ? shownPanels[1] : backup->id);
  }
  if (!shownPanels[1].valid()) shownPanels[1] = usual(PanelRole::backup, shownPanels[0]);
}

void BoardsView::Parts::fillChoosers() {
  constexpr std::array kNames = {kLeftShows, kRightShows};
  for (std::size_t side = 0; side < choosers.size(); ++side) {
    QComboBox* chooser = choosers[side];
    const QSignalBlocker quiet(chooser);
    labels[side]->setText(words(*language, kLabels[side]));
    chooser->setAccessibleName(words(*language, kNames[side]));
    chooser->setToolTip(chooser->accessibleName());
    chooser->clear();
    for (const Shared<Panel>& panel : plan.panels) {
      chooser->addItem(panel->name.empty() ? words(*language, kUnnamed, std::int64_t{panel->id.number})
                                           : QString::fromStdString(panel->name),
                       qlonglong{panel->id.number});
    }
    chooser->setCurrentIndex(chooser->findData(qlonglong{shownPanels[side].number}));
  }
}

void BoardsView::Parts::put(PanelId panel, std::size_t side) {
  if (shownPanels[side] == panel || stayalight::find(plan, panel) == nullptr) return;
  cancel();
  const std::size_t other = 1 - side;
  if (chosen[other] == panel) chosen[other] = {};
  chosen[side] = panel;
  chooseShown();
  makeBoards();
  arrange();
}

void BoardsView::Parts::bring(PanelId panel) {
  const Panel* record = stayalight::find(plan, panel);
  if (record == nullptr || shownPanels[0] == panel || shownPanels[1] == panel) return;
  put(panel, record->role.is(PanelRole::backup) ? 1 : 0);
}

bool BoardsView::Parts::racewayBetween() const {
  const Panel *first = stayalight::find(plan, shownPanels[0]),
              *second = stayalight::find(plan, shownPanels[1]);
  return first != nullptr && second != nullptr && first->role.is(PanelRole::main) &&
         second->role.is(PanelRole::backup);
}

void BoardsView::Parts::makeBoards() {
  fillChoosers();
  std::vector<BoardWidget*> kept;
  for (std::size_t side = 0; side < shownPanels.size(); ++side) {
    const PanelId panel = shownPanels[side];
    if (!panel.valid()) continue;
    BoardWidget* board = boardOf(panel);
    QWidget* home = (side == 1 ? right : left)->widget();
    if (board == nullptr) {
      board = new BoardWidget(view, panel, home);
      board->show();
    } else if (board->parentWidget() != home) {
      board->setParent(home);
      board->show();
    }
    kept.push_back(board);
  }
  // First out of the list: a board that loses the keyboard has the others laid out anew.
  boards.swap(kept);
  for (BoardWidget* board : kept) {
    if (std::find(boards.begin(), boards.end(), board) != boards.end()) continue;
    board->hide();
    board->deleteLater();
  }
}

}  // namespace stayalight
