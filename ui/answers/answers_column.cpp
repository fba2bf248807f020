#include "ui/answers/answers_column.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtGui/QTextLayout>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QVBoxLayout>
#include <cmath>

#include "ui/answers/figure_copy.h"
#include "ui/answers/leg_bars.h"
#include "ui/style/application.h"
#include "ui/style/fonts.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kEachLeg{"answers.each_leg"};
constexpr double kText = 11.5;
constexpr double kDetail = 11.0;
constexpr int kLineHeight = 21;
constexpr int kDetailHeight = 14;
constexpr double kBeadRoom = 14.0;
constexpr double kGap = 10.0;

void color(QWidget* label, const Palette& palette, ColorRole role) {
  QPalette colors = label->palette();
  colors.setColor(QPalette::WindowText, palette.color(role));
  label->setPalette(colors);
}

}  // namespace

FigureRow::FigureRow(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setAttribute(Qt::WA_Hover);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void FigureRow::show(const AnswerLine& line, const Palette& palette, const Language& language) {
  const QString verdict = line.verdict ? verdictName(*line.verdict, language) : QString();
  const bool same = line.label == line_.label && line.value == line_.value && line.detail == line_.detail &&
                    verdict == verdict_ && palette.theme() == palette_.theme();
  line_ = line;
  language_ = &language;
  if (same) return;
  palette_ = palette;
  verdict_ = verdict;
  brokenFor_ = -1.0;
  setText(line.label);
  QString spoken = line.label + QLatin1String(": ") + line.value;
  if (!verdict_.isEmpty()) spoken += QLatin1String(", ") + verdict_;
  setAccessibleName(spoken);
  setAccessibleDescription(line.detail);
  setToolTip(line.detail);
  updateGeometry();
  update();
}

bool FigureRow::stacked(double width) const {
  const double verdictWidth =
      verdict_.isEmpty() ? 0.0
                         : textWidth(verdict_, Face::condensed, kText, Weight::medium) + kBeadRoom + kGap;
  return textWidth(line_.label, Face::condensed, kText) +
             textWidth(line_.value, Face::condensed, kText, Weight::medium) + verdictWidth + kGap >
         width;
}

const QStringList& FigureRow::detailLines(double width) const {
  if (width == brokenFor_) return lines_;
  brokenFor_ = width;
  lines_.clear();
  QString line;
  for (const QString& word : line_.detail.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
    const QString longer = line.isEmpty() ? word : QString(line + QLatin1Char(' ') + word);
    if (!line.isEmpty() && textWidth(longer, Face::condensed, kDetail) > width) {
      lines_ << line;
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.isEmpty()) lines_ << line;
  return lines_;
}

int FigureRow::heightForWidth(int width) const {
  const double units = width / systemScale() - 2.0;
  return static_cast<int>(std::ceil((kLineHeight * (stacked(units) ? 2 : 1) +
                                     kDetailHeight * static_cast<int>(detailLines(units).size()) + 3) *
                                    systemScale()));
}
QSize FigureRow::sizeHint() const { return {scaled(300), heightForWidth(std::max(width(), scaled(200)))}; }
QSize FigureRow::minimumSizeHint() const { return {scaled(160), scaled(kLineHeight)}; }

void FigureRow::resizeEvent(QResizeEvent* event) {
  QAbstractButton::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) updateGeometry();
}

void FigureRow::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.scale(systemScale(), systemScale());
  const double across = this->width() / systemScale(), down = height() / systemScale();
  const double width = across - 2.0;
  painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
  painter.drawLine(QPointF(0, down - 0.5), QPointF(across, down - 0.5));
  double right = width;
  double y = 0;
  if (!verdict_.isEmpty()) {
    const double w = textWidth(verdict_, Face::condensed, kText, Weight::medium);
    const bool over = line_.verdict == Verdict::over;
    painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
    painter.setPen(palette_.color(over ? ColorRole::mustFix : ColorRole::ink));
    painter.drawText(QRectF(right - w - 1, y, w + 2, kLineHeight), Qt::AlignRight | Qt::AlignVCenter,
                     verdict_);
    paintBead(painter, QRectF(right - w - kBeadRoom, y + (kLineHeight - 9) / 2.0, 9, 9),
              beadOf(*line_.verdict), palette_);
    right -= w + kBeadRoom + kGap;
  }
  const bool two = stacked(width);
  painter.setFont(stayalight::font(Face::condensed, kText));
  painter.setPen(palette_.color(ColorRole::ink2));
  const double labelRoom =
      two ? right : right - textWidth(line_.value, Face::condensed, kText, Weight::medium) - kGap;
  painter.drawText(QRectF(0, y, labelRoom, kLineHeight), Qt::AlignLeft | Qt::AlignVCenter,
                   elided(line_.label, labelRoom, Face::condensed, kText));
  painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
  painter.setPen(palette_.color(ColorRole::ink));
  if (two) {
    y += kLineHeight;
    painter.drawText(QRectF(0, y, width, kLineHeight), Qt::AlignLeft | Qt::AlignVCenter,
                     elided(line_.value, width, Face::condensed, kText, Weight::medium));
  } else {
    painter.drawText(QRectF(0, y, right, kLineHeight), Qt::AlignRight | Qt::AlignVCenter, line_.value);
  }
  y += kLineHeight;
  painter.setFont(stayalight::font(Face::condensed, kDetail));
  painter.setPen(palette_.color(ColorRole::ink3));
  for (const QString& line : detailLines(width)) {
    painter.drawText(QRectF(0, y, width + 2, kDetailHeight), Qt::AlignLeft | Qt::AlignVCenter, line);
    y += kDetailHeight;
  }
  if (hasFocus() || underMouse()) {
    painter.setPen(
        QPen(palette_.color(hasFocus() ? ColorRole::lamp : ColorRole::edge), hasFocus() ? 1.5 : 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(0, 0, across, down).adjusted(0.75, 0.75, -0.75, -1.75), 3, 3);
  }
}

bool FigureRow::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && isCopyKey(event)) {
    event->accept();
    return true;
  }
  return QAbstractButton::event(event);
}

