#pragma once

// The overload curve of an inverter as a picture: how much for how long, a leg and in total, with the motor
// starts of the plan as numbered points on it.

#include <vector>

#include "core/start/start.h"
#include "core/transfer/transfer.h"
#include "ui/inspector/field_editor.h"
#include "ui/style/painted_widget.h"

namespace stayalight {

class OverloadPicture : public PaintedWidget {
 public:
  explicit OverloadPicture(QWidget* parent = nullptr);
  void show(const Plan& plan, const StartFigures& starts, const FormStyle& style);
  [[nodiscard]] bool hasHeightForWidth() const override { return false; }

  /// A start on one of the two pictures.
  struct Point {
    int number = 0;
    Seconds time;        ///< unfavourable end
    double value = 0.0;  ///< unfavourable end, in the unit of the picture
    Verdict verdict = Verdict::notKnown;
  };
  struct Line {
    QString text;
    Verdict verdict = Verdict::notKnown;
  };
  [[nodiscard]] const std::vector<Point>& legPoints() const { return legPoints_; }
  [[nodiscard]] const std::vector<Line>& lines() const { return lines_; }

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  [[nodiscard]] QSizeF least() const override;
  void paint(QPainter& painter) override;

 private:
  void paintPlot(QPainter& painter, const QRectF& area, const QString& title, bool legs) const;
  [[nodiscard]] std::optional<double> limit(bool legs, Seconds time) const;

  InverterLimits limits_;
  std::vector<Point> legPoints_, totalPoints_;
  std::vector<Line> lines_;
  FormStyle style_;
};

}  // namespace stayalight
