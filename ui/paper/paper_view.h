#pragma once

// The paper place: pages as they will be printed, which sheets, which size, print and save as PDF.

#include <QtCore/QPointer>
#include <QtWidgets/QWidget>
#include <functional>
#include <memory>
#include <thread>

#include "ui/paper/print.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPrinter;
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

  /// Asks for a printer, then prints; where a file is chosen there instead, that is written as `savePdfTo`
  /// writes it.
  void printPages();
  /// Prints the pages `from` to `to`, counted from 1, beside the window's own work, as `savePdfTo` writes.
  /// Cancelled, what is drawn so far stays with the printer, and that is said. A view that goes meanwhile
  /// waits for the end: half a set in a panel's door helps nobody.
  void printOn(std::shared_ptr<QPrinter> printer, int from, int to);
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
  /// The PDF is written, or the pages are printed; else refused or cancelled.
  void writingEnded(bool written);

 protected:
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void rebuildChoices();
  void refresh();
  void showPages();
  /// What came of the work, and what is said of it.
  struct Written {
    bool whole = false;
    Message says;
  };
  void savePages(std::vector<Sheet> pages, const QString& path);
  void beginWriting(const QString& says, int pages,
                    std::function<Written(const PageProgress& progress)> work);
  void showWriting(bool on);
  void endWriting(const Written& written);
  [[nodiscard]] std::vector<SheetChoice> chosen() const;

  const Language& language_;
  Plan plan_;
  Assessment assessment_;
  QString planName_;
  std::vector<SheetChoice> all_;
  std::vector<QCheckBox*> boxes_;
  std::vector<Sheet> pages_;
  bool stale_ = true;
  QWidget* side_ = nullptr;
  QScrollArea* choices_ = nullptr;
  QVBoxLayout* choiceLayout_ = nullptr;
  QComboBox* size_ = nullptr;
  QLabel* message_ = nullptr;
  QScrollArea* scroll_ = nullptr;
  QPushButton* print_ = nullptr;
  QPushButton* save_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QPushButton* cancel_ = nullptr;
  QShortcut* escape_ = nullptr;
  QPointer<QPushButton> begunAt_;  ///< gets the keyboard back
  bool printing_ = false;
  std::jthread writer_;  ///< last: it ends before what it tells about
};

}  // namespace stayalight
