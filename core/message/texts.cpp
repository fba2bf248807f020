#include <algorithm>

#include "core/message/message.h"

// Marks an English text for translation. lupdate is told that TEXT is an alias of QT_TRANSLATE_NOOP.
#define TEXT(context, english) english

namespace stayalight {
namespace {

// One section a room, each in the order of its keys. %1 to %9 are the arguments in the order the code gives them.
const TextRow kTexts[] = {
    // -- field: what is wrong with a value
    {"field.not_a_number", TEXT("Stayalight", "%1 wants a number")},
    {"field.not_whole", TEXT("Stayalight", "%1 wants a whole number")},
    {"field.out_of_range", TEXT("Stayalight", "%1 is %2, but it must lie between %3 and %4")},
    {"field.not_yes_or_no", TEXT("Stayalight", "%1 wants true or false")},
    {"field.not_text", TEXT("Stayalight", "%1 wants a text")},
    {"field.text_too_long", TEXT("Stayalight", "%1 is %2 bytes long, but at most %3 are kept")},
    {"field.value_missing", TEXT("Stayalight", "%1 must have a value")},
    {"field.low_above_high", TEXT("Stayalight", "%1: low %2, likely %3 and high %4 must stand in this order")},
    {"field.unknown_size", TEXT("Stayalight", "%1 is \"%2\", which is no conductor size from 14 AWG to 500 kcmil")},
    // -- file
    {"file.not_json", TEXT("Stayalight", "%1 is not a plan: line %2, column %3: %4")},
};

}  // namespace

const std::vector<TextRow>& texts() {
  static const std::vector<TextRow> sorted = [] {
    std::vector<TextRow> rows(std::begin(kTexts), std::end(kTexts));
    std::sort(rows.begin(), rows.end(), [](const TextRow& a, const TextRow& b) { return a.key < b.key; });
    return rows;
  }();
  return sorted;
}

}  // namespace stayalight
