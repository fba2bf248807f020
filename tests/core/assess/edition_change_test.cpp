// Before an edition is changed its effects are listed.

#include "core/assess/edition_change.h"

#include <gtest/gtest.h>

#include "tests/core/demand/calculated_house.h"
#include "tests/core/example_plans.h"

using namespace stayalight;

namespace {

std::string text(const Message& message) { return render(message, plainEnglish()); }

const EditionChange* changeOf(const std::vector<EditionChange>& changes, const std::string& what) {
  for (const EditionChange& change : changes) {
    if (text(change.what).find(what) != std::string::npos) return &change;
  }
  return nullptr;
}

TEST(EditionChanges, TheSameEditionChangesNothing) {
  const Plan plan = example::exampleHouseMoved();
  EXPECT_TRUE(editionChanges(plan, plan.site->edition.valueOr(Edition::y2017)).empty());
}

TEST(EditionChanges, ASurgeDeviceIsAskedForSinceTheEditionOf2023) {
  // NFPA 70 (2023) 215.18 is new in that edition.
  const Plan plan = example::exampleHouseMoved();
  const std::vector<EditionChange> changes = editionChanges(plan, Edition::y2020);
  const EditionChange* change = changeOf(changes, "surge");
  ASSERT_NE(change, nullptr);
  EXPECT_EQ(text(change->before), "found");
  EXPECT_EQ(text(change->after), "not found");
}

TEST(EditionChanges, SectionsThatMovedAreListedOnce) {
  // 210.12(D) became 210.12(E) with the edition of 2023 (arc-fault protection of extended circuits).
  const Plan plan = example::exampleHouseMoved();
  const std::vector<EditionChange> changes = editionChanges(plan, Edition::y2020);
  const EditionChange* change = changeOf(changes, "arc-fault protection");
  ASSERT_NE(change, nullptr);
  EXPECT_EQ(text(change->before), "210.12(E)");
  EXPECT_EQ(text(change->after), "210.12(D)");
  for (const EditionChange& one : changes) {
    EXPECT_EQ(std::count_if(changes.begin(), changes.end(),
                            [&](const EditionChange& c) {
                              return text(c.what) == text(one.what) && text(c.before) == text(one.before) &&
                                     text(one.what).rfind("Section", 0) == 0;
                            }) > 1,
              false)
        << text(one.what);
    EXPECT_NE(text(one.before), text(one.after)) << text(one.what);
  }
}

// The article of the load calculation moved with the edition of 2026 (published lists of changes): its lines
// cite it though no finding does.
TEST(EditionChanges, SectionsOfLinesAndStepsAreListedToo) {
  const Plan plan = calculated::house();
  const std::vector<EditionChange> changes = editionChanges(plan, Edition::y2026);
  const auto moved = [&](const char* before, const char* after) {
    return std::any_of(changes.begin(), changes.end(), [&](const EditionChange& change) {
      return text(change.before) == before && text(change.after) == after;
    });
  };
  EXPECT_TRUE(moved("220.61", "120.61"));
  EXPECT_TRUE(moved("220.41", "120.41"));
  EXPECT_TRUE(moved("310.16", "not confirmed"));
  EXPECT_TRUE(moved("no such rule", "702.4(A)(3)"));
}

// 314.16(B)(5): before the edition of 2020 all grounds together were one volume.
TEST(EditionChanges, FiguresOfBoxesAreCompared) {
  Plan plan = calculated::house();
  SpliceBox box;
  box.id = {1};
  box.name = "Attic";
  box.volume = CubicInches(60);
  plan.spliceBoxes.emplace_back(box);
  for (auto& circuit : plan.circuits) {
    circuit.edit().conductor = ConductorSize::awg12;
    circuit.edit().splice = Splice::inBox;
    circuit.edit().spliceBox = box.id;
  }
  EXPECT_NE(changeOf(editionChanges(plan, Edition::y2017), "Attic"), nullptr);
  EXPECT_EQ(changeOf(editionChanges(plan, Edition::y2020), "Attic"), nullptr);
}

TEST(EditionChanges, ACanadianSiteHasNone) {
  Plan plan = example::exampleHouseMoved();
  plan.site.edit().country = Country::canada;
  EXPECT_TRUE(editionChanges(plan, Edition::y2020).empty());
}

}  // namespace
