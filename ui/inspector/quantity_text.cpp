#include "ui/inspector/quantity_text.h"

#include <array>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>
#include <utility>

#include "ui/inspector/unit_words.h"

namespace stayalight {
namespace {

using namespace typed_units;

constexpr MessageId kNotRead{"inspector.quantity.not_read"};
constexpr MessageId kUnknownUnit{"inspector.quantity.unknown_unit"};
constexpr MessageId kWrongUnit{"inspector.quantity.wrong_unit"};
constexpr MessageId kWrongClock{"inspector.quantity.wrong_clock"};
constexpr MessageId kUnitMissing{"inspector.quantity.unit_missing"};
constexpr MessageId kMixedUnits{"inspector.quantity.mixed_units"};
constexpr MessageId kNumberMissing{"inspector.quantity.number_missing"};
constexpr MessageId kParenthesis{"inspector.quantity.parenthesis"};
constexpr MessageId kDivideByZero{"inspector.quantity.divide_by_zero"};
constexpr MessageId kMarks{"inspector.quantity.marks"};
constexpr MessageId kPercent{"inspector.quantity.percent"};
constexpr MessageId kTemperatures{"inspector.quantity.temperatures"};
constexpr MessageId kTooLarge{"inspector.quantity.too_large"};
constexpr MessageId kTooLong{"inspector.quantity.too_long"};

constexpr std::size_t kLongest = 200;  // also bounds the depth of parentheses

struct Value {
  double number = 0.0;  // in base units; a temperature in degrees Celsius
  Dimension dimension;
  bool bare = true;  // no unit was typed anywhere in it
  bool percent = false;
  double unitFactor = 1.0;  // of the unit it was typed with
};

// The text in plain characters: signs for minus, times, divide, primes and degrees as ASCII, any space as a
// blank.
std::string plainCharacters(std::string_view text) {
  constexpr std::pair<std::string_view, std::string_view> kReplacements[] = {
      {"\u2212", "-"},     {"\u2013", "-"},    {"\u00d7", "*"},   {"\u00b7", "*"},  {"\u22c5", "*"},
      {"\u00f7", "/"},     {"\u2032", "'"},    {"\u2019", "'"},   {"\u2033", "\""}, {"\u201d", "\""},
      {"\u00b0", " deg "}, {"\u00b2", "2"},    {"\u00a0", " "},   {"\u202f", " "},  {"\u2009", " "},
      {"\u00bd", " 1/2"},  {"\u00bc", " 1/4"}, {"\u00be", " 3/4"}};
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    bool replaced = false;
    for (const auto& [from, to] : kReplacements) {
      if (text.substr(i, from.size()) != from) continue;
      out += to;
      i += from.size();
      replaced = true;
      break;
    }
    if (replaced) continue;
    const char c = text[i++];
    out += c == '\t' ? ' ' : c;
  }
  return out;
}

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '%' || c == '\'' || c == '"';
}

class Reader {
 public:
  Reader(std::string text, char decimalMark) : text_(std::move(text)), mark_(decimalMark) {}

  Result<Value> read() {
    const Value value = sum();
    skipBlanks();
    if (!wrong_ && at_ < text_.size()) {
      if (text_[at_] == ')')
        fail(say(kParenthesis));
      else
        fail(say(kNotRead, rest()));
    }
    if (wrong_) return *wrong_;
    if (!std::isfinite(value.number)) return say(kTooLarge);
    return value;
  }

