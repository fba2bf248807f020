#include "ui/catalogue/catalogue_panel.h"

#include <QtCore/QMimeData>
#include <QtGui/QDrag>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QListView>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QVBoxLayout>

#include "ui/catalogue/load_rows.h"
#include "ui/catalogue/own_lists.h"
#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kSearchLabel{"catalogue.search_label"};
constexpr MessageId kSearch{"catalogue.search"};
constexpr MessageId kList{"catalogue.list"};
constexpr MessageId kTarget{"catalogue.target"};
constexpr MessageId kNoTarget{"catalogue.no_target"};
constexpr MessageId kAdd{"catalogue.add"};
constexpr MessageId kNothingFound{"catalogue.nothing_found"};
constexpr MessageId kLeftOut{"catalogue.left_out"};
constexpr int kMargin = 12;
constexpr int kDetailLines = 5;
constexpr int kBesidePointer = 12;

void color(QWidget* label, const QColor& ink) {
  QPalette colors = label->palette();
  colors.setColor(QPalette::WindowText, ink);
  label->setPalette(colors);
}

/// A list whose dragged rows are shown by a small label beside the pointer, so that the breaker under it
/// stays in sight.
class LoadList final : public QListView {
 public:
  using QListView::QListView;

 protected:
  void startDrag(Qt::DropActions actions) override {
    QMimeData* carried = model()->mimeData({currentIndex()});
    if (carried == nullptr) return;
    QLabel label(carried->text());
    label.setAutoFillBackground(true);
    label.setFrameShape(QFrame::Box);
    label.setMargin(4);
    label.adjustSize();
    auto* drag = new QDrag(this);
    drag->setMimeData(carried);
    drag->setPixmap(label.grab());
    drag->setHotSpot(QPoint(-kBesidePointer, -kBesidePointer));
    drag->exec(actions, Qt::CopyAction);
  }
};

}  // namespace

CataloguePanel::CataloguePanel(const FormStyle& style, QWidget* parent)
    : QWidget(parent),
      style_(style),
      rows_(new LoadRows(*style.language, this)),
      painter_(new LoadRowPainter(this)),
      target_(new QLabel(this)),
      label_(new QLabel(this)),
      search_(new QLineEdit(this)),
      list_(new LoadList(this)),
      detail_(new QLabel(this)),
      wrong_(new QLabel(this)),
      add_(new QPushButton(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(kMargin, 4, kMargin, 8);
  column->setSpacing(6);
  target_->setObjectName(QStringLiteral("target"));
  target_->setTextFormat(Qt::PlainText);
  target_->setWordWrap(true);
  search_->setObjectName(QStringLiteral("search"));
  search_->setClearButtonEnabled(true);
  search_->installEventFilter(this);
  list_->setObjectName(QStringLiteral("loads"));
  list_->setModel(rows_);
  list_->setItemDelegate(painter_);
  list_->setUniformItemSizes(true);
  list_->setMinimumHeight(scaled(24));  // a row stays in sight where letters are large and the window is low
  list_->setDragEnabled(true);
  list_->setDragDropMode(QAbstractItemView::DragOnly);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->installEventFilter(this);
  detail_->setObjectName(QStringLiteral("detail"));
  wrong_->setObjectName(QStringLiteral("wrong"));
  for (QLabel* label : {detail_, wrong_}) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setAlignment(Qt::AlignTop);
  }
  detail_->setFont(screenFont(Face::condensed, 11.5));
  detail_->setMinimumHeight(QFontMetrics(detail_->font()).lineSpacing() * kDetailLines + 4);
  detail_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  wrong_->hide();
  add_->setObjectName(QStringLiteral("addLoad"));
  column->addWidget(target_);
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  label_->setBuddy(search_);
  row->addWidget(label_);
  row->addWidget(search_, 1);
  column->addLayout(row);
  column->addWidget(list_, 1);
  column->addWidget(detail_);
  column->addWidget(wrong_);
  column->addWidget(add_, 0, Qt::AlignRight);
  connect(search_, &QLineEdit::textChanged, this, [this](const QString& typed) { searched(typed); });
  connect(list_, &QListView::doubleClicked, this, [this] { add(); });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] { showDetail(); });
  connect(add_, &QPushButton::clicked, this, [this] { add(); });
  setStyle(style);
  setTarget({});
}

void CataloguePanel::setStyle(const FormStyle& style) {
  style_ = style;
  const Language& language = *style_.language;
  label_->setText(words(language, kSearchLabel));
  search_->setPlaceholderText(words(language, kSearch));
  search_->setAccessibleName(words(language, kSearchLabel));
  search_->setAccessibleDescription(words(language, kSearch));
  list_->setAccessibleName(words(language, kList));
  add_->setText(words(language, kAdd));
  add_->setIcon(buttonIcon(Icon::add, style_.palette));
  painter_->setColors(style_.palette);
  color(target_, style_.palette.color(ColorRole::ink2));
  color(detail_, style_.palette.color(ColorRole::ink2));
  color(wrong_, style_.palette.color(ColorRole::mustFix));
  list_->viewport()->update();
}

void CataloguePanel::setTarget(const QString& circuit) {
  chosen_ = !circuit.isEmpty();
  target_->setText(chosen_ ? words(*style_.language, kTarget, circuit.toStdString())
                           : words(*style_.language, kNoTarget));
  add_->setEnabled(chosen_);
}

void CataloguePanel::setKept(std::vector<CatalogueEntry> loads) {
  if (loads == kept_) return;
  kept_ = std::move(loads);
  if (isVisible()) reload();
}

void CataloguePanel::showEvent(QShowEvent* event) {
  reload();
  QWidget::showEvent(event);
}

void CataloguePanel::reload() {
  const Catalogue own = ownLoads();
  wrong_->setVisible(!own.refused.empty());
  if (!own.refused.empty()) {
    wrong_->setText(words(*style_.language, kLeftOut, static_cast<std::int64_t>(own.refused.size()),
                          std::vector<Message>{own.refused.front()}));
    QStringList all;
    for (const Message& why : own.refused) all << words(why, *style_.language);
    wrong_->setToolTip(all.join(QLatin1Char('\n')));
  }
  rows_->setLoads(kept_, own.entries, householdLoads().entries);
  searched(search_->text());
}

void CataloguePanel::startSearch() {
  search_->setFocus(Qt::ShortcutFocusReason);
  search_->selectAll();
}

void CataloguePanel::searched(const QString& typed) {
  rows_->search(typed);
  list_->setCurrentIndex(rows_->index(0));
  list_->scrollToTop();
  showDetail();
}

void CataloguePanel::showDetail() {
  const CatalogueEntry* entry = rows_->entry(list_->currentIndex());
  detail_->setText(entry == nullptr ? words(*style_.language, kNothingFound)
                                    : detailText(*entry, *style_.language));
  detail_->setToolTip(detail_->text());
}

void CataloguePanel::add() {
  if (const CatalogueEntry* entry = rows_->entry(list_->currentIndex()))
    Q_EMIT addRequested(loadFrom(*entry));
}

bool CataloguePanel::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
  auto* key = static_cast<QKeyEvent*>(event);
  if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
    add();
    return true;
  }
  if (watched != search_) return QWidget::eventFilter(watched, event);
  switch (key->key()) {
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
      // While one types, the arrows choose in the list.
      QApplication::sendEvent(list_, event);
      return true;
    case Qt::Key_Escape:
      if (search_->text().isEmpty()) break;
      search_->clear();
      return true;
    default:
      break;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace stayalight
