#include "ui/wording/language.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTime>
#include <cmath>

namespace stayalight {
namespace {

constexpr MessageId kAm{"wording.am"};
constexpr MessageId kPm{"wording.pm"};
constexpr MessageId kNoon{"wording.noon"};
constexpr MessageId kMidnight{"wording.midnight"};
constexpr MessageId kDuration{"wording.duration"};
constexpr MessageId kPractice{"wording.practice"};
constexpr MessageId kListedInstructions{"wording.listed_instructions"};
constexpr MessageId kNotInThisEdition{"wording.not_in_edition"};
constexpr MessageId kSectionNotConfirmed{"wording.section_not_confirmed"};
constexpr MessageId kCodeNotCovered{"wording.code_not_covered"};
constexpr MessageId kGradeUnknown{"wording.grade_unknown"};
constexpr MessageId kGradeTypical{"wording.grade_typical"};
constexpr MessageId kGradeNameplate{"wording.grade_nameplate"};
constexpr MessageId kGradeTraced{"wording.grade_traced"};
constexpr MessageId kGradeMeasured{"wording.grade_measured"};
constexpr MessageId kWithin{"wording.within"};
constexpr MessageId kOver{"wording.over"};
constexpr MessageId kNotKnown{"wording.not_known"};

}  // namespace

ProgramLanguage::ProgramLanguage(QLocale locale, Edition edition, bool codeCovered, const Tables& tables)
    : locale_(std::move(locale)),
      numbers_(locale_),
      edition_(edition),
      codeCovered_(codeCovered),
      tables_(&tables) {}

void ProgramLanguage::follow(const Plan& plan) {
  edition_ = plan.site->edition.valueOr(Edition::y2023);
  codeCovered_ = !plan.site->country.is(Country::canada);
}

void ProgramLanguage::setNumberForm(NumberForm form) {
  numbers_ = form == NumberForm::point   ? QLocale(QLocale::English, QLocale::UnitedStates)
             : form == NumberForm::comma ? QLocale(QLocale::German, QLocale::Germany)
                                         : locale_;
}

std::string ProgramLanguage::pattern(MessageId id) const {
  return QCoreApplication::translate("Stayalight", Language::pattern(id).c_str()).toStdString();
}

int ProgramLanguage::pluralForm(std::int64_t count) const {
  // French counts nothing as one; the other languages of this alphabet have one and many.
  if (locale_.language() == QLocale::French) return count < 2 ? 0 : 1;
  return count == 1 ? 0 : 1;
}

std::string ProgramLanguage::number(double value, int decimals) const {
  const double scale = std::pow(10.0, decimals);
  const double rounded = std::round(value * scale) / scale;
  return numbers_.toString(rounded == 0.0 ? 0.0 : rounded, 'f', decimals).toStdString();
}

std::string ProgramLanguage::clock(ClockTime time) const {
  const int minutes = ((time.minutes % 1440) + 1440) % 1440;
  const int hour = minutes / 60, minute = minutes % 60;
  if (locale_.language() != QLocale::English) {
    return locale_.toString(QTime(hour, minute), QLocale::ShortFormat).toStdString();
  }
  if (minutes == 0) return render(say(kMidnight), *this);
  if (minutes == 720) return render(say(kNoon), *this);
  std::string shown = std::to_string(hour % 12 == 0 ? 12 : hour % 12);
  if (minute != 0) shown += (minute < 10 ? ":0" : ":") + std::to_string(minute);
  return render(say(hour < 12 ? kAm : kPm, shown), *this);
}

std::string ProgramLanguage::citation(RuleId rule) const {
  const auto rests = basis(rule, *tables_);
  const auto section = sectionOf(rule, edition_, *tables_);
  if (!rests || (*rests == RuleBasis::practice && (!section || !codeCovered_)))
    return render(say(kPractice), *this);
  if (!codeCovered_ && *rests == RuleBasis::code) return render(say(kCodeNotCovered), *this);
  if (section && codeCovered_) return std::string(*section);
  if (*rests == RuleBasis::listedInstruction) return render(say(kListedInstructions), *this);
  const bool absent = notInEdition(rule, edition_, *tables_);
  return render(say(absent ? kNotInThisEdition : kSectionNotConfirmed, std::string(name(edition_))), *this);
}

Figure ProgramLanguage::inUnits(const Figure& figure) const { return stayalight::inUnits(figure, units_); }
std::string ProgramLanguage::inUnits(const std::string& text) const {
  return stayalight::inUnits(text, units_);
}

QString words(const Message& message, const Language& language) {
  return QString::fromStdString(render(message, language));
}

QString amperes(AcAmperes current, const Language& language) {
  const double a = current.count();
  return QString::fromStdString(language.number(a, std::abs(a) < 99.95 ? 1 : 0)) + QStringLiteral(" A");
}

QString watts(Watts power, const Language& language) {
  return QString::fromStdString(language.number(power.count(), 0)) + QStringLiteral(" W");
}

QString duration(Hours time, const Language& language) {
  const auto minutes = static_cast<int>(std::lround(time.count() * 60.0));
  const std::string rest = (minutes % 60 < 10 ? "0" : "") + std::to_string(minutes % 60);
  return words(language, kDuration, language.number(minutes / 60, 0), rest);
}

QString halfHours(Hours time, const Language& language) {
  const auto halves = static_cast<int>(std::lround(time.count() * 2.0));
  if (halves == 1) return QStringLiteral("½");
  const QString whole = QString::fromStdString(language.number(halves / 2, 0));
  return halves % 2 == 0 ? whole : QString(whole + QStringLiteral("½"));
}

QString ProgramLanguage::monthName(int month) const { return locale_.standaloneMonthName(month); }

QString clocksUnbroken(QString text, const Language& language) {
  for (const MessageId id : {kAm, kPm}) {
    const QString suffix = QString::fromStdString(language.pattern(id)).section(QLatin1String("%1"), 1);
    if (!suffix.startsWith(QLatin1Char(' '))) continue;
    QString kept = suffix;
    kept[0] = QChar::Nbsp;
    text.replace(suffix, kept);
  }
  return text;
}

QString gradeName(Grade grade, const Language& language) {
  switch (grade) {
    case Grade::unknown:
      return words(language, kGradeUnknown);
    case Grade::typical:
      return words(language, kGradeTypical);
    case Grade::nameplate:
      return words(language, kGradeNameplate);
    case Grade::traced:
      return words(language, kGradeTraced);
    case Grade::measured:
      return words(language, kGradeMeasured);
  }
  return {};
}

QString verdictName(Verdict verdict, const Language& language) {
  switch (verdict) {
    case Verdict::within:
      return words(language, kWithin);
    case Verdict::over:
      return words(language, kOver);
    case Verdict::notKnown:
      return words(language, kNotKnown);
  }
  return {};
}

}  // namespace stayalight
