#include "ui/paper/paper_view.h"

#include <QtCore/QFileInfo>
#include <QtGui/QPainter>
#include <QtGui/QResizeEvent>
#include <QtGui/QShortcut>
#include <QtPrintSupport/QPrintDialog>
#include <QtPrintSupport/QPrinter>
#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QFileDialog>
#include <QtWidgets/QFrame>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QProgressBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>

#include "core/message/version.h"
#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kSheets{"paper.view_sheets"};
constexpr MessageId kSize{"paper.view_size"};
constexpr MessageId kLetter{"paper.view_letter"};
constexpr MessageId kA4{"paper.view_a4"};
constexpr MessageId kPrint{"paper.view_print"};
constexpr MessageId kSave{"paper.view_save"};
constexpr MessageId kSaveTitle{"paper.view_save_title"};
constexpr MessageId kPdfFiles{"paper.view_pdf_files"};
constexpr MessageId kSaved{"paper.view_saved"};
constexpr MessageId kWriting{"paper.view_writing"};
constexpr MessageId kCancel{"paper.view_cancel"};
constexpr MessageId kPrinting{"paper.view_printing"};
constexpr MessageId kPrinted{"paper.view_printed"};
constexpr MessageId kPrintStopped{"paper.view_print_stopped"};
constexpr MessageId kNoPages{"paper.view_no_pages"};
constexpr MessageId kPages{"paper.view_pages"};
constexpr MessageId kPage{"paper.view_page"};
constexpr MessageId kNotTagged{"paper.view_not_tagged"};
constexpr MessageId kFile{"paper.view_file"};
constexpr int kSideWidth = 230;
constexpr int kFirst = 1000;  // stretch of what gets the room before the empty rest does

/// One page as paper: white, with a hairline, drawn at the width it is given.
class PageWidget : public QWidget {
 public:
  PageWidget(Sheet sheet, double width, const QString& name)
      : sheet_(std::move(sheet)), scale_(width / sheet_.size.width()) {
    setFixedSize((sheet_.size * scale_).toSize());
    setAccessibleName(name);
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    painter.fillRect(rect(), Qt::white);
    painter.save();
    painter.scale(scale_, scale_);
    paint(painter, sheet_);
    painter.restore();
    painter.setPen(QPen(palette().color(QPalette::Mid), 1));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
  }

 private:
  Sheet sheet_;
  double scale_;
};

std::vector<Sheet> pagesBetween(const std::vector<Sheet>& pages, int from, int to) {
  const auto first = std::clamp<std::ptrdiff_t>(from - 1, 0, std::ssize(pages));
  const auto last = std::clamp<std::ptrdiff_t>(to, first, std::ssize(pages));
  return {pages.begin() + first, pages.begin() + last};
}

}  // namespace

PaperView::PaperView(const Language& language, QWidget* parent) : QWidget(parent), language_(language) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 12, 12, 12);
  row->setSpacing(16);

  auto* side = new QVBoxLayout;
  side->setSpacing(8);
  auto* head = new QLabel(words(language_, kSheets));
  QFont bold = head->font();
  bold.setBold(true);
  head->setFont(bold);
  side->addWidget(head);
  // With large letters the list of sheets is scrolled, and the buttons below it stay.
  choices_ = new QScrollArea;
  choices_->setWidgetResizable(true);
  choices_->setFrameShape(QFrame::NoFrame);
  choices_->setFocusPolicy(Qt::NoFocus);
  choices_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  choices_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
  auto* boxes = new QWidget;
  choiceLayout_ = new QVBoxLayout(boxes);
  choiceLayout_->setContentsMargins(0, 0, 0, 0);
  choiceLayout_->setSpacing(4);
  choices_->setWidget(boxes);
  side->addWidget(choices_, kFirst);
  side->addSpacing(8);
  auto* sizeLabel = new QLabel(words(language_, kSize));
  size_ = new QComboBox;
  size_->addItem(words(language_, kLetter));
  size_->addItem(words(language_, kA4));
  size_->setObjectName(QStringLiteral("paperSize"));
  sizeLabel->setBuddy(size_);
  side->addWidget(sizeLabel);
  side->addWidget(size_);
  side->addSpacing(8);
  print_ = new QPushButton(words(language_, kPrint));
  print_->setObjectName(QStringLiteral("printPages"));
  save_ = new QPushButton(words(language_, kSave));
  save_->setObjectName(QStringLiteral("savePdf"));
  side->addWidget(print_);
  side->addWidget(save_);
  progress_ = new QProgressBar;
  progress_->setObjectName(QStringLiteral("pdfProgress"));
  progress_->setTextVisible(false);
  cancel_ = new QPushButton(words(language_, kCancel));
  cancel_->setObjectName(QStringLiteral("cancelPdf"));
  side->addWidget(progress_);
  side->addWidget(cancel_);
  progress_->hide();
  cancel_->hide();
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setObjectName(QStringLiteral("paperMessage"));
  side->addWidget(message_);
  side->addStretch(1);
  auto* note = new QLabel(words(language_, kNotTagged));
  note->setWordWrap(true);
  side->addWidget(note);
  side_ = new QWidget;
  side_->setLayout(side);
  side_->setFixedWidth(scaled(kSideWidth));
  row->addWidget(side_);

  scroll_ = new QScrollArea;
  scroll_->setWidgetResizable(true);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setAccessibleName(words(language_, kPages));
  row->addWidget(scroll_, 1);

  connect(size_, &QComboBox::activated, this,
          [this](int chosen) { Q_EMIT paperSizeChosen(static_cast<PaperSize>(chosen)); });
  connect(print_, &QPushButton::clicked, this, &PaperView::printPages);
  connect(save_, &QPushButton::clicked, this, &PaperView::savePdf);
  connect(cancel_, &QPushButton::clicked, this, &PaperView::cancelWriting);
  escape_ =
      new QShortcut(QKeySequence(Qt::Key_Escape), this, nullptr, nullptr, Qt::WidgetWithChildrenShortcut);
  escape_->setEnabled(false);
  connect(escape_, &QShortcut::activated, this, &PaperView::cancelWriting);
}

