#include "core/code/motors.h"

#include <array>

namespace stayalight {
namespace {

// Fractions are typed rounded (0.17 for 1/6, 0.33 for 1/3); the rows lie at least a third apart.
constexpr double kRowSlack = 1.025;

template <std::size_t N>
const MotorRow* rowFor(const std::array<MotorRow, N>& rows, Horsepower power) {
  if (!(power.count() > 0.0)) return nullptr;
  for (const MotorRow& row : rows) {
    if (power.count() <= row.horsepower * kRowSlack) return &row;
  }
  return nullptr;
}

std::optional<MotorCurrent> current(const MotorRow* row, MotorVolts column) {
  if (row == nullptr) return std::nullopt;
  const double amperes = row->amperes[static_cast<std::size_t>(column)];
  if (amperes <= 0.0) return std::nullopt;
  return MotorCurrent{AcAmperes(amperes), row->computed};
}

std::string cellName(std::string_view table, const MotorRow* row, MotorVolts column) {
  std::string out = "Table " + std::string(table) + ", ";
  out += row == nullptr ? "no row" : std::string(row->name) + " hp";
  out += ", " + std::to_string(static_cast<int>(ratedVolts(column).count())) + " V";
  if (row != nullptr && row->computed) out += " (computed, six times full-load current)";
  return out;
}

char capital(char letter) {
  return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
}

}  // namespace

std::optional<MotorVolts> motorColumn(AcVolts volts) {
  const double v = volts.count();
  if (v >= 110.0 && v <= 120.0) return MotorVolts::v115;
  if (v >= 197.0 && v <= 203.0) return MotorVolts::v200;
  if (v > 203.0 && v <= 212.0) return MotorVolts::v208;
  if (v >= 220.0 && v <= 240.0) return MotorVolts::v230;
  return std::nullopt;
}

std::optional<MotorCurrent> fullLoadCurrent(Horsepower power, MotorVolts column, const Tables& tables) {
  return current(rowFor(tables.fullLoad, power), column);
}
std::string fullLoadCell(Horsepower power, MotorVolts column, const Tables& tables) {
  return cellName("430.248", rowFor(tables.fullLoad, power), column);
}

std::optional<MotorCurrent> lockedRotorCurrent(Horsepower power, MotorVolts column, const Tables& tables) {
  return current(rowFor(tables.lockedRotor, power), column);
}
std::string lockedRotorCell(Horsepower power, MotorVolts column, const Tables& tables) {
  return cellName("430.251(A)", rowFor(tables.lockedRotor, power), column);
}

std::optional<CodeLetterBand> codeLetterBand(char letter, const Tables& tables) {
  for (const CodeLetterRow& row : tables.codeLetters) {
    if (row.letter != capital(letter)) continue;
    CodeLetterBand band{KilovoltAmperesPerHorsepower(row.least), std::nullopt};
    if (row.most > 0.0) band.most = KilovoltAmperesPerHorsepower(row.most);
    return band;
  }
  return std::nullopt;
}
std::string codeLetterCell(char letter) {
  return std::string("Table 430.7(B), code letter ") + capital(letter);
}

}  // namespace stayalight
