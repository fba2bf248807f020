// The floor of a start: a window with an empty chart, which ends after its first paint.

#include <QtCharts/QChart>
#include <QtCharts/QChartView>
#include <QtWidgets/QApplication>
#include <QtWidgets/QMainWindow>

#include "tests/bench/first_paint.h"

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QMainWindow window;
  auto* view = new QChartView(new QChart, &window);
  view->viewport()->setObjectName(QStringLiteral("emptyChart"));
  window.setCentralWidget(view);
  window.resize(1440, 900);
  stayalight::bench::endAfterPaintOf(QStringLiteral("emptyChart"));
  window.show();
  return QApplication::exec();
}
