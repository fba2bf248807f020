// All calculations of a plan: feeder, main before and after the work, charging, capacity.

#include <algorithm>
#include <cmath>

#include "core/code/numbers.h"
#include "core/demand/record.h"
#include "core/panel/clearing.h"
#include "core/plan/field.h"
#include "core/transfer/battery_output.h"
#include "core/transfer/breaker_in_plan.h"

namespace stayalight {
namespace {

using namespace demanding;

constexpr MessageId kRatingUnknown{"demand.not_applicable.rating_unknown"};
constexpr MessageId kBelow100{"demand.not_applicable.below_100"};
constexpr MessageId kEditionUnknown{"demand.not_applicable.edition"};
constexpr MessageId kNothingBefore{"demand.not_applicable.nothing_before"};
constexpr MessageId kNoDemand{"demand.not_applicable.no_demand"};
constexpr MessageId kZeroDemand{"demand.not_applicable.zero_demand"};
constexpr MessageId kNoPeriod{"demand.not_applicable.no_period"};
constexpr MessageId kNotGross{"demand.not_applicable.not_gross"};
constexpr MessageId kGrossUnknown{"demand.not_applicable.gross_unknown"};
constexpr MessageId kNoSeason{"demand.not_applicable.no_season"};
constexpr MessageId kNoChargeLimit{"demand.missing.charge_limit"};
constexpr MessageId kBefore{"demand.about.before"};
constexpr MessageId kAfter{"demand.about.after"};
constexpr MessageId kFeeder{"demand.about.feeder"};
constexpr MessageId kCharging{"demand.about.charging"};
constexpr MessageId kMain{"demand.rating.main"};
constexpr MessageId kMainLeg{"demand.rating.main_leg"};
constexpr MessageId kInput{"demand.rating.input"};
constexpr MessageId kRelay{"demand.rating.relay"};
constexpr MessageId kInputBreaker{"demand.rating.input_breaker"};

std::optional<RatingAmperes> ratingOf(const Plan& plan) {
  const Panel* const main = mainPanel(plan);
  std::optional<RatingAmperes> rating = plan.site->serviceRating;
  if (main != nullptr && main->mainBreaker && (!rating || *main->mainBreaker < *rating))
    rating = main->mainBreaker;
  return rating;
}

Verdict verdictOf(const DemandCalculation& calculation, const std::optional<RatingAmperes>& rating) {
  if (calculation.refused || !rating) return Verdict::notKnown;
  return compare(calculation.least(), calculation.complete() ? calculation.least() : AcAmperes(1e9),
                 std::optional(rating->amperes()));
}

std::optional<Message> whyNotMetered(const Plan& plan, Edition edition, const Tables& tables) {
  const Site& site = *plan.site;
  if (!site.maximumDemand) return say(kNoDemand);
  if (site.maximumDemand->count() <= 0.0) return say(kZeroDemand);
  const auto years = demandFigure(DemandKey::meteredYear, edition, tables);
  const auto days = demandFigure(DemandKey::meteredDays, edition, tables);
  if (!years || !days) return say(kEditionUnknown, std::string(name(edition)));
  if (site.demandPeriod.is(DemandPeriod::unknown) || !site.demandPeriod.known())
    return say(kNoPeriod, static_cast<std::int64_t>(years->value), static_cast<std::int64_t>(days->value));
  if (site.demandGross.is(Answer::no)) return say(kNotGross);
  if (!site.demandGross.is(Answer::yes)) return say(kGrossUnknown);
  if (site.demandPeriod.is(DemandPeriod::thirtyDays) && !site.demandSeason.is(Answer::yes))
    return say(kNoSeason, static_cast<std::int64_t>(days->value));
  return std::nullopt;
}

std::optional<Message> whyNot(const Plan& plan, DemandMethod method, Edition edition,
                              const std::optional<RatingAmperes>& rating, const Tables& tables) {
  switch (method) {
    case DemandMethod::standard:
      return std::nullopt;
    case DemandMethod::optional: {
      const auto least = demandFigure(DemandKey::optionalLeastRating, edition, tables);
      if (!least) return say(kEditionUnknown, std::string(name(edition)));
      if (!rating) return say(kRatingUnknown, Figure{least->value, "A", 0});
      if (rating->count() < least->value)
        return say(kBelow100, Figure{least->value, "A", 0},
                   Figure{static_cast<double>(rating->count()), "A", 0});
      return std::nullopt;
    }
    case DemandMethod::existing: {
      if (!demandFigure(DemandKey::existingFirst, edition, tables))
        return say(kEditionUnknown, std::string(name(edition)));
      const bool stands = std::any_of(plan.circuits.begin(), plan.circuits.end(),
                                      [](const auto& circuit) { return circuit->breaker.valid(); });
      if (!stands) return say(kNothingBefore);
      return std::nullopt;
    }
    case DemandMethod::metered:
      return whyNotMetered(plan, edition, tables);
  }
  return std::nullopt;
}

DemandCalculation calculate(const Plan& plan, DemandMethod method, const DemandQuestion& question, bool after,
                            Working* working, const Tables& tables) {
  switch (method) {
    case DemandMethod::optional:
      return optionalLoad(question, working, tables);
    case DemandMethod::existing:
      return existingLoad(question, working, tables);
    case DemandMethod::metered: {
      // What the meter saw needs no list of what is there; only what is new.
      DemandQuestion fresh = question;
      fresh.missing.clear();
      fresh.places.clear();
      fresh.notes.clear();
      if (after) {
        for (const Message& missing : question.missing) {
          if (missing.id == kNoChargeLimit) fresh.missing.push_back(missing);
        }
        for (const auto& circuit : plan.circuits) {
          // A new circuit of which something is not entered.
          if (circuit->breaker.valid()) continue;
          const bool lacks =
              std::any_of(question.places.begin(), question.places.end(), [&](const EntityRef& place) {
                return ownerOf(plan, place) == EntityRef{RecordKind::circuit, circuit->id.number};
              });
          if (lacks) fresh.missing = question.missing;
        }
      }
      return meteredLoad(plan.site->maximumDemand.value_or(VoltAmperes()), fresh, after, working, tables);
    }
    case DemandMethod::standard:
      break;
  }
  return standardLoad(question, working, tables);
}

// What is left of a rating for charging, which counts as continuous: (R V - S - (k - 1) C) / k.
struct Left {
  double watts = 0.0;
  Message governs;
  StepIndex step = kNoStep;
};
Left leftFor(double rating, double volts, double load, double continuous, double factor, Message governs,
             Working* working) {
  Left left;
  left.watts = std::max(0.0, (rating * volts - load - (factor - 1.0) * continuous) / factor);
  left.governs = std::move(governs);
  left.step =
      record(working, "demand.charge_left", RuleId{"practice.charging_load"}, left.watts, "W",
             {input("R", rating, "A", kNoStep, "rating"), input("V", volts, "V", kNoStep, "nominal volts"),
              input("S", load, "VA", kNoStep, "load without charging"),
              input("k", factor, "", kNoStep, "factor on continuous load"),
              input("C", continuous, "VA", kNoStep, "continuous part of that load")},
             left.governs);
  return left;
}

// The main after the work as if nothing charged, by the method that is chosen, or else by the one that then
// asks for least: so the limit that fits is known before one is entered.
std::optional<DemandCalculation> withoutCharging(const Plan& plan, const ServiceDemand& service,
                                                 const DemandQuestion& after, const Tables& tables) {
  DemandQuestion question = after;
  question.charging.reset();
  std::erase_if(question.missing, [](const Message& missing) { return missing.id == kNoChargeLimit; });
  std::optional<DemandCalculation> least;
  for (const MethodFigures& method : service.methods) {
    if (method.notApplicable || (service.chosen && service.chosen != method.method)) continue;
    DemandCalculation load = calculate(plan, method.method, question, true, nullptr, tables);
    if (load.complete() && (!least || load.least() < least->least())) least = std::move(load);
  }
  return least;
}

ChargeSetting chargeSetting(const Plan& plan, const DemandFigures& figures, const DemandQuestion& after,
                            Working* working, const Tables& tables) {
  ChargeSetting setting;
  const std::vector<Segment> pieces = segments(plan);
  setting.asked = std::find(pieces.begin(), pieces.end(), Segment::mainToInverter) != pieces.end();
  if (!setting.asked) return setting;
  const int units = std::max(1, plan.inverter->units);
  if (plan.inverter->chargeLimit) setting.entered = *plan.inverter->chargeLimit * units;
  const SystemVoltages system = voltages(plan, Mode::ordinary, tables);
  const double volts = system.legToLeg.count();
  const double factor = continuousFactor(tables).count();

  std::optional<Left> least;
  bool known = true;
  const auto consider = [&](Left left) {
    if (!least || left.watts < least->watts) least = std::move(left);
  };
  const std::optional<DemandCalculation> house = withoutCharging(plan, figures.service, after, tables);
  if (figures.service.rating && house) {
    const double rating = figures.service.rating->count();
    consider(leftFor(rating, volts, house->total.count(), house->continuous.count(), factor,
                     say(kMain, Figure{rating, "A", 0}), working));
    // A method with legs: charging adds to the heavier one too.
    const double lineOverLeg = volts / system.legToNeutral.count();
    for (const DemandLeg& leg : house->leg) {
      if (leg.load.count() <= 0.0) continue;
      consider(leftFor(rating, volts, leg.load.count() * lineOverLeg, leg.continuous.count() * lineOverLeg,
                       factor, say(kMainLeg, Figure{rating, "A", 0}), working));
    }
  } else {
    known = false;
  }
  const bool through = plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  const FeederLoad& feeder = figures.feederLoad;
  const auto ofUnits = [&](const std::optional<RatingAmperes>& rating) {
    return rating ? std::optional<double>(rating->count() * units) : std::nullopt;
  };
  // What comes through lies on the heavier leg, the charger between both: its amperes are W over line volts.
  double load = 0.0, continuous = 0.0;
  if (through) {
    if (feeder.heavier) {
      const double lineOverLeg = volts / system.legToNeutral.count();
      load = feeder.heavier->load.count() * lineOverLeg;
      continuous = feeder.heavier->continuous.count() * lineOverLeg;
    } else if (feeder.load) {
      load = feeder.load->count();
      continuous = feeder.continuous.value_or(VoltAmperes()).count();
    } else {
      known = false;
    }
  }
  // Out of a subpanel its own feeder stands in the way, whose load is not worked out.
  const Panel* const ahead = panelAhead(plan);
  if (ahead != nullptr && !ahead->role.is(PanelRole::main)) known = false;
  const auto onTheWay = [&](const std::optional<double>& rating, MessageId name) {
    if (!known || !rating) return;
    consider(leftFor(*rating, volts, load, continuous, factor, say(name, Figure{*rating, "A", 0}), working));
  };
  const auto plain = [](const std::optional<RatingAmperes>& rating) {
    return rating ? std::optional<double>(rating->count()) : std::nullopt;
  };
  onTheWay(ofUnits(plan.inverter->acInput), kInput);
  if (through) {
    onTheWay(ofUnits(plan.inverter->passThrough), kRelay);
    onTheWay(plain(plan.transfer->rating), kRelay);
  }
  onTheWay(plain(breakerInPlan(plan, Segment::mainToInverter)), kInputBreaker);
  for (const auto& run : plan.runs) {
    if (run->segment.is(Segment::mainToInverter)) onTheWay(plain(run->fixedDevice), kInputBreaker);
  }
  if (!known || !least) return setting;
  setting.fits = Watts(least->watts);
  setting.governs = least->governs;
  setting.step = least->step;
  if (setting.entered) setting.verdict = compare(*setting.entered, *setting.entered, setting.fits);
  return setting;
}

FeederLoad feederLoadOf(const Plan& plan, const DemandCalculation& computed, const Tables& tables) {
  FeederLoad load;
  const bool complete = computed.complete() && !computed.lines.empty();
  if (complete) {
    const double factor = continuousFactor(tables).count() - 1.0;
    const auto asks = [&](const DemandLeg& leg) { return leg.load + leg.continuous * factor; };
    load.neutral = std::max(computed.leg[0].neutral, computed.leg[1].neutral);
    load.load = computed.total;
    load.continuous = computed.continuous;
    load.legs = {{computed.leg[0].load, computed.leg[1].load}};
    load.heavier = asks(computed.leg[1]) > asks(computed.leg[0]) ? computed.leg[1] : computed.leg[0];
  }
  if (plan.transfer->calculatedLoad) {
    load.typed = true;
    load.load = plan.transfer->calculatedLoad;
    load.continuous = plan.transfer->continuousPart.value_or(VoltAmperes());
    load.heavier.reset();
    load.legs.reset();
    load.neutral.reset();
  }
  if (plan.transfer->neutralLoad) {
    load.neutralTyped = true;
    load.neutral = plan.transfer->neutralLoad;
  }
  return load;
}

}  // namespace

Message methodName(DemandMethod method) {
  constexpr std::array<MessageId, 4> names = {
      MessageId{"demand.method.standard"}, MessageId{"demand.method.optional"},
      MessageId{"demand.method.existing"}, MessageId{"demand.method.metered"}};
  return say(names[static_cast<std::size_t>(method)]);
}

WorkingSubject workingSubject(DemandMethod method, Reading reading) {
  return {say(reading == Reading::before ? kBefore : kAfter, std::vector{methodName(method)}), 0};
}
WorkingSubject chargingSubject() { return {say(kCharging), 0}; }
WorkingSubject feederLoadSubject() { return {say(kFeeder), 0}; }

const MethodFigures* chosenMethod(const ServiceDemand& service) {
  for (const MethodFigures& method : service.methods) {
    if (service.chosen == method.method) return &method;
  }
  return nullptr;
}

DemandFigures demandFigures(const Plan& plan, Edition edition, const InverterLimits& limits, Working* working,
                            const Tables& tables) {
  DemandFigures figures;
  figures.feederLoad = feederLoadOf(plan, figures.feeder, tables);  // what is typed holds anywhere
  if (!plan.site->country.is(Country::unitedStates) || plan.site->service.is(ServiceSystem::threePhase))
    return figures;
  figures.covered = true;

  const DemandQuestion before = dwellingQuestion(plan, Reading::before, edition, tables);
  const DemandQuestion after = dwellingQuestion(plan, Reading::planned, edition, tables);
  ServiceDemand& service = figures.service;
  service.rating = ratingOf(plan);
  constexpr std::array<const char*, 4> rules = {"load.calculation", "load.optional", "load.existing",
                                                "load.metered"};
  for (const DemandMethod method :
       {DemandMethod::standard, DemandMethod::optional, DemandMethod::existing, DemandMethod::metered}) {
    MethodFigures made;
    made.method = method;
    made.rule = RuleId{rules[static_cast<std::size_t>(method)]};
    made.notApplicable = whyNot(plan, method, edition, service.rating, tables);
    if (!made.notApplicable) {
      {
        const WorkingOf about(working, workingSubject(method, Reading::before));
        made.before = calculate(plan, method, before, false, working, tables);
      }
      const WorkingOf about(working, workingSubject(method, Reading::planned));
      made.after = calculate(plan, method, after, true, working, tables);
      made.verdictBefore = verdictOf(made.before, service.rating);
      made.verdictAfter = verdictOf(made.after, service.rating);
    }
    service.methods.push_back(std::move(made));
  }
  const MethodFigures* chosen = nullptr;
  for (const MethodFigures& method : service.methods) {
    if (method.notApplicable || !method.after.complete()) continue;
    if (chosen == nullptr || method.after.least() < chosen->after.least()) chosen = &method;
  }
  if (chosen != nullptr) service.chosen = chosen->method;

  if (backupPanel(plan) != nullptr) {
    {
      const WorkingOf about(working, feederLoadSubject());
      figures.feeder = standardLoad(feederQuestion(plan, edition, tables), working, tables);
    }
    figures.feederLoad = feederLoadOf(plan, figures.feeder, tables);
    figures.carries = limits.totalApparent;
    if (!figures.carries && limits.total) figures.carries = VoltAmperes(limits.total->count());
    // No more than the packs behind it let it give.
    if (const auto packs = batteryOutput(*plan.inverter, *plan.battery); packs && figures.carries)
      figures.carries = std::min(*figures.carries, VoltAmperes(packs->count()));
    figures.paths = capacityPaths(plan, edition, limits, figures, working, tables);
  }
  const WorkingOf about(working, chargingSubject());
  service.charge = chargeSetting(plan, figures, after, working, tables);
  return figures;
}

}  // namespace stayalight
