#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"edit.name", TEXT("Stayalight", "edit")},
};

}  // namespace

const std::span<const TextRow> edit(kRows);

}  // namespace stayalight::texts_of
