// What holds for every load, run and device, not for examples alone.

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/code/devices.h"
#include "core/wiring/device.h"
#include "core/wiring/drop.h"
#include "core/wiring/grounding.h"

using namespace stayalight;
using Phasor = std::complex<double>;

namespace {

double between(double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 10001) / 10000.0; }

RunConditions anyConditions() {
  RunConditions conditions;
  conditions.metal = *rc::gen::element(Metal::copper, Metal::aluminium);
  conditions.insulation =
      *rc::gen::element(TemperatureColumn::c60, TemperatureColumn::c75, TemperatureColumn::c90);
  conditions.nmCable = *rc::gen::arbitrary<bool>();
  conditions.raceway =
      *rc::gen::element(RacewayMaterial::pvc, RacewayMaterial::aluminium, RacewayMaterial::steel);
  conditions.ambient = Temperature::celsius(between(-20, 80));
  conditions.currentCarrying = *rc::gen::inRange(2, 45);
  conditions.terminals75 = *rc::gen::arbitrary<bool>();
  conditions.length = Length::feet(between(1, 300));
  return conditions;
}
ConductorSize anySize() {
  return static_cast<ConductorSize>(*rc::gen::inRange(0, static_cast<int>(kConductorSizeCount)));
}
RatingAmperes anyDevice() { return *rc::gen::elementOf(standardRatings(Edition::y2023)); }
Edition anyEdition() { return *rc::gen::elementOf(std::vector<Edition>(kEditions.begin(), kEditions.end())); }

// A missing cell carries nothing.
double carried(const Ampacities& found) { return found.governing.value_or(AcAmperes()).count(); }

RC_GTEST_PROP(Conductor, LargerSizeNeverCarriesLess, ()) {
  const RunConditions conditions = anyConditions();
  const RatingAmperes device = anyDevice();
  for (std::size_t i = 1; i < kConductorSizeCount; ++i) {
    RC_ASSERT(carried(ampacities(static_cast<ConductorSize>(i), conditions, device)) >=
              carried(ampacities(static_cast<ConductorSize>(i - 1), conditions, device)));
  }
}

RC_GTEST_PROP(Conductor, HotterOrFullerNeverCarriesMore, ()) {
  const RunConditions conditions = anyConditions();
  const ConductorSize size = anySize();
  const RatingAmperes device = anyDevice();
  RunConditions worse = conditions;
  worse.ambient = Temperature::celsius(conditions.ambient.inCelsius() + between(0, 40));
  worse.currentCarrying += *rc::gen::inRange(0, 30);
  RC_ASSERT(carried(ampacities(size, worse, device)) <= carried(ampacities(size, conditions, device)));
}

RC_GTEST_PROP(Conductor, ChosenSizeCarriesTheLoadAndIsProtectedAndTheNextSmallerIsNot, ()) {
  ConductorQuestion question;
  question.conditions = anyConditions();
  const double load = between(1, 300);
  question.load = AcAmperes(load);
  question.terminalLoad = AcAmperes(load * between(1.0, 1.25));
  const auto device = nextStandardRating(*question.terminalLoad, Edition::y2023);
  question.device = device;
  const ConductorChoice choice = chooseConductor(question, Edition::y2023);
  if (!choice.size) {
    RC_SUCCEED("no size of the table carries it");
  }
  RC_ASSERT(choice.terminalAmpacity->count() >= question.terminalLoad->count() * (1 - 1e-9));
  RC_ASSERT(choice.deratedAmpacity->count() >= load * (1 - 1e-9));
  // 240.4, 240.4(B), 240.4(D) stated anew: at most the ampacity, or the one standard rating that follows it.
  const double ampacity = std::min(choice.terminalAmpacity->count(), choice.deratedAmpacity->count());
  if (device->count() > ampacity * (1 + 1e-9)) {
    RC_ASSERT(device->count() <= 800);
    for (const RatingAmperes rating : standardRatings(Edition::y2023)) {
      RC_ASSERT(!(rating.count() > ampacity * (1 + 1e-9) && rating < *device));
      RC_ASSERT(!(std::abs(rating.count() - ampacity) < 1e-6));
    }
  }
  if (const auto limit = smallConductorLimit(*choice.size, choice.metal)) RC_ASSERT(*device <= *limit);
  if (*choice.size > ConductorSize::awg14) {
    const auto smaller = static_cast<ConductorSize>(static_cast<int>(*choice.size) - 1);
    ConductorQuestion fixed = question;
    fixed.fixed = smaller;
    const ConductorChoice checked = chooseConductor(fixed, Edition::y2023);
    RC_ASSERT(checked.tooSmall || checked.notProtected);
  }
}

