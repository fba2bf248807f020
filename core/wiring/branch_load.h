#pragma once

// How a load counts on its own branch circuit.

#include "core/code/edition.h"
#include "core/code/tables.h"
#include "core/plan/plan.h"

namespace stayalight {

/// Counts with 125 % on its circuit: what may run three hours, and what the code calls continuous by what it
/// is: fixed electric space heating (424.4(B)), a storage water heater (422.13), a vehicle charger (625.42).
/// The sections from memory. Every tank-type heater here is taken to hold no more than 120 gallons.
[[nodiscard]] bool countsAsContinuous(const Load& load);
/// Share of the nameplate of one household range that its branch circuit carries: Table 220.55, Note 4,
/// column C above its least rating; 1 below it and for anything else. Of the cooking loads of a circuit
/// together, in VA.
[[nodiscard]] double rangeShare(VoltAmperes cooking, Edition edition,
                                const Tables& tables = publishedTables());

}  // namespace stayalight
