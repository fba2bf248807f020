// Breakers and their places, what a panel is listed for, and its directory.

#include <algorithm>
#include <cctype>
#include <map>

#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kPlanBypass{"practice.bypass"};
constexpr RuleId kTwoPoleLegs{"practice.two_pole_legs"};
constexpr RuleId kSpaceOnce{"practice.space_once"};
constexpr RuleId kTandem{"breaker.tandem"};
constexpr RuleId kListing{"breaker.listing"};
constexpr RuleId kOldBreaker{"practice.old_breaker"};
constexpr RuleId kBlank{"directory.blank"};
constexpr RuleId kDirectory{"directory.circuits"};
constexpr RuleId kProtection{"panel.protection"};
constexpr RuleId kSurge{"feeder.surge"};
constexpr RuleId kSurgeOutside{"feeder.surge_outside"};
constexpr RuleId kSpareSpaces{"practice.spare_spaces"};

constexpr MessageId kNoBypassPlain{"review.bypass.no_breaker.plain"};
constexpr MessageId kNoBypassTrade{"review.bypass.no_breaker.trade"};
constexpr MessageId kRoomPlain{"review.panel.supply_room.plain"};
constexpr MessageId kRoomTrade{"review.panel.supply_room.trade"};
constexpr MessageId kPlacePlain{"review.panel.supply_place.plain"};
constexpr MessageId kPlaceTrade{"review.panel.supply_place.trade"};
constexpr MessageId kOrderPlain{"review.panel.supply_order.plain"};
constexpr MessageId kOrderTrade{"review.panel.supply_order.trade"};
constexpr MessageId kOneLegPlain{"review.place.two_pole_leg.plain"};
constexpr MessageId kOneLegTrade{"review.place.two_pole_leg.trade"};
constexpr MessageId kOverlapPlain{"review.place.overlap.plain"};
constexpr MessageId kOverlapTrade{"review.place.overlap.trade"};
constexpr MessageId kOutsidePlain{"review.place.outside.plain"};
constexpr MessageId kOutsideTrade{"review.place.outside.trade"};
constexpr MessageId kTandemNoPlain{"review.place.tandem.plain"};
constexpr MessageId kTandemNoTrade{"review.place.tandem.trade"};
constexpr MessageId kTandemUnknownPlain{"review.place.tandem_unknown.plain"};
constexpr MessageId kTandemUnknownTrade{"review.place.tandem_unknown.trade"};
constexpr MessageId kPolesPlain{"review.place.pole_maximum.plain"};
constexpr MessageId kPolesTrade{"review.place.pole_maximum.trade"};
constexpr MessageId kListingPlain{"review.place.listing.plain"};
constexpr MessageId kListingTrade{"review.place.listing.trade"};
constexpr MessageId kOldPlain{"review.directory.old_breaker.plain"};
constexpr MessageId kOldTrade{"review.directory.old_breaker.trade"};
constexpr MessageId kBlankPlain{"review.directory.blank.plain"};
constexpr MessageId kBlankTrade{"review.directory.blank.trade"};
constexpr MessageId kWordsPlain{"review.directory.words.plain"};
constexpr MessageId kWordsTrade{"review.directory.words.trade"};
constexpr MessageId kTwicePlain{"review.directory.twice.plain"};
constexpr MessageId kTwiceTrade{"review.directory.twice.trade"};
constexpr MessageId kMainPlain{"review.panel.main_over_bus.plain"};
constexpr MessageId kMainTrade{"review.panel.main_over_bus.trade"};
constexpr MessageId kSurgePlain{"review.panel.surge.plain"};
constexpr MessageId kSurgeTrade{"review.panel.surge.trade"};
constexpr MessageId kSparePlain{"review.panel.spare_spaces.plain"};
constexpr MessageId kSpareTrade{"review.panel.spare_spaces.trade"};

// Share of a new panel left free: common practice, no source (20 to 30 %).
constexpr double kSpareShare = 0.2;

bool isFresh(const Breaker& breaker) { return breaker.stage.is(Stage::fresh); }

