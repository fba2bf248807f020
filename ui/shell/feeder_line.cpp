#include "ui/shell/feeder_line.h"

#include <QtGui/QPainter>
#include <QtGui/QPainterPath>

#include "ui/answers/answers_text.h"
#include "ui/inspector/entity_text.h"
#include "ui/style/application.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"shell.feeder.head"};
constexpr MessageId kNone{"shell.feeder.none"};
constexpr double kLine = 1.6;
constexpr double kMargin = 12.0;
constexpr double kHeadHeight = 24.0;
constexpr double kFoot = 6.0;

}  // namespace

FeederLine::FeederLine(QWidget* parent) : PaintedWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
}

QSizeF FeederLine::wanted() const { return {400, kHeadHeight + pictureHeight(facts_) + kFoot}; }
QSizeF FeederLine::least() const { return {200, kHeadHeight + leastPictureHeight(facts_) + kFoot}; }

void FeederLine::show(const Plan& plan, const Assessment& a, const Palette& palette,
                      const Language& language) {
  palette_ = palette;
  facts_ = feederFacts(plan, a, language);
  head_ = words(language, kHead);
  none_ = words(language, kNone);
  note_ = QString::fromStdString(
      choiceText(*fieldOf(RecordKind::transfer, "arrangement"), plan.transfer->arrangement.word(), language));
  QString spoken = head_ + QLatin1String(": ") + note_;
  for (const SegmentFigures& segment : a.segments)
    spoken += QLatin1String("; ") + segmentName(segment.segment, language) + QLatin1Char(' ') +
              segmentWords(segment, language);
  setAccessibleName(spoken);
  setMaximumHeight(sizeHint().height() + scaled(38));
  updateGeometry();
  update();
}

void FeederLine::paintBox(QPainter& painter, const FeederPicture::Box& box) const {
  const QRectF& rect = box.rect;
  painter.setPen(QPen(palette_.color(ColorRole::ink), kLine));
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(rect, 3, 3);
  painter.setPen(palette_.color(ColorRole::ink));
  painter.setFont(stayalight::font(Face::condensed, kPictureText, Weight::medium));
  if (box.twoLines && !box.fact.isEmpty()) {
    painter.drawText(QRectF(rect.left(), rect.top() + 1, rect.width(), rect.height() / 2), Qt::AlignCenter,
                     box.title);
    painter.setFont(stayalight::font(Face::condensed, 10.5));
    painter.setPen(palette_.color(ColorRole::ink2));
    painter.drawText(QRectF(rect.left(), rect.center().y() - 1, rect.width(), rect.height() / 2),
                     Qt::AlignCenter, box.fact);
  } else {
    // The title alone where there is no room for both.
    const QString both = box.fact.isEmpty() ? box.title : QString(box.title + QLatin1Char(' ') + box.fact);
    const bool fits = textWidth(both, Face::condensed, kPictureText, Weight::medium) <= rect.width() - 4;
    painter.drawText(rect, Qt::AlignCenter, fits ? both : box.title);
  }
}

void FeederLine::paintSymbol(QPainter& painter, const FeederPicture::Symbol& symbol) const {
  using Mark = FeederPicture::Mark;
  const QPen ink(palette_.color(ColorRole::ink), kLine);
  const QPointF at = symbol.at;
  switch (symbol.mark) {
    case Mark::breaker: {
      painter.save();
      painter.translate(at);
      if (symbol.upright) {
        painter.rotate(90);
        painter.scale(0.5, 0.7);
      }
      painter.fillRect(QRectF(-7, -1.5, 14, 3), palette_.color(ColorRole::sheet));
      QPen pen = ink;
      pen.setCosmetic(symbol.upright);
      painter.setPen(pen);
      painter.setBrush(Qt::NoBrush);
      QPainterPath path;
      path.moveTo(-8, 0);
      path.arcTo(QRectF(-8, -6, 16, 12), 180, -180);
      painter.drawPath(path);
      painter.restore();
      break;
    }
    case Mark::conductors:
      // Two hots, neutral and ground.
      painter.setPen(QPen(palette_.color(ColorRole::ink), 1.1));
      for (int i = 0; i < 4; ++i)
        painter.drawLine(QPointF(at.x() + i * 4 - 2, at.y() + 4), QPointF(at.x() + i * 4 + 2, at.y() - 4));
      break;
    case Mark::blade:
      painter.setPen(ink);
      painter.drawLine(at, symbol.to);
      break;
    case Mark::off:
      painter.setPen(ink);
      painter.drawLine(QPointF(at.x() - 6, at.y()), QPointF(at.x() + 4, at.y()));
      break;
    case Mark::contact:
      painter.setPen(ink);
      painter.setBrush(palette_.color(ColorRole::sheet));
      painter.drawEllipse(at, 2.6, 2.6);
      break;
    case Mark::pivot:
      painter.setPen(ink);
      painter.setBrush(palette_.color(ColorRole::ink));
      painter.drawEllipse(at, 2.2, 2.2);
      break;
  }
}

void FeederLine::paint(QPainter& painter) {
  painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(QRectF(0, 0, across(), down()).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
  painter.setFont(stayalight::font(Face::condensed, 12.5, Weight::medium));
  painter.setPen(palette_.color(ColorRole::ink));
  painter.drawText(QRectF(kMargin, 4, 100, 18), Qt::AlignLeft | Qt::AlignVCenter, head_);
  painter.setFont(stayalight::font(Face::condensed, kPictureText));
  painter.setPen(palette_.color(ColorRole::ink2));
  painter.drawText(QRectF(120, 4, across() - 120 - kMargin, 18), Qt::AlignRight | Qt::AlignVCenter,
                   elided(note_, across() - 120 - kMargin, Face::condensed, kPictureText));
  const QRectF area(kMargin, kHeadHeight, across() - 2.0 * kMargin, down() - kHeadHeight - kFoot);
  if (facts_.arrangement == Arrangement::none) {
    painter.setFont(stayalight::font(Face::condensed, 11.5));
    painter.drawText(area, Qt::AlignCenter | Qt::TextWordWrap, none_);
    return;
  }
  const FeederPicture picture = feederPicture(facts_, area);
  for (const FeederPicture::Line& line : picture.lines) {
    QPen pen(palette_.color(ColorRole::ink), kLine, line.dashed ? Qt::DashLine : Qt::SolidLine);
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line.points.data(), static_cast<int>(line.points.size()));
  }
  for (const FeederPicture::Symbol& symbol : picture.symbols) paintSymbol(painter, symbol);
  for (const FeederPicture::Text& text : picture.texts) {
    painter.setFont(
        stayalight::font(Face::condensed, kPictureText, text.strong ? Weight::medium : Weight::regular));
    painter.setPen(palette_.color(text.strong ? ColorRole::ink : ColorRole::ink2));
    painter.drawText(text.rect, static_cast<int>(text.align) | Qt::TextDontClip, text.text);
  }
  for (const FeederPicture::Box& box : picture.boxes) paintBox(painter, box);
}

}  // namespace stayalight
