#pragma once

// How much of the house is known, by grade: a bar of counts with their words beside it.

#include <array>

#include "core/message/message.h"
#include "core/message/working.h"
#include "ui/style/painted_widget.h"
#include "ui/style/palette.h"

namespace stayalight {

class KnownBar : public PaintedWidget {
 public:
  explicit KnownBar(QWidget* parent = nullptr);
  void show(const std::array<std::int32_t, 5>& known, const Palette& palette, const Language& language);
  [[nodiscard]] const std::array<std::int32_t, 5>& known() const { return known_; }

 protected:
  [[nodiscard]] QSizeF wanted() const override;
  [[nodiscard]] QSizeF least() const override;
  void paint(QPainter& painter) override;

 private:
  std::array<std::int32_t, 5> known_{};
  Palette palette_{Theme::light};
  QString head_;
  std::array<QString, 5> words_;
};

}  // namespace stayalight
