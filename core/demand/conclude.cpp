// What every method ends with: total, currents, the heavier leg, the neutral.

#include <algorithm>

#include "core/code/numbers.h"
#include "core/demand/record.h"

namespace stayalight {
namespace demanding {
namespace {

constexpr MessageId kRefused{"demand.refused"};

}  // namespace

void conclude(DemandCalculation& to, const DemandQuestion& question, Figures& figures, Working* working) {
  to.missing = question.missing;
  to.places = question.places;
  to.notes.insert(to.notes.begin(), question.notes.begin(), question.notes.end());
  to.total = VoltAmperes();
  std::vector<StepInput> parts;
  for (const DemandLine& line : to.lines) {
    if (!line.load) continue;
    to.total += *line.load;
    to.confirmed = to.confirmed && line.confirmed;
    if (working != nullptr)
      parts.push_back(input("S", line.load->count(), "VA", line.step, render(line.what, plainEnglish())));
  }
  if (working != nullptr && parts.empty()) parts.push_back(input("S", 0.0, "VA", kNoStep, "no load"));
  if (const auto missing = figures.missing()) {
    to.refused = say(kRefused, Citation{*missing}, std::string(name(figures.edition())));
  }
  to.totalStep =
      record(working, "demand.total", RuleId{"load.calculation"}, to.total.count(), "VA", std::move(parts));
  const double volts = question.lineVolts.count();
  const double factor = continuousFactor(figures.tables()).count();
  to.line = AcAmperes(to.total.count() / volts);
  record(working, "demand.line_current", RuleId{"load.calculation"}, to.line.count(), "A",
         {input("S", to.total.count(), "VA", to.totalStep, ""),
          input("V", volts, "V", kNoStep, "nominal volts between the legs")});
  to.minimum = AcAmperes((to.total.count() + (factor - 1.0) * to.continuous.count()) / volts);
  to.minimumStep =
      record(working, "demand.minimum", RuleId{"feeder.device"}, to.minimum.count(), "A",
             {input("S", to.total.count(), "VA", to.totalStep, ""),
              input("k", factor, "", kNoStep, "factor on continuous load"),
              input("C", to.continuous.count(), "VA", kNoStep, "continuous part of the lines above"),
              input("V", volts, "V", kNoStep, "nominal volts between the legs")});

  const double legVolts = question.legVolts.count();
  const std::size_t heavier = to.leg[1].load > to.leg[0].load ? 1 : 0;
  to.heavier = AcAmperes(to.leg[heavier].load.count() / legVolts);
  if (to.leg[heavier].loadStep != kNoStep) {
    record(working, "demand.line_current", RuleId{"load.calculation"}, to.heavier.count(), "A",
           {input("S", to.leg[heavier].load.count(), "VA", to.leg[heavier].loadStep, ""),
            input("V", legVolts, "V", kNoStep, "nominal volts of one leg")});
  }
  for (const DemandLeg& leg : to.leg) {
    const AcAmperes asks((leg.load.count() + (factor - 1.0) * leg.continuous.count()) / legVolts);
    if (asks > to.heavierMinimum) to.heavierMinimum = asks;
    if (leg.loadStep == kNoStep) continue;
    record(working, "demand.minimum", RuleId{"feeder.device"}, asks.count(), "A",
           {input("S", leg.load.count(), "VA", leg.loadStep, ""),
            input("k", factor, "", kNoStep, "factor on continuous load"),
            input("C", leg.continuous.count(), "VA", leg.continuousStep, ""),
            input("V", legVolts, "V", kNoStep, "nominal volts of one leg")});
  }
  const double net = std::max(to.leg[0].neutral.count(), to.leg[1].neutral.count());
  const double current = net / legVolts;
  StepIndex step = kNoStep;
  if (to.leg[0].neutralStep != kNoStep) {
    step = record(working, "demand.neutral", RuleId{"feeder.neutral"}, current, "A",
                  {input("A", to.leg[0].neutral.count(), "VA", to.leg[0].neutralStep, ""),
                   input("B", to.leg[1].neutral.count(), "VA", to.leg[1].neutralStep, ""),
                   input("V", legVolts, "V", kNoStep, "nominal volts of one leg")});
  }
  const double above = neutralReductionAbove(figures.tables()).count();
  to.neutral = AcAmperes(current);
  if (!question.wye && current > above) {
    const double part = neutralReductionFactor(figures.tables()).count();
    to.neutral = AcAmperes(above + part * (current - above));
    if (step != kNoStep) {
      record(working, "demand.neutral_reduced", RuleId{"feeder.neutral"}, to.neutral.count(), "A",
             {input("T", above, "A", kNoStep, "limit of the unreduced part"),
              input("f", part, "", kNoStep, "factor above it"), input("N", current, "A", step, "")});
    }
  }
}

}  // namespace demanding

}  // namespace stayalight
