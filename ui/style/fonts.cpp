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

bool load(std::initializer_list<const char*> files) {
  bool all = true;
  for (const char* file : files) {
    const int id =
        QFontDatabase::addApplicationFont(QStringLiteral(":/faces/%1.ttf").arg(QLatin1String(file)));
    all = all && id >= 0;
  }
  return all;
}

QFont baseFont(Face face, Weight weight, bool italic) {
  if (face == Face::text) {
    // Few texts are set in it: read when the first one is.
    static const bool loaded = load({"Roboto-Regular", "Roboto-Medium", "Roboto-Bold", "Roboto-Italic"});
    if (!loaded) qCritical("a built-in typeface could not be loaded");
  }
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
  // Paper is drawn on a thread of its own too.
  thread_local std::array<std::array<std::array<std::unique_ptr<QFontMetricsF>, 2>, 3>, 3> all;
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
  thread_local std::array<std::unique_ptr<QRectF>, 3> all;
  auto& slot = all[static_cast<std::size_t>(face)];
  if (!slot) {
    slot = std::make_unique<QRectF>(
        metrics(face, Weight::regular, false).tightBoundingRect(QStringLiteral("ÀÊÑÜbdfhklgjpqyç")));
  }
  return *slot;
}

}  // namespace

bool loadFaces() {
  static const bool loaded = load({"RobotoCondensed-Regular", "RobotoCondensed-Medium",
                                   "RobotoCondensed-Bold", "RobotoCondensed-Italic", "routed-gothic-wide"});
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
  // The same words are measured again with each layout; measuring shapes them anew.
  constexpr qsizetype kMostKept = 8192;
  thread_local QHash<std::pair<int, QString>, double> kept;
  const int which = (static_cast<int>(face) * 3 + static_cast<int>(weight)) * 2 + (italic ? 1 : 0);
  const std::pair key(which, text);
  auto known = kept.constFind(key);
  if (known == kept.constEnd()) {
    if (kept.size() >= kMostKept) kept.clear();
    known = kept.insert(key, metrics(face, weight, italic).horizontalAdvance(text));
  }
  return *known * pixels / kMeasuredPixels;
}

double ascent(Face face, double pixels) { return -extent(face).top() * pixels / kMeasuredPixels; }

double descent(Face face, double pixels) { return extent(face).bottom() * pixels / kMeasuredPixels; }

QString elided(const QString& text, double width, Face face, double pixels, Weight weight, bool italic) {
  if (textWidth(text, face, pixels, weight, italic) <= width) return text;
  return metrics(face, weight, italic).elidedText(text, Qt::ElideRight, width * kMeasuredPixels / pixels);
}

}  // namespace stayalight
