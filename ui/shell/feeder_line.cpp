#include "ui/shell/feeder_line.h"

#include <QtGui/QPainter>
#include <QtGui/QPainterPath>
#include <algorithm>

#include "ui/answers/answers_text.h"
#include "ui/inspector/entity_text.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kBesides{"shell.feeder.besides"};
constexpr MessageId kHead{"shell.feeder.head"};
constexpr MessageId kOff{"shell.feeder.off"};
constexpr MessageId kNone{"shell.feeder.none"};
constexpr MessageId kMain{"shell.feeder.main"};
constexpr MessageId kInverter{"shell.feeder.inverter"};
constexpr MessageId kBackup{"shell.feeder.backup"};
constexpr MessageId kAmperes{"shell.feeder.amperes"};
constexpr MessageId kBus{"shell.feeder.bus"};
constexpr MessageId kWatts{"shell.feeder.watts"};
constexpr MessageId kWire{"shell.feeder.wire"};
constexpr MessageId kGround{"shell.feeder.ground"};
constexpr MessageId kUnknown{"answers.unknown_value"};
constexpr double kLine = 1.6;
constexpr double kMargin = 12.0;
constexpr double kHeadHeight = 24.0;
constexpr double kText = 11.0;

const SegmentFigures* segmentOf(const Assessment& a, Segment wanted) {
  for (const SegmentFigures& segment : a.segments) {
    if (segment.segment == wanted) return &segment;
  }
  return nullptr;
}

}  // namespace

FeederLine::FeederLine(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  setMaximumHeight(150);
}

QSize FeederLine::sizeHint() const { return {400, 112}; }
QSize FeederLine::minimumSizeHint() const { return {200, 72}; }

FeederLine::Wire FeederLine::wireOf(const SegmentFigures* segment, const Language& language) {
  Wire wire;
  if (segment == nullptr) return wire;
  wire.device = segment->device.rating
                    ? words(language, kAmperes, std::int64_t{segment->device.rating->count()})
                    : words(language, kUnknown);
  if (segment->conductor.size) {
    const ConductorSize size = *segment->conductor.size;
    // The drawing is narrow: the cross-section stands in the answers and on paper, not behind the size here.
    wire.size =
        words(language, kWire, std::string(name(size)) + "\u00a0" + std::string(unit(size)),
              words(language, segment->conductor.metal == Metal::copper ? MessageId{"answers.copper"}
                                                                        : MessageId{"answers.aluminium"})
                  .toStdString());
  }
  if (segment->ground) wire.ground = words(language, kGround, std::string(name(*segment->ground)));
  return wire;
}

void FeederLine::show(const Plan& plan, const Assessment& a, const Palette& palette,
                      const Language& language) {
  palette_ = palette;
  arrangement_ = plan.transfer->arrangement.valueOr(Arrangement::none);
  head_ = words(language, kHead);
  off_ = words(language, kOff);
  none_ = words(language, kNone);
  note_ = QString::fromStdString(
      choiceText(*fieldOf(RecordKind::transfer, "arrangement"), plan.transfer->arrangement.word(), language));
  // A generator's inlet and a way around the inverter are named; they have no line in the drawing.
  for (const Segment segment : {Segment::generatorInlet, Segment::bypass}) {
    const SegmentFigures* found = segmentOf(a, segment);
    if (found == nullptr) continue;
    const Wire wire = wireOf(found, language);
    note_ = words(language, kBesides, note_.toStdString(), segmentName(segment, language).toStdString(),
                  wire.device.toStdString());
  }
  main_ = {words(language, kMain), {}};
  if (const Panel* main = mainPanel(plan); main != nullptr && main->mainBreaker)
    main_.fact = words(language, kAmperes, std::int64_t{main->mainBreaker->count()});
  inverter_ = {words(language, kInverter), {}};
  if (a.limits.total)
    inverter_.fact =
        words(language, kWatts,
              Figure{a.limits.total->count() / 1000.0, "kW", a.limits.total->count() < 9950 ? 1 : 0});
  backup_ = {words(language, kBackup), {}};
  if (const Panel* backup = backupPanel(plan); backup != nullptr && backup->busRating)
    backup_.fact = words(language, kBus, std::int64_t{backup->busRating->count()});
  const bool through = arrangement_ == Arrangement::inverterPassThrough;
  mainWire_ = wireOf(segmentOf(a, through ? Segment::mainToInverter : Segment::mainToSwitch), language);
  inverterWire_ = wireOf(segmentOf(a, Segment::inverterToSwitch), language);
  backupWire_ = wireOf(segmentOf(a, through ? Segment::inverterToBackup : Segment::switchToBackup), language);
  QString spoken = head_ + QLatin1String(": ") + note_;
  for (const SegmentFigures& segment : a.segments)
    spoken += QLatin1String("; ") + segmentName(segment.segment, language) + QLatin1Char(' ') +
              segmentWords(segment, language);
  setAccessibleName(spoken);
  update();
}

