// The real main window with the large house in it: how long an edit takes until every view that shows it is
// painted anew. A frame of a 60 Hz screen lasts 16.7 ms. Runs on the display that QT_QPA_PLATFORM names.

#include <benchmark/benchmark.h>

#include <QtCore/QStandardPaths>
#include <QtCore/QTemporaryDir>
#include <QtWidgets/QApplication>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QScrollBar>
#include <chrono>
#include <cstdlib>
#include <functional>

#include "tests/bench/large_house.h"
#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace stayalight {
namespace {

using Clock = std::chrono::steady_clock;
double secondsSince(Clock::time_point begin) {
  return std::chrono::duration<double>(Clock::now() - begin).count();
}

/// Counts paint events, so that an edit that painted nothing cannot pass for a quick one.
class Painted : public QObject {
 public:
  int widgets = 0;

 protected:
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() == QEvent::Paint) ++widgets;
    return false;
  }
};

void settle() {
  QApplication::sendPostedEvents();
  QApplication::processEvents();
}

class OpenWindow {
 public:
  explicit OpenWindow(const Plan& plan) {
    window.resize(1440, 900);
    window.startPlan(plan);
    window.show();
    for (int i = 0; i < 50 && !window.isActiveWindow(); ++i) {
      QApplication::processEvents(QEventLoop::AllEvents, 20);
    }
    settle();
    QCoreApplication::instance()->installEventFilter(&painted);
  }
  MainWindow window;
  Painted painted;
};

/// Times `change` and the painting after it; `back` puts things right in between.
void untilPainted(benchmark::State& state, OpenWindow& open, const std::function<void()>& change,
                  const std::function<void()>& back) {
  double worked = 0.0, worst = 0.0;
  int painted = 0;
  while (state.KeepRunning()) {
    const int before = open.painted.widgets;
    const Clock::time_point begin = Clock::now();
    change();
    const double until = secondsSince(begin);
    settle();
    const double all = secondsSince(begin);
    state.SetIterationTime(all);
    worked += until;
    worst = std::max(worst, all);
    painted += open.painted.widgets - before;
    back();
    settle();
  }
  const auto mean = benchmark::Counter::kAvgIterations;
  state.counters["work_ms"] = benchmark::Counter(worked * 1e3, mean);
  state.counters["worst_ms"] = worst * 1e3;
  state.counters["widgets_painted"] = benchmark::Counter(painted, mean);
}

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

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("stayalight"));
  QApplication::setApplicationName(QStringLiteral("stayalight-bench"));
  QStandardPaths::setTestModeEnabled(true);
  if (!stayalight::loadFaces()) return EXIT_FAILURE;
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return EXIT_FAILURE;
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return EXIT_SUCCESS;
}
