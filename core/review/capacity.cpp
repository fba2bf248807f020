// Load calculation, what the main still carries, and by which rule the source is large enough.

#include <algorithm>
#include <cmath>

#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kCalculation{"load.calculation"};
constexpr RuleId kNeutral{"feeder.neutral"};
constexpr RuleId kMetered{"load.metered"};
constexpr RuleId kLighting{"load.lighting"};
constexpr RuleId kAutomatic{"capacity.automatic"};

constexpr MessageId kCalculationPlain{"review.load.calculation.plain"};
constexpr MessageId kCalculationTrade{"review.load.calculation.trade"};
constexpr MessageId kCalculationNothing{"review.load.calculation.nothing"};
constexpr MessageId kTypedPlain{"review.load.typed_below.plain"};
constexpr MessageId kTypedTrade{"review.load.typed_below.trade"};
constexpr MessageId kZeroPlain{"review.service.demand_zero.plain"};
constexpr MessageId kZeroTrade{"review.service.demand_zero.trade"};
constexpr MessageId kTypedZeroPlain{"review.load.typed_zero.plain"};
constexpr MessageId kNeutralBelowPlain{"review.load.neutral_below.plain"};
constexpr MessageId kNeutralBelowTrade{"review.load.neutral_below.trade"};
constexpr MessageId kTypedZeroTrade{"review.load.typed_zero.trade"};
constexpr MessageId kTypedContinuousPlain{"review.load.typed_continuous.plain"};
constexpr MessageId kTypedNeutralPlain{"review.load.typed_neutral.plain"};
constexpr MessageId kPartTrade{"review.load.typed_part.trade"};
constexpr MessageId kAreaPlain{"review.load.area.plain"};
constexpr MessageId kAreaTrade{"review.load.area.trade"};
constexpr MessageId kServicePlain{"review.service.over.plain"};
constexpr MessageId kServiceTrade{"review.service.over.trade"};
constexpr MessageId kServiceBeforePlain{"review.service.over_before.plain"};
constexpr MessageId kServiceBeforeTrade{"review.service.over_before.trade"};
constexpr MessageId kServiceUnknownPlain{"review.service.not_known.plain"};
constexpr MessageId kServiceUnknownTrade{"review.service.not_known.trade"};
constexpr MessageId kSubpanelPlain{"review.service.subpanel_feeder.plain"};
constexpr MessageId kSubpanelTrade{"review.service.subpanel_feeder.trade"};
constexpr MessageId kNotCountedPlain{"review.charge.not_counted.plain"};
constexpr MessageId kNotCountedTrade{"review.charge.not_counted.trade"};
constexpr MessageId kChargePlain{"review.charge.over.plain"};
constexpr MessageId kChargeTrade{"review.charge.over.trade"};
constexpr MessageId kChargeFix{"review.charge.over.fix"};
constexpr MessageId kAutomaticPlain{"review.transfer.automatic_capacity.plain"};
constexpr MessageId kAutomaticTrade{"review.transfer.automatic_capacity.trade"};
constexpr MessageId kNoPathPlain{"review.capacity.not_chosen.plain"};
constexpr MessageId kNoPathTrade{"review.capacity.not_chosen.trade"};
constexpr MessageId kPathOverPlain{"review.capacity.over.plain"};
constexpr MessageId kPathOverTrade{"review.capacity.over.trade"};
constexpr MessageId kPathUnknownPlain{"review.capacity.not_known.plain"};
constexpr MessageId kPathUnknownTrade{"review.capacity.not_known.trade"};

// A charge limit is set in steps; the next lower one stays within.
constexpr double kChargeStep = 10.0;

Figure voltAmperes(VoltAmperes value) { return {value.count(), "VA", 0}; }

bool anyBackedUp(const Plan& plan) {
  return std::any_of(plan.circuits.begin(), plan.circuits.end(),
                     [&](const auto& circuit) { return backedUp(plan, *circuit); });
}

/// One finding for all that is missing: it jumps to the first of it.
void calculation(const ReviewInput& in, Findings& out) {
  if (in.demand == nullptr || !in.demand->covered || !anyBackedUp(in.plan)) return;
  const DemandCalculation& feeder = in.demand->feeder;
  const FeederLoad& load = in.demand->feederLoad;
  if (!load.load) {
    std::vector<Message> missing = feeder.missing;
    if (feeder.refused) missing.push_back(*feeder.refused);
    if (missing.empty()) missing.push_back(say(kCalculationNothing));
    std::vector<EntityRef> places = feeder.places;
    places.push_back(at(RecordKind::transfer));
    out.add("load.calculation", Severity::mustFix, kCalculation, say(kCalculationPlain),
            say(kCalculationTrade, missing), places);
    return;
  }
  const bool worked = feeder.complete() && !feeder.lines.empty();
  if (load.typed && worked &&
      compare(feeder.total, feeder.total, std::optional(*load.load + VoltAmperes(0.5))) == Verdict::over) {
    out.add("load.typed_below", Severity::checkOnSite, kCalculation, say(kTypedPlain),
            say(kTypedTrade, voltAmperes(*load.load), voltAmperes(feeder.total)), {at(RecordKind::transfer)});
  }
}

