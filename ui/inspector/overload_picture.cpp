#include "ui/inspector/overload_picture.h"

#include <QtGui/QPainter>
#include <QtGui/QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/inspector/entity_text.h"
#include "ui/style/fonts.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kLegs{"inspector.curve.legs"};
constexpr MessageId kTotal{"inspector.curve.total"};
constexpr MessageId kStart{"inspector.curve.start"};
constexpr MessageId kNoLimits{"inspector.curve.no_limits"};
constexpr MessageId kName{"inspector.curve.name"};
constexpr MessageId kSeconds{"inspector.curve.seconds"};
constexpr int kPlotHeight = 118;
constexpr int kRow = 16;
constexpr double kSmall = 11.0;
constexpr double kBead = 9.0;
constexpr std::array kTicks = {0.01, 0.1, 1.0, 10.0, 100.0, 1000.0, 10000.0};

}  // namespace

OverloadPicture::OverloadPicture(QWidget* parent) : PaintedWidget(parent) {
  setObjectName(QStringLiteral("overloadPicture"));
  setFocusPolicy(Qt::TabFocus);
}

void OverloadPicture::show(const Plan& plan, const StartFigures& starts, const FormStyle& style) {
  style_ = style;
  const Language& language = *style_.language;
  limits_ = inverterLimits(*plan.inverter);
  legPoints_.clear();
  totalPoints_.clear();
  lines_.clear();
  for (const StartCheck& check : starts.checks) {
    if (check.loads.empty()) continue;
    const int number = static_cast<int>(lines_.size()) + 1;
    Verdict verdict = check.real.verdict;
    QString legs;
    AcAmperes most;
    for (const Leg leg : {Leg::l1, Leg::l2}) {
      const auto& figure = check.leg[index(leg)];
      if (!figure) continue;
      legPoints_.push_back({number, figure->highTime, figure->highSum.count(), figure->verdict});
      verdict = worse(verdict, figure->verdict);
      most = std::max(most, figure->highSum);
      if (!legs.isEmpty()) legs += QLatin1Char(' ');
      legs += QString::fromUtf8(legName(leg).data(), 2);
    }
    totalPoints_.push_back({number, check.real.highTime, check.real.highSum.count(), check.real.verdict});
    const double seconds = check.real.highTime.count();
    lines_.push_back(
        {words(language, kStart, std::int64_t{number},
               entityName(plan, {RecordKind::load, check.loads.front().number}, language), legs.toStdString(),
               amperes(most, language).toStdString(), watts(check.real.highSum, language).toStdString(),
               language.number(seconds, seconds < 10 ? 1 : 0)),
         verdict});
  }
  setAccessibleName(words(language, kName));
  QStringList told;
  for (const Line& line : lines_)
    told << line.text + QLatin1String(", ") + verdictName(line.verdict, language);
  setAccessibleDescription(told.join(QLatin1String("; ")));
  updateGeometry();
  update();
}

QSizeF OverloadPicture::wanted() const {
  return {260.0, 2.0 * kPlotHeight + kRow * 2.0 * static_cast<double>(lines_.size()) + 8.0};
}
QSizeF OverloadPicture::least() const { return {200.0, wanted().height()}; }

std::optional<double> OverloadPicture::limit(bool legs, Seconds time) const {
  const LimitAt at = limitAt(limits_, time);
  if (legs) return at.leg ? std::optional(at.leg->count()) : std::nullopt;
  return at.total ? std::optional(at.total->count()) : std::nullopt;
}

