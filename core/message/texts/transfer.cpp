#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"transfer.name", TEXT("Stayalight", "transfer")},
};

}  // namespace

const std::span<const TextRow> transfer(kRows);

}  // namespace stayalight::texts_of
