#pragma once

// The sheet of one panel, as it hangs in the panel's door.

#include "ui/paper/flow.h"

namespace stayalight {

/// One page, where facts, table, figures, open findings, notes and signatures fit legibly: with ease, else
/// with lower rows, else with the purposes behind the names. Where they do not, the table and the signatures
/// stay together, with as much of the rest as fits, open findings first. A table too long for a page breaks
/// between breakers.
void drawPanelSheet(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Panel& panel,
                    Reading reading, const Language& language);

}  // namespace stayalight
