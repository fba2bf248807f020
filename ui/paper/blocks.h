#pragma once

// What stands above and below the table of a panel's sheet. None of these begins a page.

#include "ui/paper/flow.h"
#include "ui/paper/rows.h"

namespace stayalight {

/// The head facts of a panel: system, bus, main, spaces, fed from, feeder, grounding, neutral.
void drawFacts(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
               Reading reading, const Language& language);
/// Load by leg; for the backup subpanel after the work beside feeder and overcurrent devices.
void drawFigures(SheetFlow& flow, const Assessment& assessment, const Panel& panel, Reading reading,
                 const Language& language);
/// Findings that are still open: all dangers, and what must be fixed in this panel.
[[nodiscard]] std::vector<const Finding*> openFindings(const Plan& plan, const Assessment& assessment,
                                                       const Panel& panel);
void drawOpenFinding(SheetFlow& flow, const Finding& finding, const Language& language);
/// Notes and cautions.
void drawNotes(SheetFlow& flow, const Plan& plan, const Panel& panel, Reading reading,
               const ScheduleRows& rows, const Language& language);
/// Blanks for changes by hand and signatures.
void drawSignatures(SheetFlow& flow, const Language& language);

}  // namespace stayalight
