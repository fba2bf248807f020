#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    // -- parts of a load calculation
    {"demand.lighting", "u * a", "S", "NFPA 70 220.41: unit load by floor area"},
    {"demand.circuits", "n * s", "S", "NFPA 70 220.52"},
    {"demand.step_first", "f * min(S, B)", "D", "NFPA 70 220.45, 220.82(B): the part up to B"},
    {"demand.step_between", "f * (min(S, B) - A)", "D", "NFPA 70 220.45: the part from A to B"},
    {"demand.step_above", "f * max(0, S - A)", "D", "NFPA 70 220.45, 220.82(B): the part above A"},
    {"demand.share_of_sum", "f * sum(S)", "D", "NFPA 70 Article 220: demand factor on the sum of nameplates"},
    {"demand.sum_of_shares", "sum(f * S)", "D", "NFPA 70 220.82(C)"},
    {"demand.at_least", "max(S, m)", "S", "NFPA 70 220.54, 220.57: nameplate, at least m"},
    {"demand.cooking_column_c", "1000 * C * (1 + p * k)", "D", "NFPA 70 Table 220.55, column C, Note 1"},
    {"demand.lesser", "min(A, B)", "D", "NFPA 70 Table 220.55, Note 3: columns A and B where they give less"},
    {"demand.new_circuits", "a * u + n * s", "D", "NFPA 70 220.87: new load"},
    // -- the whole
    {"demand.total", "sum(S)", "S", "sum of the lines; volt-amperes add in this article"},
    {"demand.leg", "sum(S)", "S", "sum of what one leg carries"},
    {"demand.line_current", "S / V", "I", "definition of apparent power"},
    {"demand.minimum", "(S + (k - 1) * C) / V", "Imin", "NFPA 70 215.2, 215.3: 125 % of the continuous part"},
    {"demand.neutral", "max(A, B) / V", "N", "NFPA 70 220.61(A): larger net load of either leg"},
    {"demand.neutral_reduced", "T + f * (N - T)", "N", "NFPA 70 220.61(B): part above 200 A"},
    {"demand.charge_left", "max(0, (R * V - S - (k - 1) * C) / k)", "P",
     "what a rating leaves for a continuous load"},
};

}  // namespace

const std::span<const FormulaRow> demand(kRows);

}  // namespace stayalight::formulas_of
