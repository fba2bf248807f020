#include <gtest/gtest.h>

#include <algorithm>

#include "ui/inspector/entity_text.h"

namespace stayalight {
namespace {

constexpr RecordKind kKinds[] = {RecordKind::site,          RecordKind::panel,
                                 RecordKind::space,         RecordKind::breaker,
                                 RecordKind::circuit,       RecordKind::load,
                                 RecordKind::useWindow,     RecordKind::inverter,
                                 RecordKind::overloadPoint, RecordKind::efficiencyPoint,
                                 RecordKind::battery,       RecordKind::transfer,
                                 RecordKind::feederRun,     RecordKind::scenario};

bool missing(const std::string& text) { return text.empty() || text.front() == '<'; }

TEST(FieldText, everyFieldHasALabelAndHelp) {
  for (const RecordKind kind : kKinds) {
    EXPECT_FALSE(missing(kindName(kind, plainEnglish()))) << recordType(kind).name;
    for (const Field& field : recordType(kind).fields) {
      if (field.kind == FieldKind::identity) continue;
      EXPECT_FALSE(missing(fieldLabel(field, plainEnglish()))) << field.help;
      EXPECT_FALSE(missing(fieldHelp(field, plainEnglish()))) << field.help;
    }
  }
}

TEST(FieldText, everyChoiceHasWordsOfItsOwn) {
  for (const RecordKind kind : kKinds) {
    for (const Field& field : recordType(kind).fields) {
      std::vector<std::string> seen;
      for (const std::string_view word : field.choices) {
        const std::string text = choiceText(field, word, plainEnglish());
        EXPECT_FALSE(missing(text)) << field.help << " " << word;
        EXPECT_EQ(text.find('_'), std::string::npos) << field.help << " shows the word of the file: " << text;
        EXPECT_EQ(std::count(seen.begin(), seen.end(), text), 0)
            << field.help << " says " << text << " twice";
        seen.push_back(text);
      }
    }
  }
}

TEST(FieldText, aWordOfALaterProgramStandsAsItIs) {
  const Field* field = fieldOf(RecordKind::breaker, "tie");
  ASSERT_NE(field, nullptr);
  EXPECT_EQ(choiceText(*field, "magnetic_latch", plainEnglish()), "magnetic_latch");
}

TEST(FieldText, monthsHaveNames) {
  EXPECT_EQ(monthText(1, plainEnglish()), "January");
  EXPECT_EQ(monthText(12, plainEnglish()), "December");
}

}  // namespace
}  // namespace stayalight
