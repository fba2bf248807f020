#pragma once

#include "core/plan/panel.h"

namespace stayalight {

/// How much of its space (or two spaces) a breaker takes. A tandem is an `a` and a `b` in one space, upper
/// half first. In a quad or triplex over two rows the outer two-pole takes the upper half of the first row
/// and the lower half of the second, the inner one the two halves between; so each lies on opposite legs.
enum class Half : std::uint8_t { whole, a, b, outer, inner };
template <>
struct ChoiceWords<Half> {
  static constexpr std::array<std::string_view, 5> words = {"whole", "a", "b", "outer", "inner"};
};

enum class Tie : std::uint8_t { none, handleTie, commonTrip };
template <>
struct ChoiceWords<Tie> {
  static constexpr std::array<std::string_view, 3> words = {"none", "handle_tie", "common_trip"};
};

enum class Protection : std::uint8_t { none, afci, gfci, dual };
template <>
struct ChoiceWords<Protection> {
  static constexpr std::array<std::string_view, 4> words = {"none", "afci", "gfci", "dual"};
};

/// What hangs on a breaker. Which circuit is said by the circuit itself.
enum class Feeds : std::uint8_t {
  circuit,
  nothing,
  feeder,
  inverterInput,
  inverterOutput,
  solar,
  generator,
  utility,
  surgeDevice
};
template <>
struct ChoiceWords<Feeds> {
  static constexpr std::array<std::string_view, 9> words = {
      "circuit", "nothing",   "feeder",  "inverter_input", "inverter_output",
      "solar",   "generator", "utility", "surge_device"};
};

/// Part a breaker plays in the change. Before the work stand existing, left in place and removed; after it
/// existing, left in place and new.
enum class Stage : std::uint8_t { existing, leftInPlace, fresh, removed };
template <>
struct ChoiceWords<Stage> {
  static constexpr std::array<std::string_view, 4> words = {"existing", "left_in_place", "new", "removed"};
};

struct Breaker : Record {
  BreakerId id;
  PanelId panel;
  Choice<Column> column = Column::left;
  std::int32_t row = 1;  ///< of its first pole
  Choice<Half> half = Half::whole;
  std::int32_t poles = 1;  ///< 1 or 2; a two-pole takes this row and the next of its column
  RatingAmperes rating{20};
  Choice<Answer> ratingRead = Answer::yes;  ///< off the handle; else the rating is assumed until somebody has
  Choice<Feeds> feeds = Feeds::circuit;
  PanelId feedsPanel;  ///< for a feeder: the panel it goes to
  Choice<Stage> stage = Stage::existing;
  Choice<Tie> tie = Tie::none;  ///< of a single-pole with its neighbour; a two-pole has a common trip
  Choice<Protection> protection = Protection::none;
  std::string listingLine;
  Choice<Answer> backFed = Answer::no;     ///< a source feeds the bus through it
  std::optional<AcAmperes> sourceCurrent;  ///< greatest continuous output of a source behind it
  Choice<Answer> holdDown = Answer::unknown;
  Choice<Answer> interlocked =
      Answer::unknown;  ///< a listed interlock keeps it from closing with the other source
  std::optional<AcAmperes> interruptingRating;
  std::string notes;

  [[nodiscard]] SpacePosition position() const { return {column.valueOr(Column::left), row}; }
  friend bool operator==(const Breaker&, const Breaker&) = default;
};

}  // namespace stayalight
