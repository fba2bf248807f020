#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"use.name", TEXT("Stayalight", "use")},
};

}  // namespace

const std::span<const TextRow> use(kRows);

}  // namespace stayalight::texts_of
