#pragma once

// The feeder as a one-line: both sources, the switch with its centre off or the inverter between, devices and
// wires.

#include <QtWidgets/QWidget>

#include "core/assess/assess.h"
#include "ui/style/palette.h"

namespace stayalight {

class FeederLine : public QWidget {
 public:
  explicit FeederLine(QWidget* parent = nullptr);
  void show(const Plan& plan, const Assessment& assessment, const Palette& palette, const Language& language);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Wire {
    QString device, size, ground;
  };
  struct Box {
    QString title, fact;
  };
  [[nodiscard]] static Wire wireOf(const SegmentFigures* segment, const Language& language);
  void paintBox(QPainter& painter, QRectF rect, const Box& box) const;
  void paintBreaker(QPainter& painter, QPointF at) const;
  void paintSlashes(QPainter& painter, QPointF at) const;
  void label(QPainter& painter, QPointF middle, const QString& text, bool strong, bool above) const;

  Palette palette_{Theme::light};
  Arrangement arrangement_ = Arrangement::none;
  QString head_, note_, off_, none_;
  Box main_, inverter_, backup_;
  Wire mainWire_, inverterWire_, backupWire_;
};

}  // namespace stayalight
