#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

constexpr MessageId kBondInPanel{"transfer.bond_in_panel"};
constexpr MessageId kBondPerhapsInPanel{"transfer.bond_perhaps_in_panel"};
constexpr MessageId kBondAtService{"transfer.bond_at_service"};
constexpr MessageId kBondPerhapsAtService{"transfer.bond_perhaps_at_service"};
constexpr MessageId kBondInInverter{"transfer.bond_in_inverter"};
constexpr MessageId kBondPerhapsInInverter{"transfer.bond_perhaps_in_inverter"};
constexpr MessageId kBondInGenerator{"transfer.bond_in_generator"};
constexpr MessageId kBondPerhapsInGenerator{"transfer.bond_perhaps_in_generator"};

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

Answer generatorBonds(const Generator& generator) {
  switch (generator.neutral.valueOr(GeneratorNeutral::unknown)) {
    case GeneratorNeutral::unknown:
      return Answer::unknown;
    case GeneratorNeutral::bonded:
      return Answer::yes;
    case GeneratorNeutral::floating:
      return Answer::no;
  }
  return Answer::unknown;
}

// Does the neutral of each source reach that of the backup subpanel in this mode?
struct Reach {
  Answer service = Answer::yes;
  Answer inverter = Answer::no;
  Answer generator = Answer::no;
};
Reach reachIn(const Plan& plan, Mode mode) {
  const Transfer& transfer = *plan.transfer;
  const Answer solid = opposite(transfer.switchesNeutral.valueOr(Answer::unknown));
  const bool passThrough = transfer.arrangement.is(Arrangement::inverterPassThrough);
  const Answer through = passThrough ? Answer::yes : solid;
  const Answer solidGenerator = opposite(plan.generator->switchesNeutral.valueOr(Answer::unknown));
  // One on a cord is there only while it runs.
  const bool wiredIn = !plan.generator->comesIn.is(GeneratorPoint::none) && !plan.generator->inlet;
  const Answer standing = wiredIn ? solidGenerator : Answer::no;
  switch (mode) {
    case Mode::ordinary:
      return {Answer::yes, through, standing};
    case Mode::outage:
    case Mode::off:
      // What stands behind the utility's side is reached over it.
      return {solid, mode == Mode::outage || passThrough ? Answer::yes : solid, both(solid, standing)};
    case Mode::bypass:
      return {Answer::yes, opposite(transfer.bypassSwitchesNeutral.valueOr(Answer::unknown)), standing};
    case Mode::generator:
      break;
  }
  const bool throughInverter = plan.generator->comesIn.is(GeneratorPoint::inverterInput);
  return {solidGenerator, throughInverter ? Answer::yes : through, Answer::yes};
}

BondCount bondsIn(const Plan& plan, const Panel& backup, Mode mode) {
  const Transfer& transfer = *plan.transfer;
  const auto [service, inverter, generator] = reachIn(plan, mode);
  // A generator that comes in at the main panel stands behind the neutral of all panels.
  const bool overMain = mode == Mode::generator && plan.generator->comesIn.is(GeneratorPoint::mainPanel);

  BondCount bonds;
  bonds.mode = mode;
  count(bonds, both(transfer.serviceBondUpstream.valueOr(Answer::unknown), service), say(kBondAtService),
        say(kBondPerhapsAtService));
  for (const auto& panel : plan.panels) {
    const Answer reaches = panel->id == backup.id || overMain ? Answer::yes : service;
    count(bonds, both(panel->neutralBonded.valueOr(Answer::unknown), reaches), say(kBondInPanel, panel->name),
          say(kBondPerhapsInPanel, panel->name));
  }
  if (!transfer.arrangement.is(Arrangement::none)) {
    count(bonds, both(inverterBonds(*plan.inverter, mode), inverter), say(kBondInInverter),
          say(kBondPerhapsInInverter));
  }
  if (generator != Answer::no) {
    count(bonds, both(generatorBonds(*plan.generator), generator), say(kBondInGenerator),
          say(kBondPerhapsInGenerator));
  }
  return bonds;
}

}  // namespace

std::vector<BondCount> bondCounts(const Plan& plan) {
  const Panel* backup = backupPanel(plan);
  if (backup == nullptr) return {};
  std::vector<BondCount> counts;
  for (const Mode mode : modes(plan)) counts.push_back(bondsIn(plan, *backup, mode));
  return counts;
}

}  // namespace stayalight
