#include "app/command_line.h"

#include <algorithm>
#include <optional>

namespace stayalight {
namespace {

constexpr MessageId kUnknownOption{"command.unknown_option"};
constexpr MessageId kNoValue{"command.no_value"};
constexpr MessageId kNoPlan{"command.no_plan"};
constexpr MessageId kOnePlan{"command.one_plan"};
constexpr MessageId kNoOut{"command.no_out"};
constexpr MessageId kPaper{"command.paper"};
constexpr MessageId kUnits{"command.units"};
constexpr MessageId kPicture{"command.picture"};
constexpr MessageId kInputTwice{"command.input_twice"};

struct TaskName {
  std::string_view word;
  Task task;
};
constexpr TaskName kTasks[] = {
    {"assess", Task::assess}, {"review", Task::review}, {"print", Task::print}, {"draw", Task::draw}};

std::vector<std::string> splitAtCommas(std::string_view text) {
  std::vector<std::string> parts;
  while (!text.empty()) {
    const std::size_t comma = std::min(text.find(','), text.size());
    if (comma > 0) parts.emplace_back(text.substr(0, comma));
    text.remove_prefix(std::min(comma + 1, text.size()));
  }
  return parts;
}

CommandLine only(Task task) {
  CommandLine line;
  line.task = task;
  return line;
}

bool hasOption(Task task, std::string_view option) {
  if (option == "--out") return task == Task::print || task == Task::draw;
  if (option == "--units") return task == Task::assess || task == Task::review || task == Task::print;
  return task == Task::print && (option == "--sheets" || option == "--paper");
}

std::optional<Message> wrongWith(const CommandLine& line, const std::string& command) {
  const bool many = line.task == Task::assess || line.task == Task::review;
  if (line.task != Task::window && line.plans.empty()) return say(kNoPlan, command);
  if (!many && line.plans.size() > 1) return say(kOnePlan, line.plans[1]);
  if (std::count(line.plans.begin(), line.plans.end(), "-") > 1) return say(kInputTwice);
  if ((line.task == Task::print || line.task == Task::draw) && line.out.empty()) return say(kNoOut, command);
  if (!line.paper.empty() && line.paper != "letter" && line.paper != "a4") return say(kPaper, line.paper);
  if (line.task == Task::draw && line.out != "-" && !line.out.ends_with(".png") &&
      !line.out.ends_with(".svg")) {
    return say(kPicture, line.out);
  }
  return std::nullopt;
}

}  // namespace

Result<CommandLine> parseCommandLine(const std::vector<std::string>& words) {
  CommandLine line;
  std::string command = "stayalight";
  bool optionsEnded = false;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (optionsEnded || word.empty() || word[0] != '-' || word == "-") {
      const auto* const named = std::find_if(std::begin(kTasks), std::end(kTasks),
                                             [&](const TaskName& t) { return t.word == word; });
      if (i == 0 && named != std::end(kTasks)) {
        line.task = named->task;
        command = word;
      } else {
        line.plans.push_back(word);
      }
      continue;
    }
    if (word == "--") {
      optionsEnded = true;
      continue;
    }
    if (word == "--help" || word == "-h") return only(Task::help);
    if (word == "--version") return only(Task::version);
    // "--out FILE" and "--out=FILE".
    const std::size_t equals = word.find('=');
    const std::string option = word.substr(0, equals);
    if (!hasOption(line.task, option)) return say(kUnknownOption, option, command);
    std::string value;
    if (equals != std::string::npos)
      value = word.substr(equals + 1);
    else if (i + 1 < words.size())
      value = words[++i];
    if (value.empty()) return say(kNoValue, option);
    if (option == "--out")
      line.out = value;
    else if (option == "--sheets")
      line.sheets = splitAtCommas(value);
    else if (option == "--paper")
      line.paper = value;
    else if (value == "us" || value == "metric")
      line.metric = value == "metric";
    else
      return say(kUnits, value);
  }
  if (auto wrong = wrongWith(line, command)) return std::move(*wrong);
  return line;
}

}  // namespace stayalight