void FeederLine::paintBox(QPainter& painter, QRectF rect, const Box& box) const {
  painter.setPen(QPen(palette_.color(ColorRole::ink), kLine));
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(rect, 3, 3);
  painter.setPen(palette_.color(ColorRole::ink));
  painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
  const bool two = rect.height() > 24 && !box.fact.isEmpty();
  if (two) {
    painter.drawText(QRectF(rect.left(), rect.top() + 1, rect.width(), rect.height() / 2), Qt::AlignCenter,
                     box.title);
    painter.setFont(stayalight::font(Face::condensed, 10.5));
    painter.setPen(palette_.color(ColorRole::ink2));
    painter.drawText(QRectF(rect.left(), rect.center().y() - 1, rect.width(), rect.height() / 2),
                     Qt::AlignCenter, box.fact);
  } else {
    const QString both = box.fact.isEmpty() ? box.title : QString(box.title + QLatin1Char(' ') + box.fact);
    painter.drawText(rect, Qt::AlignCenter,
                     elided(both, rect.width() - 4, Face::condensed, kText, Weight::medium));
  }
}

void FeederLine::paintBreaker(QPainter& painter, QPointF at) const {
  painter.setPen(QPen(palette_.color(ColorRole::ink), kLine));
  painter.setBrush(Qt::NoBrush);
  QPainterPath path;
  path.moveTo(at.x() - 8, at.y());
  path.arcTo(QRectF(at.x() - 8, at.y() - 6, 16, 12), 180, -180);
  painter.fillRect(QRectF(at.x() - 7, at.y() - 1.5, 14, 3), palette_.color(ColorRole::sheet));
  painter.drawPath(path);
}

void FeederLine::paintSlashes(QPainter& painter, QPointF at) const {
  // Two hots, neutral and ground.
  painter.setPen(QPen(palette_.color(ColorRole::ink), 1.1));
  for (int i = 0; i < 4; ++i)
    painter.drawLine(QPointF(at.x() + i * 4 - 2, at.y() + 4), QPointF(at.x() + i * 4 + 2, at.y() - 4));
}

void FeederLine::label(QPainter& painter, QPointF middle, const QString& text, bool strong,
                       bool above) const {
  painter.setFont(stayalight::font(Face::condensed, kText, strong ? Weight::medium : Weight::regular));
  painter.setPen(palette_.color(strong ? ColorRole::ink : ColorRole::ink2));
  painter.drawText(QRectF(middle.x() - 70, above ? middle.y() - 18 : middle.y() + 4, 140, 14),
                   Qt::AlignCenter, text);
}

