#include "ui/wording/units.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "core/code/conductors.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

struct Conversion {
  std::string_view from, to;
  double factor = 1.0;
  double offset = 0.0;
  int digits = 0;  ///< more decimals than before
  int least = 0;   ///< decimals in any case
};
constexpr std::array<Conversion, 6> kMetric = {{{"ft", "m", 0.3048, 0.0, 1, 1},
                                                {"in", "mm", 25.4, 0.0, -1, 0},
                                                {"in²", "cm²", 6.4516, 0.0, -1, 1},
                                                {"in³", "cm³", 16.387064, 0.0, -1, 0},
                                                {"ft²", "m²", 0.09290304, 0.0, 0, 0},
                                                {"VA/ft²", "VA/m²", 10.76391, 0.0, 1, 1}}};
constexpr std::array<Conversion, 1> kUs = {{{"°C", "°F", 1.8, 32.0, 0, 0}}};

template <std::size_t N>
Figure converted(const Figure& figure, const std::array<Conversion, N>& table) {
  for (const Conversion& row : table) {
    if (figure.unit != row.from) continue;
    return {figure.value * row.factor + row.offset, std::string(row.to),
            std::max(row.least, figure.decimals + row.digits)};
  }
  return figure;
}

// The size in a text as core writes a conductor: "6 AWG", "250 kcmil Al".
std::optional<ConductorSize> sizeIn(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos) return std::nullopt;
  const auto size = conductorSizeNamed(text.substr(0, space));
  if (!size) return std::nullopt;
  std::string_view rest = text.substr(space + 1);
  if (rest.ends_with(" Cu") || rest.ends_with(" Al")) rest.remove_suffix(3);
  return rest == unit(*size) ? size : std::nullopt;
}

// As many digits as the table prints for most sizes.
std::string crossSectionIn(ConductorSize size, const Language& numbers) {
  const double area = crossSection(size).count();
  return numbers.number(area, area < 10.0 ? 2 : area < 100.0 ? 1 : 0) + " mm²";
}

}  // namespace

UnitSystem unitsOf(const Language& language) {
  const auto* program = dynamic_cast<const ProgramLanguage*>(&language);
  return program != nullptr ? program->units() : UnitSystem::us;
}

Figure inUnits(const Figure& figure, UnitSystem units) {
  return units == UnitSystem::metric ? converted(figure, kMetric) : converted(figure, kUs);
}

std::string inUnits(const std::string& text, UnitSystem units) {
  if (units != UnitSystem::metric) return text;
  const auto size = sizeIn(text);
  if (!size) return text;
  return text + " (" + crossSectionIn(*size, plainEnglish()) + ")";
}

QString figureText(const Figure& figure, const Language& language) {
  const Figure shown = inUnits(figure, unitsOf(language));
  const QString number = QString::fromStdString(language.number(shown.value, shown.decimals));
  return shown.unit.empty() ? number : number + u' ' + QString::fromStdString(shown.unit);
}

QString crossSectionText(ConductorSize size, const Language& language) {
  return QString::fromStdString(crossSectionIn(size, language));
}

QString conductorText(ConductorSize size, const Language& language) {
  QString text = QString::fromStdString(std::string(name(size)) + " " + std::string(unit(size)));
  if (unitsOf(language) == UnitSystem::metric) {
    text += QStringLiteral(" (") + crossSectionText(size, language) + u')';
  }
  return text;
}

QString conductorText(ConductorSize size, Metal metal, const Language& language) {
  QString bare = QString::fromStdString(conductorName(size, metal));
  if (unitsOf(language) == UnitSystem::us) return bare;
  const QString sized = conductorText(size, language);
  return bare + sized.mid(sized.indexOf(QLatin1String(" (")));
}

}  // namespace stayalight
