#pragma once

// The paper place: pages as they will be printed, which sheets, which size, print and save as PDF.

#include <QtWidgets/QWidget>
#include <thread>

#include "ui/paper/print.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QScrollArea;
class QShortcut;
class QVBoxLayout;

namespace stayalight {

class PaperView : public QWidget {
  Q_OBJECT
 public:
  explicit PaperView(const Language& language, QWidget* parent = nullptr);
  ~PaperView() override;

  /// What is to be printed. Both are copied; pages are drawn when the view is seen.
  void setPlan(const Plan& plan, const Assessment& assessment, const QString& planName);
  /// The pages as chosen now.
  [[nodiscard]] const std::vector<Sheet>& pages() const { return pages_; }

  /// Asks for a printer, then prints.
  void printPages();
  /// Asks for a file, then writes the PDF there.
  void savePdf();
  /// Writes the PDF beside the window's own work, with a line that says how far it is and a way to cancel;
  /// what came of it is shown beside the buttons. One at a time: while one is written this does nothing.
  void savePdfTo(const QString& path);
  [[nodiscard]] bool writing() const { return writer_.joinable(); }
  void cancelWriting();

 Q_SIGNALS:
  /// The paper size was chosen here: it is a field of the plan.
  void paperSizeChosen(stayalight::PaperSize size);
  /// The PDF is written, refused or cancelled.
  void writingEnded(bool written);

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void rebuildChoices();
  void refresh();
  void showPages();
  void showWriting(bool on);
  void endWriting(const Result<int>& written, const QString& path);
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
  QProgressBar* progress_ = nullptr;
  QPushButton* cancel_ = nullptr;
  QShortcut* escape_ = nullptr;
  std::jthread writer_;  ///< last: it ends before what it tells about
};

}  // namespace stayalight
