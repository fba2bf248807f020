// Buses with a second source on them, and the cable of the battery.

#include <algorithm>

#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kRules705[] = {RuleId{"bus.anywhere"}, RuleId{"bus.opposite_ends"}, RuleId{"bus.sum"}};
constexpr RuleId kProtected{"conductor.protected"};
constexpr RuleId kEss{"ess.conductor"};
constexpr RuleId kListing{"source.label_device"};

constexpr MessageId kOverPlain{"review.bus.over.plain"};
constexpr MessageId kOverTrade{"review.bus.over.trade"};
constexpr MessageId kChosenPlain{"review.bus.chosen.plain"};
constexpr MessageId kChosenTrade{"review.bus.chosen.trade"};
constexpr MessageId kOutputPlain{"review.bus.output_unknown.plain"};
constexpr MessageId kOutputTrade{"review.bus.output_unknown.trade"};
constexpr MessageId kChoosePlain{"review.bus.choose.plain"};
constexpr MessageId kChooseTrade{"review.bus.choose.trade"};
constexpr MessageId kChooseFix[] = {MessageId{"review.bus.fix_anywhere"}, MessageId{"review.bus.fix_ends"},
                                    MessageId{"review.bus.fix_sum"}};
constexpr MessageId kUnknownPlain{"review.bus.unknown.plain"};
constexpr MessageId kUnknownTrade{"review.bus.unknown.trade"};
constexpr MessageId kDcPlain{"review.dc.over.plain"};
constexpr MessageId kDcTrade{"review.dc.over.trade"};
constexpr MessageId kDcUnknownPlain{"review.dc.unknown.plain"};
constexpr MessageId kDcUnknownTrade{"review.dc.unknown.trade"};
constexpr MessageId kLugsPlain{"review.dc.lugs.plain"};
constexpr MessageId kLugsTrade{"review.dc.lugs.trade"};
constexpr MessageId kInstructionsPlain{"review.dc.instructions.plain"};
constexpr MessageId kInstructionsTrade{"review.dc.instructions.trade"};

Figure whole(AcAmperes value) { return {value.count(), "A", 0}; }

void buses(const ReviewInput& in, Findings& out) {
  if (in.buses == nullptr) return;
  for (const BusFigures& bus : *in.buses) {
    const Panel& panel = *find(in.plan, bus.panel);
    std::vector<EntityRef> places{at(panel)};
    for (const BreakerId id : bus.sources) places.push_back({RecordKind::breaker, id.number});
    const auto& anywhere = bus.options[0];
    if (!anywhere.most || !anywhere.sum) {
      out.add("bus.unknown", Severity::checkOnSite, kRules705[0], say(kUnknownPlain, nameOf(panel)),
              say(kUnknownTrade, nameOf(panel)), places);
      continue;
    }
    const Figure sum = whole(*anywhere.sum), most = whole(*anywhere.most);
    if (bus.chosen != BusOption::notChosen) {
      const auto index = static_cast<std::size_t>(bus.chosen) - 1;
      const BusOptionFigure& chosen = bus.options[index];
      if (chosen.verdict == Verdict::over) {
        out.add("bus.chosen", Severity::mustFix, kRules705[index], say(kChosenPlain, nameOf(panel)),
                say(kChosenTrade, nameOf(panel), whole(chosen.sum.value_or(AcAmperes())),
                    whole(chosen.most.value_or(AcAmperes()))),
                places);
      } else if (chosen.verdict == Verdict::notKnown && chosen.sum && chosen.most) {
        out.add("bus.output_unknown", Severity::checkOnSite, kRules705[index],
                say(kOutputPlain, nameOf(panel)),
                say(kOutputTrade, nameOf(panel), whole(*chosen.sum), whole(*chosen.most)), places);
      }
      continue;
    }
    if (bus.verdict == Verdict::over) {
      out.add("bus.over", Severity::mustFix, kRules705[0], say(kOverPlain, nameOf(panel)),
              say(kOverTrade, nameOf(panel), sum, most), places);
      continue;
    }
    Finding& finding =
        out.add("bus.choose", Severity::checkOnSite, kRules705[0], say(kChoosePlain, nameOf(panel)),
                say(kChooseTrade, nameOf(panel), sum, most), places);
    for (std::size_t i = 0; i < bus.options.size(); ++i) {
      if (bus.options[i].verdict != Verdict::within) continue;
      out.offer(
          finding,
          fix::SetField{
              at(panel), "bus_option",
              std::string(ChoiceWords<BusOption>::words[static_cast<std::size_t>(bus.options[i].option)])},
          say(kChooseFix[i]));
    }
  }
}

void dcCable(const ReviewInput& in, Findings& out) {
  if (in.dcCable == nullptr) return;
  const DcCableFigures& figures = *in.dcCable;
  const std::vector<EntityRef> places{at(RecordKind::dcCable)};
  const DcCable& cable = *in.plan.dcCable;
  const bool lugs = cable.fineStranded.is(Answer::yes) && cable.lugsListed.is(Answer::no);
  if (lugs) out.add("dc.lugs", Severity::mustFix, kListing, say(kLugsPlain), say(kLugsTrade), places);
  if (figures.belowInstructions || figures.aboveInstructions) {
    out.add("dc.instructions", Severity::mustFix, kListing, say(kInstructionsPlain),
            say(kInstructionsTrade, figures.over), places);
  } else if (figures.over.size() > (lugs ? 1u : 0u)) {
    const ConductorChoice& wire = figures.conductor;
    const RuleId rule = wire.notProtected                                         ? kProtected
                        : wire.tooSmall || (!wire.size && !wire.rule.key.empty()) ? wire.rule
                                                                                  : kEss;
    out.add("dc.over", Severity::mustFix, rule, say(kDcPlain), say(kDcTrade, figures.over), places);
  } else if (!figures.notKnown.empty()) {
    out.add("dc.unknown", Severity::checkOnSite, kEss, say(kDcUnknownPlain),
            say(kDcUnknownTrade, figures.notKnown), places);
  }
}

constexpr Rule kRules[] = {buses, dcCable};

}  // namespace

std::span<const Rule> busRules() { return kRules; }

}  // namespace stayalight::reviewing
