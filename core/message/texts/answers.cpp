#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"answers.name", TEXT("Stayalight", "answers")},
};

}  // namespace

const std::span<const TextRow> answers(kRows);

}  // namespace stayalight::texts_of
