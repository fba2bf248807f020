#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"panel.name", TEXT("Stayalight", "panel")},
};

}  // namespace

const std::span<const TextRow> panel(kRows);

}  // namespace stayalight::texts_of
