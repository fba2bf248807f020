#include "ui/paper/panel_sheet.h"

#include <algorithm>
#include <functional>

#include "ui/paper/blocks.h"
#include "ui/paper/schedule.h"

namespace stayalight {
namespace {

constexpr double kGap = 6.0;  // between blocks

struct Block {
  std::function<void(SheetFlow&)> draw;
  int rank = 0;  ///< the lower, the sooner it stands beside the table
  double height = 0.0;
  bool beside = true;  ///< on the page of the table's end
};

// Heights below the table where the chosen blocks stand there.
double footHeight(const std::vector<Block>& blocks, double signatures) {
  double height = signatures;
  for (const Block& block : blocks) height += block.beside ? kGap + block.height : 0.0;
  return height;
}

// Leaves beside the table what fits `room`; returns how many blocks that are.
int keepBeside(std::vector<Block>& blocks, double room, double signatures) {
  std::vector<Block*> byRank;
  for (Block& block : blocks) {
    block.beside = false;
    byRank.push_back(&block);
  }
  std::stable_sort(byRank.begin(), byRank.end(),
                   [](const Block* a, const Block* b) { return a->rank < b->rank; });
  int kept = 0;
  for (Block* block : byRank) {
    block->beside = true;
    if (footHeight(blocks, signatures) > room) {
      block->beside = false;
    } else {
      ++kept;
    }
  }
  return kept;
}

}  // namespace

void drawPanelSheet(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
                    Reading reading, const Language& language) {
  const ScheduleRows rows = scheduleRows(plan, assessment, panel, reading, language);
  drawFacts(flow, plan, assessment, panel, reading, language);

  std::vector<Block> blocks;
  blocks.push_back({[&](SheetFlow& on) { drawFigures(on, assessment, panel, reading, language); }, 2});
  if (reading == Reading::planned) {
    for (const Finding* finding : openFindings(plan, assessment, panel))
      blocks.push_back({[&language, finding](SheetFlow& on) { drawOpenFinding(on, *finding, language); }, 0});
  }
  blocks.push_back({[&](SheetFlow& on) { drawNotes(on, plan, panel, reading, rows, language); }, 1});
  for (Block& block : blocks) block.height = flow.heightOf(block.draw);
  const double signatures = flow.heightOf([&](SheetFlow& on) { drawSignatures(on, language); });

  const ScheduleTable tables[] = {{flow, rows, PurposePlace::below, language},
                                  {flow, rows, PurposePlace::behind, language}};
  const int lastRow = rows.rows;
  int first = 1;
  const ScheduleTable* chosen = nullptr;
  while (chosen == nullptr) {
    int most = -1;
    for (const ScheduleTable& table : tables) {
      const double room = flow.room() - table.leastHeight(first);
      if (room < signatures) continue;
      const int kept = keepBeside(blocks, room, signatures);
      if (kept <= most) continue;
      most = kept;
      chosen = &table;
    }
    if (chosen != nullptr) break;
    const int last = tables[0].lastWithin(first, flow.room());
    tables[0].draw(flow, first, last, flow.room());
    first = last + 1;
    flow.newPage();
  }
  keepBeside(blocks, flow.room() - chosen->leastHeight(first), signatures);
  if (first <= lastRow) chosen->draw(flow, first, lastRow, flow.room() - footHeight(blocks, signatures));
  for (const Block& block : blocks) {
    if (!block.beside) continue;
    flow.advance(kGap);
    block.draw(flow);
  }
  drawSignatures(flow, language);
  bool begun = false;
  for (const Block& block : blocks) {
    if (block.beside) continue;
    if (!begun) {
      flow.newPage();
      begun = true;
    } else if (!flow.need(block.height + kGap)) {
      flow.advance(kGap);
    }
    block.draw(flow);
  }
}

}  // namespace stayalight
