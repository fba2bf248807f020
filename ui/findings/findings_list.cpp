#include "ui/findings/findings_list.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>
#include <span>

#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"shell.findings"};
constexpr MessageId kNone{"shell.findings.none"};
constexpr MessageId kPractice{"shell.findings.practice"};
constexpr MessageId kListed{"shell.findings.listed"};
constexpr MessageId kLocal{"shell.findings.local"};
constexpr MessageId kSpoken{"shell.findings.spoken"};
constexpr MessageId kCounts{"shell.findings.counts"};
constexpr std::array<MessageId, 4> kSeverities = {
    MessageId{"shell.severity.danger"}, MessageId{"shell.severity.must_fix"},
    MessageId{"shell.severity.check_on_site"}, MessageId{"shell.severity.advice"}};
constexpr double kMark = 14.0;
constexpr int kCountWidth = 36;
constexpr std::size_t kMostPlaces = 4;

void color(QWidget* label, const Palette& palette, ColorRole role) {
  QPalette colors = label->palette();
  colors.setColor(QPalette::WindowText, palette.color(role));
  label->setPalette(colors);
}

}  // namespace

QString findingPlaces(const Plan& plan, const Finding& finding, const Language& language) {
  QStringList all;
  for (const EntityRef& place : finding.places) {
    std::string text = placeName(plan, place, language);
    if (text.empty()) text = entityName(plan, place, language);
    const QString shown = QString::fromStdString(text);
    if (!shown.isEmpty() && !all.contains(shown)) all << shown;
  }
  if (static_cast<std::size_t>(all.size()) > kMostPlaces) {
    all = all.mid(0, static_cast<qsizetype>(kMostPlaces));
    all << QStringLiteral("\u2026");
  }
  return all.join(QLatin1String(", "));
}

QString findingBasis(const Finding& finding, const Language& language) {
  switch (finding.basis) {
    case Basis::practice:
      return words(language, kPractice);
    case Basis::listedInstruction:
      return words(language, kListed);
    case Basis::local:
      return words(language, kLocal);
    case Basis::code:
      break;
  }
  return QString::fromStdString(language.citation(finding.rule));
}

void FindingCounts::show(const std::array<int, 4>& counts, const Palette& palette, const Language& language) {
  counts_ = counts;
  palette_ = palette;
  setAccessibleName(words(language, kCounts, std::int64_t{counts[0]}, std::int64_t{counts[1]},
                          std::int64_t{counts[2]}, std::int64_t{counts[3]}));
  setToolTip(accessibleName());
  updateGeometry();
  update();
}

QSizeF FindingCounts::wanted() const { return {kCountWidth * 4.0, 18.0}; }

void FindingCounts::paint(QPainter& painter) {
  painter.setFont(stayalight::font(Face::condensed, 12, Weight::medium));
  for (int i = 0; i < 4; ++i) {
    const double left = across() - (4 - i) * kCountWidth;
    paintSeverity(painter, QRectF(left, (down() - kMark) / 2, kMark, kMark), static_cast<Severity>(i),
                  palette_);
    painter.setPen(palette_.color(ColorRole::ink));
    painter.drawText(QRectF(left + kMark + 4, 0, kCountWidth - kMark - 4, down()),
                     Qt::AlignLeft | Qt::AlignVCenter, QString::number(counts_[static_cast<std::size_t>(i)]));
  }
}

FindingText findingText(const Plan& plan, const Finding& finding, const Language& language) {
  FindingText text;
  text.plain = words(finding.plain, language);
  text.trade = finding.trade.id.key.empty() ? QString() : words(finding.trade, language);
  text.places = findingPlaces(plan, finding, language);
  text.basis = findingBasis(finding, language);
  if (finding.fix) text.fix = words(finding.fixName, language);
  text.spoken = words(language, kSpoken,
                      words(language, kSeverities[static_cast<std::size_t>(finding.severity)]).toStdString(),
                      text.plain.toStdString(), text.places.toStdString(), text.basis.toStdString());
  return text;
}

