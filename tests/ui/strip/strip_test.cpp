// The curves of the strip as values: where they begin and end, what stands at an hour.

#include <QtTest/QtTest>
#include <cmath>

#include "ui/strip/strip_data.h"

using namespace stayalight;

class StripTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void curvesStartAtTheClock();
  void readingsLieOnTheCurves();
  void theAxisHoldsTheWholeRange();
  void theAxisStaysWhileTheStartIsDragged();
  void nightsLieBetweenSunsetAndSunrise();
  void withoutABatteryNothingIsDrawn();

 private:
  // A run that falls in a straight line from full to 10 % in `hours`.
  static OutageRun run(double hours) {
    OutageRun made;
    made.reason = OutageEnd::floorReached;
    made.end = Hours(hours);
    made.points = {
        {Hours(0), 1.0, {AcAmperes(3), AcAmperes(2)}, {AcAmperes(9), AcAmperes(7)}, Watts(600)},
        {Hours(hours / 2), 0.55, {AcAmperes(4), AcAmperes(1)}, {AcAmperes(8), AcAmperes(6)}, Watts(600)},
        {Hours(hours), 0.1, {}, {}, Watts(0)}};
    return made;
  }
  static Assessment example() {
    Assessment a;
    a.limits.leg = AcAmperes(25);
    a.outage.known = true;
    a.outage.low = run(8);
    a.outage.likely = run(10);
    a.outage.high = run(14);
    a.outage.runtime = {Hours(8), Hours(10), Hours(14)};
    a.outage.energy.floor = 0.1;
    return a;
  }
};

void StripTest::curvesStartAtTheClock() {
  Scenario scenario;
  scenario.start = TimeOfDay(18 * 60);
  const StripData data = stripData(scenario, example());
  QCOMPARE(data.start, 18.0);
  QCOMPARE(data.likely.front(), QPointF(18.0, 100.0));
  QCOMPARE(data.endLikely, 28.0);
  QVERIFY(data.first <= 12.0);
  QVERIFY(data.likely.size() <= 300);
}

void StripTest::readingsLieOnTheCurves() {
  Scenario scenario;
  const StripData data = stripData(scenario, example());
  const auto reading = readingAt(data, 20.5);
  QVERIFY(reading.has_value());
  QVERIFY(std::abs(reading->likely - 77.5) < 1e-9);
  QVERIFY(std::abs(reading->low - (100.0 - 2.5 / 8.0 * 90.0)) < 1e-9);
  QCOMPARE(reading->average[0], 3.0);
  QCOMPARE(reading->peak[1], 7.0);
  QVERIFY(!readingAt(data, 17.0).has_value());
  QVERIFY(readingAt(data, 29.0)->dark);
  QVERIFY(!readingAt(data, 27.9)->dark);
}

void StripTest::theAxisHoldsTheWholeRange() {
  Scenario scenario;
  for (const int hour : {0, 3, 6, 13, 23}) {
    scenario.start = TimeOfDay(hour * 60);
    const StripData data = stripData(scenario, example());
    QVERIFY(data.first < data.start);
    QVERIFY(data.last > data.endHigh);
    QVERIFY(data.amperes > 25.0);
  }
}

void StripTest::theAxisStaysWhileTheStartIsDragged() {
  Scenario scenario;
  const double first = stripData(scenario, example()).first;
  scenario.start = TimeOfDay(2 * 60);
  const StripData data = stripData(scenario, example(), first);
  QCOMPARE(data.first, first);
  QCOMPARE(data.start, 26.0);
}

// When the sun rises and sets is tested in core/sun; here, what the axis shows of it.
void StripTest::nightsLieBetweenSunsetAndSunrise() {
  Plan plan;
  plan.scenario.edit().month = 1;
  QVERIFY(nights(plan, 12.0, 48.0).empty());  // no latitude
  Site& site = plan.site.edit();
  site.latitude = Degrees(44.0);
  site.longitude = Degrees(-75.0);
  site.utcOffset = Hours(-5.0);
  const std::vector<QPointF> winter = nights(plan, 12.0, 48.0);
  QCOMPARE(winter.size(), std::size_t{2});
  QVERIFY(winter[0].x() > 16.0 && winter[0].x() < 17.5);  // sunset in January at 44 degrees
  QVERIFY(winter[0].y() > 31.0 && winter[0].y() < 32.0);
  QVERIFY(std::abs(winter[1].x() - winter[0].x() - 24.0) < 1e-9);
  QCOMPARE(winter[1].y(), 48.0);  // cut to the axis
  const std::vector<QPointF> early = nights(plan, -6.0, 30.0);
  QCOMPARE(early.size(), std::size_t{2});
  QCOMPARE(early[0].x(), -6.0);
  plan.scenario.edit().month = 6;
  const std::vector<QPointF> summer = nights(plan, 12.0, 48.0);
  QVERIFY(summer[0].y() - summer[0].x() < winter[0].y() - winter[0].x() - 5.0);
  plan.site.edit().latitude = Degrees(75.0);
  QVERIFY(nights(plan, 12.0, 48.0).empty());
  plan.scenario.edit().month = 12;
  QCOMPARE(nights(plan, 12.0, 48.0), (std::vector<QPointF>{{12.0, 48.0}}));
}

void StripTest::withoutABatteryNothingIsDrawn() {
  const StripData data = stripData(Scenario{}, Assessment{});
  QVERIFY(!data.known);
  QVERIFY(data.likely.empty());
  QVERIFY(!readingAt(data, 20.0).has_value());
}

QTEST_MAIN(StripTest)
#include "strip_test.moc"
