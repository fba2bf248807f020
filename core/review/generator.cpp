// The generator, solar on the AC side, and loads that are switched off so that others may run.

#include <algorithm>

#include "core/code/numbers.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kAlarmsOn{"practice.alarms_on"};
constexpr RuleId kGeneratorBond{"bond.portable_generator"};
constexpr RuleId kTransferListed{"transfer.listed"};
constexpr RuleId kSingleSource{"source.single_120"};
constexpr RuleId kGeneratorAtHome{"practice.generator"};
constexpr RuleId kGeneratorLoad{"practice.generator_load"};
constexpr RuleId kSolar{"practice.solar_in_outage"};
constexpr RuleId kManagement{"capacity.automatic"};

constexpr MessageId kFactsPlain{"review.bond.generator.plain"};
constexpr MessageId kFactsTrade{"review.bond.generator.trade"};
constexpr MessageId kNoBreakerPlain{"review.generator.no_breaker.plain"};
constexpr MessageId kNoBreakerTrade{"review.generator.no_breaker.trade"};
constexpr MessageId kNoSwitchPlain{"review.generator.no_switch.plain"};
constexpr MessageId kNoSwitchTrade{"review.generator.no_switch.trade"};
constexpr MessageId kMonoxidePlain{"review.generator.monoxide.plain"};
constexpr MessageId kMonoxideTrade{"review.generator.monoxide.trade"};
constexpr MessageId kSmallPlain{"review.generator.small.plain"};
constexpr MessageId kSmallTrade{"review.generator.small.trade"};
constexpr MessageId kChargePlain{"review.generator.charge.plain"};
constexpr MessageId kChargeTrade{"review.generator.charge.trade"};
constexpr MessageId kStartsPlain{"review.generator.starts.plain"};
constexpr MessageId kStartsTrade{"review.generator.starts.trade"};
constexpr MessageId kStartSum{"review.generator.starts.sum"};
constexpr MessageId kSinglePlain{"review.generator.single_120.plain"};
constexpr MessageId kSingleTrade{"review.generator.single_120.trade"};
constexpr MessageId kOtherPlain{"review.generator.other_system.plain"};
constexpr MessageId kOtherTrade{"review.generator.other_system.trade"};
constexpr MessageId kSolarBesidePlain{"review.generator.solar.plain"};
constexpr MessageId kSolarBesideTrade{"review.generator.solar.trade"};
constexpr MessageId kHeldBackPlain{"review.solar.held_back.plain"};
constexpr MessageId kHeldBackTrade{"review.solar.held_back.trade"};
constexpr MessageId kLargePlain{"review.solar.large.plain"};
constexpr MessageId kLargeTrade{"review.solar.large.trade"};
constexpr MessageId kAlarmsPlain{"review.managed.alarms.plain"};
constexpr MessageId kAlarmsTrade{"review.managed.alarms.trade"};
constexpr MessageId kStaysPlain{"review.solar.stays.plain"};
constexpr MessageId kStaysTrade{"review.solar.stays.trade"};
constexpr MessageId kUnlistedPlain{"review.managed.unlisted.plain"};
constexpr MessageId kUnlistedTrade{"review.managed.unlisted.trade"};
constexpr MessageId kNoLoadPlain{"review.managed.no_load.plain"};
constexpr MessageId kNoLoadTrade{"review.managed.no_load.trade"};

bool present(const Plan& plan) { return !plan.generator->comesIn.is(GeneratorPoint::none); }

// A breaker says that there is a generator, and nobody has entered it.
void generatorNotEntered(const ReviewInput& in, Findings& out) {
  if (present(in.plan)) return;
  for (const auto& breaker : in.plan.breakers) {
    if (!stands(*breaker, Reading::planned) || !breaker->feeds.is(Feeds::generator)) continue;
    out.add("bond.generator", Severity::checkOnSite, kGeneratorBond, say(kFactsPlain),
            say(kFactsTrade, spacesOf(in.plan, *breaker)), {at(*breaker), at(RecordKind::generator)});
  }
}