void FigureRow::contextMenuEvent(QContextMenuEvent* event) {
  if (language_ == nullptr) return;
  const QPoint at =
      event->reason() == QContextMenuEvent::Keyboard ? mapToGlobal(rect().center()) : event->globalPos();
  openFigureMenu(
      this, at, figureAsText(line_.label, line_.value), *language_,
      line_.working.values.empty() ? std::function<void()>() : [this] { click(); });
}

void FigureRow::keyPressEvent(QKeyEvent* event) {
  if (isCopyKey(event))
    copyFigure(figureAsText(line_.label, line_.value));
  else if (event->key() == Qt::Key_W || event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    click();
  else
    QAbstractButton::keyPressEvent(event);
}

AnswersColumn::AnswersColumn(QWidget* parent) : QWidget(parent) {
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  scroll_ = new QScrollArea(this);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setFocusPolicy(Qt::NoFocus);
  outer->addWidget(scroll_);
  page_ = new QWidget(scroll_);
  page_->setObjectName(QStringLiteral("answersPage"));
  column_ = new QVBoxLayout(page_);
  column_->setContentsMargins(16, 12, 16, 12);
  column_->setSpacing(4);
  const auto label = [this](const QString& name, QFont face) {
    auto* made = new QLabel(page_);
    made->setObjectName(name);
    made->setFont(face);
    made->setWordWrap(true);
    made->setTextFormat(Qt::PlainText);
    column_->addWidget(made);
    return made;
  };
  headline_ = label(QStringLiteral("headline"), screenFont(Face::condensed, 20, Weight::medium));
  second_ = label(QStringLiteral("second"), screenFont(Face::condensed, 12));
  caution_ = label(QStringLiteral("caution"), screenFont(Face::condensed, 12, Weight::medium));
  column_->addSpacing(6);
  barsHead_ = label(QStringLiteral("barsHead"), screenFont(Face::condensed, 12.5, Weight::medium));
  bars_ = new LegBars(page_);
  bars_->setObjectName(QStringLiteral("legBars"));
  column_->addWidget(bars_);
  column_->addStretch(1);
  scroll_->setWidget(page_);
  connect(bars_, &LegBars::workingRequested, this, &AnswersColumn::workingRequested);
  headline_->setTextInteractionFlags(Qt::NoTextInteraction);
}

void AnswersColumn::setColors(const Palette& palette) {
  palette_ = palette;
  bars_->setColors(palette);
  fill();
}

void AnswersColumn::show(const Plan& plan, const Assessment& assessment, const Language& language) {
  language_ = &language;
  answers_ = answersFor(plan, assessment, language);
  fill();
}

void AnswersColumn::fill() {
  headline_->setText(clocksUnbroken(answers_.headline, *language_));
  second_->setText(answers_.second);
  second_->setVisible(!answers_.second.isEmpty());
  caution_->setText(answers_.caution);
  caution_->setVisible(!answers_.caution.isEmpty());
  barsHead_->setText(words(*language_, kEachLeg));
  barsHead_->setVisible(answers_.hasBars);
  bars_->setVisible(answers_.hasBars);
  bars_->show(answers_.bars, *language_);
  color(headline_, palette_, ColorRole::ink);
  color(second_, palette_, ColorRole::ink2);
  color(caution_, palette_, ColorRole::mustFix);
  color(barsHead_, palette_, ColorRole::ink);
  // Rows are kept as long as their number stays, so that a change neither flickers nor takes the keyboard
  // away.
  std::size_t count = 0;
  for (const AnswerSection& section : answers_.sections) count += section.lines.size();
  if (figures_ == nullptr || rows_.size() != count || heads_.size() != answers_.sections.size()) {
    delete figures_;
    rows_.clear();
    heads_.clear();
    figures_ = new QWidget(page_);
    auto* column = new QVBoxLayout(figures_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    for (const AnswerSection& section : answers_.sections) {
      auto* head = new QHBoxLayout;
      head->setContentsMargins(0, 10, 0, 2);
      auto* title = new QLabel(figures_);
      title->setFont(screenFont(Face::condensed, 12.5, Weight::medium));
      auto* note = new QLabel(figures_);
      note->setFont(screenFont(Face::condensed, 11));
      note->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
      head->addWidget(title);
      head->addWidget(note, 1);
      column->addLayout(head);
      heads_.emplace_back(title, note);
      for (std::size_t i = 0; i < section.lines.size(); ++i) {
        auto* row = new FigureRow(figures_);
        column->addWidget(row);
        rows_.push_back(row);
        connect(row, &FigureRow::clicked, this, [this, row] {
          if (!row->line().working.values.empty()) Q_EMIT workingRequested(row->line().working);
        });
      }
    }
    column_->insertWidget(column_->count() - 1, figures_);
  }
  std::size_t next = 0;
  for (std::size_t i = 0; i < answers_.sections.size(); ++i) {
    const AnswerSection& section = answers_.sections[i];
    heads_[i].first->setText(section.heading);
    heads_[i].second->setText(section.note);
    color(heads_[i].first, palette_, ColorRole::ink);
    color(heads_[i].second, palette_, ColorRole::ink3);
    for (const AnswerLine& line : section.lines) rows_[next++]->show(line, palette_, *language_);
  }
}

}  // namespace stayalight
