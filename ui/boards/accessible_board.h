#pragma once

namespace stayalight {

/// Makes boards readable: each a table of its spaces. Called once by the view; again is harmless.
void installBoardAccessibility();

}  // namespace stayalight