PaperView::~PaperView() {
  if (printing_ && writer_.joinable()) writer_.join();
}

void PaperView::setPlan(const Plan& plan, const Assessment& assessment, const QString& planName) {
  plan_ = plan;
  assessment_ = assessment;
  planName_ = planName;
  size_->setCurrentIndex(static_cast<int>(plan_.site->paper.valueOr(PaperSize::letter)));
  rebuildChoices();
  stale_ = true;
  if (isVisible()) refresh();
}

void PaperView::rebuildChoices() {
  std::vector<SheetChoice> now = sheetChoices(plan_, language_);
  const bool same = std::equal(
      now.begin(), now.end(), all_.begin(), all_.end(),
      [](const SheetChoice& a, const SheetChoice& b) { return a.word == b.word && a.title == b.title; });
  all_ = std::move(now);
  if (same) return;
  for (QCheckBox* box : boxes_) box->deleteLater();
  boxes_.clear();
  for (const SheetChoice& choice : all_) {
    auto* box = new QCheckBox(choice.title);
    box->setChecked(choice.inSet);
    box->setObjectName(QStringLiteral("sheet-") + choice.word);
    connect(box, &QCheckBox::toggled, this, &PaperView::refresh);
    choiceLayout_->addWidget(box);
    boxes_.push_back(box);
  }
  int widest = 0, height = 0;
  for (const QCheckBox* box : boxes_) {
    widest = std::max(widest, box->sizeHint().width());
    height += box->sizeHint().height() + choiceLayout_->spacing();
  }
  choices_->setMaximumHeight(height);
  const QMargins margins = side_->layout()->contentsMargins();
  const int bar = choices_->verticalScrollBar()->sizeHint().width();
  side_->setFixedWidth(std::max(scaled(kSideWidth), widest + bar + margins.left() + margins.right()));
}

std::vector<SheetChoice> PaperView::chosen() const {
  std::vector<SheetChoice> some;
  for (std::size_t i = 0; i < boxes_.size(); ++i) {
    if (boxes_[i]->isChecked()) some.push_back(all_[i]);
  }
  return some;
}

void PaperView::refresh() {
  PaperOptions options;
  options.size = plan_.site->paper.valueOr(PaperSize::letter);
  options.planName = planName_;
  options.version = QString::fromLatin1(kVersion.data(), static_cast<qsizetype>(kVersion.size()));
  pages_ = sheets(plan_, assessment_, chosen(), language_, options);
  stale_ = false;
  print_->setEnabled(!pages_.empty() && !writing());
  save_->setEnabled(!pages_.empty() && !writing());
  if (!writing()) message_->setText(pages_.empty() ? words(language_, kNoPages) : QString());
  showPages();
}

void PaperView::showPages() {
  const int bar = scroll_->verticalScrollBar() != nullptr ? 24 : 0;
  const double width = std::clamp(static_cast<double>(scroll_->viewport()->width() - bar), 320.0, 900.0);
  auto* column = new QWidget;
  auto* layout = new QVBoxLayout(column);
  layout->setSpacing(16);
  layout->setContentsMargins(0, 0, 0, 0);
  std::int64_t number = 0;
  for (const Sheet& sheet : pages_) {
    layout->addWidget(
        new PageWidget(sheet, width, words(language_, kPage, ++number, sheet.title.toStdString())), 0,
        Qt::AlignHCenter);
  }
  layout->addStretch(1);
  scroll_->setWidget(column);
}

void PaperView::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (stale_) refresh();
}

