#include "ui/shell/effect_card.h"

#include <QtGui/QPainter>
#include <algorithm>

#include "ui/inspector/entity_text.h"
#include "ui/style/fonts.h"
#include "ui/style/marks.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kNothing{"shell.card.nothing"};
constexpr MessageId kBackup{"shell.card.backup"};
constexpr MessageId kAtHour{"shell.card.at_hour"};
constexpr MessageId kNow{"shell.card.now"};
constexpr MessageId kAfter{"shell.card.after"};
constexpr MessageId kFromTo{"shell.card.from_to"};
constexpr MessageId kRating{"shell.card.rating"};
constexpr MessageId kRatingValue{"shell.card.rating_value"};
constexpr MessageId kRunning{"shell.card.running"};
constexpr MessageId kLegRunning{"shell.card.leg_running"};
constexpr MessageId kStart{"shell.card.start"};
constexpr MessageId kStartOn{"shell.card.start_on"};
constexpr MessageId kStartNote{"shell.card.start_note"};
constexpr MessageId kStage{"shell.card.stage"};
constexpr MessageId kServes{"shell.card.serves"};
constexpr MessageId kLegPeak{"answers.leg_peak"};
constexpr MessageId kWorstStart{"shell.card.worst_start"};
constexpr MessageId kHours{"shell.card.hours"};
constexpr MessageId kLimit{"shell.card.limit"};
constexpr MessageId kUnknown{"answers.unknown_value"};
constexpr MessageId kNotKnownLoad{"shell.card.load_unknown"};

constexpr double kHead = 24.0;        // title and place
constexpr double kColumnHead = 12.0;  // "now", "after"
constexpr double kLeastRow = 14.5, kMostRow = 25.0;
constexpr int kRows = 5;  // as many as a drag shows; fewer keep that height
constexpr double kMargin = 12.0;
constexpr double kText = 11.5;

QString limitNote(const std::optional<AcAmperes>& limit, const Language& language) {
  if (!limit) return words(language, MessageId{"answers.no_limit"});
  return words(language, kLimit, amperes(*limit, language).toStdString());
}

// The start with the smallest margin on a leg.
const StartFigure<AcAmperes>* worstStart(const Assessment& a, Leg leg) {
  const StartFigure<AcAmperes>* worst = nullptr;
  for (const StartCheck& check : a.starts.checks) {
    const auto& figure = check.leg[index(leg)];
    if (!figure) continue;
    const auto margin = [](const StartFigure<AcAmperes>& f) {
      return f.margin ? f.margin->count() : -f.highSum.count();
    };
    if (worst == nullptr || margin(*figure) < margin(*worst)) worst = &*figure;
  }
  return worst;
}

QString hoursText(const Assessment& a, const Language& language) {
  return a.outage.known ? duration(a.outage.runtime.likely, language) : words(language, kUnknown);
}

}  // namespace

Effect wholeBackup(const Assessment& a, const Language& language) {
  Effect effect;
  if (!a.hasBackup) {
    effect.title = words(language, kNothing);
    return effect;
  }
  effect.title = words(language, kBackup);
  effect.place = words(language, kAtHour, ClockTime{a.hour.hour * 60});
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const HourLoad& load = a.hour.leg[index(leg)];
    EffectRow row;
    row.label = words(language, kLegPeak, std::string(legName(leg)));
    row.now = amperes(load.likelyPeakCurrent.likely, language);
    row.note = limitNote(load.limit, language);
    row.verdict = load.verdict;
    effect.rows.push_back(row);
  }
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const StartFigure<AcAmperes>* start = worstStart(a, leg);
    if (start == nullptr) continue;
    EffectRow row;
    row.label = words(language, kWorstStart, std::string(legName(leg)));
    row.now = amperes(start->highSum, language);
    row.note = limitNote(start->highLimit, language);
    row.verdict = start->verdict;
    effect.rows.push_back(row);
  }
  EffectRow hours;
  hours.label = words(language, kHours);
  hours.now = hoursText(a, language);
  effect.rows.push_back(hours);
  return effect;
}

