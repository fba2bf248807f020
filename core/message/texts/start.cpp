#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"start.from_nameplate", TEXT("Stayalight", "%1: start current as entered")},
    {"start.from_code", TEXT("Stayalight", "%1: start current from its code letter, upper end of the band")},
    {"start.from_table",
     TEXT("Stayalight", "%1: start current from its horsepower; the nameplate would tell better")},
    {"start.from_class_range",
     TEXT("Stayalight", "%1: start current from its class, a wide range; read the nameplate")},
    {"start.from_running", TEXT("Stayalight", "%1: a drive starts at about its running current")},
    {"start.from_nothing", TEXT("Stayalight", "%1: nobody knows its start current; read the nameplate")},
    {"start.on_leg", TEXT("Stayalight", "%1 while it starts")},
    {"start.on_leg_unfavourable",
     TEXT("Stayalight", "%1 while it starts, each figure at its unfavourable end")},
    {"start.left_on_leg", TEXT("Stayalight", "%1: left to the limit")},
    {"start.on_both", TEXT("Stayalight", "Both legs together while it starts")},
    {"start.on_both_unfavourable",
     TEXT("Stayalight", "Both legs together while it starts, each figure at its unfavourable end")},
    {"start.left_on_both", TEXT("Stayalight", "Both legs together: left to the limit")},
    {"start.from_battery", TEXT("Stayalight", "Current from the battery while it starts")},
};

}  // namespace

const std::span<const TextRow> start(kRows);

}  // namespace stayalight::texts_of