 private:
  void fail(Message message) {
    if (!wrong_) wrong_ = std::move(message);
  }
  [[nodiscard]] std::string rest() const { return text_.substr(at_); }
  void skipBlanks() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }
  [[nodiscard]] char peek() {
    skipBlanks();
    return at_ < text_.size() ? text_[at_] : '\0';
  }
  bool take(char c) {
    if (peek() != c) return false;
    ++at_;
    return true;
  }

  Value added(const Value& a, const Value& b, double sign) {
    if (a.dimension.temperature != 0 || b.dimension.temperature != 0) {
      fail(say(kTemperatures));
      return a;
    }
    if (a.bare != b.bare)
      fail(say(kUnitMissing));
    else if (!(a.dimension == b.dimension))
      fail(say(kMixedUnits));
    return {a.number + sign * b.number, a.dimension, a.bare, a.percent || b.percent};
  }

  Value sum() {
    Value value = product();
    while (!wrong_) {
      if (take('+'))
        value = added(value, product(), 1);
      else if (take('-'))
        value = added(value, product(), -1);
      else
        break;
    }
    return value;
  }

  Value product() {
    Value value = withUnit();
    while (!wrong_) {
      const bool times = peek() == '*';
      if (!times && peek() != '/') break;
      ++at_;
      const Value other = times ? withUnit() : divisor();
      if (wrong_) break;
      if (value.dimension.temperature != 0 || other.dimension.temperature != 0) fail(say(kTemperatures));
      if (!times && other.number == 0.0) fail(say(kDivideByZero));
      // "1/2 hp" is half a horsepower; only a time has a meaning below the stroke of a bare number ("48/24
      // h").
      const bool fraction =
          !times && value.bare && !other.bare && !(other.dimension == kSecond) && !other.percent;
      if (fraction) {
        value = {value.number * other.unitFactor * other.unitFactor / other.number, other.dimension, false,
                 false, other.unitFactor};
        continue;
      }
      value = {times ? value.number * other.number : value.number / other.number,
               combined(value.dimension, other.dimension, times ? 1 : -1), value.bare && other.bare,
               value.percent || other.percent};
    }
    return value;
  }

  // After a stroke a unit may stand alone: "2/h".
  Value divisor() {
    if (isLetter(peek())) {
      Value one{1.0, {}, true, false};
      applyUnit(one);
      return one;
    }
    return withUnit();
  }

  // A number or parentheses, with a unit; "12 ft 6 in" adds up, and so does "1 h 30 min".
  Value withUnit() {
    Value value = oneWithUnit();
    while (!wrong_ && !value.bare && value.dimension.temperature == 0 && isDigit(peek())) {
      value = added(value, oneWithUnit(), 1);
    }
    return value;
  }

  Value oneWithUnit() {
    Value value;
    if (take('-')) {
      value = primary();
      value.number = -value.number;
    } else {
      take('+');
      value = primary();
    }
    if (!wrong_ && isLetter(peek())) applyUnit(value);
    return value;
  }

  Value primary() {
    if (take('(')) {
      const Value value = sum();
      if (!wrong_ && !take(')')) fail(say(kParenthesis));
      return value;
    }
    const char c = peek();
    if (isDigit(c) || c == '.' || c == ',') return {number(), {}, true, false};
    if (c == '\0')
      fail(say(kNumberMissing));
    else
      fail(say(kNotRead, rest()));
    return {};
  }

  void applyUnit(Value& value) {
    skipBlanks();
    std::string word;
    if (text_[at_] == '%' || text_[at_] == '\'' || text_[at_] == '"') {
      word = text_[at_++];
    } else {
      while (at_ < text_.size() && (isLetter(text_[at_]) || isDigit(text_[at_])) && text_[at_] != '\'' &&
             text_[at_] != '"' && text_[at_] != '%') {
        word += text_[at_++];
      }
    }
    if ((word == "deg") && (peek() == 'C' || peek() == 'F')) word = text_[at_++];
    if (word == "sq" && isLetter(peek())) {
      while (at_ < text_.size() && isLetter(text_[at_])) word += text_[at_++];
    }
    if (word == "per" || word == "an" || (word == "a" && isLetter(peek()))) {
      // "2 per hour", "48 a day": a stroke in words; an "a" alone is amperes.
      Value one{1.0, {}, true, false};
      if (isLetter(peek()))
        applyUnit(one);
      else
        fail(say(kNumberMissing));
      value = {value.number / one.number, combined(value.dimension, one.dimension, -1), false, value.percent};
      return;
    }
    const UnitWord* unit = unitOf(word);
    if (unit == nullptr) {
      fail(say(kUnknownUnit, word));
      return;
    }
    if (!value.bare && !(value.dimension.none() && value.percent)) {
      fail(say(kNotRead, word));
      return;
    }
    value.unitFactor = unit->factor;
    value.number = (value.number - unit->offset) * unit->factor;
    value.dimension = unit->dimension;
    value.bare = false;
    value.percent = unit->dimension.none();
  }

  // Digits with marks. Groups of three after the mark that is not the language's decimal mark are thousands.
  double number() {
    const std::size_t from = at_;
    std::string digits;
    std::size_t commas = 0, points = 0, lastMark = std::string::npos;
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (isDigit(c)) {
        digits += c;
        ++at_;
      } else if (c == ',' || c == '.') {
        (c == ',' ? commas : points)++;
        lastMark = digits.size();
        digits += c;
        ++at_;
      } else if (c == ' ' && groupFollows(at_ + 1) && lastMark == std::string::npos && digits.size() <= 3) {
        ++at_;  // a blank between groups of three
        digits += text_.substr(at_, 3);
        at_ += 3;
        while (at_ < text_.size() && text_[at_] == ' ' && groupFollows(at_ + 1)) {
          digits += text_.substr(at_ + 1, 3);
          at_ += 4;
        }
      } else {
        break;
      }
    }
    const auto bad = [&] {
      fail(say(kMarks, text_.substr(from, at_ - from)));
      return 0.0;
    };
    char decimal = '\0';
    if (commas + points > 0) {
      const char last = digits[lastMark];
      if (commas > 0 && points > 0) {
        decimal = last;
        if ((last == ',' ? commas : points) != 1) return bad();
        if (!inGroups(digits.substr(0, lastMark), last == ',' ? '.' : ',')) return bad();
      } else if (commas + points > 1) {
        if (!inGroups(digits, last)) return bad();
      } else if (last != mark_ && inGroups(digits, last)) {
        decimal = '\0';
      } else {
        decimal = last;
      }
    }
    std::string plain;
    for (const char c : digits) {
      if (isDigit(c))
        plain += c;
      else if (c == decimal)
        plain += '.';
    }
    if (plain.empty() || plain == ".") return bad();
    // "1e3", but not the start of a unit.
    if (at_ + 1 < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E')) {
      std::size_t look = at_ + 1;
      if (text_[look] == '-' || text_[look] == '+') ++look;
      if (look < text_.size() && isDigit(text_[look])) {
        plain += 'e';
        ++at_;
        if (text_[at_] == '+') ++at_;
        while (at_ < text_.size() && (isDigit(text_[at_]) || text_[at_] == '-')) plain += text_[at_++];
      }
    }
    double value = 0.0;
    const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
    if (error == std::errc::result_out_of_range)
      fail(say(kTooLarge));
    else if (error != std::errc() || end != plain.data() + plain.size())
      return bad();
    return decimal == '\0' ? value + mixedFraction() : value;
  }

  // "1 1/2": the fraction after a whole number, or 0.
  double mixedFraction() {
    std::size_t look = at_;
    if (look >= text_.size() || text_[look] != ' ') return 0.0;
    while (look < text_.size() && text_[look] == ' ') ++look;
    const auto whole = [&]() -> std::optional<double> {
      double value = 0.0;
      const std::size_t start = look;
      while (look < text_.size() && isDigit(text_[look]) && look - start < 4)
        value = value * 10 + (text_[look++] - '0');
      if (look == start) return std::nullopt;
      return value;
    };
    const auto above = whole();
    if (!above || look >= text_.size() || text_[look] != '/') return 0.0;
    ++look;
    const auto below = whole();
    if (!below || *below == 0.0 || *above >= *below) return 0.0;
    if (look < text_.size() && (text_[look] == '.' || text_[look] == ',')) return 0.0;
    at_ = look;
    return *above / *below;
  }

  [[nodiscard]] bool groupFollows(std::size_t from) const {
    for (std::size_t i = from; i < from + 3; ++i) {
      if (i >= text_.size() || !isDigit(text_[i])) return false;
    }
    const char after = from + 3 < text_.size() ? text_[from + 3] : '\0';
    return !isDigit(after) && after != '/';
  }
  // "12", "1,234" or "1,234,567": no leading zero, then groups of three.
  static bool inGroups(std::string_view digits, char mark) {
    std::size_t group = digits.find(mark);
    if (group == std::string_view::npos) return true;
    if (group == 0 || group > 3 || digits[0] == '0') return false;
    while (group != std::string_view::npos) {
      const std::size_t next = digits.find(mark, group + 1);
      const std::size_t length = (next == std::string_view::npos ? digits.size() : next) - group - 1;
      if (length != 3) return false;
      group = next;
    }
    return true;
  }

  std::string text_;
  char mark_;
  std::size_t at_ = 0;
  std::optional<Message> wrong_;
};

