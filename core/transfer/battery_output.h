#pragma once

#include "core/transfer/transfer.h"

namespace stayalight {

/// What the packs let the inverters give all day: packs × continuous amperes at the lowest input voltage,
/// through the inverter's efficiency at that load, idle draw taken off; never above the rated watts. Nothing
/// where the amperes, the voltage, the efficiency or the rated watts are not known.
[[nodiscard]] std::optional<Watts> batteryOutput(const Inverter& inverter, const Battery& battery);

}  // namespace stayalight
