// Sources that can meet, the transfer between them, the bond of each mode, and voltages that do not go
// together.

#include <algorithm>

#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kTransferListed{"transfer.listed"};
constexpr RuleId kHoldDown{"breaker.holddown"};
constexpr RuleId kHoldDownMultimode{"breaker.holddown_multimode"};
constexpr RuleId kListing{"breaker.listing"};
constexpr RuleId kLoadSideBond{"bond.load_side"};
constexpr RuleId kOwnBond{"bond.separately_derived"};
constexpr RuleId kGeneratorBond{"bond.portable_generator"};
constexpr RuleId kServiceMoved{"service.moved"};
constexpr RuleId kEmergency{"disconnect.emergency"};
constexpr RuleId kSingleSource{"source.single_120"};
constexpr RuleId kWyeInverter{"practice.wye_inverter"};
constexpr RuleId kBypass{"practice.bypass"};

constexpr MessageId kNotKeptApartPlain{"review.sources.not_kept_apart.plain"};
constexpr MessageId kNotKeptApartTrade{"review.sources.not_kept_apart.trade"};
constexpr MessageId kPerhapsPlain{"review.sources.perhaps.plain"};
constexpr MessageId kPerhapsTrade{"review.sources.perhaps.trade"};
constexpr MessageId kUnnamedPlain{"review.sources.unnamed.plain"};
constexpr MessageId kUnnamedTrade{"review.sources.unnamed.trade"};
constexpr MessageId kNotListedPlain{"review.transfer.not_listed.plain"};
constexpr MessageId kNotListedTrade{"review.transfer.not_listed.trade"};
constexpr MessageId kListingUnknownPlain{"review.transfer.listing_unknown.plain"};
constexpr MessageId kListingUnknownTrade{"review.transfer.listing_unknown.trade"};
constexpr MessageId kNoTransferPlain{"review.transfer.none.plain"};
constexpr MessageId kNoTransferTrade{"review.transfer.none.trade"};
constexpr MessageId kNoBypassPlain{"review.transfer.no_bypass.plain"};
constexpr MessageId kNoBypassTrade{"review.transfer.no_bypass.trade"};
constexpr MessageId kMakesFirstPlain{"review.bypass.makes_first.plain"};
constexpr MessageId kMakesFirstTrade{"review.bypass.makes_first.trade"};
constexpr MessageId kBypassNotSaidPlain{"review.bypass.not_said.plain"};
constexpr MessageId kBypassNotSaidTrade{"review.bypass.not_said.trade"};
constexpr MessageId kBypassUnknownPlain{"review.bypass.unknown.plain"};
constexpr MessageId kBypassUnknownTrade{"review.bypass.unknown.trade"};
constexpr MessageId kBondStaysPlain{"review.service.bond_stays.plain"};
constexpr MessageId kBondStaysTrade{"review.service.bond_stays.trade"};
constexpr MessageId kBondStaysFix{"review.service.bond_stays.fix"};
constexpr MessageId kMovedPlain{"review.service.moved.plain"};
constexpr MessageId kMovedTrade{"review.service.moved.trade"};
constexpr MessageId kEmergencyPlain{"review.service.emergency.plain"};
constexpr MessageId kEmergencyTrade{"review.service.emergency.trade"};
constexpr MessageId kMovedTrade2026{"review.service.moved.trade_2026"};
constexpr MessageId kHoldDownPlain{"review.holddown.missing.plain"};
constexpr MessageId kHoldDownTrade{"review.holddown.missing.trade"};
constexpr MessageId kHoldDownUnknownPlain{"review.holddown.unknown.plain"};
constexpr MessageId kHoldDownUnknownTrade{"review.holddown.unknown.trade"};
constexpr MessageId kHoldDownFix{"review.holddown.fix"};
constexpr MessageId kForwardsPlain{"review.holddown.forwards.plain"};
constexpr MessageId kForwardsTrade{"review.holddown.forwards.trade"};
constexpr MessageId kForwardsFix{"review.holddown.forwards.fix"};
constexpr MessageId kMarkedPlain{"review.holddown.marked.plain"};
constexpr MessageId kMarkedTrade{"review.holddown.marked.trade"};
constexpr MessageId kTooManyTrade{"review.bond.too_many.trade"};
constexpr MessageId kNoneTrade{"review.bond.none.trade"};
constexpr MessageId kUnknownTrade{"review.bond.unknown.trade"};
constexpr MessageId kBackupBondedPlain{"review.bond.backup.plain"};
constexpr MessageId kBackupBondedTrade{"review.bond.backup.trade"};
constexpr MessageId kBackupBondedFix{"review.bond.backup.fix"};
constexpr MessageId kBackupUnknownPlain{"review.bond.backup_unknown.plain"};
constexpr MessageId kBackupUnknownTrade{"review.bond.backup_unknown.trade"};
constexpr MessageId kWyePlain{"review.system.wye.plain"};
constexpr MessageId kWyeTrade{"review.system.wye.trade"};
constexpr MessageId kWyeOutputPlain{"review.system.wye_output.plain"};
constexpr MessageId kWyeOutputTrade{"review.system.wye_output.trade"};
constexpr MessageId kThreePhasePlain{"review.system.three_phase.plain"};
constexpr MessageId kThreePhaseTrade{"review.system.three_phase.trade"};
constexpr MessageId kSinglePlain{"review.system.single_120.plain"};
constexpr MessageId kSingleTrade{"review.system.single_120.trade"};

