#pragma once

// What every record of a plan has in common: keys of the file this program does not know are kept with the
// record they stood in and are written back after the key they followed.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/message/working.h"
#include "core/quantity/quantity.h"

namespace stayalight {

struct UnknownKey {
  std::string key;
  std::string json;   ///< its value, as JSON text
  std::string after;  ///< the key it followed; empty for the first
  /// The key it followed may be gone from the next file (a value was cleared), so it is no part of what is
  /// kept.
  friend bool operator==(const UnknownKey& a, const UnknownKey& b) {
    return a.key == b.key && a.json == b.json;
  }
};

struct Record {
  std::vector<UnknownKey> unknown;
  friend bool operator==(const Record&, const Record&) = default;
};

/// The words of a choice in the file, in the order of the enumerators: specialise for each enum.
template <class E>
struct ChoiceWords;  // static constexpr std::array<std::string_view, N> words

/// One of a fixed set of words. A word of a later program is kept as it is, and then no enumerator holds.
template <class E>
class Choice {
 public:
  constexpr Choice() = default;
  Choice(E value) : value_(value) {}  // NOLINT: a choice is its enumerator
  [[nodiscard]] static Choice otherWord(
      std::string word) {  // NOLINT(performance-unnecessary-value-param): moved on
    Choice choice;
    choice.other_ = std::move(word);
    return choice;
  }
  [[nodiscard]] bool is(E value) const { return other_.empty() && value_ == value; }
  /// False where the file says a word this program does not know.
  [[nodiscard]] bool known() const { return other_.empty(); }
  /// The enumerator, or `otherwise` where the word is not known.
  [[nodiscard]] E valueOr(E otherwise) const { return known() ? value_ : otherwise; }
  [[nodiscard]] std::string_view word() const {
    return known() ? ChoiceWords<E>::words[static_cast<std::size_t>(value_)] : std::string_view(other_);
  }
  friend bool operator==(const Choice&, const Choice&) = default;

 private:
  E value_{};
  std::string other_;
};

/// The answer to a question somebody may not have looked into yet.
enum class Answer : std::uint8_t { unknown, yes, no };
template <>
struct ChoiceWords<Answer> {
  static constexpr std::array<std::string_view, 3> words = {"unknown", "yes", "no"};
};

/// An entered fact: its value, how well it is known, who found it when and how. `low` and `high` are given
/// only where the person who knows gave them; otherwise the spread follows from the grade (core/use/use.h).
template <class T>
struct Graded {
  std::optional<T> value;
  Grade grade = Grade::unknown;
  std::optional<T> low;
  std::optional<T> high;
  std::string who;
  std::string when;
  std::string how;
  std::vector<UnknownKey> unknown = {};  ///< a grade of a later program stands here too, under "grade"
  friend bool operator==(const Graded&, const Graded&) = default;
};

/// A value that is never changed once shared: copies are pointers, `edit` takes a copy of its own first.
template <class T>
class Shared {
 public:
  Shared() : pointer_(std::make_shared<const T>()) {}
  Shared(T value)
      : pointer_(std::make_shared<const T>(std::move(value))) {}  // NOLINT: a shared part is its value
  [[nodiscard]] const T& operator*() const { return *pointer_; }
  [[nodiscard]] const T* operator->() const { return pointer_.get(); }
  /// A copy of its own to change; the other plans keep theirs. The reference is good until the next copy is
  /// taken.
  [[nodiscard]] T& edit() {
    auto copy = std::make_shared<T>(*pointer_);
    T& value = *copy;
    pointer_ = std::move(copy);
    return value;
  }
  /// True where both are the very same part: nothing changed between two plans.
  [[nodiscard]] bool same(const Shared& other) const { return pointer_ == other.pointer_; }
  friend bool operator==(const Shared& a, const Shared& b) { return a.pointer_ == b.pointer_ || *a == *b; }

 private:
  std::shared_ptr<const T> pointer_;
};

}  // namespace stayalight
