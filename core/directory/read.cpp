#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "core/code/devices.h"
#include "core/directory/directory.h"

namespace stayalight {
namespace {

constexpr MessageId kNoNumber{"directory.no_number"};
constexpr MessageId kThreeSpaces{"directory.three_spaces"};
constexpr MessageId kHalves{"directory.halves"};
constexpr MessageId kPolesDisagree{"directory.poles_disagree"};
constexpr MessageId kTooLong{"directory.too_long"};
constexpr MessageId kTakenAsHalf{"directory.taken_as_half"};
constexpr MessageId kTakenAsRating{"directory.taken_as_rating"};

constexpr std::size_t kLongestLine = 2000;

// Words of a directory for a breaker without a circuit, and for a space without a breaker. Common practice,
// no source.
constexpr std::array<std::string_view, 3> kSpareWords = {"spare", "unused", "not used"};
constexpr std::array<std::string_view, 8> kEmptyWords = {"",     "open",  "blank", "empty",
                                                         "free", "space", "none",  "n/a"};
// Words that stand before the number of a space.
constexpr std::array<std::string_view, 8> kNumberWords = {"space", "spaces",  "circuit", "ckt",
                                                          "cct",   "breaker", "bkr",     "no"};

char small(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }
std::string small(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = small(c);
  return out;
}
bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (static_cast<unsigned char>(c) & 0x80u) != 0;
}
bool isBlank(char c) { return c == ' ' || c == '\t'; }
bool isSeparator(char c) { return isBlank(c) || c == ',' || c == ';' || c == ':' || c == '-' || c == '.'; }

template <std::size_t N>
bool has(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string_view trimmed(std::string_view text, bool (*drop)(char)) {
  while (!text.empty() && drop(text.front())) text.remove_prefix(1);
  while (!text.empty() && drop(text.back())) text.remove_suffix(1);
  return text;
}

/// Dashes, blanks and bullets of word processors as plain characters.
std::string plain(std::string_view text) {
  constexpr std::pair<std::string_view, std::string_view> kSame[] = {
      {"\u2013", "-"}, {"\u2014", "-"}, {"\u2212", "-"}, {"\u00a0", " "}, {"\u2009", " "},
      {"\u202f", " "}, {"\u2022", " "}, {"\ufeff", ""},  {"\u2044", "/"}};
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto* const same = std::find_if(std::begin(kSame), std::end(kSame), [&](const auto& pair) {
      return text.substr(i, pair.first.size()) == pair.first;
    });
    if (same != std::end(kSame)) {
      out += same->second;
      i += same->first.size();
    } else {
      out += text[i++];
    }
  }
  return out;
}

// -- the numbers in front

struct SpaceToken {
  std::string number;
  char half = '\0';  ///< 'A', 'B' or none
};

/// One or two digits, with the letter of a half; moves `at` behind it.
std::optional<SpaceToken> spaceToken(std::string_view text, std::size_t& at) {
  std::size_t look = at;
  SpaceToken token;
  while (look < text.size() && isDigit(text[look])) token.number += text[look++];
  if (token.number.empty() || token.number.size() > 2 || token.number == "0" || token.number == "00")
    return std::nullopt;
  if (token.number[0] == '0') token.number.erase(0, 1);
  if (look < text.size() && (small(text[look]) == 'a' || small(text[look]) == 'b') &&
      (look + 1 == text.size() || (!isLetter(text[look + 1]) && !isDigit(text[look + 1])))) {
    token.half = small(text[look]) == 'a' ? 'A' : 'B';
    ++look;
  }
  if (look < text.size() && (isLetter(text[look]) || isDigit(text[look]))) return std::nullopt;
  at = look;
  return token;
}

/// Behind a number: "/", ",", "&", "+", "-" or "and", with blanks around it.
bool joins(std::string_view text, std::size_t& at) {
  std::size_t look = at;
  while (look < text.size() && text[look] == ' ') ++look;
  if (look < text.size() && (text[look] == '/' || text[look] == ',' || text[look] == '&' ||
                             text[look] == '+' || text[look] == '-')) {
    ++look;
  } else if (small(text.substr(look, 4)) == "and ") {
    look += 4;
  } else {
    return false;
  }
  while (look < text.size() && text[look] == ' ') ++look;
  at = look;
  return look < text.size() && isDigit(text[look]);
}

bool amperesFollow(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] == ' ') ++at;
  const std::string rest = small(text.substr(at, 4));
  if (rest.substr(0, 3) == "amp") return true;
  return !rest.empty() && rest[0] == 'a' && (rest.size() == 1 || !isLetter(rest[1]));
}

