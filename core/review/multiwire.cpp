// Shared neutrals: both hots in one panel, on opposite legs, opened together, tripped together where it
// matters.

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>

#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kSamePanel{"multiwire.same_panel"};
constexpr RuleId kVoltageBetween{"multiwire.voltage_between"};
constexpr RuleId kDisconnect{"multiwire.disconnect"};
constexpr RuleId kCommonTrip{"multiwire.common_trip"};
constexpr RuleId kListing{"breaker.listing"};
constexpr RuleId kTogether{"multiwire.grouping"};
constexpr RuleId kTogetherInSteel{"neutral.grouped_in_steel"};

constexpr MessageId kSplitPlain{"review.multiwire.split.plain"};
constexpr MessageId kSplitTrade{"review.multiwire.split.trade"};
constexpr MessageId kMoveBoth{"review.multiwire.split.fix"};
constexpr MessageId kKeepBoth{"review.multiwire.split.other_fix"};
constexpr MessageId kPartnerPlain{"review.multiwire.partner.plain"};
constexpr MessageId kPartnerTrade{"review.multiwire.partner.trade"};
constexpr MessageId kLegPlain{"review.multiwire.leg.plain"};
constexpr MessageId kLegTrade{"review.multiwire.leg.trade"};
constexpr MessageId kTandemPlain{"review.multiwire.tandem.plain"};
constexpr MessageId kTandemTrade{"review.multiwire.tandem.trade"};
constexpr MessageId kRelocateFix{"review.multiwire.leg.fix"};
constexpr MessageId kDisconnectPlain{"review.multiwire.disconnect.plain"};
constexpr MessageId kDisconnectTrade{"review.multiwire.disconnect.trade"};
constexpr MessageId kOldDisconnectPlain{"review.multiwire.disconnect_existing.plain"};
constexpr MessageId kOldDisconnectTrade{"review.multiwire.disconnect_existing.trade"};
constexpr MessageId kTieFix{"review.multiwire.disconnect.fix"};
constexpr MessageId kApartPlain{"review.multiwire.apart.plain"};
constexpr MessageId kApartTrade{"review.multiwire.apart.trade"};
constexpr MessageId kCommonTripPlain{"review.multiwire.common_trip.plain"};
constexpr MessageId kCommonTripTrade{"review.multiwire.common_trip.trade"};
constexpr MessageId kCommonTripFix{"review.multiwire.common_trip.fix"};
constexpr MessageId kOnePolePlain{"review.multiwire.one_pole.plain"};
constexpr MessageId kOnePoleTrade{"review.multiwire.one_pole.trade"};
constexpr MessageId kOnePoleFix{"review.multiwire.one_pole.fix"};
constexpr MessageId kRacewaysPlain{"review.multiwire.raceways.plain"};
constexpr MessageId kRacewaysTrade{"review.multiwire.raceways.trade"};
constexpr MessageId kRacewaysFix{"review.multiwire.raceways.fix"};
constexpr MessageId kProtectionPlain{"review.multiwire.protection.plain"};
constexpr MessageId kProtectionTrade{"review.multiwire.protection.trade"};

/// A circuit of a group with the breaker that feeds it after the work.
struct Member {
  const Circuit* circuit;
  const Breaker* breaker;
};
/// Groups by their number; circuits that go away are no members any more.
std::map<std::int32_t, std::vector<Member>> groups(const Plan& plan) {
  std::map<std::int32_t, std::vector<Member>> found;
  for (const auto& circuit : plan.circuits) {
    if (circuit->multiwire <= 0) continue;
    if (const Breaker* breaker = plannedBreaker(plan, *circuit))
      found[circuit->multiwire].push_back({&*circuit, breaker});
  }
  return found;
}

