#pragma once

// A plain text box for a panel's typed directory, and beside it what was read, line by line, before anything
// is added.

#include <QtWidgets/QDialog>

#include "core/directory/directory.h"
#include "ui/style/palette.h"

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QTableWidget;

namespace stayalight {

class DirectoryDialog : public QDialog {
  Q_OBJECT
 public:
  DirectoryDialog(const Plan& plan, PanelId panel, const Language& language, const Palette& palette,
                  QWidget* parent = nullptr);
  [[nodiscard]] QPlainTextEdit* text() const { return text_; }
  [[nodiscard]] QTableWidget* preview() const { return preview_; }
  [[nodiscard]] const EnteredDirectory& entered() const { return entered_; }

 Q_SIGNALS:
  void accepted(const stayalight::Plan& plan, int added);

 private:
  void read();

  const Plan plan_;
  const PanelId panel_;
  const Language& language_;
  const Palette palette_;
  EnteredDirectory entered_;
  QPlainTextEdit* text_;
  QTableWidget* preview_;
  QLabel* summary_;
  QPushButton* accept_;
};

}  // namespace stayalight
