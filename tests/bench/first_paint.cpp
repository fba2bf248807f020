// The program's own window as `stayalight [PLAN]` opens it, which ends after the first paint of the boards,
// or of the start page where no plan is given.

#include <QtCore/QString>

#include "tests/bench/first_paint.h"
#include "ui/shell/run.h"

namespace {

QString planPath;

void watchPainting() {
  stayalight::bench::endAfterPaintOf(planPath.isEmpty() ? QStringLiteral("startPage")
                                                        : QStringLiteral("boards"));
}

}  // namespace

// The window makes its application itself.
Q_COREAPP_STARTUP_FUNCTION(watchPainting)

int main(int argc, char** argv) {
  if (argc > 1) planPath = QString::fromLocal8Bit(argv[1]);
  return stayalight::runWindow(argc, argv, planPath);
}
