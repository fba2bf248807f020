#include "core/transfer/breaker_in_plan.h"

namespace stayalight {

std::optional<RatingAmperes> breakerInPlan(const Plan& plan, Segment segment) {
  const Panel* const backup = backupPanel(plan);
  std::optional<RatingAmperes> largest;
  for (const auto& breaker : plan.breakers) {
    if (!stands(*breaker, Reading::planned)) continue;
    const bool feedsBackup =
        breaker->feeds.is(Feeds::feeder) && backup != nullptr && breaker->feedsPanel == backup->id;
    bool match = false;
    switch (segment) {
      case Segment::mainToSwitch:
        match = feedsBackup;
        break;
      case Segment::mainToInverter:
        match = breaker->feeds.is(Feeds::inverterInput) ||
                (feedsBackup && plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
        break;
      case Segment::inverterToSwitch:
      case Segment::inverterToBackup:
        match = breaker->feeds.is(Feeds::inverterOutput);
        break;
      case Segment::generatorInlet:
        match = breaker->feeds.is(Feeds::generator) && !plan.generator->device;
        break;
      case Segment::switchToBackup:
      case Segment::bypass:
        break;
    }
    if (match && (!largest || breaker->rating > *largest)) largest = breaker->rating;
  }
  return largest;
}

}  // namespace stayalight
