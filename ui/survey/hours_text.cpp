#include "ui/survey/hours_text.h"

#include <cctype>
#include <cmath>

#include "ui/inspector/quantity_text.h"

namespace stayalight {
namespace {

constexpr MessageId kAllDay{"survey.hours.all_day"};
constexpr MessageId kFromTo{"survey.hours.from_to"};
constexpr MessageId kADay{"survey.hours.a_day"};
constexpr MessageId kWindows{"survey.hours.windows"};
constexpr MessageId kWrong{"survey.hours.wrong"};
constexpr MessageId kWhole{"survey.hours.whole"};
constexpr double kHoursOfDay = 24.0;

std::string small(std::string_view text) {
  std::string out;
  for (const char c : text) out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  while (!out.empty() && out.front() == ' ') out.erase(0, 1);
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

/// The two ends of "6-22", "6 to 22", "18:00–23:00"; empty where there is no such sign.
std::pair<std::string, std::string> endsOf(const std::string& text) {
  for (const std::string sign : {" to ", "\u2013", "\u2014", "-"}) {
    const std::size_t at = text.find(sign);
    if (at != std::string::npos && at > 0) return {text.substr(0, at), text.substr(at + sign.size())};
  }
  return {};
}

}  // namespace

Result<std::vector<UseWindow>> readHours(std::string_view text, char decimalMark) {
  const std::string plain = small(text);
  if (plain.empty() || plain == "all day" || plain == "all" || plain == "always")
    return std::vector<UseWindow>{};
  const auto [from, to] = endsOf(plain);
  UseWindow window;
  if (!from.empty() && !to.empty()) {
    const Result<double> begins = readQuantity(from, Unit::minuteOfDay, decimalMark);
    const Result<double> ends = readQuantity(to, Unit::minuteOfDay, decimalMark);
    if (!begins || !ends) return say(kWrong, std::string(text));
    const int a = static_cast<int>(begins.value()), b = static_cast<int>(ends.value());
    if (a % 60 != 0 || b % 60 != 0) return say(kWhole);
    window.from = TimeOfDay(a);
    window.to = TimeOfDay(b);
    return std::vector<UseWindow>{window};
  }
  const Result<double> hours = readQuantity(plain, Unit::hour, decimalMark);
  if (!hours || hours.value() < 0.0 || hours.value() > kHoursOfDay) return say(kWrong, std::string(text));
  if (hours.value() == kHoursOfDay) return std::vector<UseWindow>{};
  window.share = Fraction(hours.value() / kHoursOfDay);
  return std::vector<UseWindow>{window};
}

bool plainHours(const std::vector<UseWindow>& windows) {
  if (windows.empty()) return true;
  const UseWindow& window = windows.front();
  const bool allDay = window.from == window.to;
  return windows.size() == 1 && window.season.is(Season::all) && !window.duty && !window.startsPerHour &&
         window.unknown.empty() && (allDay || window.share == Fraction(1.0));
}

std::string hoursText(const std::vector<UseWindow>& windows, const Language& language) {
  if (windows.empty()) return render(say(kAllDay), language);
  if (!plainHours(windows)) return render(say(kWindows, static_cast<std::int64_t>(windows.size())), language);
  const UseWindow& window = windows.front();
  if (window.from != window.to) {
    return render(
        say(kFromTo, language.clock({window.from.minutes()}), language.clock({window.to.minutes()})),
        language);
  }
  if (window.share == Fraction(1.0)) return render(say(kAllDay), language);
  const double hours = window.share.count() * kHoursOfDay;
  return render(say(kADay, writeQuantity(std::round(hours * 1e6) / 1e6, Unit::hour, language)), language);
}

}  // namespace stayalight
