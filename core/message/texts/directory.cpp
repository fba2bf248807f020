#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- a typed directory
    {"directory.no_number",
     TEXT("Stayalight", "Not read: it does not begin with the number of a space, like 7 or 3/5")},
    {"directory.three_spaces", TEXT("Stayalight", "Not read: more than two spaces for one breaker")},
    {"directory.halves",
     TEXT("Stayalight", "Not read: a half of a space takes one pole; write a line for each")},
    {"directory.poles_disagree", TEXT("Stayalight", "Not read: two spaces, but one pole")},
    {"directory.too_long", TEXT("Stayalight", "Not read: longer than %1 characters")},
    {"directory.taken_as_half", TEXT("Stayalight", "%1A was taken for the upper half of space %1")},
    {"directory.taken_as_rating", TEXT("Stayalight", "%1 was taken for the rating")},
    {"directory.added", TEXT("Stayalight", "New")},
    {"directory.added_noted", TEXT("Stayalight", "New; %1")},
    {"directory.added_without_rating",
     TEXT("Stayalight", "New; no rating given: %1 A until somebody has read it")},
    {"directory.spare", TEXT("Stayalight", "New, a spare breaker")},
    {"directory.empty", TEXT("Stayalight", "Empty space, nothing to add")},
    {"directory.already", TEXT("Stayalight", "There already")},
    {"directory.other_there", TEXT("Stayalight", "Not added: %1 stands there")},
    {"directory.breaker_there", TEXT("Stayalight", "Left as it is: a breaker stands there")},
    {"directory.no_such_space", TEXT("Stayalight", "Not added: %2 has no space %1")},
    {"directory.not_above",
     TEXT("Stayalight", "Not added: spaces %1 and %2 do not stand one above the other")},
    // -- tables of circuits
    {"csv.too_big", TEXT("Stayalight", "%1 is too large: %2 bytes, at most %3")},
    {"csv.open_quote", TEXT("Stayalight", "%1, line %2: a quotation mark opens a cell and none closes it")},
    {"csv.behind_quote",
     TEXT("Stayalight",
          "%1, line %2: behind a closing quotation mark a comma or the end of the line is expected")},
    {"csv.empty", TEXT("Stayalight", "%1 is empty: a first row with the names of the columns is expected")},
    {"csv.too_many_rows", TEXT("Stayalight", "%1 has %2 rows, at most %3 are read")},
    {"csv.no_column", TEXT("Stayalight", "%1 has no column \"%2\" in its first row")},
    {"csv.column_twice", TEXT("Stayalight", "%1 has the column \"%2\" twice")},
    {"csv.column_not_read", TEXT("Stayalight", "%1: the column \"%2\" is not known here and was not read")},
    {"csv.too_many_cells", TEXT("Stayalight", "%1, line %2: %3 cells, but the first row names %4 columns")},
    {"csv.cell", TEXT("Stayalight", "%1, line %2, column %3: \"%4\"; expected: %5")},
    {"csv.row", TEXT("Stayalight", "%1, line %2: %3")},
    {"csv.wants_number", TEXT("Stayalight", "a number")},
    {"csv.wants_whole", TEXT("Stayalight", "a whole number")},
    {"csv.wants_range", TEXT("Stayalight", "a number from %1 to %2")},
    {"csv.wants_yes_no", TEXT("Stayalight", "yes or no")},
    {"csv.wants_one_of", TEXT("Stayalight", "one of %1")},
    {"csv.wants_panel", TEXT("Stayalight", "a panel of the plan: %1")},
    {"csv.wants_space", TEXT("Stayalight", "a space of %1")},
    {"csv.wants_text", TEXT("Stayalight", "a text of at most %1 bytes")},
    {"csv.wants_order", TEXT("Stayalight", "low, value and high in this order")},
};

}  // namespace

const std::span<const TextRow> directory(kRows);

}  // namespace stayalight::texts_of
