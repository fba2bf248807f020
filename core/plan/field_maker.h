#pragma once

// Makes the rows of the field table from members. Included by fields_*.cpp only.

#include <type_traits>

#include "core/plan/field.h"

namespace stayalight::field_maker {

template <class T>
struct MemberOf;
template <class R, class M>
struct MemberOf<M R::*> {
  using Record = R;
  using Value = M;
};

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsChoice : std::false_type {};
template <class E>
struct IsChoice<Choice<E>> : std::true_type {};
template <class T>
struct IsGraded : std::false_type {};
template <class T>
struct IsGraded<Graded<T>> : std::true_type {
  using Inner = T;
};
template <class T>
struct IsId : std::false_type {};
template <class E>
struct IsId<Id<E>> : std::true_type {};
template <class T>
struct IsQuantity : std::false_type {};
template <class K>
struct IsQuantity<Quantity<K>> : std::true_type {};

/// Kind of the field a member of this type makes.
template <class T>
constexpr FieldKind kindOf() {
  if constexpr (IsOptional<T>::value)
    return kindOf<typename T::value_type>();
  else if constexpr (std::is_same_v<T, bool>)
    return FieldKind::flag;
  else if constexpr (std::is_same_v<T, std::string>)
    return FieldKind::text;
  else if constexpr (IsChoice<T>::value || std::is_same_v<T, ConductorSize>)
    return FieldKind::choice;
  else if constexpr (IsId<T>::value)
    return FieldKind::reference;
  else if constexpr (IsGraded<T>::value)
    return FieldKind::fact;
  else if constexpr (IsQuantity<T>::value || std::is_same_v<T, double>)
    return FieldKind::number;
  else
    return FieldKind::whole;
}

template <class T>
FieldValue out(const T& value) {
  if constexpr (IsOptional<T>::value)
    return value ? out(*value) : FieldValue(NoValue{});
  else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, std::string> || std::is_same_v<T, double>)
    return value;
  else if constexpr (IsChoice<T>::value)
    return std::string(value.word());
  else if constexpr (std::is_same_v<T, ConductorSize>)
    return std::string(name(value));
  else if constexpr (IsId<T>::value)
    return value.number;
  else if constexpr (IsQuantity<T>::value)
    return value.count();
  else if constexpr (IsGraded<T>::value) {
    FactValue fact{{}, value.grade, {}, {}, value.who, value.when, value.how, value.unknown};
    if (value.value) fact.value = value.value->count();
    if (value.low) fact.low = value.low->count();
    if (value.high) fact.high = value.high->count();
    return fact;
  } else if constexpr (std::is_same_v<T, RatingAmperes>)
    return std::int64_t{value.count()};
  else if constexpr (std::is_same_v<T, Length>)
    return value.inMicrometres();
  else if constexpr (std::is_same_v<T, Temperature>)
    return std::int64_t{value.inMilliCelsius()};
  else if constexpr (std::is_same_v<T, TimeOfDay>)
    return std::int64_t{value.minutes()};
  else
    return static_cast<std::int64_t>(value);
}

template <class E>
Choice<E> choiceOf(const std::string& word) {
  const auto& words = ChoiceWords<E>::words;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == word) return static_cast<E>(i);
  }
  return Choice<E>::otherWord(word);
}

template <class T>
void in(T& member, const FieldValue& value) {
  if constexpr (IsOptional<T>::value) {
    if (std::holds_alternative<NoValue>(value)) {
      member.reset();
      return;
    }
    typename T::value_type inner{};
    in(inner, value);
    member = inner;
  } else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, std::string> || std::is_same_v<T, double>)
    member = std::get<T>(value);
  else if constexpr (IsChoice<T>::value) {
    using E = std::decay_t<decltype(member.valueOr({}))>;
    member = choiceOf<E>(std::get<std::string>(value));
  } else if constexpr (std::is_same_v<T, ConductorSize>)
    member = conductorSizeNamed(std::get<std::string>(value)).value_or(ConductorSize::awg14);
  else if constexpr (IsId<T>::value)
    member.number = std::get<std::int64_t>(value);
  else if constexpr (IsQuantity<T>::value)
    member = T(std::get<double>(value));
  else if constexpr (IsGraded<T>::value) {
    using Inner = typename IsGraded<T>::Inner;
    const FactValue& fact = std::get<FactValue>(value);
    member = T{};
    if (fact.value) member.value = Inner(*fact.value);
    if (fact.low) member.low = Inner(*fact.low);
    if (fact.high) member.high = Inner(*fact.high);
    member.grade = fact.grade;
    member.who = fact.who;
    member.when = fact.when;
    member.how = fact.how;
    member.unknown = fact.unknown;
  } else if constexpr (std::is_same_v<T, RatingAmperes>)
    member = RatingAmperes(static_cast<std::int32_t>(std::get<std::int64_t>(value)));
  else if constexpr (std::is_same_v<T, Length>)
    member = Length::micrometres(std::get<std::int64_t>(value));
  else if constexpr (std::is_same_v<T, Temperature>)
    member = Temperature::milliCelsius(static_cast<std::int32_t>(std::get<std::int64_t>(value)));
  else if constexpr (std::is_same_v<T, TimeOfDay>)
    member = TimeOfDay(static_cast<int>(std::get<std::int64_t>(value)));
  else
    member = static_cast<T>(std::get<std::int64_t>(value));
}

