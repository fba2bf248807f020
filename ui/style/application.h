#pragma once

#include "ui/style/fonts.h"
#include "ui/style/palette.h"

class QApplication;

namespace stayalight {

/// How much larger than usual the system's font is, 1 or more; all sizes follow it.
[[nodiscard]] double systemScale();
/// A length in layout units as whole pixels of that size.
[[nodiscard]] int scaled(double units);
/// A font of the program's faces for a widget: `units` as if the system's font had its usual size.
[[nodiscard]] QFont screenFont(Face face, double units, Weight weight = Weight::regular, bool italic = false);

/// Fusion style, the built-in text face and the palette; again after a change of theme.
void applyStyle(QApplication& application, const Palette& palette);

/// Dark where the desktop's window text is lighter than its window.
[[nodiscard]] Theme themeOfDesktop(const QPalette& desktop);

}  // namespace stayalight
