// The code that holds at the site, and the fault current there.

#include <algorithm>

#include "core/code/edition.h"
#include "core/review/rules.h"

namespace stayalight::reviewing {
namespace {

constexpr RuleId kFaultCurrent{"fault.current"};

constexpr MessageId kCanadaPlain{"review.site.canada.plain"};
constexpr MessageId kCanadaTrade{"review.site.canada.trade"};
constexpr MessageId kEditionPlain{"review.site.edition.plain"};
constexpr MessageId kEditionTrade{"review.site.edition.trade"};
constexpr MessageId kEditionWordPlain{"review.site.edition_word.plain"};
constexpr MessageId kEditionWordTrade{"review.site.edition_word.trade"};
constexpr MessageId kAmendmentsPlain{"review.site.amendments.plain"};
constexpr MessageId kAmendmentsTrade{"review.site.amendments.trade"};
constexpr MessageId kFaultPlain{"review.site.fault_unknown.plain"};
constexpr MessageId kFaultTrade{"review.site.fault_unknown.trade"};
constexpr MessageId kFaultOverPlain{"review.site.fault_over.plain"};
constexpr MessageId kFaultOverTrade{"review.site.fault_over.trade"};
constexpr MessageId kRatingUnknownPlain{"review.site.interrupting_unknown.plain"};
constexpr MessageId kRatingUnknownTrade{"review.site.interrupting_unknown.trade"};

void code(const ReviewInput& in, Findings& out) {
  const Site& site = *in.plan.site;
  const std::vector<EntityRef> place{at(RecordKind::site)};
  if (canadian(in.plan)) {
    out.add("site.canada", Severity::checkOnSite, {}, say(kCanadaPlain), say(kCanadaTrade), place).basis =
        Basis::local;
    return;
  }
  if (!site.edition.known()) {
    out.add("site.edition_word", Severity::checkOnSite, {}, say(kEditionWordPlain),
            say(kEditionWordTrade, std::string(site.edition.word()), std::string(name(in.edition))), place)
        .basis = Basis::local;
  } else if (in.edition == Edition::y2026) {
    out.add("site.edition", Severity::checkOnSite, {}, say(kEditionPlain), say(kEditionTrade), place).basis =
        Basis::local;
  }
  if (site.amendments.empty()) {
    out.add("site.amendments", Severity::checkOnSite, {}, say(kAmendmentsPlain),
            say(kAmendmentsTrade, std::string(name(in.edition))), place)
        .basis = Basis::local;
  }
}

/// What the breaker, or the marking of its panel, is good for.
std::optional<AcAmperes> interrupts(const Plan& plan, const Breaker& breaker) {
  if (breaker.interruptingRating) return breaker.interruptingRating;
  const Panel* panel = find(plan, breaker.panel);
  return panel != nullptr ? panel->interruptingRating : std::nullopt;
}

void faultCurrent(const ReviewInput& in, Findings& out) {
  const Panel* backup = backupPanel(in.plan);
  if (backup == nullptr || occupants(in.plan, backup->id, Reading::planned).empty()) return;
  const std::optional<AcAmperes> available = in.plan.site->availableFaultCurrent;
  if (!open(in, "site.fault_current_A").empty()) {
    out.add("site.fault_unknown", Severity::checkOnSite, kFaultCurrent, say(kFaultPlain), say(kFaultTrade),
            {at(RecordKind::site)});
  }
  if (!available) return;
  std::vector<std::string> unknown;
  std::vector<EntityRef> places;
  for (const auto& breaker : in.plan.breakers) {
    const Panel* panel = find(in.plan, breaker->panel);
    if (panel == nullptr || !stands(*breaker, Reading::planned)) continue;
    const std::optional<AcAmperes> rating = interrupts(in.plan, *breaker);
    if (rating && *rating < *available) {
      out.add("site.fault_over", Severity::mustFix, kFaultCurrent,
              say(kFaultOverPlain, nameOf(*panel), spacesOf(in.plan, *breaker)),
              say(kFaultOverTrade, nameOf(*panel), spacesOf(in.plan, *breaker),
                  Figure{available->count(), "A", 0}, Figure{rating->count(), "A", 0}),
              {at(*breaker)});
    } else if (!rating && breaker->stage.is(Stage::fresh)) {
      unknown.push_back(spacesOf(in.plan, *breaker));
      places.push_back(at(*breaker));
    }
  }
  if (!unknown.empty()) {
    out.add("site.interrupting_unknown", Severity::checkOnSite, kFaultCurrent, say(kRatingUnknownPlain),
            say(kRatingUnknownTrade, listed(unknown), Figure{available->count(), "A", 0}), places);
  }
}

constexpr Rule kRules[] = {code, faultCurrent};

}  // namespace

std::span<const Rule> siteRules() { return kRules; }

}  // namespace stayalight::reviewing