template <class T>
constexpr std::span<const std::string_view> choicesOf() {
  if constexpr (IsOptional<T>::value)
    return choicesOf<typename T::value_type>();
  else if constexpr (std::is_same_v<T, ConductorSize>)
    return kConductorSizeNames;
  else if constexpr (IsChoice<T>::value) {
    using E = std::decay_t<decltype(T{}.valueOr({}))>;
    return ChoiceWords<E>::words;
  } else
    return {};
}

/// A row for one member. Range counts for whole, number and fact fields.
template <auto Member>
constexpr Field field(std::string_view key, std::string_view help, Unit unit = Unit::none,
                      double minimum = 0.0, double maximum = 0.0) {
  using R = typename MemberOf<decltype(Member)>::Record;
  using T = typename MemberOf<decltype(Member)>::Value;
  Field row;
  row.key = key;
  row.kind = kindOf<T>();
  row.unit = unit;
  row.minimum = minimum;
  row.maximum = maximum;
  row.optional = IsOptional<T>::value;
  row.help = help;
  row.choices = choicesOf<T>();
  row.get = [](const void* record) -> FieldValue { return out(static_cast<const R*>(record)->*Member); };
  row.set = [](void* record, const FieldValue& value) { in(static_cast<R*>(record)->*Member, value); };
  return row;
}
/// The record's own id.
template <auto Member>
constexpr Field identity() {
  Field row = field<Member>("id", "");
  row.kind = FieldKind::identity;
  row.minimum = 1;
  row.maximum = 1e9;
  return row;
}
/// A reference to an entity of another kind.
template <auto Member>
constexpr Field reference(std::string_view key, RecordKind target, std::string_view help) {
  Field row = field<Member>(key, help, Unit::none, 0, 1e9);
  row.target = target;
  return row;
}

/// A list of plain records inside a record.
template <auto Member>
constexpr Children list(std::string_view key, RecordKind kind) {
  using R = typename MemberOf<decltype(Member)>::Record;
  Children row;
  row.key = key;
  row.kind = kind;
  row.count = [](const void* record) { return (static_cast<const R*>(record)->*Member).size(); };
  row.at = [](const void* record, std::size_t i) -> const void* {
    return &(static_cast<const R*>(record)->*Member)[i];
  };
  row.edit = [](void* record, std::size_t i) -> void* { return &(static_cast<R*>(record)->*Member)[i]; };
  row.append = [](void* record) -> void* { return &(static_cast<R*>(record)->*Member).emplace_back(); };
  row.erase = [](void* record, std::size_t i) {
    auto& all = static_cast<R*>(record)->*Member;
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
  };
  return row;
}
/// A list of shared parts of the plan.
template <auto Member>
constexpr Children sharedList(std::string_view key, RecordKind kind) {
  using R = typename MemberOf<decltype(Member)>::Record;
  Children row = list<Member>(key, kind);
  row.at = [](const void* record, std::size_t i) -> const void* {
    return &*(static_cast<const R*>(record)->*Member)[i];
  };
  row.edit = [](void* record, std::size_t i) -> void* {
    return &(static_cast<R*>(record)->*Member)[i].edit();
  };
  row.append = [](void* record) -> void* {
    return &(static_cast<R*>(record)->*Member).emplace_back().edit();
  };
  return row;
}
/// A shared part that is always there.
template <auto Member>
constexpr Children shared(std::string_view key, RecordKind kind) {
  using R = typename MemberOf<decltype(Member)>::Record;
  Children row;
  row.key = key;
  row.kind = kind;
  row.single = true;
  row.count = [](const void*) -> std::size_t { return 1; };
  row.at = [](const void* record, std::size_t) -> const void* {
    return &*(static_cast<const R*>(record)->*Member);
  };
  row.edit = [](void* record, std::size_t) -> void* { return &(static_cast<R*>(record)->*Member).edit(); };
  return row;
}

template <class R>
constexpr RecordType record(RecordKind kind, std::string_view name, std::span<const Field> fields,
                            std::span<const Children> children) {
  RecordType type;
  type.kind = kind;
  type.name = name;
  type.fields = fields;
  type.children = children;
  type.unknown = [](const void* record) -> const std::vector<UnknownKey>& {
    return static_cast<const R*>(record)->unknown;
  };
  type.editUnknown = [](void* record) -> std::vector<UnknownKey>& {
    return static_cast<R*>(record)->unknown;
  };
  return type;
}

}  // namespace stayalight::field_maker
