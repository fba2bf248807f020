#include "ui/strip/strip_chart.h"

#include <QtCharts/QAreaSeries>
#include <QtCharts/QChart>
#include <QtCharts/QLegend>
#include <QtCharts/QLineSeries>
#include <QtCharts/QValueAxis>
#include <QtGui/QKeyEvent>
#include <QtGui/QMouseEvent>
#include <QtWidgets/QGraphicsLayout>
#include <algorithm>
#include <cmath>

#include "ui/style/application.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kFull{"shell.strip.full"};
constexpr MessageId kPercent{"shell.strip.percent"};
constexpr MessageId kFloor{"shell.strip.floor"};
constexpr MessageId kCharge{"shell.strip.charge"};
constexpr MessageId kGoesOut{"shell.strip.goes_out"};
constexpr MessageId kDark{"shell.strip.dark"};
constexpr MessageId kDarkLikely{"shell.strip.dark_likely"};
constexpr MessageId kAmpsOn{"shell.strip.amps_on"};
constexpr MessageId kLimit{"shell.strip.limit"};
constexpr MessageId kLine{"shell.strip.line"};
constexpr MessageId kSolid{"shell.strip.solid"};
constexpr MessageId kUnknown{"shell.strip.unknown"};
constexpr MessageId kHover{"shell.strip.hover"};
constexpr MessageId kHoverDark{"shell.strip.hover_dark"};
constexpr MessageId kNight{"shell.strip.night"};
constexpr MessageId kNightFrom{"shell.strip.night_from"};
constexpr MessageId kAccessible{"shell.strip.accessible"};
constexpr MessageId kAccessibleHelp{"shell.strip.accessible_help"};

constexpr double kSmall = 11.0;
constexpr double kLeftRoom = 58.0;
constexpr double kRightRoom = 76.0;
constexpr double kTopRoom = 8.0;
constexpr double kAxisRoom = 26.0;
constexpr double kTabWidth = 66.0;
constexpr double kTabHeight = 20.0;
constexpr int kDragStep = 15;  // minutes
constexpr int kKeyStep = 60;
// The charge takes the upper part of the plot; the legs the rest, the neutral in its middle.
constexpr double kChargeShare = 0.54;
constexpr double kLegShare = 0.40;

}  // namespace

StripChart::StripChart(QWidget* parent) : QChartView(new QChart, parent) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setRenderHint(QPainter::Antialiasing);
  setFrameShape(QFrame::NoFrame);
  setMinimumHeight(scaled(130));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  QChart* made = chart();
  made->legend()->hide();
  made->setMargins(QMargins(0, 0, 0, 0));
  made->setBackgroundVisible(false);
  made->setPlotAreaBackgroundVisible(false);
  made->setAnimationOptions(QChart::NoAnimation);
  made->layout()->setContentsMargins(0, 0, 0, 0);
  hours_ = new QValueAxis(made);
  percent_ = new QValueAxis(made);
  amperes_ = new QValueAxis(made);
  made->addAxis(hours_, Qt::AlignBottom);
  made->addAxis(percent_, Qt::AlignLeft);
  made->addAxis(amperes_, Qt::AlignRight);
  for (QValueAxis* axis : {hours_, percent_, amperes_}) axis->setVisible(false);
  bandTop_ = new QLineSeries(this);
  bandBottom_ = new QLineSeries(this);
  band_ = new QAreaSeries(bandTop_, bandBottom_);
  likely_ = new QLineSeries;
  const auto add = [&](QAbstractSeries* series, QValueAxis* axis) {
    made->addSeries(series);
    series->attachAxis(hours_);
    series->attachAxis(axis);
  };
  add(band_, percent_);
  add(likely_, percent_);
  for (std::size_t leg = 0; leg < 2; ++leg) {
    for (auto* list : {&average_, &peak_, &peakInner_}) {
      (*list)[leg] = new QLineSeries;
      add((*list)[leg], amperes_);
    }
  }
  setColors(palette_);
}

