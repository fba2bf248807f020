#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"start.none", "x", "y", ""},
};

}  // namespace

const std::span<const FormulaRow> start(kRows);

}  // namespace stayalight::formulas_of
