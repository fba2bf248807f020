#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"outage.none", "x", "y", ""},
};

}  // namespace

const std::span<const FormulaRow> outage(kRows);

}  // namespace stayalight::formulas_of
