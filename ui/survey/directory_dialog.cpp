#include "ui/survey/directory_dialog.h"

#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPlainTextEdit>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableWidget>
#include <QtWidgets/QVBoxLayout>

#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"survey.directory.title"};
constexpr MessageId kHow{"survey.directory.how"};
constexpr MessageId kExample{"survey.directory.example"};
constexpr MessageId kTyped{"survey.directory.typed"};
constexpr MessageId kRead{"survey.directory.read"};
constexpr MessageId kCaution{"survey.directory.caution"};
constexpr MessageId kAccept{"survey.directory.accept"};
constexpr MessageId kCancel{"shell.ask.cancel"};
constexpr MessageId kSummary{"survey.directory.summary"};
constexpr MessageId kTooLong{"survey.directory.too_long"};
constexpr MessageId kRowSpoken{"survey.directory.row"};
constexpr std::array<MessageId, 6> kHeads = {
    MessageId{"survey.directory.line"}, MessageId{"survey.column.space"},
    MessageId{"survey.column.poles"},   MessageId{"survey.column.rating"},
    MessageId{"survey.column.name"},    MessageId{"survey.directory.outcome"}};

QString spacesText(const DirectoryEntry& entry) {
  QString text;
  for (const std::string& space : entry.spaces)
    text += (text.isEmpty() ? QString() : QStringLiteral(", ")) + QString::fromStdString(space);
  if (entry.half == Half::a) text += QLatin1Char('A');
  if (entry.half == Half::b) text += QLatin1Char('B');
  return text;
}

}  // namespace

DirectoryDialog::DirectoryDialog(const Plan& plan, PanelId panel, const Language& language,
                                 const Palette& palette, QWidget* parent)
    : QDialog(parent), plan_(plan), panel_(panel), language_(language), palette_(palette) {
  setObjectName(QStringLiteral("directoryDialog"));
  setAttribute(Qt::WA_DeleteOnClose);
  const Panel* record = stayalight::find(plan_, panel_);
  setWindowTitle(words(language_, kTitle, record != nullptr ? record->name : std::string()));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(20, 16, 20, 14);
  column->setSpacing(8);
  auto* head = new QLabel(windowTitle(), this);
  head->setFont(screenFont(Face::condensed, 18, Weight::medium));
  head->setTextFormat(Qt::PlainText);
  column->addWidget(head);
  const auto paragraph = [&](MessageId id) {
    auto* label = new QLabel(words(language_, id), this);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    column->addWidget(label);
    return label;
  };
  paragraph(kHow);
  auto* both = new QHBoxLayout;
  both->setSpacing(12);
  auto* left = new QVBoxLayout;
  auto* typedLabel = new QLabel(words(language_, kTyped), this);
  text_ = new QPlainTextEdit(this);
  text_->setObjectName(QStringLiteral("directoryText"));
  text_->setPlaceholderText(words(language_, kExample));
  text_->setTabChangesFocus(true);  // a tab inside comes with what is pasted
  text_->setAccessibleName(typedLabel->text());
  typedLabel->setBuddy(text_);
  left->addWidget(typedLabel);
  left->addWidget(text_, 1);
  both->addLayout(left, 2);
  auto* right = new QVBoxLayout;
  auto* readLabel = new QLabel(words(language_, kRead), this);
  preview_ = new QTableWidget(0, static_cast<int>(kHeads.size()), this);
  preview_->setObjectName(QStringLiteral("directoryPreview"));
  preview_->setAccessibleName(readLabel->text());
  readLabel->setBuddy(preview_);
  QStringList heads;
  for (const MessageId id : kHeads) heads << words(language_, id);
  preview_->setHorizontalHeaderLabels(heads);
  preview_->verticalHeader()->hide();
  preview_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  preview_->setSelectionBehavior(QAbstractItemView::SelectRows);
  preview_->setTabKeyNavigation(false);
  preview_->setWordWrap(true);
  preview_->setFont(screenFont(Face::condensed, 12));
  constexpr std::array<int, 5> kWidths = {44, 62, 48, 48, 170};
  for (std::size_t i = 0; i < kWidths.size(); ++i)
    preview_->setColumnWidth(static_cast<int>(i), scaled(kWidths[i]));
  preview_->horizontalHeader()->setStretchLastSection(true);
  right->addWidget(readLabel);
  right->addWidget(preview_, 1);
  both->addLayout(right, 4);
  column->addLayout(both, 1);
  summary_ = new QLabel(this);
  summary_->setObjectName(QStringLiteral("directorySummary"));
  summary_->setFont(screenFont(Face::condensed, 13, Weight::medium));
  summary_->setTextFormat(Qt::PlainText);
  column->addWidget(summary_);
  paragraph(kCaution);
  auto* buttons = new QDialogButtonBox(this);
  accept_ = buttons->addButton(words(language_, kAccept), QDialogButtonBox::AcceptRole);
  accept_->setObjectName(QStringLiteral("directoryAccept"));
  buttons->addButton(words(language_, kCancel), QDialogButtonBox::RejectRole);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(accept_, &QPushButton::clicked, this, [this] {
    Q_EMIT accepted(entered_.plan, entered_.added);
    close();
  });
  column->addWidget(buttons);
  connect(text_, &QPlainTextEdit::textChanged, this, [this] { read(); });
  resize(scaled(960), scaled(620));
  read();
  text_->setFocus();
}

