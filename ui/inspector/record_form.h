#pragma once

// The fields of one record, from the field table, with a heading and the buttons that go with it.

#include <QtWidgets/QWidget>
#include <functional>
#include <vector>

#include "core/edit/edit.h"
#include "ui/inspector/field_editor.h"
#include "ui/inspector/label_order.h"

class QGridLayout;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace stayalight {

/// What a form asks for: the plan after the edit, the name of the step, and what steps merge with (empty:
/// none).
struct FormEdit {
  Plan plan;
  Message name;
  QString mergeWith;
};

/// What a form asks of the window: it leads to lists that stand outside the plan.
enum class Wish : std::uint8_t {
  fromCatalogue,  ///< a load for this circuit
  keep,           ///< this record in the person's list
  take            ///< one from the person's list in the place of this record
};

class RecordForm : public QWidget {
 public:
  RecordForm(const Plan& plan, const EntityRef& ref, const FormStyle& style, QWidget* parent = nullptr);

  std::function<void(FormEdit)> edited;
  /// A copy or a deletion that was refused.
  std::function<void(const Message&)> refused;
  std::function<void(const Field&)> focused;
  /// With a point below the button, for a menu.
  std::function<void(Wish, QPoint global)> wished;

  [[nodiscard]] const EntityRef& ref() const { return ref_; }
  void refresh(const Plan& plan);
  void focusField(std::string_view key);
  [[nodiscard]] FieldEditor* editor(std::string_view key) const;
  /// Where the items of one of the record's lists stand within the form; nullptr: after it.
  [[nodiscard]] QVBoxLayout* placeOf(RecordKind items) const;

 private:
  void addFields();
  void addGroup(const LabelGroup& group);
  void startGrid();
  void addField(const Field& field);
  void addHeading(const Plan& plan);
  void addList(const Children& list);
  void addWishes();
  QPushButton* wishButton(MessageId text, Wish wish, const QString& name);
  void request(Result<Plan> after, const Message& name, const QString& mergeWith = {});

  EntityRef ref_;
  FormStyle style_;
  Plan plan_;
  QLabel* heading_ = nullptr;
  QLabel* place_ = nullptr;
  QGridLayout* grid_ = nullptr;
  QPushButton* removal_ = nullptr;
  int row_ = 0;
  std::vector<FieldEditor*> editors_;
  std::vector<std::pair<RecordKind, QVBoxLayout*>> places_;
};

/// A point of a curve is one row of a small table.
[[nodiscard]] bool isCurvePoint(RecordKind kind);

/// The records shown for a selection, in order: a circuit with its breaker and loads, an inverter with its
/// curves.
[[nodiscard]] std::vector<EntityRef> recordsFor(const Plan& plan, const EntityRef& what);

}  // namespace stayalight
