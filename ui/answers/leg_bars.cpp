#include "ui/answers/leg_bars.h"

#include "ui/answers/figure_copy.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QMouseEvent>
#include <QtGui/QPainter>
#include <algorithm>
#include <cmath>

#include "ui/style/fonts.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kScaleAmps{"answers.scale.amps"};
constexpr MessageId kStartCaption{"answers.bar.start"};
constexpr MessageId kNoStart{"answers.bar.no_start"};
constexpr MessageId kOf{"answers.of"};
constexpr MessageId kAccessible{"answers.bar.accessible"};
constexpr MessageId kLimitAt{"answers.bar.limit_at"};

constexpr double kHead = 18.0;
constexpr double kLegHeight = 48.0;
constexpr double kLane = 10.0;
constexpr double kLaneGap = 3.0;
constexpr double kLetterWidth = 26.0;
constexpr double kFigureWidth = 84.0;
constexpr double kSmall = 11.0;
constexpr double kText = 11.5;

QString bareAmps(AcAmperes current, const Language& language) {
  return QString::fromStdString(language.number(current.count(), current.count() < 99.95 ? 1 : 0));
}
QString limitAmps(AcAmperes current, const Language& language) {
  const bool whole = std::abs(current.count() - std::round(current.count())) < 0.05;
  return QString::fromStdString(language.number(current.count(), whole ? 0 : 1));
}

}  // namespace

LegBars::LegBars(QWidget* parent) : PaintedWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void LegBars::setColors(const Palette& palette) {
  palette_ = palette;
  update();
}

void LegBars::show(const std::array<LegBar, 2>& bars, const Language& language) {
  bars_ = bars;
  language_ = &language;
  QString spoken;
  for (const LegBar& bar : bars_) {
    const QString limit =
        bar.limit ? amperes(*bar.limit, language) : verdictName(Verdict::notKnown, language);
    const QString start = bar.hasStart ? amperes(bar.highSum, language) : words(language, kNoStart);
    spoken += words(language, kAccessible, std::string(legName(bar.leg)),
                    amperes(bar.likelyPeak, language).toStdString(), limit.toStdString(),
                    verdictName(bar.running, language).toStdString(), start.toStdString(),
                    verdictName(bar.start, language).toStdString()) +
              QLatin1Char(' ');
  }
  setAccessibleName(spoken.trimmed());
  update();
}

QSizeF LegBars::wanted() const { return {340, kHead + 2 * kLegHeight + 4}; }
QSizeF LegBars::least() const { return {200, wanted().height()}; }

LegBars::Scale LegBars::scale() const {
  Scale s;
  s.left = kLetterWidth;
  s.right = across() - kFigureWidth;
  double most = 1.0;
  for (const LegBar& bar : bars_) {
    for (const AcAmperes value :
         {bar.likelyPeak, bar.connected, bar.highSum, bar.limit.value_or(AcAmperes(0)),
          bar.startLimit.value_or(AcAmperes(0)), bar.startLimitLikely.value_or(AcAmperes(0))}) {
      most = std::max(most, value.count());
    }
  }
  s.amperes = most * 1.06;
  return s;
}

void LegBars::paint(QPainter& painter) {
  const Scale s = scale();
  painter.setFont(stayalight::font(Face::condensed, kSmall));
  painter.setPen(palette_.color(ColorRole::ink2));
  painter.drawText(QRectF(s.left, 0, 20, kHead - 4), Qt::AlignLeft | Qt::AlignVCenter, QStringLiteral("0"));
  painter.drawText(QRectF(s.right, 0, kFigureWidth, kHead - 4), Qt::AlignRight | Qt::AlignVCenter,
                   words(*language_, kScaleAmps));
  // The limits once, above the posts, as far as they stand apart.
  std::vector<std::pair<double, QString>> posts;
  const auto post = [&](const std::optional<AcAmperes>& limit, const QString& text) {
    if (!limit) return;
    const double x = s.x(*limit);
    const double width = textWidth(text, Face::condensed, kSmall);
    for (const auto& [at, other] : posts) {
      if (std::abs(at - x) < (width + textWidth(other, Face::condensed, kSmall)) / 2 + 6) return;
    }
    if (x - width / 2 < s.left + 12) return;
    posts.emplace_back(x, text);
    const double left = std::min(x - width / 2, s.right - width + 10);
    painter.drawText(QRectF(left - 2, 0, width + 4, kHead - 4), Qt::AlignCenter, text);
  };
  for (const LegBar& bar : bars_) {
    if (bar.limit) post(bar.limit, QString(limitAmps(*bar.limit, *language_) + QLatin1String(" A")));
  }
  for (const LegBar& bar : bars_) {
    if (!bar.hasStart || !bar.startLimit) continue;
    const QString time =
        QString::fromStdString(language_->number(bar.highTime.count(), bar.highTime.count() < 10 ? 1 : 0));
    post(bar.startLimit, words(*language_, kLimitAt, limitAmps(*bar.startLimit, *language_).toStdString(),
                               time.toStdString()));
  }
  for (std::size_t i = 0; i < bars_.size(); ++i)
    paintLeg(painter, bars_[i], s, kHead + static_cast<double>(i) * kLegHeight);
}

