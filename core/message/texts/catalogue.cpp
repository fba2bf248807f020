#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- reading a table
    {"catalogue.row", TEXT("Stayalight", "%1, line %2, column \"%3\": found \"%4\". %5")},
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
    // -- the panel and its rows
    {"catalogue.search_label", TEXT("Stayalight", "Search loads")},
    {"catalogue.search", TEXT("Stayalight", "for example: pump, fridge")},
    {"catalogue.list", TEXT("Stayalight", "Typical loads")},
    {"catalogue.target", TEXT("Stayalight", "Enter adds it to %1. Or drag it onto a breaker.")},
    {"catalogue.no_target",
     TEXT("Stayalight", "Select a circuit to add a load to, or drag it onto a breaker.")},
    {"catalogue.add", TEXT("Stayalight", "Add to the circuit")},
    {"catalogue.nothing_found", TEXT("Stayalight", "No load is called so. Another word, or fewer?")},
    {"catalogue.left_out",
     TEXT("Stayalight", "%1 row of your list was left out. %2||%1 rows of your list were left out. %2")},
    {"catalogue.watts", TEXT("Stayalight", "%1 W, %2 to %3 W")},
    {"catalogue.watts_only", TEXT("Stayalight", "%1 W")},
    {"catalogue.amperes_only", TEXT("Stayalight", "%1 A")},
    {"catalogue.volts", TEXT("Stayalight", "%1 V")},
    {"catalogue.start_amperes", TEXT("Stayalight", "%1, start %2 A")},
    {"catalogue.start_horsepower", TEXT("Stayalight", "%1, %2 hp")},
    {"catalogue.own", TEXT("Stayalight", "%1 (my list)")},
    {"catalogue.of_plan", TEXT("Stayalight", "%1 (this plan)")},
    {"catalogue.spoken", TEXT("Stayalight", "%1: %2")},
    {"catalogue.day", TEXT("Stayalight", "A day of use takes %1 to %2 kWh: %3.")},
    {"catalogue.old_unit", TEXT("Stayalight", "Old units took up to %1 W.")},
    {"catalogue.source", TEXT("Stayalight", "Source: %1.")},
    // -- own lists
    {"catalogue.own_rows",
     TEXT("Stayalight", "Nothing was added to %1: put this right first, so that no row is lost. %2")},
    {"catalogue.no_record", TEXT("Stayalight", "%1 holds nothing under \"%2\".")},
    {"catalogue.no_folder", TEXT("Stayalight", "The folder %1 cannot be made.")},
    {"catalogue.no_name", TEXT("Stayalight", "A name is needed; the old one stays.")},
    {"catalogue.name_taken", TEXT("Stayalight", "%1 is there already; the old name stays.")},
    {"catalogue.gone", TEXT("Stayalight", "%1 is not in the list any more.")},
    {"catalogue.not_removed", TEXT("Stayalight", "%1 could not be deleted: %2")},
    {"catalogue.lists.title", TEXT("Stayalight", "My lists and templates")},
    {"catalogue.lists.how", TEXT("Stayalight",
                                 "What you kept to use again, in every plan or in this one. F2 renames, Del "
                                 "deletes, Undo puts it back while this window is open. "
                                 "Plans keep what they took.")},
    {"catalogue.lists.empty", TEXT("Stayalight", "Nothing is kept yet.")},
    {"catalogue.lists.kind", TEXT("Stayalight", "Kind")},
    {"catalogue.lists.name", TEXT("Stayalight", "Name")},
    {"catalogue.lists.where", TEXT("Stayalight", "List")},
    {"catalogue.lists.every_plan", TEXT("Stayalight", "for every plan")},
    {"catalogue.lists.this_plan", TEXT("Stayalight", "this plan")},
    {"catalogue.lists.step_rename", TEXT("Stayalight", "rename %1 in the plan's list")},
    {"catalogue.lists.step_delete", TEXT("Stayalight", "delete %1 from the plan's list")},
    {"catalogue.lists.step_back", TEXT("Stayalight", "put the plan's list back")},
    {"catalogue.lists.template", TEXT("Stayalight", "template")},
    {"catalogue.lists.rename", TEXT("Stayalight", "Rename")},
    {"catalogue.lists.delete", TEXT("Stayalight", "Delete")},
    {"catalogue.lists.undo", TEXT("Stayalight", "Undo")},
    {"catalogue.lists.renamed", TEXT("Stayalight", "%1 is called %2 now.")},
    {"catalogue.lists.deleted", TEXT("Stayalight", "%1 was deleted. Undo puts it back.")},
    {"catalogue.lists.put_back", TEXT("Stayalight", "It is as before.")},
    {"catalogue.nothing_carried",
     TEXT("Stayalight", "No circuits were copied. Select some and copy them first.")},
    {"catalogue.clipboard", TEXT("Stayalight", "The clipboard")},
};

}  // namespace

const std::span<const TextRow> catalogue(kRows);

}  // namespace stayalight::texts_of
