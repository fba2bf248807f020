#pragma once

// All facts of what is selected, as forms from the field table; and a list to look at anything else.

#include <QtWidgets/QWidget>
#include <vector>

#include "core/start/start.h"
#include "ui/inspector/record_form.h"

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace stayalight {

class OverloadPicture;

class Inspector : public QWidget {
  Q_OBJECT
 public:
  explicit Inspector(FormStyle style, QWidget* parent = nullptr);

  /// Shows the plan; what is looked at stays, as long as it exists.
  void setPlan(const Plan& plan);
  void setStyle(const FormStyle& style);
  /// The starts that stand on the picture of the overload curve.
  void setStarts(const StartFigures& starts);
  /// Looks at this record (a breaker with a circuit: at the circuit) and scrolls to it.
  void look(const EntityRef& what);
  [[nodiscard]] const EntityRef& lookingAt() const { return what_; }
  /// Puts the keyboard into a field of the record looked at; the first where the key is empty.
  void focusField(std::string_view key);
  [[nodiscard]] RecordForm* form(const EntityRef& ref) const;

 Q_SIGNALS:
  void edited(const stayalight::FormEdit& edit);
  void refused(const stayalight::Message& why);
  void looked(const stayalight::EntityRef& what);
  void wished(const stayalight::EntityRef& record, stayalight::Wish wish, QPoint global);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void rebuild();
  void scrollTo(const EntityRef& what);
  void fillChooser();
  void addMenu();
  void addOf(RecordKind kind);
  [[nodiscard]] PanelId panelLookedAt() const;

  FormStyle style_;
  Plan plan_;
  EntityRef what_{RecordKind::site};
  EntityRef aimed_{RecordKind::site};  ///< record of `what_` that was asked for
  bool stale_ = true;                  ///< the forms are built anew when they are seen
  std::vector<EntityRef> records_;
  std::vector<RecordForm*> forms_;
  StartFigures starts_;
  OverloadPicture* curve_ = nullptr;
  QLabel* label_ = nullptr;
  QComboBox* chooser_;
  QPushButton* add_;
  QScrollArea* scroll_;
  QLabel* help_;
};

}  // namespace stayalight
