#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    // -- parts of a load calculation
    {"demand.lighting", "u * a", "S", "the standard: unit load by floor area"},
    {"demand.circuits", "n * s", "S", "the standard: load of each circuit of its kind"},
    {"demand.step_first", "f * min(S, B)", "D", "the standard: the part up to B"},
    {"demand.step_between", "f * (min(S, B) - A)", "D", "the standard: the part from A to B"},
    {"demand.step_above", "f * max(0, S - A)", "D", "the standard: the part above A"},
    {"demand.share_of_sum", "f * sum(S)", "D", "the standard: demand factor on the sum of nameplates"},
    {"demand.sum_of_shares", "sum(f * S)", "D", "the standard: each load with its factor"},
    {"demand.at_least", "max(S, m)", "S", "the standard: nameplate, at least m"},
    {"demand.cooking_column_c", "1000 * C * (1 + p * k)", "D",
     "the standard: table of cooking appliances, column C, Note 1"},
    {"demand.lesser", "min(A, B)", "D",
     "the standard: table of cooking appliances, Note 3: columns A and B where they give less"},
    {"demand.new_circuits", "a * u + n * s", "D", "the standard: new load"},
    // -- the whole
    {"demand.total", "sum(S)", "S", "sum of the lines; volt-amperes add in this article"},
    {"demand.leg", "sum(S)", "S", "sum of what one leg carries"},
    {"demand.line_current", "S / V", "I", "definition of apparent power"},
    {"demand.minimum", "(S + (k - 1) * C) / V", "Imin", "the standard: 125 % of the continuous part"},
    {"demand.neutral", "max(A, B) / V", "N", "the standard: larger net load of either leg"},
    {"demand.neutral_reduced", "T + f * (N - T)", "N", "the standard: part above 200 A"},
    // -- how large the source must be
    {"capacity.declared", "sum(S)", "S", "the standard: the loads meant to run at one time"},
    {"capacity.declared_leg", "sum(S)", "SL", "the same on one leg of the source"},
    {"capacity.largest", "max(S)", "S", "the standard: the largest single load"},
    {"capacity.share", "S / P", "f", "what is asked over what the source carries"},
    {"demand.charge_left", "max(0, (R * V - S - (k - 1) * C) / k)", "P",
     "what a rating leaves for a continuous load"},
};

}  // namespace

const std::span<const FormulaRow> demand(kRows);

}  // namespace stayalight::formulas_of
