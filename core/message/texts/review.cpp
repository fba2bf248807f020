#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"review.name", TEXT("Stayalight", "review")},
};

}  // namespace

const std::span<const TextRow> review(kRows);

}  // namespace stayalight::texts_of