void LegBars::paintLeg(QPainter& painter, const LegBar& bar, const Scale& s, double top) {
  const QColor color = palette_.color(legColor(bar.leg));
  const QColor ink = palette_.color(ColorRole::ink);
  painter.setFont(stayalight::font(Face::condensed, 13, Weight::bold));
  painter.setPen(color);
  painter.drawText(QRectF(0, top, kLetterWidth - 4, 2 * kLane + kLaneGap), Qt::AlignLeft | Qt::AlignVCenter,
                   QString::fromUtf8(legName(bar.leg).data()));
  const double upper = top, lower = top + kLane + kLaneGap;
  painter.fillRect(QRectF(s.left, upper, s.right - s.left, kLane), palette_.color(ColorRole::track));
  painter.fillRect(QRectF(s.left, lower, s.right - s.left, kLane), palette_.color(ColorRole::track));
  const auto fill = [&](double from, double to, double y) {
    if (to > from) paintLegFill(painter, QRectF(from, y, to - from, kLane), bar.leg, palette_);
  };
  const auto line = [&](double x, double from, double to, double width, const QColor& c,
                        bool dashed = false) {
    QPen pen(c, width);
    if (dashed) pen.setDashPattern({2, 2});
    pen.setCapStyle(Qt::FlatCap);
    painter.setPen(pen);
    painter.drawLine(QPointF(x, from), QPointF(x, to));
  };
  // upper lane
  fill(s.left, s.x(bar.likelyPeak), upper);
  line(s.x(bar.connected), upper - 1, upper + kLane + 1, 1.5, ink);
  if (bar.limit) line(s.x(*bar.limit), upper - 3, upper + kLane + 2, 2.5, ink);
  // lower lane
  if (bar.hasStart) {
    fill(s.left, s.x(bar.likelyBase), lower);
    const QRectF start(s.x(bar.likelyBase), lower, std::max(0.0, s.x(bar.likelySum) - s.x(bar.likelyBase)),
                       kLane);
    const QRectF open(start.right(), lower, std::max(0.0, s.x(bar.highSum) - start.right()), kLane);
    painter.setPen(QPen(color, 1));
    painter.setBrush(palette_.color(ColorRole::sheet));
    painter.drawRect(start.adjusted(0.5, 0.5, 0, -0.5));
    paintHatch(painter, start, color, 5.0, 1.0);
    painter.setPen(QPen(color, 1));
    painter.setBrush(palette_.color(ColorRole::sheet));
    if (open.width() > 1) painter.drawRect(open.adjusted(0, 0.5, -0.5, -0.5));
    painter.setBrush(Qt::NoBrush);
    line(s.x(bar.averageBase), lower + kLane, lower + kLane + 4, 1.5, ink);
    if (bar.startLimit) line(s.x(*bar.startLimit), lower - 2, lower + kLane + 3, 2.5, ink);
    if (bar.startLimitLikely && bar.startLimitLikely != bar.startLimit)
      line(s.x(*bar.startLimitLikely), lower - 1, lower + kLane + 2, 1.5, ink, true);
  }
  // figures
  painter.setPen(ink);
  painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
  const auto figure = [&](const QString& text, double y) {
    painter.drawText(QRectF(s.right, y - 2, kFigureWidth, kLane + 4), Qt::AlignRight | Qt::AlignVCenter,
                     text);
  };
  const auto against = [&](AcAmperes value, const std::optional<AcAmperes>& limit) {
    if (!limit) return bareAmps(value, *language_);
    return words(*language_, kOf, bareAmps(value, *language_).toStdString(),
                 limitAmps(*limit, *language_).toStdString());
  };
  figure(against(bar.likelyPeak, bar.limit), upper);
  if (bar.hasStart) figure(against(bar.highSum, bar.startLimit), lower);
  // caption with bead and word
  const double caption = lower + kLane + 3;
  const Verdict verdict = bar.hasStart ? worse(bar.running, bar.start) : bar.running;
  const QString word = verdictName(verdict, *language_);
  const double wordWidth = textWidth(word, Face::condensed, kText, Weight::medium);
  painter.drawText(QRectF(across() - wordWidth - 1, caption, wordWidth + 2, 15),
                   Qt::AlignRight | Qt::AlignVCenter, word);
  paintBead(painter, QRectF(across() - wordWidth - 14, caption + 3, 9, 9), beadOf(verdict), palette_);
  painter.setFont(stayalight::font(Face::condensed, kSmall));
  painter.setPen(palette_.color(ColorRole::ink2));
  const QString text = bar.hasStart ? words(*language_, kStartCaption, bar.startName.toStdString(),
                                            bareAmps(bar.likelySum, *language_).toStdString(),
                                            bareAmps(bar.highSum, *language_).toStdString())
                                    : words(*language_, kNoStart);
  const double room = across() - wordWidth - 18 - s.left;
  painter.drawText(QRectF(s.left, caption, room, 15), Qt::AlignLeft | Qt::AlignVCenter,
                   elided(text, room, Face::condensed, kSmall));
  // focus
  if (hasFocus() && focusedLane_ / 2 == static_cast<int>(index(bar.leg))) {
    const double y = focusedLane_ % 2 == 0 ? upper : lower;
    painter.setPen(QPen(palette_.color(ColorRole::lamp), 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(1, y - 3, across() - 2, kLane + 5), 3, 3);
  }
}

const WorkingTarget& LegBars::targetAt(QPointF point) const {
  const std::size_t leg = point.y() < kHead + kLegHeight ? 0 : 1;
  const double within = point.y() - kHead - static_cast<double>(leg) * kLegHeight;
  const bool start = bars_[leg].hasStart && within > kLane + kLaneGap / 2;
  return start ? bars_[leg].startWorking : bars_[leg].peakWorking;
}

const WorkingTarget& LegBars::focusedTarget() const {
  const LegBar& bar = bars_[static_cast<std::size_t>(focusedLane_ / 2)];
  return focusedLane_ % 2 == 1 && bar.hasStart ? bar.startWorking : bar.peakWorking;
}

bool LegBars::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && isCopyKey(event)) {
    event->accept();
    return true;
  }
  return QWidget::event(event);
}

void LegBars::contextMenuEvent(QContextMenuEvent* event) {
  const bool byKey = event->reason() == QContextMenuEvent::Keyboard;
  const WorkingTarget target = byKey ? focusedTarget() : targetAt(inUnits(QPointF(event->pos())));
  openFigureMenu(this, byKey ? mapToGlobal(rect().center()) : event->globalPos(),
                 figureAsText(target.title, target.shown), *language_,
                 [this, target] { Q_EMIT workingRequested(target); });
}

void LegBars::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && rect().contains(event->pos()))
    Q_EMIT workingRequested(targetAt(inUnits(event->position())));
}

void LegBars::keyPressEvent(QKeyEvent* event) {
  if (isCopyKey(event)) return copyFigure(figureAsText(focusedTarget().title, focusedTarget().shown));
  switch (event->key()) {
    case Qt::Key_Down:
    case Qt::Key_Up: {
      focusedLane_ = std::clamp(focusedLane_ + (event->key() == Qt::Key_Down ? 1 : -1), 0, 3);
      update();
      return;
    }
    case Qt::Key_W:
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space: {
      Q_EMIT workingRequested(focusedTarget());
      return;
    }
    default:
      QWidget::keyPressEvent(event);
  }
}

}  // namespace stayalight
