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
constexpr MessageId kNoneListed{"wiring.device.none_listed"};

bool below(RatingAmperes rating, AcAmperes current) {
  return rating.count() < current.count() * (1.0 - 1e-9);
}

void applyLimits(const std::vector<DeviceLimit>& limits, DeviceChoice& choice) {
  for (const DeviceLimit& limit : limits) {
    if (choice.maximum && *choice.maximum <= limit.rating) continue;
    choice.maximum = limit.rating;
    choice.maximumFrom = limit.from;
  }
}

}  // namespace

DeviceChoice chooseDevice(const DeviceQuestion& question, Edition edition, Working* working,
                          const Tables& tables) {
  DeviceChoice choice;
  choice.inPlan = question.inPlan;
  applyLimits(question.limits, choice);

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
                 {fromPlace("k", factor, "", citationOrNearest(RuleId{"continuous.factor"}, edition)),
                  fromStepOr("C", continuous.count(), "A", question.continuousStep, "continuous load"),
                  fromStepOr("O", other.count(), "A", question.otherStep, "other load")});
    }
  }
  const std::optional<RatingAmperes> next =
      choice.minimum ? nextStandardRating(*choice.minimum, edition, tables) : std::nullopt;
  const AcAmperes minimum = choice.minimum.value_or(AcAmperes());

  if (question.fixed) {
    choice.fixed = true;
    choice.rating = question.fixed;
    choice.governs = choice.minimum ? say(kFixed, amperes(*question.fixed), amperes(minimum))
                                    : say(kFixedLoadUnknown, amperes(*question.fixed));
  } else if (!choice.minimum) {
    choice.governs = say(kUnknown);
  } else if (!next) {
    choice.governs = say(kNoneListed, amperes(minimum));
  } else {
    choice.rating = next;
    choice.governs =
        question.continuous && question.continuous->count() > 0.0
            ? say(kByLoad, amperes(*question.continuous), amperes(question.other.value_or(AcAmperes())),
                  amperes(minimum), amperes(*next))
            : say(kByOtherLoad, amperes(minimum), amperes(*next));
    if (working != nullptr) {
      record(*working, FormulaId{"wiring.standard_rating"}, RuleId{"rating.standard"},
             static_cast<double>(next->count()), "A",
             {fromPlace("R", static_cast<double>(next->count()), "A", standardRatingCell(*next, edition)),
              fromStep("Imin", minimum.count(), "A", minimumStep)},
             choice.governs);
    }
  }

  if (choice.minimum) {
    choice.minimumAboveMaximum = choice.maximum && (!next || *next > *choice.maximum);
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
