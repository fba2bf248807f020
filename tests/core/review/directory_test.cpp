// Entries of a directory. NFPA 70 408.4(A): clear and specific, no names, nothing that passes with who lives
// there; the lists of words are common practice, no source.

#include <gtest/gtest.h>

#include "core/review/review.h"

namespace stayalight {
namespace {

TEST(DirectoryFault, SaysWhatIsWrong) {
  struct Case {
    const char* text;
    const char* key;
  };
  const Case cases[] = {
      {"", "review.directory.empty"},
      {"  ", "review.directory.empty"},
      {"misc", "review.directory.vague"},
      {"Misc. kitchen", "review.directory.vague"},
      {"plugs", "review.directory.vague"},
      {"PLUGS", "review.directory.vague"},
      {"Lights", "review.directory.vague"},
      {"lights & plugs", "review.directory.vague"},
      {"Outlets 2", "review.directory.vague"},
      {"spare", "review.directory.vague"},
      {"room", "review.directory.vague"},
      {"12", "review.directory.vague"},
      {"spare?", "review.directory.guess"},
      {"Dryer?", "review.directory.guess"},
      {"Baby's room", "review.directory.passing_use"},
      {"baby\xE2\x80\x99s room", "review.directory.passing_use"},
      {"Nursery lights", "review.directory.passing_use"},
      {"Kids' bath", "review.directory.passing_use"},
      {"John's office", "review.directory.person"},
      {"Bedroom Karen", "review.directory.person"},
      {"Smiths' den", "review.directory.person"},
      {"moved to backup 7", "review.directory.moved_to"},
      {"Freezer, moved to 3", "review.directory.moved_to"},
  };
  for (const Case& c : cases) {
    const std::optional<Message> fault = directoryFault(c.text);
    ASSERT_TRUE(fault) << c.text;
    EXPECT_EQ(fault->id.key, c.key) << c.text;
  }
}

TEST(DirectoryFault, LeavesGoodEntriesAlone) {
  for (const char* text :
       {"Kitchen refrigerator", "Hall lights and smoke alarms", "Bedroom 2 lights", "Bedroom 3 receptacles",
        "Garage freezer", "Furnace in basement", "Range", "Master bedroom receptacles", "Well pump",
        "Living room receptacles, north wall", "Dryer", "A/C condenser", "Sump pump", "Bath 1 GFCI",
        "Guest bedroom lights", "Porch lights", "Removed to be reused barn feeder"}) {
    EXPECT_FALSE(directoryFault(text)) << text;
  }
}

}  // namespace
}  // namespace stayalight
