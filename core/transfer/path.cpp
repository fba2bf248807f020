#include <algorithm>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

bool inverterHasInput(const Plan& plan) {
  return std::any_of(plan.breakers.begin(), plan.breakers.end(), [](const Shared<Breaker>& breaker) {
    return breaker->feeds.is(Feeds::inverterInput) && stands(*breaker, Reading::planned);
  });
}

}  // namespace

std::vector<Segment> segments(const Plan& plan) {
  switch (plan.transfer->arrangement.valueOr(Arrangement::none)) {
    case Arrangement::none:
      break;
    case Arrangement::manualSwitch:
    case Arrangement::automaticSwitch:
      if (inverterHasInput(plan)) {
        return {Segment::mainToSwitch, Segment::mainToInverter, Segment::inverterToSwitch,
                Segment::switchToBackup};
      }
      return {Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup};
    case Arrangement::inverterPassThrough:
      return {Segment::mainToInverter, Segment::inverterToBackup};
  }
  return {};
}

const FeederRun* runOf(const Plan& plan, Segment segment) {
  for (const auto& run : plan.runs) {
    if (run->segment.is(segment)) return &*run;
  }
  return nullptr;
}

bool carries(const Plan& plan, Segment segment, Mode mode) {
  const std::vector<Segment> there = segments(plan);
  if (std::find(there.begin(), there.end(), segment) == there.end()) return false;
  switch (segment) {
    case Segment::mainToSwitch:
      return mode == Mode::ordinary;
    case Segment::inverterToSwitch:
      return mode == Mode::outage;
    case Segment::switchToBackup:
    case Segment::inverterToBackup:
      return mode != Mode::off;
    case Segment::mainToInverter:
      // Beside a switch it charges the battery in whatever position the switch stands while the utility is
      // there.
      return mode == Mode::ordinary ||
             (mode == Mode::off && !plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
  }
  return false;
}

}  // namespace stayalight
