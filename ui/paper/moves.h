#pragma once

// The sheet for the electrician: each circuit that moves, the raceways it runs through, where it is joined.

#include "ui/paper/flow.h"

namespace stayalight {

/// True where the plan has anything for this sheet.
[[nodiscard]] bool hasMoves(const Plan& plan);
void drawMoves(SheetFlow& flow, const Plan& plan, const Assessment& assessment, const Language& language);

}  // namespace stayalight