// What is typed and cannot be: no load at all, and parts above the load, typed or worked out.
void typedParts(const ReviewInput& in, Findings& out) {
  const Transfer& transfer = *in.plan.transfer;
  if (canadian(in.plan)) return;
  const std::vector<EntityRef> place{at(RecordKind::transfer)};
  if (transfer.calculatedLoad && transfer.calculatedLoad->count() <= 0.0 && anyBackedUp(in.plan)) {
    out.add("load.typed_zero", Severity::checkOnSite, kCalculation, say(kTypedZeroPlain),
            say(kTypedZeroTrade), place);
    return;
  }
  const std::optional<VoltAmperes> all = transfer.calculatedLoad ? transfer.calculatedLoad
                                         : in.demand != nullptr  ? in.demand->feederLoad.load
                                                                 : std::nullopt;
  if (!all) return;
  const auto above = [&](std::string_view key, MessageId plain, const std::optional<VoltAmperes>& part) {
    if (!part || part->count() <= all->count() * (1.0 + 1e-9)) return;
    out.add(key, Severity::checkOnSite, kCalculation, say(plain),
            say(kPartTrade, voltAmperes(*part), voltAmperes(*all)), place);
  };
  above("load.typed_continuous", kTypedContinuousPlain, transfer.continuousPart);
  above("load.typed_neutral", kTypedNeutralPlain, transfer.neutralLoad);
  if (in.demand == nullptr || !transfer.neutralLoad || !in.demand->feeder.complete()) return;
  const auto& legs = in.demand->feeder.leg;
  const VoltAmperes worked = std::max(legs[0].neutral, legs[1].neutral);
  if (transfer.neutralLoad->count() < worked.count() - 0.5) {
    out.add("load.neutral_below", Severity::checkOnSite, kNeutral, say(kNeutralBelowPlain),
            say(kNeutralBelowTrade, voltAmperes(*transfer.neutralLoad), voltAmperes(worked)), place);
  }
}

void areasCountOnce(const ReviewInput& in, Findings& out) {
  if (canadian(in.plan) || !in.plan.site->floorArea) return;
  SquareFeet sum;
  for (const auto& circuit : in.plan.circuits) sum += circuit->areaServed.value_or(SquareFeet());
  if (compare(sum, sum, in.plan.site->floorArea) != Verdict::over) return;
  out.add("load.area", Severity::checkOnSite, kLighting, say(kAreaPlain),
          say(kAreaTrade, Figure{sum.count(), "ft\u00b2", 0},
              Figure{in.plan.site->floorArea->count(), "ft\u00b2", 0}),
          {at(RecordKind::site)});
}

void demandOfNothing(const ReviewInput& in, Findings& out) {
  const auto& demand = in.plan.site->maximumDemand;
  if (canadian(in.plan) || !demand || demand->count() > 0.0) return;
  out.add("service.demand_zero", Severity::checkOnSite, kMetered, say(kZeroPlain), say(kZeroTrade),
          {at(RecordKind::site)});
}

void service(const ReviewInput& in, Findings& out) {
  if (in.demand == nullptr || !in.demand->covered || mainPanel(in.plan) == nullptr) return;
  const ServiceDemand& service = in.demand->service;
  const EntityRef place = at(*mainPanel(in.plan));
  const MethodFigures* const chosen = chosenMethod(service);
  if (chosen != nullptr && service.rating) {
    const Figure rating{static_cast<double>(service.rating->count()), "A", 0};
    const std::vector<Message> name{methodName(chosen->method)};
    // What one method found within before is brought over by the work, whatever the chosen one says of
    // before.
    const bool fineBefore =
        std::any_of(service.methods.begin(), service.methods.end(), [](const MethodFigures& method) {
          return !method.notApplicable && method.verdictBefore == Verdict::within;
        });
    if (chosen->verdictAfter == Verdict::over && chosen->verdictBefore == Verdict::over && !fineBefore) {
      out.add("service.over_before", Severity::checkOnSite, chosen->rule, say(kServiceBeforePlain),
              say(kServiceBeforeTrade, name, amperes(chosen->before.least().count()),
                  amperes(chosen->after.least().count()), rating),
              {place});
    } else if (chosen->verdictAfter == Verdict::over) {
      out.add("service.over", Severity::mustFix, chosen->rule, say(kServicePlain),
              say(kServiceTrade, name, amperes(chosen->after.least().count()), rating), {place});
    }
    return;
  }
  // The work adds nothing to the main, unless something is new or charges from it.
  const bool adds = service.charge.asked ||
                    std::any_of(in.plan.circuits.begin(), in.plan.circuits.end(), [](const auto& circuit) {
                      return !circuit->breaker.valid() && circuit->planned.valid();
                    });
  if (!adds || service.methods.empty()) return;
  const DemandCalculation& standard = service.methods.front().after;
  if (standard.missing.empty()) return;
  std::vector<EntityRef> places{place};
  places.insert(places.end(), standard.places.begin(), standard.places.end());
  out.add("service.not_known", Severity::checkOnSite, kCalculation, say(kServiceUnknownPlain),
          say(kServiceUnknownTrade, standard.missing), places);
}

