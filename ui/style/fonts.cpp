#include "ui/style/fonts.h"

#include <QtCore/QHash>
#include <QtCore/QStringList>
#include <QtGui/QFontDatabase>
#include <QtGui/QFontMetricsF>
#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

namespace stayalight {
namespace {

// Fonts know whole pixels only; text is drawn at this many times its size and scaled down by the painter of
// boards.
constexpr int kMeasuredPixels = 100;

QString family(Face face, Weight weight, bool italic) {
  switch (face) {
    case Face::text:
      return weight == Weight::medium && !italic ? QStringLiteral("Roboto Medium") : QStringLiteral("Roboto");
    case Face::condensed:
      return weight == Weight::medium && !italic ? QStringLiteral("Roboto Condensed Medium")
                                                 : QStringLiteral("Roboto Condensed");
    case Face::engraved:
      return QStringLiteral("Routed Gothic Wide");
  }
  return {};
}

QFont baseFont(Face face, Weight weight, bool italic) {
  QFont out(family(face, weight, italic));
  out.setStyleStrategy(static_cast<QFont::StyleStrategy>(QFont::PreferNoShaping | QFont::PreferAntialias));
  out.setHintingPreference(QFont::PreferNoHinting);
  if (face != Face::engraved) {
    out.setWeight(weight == Weight::bold     ? QFont::Bold
                  : weight == Weight::medium ? QFont::Medium
                                             : QFont::Normal);
    out.setItalic(italic);
  }
  return out;
}

const QFontMetricsF& metrics(Face face, Weight weight, bool italic) {
  static std::array<std::array<std::array<std::unique_ptr<QFontMetricsF>, 2>, 3>, 3> all;
  auto& slot = all[static_cast<std::size_t>(face)][static_cast<std::size_t>(weight)][italic ? 1 : 0];
  if (!slot) {
    QFont large = baseFont(face, weight, italic);
    large.setPixelSize(kMeasuredPixels);
    slot = std::make_unique<QFontMetricsF>(large);
  }
  return *slot;
}

// What letters really cover, capitals with accents and tails among them: the line height of a face is larger.
const QRectF& extent(Face face) {
  static std::array<std::unique_ptr<QRectF>, 3> all;
  auto& slot = all[static_cast<std::size_t>(face)];
  if (!slot) {
    slot = std::make_unique<QRectF>(
        metrics(face, Weight::regular, false).tightBoundingRect(QStringLiteral("ÀÊÑÜbdfhklgjpqyç")));
  }
  return *slot;
}

}  // namespace

bool loadFaces() {
  static const bool loaded = [] {
    bool all = true;
    for (const char* file : {"RobotoCondensed-Regular", "RobotoCondensed-Medium", "RobotoCondensed-Bold",
                             "RobotoCondensed-Italic", "Roboto-Regular", "Roboto-Medium", "Roboto-Bold",
                             "Roboto-Italic", "routed-gothic-wide"}) {
      const int id =
          QFontDatabase::addApplicationFont(QStringLiteral(":/faces/%1.ttf").arg(QLatin1String(file)));
      all = all && id >= 0;
    }
    return all;
  }();
  return loaded;
}

QFont font(Face face, double pixels, Weight weight, bool italic) {
  QFont out = baseFont(face, weight, italic);
  // A point size at 72 dots per inch would keep fractions, but follows the screen; so: the nearest whole
  // pixel.
  out.setPixelSize(std::max(1, static_cast<int>(std::lround(pixels))));
  return out;
}

double textWidth(const QString& text, Face face, double pixels, Weight weight, bool italic) {
  return metrics(face, weight, italic).horizontalAdvance(text) * pixels / kMeasuredPixels;
}

double ascent(Face face, double pixels) { return -extent(face).top() * pixels / kMeasuredPixels; }

double descent(Face face, double pixels) { return extent(face).bottom() * pixels / kMeasuredPixels; }

QString elided(const QString& text, double width, Face face, double pixels, Weight weight, bool italic) {
  if (textWidth(text, face, pixels, weight, italic) <= width) return text;
  return metrics(face, weight, italic).elidedText(text, Qt::ElideRight, width * kMeasuredPixels / pixels);
}

}  // namespace stayalight
