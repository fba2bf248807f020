#include <QtCore/QString>
#include <cstdio>
#include <filesystem>

#include "app/command_line.h"
#include "app/headless.h"
#include "core/message/version.h"
#include "ui/shell/run.h"

namespace {

constexpr char kHelp[] =
    "stayalight [PLAN]                    opens the window, with a plan file in it\n"
    "\n"
    "Without a window:\n"
    "stayalight assess PLAN...            every figure as JSON; several plans make a list\n"
    "stayalight review PLAN...            the findings, one a line\n"
    "stayalight print PLAN --out FILE.pdf [--sheets WORD,...] [--paper letter|a4]\n"
    "                                     the sheets as a PDF; WORD: main, backup, main-before and the "
    "like;\n"
    "                                     survey: blanks for a visit, only where asked for\n"
    "stayalight draw PLAN --out FILE.png|FILE.svg\n"
    "                                     a picture of the boards\n"
    "stayalight --help | --version\n"
    "\n"
    "--units us|metric, with assess, review and print: feet and inches, or metres and millimetres with mm²\n"
    "beside AWG, in what people read (us). Keys of the JSON say their unit themselves and keep it.\n"
    "PLAN is a .stayalight file, - the standard input; --out - is the standard output (PDF, PNG).\n"
    "Exit code: 0 done; 1 review found a danger; 2 something went wrong, said on the standard error.\n"
    "\n"
    "The figures are estimates. The adopted code, the equipment's listed instructions, the inspector and\n"
    "licensed practice decide; a panel with its cover off is work for a qualified person.\n";

}  // namespace

int main(int argc, char** argv) {
  using namespace stayalight;
  const auto line = parseCommandLine({argv + 1, argv + argc});
  if (!line) {
    writeError(line.refusal());
    return kExitError;
  }
  const CommandLine& command = line.value();
  switch (command.task) {
    case Task::help:
      return std::fputs(kHelp, stdout) < 0 ? kExitError : kExitOk;
    case Task::version:
      return std::printf("stayalight %.*s\n", static_cast<int>(kVersion.size()), kVersion.data()) < 0
                 ? kExitError
                 : kExitOk;
    case Task::assess:
      return assessPlans(command);
    case Task::review:
      return reviewPlans(command);
    case Task::print:
      return printPlan(command, argc, argv);
    case Task::draw:
      return drawPlan(command, argc, argv);
    case Task::window:
      break;
  }
  // Said here, before a display is looked for: a mistyped command looks like a plan.
  if (!command.plans.empty() && !std::filesystem::exists(command.plans.front())) {
    writeError(say(MessageId{"command.no_such_plan"}, command.plans.front()));
    return kExitError;
  }
  return runWindow(argc, argv,
                   command.plans.empty() ? QString() : QString::fromLocal8Bit(command.plans.front().c_str()));
}
