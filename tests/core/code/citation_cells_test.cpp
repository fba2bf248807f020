// Each section of the citations against the published lists of what an edition renumbered: a section stays
// from one edition to the next unless a list says otherwise. So a cell that is changed alone no longer goes
// with its neighbours. The second typed copy is in citations_test.cpp and not counted here.

#include <gtest/gtest.h>

#include <cstdio>
#include <map>
#include <vector>

#include "core/code/tables.h"

using namespace stayalight;

namespace {

using Rows = std::vector<CitationRow>;

// What the 2020, 2023 and 2026 editions put in place of a section (published lists of changes of each; those
// of Articles 225 and 625, of 250.118 and of 702.4(A)(2)(b) from memory). An empty text: not confirmed there
// any more.
struct Renumbered {
  const char* old;
  Edition in;
  const char* now;
};
constexpr Renumbered kRenumbered[] = {
    {"310.15(B)(16)", Edition::y2020, "310.16"},
    {"310.15(B)(2)(a)", Edition::y2020, "310.15(B)(1)"},
    {"310.15(B)(3)(a)", Edition::y2020, "310.15(C)(1)"},
    {"310.15(B)(7)", Edition::y2020, "310.12"},
    {"220.12", Edition::y2020, "220.14(J)"},
    {"705.12(B)(2)(3)(a)", Edition::y2020, "705.12(B)(3)(1)"},
    {"705.12(B)(2)(3)(b)", Edition::y2020, "705.12(B)(3)(2)"},
    {"705.12(B)(2)(3)(c)", Edition::y2020, "705.12(B)(3)(3)"},
    {"220.14(J)", Edition::y2023, "220.41"},
    {"220.42", Edition::y2023, "220.45"},
    {"625.42", Edition::y2023, "220.57"},
    {"702.4(B)(1)", Edition::y2023, "702.4(A)(1)"},
    {"702.4(B)(2)", Edition::y2023, "702.4(A)(2)"},
    {"702.4(B)(2)(b)", Edition::y2023, "702.4(A)(2)(b)"},
    {"705.12(B)(3)(1)", Edition::y2023, "705.12(B)(1)"},
    {"705.12(B)(3)(2)", Edition::y2023, "705.12(B)(2)"},
    {"705.12(B)(3)(3)", Edition::y2023, "705.12(B)(3)"},
    {"210.12(D)", Edition::y2023, "210.12(E)"},
    {"215.2(A)(2)", Edition::y2023, "215.2(B)"},
    {"250.24(A)(5)", Edition::y2023, "250.24(B)"},
    {"225.31, 225.32", Edition::y2023, "225.31"},
    {"706.15(A)", Edition::y2023, "706.15"},
    {"750.30", Edition::y2023, "750.30, 220.70"},
    {"250.118", Edition::y2023, "250.118(A)"},
    {"250.24(B), 250.142(B)", Edition::y2026, "250.24(B)"},
    {"230.85", Edition::y2026, "230.70"},
    {"705.13", Edition::y2026, "Art. 130 Part II"},
    {"750.30, 220.70", Edition::y2026, "Art. 130 Part II"},
    {"710.15(A)", Edition::y2026, "702.4(A)(3)"},
};
// Sections that an edition brought and that no other here confirms.
const std::map<std::string_view, Edition> kBrought = {
    {"215.18", Edition::y2023}, {"225.42", Edition::y2023}, {"702.4(A)(3)", Edition::y2026}};

std::string renumbered(const std::string& section, Edition in) {
  for (const Renumbered& row : kRenumbered) {
    if (row.in == in && section == row.old) return row.now;
  }
  // The load calculation moved as a whole from Article 220 to Article 120.
  if (in == Edition::y2026 && section.starts_with("220.")) return "120" + section.substr(3);
  if (in == Edition::y2026 && section == "Art. 220") return "Art. 120";
  return section;
}
std::string inNext(const std::string& cell, Edition in) {
  if (std::string whole = renumbered(cell, in); whole != cell) return whole;
  std::string all;
  for (std::size_t from = 0; from < cell.size();) {
    const std::size_t comma = std::min(cell.find(", ", from), cell.size());
    all += (all.empty() ? "" : ", ") + renumbered(cell.substr(from, comma - from), in);
    from = comma + 2;
  }
  return all;
}

bool agrees(const CitationRow& row) {
  std::string before;
  int filled = 0;
  std::size_t last = 0;
  for (const Edition edition : kEditions) {
    if (!before.empty()) before = inNext(before, edition);
    const std::string_view cell = row.sections[index(edition)];
    if (cell.empty() || cell == kNotInEdition) continue;
    if (!before.empty() && before != cell) return false;
    before = std::string(cell);
    last = index(edition);
    ++filled;
  }
  if (filled != 1) return true;
  const auto brought = kBrought.find(row.sections[last]);
  return brought != kBrought.end() && index(brought->second) == last;
}

// The next digit or letter in the place of one, all of them one by one.
std::vector<std::string> changesOf(std::string_view cell) {
  std::vector<std::string> all;
  for (std::size_t i = 0; i < cell.size(); ++i) {
    if (std::isalnum(static_cast<unsigned char>(cell[i])) == 0) continue;
    std::string changed(cell);
    changed[i] = cell[i] == '9' ? '8' : static_cast<char>(cell[i] + 1);
    all.push_back(std::move(changed));
  }
  return all;
}

TEST(CitationCells, GoWithThoseOfTheOtherEditions) {
  for (const CitationRow& row : publishedTables().citations) EXPECT_TRUE(agrees(row)) << row.rule;
}

TEST(CitationCells, EachOneChangedAloneIsNoticed) {
  int noticed = 0, all = 0;
  for (const CitationRow& row : publishedTables().citations) {
    for (const Edition edition : kEditions) {
      const std::string_view cell = row.sections[index(edition)];
      if (cell.empty() || cell == kNotInEdition) continue;
      ++all;
      bool each = true;
      for (const std::string& text : changesOf(cell)) {
        CitationRow changed = row;
        changed.sections[index(edition)] = text;
        each = each && !agrees(changed);
      }
      EXPECT_TRUE(each) << row.rule << ' ' << name(edition) << ": " << cell;
      noticed += each ? 1 : 0;
    }
  }
  std::printf("%d of %d citations, changed in any digit or letter, are noticed without a second copy\n",
              noticed, all);
}

}  // namespace
