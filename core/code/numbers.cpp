#include "core/code/numbers.h"

#include "core/code/tables.h"
#include "stayalight/code_tables.h"

namespace stayalight {
namespace {

RatingAmperes rating(CodeNumber which, const Tables& tables) {
  return RatingAmperes(static_cast<std::int32_t>(codeNumber(which, tables)));
}

}  // namespace

double codeNumber(CodeNumber which, const Tables& tables) {
  return tables.numbers[static_cast<std::size_t>(which)];
}
std::string_view unitOf(CodeNumber which) { return generated::kNumberUnits[static_cast<std::size_t>(which)]; }
RuleId ruleOf(CodeNumber which) { return RuleId{generated::kNumberRules[static_cast<std::size_t>(which)]}; }

Fraction continuousFactor(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::continuousFactor, tables));
}
RatingAmperes nextSizeUpLimit(const Tables& tables) { return rating(CodeNumber::nextSizeUpLimit, tables); }
RatingAmperes terminalCurrent(const Tables& tables) { return rating(CodeNumber::terminalCurrent, tables); }
ConductorSize terminalSize(const Tables& tables) {
  return static_cast<ConductorSize>(static_cast<int>(codeNumber(CodeNumber::terminalSize, tables)));
}
ConductorSize rodElectrodeConductor(const Tables& tables) {
  return static_cast<ConductorSize>(static_cast<int>(codeNumber(CodeNumber::rodElectrodeSize, tables)));
}
Length nippleLength(const Tables& tables) {
  return Length::inches(codeNumber(CodeNumber::nippleLength, tables));
}
TemperatureColumn nmColumn(const Tables& tables) {
  const double celsius = codeNumber(CodeNumber::nmColumn, tables);
  return celsius <= 60.0   ? TemperatureColumn::c60
         : celsius <= 75.0 ? TemperatureColumn::c75
                           : TemperatureColumn::c90;
}
Fraction neutralRangeDryerFactor(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::neutralRangeDryerFactor, tables));
}
AcAmperes neutralReductionAbove(const Tables& tables) {
  return AcAmperes(codeNumber(CodeNumber::neutralAbove200Limit, tables));
}
Fraction neutralReductionFactor(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::neutralAbove200Factor, tables));
}
Fraction dropAdviceOneRun(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::dropAdviceOneRun, tables));
}
Fraction nippleFill(const Tables& tables) { return Fraction(codeNumber(CodeNumber::nippleFill, tables)); }
Length afciExtensionLength(const Tables& tables) {
  return Length::feet(codeNumber(CodeNumber::afciExtensionLength, tables));
}
RatingAmperes afciDevice(const Tables& tables) { return rating(CodeNumber::afciDevice, tables); }
Fraction wiringSpaceConductors(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::wiringSpaceConductors, tables));
}
Fraction wiringSpaceSplices(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::wiringSpaceSplices, tables));
}
AcVolts nominalLegVolts(const Tables& tables) { return AcVolts(codeNumber(CodeNumber::legVolts, tables)); }
AcVolts nominalLineVoltsSplitPhase(const Tables& tables) {
  return AcVolts(codeNumber(CodeNumber::lineVoltsSplitPhase, tables));
}
AcVolts nominalLineVoltsWye(const Tables& tables) {
  return AcVolts(codeNumber(CodeNumber::lineVoltsWye, tables));
}
Fraction loadingMargin(const Tables& tables) {
  return Fraction(codeNumber(CodeNumber::loadingMargin, tables));
}

}  // namespace stayalight
