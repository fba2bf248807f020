#pragma once

// The curves on Qt Charts: charge with its band above, the legs mirrored about the neutral below, one time
// axis. The start is a tab on the axis, to drag or to step by keys.

#include <QtCharts/QChartView>
#include <optional>

#include "ui/strip/strip_data.h"
#include "ui/style/palette.h"

class QAreaSeries;
class QLineSeries;
class QValueAxis;

namespace stayalight {

class StripChart : public QChartView {
  Q_OBJECT
 public:
  explicit StripChart(QWidget* parent = nullptr);
  void show(const StripData& data, const Language& language);
  void setColors(const Palette& palette);
  [[nodiscard]] const StripData& data() const { return data_; }
  /// Where the start tab stands, in the view's coordinates.
  [[nodiscard]] QRectF startTab() const;
  [[nodiscard]] QPointF positionOf(double hour, double percent) const;
  [[nodiscard]] QString hoverText() const;
  [[nodiscard]] bool dragging() const { return dragging_; }

 Q_SIGNALS:
  void startPreviewed(stayalight::TimeOfDay start);  ///< while the tab is dragged
  void startChosen(stayalight::TimeOfDay start);     ///< dropped, or stepped by key
  void startCancelled();                             ///< Escape while dragging

 protected:
  void drawBackground(QPainter* painter, const QRectF& rect) override;
  void drawForeground(QPainter* painter, const QRectF& rect) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  // Whatever is drawn by hand is in layout units, which follow the letters of the desktop.
  [[nodiscard]] double across() const;
  [[nodiscard]] double down() const;
  [[nodiscard]] QRectF tabInUnits() const;
  [[nodiscard]] double xOf(double hour) const;
  [[nodiscard]] double hourAt(double x) const;
  [[nodiscard]] double yOfCharge(double percent) const;
  [[nodiscard]] double yOfAmperes(double amperes) const;
  [[nodiscard]] double legTextY(double sign) const;  ///< of the words beside a leg's curves
  void paintAxis(QPainter& painter);
  void paintHover(QPainter& painter);
  void stepStart(int minutes);

  StripData data_;
  const Language* language_ = &plainEnglish();
  Palette palette_{Theme::light};
  QValueAxis* hours_;
  QValueAxis* percent_;
  QValueAxis* amperes_;
  QLineSeries *bandTop_, *bandBottom_, *likely_;
  QAreaSeries* band_;
  std::array<QLineSeries*, 2> average_{}, peak_{}, peakInner_{};
  std::optional<double> hover_;
  bool dragging_ = false;
  TimeOfDay dragged_;
};

}  // namespace stayalight
