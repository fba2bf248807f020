#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    // -- current and power
    {"power.apparent", "sqrt(P^2 + Q^2)", "S", "definition of apparent power"},
    {"current.from_power", "sqrt(P^2 + Q^2) / V", "I", "definition of apparent power, one leg against neutral"},
};

}  // namespace

const std::span<const FormulaRow> use(kRows);

}  // namespace stayalight::formulas_of
