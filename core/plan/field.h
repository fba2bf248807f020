#pragma once

// The field table: for each record its fields with key, unit, range and help id. It drives reading, writing,
// validation, the schema, comparison, CSV, random plans for tests and the forms; a new field is one row in
// fields_*.cpp and nothing else.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/message/result.h"
#include "core/plan/plan.h"

namespace stayalight {

struct NoValue {
  friend bool operator==(NoValue, NoValue) = default;
};
/// A graded fact, out of its type.
struct FactValue {
  std::optional<double> value;
  Grade grade = Grade::unknown;
  std::optional<double> low, high;
  std::string who, when, how;
  std::vector<UnknownKey> unknown = {};
  friend bool operator==(const FactValue&, const FactValue&) = default;
};
using FieldValue = std::variant<NoValue, bool, std::int64_t, double, std::string, FactValue>;

enum class FieldKind : std::uint8_t {
  flag,       ///< bool
  whole,      ///< std::int64_t
  number,     ///< double
  text,       ///< std::string
  choice,     ///< std::string, one of `choices` (a word of a later program is kept)
  identity,   ///< std::int64_t, the record's own id
  reference,  ///< std::int64_t, id of an entity of kind `target`; 0 none
  fact        ///< FactValue
};

/// How a field is shown and typed; the number in the plan and in the file is in the unit the key names.
enum class Unit : std::uint8_t {
  none,
  ampere,
  watt,
  voltAmpere,
  volt,
  hour,
  second,
  perHour,
  fraction,
  kilowattHour,
  horsepower,
  squareFoot,
  squareInch,
  cubicInch,
  degree,
  micrometre,       ///< shown in feet (or metres)
  micrometreShort,  ///< shown in inches (or millimetres)
  milliCelsius,     ///< shown in degrees Fahrenheit (or Celsius)
  minuteOfDay,      ///< shown as a clock time
  hourOfDay,
  month
};

struct Field {
  std::string_view key;
  FieldKind kind = FieldKind::text;
  Unit unit = Unit::none;
  double minimum = 0.0;  ///< of whole, number, fact
  double maximum = 0.0;
  bool optional = false;  ///< may hold no value
  int since = 1;          ///< level of the format that brought it
  std::string_view help;  ///< key of its label and help text, "field.<record>.<key>"
  std::span<const std::string_view> choices;
  RecordKind target = RecordKind::plan;
  FieldValue (*get)(const void* record) = nullptr;
  /// Takes a value that passed `check`; others are not defined.
  void (*set)(void* record, const FieldValue& value) = nullptr;
};

/// Records within a record: a list, or one that is always there (`single`).
struct Children {
  std::string_view key;
  RecordKind kind = RecordKind::plan;
  bool single = false;
  std::size_t (*count)(const void* record) = nullptr;
  const void* (*at)(const void* record, std::size_t index) = nullptr;
  void* (*edit)(void* record, std::size_t index) = nullptr;
  void* (*append)(void* record) = nullptr;
  void (*erase)(void* record, std::size_t index) = nullptr;
};

struct RecordType {
  RecordKind kind = RecordKind::plan;
  std::string_view name;  ///< "circuit"
  std::span<const Field> fields;
  std::span<const Children> children;
  const std::vector<UnknownKey>& (*unknown)(const void* record) = nullptr;
  std::vector<UnknownKey>& (*editUnknown)(void* record) = nullptr;
};

[[nodiscard]] const RecordType& recordType(RecordKind kind);
[[nodiscard]] const Field* fieldOf(RecordKind kind, std::string_view key);

/// Says what is wrong with a value for this field: its kind, its range, its length, a number that is not
/// finite. The messages name the key, the value found and what was expected.
[[nodiscard]] std::optional<Message> check(const Field& field, const FieldValue& value);

/// Longest text a field may hold, in bytes.
inline constexpr std::size_t kLongestText = 4000;

/// The record an address names, or nullptr. Single records and lists are reached through the plan.
[[nodiscard]] const void* findRecord(const Plan& plan, const EntityRef& ref);
/// The same to change: shared parts on the way are copied first.
[[nodiscard]] void* editRecord(Plan& plan, const EntityRef& ref);
/// Owner of a record inside another (a load's circuit, a space's panel); the ref itself otherwise.
[[nodiscard]] EntityRef ownerOf(const Plan& plan, const EntityRef& ref);

/// Key of a grade in the file.
inline constexpr std::array<std::string_view, 5> kGradeWords = {"unknown", "typical", "nameplate", "traced",
                                                                "measured"};

}  // namespace stayalight
