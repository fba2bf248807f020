#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"outage.missing.backup", TEXT("Stayalight", "A backup subpanel with the circuits that shall stay on")},
    {"outage.missing.loads", TEXT("Stayalight", "Loads on the circuits of the backup subpanel")},
    {"outage.missing.nominal", TEXT("Stayalight", "Nominal energy of one battery pack in kWh")},
    {"outage.missing.health", TEXT("Stayalight", "Health of the battery: the capacity left, 100 % when new")},
    {"outage.missing.temperature",
     TEXT("Stayalight",
          "Temperature of the battery's cells in this month, since it stands outside the heated rooms")},
    {"outage.missing.too_cold", TEXT("Stayalight",
                                     "A warmer place for the battery, or the figure of its listing: what it "
                                     "holds at %1 is not known, and most packs stop")},
    {"outage.missing.efficiency", TEXT("Stayalight",
                                       "Efficiency of the inverter: its marginal efficiency with the idle "
                                       "draw, or the curve of its label")},
    {"outage.missing.idle", TEXT("Stayalight", "Idle draw of the inverter in watts")},
    {"outage.missing.rated_output",
     TEXT("Stayalight",
          "Rated output of the inverter in watts, which the points of its efficiency curve are shares of")},
    {"outage.missing.watts", TEXT("Stayalight", "Running watts of %1")},
};

}  // namespace

const std::span<const TextRow> outage(kRows);

}  // namespace stayalight::texts_of
