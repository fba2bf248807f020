#pragma once

// The example house with a feeder: figures made up, every segment entered.

#include <stdexcept>

#include "core/use/hour_loads.h"
#include "core/wiring/wiring.h"
#include "tests/core/example_plans.h"

namespace stayalight::feeder {

inline FeederRun& addRun(Plan& plan, Segment segment, double feet = 40.0) {
  FeederRun run;
  run.id = nextFeederRunId(plan);
  run.segment = segment;
  run.length = Length::feet(feet);
  run.terminalsFrom75 = Answer::yes;
  run.terminalsTo75 = Answer::yes;
  plan.runs.emplace_back(run);
  return plan.runs.back().edit();
}
inline FeederRun& editRun(Plan& plan, Segment segment) {
  for (auto& run : plan.runs) {
    if (run->segment.is(segment)) return run.edit();
  }
  return addRun(plan, segment);
}

/// Manual switch of 60 A; calculated load of 9,000 VA, 2,400 of them continuous; inverter of 6 kW, 25 A a
/// leg.
inline Plan manualSwitch() {
  Plan plan = example::exampleHouseMoved();
  plan.transfer.edit().calculatedLoad = VoltAmperes(9000);
  plan.transfer.edit().continuousPart = VoltAmperes(2400);
  for (const Segment segment : {Segment::mainToSwitch, Segment::inverterToSwitch, Segment::switchToBackup}) {
    addRun(plan, segment);
  }
  return plan;
}

/// The same load through the inverter, whose input breaker of 60 A stands in the main panel.
inline Plan passThrough() {
  Plan plan = manualSwitch();
  plan.runs.clear();
  plan.transfer.edit().arrangement = Arrangement::inverterPassThrough;
  plan.transfer.edit().rating.reset();
  plan.inverter.edit().acInput = RatingAmperes(60);
  plan.inverter.edit().passThrough = RatingAmperes(60);
  plan.inverter.edit().maximumOutputDevice = RatingAmperes(80);
  for (auto& breaker : plan.breakers) {
    if (breaker->feeds.is(Feeds::feeder)) breaker.edit().feeds = Feeds::inverterInput;
  }
  addRun(plan, Segment::mainToInverter);
  addRun(plan, Segment::inverterToBackup);
  return plan;
}

/// Load of the backup feeder, typed or worked out.
inline FeederLoad feederOf(const Plan& plan, Working* working = nullptr) {
  return demandFigures(plan, plan.site->edition.valueOr(Edition::y2023), inverterLimits(*plan.inverter),
                       working)
      .feederLoad;
}

/// Loads of all segments with the likely draws of the backup subpanel all on.
inline std::vector<SegmentLoad> loadsOf(const Plan& plan, Working* working = nullptr) {
  const SystemVoltages system = voltages(plan, Mode::outage);
  const std::vector<Draw> all = draws(plan, example::kBackup, Reading::planned, system);
  const InverterLimits limits = inverterLimits(*plan.inverter);
  LegPower operating;
  for (const Draw& draw : all) operating += draw.likely;
  return segmentLoads(plan, hourFigures(HourLoads(plan, all, system, 1, 18), limits), operating, limits,
                      feederOf(plan, working), working);
}

inline std::vector<SegmentFigures> figuresOf(const Plan& plan, Working* working = nullptr) {
  return segmentFigures(plan, loadsOf(plan, working), plan.site->edition.valueOr(Edition::y2023), working);
}

template <class Rows>
const auto& at(const Rows& rows, Segment segment) {
  for (const auto& row : rows) {
    if (row.segment == segment) return row;
  }
  throw std::runtime_error("no such segment");
}

inline bool says(const std::vector<Message>& messages, std::string_view key) {
  for (const Message& message : messages) {
    if (message.id.key == key) return true;
  }
  return false;
}

}  // namespace stayalight::feeder
