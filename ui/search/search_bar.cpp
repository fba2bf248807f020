#include "ui/search/search_bar.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QToolButton>

#include "ui/search/found_list.h"
#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kField{"search.field"};
constexpr MessageId kHint{"search.hint"};
constexpr MessageId kCount{"search.count"};
constexpr MessageId kNothing{"search.nothing"};
constexpr MessageId kClose{"search.close"};

}  // namespace

SearchBar::SearchBar(FoundList* list, QWidget* parent) : QWidget(parent), list_(list) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(4, 0, 4, 6);
  row->setSpacing(8);
  label_ = new QLabel(this);
  label_->setFont(screenFont(Face::condensed, 13, Weight::medium));
  field_ = new QLineEdit(this);
  field_->setObjectName(QStringLiteral("searchField"));
  field_->setMaxLength(200);
  field_->setMinimumHeight(scaled(26));
  field_->installEventFilter(this);
  label_->setBuddy(field_);
  count_ = new QLabel(this);
  count_->setObjectName(QStringLiteral("searchCount"));
  count_->setFont(screenFont(Face::condensed, 12));
  count_->setMinimumWidth(scaled(90));
  close_ = new QToolButton(this);
  close_->setObjectName(QStringLiteral("searchClose"));
  close_->setAutoRaise(true);
  close_->setFocusPolicy(Qt::TabFocus);
  close_->setMinimumSize(scaled(26), scaled(26));
  row->addWidget(label_);
  row->addWidget(field_, 1);
  row->addWidget(count_);
  row->addWidget(close_);
  connect(field_, &QLineEdit::textChanged, this, &SearchBar::searched);
  connect(close_, &QToolButton::clicked, this, &SearchBar::closeRequested);
}

void SearchBar::setTexts(const Language& language) {
  label_->setText(words(language, kField));
  field_->setPlaceholderText(words(language, kHint));
  field_->setAccessibleName(words(language, kField));
  field_->setAccessibleDescription(words(language, kHint));
  close_->setToolTip(words(language, kClose));
  close_->setAccessibleName(words(language, kClose));
}

void SearchBar::setColors(const Palette& palette) { close_->setIcon(buttonIcon(Icon::close, palette)); }

void SearchBar::start() {
  field_->setFocus(Qt::ShortcutFocusReason);
  field_->selectAll();
}

void SearchBar::clear() {
  const QSignalBlocker quiet(field_);
  field_->clear();
}

QString SearchBar::text() const { return field_->text(); }

void SearchBar::showCount(std::size_t found, const Language& language) {
  if (field_->text().trimmed().isEmpty())
    count_->clear();
  else
    count_->setText(found == 0 ? words(language, kNothing)
                               : words(language, kCount, static_cast<std::int64_t>(found)));
}

bool SearchBar::eventFilter(QObject* watched, QEvent* event) {
  if (watched != field_ || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  auto* key = static_cast<QKeyEvent*>(event);
  switch (key->key()) {
    case Qt::Key_Escape:
      Q_EMIT closeRequested();
      return true;
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
    case Qt::Key_Return:
    case Qt::Key_Enter: {
      QKeyEvent handed(key->type(), key->key(), key->modifiers(), key->text());
      QApplication::sendEvent(list_, &handed);
      return true;
    }
    default:
      return QWidget::eventFilter(watched, event);
  }
}

}  // namespace stayalight
