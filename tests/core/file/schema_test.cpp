#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/file/file.h"

namespace stayalight {
namespace {

TEST(Schema, TheCopyInResourcesIsTheOneOfTheFieldTable) {
  std::ifstream file(STAYALIGHT_SOURCE_DIR "/resources/schema/plan.schema.json", std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  EXPECT_EQ(text.str(), planSchema()) << "ninja schemas writes it anew";
}

TEST(Schema, NamesEveryFieldWithItsRange) {
  const auto schema = nlohmann::json::parse(planSchema());
  for (int kind = 1; kind <= static_cast<int>(RecordKind::scenario); ++kind) {
    const RecordType& type = recordType(static_cast<RecordKind>(kind));
    const auto& properties = schema["$defs"][std::string(type.name)]["properties"];
    EXPECT_EQ(properties.size(), type.fields.size() + type.children.size()) << type.name;
    for (const Field& field : type.fields) {
      ASSERT_TRUE(properties.contains(std::string(field.key))) << field.key;
      if (field.kind == FieldKind::whole || field.kind == FieldKind::number) {
        EXPECT_EQ(properties[std::string(field.key)]["minimum"].get<double>(), field.minimum) << field.key;
        EXPECT_EQ(properties[std::string(field.key)]["maximum"].get<double>(), field.maximum) << field.key;
      }
    }
  }
}

}  // namespace
}  // namespace stayalight
