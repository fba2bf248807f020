#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"outage.capacity_now", "1000 * E * n * h * k", "C",
     "energy balance; share at temperature: common practice, no source"},
    {"outage.usable", "C * (s - f)", "U", "energy balance"},
    {"outage.power_marginal", "P / e + n * i", "p", "energy balance, idle draw kept apart"},
    {"outage.power_curve", "P / e", "p", "definition of efficiency, idle draw inside"},
    {"outage.power_light", "P + L", "p", "below the curve's first point its loss in watts holds"},
    {"outage.crossing_first", "U / q", "t", "energy balance"},
    {"outage.crossing", "(U - sum(p * t)) / q", "t", "energy balance"},
    {"outage.runtime", "sum(t)", "T", "energy balance"},
};

}  // namespace

const std::span<const FormulaRow> outage(kRows);

}  // namespace stayalight::formulas_of
