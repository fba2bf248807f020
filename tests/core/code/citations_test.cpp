// Section numbers by edition against a second typed list. Source: NFPA 70 2017, 2020, 2023 as quoted on
// public pages; the 2026 numbers from published lists of changes. What those pages do not show stays empty.

#include "core/code/tables.h"

#include <gtest/gtest.h>

using namespace stayalight;

namespace {

struct Row {
  const char* rule;
  const char* sections[4];
};

TEST(Citations, ResolveByEditionAndStayEmptyWhereNotConfirmed) {
  for (const Row& row : {
           Row{"multiwire.same_panel", {"210.4(A)", "210.4(A)", "210.4(A)", ""}},
           Row{"multiwire.common_trip",
               {"210.4(C), 240.15(B)(1)", "210.4(C), 240.15(B)(1)", "210.4(C), 240.15(B)(1)", ""}},
           Row{"capacity.manual", {"702.4(B)(1)", "702.4(B)(1)", "702.4(A)(1)", "702.4(A)(1)"}},
           Row{"capacity.automatic", {"702.4(B)(2)", "702.4(B)(2)", "702.4(A)(2)", "702.4(A)(2)"}},
           Row{"capacity.power_control", {"", "", "", "702.4(A)(3)"}},
           Row{"conductor.ampacity", {"310.15(B)(16)", "310.16", "310.16", ""}},
           Row{"conductor.ambient", {"310.15(B)(2)(a)", "310.15(B)(1)", "310.15(B)(1)", ""}},
           Row{"conductor.adjustment", {"310.15(B)(3)(a)", "310.15(C)(1)", "310.15(C)(1)", ""}},
           Row{"feeder.neutral", {"220.61", "220.61", "220.61", "120.61"}},
           Row{"feeder.neutral_minimum", {"215.2(A)(2)", "215.2(A)(2)", "215.2(B)", ""}},
           Row{"feeder.surge", {"", "", "215.18", ""}},
           Row{"bond.load_side",
               {"250.24(A)(5), 250.142(B)", "250.24(A)(5), 250.142(B)", "250.24(B), 250.142(B)",
                "250.24(B)"}},
           Row{"building.disconnect", {"225.31, 225.32", "225.31, 225.32", "225.31", ""}},
           Row{"building.electrode", {"250.32(A)", "250.32(A)", "250.32(A)", ""}},
           Row{"building.ground", {"250.32(B)", "250.32(B)", "250.32(B)", ""}},
           Row{"building.disconnect_rating", {"225.39", "225.39", "225.39", ""}},
           Row{"capacity.managed", {"702.4(B)(2)(b)", "702.4(B)(2)(b)", "702.4(A)(2)(b)", ""}},
           Row{"source.conductor", {"", "705.28", "705.28", ""}},
           Row{"source.device", {"", "705.30", "705.30", ""}},
           Row{"afci.extended", {"210.12(D)", "210.12(D)", "210.12(E)", "210.12(E)"}},
           Row{"load.calculation", {"Art. 220", "Art. 220", "Art. 220", "Art. 120"}},
           Row{"disconnect.emergency", {"", "230.85", "230.85", "230.70"}},
           Row{"directory.circuits", {"408.4(A)", "408.4(A)", "408.4(A)", ""}},
           Row{"practice.leg_load", {"", "", "", ""}},
       }) {
    for (const Edition edition : kEditions) {
      const std::string expected = row.sections[index(edition)];
      const auto found = sectionOf(RuleId{row.rule}, edition);
      EXPECT_EQ(found.has_value(), !expected.empty()) << row.rule << ' ' << name(edition);
      if (found) {
        EXPECT_EQ(*found, expected) << row.rule << ' ' << name(edition);
      }
    }
  }
}

TEST(Citations, EveryRuleThatBindsHasASectionIn2023OrSaysWhyNot) {
  for (const CitationRow& row : publishedTables().citations) {
    const bool practice =
        row.rule.starts_with("practice.") || row.rule.starts_with("phase.split") || row.rule == "phase.wye";
    if (practice) {
      EXPECT_EQ(row.basis, RuleBasis::practice) << row.rule;
      for (const std::string_view section : row.sections) EXPECT_TRUE(section.empty()) << row.rule;
      continue;
    }
    const std::string_view in2023 = row.sections[index(Edition::y2023)];
    const bool notIn2023 = row.rule == "capacity.power_control" || row.rule == "capacity.island";
    EXPECT_EQ(in2023.empty() || in2023 == kNotInEdition, notIn2023) << row.rule;
  }
}

// What an edition brought is not there before (published lists of changes): surge protection of feeders 2023,
// outside emergency disconnects 2020, power control as a way to size the source 2026; which took the way of
// 710.15(A) out.
TEST(Citations, ARuleThatAnEditionLacksIsNotMerelyUnconfirmed) {
  EXPECT_TRUE(notInEdition(RuleId{"feeder.surge"}, Edition::y2020));
  EXPECT_FALSE(notInEdition(RuleId{"feeder.surge"}, Edition::y2023));
  EXPECT_FALSE(notInEdition(RuleId{"feeder.surge"}, Edition::y2026));  // not confirmed there
  EXPECT_TRUE(notInEdition(RuleId{"capacity.power_control"}, Edition::y2023));
  EXPECT_TRUE(notInEdition(RuleId{"capacity.island"}, Edition::y2026));
  EXPECT_FALSE(notInEdition(RuleId{"no.such_rule"}, Edition::y2023));
  for (const CitationRow& row : publishedTables().citations) {
    for (const Edition edition : kEditions) {
      if (notInEdition(RuleId{row.rule}, edition)) {
        EXPECT_FALSE(sectionOf(RuleId{row.rule}, edition)) << row.rule;
      }
    }
  }
}

TEST(Citations, BasisIsToldApart) {
  EXPECT_EQ(basis(RuleId{"multiwire.same_panel"}), RuleBasis::code);
  EXPECT_EQ(basis(RuleId{"breaker.listing"}), RuleBasis::listedInstruction);
  EXPECT_EQ(basis(RuleId{"drop.advice"}), RuleBasis::practice);
  EXPECT_EQ(basis(RuleId{"practice.leg_load"}), RuleBasis::practice);
  EXPECT_FALSE(basis(RuleId{"no.such_rule"}));
}

TEST(Citations, UnknownRuleHasNoCitation) {
  EXPECT_EQ(citationRow(RuleId{"no.such_rule"}), nullptr);
  EXPECT_EQ(citationRow(RuleId{""}), nullptr);
  EXPECT_FALSE(sectionOf(RuleId{"no.such_rule"}, Edition::y2023));
  EXPECT_EQ(citationOrNearest(RuleId{"no.such_rule"}, Edition::y2023), "no.such_rule");
}

TEST(Citations, NearestSaysThatItIsNotConfirmed) {
  EXPECT_EQ(citationOrNearest(RuleId{"source.device"}, Edition::y2020), "705.30");
  EXPECT_EQ(citationOrNearest(RuleId{"source.device"}, Edition::y2017),
            "705.30 (2023; not confirmed for 2017)");
}

TEST(Editions, HaveYearsAndNames) {
  EXPECT_EQ(year(Edition::y2017), 2017);
  EXPECT_EQ(year(Edition::y2026), 2026);
  EXPECT_EQ(name(Edition::y2020), "2020");
  EXPECT_EQ(editionOfYear(2023), Edition::y2023);
  EXPECT_FALSE(editionOfYear(2021));
}

}  // namespace