FindingRow::FindingRow(const Finding& finding, FindingText text, const Palette& palette, QWidget* parent)
    : QFrame(parent), finding_(finding), text_(std::move(text)), palette_(palette) {
  setFocusPolicy(Qt::StrongFocus);
  setObjectName(QStringLiteral("finding.") +
                QString::fromUtf8(finding.key.data(), static_cast<qsizetype>(finding.key.size())));
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(scaled(16 + 22), 5, 12, 5);
  row->setSpacing(8);
  auto* column = new QVBoxLayout;
  column->setSpacing(1);
  const auto label = [&](const QString& shown, double size, Weight weight, ColorRole role) {
    auto* made = new QLabel(shown, this);
    made->setFont(screenFont(Face::condensed, size, weight));
    made->setWordWrap(true);
    made->setTextFormat(Qt::PlainText);
    color(made, palette_, role);
    column->addWidget(made);
    return made;
  };
  label(text_.plain, 12, Weight::medium, ColorRole::ink);
  trade_ = label(text_.trade, 11.5, Weight::regular, ColorRole::ink2);
  trade_->hide();
  label(text_.places.isEmpty() ? text_.basis : QString(text_.places + QStringLiteral("   ") + text_.basis),
        11, Weight::regular, ColorRole::ink3);
  row->addLayout(column, 1);
  if (finding.fix) {
    fix_ = new QPushButton(text_.fix, this);
    fix_->setObjectName(QStringLiteral("fix"));
    fix_->setFont(screenFont(Face::condensed, 12, Weight::medium));
    fix_->setAccessibleName(text_.fix + QLatin1String(": ") + text_.plain);
    row->addWidget(fix_, 0, Qt::AlignBottom);
    connect(fix_, &QPushButton::clicked, this, [this] { Q_EMIT fixRequested(finding_); });
  }
  setAccessibleName(text_.spoken);
  setAccessibleDescription(text_.trade);
  setToolTip(text_.trade);
}

bool FindingRow::take(const Finding& finding, const FindingText& text) {
  if (finding.key != finding_.key || finding.severity != finding_.severity ||
      finding.fix.has_value() != finding_.fix.has_value() || text != text_)
    return false;
  finding_ = finding;
  return true;
}

void FindingRow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (finding_.severity == Severity::danger)
    painter.fillRect(QRectF(0, 0, 3, height()), palette_.color(ColorRole::danger));
  const double mark = kMark * systemScale();
  paintSeverity(painter, QRectF(16, 7, mark, mark), finding_.severity, palette_);
  painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
  painter.drawLine(QPointF(16, height() - 0.5), QPointF(width() - 12, height() - 0.5));
  if (hasFocus()) {
    painter.setPen(QPen(palette_.color(ColorRole::lamp), 1.5));
    painter.drawRoundedRect(QRectF(rect()).adjusted(5, 1, -5, -2), 3, 3);
  }
}

void FindingRow::mouseDoubleClickEvent(QMouseEvent*) { Q_EMIT jumpRequested(finding_); }

void FindingRow::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      Q_EMIT jumpRequested(finding_);
      return;
    case Qt::Key_Down:
      Q_EMIT stepped(1);
      return;
    case Qt::Key_Up:
      Q_EMIT stepped(-1);
      return;
    default:
      QFrame::keyPressEvent(event);
  }
}

void FindingRow::focusInEvent(QFocusEvent* event) {
  QFrame::focusInEvent(event);
  trade_->setVisible(!trade_->text().isEmpty());
  update();
  Q_EMIT entered();
}

void FindingRow::focusOutEvent(QFocusEvent* event) {
  QFrame::focusOutEvent(event);
  trade_->hide();
  update();
}

FindingsList::FindingsList(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 10, 0, 4);
  column->setSpacing(4);
  auto* top = new QHBoxLayout;
  top->setContentsMargins(16, 0, 12, 0);
  head_ = new QLabel(this);
  head_->setFont(screenFont(Face::condensed, 13, Weight::medium));
  counts_ = new FindingCounts(this);
  top->addWidget(head_, 1);
  top->addWidget(counts_);
  column->addLayout(top);
  scroll_ = new QScrollArea(this);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  column->addWidget(scroll_, 1);
  auto* page = new QWidget;
  page->setObjectName(QStringLiteral("findingsPage"));
  column_ = new QVBoxLayout(page);
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(0);
  none_ = new QLabel(page);
  none_->setFont(screenFont(Face::condensed, 12));
  none_->setWordWrap(true);
  none_->setContentsMargins(16, 6, 12, 6);
  column_->addWidget(none_);
  column_->addStretch(1);
  scroll_->setWidget(page);
  connect(scroll_->verticalScrollBar(), &QScrollBar::valueChanged, this, [this](int value) {
    const QScrollBar& bar = *scroll_->verticalScrollBar();
    if (value > 0 && value >= bar.maximum() - bar.pageStep()) placeMore();
  });
}

