#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- moving
    {"edit.nothing_chosen", TEXT("Stayalight", "No circuit is chosen")},
    {"edit.no_such_circuit", TEXT("Stayalight", "There is no such circuit")},
    {"edit.circuit_without_breaker",
     TEXT("Stayalight", "%1 has no breaker as planned, so nothing says how much room it needs")},
    {"edit.already_there", TEXT("Stayalight", "%1 stands in %2 already")},
    {"edit.never_moved", TEXT("Stayalight", "%1 stands where it always stood")},
    {"edit.no_old_breaker", TEXT("Stayalight", "%1 is new: no old breaker fed it before")},
    {"edit.old_breaker_in_use", TEXT("Stayalight", "The old breaker of %1, at %2, has another use now")},
    {"edit.no_room", TEXT("Stayalight", "%1 has no free place left for %2")},
    {"edit.no_room_on_other_leg",
     TEXT("Stayalight",
          "%1 has no free places on opposite legs for %2 and the circuits that share its neutral")},
    // -- places
    {"edit.no_such_breaker", TEXT("Stayalight", "There is no such breaker")},
    {"edit.breaker_removed", TEXT("Stayalight", "The breaker of %1 is taken out in this plan")},
    {"edit.swap_with_itself", TEXT("Stayalight", "Two breakers are needed for an exchange")},
    {"edit.swap_other_room", TEXT("Stayalight", "%1 and %2 do not take the same room")},
    {"edit.swap_needs_circuits",
     TEXT("Stayalight", "Breakers of two panels can be exchanged only where both feed a circuit")},
    {"edit.swap_within_group", TEXT("Stayalight", "Both circuits share one neutral and belong in one panel")},
    {"edit.not_an_old_breaker", TEXT("Stayalight", "%1 is no breaker that a moved circuit left behind")},
    {"edit.still_feeds", TEXT("Stayalight", "This breaker feeds %1 as planned")},
    // -- adding and removing
    {"edit.main_panel_name", TEXT("Stayalight", "Main panel")},
    {"edit.subpanel_name", TEXT("Stayalight", "Subpanel")},
    {"edit.backup_subpanel_name", TEXT("Stayalight", "Backup subpanel")},
    {"edit.no_space_free", TEXT("Stayalight", "%1 has no free place of this size")},
    {"edit.nothing_in_part", TEXT("Stayalight", "There is no circuit in it")},
    {"edit.kept_is_gone", TEXT("Stayalight", "This entry is not in the plan's list any more")},
    {"edit.kept_name_taken", TEXT("Stayalight", "The plan's list holds \"%1\" already")},
    {"edit.kept_without_name", TEXT("Stayalight", "An entry of a list needs a name")},
    {"edit.not_kept",
     TEXT("Stayalight", "Only loads, inverters, batteries and panels go into the plan's own lists")},
    {"edit.no_such_load", TEXT("Stayalight", "There is no such load")},
    {"edit.no_such_record", TEXT("Stayalight", "This part of the plan is not there any more")},
    {"edit.record_stays", TEXT("Stayalight", "This part belongs to every plan and cannot be taken away")},
    {"edit.last_main_panel", TEXT("Stayalight", "A plan keeps its main panel")},
    // -- fields
    {"edit.no_such_field", TEXT("Stayalight", "A %1 has no field \"%2\"")},
    {"edit.no_such_list", TEXT("Stayalight", "A %1 has no list \"%2\" to add to")},
    {"edit.id_stays", TEXT("Stayalight", "An id never changes")},
    {"edit.no_such_id", TEXT("Stayalight", "%1 names %2, which is not in the plan")},
    {"edit.breaker_needs_panel", TEXT("Stayalight", "A breaker stands in a panel")},
    {"edit.stood_there_before", TEXT("Stayalight", "%1 stood at %2 before the work")},
    {"edit.cuts_off_breaker", TEXT("Stayalight", "%1 would have no space for %2, which stands there")},
    {"edit.breaker_does_not_stand",
     TEXT("Stayalight", "The breaker of %1 does not stand in its panel in that state")},
    {"edit.breaker_feeds_other", TEXT("Stayalight", "The breaker at %1 feeds something else")},
    {"edit.fed_in_circle", TEXT("Stayalight", "%1 would be fed from itself")},
    {"edit.feeds_itself", TEXT("Stayalight", "A breaker cannot feed the panel it stands in")},
    {"edit.space_twice", TEXT("Stayalight", "Space %1 is listed already")},
    {"edit.all_spaces_listed", TEXT("Stayalight", "Every space is listed already")},
    {"edit.times_ascend", TEXT("Stayalight", "The times of the overload curve must rise from row to row")},
    // -- shared neutrals
    {"edit.neutral_needs_two", TEXT("Stayalight", "A neutral is shared by two circuits or more")},
    {"edit.no_neutral_group", TEXT("Stayalight", "%1 shares its neutral with no other circuit")},
    {"edit.whole_hours", TEXT("Stayalight", "%1 wants a whole hour")},
};

}  // namespace

const std::span<const TextRow> edit(kRows);

}  // namespace stayalight::texts_of
