// What holds for every raceway, box, gutter, feeder and battery cable.

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "core/code/devices.h"
#include "core/wiring/dc_cable.h"
#include "core/wiring/raceway.h"
#include "core/wiring/splice.h"
#include "core/wiring/wiring_space.h"
#include "tests/core/wiring/feeder_plans.h"

using namespace stayalight;
using namespace stayalight::feeder;

namespace {

double between(double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 10001) / 10000.0; }
ConductorSize sizeUpTo(ConductorSize most) {
  return static_cast<ConductorSize>(*rc::gen::inRange(0, static_cast<int>(most) + 1));
}
Answer anyAnswer() { return *rc::gen::element(Answer::unknown, Answer::yes, Answer::no); }

/// Every moved circuit of the example house in one raceway and one box, of any size.
Plan anyRoom() {
  Plan plan = manualSwitch();
  Raceway raceway;
  raceway.id = nextRacewayId(plan);
  raceway.type = static_cast<RacewayType>(*rc::gen::inRange(0, 5));
  raceway.size = static_cast<TradeSize>(*rc::gen::inRange(0, 8));
  raceway.length = Length::inches(between(0, 120));
  raceway.ambient = Temperature::celsius(between(-20, 60));
  raceway.ground = *rc::gen::element(GroundPath::oneWire, GroundPath::oneEach, GroundPath::raceway);
  raceway.otherCarrying = *rc::gen::inRange(0, 20);
  raceway.otherArea = SquareInches(0.02 * raceway.otherCarrying);
  plan.raceways.emplace_back(raceway);
  SpliceBox box;
  box.id = nextSpliceBoxId(plan);
  box.kind = static_cast<BoxKind>(*rc::gen::inRange(0, 10));
  box.volume = CubicInches(between(10, 60));
  box.clampsInside = anyAnswer();
  box.devices = *rc::gen::inRange(0, 3);
  plan.spliceBoxes.emplace_back(box);
  example::editPanel(plan, example::kMain).wiringSpace = SquareInches(between(0.1, 8));
  for (auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    Circuit& changed = circuit.edit();
    changed.conductor = sizeUpTo(ConductorSize::awg6);
    changed.extension = sizeUpTo(ConductorSize::awg6);
    changed.extensionWire = *rc::gen::element(WireType::thwn2, WireType::xhhw2);
    changed.severalReceptacles = anyAnswer();
    changed.splice = *rc::gen::element(Splice::inPanel, Splice::inBox);
    changed.spliceBox = box.id;
    if (*rc::gen::arbitrary<bool>()) changed.raceway = raceway.id;
  }
  return plan;
}
Circuit& anyMoved(Plan& plan) {
  std::vector<Shared<Circuit>*> moved;
  for (auto& circuit : plan.circuits) {
    if (backedUp(plan, *circuit)) moved.push_back(&circuit);
  }
  return (*rc::gen::elementOf(moved))->edit();
}
RacewayFigures racewayOf(const Plan& plan) {
  return racewayFigures(plan, figuresOf(plan), Edition::y2023).front();
}
double filled(const RacewayFigures& figures) { return figures.area.count() / figures.inside.count(); }

RC_GTEST_PROP(Raceway, HotterOrFullerNeverCarriesMore, ()) {
  const Plan plan = anyRoom();
  Plan worse = plan;
  Raceway& raceway = worse.raceways[0].edit();
  raceway.ambient = Temperature::celsius(raceway.ambient.inCelsius() + between(0, 40));
  raceway.otherCarrying += *rc::gen::inRange(0, 30);
  const RacewayFigures before = racewayOf(plan), after = racewayOf(worse);
  RC_ASSERT(before.branches.size() == after.branches.size());
  RC_ASSERT(after.carrying.most() >= before.carrying.most());
  for (std::size_t i = 0; i < before.branches.size(); ++i) {
    const AcAmperes was = before.branches[i].ampacity.governing.value_or(AcAmperes());
    RC_ASSERT(after.branches[i].ampacity.governing.value_or(AcAmperes()) <= was);
  }
}

RC_GTEST_PROP(Raceway, MoreConductorsNeverLowerTheFill, ()) {
  Plan plan = anyRoom();
  Plan fuller = plan;
  Circuit& circuit = anyMoved(fuller);
  if (circuit.raceway.valid()) {
    circuit.extension = static_cast<ConductorSize>(static_cast<int>(*circuit.extension) + 1);
  } else {
    circuit.raceway = fuller.raceways[0]->id;
  }
  const RacewayFigures before = racewayOf(plan), after = racewayOf(fuller);
  RC_ASSERT(after.area >= before.area);
  RC_ASSERT(after.conductors >= before.conductors);
  RC_ASSERT(filled(after) >= filled(before));
}

