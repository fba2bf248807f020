#pragma once

// The undo steps by their names; a click or Enter goes to one.

#include <QtWidgets/QDialog>

class QListWidget;

namespace stayalight {

class Language;
class PlanDocument;

class HistoryWindow : public QDialog {
  Q_OBJECT
 public:
  HistoryWindow(const PlanDocument& document, const Language& language, QWidget* parent);
  [[nodiscard]] QListWidget* list() const { return list_; }

 Q_SIGNALS:
  /// So many steps done, from 0 (the plan as it was opened).
  void chosen(int step);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fill();
  const PlanDocument& document_;
  const Language& language_;
  QListWidget* list_;
};

}  // namespace stayalight
