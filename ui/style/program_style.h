#pragma once

#include <QtWidgets/QProxyStyle>

#include "ui/style/palette.h"

class QStyleOptionProgressBar;
class QStyleOptionSlider;

namespace stayalight {

/// Smallest side of what a finger or a pointer presses, in pixels: WCAG 2.2, success criterion 2.5.8.
inline constexpr int kLeastTarget = 24;

/// Fusion with the edges of fields and buttons, scroll bars, progress and splitters in the palette's colour:
/// Fusion darkens the window's, which leaves a field in the dark theme without an edge, and a scroll bar in
/// high contrast white on white. Flat, heads of tables too. Bars have no lines of their own. Whatever is
/// pressed is at least `kLeastTarget` high and wide. A turn of the wheel over a list of choices scrolls what
/// is around it; it never chooses, and gives no focus.
class ProgramStyle final : public QProxyStyle {
 public:
  explicit ProgramStyle(const Palette& palette);
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
  [[nodiscard]] QRect subElementRect(SubElement element, const QStyleOption* option,
                                     const QWidget* widget) const override;
  [[nodiscard]] QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                       const QWidget* widget) const override;
  using QProxyStyle::polish;
  void polish(QWidget* widget) override;
  int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                QStyleHintReturn* back) const override;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void drawScrollBar(QPainter* painter, const QStyleOptionSlider& bar, const QWidget* widget) const;
  void drawProgress(QPainter* painter, const QStyleOptionProgressBar& progress) const;
  void frame(QPainter* painter, const QStyleOption& option, ColorRole ground, bool fill) const;

  Palette palette_;
};

}  // namespace stayalight
