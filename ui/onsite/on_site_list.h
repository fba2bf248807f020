#pragma once

// What still has to be looked at on site, space by space: where, what, and who may do it. Enter or a click
// goes to the fact.

#include <QtWidgets/QWidget>
#include <vector>

#include "core/onsite/onsite.h"
#include "ui/style/palette.h"

class QComboBox;
class QLabel;
class QListWidget;

namespace stayalight {

class OnSiteList : public QWidget {
  Q_OBJECT
 public:
  explicit OnSiteList(QWidget* parent = nullptr);

  using QWidget::show;
  /// The row that was current stays current while its item is in the list.
  void show(const std::vector<OnSiteItem>& items, const Language& language);
  void setColors(const Palette& palette);
  /// The items shown: of everybody, or of one doer.
  [[nodiscard]] const std::vector<OnSiteItem>& shown() const { return shown_; }
  [[nodiscard]] QListWidget* rows() const { return rows_; }
  [[nodiscard]] QComboBox* doers() const { return doers_; }

 Q_SIGNALS:
  void chosen(const stayalight::OnSiteItem& item);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  void fill();  ///< once it is seen
  void choose(int row);

  const Language* language_ = &plainEnglish();
  std::vector<OnSiteItem> items_, shown_;
  bool stale_ = true;  ///< the rows are not those of the items yet
  QLabel* who_;
  QComboBox* doers_;
  QListWidget* rows_;
  QLabel* none_;
};

}  // namespace stayalight
