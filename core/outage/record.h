#pragma once

// Writes down how the runtime of the likely run came about.

#include "core/message/working.h"
#include "core/outage/outage.h"

namespace stayalight {

void recordOutage(const Plan& plan, const OutageFigures& figures, Working& working);

}  // namespace stayalight