bool hasBackedUp(const Plan& plan) {
  return std::any_of(plan.circuits.begin(), plan.circuits.end(),
                     [&](const auto& c) { return backedUp(plan, *c); });
}

/// True where the plan names what keeps this source from meeting another. A solar inverter lets go by itself
/// where it is listed as interactive, which is a question and no danger yet.
bool separationNamed(const Plan& plan, const Panel& panel, const Breaker& breaker) {
  if (breaker.feeds.is(Feeds::solar) || breaker.interlocked.is(Answer::yes)) return true;
  const Choice<TransferListing>& listing = plan.transfer->listing;
  const bool ofTransfer = panel.role.is(PanelRole::backup) || breaker.feeds.is(Feeds::inverterOutput) ||
                          breaker.feeds.is(Feeds::utility);
  return listing.is(TransferListing::listedInterlock) ||
         (listing.is(TransferListing::listedTransferEquipment) && ofTransfer);
}

void busOfTwoSources(const ReviewInput& in, Findings& out) {
  for (const BusSources& bus : busSources(in.plan)) {
    const Panel* panel = find(in.plan, bus.panel);
    if (panel == nullptr || bus.sources < 2 || bus.keptApart == Answer::yes) continue;
    std::vector<std::string> spaces;
    std::vector<EntityRef> places{at(*panel)};
    bool named = true;
    for (const BreakerId id : bus.breakers) {
      if (const Breaker* breaker = find(in.plan, id)) {
        named = named && separationNamed(in.plan, *panel, *breaker);
        spaces.push_back(spacesOf(in.plan, *breaker));
        places.push_back(at(*breaker));
      }
    }
    const auto sources = static_cast<std::int64_t>(bus.sources);
    if (bus.keptApart == Answer::no) {
      out.add("sources.not_kept_apart", Severity::danger, kTransferListed,
              say(kNotKeptApartPlain, nameOf(*panel)),
              say(kNotKeptApartTrade, nameOf(*panel), sources, listed(spaces)), places);
    } else if (!named) {
      out.add("sources.unnamed", Severity::danger, kTransferListed, say(kUnnamedPlain, nameOf(*panel)),
              say(kUnnamedTrade, nameOf(*panel), sources, listed(spaces)), places);
    } else {
      out.add("sources.perhaps", Severity::checkOnSite, kTransferListed, say(kPerhapsPlain, nameOf(*panel)),
              say(kPerhapsTrade, nameOf(*panel), sources, listed(spaces)), places);
    }
  }
}