// How a field's number follows from base units.
struct Target {
  Dimension dimension;
  Dimension alsoDimension;  // second form that means the same there
  double perBase = 1.0;     // number kept in the plan for one base unit
  double perShown = 1.0;    // number kept for one of the unit shown
  std::string_view examples;
};
Target targetOf(Unit unit, const ShownUnits& shown) {
  switch (unit) {
    case Unit::none:
      return {{}, {}, 1, 1, "2"};
    case Unit::ampere:
      return {kAmpere, kAmpere, 1, 1, "12.5 A"};
    case Unit::watt:
      return {kWatt, kWatt, 1, 1, "1500 W, 1.5 kW"};
    case Unit::voltAmpere:
      return {kVoltAmpere, kVoltAmpere, 1, 1, "9600 VA, 9.6 kVA"};
    case Unit::volt:
      return {kVolt, kVolt, 1, 1, "240 V"};
    case Unit::hour:
      return {kSecond, kSecond, 1 / 3600.0, 1, "2.5 h, 90 min"};
    case Unit::second:
      return {kSecond, kSecond, 1, 1, "0.5 s, 500 ms"};
    case Unit::perHour:
      return {kPerSecond, kPerSecond, 3600, 1, "2/h, 48/day"};
    case Unit::fraction:
      return {{}, {}, 1, 0.01, "80 %"};
    case Unit::kilowattHour:
      return {kWattSecond, kBatterySecond, 1 / 3.6e6, 1, "5 kWh, 100 Ah * 51.2 V"};
    case Unit::horsepower:
      return {kHorsepower, kHorsepower, 1, 1, "1/2 hp"};
    case Unit::squareFoot:
      return {kSquareMetre, kSquareMetre, 1 / 0.09290304, 1, "1800 ft2, 170 m2"};
    case Unit::squareInch:
      return {kSquareMetre, kSquareMetre, 1 / 0.00064516, 1, "12.5 in2, 4 in * 3 in"};
    case Unit::cubicInch:
      return {kCubicMetre, kCubicMetre, 1 / 1.6387064e-5, 1, "21 in3"};
    case Unit::degree:
      return {kDegree, kDegree, 1, 1, "44.5"};
    case Unit::micrometre:
      return {kMetre, kMetre, 1e6, shown.metric ? 1e6 : 304800, "12 ft 6 in, 3.8 m"};
    case Unit::micrometreShort:
      return {kMetre, kMetre, 1e6, shown.metric ? 1e3 : 25400, "0.4 in, 10 mm"};
    case Unit::milliCelsius:
      return {kTemperature, kTemperature, 1000, 1000, "68 F, 20 C"};
    case Unit::minuteOfDay:
    case Unit::hourOfDay:
    case Unit::month:
      return {{}, {}, 1, 1, "6 p.m., 18:00"};
  }
  return {};
}