void OverloadPicture::paintPlot(QPainter& painter, const QRectF& area, const QString& title,
                                bool legs) const {
  const Language& language = *style_.language;
  const std::vector<Point>& points = legs ? legPoints_ : totalPoints_;
  const auto color = [&](ColorRole role) { return style_.palette.color(role); };
  double least = 0.1, longest = 10.0, most = 1.0;
  for (const auto& point : limits_.curve) {
    if (point.time.count() > 0.0) least = std::min(least, point.time.count());
    longest = std::max(longest, point.time.count());
    most = std::max(most, legs ? point.leg.count() : point.total.count());
  }
  for (const Point& point : points) {
    if (point.time.count() > 0.0) least = std::min(least, point.time.count());
    longest = std::max(longest, point.time.count());
    most = std::max(most, point.value);
  }
  if (const auto allDay = limit(legs, Seconds(1e9))) most = std::max(most, *allDay);
  least = std::max(0.005, least * 0.5);
  longest *= 3.0;
  most *= 1.12;
  const QRectF plot = area.adjusted(46.0, 18.0, -8.0, -16.0);
  const auto x = [&](double seconds) {
    const double share = std::log(std::max(seconds, least) / least) / std::log(longest / least);
    return plot.left() + plot.width() * share;
  };
  const auto y = [&](double value) { return plot.bottom() - plot.height() * value / most; };

  painter.setFont(stayalight::font(Face::condensed, 12.0, Weight::medium));
  painter.setPen(color(ColorRole::ink));
  painter.drawText(QRectF(area.left(), area.top(), area.width(), 16), Qt::AlignLeft | Qt::AlignVCenter,
                   title);
  painter.setFont(stayalight::font(Face::condensed, kSmall));
  for (const double tick : kTicks) {
    if (tick < least || tick > longest) continue;
    painter.setPen(QPen(color(ColorRole::hairline), 1.0));
    painter.drawLine(QPointF(x(tick), plot.top()), QPointF(x(tick), plot.bottom()));
    painter.setPen(color(ColorRole::ink2));
    painter.drawText(QRectF(x(tick) - 30, plot.bottom() + 1, 60, 14), Qt::AlignCenter,
                     words(language, kSeconds,
                           language.number(tick, tick < 0.1   ? 2
                                                 : tick < 1.0 ? 1
                                                              : 0)));
  }
  painter.setPen(QPen(color(ColorRole::edge), 1.0));
  painter.drawLine(plot.bottomLeft(), plot.bottomRight());
  painter.drawLine(plot.topLeft(), plot.bottomLeft());
  if (!limit(legs, Seconds(least))) {
    painter.setPen(color(ColorRole::ink2));
    painter.drawText(plot, Qt::AlignCenter | Qt::TextWordWrap, words(language, kNoLimits));
  } else {
    // As the check reads it: stairs on the safe side, level before the first point.
    QPainterPath stairs;
    double from = least;
    stairs.moveTo(x(from), y(*limit(legs, Seconds(from))));
    for (const auto& point : limits_.curve) {
      if (point.time.count() <= from) continue;
      stairs.lineTo(x(from), y(*limit(legs, point.time)));
      stairs.lineTo(x(point.time.count()), y(*limit(legs, point.time)));
      from = point.time.count();
    }
    const std::optional<double> allDay = limit(legs, Seconds(1e9));
    if (allDay) {
      stairs.lineTo(x(from), y(*allDay));
      stairs.lineTo(plot.right(), y(*allDay));
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(color(ColorRole::ink), 2.0));
    painter.drawPath(stairs);
    painter.setPen(color(ColorRole::ink2));
    const auto scale = [&](double value) {
      painter.drawText(QRectF(area.left(), y(value) - 8, 42, 16), Qt::AlignRight | Qt::AlignVCenter,
                       QString::fromStdString(language.number(value, 0)));
    };
    const double first = *limit(legs, Seconds(least));
    scale(first);
    if (allDay && std::abs(y(*allDay) - y(first)) > 13.0) scale(*allDay);
  }
  painter.setFont(stayalight::font(Face::condensed, kSmall, Weight::bold));
  for (const Point& point : points) {
    const QPointF at(x(point.time.count()), y(point.value));
    paintBead(painter, QRectF(at.x() - kBead / 2, at.y() - kBead / 2, kBead, kBead), beadOf(point.verdict),
              style_.palette);
    painter.setPen(color(ColorRole::ink));
    painter.drawText(QRectF(at.x() + kBead / 2 + 2, at.y() - 8, 20, 16), Qt::AlignLeft | Qt::AlignVCenter,
                     QString::number(point.number));
  }
}

void OverloadPicture::paint(QPainter& painter) {
  const Language& language = *style_.language;
  paintPlot(painter, QRectF(0, 0, across(), kPlotHeight), words(language, kLegs), true);
  paintPlot(painter, QRectF(0, kPlotHeight, across(), kPlotHeight), words(language, kTotal), false);
  double top = 2.0 * kPlotHeight + 4.0;
  for (const Line& line : lines_) {
    paintBead(painter, QRectF(2, top + (kRow - kBead) / 2, kBead, kBead), beadOf(line.verdict),
              style_.palette);
    painter.setPen(style_.palette.color(ColorRole::ink));
    painter.setFont(stayalight::font(Face::condensed, kSmall));
    painter.drawText(QRectF(16, top, across() - 16, 2 * kRow),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     line.text + QLatin1String(", ") + verdictName(line.verdict, language));
    top += 2 * kRow;
  }
  if (hasFocus()) {
    painter.setPen(QPen(style_.palette.color(ColorRole::lamp), 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(0, 0, across(), down()).adjusted(0.75, 0.75, -0.75, -0.75), 3, 3);
  }
}

}  // namespace stayalight
