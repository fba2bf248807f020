#include "core/wiring/grounding.h"

#include <algorithm>

#include "core/code/citations.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kTable{"wiring.ground.table"};
constexpr MessageId kUpsized{"wiring.ground.upsized"};
constexpr MessageId kAsConductor{"wiring.ground.as_conductor"};
constexpr MessageId kGroundUnknown{"wiring.ground.device_unknown"};
constexpr MessageId kGroundNotListed{"wiring.ground.not_listed"};
constexpr MessageId kMinimum{"wiring.neutral.minimum"};
constexpr MessageId kLegLoad{"wiring.neutral.leg_load"};
constexpr MessageId kBounded{"wiring.neutral.bounded"};
constexpr MessageId kPhasor{"wiring.neutral.phasor"};
constexpr MessageId kFull{"wiring.neutral.full"};
constexpr MessageId kInCable{"wiring.neutral.in_cable"};
constexpr MessageId kNeutralUnknown{"wiring.neutral.conductor_unknown"};

constexpr double kSlack = 1.0 + 1e-9;

std::optional<ConductorSize> sizeWithMils(double circularMilsNeeded, const Tables& tables) {
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    if (circularMilsNeeded <= circularMils(size, tables).count() * kSlack) return size;
  }
  return std::nullopt;
}

std::optional<ConductorSize> sizeCarrying(AcAmperes current, const RunConditions& conditions,
                                          const std::optional<RatingAmperes>& device, const Tables& tables) {
  for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    const auto found = ampacities(size, conditions, device, tables).governing;
    if (found && current.count() <= found->count() * kSlack) return size;
  }
  return std::nullopt;
}

}  // namespace

SizeAndReason groundingConductorFor(const GroundingQuestion& question, Edition edition, Working* working,
                                    const Tables& tables) {
  SizeAndReason result;
  result.size = question.fixed;
  if (!question.device) {
    result.governs = say(kGroundUnknown);
    return result;
  }
  const auto listed = groundingConductor(*question.device, question.metal, tables);
  if (!listed) {
    result.governs = say(kGroundNotListed, amperes(*question.device));
    return result;
  }
  ConductorSize needed = *listed;
  result.governs = say(kTable, conductorName(needed, question.metal), amperes(*question.device));
  result.rule = RuleId{"ground.size"};
  const auto milsOf = [&](ConductorSize size) { return circularMils(size, tables).count(); };
  const std::string cell = groundingCell(*question.device, question.metal, edition, tables);
  StepInput base =
      fromPlace("B", milsOf(*listed), "cmil", cell + ": " + conductorName(*listed, question.metal));

  if (question.conductor && question.required && *question.conductor > *question.required) {
    const double larger = milsOf(*question.conductor), required = milsOf(*question.required);
    const double mils = milsOf(*listed) * larger / required;
    // Beyond the largest size listed the ungrounded conductors bound it below.
    needed = std::max(*listed, sizeWithMils(mils, tables).value_or(*question.conductor));
    result.governs = say(
        kUpsized, conductorName(*listed, question.metal), conductorName(*question.required, question.metal),
        conductorName(*question.conductor, question.metal), conductorName(needed, question.metal));
    result.rule = RuleId{"ground.upsized"};
    if (working != nullptr) {
      const StepIndex grown =
          record(*working, FormulaId{"wiring.ground_upsized"}, result.rule, mils, "cmil",
                 {base, fromPlace("M", larger, "cmil", conductorName(*question.conductor, question.metal)),
                  fromPlace("Mr", required, "cmil", conductorName(*question.required, question.metal))});
      base = fromStep("B", mils, "cmil", grown);
    }
  }
  if (question.conductor && needed > *question.conductor) {
    needed = *question.conductor;
    result.governs = say(kAsConductor, conductorName(needed, question.metal));
    result.rule = RuleId{"ground.not_larger"};
  }
  if (working != nullptr && question.conductor) {
    record(*working, FormulaId{"wiring.ground_size"}, result.rule,
           std::min(base.value, milsOf(*question.conductor)), "cmil",
           {base, fromPlace("M", milsOf(*question.conductor), "cmil",
                            conductorName(*question.conductor, question.metal))},
           result.governs);
  }
  result.tooSmall = question.fixed && *question.fixed < needed;
  if (!question.fixed) result.size = needed;
  return result;
}

