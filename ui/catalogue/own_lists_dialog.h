#pragma once

// A person's own lists and templates, and the plan's own lists, to rename and delete in. Each change is made
// at once and can be taken back while the window is open; plans keep what they once took.

#include <QtWidgets/QDialog>
#include <variant>
#include <vector>

#include "ui/catalogue/own_lists.h"
#include "ui/wording/language.h"

class QLabel;
class QPushButton;
class QTableWidget;

namespace stayalight {

class OwnListsDialog final : public QDialog {
  Q_OBJECT
 public:
  explicit OwnListsDialog(const Language& language, QWidget* parent = nullptr);
  [[nodiscard]] QTableWidget* table() const { return table_; }
  /// The plan whose lists are shown too.
  void setPlan(const Plan& plan);

 Q_SIGNALS:
  /// The lists are others now.
  void changed();
  /// The plan with another own list, as one step of it.
  void planEdited(const stayalight::Plan& plan, const stayalight::Message& step);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fill();
  void rename(int row, const QString& name);
  void removeCurrent();
  void putLastBack();
  void made(const Result<OwnChange>& change, const Message& done);
  void madeInPlan(const Result<Plan>& after, const Message& step, const Message& done);
  void tell(const Message& what, bool wrong);
  [[nodiscard]] const OwnEntry* current() const;

  const Language& language_;
  QTableWidget* table_;
  QLabel* told_;
  QPushButton *rename_, *delete_, *undo_;
  std::vector<OwnEntry> entries_;
  /// A change of a file, or the lists that the plan had before.
  using Change = std::variant<OwnChange, Shared<OwnLists>>;
  Plan plan_;
  std::vector<Change> changes_;  ///< oldest first
  bool filling_ = false;
};

}  // namespace stayalight
