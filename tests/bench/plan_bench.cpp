// How long the planning library takes for the large house. Beside a figure stands its floor where there is
// one: what the same work costs with nothing of ours in it.

#include <benchmark/benchmark.h>

#include <cstdlib>
#include <deque>
#include <fstream>
#include <string>
#include <vector>

#include "core/assess/assess.h"
#include "core/edit/edit.h"
#include "core/file/file.h"
#include "tests/bench/large_house.h"

namespace stayalight {
namespace {

using bench::fullBackup;
using bench::largeHouse;

void count(benchmark::State& state, const Plan& plan) {
  const bench::Counts counts = bench::countsOf(plan);
  state.counters["circuits"] = counts.circuits;
  state.counters["loads"] = counts.loads;
  state.counters["motors"] = counts.motors;
  state.counters["loads_on_backup"] = counts.loadsOnBackup;
  state.counters["motors_on_backup"] = counts.motorsOnBackup;
}

void assessUnrecorded(benchmark::State& state) {
  const Plan plan = largeHouse();
  while (state.KeepRunning()) benchmark::DoNotOptimize(assess(plan));
  count(state, plan);
}
BENCHMARK(assessUnrecorded)->Unit(benchmark::kMicrosecond);

void assessFullBackup(benchmark::State& state) {
  const Plan plan = fullBackup();
  while (state.KeepRunning()) benchmark::DoNotOptimize(assess(plan));
  count(state, plan);
}
BENCHMARK(assessFullBackup)->Unit(benchmark::kMicrosecond);

void assessRecorded(benchmark::State& state) {
  const Plan plan = largeHouse();
  while (state.KeepRunning()) benchmark::DoNotOptimize(assess(plan, Circumstances{true}));
}
BENCHMARK(assessRecorded)->Unit(benchmark::kMicrosecond);

/// The large house with every piece of its feeder in one raceway, and its moved circuits in two.
Plan wiredHouse() {
  Plan plan = fullBackup();
  for (int i = 0; i < 3; ++i) {
    Raceway raceway;
    raceway.id = nextRacewayId(plan);
    raceway.name = "Raceway " + std::to_string(i + 1);
    raceway.length = Length::feet(6);
    plan.raceways.emplace_back(raceway);
  }
  for (const Segment segment : segments(plan)) {
    FeederRun run;
    run.id = nextFeederRunId(plan);
    run.segment = segment;
    run.length = Length::feet(40);
    run.inRaceway = plan.raceways[0]->id;
    plan.runs.emplace_back(run);
  }
  std::size_t next = 0;
  for (auto& circuit : plan.circuits) {
    if (!backedUp(plan, *circuit)) continue;
    circuit.edit().conductor = ConductorSize::awg12;
    circuit.edit().splice = Splice::inPanel;
    circuit.edit().raceway = plan.raceways[1 + next++ % 2]->id;
  }
  return plan;
}
void segmentsAndRaceways(benchmark::State& state) {
  const Plan plan = wiredHouse();
  const Assessment known = assess(plan);
  LegPower operating;
  for (const Draw& draw : draws(plan, example::kBackup, Reading::planned, known.system))
    operating += draw.likely;
  while (state.KeepRunning()) {
    const std::vector<SegmentFigures> found =
        segmentFigures(plan, segmentLoads(plan, known.hour, operating, known.limits, known.demand.feederLoad),
                       Edition::y2023);
    benchmark::DoNotOptimize(racewayFigures(plan, found, Edition::y2023));
  }
  state.counters["segments"] = static_cast<double>(known.segments.size());
  state.counters["raceways"] = static_cast<double>(known.raceways.size());
}
BENCHMARK(segmentsAndRaceways)->Unit(benchmark::kMicrosecond);

/// Room for the feeder in a full main panel, of which nothing as planned comes free: the longest search there
/// is.
void roomInAFullPanel(benchmark::State& state) {
  Plan plan;
  example::addPanel(plan, PanelRole::main, "Main panel", 42);
  example::addPanel(plan, PanelRole::backup, "Backup subpanel", 24);
  plan.transfer.edit().arrangement = Arrangement::manualSwitch;
  for (const SpacePosition position : allSpaces(*find(plan, example::kMain)))
    example::addCircuit(plan, example::kMain, position, 1, 20, "Circuit");
  int moved = 0;
  for (const int row : {1, 8, 15}) {
    const CircuitId circuit = circuitsOn(
        plan, breakersAt(plan, example::kMain, {Column::left, row}, Reading::before)[0], Reading::before)[0];
    const BreakerId old = find(plan, circuit)->breaker;
    example::moveByHand(plan, circuit, example::kBackup, {Column::left, ++moved});
    example::editBreaker(plan, old).stage = Stage::removed;
  }
  while (state.KeepRunning()) benchmark::DoNotOptimize(clearedPlaces(plan, example::kMain));
}
BENCHMARK(roomInAFullPanel)->Unit(benchmark::kMicrosecond);

/// What a drag over one space costs: the edit, and every answer about its result.
void previewOfAMove(benchmark::State& state) {
  const Plan plan = largeHouse();
  const std::vector<CircuitId> moving{plan.circuits[1]->id};
  while (state.KeepRunning()) {
    const Result<Plan> moved = moveCircuits(plan, moving, example::kBackup);
    benchmark::DoNotOptimize(assess(moved.value()));
  }
}
BENCHMARK(previewOfAMove)->Unit(benchmark::kMicrosecond);

void writeText(benchmark::State& state) {
  const Plan plan = largeHouse();
  std::size_t bytes = 0;
  while (state.KeepRunning()) bytes = writePlan(plan).size();
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(writeText)->Unit(benchmark::kMicrosecond);

void readText(benchmark::State& state) {
  const std::string text = writePlan(largeHouse());
  while (state.KeepRunning()) {
    const Result<ReadPlan> read = readPlan(text, "bench");
    if (!read.ok() || !read.value().notes.empty()) std::abort();
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(readText)->Unit(benchmark::kMicrosecond);

/// Floor of readText: every byte of the same text looked at once.
void readTextFloor(benchmark::State& state) {
  const std::string text = writePlan(largeHouse());
  while (state.KeepRunning()) {
    unsigned sum = 0;
    for (const char c : text) sum += static_cast<unsigned char>(c);
    benchmark::DoNotOptimize(sum);
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(readTextFloor)->Unit(benchmark::kMicrosecond);

/// Resident memory of this process in bytes.
double residentBytes() {
  std::ifstream file("/proc/self/statm");
  double pages = 0;
  double resident = 0;
  file >> pages >> resident;
  return resident * 4096;
}

/// 10,000 edits, each kept for undo: time for one, and memory for all.
void undoSteps(benchmark::State& state) {
  const Plan start = largeHouse();
  constexpr int kSteps = 10000;
  double grown = 0;
  while (state.KeepRunning()) {
    const double before = residentBytes();
    std::deque<Plan> history{start};
    for (int i = 0; i < kSteps; ++i) {
      const auto& circuit = start.circuits[static_cast<std::size_t>(i) % start.circuits.size()];
      const Result<Plan> next = setField(history.back(), EntityRef{RecordKind::circuit, circuit->id.number},
                                         "name", std::to_string(i));
      if (!next.ok()) std::abort();
      history.push_back(next.value());
    }
    grown = residentBytes() - before;
    benchmark::DoNotOptimize(history.size());
  }
  state.counters["bytes"] = grown;
  state.counters["bytes_a_step"] = grown / kSteps;
}
BENCHMARK(undoSteps)->Unit(benchmark::kMillisecond)->Iterations(1);

}  // namespace
}  // namespace stayalight

BENCHMARK_MAIN();