RC_GTEST_PROP(Conductor, MoreLoadNeverTakesASmallerSize, ()) {
  ConductorQuestion question;
  question.conditions = anyConditions();
  question.device = anyDevice();
  question.load = question.terminalLoad = AcAmperes(between(1, 200));
  ConductorQuestion heavier = question;
  heavier.load = heavier.terminalLoad = *question.load + AcAmperes(between(0, 100));
  const auto first = chooseConductor(question, Edition::y2023).size;
  const auto second = chooseConductor(heavier, Edition::y2023).size;
  RC_ASSERT(!second || (first && *second >= *first));
}

RC_GTEST_PROP(Device, LiesBetweenMinimumAndMaximumUnlessFlagged, ()) {
  DeviceQuestion question;
  question.continuous = AcAmperes(between(0, 300));
  question.other = AcAmperes(between(0, 300));
  const int count = *rc::gen::inRange(0, 4);
  for (int i = 0; i < count; ++i)
    question.limits.push_back({anyDevice(), say(MessageId{"wiring.maximum.switch"})});
  const Edition edition = anyEdition();
  const DeviceChoice choice = chooseDevice(question, edition);
  if (choice.minimum->count() <= 0.0) {
    RC_ASSERT(!choice.rating && !choice.minimumAboveMaximum);
    return;
  }
  RC_ASSERT(choice.rating.has_value());
  RC_ASSERT(choice.rating->count() >= choice.minimum->count() * (1 - 1e-9));
  for (const RatingAmperes rating : standardRatings(edition)) {
    RC_ASSERT(!(rating < *choice.rating && rating.count() >= choice.minimum->count()));
  }
  if (!choice.minimumAboveMaximum && choice.maximum) RC_ASSERT(*choice.rating <= *choice.maximum);
  for (const DeviceLimit& limit : question.limits) RC_ASSERT(*choice.maximum <= limit.rating);
}

RC_GTEST_PROP(Device, StandingOneIsFlaggedExactlyWhenOutside, ()) {
  DeviceQuestion question;
  question.continuous = AcAmperes(between(1, 200));
  question.limits.push_back({anyDevice(), say(MessageId{"wiring.maximum.switch"})});
  question.fixed = anyDevice();
  const DeviceChoice choice = chooseDevice(question, Edition::y2023);
  RC_ASSERT(choice.rating == question.fixed);
  RC_ASSERT(choice.belowMinimum == (question.fixed->count() < choice.minimum->count() * (1 - 1e-9)));
  RC_ASSERT(choice.aboveMaximum == (*question.fixed > *choice.maximum));
}

RC_GTEST_PROP(Ground, IsAtLeastTheTableAndNeverAboveTheConductors, ()) {
  GroundingQuestion question;
  question.device = *rc::gen::elementOf(std::vector<RatingAmperes>{RatingAmperes(15), RatingAmperes(30),
                                                                   RatingAmperes(60), RatingAmperes(100),
                                                                   RatingAmperes(200), RatingAmperes(400)});
  question.metal = *rc::gen::element(Metal::copper, Metal::aluminium);
  question.required = anySize();
  question.conductor = std::max(*question.required, anySize());
  const SizeAndReason chosen = groundingConductorFor(question, Edition::y2023);
  const ConductorSize listed = *groundingConductor(*question.device, question.metal);
  RC_ASSERT(chosen.size.has_value());
  RC_ASSERT(*chosen.size <= *question.conductor);
  RC_ASSERT(*chosen.size >= std::min(listed, *question.conductor));
  GroundingQuestion larger = question;
  larger.conductor = std::max(*question.conductor, anySize());
  RC_ASSERT(*groundingConductorFor(larger, Edition::y2023).size >= *chosen.size);
}

