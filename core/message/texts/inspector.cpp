#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"inspector.name", TEXT("Stayalight", "inspector")},
};

}  // namespace

const std::span<const TextRow> inspector(kRows);

}  // namespace stayalight::texts_of
