#include "ui/search/found_list.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QStyledItemDelegate>

#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kList{"search.list"};
constexpr MessageId kRow{"search.row"};
constexpr int kRowHeightPixels = 40;
constexpr int kInset = 12;

class RowDelegate final : public QStyledItemDelegate {
 public:
  explicit RowDelegate(FoundList* list) : QStyledItemDelegate(list), list_(list) {}
  void setColors(const Palette& palette) { palette_ = palette; }

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
    return {200, scaled(kRowHeightPixels)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto row = static_cast<std::size_t>(index.row());
    if (row >= list_->found().size()) return;
    const Found& found = list_->found()[row];
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool current = chosen && list_->hasFocus();
    painter->save();
    if (chosen) painter->fillRect(option.rect, palette_.color(current ? ColorRole::ink : ColorRole::track));
    const QRect inside = option.rect.adjusted(scaled(kInset), 2, -scaled(kInset), -2);
    const QColor first = palette_.color(current ? ColorRole::sheet : ColorRole::ink);
    const QColor second = palette_.color(current ? ColorRole::sheet : ColorRole::ink2);
    const QFont name = screenFont(Face::condensed, 13, Weight::medium);
    const QFont small = screenFont(Face::condensed, 11.5);
    const QFontMetrics smallWide(small), nameWide(name);
    const int place = smallWide.horizontalAdvance(found.place);
    const QRect upper(inside.left(), inside.top(), inside.width(), inside.height() / 2);
    const QRect lower(inside.left(), upper.bottom(), inside.width(), inside.height() / 2);
    painter->setFont(name);
    painter->setPen(first);
    painter->drawText(upper, Qt::AlignLeft | Qt::AlignVCenter,
                      nameWide.elidedText(found.name, Qt::ElideRight, upper.width() - place - 8));
    painter->setFont(small);
    painter->setPen(second);
    painter->drawText(upper, Qt::AlignRight | Qt::AlignVCenter, found.place);
    painter->drawText(lower, Qt::AlignLeft | Qt::AlignVCenter,
                      smallWide.elidedText(found.matched, Qt::ElideRight, lower.width()));
    if (!current) {
      painter->setPen(palette_.color(ColorRole::hairline));
      painter->drawLine(inside.left(), option.rect.bottom(), inside.right(), option.rect.bottom());
    }
    painter->restore();
  }

 private:
  FoundList* list_;
  Palette palette_{Theme::light};
};

}  // namespace

FoundList::FoundList(QWidget* parent) : QListWidget(parent) {
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setUniformItemSizes(true);
  setItemDelegate(new RowDelegate(this));
  connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) { choose(row(item)); });
}

void FoundList::setTexts(const Language& language) { setAccessibleName(words(language, kList)); }

void FoundList::setColors(const Palette& palette) {
  static_cast<RowDelegate*>(itemDelegate())->setColors(palette);
  viewport()->update();
}

void FoundList::show(std::vector<Found> found, const Language& language) {
  const int at = currentRow();
  const auto same = [](const Found& a, const Found& b) {
    return a.kind == b.kind && a.what == b.what && a.space == b.space && a.name == b.name;
  };
  int next = 0;
  if (at >= 0 && at < static_cast<int>(found_.size())) {
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (same(found[i], found_[static_cast<std::size_t>(at)])) next = static_cast<int>(i);
    }
  }
  found_ = std::move(found);
  QListWidget::clear();
  for (const Found& each : found_) {
    auto* item = new QListWidgetItem(each.name, this);
    item->setToolTip(each.name);
    item->setData(Qt::AccessibleTextRole, words(language, kRow, each.name.toStdString(),
                                                each.place.toStdString(), each.matched.toStdString()));
  }
  if (!found_.empty()) setCurrentRow(next);
}

void FoundList::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    choose(currentRow());
  else
    QListWidget::keyPressEvent(event);
}

void FoundList::choose(int row) {
  if (row < 0 || row >= static_cast<int>(found_.size())) return;
  const Found chosenOne = found_[static_cast<std::size_t>(row)];  // a copy: the list may be filled anew
  Q_EMIT chosen(chosenOne);
}

}  // namespace stayalight