void FeederLine::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
  painter.setFont(stayalight::font(Face::condensed, 12.5, Weight::medium));
  painter.setPen(palette_.color(ColorRole::ink));
  painter.drawText(QRectF(kMargin, 4, 100, 18), Qt::AlignLeft | Qt::AlignVCenter, head_);
  painter.setFont(stayalight::font(Face::condensed, kText));
  painter.setPen(palette_.color(ColorRole::ink2));
  painter.drawText(QRectF(120, 4, width() - 120 - kMargin, 18), Qt::AlignRight | Qt::AlignVCenter,
                   elided(note_, width() - 120 - kMargin, Face::condensed, kText));
  const double top = kHeadHeight, bottom = height() - 6.0;
  const double boxHeight = std::clamp((bottom - top) * 0.36, 18.0, 30.0);
  const double boxWidth = std::clamp(width() * 0.19, 74.0, 96.0);
  const double left = kMargin, right = width() - kMargin;
  if (arrangement_ == Arrangement::none) {
    painter.setFont(stayalight::font(Face::condensed, 11.5));
    painter.drawText(QRectF(left, top, right - left, bottom - top), Qt::AlignCenter | Qt::TextWordWrap,
                     none_);
    return;
  }
  const QPen ink(palette_.color(ColorRole::ink), kLine);
  const QRectF backup(right - boxWidth, (top + bottom) / 2 - boxHeight / 2, boxWidth, boxHeight);
  if (arrangement_ == Arrangement::inverterPassThrough) {
    const double y = (top + bottom) / 2;
    const QRectF main(left, y - boxHeight / 2, boxWidth, boxHeight);
    const QRectF inverter((left + right) / 2 - boxWidth / 2, y - boxHeight / 2, boxWidth, boxHeight);
    painter.setPen(ink);
    painter.drawLine(QPointF(main.right(), y), QPointF(inverter.left(), y));
    painter.drawLine(QPointF(inverter.right(), y), QPointF(backup.left(), y));
    const auto dress = [&](double from, double to, const Wire& wire) {
      paintBreaker(painter, {from + 16, y});
      paintSlashes(painter, {(from + to) / 2 + 10, y});
      label(painter, {(from + to) / 2 + 4, y}, wire.device, true, true);
      label(painter, {(from + to) / 2 + 4, y}, wire.size, false, false);
      label(painter, {(from + to) / 2 + 4, y + 13}, wire.ground, false, false);
    };
    dress(main.right(), inverter.left(), mainWire_);
    dress(inverter.right(), backup.left(), backupWire_);
    paintBox(painter, main, main_);
    paintBox(painter, inverter, inverter_);
    paintBox(painter, backup, backup_);
    return;
  }
  const double upper = top + boxHeight / 2 + 2, lower = bottom - boxHeight / 2 - 2,
               middle = (upper + lower) / 2;
  const QRectF main(left, upper - boxHeight / 2, boxWidth, boxHeight),
      inverter(left, lower - boxHeight / 2, boxWidth, boxHeight);
  const double contact = left + (right - left) * 0.53, pivot = contact + 30;
  painter.setPen(ink);
  painter.drawLine(QPointF(main.right(), upper), QPointF(contact, upper));
  painter.drawLine(QPointF(inverter.right(), lower), QPointF(contact, lower));
  painter.drawLine(QPointF(pivot, middle), QPointF(backup.left(), middle));
  painter.drawLine(QPointF(contact, upper), QPointF(pivot, middle));
  if (arrangement_ == Arrangement::manualSwitch) {
    painter.drawLine(QPointF(contact - 6, middle), QPointF(contact + 4, middle));
    painter.setFont(stayalight::font(Face::condensed, 10.5));
    painter.setPen(palette_.color(ColorRole::ink2));
    painter.drawText(QRectF(contact - 46, middle - 8, 36, 16), Qt::AlignRight | Qt::AlignVCenter, off_);
  }
  painter.setPen(ink);
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawEllipse(QPointF(contact, upper), 2.6, 2.6);
  painter.drawEllipse(QPointF(contact, lower), 2.6, 2.6);
  painter.setBrush(palette_.color(ColorRole::ink));
  painter.drawEllipse(QPointF(pivot, middle), 2.2, 2.2);
  const auto dress = [&](double from, double y, const Wire& wire) {
    paintBreaker(painter, {from + 22, y});
    paintSlashes(painter, {contact - 22, y});
    painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
    const QString text =
        wire.size.isEmpty() ? wire.device : QString(wire.device + QStringLiteral("   ") + wire.size);
    painter.setPen(palette_.color(ColorRole::ink));
    const double room = contact - from - 34;
    painter.drawText(QRectF(from + 34, y - 17, room, 14), Qt::AlignLeft | Qt::AlignVCenter,
                     elided(text, room, Face::condensed, kText, Weight::medium));
  };
  dress(main.right(), upper, mainWire_);
  dress(inverter.right(), lower, inverterWire_);
  paintSlashes(painter, {(pivot + backup.left()) / 2 - 6, middle});
  label(painter, {(pivot + backup.left()) / 2, middle}, backupWire_.size, false, true);
  label(painter, {(pivot + backup.left()) / 2, middle}, backupWire_.ground, false, false);
  paintBox(painter, main, main_);
  paintBox(painter, inverter, inverter_);
  paintBox(painter, backup, backup_);
}

}  // namespace stayalight
