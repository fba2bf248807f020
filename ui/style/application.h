#pragma once

#include "ui/style/palette.h"

class QApplication;

namespace stayalight {

/// How much larger than usual the system's font is, 1 or more; all sizes follow it.
[[nodiscard]] double systemScale();

/// Fusion style, the built-in text face and the palette; again after a change of theme.
void applyStyle(QApplication& application, const Palette& palette);

/// Dark where the desktop's window text is lighter than its window.
[[nodiscard]] Theme themeOfDesktop(const QPalette& desktop);

}  // namespace stayalight
