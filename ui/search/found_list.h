#pragma once

// What a search found, with its place: two lines a row.

#include <QtWidgets/QListWidget>

#include "ui/search/search.h"

namespace stayalight {

class FoundList : public QListWidget {
  Q_OBJECT
 public:
  explicit FoundList(QWidget* parent);
  /// The row that was current stays current where it is still found.
  void show(std::vector<Found> found, const Language& language);
  void setTexts(const Language& language);
  void setColors(const Palette& palette);
  [[nodiscard]] const std::vector<Found>& found() const { return found_; }

 Q_SIGNALS:
  void chosen(const stayalight::Found& found);  ///< Enter or a click

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void choose(int row);
  std::vector<Found> found_;
};

}  // namespace stayalight
