#pragma once

#include "core/plan/record.h"

namespace stayalight {

enum class Country : std::uint8_t { unitedStates, canada };
template <>
struct ChoiceWords<Country> {
  static constexpr std::array<std::string_view, 2> words = {"united_states", "canada"};
};

/// The voltages of the service. 120/208 is two legs of a wye and never treated as split phase.
enum class ServiceSystem : std::uint8_t { splitPhase120_240, wye120_208, threePhase };
template <>
struct ChoiceWords<ServiceSystem> {
  static constexpr std::array<std::string_view, 3> words = {"120/240", "120/208", "three_phase"};
};

/// Order of the two phases of a 120/208 service: L2 lags L1 by 120 degrees, or leads it. Unknown: the worse
/// is taken.
enum class WyeOrder : std::uint8_t { unknown, l2Lags, l2Leads };
template <>
struct ChoiceWords<WyeOrder> {
  static constexpr std::array<std::string_view, 3> words = {"unknown", "l2_lags", "l2_leads"};
};

enum class CodeEdition : std::uint8_t { y2017, y2020, y2023, y2026 };
template <>
struct ChoiceWords<CodeEdition> {
  static constexpr std::array<std::string_view, 4> words = {"2017", "2020", "2023", "2026"};
};

enum class PaperSize : std::uint8_t { letter, a4 };
template <>
struct ChoiceWords<PaperSize> {
  static constexpr std::array<std::string_view, 2> words = {"letter", "a4"};
};

/// For the rules that name one- and two-family dwellings.
enum class DwellingKind : std::uint8_t { unknown, oneOrTwoFamily, other };
template <>
struct ChoiceWords<DwellingKind> {
  static constexpr std::array<std::string_view, 3> words = {"unknown", "one_or_two_family", "other"};
};

/// What a typed maximum demand rests on: a year of the utility's demand data, or a recording of 30 days.
enum class DemandPeriod : std::uint8_t { unknown, oneYear, thirtyDays };
template <>
struct ChoiceWords<DemandPeriod> {
  static constexpr std::array<std::string_view, 3> words = {"unknown", "one_year", "thirty_days"};
};

/// What the authority having jurisdiction answered to a question.
struct AuthorityAnswer : Record {
  std::string question;
  std::string answer;  ///< empty: asked, not answered yet
  std::string who;
  std::string when;  ///< ISO date
  Choice<Answer> inWriting = Answer::unknown;
  friend bool operator==(const AuthorityAnswer&, const AuthorityAnswer&) = default;
};

/// The house, its service, the adopted code and what the title block of a sheet says.
struct Site : Record {
  std::string name;
  Choice<Country> country = Country::unitedStates;
  std::optional<Degrees> latitude;   ///< -90 to 90, north positive
  std::optional<Degrees> longitude;  ///< -180 to 180, east positive
  std::optional<Hours> utcOffset;    ///< of standard time, -12 to 14
  bool daylightSaving = true;
  Choice<ServiceSystem> service = ServiceSystem::splitPhase120_240;
  Choice<WyeOrder> wyeOrder = WyeOrder::unknown;
  std::optional<RatingAmperes> serviceRating;
  std::optional<AcAmperes> availableFaultCurrent;  ///< from the utility, at the service
  std::optional<SquareFeet> floorArea;
  Choice<DwellingKind> dwelling = DwellingKind::unknown;
  std::optional<std::int32_t> smallApplianceCircuits;  ///< that the dwelling has; none: those of the plan
  std::optional<std::int32_t> laundryCircuits;
  std::optional<VoltAmperes> maximumDemand;  ///< of the service, from its own meter
  Choice<DemandPeriod> demandPeriod = DemandPeriod::unknown;
  Choice<Answer> demandGross = Answer::unknown;  ///< no solar, wind or battery made it smaller
  Choice<Answer> demandSeason =
      Answer::unknown;  ///< the larger of heating and cooling is in it (asked of a 30-day recording)
  Choice<CodeEdition> edition = CodeEdition::y2023;
  std::string amendments;  ///< local amendments, as the authority names them
  std::string permitDate;  ///< ISO date
  std::string permitNumber;
  std::vector<AuthorityAnswer> answers;
  std::string customer;
  std::string firm;
  std::string licence;
  std::string drawnBy;
  std::string sheetDate;  ///< ISO date that the sheets carry
  std::string revision;   ///< "1, proposed"
  Choice<PaperSize> paper = PaperSize::letter;
  std::string notes;
  friend bool operator==(const Site&, const Site&) = default;
};

}  // namespace stayalight
