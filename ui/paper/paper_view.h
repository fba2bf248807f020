#pragma once

// The paper place: pages as they will be printed, which sheets, which size, print and save as PDF.

#include <QtWidgets/QWidget>

#include "ui/paper/print.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace stayalight {

class PaperView : public QWidget {
  Q_OBJECT
 public:
  explicit PaperView(const Language& language, QWidget* parent = nullptr);

  /// What is to be printed. Both are copied; pages are drawn when the view is seen.
  void setPlan(const Plan& plan, const Assessment& assessment, const QString& planName);
  /// The pages as chosen now.
  [[nodiscard]] const std::vector<Sheet>& pages() const { return pages_; }

  /// Asks for a printer, then prints.
  void printPages();
  /// Asks for a file, then writes the PDF there.
  void savePdf();
  /// Writes the PDF; false, with a message shown beside the buttons, where it could not.
  bool savePdfTo(const QString& path);

 Q_SIGNALS:
  /// The paper size was chosen here: it is a field of the plan.
  void paperSizeChosen(stayalight::PaperSize size);

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void rebuildChoices();
  void refresh();
  void showPages();
  [[nodiscard]] std::vector<SheetChoice> chosen() const;

  const Language& language_;
  Plan plan_;
  Assessment assessment_;
  QString planName_;
  std::vector<SheetChoice> all_;
  std::vector<QCheckBox*> boxes_;
  std::vector<Sheet> pages_;
  bool stale_ = true;
  QVBoxLayout* choiceLayout_ = nullptr;
  QComboBox* size_ = nullptr;
  QLabel* message_ = nullptr;
  QScrollArea* scroll_ = nullptr;
  QPushButton* print_ = nullptr;
  QPushButton* save_ = nullptr;
};

}  // namespace stayalight
