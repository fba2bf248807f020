#pragma once

#include "core/plan/identity.h"
#include "core/plan/record.h"

namespace stayalight {

enum class Column : std::uint8_t { left, right };
template <>
struct ChoiceWords<Column> {
  static constexpr std::array<std::string_view, 2> words = {"left", "right"};
};

/// Where a space is in the enclosure: its column and its row, counted from 1 at the top. The number printed
/// beside it is another thing; see core/panel/spaces.h.
struct SpacePosition {
  Column column = Column::left;
  std::int32_t row = 1;
  friend constexpr auto operator<=>(const SpacePosition&, const SpacePosition&) = default;
};

enum class PanelRole : std::uint8_t { main, subpanel, backup };
template <>
struct ChoiceWords<PanelRole> {
  static constexpr std::array<std::string_view, 3> words = {"main", "subpanel", "backup"};
};

/// How the spaces are numbered: odd left and even right, row by row; or down the left column and on down the
/// right.
enum class Numbering : std::uint8_t { oddEven, downColumns };
template <>
struct ChoiceWords<Numbering> {
  static constexpr std::array<std::string_view, 2> words = {"odd_even", "down_columns"};
};

enum class LegOverride : std::uint8_t { byRow, l1, l2 };
template <>
struct ChoiceWords<LegOverride> {
  static constexpr std::array<std::string_view, 3> words = {"by_row", "l1", "l2"};
};

/// Whether one space takes a tandem (two half-width breakers on one stab).
enum class TandemRule : std::uint8_t { asPanel, accepted, notAccepted };
template <>
struct ChoiceWords<TandemRule> {
  static constexpr std::array<std::string_view, 3> words = {"as_panel", "accepted", "not_accepted"};
};

/// What differs from the rule at one space: its printed number, its measured leg, whether it takes a tandem.
struct Space : Record {
  Choice<Column> column = Column::left;
  std::int32_t row = 1;
  std::string printedNumber;  ///< empty: by the panel's numbering
  Choice<LegOverride> leg = LegOverride::byRow;
  Choice<TandemRule> tandem = TandemRule::asPanel;
  friend bool operator==(const Space&, const Space&) = default;
};

/// By which rule the bus of a panel with a second source on it is large enough (705.12).
enum class BusOption : std::uint8_t { notChosen, anywhere, oppositeEnds, sumOfBreakers };
template <>
struct ChoiceWords<BusOption> {
  static constexpr std::array<std::string_view, 4> words = {"not_chosen", "anywhere", "opposite_ends",
                                                            "sum_of_breakers"};
};
/// Where the panel's ordinary supply comes onto its bus.
enum class FeedEnd : std::uint8_t { top, bottom, centre };
template <>
struct ChoiceWords<FeedEnd> {
  static constexpr std::array<std::string_view, 3> words = {"top", "bottom", "centre"};
};

struct Panel : Record {
  PanelId id;
  std::string name;
  Choice<PanelRole> role = PanelRole::main;
  std::int32_t spaces = 20;  ///< both columns together, 4 to 84
  Choice<Numbering> numbering = Numbering::oddEven;
  std::vector<Space> exceptions;  ///< only spaces that differ from the rule
  Choice<Answer> legsMeasured =
      Answer::unknown;                       ///< the leg of each space was measured, not taken by its row
  Choice<Answer> tandems = Answer::unknown;  ///< does the panel take tandems where nothing else is said
  std::optional<std::int32_t> poleMaximum;   ///< most breaker poles the label allows
  std::optional<RatingAmperes> busRating;
  Choice<FeedEnd> feedEnd = FeedEnd::top;
  Choice<BusOption> busOption = BusOption::notChosen;
  std::optional<RatingAmperes> mainBreaker;        ///< none: main lugs only
  Choice<Answer> holdDown = Answer::unknown;       ///< a back-fed main breaker has its retainer
  bool mainBackFed = false;                        ///< the main is a plug-in breaker fed backwards
  Choice<Answer> neutralBonded = Answer::unknown;  ///< neutral and ground are joined in this enclosure
  PanelId fedFrom;                                 ///< panel ahead of this one; none for the service panel
  std::string listingLine;                         ///< breaker line the panel is listed for
  std::optional<std::int32_t> neutralTerminals;
  std::optional<SquareInches> wiringSpace;       ///< cross-section of the gutter where conductors are spliced
  Choice<Answer> terminals75 = Answer::unknown;  ///< marked for 75 C conductors
  std::optional<AcAmperes> interruptingRating;
  bool separateBuilding = false;
  Choice<Answer> groundingElectrode =
      Answer::unknown;  ///< of a separate building: its electrodes are joined here
  Choice<Answer> buildingDisconnect = Answer::unknown;  ///< and its supply is disconnected there
  std::string place;
  std::string notes;
  friend bool operator==(const Panel&, const Panel&) = default;
};

}  // namespace stayalight