std::string trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return std::string(text);
}

// "6 p.m.", "6:30 pm", "18:30", "18", "noon", "midnight".
Result<double> readClock(const std::string& text) {
  std::string small;
  for (const char c : text) {
    if (c != ' ' && c != '.') small += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  if (small == "noon") return 720.0;
  if (small == "midnight") return 0.0;
  bool morning = false, evening = false;
  if (small.size() > 2 && small.ends_with("am")) morning = true;
  if (small.size() > 2 && small.ends_with("pm")) evening = true;
  if (morning || evening) small.resize(small.size() - 2);
  if (small.ends_with("h")) small.pop_back();
  const std::size_t colon = small.find(':');
  const std::string hours = small.substr(0, colon);
  const std::string minutes = colon == std::string::npos ? "0" : small.substr(colon + 1);
  const auto whole = [](const std::string& digits) -> std::optional<int> {
    if (digits.empty() || digits.size() > 2) return std::nullopt;
    for (const char c : digits) {
      if (!isDigit(c)) return std::nullopt;
    }
    return std::stoi(digits);
  };
  const auto h = whole(hours), m = whole(minutes);
  if (!h || !m || *m > 59 || *h > 24 || (*h == 24 && *m > 0)) return say(kWrongClock, text);
  if ((morning || evening) && (*h < 1 || *h > 12)) return say(kWrongClock, text);
  int hour = *h % 24;
  if (morning || evening) hour = *h % 12 + (evening ? 12 : 0);
  return hour * 60.0 + *m;
}

}  // namespace