SizeAndReason neutralFor(const NeutralQuestion& question, Edition edition, Working* working,
                         const Tables& tables) {
  SizeAndReason result;
  result.size = question.fixed;
  if (!question.conductor) {
    result.governs = say(kNeutralUnknown);
    return result;
  }
  const Metal metal = question.conditions.metal;
  ConductorSize needed = *question.conductor;
  result.rule = RuleId{"feeder.neutral"};
  if (question.conditions.nmCable) {
    result.governs = say(kInCable, conductorName(needed, metal));
  } else if (!question.load || question.single) {
    result.governs = say(kFull, conductorName(needed, metal));
  } else {
    AcAmperes load = *question.load;
    const AcAmperes limit = neutralReductionAbove(tables);
    StepIndex loadStep = kNoStep;
    if (!question.wye && load > limit) {
      const AcAmperes reduced = limit + (load - limit) * neutralReductionFactor(tables).count();
      if (working != nullptr) {
        loadStep = record(
            *working, FormulaId{"wiring.neutral_reduced"}, RuleId{"feeder.neutral"}, reduced.count(), "A",
            {fromPlace("L", load.count(), "A", "largest load between neutral and one leg"),
             fromPlace("T", limit.count(), "A", citationOrNearest(RuleId{"feeder.neutral"}, edition, tables)),
             fromPlace("f", neutralReductionFactor(tables).count(), "",
                       citationOrNearest(RuleId{"feeder.neutral"}, edition, tables))});
      }
      load = reduced;
    }
    const auto byLoad = sizeCarrying(load, question.conditions, question.device, tables);
    const bool bounded = !byLoad || *byLoad > *question.conductor;
    needed = bounded ? *question.conductor : *byLoad;
    result.governs = say(bounded ? kBounded : kLegLoad, conductorName(needed, metal), amperes(load));
    const ConductorSize forLoad = needed;

    const auto minimum = question.device ? groundingConductor(*question.device, metal, tables)
                                         : std::optional<ConductorSize>();
    if (minimum && *minimum > needed) {
      needed = std::min(*minimum, *question.conductor);
      result.governs = say(kMinimum, conductorName(needed, metal), amperes(*question.device));
      result.rule = RuleId{"feeder.neutral_minimum"};
    }
    const auto byPhasor = sizeCarrying(question.operating, question.conditions, question.device, tables);
    if (byPhasor && *byPhasor > needed) {
      needed = *byPhasor;
      result.governs = say(kPhasor, conductorName(needed, metal), amperes(question.operating));
      result.rule = RuleId{"feeder.neutral"};
    }
    if (working != nullptr) {
      const StepInput load220 =
          loadStep == kNoStep ? fromPlace("N", load.count(), "A", "largest load between neutral and one leg")
                              : fromStep("N", load.count(), "A", loadStep);
      record(*working, FormulaId{"wiring.neutral_current"}, RuleId{"feeder.neutral"},
             std::max(load, question.operating).count(), "A",
             {load220, fromPlace("P", question.operating.count(), "A", "operating neutral current, phasor")});
      const Ampacities carried = ampacities(needed, question.conditions, question.device, tables);
      if (carried.governing)
        recordAmpacity(*working, needed, question.conditions, carried, edition, tables, {});
      const auto mils = [&](std::string_view symbol, ConductorSize size, const std::string& from) {
        return fromPlace(symbol, circularMils(size, tables).count(), "cmil",
                         from + ": " + conductorName(size, metal));
      };
      std::vector<StepInput> sizes{mils("S", forLoad, "for the load between neutral and one leg")};
      if (minimum && question.device) {
        sizes.push_back(mils("S", std::min(*minimum, *question.conductor),
                             groundingCell(*question.device, metal, edition, tables)));
      }
      if (byPhasor) sizes.push_back(mils("S", *byPhasor, "for the operating neutral current"));
      record(*working, FormulaId{"wiring.neutral_size"}, result.rule, circularMils(needed, tables).count(),
             "cmil", std::move(sizes), result.governs);
    }
  }
  result.tooSmall = question.fixed && *question.fixed < needed;
  if (!question.fixed) result.size = needed;
  return result;
}

}  // namespace stayalight
