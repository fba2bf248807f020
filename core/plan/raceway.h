#pragma once

// What moved circuits and feeders run through between the panels, and the boxes they are spliced in.

#include "core/plan/identity.h"
#include "core/plan/record.h"

namespace stayalight {

enum class RacewayType : std::uint8_t { emt, pvc40, pvc80, flexibleMetal, liquidtightFlexibleMetal };
template <>
struct ChoiceWords<RacewayType> {
  static constexpr std::array<std::string_view, 5> words = {"emt", "pvc_40", "pvc_80", "flexible_metal",
                                                            "liquidtight_flexible_metal"};
};

/// Trade size, in inches by name only.
enum class TradeSize : std::uint8_t { half, threeQuarters, one, oneQuarter, oneHalf, two, twoHalf, three };
template <>
struct ChoiceWords<TradeSize> {
  static constexpr std::array<std::string_view, 8> words = {"1/2",   "3/4", "1",     "1-1/4",
                                                            "1-1/2", "2",   "2-1/2", "3"};
};

/// How the equipment ground runs along: one wire for all circuits in it, one for each, or the raceway itself.
enum class GroundPath : std::uint8_t { oneWire, oneEach, raceway };
template <>
struct ChoiceWords<GroundPath> {
  static constexpr std::array<std::string_view, 3> words = {"one_wire", "one_each", "raceway"};
};

/// Insulation of single wires in a raceway; both are good for 90 C.
enum class WireType : std::uint8_t { thwn2, xhhw2 };
template <>
struct ChoiceWords<WireType> {
  static constexpr std::array<std::string_view, 2> words = {"thwn_2", "xhhw_2"};
};

struct Raceway : Record {
  RacewayId id;
  std::string name;
  Choice<RacewayType> type = RacewayType::emt;
  Choice<TradeSize> size = TradeSize::one;
  Length length;  ///< between the enclosures; 0: not measured, counts as longer than a nipple
  Temperature ambient = Temperature::milliCelsius(30000);
  Choice<GroundPath> ground = GroundPath::oneWire;
  std::int32_t otherCarrying = 0;         ///< current-carrying conductors in it that this plan does not hold
  std::optional<SquareInches> otherArea;  ///< area of all such conductors
  std::string notes;
  friend bool operator==(const Raceway&, const Raceway&) = default;
};

/// A standard metal box, or one that is marked with its volume.
enum class BoxKind : std::uint8_t {
  marked,
  round4Shallow,
  round4,
  round4Deep,
  square4Shallow,
  square4,
  square4Deep,
  square5Shallow,
  square5,
  square5Deep
};
template <>
struct ChoiceWords<BoxKind> {
  static constexpr std::array<std::string_view, 10> words = {"marked",
                                                             "round_4_1_1/4",
                                                             "round_4_1_1/2",
                                                             "round_4_2_1/8",
                                                             "square_4_1_1/4",
                                                             "square_4_1_1/2",
                                                             "square_4_2_1/8",
                                                             "square_4_11/16_1_1/4",
                                                             "square_4_11/16_1_1/2",
                                                             "square_4_11/16_2_1/8"};
};

struct SpliceBox : Record {
  SpliceBoxId id;
  std::string name;
  std::string place;
  Choice<BoxKind> kind = BoxKind::marked;
  std::optional<CubicInches> volume;              ///< as marked, with its extension rings
  Choice<Answer> clampsInside = Answer::unknown;  ///< cable clamps inside the box
  std::int32_t devices = 0;                       ///< yokes of receptacles or switches in it
  std::string notes;
  friend bool operator==(const SpliceBox&, const SpliceBox&) = default;
};

/// Where a moved circuit's old conductors meet the new ones.
enum class Splice : std::uint8_t { unknown, inPanel, inBox, none };
template <>
struct ChoiceWords<Splice> {
  static constexpr std::array<std::string_view, 4> words = {"unknown", "in_panel", "in_box", "none"};
};

}  // namespace stayalight
