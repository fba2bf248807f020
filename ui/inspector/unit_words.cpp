#include "ui/inspector/unit_words.h"

#include <cctype>
#include <string>

namespace stayalight::typed_units {
namespace {

// A word is looked up as written, then in small letters.
constexpr UnitWord kUnitWords[] = {
    {"A", 1, kAmpere},
    {"amp", 1, kAmpere},
    {"amps", 1, kAmpere},
    {"ampere", 1, kAmpere},
    {"amperes", 1, kAmpere},
    {"mA", 1e-3, kAmpere},
    {"kA", 1e3, kAmpere},
    {"V", 1, kVolt},
    {"volt", 1, kVolt},
    {"volts", 1, kVolt},
    {"mV", 1e-3, kVolt},
    {"kV", 1e3, kVolt},
    {"W", 1, kWatt},
    {"watt", 1, kWatt},
    {"watts", 1, kWatt},
    {"kW", 1e3, kWatt},
    {"MW", 1e6, kWatt},
    {"VA", 1, kVoltAmpere},
    {"kVA", 1e3, kVoltAmpere},
    {"Wh", 3600, kWattSecond},
    {"kWh", 3.6e6, kWattSecond},
    {"MWh", 3.6e9, kWattSecond},
    {"Ah", 3600, Dimension{.ampere = 1, .second = 1}},
    {"h", 3600, kSecond},
    {"hr", 3600, kSecond},
    {"hrs", 3600, kSecond},
    {"hour", 3600, kSecond},
    {"hours", 3600, kSecond},
    {"min", 60, kSecond},
    {"mins", 60, kSecond},
    {"minute", 60, kSecond},
    {"minutes", 60, kSecond},
    {"s", 1, kSecond},
    {"sec", 1, kSecond},
    {"secs", 1, kSecond},
    {"second", 1, kSecond},
    {"seconds", 1, kSecond},
    {"ms", 1e-3, kSecond},
    {"d", 86400, kSecond},
    {"day", 86400, kSecond},
    {"days", 86400, kSecond},
    {"ft", 0.3048, kMetre},
    {"foot", 0.3048, kMetre},
    {"feet", 0.3048, kMetre},
    {"'", 0.3048, kMetre},
    {"in", 0.0254, kMetre},
    {"inch", 0.0254, kMetre},
    {"inches", 0.0254, kMetre},
    {"\"", 0.0254, kMetre},
    {"yd", 0.9144, kMetre},
    {"m", 1, kMetre},
    {"cm", 0.01, kMetre},
    {"mm", 0.001, kMetre},
    {"ft2", 0.09290304, kSquareMetre},
    {"sqft", 0.09290304, kSquareMetre},
    {"m2", 1, kSquareMetre},
    {"in2", 0.00064516, kSquareMetre},
    {"sqin", 0.00064516, kSquareMetre},
    {"cm2", 1e-4, kSquareMetre},
    {"mm2", 1e-6, kSquareMetre},
    {"in3", 1.6387064e-5, kCubicMetre},
    {"cuin", 1.6387064e-5, kCubicMetre},
    {"cm3", 1e-6, kCubicMetre},
    {"hp", 1, kHorsepower},
    {"deg", 1, kDegree},
    {"C", 1, kTemperature, 0},
    {"F", 1 / 1.8, kTemperature, 32},
    {"K", 1, kTemperature, 273.15},
    {"%", 0.01, Dimension{}},
    {"percent", 0.01, Dimension{}},
};

}  // namespace

const UnitWord* unitOf(std::string_view word) {
  for (const UnitWord& unit : kUnitWords) {
    if (unit.word == word) return &unit;
  }
  // Capitals are no mistake people should be told about, except where they tell two units apart (mW is no
  // MW).
  std::string small(word);
  for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  const UnitWord* found = nullptr;
  for (const UnitWord& unit : kUnitWords) {
    std::string known(unit.word);
    for (char& c : known) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    if (known != small) continue;
    if (found != nullptr) return nullptr;
    found = &unit;
  }
  if (found != nullptr && found->factor != 1 && word.size() == 2 && word[0] == 'm') return nullptr;
  return found;
}

}  // namespace stayalight::typed_units
