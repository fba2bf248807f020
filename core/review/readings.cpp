// What clamp readings prove, and questions the authority has not answered.

#include <algorithm>

#include "core/onsite/neutral_reading.h"
#include "core/review/rules.h"
#include "core/use/use.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kClamp{"practice.clamp_reading"};

constexpr MessageId kSharedPlain{"review.reading.shared.plain"};
constexpr MessageId kSharedTrade{"review.reading.shared.trade"};
constexpr MessageId kProvesNothingPlain{"review.reading.proves_nothing.plain"};
constexpr MessageId kProvesNothingTrade{"review.reading.proves_nothing.trade"};
constexpr MessageId kMorePlain{"review.reading.more.plain"};
constexpr MessageId kMoreTrade{"review.reading.more.trade"};
constexpr MessageId kUnansweredPlain{"review.authority.open.plain"};
constexpr MessageId kUnansweredTrade{"review.authority.open.trade"};

// A reading a tenth above what is entered says that more hangs on the circuit. Common practice, no source.
constexpr double kMoreThanEntered = 1.1;

void neutralReadings(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    for (const ClampReading& reading : circuit->readings) {
      const NeutralProof proof = neutralProof(reading);
      const Circuit* partner = find(in.plan, reading.partner);
      const Figure current = amperes(reading.current.count());
      std::vector<EntityRef> places{at(*circuit)};
      if (partner != nullptr) places.push_back(at(*partner));
      if (proof == NeutralProof::shared) {
        if (circuit->multiwire > 0) continue;  // it is entered as shared
        Finding& finding =
            out.add("reading.shared", Severity::danger, kClamp, say(kSharedPlain, nameOf(*circuit)),
                    say(kSharedTrade, nameOf(*circuit), current), places);
        if (!circuit->neutralShared.is(Answer::yes)) {
          out.offer(finding, fix::SetField{at(*circuit), "neutral_shared", std::string("yes")},
                    say(MessageId{"review.reading.shared.fix"}));
        }
      } else if (proof == NeutralProof::partnerNotLoaded && neutralProof(*circuit) == proof &&
                 !circuit->neutralShared.is(Answer::yes)) {
        out.add("reading.proves_nothing", Severity::checkOnSite, kClamp,
                say(kProvesNothingPlain, nameOf(*circuit)), say(kProvesNothingTrade, nameOf(*circuit)),
                places);
      }
    }
  }
}

// More current than everything entered on the circuit draws together.
void lineReadings(const ReviewInput& in, Findings& out) {
  for (const auto& circuit : in.plan.circuits) {
    const bool any = std::any_of(circuit->readings.begin(), circuit->readings.end(),
                                 [](const ClampReading& r) { return r.conductor.is(ReadConductor::line); });
    const BreakerId id = circuit->planned.valid() ? circuit->planned : circuit->breaker;
    const Breaker* breaker = find(in.plan, id);
    if (!any || breaker == nullptr) continue;
    bool known = !circuit->loads.empty();
    const Reading as = circuit->planned.valid() ? Reading::planned : Reading::before;
    const SystemVoltages system = voltages(in.plan, Mode::ordinary, in.tables);
    LegPower sum;
    for (const Draw& draw : draws(in.plan, breaker->panel, as, system, in.tables)) {
      if (draw.circuit != circuit->id) continue;
      known = known && draw.known;
      sum += draw.high;
    }
    const double entered =
        std::max(legCurrent(sum, system, Leg::l1), legCurrent(sum, system, Leg::l2)).count();
    if (!known) continue;
    for (const ClampReading& reading : circuit->readings) {
      if (!reading.conductor.is(ReadConductor::line)) continue;
      if (reading.current.count() <= entered * kMoreThanEntered + kClampShows.count()) continue;
      out.add("reading.more", Severity::checkOnSite, kClamp, say(kMorePlain, nameOf(*circuit)),
              say(kMoreTrade, nameOf(*circuit), amperes(reading.current.count()), amperes(entered)),
              {at(*circuit)});
      break;
    }
  }
}

void unanswered(const ReviewInput& in, Findings& out) {
  for (const AuthorityAnswer& asked : in.plan.site->answers) {
    if (!asked.answer.empty() || asked.question.empty()) continue;
    out.add("authority.open", Severity::checkOnSite, {}, say(kUnansweredPlain, asked.question),
            say(kUnansweredTrade, asked.question), {at(RecordKind::site)});
  }
}

constexpr Rule kRules[] = {neutralReadings, lineReadings, unanswered};

}  // namespace

std::span<const Rule> readingRules() { return kRules; }

}  // namespace stayalight::reviewing
