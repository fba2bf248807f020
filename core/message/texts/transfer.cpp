#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"transfer.bond_in_panel", TEXT("Stayalight", "bond in %1")},
    {"transfer.bond_perhaps_in_panel", TEXT("Stayalight", "perhaps a bond in %1, not known")},
    {"transfer.bond_at_service",
     TEXT("Stayalight", "bond at the service disconnect ahead of the main panel")},
    {"transfer.bond_perhaps_at_service",
     TEXT("Stayalight", "perhaps a bond at a service disconnect ahead of the main panel, not known")},
    {"transfer.bond_in_inverter", TEXT("Stayalight", "bond in the inverter")},
    {"transfer.bond_in_generator", TEXT("Stayalight", "bond in the generator")},
    {"transfer.bond_perhaps_in_generator", TEXT("Stayalight", "perhaps a bond in the generator, not known")},
    {"transfer.bond_perhaps_in_inverter", TEXT("Stayalight", "perhaps a bond in the inverter, not known")},
};

}  // namespace

const std::span<const TextRow> transfer(kRows);

}  // namespace stayalight::texts_of