/// All numbers in front; moves `at` behind them.
std::vector<SpaceToken> spaceTokens(std::string_view text, std::size_t& at) {
  std::vector<SpaceToken> tokens;
  auto first = spaceToken(text, at);
  if (!first) return tokens;
  tokens.push_back(*first);
  for (;;) {
    std::size_t look = at;
    if (!joins(text, look)) return tokens;
    const std::size_t number = look;
    const auto next = spaceToken(text, look);
    if (!next) return tokens;
    // "1 - 20A Kitchen" and "1, 20 amp": a rating, where the number before it has no half either.
    const bool halves = tokens.back().half != '\0';
    std::size_t behind = number;
    while (behind < text.size() && isDigit(text[behind])) ++behind;
    if (!halves && amperesFollow(text, behind)) return tokens;
    tokens.push_back(*next);
    at = look;
  }
}

/// Behind a word such as "space" or a "#"; the beginning where there is none.
std::size_t numberBegins(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && (isBlank(text[at]) || text[at] == '#' || text[at] == '(' || text[at] == '*'))
    ++at;
  std::size_t end = at;
  while (end < text.size() && isLetter(text[end])) ++end;
  if (end > at && has(kNumberWords, small(text.substr(at, end - at)))) {
    while (end < text.size() && (isBlank(text[end]) || text[end] == '.' || text[end] == '#')) ++end;
    return end;
  }
  return at;
}

// -- rating and poles among the words

bool standard(std::int32_t amperes) {
  static const std::vector<RatingAmperes> all = standardRatings(Edition::y2023);
  return std::find(all.begin(), all.end(), RatingAmperes(amperes)) != all.end();
}

struct Said {
  std::optional<std::int32_t> rating;
  std::optional<std::int32_t> poles;
  bool bare = false;  ///< the rating stood without its unit
};

/// A number of one to three digits at the beginning; the rest behind it.
std::optional<std::int32_t> numberIn(std::string_view& word) {
  std::size_t digits = 0;
  while (digits < word.size() && isDigit(word[digits])) ++digits;
  if (digits == 0 || digits > 3) return std::nullopt;
  std::int32_t value = 0;
  for (std::size_t i = 0; i < digits; ++i) value = value * 10 + (word[i] - '0');
  word.remove_prefix(digits);
  return value;
}

/// "50A", "2P", "2P50", "50A/2P", "50/2", "20"; nothing where the word is another.
std::optional<Said> saidBy(std::string_view typed, bool bareCounts) {
  const std::string lower =
      small(trimmed(typed, [](char c) { return c == '(' || c == ')' || isSeparator(c); }));
  std::string_view word = lower;
  if (word == "dp" || word == "double-pole" || word == "two-pole") return Said{std::nullopt, 2, false};
  if (word == "single-pole" || word == "one-pole") return Said{std::nullopt, 1, false};
  Said said;
  while (!word.empty()) {
    const auto number = numberIn(word);
    if (!number) return std::nullopt;
    while (!word.empty() && word.front() == '-') word.remove_prefix(1);
    std::size_t letters = 0;
    while (letters < word.size() && isLetter(word[letters])) ++letters;
    const std::string_view unit = word.substr(0, letters);
    const bool pole = unit == "p" || unit == "pole" || unit == "poles";
    const bool ampere =
        unit == "a" || unit == "amp" || unit == "amps" || unit == "ampere" || unit == "amperes";
    if (pole && (*number == 1 || *number == 2) && !said.poles) {
      said.poles = *number;
    } else if (ampere && !said.rating) {
      said.rating = *number;
    } else if (unit.empty() && !said.rating && standard(*number) &&
               (bareCounts || said.poles || !word.empty())) {
      said.rating = *number;
      said.bare = true;
    } else if (unit.empty() && said.rating && !said.poles && (*number == 1 || *number == 2)) {
      said.poles = *number;  // "50/2"
    } else {
      return std::nullopt;
    }
    word.remove_prefix(letters);
    while (!word.empty() && (word.front() == '/' || word.front() == '-')) word.remove_prefix(1);
  }
  if (!said.rating && !said.poles) return std::nullopt;
  const Field& field = *fieldOf(RecordKind::breaker, "rating_A");
  if (said.rating && (*said.rating < field.minimum || *said.rating > field.maximum)) return std::nullopt;
  return said;
}

