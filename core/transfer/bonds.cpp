#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

constexpr MessageId kBondInPanel{"transfer.bond_in_panel"};
constexpr MessageId kBondPerhapsInPanel{"transfer.bond_perhaps_in_panel"};
constexpr MessageId kBondAtService{"transfer.bond_at_service"};
constexpr MessageId kBondPerhapsAtService{"transfer.bond_perhaps_at_service"};
constexpr MessageId kBondInInverter{"transfer.bond_in_inverter"};
constexpr MessageId kBondPerhapsInInverter{"transfer.bond_perhaps_in_inverter"};

/// Both have to hold: unknown unless one is surely no.
Answer both(Answer a, Answer b) {
  if (a == Answer::no || b == Answer::no) return Answer::no;
  return a == Answer::yes && b == Answer::yes ? Answer::yes : Answer::unknown;
}

Answer opposite(Answer a) {
  return a == Answer::yes ? Answer::no : a == Answer::no ? Answer::yes : Answer::unknown;
}

void count(BondCount& bonds, Answer there, Message certain, Message perhaps) {
  if (there == Answer::yes) {
    ++bonds.certain;
    bonds.places.push_back(std::move(certain));
  } else if (there == Answer::unknown) {
    ++bonds.possible;
    bonds.places.push_back(std::move(perhaps));
  }
}

Answer inverterBonds(const Inverter& inverter, Mode mode) {
  if (!inverter.bond.known()) return Answer::unknown;
  switch (inverter.bond.valueOr(BondBehaviour::unknown)) {
    case BondBehaviour::unknown:
      return Answer::unknown;
    case BondBehaviour::neverBonds:
      return Answer::no;
    case BondBehaviour::bondsInIsland:
      return mode == Mode::outage ? Answer::yes : Answer::no;
    case BondBehaviour::alwaysBonded:
      return Answer::yes;
  }
  return Answer::unknown;
}

BondCount bondsIn(const Plan& plan, const Panel& backup, Mode mode) {
  const Transfer& transfer = *plan.transfer;
  const Answer solid = opposite(transfer.switchesNeutral.valueOr(Answer::unknown));
  // Does the neutral of the service, and that of the inverter, reach the backup subpanel in this mode?
  const Answer service = mode == Mode::ordinary ? Answer::yes : solid;
  const bool passThrough = transfer.arrangement.is(Arrangement::inverterPassThrough);
  const Answer inverter = mode == Mode::outage || passThrough ? Answer::yes : solid;

  BondCount bonds;
  bonds.mode = mode;
  count(bonds, both(transfer.serviceBondUpstream.valueOr(Answer::unknown), service), say(kBondAtService),
        say(kBondPerhapsAtService));
  for (const auto& panel : plan.panels) {
    const Answer reaches = panel->id == backup.id ? Answer::yes : service;
    count(bonds, both(panel->neutralBonded.valueOr(Answer::unknown), reaches), say(kBondInPanel, panel->name),
          say(kBondPerhapsInPanel, panel->name));
  }
  if (!transfer.arrangement.is(Arrangement::none)) {
    count(bonds, both(inverterBonds(*plan.inverter, mode), inverter), say(kBondInInverter),
          say(kBondPerhapsInInverter));
  }
  return bonds;
}

}  // namespace

std::vector<BondCount> bondCounts(const Plan& plan) {
  const Panel* backup = backupPanel(plan);
  if (backup == nullptr) return {};
  std::vector<BondCount> counts{bondsIn(plan, *backup, Mode::ordinary)};
  // Without an arrangement there is no way an outage is bridged.
  if (!plan.transfer->arrangement.is(Arrangement::none))
    counts.push_back(bondsIn(plan, *backup, Mode::outage));
  return counts;
}

}  // namespace stayalight
