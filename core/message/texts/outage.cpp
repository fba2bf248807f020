#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"outage.name", TEXT("Stayalight", "outage")},
};

}  // namespace

const std::span<const TextRow> outage(kRows);

}  // namespace stayalight::texts_of
