#pragma once

// One field of a record as a control: a line for quantities and texts, a list for choices and references, a
// check box. What was typed stays until it is understood; what is wrong with it stands beside it in words.

#include <QtWidgets/QWidget>
#include <functional>

#include "ui/inspector/quantity_text.h"
#include "ui/style/palette.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QToolButton;

namespace stayalight {

/// What all controls of a form share.
struct FormStyle {
  const Language* language = &plainEnglish();
  Palette palette{Theme::light};
  ShownUnits units;
};

/// The small "?" of a field: opens its help. No stop of Tab: F1 in the field does the same.
[[nodiscard]] QToolButton* helpButton(const Field& field, const Language& language, QWidget* parent);

class FieldEditor : public QWidget {
 public:
  FieldEditor(const Field& field, FormStyle style, QWidget* parent = nullptr);

  /// Called with a value that is of the field's kind and within its range.
  std::function<void(const FieldValue&)> entered;
  /// Called when the control gets the keyboard.
  std::function<void(const Field&)> focused;

  [[nodiscard]] const Field& field() const { return field_; }
  /// Shows the plan's value; a text that was refused stays as long as the plan's value stays.
  void refresh(const Plan& plan, const FieldValue& value);
  /// What the plan's rules say against the value just entered.
  void refuse(const Message& why);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QLineEdit* addLine(const QString& name);
  void makeLine();
  void makeNotes();
  void makeCombo();
  void makeFact();
  void fillCombo(const Plan& plan, const FieldValue& value);
  void commitLine();
  void commitFact();
  [[nodiscard]] std::optional<FieldValue> parse(const QString& text);
  void give(const FieldValue& value);
  void say(const QString& text, bool wrong);
  void showValue();
  [[nodiscard]] QString shownText(double value) const;

  const Field& field_;
  FormStyle style_;
  FieldValue value_;
  QString refused_;       // the text that was not understood
  QString typed_;         // an expression that was understood and is shown as its result
  bool showing_ = false;  // set while the control is filled from the plan
  QLineEdit* line_ = nullptr;
  QPlainTextEdit* notes_ = nullptr;
  QComboBox* combo_ = nullptr;
  QCheckBox* check_ = nullptr;
  QLabel* note_ = nullptr;
  QToolButton* more_ = nullptr;
  QWidget* detail_ = nullptr;
  std::array<QLineEdit*, 5> detailLines_{};  // low, high, who, when, how
};

}  // namespace stayalight
