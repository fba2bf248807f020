#include "core/transfer/breaker_in_plan.h"

#include "core/panel/clearing.h"

namespace stayalight {

bool standsFor(const Plan& plan, const Breaker& breaker, Segment segment) {
  if (!stands(breaker, Reading::planned)) return false;
  const Panel* const backup = backupPanel(plan);
  const bool feedsBackup =
      breaker.feeds.is(Feeds::feeder) && backup != nullptr && breaker.feedsPanel == backup->id;
  switch (segment) {
    case Segment::mainToSwitch:
      return feedsBackup;
    case Segment::mainToInverter:
      return breaker.feeds.is(Feeds::inverterInput) ||
             (feedsBackup && plan.transfer->arrangement.is(Arrangement::inverterPassThrough) &&
              !feedsBypass(plan, breaker));
    case Segment::inverterToSwitch:
    case Segment::inverterToBackup:
      return breaker.feeds.is(Feeds::inverterOutput);
    case Segment::generatorInlet:
      return breaker.feeds.is(Feeds::generator) && !plan.generator->device;
    case Segment::bypass:
      return feedsBypass(plan, breaker);
    case Segment::switchToBackup:
      return false;
  }
  return false;
}

std::optional<RatingAmperes> breakerInPlan(const Plan& plan, Segment segment) {
  std::optional<RatingAmperes> largest;
  for (const auto& breaker : plan.breakers) {
    if (standsFor(plan, *breaker, segment) && (!largest || breaker->rating > *largest))
      largest = breaker->rating;
  }
  return largest;
}

}  // namespace stayalight
