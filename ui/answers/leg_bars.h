#pragma once

// Each leg against the inverter: two lanes on one amp scale. Above the likely peak with a tick for "all on"
// and a post at the all-day limit; below the other loads' likely peak with the worst start hatched on top,
// open to its high case.

#include <array>

#include "ui/answers/answers_text.h"
#include "ui/style/painted_widget.h"
#include "ui/style/palette.h"

namespace stayalight {

class LegBars : public PaintedWidget {
  Q_OBJECT
 public:
  explicit LegBars(QWidget* parent = nullptr);
  void show(const std::array<LegBar, 2>& bars, const Language& language);
  void setColors(const Palette& palette);

 Q_SIGNALS:
  void workingRequested(const stayalight::WorkingTarget& target);

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  [[nodiscard]] QSizeF least() const override;
  void paint(QPainter& painter) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  struct Scale {
    double left = 0.0, right = 0.0, amperes = 1.0;
    [[nodiscard]] double x(AcAmperes current) const {
      return left + (right - left) * std::min(1.0, std::max(0.0, current.count() / amperes));
    }
  };
  [[nodiscard]] Scale scale() const;
  void paintLeg(QPainter& painter, const LegBar& bar, const Scale& scale, double top);
  [[nodiscard]] const WorkingTarget& targetAt(QPointF point) const;
  [[nodiscard]] const WorkingTarget& focusedTarget() const;

  std::array<LegBar, 2> bars_;
  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  int focusedLane_ = 0;  // 0..3: peak and start of L1, then of L2
};

}  // namespace stayalight