RC_GTEST_PROP(Raceway, LargerOneIsNeverFuller, ()) {
  Plan plan = anyRoom();
  plan.raceways[0].edit().size = static_cast<TradeSize>(*rc::gen::inRange(0, 7));
  Plan larger = plan;
  larger.raceways[0].edit().size =
      static_cast<TradeSize>(static_cast<int>(plan.raceways[0]->size.valueOr(TradeSize::half)) + 1);
  const RacewayFigures before = racewayOf(plan), after = racewayOf(larger);
  RC_ASSERT(filled(after) <= filled(before));
  RC_ASSERT(!(before.fill != Verdict::over && after.fill == Verdict::over));
  RC_ASSERT(after.smallest == before.smallest);
  // The size that it names fits, and the one below does not.
  if (before.smallest) {
    Plan smallest = plan;
    smallest.raceways[0].edit().size = *before.smallest;
    RC_ASSERT(racewayOf(smallest).fill != Verdict::over);
    if (*before.smallest != TradeSize::half) {
      smallest.raceways[0].edit().size = static_cast<TradeSize>(static_cast<int>(*before.smallest) - 1);
      RC_ASSERT(racewayOf(smallest).fill == Verdict::over);
    }
  }
}

// The largest rating that a branch may have is no larger than the next standard one above what it carries,
// nor than 240.4(D) lets it be, unless a label says so; and it is smaller than the one that is too large.
RC_GTEST_PROP(Raceway, BreakerItNamesProtectsTheWire, ()) {
  const Plan plan = anyRoom();
  for (const RacewayBranch& branch : racewayOf(plan).branches) {
    if (!branch.ampacity.governing || !branch.most) continue;
    RC_ASSERT(branch.device > *branch.most);
    if (branch.kind != BranchKind::ordinary) continue;
    const auto next = nextStandardRating(*branch.ampacity.governing, Edition::y2023);
    RC_ASSERT(next && *branch.most <= *next);
    if (const auto limit = smallConductorLimit(branch.size, Metal::copper)) RC_ASSERT(*branch.most <= *limit);
  }
}

RC_GTEST_PROP(Box, MoreInItNeverNeedsLess, ()) {
  Plan plan = anyRoom();
  Plan fuller = plan;
  Circuit& circuit = anyMoved(fuller);
  const bool already = circuit.splice.is(Splice::inBox);
  circuit.splice = Splice::inBox;
  if (already) circuit.conductor = static_cast<ConductorSize>(static_cast<int>(*circuit.conductor) + 1);
  const SpliceBoxFigures before = spliceBoxFigures(plan, Edition::y2023).front();
  const SpliceBoxFigures after = spliceBoxFigures(fuller, Edition::y2023).front();
  // From 4 AWG on another rule counts.
  if (!after.large) RC_ASSERT(after.needed.count() >= before.needed.count() - 1e-9);
  RC_ASSERT((after.verdict == Verdict::over) ==
            (!after.large && after.volume && after.needed.count() > after.volume->count() * (1 + 1e-9)));
}

RC_GTEST_PROP(Gutter, MoreJointsNeverTakeLessRoom, ()) {
  Plan plan = anyRoom();
  Plan fuller = plan;
  anyMoved(fuller).splice = Splice::inPanel;
  const auto area = [](const Plan& of) {
    const std::vector<WiringSpaceFigures> all = wiringSpaceFigures(of, {});
    return all.empty() ? 0.0 : all.front().area.count();
  };
  RC_ASSERT(area(fuller) >= area(plan));
}

/// The example house's feeder with any load and any runs.
Plan anyFeeder() {
  Plan plan = *rc::gen::arbitrary<bool>() ? manualSwitch() : passThrough();
  plan.transfer.edit().calculatedLoad = VoltAmperes(between(500, 60000));
  plan.transfer.edit().continuousPart = VoltAmperes(between(0, 1) * plan.transfer->calculatedLoad->count());
  if (plan.transfer->rating) plan.transfer.edit().rating = RatingAmperes(*rc::gen::element(30, 60, 100, 200));
  plan.inverter.edit().addsToPassThrough = anyAnswer();
  for (auto& breaker : plan.breakers) {
    const bool own = breaker->feeds.is(Feeds::feeder) || breaker->feeds.is(Feeds::inverterInput);
    if (own) breaker.edit().stage = Stage::removed;
  }
  for (auto& shared : plan.runs) {
    FeederRun& run = shared.edit();
    run.metal = *rc::gen::element(Metal::copper, Metal::aluminium);
    run.insulation = *rc::gen::element(Insulation::c60, Insulation::c75, Insulation::c90);
    run.ambient = Temperature::celsius(between(-20, 50));
    run.currentCarrying = *rc::gen::inRange(2, 12);
    run.terminalsFrom75 = anyAnswer();
    run.terminalsTo75 = anyAnswer();
    run.length = Length::feet(between(0, 300));
    run.wiring = *rc::gen::element(FeederWiring::singles, FeederWiring::nmCable);
  }
  return plan;
}