std::vector<std::string> namesOf(const std::vector<Member>& members) {
  std::vector<std::string> all;
  for (const Member& member : members) all.push_back(nameOf(*member.circuit));
  return all;
}
std::vector<EntityRef> places(const std::vector<Member>& members) {
  std::vector<EntityRef> all;
  for (const Member& member : members) all.push_back(at(*member.circuit));
  return all;
}
std::vector<std::string> spaces(const Plan& plan, const std::vector<Member>& members) {
  std::vector<std::string> all;
  for (const Member& member : members) {
    if (member.breaker != nullptr) all.push_back(spacesOf(plan, *member.breaker));
  }
  return all;
}
bool inOnePanel(const std::vector<Member>& members) {
  return std::all_of(members.begin(), members.end(),
                     [&](const Member& m) { return m.breaker->panel == members.front().breaker->panel; });
}
bool onOneBreaker(const std::vector<Member>& members) {
  return std::all_of(members.begin(), members.end(),
                     [&](const Member& m) { return m.breaker->id == members.front().breaker->id; });
}
/// A circuit with both its hots on a two-pole breaker needs no partner.
bool wholeByItself(const Member& member) { return member.breaker->poles == 2; }

void split(const ReviewInput& in, Findings& out) {
  const Panel* backup = backupPanel(in.plan);
  for (const auto& [number, members] : groups(in.plan)) {
    if (members.size() == 1 && !wholeByItself(members.front())) {
      out.add("multiwire.partner",
              moved(in.plan, *members.front().circuit) ? Severity::mustFix : Severity::checkOnSite,
              kSamePanel, say(kPartnerPlain, nameOf(*members.front().circuit)),
              say(kPartnerTrade, nameOf(*members.front().circuit)), places(members));
    }
    if (inOnePanel(members)) continue;
    std::vector<CircuitId> stayed, there;
    std::vector<std::string> stayedNames, thereNames;
    for (const Member& member : members) {
      const bool inBackup = backup != nullptr && member.breaker->panel == backup->id;
      (inBackup ? there : stayed).push_back(member.circuit->id);
      (inBackup ? thereNames : stayedNames).push_back(nameOf(*member.circuit));
    }
    Finding& finding =
        out.add("multiwire.split", Severity::danger, kSamePanel, say(kSplitPlain, listed(namesOf(members))),
                say(kSplitTrade, listed(thereNames), listed(stayedNames)), places(members));
    if (backup != nullptr && !there.empty()) {
      out.offer(finding, fix::Move{stayed, backup->id, std::nullopt}, say(kMoveBoth));
      out.offer(finding, fix::SendBack{there}, say(kKeepBoth));
    }
  }
}

/// All conductors of a group run together: apart, the shared neutral carries more than the hots beside it
/// give back, and in steel the metal warms.
void throughTwoRaceways(const ReviewInput& in, Findings& out) {
  for (const auto& [number, members] : groups(in.plan)) {
    std::vector<std::string> names;
    std::vector<EntityRef> where = places(members);
    std::vector<RacewayId> raceways;
    std::vector<fix::SetField> together;
    bool metal = false;
    for (const Member& member : members) {
      const Raceway* raceway = find(in.plan, member.circuit->raceway);
      if (raceway == nullptr) continue;
      if (std::find(raceways.begin(), raceways.end(), raceway->id) == raceways.end()) {
        raceways.push_back(raceway->id);
        names.push_back(raceway->name);
        where.push_back({RecordKind::raceway, raceway->id.number});
      }
      metal = metal || !(raceway->type.is(RacewayType::pvc40) || raceway->type.is(RacewayType::pvc80));
      if (raceway->id != raceways.front()) {
        together.push_back(
            {at(*member.circuit), "raceway", static_cast<std::int64_t>(raceways.front().number)});
      }
    }
    if (raceways.size() < 2) continue;
    Finding& finding =
        out.add(metal ? "multiwire.raceways_metal" : "multiwire.raceways", Severity::mustFix,
                metal ? kTogetherInSteel : kTogether, say(kRacewaysPlain, listed(namesOf(members))),
                say(kRacewaysTrade, listed(namesOf(members)), listed(names)), where);
    out.offer(finding, fix::SetFields{std::move(together)}, say(kRacewaysFix, names.front()));
  }
}

/// A place for one of two hots on one leg: on the other leg, beside its partner first, where edit lets it go.
void offerOtherLeg(const ReviewInput& in, Findings& out, Finding& finding, const Breaker& mover,
                   const Breaker& partner) {
  const Panel& panel = *find(in.plan, mover.panel);
  std::vector<SpacePosition> spots;
  for (const Placement& landing : landings(in.plan, panel.id, 1, {mover.id})) {
    if (landing.half == Half::whole && legOf(panel, landing.position) != legOf(panel, partner.position())) {
      spots.push_back(landing.position);
    }
  }
  const auto beside = [&](const SpacePosition& spot) {
    return spot.column == partner.position().column && std::abs(spot.row - partner.row) == 1;
  };
  std::stable_partition(spots.begin(), spots.end(), beside);
  for (const SpacePosition& spot : spots) {
    out.offer(finding, fix::Relocate{mover.id, spot}, say(kRelocateFix, printedNumber(panel, spot)));
    if (finding.fix) return;
  }
}