// What keeps it from meeting the utility: a place in the transfer equipment, or a breaker with a listed
// interlock.
void comesInSomewhere(const ReviewInput& in, Findings& out) {
  const Choice<GeneratorPoint>& comesIn = in.plan.generator->comesIn;
  const Choice<Arrangement>& arrangement = in.plan.transfer->arrangement;
  const bool placed = std::any_of(in.plan.breakers.begin(), in.plan.breakers.end(), [](const auto& breaker) {
    return stands(*breaker, Reading::planned) && breaker->feeds.is(Feeds::generator);
  });
  if (comesIn.is(GeneratorPoint::mainPanel) && !placed) {
    out.add("generator.no_breaker", Severity::danger, kTransferListed, say(kNoBreakerPlain),
            say(kNoBreakerTrade), {at(RecordKind::generator)});
  }
  const bool hasSwitch =
      arrangement.is(Arrangement::manualSwitch) || arrangement.is(Arrangement::automaticSwitch);
  if (comesIn.is(GeneratorPoint::transfer) && !hasSwitch) {
    out.add("generator.no_switch", Severity::mustFix, kTransferListed, say(kNoSwitchPlain),
            say(kNoSwitchTrade), {at(RecordKind::generator), at(RecordKind::transfer)});
  }
}

void monoxide(const ReviewInput& in, Findings& out) {
  if (!present(in.plan) || in.plan.generator->alarmsFitted.is(Answer::yes)) return;
  const bool missing = in.plan.generator->alarmsFitted.is(Answer::no);
  out.add("generator.monoxide", missing ? Severity::danger : Severity::checkOnSite, kGeneratorAtHome,
          say(kMonoxidePlain), say(kMonoxideTrade), {at(RecordKind::generator)});
}

// The generator carries the hour's likely peak with a margin; what is left of it may charge.
void generatorLoad(const ReviewInput& in, Findings& out) {
  const auto& rated = in.plan.generator->continuous;
  if (!present(in.plan) || !rated || in.hour == nullptr) return;
  const double usable = rated->count() * codeNumber(CodeNumber::loadingMargin, in.tables);
  const double peak = in.hour->total.likelyPeak.likely.count();
  const std::vector<EntityRef> places{at(RecordKind::generator)};
  if (peak > usable * (1.0 + 1e-9)) {
    out.add("generator.small", peak > rated->count() * (1.0 + 1e-9) ? Severity::mustFix : Severity::advice,
            kGeneratorLoad, say(kSmallPlain, watts(peak), watts(rated->count())),
            say(kSmallTrade, watts(peak), watts(usable),
                percent(codeNumber(CodeNumber::loadingMargin, in.tables)), watts(rated->count())),
            places);
    return;
  }
  if (!in.plan.generator->comesIn.is(GeneratorPoint::inverterInput) || !in.plan.inverter->chargeLimit) return;
  const double units = std::max(1, in.plan.inverter->units);
  const double charging = in.plan.inverter->chargeLimit->count() * units;
  const double average = in.hour->total.average.likely.count();
  if (average + charging <= usable * (1.0 + 1e-9)) return;
  const double fits = std::max(0.0, usable - average);
  out.add("generator.charge", Severity::advice, kGeneratorLoad, say(kChargePlain, watts(fits)),
          say(kChargeTrade, watts(average), watts(charging), watts(usable), watts(fits)), places);
}

// What a leg of the generator carries all day; its nameplate, else its watts on both legs alike.
std::optional<AcAmperes> ratedCurrent(const ReviewInput& in) {
  const Generator& generator = *in.plan.generator;
  if (generator.ratedCurrent) return generator.ratedCurrent;
  if (!generator.continuous) return std::nullopt;
  const SystemVoltages system = voltages(in.plan, Mode::generator, in.tables);
  const double volts = system.single ? system.legToNeutral.count() : 2.0 * system.legToNeutral.count();
  return AcAmperes(generator.continuous->count() / volts);
}

