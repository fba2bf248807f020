#include "core/wiring/conductor.h"

#include <algorithm>

#include "core/code/citations.h"
#include "core/code/devices.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kTerminal{"wiring.conductor.terminal"};
constexpr MessageId kNmColumn{"wiring.conductor.nm_column"};
constexpr MessageId kDerated{"wiring.conductor.derated"};
constexpr MessageId kDevice{"wiring.conductor.device"};
constexpr MessageId kSmall{"wiring.conductor.small"};
constexpr MessageId kSmallest{"wiring.conductor.smallest"};
constexpr MessageId kFixed{"wiring.conductor.fixed"};
constexpr MessageId kUnknown{"wiring.conductor.load_unknown"};
constexpr MessageId kNoneListed{"wiring.conductor.none_listed"};
constexpr MessageId kWithNext{"wiring.conductor.with_next"};
constexpr MessageId kTooHot{"wiring.conductor.too_hot"};

constexpr double kSlack = 1.0 + 1e-9;

bool carries(const std::optional<AcAmperes>& ampacity, const std::optional<AcAmperes>& load) {
  return ampacity && (!load || load->count() <= ampacity->count() * kSlack);
}

// Which of the tests one size passes.
struct Tests {
  Ampacities found;
  bool listed = false;    // the table has the size
  bool terminal = false;  // load with 125 % against the terminal column
  bool derated = false;   // load against the derated ampacity
  bool device = false;    // protected by the device, small limit included
  bool small = false;     // within the limit of a small conductor
  [[nodiscard]] bool all() const { return listed && terminal && derated && device; }
};

Tests testsOf(ConductorSize size, const ConductorQuestion& question, Edition edition, const Tables& tables) {
  Tests tests;
  const Metal metal = question.conditions.metal;
  tests.found = ampacities(size, question.conditions, question.device, tables);
  tests.listed = tests.found.governing.has_value();
  tests.terminal = carries(tests.found.terminal, question.terminalLoad);
  tests.derated = carries(tests.found.derated, question.load);
  const auto limit = smallConductorLimit(size, metal, tables);
  tests.small = !question.device || !limit || *question.device <= *limit;
  tests.device =
      tests.listed && (!question.device || protects(*question.device, size, metal, *tests.found.governing,
                                                    question.load.has_value(), edition, tables));
  return tests;
}

// What keeps the size from being enough, as a sentence about it.
struct Reason {
  Message message;
  RuleId rule;
};
Reason reasonAgainst(ConductorSize size, const Tests& tests, const ConductorQuestion& question) {
  const Metal metal = question.conditions.metal;
  const std::string which = conductorName(size, metal);
  if (!tests.small) return {say(kSmall, which, amperes(*question.device)), RuleId{"conductor.small"}};
  if (!tests.terminal && tests.found.terminal && question.terminalLoad) {
    const bool cable = question.conditions.nmCable;
    return {
        say(cable ? kNmColumn : kTerminal, which, std::to_string(degrees(tests.found.terminalColumn)) + " °C",
            amperes(*tests.found.terminal, 0), amperes(*question.terminalLoad)),
        cable ? RuleId{"conductor.nm_column"} : RuleId{"conductor.terminals"}};
  }
  if (!tests.derated && tests.found.derated && question.load) {
    return {say(kDerated, which, amperes(*tests.found.derated), amperes(*question.load)),
            tests.found.adjustment.count() < 1.0 ? RuleId{"conductor.adjustment"}
            : tests.found.ambient->count() < 1.0 ? RuleId{"conductor.ambient"}
                                                 : RuleId{"conductor.ampacity"}};
  }
  if (question.device && tests.found.governing) {
    return {say(kDevice, which, amperes(*tests.found.governing), amperes(*question.device)),
            RuleId{"conductor.protected"}};
  }
  return {say(kSmallest, which), RuleId{"conductor.ampacity"}};
}

Message tooHot(const ConductorQuestion& question) {
  return say(kTooHot, Figure{question.conditions.ambient.inCelsius(), "°C", 1});
}

}  // namespace

