#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    // -- start current
    {"start.from_code_letter", "k * h * 1000 / V_r", "I",
     "NFPA 70, Table 430.7(B): kVA per horsepower, single phase"},
    {"start.from_class", "r * S / V_r", "I",
     "ratio of start to running current by class; common practice, no source"},
    {"start.soft", "r * I", "I",
     "share of the start current a soft starter leaves; common practice, no source"},
    {"start.scaled", "I * V / V_r", "I", "start current in proportion to the voltage"},
    {"start.running", "r * S / V", "I", "a drive starts at its running current; common practice, no source"},
    {"start.apparent", "I * V", "S", "definition of apparent power"},
    // -- on the base
    {"start.on_base", "B + sum(I)", "I", "arithmetic sum, the safe side of the phasor sum"},
    {"start.margin", "L - I", "D", "limit less what is asked for"},
    {"start.total_on_base", "B + S", "S", "arithmetic sum, the safe side of the phasor sum"},
    {"start.total_margin", "L - S", "D", "limit less what is asked for"},
    {"start.battery", "((P + S * f) / e + i) / V", "I", "power at the battery over its lowest voltage"},
};

}  // namespace

const std::span<const FormulaRow> start(kRows);

}  // namespace stayalight::formulas_of
