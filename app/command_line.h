#pragma once

// What the words of the command line ask for. Decided before any application object stands.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/message/result.h"

namespace stayalight {

enum class Task : std::uint8_t { window, assess, review, print, draw, help, version };

struct CommandLine {
  Task task = Task::window;
  std::vector<std::string> plans;   ///< "-" is the standard input; at most one for window, print and draw
  std::string out;                  ///< "-" is the standard output
  std::vector<std::string> sheets;  ///< empty: all
  std::string paper;                ///< "letter" or "a4"; empty: as the plan says
  bool metric = false;              ///< units in what people read
};

/// Refused: an unknown command or option, an option without its value or that the command does not have, no
/// plan where one is needed, no --out. `words` without the program's name.
[[nodiscard]] Result<CommandLine> parseCommandLine(const std::vector<std::string>& words);

inline constexpr int kExitOk = 0;
inline constexpr int kExitDanger = 1;  ///< `review` found a danger
inline constexpr int kExitError = 2;

}  // namespace stayalight
