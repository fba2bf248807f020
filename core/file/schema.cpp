#include <nlohmann/json.hpp>

#include "core/file/file.h"

namespace stayalight {
namespace {

using Json = nlohmann::ordered_json;

Json ranged(const char* type, const Field& field) {
  Json schema{{"type", type}};
  // Ranges that are whole numbers are written as such.
  const auto bound = [](double value) {
    return value == static_cast<double>(static_cast<std::int64_t>(value))
               ? Json(static_cast<std::int64_t>(value))
               : Json(value);
  };
  schema["minimum"] = bound(field.minimum);
  schema["maximum"] = bound(field.maximum);
  return schema;
}

Json words(std::span<const std::string_view> choices) {
  Json list = Json::array();
  for (const std::string_view word : choices) list.push_back(std::string(word));
  return list;
}

Json textSchema() { return Json{{"type", "string"}, {"maxLength", kLongestText}}; }

Json schemaOf(const Field& field) {
  switch (field.kind) {
    case FieldKind::flag:
      return Json{{"type", "boolean"}};
    case FieldKind::whole:
    case FieldKind::identity:
      return ranged("integer", field);
    case FieldKind::reference: {
      Json schema = ranged("integer", field);
      schema["description"] = "id of a " + std::string(recordType(field.target).name) + ", 0 for none";
      return schema;
    }
    case FieldKind::number:
      return ranged("number", field);
    case FieldKind::text:
      return textSchema();
    case FieldKind::choice: {
      if (field.choices.data() == kConductorSizeNames.data()) return Json{{"enum", words(field.choices)}};
      Json later = textSchema();
      later["description"] = "a word of a later level, kept as it is";
      return Json{{"anyOf", Json::array({Json{{"enum", words(field.choices)}}, later})}};
    }
    case FieldKind::fact: {
      Json properties;
      for (const char* key : {"value", "low", "high"}) properties[key] = ranged("number", field);
      Json later = textSchema();
      later["description"] = "a word of a later level, kept as it is";
      properties["grade"] = Json{{"anyOf", Json::array({Json{{"enum", words(kGradeWords)}}, later})}};
      for (const char* key : {"who", "when", "how"}) properties[key] = textSchema();
      return Json{{"type", "object"}, {"properties", properties}};
    }
  }
  return {};
}

Json recordSchema(const RecordType& type) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const Field& field : type.fields) {
    properties[std::string(field.key)] = schemaOf(field);
    if (field.kind == FieldKind::identity) required.push_back(std::string(field.key));
  }
  for (const Children& children : type.children) {
    const Json reference{{"$ref", "#/$defs/" + std::string(recordType(children.kind).name)}};
    properties[std::string(children.key)] =
        children.single ? reference : Json{{"type", "array"}, {"items", reference}};
  }
  Json schema{{"type", "object"}, {"properties", properties}};
  if (!required.empty()) schema["required"] = required;
  return schema;
}

}  // namespace

std::string planSchema() {
  Json schema{
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "Stayalight plan, format " + std::to_string(kFormat) + ", level " + std::to_string(kLevel)},
      {"description",
       "Keys end in their unit where they have one (_A, _W, _s, _um micrometres, _mC thousandths of a degree "
       "Celsius, _min minutes after midnight). A fact holds value, low, high, grade and who found it when "
       "and "
       "how. Keys that are left out have their default; keys not named here are kept."}};
  const Json plan = recordSchema(recordType(RecordKind::plan));
  schema["type"] = "object";
  schema["required"] = Json::array({"stayalight"});
  schema["properties"] = Json::object();
  schema["properties"]["stayalight"] =
      Json{{"type", "object"},
           {"required", Json::array({"format"})},
           {"properties", Json{{"format", Json{{"const", kFormat}}},
                               {"level", Json{{"type", "integer"}, {"minimum", 1}, {"maximum", 1000000}}},
                               {"program", Json{{"type", "string"}}}}}};
  for (const auto& [key, value] : plan["properties"].items()) schema["properties"][key] = value;
  schema["$defs"] = Json::object();
  for (int kind = 1; kind <= static_cast<int>(RecordKind::scenario); ++kind) {
    const RecordType& type = recordType(static_cast<RecordKind>(kind));
    schema["$defs"][std::string(type.name)] = recordSchema(type);
  }
  return schema.dump(2) + "\n";
}

}  // namespace stayalight
