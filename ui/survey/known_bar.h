#pragma once

// How much of the house is known, by grade: a bar of counts with their words beside it.

#include <QtWidgets/QWidget>
#include <array>

#include "core/message/message.h"
#include "core/message/working.h"
#include "ui/style/palette.h"

namespace stayalight {

class KnownBar : public QWidget {
 public:
  explicit KnownBar(QWidget* parent = nullptr);
  void show(const std::array<std::int32_t, 5>& known, const Palette& palette, const Language& language);
  [[nodiscard]] const std::array<std::int32_t, 5>& known() const { return known_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::array<std::int32_t, 5> known_{};
  Palette palette_{Theme::light};
  QString head_;
  std::array<QString, 5> words_;
};

}  // namespace stayalight