RunConditions runConditions(const FeederRun* run, bool wye) {
  RunConditions conditions;
  if (run != nullptr) {
    conditions.metal = run->metal.valueOr(Metal::copper);
    // Insulation that this program does not know is taken as the coolest.
    conditions.insulation = static_cast<TemperatureColumn>(run->insulation.valueOr(Insulation::c60));
    conditions.nmCable = run->wiring.is(FeederWiring::nmCable);
    switch (run->raceway.valueOr(RacewayKind::steel)) {
      case RacewayKind::steel:
        conditions.raceway = RacewayMaterial::steel;
        break;
      case RacewayKind::aluminium:
        conditions.raceway = RacewayMaterial::aluminium;
        break;
      case RacewayKind::pvc:
      case RacewayKind::none:
        conditions.raceway = RacewayMaterial::pvc;
        break;
    }
    conditions.length = run->length;
    conditions.ambient = run->ambient;
    conditions.currentCarrying = run->currentCarrying;
    conditions.terminals75 = run->terminalsFrom75.is(Answer::yes) && run->terminalsTo75.is(Answer::yes);
  }
  conditions.currentCarrying = std::max(conditions.currentCarrying, wye ? 3 : 2);
  return conditions;
}

Ampacities ampacities(ConductorSize size, const RunConditions& conditions,
                      const std::optional<RatingAmperes>& device, const Tables& tables) {
  Ampacities found;
  const bool upTo = device ? *device <= terminalCurrent(tables) : size <= terminalSize(tables);
  found.terminalColumn = upTo && !conditions.terminals75 ? TemperatureColumn::c60 : TemperatureColumn::c75;
  found.terminalColumn = std::min(found.terminalColumn, conditions.insulation);
  if (conditions.nmCable) found.terminalColumn = std::min(found.terminalColumn, nmColumn(tables));
  found.terminal = ampacity(size, conditions.metal, found.terminalColumn, tables);

  const bool nipple = conditions.length.inMicrometres() > 0 && conditions.length <= nippleLength(tables);
  found.adjustment =
      nipple ? Fraction(1.0) : adjustmentFactor(conditions.currentCarrying, tables).value_or(Fraction(1.0));
  found.ambient = ambientFactor(conditions.ambient, conditions.insulation, tables);
  const auto base = ampacity(size, conditions.metal, conditions.insulation, tables);
  if (base && found.ambient) found.derated = *base * found.ambient->count() * found.adjustment.count();
  if (found.terminal && found.derated) found.governing = std::min(*found.terminal, *found.derated);
  return found;
}

bool protects(RatingAmperes device, ConductorSize size, Metal metal, AcAmperes ampacity, bool nextSizeUp,
              Edition edition, const Tables& tables) {
  const auto limit = smallConductorLimit(size, metal, tables);
  if (limit && device > *limit) return false;
  if (device.count() <= ampacity.count() * kSlack) return true;
  if (!nextSizeUp || device > nextSizeUpLimit(tables)) return false;
  const auto next = nextStandardRating(ampacity, edition, tables);
  return next && device <= *next;
}

bool byNextSizeUp(const ConductorChoice& choice) {
  return choice.device && choice.ampacity && !choice.notProtected && !choice.tooSmall &&
         choice.device->count() > choice.ampacity->count() * kSlack;
}

void recordNextSizeUp(Working& working, AcAmperes ampacity, Edition edition, const Tables& tables) {
  const auto next = nextStandardRating(ampacity, edition, tables);
  if (!next) return;
  record(working, FormulaId{"wiring.next_size_up"}, RuleId{"conductor.next_size_up"},
         static_cast<double>(next->count()), "A",
         {fromPlace("R", static_cast<double>(next->count()), "A", standardRatingCell(*next, edition, tables)),
          fromPlace("A", ampacity.count(), "A", "ampacity of the conductor")});
}

void recordAmpacity(Working& working, ConductorSize size, const RunConditions& run, const Ampacities& found,
                    Edition edition, const Tables& tables, const Message& note) {
  const AcAmperes terminal = found.terminal.value_or(AcAmperes());
  const AcAmperes base = ampacity(size, run.metal, run.insulation, tables).value_or(AcAmperes());
  const StepIndex terminalStep = record(
      working, FormulaId{"wiring.terminal_ampacity"},
      run.nmCable ? RuleId{"conductor.nm_column"} : RuleId{"conductor.terminals"}, terminal.count(), "A",
      {fromPlace("A", terminal.count(), "A",
                 ampacityCell(size, run.metal, found.terminalColumn, edition, tables))});
  const StepIndex deratedStep = record(
      working, FormulaId{"wiring.derated_ampacity"}, RuleId{"conductor.ampacity"}, found.derated->count(),
      "A",
      {fromPlace("A", base.count(), "A", ampacityCell(size, run.metal, run.insulation, edition, tables)),
       fromPlace("Ft", found.ambient->count(), "", ambientCell(run.ambient, run.insulation, edition, tables)),
       fromPlace("Fn", found.adjustment.count(), "",
                 run.length <= nippleLength(tables) && run.length.inMicrometres() > 0
                     ? citationOrNearest(RuleId{"conductor.nipple"}, edition, tables)
                     : adjustmentCell(run.currentCarrying, edition, tables))});
  record(working, FormulaId{"wiring.ampacity"}, RuleId{"conductor.terminals"}, found.governing->count(), "A",
         {fromStep("At", terminal.count(), "A", terminalStep),
          fromStep("Ad", found.derated->count(), "A", deratedStep)},
         note);
}

