// The real main window with the large house in it: how long an edit takes until every view that shows it is
// painted anew. A frame of a 60 Hz screen lasts 16.7 ms. Runs on the display that QT_QPA_PLATFORM names.

#include <QtCore/QTemporaryDir>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>

#include "tests/bench/large_house.h"
#include "tests/bench/open_window.h"

namespace stayalight {
namespace {

using bench::OpenWindow;
using bench::untilPainted;

/// A circuit moves to the backup subpanel: both boards, every answer, strip, findings.
void moveUntilPainted(benchmark::State& state) {
  const Plan plan = bench::largeHouse();
  OpenWindow open(plan);
  PlanDocument& document = open.window.document();
  const std::vector<CircuitId> moving{plan.circuits[1]->id};
  untilPainted(
      state, open,
      [&] {
        Result<Plan> after = moveCircuits(document.plan(), moving, example::kBackup);
        if (!after.ok() || document.apply(std::move(after).value(), QStringLiteral("move"))) std::abort();
      },
      [&] { document.undo(); });
}
BENCHMARK(moveUntilPainted)->UseManualTime()->Unit(benchmark::kMillisecond);

/// A load's watts are typed.
void wattsUntilPainted(benchmark::State& state) {
  const Plan plan = bench::largeHouse();
  OpenWindow open(plan);
  PlanDocument& document = open.window.document();
  const EntityRef load{RecordKind::load, plan.circuits[0]->loads[0].id.number};
  FactValue watts;
  watts.value = 1234.0;
  watts.grade = Grade::measured;
  untilPainted(
      state, open,
      [&] {
        Result<Plan> after = setField(document.plan(), load, "running_W", watts);
        if (!after.ok() || document.apply(std::move(after).value(), QStringLiteral("watts"))) std::abort();
      },
      [&] { document.undo(); });
}
BENCHMARK(wattsUntilPainted)->UseManualTime()->Unit(benchmark::kMillisecond);

/// A plan file opened, with its lock, until the window is painted.
void openUntilPainted(benchmark::State& state) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("large.stayalight"));
  OpenWindow open(bench::largeHouse());
  if (open.window.document().saveAs(path)) std::abort();
  untilPainted(
      state, open,
      [&] {
        if (!open.window.openFile(path)) std::abort();
      },
      [] {});
}
BENCHMARK(openUntilPainted)->UseManualTime()->Unit(benchmark::kMillisecond);

/// A plan file saved: written beside, made safe on the disk, put in place.
void saveToDisk(benchmark::State& state) {
  const QTemporaryDir folder;
  PlanDocument document;
  document.start(bench::largeHouse());
  if (document.saveAs(folder.filePath(QStringLiteral("large.stayalight")))) std::abort();
  while (state.KeepRunning()) {
    if (document.save(true)) std::abort();
  }
}
BENCHMARK(saveToDisk)->Unit(benchmark::kMillisecond);

/// The large house in a panel of 84 spaces, the most that is sold.
Plan manySpaces() {
  Plan plan = bench::largeHouse();
  example::editPanel(plan, example::kMain).spaces = 84;
  return plan;
}

/// A board of 84 spaces scrolled by three rows.
void scrollUntilPainted(benchmark::State& state) {
  OpenWindow open(manySpaces());
  const QWidget* board = open.window.boards()->boardWidget(example::kMain);
  auto* area = qobject_cast<QScrollArea*>(board->parentWidget()->parentWidget()->parentWidget());
  if (area == nullptr || area->verticalScrollBar()->maximum() < 60) std::abort();
  untilPainted(
      state, open, [&] { area->verticalScrollBar()->setValue(51); },
      [&] { area->verticalScrollBar()->setValue(0); });
}
BENCHMARK(scrollUntilPainted)->UseManualTime()->Unit(benchmark::kMillisecond);

/// The window made smaller and larger: 84 spaces laid out anew for another height of their rows.
void resizeUntilPainted(benchmark::State& state) {
  OpenWindow open(manySpaces());
  untilPainted(
      state, open, [&] { open.window.resize(1440, 1000); }, [&] { open.window.resize(1440, 900); });
}
BENCHMARK(resizeUntilPainted)->UseManualTime()->Unit(benchmark::kMillisecond);

/// Floor of the edits: the whole window painted anew, with nothing changed.
void paintedOnly(benchmark::State& state) {
  OpenWindow open(bench::largeHouse());
  untilPainted(
      state, open,
      [&] {
        for (QWidget* widget : open.window.findChildren<QWidget*>()) widget->update();
      },
      [] {});
}
BENCHMARK(paintedOnly)->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stayalight

int main(int argc, char** argv) { return stayalight::bench::runBenchmarks(argc, argv); }
