#include "ui/shell/edition_dialog.h"

#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTableWidget>
#include <QtWidgets/QVBoxLayout>

#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"shell.edition.title"};
constexpr MessageId kChanges{"shell.edition.changes"};
constexpr MessageId kNothing{"shell.edition.nothing"};
constexpr MessageId kAdopted{"shell.edition.adopted"};
constexpr MessageId kWhat{"shell.edition.what"};
constexpr MessageId kTable{"shell.edition.table"};
constexpr MessageId kTake{"shell.edition.take"};
constexpr MessageId kKeep{"shell.edition.keep"};

constexpr int kWidth = 760;
constexpr int kHeight = 460;

QString editionWord(Edition edition) { return QString::fromStdString(std::string(name(edition))); }

}  // namespace

EditionDialog::EditionDialog(const Plan& plan, Edition to, const Language& language, QWidget* parent)
    : QDialog(parent), table_(new QTableWidget(this)) {
  setObjectName(QStringLiteral("editionDialog"));
  const Edition from = plan.site->edition.valueOr(Edition::y2023);
  const std::string was = editionWord(from).toStdString(), is = editionWord(to).toStdString();
  setWindowTitle(words(language, kTitle, is));
  const std::vector<EditionChange> changes = editionChanges(plan, to);
  auto* column = new QVBoxLayout(this);
  auto* head = new QLabel(words(language, changes.empty() ? kNothing : kChanges, was, is), this);
  head->setWordWrap(true);
  column->addWidget(head);
  table_->setColumnCount(3);
  table_->setHorizontalHeaderLabels({words(language, kWhat), editionWord(from), editionWord(to)});
  table_->setAccessibleName(words(language, kTable));
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table_->setWordWrap(true);
  table_->setTabKeyNavigation(false);
  table_->verticalHeader()->hide();
  table_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
  for (const int side : {1, 2}) {
    table_->horizontalHeader()->setSectionResizeMode(side, QHeaderView::Interactive);
    table_->setColumnWidth(side, scaled(170));
  }
  table_->setRowCount(static_cast<int>(changes.size()));
  for (int row = 0; row < table_->rowCount(); ++row) {
    const EditionChange& change = changes[static_cast<std::size_t>(row)];
    int at = 0;
    for (const Message* message : {&change.what, &change.before, &change.after}) {
      auto* item = new QTableWidgetItem(words(*message, language));
      item->setToolTip(item->text());
      table_->setItem(row, at++, item);
    }
  }
  table_->setVisible(!changes.empty());
  column->addWidget(table_, 1);
  auto* adopted = new QLabel(words(language, kAdopted), this);
  adopted->setWordWrap(true);
  column->addWidget(adopted);
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* take = buttons->addButton(words(language, kTake, is), QDialogButtonBox::AcceptRole);
  take->setObjectName(QStringLiteral("take"));
  QPushButton* keep = buttons->addButton(words(language, kKeep, was), QDialogButtonBox::RejectRole);
  keep->setObjectName(QStringLiteral("keep"));
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  if (!changes.empty()) resize(kWidth, kHeight);
  // As high as their words at the widths that the columns have once they are seen.
  table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  take->setDefault(true);
}

}  // namespace stayalight
