#pragma once

#include <QtCore/QString>

namespace stayalight {

/// The window, until it is closed. `planPath` is opened first; empty: the start page. Returns the exit code.
int runWindow(int& argc, char** argv, const QString& planPath);

}  // namespace stayalight
