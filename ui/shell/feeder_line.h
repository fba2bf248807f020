#pragma once

// The feeder as a one-line: the sources, the switch with its centre off or the inverter between, a generator
// where it comes in, the way around the inverter; devices and wires.

#include "ui/shell/feeder_picture.h"
#include "ui/style/painted_widget.h"
#include "ui/style/palette.h"

namespace stayalight {

class FeederLine : public PaintedWidget {
 public:
  explicit FeederLine(QWidget* parent = nullptr);
  void show(const Plan& plan, const Assessment& assessment, const Palette& palette, const Language& language);

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  [[nodiscard]] QSizeF least() const override;
  void paint(QPainter& painter) override;

 private:
  void paintBox(QPainter& painter, const FeederPicture::Box& box) const;
  void paintSymbol(QPainter& painter, const FeederPicture::Symbol& symbol) const;

  Palette palette_{Theme::light};
  FeederFacts facts_;
  QString head_, note_, none_;
};

}  // namespace stayalight
