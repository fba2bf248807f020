#pragma once

// The commands that open no window. Results go to the standard output or a file, errors to the standard
// error, one line each with file, place and reason.

#include "app/command_line.h"

namespace stayalight {

/// assess and review: no application object at all.
[[nodiscard]] int assessPlans(const CommandLine& line);
[[nodiscard]] int reviewPlans(const CommandLine& line);
/// print and draw: a QGuiApplication on the offscreen platform unless another is set; no widget.
[[nodiscard]] int printPlan(const CommandLine& line, int& argc, char** argv);
[[nodiscard]] int drawPlan(const CommandLine& line, int& argc, char** argv);

void writeError(const Message& message);

}  // namespace stayalight