// A start within its rating is no question; what it bears for a moment beyond that its label does not say.
void generatorStarts(const ReviewInput& in, Findings& out) {
  const std::optional<AcAmperes> rated = ratedCurrent(in);
  if (!present(in.plan) || !rated || in.starts == nullptr) return;
  std::vector<std::string> names;
  std::vector<Message> sums;
  std::vector<EntityRef> places{at(RecordKind::generator)};
  for (std::size_t i = 0; i < in.starts->checks.size(); ++i) {
    const StartCheck& check = in.starts->checks[i];
    const MotorStart& motor = in.starts->motors[i];
    if (motor.source == StartSource::notKnown || motor.source == StartSource::running) continue;
    AcAmperes most;
    for (const auto& leg : check.leg) {
      if (leg) most = std::max(most, leg->highSum);
    }
    if (most.count() <= rated->count() * (1.0 + 1e-9)) continue;
    const Circuit* circuit = find(in.plan, motor.circuit);
    const auto load = std::find_if(circuit->loads.begin(), circuit->loads.end(),
                                   [&](const Load& l) { return l.id == motor.load; });
    names.push_back(nameOf(*load, *circuit));
    sums.push_back(say(kStartSum, names.back(), amperes(most.count())));
    places.push_back(at(*load));
  }
  if (names.empty()) return;
  out.add("generator.starts", Severity::checkOnSite, kGeneratorLoad, say(kStartsPlain, listed(names)),
          say(kStartsTrade, sums, amperes(rated->count())), places);
}

void single120(const ReviewInput& in, Findings& out) {
  if (!present(in.plan) || !in.plan.generator->output.is(InverterOutput::single120)) return;
  std::vector<std::string> names;
  std::vector<EntityRef> places{at(RecordKind::generator)};
  for (const auto& circuit : in.plan.circuits) {
    if (!backedUp(in.plan, *circuit)) continue;
    const Breaker* breaker = plannedBreaker(in.plan, *circuit);
    const bool twoPole = breaker != nullptr && breaker->poles == 2;
    if (!twoPole && circuit->multiwire == 0) continue;
    names.push_back(nameOf(*circuit));
    places.push_back(at(*circuit));
  }
  if (names.empty()) return;
  out.add("generator.single_120", Severity::danger, kSingleSource, say(kSinglePlain, listed(names)),
          say(kSingleTrade, listed(names)), places);
}

// Another system than the panel it feeds: loads between the legs see other volts, an inverter's input refuses
// it.
void otherSystem(const ReviewInput& in, Findings& out) {
  const Choice<InverterOutput>& made = in.plan.generator->output;
  if (!present(in.plan) || made.is(InverterOutput::single120) || !made.known()) return;
  const bool throughInverter = in.plan.generator->comesIn.is(GeneratorPoint::inverterInput);
  const bool wyeAsked = throughInverter ? in.plan.inverter->output.is(InverterOutput::wye120_208)
                                        : in.plan.site->service.is(ServiceSystem::wye120_208);
  if (made.is(InverterOutput::wye120_208) == wyeAsked) return;
  out.add("generator.other_system", Severity::mustFix, kGeneratorLoad, say(kOtherPlain), say(kOtherTrade),
          {at(RecordKind::generator)});
}

// Solar takes a generator for the utility and feeds power back into it.
void solarBesideGenerator(const ReviewInput& in, Findings& out) {
  if (!present(in.plan)) return;
  const bool coupled = in.plan.solar->coupling.is(SolarCoupling::alternatingCurrent);
  std::vector<EntityRef> places{at(RecordKind::generator)};
  for (const auto& breaker : in.plan.breakers) {
    if (!stands(*breaker, Reading::planned) || !breaker->feeds.is(Feeds::solar)) continue;
    const Panel* panel = find(in.plan, breaker->panel);
    const bool onItsBus = panel != nullptr && (panel->role.is(PanelRole::backup) ||
                                               in.plan.generator->comesIn.is(GeneratorPoint::mainPanel));
    if (onItsBus) places.push_back(at(*breaker));
  }
  const Panel* backup = backupPanel(in.plan);
  const bool onBackup = coupled && backup != nullptr && in.plan.solar->panel == backup->id;
  if (places.size() == 1 && !onBackup) return;
  out.add("generator.solar", Severity::mustFix, {}, say(kSolarBesidePlain), say(kSolarBesideTrade), places);
}

