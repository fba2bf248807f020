#pragma once

// What the program says, before it is a sentence: an id and typed arguments. The English text of each id
// stands in texts.cpp, the one table translators read. `render` fills the text in; the caller gives language
// and number form.

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace stayalight {

/// Key of a text in the table, e.g. "file.not_json". Declared once, beside the code that says it.
struct MessageId {
  std::string_view key;
  friend constexpr bool operator==(const MessageId&, const MessageId&) = default;
};

/// Key of a rule whose citation depends on the code edition, e.g. "multiwire.same_panel"; see
/// core/code/citations.h.
struct RuleId {
  std::string_view key;
  friend constexpr bool operator==(const RuleId&, const RuleId&) = default;
};

/// A number with its unit, ready to be shown with `decimals` digits after the decimal mark.
struct Figure {
  double value = 0.0;
  std::string unit;  ///< "A", "W", "h", "%"; empty for a plain number
  int decimals = 0;
  friend bool operator==(const Figure&, const Figure&) = default;
};

struct Message;
struct ClockTime {
  int minutes = 0;  ///< after midnight
  friend bool operator==(const ClockTime&, const ClockTime&) = default;
};
struct Citation {
  RuleId rule;
  friend bool operator==(const Citation&, const Citation&) = default;
};

/// Arguments: a text the user typed (names), a count, a figure, a clock time, a citation, or a list of
/// messages.
using Argument = std::variant<std::string, std::int64_t, Figure, ClockTime, Citation, std::vector<Message>>;

struct Message {
  MessageId id;
  std::vector<Argument> arguments;
  friend bool operator==(const Message&, const Message&);
};
inline bool operator==(const Message& a, const Message& b) {
  return a.id == b.id && a.arguments == b.arguments;
}

template <class... Arguments>
[[nodiscard]] Message say(MessageId id, Arguments&&... arguments) {
  return Message{id, std::vector<Argument>{Argument(std::forward<Arguments>(arguments))...}};
}

/// How arguments become text. The plain form below writes C-locale numbers; ui/wording has one per language.
class Language {
 public:
  virtual ~Language() = default;
  /// The pattern of a message, "%1 ... %2". A text with plural forms holds them in order, parted by "||"
  /// ("%1 space free||%1 spaces free"); the first whole number among the arguments chooses.
  [[nodiscard]] virtual std::string pattern(MessageId id) const;
  /// Which of the forms a count takes, from 0; the plain form knows one and many.
  [[nodiscard]] virtual int pluralForm(std::int64_t count) const;
  [[nodiscard]] virtual std::string number(double value, int decimals) const;
  [[nodiscard]] virtual std::string clock(ClockTime time) const;
  /// The printed citation of a rule, e.g. "210.4(A)"; the plain form gives the key.
  [[nodiscard]] virtual std::string citation(RuleId rule) const;
  /// A figure in the units that its reader reads; the plain form keeps those of the code.
  [[nodiscard]] virtual Figure inUnits(const Figure& figure) const;
  /// A text as its reader reads it: a conductor's size with what stands beside it.
  [[nodiscard]] virtual std::string inUnits(const std::string& text) const;
};

/// The sentence. An id without a text renders as its key in angle brackets, which a test forbids.
[[nodiscard]] std::string render(const Message& message, const Language& language);

/// English with plain numbers, for error lines and logs.
[[nodiscard]] const Language& plainEnglish();

/// One row of the table of texts.
struct TextRow {
  std::string_view key;
  const char* english;
};
/// All rows, sorted by key.
[[nodiscard]] const std::vector<TextRow>& texts();

}  // namespace stayalight
