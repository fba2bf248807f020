#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- nameplate and foot of a board
    {"board.facts", TEXT("Stayalight", "%1  ·  %2  ·  %3")},
    {"board.rating", TEXT("Stayalight", "%1 A")},
    {"board.bus", TEXT("Stayalight", "%1 A bus")},
    {"board.rating_unknown", TEXT("Stayalight", "rating ?")},
    {"board.spaces", TEXT("Stayalight", "%1 space||%1 spaces")},
    {"board.bonded", TEXT("Stayalight", "bonded here")},
    {"board.isolated", TEXT("Stayalight", "neutral isolated")},
    {"board.bond_unknown", TEXT("Stayalight", "bond not known")},
    {"board.amps_note", TEXT("Stayalight", "amps: likely running")},
    {"board.peak_note", TEXT("Stayalight", "likely peak now")},
    {"board.leg_peak", TEXT("Stayalight", "%1  %2")},
    {"board.free_count", TEXT("Stayalight", "%1 of %2 free")},
    {"board.tie_note", TEXT("Stayalight", "tie: hots share one neutral")},
    // -- names of what feeds no circuit
    {"board.unnamed", TEXT("Stayalight", "Unnamed circuit")},
    {"board.feeder", TEXT("Stayalight", "Feeder, %1")},
    // -- second line of a two-pole cell
    {"board.volts_both", TEXT("Stayalight", "%1 V, both legs")},
    {"board.volts_three_wire", TEXT("Stayalight", "%1 V")},
    {"board.new_here", TEXT("Stayalight", "new")},
    {"board.back_fed", TEXT("Stayalight", "back-fed")},
    // -- states
    {"board.to", TEXT("Stayalight", "to %1")},
    {"board.blank", TEXT("Stayalight", "blank")},
    {"board.lands_here", TEXT("Stayalight", "lands here, %1")},
    {"board.leg_peak_after", TEXT("Stayalight", "%1 peak %2")},
    {"board.both_peaks_after", TEXT("Stayalight", "peaks %1, %2")},
    {"board.leaves_backup", TEXT("Stayalight", "peaks then %1, %2")},
    {"board.fits", TEXT("Stayalight", "fits here")},
    {"board.nothing_moves",
     TEXT("Stayalight", "This breaker feeds no circuit that could move to another panel.")},
    {"board.no_space_free", TEXT("Stayalight", "There is no space where it could go.")},
    // -- why a breaker cannot land, in the width of a space
    {"board.short.nothing_chosen", TEXT("Stayalight", "no circuit chosen")},
    {"board.short.no_such_circuit", TEXT("Stayalight", "no such circuit")},
    {"board.short.circuit_without_breaker", TEXT("Stayalight", "has no breaker yet")},
    {"board.short.already_there", TEXT("Stayalight", "stands here already")},
    {"board.short.never_moved", TEXT("Stayalight", "was never moved")},
    {"board.short.no_old_breaker", TEXT("Stayalight", "no old breaker here")},
    {"board.short.old_breaker_in_use", TEXT("Stayalight", "old breaker in use")},
    {"board.short.no_room", TEXT("Stayalight", "no free place here")},
    {"board.short.no_room_on_other_leg", TEXT("Stayalight", "no pair on both legs")},
    {"board.short.no_such_breaker", TEXT("Stayalight", "no such breaker")},
    {"board.short.breaker_removed", TEXT("Stayalight", "taken out in this plan")},
    {"board.short.swap_with_itself", TEXT("Stayalight", "the same breaker")},
    {"board.short.swap_other_room", TEXT("Stayalight", "not of one size")},
    {"board.short.swap_needs_circuits", TEXT("Stayalight", "feeds no circuit")},
    {"board.short.swap_within_group", TEXT("Stayalight", "share one neutral")},
    {"board.short.not_an_old_breaker", TEXT("Stayalight", "no old breaker")},
    {"board.short.still_feeds", TEXT("Stayalight", "feeds a circuit")},
    {"board.short.no_such_panel", TEXT("Stayalight", "no such panel")},
    {"board.short.no_such_space", TEXT("Stayalight", "no such space")},
    {"board.short.no_such_shape", TEXT("Stayalight", "no such breaker")},
    {"board.short.below_last_row", TEXT("Stayalight", "below the last row")},
    {"board.short.taken", TEXT("Stayalight", "taken already")},
    {"board.short.poles_on_one_leg", TEXT("Stayalight", "both hots on %1")},
    {"board.short.no_tandem", TEXT("Stayalight", "takes no tandem")},
    {"board.short.too_many_poles", TEXT("Stayalight", "too many poles")},
    {"board.short.nothing_moves", TEXT("Stayalight", "feeds no circuit")},
    {"board.short.no_space_free", TEXT("Stayalight", "no space for it")},
    // -- what a screen reader says of a cell: a list of these
    {"board.cell", TEXT("Stayalight", "%1")},
    {"board.cell_space", TEXT("Stayalight", "Space %1")},
    {"board.cell_spaces", TEXT("Stayalight", "Spaces %1")},
    {"board.cell_named", TEXT("Stayalight", "%1")},
    {"board.cell_rating", TEXT("Stayalight", "%1 ampere")},
    {"board.cell_poles", TEXT("Stayalight", "%1 pole||%1 poles")},
    {"board.cell_leg", TEXT("Stayalight", "%1")},
    {"board.cell_both_legs", TEXT("Stayalight", "L1 and L2")},
    {"board.cell_current", TEXT("Stayalight", "%1")},
    {"board.cell_current_unknown", TEXT("Stayalight", "current not known")},
    {"board.cell_backed_up", TEXT("Stayalight", "backed up")},
    {"board.cell_moved", TEXT("Stayalight", "moved to %1, space %2")},
    {"board.cell_free", TEXT("Stayalight", "free")},
    {"board.cell_free_half", TEXT("Stayalight", "half free")},
    {"board.cell_new", TEXT("Stayalight", "new breaker")},
    {"board.cell_shared", TEXT("Stayalight", "shares a neutral")},
    {"board.cell_split", TEXT("Stayalight", "shares a neutral with a circuit in another panel")},
    {"board.cell_finding", TEXT("Stayalight", "finding: %1")},
    {"board.cell_selected", TEXT("Stayalight", "selected")},
    {"board.cell_carried", TEXT("Stayalight", "being moved")},
    {"board.cell_matches", TEXT("Stayalight", "found")},
    {"board.table_name", TEXT("Stayalight", "%1, %2, %3 of %4 free")},
    // -- which panel a board shows
    {"board.left_label", TEXT("Stayalight", "&Left board")},
    {"board.right_label", TEXT("Stayalight", "&Right board")},
    {"board.left_shows", TEXT("Stayalight", "Panel on the left board")},
    {"board.right_shows", TEXT("Stayalight", "Panel on the right board")},
    {"board.unnamed_panel", TEXT("Stayalight", "Panel %1")},
    // -- raceway between the boards
    {"board.raceway", TEXT("Stayalight", "Raceway")},
    {"board.nipple", TEXT("Stayalight", "Nipple")},
    {"board.cable", TEXT("Stayalight", "Cable")},
    // -- the drawing as a file
    {"board.drawing_title", TEXT("Stayalight", "%1: boards")},
    {"board.unknown_suffix", TEXT("Stayalight", "%1: a drawing ends in .png or .svg")},
    {"board.not_written", TEXT("Stayalight", "%1: cannot be written: %2")},
};

}  // namespace

const std::span<const TextRow> board(kRows);

}  // namespace stayalight::texts_of