void PaperView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (isVisible() && !stale_ && event->size().width() != event->oldSize().width()) showPages();
}

void PaperView::printPages() {
  if (writing()) return;
  if (stale_) refresh();
  if (pages_.empty()) return;
  auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
  printer->setPageSize(QPageSize(pages_.front().size.toSize(), QString(), QPageSize::FuzzyMatch));
  printer->setFullPage(true);
  printer->setDocName(planName_);
  QPrintDialog dialog(printer.get(), this);
  dialog.setMinMax(1, static_cast<int>(pages_.size()));
  if (dialog.exec() != QDialog::Accepted) return;
  const int from = printer->fromPage() > 0 ? printer->fromPage() : 1;
  const int to = printer->toPage() > 0 ? printer->toPage() : static_cast<int>(pages_.size());
  if (printer->outputFileName().isEmpty())
    printOn(std::move(printer), from, to);
  else
    savePages(pagesBetween(pages_, from, to), printer->outputFileName());
}

// A printer is no widget: it may be drawn on from any thread, by one at a time, and here it is handed over
// whole. The dialog that asked is gone by then.
void PaperView::printOn(std::shared_ptr<QPrinter> printer, int from, int to) {
  if (writing()) return;
  if (stale_) refresh();
  std::vector<Sheet> pages = pagesBetween(pages_, from, to);
  if (pages.empty()) return;
  const auto count = static_cast<int>(pages.size());
  printing_ = true;
  beginWriting(words(language_, kPrinting, std::int64_t{count}), count,
               [printer = std::move(printer), pages = std::move(pages),
                count](const PageProgress& progress) -> Written {
                 const Result<int> drawn = drawOn(*printer, pages, progress);
                 if (!drawn) return {false, drawn.refusal()};
                 if (drawn.value() == count) return {true, Message{kPrinted, {}}};
                 return {false, say(kPrintStopped, std::int64_t{drawn.value()}, std::int64_t{count})};
               });
}

void PaperView::savePdf() {
  if (stale_) refresh();
  if (pages_.empty()) return;
  const QString base =
      planName_.isEmpty() ? words(language_, kFile) : QFileInfo(planName_).completeBaseName();
  const QString path = QFileDialog::getSaveFileName(
      this, words(language_, kSaveTitle), base + QStringLiteral(".pdf"), words(language_, kPdfFiles));
  if (!path.isEmpty()) savePdfTo(path);
}

void PaperView::savePdfTo(const QString& path) {
  if (writing()) return;
  if (stale_) refresh();
  savePages(pages_, path);
}

void PaperView::savePages(std::vector<Sheet> pages, const QString& path) {
  const auto count = static_cast<int>(pages.size());
  beginWriting(words(language_, kWriting, path.toStdString()), count,
               [pages = std::move(pages), path, title = planName_](const PageProgress& progress) -> Written {
                 const Result<int> written = writePdf(pages, path, title, progress);
                 if (!written) return {false, written.refusal()};
                 return {true, say(kSaved, std::int64_t{written.value()}, path.toStdString())};
               });
}

void PaperView::beginWriting(const QString& says, int pages,
                             std::function<Written(const PageProgress& progress)> work) {
  message_->setText(says);
  progress_->setAccessibleName(says);
  progress_->setRange(0, pages);
  progress_->setValue(0);
  begunAt_ = print_->hasFocus() ? print_ : save_->hasFocus() ? save_ : nullptr;
  showWriting(true);
  writer_ = std::jthread([this, work = std::move(work)](const std::stop_token& stop) {
    const Written written = work([this, &stop](int drawn) {
      QMetaObject::invokeMethod(
          this, [this, drawn] { progress_->setValue(drawn); }, Qt::QueuedConnection);
      return !stop.stop_requested();
    });
    QMetaObject::invokeMethod(
        this, [this, written] { endWriting(written); }, Qt::QueuedConnection);
  });
}

void PaperView::cancelWriting() {
  writer_.request_stop();
  cancel_->setEnabled(false);
}

void PaperView::showWriting(bool on) {
  const bool cancelling = cancel_->hasFocus();
  progress_->setVisible(on);
  cancel_->setVisible(on);
  cancel_->setEnabled(on);
  escape_->setEnabled(on);
  print_->setEnabled(!on && !pages_.empty());
  save_->setEnabled(!on && !pages_.empty());
  if (on && begunAt_ != nullptr) cancel_->setFocus();
  if (!on && cancelling) (begunAt_ != nullptr ? begunAt_.data() : save_)->setFocus();
}

void PaperView::endWriting(const Written& written) {
  writer_.join();
  writer_ = {};
  printing_ = false;
  showWriting(false);
  message_->setText(words(written.says, language_));
  Q_EMIT writingEnded(written.whole);
}

}  // namespace stayalight
