#include "ui/survey/known_bar.h"

#include <QtGui/QPainter>

#include "ui/style/fonts.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kHead{"survey.known"};
constexpr MessageId kSpoken{"survey.known.spoken"};
constexpr MessageId kCount{"survey.known.count"};
constexpr double kText = 12.0;
constexpr double kBarHeight = 12.0;
constexpr double kBarShare = 0.34;
constexpr double kGap = 16.0;
// Best first, as the eye reads.
constexpr std::array<Grade, 5> kOrder = {Grade::measured, Grade::traced, Grade::nameplate, Grade::typical,
                                         Grade::unknown};

}  // namespace

KnownBar::KnownBar(QWidget* parent) : PaintedWidget(parent) { setObjectName(QStringLiteral("knownBar")); }

void KnownBar::show(const std::array<std::int32_t, 5>& known, const Palette& palette,
                    const Language& language) {
  known_ = known;
  palette_ = palette;
  head_ = words(language, kHead);
  for (std::size_t i = 0; i < known.size(); ++i)
    words_[i] = words(language, kCount, std::int64_t{known[i]},
                      gradeName(static_cast<Grade>(i), language).toStdString());
  setAccessibleName(words(language, kSpoken, std::int64_t{known[4]}, std::int64_t{known[3]},
                          std::int64_t{known[2]}, std::int64_t{known[1]}, std::int64_t{known[0]}));
  setToolTip(accessibleName());
  update();
}

QSizeF KnownBar::wanted() const { return {600, 24}; }
QSizeF KnownBar::least() const { return {300, 22}; }

void KnownBar::paint(QPainter& painter) {
  const QColor ink = palette_.color(ColorRole::ink), second = palette_.color(ColorRole::ink2);
  painter.setFont(stayalight::font(Face::condensed, kText, Weight::medium));
  painter.setPen(ink);
  const double headWidth = textWidth(head_, Face::condensed, kText, Weight::medium);
  painter.drawText(QRectF(0, 0, headWidth + 2, down()), Qt::AlignLeft | Qt::AlignVCenter, head_);
  double wordsWidth = 0;
  for (const QString& word : words_) wordsWidth += textWidth(word, Face::condensed, kText) + kGap;
  const double left = headWidth + kGap;
  const double room = std::max(60.0, std::min(across() * kBarShare, across() - left - wordsWidth));
  const QRectF bar(left + 0.5, (down() - kBarHeight) / 2.0 + 0.5, room, kBarHeight - 1);
  std::int32_t sum = 0;
  for (const std::int32_t count : known_) sum += count;
  double x = bar.left();
  for (const Grade grade : kOrder) {
    const std::int32_t count = known_[static_cast<std::size_t>(grade)];
    if (count == 0 || sum == 0) continue;
    const QRectF part(x, bar.top(), bar.width() * count / sum, bar.height());
    if (grade == Grade::measured) painter.fillRect(part, ink);
    if (grade == Grade::traced) {
      QColor half = second;
      half.setAlphaF(0.6F);
      painter.fillRect(part, half);
    }
    if (grade == Grade::nameplate) paintHatch(painter, part, second, 2.6, 1.0);
    if (grade == Grade::typical) paintHatch(painter, part, second, 6.0, 0.8);
    painter.setPen(QPen(ink, 1));
    painter.drawLine(part.topRight(), part.bottomRight());
    x = part.right();
  }
  painter.setPen(QPen(ink, 1));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(bar);
  painter.setFont(stayalight::font(Face::condensed, kText));
  x = bar.right() + kGap;
  for (const Grade grade : kOrder) {
    const QString& word = words_[static_cast<std::size_t>(grade)];
    const double wide = textWidth(word, Face::condensed, kText);
    painter.setPen(second);
    painter.drawText(QRectF(x, 0, wide + 2, down()), Qt::AlignLeft | Qt::AlignVCenter, word);
    paintGradeRule(painter, x, x + wide, down() / 2.0 + kText * 0.62, grade, second);
    x += wide + kGap;
  }
}

}  // namespace stayalight
