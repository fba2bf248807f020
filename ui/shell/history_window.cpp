#include "ui/shell/history_window.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QVBoxLayout>

#include "ui/document/plan_document.h"
#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"shell.history.title"};
constexpr MessageId kNote{"shell.history.note"};
constexpr MessageId kFirst{"shell.history.first"};
constexpr MessageId kNow{"shell.history.now"};
constexpr MessageId kUndone{"shell.history.undone"};

}  // namespace

HistoryWindow::HistoryWindow(const PlanDocument& document, const Language& language, QWidget* parent)
    : QDialog(parent), document_(document), language_(language) {
  setObjectName(QStringLiteral("historyWindow"));
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(words(language, kTitle));
  resize(scaled(420), scaled(460));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(20, 16, 20, 12);
  column->setSpacing(8);
  auto* note = new QLabel(words(language, kNote), this);
  note->setWordWrap(true);
  column->addWidget(note);
  list_ = new QListWidget(this);
  list_->setObjectName(QStringLiteral("historySteps"));
  list_->setAccessibleName(words(language, kTitle));
  list_->setUniformItemSizes(true);
  list_->installEventFilter(this);
  note->setBuddy(list_);
  column->addWidget(list_, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  connect(list_, &QListWidget::itemClicked, this,
          [this](QListWidgetItem* item) { Q_EMIT chosen(list_->row(item)); });
  connect(&document, &PlanDocument::changed, this, [this] { fill(); });
  fill();
  list_->setFocus();
}

void HistoryWindow::fill() {
  const QUndoStack& stack = document_.stack();
  const int now = stack.index();
  list_->clear();
  for (int step = 0; step <= stack.count(); ++step) {
    const QString name = step == 0 ? words(language_, kFirst) : stack.text(step - 1);
    const MessageId how = step == now ? kNow : kUndone;
    auto* item = new QListWidgetItem(step < now ? name : words(language_, how, name.toStdString()), list_);
    QFont font = screenFont(Face::condensed, 13, step == now ? Weight::bold : Weight::regular);
    font.setItalic(step > now);
    item->setFont(font);
    item->setSizeHint(QSize(100, scaled(26)));
  }
  list_->setCurrentRow(now);
  list_->scrollToItem(list_->item(now));
}

bool HistoryWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if ((key == Qt::Key_Return || key == Qt::Key_Enter) && list_->currentRow() >= 0) {
      Q_EMIT chosen(list_->currentRow());
      return true;
    }
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace stayalight
