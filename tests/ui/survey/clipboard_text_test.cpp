#include "ui/survey/clipboard_text.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

using Rows = std::vector<std::vector<std::string>>;

TEST(ClipboardText, whatIsCopiedIsPasted) {
  const Rows cases[] = {
      {{"1", "Kitchen", "20"}, {"3, 5", "Range", "50"}},
      {{"a \"b\"", "c\td", "e\nf"}, {"", "=1+1", "-"}},
      {{"", ""}, {"x", ""}},
      {{"one\ttab"}},
  };
  for (const Rows& rows : cases) EXPECT_EQ(pastedCells(tabbedText(rows)), rows) << tabbedText(rows);
  EXPECT_EQ(tabbedText({{"=1+1"}}), "'=1+1\n") << "no formula comes into a spreadsheet";
}

TEST(ClipboardText, tabsCommasOrLines) {
  EXPECT_EQ(pastedCells("a\tb\r\nc\td"), (Rows{{"a", "b"}, {"c", "d"}}));
  EXPECT_EQ(pastedCells("a,b\nc,d\n"), (Rows{{"a", "b"}, {"c", "d"}}));
  EXPECT_EQ(pastedCells("\"a,1\",b\n"), (Rows{{"a,1", "b"}}));
  EXPECT_EQ(pastedCells("Lights, hall\nBath, upper"), (Rows{{"Lights, hall"}, {"Bath, upper"}}));
  EXPECT_EQ(pastedCells("Lights,hall\nBath"), (Rows{{"Lights,hall"}, {"Bath"}}));
  EXPECT_EQ(pastedCells("one\n\ntwo"), (Rows{{"one"}, {""}, {"two"}}));
  EXPECT_EQ(pastedCells("5\" pipe\tx"), (Rows{{"5\" pipe", "x"}}));
  EXPECT_TRUE(pastedCells("").empty());
}

}  // namespace
}  // namespace stayalight
