#pragma once

// The sections of the table of printed formulas, one file a room.

#include <span>

#include "core/message/working.h"

namespace stayalight::formulas_of {
extern const std::span<const FormulaRow> use;
extern const std::span<const FormulaRow> demand;
extern const std::span<const FormulaRow> start;
extern const std::span<const FormulaRow> wiring;
extern const std::span<const FormulaRow> outage;
}  // namespace stayalight::formulas_of
