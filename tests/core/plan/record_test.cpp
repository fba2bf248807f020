#include <gtest/gtest.h>

#include "core/plan/plan.h"

namespace stayalight {
namespace {

TEST(Choice, keepsAWordItDoesNotKnow) {
  const auto later = Choice<PanelRole>::otherWord("vehicle");
  EXPECT_FALSE(later.known());
  EXPECT_EQ(later.word(), "vehicle");
  for (const PanelRole role : {PanelRole::main, PanelRole::subpanel, PanelRole::backup})
    EXPECT_FALSE(later.is(role));
  EXPECT_EQ(later.valueOr(PanelRole::subpanel), PanelRole::subpanel);
  EXPECT_FALSE(later == Choice<PanelRole>(PanelRole::main)) << "though its enumerator is the first";
  EXPECT_TRUE(later == Choice<PanelRole>::otherWord("vehicle"));
  EXPECT_FALSE(later == Choice<PanelRole>::otherWord("boat"));
}

TEST(Choice, knownWordsGoBothWays) {
  const Choice<Half> outer = Half::outer;
  EXPECT_TRUE(outer.known());
  EXPECT_TRUE(outer.is(Half::outer));
  EXPECT_FALSE(outer.is(Half::inner));
  EXPECT_EQ(outer.word(), "outer");
  EXPECT_EQ(outer.valueOr(Half::whole), Half::outer);
}

TEST(Shared, copiesAreTheSameUntilOneChanges) {
  Shared<Site> one;
  Shared<Site> other = one;
  EXPECT_TRUE(one.same(other));
  one.edit().name = "changed";
  EXPECT_FALSE(one.same(other));
  EXPECT_EQ(other->name, "");
  EXPECT_FALSE(one == other);
  other.edit().name = "changed";
  EXPECT_TRUE(one == other) << "equal, though not the same";
  EXPECT_FALSE(one.same(other));
}

TEST(Identity, zeroIsNone) {
  EXPECT_FALSE(PanelId{}.valid());
  EXPECT_TRUE(PanelId{1}.valid());
  EXPECT_FALSE(PanelId{-1}.valid());
  static_assert(!std::is_convertible_v<PanelId, BreakerId>);
}

}  // namespace
}  // namespace stayalight
