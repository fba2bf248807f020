#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"file.not_json", TEXT("Stayalight", "%1 is not a plan: line %2, column %3: %4")},
};

}  // namespace

const std::span<const TextRow> file(kRows);

}  // namespace stayalight::texts_of
