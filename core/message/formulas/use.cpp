#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    // -- power
    {"power.average", "sum(P * u)", "P", "mean of loads that are on for a share of the time"},
    {"power.average_reactive", "sum(Q * u)", "Q", "mean of loads that are on for a share of the time"},
    {"power.connected", "sum(P)", "P", "real power adds over loads"},
    {"power.connected_reactive", "sum(Q)", "Q", "reactive power adds over loads"},
    // -- current
    {"current.from_power", "sqrt(P^2 + Q^2) / V", "I",
     "definition of apparent power, one leg against neutral"},
    {"current.from_apparent", "S / V", "I", "definition of apparent power"},
    {"current.neutral_split_phase", "sqrt((P_1 - P_2)^2 + (Q_1 - Q_2)^2) / V", "I_N",
     "Kirchhoff's current law, legs in opposition"},
    {"current.neutral_wye",
     "sqrt((P_1 - P_2 / 2 - k * sqrt(3) / 2 * Q_2)^2 + (Q_1 - Q_2 / 2 + k * sqrt(3) / 2 * P_2)^2) / V", "I_N",
     "Kirchhoff's current law, legs 120 degrees apart; k is 1 where L2 lags and -1 where it leads"},
    {"current.neutral_single", "sqrt((P_1 + P_2)^2 + (Q_1 + Q_2)^2) / V", "I_N",
     "Kirchhoff's current law, both legs on one 120 V source"},
};

}  // namespace

const std::span<const FormulaRow> use(kRows);

}  // namespace stayalight::formulas_of
