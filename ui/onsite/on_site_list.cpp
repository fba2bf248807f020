#include "ui/onsite/on_site_list.h"

#include <QtCore/QEvent>
#include <QtCore/QSignalBlocker>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QStyledItemDelegate>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>

#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kWho{"onsite.who"};
constexpr MessageId kEverybody{"onsite.everybody"};
constexpr MessageId kCounts[] = {MessageId{"onsite.household_count"}, MessageId{"onsite.qualified_count"}};
constexpr MessageId kDoers[] = {MessageId{"onsite.household"}, MessageId{"onsite.qualified"}};
constexpr MessageId kList{"onsite.list"};
constexpr MessageId kRow{"onsite.row"};
constexpr MessageId kNone{"onsite.none"};

constexpr int kInset = 12;
constexpr int kUpper = 18;
constexpr int kPad = 5;
constexpr int kDoerRole = Qt::UserRole;
constexpr int kWhatRole = Qt::UserRole + 1;

QString doerName(Doer doer, const Language& language) {
  return words(language, kDoers[static_cast<std::size_t>(doer)]);
}

class RowDelegate final : public QStyledItemDelegate {
 public:
  explicit RowDelegate(QListWidget* list) : QStyledItemDelegate(list), list_(list) {}
  void setColors(const Palette& palette) { palette_ = palette; }

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
    const int width = list_->viewport()->width() - 2 * scaled(kInset);
    const QRect lines =
        QFontMetrics(whatFont())
            .boundingRect(QRect(0, 0, width, 1000), Qt::TextWordWrap, index.data(kWhatRole).toString());
    return {width, 2 * scaled(kPad) + scaled(kUpper) + lines.height()};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool current = chosen && list_->hasFocus();
    painter->save();
    if (chosen) painter->fillRect(option.rect, palette_.color(current ? ColorRole::ink : ColorRole::track));
    const QRect inside = option.rect.adjusted(scaled(kInset), scaled(kPad), -scaled(kInset), -scaled(kPad));
    const QFont place = screenFont(Face::condensed, 12.5, Weight::medium);
    const QString doer = index.data(kDoerRole).toString();
    const QFontMetrics small(whatFont()), wide(place);
    const QRect upper(inside.left(), inside.top(), inside.width(), scaled(kUpper));
    painter->setFont(place);
    painter->setPen(palette_.color(current ? ColorRole::sheet : ColorRole::ink));
    painter->drawText(upper, Qt::AlignLeft | Qt::AlignVCenter,
                      wide.elidedText(index.data(Qt::DisplayRole).toString(), Qt::ElideRight,
                                      upper.width() - small.horizontalAdvance(doer) - 8));
    painter->setFont(whatFont());
    painter->setPen(palette_.color(current ? ColorRole::sheet : ColorRole::ink2));
    painter->drawText(upper, Qt::AlignRight | Qt::AlignVCenter, doer);
    painter->drawText(inside.adjusted(0, scaled(kUpper), 0, 0),
                      Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, index.data(kWhatRole).toString());
    if (!current) {
      painter->setPen(palette_.color(ColorRole::hairline));
      painter->drawLine(inside.left(), option.rect.bottom(), inside.right(), option.rect.bottom());
    }
    painter->restore();
  }

 private:
  static QFont whatFont() { return screenFont(Face::condensed, 11.5); }
  QListWidget* list_;
  Palette palette_{Theme::light};
};

}  // namespace

