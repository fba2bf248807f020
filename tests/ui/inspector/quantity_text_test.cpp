#include "ui/inspector/quantity_text.h"

#include <gtest/gtest.h>

namespace stayalight {
namespace {

struct Reading {
  const char* text;
  Unit unit;
  double value;
  char mark = '.';
  bool metric = false;
};

// Conversion factors: 1 ft = 0.3048 m and 1 in = 25.4 mm exactly (NIST Special Publication 811, appendix B).
const Reading kReadings[] = {
    {"1.5 kW", Unit::watt, 1500},
    {"1,5 kW", Unit::watt, 1500},
    {"1500", Unit::watt, 1500},
    {"1,500", Unit::watt, 1500},
    {"1 500", Unit::watt, 1500},
    {"1.500", Unit::watt, 1.5},
    {"1.500", Unit::watt, 1500, ','},
    {"1,500", Unit::watt, 1.5, ','},
    {"0,500", Unit::watt, 0.5},
    {"1,234.5", Unit::watt, 1234.5},
    {"1.234,5", Unit::watt, 1234.5},
    {"1,234,567", Unit::watt, 1234567},
    {"3*120+40", Unit::watt, 400},
    {"3*(120+40)", Unit::watt, 480},
    {"(3*120 + 40) W", Unit::watt, 400},
    {"1.5 kW + 200 W", Unit::watt, 1700},
    {"2*1.5kW", Unit::watt, 3000},
    {"3×120−40", Unit::watt, 320},
    {"-5", Unit::degree, -5},
    {"1e3", Unit::watt, 1000},
    {".5", Unit::second, 0.5},
    {",5", Unit::second, 0.5},
    {"500 ms", Unit::second, 0.5},
    {"1 h 30 min", Unit::second, 5400},
    {"90 min", Unit::hour, 1.5},
    {"12.5 a", Unit::ampere, 12.5},
    {"12.5 Amps", Unit::ampere, 12.5},
    {"10 kA", Unit::ampere, 10000},
    {"12 A * 240 V", Unit::voltAmpere, 2880},
    {"9.6 kVA", Unit::voltAmpere, 9600},
    {"12 ft", Unit::micrometre, 3657600},
    {"12", Unit::micrometre, 3657600},
    {"12", Unit::micrometre, 12e6, '.', true},
    {"12 ft 6 in", Unit::micrometre, 3810000},
    {"12' 6\"", Unit::micrometre, 3810000},
    {"18 in", Unit::micrometre, 457200},
    {"3,8 m", Unit::micrometre, 3800000},
    {"68 F", Unit::milliCelsius, 20000},
    {"68", Unit::milliCelsius, 20000},
    {"20", Unit::milliCelsius, 20000, '.', true},
    {"20 °C", Unit::milliCelsius, 20000},
    {"-4 °F", Unit::milliCelsius, -20000},
    {"80 %", Unit::fraction, 0.8},
    {"80", Unit::fraction, 0.8},
    {"0.8", Unit::fraction, 0.8},
    {"0.5%", Unit::fraction, 0.005},
    {"0", Unit::fraction, 0},
    {"100", Unit::fraction, 1},
    {"2", Unit::perHour, 2},
    {"2/h", Unit::perHour, 2},
    {"2 per hour", Unit::perHour, 2},
    {"48 a day", Unit::perHour, 2},
    {"48/day", Unit::perHour, 2},
    {"1/2 hp", Unit::horsepower, 0.5},
    {"1 1/2 hp", Unit::horsepower, 1.5},
    {"1½", Unit::horsepower, 1.5},
    {"5000 Wh", Unit::kilowattHour, 5},
    {"100 Ah * 51.2 V", Unit::kilowattHour, 5.12},
    {"1800 sq ft", Unit::squareFoot, 1800},
    {"0.95", Unit::none, 0.95},
    {"95 %", Unit::none, 0.95},
    {"6 p.m.", Unit::minuteOfDay, 1080},
    {"6:30 pm", Unit::minuteOfDay, 1110},
    {"12 am", Unit::minuteOfDay, 0},
    {"12 p.m.", Unit::minuteOfDay, 720},
    {"18:30", Unit::minuteOfDay, 1110},
    {"18", Unit::minuteOfDay, 1080},
    {"noon", Unit::minuteOfDay, 720},
    {"midnight", Unit::minuteOfDay, 0},
};

TEST(QuantityText, readsWhatPeopleType) {
  for (const Reading& row : kReadings) {
    const Result<double> read = readQuantity(row.text, row.unit, row.mark, ShownUnits{row.metric});
    ASSERT_TRUE(read.ok()) << row.text << ": " << render(read.refusal(), plainEnglish());
    EXPECT_NEAR(read.value(), row.value, 1e-9 * (1.0 + std::abs(row.value))) << row.text;
  }
}

struct Refusal {
  const char* text;
  Unit unit;
  const char* key;
};
const Refusal kRefusals[] = {
    {"", Unit::watt, "inspector.quantity.number_missing"},
    {"   ", Unit::watt, "inspector.quantity.number_missing"},
    {"abc", Unit::watt, "inspector.quantity.not_read"},
    {"12 xyz", Unit::watt, "inspector.quantity.unknown_unit"},
    {"12 A", Unit::watt, "inspector.quantity.wrong_unit"},
    {"12 A * 120 V", Unit::watt, "inspector.quantity.wrong_unit"},
    {"500 VA", Unit::watt, "inspector.quantity.wrong_unit"},
    {"746 W", Unit::horsepower, "inspector.quantity.wrong_unit"},
    {"1.5 kW + 200", Unit::watt, "inspector.quantity.unit_missing"},
    {"1.5 kW + 2 A", Unit::watt, "inspector.quantity.mixed_units"},
    {"3*(120+40", Unit::watt, "inspector.quantity.parenthesis"},
    {"3*120)", Unit::watt, "inspector.quantity.parenthesis"},
    {"5/0", Unit::watt, "inspector.quantity.divide_by_zero"},
    {"1,5,0", Unit::watt, "inspector.quantity.marks"},
    {"1.2.3", Unit::watt, "inspector.quantity.marks"},
    {"1,23.4,5", Unit::watt, "inspector.quantity.marks"},
    {"3*", Unit::watt, "inspector.quantity.number_missing"},
    {"12 34", Unit::watt, "inspector.quantity.not_read"},
    {"1", Unit::fraction, "inspector.quantity.percent"},
    {"68 F + 2 F", Unit::milliCelsius, "inspector.quantity.temperatures"},
    {"2 * 68 F", Unit::milliCelsius, "inspector.quantity.temperatures"},
    {"1e999", Unit::watt, "inspector.quantity.too_large"},
    {"nan", Unit::watt, "inspector.quantity.not_read"},
    {"25:00", Unit::minuteOfDay, "inspector.quantity.wrong_clock"},
    {"13 pm", Unit::minuteOfDay, "inspector.quantity.wrong_clock"},
    {"teatime", Unit::minuteOfDay, "inspector.quantity.wrong_clock"},
};

TEST(QuantityText, refusesNonsenseInWords) {
  for (const Refusal& row : kRefusals) {
    const Result<double> read = readQuantity(row.text, row.unit);
    ASSERT_FALSE(read.ok()) << row.text << " was read as " << read.value();
    EXPECT_EQ(read.refusal().id.key, row.key) << row.text;
    EXPECT_EQ(render(read.refusal(), plainEnglish()).find('<'), std::string::npos) << row.text;
  }
}

TEST(QuantityText, deepParenthesesAndLongTextsEndInASentence) {
  EXPECT_FALSE(readQuantity(std::string(150, '('), Unit::watt).ok());
  EXPECT_FALSE(readQuantity(std::string(100000, '('), Unit::watt).ok());
  EXPECT_FALSE(readQuantity(std::string(100000, '1'), Unit::watt).ok());
}

TEST(QuantityText, whatIsShownReadsBackTheSame) {
  const std::pair<Unit, double> rows[] = {
      {Unit::watt, 1234.5},        {Unit::fraction, 0.945},    {Unit::fraction, 0.5},
      {Unit::micrometre, 457200},  {Unit::micrometre, 123457}, {Unit::milliCelsius, 20500},
      {Unit::milliCelsius, 30000}, {Unit::milliCelsius, 1},    {Unit::perHour, 1.0 / 3},
      {Unit::minuteOfDay, 1110},   {Unit::horsepower, 0.333},  {Unit::kilowattHour, 5.12}};
  for (const auto& [unit, value] : rows) {
    for (const bool metric : {false, true}) {
      const ShownUnits shown{metric};
      std::string text = writeQuantity(value, unit, plainEnglish(), shown);
      if (unit == Unit::fraction) text += "%";
      const Result<double> back = readQuantity(text, unit, '.', shown);
      ASSERT_TRUE(back.ok()) << text;
      const double slack = unit == Unit::micrometre || unit == Unit::milliCelsius ? 0.5 : 1e-8 * value;
      EXPECT_NEAR(back.value(), value, slack) << text;
    }
  }
  EXPECT_EQ(writeQuantity(0.2, Unit::fraction, plainEnglish()), "20");
  EXPECT_EQ(writeQuantity(3657600, Unit::micrometre, plainEnglish()), "12");
  EXPECT_EQ(writeQuantity(30000, Unit::milliCelsius, plainEnglish()), "86");
}

}  // namespace
}  // namespace stayalight
