#pragma once

// Voltage drop of one segment.

#include "core/wiring/conductor.h"

namespace stayalight {

/// Chapter 9 Table 9 for the raceway, with the resistance of Table 8 (stranded) where that is larger: Table 9
/// is rounded to two digits. Empty where the tables have no cell.
[[nodiscard]] std::optional<Impedance> runImpedance(ConductorSize size, const RunConditions& conditions,
                                                    const Tables& tables = publishedTables());

/// Nominal phasor volts of a leg; for a wye whose order is not known, of the order that fits the current of
/// L2.
[[nodiscard]] std::complex<double> legVolts(Leg leg, const SystemVoltages& system,
                                            std::complex<double> currentOfL2);

/// Drop over the run with these sizes, with its steps.
[[nodiscard]] std::optional<DropFigure> runDrop(const std::array<std::complex<double>, 2>& legCurrent,
                                                ConductorSize line, ConductorSize neutral,
                                                const RunConditions& conditions, const SystemVoltages& system,
                                                Working* working = nullptr,
                                                const Tables& tables = publishedTables());

}  // namespace stayalight