ConductorChoice chooseConductor(const ConductorQuestion& question, Edition edition, Working* working,
                                const Tables& tables) {
  ConductorChoice choice;
  choice.metal = question.conditions.metal;
  choice.device = question.device;

  std::optional<ConductorSize> failing;  // the largest size that is not enough
  Tests failingTests;
  if (question.load || question.device) {
    for (std::size_t i = 0; i < kConductorSizeCount; ++i) {
      const auto size = static_cast<ConductorSize>(i);
      const Tests tests = testsOf(size, question, edition, tables);
      if (tests.all()) {
        choice.required = size;
        break;
      }
      if (tests.listed) {
        failing = size;
        failingTests = tests;
      }
    }
  }

  choice.fixed = question.fixed.has_value();
  choice.size = question.fixed ? question.fixed : choice.required;
  if (choice.size) {
    const Tests tests = testsOf(*choice.size, question, edition, tables);
    choice.terminalColumn = tests.found.terminalColumn;
    choice.terminalAmpacity = tests.found.terminal;
    choice.deratedAmpacity = tests.found.derated;
    choice.ambientFactor = tests.found.ambient;
    choice.adjustmentFactor = tests.found.adjustment;
    choice.ampacity = tests.found.governing;
    if (const std::size_t larger = static_cast<std::size_t>(*choice.size) + 1; larger < kConductorSizeCount) {
      choice.next = static_cast<ConductorSize>(larger);
      choice.nextAmpacity = ampacities(*choice.next, question.conditions, question.device, tables).governing;
    }
    choice.tooSmall = choice.fixed && (!tests.listed || !tests.terminal || !tests.derated);
    choice.notProtected = choice.fixed && question.device && (!tests.listed || !tests.device);
    RunConditions singles = question.conditions;
    singles.nmCable = false;
    choice.nmColumn = question.conditions.nmCable &&
                      ampacities(*choice.size, singles, question.device, tables).terminalColumn >
                          tests.found.terminalColumn;
    const std::string which = conductorName(*choice.size, choice.metal);
    Reason reason{say(kSmallest, which), RuleId{"conductor.ampacity"}};
    if (!choice.fixed) {
      if (failing) reason = reasonAgainst(*failing, failingTests, question);
    } else if (!tests.listed && !tests.found.ambient) {
      reason = {tooHot(question), RuleId{"conductor.ambient"}};
    } else if (!tests.all()) {
      reason = reasonAgainst(*choice.size, tests, question);
    } else {
      reason.message = say(kFixed, which, amperes(*tests.found.governing));
    }
    choice.governs = std::move(reason.message);
    choice.rule = reason.rule;
    if (working != nullptr && tests.listed) {
      recordAmpacity(*working, *choice.size, question.conditions, tests.found, edition, tables,
                     choice.next && choice.nextAmpacity
                         ? say(kWithNext, std::vector{choice.governs},
                               conductorName(*choice.next, choice.metal), amperes(*choice.nextAmpacity))
                         : choice.governs);
      if (byNextSizeUp(choice)) recordNextSizeUp(*working, *choice.ampacity, edition, tables);
    }
  } else if (!question.load && !question.device) {
    choice.governs = say(kUnknown);
  } else if (!ambientFactor(question.conditions.ambient, question.conditions.insulation, tables)) {
    choice.governs = tooHot(question);
    choice.rule = RuleId{"conductor.ambient"};
  } else {
    choice.governs = say(kNoneListed);
    choice.rule = RuleId{"conductor.ampacity"};
  }
  return choice;
}

}  // namespace stayalight