RC_GTEST_PROP(Feeder, DeviceProtectsItsConductorOrTheSegmentIsOver, ()) {
  const Plan plan = anyFeeder();
  const Edition edition = plan.site->edition.valueOr(Edition::y2023);
  for (const SegmentFigures& segment : figuresOf(plan)) {
    const ConductorChoice& wire = segment.conductor;
    if (segment.device.minimum && segment.device.rating && !segment.device.fixed &&
        segment.segment != Segment::switchToBackup)
      RC_ASSERT(segment.device.rating->count() >= segment.device.minimum->count() * (1 - 1e-9));
    // Between minimum and maximum, or flagged.
    if (segment.device.rating && segment.device.maximum && *segment.device.rating > *segment.device.maximum)
      RC_ASSERT(segment.device.minimumAboveMaximum || segment.device.aboveMaximum ||
                segment.segment == Segment::switchToBackup);
    if (segment.device.minimumAboveMaximum) RC_ASSERT(segment.verdict == Verdict::over);
    if (!wire.size || !wire.device) continue;
    // 240.4, 240.4(B), 240.4(D) stated anew.
    RC_ASSERT(wire.ampacity.has_value());
    if (wire.device->count() > wire.ampacity->count() * (1 + 1e-9)) {
      RC_ASSERT(wire.device->count() <= 800);
      for (const RatingAmperes rating : standardRatings(edition))
        RC_ASSERT(rating.count() < wire.ampacity->count() - 1e-6 || rating >= *wire.device);
    }
    if (const auto limit = smallConductorLimit(*wire.size, wire.metal)) RC_ASSERT(*wire.device <= *limit);
    if (segment.load.operating)
      RC_ASSERT(wire.ampacity->count() >= segment.load.operating->count() * (1 - 1e-9));
    if (segment.neutral) RC_ASSERT(*segment.neutral <= *wire.size);
    if (segment.ground) RC_ASSERT(*segment.ground <= *wire.size);
  }
}

RC_GTEST_PROP(Feeder, MoreLoadNeverTakesLess, ()) {
  const Plan plan = anyFeeder();
  Plan heavier = plan;
  const double factor = between(1.0, 2.0);
  heavier.transfer.edit().calculatedLoad = VoltAmperes(plan.transfer->calculatedLoad->count() * factor);
  heavier.transfer.edit().continuousPart = VoltAmperes(plan.transfer->continuousPart->count() * factor);
  const std::vector<SegmentFigures> before = figuresOf(plan), after = figuresOf(heavier);
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (before[i].device.rating && after[i].device.rating)
      RC_ASSERT(*after[i].device.rating >= *before[i].device.rating);
    // Above 100 A terminals count as 75 C, and a smaller wire may do: 110.14(C).
    const ConductorChoice &was = before[i].conductor, &is = after[i].conductor;
    if (was.size && is.size && was.terminalColumn == is.terminalColumn) RC_ASSERT(*is.size >= *was.size);
  }
}

RC_GTEST_PROP(DcCable, CarriesWhatItsDeviceLetsThrough, ()) {
  Plan plan = manualSwitch();
  plan.inverter.edit().continuous = Watts(between(500, 12000));
  plan.inverter.edit().lowestInputVoltage = DcVolts(between(20, 60));
  DcCable& cable = plan.dcCable.edit();
  cable.metal = *rc::gen::element(Metal::copper, Metal::aluminium);
  cable.insulation = *rc::gen::element(Insulation::c60, Insulation::c75, Insulation::c90);
  cable.ambient = Temperature::celsius(between(-20, 50));
  cable.terminals75 = anyAnswer();
  cable.length = Length::feet(between(0.5, 20));
  const DcCableFigures figures = *dcCableFigures(plan, Edition::y2023);
  if (figures.required && figures.device)
    RC_ASSERT(figures.device->amperes().count() >= figures.required->count() * (1 - 1e-9));
  if (!figures.conductor.size) {
    RC_ASSERT(figures.verdict == Verdict::over || figures.verdict == Verdict::notKnown);
  } else if (figures.required) {
    RC_ASSERT(figures.conductor.ampacity->count() >= figures.required->count() * (1 - 1e-9));
  }
  // A lower voltage asks for more.
  Plan lower = plan;
  lower.inverter.edit().lowestInputVoltage =
      DcVolts(plan.inverter->lowestInputVoltage->count() * between(0.6, 1.0));
  const DcCableFigures more = *dcCableFigures(lower, Edition::y2023);
  RC_ASSERT(*more.current >= *figures.current);
  const ConductorChoice &was = figures.conductor, &is = more.conductor;
  if (was.size && is.size && was.terminalColumn == is.terminalColumn) RC_ASSERT(*is.size >= *was.size);
  // A larger conductor drops less.
  if (figures.conductor.size && *figures.conductor.size < ConductorSize::kcmil500) {
    Plan larger = plan;
    larger.dcCable.edit().fixedConductor =
        static_cast<ConductorSize>(static_cast<int>(*figures.conductor.size) + 1);
    RC_ASSERT(dcCableFigures(larger, Edition::y2023)->drop->count() < figures.drop->count());
  }
}

}  // namespace
