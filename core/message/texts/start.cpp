#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"start.name", TEXT("Stayalight", "start")},
};

}  // namespace

const std::span<const TextRow> start(kRows);

}  // namespace stayalight::texts_of
