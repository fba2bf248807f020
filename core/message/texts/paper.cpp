#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"paper.name", TEXT("Stayalight", "paper")},
};

}  // namespace

const std::span<const TextRow> paper(kRows);

}  // namespace stayalight::texts_of
