#include "ui/style/application.h"

#include <QtWidgets/QApplication>
#include <QtWidgets/QStyleFactory>

#include "ui/style/fonts.h"

namespace stayalight {

void applyStyle(QApplication& application, const Palette& palette) {
  if (!loadFaces()) qCritical("a built-in typeface could not be loaded");
  application.setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  application.setPalette(widgetPalette(palette));
  // The size of the system's font, in our face, never below 12 px: the looks are drawn for a 12 px text.
  const double pixels = std::max(12.0, QFontInfo(application.font()).pixelSize() * 0.95);
  application.setFont(font(Face::text, pixels));
}

Theme themeOfDesktop(const QPalette& desktop) {
  return desktop.color(QPalette::WindowText).lightness() > desktop.color(QPalette::Window).lightness() ? Theme::dark : Theme::light;
}

}  // namespace stayalight
