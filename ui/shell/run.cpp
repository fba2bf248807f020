#include "ui/shell/run.h"

#include <QtCore/QTextStream>
#include <QtCore/QTimer>
#include <QtWidgets/QApplication>
#include <cstdio>

#include "core/message/version.h"
#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace stayalight {

int runWindow(int& argc, char** argv, const QString& planPath) {
  QApplication application(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("stayalight"));
  QApplication::setApplicationName(QStringLiteral("stayalight"));
  QApplication::setApplicationDisplayName(QStringLiteral("Stayalight"));
  QApplication::setApplicationVersion(
      QString::fromUtf8(kVersion.data(), static_cast<qsizetype>(kVersion.size())));
  QGuiApplication::setDesktopFileName(QStringLiteral("stayalight"));
  if (!loadFaces()) {
    std::fputs("stayalight: the built-in typefaces could not be loaded\n", stderr);
    return 2;
  }
  auto* window = new MainWindow;
  window->setAttribute(Qt::WA_DeleteOnClose);
  // The plan first, so that what is laid out and painted at once is the plan.
  if (!planPath.isEmpty()) window->openFile(planPath);
  window->show();
  QTimer::singleShot(0, window, [window] {
    window->tellSettingsProblems();
    window->offerAutosaves();
  });
  return QApplication::exec();
}

}  // namespace stayalight