void charging(const ReviewInput& in, Findings& out) {
  if (in.demand == nullptr || !in.demand->covered) return;
  const ChargeSetting& charge = in.demand->service.charge;
  const auto& limit = in.plan.inverter->chargeLimit;
  const bool wanted = limit && limit->count() > 0.0;
  if (wanted && !charge.asked && !in.plan.transfer->arrangement.is(Arrangement::none)) {
    out.add("charge.not_counted", Severity::advice, kCalculation, say(kNotCountedPlain),
            say(kNotCountedTrade, watts(limit->count() * std::max(1, in.plan.inverter->units))),
            {at(RecordKind::inverter), at(RecordKind::transfer)});
  }
  if (charge.verdict != Verdict::over || !charge.fits || !charge.entered) return;
  Finding& finding = out.add("charge.over", Severity::mustFix, kCalculation, say(kChargePlain),
                             say(kChargeTrade, watts(charge.entered->count()), watts(charge.fits->count()),
                                 std::vector<Message>{charge.governs}),
                             {at(RecordKind::inverter)});
  const double each =
      std::floor(charge.fits->count() / std::max(1, in.plan.inverter->units) / kChargeStep) * kChargeStep;
  out.offer(finding, fix::SetField{at(RecordKind::inverter), "charge_limit_W", each},
            say(kChargeFix, watts(each)));
}

void capacity(const ReviewInput& in, Findings& out) {
  if (in.demand == nullptr || !in.demand->covered || !anyBackedUp(in.plan)) return;
  const Transfer& transfer = *in.plan.transfer;
  const std::vector<EntityRef> place{at(RecordKind::transfer)};
  const auto chosen = std::find_if(in.demand->paths.begin(), in.demand->paths.end(),
                                   [](const PathFigures& path) { return path.chosen; });
  if (chosen == in.demand->paths.end()) {
    const bool automatic = transfer.arrangement.is(Arrangement::automaticSwitch) ||
                           transfer.arrangement.is(Arrangement::inverterPassThrough);
    if (!automatic) return;
    const auto& load = in.demand->feederLoad.load;
    const auto& carries = in.demand->carries;
    if (load && carries && compare(*load, *load, carries) == Verdict::over) {
      out.add("transfer.automatic_capacity", Severity::checkOnSite, kAutomatic, say(kAutomaticPlain),
              say(kAutomaticTrade, voltAmperes(*load), voltAmperes(*carries)), place);
    } else {
      out.add("capacity.not_chosen", Severity::advice, kAutomatic, say(kNoPathPlain), say(kNoPathTrade),
              place);
    }
    return;
  }
  const auto inState = [&](Condition state) {
    std::vector<Message> list;
    for (const CapacityCondition& condition : chosen->conditions) {
      if (condition.state == state) list.push_back(condition.what);
    }
    return list;
  };
  const std::vector<Message> name{pathName(chosen->path)};
  if (chosen->verdict == Verdict::over) {
    std::vector<Message> broken = inState(Condition::broken);
    if (chosen->closed) broken.insert(broken.begin(), *chosen->closed);
    out.add("capacity.over", Severity::mustFix, chosen->rule, say(kPathOverPlain),
            say(kPathOverTrade, name, broken), place);
  } else if (chosen->verdict == Verdict::notKnown) {
    out.add("capacity.not_known", Severity::checkOnSite, chosen->rule, say(kPathUnknownPlain),
            say(kPathUnknownTrade, name, inState(Condition::notKnown)), place);
  }
}

/// Out of a subpanel the moved circuits and the charger load that panel's feeder too.
void feederOfSubpanel(const ReviewInput& in, Findings& out) {
  const Panel* ahead = panelAhead(in.plan);
  if (ahead == nullptr || ahead->role.is(PanelRole::main) || !anyBackedUp(in.plan)) return;
  out.add("service.subpanel_feeder", Severity::checkOnSite, kCalculation,
          say(kSubpanelPlain, reviewing::nameOf(*ahead)), say(kSubpanelTrade, reviewing::nameOf(*ahead)),
          {at(*ahead)});
}

constexpr Rule kRules[] = {calculation, typedParts,       areasCountOnce, demandOfNothing,
                           service,     feederOfSubpanel, charging,       capacity};

}  // namespace

std::span<const Rule> capacityRules() { return kRules; }

}  // namespace stayalight::reviewing