void transferArrangement(const ReviewInput& in, Findings& out) {
  if (!hasBackedUp(in.plan)) return;
  const Transfer& transfer = *in.plan.transfer;
  const std::vector<EntityRef> place{at(RecordKind::transfer)};
  if (transfer.arrangement.is(Arrangement::none)) {
    out.add("transfer.none", Severity::mustFix, kTransferListed, say(kNoTransferPlain), say(kNoTransferTrade),
            place);
    return;
  }
  if (transfer.listing.is(TransferListing::none)) {
    out.add("transfer.not_listed", Severity::danger, kTransferListed, say(kNotListedPlain),
            say(kNotListedTrade), place);
  }
  if (!open(in, "transfer.listing").empty()) {
    out.add("transfer.listing_unknown", Severity::checkOnSite, kTransferListed, say(kListingUnknownPlain),
            say(kListingUnknownTrade), place);
  }
  if (transfer.bypass.is(Answer::no)) {
    out.add("transfer.no_bypass", Severity::advice, kBypass, say(kNoBypassPlain), say(kNoBypassTrade), place);
  }
  const std::vector<Mode> there = modes(in.plan);
  const bool around = std::find(there.begin(), there.end(), Mode::bypass) != there.end();
  if (around && !transfer.bypassBreaksFirst.is(Answer::yes)) {
    const bool makes = transfer.bypassBreaksFirst.is(Answer::no);
    out.add(makes ? "bypass.makes_first" : "bypass.unknown", makes ? Severity::danger : Severity::checkOnSite,
            kTransferListed, say(makes ? kMakesFirstPlain : kBypassUnknownPlain),
            say(makes ? kMakesFirstTrade : kBypassUnknownTrade), place);
  }
}

void pastTheInverter(const ReviewInput& in, Findings& out) {
  if (in.plan.transfer->bypass.is(Answer::yes)) return;
  for (const auto& breaker : in.plan.breakers) {
    const Panel* panel = find(in.plan, breaker->panel);
    if (panel == nullptr || !feedsBypass(in.plan, *breaker)) continue;
    out.add("bypass.not_said", Severity::checkOnSite, kBypass, say(kBypassNotSaidPlain, nameOf(*panel)),
            say(kBypassNotSaidTrade, nameOf(*panel), spacesOf(in.plan, *breaker)),
            {at(*breaker), at(RecordKind::transfer)});
  }
}

void holdDown(const ReviewInput& in, Findings& out) {
  for (const auto& breaker : in.plan.breakers) {
    const Panel* panel = find(in.plan, breaker->panel);
    // A listed interactive inverter's solar breaker is let off by the article on interconnected sources.
    if (panel == nullptr || !stands(*breaker, Reading::planned) || !fedBackwards(*breaker) ||
        breaker->feeds.is(Feeds::solar)) {
      continue;
    }
    if (breaker->backFed.is(Answer::no)) {
      Finding& said = out.add(
          "holddown.said_forwards", Severity::checkOnSite, kHoldDown, say(kForwardsPlain, nameOf(*panel)),
          say(kForwardsTrade, nameOf(*panel), spacesOf(in.plan, *breaker)), {at(*breaker)});
      out.offer(said, fix::SetField{at(*breaker), "back_fed", std::string("yes")}, say(kForwardsFix));
    }
    const bool multimode = breaker->feeds.is(Feeds::inverterOutput) && in.edition != Edition::y2017;
    const RuleId rule = multimode ? kHoldDownMultimode : kHoldDown;
    const std::string spaces = spacesOf(in.plan, *breaker);
    const bool missing = breaker->holdDown.is(Answer::no);
    if (missing || isOpen(in, "breaker.hold_down", at(*breaker))) {
      Finding& finding =
          missing ? out.add("holddown.missing", Severity::danger, rule, say(kHoldDownPlain, nameOf(*panel)),
                            say(kHoldDownTrade, nameOf(*panel), spaces), {at(*breaker)})
                  : out.add("holddown.unknown", Severity::checkOnSite, rule,
                            say(kHoldDownUnknownPlain, nameOf(*panel)),
                            say(kHoldDownUnknownTrade, nameOf(*panel), spaces), {at(*breaker)});
      if (missing)
        out.offer(finding, fix::SetField{at(*breaker), "hold_down", std::string("yes")}, say(kHoldDownFix));
    }
    if (!breaker->protection.is(Protection::none)) {
      out.add("holddown.marked", Severity::mustFix, kListing, say(kMarkedPlain, nameOf(*panel)),
              say(kMarkedTrade, nameOf(*panel), spaces), {at(*breaker)});
    }
  }
  for (const auto& panel : in.plan.panels) {
    if (!panel->mainBackFed) continue;
    const std::string main =
        panel->mainBreaker ? std::to_string(panel->mainBreaker->count()) + " A" : std::string("-");
    if (panel->holdDown.is(Answer::no)) {
      Finding& finding =
          out.add("holddown.main", Severity::danger, kHoldDown, say(kHoldDownPlain, nameOf(*panel)),
                  say(kHoldDownTrade, nameOf(*panel), main), {at(*panel)});
      out.offer(finding, fix::SetField{at(*panel), "hold_down", std::string("yes")}, say(kHoldDownFix));
    } else if (isOpen(in, "panel.hold_down", at(*panel))) {
      out.add("holddown.main_unknown", Severity::checkOnSite, kHoldDown,
              say(kHoldDownUnknownPlain, nameOf(*panel)), say(kHoldDownUnknownTrade, nameOf(*panel), main),
              {at(*panel)});
    }
  }
}

