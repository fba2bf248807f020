#include <gtest/gtest.h>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

Plan house(Arrangement arrangement, TransferListing listing = TransferListing::unknown) {
  Plan plan;
  Panel main;
  main.id = {1};
  Panel backup;
  backup.id = {2};
  backup.role = PanelRole::backup;
  plan.panels = {main, backup};
  plan.transfer.edit().arrangement = arrangement;
  plan.transfer.edit().listing = listing;
  return plan;
}

void add(Plan& plan, std::int64_t panel, Feeds feeds, Answer interlocked = Answer::unknown,
         Stage stage = Stage::fresh) {
  Breaker breaker;
  breaker.id = nextBreakerId(plan);
  breaker.panel = {panel};
  breaker.feeds = feeds;
  breaker.interlocked = interlocked;
  breaker.stage = stage;
  plan.breakers.emplace_back(breaker);
}

TEST(BusSources, AnOrdinaryHouseHasOneSourceABus) {
  Plan plan = house(Arrangement::manualSwitch);
  add(plan, 1, Feeds::feeder);
  add(plan, 1, Feeds::circuit);
  EXPECT_TRUE(busSources(plan).empty());
}

TEST(BusSources, ATwoBreakerTransferIsKeptApartOnlyByAnInterlock) {
  for (const auto& [interlocked, listing, expected] :
       {std::tuple{Answer::no, TransferListing::unknown, Answer::no},
        std::tuple{Answer::unknown, TransferListing::none, Answer::no},
        std::tuple{Answer::unknown, TransferListing::unknown, Answer::unknown},
        std::tuple{Answer::unknown, TransferListing::listedInterlock, Answer::yes},
        std::tuple{Answer::yes, TransferListing::none, Answer::yes},
        std::tuple{Answer::no, TransferListing::listedTransferEquipment, Answer::no}}) {
    Plan plan = house(Arrangement::manualSwitch, listing);
    add(plan, 2, Feeds::utility, interlocked);
    add(plan, 2, Feeds::inverterOutput, interlocked);
    const std::vector<BusSources> buses = busSources(plan);
    ASSERT_EQ(buses.size(), 1u);
    EXPECT_EQ(buses[0].panel, PanelId{2});
    EXPECT_EQ(buses[0].sources, 2);
    EXPECT_EQ(buses[0].breakers.size(), 2u);
    EXPECT_EQ(buses[0].keptApart, expected);
  }
}

TEST(BusSources, AGeneratorFedBackIntoTheMain) {
  Plan plan = house(Arrangement::manualSwitch, TransferListing::listedTransferEquipment);
  add(plan, 1, Feeds::generator, Answer::no);
  std::vector<BusSources> buses = busSources(plan);
  ASSERT_EQ(buses.size(), 1u);
  EXPECT_EQ(buses[0].panel, PanelId{1});
  EXPECT_EQ(buses[0].sources, 2);
  EXPECT_EQ(buses[0].keptApart, Answer::no);
  plan.breakers[0].edit().interlocked = Answer::yes;
  EXPECT_EQ(busSources(plan)[0].keptApart, Answer::yes);
  // The listing of the backup's switch says nothing of the main's own bus.
  plan.breakers[0].edit().interlocked = Answer::unknown;
  EXPECT_EQ(busSources(plan)[0].keptApart, Answer::unknown);
}

TEST(BusSources, TheLandingOfThePassThroughIsNoSecondSource) {
  Plan plan = house(Arrangement::inverterPassThrough);
  add(plan, 1, Feeds::inverterInput);
  add(plan, 2, Feeds::inverterOutput);
  EXPECT_TRUE(busSources(plan).empty());
  add(plan, 2, Feeds::utility, Answer::no);
  ASSERT_EQ(busSources(plan).size(), 1u);
}

TEST(BusSources, SolarIsAskedForButNeverSaidToBeLoose) {
  Plan plan = house(Arrangement::manualSwitch);
  add(plan, 1, Feeds::solar, Answer::no);
  ASSERT_EQ(busSources(plan).size(), 1u);
  EXPECT_EQ(busSources(plan)[0].keptApart, Answer::unknown);
}

TEST(BusSources, ARemovedBreakerFeedsNothing) {
  Plan plan = house(Arrangement::manualSwitch);
  add(plan, 1, Feeds::generator, Answer::no, Stage::removed);
  EXPECT_TRUE(busSources(plan).empty());
}

}  // namespace
}  // namespace stayalight