Effect effectOf(const Plan& plan, const Assessment& a, BreakerId id, const Language& language) {
  const Breaker* breaker = find(plan, id);
  if (breaker == nullptr) return wholeBackup(a, language);
  Effect effect;
  const Circuit* circuit = circuitOn(plan, id, Reading::planned);
  if (circuit == nullptr) circuit = circuitOn(plan, id, Reading::before);
  const EntityRef ref{RecordKind::breaker, id.number};
  effect.title =
      circuit != nullptr
          ? QString::fromStdString(entityName(plan, {RecordKind::circuit, circuit->id.number}, language))
          : QString::fromStdString(entityName(plan, ref, language));
  effect.place = QString::fromStdString(placeName(plan, ref, language));
  const auto row = [&](MessageId label, const QString& value, const QString& note) {
    EffectRow made;
    made.label = words(language, label);
    made.now = value;
    made.note = note;
    effect.rows.push_back(made);
    return effect.rows.size() - 1;
  };
  row(kRating,
      words(language, kRatingValue, std::int64_t{breaker->rating.count()}, std::int64_t{breaker->poles}),
      QString::fromStdString(
          choiceText(*fieldOf(RecordKind::breaker, "stage"), breaker->stage.word(), language)));
  const auto figures = std::find_if(a.breakers.begin(), a.breakers.end(),
                                    [&](const BreakerFigures& f) { return f.breaker == id; });
  if (figures != a.breakers.end()) {
    const AcAmperes most = std::max(figures->running[0], figures->running[1]);
    const std::size_t at = row(kRunning, figures->known ? amperes(most, language) : words(language, kUnknown),
                               figures->known ? QString() : words(language, kNotKnownLoad));
    effect.rows[at].grade = figures->grade;
  }
  if (circuit != nullptr) {
    for (const StartCheck& check : a.starts.checks) {
      if (check.loads.empty()) continue;
      const Circuit* of = circuitOf(plan, check.loads.front());
      if (of == nullptr || of->id != circuit->id) continue;
      const auto& figure = check.leg[index(check.worstLeg)];
      if (!figure) continue;
      EffectRow made;
      made.label = words(language, kStartOn, std::string(legName(check.worstLeg)));
      made.now = amperes(figure->highSum, language);
      made.note = figure->highLimit
                      ? words(language, kStartNote, amperes(*figure->highLimit, language).toStdString(),
                              Figure{figure->highTime.count(), "s", 1})
                      : limitNote(std::nullopt, language);
      made.verdict = figure->verdict;
      effect.rows.push_back(made);
    }
    if (!circuit->serves.empty()) row(kServes, {}, QString::fromStdString(circuit->serves));
  }
  return effect;
}

Effect effectOf(const Plan& plan, const Assessment& now, const BoardMove& move, const Result<Plan>& moved,
                const Assessment* after, const Language& language) {
  Effect effect;
  effect.moving = true;
  EntityRef ref{RecordKind::breaker, move.breaker.number};
  if (!move.circuits.empty()) ref = {RecordKind::circuit, move.circuits.front().number};
  effect.title = QString::fromStdString(entityName(plan, ref, language));
  const std::string from = placeName(plan, ref, language);
  if (!moved) {
    effect.place = words(moved.refusal(), language);
    return effect;
  }
  effect.place = words(language, kFromTo, from, placeName(moved.value(), ref, language));
  if (after == nullptr) return effect;
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const HourLoad& before = now.hour.leg[index(leg)];
    const HourLoad& then = after->hour.leg[index(leg)];
    EffectRow row;
    row.label = words(language, kLegPeak, std::string(legName(leg)));
    row.now = amperes(before.likelyPeakCurrent.likely, language);
    row.after = amperes(then.likelyPeakCurrent.likely, language);
    row.note = limitNote(then.limit, language);
    row.verdict = then.verdict;
    effect.rows.push_back(row);
  }
  for (const Leg leg : {Leg::l1, Leg::l2}) {
    const StartFigure<AcAmperes>* before = worstStart(now, leg);
    const StartFigure<AcAmperes>* then = worstStart(*after, leg);
    if (before == nullptr && then == nullptr) continue;
    EffectRow row;
    row.label = words(language, kWorstStart, std::string(legName(leg)));
    row.now = before != nullptr ? amperes(before->highSum, language) : QStringLiteral("\u2013");
    row.after = then != nullptr ? amperes(then->highSum, language) : QStringLiteral("\u2013");
    if (then != nullptr) {
      row.note = limitNote(then->highLimit, language);
      row.verdict = then->verdict;
    }
    effect.rows.push_back(row);
  }
  EffectRow hours;
  hours.label = words(language, kHours);
  hours.now = hoursText(now, language);
  hours.after = hoursText(*after, language);
  effect.rows.push_back(hours);
  return effect;
}

