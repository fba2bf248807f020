#pragma once

// Hours of use in one cell: "all day", "6 a.m. to 10 p.m.", "5 h". Free of Qt.

#include "core/message/result.h"
#include "core/plan/circuit.h"

namespace stayalight {

/// The windows a typed text stands for: none (in use at all hours), from one whole hour to another ("6-22",
/// "6 p.m. to 11 p.m."), or so many hours a day whatever the hour ("5 h": each hour with that chance).
[[nodiscard]] Result<std::vector<UseWindow>> readHours(std::string_view text, char decimalMark);
/// What stands in the cell; windows that no text above makes are counted: "3 windows".
[[nodiscard]] std::string hoursText(const std::vector<UseWindow>& windows, const Language& language);
/// True where the windows can be typed over without losing what only the facts show.
[[nodiscard]] bool plainHours(const std::vector<UseWindow>& windows);

}  // namespace stayalight
