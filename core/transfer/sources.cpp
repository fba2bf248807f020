#include <algorithm>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

bool isSource(const Breaker& breaker) {
  return breaker.feeds.is(Feeds::inverterOutput) || breaker.feeds.is(Feeds::solar) ||
         breaker.feeds.is(Feeds::generator) || breaker.feeds.is(Feeds::utility);
}

/// Is the source behind this breaker kept from closing onto the bus together with another?
Answer keptApart(const Plan& plan, const Panel& panel, const Breaker& breaker) {
  const Answer own = breaker.interlocked.valueOr(Answer::unknown);
  // A listed interactive solar inverter lets go by itself (NFPA 70, 705.40); that it is one is asked, no
  // interlock.
  if (breaker.feeds.is(Feeds::solar)) return own == Answer::yes ? Answer::yes : Answer::unknown;
  if (own != Answer::unknown) return own;
  // The answer about the transfer speaks of the utility and the inverter, and of all that meets on the
  // backup's bus.
  const bool spokenOf = panel.role.is(PanelRole::backup) || breaker.feeds.is(Feeds::inverterOutput) ||
                        breaker.feeds.is(Feeds::utility);
  switch (plan.transfer->listing.valueOr(TransferListing::unknown)) {
    case TransferListing::listedInterlock:
      return Answer::yes;
    case TransferListing::listedTransferEquipment:
      return spokenOf ? Answer::yes : Answer::unknown;
    case TransferListing::none:
      return spokenOf ? Answer::no : Answer::unknown;
    case TransferListing::unknown:
      break;
  }
  return Answer::unknown;
}

}  // namespace

bool fedBackwards(const Breaker& breaker) { return breaker.backFed.is(Answer::yes) || isSource(breaker); }

std::vector<BusSources> busSources(const Plan& plan) {
  const bool passThrough = plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  const bool arranged = !plan.transfer->arrangement.is(Arrangement::none);
  std::vector<BusSources> found;
  for (const auto& panel : plan.panels) {
    BusSources bus;
    bus.panel = panel->id;
    const bool backup = panel->role.is(PanelRole::backup);
    bool landing =
        false;  // the ordinary feed comes in through a breaker of the list, not the panel's main or lugs
    std::int32_t feeders = 0;
    std::int32_t loose = 0;  // sources with nothing that is known to keep them apart
    bool surelyLoose = false;
    const auto add = [&](const Breaker& breaker) {
      bus.breakers.push_back(breaker.id);
      ++bus.sources;
      const Answer apart = keptApart(plan, *panel, breaker);
      if (apart != Answer::yes) ++loose;
      if (apart == Answer::no) surelyLoose = true;
    };
    for (const auto& breaker : plan.breakers) {
      if (!stands(*breaker, Reading::planned)) continue;
      if (breaker->panel == panel->id && isSource(*breaker)) {
        landing = landing || breaker->feeds.is(Feeds::utility) ||
                  (backup && passThrough && breaker->feeds.is(Feeds::inverterOutput));
        add(*breaker);
      } else if (breaker->feeds.is(Feeds::feeder) && breaker->feedsPanel == panel->id && ++feeders > 1) {
        add(*breaker);
      }
    }
    const bool supplied =
        panel->role.is(PanelRole::main) || panel->fedFrom.valid() || feeders > 0 || (backup && arranged);
    if (supplied && !landing) {
      ++bus.sources;
      ++loose;
    }
    if (bus.sources < 2) continue;
    // One source alone may be without: all others are then kept from meeting it.
    bus.keptApart = loose <= 1 ? Answer::yes : surelyLoose ? Answer::no : Answer::unknown;
    found.push_back(std::move(bus));
  }
  return found;
}

}  // namespace stayalight
