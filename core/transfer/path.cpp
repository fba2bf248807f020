#include <algorithm>

#include "core/transfer/transfer.h"

namespace stayalight {
namespace {

bool inverterHasInput(const Plan& plan) {
  return std::any_of(plan.breakers.begin(), plan.breakers.end(), [](const Shared<Breaker>& breaker) {
    return breaker->feeds.is(Feeds::inverterInput) && stands(*breaker, Reading::planned);
  });
}

std::vector<Segment> ofArrangement(const Plan& plan) {
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

}  // namespace

std::vector<Segment> segments(const Plan& plan) {
  std::vector<Segment> there = ofArrangement(plan);
  const std::vector<Mode> all = modes(plan);
  const auto has = [&](Mode mode) { return std::find(all.begin(), all.end(), mode) != all.end(); };
  if (has(Mode::bypass)) there.push_back(Segment::bypass);
  if (has(Mode::generator)) {
    const Choice<GeneratorPoint>& comesIn = plan.generator->comesIn;
    // Ahead of the piece that its current goes on through.
    const auto next = std::find_if(there.begin(), there.end(), [&](Segment segment) {
      if (comesIn.is(GeneratorPoint::transfer)) return segment == Segment::switchToBackup;
      return comesIn.is(GeneratorPoint::inverterInput) &&
             (segment == Segment::inverterToSwitch || segment == Segment::inverterToBackup);
    });
    there.insert(next, Segment::generatorInlet);
  }
  return there;
}

std::vector<Mode> modes(const Plan& plan) {
  const Transfer& transfer = *plan.transfer;
  std::vector<Mode> there{Mode::ordinary};
  // Without an arrangement there is no way an outage is bridged.
  if (!transfer.arrangement.is(Arrangement::none)) there.push_back(Mode::outage);
  const bool around = transfer.arrangement.is(Arrangement::automaticSwitch) ||
                      transfer.arrangement.is(Arrangement::inverterPassThrough);
  if (around && transfer.bypass.is(Answer::yes)) there.push_back(Mode::bypass);
  if (!plan.generator->comesIn.is(GeneratorPoint::none)) there.push_back(Mode::generator);
  return there;
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
  const GeneratorPoint comesIn = plan.generator->comesIn.valueOr(GeneratorPoint::none);
  const bool running = mode == Mode::generator;
  switch (segment) {
    case Segment::mainToSwitch:
      return mode == Mode::ordinary || (running && comesIn == GeneratorPoint::mainPanel);
    case Segment::inverterToSwitch:
      return mode == Mode::outage || (running && comesIn == GeneratorPoint::inverterInput);
    case Segment::switchToBackup:
      return mode != Mode::off && mode != Mode::bypass;
    case Segment::inverterToBackup:
      return mode == Mode::ordinary || mode == Mode::outage ||
             (running && comesIn != GeneratorPoint::transfer);
    case Segment::mainToInverter:
      // Beside a switch it charges the battery in whatever position the switch stands while the utility is
      // there.
      if (running) return comesIn == GeneratorPoint::mainPanel;
      return mode == Mode::ordinary ||
             (mode != Mode::outage && !plan.transfer->arrangement.is(Arrangement::inverterPassThrough));
    case Segment::bypass:
      return mode == Mode::bypass;
    case Segment::generatorInlet:
      return running;
  }
  return false;
}

}  // namespace stayalight
