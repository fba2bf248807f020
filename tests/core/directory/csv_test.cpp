#include "core/directory/csv.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

// RFC 4180, 2: records on lines of their own ended by CR LF; quotes around cells with line ends, quotes and
// commas; a quote inside is doubled.
TEST(Csv, writesAsRfc4180Says) {
  EXPECT_EQ(writeCsv({{"aaa", "bbb", "ccc"}}), "aaa,bbb,ccc\r\n");
  EXPECT_EQ(writeCsv({{"b\r\nbb", "a\"b", "a,b"}}), "\"b\r\nbb\",\"a\"\"b\",\"a,b\"\r\n");
  EXPECT_EQ(writeCsv({{"", " a", "a;b"}}), ",\" a\",\"a;b\"\r\n");
}

TEST(Csv, readsWhatOthersWrite) {
  struct Case {
    const char* text;
    std::vector<std::vector<std::string>> cells;
  };
  const Case cases[] = {
      {"aaa,bbb\r\nzzz,yyy\r\n", {{"aaa", "bbb"}, {"zzz", "yyy"}}},
      {"aaa,bbb\nzzz,yyy", {{"aaa", "bbb"}, {"zzz", "yyy"}}},
      {"\xEF\xBB\xBF"
       "a;b\r1;2",
       {{"a", "b"}, {"1", "2"}}},
      {"a\tb\n\n\nc\td\n", {{"a", "b"}, {"c", "d"}}},
      {"\"a,\"\"b\"\"\",c\n", {{"a,\"b\"", "c"}}},
      {"\"one\r\ntwo\",x\n", {{"one\r\ntwo", "x"}}},
      {"a,,\n", {{"a", "", ""}}},
  };
  for (const Case& each : cases) {
    const Result<CsvText> read = readCsv(each.text, "t.csv");
    ASSERT_TRUE(read.ok()) << each.text;
    ASSERT_EQ(read.value().records.size(), each.cells.size()) << each.text;
    for (std::size_t i = 0; i < each.cells.size(); ++i)
      EXPECT_EQ(read.value().records[i].cells, each.cells[i]);
  }
  EXPECT_EQ(readCsv("a\n\"b\nc\"\nd", "t").value().records[2].line, 4);
}

TEST(Csv, wrongQuotesAreRefusedWithTheirLine) {
  const auto why = [](const char* text) { return render(readCsv(text, "t.csv").refusal(), plainEnglish()); };
  EXPECT_EQ(why("a\n\"b"), "t.csv, line 2: a quotation mark opens a cell and none closes it");
  EXPECT_NE(why("\"a\"b,c").find("line 1"), std::string::npos);
}

// OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return (and, by its newer text, line
// feed) may run as formulas; an apostrophe in front prevents it.
TEST(Csv, noCellIsAFormula) {
  for (const std::string sign : {"=", "+", "-", "@", "\t", "\r", "\n"}) {
    const std::string cell = sign + "1+1";
    EXPECT_EQ(withoutFormula(cell), "'" + cell);
    EXPECT_EQ(asTyped(withoutFormula(cell)), cell);
  }
  for (const std::string cell : {"", "a=1", "it's", "'quoted'", "1-2"}) {
    EXPECT_EQ(withoutFormula(cell), cell);
    EXPECT_EQ(asTyped(cell), cell);
  }
  // A text that already begins like an escaped one comes back as well.
  EXPECT_EQ(asTyped(withoutFormula("'=1")), "'=1");
}

}  // namespace
}  // namespace stayalight
