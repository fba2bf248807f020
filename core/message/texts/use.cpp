#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"use.breaker_running", TEXT("Stayalight", "breaker %1 of %2, on %3, everything on it running")},
    {"use.connected_of_leg", TEXT("Stayalight", "%1, everything on at once")},
    {"use.average_of_leg", TEXT("Stayalight", "%1, average of the hour")},
    {"use.peak_of_leg",
     TEXT("Stayalight", "%1, likely peak of the hour: exceeded in 1 % of it, loads taken as independent")},
    {"use.peak_of_both",
     TEXT("Stayalight",
          "Both legs, likely peak of the hour: exceeded in 1 % of it, loads taken as independent")},
    {"use.neutral_carries", TEXT("Stayalight", "Neutral, average of the hour: what the legs do not cancel")},
};

}  // namespace

const std::span<const TextRow> use(kRows);

}  // namespace stayalight::texts_of