void DirectoryDialog::read() {
  // Read with each key: a text that is no directory is not read at all.
  const bool tooLong = text_->blockCount() > static_cast<int>(kMostDirectoryLines);
  const std::vector<DirectoryLine> lines =
      tooLong ? std::vector<DirectoryLine>() : readDirectory(text_->toPlainText().toStdString());
  entered_ = enterDirectory(plan_, panel_, lines);
  preview_->setRowCount(static_cast<int>(entered_.outcomes.size()));
  std::int64_t refused = 0;
  for (std::size_t i = 0; i < entered_.outcomes.size(); ++i) {
    const DirectoryOutcome& outcome = entered_.outcomes[i];
    const DirectoryLine& line = lines[outcome.line];
    const DirectoryEntry* entry =
        outcome.entry < line.entries.size() ? &line.entries[outcome.entry] : nullptr;
    const bool wrong = outcome.done == DirectoryDone::refused;
    if (wrong) ++refused;
    // A line that was not read shows as it was typed.
    const std::array<QString, 6> texts = {
        QString::number(line.number),
        entry != nullptr ? spacesText(*entry) : QString(),
        entry != nullptr && entry->poles ? QString::number(*entry->poles) : QString(),
        entry != nullptr && entry->rating ? QString::number(entry->rating->count()) : QString(),
        entry != nullptr && !wrong ? QString::fromStdString(entry->name) : QString::fromStdString(line.text),
        words(outcome.said, language_)};
    for (std::size_t c = 0; c < texts.size(); ++c) {
      auto* item = new QTableWidgetItem(texts[c]);
      item->setToolTip(texts[c]);
      item->setData(Qt::AccessibleTextRole, words(language_, kRowSpoken, std::int64_t{line.number},
                                                  texts[c].toStdString(), texts[5].toStdString()));
      if (c == 0 || c == 2 || c == 3) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
      if (wrong) item->setForeground(palette_.color(ColorRole::mustFix));
      if (c == 5) item->setIcon(buttonIcon(wrong ? Icon::close : Icon::check, palette_));
      preview_->setItem(static_cast<int>(i), static_cast<int>(c), item);
    }
  }
  preview_->resizeRowsToContents();
  summary_->setText(tooLong ? words(language_, kTooLong, std::int64_t{text_->blockCount()},
                                    static_cast<std::int64_t>(kMostDirectoryLines))
                            : words(language_, kSummary, std::int64_t{entered_.added}, refused));
  accept_->setEnabled(entered_.added > 0);
}

}  // namespace stayalight
