#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"wiring.load_current", "S / V", "I", "definition of apparent power"},
    {"wiring.load_rest", "(S - C) / V", "I", "definition of apparent power: what is not continuous"},
    {"wiring.output_current", "I", "I", "label of the inverter"},
    {"wiring.generator_conductor", "k * I", "I", "ampacity of a generator's conductors, 445.13(A)"},
    {"wiring.load_sum", "sum(I)", "I", "sum of what one conductor carries at one time"},
    {"wiring.device_minimum", "k * C + O", "Imin", "NFPA 70 215.3, 705.30"},
    {"wiring.standard_rating", "R", "R", "NFPA 70 240.6(A): next rating at or above Imin"},
    {"wiring.terminal_ampacity", "A", "At", "NFPA 70 110.14(C) and the table of ampacities"},
    {"wiring.derated_ampacity", "A * Ft * Fn", "Ad", "NFPA 70 310.15"},
    {"wiring.ampacity", "min(At, Ad)", "A", "NFPA 70 110.14(C) and 310.15: the lesser of both"},
    {"wiring.ground_upsized", "B * M / Mr", "Mg", "NFPA 70 250.122(B)"},
    {"wiring.neutral_reduced", "T + f * (L - T)", "N", "NFPA 70 220.61(B)"},
    {"wiring.neutral_current", "max(N, P)", "In", "NFPA 70 220.61, and the phasor sum of both legs"},
    {"wiring.drop_along", "d * (r * ir - x * ii + rn * nr - xn * ni)", "a",
     "Ohm's law, part along the leg's volts"},
    {"wiring.drop_across", "d * (r * ii + x * ir + rn * ni + xn * nr)", "b",
     "Ohm's law, part across the leg's volts"},
    {"wiring.drop_leg", "E - sqrt((E - a)^2 + b^2)", "dV",
     "magnitude of the phasor that is left at the load"},
    {"wiring.dc_current", "P / V", "I", "power over the lowest input voltage that rated output is held at"},
    {"wiring.dc_required", "k * I", "Ir", "NFPA 70 706: circuits of energy storage count as continuous"},
    {"wiring.drop_of_way", "sum(d)", "d", "pieces of one way in series"},
    {"wiring.dc_drop", "2 * d * R * I", "dV", "Ohm's law, both ways"},
    {"wiring.bus_source", "k * I", "S", "NFPA 70 705.12(B): 125 % of the source's current"},
    {"wiring.bus_sum", "M + S", "B", "NFPA 70 705.12(B)"},
    {"wiring.raceway_area", "sum(a)", "A",
     "sum of the areas of NFPA 70 Chapter 9 Table 5, and of cables by Note 9"},
    {"wiring.raceway_fill", "A / At", "f", "NFPA 70 Chapter 9 Table 1: share of the raceway's area"},
    {"wiring.box_volume", "sum(v)", "V", "NFPA 70 314.16(B)"},
    {"wiring.space_area", "sum(a)", "A",
     "sum of the areas of NFPA 70 Chapter 9 Table 5, both ends of each joint"},
    {"wiring.space_share", "k * S", "Sk", "NFPA 70 312.8(A)"},
    {"wiring.space_fill", "A / S", "f", "NFPA 70 312.8(A): share of the wiring space"},
};

}  // namespace

const std::span<const FormulaRow> wiring(kRows);

}  // namespace stayalight::formulas_of