std::string lowered(std::string_view text) {
  std::string out;
  bool gap = false;
  for (const char c : text) {
    if (std::isspace(static_cast<unsigned char>(c)) != 0) {
      gap = !out.empty();
      continue;
    }
    if (gap) out += ' ';
    gap = false;
    out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return out;
}

void places(const ReviewInput& in, Findings& out) {
  for (const auto& panel : in.plan.panels) {
    const std::vector<Occupant> standing = occupants(in.plan, panel->id, Reading::planned);
    std::map<HalfSpace, BreakerId> taken;
    for (const Occupant& occupant : standing) {
      const Breaker& breaker = *find(in.plan, occupant.breaker);
      const std::string spaces = spacesOf(in.plan, breaker);
      const std::vector<SpacePosition> poles = poleSpaces(occupant.placement);
      if (std::any_of(poles.begin(), poles.end(), [&](SpacePosition p) { return !hasSpace(*panel, p); })) {
        out.add("place.outside", Severity::mustFix, kSpaceOnce, say(kOutsidePlain, nameOf(*panel)),
                say(kOutsideTrade, nameOf(*panel), spaces), {at(breaker)});
        continue;
      }
      const std::vector<Leg> legs = poleLegs(*panel, occupant.placement);
      if (legs.size() == 2 && legs[0] == legs[1]) {
        out.add("place.two_pole_leg", Severity::mustFix, kTwoPoleLegs,
                say(kOneLegPlain, nameOf(*panel), spaces),
                say(kOneLegTrade, nameOf(*panel), spaces, std::string(legName(legs[0]))), {at(breaker)});
      }
      for (const HalfSpace& half : coveredHalves(occupant.placement)) {
        const auto [there, free] = taken.emplace(half, breaker.id);
        if (free || there->second == breaker.id) continue;
        out.add("place.overlap", Severity::mustFix, kSpaceOnce,
                say(kOverlapPlain, nameOf(*panel), printedNumber(*panel, half.position)),
                say(kOverlapTrade, nameOf(*panel), printedNumber(*panel, half.position)),
                {at(breaker), {RecordKind::breaker, there->second.number}});
        break;
      }
    }
  }
}

void tandems(const ReviewInput& in, Findings& out) {
  for (const auto& breaker : in.plan.breakers) {
    const Panel* panel = find(in.plan, breaker->panel);
    if (panel == nullptr || !stands(*breaker, Reading::planned) || breaker->half.is(Half::whole)) continue;
    Answer takes = Answer::yes;
    for (const SpacePosition space : poleSpaces(placementOf(*breaker))) {
      if (!hasSpace(*panel, space)) continue;
      const Answer here = takesTandem(*panel, space);
      if (here == Answer::no || (here == Answer::unknown && takes == Answer::yes)) takes = here;
    }
    const std::string spaces = spacesOf(in.plan, *breaker);
    if (takes == Answer::no) {
      out.add("place.tandem", isFresh(*breaker) ? Severity::mustFix : Severity::checkOnSite, kTandem,
              say(kTandemNoPlain, nameOf(*panel), spaces), say(kTandemNoTrade, nameOf(*panel), spaces),
              {at(*breaker)});
    } else if (takes == Answer::unknown && isFresh(*breaker)) {
      out.add("place.tandem_unknown", Severity::checkOnSite, kTandem,
              say(kTandemUnknownPlain, nameOf(*panel), spaces),
              say(kTandemUnknownTrade, nameOf(*panel), spaces), {at(*breaker)});
    }
  }
}

void polesAndListing(const ReviewInput& in, Findings& out) {
  for (const auto& panel : in.plan.panels) {
    std::int32_t poles = 0;
    bool fresh = false;
    for (const auto& breaker : in.plan.breakers) {
      if (breaker->panel != panel->id || !stands(*breaker, Reading::planned)) continue;
      poles += breaker->poles;
      fresh = fresh || isFresh(*breaker);
      const std::string line = lowered(breaker->listingLine), wanted = lowered(panel->listingLine);
      if (line.empty() || wanted.empty() || line == wanted) continue;
      out.add("place.listing", isFresh(*breaker) ? Severity::mustFix : Severity::checkOnSite, kListing,
              say(kListingPlain, nameOf(*panel), spacesOf(in.plan, *breaker)),
              say(kListingTrade, nameOf(*panel), spacesOf(in.plan, *breaker), breaker->listingLine,
                  panel->listingLine),
              {at(*breaker)});
    }
    if (panel->poleMaximum && poles > *panel->poleMaximum) {
      out.add("place.pole_maximum", fresh ? Severity::mustFix : Severity::checkOnSite, kTandem,
              say(kPolesPlain, nameOf(*panel)),
              say(kPolesTrade, nameOf(*panel), static_cast<std::int64_t>(poles),
                  static_cast<std::int64_t>(*panel->poleMaximum)),
              {at(*panel)});
    }
  }
}

/// A main breaker larger than its bus protects it no more. In the house's own panels it may be misread.
void mainAndBus(const ReviewInput& in, Findings& out) {
  if (canadian(in.plan)) return;
  for (const auto& panel : in.plan.panels) {
    if (!panel->mainBreaker || !panel->busRating || *panel->mainBreaker <= *panel->busRating) continue;
    out.add("panel.main_over_bus",
            panel->role.is(PanelRole::backup) ? Severity::mustFix : Severity::checkOnSite, kProtection,
            say(kMainPlain, nameOf(*panel)),
            say(kMainTrade, nameOf(*panel), Figure{static_cast<double>(panel->mainBreaker->count()), "A", 0},
                Figure{static_cast<double>(panel->busRating->count()), "A", 0}),
            {at(*panel)});
  }
}

/// Spaces that moved circuits leave: the old breaker stays as a spare, or the opening is closed.
void leftSpaces(const ReviewInput& in, Findings& out) {
  for (const auto& panel : in.plan.panels) {
    std::vector<std::string> spares, blanks;
    std::vector<EntityRef> sparePlaces, blankPlaces;
    for (const auto& breaker : in.plan.breakers) {
      if (breaker->panel != panel->id) continue;
      if (breaker->stage.is(Stage::leftInPlace) &&
          circuitOn(in.plan, breaker->id, Reading::planned) == nullptr) {
        spares.push_back(spacesOf(in.plan, *breaker));
        sparePlaces.push_back(at(*breaker));
      } else if (breaker->stage.is(Stage::removed)) {
        const std::vector<SpacePosition> poles = poleSpaces(placementOf(*breaker));
        const bool empty = std::any_of(poles.begin(), poles.end(), [&](SpacePosition p) {
          return hasSpace(*panel, p) && breakersAt(in.plan, panel->id, p, Reading::planned).empty();
        });
        if (!empty) continue;
        blanks.push_back(spacesOf(in.plan, *breaker));
        blankPlaces.push_back(at(*breaker));
      }
    }
    if (!spares.empty()) {
      out.add("directory.old_breaker", Severity::advice, kOldBreaker,
              say(kOldPlain, nameOf(*panel), listed(spares)), say(kOldTrade, nameOf(*panel), listed(spares)),
              sparePlaces);
    }
    if (!blanks.empty()) {
      out.add("directory.blank", Severity::advice, kBlank, say(kBlankPlain, nameOf(*panel), listed(blanks)),
              say(kBlankTrade, nameOf(*panel), listed(blanks)), blankPlaces);
    }
  }
}

const std::string& directoryText(const Circuit& circuit) {
  return circuit.serves.empty() ? circuit.name : circuit.serves;
}

void directory(const ReviewInput& in, Findings& out) {
  std::map<std::pair<PanelId, std::string>, const Circuit*> seen;
  for (const auto& circuit : in.plan.circuits) {
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const Panel* panel = breaker != nullptr ? find(in.plan, breaker->panel) : nullptr;
    if (panel == nullptr) continue;
    // The backup subpanel's directory is new; an old panel's is asked for with less weight.
    const Severity severity = backedUp(in.plan, *circuit) ? Severity::mustFix : Severity::advice;
    const std::string& text = directoryText(*circuit);
    const std::string spaces = spacesOf(in.plan, *breaker);
    if (const std::optional<Message> fault = directoryFault(text)) {
      out.add("directory.words", severity, kDirectory, say(kWordsPlain, spaces, std::vector<Message>{*fault}),
              say(kWordsTrade, nameOf(*panel), spaces, std::vector<Message>{*fault}), {at(*circuit)});
      continue;
    }
    const auto [other, first] = seen.emplace(std::pair(breaker->panel, lowered(text)), &*circuit);
    if (first || other->second->planned == circuit->planned) continue;
    out.add("directory.twice", severity, kDirectory, say(kTwicePlain, text),
            say(kTwiceTrade, text, spacesOf(in.plan, *find(in.plan, other->second->planned)), spaces),
            {at(*circuit), at(*other->second)});
  }
}

void backupItself(const ReviewInput& in, Findings& out) {
  const Panel* backup = backupPanel(in.plan);
  if (backup == nullptr) return;
  const std::vector<Occupant> standing = occupants(in.plan, backup->id, Reading::planned);
  if (standing.empty()) return;
  const bool asked = !canadian(in.plan) && (in.edition == Edition::y2023 || in.edition == Edition::y2026);
  const bool surge = std::any_of(standing.begin(), standing.end(), [&](const Occupant& o) {
    return find(in.plan, o.breaker)->feeds.is(Feeds::surgeDevice);
  });
  if (asked && !surge) {
    out.add("panel.surge", Severity::checkOnSite, backup->separateBuilding ? kSurgeOutside : kSurge,
            say(kSurgePlain), say(kSurgeTrade), {at(*backup)});
  }
  const std::int32_t free = freeSpaces(in.plan, backup->id);
  if (free < kSpareShare * backup->spaces) {
    out.add("panel.spare_spaces", Severity::advice, kSpareSpaces, say(kSparePlain),
            say(kSpareTrade, static_cast<std::int64_t>(free), static_cast<std::int64_t>(backup->spaces)),
            {at(*backup)});
  }
}

/// Room for the breakers of the supply in the panel ahead, and what the work there leaves without supply.
void supplyPlaces(const ReviewInput& in, Findings& out) {
  if (in.supplyPlaces == nullptr) return;
  const Panel* panel = panelAhead(in.plan);
  for (const ClearedPlace& place : *in.supplyPlaces) {
    const Breaker* breaker = find(in.plan, place.breaker);
    const std::vector<EntityRef> where{breaker != nullptr ? at(*breaker) : at(*panel)};
    const std::vector<Message> what{stayalight::nameOf(in.plan, place)};
    if (place.refusal) {
      out.add("panel.supply_room", Severity::mustFix, {}, say(kRoomPlain, nameOf(*panel), what),
              say(kRoomTrade, std::vector<Message>{*place.refusal}), where);
      continue;
    }
    const std::string spaces = spaceNames(*panel, *place.place);
    if (place.bypass && breaker == nullptr) {
      out.add("bypass.no_breaker", Severity::checkOnSite, kPlanBypass, say(kNoBypassPlain, nameOf(*panel)),
              say(kNoBypassTrade, nameOf(*panel), spaces), {at(*panel), at(RecordKind::transfer)});
    }
    std::vector<Message> steps;
    std::vector<std::string> dark;
    for (const ClearingStep& step : place.steps) {
      steps.push_back(instruction(in.plan, step));
      for (const CircuitId circuit : step.dark) dark.push_back(nameOf(*find(in.plan, circuit)));
    }
    if (steps.empty()) continue;
    if (breaker == nullptr) {
      out.add("panel.supply_place", Severity::checkOnSite, {}, say(kPlacePlain, nameOf(*panel), what, spaces),
              say(kPlaceTrade, nameOf(*panel), spaces, steps), where);
    } else if (!dark.empty()) {
      out.add("panel.supply_order", Severity::advice, {}, say(kOrderPlain, listed(dark)),
              say(kOrderTrade, what, spaces, steps), where);
    }
  }
}

constexpr Rule kRules[] = {places,     tandems,   polesAndListing, mainAndBus,
                           leftSpaces, directory, backupItself,    supplyPlaces};

}  // namespace

std::span<const Rule> panelRules() { return kRules; }

}  // namespace stayalight::reviewing
