#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/message/message.h"

namespace stayalight {
namespace {

std::string plainNumber(double value, int decimals) {
  char text[64];
  // Beyond any figure of a house the digits would only fill the line.
  constexpr double kLongest = 1e15;
  const bool shortEnough = value < kLongest && value > -kLongest;
  // Halves go away from zero, as people round: 31.25 is 31.3.
  const double scale = std::pow(10.0, decimals);
  const double rounded = shortEnough ? std::round(value * scale) / scale : value;
  std::snprintf(text, sizeof text, shortEnough ? "%.*f" : "%.*g", decimals, rounded);
  // No "-0.0": a figure that rounds to zero has no sign.
  if (text[0] == '-' && std::string_view(text).find_first_not_of("-0.") == std::string_view::npos)
    return text + 1;
  return text;
}

std::string text(const Argument& argument, const Language& language);

struct ArgumentText {
  const Language& language;
  std::string operator()(const std::string& value) const { return language.inUnits(value); }
  std::string operator()(std::int64_t value) const { return language.number(static_cast<double>(value), 0); }
  std::string operator()(const Figure& figure) const {
    const Figure shown = language.inUnits(figure);
    std::string out = language.number(shown.value, shown.decimals);
    if (!shown.unit.empty()) out += " " + shown.unit;
    return out;
  }
  std::string operator()(const ClockTime& time) const { return language.clock(time); }
  std::string operator()(const Citation& citation) const { return language.citation(citation.rule); }
  std::string operator()(const std::vector<Message>& list) const {
    std::string out;
    for (const Message& message : list) {
      if (!out.empty()) out += ", ";
      out += render(message, language);
    }
    return out;
  }
};

std::string text(const Argument& argument, const Language& language) {
  return std::visit(ArgumentText{language}, argument);
}

// The plural form that the message's first whole number asks for; the last one where there are fewer.
std::string chosenForm(std::string pattern, const Message& message, const Language& language) {
  if (pattern.find("||") == std::string::npos) return pattern;
  std::int64_t count = 0;
  for (const Argument& argument : message.arguments) {
    if (const auto* whole = std::get_if<std::int64_t>(&argument)) {
      count = *whole;
      break;
    }
  }
  for (int form = language.pluralForm(count); form > 0; --form) {
    const std::size_t bar = pattern.find("||");
    if (bar == std::string::npos) break;
    pattern.erase(0, bar + 2);
  }
  return pattern.substr(0, pattern.find("||"));
}

}  // namespace

std::string Language::pattern(MessageId id) const {
  const auto& rows = texts();
  const auto row = std::lower_bound(rows.begin(), rows.end(), id.key,
                                    [](const TextRow& r, std::string_view key) { return r.key < key; });
  if (row == rows.end() || row->key != id.key) return "<" + std::string(id.key) + ">";
  return row->english;
}

int Language::pluralForm(std::int64_t count) const { return count == 1 ? 0 : 1; }

std::string Language::number(double value, int decimals) const { return plainNumber(value, decimals); }

std::string Language::clock(ClockTime time) const {
  char out[16];
  std::snprintf(out, sizeof out, "%02d:%02d", (time.minutes / 60) % 24, time.minutes % 60);
  return out;
}

std::string Language::citation(RuleId rule) const { return std::string(rule.key); }

Figure Language::inUnits(const Figure& figure) const { return figure; }
std::string Language::inUnits(const std::string& text) const { return text; }

const Language& plainEnglish() {
  static const Language language;
  return language;
}

std::string render(const Message& message, const Language& language) {
  const std::string pattern = chosenForm(language.pattern(message.id), message, language);
  std::string out;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (pattern[i] == '%' && i + 1 < pattern.size() && pattern[i + 1] >= '1' && pattern[i + 1] <= '9') {
      const auto index = static_cast<std::size_t>(pattern[i + 1] - '1');
      if (index < message.arguments.size()) out += text(message.arguments[index], language);
      ++i;
    } else if (pattern[i] == '%' && i + 1 < pattern.size() && pattern[i + 1] == '%') {
      out += '%';
      ++i;
    } else {
      out += pattern[i];
    }
  }
  return out;
}

}  // namespace stayalight
