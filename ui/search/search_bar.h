#pragma once

// The field over the boards that searches the plan. The keyboard stays in it while the arrow keys step
// through the list of what was found.

#include <QtWidgets/QWidget>

#include "ui/style/palette.h"

class QLabel;
class QLineEdit;
class QToolButton;

namespace stayalight {

class FoundList;
class Language;

class SearchBar : public QWidget {
  Q_OBJECT
 public:
  /// The list is steered by the field; it stands somewhere else in the window.
  SearchBar(FoundList* list, QWidget* parent);

  void setTexts(const Language& language);
  void setColors(const Palette& palette);
  /// Takes the keyboard, with the words in it selected.
  void start();
  void clear();
  [[nodiscard]] QString text() const;
  void showCount(std::size_t found, const Language& language);
  [[nodiscard]] QLineEdit* field() const { return field_; }

 Q_SIGNALS:
  void searched(const QString& text);
  void closeRequested();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  FoundList* list_;
  QLabel* label_;
  QLineEdit* field_;
  QLabel* count_;
  QToolButton* close_;
};

}  // namespace stayalight
