// Whole segments: what the rooms' pieces make together, and what is held over, within, or not known.

#include <gtest/gtest.h>

#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using namespace stayalight::feeder;

namespace {

std::string word(const std::optional<ConductorSize>& size) {
  return size ? std::string(name(*size)) : "none";
}

SegmentFigures figure(const Plan& plan, Segment segment) { return at(figuresOf(plan), segment); }

TEST(Segments, ManualSwitch) {
  Plan plan = manualSwitch();
  const SegmentFigures utility = figure(plan, Segment::mainToSwitch);
  // 1.25 x 10 + 27.5 = 40 A; the breaker drawn for it has 60 A, the switch takes 60 A. 60 A and 75 C: 6 AWG,
  // 10 AWG ground.
  EXPECT_NEAR(utility.device.minimum->count(), 40.0, 1e-9);
  EXPECT_EQ(utility.device.rating, RatingAmperes(40));
  EXPECT_EQ(utility.device.inPlan, RatingAmperes(60));
  EXPECT_EQ(utility.device.maximum, RatingAmperes(60));
  EXPECT_EQ(word(utility.conductor.size), "6");
  EXPECT_EQ(word(utility.ground), "10");
  EXPECT_EQ(utility.verdict, Verdict::within) << utility.over.size() << ' ' << utility.notKnown.size();

  const SegmentFigures inverter = figure(plan, Segment::inverterToSwitch);
  // 31.25 A: 35 A within the label's 40 A; 35 A at 75 C: 10 AWG has 35 A but may take 30 A only, so 8 AWG.
  EXPECT_EQ(inverter.device.rating, RatingAmperes(35));
  EXPECT_EQ(inverter.device.maximum, RatingAmperes(40));
  EXPECT_EQ(inverter.device.maximumFrom.id.key, "wiring.maximum.label");
  EXPECT_EQ(word(inverter.conductor.size), "8");
  EXPECT_EQ(inverter.verdict, Verdict::within);

  const SegmentFigures after = figure(plan, Segment::switchToBackup);
  EXPECT_EQ(after.device.rating, RatingAmperes(60));
  EXPECT_EQ(after.device.governs.id.key, "wiring.device.follows");
  EXPECT_EQ(word(after.conductor.size), "6");
  EXPECT_EQ(word(after.ground), "10");
  EXPECT_EQ(after.verdict, Verdict::within);
}

TEST(Segments, WireAfterTheSwitchFollowsTheInverterWhereThatIsLarger) {
  Plan plan = manualSwitch();
  plan.inverter.edit().legCurrent = AcAmperes(40);
  plan.inverter.edit().maximumOutputDevice = RatingAmperes(60);
  for (auto& breaker : plan.breakers) {
    if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(40);
  }
  const SegmentFigures after = figure(plan, Segment::switchToBackup);
  EXPECT_EQ(after.device.rating, RatingAmperes(50));
  EXPECT_EQ(word(figure(plan, Segment::mainToSwitch).conductor.size), "8");
  EXPECT_EQ(word(after.conductor.size), "8");
  EXPECT_EQ(after.conductor.device, RatingAmperes(50));
}

TEST(Segments, PassThrough) {
  const Plan plan = passThrough();
  const SegmentFigures input = figure(plan, Segment::mainToInverter);
  // 1.25 x 22.5 + 27.5 = 55.625 A: 60 A, which input and relay take.
  EXPECT_NEAR(input.device.minimum->count(), 55.625, 1e-9);
  EXPECT_EQ(input.device.rating, RatingAmperes(60));
  EXPECT_EQ(input.device.maximum, RatingAmperes(60));
  EXPECT_EQ(word(input.conductor.size), "6");
  EXPECT_EQ(input.verdict, Verdict::within);
  const SegmentFigures output = figure(plan, Segment::inverterToBackup);
  EXPECT_EQ(output.device.rating, RatingAmperes(40));
  // With the relay closed the 60 A device stands ahead of this wire.
  EXPECT_EQ(output.conductor.device, RatingAmperes(60));
  EXPECT_EQ(word(output.conductor.size), "6");
  EXPECT_EQ(output.verdict, Verdict::within);
}

// A generator's own breaker limits what its inlet carries; without one NFPA 70, 445.13(A) asks for 115 % of
// the nameplate current (from memory).
TEST(Segments, GeneratorInlet) {
  Plan plan = manualSwitch();
  Generator& generator = plan.generator.edit();
  generator.comesIn = GeneratorPoint::transfer;
  generator.continuous = Watts(7200);
  generator.inlet = RatingAmperes(30);
  generator.device = RatingAmperes(30);
  addRun(plan, Segment::generatorInlet);
  const SegmentFigures guarded = figure(plan, Segment::generatorInlet);
  EXPECT_NEAR(guarded.device.minimum->count(), 30.0, 1e-9);
  EXPECT_EQ(guarded.device.rating, RatingAmperes(30));
  EXPECT_EQ(guarded.device.maximum, RatingAmperes(30));
  EXPECT_EQ(word(guarded.conductor.size), "10");
  EXPECT_EQ(guarded.verdict, Verdict::within);

  plan.generator.edit().device.reset();
  plan.generator.edit().inlet.reset();
  const SegmentFigures bare = figure(plan, Segment::generatorInlet);
  EXPECT_NEAR(bare.device.minimum->count(), 34.5, 1e-9);
  EXPECT_EQ(bare.device.rating, RatingAmperes(35));
  EXPECT_EQ(word(bare.conductor.size), "8")
      << "35 A at 75 C (Table 310.16), but 240.4(D) holds 10 AWG to 30 A";
  plan.generator.edit().continuous.reset();
  EXPECT_EQ(figure(plan, Segment::generatorInlet).verdict, Verdict::notKnown);
}

TEST(Segments, AGeneratorGivesNoMoreThanItsOwnBreakerLetsThrough) {
  // A set of 7,500 W (31.25 A) with its breaker and an inlet of 30 A: nothing is too small.
  Plan plan = manualSwitch();
  Generator& generator = plan.generator.edit();
  generator.comesIn = GeneratorPoint::transfer;
  generator.continuous = Watts(7500);
  generator.ratedCurrent = AcAmperes(31.25);
  generator.inlet = RatingAmperes(30);
  generator.device = RatingAmperes(30);
  addRun(plan, Segment::generatorInlet);
  const SegmentFigures figures = figure(plan, Segment::generatorInlet);
  EXPECT_NEAR(figures.device.minimum->count(), 30.0, 1e-9);
  EXPECT_FALSE(figures.device.belowMinimum);
  EXPECT_FALSE(figures.device.minimumAboveMaximum);
  EXPECT_EQ(figures.verdict, Verdict::within);
  // A breaker above what it gives leaves its rated current.
  plan.generator.edit().device = RatingAmperes(35);
  plan.generator.edit().inlet = RatingAmperes(50);
  EXPECT_NEAR(figure(plan, Segment::generatorInlet).device.minimum->count(), 31.25, 1e-9);
}

TEST(Segments, TheBreakerPastTheInverterIsTheBypasss) {
  Plan plan = passThrough();  // with an input breaker of 60 A, which the input takes
  plan.transfer.edit().bypass = Answer::yes;
  addRun(plan, Segment::bypass);
  EXPECT_FALSE(figure(plan, Segment::bypass).device.inPlan);
  const BreakerId around =
      example::addBreaker(plan, example::kMain, {Column::right, 9}, 2, 100, Feeds::feeder, Stage::fresh);
  example::editBreaker(plan, around).feedsPanel = example::kBackup;
  const SegmentFigures bypass = figure(plan, Segment::bypass);
  EXPECT_EQ(bypass.device.inPlan, RatingAmperes(100));
  EXPECT_EQ(bypass.conductor.device, RatingAmperes(100));
  EXPECT_EQ(word(bypass.conductor.size), "3");  // 100 A at 75 C, Table 310.16
  const SegmentFigures input = figure(plan, Segment::mainToInverter);
  EXPECT_EQ(input.device.inPlan, RatingAmperes(60));
  EXPECT_FALSE(input.device.aboveMaximum);
  // Without a breaker of the input the one to the subpanel is taken for it.
  std::erase_if(plan.breakers, [](const auto& breaker) { return breaker->feeds.is(Feeds::inverterInput); });
  EXPECT_EQ(figure(plan, Segment::mainToInverter).device.inPlan, RatingAmperes(100));
  EXPECT_TRUE(figure(plan, Segment::mainToInverter).device.aboveMaximum);
}

TEST(Segments, AroundAnAutomaticSwitchTheSameBreakerStandsAhead) {
  Plan plan = manualSwitch();  // its feeder breaker has 60 A, its load asks for 40 A
  plan.transfer.edit().arrangement = Arrangement::automaticSwitch;
  plan.transfer.edit().bypass = Answer::yes;
  addRun(plan, Segment::bypass);
  EXPECT_EQ(figure(plan, Segment::bypass).conductor.device, RatingAmperes(60));
  EXPECT_EQ(word(figure(plan, Segment::bypass).conductor.size), "6");
}

TEST(Segments, ThroughTheClosedRelayTheBusSeesTheDeviceAtTheUtilitysEnd) {
  // NFPA 70 (2023) 408.36: the device ahead of a panel is not above the panel's rating.
  Plan plan = passThrough();
  Panel& backup = example::editPanel(plan, example::kBackup);
  backup.mainBreaker.reset();
  backup.busRating = RatingAmperes(50);
  SegmentFigures output = figure(plan, Segment::inverterToBackup);
  EXPECT_EQ(output.device.aheadOfBus, RatingAmperes(60));
  EXPECT_EQ(output.verdict, Verdict::over);
  // A main breaker of its own, a large enough bus, or an output device between them: then not.
  example::editPanel(plan, example::kBackup).mainBreaker = RatingAmperes(50);
  EXPECT_FALSE(figure(plan, Segment::inverterToBackup).device.aheadOfBus);
  example::editPanel(plan, example::kBackup).mainBreaker.reset();
  example::editPanel(plan, example::kBackup).busRating = RatingAmperes(60);
  EXPECT_FALSE(figure(plan, Segment::inverterToBackup).device.aheadOfBus);
  example::editPanel(plan, example::kBackup).busRating = RatingAmperes(50);
  editRun(plan, Segment::inverterToBackup).fixedDevice = RatingAmperes(40);
  EXPECT_FALSE(figure(plan, Segment::inverterToBackup).device.aheadOfBus);
}

TEST(Segments, AnInletLargerThanItsSocketIsOver) {
  Plan plan = manualSwitch();
  Generator& generator = plan.generator.edit();
  generator.comesIn = GeneratorPoint::transfer;
  generator.continuous = Watts(7200);
  generator.inlet = RatingAmperes(20);
  generator.device = RatingAmperes(30);
  addRun(plan, Segment::generatorInlet);
  EXPECT_TRUE(figure(plan, Segment::generatorInlet).device.aboveMaximum);
  EXPECT_EQ(figure(plan, Segment::generatorInlet).verdict, Verdict::over);
}

TEST(Segments, BypassCarriesTheCalculatedLoad) {
  Plan plan = passThrough();
  plan.transfer.edit().bypass = Answer::yes;
  addRun(plan, Segment::bypass);
  const SegmentFigures around = figure(plan, Segment::bypass);
  // 2,400 VA continuous and 6,600 VA more at 240 V: 1.25 x 10 + 27.5 = 40 A.
  EXPECT_NEAR(around.device.minimum->count(), 40.0, 1e-9);
  EXPECT_EQ(around.device.rating, RatingAmperes(40));
  EXPECT_EQ(word(around.conductor.size), "8");
  EXPECT_EQ(around.verdict, Verdict::within);
}

TEST(Segments, EachTroubleMakesTheVerdictOver) {
  struct Row {
    const char* key;
    Segment segment;
    void (*change)(Plan&);
  };
  const auto breakerOf = [](Plan& plan, int amperes) {
    for (auto& breaker : plan.breakers) {
      if (breaker->feeds.is(Feeds::feeder)) breaker.edit().rating = RatingAmperes(amperes);
    }
  };
  static const auto setBreaker = breakerOf;
  for (const Row& row : {
           Row{"wiring.over.minimum_above_maximum", Segment::inverterToSwitch,
               [](Plan& plan) { plan.inverter.edit().maximumOutputDevice = RatingAmperes(30); }},
           Row{"wiring.over.device_below_minimum", Segment::mainToSwitch,
               [](Plan& plan) { setBreaker(plan, 30); }},
           Row{"wiring.over.device_above_maximum", Segment::mainToSwitch,
               [](Plan& plan) { setBreaker(plan, 70); }},
           Row{"wiring.over.device_above_maximum", Segment::mainToSwitch,
               [](Plan& plan) { example::editPanel(plan, example::kBackup).busRating = RatingAmperes(50); }},
           Row{"wiring.over.device_above_maximum", Segment::inverterToSwitch,
               [](Plan& plan) { editRun(plan, Segment::inverterToSwitch).fixedDevice = RatingAmperes(45); }},
           Row{"wiring.over.panel_main", Segment::switchToBackup,
               [](Plan& plan) {
                 example::editPanel(plan, example::kBackup).mainBreaker = RatingAmperes(30);
               }},
           Row{"wiring.over.conductor_too_small", Segment::mainToSwitch,
               [](Plan& plan) {
                 editRun(plan, Segment::mainToSwitch).fixedConductor = ConductorSize::awg10;
               }},
           Row{"wiring.over.not_protected", Segment::mainToSwitch,
               [](Plan& plan) { editRun(plan, Segment::mainToSwitch).fixedConductor = ConductorSize::awg8; }},
           Row{"wiring.over.not_protected", Segment::switchToBackup,
               [](Plan& plan) {
                 editRun(plan, Segment::switchToBackup).fixedConductor = ConductorSize::awg8;
               }},
           Row{"wiring.over.neutral", Segment::mainToSwitch,
               [](Plan& plan) { editRun(plan, Segment::mainToSwitch).fixedNeutral = ConductorSize::awg14; }},
           Row{"wiring.over.ground", Segment::mainToSwitch,
               [](Plan& plan) { editRun(plan, Segment::mainToSwitch).fixedGround = ConductorSize::awg12; }},
           Row{"wiring.over.no_conductor", Segment::mainToSwitch,
               [](Plan& plan) { editRun(plan, Segment::mainToSwitch).ambient = Temperature::celsius(88); }},
           Row{"wiring.over.no_rating", Segment::mainToSwitch,
               [](Plan& plan) { plan.transfer.edit().calculatedLoad = VoltAmperes(400000); }},
       }) {
    Plan plan = manualSwitch();
    row.change(plan);
    const SegmentFigures figures = figure(plan, row.segment);
    EXPECT_TRUE(says(figures.over, row.key)) << row.key;
    EXPECT_EQ(figures.verdict, Verdict::over) << row.key;
    EXPECT_FALSE(says(figure(manualSwitch(), row.segment).over, row.key)) << row.key;
    for (const Message& message : figures.over) {
      const std::string text = render(message, plainEnglish());
      EXPECT_EQ(text.find('<'), std::string::npos) << text;
    }
  }
}

TEST(Segments, PanelWithAMainBreakerOfItsOwnIsProtectedByIt) {
  Plan plan = manualSwitch();
  Panel& backup = example::editPanel(plan, example::kBackup);
  backup.busRating = RatingAmperes(50);
  backup.mainBreaker = RatingAmperes(50);
  EXPECT_FALSE(says(figure(plan, Segment::mainToSwitch).over, "wiring.over.device_above_maximum"));
}

TEST(Segments, WhatIsMissingMakesTheVerdictNotKnown) {
  struct Row {
    const char* key;
    Segment segment;
    void (*change)(Plan&);
  };
  for (const Row& row : {
           Row{"wiring.missing.run", Segment::mainToSwitch, [](Plan& plan) { plan.runs.clear(); }},
           Row{"wiring.missing.calculated_load", Segment::mainToSwitch,
               [](Plan& plan) { plan.transfer.edit().calculatedLoad.reset(); }},
           Row{"wiring.missing.calculated_load", Segment::switchToBackup,
               [](Plan& plan) { plan.transfer.edit().calculatedLoad.reset(); }},
           Row{"wiring.missing.rated_output", Segment::inverterToSwitch,
               [](Plan& plan) {
                 Inverter& inverter = plan.inverter.edit();
                 inverter.continuous.reset();
                 inverter.continuousApparent.reset();
                 inverter.legCurrent.reset();
                 inverter.legContinuous.reset();
               }},
           Row{"wiring.missing.label_maximum", Segment::inverterToSwitch,
               [](Plan& plan) { plan.inverter.edit().maximumOutputDevice.reset(); }},
           Row{"wiring.missing.switch_rating", Segment::mainToSwitch,
               [](Plan& plan) { plan.transfer.edit().rating.reset(); }},
           Row{"wiring.missing.bus_rating", Segment::mainToSwitch,
               [](Plan& plan) { example::editPanel(plan, example::kBackup).busRating.reset(); }},
       }) {
    Plan plan = manualSwitch();
    row.change(plan);
    const SegmentFigures figures = figure(plan, row.segment);
    EXPECT_TRUE(says(figures.notKnown, row.key)) << row.key;
    EXPECT_EQ(figures.verdict, Verdict::notKnown) << row.key;
  }
}

TEST(Segments, ARelayWithoutARatingIsNotWithin) {
  Plan plan = passThrough();
  plan.transfer.edit().rating.reset();
  plan.inverter.edit().passThrough.reset();
  EXPECT_TRUE(says(figure(plan, Segment::mainToInverter).notKnown, "wiring.missing.relay_rating"));
  // The rating of other transfer equipment is not that of the inverter's own relay.
  plan.transfer.edit().rating = RatingAmperes(200);
  EXPECT_TRUE(says(figure(plan, Segment::mainToInverter).notKnown, "wiring.missing.relay_rating"));
  plan.inverter.edit().passThrough = RatingAmperes(60);
  EXPECT_FALSE(says(figure(plan, Segment::mainToInverter).notKnown, "wiring.missing.relay_rating"));
}

TEST(Segments, WhatProtectsTheWireBehindTheSwitchIsHeldToTheSwitchToo) {
  Plan plan = manualSwitch();
  plan.transfer.edit().rating = RatingAmperes(15);
  const SegmentFigures figures = figure(plan, Segment::switchToBackup);
  EXPECT_TRUE(figures.device.aboveMaximum);
  EXPECT_EQ(figures.verdict, Verdict::over);
}

TEST(Segments, LargerWireThanRequiredEnlargesTheGround) {
  Plan plan = manualSwitch();
  editRun(plan, Segment::mainToSwitch).fixedConductor = ConductorSize::awg4;
  const SegmentFigures figures = figure(plan, Segment::mainToSwitch);
  EXPECT_EQ(word(figures.conductor.required), "6");
  EXPECT_EQ(figures.groundGoverns.id.key, "wiring.ground.upsized");
  // 10,380 x 41,740 / 26,240 = 16,511 cmil, a hair above 8 AWG.
  EXPECT_EQ(word(figures.ground), "6");
}

TEST(Segments, DropIsByLegForTheLengthOfTheRun) {
  Plan plan = manualSwitch();
  const auto near = figure(plan, Segment::mainToSwitch).drop;
  editRun(plan, Segment::mainToSwitch).length = Length::feet(80);
  const auto far = figure(plan, Segment::mainToSwitch).drop;
  ASSERT_TRUE(near && far);
  EXPECT_NEAR(far->lineToLine / near->lineToLine, 2.0, 0.01);
  editRun(plan, Segment::mainToSwitch).length = Length();
  EXPECT_FALSE(figure(plan, Segment::mainToSwitch).drop);
}

TEST(Segments, EditionChangesTheSmallestRating) {
  Plan plan = manualSwitch();
  plan.inverter.edit().legCurrent = AcAmperes(7);
  EXPECT_EQ(figure(plan, Segment::inverterToSwitch).device.rating, RatingAmperes(10));
  plan.site.edit().edition = Edition::y2020;
  EXPECT_EQ(figure(plan, Segment::inverterToSwitch).device.rating, RatingAmperes(15));
}

TEST(Segments, CanadianSiteGetsNoCodeFigures) {
  Plan plan = manualSwitch();
  plan.site.edit().country = Country::canada;
  EXPECT_TRUE(figuresOf(plan).empty());
}

TEST(Segments, NoArrangementHasNoSegments) {
  Plan plan = manualSwitch();
  plan.transfer.edit().arrangement = Arrangement::none;
  EXPECT_TRUE(figuresOf(plan).empty());
}

TEST(Segments, FixedDeviceBehindTheSwitchProtectsItsWire) {
  Plan plan = manualSwitch();
  editRun(plan, Segment::switchToBackup).fixedDevice = RatingAmperes(45);
  const SegmentFigures after = figure(plan, Segment::switchToBackup);
  EXPECT_EQ(after.device.rating, RatingAmperes(45));
  EXPECT_EQ(after.conductor.device, RatingAmperes(45));
  EXPECT_EQ(after.verdict, Verdict::within);
}

TEST(Segments, AmendedTableReachesTheFigures) {
  const Plan plan = manualSwitch();
  Tables amended = publishedTables();
  amended.numbers[static_cast<std::size_t>(CodeNumber::continuousFactor)] = 2.0;
  const auto figures = segmentFigures(plan, loadsOf(plan), Edition::y2023, nullptr, amended);
  EXPECT_EQ(at(figures, Segment::inverterToSwitch).device.rating, RatingAmperes(50));
}

}  // namespace
