// Laws that every load calculation keeps.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "tests/core/demand/questions.h"
#include "tests/core/random_plan.h"

using namespace stayalight;
using namespace stayalight::asking;

namespace {

Edition anyEdition() { return kEditions[static_cast<std::size_t>(*rc::gen::inRange(0, 4))]; }

constexpr std::array<LoadClass, 10> kAll = {LoadClass::appliance,      LoadClass::dryer,
                                            LoadClass::cooking,        LoadClass::spaceHeating,
                                            LoadClass::heatPump,       LoadClass::supplementalHeat,
                                            LoadClass::motor,          LoadClass::airConditioning,
                                            LoadClass::vehicleCharger, LoadClass::other};
// Without those whose factor steps down with their number.
constexpr std::array<LoadClass, 7> kPlain = {
    LoadClass::spaceHeating, LoadClass::heatPump,        LoadClass::supplementalHeat,
    LoadClass::motor,        LoadClass::airConditioning, LoadClass::vehicleCharger,
    LoadClass::other};

template <std::size_t count>
DemandItem anyItem(const std::array<LoadClass, count>& classes) {
  DemandItem made = item(classes[*rc::gen::inRange<std::size_t>(0, count)], *rc::gen::inRange(0, 12000));
  if (*rc::gen::arbitrary<bool>()) made = onLeg(made, *rc::gen::arbitrary<bool>() ? Leg::l1 : Leg::l2);
  made.motor = *rc::gen::arbitrary<bool>();
  made.continuous = *rc::gen::arbitrary<bool>();
  made.controls = *rc::gen::inRange(1, 6);
  return made;
}

DemandQuestion anyQuestion() {
  DemandQuestion question =
      dwelling(*rc::gen::inRange(0, 60000), *rc::gen::inRange(0, 5), *rc::gen::inRange(0, 3), anyEdition());
  question.area[0] += SquareFeet(*rc::gen::inRange(0, 500));
  const int count = *rc::gen::inRange(0, 8);
  int cooking = 0;
  for (int i = 0; i < count; ++i) {
    DemandItem made = anyItem(kAll);
    if (made.loadClass == LoadClass::cooking && ++cooking > kCookingRows) continue;
    question.items.push_back(made);
  }
  return question;
}

bool sameOrMore(double more, double less) { return more >= less - 1e-6; }

RC_GTEST_PROP(Demand, MoreAreaNeverLowersTheLoad, ()) {
  const DemandQuestion question = anyQuestion();
  DemandQuestion larger = question;
  larger.area[static_cast<std::size_t>(*rc::gen::inRange(0, 2))] += SquareFeet(*rc::gen::inRange(0, 5000));
  RC_ASSERT(sameOrMore(standardLoad(larger).total.count(), standardLoad(question).total.count()));
  RC_ASSERT(sameOrMore(optionalLoad(larger).total.count(), optionalLoad(question).total.count()));
}

// The code's own steps down are left out: the fourth appliance (75 % of all), the fifth and later dryers
// (Table 220.54), and a cooking appliance that comes into another column.
RC_GTEST_PROP(Demand, OneMoreLoadNeverLowersTheLoad, ()) {
  const DemandQuestion question = anyQuestion();
  DemandQuestion larger = question;
  larger.items.push_back(anyItem(kPlain));
  for (auto* method : {&standardLoad, &existingLoad}) {
    const DemandCalculation a = method(question, nullptr, publishedTables()),
                            b = method(larger, nullptr, publishedTables());
    RC_ASSERT(sameOrMore(b.total.count(), a.total.count()));
    RC_LOG() << "least rating " << a.minimum.count() << " A, then " << b.minimum.count() << " A\n";
    RC_ASSERT(sameOrMore(b.minimum.count(), a.minimum.count()));
  }
}

RC_GTEST_PROP(Demand, ALargerLoadNeverLowersTheLoad, ()) {
  DemandQuestion question = anyQuestion();
  const auto which = *rc::gen::inRange<std::size_t>(0, question.items.size() + 1);
  question.items.insert(question.items.begin() + static_cast<std::ptrdiff_t>(which), anyItem(kPlain));
  DemandQuestion larger = question;
  *larger.items[which].rating += VoltAmperes(*rc::gen::inRange(0, 5000));
  RC_ASSERT(sameOrMore(standardLoad(larger).total.count(), standardLoad(question).total.count()));
  for (std::size_t leg = 0; leg < 2; ++leg) {
    RC_ASSERT(
        sameOrMore(standardLoad(larger).leg[leg].load.count(), standardLoad(question).leg[leg].load.count()));
    RC_ASSERT(sameOrMore(standardLoad(larger).leg[leg].neutral.count(),
                         standardLoad(question).leg[leg].neutral.count()));
  }
}

RC_GTEST_PROP(Demand, TheStepsOfLightingAreContinuous, ()) {
  const double area = *rc::gen::inRange(0, 60000);
  const Edition edition = anyEdition();
  const double less = standardLoad(dwelling(area, 2, 1, edition)).total.count();
  const double more = standardLoad(dwelling(area + 0.01, 2, 1, edition)).total.count();
  RC_ASSERT(more >= less);
  RC_ASSERT(more - less <= 0.01 * 3.0 + 1e-9);
}

RC_GTEST_PROP(Demand, TheNeutralNeverCarriesMoreThanItsLeg, ()) {
  const DemandQuestion question = anyQuestion();
  const DemandCalculation found = standardLoad(question);
  for (const DemandLeg& leg : found.leg) {
    RC_LOG() << "neutral " << leg.neutral.count() << " of " << leg.load.count() << " VA\n";
    RC_ASSERT(leg.neutral.count() <= leg.load.count() + 1e-6);
    RC_ASSERT(leg.continuous.count() <= leg.load.count() + 1e-6);
  }
  RC_ASSERT(found.neutral.count() <= found.heavier.count() + 1e-6);
  RC_ASSERT(found.line.count() <= found.heavier.count() + 1e-6);
  RC_ASSERT(found.minimum.count() >= found.line.count() - 1e-9);
}

RC_GTEST_PROP(Demand, CookingNeverRisesAboveItsNameplates, ()) {
  std::vector<double> ratings;
  double sum = 0.0;
  const int count = *rc::gen::inRange(1, kCookingRows + 1);
  for (int i = 0; i < count; ++i) {
    ratings.push_back(*rc::gen::inRange(1800, 27001) / 1000.0);
    sum += ratings.back();
  }
  const auto found = cookingLoad(ratings, Edition::y2023);
  RC_ASSERT(found.has_value());
  RC_ASSERT(found->load.count() <= sum * 1000.0 + 1e-6);
}

/// Whatever a plan holds, its figures are there, finite, and say what is missing.
RC_GTEST_PROP(Demand, AnyPlanHasFigures, ()) {
  const Plan plan = example::randomPlan(
      [](std::int64_t low, std::int64_t high) { return *rc::gen::inRange<std::int64_t>(low, high + 1); });
  const DemandFigures found = demandFigures(plan, anyEdition(), inverterLimits(*plan.inverter));
  if (!found.covered) return;
  RC_ASSERT(found.service.methods.size() == 4u);
  for (const MethodFigures& method : found.service.methods) {
    RC_ASSERT(std::isfinite(method.after.total.count()));
    RC_ASSERT(method.after.total.count() >= 0.0);
    if (!method.after.complete()) {
      RC_ASSERT(method.verdictAfter != Verdict::within);
      RC_ASSERT(found.service.chosen != method.method);
    }
  }
  RC_ASSERT(std::isfinite(found.feeder.heavier.count()));
  for (const PathFigures& path : found.paths) RC_ASSERT(!(path.closed && path.verdict == Verdict::within));
}

}  // namespace
