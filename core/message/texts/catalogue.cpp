#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- reading a table
    {"catalogue.row", TEXT("Stayalight", "%1, line %2, column \"%3\": found \"%4\". %5")},
    {"catalogue.unclosed",
     TEXT("Stayalight", "%1, line %2: a cell begins with a quotation mark and never ends.")},
    {"catalogue.too_big", TEXT("Stayalight", "%1 is %2 bytes long; a list of loads has at most %3.")},
    {"catalogue.no_heading", TEXT("Stayalight", "%1 is empty; the first line must name the columns.")},
    {"catalogue.missing_column",
     TEXT("Stayalight", "%1, line %2: the column \"%3\" is missing, so no row can be read.")},
    {"catalogue.other_column",
     TEXT("Stayalight", "%1, line %2: there is no column \"%3\" in a list of loads; it is skipped.")},
    {"catalogue.column_twice",
     TEXT("Stayalight", "%1, line %2: the column \"%3\" stands twice; the first one counts.")},
    {"catalogue.too_many_cells", TEXT("Stayalight", "%1, line %2: %3 cells stand below %4 columns.")},
    {"catalogue.expected_number", TEXT("Stayalight", "A number was expected, with a point before decimals.")},
    {"catalogue.expected_whole", TEXT("Stayalight", "A whole number was expected.")},
    {"catalogue.expected_yes_no", TEXT("Stayalight", "\"yes\" or \"no\" was expected.")},
    {"catalogue.expected_one_of", TEXT("Stayalight", "One of these was expected: %1.")},
    {"catalogue.expected_window",
     TEXT("Stayalight",
          "A season, whole hours and a share were expected, for example \"winter 6-23 0.5\". Seasons: %1.")},
    {"catalogue.expected_text", TEXT("Stayalight", "This must not be empty.")},
    {"catalogue.expected_free_id", TEXT("Stayalight", "An id was expected that no row before has.")},
    {"catalogue.expected_order", TEXT("Stayalight", "Low, likely and high were expected in this order.")},
    {"catalogue.expected_both_ends", TEXT("Stayalight", "Low and high were expected together.")},
    {"catalogue.expected_power", TEXT("Stayalight", "Watts or amperes while it runs were expected.")},
};

}  // namespace

const std::span<const TextRow> catalogue(kRows);

}  // namespace stayalight::texts_of
