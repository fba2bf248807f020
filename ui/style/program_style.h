#pragma once

#include <QtWidgets/QProxyStyle>

#include "ui/style/palette.h"

namespace stayalight {

/// Fusion with the edges of fields and buttons in the palette's colour: Fusion darkens the window's, which
/// leaves a field in the dark theme without an edge. Bars have no lines of their own.
class ProgramStyle final : public QProxyStyle {
 public:
  explicit ProgramStyle(const Palette& palette);
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  [[nodiscard]] QRect subElementRect(SubElement element, const QStyleOption* option,
                                     const QWidget* widget) const override;
  int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                QStyleHintReturn* back) const override;

 private:
  void frame(QPainter* painter, const QStyleOption& option, ColorRole ground, bool fill) const;

  Palette palette_;
};

}  // namespace stayalight
