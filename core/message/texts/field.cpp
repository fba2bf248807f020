#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"field.not_a_number", TEXT("Stayalight", "%1 wants a number")},
    {"field.not_whole", TEXT("Stayalight", "%1 wants a whole number")},
    {"field.out_of_range", TEXT("Stayalight", "%1 is %2, but it must lie between %3 and %4")},
    {"field.not_yes_or_no", TEXT("Stayalight", "%1 wants true or false")},
    {"field.not_text", TEXT("Stayalight", "%1 wants a text")},
    {"field.text_too_long", TEXT("Stayalight", "%1 is %2 bytes long, but at most %3 are kept")},
    {"field.value_missing", TEXT("Stayalight", "%1 must have a value")},
    {"field.low_above_high", TEXT("Stayalight", "%1: low %2, likely %3 and high %4 must stand in this order")},
    {"field.unknown_size", TEXT("Stayalight", "%1 is \"%2\", which is no conductor size from 14 AWG to 500 kcmil")},
};

}  // namespace

const std::span<const TextRow> field(kRows);

}  // namespace stayalight::texts_of