/// Words of a field; "50 A", "2 pole" and "double pole" are joined to one.
std::vector<std::string> wordsOf(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  const auto finish = [&] {
    if (!word.empty()) words.push_back(word);
    word.clear();
  };
  for (const char c : text) {
    if (isBlank(c))
      finish();
    else
      word += c;
  }
  finish();
  constexpr std::array<std::string_view, 9> kUnits = {"a",    "amp",   "amps", "ampere", "amperes",
                                                      "pole", "poles", "p",    "breaker"};
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    const std::string unit =
        small(trimmed(words[i + 1], [](char c) { return c == ')' || c == '(' || isSeparator(c); }));
    const std::string first = small(trimmed(words[i], [](char c) { return c == '('; }));
    const bool number = !first.empty() && std::all_of(first.begin(), first.end(), isDigit);
    const bool named = (unit == "pole" || unit == "poles") &&
                       (first == "double" || first == "single" || first == "two" || first == "one");
    if (named) {
      words[i] = first + "-pole";
    } else if (number && has(kUnits, unit) && unit != "breaker") {
      words[i] += words[i + 1];
    } else {
      continue;
    }
    words.erase(words.begin() + static_cast<std::ptrdiff_t>(i) + 1);
  }
  return words;
}

/// Takes rating and poles off both ends of a field.
class Tail {
 public:
  explicit Tail(DirectoryEntry& entry) : entry_(entry) {}

  std::string strip(std::string_view field, bool alone) {
    std::vector<std::string> words = wordsOf(field);
    const auto text = [&] {
      std::string joined;
      for (const std::string& word : words) joined += (joined.empty() ? "" : " ") + word;
      return std::string(trimmed(joined, isSeparator));
    };
    while (!words.empty()) {
      const auto said = saidBy(words.back(), !entry_.rating);
      if (!said || !take(*said)) break;
      words.pop_back();
      // "(30 A)" may be what is left of "dryer (30 A)".
      while (!words.empty() && trimmed(words.back(), isSeparator).empty()) words.pop_back();
    }
    while (!words.empty()) {
      // In front a bare number is the first word of a name ("3 season porch"), unless it is a field alone.
      const auto said = saidBy(words.front(), alone && words.size() == 1);
      if (!said || !take(*said)) break;
      words.erase(words.begin());
    }
    // "dryer 30," and "Kitchen,20": a comma may have no blank behind it.
    if (!words.empty()) {
      const std::size_t comma = words.back().find_last_of(",;");
      if (comma != std::string::npos && comma + 1 < words.back().size()) {
        const auto said = saidBy(std::string_view(words.back()).substr(comma + 1), !entry_.rating);
        if (said && take(*said)) words.back().resize(comma);
      }
    }
    return text();
  }

 private:
  bool take(const Said& said) {
    if (said.rating && entry_.rating) return false;
    if (said.poles && entry_.poles) return false;
    if (said.rating) entry_.rating = RatingAmperes(*said.rating);
    if (said.poles) entry_.poles = said.poles;
    if (said.rating && said.bare && !said.poles)
      entry_.note = say(kTakenAsRating, std::int64_t{*said.rating});
    return true;
  }
  DirectoryEntry& entry_;
};

std::vector<std::string> fieldsOf(std::string_view text) {
  std::vector<std::string> fields(1);
  for (const char c : text) {
    if (c == '\t')
      fields.emplace_back();
    else
      fields.back() += c;
  }
  while (fields.size() > 1 && trimmed(fields.back(), isBlank).empty()) fields.pop_back();
  return fields;
}

Result<DirectoryEntry> entryOf(const std::vector<SpaceToken>& tokens,
                               const std::vector<std::string>& fields) {
  DirectoryEntry entry;
  if (tokens.size() > 2) return say(kThreeSpaces);
  for (const SpaceToken& token : tokens) entry.spaces.push_back(token.number);
  if (tokens.size() == 2 && (tokens[0].half != '\0' || tokens[1].half != '\0')) return say(kHalves);
  if (tokens[0].half != '\0') entry.half = tokens[0].half == 'A' ? Half::a : Half::b;
  Tail tail(entry);
  for (const std::string& field : fields) {
    if (trimmed(field, isBlank).empty()) continue;
    const std::string text = tail.strip(field, fields.size() > 1);
    if (text.empty()) continue;
    if (entry.name.empty())
      entry.name = text;
    else
      entry.serves += (entry.serves.empty() ? "" : ", ") + text;
  }
  const bool twoSpaces = tokens.size() == 2;
  if (twoSpaces && entry.poles == 1) return say(kPolesDisagree);
  if (entry.half != Half::whole && entry.poles == 2) return say(kHalves);
  if (twoSpaces) entry.poles = 2;
  const std::string lower = small(entry.name);
  if (has(kSpareWords, lower)) {
    entry.use = DirectoryUse::spare;
  } else if (has(kEmptyWords, lower) && entry.serves.empty()) {
    // A rating without a word is a breaker whose purpose nobody wrote down.
    entry.use = lower.empty() && (entry.rating || entry.poles) ? DirectoryUse::circuit : DirectoryUse::empty;
  }
  return entry;
}

