// The feeder as a one-line: every piece has its line, and nothing lies on something else.

#include <QtTest/QtTest>

#include "tests/core/wiring/feeder_plans.h"
#include "ui/shell/feeder_picture.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

using namespace stayalight;

namespace {

Plan planOf(Arrangement arrangement, GeneratorPoint generator, bool bypass, bool charging) {
  Plan plan = feeder::manualSwitch();
  plan.transfer.edit().arrangement = arrangement;
  plan.transfer.edit().bypass = bypass ? Answer::yes : Answer::no;
  Generator& made = plan.generator.edit();
  made.comesIn = generator;
  made.continuous = Watts(7200);
  made.device = RatingAmperes(30);
  if (charging || arrangement == Arrangement::inverterPassThrough)
    example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 30, Feeds::inverterInput, Stage::fresh);
  return plan;
}

bool crosses(const QRectF& rect, QPointF a, QPointF b) {
  const QRectF line = QRectF(a, b).normalized().adjusted(-0.8, -0.8, 0.8, 0.8);
  return line.intersects(rect);  // all of them are level or upright
}

QString faultOf(const FeederPicture& picture, const QRectF& area) {
  for (std::size_t i = 0; i < picture.texts.size(); ++i) {
    const FeederPicture::Text& text = picture.texts[i];
    if (!area.adjusted(-0.1, -0.1, 0.1, 0.1).contains(text.rect)) return text.text + " leaves the picture";
    for (std::size_t j = i + 1; j < picture.texts.size(); ++j) {
      if (text.rect.intersects(picture.texts[j].rect)) return text.text + " lies on " + picture.texts[j].text;
    }
    for (const auto& box : picture.boxes) {
      if (text.rect.intersects(box.rect)) return text.text + " lies on the box " + box.title;
    }
    for (const auto& symbol : picture.symbols) {
      if (symbol.mark != FeederPicture::Mark::blade && text.rect.intersects(symbol.rect()))
        return text.text + " lies on a symbol";
    }
    for (const auto& line : picture.lines) {
      for (std::size_t p = 1; p < line.points.size(); ++p) {
        if (crosses(text.rect, line.points[p - 1], line.points[p]))
          return text.text + " is crossed by a line";
      }
    }
  }
  for (std::size_t i = 0; i < picture.boxes.size(); ++i) {
    if (!area.contains(picture.boxes[i].rect)) return picture.boxes[i].title + " leaves the picture";
    for (std::size_t j = i + 1; j < picture.boxes.size(); ++j) {
      if (picture.boxes[i].rect.intersects(picture.boxes[j].rect))
        return picture.boxes[i].title + " lies on " + picture.boxes[j].title;
    }
    for (const auto& symbol : picture.symbols) {
      if (picture.boxes[i].rect.intersects(symbol.rect()))
        return picture.boxes[i].title + " has a symbol on it";
    }
    // Lines end at the edge of a box and never run through it.
    const QRectF inside = picture.boxes[i].rect.adjusted(1.5, 1.5, -1.5, -1.5);
    for (const auto& line : picture.lines) {
      for (std::size_t p = 1; p < line.points.size(); ++p) {
        if (crosses(inside, line.points[p - 1], line.points[p]))
          return picture.boxes[i].title + " is crossed by a line";
      }
    }
  }
  return {};
}

}  // namespace

class FeederPictureTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() { QVERIFY(loadFaces()); }

  void everyPieceHasItsLineAndNothingLiesOnAnother() {
    const ProgramLanguage language;
    for (const Arrangement arrangement :
         {Arrangement::manualSwitch, Arrangement::automaticSwitch, Arrangement::inverterPassThrough}) {
      for (const GeneratorPoint generator : {GeneratorPoint::none, GeneratorPoint::transfer,
                                             GeneratorPoint::inverterInput, GeneratorPoint::mainPanel}) {
        for (const bool bypass : {false, true}) {
          for (const bool charging : {false, true}) {
            const Plan plan = planOf(arrangement, generator, bypass, charging);
            const FeederFacts facts = feederFacts(plan, assess(plan), language);
            for (const double width : {360.0, 400.0, 463.0, 620.0}) {
              for (const double height : {leastPictureHeight(facts), pictureHeight(facts), 150.0}) {
                const QRectF area(12, 24, width, height);
                const FeederPicture picture = feederPicture(facts, area);
                const QString where = QString::fromLatin1("%1 %2 bypass %3 charging %4, %5 x %6: ")
                                          .arg(static_cast<int>(arrangement))
                                          .arg(static_cast<int>(generator))
                                          .arg(bypass)
                                          .arg(charging)
                                          .arg(width)
                                          .arg(height);
                const QString fault = faultOf(picture, area);
                QVERIFY2(fault.isEmpty(), qPrintable(where + fault));
                QCOMPARE(picture.lines.size(), segments(plan).size());
                for (const Segment piece : segments(plan)) {
                  const auto found = std::find_if(picture.lines.begin(), picture.lines.end(),
                                                  [&](const auto& line) { return line.segment == piece; });
                  QVERIFY2(found != picture.lines.end(), qPrintable(where + "a piece without a line"));
                  QVERIFY(found->points.size() >= 2);
                }
                QCOMPARE(picture.boxes.size(), generator == GeneratorPoint::none ? 3U : 4U);
              }
            }
          }
        }
      }
    }
  }

  void whatAPieceIsMadeOfStandsBesideIt() {
    const Plan plan = planOf(Arrangement::automaticSwitch, GeneratorPoint::transfer, true, true);
    const Assessment assessment = assess(plan);
    const FeederFacts facts = feederFacts(plan, assessment, ProgramLanguage());
    const FeederPicture picture = feederPicture(facts, QRectF(0, 0, 620, pictureHeight(facts)));
    QStringList all;
    for (const auto& text : picture.texts) all << text.text;
    const auto bypass = feeder::at(assessment.segments, Segment::bypass).device.rating->count();
    QVERIFY2(all.filter(QStringLiteral("Bypass %1 A").arg(bypass)).size() == 1, qPrintable(all.join(u'|')));
    QCOMPARE(all.filter(QStringLiteral("60 A")).size(), 1);  // the feeder's breaker of the plan
    QCOMPARE(all.filter(QStringLiteral("30 A")).size(), 2);  // the generator's, and the inverter's input
    QVERIFY(feederPicture(FeederFacts(), QRectF(0, 0, 400, 80)).boxes.empty());
  }
};

QTEST_MAIN(FeederPictureTest)
#include "feeder_picture_test.moc"
