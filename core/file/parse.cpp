#include <algorithm>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>

#include "core/file/tree.h"

namespace stayalight::json {
namespace {

constexpr MessageId kTooBig{"file.too_big"};
constexpr MessageId kEmpty{"file.empty"};
constexpr MessageId kNotText{"file.not_text"};
constexpr MessageId kNotJson{"file.not_json"};
constexpr MessageId kEndsEarly{"file.ends_early"};
constexpr MessageId kUnexpected{"file.unexpected"};
constexpr MessageId kNumberTooLarge{"file.number_too_large"};
constexpr MessageId kWholeTooLarge{"file.whole_too_large"};
constexpr MessageId kTooDeep{"file.too_deep"};
constexpr MessageId kTooManyValues{"file.too_many_values"};
constexpr MessageId kTooManyCircuits{"file.too_many_circuits"};
constexpr MessageId kDuplicateKey{"file.duplicate_key"};

std::int64_t count(std::size_t value) { return static_cast<std::int64_t>(value); }

/// Line and column, both from 1, of a byte.
std::pair<std::int64_t, std::int64_t> placeOf(std::string_view text, std::size_t byte) {
  const std::string_view before = text.substr(0, std::min(byte, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t start = before.rfind('\n');
  return {line, count(before.size() - (start == std::string_view::npos ? 0 : start + 1)) + 1};
}

/// The word, or the one sign, at a byte.
std::string wordAt(std::string_view text, std::size_t byte) {
  const auto inWord = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '.' || c == '-';
  };
  const std::string_view rest = text.substr(std::min(byte, text.size()));
  std::size_t length = sequenceLength(rest);
  if (length == 1 && inWord(rest[0])) {
    while (length < rest.size() && inWord(rest[length])) ++length;
  }
  return shown(rest.substr(0, length));
}

/// Where the reader is. Its lexer looks one character past a number, so the line before that one is kept too.
struct Progress {
  int line = 1;
  char last = '\0';
  std::size_t bytes = 0;
};

constexpr std::size_t kValuesBetweenLooks = 512;

/// Bytes of the text, counting lines as they are read.
class Bytes {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  Bytes(const char* at, Progress* progress) : at_(at), progress_(progress) {}
  reference operator*() const { return *at_; }
  Bytes& operator++() {
    progress_->last = *at_;
    ++progress_->bytes;
    if (*at_ == '\n') ++progress_->line;
    ++at_;
    return *this;
  }
  Bytes operator++(int) {
    const Bytes before = *this;
    ++*this;
    return before;
  }
  friend bool operator==(const Bytes& a, const Bytes& b) { return a.at_ == b.at_; }

 private:
  const char* at_;
  Progress* progress_;
};

/// Builds the tree from the reader's events. Every event answers whether to go on.
class Builder {
 public:
  Builder(std::string_view text, const std::string& name, const ReadLimits& limits, const Progress& progress,
          const Watch& watch)
      : text_(text), name_(name), limits_(limits), progress_(progress), watch_(watch) {}

  bool null() { return add(Null{}); }
  bool boolean(bool value) { return add(value); }
  bool number_integer(std::int64_t value) { return add(value, lineOfNumber()); }
  bool number_unsigned(std::uint64_t value) {
    if (value > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max())) {
      return refuse(say(kWholeTooLarge, name_, std::int64_t{lineOfNumber()}, std::to_string(value)));
    }
    return add(static_cast<std::int64_t>(value), lineOfNumber());
  }
  bool number_float(double value, const std::string& token) {
    if (token.find_first_of(".eE") == std::string::npos) {
      return refuse(say(kWholeTooLarge, name_, std::int64_t{lineOfNumber()}, shown(token)));
    }
    return add(value, lineOfNumber());
  }
  bool string(std::string& value) { return add(std::move(value)); }
  bool binary(const nlohmann::json::binary_t&) { return false; }
  bool start_object(std::size_t) {
    if (!countCircuit()) return false;
    return open(Object{});
  }
  bool start_array(std::size_t) { return open(List{}); }
  bool key(std::string& value) {
    auto& object = std::get<Object>(open_.back()->value);
    object.push_back({std::move(value), Node{Null{}, progress_.line}});
    return true;
  }
  bool end_object() {
    if (!keysDiffer(std::get<Object>(open_.back()->value))) return false;
    open_.pop_back();
    return true;
  }
  bool end_array() {
    open_.pop_back();
    return true;
  }
  bool parse_error(std::size_t position, const std::string& token, const nlohmann::json::exception& error) {
    const bool atEnd = position > text_.size();
    const std::size_t byte = position > 0 ? position - 1 : 0;
    const auto [line, column] = placeOf(text_, byte);
    const bool overflow = error.id == 406;
    Message reason = overflow ? say(kNumberTooLarge, shown(token))
                     : atEnd  ? say(kEndsEarly)
                              : say(kUnexpected, wordAt(text_, byte));
    return refuse(say(kNotJson, name_, line, column, std::vector<Message>{std::move(reason)}));
  }

  Node root;
  std::optional<Message> refusal;

 private:
  [[nodiscard]] double share() const {
    return static_cast<double>(progress_.bytes) / static_cast<double>(text_.size());
  }
  [[nodiscard]] int lineOfNumber() const { return progress_.line - (progress_.last == '\n' ? 1 : 0); }

  bool refuse(Message message) {
    if (!refusal) refusal = std::move(message);
    return false;
  }

  /// Puts a node where the text is; null where that goes over a limit.
  template <class Value>
  Node* place(Value value, int line) {
    if (++values_ > limits_.values) {
      refuse(say(kTooManyValues, name_, std::int64_t{line}, count(limits_.values)));
      return nullptr;
    }
    if (values_ % kValuesBetweenLooks == 1 && !goesOn(watch_, share())) {
      refuse(say(kStopped, name_));
      return nullptr;
    }
    if (open_.empty()) {
      root = Node{std::move(value), line};
      return &root;
    }
    if (auto* list = std::get_if<List>(&open_.back()->value)) {
      return &list->emplace_back(Node{std::move(value), line});
    }
    // A member's line is that of its key.
    Node& node = std::get<Object>(open_.back()->value).back().node;
    node.value = std::move(value);
    return &node;
  }
  template <class Value>
  bool add(Value value, int line) {
    return place(std::move(value), line) != nullptr;
  }
  template <class Value>
  bool add(Value value) {
    return add(std::move(value), progress_.line);
  }
  template <class Value>
  bool open(Value value) {
    if (static_cast<int>(open_.size()) >= limits_.depth) {
      return refuse(say(kTooDeep, name_, std::int64_t{progress_.line}, std::int64_t{limits_.depth}));
    }
    Node* node = place(std::move(value), progress_.line);
    if (node == nullptr) return false;
    open_.push_back(node);
    return true;
  }

  bool countCircuit() {
    const bool isCircuit = open_.size() == 2 && open_[0]->as<Object>() != nullptr &&
                           open_[1]->as<List>() != nullptr &&
                           open_[0]->as<Object>()->back().key == "circuits";
    if (isCircuit && ++circuits_ > limits_.circuits) {
      return refuse(say(kTooManyCircuits, name_, std::int64_t{progress_.line}, count(limits_.circuits)));
    }
    return true;
  }

  bool keysDiffer(const Object& object) {
    std::vector<const Member*> members;
    members.reserve(object.size());
    for (const Member& member : object) members.push_back(&member);
    std::stable_sort(members.begin(), members.end(),
                     [](const Member* a, const Member* b) { return a->key < b->key; });
    const auto twice = std::adjacent_find(members.begin(), members.end(),
                                          [](const Member* a, const Member* b) { return a->key == b->key; });
    if (twice == members.end()) return true;
    return refuse(say(kDuplicateKey, name_, std::int64_t{(*std::next(twice))->node.line},
                      shown((*twice)->key), std::int64_t{(*twice)->node.line}));
  }

  std::string_view text_;
  const std::string& name_;
  const ReadLimits& limits_;
  const Progress& progress_;
  const Watch& watch_;
  // Nodes on the way from the root. A list grows only at its end, and only while nothing in it is open.
  std::vector<Node*> open_;
  std::size_t values_ = 0;
  std::size_t circuits_ = 0;
};

/// First byte that is no UTF-8, or a NUL, which the reader below would take for the end.
std::optional<std::size_t> badByte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = text[at] == '\0' ? 0 : sequenceLength(text.substr(at, 4));
    if (length == 0) return at;
    at += length;
  }
  return std::nullopt;
}

}  // namespace

const Node* Node::find(std::string_view key) const {
  const auto* object = as<Object>();
  if (object == nullptr) return nullptr;
  for (const Member& member : *object) {
    if (member.key == key) return &member.node;
  }
  return nullptr;
}

Result<Node> parse(std::string_view text, const std::string& name, const ReadLimits& limits,
                   const Watch& watch) {
  if (text.size() > limits.bytes) return say(kTooBig, name, count(text.size()), count(limits.bytes));
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) return say(kEmpty, name);
  if (const auto bad = badByte(text)) {
    const auto [line, column] = placeOf(text, *bad);
    return say(kNotText, name, line, column);
  }
  Progress progress;
  Builder builder(text, name, limits, progress, watch);
  const bool whole = nlohmann::json::sax_parse(Bytes(text.data(), &progress),
                                               Bytes(text.data() + text.size(), &progress), &builder);
  if (!whole)
    return builder.refusal.value_or(say(kNotJson, name, std::int64_t{progress.line}, std::int64_t{1},
                                        std::vector<Message>{say(kEndsEarly)}));
  return std::move(builder.root);
}

}  // namespace stayalight::json