// Reactance of the table rises here and there with size, so the rule holds from a power factor of 0.3.
RC_GTEST_PROP(Drop, LargerConductorNeverDropsMoreInABalancedRun, ()) {
  const RunConditions conditions = anyConditions();
  const double amperes = between(1, 100);
  const double powerFactor = between(0.3, 1.0);
  const Phasor current = std::polar(amperes, -std::acos(powerFactor));
  SystemVoltages system;
  std::optional<DropFigure> before;
  for (std::size_t i = 1; i < kConductorSizeCount; ++i) {
    const auto size = static_cast<ConductorSize>(i);
    const auto drop = runDrop({current, -current}, size, size, conditions, system);
    RC_ASSERT(drop.has_value());
    const auto z = runImpedance(size, conditions);
    const double resistive = amperes * z->resistance.count() * powerFactor;
    if (before) {
      const auto smaller = runImpedance(static_cast<ConductorSize>(i - 1), conditions);
      RC_ASSERT(resistive <= amperes * smaller->resistance.count() * powerFactor + 1e-12);
      const double sine = std::sqrt(1.0 - powerFactor * powerFactor);
      const auto linear = [&](const Impedance& ohm) {
        return ohm.resistance.count() * powerFactor + ohm.reactance.count() * sine;
      };
      RC_ASSERT(linear(*z) <= linear(*smaller) + 1e-12);
    }
    before = drop;
  }
}

RC_GTEST_PROP(Drop, GrowsWithLengthInProportionForSmallDrops, ()) {
  RunConditions conditions = anyConditions();
  conditions.length = Length::feet(between(5, 50));
  const Phasor l1 = std::polar(between(1, 20), -between(0.0, 1.0));
  const Phasor l2 = -std::polar(between(1, 20), -between(0.0, 1.0));
  RunConditions twice = conditions;
  twice.length = Length::micrometres(2 * conditions.length.inMicrometres());
  SystemVoltages system;
  const auto once = runDrop({l1, l2}, ConductorSize::awg4, ConductorSize::awg4, conditions, system);
  const auto doubled = runDrop({l1, l2}, ConductorSize::awg4, ConductorSize::awg4, twice, system);
  for (std::size_t leg = 0; leg < 2; ++leg) {
    RC_ASSERT(std::abs(doubled->leg[leg].count() - 2.0 * once->leg[leg].count()) < 0.05);
  }
}

RC_GTEST_PROP(Drop, LegsTradePlacesWithTheirCurrents, ()) {
  const Phasor a = std::polar(between(0, 60), -between(-0.5, 1.4));
  const Phasor b = std::polar(between(0, 60), -between(-0.5, 1.4));
  const Phasor line(between(0.001, 0.2), between(0.0, 0.05));
  const Phasor neutral(between(0.001, 0.2), between(0.0, 0.05));
  SystemVoltages system;
  const DropFigure one = threeWireDrop({a, -b}, line, neutral, system);
  const DropFigure other = threeWireDrop({b, -a}, line, neutral, system);
  RC_ASSERT(std::abs(one.leg[0].count() - other.leg[1].count()) < 1e-9);
  RC_ASSERT(std::abs(one.leg[1].count() - other.leg[0].count()) < 1e-9);
  RC_ASSERT(std::abs(one.lineToLine.count() - other.lineToLine.count()) < 1e-9);
}

}  // namespace