Result<double> readQuantity(std::string_view typed, Unit unit, char decimalMark, const ShownUnits& shown) {
  if (typed.size() > kLongest) return say(kTooLong);
  const std::string text = trimmed(plainCharacters(typed));
  if (text.empty()) return say(kNumberMissing);
  if (unit == Unit::minuteOfDay) return readClock(text);
  Result<Value> read = Reader(text, decimalMark).read();
  if (!read) return read.refusal();
  const Value& value = read.value();
  const Target target = targetOf(unit, shown);
  if (value.bare) {
    if (unit == Unit::milliCelsius) {
      return shown.metric ? value.number * 1000.0 : (value.number - 32.0) / 1.8 * 1000.0;
    }
    if (unit == Unit::fraction) {
      // "0.8" in a field that shows per cent is the share of the whole; a bare 1 may be the whole or one per
      // cent.
      if (value.number == 1.0) return say(kPercent, text);
      if (value.number > 0.0 && value.number < 1.0) return value.number;
    }
    return value.number * target.perShown;
  }
  if (!(value.dimension == target.dimension) && !(value.dimension == target.alsoDimension)) {
    return say(kWrongUnit, std::string(target.examples));
  }
  return value.number * target.perBase;
}

std::string writeQuantity(double value, Unit unit, const Language& language, const ShownUnits& shown) {
  if (unit == Unit::minuteOfDay) return language.clock(ClockTime{static_cast<int>(value)});
  double number = value / targetOf(unit, shown).perShown;
  if (unit == Unit::milliCelsius) number = shown.metric ? value / 1000.0 : value / 1000.0 * 1.8 + 32.0;
  const bool whole = unit == Unit::micrometre || unit == Unit::milliCelsius;
  constexpr int kMostDecimals = 9;
  for (int decimals = 0; decimals < kMostDecimals; ++decimals) {
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::round(number * scale) / scale;
    double back = rounded * targetOf(unit, shown).perShown;
    if (unit == Unit::milliCelsius) back = shown.metric ? rounded * 1000.0 : (rounded - 32.0) / 1.8 * 1000.0;
    const bool same =
        whole ? std::llround(back) == std::llround(value) : std::abs(back - value) <= 1e-9 * std::abs(value);
    if (same) return language.number(rounded, decimals);
  }
  return language.number(number, kMostDecimals);
}

std::string_view shownUnit(Unit unit, const ShownUnits& shown) {
  switch (unit) {
    case Unit::none:
    case Unit::minuteOfDay:
    case Unit::hourOfDay:
    case Unit::month:
      return "";
    case Unit::ampere:
      return "A";
    case Unit::watt:
      return "W";
    case Unit::voltAmpere:
      return "VA";
    case Unit::volt:
      return "V";
    case Unit::hour:
      return "h";
    case Unit::second:
      return "s";
    case Unit::perHour:
      return "/h";
    case Unit::fraction:
      return "%";
    case Unit::kilowattHour:
      return "kWh";
    case Unit::horsepower:
      return "hp";
    case Unit::squareFoot:
      return "ft\u00b2";
    case Unit::squareInch:
      return "in\u00b2";
    case Unit::cubicInch:
      return "in\u00b3";
    case Unit::degree:
      return "\u00b0";
    case Unit::micrometre:
      return shown.metric ? "m" : "ft";
    case Unit::micrometreShort:
      return shown.metric ? "mm" : "in";
    case Unit::milliCelsius:
      return shown.metric ? "\u00b0C" : "\u00b0F";
  }
  return "";
}

char decimalMarkOf(const Language& language) {
  const std::string text = language.number(1.5, 1);
  return text.find(',') != std::string::npos ? ',' : '.';
}

}  // namespace stayalight
