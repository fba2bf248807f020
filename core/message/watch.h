#pragma once

// Long work that somebody watches and may stop.

#include <functional>

namespace stayalight {

/// Told now and then, on the thread of the work, which share of it is done (0 to 1); answers whether to go
/// on.
using Watch = std::function<bool(double share)>;

/// True also where nobody watches.
[[nodiscard]] inline bool goesOn(const Watch& watch, double share) { return !watch || watch(share); }

}  // namespace stayalight
