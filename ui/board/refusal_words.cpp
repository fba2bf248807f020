#include "ui/board/refusal_words.h"

#include <algorithm>
#include <iterator>

namespace stayalight {
namespace {

struct Pair {
  MessageId whole;
  MessageId shorter;
  std::size_t argument = 9;  ///< of the whole sentence, that the short one takes; beyond them: none
};
constexpr Pair kPairs[] = {
    {MessageId{"edit.nothing_chosen"}, MessageId{"board.short.nothing_chosen"}},
    {MessageId{"edit.no_such_circuit"}, MessageId{"board.short.no_such_circuit"}},
    {MessageId{"edit.circuit_without_breaker"}, MessageId{"board.short.circuit_without_breaker"}},
    {MessageId{"edit.already_there"}, MessageId{"board.short.already_there"}},
    {MessageId{"edit.never_moved"}, MessageId{"board.short.never_moved"}},
    {MessageId{"edit.no_old_breaker"}, MessageId{"board.short.no_old_breaker"}},
    {MessageId{"edit.old_breaker_in_use"}, MessageId{"board.short.old_breaker_in_use"}},
    {MessageId{"edit.no_room"}, MessageId{"board.short.no_room"}},
    {MessageId{"edit.no_room_on_other_leg"}, MessageId{"board.short.no_room_on_other_leg"}},
    {MessageId{"edit.no_such_breaker"}, MessageId{"board.short.no_such_breaker"}},
    {MessageId{"edit.breaker_removed"}, MessageId{"board.short.breaker_removed"}},
    {MessageId{"edit.swap_with_itself"}, MessageId{"board.short.swap_with_itself"}},
    {MessageId{"edit.swap_other_room"}, MessageId{"board.short.swap_other_room"}},
    {MessageId{"edit.swap_needs_circuits"}, MessageId{"board.short.swap_needs_circuits"}},
    {MessageId{"edit.swap_within_group"}, MessageId{"board.short.swap_within_group"}},
    {MessageId{"edit.not_an_old_breaker"}, MessageId{"board.short.not_an_old_breaker"}},
    {MessageId{"edit.still_feeds"}, MessageId{"board.short.still_feeds"}},
    {MessageId{"panel.no_such_panel"}, MessageId{"board.short.no_such_panel"}},
    {MessageId{"panel.no_such_space"}, MessageId{"board.short.no_such_space"}},
    {MessageId{"panel.no_such_shape"}, MessageId{"board.short.no_such_shape"}},
    {MessageId{"panel.below_last_row"}, MessageId{"board.short.below_last_row"}},
    {MessageId{"panel.taken"}, MessageId{"board.short.taken"}},
    {MessageId{"panel.poles_on_one_leg"}, MessageId{"board.short.poles_on_one_leg"}, 1},
    {MessageId{"panel.no_tandem"}, MessageId{"board.short.no_tandem"}},
    {MessageId{"panel.too_many_poles"}, MessageId{"board.short.too_many_poles"}},
    {MessageId{"board.nothing_moves"}, MessageId{"board.short.nothing_moves"}},
    {MessageId{"board.no_space_free"}, MessageId{"board.short.no_space_free"}},
};

}  // namespace

Message shortForm(const Message& refusal) {
  const auto pair = std::find_if(std::begin(kPairs), std::end(kPairs),
                                 [&](const Pair& row) { return row.whole == refusal.id; });
  if (pair == std::end(kPairs)) return refusal;
  Message out{pair->shorter, {}};
  if (pair->argument < refusal.arguments.size()) out.arguments.push_back(refusal.arguments[pair->argument]);
  return out;
}

}  // namespace stayalight
