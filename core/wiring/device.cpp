#include "core/wiring/device.h"

#include <algorithm>

#include "core/code/citations.h"
#include "core/code/devices.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kByLoad{"wiring.device.by_load"};
constexpr MessageId kByOtherLoad{"wiring.device.by_other_load"};
constexpr MessageId kFixed{"wiring.device.fixed"};
constexpr MessageId kFixedLoadUnknown{"wiring.device.fixed_load_unknown"};
constexpr MessageId kUnknown{"wiring.device.load_unknown"};
constexpr MessageId kWithNext{"wiring.device.with_next"};
constexpr MessageId kNothing{"wiring.device.nothing"};
constexpr MessageId kNoneListed{"wiring.device.none_listed"};

bool below(RatingAmperes rating, AcAmperes current) {
  return rating.count() < current.count() * (1.0 - 1e-9);
}

void applyLimits(const std::vector<DeviceLimit>& limits, DeviceChoice& choice) {
  for (const DeviceLimit& limit : limits) {
    if (choice.maximum && *choice.maximum <= limit.rating) continue;
    choice.maximum = limit.rating;
    choice.maximumFrom = limit.from;
    choice.maximumRule = limit.rule;
  }
}

void recordMaximum(const std::vector<DeviceLimit>& limits, const DeviceChoice& choice, Working& working) {
  if (!choice.maximum) return;
  std::vector<StepInput> inputs;
  for (const DeviceLimit& limit : limits) {
    inputs.push_back(
        fromPlace("R", static_cast<double>(limit.rating.count()), "A", render(limit.from, plainEnglish())));
  }
  record(working, FormulaId{"wiring.device_maximum"}, choice.maximumRule,
         static_cast<double>(choice.maximum->count()), "A", std::move(inputs));
}

}  // namespace

DeviceChoice chooseDevice(const DeviceQuestion& question, Edition edition, Working* working,
                          const Tables& tables) {
  DeviceChoice choice;
  choice.inPlan = question.inPlan;
  applyLimits(question.limits, choice);
  if (working != nullptr) recordMaximum(question.limits, choice, *working);

  StepIndex minimumStep = kNoStep;
  if (question.continuous || question.other) {
    const AcAmperes continuous = question.continuous.value_or(AcAmperes());
    const AcAmperes other = question.other.value_or(AcAmperes());
    const double factor = continuousFactor(tables).count();
    choice.minimum = continuous * factor + other;
    if (working != nullptr) {
      minimumStep =
          record(*working, FormulaId{"wiring.device_minimum"}, RuleId{"continuous.factor"},
                 choice.minimum->count(), "A",
                 {fromPlace("k", factor, "", citationOrNearest(RuleId{"continuous.factor"}, edition, tables)),
                  fromStepOr("C", continuous.count(), "A", question.continuousStep, "continuous load"),
                  fromStepOr("O", other.count(), "A", question.otherStep, "other load")});
    }
  }
  const AcAmperes minimum = choice.minimum.value_or(AcAmperes());
  const std::optional<RatingAmperes> next =
      minimum.count() > 0.0 ? nextStandardRating(minimum, edition, tables) : std::nullopt;

  if (question.fixed) {
    choice.fixed = true;
    choice.rating = question.fixed;
    choice.rule = RuleId{"feeder.device"};
    choice.governs = choice.minimum ? say(kFixed, amperes(*question.fixed), amperes(minimum))
                                    : say(kFixedLoadUnknown, amperes(*question.fixed));
  } else if (!choice.minimum) {
    choice.governs = say(kUnknown);
  } else if (minimum.count() <= 0.0) {
    choice.governs = say(kNothing);
  } else if (!next) {
    choice.governs = say(kNoneListed, amperes(minimum));
  } else {
    choice.rating = next;
    choice.rule = RuleId{"rating.standard"};
    choice.next = nextStandardRating(AcAmperes(next->count() + 0.5), edition, tables);
    choice.governs =
        question.continuous && question.continuous->count() > 0.0
            ? say(kByLoad, amperes(*question.continuous), amperes(question.other.value_or(AcAmperes())),
                  amperes(minimum), amperes(*next))
            : say(kByOtherLoad, amperes(minimum), amperes(*next));
    if (working != nullptr) {
      record(
          *working, FormulaId{"wiring.standard_rating"}, RuleId{"rating.standard"},
          static_cast<double>(next->count()), "A",
          {fromPlace("R", static_cast<double>(next->count()), "A",
                     standardRatingCell(*next, edition, tables)),
           fromStep("Imin", minimum.count(), "A", minimumStep)},
          choice.next ? say(kWithNext, std::vector{choice.governs}, amperes(*choice.next)) : choice.governs);
    }
  }

  if (choice.minimum) {
    choice.minimumAboveMaximum =
        minimum.count() > 0.0 && choice.maximum && (!next || *next > *choice.maximum);
    for (const auto& standing : {question.fixed, question.inPlan}) {
      if (standing && below(*standing, minimum)) choice.belowMinimum = true;
    }
  }
  for (const auto& standing : {question.fixed, question.inPlan}) {
    if (standing && choice.maximum && *standing > *choice.maximum) choice.aboveMaximum = true;
  }
  return choice;
}

std::optional<RatingAmperes> largestRating(const DeviceChoice& device) {
  if (!device.rating) return device.inPlan;
  if (!device.inPlan) return device.rating;
  return std::max(*device.rating, *device.inPlan);
}

}  // namespace stayalight
