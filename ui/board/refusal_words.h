#pragma once

#include "core/message/message.h"

namespace stayalight {

/// A refusal of a move in so few words that a landing space holds them; the whole sentence stands in the card
/// and the status line. A message that has no short form is given back.
[[nodiscard]] Message shortForm(const Message& refusal);

}  // namespace stayalight
