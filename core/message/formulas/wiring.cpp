#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"wiring.none", "x", "y", ""},
};

}  // namespace

const std::span<const FormulaRow> wiring(kRows);

}  // namespace stayalight::formulas_of