void oneLeg(const ReviewInput& in, Findings& out) {
  for (const auto& [number, members] : groups(in.plan)) {
    if (members.size() < 2 || !inOnePanel(members) || onOneBreaker(members)) continue;
    const Panel* panel = find(in.plan, members.front().breaker->panel);
    if (panel == nullptr) continue;
    const Member *first = nullptr, *second = nullptr;
    for (std::size_t i = 0; i < members.size() && second == nullptr; ++i) {
      for (std::size_t j = i + 1; j < members.size() && second == nullptr; ++j) {
        if (members[i].breaker->id == members[j].breaker->id) continue;
        const std::vector<Leg> a = poleLegs(*panel, placementOf(*members[i].breaker));
        const std::vector<Leg> b = poleLegs(*panel, placementOf(*members[j].breaker));
        const bool shared = std::any_of(
            a.begin(), a.end(), [&](Leg leg) { return std::find(b.begin(), b.end(), leg) != b.end(); });
        if (shared) {
          first = &members[i];
          second = &members[j];
        }
      }
    }
    if (second == nullptr) continue;
    const std::string leg(legName(legOf(*panel, first->breaker->position())));
    const bool tandem = first->breaker->position() == second->breaker->position();
    Finding& finding = tandem ? out.add("multiwire.tandem", Severity::danger, kVoltageBetween,
                                        say(kTandemPlain, listed(namesOf(members))),
                                        say(kTandemTrade, listed(namesOf(members)), nameOf(*panel),
                                            listed(spaces(in.plan, members)), leg),
                                        places(members))
                              : out.add("multiwire.leg", Severity::danger, kVoltageBetween,
                                        say(kLegPlain, listed(namesOf(members))),
                                        say(kLegTrade, listed(namesOf(members)), nameOf(*panel),
                                            listed(spaces(in.plan, members)), leg),
                                        places(members));
    if (!tandem) {
      offerOtherLeg(in, out, finding, *second->breaker, *first->breaker);
      if (!finding.fix) offerOtherLeg(in, out, finding, *first->breaker, *second->breaker);
    }
  }
}

bool feedsLineToLine(const std::vector<Member>& members) {
  return std::any_of(members.begin(), members.end(), [](const Member& m) {
    return !m.circuit->voltage.is(VoltageClass::v120) ||
           std::any_of(m.circuit->loads.begin(), m.circuit->loads.end(),
                       [](const Load& load) { return load.connection.is(Connection::lineToLine); });
  });
}

/// Whole breakers in a row of one column, or on one breaker: what a handle tie can join.
bool sideBySide(const std::vector<Member>& members) {
  std::vector<std::int32_t> rows;
  for (const Member& member : members) {
    if (member.breaker->position().column != members.front().breaker->position().column) return false;
    for (std::int32_t pole = 0; pole < member.breaker->poles; ++pole)
      rows.push_back(member.breaker->row + pole);
  }
  std::sort(rows.begin(), rows.end());
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (rows[i] - rows[i - 1] > 1) return false;
  }
  return true;
}