OnSiteList::OnSiteList(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 6, 0, 0);
  column->setSpacing(6);
  auto* head = new QHBoxLayout;
  head->setContentsMargins(kInset, 0, kInset, 0);
  who_ = new QLabel(this);
  doers_ = new QComboBox(this);
  doers_->setObjectName(QStringLiteral("onSiteDoers"));
  who_->setBuddy(doers_);
  head->addWidget(who_);
  head->addWidget(doers_, 1);
  column->addLayout(head);
  rows_ = new QListWidget(this);
  rows_->setObjectName(QStringLiteral("onSiteRows"));
  rows_->setFrameShape(QFrame::NoFrame);
  rows_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  // Always there: rows are as high as their words at the width that it leaves.
  rows_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  rows_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  rows_->setResizeMode(QListView::Adjust);
  rows_->setItemDelegate(new RowDelegate(rows_));
  rows_->installEventFilter(this);
  column->addWidget(rows_, 1);
  none_ = new QLabel(this);
  none_->setWordWrap(true);
  none_->setContentsMargins(kInset, 0, kInset, 0);
  column->addWidget(none_);
  column->addStretch(0);
  setFocusProxy(rows_);
  connect(doers_, &QComboBox::activated, this, [this] { fill(); });
  connect(rows_, &QListWidget::itemClicked, this,
          [this](QListWidgetItem* item) { choose(rows_->row(item)); });
}

void OnSiteList::setColors(const Palette& palette) {
  static_cast<RowDelegate*>(rows_->itemDelegate())->setColors(palette);
  rows_->viewport()->update();
}

void OnSiteList::show(const std::vector<OnSiteItem>& items, const Language& language) {
  language_ = &language;
  items_ = items;
  const auto of = [&](Doer doer) {
    return std::int64_t{std::count_if(items_.begin(), items_.end(),
                                      [doer](const OnSiteItem& item) { return item.doer == doer; })};
  };
  const int choice = std::max(0, doers_->currentIndex());
  const QSignalBlocker quiet(doers_);
  doers_->clear();
  doers_->addItem(words(language, kEverybody, static_cast<std::int64_t>(items_.size())));
  doers_->addItem(words(language, kCounts[0], of(Doer::household)));
  doers_->addItem(words(language, kCounts[1], of(Doer::qualifiedPerson)));
  doers_->setCurrentIndex(choice);
  who_->setText(words(language, kWho));
  doers_->setAccessibleName(words(language, kWho));
  rows_->setAccessibleName(words(language, kList));
  none_->setText(words(language, kNone));
  fill();
}

void OnSiteList::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (stale_) fill();
}

void OnSiteList::fill() {
  stale_ = !isVisible();
  if (stale_) return;
  const int at = rows_->currentRow();
  std::optional<OnSiteItem> kept;
  if (at >= 0 && at < static_cast<int>(shown_.size())) kept = shown_[static_cast<std::size_t>(at)];
  const int choice = doers_->currentIndex();
  shown_.clear();
  std::copy_if(items_.begin(), items_.end(), std::back_inserter(shown_), [choice](const OnSiteItem& item) {
    return choice <= 0 || static_cast<int>(item.doer) == choice - 1;
  });
  // The item that is gone leaves its place to the next one.
  int next = std::clamp(at, 0, std::max(0, static_cast<int>(shown_.size()) - 1));
  for (std::size_t i = 0; kept && i < shown_.size(); ++i) {
    if (shown_[i].key == kept->key && shown_[i].place == kept->place) next = static_cast<int>(i);
  }
  rows_->clear();
  for (const OnSiteItem& item : shown_) {
    const QString where = words(item.where, *language_), what = words(item.what, *language_);
    const QString doer = doerName(item.doer, *language_);
    auto* row = new QListWidgetItem(where, rows_);
    row->setData(kDoerRole, doer);
    row->setData(kWhatRole, what);
    row->setToolTip(where);
    row->setData(Qt::AccessibleTextRole,
                 words(*language_, kRow, where.toStdString(), what.toStdString(), doer.toStdString()));
  }
  if (!shown_.empty()) rows_->setCurrentRow(next);
  rows_->setVisible(!shown_.empty());
  none_->setVisible(shown_.empty());
}

bool OnSiteList::eventFilter(QObject* watched, QEvent* event) {
  if (watched == rows_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
      choose(rows_->currentRow());
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void OnSiteList::choose(int row) {
  if (row < 0 || row >= static_cast<int>(shown_.size())) return;
  const OnSiteItem item = shown_[static_cast<std::size_t>(row)];  // a copy: the list may be filled anew
  Q_EMIT chosen(item);
}

}  // namespace stayalight
