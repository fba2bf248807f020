#include "core/message/formulas/sections.h"

namespace stayalight::formulas_of {
namespace {

const FormulaRow kRows[] = {
    {"wiring.load_current", "S / V", "I", "definition of apparent power"},
    {"wiring.load_rest", "(S - C) / V", "I", "definition of apparent power: what is not continuous"},
    {"wiring.output_current", "I", "I", "label of the inverter"},
    {"wiring.generator_conductor", "k * I", "I", "ampacity of a generator's conductors"},
    {"wiring.load_sum", "sum(I)", "I", "sum of what one conductor carries at one time"},
    {"wiring.device_minimum", "k * C + O", "Imin", "the standard: 125 % of the continuous part and the rest"},
    {"wiring.device_maximum", "min(R)", "Rmax",
     "label of the source, rating of switch, relay, inlet and bus"},
    {"wiring.standard_rating", "R", "R", "the standard: next rating at or above Imin"},
    {"wiring.terminal_ampacity", "A", "At", "the standard: the terminals' column of the table of ampacities"},
    {"wiring.derated_ampacity", "A * Ft * Fn", "Ad",
     "the standard: the insulation's column, corrected and adjusted"},
    {"wiring.ampacity", "min(At, Ad)", "A", "the standard: the lesser of both"},
    {"wiring.next_size_up", "R", "R", "the standard: the next rating above the ampacity A protects it too"},
    {"wiring.ground_upsized", "B * M / Mr", "Mg", "the standard: grows with the circuit conductors"},
    {"wiring.ground_size", "min(B, M)", "Mg",
     "the standard: the table, not larger than the ungrounded conductors"},
    {"wiring.neutral_reduced", "T + f * (L - T)", "N", "the standard: part above 200 A"},
    {"wiring.neutral_current", "max(N, P)", "In", "the standard, and the phasor sum of both legs"},
    {"wiring.neutral_size", "max(S)", "Mn", "the largest that one of them asks for"},
    {"wiring.drop_along", "d * (r * ir - x * ii + rn * nr - xn * ni)", "a",
     "Ohm's law, part along the leg's volts"},
    {"wiring.drop_across", "d * (r * ii + x * ir + rn * ni + xn * nr)", "b",
     "Ohm's law, part across the leg's volts"},
    {"wiring.drop_leg", "E - sqrt((E - a)^2 + b^2)", "dV",
     "magnitude of the phasor that is left at the load"},
    {"wiring.dc_current", "P / V", "I", "power over the lowest input voltage that rated output is held at"},
    {"wiring.dc_required", "k * I", "Ir", "the standard: circuits of energy storage count as continuous"},
    {"wiring.electrode_conductor", "G", "G", "the standard: by the conductors that supply the building"},
    {"wiring.least_disconnect", "D", "D", "the standard: by the circuits of the building"},
    {"wiring.dc_instructions", "I", "I", "listed instructions of the inverter"},
    {"wiring.drop_of_way", "sum(d)", "d", "pieces of one way in series"},
    {"wiring.dc_drop", "2 * d * R * I", "dV", "Ohm's law, both ways"},
    {"wiring.bus_source", "k * I", "S", "the standard: 125 % of the source's current"},
    {"wiring.bus_sum", "M + S", "B", "the standard: device ahead and sources"},
    {"wiring.bus_most", "k * B", "Bm", "the standard: the most with sources at opposite ends"},
    {"wiring.bus_breakers", "sum(R)", "B", "the standard: all breakers on the bus"},
    {"wiring.raceway_area", "sum(a)", "A",
     "sum of the areas of insulated conductors, and of cables by their larger diameter"},
    {"wiring.raceway_fill", "A / At", "f", "the standard: share of the raceway's area"},
    {"wiring.cable_area", "k * d^2", "a", "area of a circle of the cable's larger diameter"},
    {"wiring.raceway_allowed", "k * At", "Am", "the standard: inside area, and the share of it"},
    {"wiring.carrying", "max(n)", "n", "the standard: conductors that carry current at one time"},
    {"wiring.box_grounds", "n * v", "vg", "the standard: grounds together, as volumes of the largest"},
    {"wiring.box_space", "V", "Vb", "the standard: volume of the box"},
    {"wiring.box_volume", "sum(v)", "V", "the standard: volume of what is in the box"},
    {"wiring.space_area", "sum(a)", "A",
     "sum of the areas of insulated conductors, of what is spliced both ends"},
    {"wiring.space_share", "k * S", "Sk", "the standard: share of the wiring space"},
    {"wiring.space_fill", "A / S", "f", "share of the wiring space"},
};

}  // namespace

const std::span<const FormulaRow> wiring(kRows);

}  // namespace stayalight::formulas_of
