#pragma once

// Before another edition of the code is taken: what it changes.

#include <QtWidgets/QDialog>

#include "core/assess/edition_change.h"

class QTableWidget;

namespace stayalight {

class EditionDialog : public QDialog {
  Q_OBJECT
 public:
  EditionDialog(const Plan& plan, Edition to, const Language& language, QWidget* parent = nullptr);
  [[nodiscard]] QTableWidget* table() const { return table_; }

 private:
  QTableWidget* table_;
};

}  // namespace stayalight