// What is said of the bonds in one mode.
struct BondWords {
  Mode mode;
  std::string_view tooMany, none, unknown;
  MessageId tooManyPlain, nonePlain, unknownPlain;
};
constexpr BondWords kBondWords[] = {
    {Mode::ordinary, "bond.too_many_ordinary", "bond.none_ordinary", "bond.unknown_ordinary",
     MessageId{"review.bond.too_many_ordinary.plain"}, MessageId{"review.bond.none_ordinary.plain"},
     MessageId{"review.bond.unknown_ordinary.plain"}},
    {Mode::outage, "bond.too_many_outage", "bond.none_outage", "bond.unknown_outage",
     MessageId{"review.bond.too_many_outage.plain"}, MessageId{"review.bond.none_outage.plain"},
     MessageId{"review.bond.unknown_outage.plain"}},
    {Mode::generator, "bond.too_many_generator", "bond.none_generator", "bond.unknown_generator",
     MessageId{"review.bond.too_many_generator.plain"}, MessageId{"review.bond.none_generator.plain"},
     MessageId{"review.bond.unknown_generator.plain"}},
    {Mode::bypass, "bond.too_many_bypass", "bond.none_bypass", "bond.unknown_bypass",
     MessageId{"review.bond.too_many_bypass.plain"}, MessageId{"review.bond.none_bypass.plain"},
     MessageId{"review.bond.unknown_bypass.plain"}},
};

void bondOfEachMode(const ReviewInput& in, Findings& out) {
  if (!hasBackedUp(in.plan) || in.plan.transfer->arrangement.is(Arrangement::none)) return;
  for (const BondCount& bonds : bondCounts(in.plan)) {
    const auto* words = std::find_if(std::begin(kBondWords), std::end(kBondWords),
                                     [&](const BondWords& w) { return w.mode == bonds.mode; });
    if (words == std::end(kBondWords)) continue;
    std::vector<EntityRef> places{at(RecordKind::transfer)};
    if (bonds.mode == Mode::generator) places.insert(places.begin(), at(RecordKind::generator));
    for (const auto& panel : in.plan.panels) {
      if (!panel->neutralBonded.is(Answer::no)) places.push_back(at(*panel));
    }
    const RuleId rule = bonds.mode == Mode::generator ? kGeneratorBond : kLoadSideBond;
    const auto certain = static_cast<std::int64_t>(bonds.certain);
    if (bonds.certain >= 2) {
      out.add(words->tooMany, Severity::danger, rule, say(words->tooManyPlain, certain),
              say(kTooManyTrade, certain, bonds.places), places);
    } else if (bonds.certain == 0 && bonds.known()) {
      out.add(words->none, Severity::danger, bonds.mode == Mode::generator ? kGeneratorBond : kOwnBond,
              say(words->nonePlain), say(kNoneTrade), places);
    } else if (!bonds.known()) {
      out.add(words->unknown, Severity::checkOnSite, rule, say(words->unknownPlain),
              say(kUnknownTrade, certain, static_cast<std::int64_t>(bonds.possible), bonds.places), places);
    }
  }
}

// What follows where this work moves the service disconnect out of the main panel.
void movedServiceDisconnect(const ReviewInput& in, Findings& out) {
  const Transfer& transfer = *in.plan.transfer;
  const Panel* main = mainPanel(in.plan);
  if (!transfer.serviceDisconnectMoved.is(Answer::yes) || main == nullptr) return;
  if (!transfer.serviceBondUpstream.is(Answer::yes)) {
    Finding& finding = out.add("service.bond_stays", Severity::mustFix, kServiceMoved, say(kBondStaysPlain),
                               say(kBondStaysTrade, nameOf(*main)), {at(RecordKind::transfer), at(*main)});
    out.offer(finding,
              fix::SetFields{{{at(RecordKind::transfer), "service_bond_upstream", std::string("yes")},
                              {at(*main), "neutral_bonded", std::string("no")}}},
              say(kBondStaysFix));
  }
  // 250.140 has another text since 2026.
  out.add("service.moved", Severity::checkOnSite, kServiceMoved, say(kMovedPlain),
          say(in.edition == Edition::y2026 ? kMovedTrade2026 : kMovedTrade, nameOf(*main)),
          {at(RecordKind::transfer), at(*main)});
  // The emergency disconnect and the surge device of the service came with 2020.
  if (in.edition == Edition::y2017 || canadian(in.plan)) return;
  out.add("service.emergency", Severity::checkOnSite, kEmergency, say(kEmergencyPlain), say(kEmergencyTrade),
          {at(RecordKind::transfer)});
}