void solarInOutage(const ReviewInput& in, Findings& out) {
  const Solar& solar = *in.plan.solar;
  const Panel* backup = backupPanel(in.plan);
  const Panel* panel = find(in.plan, solar.panel);
  const bool anyMoved = std::any_of(in.plan.circuits.begin(), in.plan.circuits.end(),
                                    [&](const auto& circuit) { return backedUp(in.plan, *circuit); });
  if (solar.coupling.is(SolarCoupling::alternatingCurrent) && panel != nullptr && panel != backup &&
      anyMoved) {
    out.add("solar.stays", Severity::advice, kSolar, say(kStaysPlain, nameOf(*panel)),
            say(kStaysTrade, nameOf(*panel)), {at(RecordKind::solar), at(*panel)});
  }
  if (!solar.coupling.is(SolarCoupling::alternatingCurrent) || backup == nullptr || solar.panel != backup->id)
    return;
  const std::vector<EntityRef> places{at(RecordKind::solar), at(*backup)};
  if (!solar.heldBack.is(Answer::yes)) {
    out.add("solar.held_back", solar.heldBack.is(Answer::no) ? Severity::mustFix : Severity::checkOnSite,
            kSolar, say(kHeldBackPlain), say(kHeldBackTrade), places);
  }
  const auto& carries = in.plan.inverter->continuous;
  if (!solar.output || !carries) return;
  const double all = carries->count() * std::max(1, in.plan.inverter->units);
  if (solar.output->count() > all * (1.0 + 1e-9)) {
    out.add("solar.large", Severity::mustFix, kSolar, say(kLargePlain),
            say(kLargeTrade, watts(solar.output->count()), watts(all)), places);
  }
}

void managedLoads(const ReviewInput& in, Findings& out) {
  for (const ManagedLoad& managed : in.plan.transfer->managed) {
    const Circuit* circuit = circuitOf(in.plan, managed.load);
    if (circuit == nullptr) {
      out.add("managed.no_load", Severity::checkOnSite, {}, say(kNoLoadPlain), say(kNoLoadTrade),
              {at(RecordKind::transfer)});
      continue;
    }
    if (circuit->smokeAlarms.is(Answer::yes)) {
      out.add("managed.alarms", Severity::checkOnSite, kAlarmsOn, say(kAlarmsPlain, nameOf(*circuit)),
              say(kAlarmsTrade, nameOf(*circuit)), {at(RecordKind::transfer), at(*circuit)});
    }
    if (managed.listed.is(Answer::yes) || managed.shedBy.is(ShedBy::byHand)) continue;
    const auto load = std::find_if(circuit->loads.begin(), circuit->loads.end(),
                                   [&](const Load& l) { return l.id == managed.load; });
    const std::string name = nameOf(*load, *circuit);
    out.add("managed.unlisted", managed.listed.is(Answer::no) ? Severity::mustFix : Severity::checkOnSite,
            kManagement, say(kUnlistedPlain, name), say(kUnlistedTrade, name),
            {at(RecordKind::transfer), at(*load)});
  }
}

constexpr Rule kRules[] = {generatorNotEntered, comesInSomewhere, monoxide,    generatorLoad,
                           generatorStarts,     single120,        otherSystem, solarBesideGenerator,
                           solarInOutage,       managedLoads};

}  // namespace

std::span<const Rule> generatorRules() { return kRules; }

}  // namespace stayalight::reviewing
