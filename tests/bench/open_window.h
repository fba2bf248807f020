#pragma once

// The real main window with a plan in it, and how long a change takes until every view that shows it is
// painted anew. Runs on the display that QT_QPA_PLATFORM names.

#include <benchmark/benchmark.h>

#include <QtCore/QStandardPaths>
#include <QtWidgets/QApplication>
#include <chrono>
#include <cstdlib>
#include <functional>

#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace stayalight::bench {

using Clock = std::chrono::steady_clock;
inline double secondsSince(Clock::time_point begin) {
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

inline void settle() {
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
inline void untilPainted(benchmark::State& state, OpenWindow& open, const std::function<void()>& change,
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

/// The program's faces and a home of its own; false where the faces cannot be read.
inline bool prepare() {
  QApplication::setOrganizationName(QStringLiteral("stayalight"));
  QApplication::setApplicationName(QStringLiteral("stayalight-bench"));
  QStandardPaths::setTestModeEnabled(true);
  return loadFaces();
}

inline int runBenchmarks(int argc, char** argv) {
  QApplication application(argc, argv);
  if (!prepare()) return EXIT_FAILURE;
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return EXIT_FAILURE;
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return EXIT_SUCCESS;
}

}  // namespace stayalight::bench
