#pragma once

// A JSON text as an ordered tree that knows its lines; limits hold while it is read. Inside core/file only.

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "core/file/file.h"

namespace stayalight::json {

struct Node;
struct Member;
using List = std::vector<Node>;
using Object = std::vector<Member>;
struct Null {};

struct Node {
  std::variant<Null, bool, std::int64_t, double, std::string, List, Object> value;
  int line = 1;

  template <class T>
  [[nodiscard]] const T* as() const {
    return std::get_if<T>(&value);
  }
  /// The member with this key, or nullptr; also where the node is no object.
  [[nodiscard]] const Node* find(std::string_view key) const;
};
struct Member {
  std::string key;
  Node node;
};

/// Refuses what is no UTF-8, no JSON, or over the limits, with its line. Stopped by `watch`: refused too.
[[nodiscard]] Result<Node> parse(std::string_view text, const std::string& name, const ReadLimits& limits,
                                 const Watch& watch);

inline constexpr MessageId kStopped{"file.stopped"};

/// The value on one line; reading it gives the same value.
void appendValue(std::string& out, const Node& node);
void appendText(std::string& out, std::string_view text);
/// Shortest text that reads back as the same number.
void appendNumber(std::string& out, double number);

/// A text of the file fit for a message: on one line, and cut where it is long.
[[nodiscard]] std::string shown(std::string_view text);

/// Bytes of the well-formed UTF-8 sequence at the beginning of `text`; 0 where there is none.
[[nodiscard]] std::size_t sequenceLength(std::string_view text);

}  // namespace stayalight::json
