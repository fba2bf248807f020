// Before an edition is changed its effects are listed.

#include "core/assess/edition_change.h"

#include <gtest/gtest.h>

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

TEST(EditionChanges, ACanadianSiteHasNone) {
  Plan plan = example::exampleHouseMoved();
  plan.site.edit().country = Country::canada;
  EXPECT_TRUE(editionChanges(plan, Edition::y2020).empty());
}

}  // namespace
