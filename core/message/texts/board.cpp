#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"board.name", TEXT("Stayalight", "board")},
};

}  // namespace

const std::span<const TextRow> board(kRows);

}  // namespace stayalight::texts_of