/// "1  Kitchen  2  Lights": two columns of a directory, tab-separated.
bool twoColumns(const std::vector<std::string>& fields) {
  if (fields.size() < 4) return false;
  const auto number = [](const std::string& field) {
    const std::string_view text = trimmed(field, isBlank);
    std::size_t at = 0;
    return spaceToken(text, at).has_value() && at == text.size();
  };
  const auto words = [](const std::string& field) {
    return std::any_of(field.begin(), field.end(), isLetter) && !saidBy(field, true);
  };
  const auto half = fields.size() / 2;
  return fields.size() % 2 == 0 && number(fields[0]) && number(fields[half]) && words(fields[1]) &&
         words(fields[half + 1]);
}

void readEntry(DirectoryLine& line, std::vector<std::string> fields) {
  std::size_t at = numberBegins(fields[0]);
  const std::vector<SpaceToken> tokens = spaceTokens(fields[0], at);
  if (tokens.empty()) {
    line.notRead = say(kNoNumber);
    return;
  }
  std::string_view rest = std::string_view(fields[0]).substr(at);
  while (!rest.empty() && (isSeparator(rest.front()) || rest.front() == ')' || rest.front() == '='))
    rest.remove_prefix(1);
  fields[0] = std::string(rest);
  Result<DirectoryEntry> entry = entryOf(tokens, fields);
  if (!entry)
    line.notRead = entry.refusal();
  else
    line.entries.push_back(std::move(entry).value());
}

/// "20A Kitchen" may mean space 20 or amperes: said, unless another line names the other half of it.
void noteLoneHalves(std::vector<DirectoryLine>& lines) {
  const auto otherHalf = [&](const DirectoryEntry& entry) {
    return std::any_of(lines.begin(), lines.end(), [&](const DirectoryLine& line) {
      return std::any_of(line.entries.begin(), line.entries.end(), [&](const DirectoryEntry& other) {
        return other.half != Half::whole && other.half != entry.half && other.spaces == entry.spaces;
      });
    });
  };
  for (DirectoryLine& line : lines) {
    for (DirectoryEntry& entry : line.entries) {
      if (entry.half == Half::a && !otherHalf(entry)) entry.note = say(kTakenAsHalf, entry.spaces.front());
    }
  }
}

}  // namespace

std::optional<RatingWords> readRating(std::string_view text) {
  DirectoryEntry entry;
  if (text.size() > kLongestLine || !Tail(entry).strip(plain(text), true).empty()) return std::nullopt;
  RatingWords words{std::nullopt, entry.poles};
  if (entry.rating) words.rating = entry.rating->count();
  if (!words.rating && !words.poles) return std::nullopt;
  return words;
}

std::vector<DirectoryLine> readDirectory(std::string_view text) {
  std::vector<DirectoryLine> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    DirectoryLine line;
    line.number = static_cast<std::int32_t>(lines.size()) + 1;
    line.text = std::string(text.substr(0, end));
    const bool both = end + 1 < text.size() && text[end] == '\r' && text[end + 1] == '\n';
    text.remove_prefix(std::min(end + (both ? 2 : 1), text.size()));
    const std::string typed = plain(line.text);
    if (typed.size() > kLongestLine) {
      line.notRead = say(kTooLong, static_cast<std::int64_t>(kLongestLine));
    } else if (!trimmed(typed, isBlank).empty()) {
      const std::vector<std::string> fields = fieldsOf(typed);
      if (twoColumns(fields)) {
        const auto middle = fields.begin() + static_cast<std::ptrdiff_t>(fields.size() / 2);
        readEntry(line, {fields.begin(), middle});
        readEntry(line, {middle, fields.end()});
        if (line.notRead) line.entries.clear();
      } else {
        readEntry(line, fields);
      }
    }
    lines.push_back(std::move(line));
  }
  noteLoneHalves(lines);
  return lines;
}

}  // namespace stayalight
