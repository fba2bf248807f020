// Rules about figures, with figures made by hand.

#include <gtest/gtest.h>

#include "tests/core/review/sound_plan.h"

namespace stayalight {
namespace {

using sound::findingOf;

HourFigures quietHour() {
  HourFigures hour;
  for (HourLoad* load : {&hour.leg[0], &hour.leg[1], &hour.total}) load->verdict = Verdict::within;
  for (HourLoad& leg : hour.leg) {
    leg.limit = AcAmperes(25);
    leg.likelyPeakCurrent = exactly(AcAmperes(10));
  }
  return hour;
}

std::vector<Finding> reviewed(const HourFigures& hour, const StartFigures& starts = {},
                              const OutageFigures& outage = {}) {
  static const Plan plan = sound::plan();
  ReviewInput input{.plan = plan};
  input.hour = &hour;
  input.starts = &starts;
  input.outage = &outage;
  return review(input);
}

TEST(ReviewOfALeg, SaysOverNotKnownAndLittleRoom) {
  HourFigures hour = quietHour();
  EXPECT_EQ(findingOf(reviewed(hour), "leg.over_l1"), nullptr);
  EXPECT_EQ(findingOf(reviewed(hour), "leg.margin_l1"), nullptr);
  hour.leg[0].likelyPeakCurrent =
      exactly(AcAmperes(20.5));  // 80 % of 25 A are 20 A: common practice, no source
  EXPECT_NE(findingOf(reviewed(hour), "leg.margin_l1"), nullptr);
  hour.leg[0].verdict = Verdict::notKnown;
  hour.leg[0].likelyPeakCurrent.high = AcAmperes(26);
  EXPECT_NE(findingOf(reviewed(hour), "leg.unknown_l1"), nullptr);
  EXPECT_EQ(findingOf(reviewed(hour), "leg.margin_l1"), nullptr);
  hour.leg[0].verdict = Verdict::over;
  hour.leg[0].likelyPeakCurrent = exactly(AcAmperes(27.3));
  const std::vector<Finding> list = reviewed(hour);
  ASSERT_NE(findingOf(list, "leg.over_l1"), nullptr);
  EXPECT_NE(render(findingOf(list, "leg.over_l1")->trade, plainEnglish()).find("27.3 A"), std::string::npos);
  EXPECT_EQ(findingOf(list, "leg.over_l2"), nullptr);
}

TEST(ReviewOfALeg, SaysTheOddsWhereAStartIsOverOnceADay) {
  HourFigures hour = quietHour();
  hour.leg[1].timesOver = 0.01;
  hour.leg[1].oddsOver = 0.001;
  EXPECT_EQ(findingOf(reviewed(hour), "load.odds_l2"), nullptr);
  hour.leg[1].timesOver = 0.05;
  EXPECT_NE(findingOf(reviewed(hour), "load.odds_l2"), nullptr);
}

TEST(ReviewOfTheTotal, SaysOverByWattsOrByVoltAmperes) {
  HourFigures hour = quietHour();
  hour.total.verdict = Verdict::over;
  hour.total.limitWatts = Watts(6000);
  hour.total.likelyPeak = exactly(Watts(6500));
  std::vector<Finding> list = reviewed(hour);
  ASSERT_NE(findingOf(list, "total.over"), nullptr);
  EXPECT_NE(render(findingOf(list, "total.over")->trade, plainEnglish()).find("6500 W"), std::string::npos);
  hour.total.likelyPeak = exactly(Watts(5000));
  hour.total.likelyPeakApparent = exactly(VoltAmperes(6300));
  list = reviewed(hour);
  EXPECT_NE(render(findingOf(list, "total.over")->trade, plainEnglish()).find("6300 VA"), std::string::npos);
}

StartCheck startOf(LoadId load, Verdict verdict) {
  StartCheck check;
  check.loads = {load};
  check.verdict = verdict;
  StartFigure<AcAmperes> leg;
  leg.averageBase = AcAmperes(4);
  leg.likelyBase = AcAmperes(9);
  leg.likelySum = AcAmperes(41);
  leg.highSum = AcAmperes(45);
  leg.likelyLimit = leg.highLimit = AcAmperes(37.5);
  leg.likelyTime = leg.highTime = Seconds(0.6);
  leg.verdict = verdict;
  check.leg[0] = leg;
  return check;
}

TEST(ReviewOfStarts, ShowsTheStartOnItsBaseAndTheAverageBeside) {
  const LoadId pump = example::loadNamed(sound::plan(), "Well pump");
  StartFigures starts;
  starts.checks = {startOf(pump, Verdict::over)};
  const std::vector<Finding> list = reviewed(quietHour(), starts);
  ASSERT_NE(findingOf(list, "start.over"), nullptr);
  const std::string trade = render(findingOf(list, "start.over")->trade, plainEnglish());
  for (const char* part : {"Well pump, L1", "41.0 A", "9.0 A", "4.0 A", "37.5 A", "0.6 s"})
    EXPECT_NE(trade.find(part), std::string::npos) << trade;
}

TEST(ReviewOfStarts, NotKnownIsSomethingToCheckOnSite) {
  const LoadId pump = example::loadNamed(sound::plan(), "Well pump");
  StartFigures starts;
  starts.checks = {startOf(pump, Verdict::notKnown)};
  std::vector<Finding> list = reviewed(quietHour(), starts);
  ASSERT_NE(findingOf(list, "start.unknown"), nullptr);
  EXPECT_EQ(findingOf(list, "start.unknown")->severity, Severity::checkOnSite);
  starts.checks = {startOf(pump, Verdict::within)};
  list = reviewed(quietHour(), starts);
  EXPECT_EQ(findingOf(list, "start.unknown"), nullptr);
  EXPECT_EQ(findingOf(list, "start.over"), nullptr);
}

TEST(ReviewOfStarts, PairAndAllAtOnceAreAdvice) {
  const Plan plan = sound::plan();
  StartFigures starts;
  StartCheck pair = startOf(example::loadNamed(plan, "Well pump"), Verdict::over);
  pair.loads.push_back(example::loadNamed(plan, "Refrigerator"));
  starts.worstPair = pair;
  starts.allAtOnce = pair;
  std::vector<Finding> list = reviewed(quietHour(), starts);
  for (const char* key : {"start.pair", "start.all_at_once"}) {
    ASSERT_NE(findingOf(list, key), nullptr) << key;
    EXPECT_EQ(findingOf(list, key)->severity, Severity::advice) << key;
  }
  starts.worstPair->verdict = starts.allAtOnce->verdict = Verdict::within;
  list = reviewed(quietHour(), starts);
  for (const char* key : {"start.pair", "start.all_at_once"}) EXPECT_EQ(findingOf(list, key), nullptr) << key;
}

TEST(ReviewOfTheFeeder, SaysWhereNoDeviceOrWireCarriesTheLoad) {
  Plan plan = sound::plan();
  // Far above the largest rating and the largest conductor of the tables.
  plan.transfer.edit().calculatedLoad = VoltAmperes(900000);
  EXPECT_NE(findingOf(sound::findings(plan), "feeder.nothing_fits"), nullptr);
  EXPECT_EQ(findingOf(sound::findings(sound::plan()), "feeder.nothing_fits"), nullptr);
}

TEST(ReviewOfTheOutage, SaysWhereAnAverageEndsIt) {
  OutageFigures outage;
  outage.known = true;
  outage.likely.reason = OutageEnd::floorReached;
  EXPECT_EQ(findingOf(reviewed(quietHour(), {}, outage), "outage.overload"), nullptr);
  for (const OutageEnd reason :
       {OutageEnd::legOverload, OutageEnd::totalOverload, OutageEnd::batteryCurrent}) {
    outage.likely.reason = reason;
    EXPECT_NE(findingOf(reviewed(quietHour(), {}, outage), "outage.overload"), nullptr);
  }
}

}  // namespace
}  // namespace stayalight
