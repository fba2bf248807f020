#pragma once

// The feeder as a one-line, as a value: boxes, lines, marks and texts with their places. Painting and the
// test that nothing lies on something else read this one list.

#include <QtCore/QPointF>
#include <QtCore/QRectF>
#include <QtCore/QSizeF>
#include <QtCore/QString>
#include <array>
#include <vector>

#include "core/assess/assess.h"

namespace stayalight {

struct FeederPicture {
  struct Box {
    QRectF rect;
    QString title, fact;
    bool twoLines = false;
  };
  struct Line {
    std::vector<QPointF> points;
    Segment segment = Segment::mainToSwitch;
    bool dashed = false;  ///< the way around the inverter
  };
  enum class Mark : std::uint8_t { breaker, conductors, contact, pivot, blade, off };
  struct Symbol {
    Mark mark = Mark::breaker;
    QPointF at;
    QPointF to;  ///< of the blade
    bool upright = false;
    [[nodiscard]] QRectF rect() const;  ///< what it covers
  };
  struct Text {
    QRectF rect;
    QString text;  ///< as it fits
    Qt::Alignment align = Qt::AlignLeft;
    bool strong = false;
  };
  std::vector<Box> boxes;
  std::vector<Line> lines;
  std::vector<Symbol> symbols;
  std::vector<Text> texts;
};

inline constexpr double kPictureText = 11.0;  ///< pixels

/// What the picture says, in words.
struct FeederFacts {
  struct Wire {
    QString device, size, ground;
  };
  struct Source {
    QString title, fact;
  };
  Arrangement arrangement = Arrangement::none;
  GeneratorPoint generatorAt = GeneratorPoint::none;
  std::vector<Segment> pieces;
  Source main, inverter, generator, backup;
  std::array<Wire, ChoiceWords<Segment>::words.size()> wires;
  QString off, bypass;
  [[nodiscard]] bool has(Segment segment) const;
};
[[nodiscard]] FeederFacts feederFacts(const Plan& plan, const Assessment& assessment,
                                      const Language& language);

/// Sources at the left, the backup subpanel at the right, the switch or the inverter between; a generator
/// where it comes in, a bypass around the top. Empty without an arrangement. `area` in pixels.
[[nodiscard]] FeederPicture feederPicture(const FeederFacts& facts, const QRectF& area);
/// Least and usual height of the area for what there is.
[[nodiscard]] double leastPictureHeight(const FeederFacts& facts);
[[nodiscard]] double pictureHeight(const FeederFacts& facts);

}  // namespace stayalight
