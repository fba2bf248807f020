// Each small number of the rules against the section it is from, typed here a second time.

#include "core/code/numbers.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/code/citations.h"
#include "core/code/tables.h"

using namespace stayalight;

namespace {

TEST(Numbers, TypedAccessorsGiveTheFiguresOfTheSections) {
  EXPECT_DOUBLE_EQ(continuousFactor().count(), 1.25);        // NFPA 70 215.2(A)(1), 215.3
  EXPECT_EQ(nextSizeUpLimit(), RatingAmperes(800));          // 240.4(B)
  EXPECT_EQ(terminalCurrent(), RatingAmperes(100));          // 110.14(C)(1)
  EXPECT_EQ(terminalSize(), ConductorSize::awg1);            // 110.14(C)(1)
  EXPECT_EQ(nippleLength(), Length::inches(24));             // 310.15(C)(1)(b)
  EXPECT_EQ(nmColumn(), TemperatureColumn::c60);             // 334.80
  EXPECT_DOUBLE_EQ(neutralRangeDryerFactor().count(), 0.7);  // 220.61(B)
  EXPECT_DOUBLE_EQ(neutralReductionAbove().count(), 200.0);  // 220.61(B)
  EXPECT_DOUBLE_EQ(neutralReductionFactor().count(), 0.7);   // 220.61(B)
  EXPECT_DOUBLE_EQ(dropAdviceOneRun().count(), 0.03);        // 215.2, note
  EXPECT_DOUBLE_EQ(nominalLegVolts().count(), 120.0);
  EXPECT_DOUBLE_EQ(nominalLineVoltsSplitPhase().count(), 240.0);
  EXPECT_DOUBLE_EQ(nominalLineVoltsWye().count(), 208.0);
  EXPECT_DOUBLE_EQ(loadingMargin().count(), 0.8);  // common practice, no source
}

TEST(Numbers, OtherRowsGiveTheFiguresOfTheSections) {
  EXPECT_EQ(afciDevice(), RatingAmperes(20));                            // 210.12(A), 2023: (B)
  EXPECT_EQ(rodElectrodeConductor(), ConductorSize::awg6);               // 250.66(A)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::buildingOneCircuit), 15.0);    // 225.39(A)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::buildingTwoCircuits), 30.0);   // 225.39(B)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::buildingDisconnect), 60.0);    // 225.39(D)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::busOppositeEndsFactor), 1.2);  // 705.12(B)(2)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::sourceCurrentFactor), 1.25);   // 705.28, 705.30
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::afciExtensionLength), 6.0);    // 210.12(E), in ft
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::wiringSpaceConductors), 0.4);  // 312.8(A)
  EXPECT_DOUBLE_EQ(codeNumber(CodeNumber::wiringSpaceSplices), 0.75);    // 312.8(A)
}

// Two legs of a wye stand 120 degrees apart: sqrt(3) x 120 V = 207.8 V, called 208.
TEST(Numbers, WyeVoltageIsRootThreeTimesTheLeg) {
  EXPECT_NEAR(nominalLineVoltsWye().count(), nominalLegVolts().count() * std::sqrt(3.0), 0.2);
  EXPECT_DOUBLE_EQ(nominalLineVoltsSplitPhase().count(), 2.0 * nominalLegVolts().count());
}

TEST(Numbers, EachHasARule) {
  for (std::size_t i = 0; i < kCodeNumberKeys.size(); ++i) {
    const auto which = static_cast<CodeNumber>(i);
    EXPECT_NE(citationRow(ruleOf(which)), nullptr) << kCodeNumberKeys[i];
  }
  EXPECT_EQ(unitOf(CodeNumber::nippleLength), "in");
}

TEST(Numbers, ChangedNumberReachesTheAnswer) {
  Tables changed = publishedTables();
  changed.numbers[static_cast<std::size_t>(CodeNumber::continuousFactor)] = 1.3;
  changed.numbers[static_cast<std::size_t>(CodeNumber::nmColumn)] = 75.0;
  EXPECT_DOUBLE_EQ(continuousFactor(changed).count(), 1.3);
  EXPECT_EQ(nmColumn(changed), TemperatureColumn::c75);
}

}  // namespace
