#include "ui/style/application.h"

#include <QtGui/QFontInfo>
#include <QtWidgets/QApplication>
#include <algorithm>
#include <cmath>

#include "ui/style/program_style.h"

namespace stayalight {

double systemScale() {
  // Read once, before the program's own face replaces the system's.
  static const double scale = std::max(1.0, QFontInfo(QApplication::font()).pixelSize() / 13.0);
  return scale;
}

int scaled(double units) { return static_cast<int>(std::lround(units * systemScale())); }

QFont screenFont(Face face, double units, Weight weight, bool italic) {
  return font(face, units * systemScale(), weight, italic);
}

void applyStyle(QApplication& application, const Palette& palette) {
  (void)systemScale();
  if (!loadFaces()) qCritical("a built-in typeface could not be loaded");
  application.setStyle(new ProgramStyle(palette));
  application.setPalette(widgetPalette(palette));
  application.setFont(screenFont(Face::condensed, 12.0));
}

Theme themeOfDesktop(const QPalette& desktop) {
  return desktop.color(QPalette::WindowText).lightness() > desktop.color(QPalette::Window).lightness()
             ? Theme::dark
             : Theme::light;
}

}  // namespace stayalight
