#include <gtest/gtest.h>

#include "core/transfer/transfer.h"

// Expected counts follow from where the neutral is continuous (NFPA 70, 250.20(D) note and 250.30: a source
// whose neutral the transfer does not open is not separately derived and takes the bond of the service).

namespace stayalight {
namespace {

struct House {
  Answer mainBond = Answer::yes;
  Answer backupBond = Answer::no;
  Answer upstream = Answer::no;
  Answer switchesNeutral = Answer::no;
  Arrangement arrangement = Arrangement::manualSwitch;
  BondBehaviour inverter = BondBehaviour::neverBonds;
};

Plan planOf(const House& house) {
  Plan plan;
  Panel main;
  main.id = {1};
  main.name = "Main";
  main.neutralBonded = house.mainBond;
  Panel backup;
  backup.id = {2};
  backup.name = "Backup";
  backup.role = PanelRole::backup;
  backup.neutralBonded = house.backupBond;
  plan.panels = {main, backup};
  plan.transfer.edit().arrangement = house.arrangement;
  plan.transfer.edit().switchesNeutral = house.switchesNeutral;
  plan.transfer.edit().serviceBondUpstream = house.upstream;
  plan.inverter.edit().bond = house.inverter;
  return plan;
}

struct Count {
  int certain, possible;
};

void expectCounts(const char* what, const House& house, Count ordinary, Count outage) {
  const std::vector<BondCount> counts = bondCounts(planOf(house));
  ASSERT_EQ(counts.size(), 2u) << what;
  EXPECT_EQ(counts[0].mode, Mode::ordinary);
  EXPECT_EQ(counts[1].mode, Mode::outage);
  EXPECT_EQ(counts[0].certain, ordinary.certain) << what;
  EXPECT_EQ(counts[0].possible, ordinary.possible) << what;
  EXPECT_EQ(counts[1].certain, outage.certain) << what;
  EXPECT_EQ(counts[1].possible, outage.possible) << what;
  EXPECT_EQ(counts[1].places.size(), static_cast<std::size_t>(outage.certain + outage.possible)) << what;
}

TEST(BondCounts, ByArrangement) {
  expectCounts("solid neutral: the service bond holds even while the utility is dead", {}, {1, 0}, {1, 0});
  expectCounts("solid neutral and an inverter that bonds in island: one too many",
               {.inverter = BondBehaviour::bondsInIsland}, {1, 0}, {2, 0});
  expectCounts("switched neutral, an inverter that never bonds: none in an outage",
               {.switchesNeutral = Answer::yes}, {1, 0}, {0, 0});
  expectCounts("switched neutral and a bond in island: one in each mode",
               {.switchesNeutral = Answer::yes, .inverter = BondBehaviour::bondsInIsland}, {1, 0}, {1, 0});
  expectCounts("a bond left in the backup subpanel", {.backupBond = Answer::yes}, {2, 0}, {2, 0});
  expectCounts("the service bond upstream, both house panels unbonded",
               {.mainBond = Answer::no, .upstream = Answer::yes}, {1, 0}, {1, 0});
  expectCounts("upstream and in the main as well", {.upstream = Answer::yes}, {2, 0}, {2, 0});
  expectCounts("always bonded behind a solid neutral", {.inverter = BondBehaviour::alwaysBonded}, {2, 0},
               {2, 0});
  expectCounts("always bonded behind a switched neutral",
               {.switchesNeutral = Answer::yes, .inverter = BondBehaviour::alwaysBonded}, {1, 0}, {1, 0});
  expectCounts("pass-through feeds the neutral of the inverter on every day",
               {.switchesNeutral = Answer::yes,
                .arrangement = Arrangement::inverterPassThrough,
                .inverter = BondBehaviour::alwaysBonded},
               {2, 0}, {1, 0});
}

TEST(BondCounts, WhatNobodyLookedForIsPossible) {
  expectCounts("backup not looked at", {.backupBond = Answer::unknown}, {1, 1}, {1, 1});
  expectCounts("upstream not looked at", {.upstream = Answer::unknown}, {1, 1}, {1, 1});
  expectCounts("does the switch open the neutral?", {.switchesNeutral = Answer::unknown}, {1, 0}, {0, 1});
  expectCounts("inverter not read", {.inverter = BondBehaviour::unknown}, {1, 1}, {1, 1});
  expectCounts("inverter not read behind a switched neutral",
               {.switchesNeutral = Answer::yes, .inverter = BondBehaviour::unknown}, {1, 0}, {0, 1});
}

// NFPA 70, 702.11: where the transfer opens the neutral the generator is a separately derived system and
// bonded, elsewhere its neutral floats.
TEST(BondCounts, WhileTheGeneratorRuns) {
  const struct {
    const char* what;
    GeneratorPoint comesIn;
    GeneratorNeutral neutral;
    Answer switches;
    Count count;
  } rows[] = {
      {"floating behind a solid neutral",
       GeneratorPoint::transfer,
       GeneratorNeutral::floating,
       Answer::no,
       {1, 0}},
      {"bonded behind a solid neutral: one too many",
       GeneratorPoint::transfer,
       GeneratorNeutral::bonded,
       Answer::no,
       {2, 0}},
      {"bonded behind a switched neutral",
       GeneratorPoint::transfer,
       GeneratorNeutral::bonded,
       Answer::yes,
       {1, 0}},
      {"floating behind a switched neutral: none",
       GeneratorPoint::transfer,
       GeneratorNeutral::floating,
       Answer::yes,
       {0, 0}},
      {"through the inverter it is the same",
       GeneratorPoint::inverterInput,
       GeneratorNeutral::bonded,
       Answer::yes,
       {1, 0}},
      {"at the main panel its bond is reached even where the service's neutral is opened",
       GeneratorPoint::mainPanel,
       GeneratorNeutral::bonded,
       Answer::yes,
       {2, 0}},
      {"not read", GeneratorPoint::transfer, GeneratorNeutral::unknown, Answer::no, {1, 1}},
  };
  for (const auto& row : rows) {
    Plan plan = planOf({});
    Generator& generator = plan.generator.edit();
    generator.comesIn = row.comesIn;
    generator.neutral = row.neutral;
    generator.switchesNeutral = row.switches;
    generator.inlet = RatingAmperes(30);
    const std::vector<BondCount> counts = bondCounts(plan);
    ASSERT_EQ(counts.size(), 3u) << row.what;
    EXPECT_EQ(counts[0].certain, 1) << row.what << ": on a cord, it is not there on ordinary days";
    EXPECT_EQ(counts[2].mode, Mode::generator);
    EXPECT_EQ(counts[2].certain, row.count.certain) << row.what;
    EXPECT_EQ(counts[2].possible, row.count.possible) << row.what;
  }
}

TEST(BondCounts, AWiredInGeneratorCountsInEveryMode) {
  Plan plan = planOf({});
  plan.generator.edit().comesIn = GeneratorPoint::transfer;
  plan.generator.edit().neutral = GeneratorNeutral::bonded;
  plan.generator.edit().switchesNeutral = Answer::no;
  for (const BondCount& count : bondCounts(plan)) EXPECT_EQ(count.certain, 2);
}

TEST(BondCounts, OnTheBypass) {
  House house{.arrangement = Arrangement::inverterPassThrough, .inverter = BondBehaviour::alwaysBonded};
  Plan plan = planOf(house);
  plan.transfer.edit().bypass = Answer::yes;
  plan.transfer.edit().bypassSwitchesNeutral = Answer::yes;
  const auto counts = bondCounts(plan);
  ASSERT_EQ(counts.size(), 3u);
  EXPECT_EQ(counts[2].mode, Mode::bypass);
  EXPECT_EQ(counts[2].certain, 1) << "the inverter's neutral is opened";
  plan.transfer.edit().bypassSwitchesNeutral = Answer::no;
  EXPECT_EQ(bondCounts(plan)[2].certain, 2);
}

TEST(BondCounts, PlacesNameThePanel) {
  const std::vector<BondCount> counts = bondCounts(planOf({}));
  ASSERT_EQ(counts[0].places.size(), 1u);
  EXPECT_EQ(render(counts[0].places[0], plainEnglish()), "bond in Main");
}

TEST(BondCounts, WithoutABackupSubpanelThereAreNone) { EXPECT_TRUE(bondCounts(Plan{}).empty()); }

}  // namespace
}  // namespace stayalight
