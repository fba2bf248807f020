#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"shell.name", TEXT("Stayalight", "shell")},
};

}  // namespace

const std::span<const TextRow> shell(kRows);

}  // namespace stayalight::texts_of