void bondInBackup(const ReviewInput& in, Findings& out) {
  for (const auto& panel : in.plan.panels) {
    if (panel->role.is(PanelRole::main)) continue;
    // The bond of an old feeder of three wires between buildings is another matter:
    // core/review/buildings.cpp.
    if (panel->separateBuilding && !panel->role.is(PanelRole::backup)) continue;
    if (panel->neutralBonded.is(Answer::yes)) {
      Finding& finding =
          out.add("bond.backup", Severity::danger, kLoadSideBond, say(kBackupBondedPlain, nameOf(*panel)),
                  say(kBackupBondedTrade, nameOf(*panel)), {at(*panel)});
      out.offer(finding, fix::SetField{at(*panel), "neutral_bonded", std::string("no")},
                say(kBackupBondedFix));
    } else if (panel->role.is(PanelRole::backup) && isOpen(in, "panel.neutral_bonded", at(*panel))) {
      out.add("bond.backup_unknown", Severity::checkOnSite, kLoadSideBond,
              say(kBackupUnknownPlain, nameOf(*panel)), say(kBackupUnknownTrade, nameOf(*panel)),
              {at(*panel)});
    }
  }
}

void voltagesOfServiceAndInverter(const ReviewInput& in, Findings& out) {
  const Choice<ServiceSystem>& service = in.plan.site->service;
  const Choice<InverterOutput>& output = in.plan.inverter->output;
  if (service.is(ServiceSystem::threePhase)) {
    out.add("system.three_phase", Severity::danger, {}, say(kThreePhasePlain), say(kThreePhaseTrade),
            {at(RecordKind::site)});
  }
  if (backupPanel(in.plan) == nullptr) return;
  const std::vector<EntityRef> places{at(RecordKind::inverter), at(RecordKind::site)};
  if (service.is(ServiceSystem::wye120_208) && output.is(InverterOutput::splitPhase120_240)) {
    out.add("system.wye", Severity::danger, kWyeInverter, say(kWyePlain), say(kWyeTrade), places);
  }
  if (service.is(ServiceSystem::splitPhase120_240) && output.is(InverterOutput::wye120_208)) {
    out.add("system.wye_output", Severity::danger, kWyeInverter, say(kWyeOutputPlain), say(kWyeOutputTrade),
            places);
  }
}

void single120(const ReviewInput& in, Findings& out) {
  if (!in.plan.inverter->output.is(InverterOutput::single120)) return;
  std::vector<std::string> names;
  std::vector<EntityRef> places{at(RecordKind::inverter)};
  for (const auto& circuit : in.plan.circuits) {
    if (!backedUp(in.plan, *circuit)) continue;
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const bool lineToLine =
        !circuit->voltage.is(VoltageClass::v120) || (breaker != nullptr && breaker->poles == 2) ||
        std::any_of(circuit->loads.begin(), circuit->loads.end(),
                    [](const Load& load) { return load.connection.is(Connection::lineToLine); });
    if (!lineToLine && circuit->multiwire == 0) continue;
    names.push_back(nameOf(*circuit));
    places.push_back(at(*circuit));
  }
  if (names.empty()) return;
  out.add("system.single_120", Severity::danger, kSingleSource, say(kSinglePlain, listed(names)),
          say(kSingleTrade, listed(names)), places);
}

constexpr Rule kRules[] = {
    busOfTwoSources, transferArrangement,    pastTheInverter, holdDown,
    bondOfEachMode,  movedServiceDisconnect, bondInBackup,    voltagesOfServiceAndInverter,
    single120};

}  // namespace

std::span<const Rule> sourceRules() { return kRules; }

}  // namespace stayalight::reviewing
