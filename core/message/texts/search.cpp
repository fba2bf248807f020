#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"search.field", TEXT("Stayalight", "Find")},
    {"search.hint", TEXT("Stayalight", "circuit, room, note, load, space or finding")},
    {"search.count", TEXT("Stayalight", "%1 found||%1 found")},
    {"search.nothing", TEXT("Stayalight", "nothing found")},
    {"search.close", TEXT("Stayalight", "Close the search")},
    {"search.list", TEXT("Stayalight", "What was found")},
    {"search.row", TEXT("Stayalight", "%1, %2, %3")},
    {"search.in_field", TEXT("Stayalight", "%1: %2")},
    {"search.load_on", TEXT("Stayalight", "load on %1")},
    {"search.free_space", TEXT("Stayalight", "%1, space %2")},
    {"search.free", TEXT("Stayalight", "free")},
    {"search.finding", TEXT("Stayalight", "finding")},
};

}  // namespace

const std::span<const TextRow> search(kRows);

}  // namespace stayalight::texts_of