void FindingsList::setColors(const Palette& palette) {
  palette_ = palette;
  for (FindingRow* row : rows_) delete row;
  rows_.clear();
  fill();
}

void FindingsList::show(const Plan& plan, const std::vector<Finding>& findings, const Language& language) {
  plan_ = plan;
  findings_ = findings;
  language_ = &language;
  if (scroll_->verticalScrollBar()->value() == 0) most_ = kRowsAtOnce;
  fill();
}

// From row to row, past the buttons that stand on them; beyond the ends the keyboard stays.
void FindingsList::step(const FindingRow* from, int by) {
  const auto at = std::find(rows_.begin(), rows_.end(), from) - rows_.begin() + by;
  if (at < 0 || at >= static_cast<std::ptrdiff_t>(rows_.size())) return;
  FindingRow* row = rows_[static_cast<std::size_t>(at)];
  row->setFocus(by > 0 ? Qt::TabFocusReason : Qt::BacktabFocusReason);
  scroll_->ensureWidgetVisible(row, 0, 0);
}

void FindingsList::placeMore() {
  if (rows_.size() >= findings_.size()) return;
  most_ = rows_.size() + kRowsAtOnce;
  placeRows();
}

void FindingsList::fill() {
  head_->setText(words(*language_, kHead));
  color(head_, palette_, ColorRole::ink);
  std::array<int, 4> counts{};
  for (const Finding& finding : findings_) ++counts[static_cast<std::size_t>(finding.severity)];
  counts_->show(counts, palette_, *language_);
  none_->setText(words(*language_, kNone));
  none_->setVisible(findings_.empty());
  color(none_, palette_, ColorRole::ink2);
  placeRows();
}

// A row that reads as before stays the same widget: a change neither flickers nor takes the keyboard away.
void FindingsList::placeRows() {
  std::string focused;
  for (const FindingRow* row : rows_) {
    if (row->hasFocus()) focused = std::string(row->finding().key);
  }
  const int position = scroll_->verticalScrollBar()->value();
  std::vector<FindingRow*> old = std::move(rows_);
  rows_.clear();
  const std::size_t count = std::min(findings_.size(), most_);
  bool same = old.size() == count;
  // One layout for all rows, not one for each that comes or goes.
  column_->setEnabled(false);
  for (const Finding& finding : std::span(findings_).first(count)) {
    const FindingText text = findingText(plan_, finding, *language_);
    const auto at = static_cast<int>(rows_.size());
    const auto kept =
        std::find_if(old.begin(), old.end(), [&](FindingRow* row) { return row->take(finding, text); });
    FindingRow* row = nullptr;
    if (kept != old.end()) {
      row = *kept;
      old.erase(kept);
    } else {
      row = new FindingRow(finding, text, palette_, scroll_->widget());
      connect(row, &FindingRow::jumpRequested, this, &FindingsList::jumpRequested);
      connect(row, &FindingRow::fixRequested, this, &FindingsList::fixRequested);
      connect(row, &FindingRow::stepped, this, [this, row](int by) { step(row, by); });
      // Queued: the rows are not changed while the keyboard is on its way to one of them.
      connect(
          row, &FindingRow::entered, this,
          [this, row] {
            if (!rows_.empty() && rows_.back() == row) placeMore();
          },
          Qt::QueuedConnection);
      row->show();
    }
    if (column_->itemAt(at)->widget() != row) {
      column_->insertWidget(at, row);
      same = false;
    }
    rows_.push_back(row);
  }
  for (FindingRow* gone : old) {
    // The button that asked for a repair may stand on it: it goes once its signal is done.
    column_->removeWidget(gone);
    gone->hide();
    gone->deleteLater();
  }
  column_->setEnabled(true);
  if (same) return;
  column_->invalidate();
  scroll_->verticalScrollBar()->setValue(position);
  for (FindingRow* row : rows_) {
    if (!focused.empty() && row->finding().key == focused) {
      row->setFocus();
      break;
    }
  }
}

}  // namespace stayalight
