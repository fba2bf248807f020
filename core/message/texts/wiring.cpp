#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"wiring.name", TEXT("Stayalight", "wiring")},
};

}  // namespace

const std::span<const TextRow> wiring(kRows);

}  // namespace stayalight::texts_of