void openedTogether(const ReviewInput& in, Findings& out) {
  for (const auto& [number, members] : groups(in.plan)) {
    if (members.size() < 2 || !inOnePanel(members) || onOneBreaker(members)) continue;
    const bool needsTrip = feedsLineToLine(members);
    std::vector<Member> loose, tiedOnly;
    for (const Member& member : members) {
      if (member.breaker->poles != 1) continue;
      if (member.breaker->tie.is(Tie::none)) loose.push_back(member);
      if (member.breaker->tie.is(Tie::handleTie)) tiedOnly.push_back(member);
    }
    const std::vector<Message> spaceList = listed(spaces(in.plan, members));
    // A group nobody touches may be from before the rule; one whose breakers are new may not.
    const bool touched = std::any_of(members.begin(), members.end(), [&](const Member& m) {
      return m.breaker->stage.is(Stage::fresh) || backedUp(in.plan, *m.circuit);
    });
    const char* const wanted = needsTrip ? "common_trip" : "handle_tie";
    if (!loose.empty() && !touched) {
      out.add("multiwire.disconnect_existing", Severity::advice, kDisconnect,
              say(kOldDisconnectPlain, listed(namesOf(members))),
              say(kOldDisconnectTrade, listed(namesOf(members)), spaceList), places(members));
    } else if (!loose.empty()) {
      Finding& finding = out.add("multiwire.disconnect", Severity::mustFix, kDisconnect,
                                 say(kDisconnectPlain, listed(namesOf(members))),
                                 say(kDisconnectTrade, listed(namesOf(members)), spaceList), places(members));
      if (!needsTrip && sideBySide(members)) {
        fix::SetFields ties;
        for (const Member& member : loose)
          ties.fields.push_back({at(*member.breaker), "tie", std::string(wanted)});
        out.offer(finding, ties, say(kTieFix));
      }
    } else if (!sideBySide(members) && touched) {
      out.add("multiwire.apart", Severity::mustFix, kDisconnect, say(kApartPlain, listed(namesOf(members))),
              say(kApartTrade, listed(namesOf(members)), spaceList), places(members));
    }
    if (needsTrip && touched && (!tiedOnly.empty() || !loose.empty())) {
      Finding& finding = out.add("multiwire.common_trip", Severity::mustFix, kCommonTrip,
                                 say(kCommonTripPlain, listed(namesOf(members))),
                                 say(kCommonTripTrade, listed(namesOf(members)), spaceList), places(members));
      if (sideBySide(members)) {
        fix::SetFields ties;
        for (const Member& member : members) {
          if (member.breaker->poles == 1)
            ties.fields.push_back({at(*member.breaker), "tie", std::string(wanted)});
        }
        out.offer(finding, ties, say(kCommonTripFix));
      }
    }
  }
}

void singlePoleProtection(const ReviewInput& in, Findings& out) {
  for (const auto& [number, members] : groups(in.plan)) {
    if (members.size() < 2) continue;
    for (const Member& member : members) {
      if (member.breaker->poles != 1 || member.breaker->protection.is(Protection::none)) continue;
      out.add("multiwire.protection", Severity::mustFix, kListing,
              say(kProtectionPlain, nameOf(*member.circuit)),
              say(kProtectionTrade, nameOf(*member.circuit), spacesOf(in.plan, *member.breaker)),
              {at(*member.circuit), at(*member.breaker)});
    }
  }
}

// The two hots of a group on one two-pole breaker, and every load entered on the same pole of it.
void onOnePole(const ReviewInput& in, Findings& out) {
  for (const auto& [number, members] : groups(in.plan)) {
    if (members.size() != 2 || members[0].breaker != members[1].breaker || members[0].breaker->poles != 2)
      continue;
    std::array<std::int32_t, 3> on{};
    for (const Member& member : members) {
      for (const Load& load : member.circuit->loads) {
        if (load.connection.is(Connection::lineToNeutral)) ++on[load.pole == 2 ? 2 : 1];
      }
    }
    const bool bothUsed = !members[0].circuit->loads.empty() && !members[1].circuit->loads.empty();
    if (!bothUsed || (on[1] > 0) == (on[2] > 0)) continue;
    Finding& finding = out.add("multiwire.one_pole", Severity::mustFix, kVoltageBetween,
                               say(kOnePolePlain, listed(namesOf(members))),
                               say(kOnePoleTrade, listed(namesOf(members))), places(members));
    fix::SetFields poles;
    for (const Load& load : members[1].circuit->loads) {
      if (load.connection.is(Connection::lineToNeutral))
        poles.fields.push_back({at(load), "pole", std::int64_t{on[1] > 0 ? 2 : 1}});
    }
    if (!poles.fields.empty()) out.offer(finding, poles, say(kOnePoleFix, nameOf(*members[1].circuit)));
  }
}

constexpr Rule kRules[] = {throughTwoRaceways, onOnePole,           split, oneLeg,
                           openedTogether,     singlePoleProtection};

}  // namespace

std::span<const Rule> multiwireRules() { return kRules; }

}  // namespace stayalight::reviewing
