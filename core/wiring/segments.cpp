// Device, conductors and drop of all segments, and what they are held against.

#include <algorithm>

#include "core/transfer/breaker_in_plan.h"
#include "core/wiring/device.h"
#include "core/wiring/drop.h"
#include "core/wiring/grounding.h"
#include "core/wiring/raceway.h"
#include "core/wiring/record.h"

namespace stayalight {
namespace {

using namespace wiring;

constexpr MessageId kLabel{"wiring.maximum.label"};
constexpr MessageId kBus{"wiring.maximum.bus"};
constexpr MessageId kSwitch{"wiring.maximum.switch"};
constexpr MessageId kInput{"wiring.maximum.input"};
constexpr MessageId kRelay{"wiring.maximum.relay"};
constexpr MessageId kInlet{"wiring.maximum.inlet"};
constexpr MessageId kFollows{"wiring.device.follows"};
constexpr MessageId kFollowsUnknown{"wiring.device.follows_unknown"};

constexpr MessageId kMainToSwitch{"wiring.segment.main_to_switch"};
constexpr MessageId kInverterToSwitch{"wiring.segment.inverter_to_switch"};
constexpr MessageId kSwitchToBackup{"wiring.segment.switch_to_backup"};
constexpr MessageId kMainToInverter{"wiring.segment.main_to_inverter"};
constexpr MessageId kInverterToBackup{"wiring.segment.inverter_to_backup"};
constexpr MessageId kBypass{"wiring.segment.bypass"};
constexpr MessageId kGeneratorInlet{"wiring.segment.generator_inlet"};

constexpr MessageId kNoRun{"wiring.missing.run"};
constexpr MessageId kNoDevice{"wiring.missing.device"};
constexpr MessageId kNoConductor{"wiring.missing.conductor"};
constexpr MessageId kNoLabelMaximum{"wiring.missing.label_maximum"};
constexpr MessageId kNoRelayRating{"wiring.missing.relay_rating"};
constexpr MessageId kNoSwitchRating{"wiring.missing.switch_rating"};
constexpr MessageId kRatingNotRead{"wiring.missing.rating_read"};
constexpr MessageId kNoBusRating{"wiring.missing.bus_rating"};
constexpr MessageId kNoInputRating{"wiring.missing.input_rating"};

constexpr MessageId kMinimumAboveMaximum{"wiring.over.minimum_above_maximum"};
constexpr MessageId kDeviceBelow{"wiring.over.device_below_minimum"};
constexpr MessageId kDeviceAbove{"wiring.over.device_above_maximum"};
constexpr MessageId kPanelMain{"wiring.over.panel_main"};
constexpr MessageId kConductorSmall{"wiring.over.conductor_too_small"};
constexpr MessageId kNotProtected{"wiring.over.not_protected"};
constexpr MessageId kNeutralSmall{"wiring.over.neutral"};
constexpr MessageId kGroundSmall{"wiring.over.ground"};
constexpr MessageId kNothingCarries{"wiring.over.no_conductor"};
constexpr MessageId kNoRatingCarries{"wiring.over.no_rating"};

bool endsAtBackup(Segment segment) {
  return segment == Segment::switchToBackup || segment == Segment::inverterToBackup ||
         segment == Segment::bypass;
}
bool hasOwnDevice(Segment segment) { return segment != Segment::switchToBackup; }

std::optional<RatingAmperes> ofAllUnits(const std::optional<RatingAmperes>& rating, const Plan& plan) {
  if (!rating) return std::nullopt;
  return RatingAmperes(rating->count() * std::max(1, plan.inverter->units));
}

struct Limits {
  std::vector<DeviceLimit> known;
  std::vector<Message> missing;
  std::optional<DeviceLimit> bus;  ///< of the backup subpanel, where no main breaker of its own protects it
  void add(const std::optional<RatingAmperes>& rating, Message from, MessageId whenMissing) {
    if (rating) {
      known.push_back(DeviceLimit{*rating, std::move(from)});
    } else {
      missing.push_back(say(whenMissing));
    }
  }
};

// Ratings that the device of a segment may not exceed: 408.36, the listing of switch and inverter, the
// inverter's label.
Limits limitsOf(const Plan& plan, const SegmentLoad& load) {
  Limits limits;
  const bool passThrough = plan.transfer->arrangement.is(Arrangement::inverterPassThrough);
  const bool inverterOutput =
      load.segment == Segment::inverterToSwitch || load.segment == Segment::inverterToBackup;
  if (inverterOutput) limits.add(load.labelMaximum, say(kLabel), kNoLabelMaximum);
  if (load.segment == Segment::mainToInverter) {
    limits.add(ofAllUnits(plan.inverter->acInput, plan), say(kInput), kNoInputRating);
    if (passThrough && plan.transfer->rating)
      limits.known.push_back(DeviceLimit{*plan.transfer->rating, say(kRelay)});
    if (passThrough) limits.add(ofAllUnits(plan.inverter->passThrough, plan), say(kRelay), kNoRelayRating);
    return limits;
  }
  if (load.segment == Segment::generatorInlet) {
    const Generator& generator = *plan.generator;
    if (generator.inlet) limits.known.push_back(DeviceLimit{*generator.inlet, say(kInlet)});
    if (generator.comesIn.is(GeneratorPoint::transfer) && plan.transfer->rating)
      limits.known.push_back(DeviceLimit{*plan.transfer->rating, say(kSwitch)});
    if (generator.comesIn.is(GeneratorPoint::inverterInput))
      limits.add(ofAllUnits(plan.inverter->acInput, plan), say(kInput), kNoInputRating);
    return limits;
  }
  if (!passThrough && load.segment != Segment::bypass)
    limits.add(plan.transfer->rating, say(kSwitch), kNoSwitchRating);
  // A panel with a main breaker of its own is protected by it, whatever feeds it.
  const Panel* const backup = backupPanel(plan);
  if (backup != nullptr && !backup->mainBreaker) {
    if (backup->busRating) {
      limits.bus = DeviceLimit{*backup->busRating, say(kBus, backup->name), RuleId{"panel.protection"}};
      limits.known.push_back(*limits.bus);
    } else {
      limits.missing.push_back(say(kNoBusRating));
    }
  }
  return limits;
}

DeviceChoice deviceOf(const Plan& plan, const SegmentLoad& load, const FeederRun* run, const Limits& limits,
                      Edition edition, Working* working, const Tables& tables) {
  DeviceQuestion question;
  question.continuous = load.continuous;
  question.other = load.other;
  question.continuousStep = load.continuousStep;
  question.otherStep = load.otherStep;
  if (run != nullptr) question.fixed = run->fixedDevice;
  if (load.segment == Segment::generatorInlet && !question.fixed) question.fixed = plan.generator->device;
  question.inPlan = breakerInPlan(plan, load.segment);
  question.limits = limits.known;
  return chooseDevice(question, edition, working, tables);
}

// After the switch nothing of its own protects the wire, unless a device is entered there: the larger one
// ahead does.
void followAhead(DeviceChoice& device, const std::optional<RatingAmperes>& ahead) {
  device.rating = ahead;
  device.minimumAboveMaximum = false;
  device.aboveMaximum = ahead && device.maximum && *ahead > *device.maximum;
  device.governs = ahead ? say(kFollows, amperes(*ahead)) : say(kFollowsUnknown);
  device.rule = RuleId{"conductor.protected"};
  device.next.reset();
}

void judge(SegmentFigures& figures, const Limits& limits) {
  const DeviceChoice& device = figures.device;
  const ConductorChoice& conductor = figures.conductor;
  const AcAmperes minimum = device.minimum.value_or(AcAmperes());
  const RatingAmperes maximum = device.maximum.value_or(RatingAmperes());
  const auto standing = largestRating(device).value_or(RatingAmperes());
  if (device.minimumAboveMaximum) {
    figures.over.push_back(
        say(kMinimumAboveMaximum, amperes(minimum), amperes(maximum), std::vector{device.maximumFrom}));
  }
  if (device.belowMinimum) {
    const auto smallest = device.fixed && device.inPlan ? std::min(*device.rating, *device.inPlan)
                          : device.fixed                ? *device.rating
                                                        : device.inPlan.value_or(RatingAmperes());
    figures.over.push_back(say(kDeviceBelow, amperes(smallest), amperes(minimum)));
  }
  if (device.aboveMaximum) {
    figures.over.push_back(
        say(kDeviceAbove, amperes(standing), amperes(maximum), std::vector{device.maximumFrom}));
  }
  if (device.aheadOfBus && limits.bus) {
    figures.over.push_back(say(kDeviceAbove, amperes(*device.aheadOfBus), amperes(limits.bus->rating),
                               std::vector{limits.bus->from}));
  }
  if (device.panelMainTooSmall) figures.over.push_back(say(kPanelMain, amperes(minimum)));
  if (conductor.tooSmall) figures.over.push_back(say(kConductorSmall, std::vector{conductor.governs}));
  if (conductor.notProtected && conductor.size) {
    figures.over.push_back(
        say(kNotProtected, conductorName(*conductor.size, conductor.metal), amperes(*conductor.device)));
  }
  if (figures.neutralTooSmall)
    figures.over.push_back(say(kNeutralSmall, std::vector{figures.neutralGoverns}));
  if (figures.groundTooSmall) figures.over.push_back(say(kGroundSmall, std::vector{figures.groundGoverns}));
  if (minimum.count() > 0.0 && !device.rating && hasOwnDevice(figures.segment)) {
    figures.over.push_back(say(kNoRatingCarries, amperes(minimum)));
  }
  if (!conductor.size && (figures.load.operating || conductor.device)) {
    figures.over.push_back(say(kNothingCarries, std::vector{conductor.governs}));
  }

  if (!figures.entered) figures.notKnown.push_back(say(kNoRun));
  figures.notKnown.insert(figures.notKnown.end(), figures.load.missing.begin(), figures.load.missing.end());
  figures.notKnown.insert(figures.notKnown.end(), limits.missing.begin(), limits.missing.end());
  if (!device.rating && minimum.count() <= 0.0) figures.notKnown.push_back(say(kNoDevice));
  if (!conductor.size && figures.over.empty()) figures.notKnown.push_back(say(kNoConductor));

  figures.verdict = !figures.over.empty()                                 ? Verdict::over
                    : !figures.notKnown.empty() || !figures.load.complete ? Verdict::notKnown
                                                                          : Verdict::within;
}

}  // namespace

Message segmentName(Segment segment) {
  switch (segment) {
    case Segment::mainToSwitch:
      break;
    case Segment::inverterToSwitch:
      return say(kInverterToSwitch);
    case Segment::switchToBackup:
      return say(kSwitchToBackup);
    case Segment::mainToInverter:
      return say(kMainToInverter);
    case Segment::inverterToBackup:
      return say(kInverterToBackup);
    case Segment::bypass:
      return say(kBypass);
    case Segment::generatorInlet:
      return say(kGeneratorInlet);
  }
  return say(kMainToSwitch);
}

std::vector<SegmentFigures> segmentFigures(const Plan& plan, const std::vector<SegmentLoad>& loads,
                                           Edition edition, Working* working, const Tables& tables) {
  std::vector<SegmentFigures> all;
  if (!plan.site->country.is(Country::unitedStates)) return all;
  const Panel* const backup = backupPanel(plan);

  std::optional<RatingAmperes> ahead;    // the largest device so far, for the wire that follows
  std::optional<RatingAmperes> utility;  // the one between the main panel and a switch
  for (const SegmentLoad& load : loads) {
    SegmentFigures figures;
    figures.segment = load.segment;
    figures.load = load;
    const WorkingOf about(working, workingSubject(load.segment));
    const FeederRun* const run = runOf(plan, load.segment);
    figures.entered = run != nullptr;
    const bool inverterSide =
        load.segment == Segment::inverterToSwitch || load.segment == Segment::inverterToBackup;
    const SystemVoltages system = voltages(plan,
                                           inverterSide                              ? Mode::outage
                                           : load.segment == Segment::generatorInlet ? Mode::generator
                                                                                     : Mode::ordinary,
                                           tables);
    const bool wye = system.wye || voltages(plan, Mode::ordinary, tables).wye;
    const Limits limits = limitsOf(plan, load);

    figures.device = deviceOf(plan, load, run, limits, edition, working, tables);
    std::optional<RatingAmperes> protecting = largestRating(figures.device);
    if (endsAtBackup(load.segment)) {
      // Around an automatic switch the same device stands ahead of both ways.
      figures.load.atLeast = load.segment == Segment::bypass ? utility : load.atLeast ? load.atLeast : ahead;
      if (!hasOwnDevice(load.segment) && !figures.device.fixed) {
        followAhead(figures.device, figures.load.atLeast);
        protecting = figures.load.atLeast;
      } else if (hasOwnDevice(load.segment) && figures.load.atLeast) {
        // With the relay closed the device at the utility's end stands ahead of this wire too.
        protecting = protecting ? std::max(*protecting, *figures.load.atLeast) : figures.load.atLeast;
        const bool outputStands = figures.device.fixed || figures.device.inPlan;
        if (load.segment == Segment::inverterToBackup && !outputStands && limits.bus &&
            *figures.load.atLeast > limits.bus->rating)
          figures.device.aheadOfBus = figures.load.atLeast;
      }
      if (backup != nullptr && backup->mainBreaker && figures.device.minimum &&
          backup->mainBreaker->count() < figures.device.minimum->count() * (1.0 - 1e-9)) {
        figures.device.panelMainTooSmall = true;
      }
    } else if (load.segment == Segment::generatorInlet &&
               plan.generator->comesIn.is(GeneratorPoint::mainPanel)) {
      // The main panel's own breakers stand ahead of what follows.
    } else if (load.segment != Segment::mainToInverter ||
               plan.transfer->arrangement.is(Arrangement::inverterPassThrough)) {
      if (protecting && (!ahead || *protecting > *ahead)) ahead = protecting;
      if (load.segment == Segment::mainToSwitch) utility = protecting;
    }

    ConductorQuestion conductor;
    conductor.conditions = runConditions(run, wye);
    if (run != nullptr && run->inRaceway.valid()) {
      conductor.conditions.currentCarrying =
          std::max(carryingCount(plan, run->inRaceway, tables).most(), wye ? 3 : 2);
      // All conductors of a raceway lie in one ambient.
      if (const Raceway* const raceway = find(plan, run->inRaceway))
        conductor.conditions.ambient = std::max(conductor.conditions.ambient, raceway->ambient);
    }
    conductor.terminalLoad = figures.device.minimum;
    conductor.load = load.operating;
    conductor.device = protecting;
    if (run != nullptr) conductor.fixed = run->fixedConductor;
    figures.conductor = chooseConductor(conductor, edition, working, tables);

    NeutralQuestion neutral;
    neutral.load = load.neutral;
    neutral.operating = load.neutralOperating;
    neutral.wye = wye;
    // One 120 V source anywhere on its way: the neutral carries what both legs do.
    neutral.single = system.single;
    for (const Mode mode : modes(plan)) {
      neutral.single =
          neutral.single || (carries(plan, load.segment, mode) && voltages(plan, mode, tables).single);
    }
    neutral.device = protecting;
    neutral.conductor = figures.conductor.size;
    neutral.conditions = conductor.conditions;
    if (run != nullptr) neutral.fixed = run->fixedNeutral;
    SizeAndReason chosen = neutralFor(neutral, edition, working, tables);
    figures.neutral = chosen.size;
    figures.neutralTooSmall = chosen.tooSmall;
    figures.neutralGoverns = std::move(chosen.governs);
    figures.neutralRule = chosen.rule;

    GroundingQuestion ground;
    ground.device = protecting;
    ground.conductor = figures.conductor.size;
    ground.required = figures.conductor.required;
    ground.metal = figures.conductor.metal;
    if (run != nullptr) ground.fixed = run->fixedGround;
    chosen = groundingConductorFor(ground, edition, working, tables);
    figures.ground = chosen.size;
    figures.groundTooSmall = chosen.tooSmall;
    figures.groundGoverns = std::move(chosen.governs);
    figures.groundRule = chosen.rule;

    if (run != nullptr && run->length.inMicrometres() > 0 && load.operating && figures.conductor.size &&
        figures.neutral) {
      figures.drop = runDrop(load.legCurrent, *figures.conductor.size, *figures.neutral, conductor.conditions,
                             system, working, tables);
    }
    for (const auto& breaker : plan.breakers) {
      if (standsFor(plan, *breaker, load.segment) && breaker->ratingRead.is(Answer::no))
        figures.notKnown.push_back(say(kRatingNotRead, amperes(breaker->rating)));
    }
    judge(figures, limits);
    all.push_back(std::move(figures));
  }
  return all;
}

}  // namespace stayalight
