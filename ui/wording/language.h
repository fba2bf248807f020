#pragma once

// The program's language: translated patterns, numbers as the locale writes them, clock times in words people
// use, and the section of a rule in the plan's edition.

#include <QtCore/QLocale>
#include <QtCore/QString>

#include "core/code/citations.h"
#include "core/message/message.h"
#include "core/plan/plan.h"
#include "core/quantity/verdict.h"
#include "ui/wording/units.h"

namespace stayalight {

/// How numbers are written: as the language does, or "1,200.5" or "1.200,5" whatever the language.
enum class NumberForm : std::uint8_t { ofLanguage, point, comma };

class ProgramLanguage : public Language {
 public:
  explicit ProgramLanguage(QLocale locale = QLocale(QLocale::English, QLocale::UnitedStates),
                           Edition edition = Edition::y2023, bool codeCovered = true,
                           const Tables& tables = publishedTables());
  /// Edition and country as the plan says.
  void follow(const Plan& plan);
  void setNumberForm(NumberForm form);
  void setUnits(UnitSystem units) { units_ = units; }
  [[nodiscard]] UnitSystem units() const { return units_; }

  [[nodiscard]] std::string pattern(MessageId id) const override;
  [[nodiscard]] int pluralForm(std::int64_t count) const override;
  [[nodiscard]] std::string number(double value, int decimals) const override;  ///< "1,200.5"
  [[nodiscard]] std::string clock(ClockTime time) const override;  ///< "6 p.m.", "6:15 a.m.", "noon"
  /// "210.4(A)"; "practice" and "listed instructions" where no section stands; nothing of NFPA 70 for a site
  /// it does not cover.
  [[nodiscard]] std::string citation(RuleId rule) const override;
  [[nodiscard]] Figure inUnits(const Figure& figure) const override;
  [[nodiscard]] std::string inUnits(const std::string& text) const override;
  [[nodiscard]] QString monthName(int month) const;  ///< "January"; 1 to 12

 private:
  QLocale locale_;
  QLocale numbers_;
  Edition edition_;
  bool codeCovered_;
  const Tables* tables_;
  UnitSystem units_ = UnitSystem::us;
};

/// In the units of the language.
[[nodiscard]] QString words(const Message& message, const Language& language);
/// A text of the table without arguments, or with some: words(language, kSpaces, "3", std::int64_t{2}).
template <class... Arguments>
[[nodiscard]] QString words(const Language& language, MessageId id, Arguments&&... arguments) {
  return words(say(id, std::forward<Arguments>(arguments)...), language);
}

/// "12.0 A", "1,200 W". One decimal below 100 A, whole watts.
[[nodiscard]] QString amperes(AcAmperes current, const Language& language);
[[nodiscard]] QString watts(Watts power, const Language& language);
/// "14 h 30".
[[nodiscard]] QString duration(Hours time, const Language& language);
/// To the nearest half: "14½", "12".
[[nodiscard]] QString halfHours(Hours time, const Language& language);
/// No line break within a clock time: for the few lines that are set large.
[[nodiscard]] QString clocksUnbroken(QString text, const Language& language);
[[nodiscard]] QString gradeName(Grade grade, const Language& language);
[[nodiscard]] QString verdictName(Verdict verdict, const Language& language);

}  // namespace stayalight