void StripChart::setColors(const Palette& palette) {
  palette_ = palette;
  setBackgroundBrush(palette_.color(ColorRole::sheet));
  const QColor lamp = palette_.color(ColorRole::lamp);
  band_->setBrush(palette_.color(ColorRole::litEdge));
  band_->setPen(QPen(lamp, 1));
  likely_->setPen(QPen(palette_.color(ColorRole::lampInk), 2.2));
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const QColor color = palette_.color(legColor(leg));
    average_[index(leg)]->setPen(QPen(color, 3.0, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    // L2 is a double line: a wide one with the ground's colour inside.
    peak_[index(leg)]->setPen(
        QPen(color, leg == Leg::l1 ? 1.5 : 3.6, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    peakInner_[index(leg)]->setPen(
        QPen(palette_.color(ColorRole::sheet), 1.2, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    peakInner_[index(leg)]->setVisible(leg == Leg::l2);
  }
  resetCachedContent();
  viewport()->update();
}

void StripChart::show(const StripData& data, const Language& language) {
  data_ = data;
  language_ = &language;
  const auto list = [](const std::vector<QPointF>& points, double sign = 1.0) {
    QList<QPointF> out;
    out.reserve(static_cast<qsizetype>(points.size()));
    for (const QPointF& point : points) out.append({point.x(), sign * point.y()});
    return out;
  };
  hours_->setRange(data.first, data.last);
  // 100 % at the top; the floor of the charge part at kChargeShare of the height.
  percent_->setRange(100.0 - 100.0 / kChargeShare, 100.0);
  const double ampsOfPlot = 2.0 * data.amperes / kLegShare;
  amperes_->setRange(-data.amperes, ampsOfPlot - data.amperes);
  bandTop_->replace(list(data.high));
  bandBottom_->replace(list(data.low));
  likely_->replace(list(data.likely));
  for (std::size_t leg = 0; leg < 2; ++leg) {
    const double sign = leg == 0 ? 1.0 : -1.0;
    average_[leg]->replace(list(data.average[leg], sign));
    peak_[leg]->replace(list(data.peak[leg], sign));
    if (leg == 1) peakInner_[leg]->replace(list(data.peak[leg], sign));
  }
  if (data.known) {
    setAccessibleName(words(language, kAccessible, clockText(data.start, language).toStdString(),
                            clockText(data.endLow, language).toStdString(),
                            clockText(data.endHigh, language).toStdString(),
                            clockText(data.endLikely, language).toStdString()));
  } else {
    setAccessibleName(words(language, kUnknown));
  }
  QString help = words(language, kAccessibleHelp);
  // One that the axis does not cut says when night is.
  for (const QPointF& night : data.nights) {
    if (night.x() <= data.first || night.y() >= data.last) continue;
    help += QLatin1Char(' ') + words(language, kNightFrom, aboutClockText(night.x(), language).toStdString(),
                                     aboutClockText(night.y(), language).toStdString());
    break;
  }
  setAccessibleDescription(help);
  resetCachedContent();
  viewport()->update();
}

double StripChart::across() const { return viewport()->width() / systemScale(); }
double StripChart::down() const { return viewport()->height() / systemScale(); }

double StripChart::xOf(double hour) const {
  const double left = kLeftRoom, right = across() - kRightRoom;
  return left + (hour - data_.first) / (data_.last - data_.first) * (right - left);
}
double StripChart::hourAt(double x) const {
  const double left = kLeftRoom, right = across() - kRightRoom;
  return data_.first + (x - left) / std::max(1.0, right - left) * (data_.last - data_.first);
}
double StripChart::yOfCharge(double percent) const {
  const double height = down() - kTopRoom - kAxisRoom;
  return kTopRoom + (100.0 - percent) / 100.0 * kChargeShare * height;
}
double StripChart::yOfAmperes(double amperes) const {
  const double height = down() - kTopRoom - kAxisRoom;
  return kTopRoom + height - (amperes + data_.amperes) / (2.0 * data_.amperes) * kLegShare * height;
}
double StripChart::legTextY(double sign) const {
  // In the wider of the two bands that the limit parts, so that its line strikes through no word.
  const double limit = std::min(data_.limit.value_or(data_.amperes), data_.amperes);
  const double middle = limit * 2.0 >= data_.amperes ? limit / 2.0 : (limit + data_.amperes) / 2.0;
  return yOfAmperes(sign * middle);
}
QPointF StripChart::positionOf(double hour, double percent) const {
  return QPointF(xOf(hour), yOfCharge(percent)) * systemScale();
}

QRectF StripChart::startTab() const {
  const QRectF tab = tabInUnits();
  return {tab.topLeft() * systemScale(), tab.size() * systemScale()};
}
QRectF StripChart::tabInUnits() const {
  return {xOf(data_.start) - kTabWidth / 2, down() - kTabHeight - 1.0, kTabWidth, kTabHeight};
}

void StripChart::drawBackground(QPainter* painter, const QRectF& rect) {
  // The plot must fill exactly the room our own labels leave.
  const QRectF plot(kLeftRoom, kTopRoom, across() - kLeftRoom - kRightRoom, down() - kTopRoom - kAxisRoom);
  const QRectF onScreen(plot.topLeft() * systemScale(), plot.size() * systemScale());
  if (chart()->plotArea() != onScreen && plot.width() > 10 && plot.height() > 10)
    chart()->setPlotArea(onScreen);
  QChartView::drawBackground(painter, rect);
  painter->save();
  painter->scale(systemScale(), systemScale());
  for (const QPointF& night : data_.nights) {
    painter->fillRect(QRectF(QPointF(xOf(night.x()), plot.top()), QPointF(xOf(night.y()), plot.bottom())),
                      palette_.color(ColorRole::night));
  }
  const double floor = yOfCharge(data_.floor);
  // What is used: lamplight below the lower edge of the band, as far as the low run reaches.
  if (data_.known && data_.low.size() > 1) {
    QPolygonF used;
    for (const QPointF& point : data_.low) used << QPointF(xOf(point.x()), yOfCharge(point.y()));
    used << QPointF(xOf(data_.low.back().x()), floor) << QPointF(xOf(data_.start), floor);
    painter->setPen(Qt::NoPen);
    painter->setBrush(palette_.color(ColorRole::lit));
    painter->drawPolygon(used);
  }
  QPen dashed(palette_.color(ColorRole::ink2), 1);
  dashed.setDashPattern({5, 4});
  painter->setBrush(Qt::NoBrush);
  painter->setPen(dashed);
  const double left = plot.left(), right = plot.right();
  painter->drawLine(QPointF(left, floor), QPointF(right, floor));
  painter->setPen(QPen(palette_.color(ColorRole::hairline), 1));
  for (const double percent : {50.0, 100.0})
    painter->drawLine(QPointF(left, yOfCharge(percent)), QPointF(right, yOfCharge(percent)));
  painter->setPen(QPen(palette_.color(ColorRole::ink), 1));
  painter->drawLine(QPointF(left, yOfAmperes(0)), QPointF(right, yOfAmperes(0)));
  if (data_.limit) {
    dashed.setColor(palette_.color(ColorRole::ink));
    painter->setPen(dashed);
    for (const double sign : {1.0, -1.0})
      painter->drawLine(QPointF(left, yOfAmperes(sign * *data_.limit)),
                        QPointF(right, yOfAmperes(sign * *data_.limit)));
  }
  painter->restore();
}

void StripChart::drawForeground(QPainter* painter, const QRectF& rect) {
  QChartView::drawForeground(painter, rect);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->scale(systemScale(), systemScale());
  const double right = across() - kRightRoom;
  const auto text = [&](const QRectF& box, Qt::Alignment alignment, const QString& words, ColorRole role,
                        Weight weight = Weight::regular) {
    painter->setFont(stayalight::font(Face::condensed, kSmall, weight));
    painter->setPen(palette_.color(role));
    painter->drawText(box, static_cast<int>(alignment | Qt::AlignVCenter | Qt::TextSingleLine), words);
  };
  const auto leftLabel = [&](double y, const QString& label, ColorRole role = ColorRole::ink2,
                             Weight weight = Weight::regular) {
    text(QRectF(0, y - 8, kLeftRoom - 6, 16), Qt::AlignRight, label, role, weight);
  };
  leftLabel(yOfCharge(100) + 3, words(*language_, kFull));
  leftLabel(yOfCharge(50), words(*language_, kPercent, std::int64_t{50}));
  leftLabel(yOfCharge(data_.floor), words(*language_, kFloor, std::int64_t{std::llround(data_.floor)}));
  leftLabel(legTextY(1.0), QStringLiteral("L1"), legColor(Leg::l1), Weight::bold);
  leftLabel(legTextY(-1.0), QStringLiteral("L2"), legColor(Leg::l2), Weight::bold);
  const double startX = xOf(data_.start);
  const double room = startX - kLeftRoom - 8;
  if (room > 80) {
    text(QRectF(kLeftRoom + 6, yOfCharge(100) + 6, room, 16), Qt::AlignLeft, words(*language_, kCharge),
         ColorRole::ink2);
    text(QRectF(kLeftRoom, yOfCharge(50) + 2, room, 16), Qt::AlignRight, words(*language_, kGoesOut),
         ColorRole::ink2);
    text(QRectF(kLeftRoom + 6, legTextY(1.0) - 8, room, 16), Qt::AlignLeft,
         words(*language_, kAmpsOn, std::string("L1")), ColorRole::ink2);
    text(QRectF(kLeftRoom + 6, legTextY(-1.0) - 8, room, 16), Qt::AlignLeft,
         words(*language_, kAmpsOn, std::string("L2")), ColorRole::ink2);
  }
  // Between the floor and the legs nothing else is written.
  for (const QPointF& night : data_.nights) {
    const double from = xOf(night.x()), to = xOf(night.y());
    const QString word = words(*language_, kNight);
    const double width = textWidth(word, Face::condensed, kSmall) + 8;
    const double middle = (std::max(from, startX) + to) / 2;
    if (to - std::max(from, startX) < width) continue;
    text(QRectF(middle - width / 2, yOfCharge(data_.floor) + 1, width, 14), Qt::AlignHCenter, word,
         ColorRole::ink2);
    break;
  }
  if (data_.limit) {
    const bool whole = std::abs(*data_.limit - std::round(*data_.limit)) < 0.05;
    const QString limit = words(*language_, kLimit, language_->number(*data_.limit, whole ? 0 : 1));
    for (const double sign : {1.0, -1.0})
      text(QRectF(right + 5, yOfAmperes(sign * *data_.limit) - 8, kRightRoom - 6, 16), Qt::AlignLeft, limit,
           ColorRole::ink2);
  }
  if (!data_.known) {
    text(QRectF(startX + 10, yOfCharge(60) - 10, right - startX - 10, 20), Qt::AlignLeft,
         words(*language_, kUnknown), ColorRole::ink, Weight::medium);
  } else if (data_.ends) {
    const double x = xOf(data_.endLikely);
    QPen pen(palette_.color(ColorRole::ink), 1.2);
    pen.setDashPattern({3, 3});
    painter->setPen(pen);
    painter->drawLine(QPointF(x, yOfCharge(100)), QPointF(x, yOfAmperes(-data_.amperes)));
    painter->setPen(QPen(palette_.color(ColorRole::ink), 1.5));
    painter->setBrush(palette_.color(ColorRole::sheet));
    painter->drawEllipse(
        positionOf(data_.endLikely, data_.likely.empty() ? data_.floor : data_.likely.back().y()), 4.5, 4.5);
    const QString range = words(*language_, kDark, aboutClockText(data_.endLow, *language_).toStdString(),
                                aboutClockText(data_.endHigh, *language_).toStdString());
    const QString likely =
        words(*language_, kDarkLikely, aboutClockText(data_.endLikely, *language_).toStdString());
    const double width = std::max(textWidth(range, Face::condensed, kSmall, Weight::medium),
                                  textWidth(likely, Face::condensed, kSmall)) +
                         4;
    double at = x + 8;
    if (at + width > right + kRightRoom) at = x - width - 8;
    text(QRectF(at, yOfCharge(100), width, 15), Qt::AlignLeft, range, ColorRole::ink, Weight::medium);
    text(QRectF(at, yOfCharge(100) + 15, width, 15), Qt::AlignLeft, likely, ColorRole::ink2);
    if (x + 150 < right) {
      text(QRectF(x + 12, legTextY(1.0) - 8, right - x - 12, 16), Qt::AlignLeft, words(*language_, kLine),
           ColorRole::ink2);
      text(QRectF(x + 12, legTextY(-1.0) - 8, right - x - 12, 16), Qt::AlignLeft, words(*language_, kSolid),
           ColorRole::ink2);
    }
  }
  paintAxis(*painter);
  paintHover(*painter);
  painter->restore();
}

void StripChart::paintAxis(QPainter& painter) {
  const double bottom = down() - kAxisRoom;
  const double right = across() - kRightRoom;
  const double length = data_.last - data_.first;
  double step = 3.0;
  while (length / step * 52.0 > right - kLeftRoom && step < 24.0) step *= 2.0;
  painter.setFont(stayalight::font(Face::condensed, kSmall));
  const QRectF tab = tabInUnits();
  const auto lastTick = static_cast<int>(std::floor(data_.last / step + 1e-9));
  for (auto tick = static_cast<int>(std::ceil(data_.first / step)); tick <= lastTick; ++tick) {
    const double hour = tick * step;
    const double x = xOf(hour);
    painter.setPen(QPen(palette_.color(ColorRole::ink3), 1));
    painter.drawLine(QPointF(x, bottom), QPointF(x, bottom + 3));
    const QRectF box(x - 34, bottom + 4, 68, kAxisRoom - 6);
    const QString label = clockText(hour, *language_);
    const double half = textWidth(label, Face::condensed, kSmall) / 2 + 4;
    if (x + half < tab.left() || x - half > tab.right()) {
      painter.setPen(palette_.color(ColorRole::ink2));
      painter.drawText(box, Qt::AlignHCenter | Qt::AlignVCenter, label);
    }
  }
  // the start
  const double x = xOf(data_.start);
  painter.setPen(QPen(palette_.color(ColorRole::ink), 2));
  painter.drawLine(QPointF(x, kTopRoom), QPointF(x, tab.top()));
  painter.setPen(Qt::NoPen);
  painter.setBrush(palette_.color(ColorRole::ink));
  painter.drawRoundedRect(tab, 10, 10);
  if (hasFocus()) {
    painter.setPen(QPen(palette_.color(ColorRole::lamp), 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(tab.adjusted(-2.5, -2.5, 2.5, 0), 11, 11);
  }
  painter.setFont(stayalight::font(Face::condensed, kSmall, Weight::medium));
  painter.setPen(palette_.color(ColorRole::sheet));
  painter.drawText(tab.adjusted(10, 0, -10, 0), Qt::AlignCenter, clockText(data_.start, *language_));
  painter.setPen(QPen(palette_.color(ColorRole::sheet), 1.5));
  painter.setBrush(Qt::NoBrush);
  const double y = tab.center().y();
  const auto arrow = [&](double at, double sign) {
    painter.drawPolyline(QPolygonF{{at, y - 3.5}, {at - sign * 3.5, y}, {at, y + 3.5}});
  };
  arrow(tab.left() + 9.5, 1);
  arrow(tab.right() - 9.5, -1);
}

QString StripChart::hoverText() const {
  if (!hover_) return {};
  const auto reading = readingAt(data_, *hover_);
  if (!reading) return {};
  const auto percent = [](double value) { return Figure{value, "%", 0}; };
  const auto amps = [](double value) { return Figure{value, "A", 1}; };
  const std::string clock = clockText(reading->hour, *language_).toStdString();
  if (reading->dark)
    return words(*language_, kHoverDark, clock, percent(reading->low), percent(reading->high));
  return words(*language_, kHover, clock, percent(reading->likely), percent(reading->low),
               percent(reading->high), amps(reading->average[0]), amps(reading->peak[0]),
               amps(reading->average[1]), amps(reading->peak[1]));
}

void StripChart::paintHover(QPainter& painter) {
  const QString text = hoverText();
  if (text.isEmpty() || dragging_) return;
  const double x = xOf(*hover_);
  painter.setPen(QPen(palette_.color(ColorRole::edge), 1));
  painter.drawLine(QPointF(x, kTopRoom), QPointF(x, down() - kAxisRoom));
  const double width = textWidth(text, Face::condensed, kSmall) + 14;
  const double left = std::clamp(x - width / 2, 2.0, std::max(2.0, across() - width - 2));
  const QRectF box(left, yOfAmperes(0) - 10, width, 20);
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(box, 3, 3);
  painter.setFont(stayalight::font(Face::condensed, kSmall));
  painter.setPen(palette_.color(ColorRole::ink));
  painter.drawText(box, Qt::AlignCenter, text);
}

void StripChart::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) return;
  setFocus(Qt::MouseFocusReason);
  const QPointF at = event->position() / systemScale();
  const bool nearLine = std::abs(at.x() - xOf(data_.start)) <= 8;
  if (!tabInUnits().adjusted(-3, -4, 3, 3).contains(at) && !nearLine) return;
  dragging_ = true;
  dragged_ = TimeOfDay(static_cast<int>(std::lround(data_.start * 60)));
}

void StripChart::mouseMoveEvent(QMouseEvent* event) {
  const double hour = hourAt(event->position().x() / systemScale());
  if (dragging_) {
    const double within = std::clamp(hour, data_.first, data_.first + 23.75);
    const TimeOfDay start(static_cast<int>(std::lround(within * 60.0 / kDragStep)) * kDragStep);
    if (start != dragged_) {
      dragged_ = start;
      Q_EMIT startPreviewed(start);
    }
    return;
  }
  setCursor(startTab().contains(event->position()) ? Qt::SizeHorCursor : Qt::ArrowCursor);
  hover_ = hour >= data_.first && hour <= data_.last ? std::optional(hour) : std::nullopt;
  viewport()->update();
}

void StripChart::mouseReleaseEvent(QMouseEvent* event) {
  if (!dragging_ || event->button() != Qt::LeftButton) return;
  dragging_ = false;
  Q_EMIT startChosen(dragged_);
}

void StripChart::leaveEvent(QEvent* event) {
  hover_.reset();
  viewport()->update();
  QChartView::leaveEvent(event);
}

void StripChart::stepStart(int minutes) {
  Q_EMIT startChosen(TimeOfDay(static_cast<int>(std::lround(data_.start * 60)) + minutes));
}

void StripChart::keyPressEvent(QKeyEvent* event) {
  const int step = (event->modifiers() & Qt::ShiftModifier) != 0 ? kDragStep : kKeyStep;
  switch (event->key()) {
    case Qt::Key_Left:
      stepStart(-step);
      return;
    case Qt::Key_Right:
      stepStart(step);
      return;
    case Qt::Key_Escape:
      if (dragging_) {
        dragging_ = false;
        Q_EMIT startCancelled();
        return;
      }
      break;
    default:
      break;
  }
  event->ignore();
}

void StripChart::focusInEvent(QFocusEvent* event) {
  QChartView::focusInEvent(event);
  viewport()->update();
}
void StripChart::focusOutEvent(QFocusEvent* event) {
  QChartView::focusOutEvent(event);
  viewport()->update();
}

}  // namespace stayalight
