#include <array>
#include <charconv>
#include <cmath>

#include "core/file/tree.h"

namespace stayalight::json {

std::size_t sequenceLength(std::string_view text) {
  if (text.empty()) return 0;
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    // Neither longer than need be, nor a surrogate.
    if ((first == 0xE0 && byte(1) < 0xA0) || (first == 0xED && byte(1) > 0x9F)) return 0;
    return follows(1) && follows(2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    if ((first == 0xF0 && byte(1) < 0x90) || (first == 0xF4 && byte(1) > 0x8F)) return 0;
    return follows(1) && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}

std::string shown(std::string_view text) {
  constexpr std::size_t kLongest = 60;
  std::string out;
  while (!text.empty()) {
    const std::size_t length = sequenceLength(text);
    if (out.size() + length > kLongest) return out + "...";
    const auto first = static_cast<unsigned char>(text[0]);
    if (length == 0 || first < 0x20 || first == 0x7F) {
      out += '?';
      text.remove_prefix(1);
    } else {
      out += text.substr(0, length);
      text.remove_prefix(length);
    }
  }
  return out;
}

void appendText(std::string& out, std::string_view text) {
  static constexpr std::string_view kHex = "0123456789abcdef";
  out += '"';
  while (!text.empty()) {
    const std::size_t length = sequenceLength(text);
    if (length == 0) {
      out += "\xEF\xBF\xBD";  // the replacement character: a file is always good UTF-8
      text.remove_prefix(1);
      continue;
    }
    const auto first = static_cast<unsigned char>(text[0]);
    if (first == '"' || first == '\\') {
      out += '\\';
      out += text[0];
    } else if (first == '\n') {
      out += "\\n";
    } else if (first == '\t') {
      out += "\\t";
    } else if (first == '\r') {
      out += "\\r";
    } else if (first < 0x20 || first == 0x7F) {
      out += "\\u00";
      out += kHex[first >> 4u];
      out += kHex[first & 15u];
    } else {
      out += text.substr(0, length);
    }
    text.remove_prefix(length);
  }
  out += '"';
}

void appendNumber(std::string& out, double number) {
  // A plan holds no other number; a field that got one anyhow must not make a file that nobody can read.
  if (!std::isfinite(number)) number = 0.0;
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr;
  out.append(digits.data(), end);
}

namespace {

struct Append {
  std::string& out;
  void operator()(Null) const { out += "null"; }
  void operator()(bool value) const { out += value ? "true" : "false"; }
  void operator()(std::int64_t value) const { out += std::to_string(value); }
  void operator()(double value) const {
    const std::size_t from = out.size();
    appendNumber(out, value);
    if (out.find_first_of(".e", from) == std::string::npos) out += ".0";  // stays a number with a fraction
  }
  void operator()(const std::string& value) const { appendText(out, value); }
  void operator()(const List& list) const {
    out += '[';
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (i > 0) out += ", ";
      appendValue(out, list[i]);
    }
    out += ']';
  }
  void operator()(const Object& object) const {
    out += '{';
    for (std::size_t i = 0; i < object.size(); ++i) {
      if (i > 0) out += ", ";
      appendText(out, object[i].key);
      out += ": ";
      appendValue(out, object[i].node);
    }
    out += '}';
  }
};

}  // namespace

void appendValue(std::string& out, const Node& node) { std::visit(Append{out}, node.value); }

}  // namespace stayalight::json
