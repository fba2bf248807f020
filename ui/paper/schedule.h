#pragma once

// The schedule's table, and the blocks below it.

#include "ui/paper/flow.h"
#include "ui/paper/rows.h"

namespace stayalight {

/// The head facts of a panel: system, bus, main, spaces, fed from, feeder, grounding, neutral.
void drawFacts(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
               Reading reading, const Language& language);
/// The table, over as many pages as it needs.
void drawSchedule(SheetFlow& flow, const ScheduleRows& rows, const Language& language);
/// Load by leg on the left, feeder and overcurrent devices on the right.
void drawFigures(SheetFlow& flow, const Assessment& assessment, const Panel& panel, Reading reading,
                 const Language& language);
/// Findings that are still open: all dangers, and what must be fixed in this panel.
void drawOpen(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
              const Language& language);
/// Notes and cautions, blanks for changes by hand and signatures.
void drawNotes(SheetFlow& flow, const Plan& plan, const Panel& panel, Reading reading,
               const ScheduleRows& rows, const Language& language);

}  // namespace stayalight