EffectCard::EffectCard(QWidget* parent) : PaintedWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  setMaximumHeight(sizeHint().height());
}

void EffectCard::show(const Effect& effect, const Palette& palette, const Language& language) {
  effect_ = effect;
  palette_ = palette;
  nowHead_ = words(language, kNow);
  afterHead_ = words(language, kAfter);
  verdicts_.clear();
  grades_.clear();
  QString spoken = effect.title + QLatin1Char(' ') + effect.place;
  for (const EffectRow& row : effect_.rows) {
    verdicts_.push_back(row.verdict ? verdictName(*row.verdict, language) : QString());
    grades_.push_back(row.grade ? gradeName(*row.grade, language) : QString());
    spoken += QLatin1String("; ") + row.label + QLatin1Char(' ') + row.now + QLatin1Char(' ') + row.after +
              QLatin1Char(' ') + row.note + QLatin1Char(' ') + verdicts_.back() + grades_.back();
  }
  setAccessibleName(spoken.simplified());
  update();
}

QSizeF EffectCard::wanted() const { return {400, kHead + kColumnHead + kRows * kMostRow + 3}; }
QSizeF EffectCard::least() const { return {200, kHead + kColumnHead + kRows * kLeastRow + 3}; }

void EffectCard::paint(QPainter& painter) {
  const QRectF sheet = QRectF(0, 0, across(), down()).adjusted(0.5, 0.5, -0.5, -0.5);
  painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
  painter.setBrush(palette_.color(ColorRole::sheet));
  painter.drawRoundedRect(sheet, 4, 4);
  painter.fillRect(QRectF(0, 1, 3.5, down() - 2),
                   palette_.color(effect_.moving ? ColorRole::lamp : ColorRole::ink));
  const double left = kMargin + 3, right = across() - kMargin;
  const auto text = [&](QRectF box, Qt::Alignment alignment, const QString& words, ColorRole role,
                        Weight weight = Weight::regular, double size = kText) {
    painter.setFont(stayalight::font(Face::condensed, size, weight));
    painter.setPen(palette_.color(role));
    painter.drawText(box, static_cast<int>(alignment | Qt::AlignVCenter | Qt::TextSingleLine),
                     elided(words, box.width(), Face::condensed, size, weight));
  };
  const double titleWidth =
      std::min(textWidth(effect_.title, Face::condensed, 12.5, Weight::medium) + 6, (right - left) * 0.6);
  text(QRectF(left, 5, titleWidth, kHead - 5), Qt::AlignLeft, effect_.title, ColorRole::ink, Weight::medium,
       12.5);
  if (effect_.rows.empty()) {
    // A reason why not: whole, on as many lines as it takes.
    painter.setFont(stayalight::font(Face::condensed, kText));
    painter.setPen(palette_.color(ColorRole::ink));
    painter.drawText(QRectF(left, kHead + 2, right - left, down() - kHead - 4),
                     static_cast<int>(Qt::AlignLeft | Qt::AlignTop) | Qt::TextWordWrap, effect_.place);
    return;
  }
  text(QRectF(left + titleWidth + 8, 5, right - left - titleWidth - 8, kHead - 5), Qt::AlignLeft,
       effect_.place, ColorRole::ink2);
  double y = kHead;
  const double width = right - left;
  const double labelWidth = width * 0.30;
  const double nowRight = left + width * (effect_.moving ? 0.43 : 0.48);
  const double afterRight = left + width * 0.62;
  const double noteWidth = width * (effect_.moving ? 0.20 : 0.27);
  if (effect_.moving) {
    text(QRectF(nowRight - 80, y - 2, 80, 14), Qt::AlignRight, nowHead_, ColorRole::ink3, Weight::regular,
         11);
    text(QRectF(afterRight - 80, y - 2, 80, 14), Qt::AlignRight, afterHead_, ColorRole::ink3, Weight::regular,
         11);
    y += kColumnHead;
  }
  const double rowHeight =
      std::clamp((down() - y - 3) / static_cast<double>(std::max<std::size_t>(kRows, effect_.rows.size())),
                 kLeastRow, kMostRow);
  for (std::size_t i = 0; i < effect_.rows.size(); ++i) {
    if (y + rowHeight > down() + 0.5) break;
    const EffectRow& row = effect_.rows[i];
    if (i > 0) {
      painter.setPen(QPen(palette_.color(ColorRole::hairline), 1));
      painter.drawLine(QPointF(left, y), QPointF(right, y));
    }
    text(QRectF(left, y, labelWidth, rowHeight), Qt::AlignLeft, row.label, ColorRole::ink2);
    if (!row.now.isEmpty()) {
      text(QRectF(left + labelWidth, y, nowRight - left - labelWidth, rowHeight), Qt::AlignRight, row.now,
           effect_.moving ? ColorRole::ink2 : ColorRole::ink,
           effect_.moving ? Weight::regular : Weight::medium);
    }
    if (row.grade && !effect_.moving) {
      const double shown = textWidth(row.now, Face::condensed, kText, Weight::medium);
      paintGradeRule(painter, nowRight - shown, nowRight, y + rowHeight - 3, *row.grade,
                     palette_.color(ColorRole::ink));
    }
    if (effect_.moving) {
      painter.setPen(QPen(palette_.color(ColorRole::ink2), 1.2));
      const double mid = y + rowHeight / 2, from = nowRight + 8, to = from + 14;
      painter.drawLine(QPointF(from, mid), QPointF(to, mid));
      painter.drawPolyline(QPolygonF{{to - 4, mid - 3}, {to, mid}, {to - 4, mid + 3}});
      text(QRectF(nowRight + 24, y, afterRight - nowRight - 24, rowHeight), Qt::AlignRight, row.after,
           ColorRole::ink, Weight::medium);
    }
    if (!verdicts_[i].isEmpty()) {
      const double at =
          effect_.moving ? afterRight + 10 : right - textWidth(verdicts_[i], Face::condensed, kText) - 16;
      paintBead(painter, QRectF(at, y + (rowHeight - 9) / 2, 9, 9), beadOf(*row.verdict), palette_);
      text(QRectF(at + 14, y, 90, rowHeight), Qt::AlignLeft, verdicts_[i],
           row.verdict == Verdict::over ? ColorRole::mustFix : ColorRole::ink);
    }
    if (!grades_[i].isEmpty())
      text(QRectF(right - 110, y, 110, rowHeight), Qt::AlignRight, grades_[i], ColorRole::ink2);
    if (!row.note.isEmpty()) {
      if (effect_.moving)
        text(QRectF(right - noteWidth, y, noteWidth, rowHeight), Qt::AlignRight, row.note, ColorRole::ink2);
      else if (row.now.isEmpty())
        text(QRectF(left + labelWidth, y, right - left - labelWidth, rowHeight), Qt::AlignLeft, row.note,
             ColorRole::ink2);
      else
        text(QRectF(nowRight + 16, y, right - nowRight - 16 - (verdicts_[i].isEmpty() ? 0 : 84), rowHeight),
             Qt::AlignLeft, row.note, ColorRole::ink2);
    }
    y += rowHeight;
  }
}

}  // namespace stayalight
