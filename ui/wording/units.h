#pragma once

// Units that a figure is shown in: the plan, the rooms of core and the report know those of the code (ft, in,
// in², in³) and degrees Celsius; people read those of their setting. Conductors keep their size of the code,
// with the cross-section beside it where the units are metric. Marks of terminals and insulation ("75 °C")
// stay as printed.

#include <QtCore/QString>

#include "core/message/message.h"
#include "core/quantity/conductor.h"

namespace stayalight {

/// ft, in, in², in³, °F; or m, mm, cm², cm³, °C.
enum class UnitSystem : std::uint8_t { us, metric };

/// Of the program's language; US for any other.
[[nodiscard]] UnitSystem unitsOf(const Language& language);
/// The figure in these units, with as many digits as say the same.
[[nodiscard]] Figure inUnits(const Figure& figure, UnitSystem units);
/// A conductor as core writes it, "6 AWG Cu", with its cross-section behind it where the units are metric;
/// any other text as it is.
[[nodiscard]] std::string inUnits(const std::string& text, UnitSystem units);
/// "0.304 in²", "1.96 cm²".
[[nodiscard]] QString figureText(const Figure& figure, const Language& language);
/// "13.3 mm²"
[[nodiscard]] QString crossSectionText(ConductorSize size, const Language& language);
/// "6 AWG", "6 AWG (13.3 mm²)"; with a metal "6 AWG Cu (13.3 mm²)".
[[nodiscard]] QString conductorText(ConductorSize size, const Language& language);
[[nodiscard]] QString conductorText(ConductorSize size, Metal metal, const Language& language);

}  // namespace stayalight
